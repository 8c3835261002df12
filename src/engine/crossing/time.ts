// How long a vehicle joins the two sides of a gap, and how much a gap moves with warmth.

import type { Span } from '../units.ts';
import type { Working } from '../workings.ts';
import { working } from '../workings.ts';
import type { CrossingProblem, Ranged } from './range.ts';
import { problemIn, rangeOf } from './range.ts';

/** `never`: its wheels do not reach across. `without-limit`: it stands there. Seconds; the longest has the working. */
export type BridgingTime =
  | { readonly kind: 'seconds'; readonly seconds: Span; readonly working: Working }
  | { readonly kind: 'without-limit' }
  | { readonly kind: 'never' }
  | CrossingProblem;

/** Width of a gap, metres: 0.5 to 2 mm are used. Source: common-practice. */
export const GAP_WIDTH = 0.001;

/**
 * A vehicle with through pick-ups joins both sides while its outermost pick-up wheels stand on either side: (pick-up span - gap) /
 * speed. Metres >= 0; metres a second >= 0, 0 for a vehicle that stands across. Source: own-derivation.
 */
export function bridgingTime(pickUpSpan: number, speed: Ranged, gap = GAP_WIDTH): BridgingTime {
  const problem = checked(speed, gap) ?? problemIn([['pick-up-span', pickUpSpan, 'not-negative']]);
  if (problem !== undefined) return problem;
  return timeOver(Math.max(0, pickUpSpan - gap), speed, 'crossing-bridging-time', [
    ['pick-up-span', pickUpSpan, 'm'],
    ['gap', gap, 'm'],
  ]);
}

export interface Rake {
  /** Pick-up span of each vehicle with through pick-ups, metres; 0 for one without. */
  readonly pickUpSpans: readonly number[];
  /** True where the couplings carry current: then the rake is one bridge. */
  readonly couplingsConduct: boolean;
  /** From the first to the last pick-up wheel of the rake, metres; needed for conducting couplings. */
  readonly wholeSpan: number;
}

/** How many bridges there are, one after the other; the time is their sum. */
export interface RakeTime {
  readonly bridges: number;
  readonly time: BridgingTime;
}

/** How long a rake joins the two sides, all its bridges together. */
export function rakeTime(rake: Rake, speed: Ranged, gap = GAP_WIDTH): RakeTime {
  const problem =
    checked(speed, gap) ??
    problemIn([
      ...rake.pickUpSpans.map((span, i) => [`vehicle-${i + 1}`, span, 'not-negative'] as const),
      ['whole-span', rake.wholeSpan, 'not-negative'],
    ]);
  if (problem !== undefined) return { bridges: 0, time: problem };
  if (rake.couplingsConduct) {
    const time = bridgingTime(rake.wholeSpan, speed, gap);
    return { bridges: time.kind === 'never' ? 0 : 1, time };
  }
  const reaching = rake.pickUpSpans.filter((span) => span > gap);
  const metres = reaching.reduce((sum, span) => sum + span - gap, 0);
  const time = timeOver(metres, speed, 'crossing-rake-time', [
    ['vehicles', reaching.length, 'pieces'],
    ['metres', metres, 'm'],
  ]);
  return { bridges: reaching.length, time };
}

export interface WheelBridge {
  /** One metal wheel on its own rail. */
  readonly oneRail: BridgingTime;
  /** Both wheels of an axle at once, which closes the loop without any wiper. */
  readonly bothRails: BridgingTime;
}

/**
 * Every metal wheel joins its own rail across the gap for an instant: at most gap / speed. Both rails at once only while the gaps lie
 * opposite each other; `stagger` is how far apart they are along the track, metres. Source: own-derivation.
 */
export function wheelBridge(speed: Ranged, gap = GAP_WIDTH, stagger = 0): WheelBridge {
  const problem = checked(speed, gap) ?? problemIn([['stagger', stagger, 'any']]);
  if (problem !== undefined) return { oneRail: problem, bothRails: problem };
  const over = (metres: number) =>
    timeOver(metres, speed, 'crossing-wheel-time', [
      ['gap', gap, 'm'],
      ['stagger', stagger, 'm'],
    ]);
  return { oneRail: over(gap), bothRails: over(Math.max(0, gap - Math.abs(stagger))) };
}

/** Longer by this share for each degree: nickel silver, middle of 16 to 19 millionths. Source: nickel-silver-data. */
export const RAIL_EXPANSION = 17e-6;

export type GapMovement =
  | { readonly kind: 'moves'; readonly metres: number; readonly working: Working }
  | CrossingProblem;

/** How much a free rail of `length` metres >= 0 grows, or shrinks, over `degrees`; metres, negative when it gets colder. */
export function gapMovement(length: number, degrees: number, expansion = RAIL_EXPANSION): GapMovement {
  const problem = problemIn([
    ['length', length, 'not-negative'],
    ['degrees', degrees, 'any'],
    ['expansion', expansion, 'not-negative'],
  ]);
  if (problem !== undefined) return problem;
  const metres = expansion * length * degrees;
  return {
    kind: 'moves',
    metres,
    working: working(
      'crossing-gap-movement',
      metres,
      'm',
      [
        ['length', length, 'm'],
        ['degrees', degrees, 'degrees'],
        ['expansion', expansion, 'times'],
      ],
      ['nickel-silver-data', 'own-derivation'],
    ),
  };
}

const checked = (speed: Ranged, gap: number) =>
  problemIn([
    ['speed', speed, 'not-negative'],
    ['gap', gap, 'not-negative'],
  ]);

function timeOver(
  metres: number,
  speed: Ranged,
  formula: string,
  inputs: readonly (readonly [name: string, value: number, unit: 'm' | 'pieces'])[],
): BridgingTime {
  if (metres === 0) return { kind: 'never' };
  const { from, to } = rangeOf(speed);
  if (from === 0) return { kind: 'without-limit' };
  const seconds = { from: metres / to, to: metres / from };
  return {
    kind: 'seconds',
    seconds,
    working: working(formula, seconds.to, 's', [...inputs, ['metres-a-second', from, 'm']], ['own-derivation']),
  };
}
