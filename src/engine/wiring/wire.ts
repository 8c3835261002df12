// What a metre of wire or rail resists, what a wire may carry, and which wires can be bought. Two conductors make a loop.

import type { Scale, Sureness } from '../power/index.ts';
import { MODEL_SUPPLY_LIMIT } from '../power/index.ts';
import type { Span } from '../units.ts';
import { gaugeOf } from '../units.ts';

/** Solid or a few thick strands (IEC 60228 class 1 and 2), or flexible (class 5 and 6). */
export type Make = 'solid' | 'flexible';

export interface Conductor {
  /** Metal of one conductor, square metres, > 0. */
  readonly area: number;
  readonly make: Make;
}

/** Copper at 20 degrees Celsius, ohm metres (100 % IACS, IEC 60028). Source: copper-standard. */
export const COPPER = 0.017241e-6;
/** Rise of copper's resistance for each degree above 20. Source: copper-standard. */
export const COPPER_RISE = 0.00393;
/** Wires are tabled at this temperature, degrees Celsius. Source: iec-60228. */
export const TABLE_DEGREES = 20;
/** Strands of a flexible American-gauge wire run longer than the wire. Source: from-memory. */
export const GAUGE_STRANDING = 1.02;

export interface WireRow {
  readonly squareMillimetres: number;
  /** Most ohms a kilometre at 20 degrees, plain copper, one conductor. */
  readonly solid: number;
  readonly flexible: number;
}

/** IEC 60228:2004, most resistance of plain copper conductors of class 1 and 2, and of class 5 and 6, ohms a kilometre. Source: iec-60228. */
export const WIRE_TABLE: readonly WireRow[] = [
  { squareMillimetres: 0.5, solid: 36, flexible: 39 },
  { squareMillimetres: 0.75, solid: 24.5, flexible: 26 },
  { squareMillimetres: 1, solid: 18.1, flexible: 19.5 },
  { squareMillimetres: 1.5, solid: 12.1, flexible: 13.3 },
  { squareMillimetres: 2.5, solid: 7.41, flexible: 7.98 },
  { squareMillimetres: 4, solid: 4.61, flexible: 4.95 },
];

/** Metric sizes that are commonly sold, thin to thick, square metres. Source: common-practice. */
export const METRIC_SIZES: readonly number[] = WIRE_TABLE.map(({ squareMillimetres }) => squareMillimetres / 1e6);
/**
 * Ohms a metre of one conductor at `degrees` Celsius. Metric sizes: the most that IEC 60228 allows; sizes between its rows:
 * between them on a double-logarithmic scale; beyond its ends: copper with the surcharge of the end row. American gauges:
 * copper over area, as their tables have it. Area > 0, degrees above -200; never negative. Sources: iec-60228, awg-tables,
 * copper-standard.
 */
export function ohmsPerMetre({ area, make }: Conductor, degrees = TABLE_DEGREES): number {
  const warmer = 1 + COPPER_RISE * (degrees - TABLE_DEGREES);
  if (gaugeOf(area) !== undefined) return (make === 'solid' ? 1 : GAUGE_STRANDING) * (COPPER / area) * warmer;
  return tabled(area * 1e6, make) * 1e-3 * warmer;
}

/** Volts that a pair of these wires (metres, > 0) loses at a current (amperes, >= 0): out and back. Source: own-derivation. */
export const pairLoss = (wire: Conductor, length: number, amps: number): number =>
  2 * ohmsPerMetre(wire) * length * amps;

/** Metres of a pair of these wires that resist as much as a metre of track, both rails (ohms a metre of one rail). Source: own-derivation. */
export const pairLikeTrack = (wire: Conductor, rail: number): number => rail / ohmsPerMetre(wire);

// Ohms a kilometre. Straight lines through the logarithms keep a thicker wire from ever resisting more than a thinner one.
function tabled(squareMillimetres: number, make: Make): number {
  const above = WIRE_TABLE.findIndex((row) => row.squareMillimetres >= squareMillimetres);
  const thicker = WIRE_TABLE[above] ?? WIRE_TABLE.at(-1);
  const thinner = WIRE_TABLE[above - 1];
  if (thicker === undefined) return Number.POSITIVE_INFINITY;
  if (thinner === undefined || above < 0) return (thicker[make] * thicker.squareMillimetres) / squareMillimetres;
  const t =
    Math.log(squareMillimetres / thinner.squareMillimetres) /
    Math.log(thicker.squareMillimetres / thinner.squareMillimetres);
  return thinner[make] * (thicker[make] / thinner[make]) ** t;
}

/** Current density that small wires bear, amperes a square metre: 0.5 mm2 5 A, 0.75 mm2 7.5 A. Source: withheld-manuals, medium. */
export const HEATING_DENSITY = 10e6;

