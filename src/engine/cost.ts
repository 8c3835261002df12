// What a remedy takes: money in euros, which dollars and pounds are near enough to, and hours of work, each as a band.
import type { Span } from './units.ts';

export interface Cost {
  readonly money: Span;
  readonly hours: Span;
}

/** So many of each piece together. */
export function costOf(pieces: readonly (readonly [count: number, piece: Cost])[]): Cost {
  const sum = (of: (cost: Cost) => number): number =>
    pieces.reduce((total, [count, piece]) => total + count * of(piece), 0);
  return {
    money: { from: sum(({ money }) => money.from), to: sum(({ money }) => money.to) },
    hours: { from: sum(({ hours }) => hours.from), to: sum(({ hours }) => hours.to) },
  };
}

/** Nobody knows a price closer than this, euros. Source: common-practice. */
const PRICE_STEP = 5;
const priceSteps = ({ money }: Cost): number => Math.ceil(money.to / PRICE_STEP - 1e-9);

/** For sorting: what is free first, then by money, then by time. */
export const byMoneyThenTime = (a: Cost, b: Cost): number =>
  priceSteps(a) - priceSteps(b) || a.hours.to - b.hours.to || a.money.to - b.money.to;