/**
 * Most current a wire should carry for its own heat, amperes; says nothing about lost volts. 10 A for each square
 * millimetre, and never above the 10 A that NEM 609 allows a supply for models at all. Area in square metres, >= 0.
 */
export function heatingLimit(area: number): number {
  return Math.min(HEATING_DENSITY * area, MODEL_SUPPLY_LIMIT.amps);
}

export type RailKind =
  | 'code-55'
  | 'code-70'
  | 'code-80'
  | 'code-83'
  | 'code-100'
  | 'code-100-brass'
  | 'code-100-steel'
  /** Of garden and other large railways: code 200 to 250 in nickel silver, code 250 to 332 in brass and stainless steel. */
  | 'large-nickel-silver'
  | 'large-brass'
  | 'large-steel';

export interface RailOhms {
  /** One rail, ohms a metre: the samples that were found, from the least to the most. Double it for the loop. */
  readonly ohmsPerMetre: Span;
  readonly sure: Sureness;
}

/** One rail of nickel silver of code 100, then of code 70, then one of brass of code 100, ohms a metre. Source: rail-samples. */
const CODE_100: Span = { from: 0.0571, to: 0.076 };
const CODE_70 = 0.206;
const BRASS_100 = 0.0189;

/** Ohms a metre of a rail of the same metal but another height (its code): its metal grows as the square of it. Source: own-derivation. */
const atCode = (ohms: number, of: number, code: number): number => ohms * (of / code) ** 2;

/** Metal of one rail of code 100, square metres: brass of 28 % IACS that has `BRASS_100`. Source: own-derivation. */
const AREA_100 = COPPER / 0.28 / BRASS_100;
/** Rail steel and stainless steel, ohm metres. Source: from-memory. */
const STEEL: Span = { from: 0.13e-6, to: 0.2e-6 };
const STAINLESS = 0.72e-6;

/**
 * One rail. Code 100, 83, 70 and brass: single samples that differ by a third, so a person's own figure beats them (rail-samples). The
 * others are reckoned from these by their height, or from their metal, and hold no better than that. Sources: rail-samples, own-derivation,
 * from-memory.
 */
export const RAILS: Readonly<Record<RailKind, RailOhms>> = {
  'code-55': {
    ohmsPerMetre: { from: atCode(CODE_100.from, 100, 55), to: atCode(CODE_70, 70, 55) },
    sure: 'memory',
  },
  'code-70': { ohmsPerMetre: { from: CODE_70, to: CODE_70 }, sure: 'sourced' },
  'code-80': {
    ohmsPerMetre: { from: atCode(CODE_100.from, 100, 80), to: atCode(CODE_100.to, 100, 80) },
    sure: 'memory',
  },
  'code-83': { ohmsPerMetre: { from: 0.108, to: 0.108 }, sure: 'sourced' },
  'code-100': { ohmsPerMetre: CODE_100, sure: 'sourced' },
  'code-100-brass': { ohmsPerMetre: { from: BRASS_100, to: BRASS_100 }, sure: 'sourced' },
  'code-100-steel': { ohmsPerMetre: { from: STEEL.from / AREA_100, to: STEEL.to / AREA_100 }, sure: 'memory' },
  'large-nickel-silver': {
    ohmsPerMetre: { from: atCode(CODE_100.from, 100, 250), to: atCode(CODE_100.to, 100, 200) },
    sure: 'memory',
  },
  'large-brass': {
    ohmsPerMetre: { from: atCode(BRASS_100, 100, 332), to: atCode(BRASS_100, 100, 250) },
    sure: 'memory',
  },
  'large-steel': {
    ohmsPerMetre: { from: atCode(STAINLESS / AREA_100, 100, 332), to: atCode(STAINLESS / AREA_100, 100, 250) },
    sure: 'memory',
  },
};

/** The rail that is usual at a scale, and the one that resists most of those that are common there. Source: common-practice. */
export const SCALE_RAILS: Readonly<Record<Scale, { readonly usual: RailKind; readonly thinnest: RailKind }>> = {
  z: { usual: 'code-55', thinnest: 'code-55' },
  n: { usual: 'code-80', thinnest: 'code-55' },
  tt: { usual: 'code-83', thinnest: 'code-55' },
  h0: { usual: 'code-83', thinnest: 'code-70' },
  '0': { usual: 'code-100', thinnest: 'code-100' },
  '1': { usual: 'large-brass', thinnest: 'large-steel' },
};

/** Ohms a metre of one rail to reckon with: the most that was measured on its kind, or what the person gives (> 0). */
export function railOhms(rail: RailKind | number): number {
  return typeof rail === 'number' ? rail : RAILS[rail].ohmsPerMetre.to;
}
