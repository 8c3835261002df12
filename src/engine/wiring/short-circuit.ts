// Will the protection trip? How much current a short circuit draws, what a fault that does not trip turns into heat, the
// harmless test with a resistor that comes before the coin, and how a breaker has to stand under its stage.
import type { Scale } from '../power/index.ts';
import { DRAWS } from '../power/index.ts';
import type { Span } from '../units.ts';
import type { Working } from '../workings.ts';
import { working } from '../workings.ts';

/** A short circuit has to draw this many times the trip current, so that a dirty contact still trips. Source: common-practice. */
export const SHORT_MARGIN = 1.5;
/** A breaker trips at no more than this share of its stage's trip current. Source: common-practice. */
export const BREAKER_SHARE = 0.7;
/** A breaker opens within this, seconds: slower than the inrush, faster than any stage. Source: common-practice. */
export const BREAKER_TIME: Span = { from: 0.005, to: 0.03 };
/** Smallest step that a cheap meter shows on its 200 V range, volts. Source: from-memory. */
export const METER_STEP = 0.1;
/** Load-test resistors: kept below this share of the trip current. Source: common-practice. */
export const LOAD_SHARE = 0.5;
/** Power resistors that are commonly sold: ohms, and watts they bear. Source: common-practice. */
export const RESISTORS = {
  ohms: [4.7, 5.6, 6.8, 10, 15, 22, 33, 47, 68, 100],
  watts: [5, 10, 25, 50, 100],
} as const;
/** A resistor is bought for this many times the heat it makes. Source: common-practice. */
export const RESISTOR_MARGIN = 1.5;

/** What feeds the fault: no-load volts and everything in its loop, ohms; `limit` where a supply or stage holds the current back, amperes. */
export interface FaultLoop {
  readonly volts: number;
  readonly ohms: number;
  readonly limit?: number;
}

export type TripFinding = 'trips' | 'close' | 'does-not-trip';

export interface Prospective {
  /** What a dead short would draw, amperes; Infinity only for a loop without resistance and without limit. */
  readonly amps: number;
  readonly limitedBy: 'loop' | 'supply';
  readonly working: Working;
}

/** Current into a dead short: volts over ohms, never above the limit. Volts > 0, ohms >= 0, limit >= 0. Source: own-derivation. */
export function prospective({ volts, ohms, limit = Number.POSITIVE_INFINITY }: FaultLoop): Prospective {
  const byLoop = ohms > 0 ? volts / ohms : Number.POSITIVE_INFINITY;
  const amps = Math.min(byLoop, limit);
  const inputs = [
    ['volts', volts, 'V'],
    ['loop-ohms', ohms, 'ohm'],
    ...(Number.isFinite(limit) ? ([['supply-limit', limit, 'A']] as const) : []),
  ] as const;
  return {
    amps,
    limitedBy: limit < byLoop ? 'supply' : 'loop',
    working: working('prospective-current', amps, 'A', inputs, ['own-derivation']),
  };
}

/** A short has to draw this, amperes, to trip a protection of `trip` amperes surely. Source: common-practice. */
export const sureTrip = (trip: number): number => SHORT_MARGIN * trip;

/** Whether this current trips a protection of `trip` amperes (> 0): surely, only just, or not. At the trip current itself it does not. */
export function tripFinding(amps: number, trip: number, margin = SHORT_MARGIN): TripFinding {
  if (amps >= margin * trip) return 'trips';
  return amps > trip ? 'close' : 'does-not-trip';
}

/** Most ohms in the loop at which a short still draws `margin` times the trip current. Volts and trip > 0. Formula: own-derivation. */
export function loopLimit(volts: number, trip: number, margin = SHORT_MARGIN): Working {
  const inputs = [
    ['volts', volts, 'V'],
    ['trip', trip, 'A'],
    ['margin', margin, 'times'],
  ] as const;
  return working('loop-limit', volts / (margin * trip), 'ohm', inputs, ['own-derivation', 'common-practice']);
}

export interface FaultHeat {
  /** Most heat a fault can make without tripping, watts. */
  readonly watts: number;
  /** The current at which it does, amperes. */
  readonly atAmps: number;
  /** Heat of a fault that draws just the trip current, watts; 0 where the loop cannot carry that much. */
  readonly justBelowTrip: number;
  readonly working: Working;
}

/**
 * Worst heat at a fault that never trips: I (V - I R) has its top at V/2R, so the worst current is the trip current or V/2R,
 * whichever is less; a supply that limits below both is worst at its limit. Volts > 0, ohms >= 0, trip > 0. Source:
 * own-derivation.
 */
export function worstFaultHeat({ volts, ohms, limit = Number.POSITIVE_INFINITY }: FaultLoop, trip: number): FaultHeat {
  const top = ohms > 0 ? volts / (2 * ohms) : Number.POSITIVE_INFINITY;
  const atAmps = Math.min(trip, top, limit);
  const heat = (amps: number): number => amps * (volts - amps * ohms);
  const watts = heat(atAmps);
  const inputs = [
    ['volts', volts, 'V'],
    ['loop-ohms', ohms, 'ohm'],
    ['trip', trip, 'A'],
    ['worst-amps', atAmps, 'A'],
  ] as const;
  return {
    watts,
    atAmps,
    justBelowTrip: trip <= limit ? Math.max(0, heat(trip)) : 0,
    working: working('fault-heat', watts, 'W', inputs, ['own-derivation']),
  };
}

/** The same at the weakest place of a track, where most heat can stay unnoticed. Trip > 0. Source: own-derivation. */
export function faultHeatAlong({ volts, limit, weakest }: ShortAlong, trip: number): FaultHeat {
  return worstFaultHeat({ volts, ohms: weakest.ohms, limit }, trip);
}

/** A piece of track, metres from its start. Ohms of the whole loop at the share t of it: constant + linear t + square t^2, square <= 0. */
export interface TrackPiece {
  readonly from: number;
  readonly to: number;
  readonly constant: number;
  readonly linear: number;
  readonly square: number;
}

/** What a short circuit meets along a track. */
export interface ShortAlong {
  readonly kind: 'along';
  /** No-load volts, and the most the supply or stage passes, amperes; Infinity where nothing but the loop limits. */
  readonly volts: number;
  readonly limit: number;
  /** Resistance of the short itself, ohms. */
  readonly faultOhms: number;
  readonly pieces: readonly TrackPiece[];
  /** Along the track in order, metres and amperes. */
  readonly points: readonly { readonly at: number; readonly amps: number }[];
  /** Where a short draws least; `ohms` is the loop there without the short's own. */
  readonly weakest: { readonly at: number; readonly amps: number; readonly ohms: number };
}

/** Part of the track, metres from its start, where a short draws too little. */
export interface WeakStretch {
  readonly from: number;
  readonly to: number;
  readonly finding: 'close' | 'does-not-trip';
}

/**
 * Where along the track a coin would not trip the protection, or only just: exact ends, from the closed form along each
 * section. In order of place; empty where everything trips with the margin. Trip > 0.
 */
export function weakStretches(along: ShortAlong, trip: number, margin = SHORT_MARGIN): WeakStretch[] {
  const dead = stretchesBelow(along, trip);
  const weak = stretchesBelow(along, margin * trip);
  const close = weak.flatMap((stretch) => without(stretch, dead));
  return [
    ...close.map((stretch) => ({ ...stretch, finding: 'close' as const })),
    ...dead.map((stretch) => ({ ...stretch, finding: 'does-not-trip' as const })),
  ].sort((a, b) => a.from - b.from || a.to - b.to);
}

// Where the current is `amps` or less; the resistance over a section is a parabola open downwards.
function stretchesBelow({ volts, limit, faultOhms, pieces }: ShortAlong, amps: number): Span[] {
  const most = limit <= amps ? Number.NEGATIVE_INFINITY : volts / amps - faultOhms;
  const found: Span[] = [];
  for (const { from, to, constant, linear, square } of pieces) {
    const part = above(constant - most, linear, square);
    if (part === undefined) continue;
    join(found, { from: from + part.from * (to - from), to: from + part.to * (to - from) });
  }
  return found;
}

function join(found: Span[], next: Span): void {
  const last = found.at(-1);
  if (last === undefined || next.from > last.to + 1e-9) found.push(next);
  else found[found.length - 1] = { from: last.from, to: Math.max(last.to, next.to) };
}

/** The part of 0..1 where c + b t + a t^2 >= 0, for a <= 0; undefined where there is none. */
function above(c: number, b: number, a: number): Span | undefined {
  if (c === Number.POSITIVE_INFINITY) return { from: 0, to: 1 };
  const roots = rootsOf(c, b, a);
  if (roots === undefined) return c + b / 2 + a / 4 >= 0 ? { from: 0, to: 1 } : undefined;
  const from = Math.max(0, roots.from);
  const to = Math.min(1, roots.to);
  return from < to ? { from, to } : undefined;
}

// Ends of the range where the parabola is not negative; undefined where it never changes sign.
function rootsOf(c: number, b: number, a: number): Span | undefined {
  if (Math.abs(a) < 1e-15) {
    if (Math.abs(b) < 1e-15) return undefined;
    return b > 0 ? { from: -c / b, to: Number.POSITIVE_INFINITY } : { from: Number.NEGATIVE_INFINITY, to: -c / b };
  }
  const inside = b * b - 4 * a * c;
  if (inside < 0) return undefined;
  // The form that loses no digits where the two terms of the usual one nearly cancel.
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(inside));
  const [from = 0, to = 0] = [q / a, q === 0 ? 0 : c / q].sort((left, right) => left - right);
  return { from, to };
}

function without(whole: Span, holes: readonly Span[]): Span[] {
  const left: Span[] = [];
  let from = whole.from;
  for (const hole of holes) {
    if (hole.to < whole.from || hole.from > whole.to) continue;
    if (hole.from > from) left.push({ from, to: hole.from });
    from = Math.max(from, hole.to);
  }
  if (from < whole.to) left.push({ from, to: whole.to });
  return left;
}

export type LoadTestResult =
  | {
      readonly kind: 'measured';
      /** What a dead short would draw there, amperes. */
      readonly amps: number;
      /** The same with the meter's step for and against; `to` is absent where the drop is smaller than the step. */
      readonly least: number;
      readonly most?: number;
      /** Resistance of everything before the resistor, ohms. */
      readonly ohms: number;
      /** Through the resistor, amperes. */
      readonly loadAmps: number;
      readonly working: Working;
    }
  | {
      readonly kind: 'no-solution';
      readonly because: 'no-drop' | 'no-volts' | 'not-a-number';
      readonly parts: string[];
    };

/**
 * The harmless test: V0 without and V1 with a resistor across the rails, read on the same meter. I_sc = I_L x V0/(V0 - V1) with
 * I_L = V1/R, where a meter that reads a constant share too high or low cancels but for I_L. Volts, ohms; `step` of the meter in volts. No
 * answer where the drop is less than half a step or nothing is left. Source: loop-test.
 */
export function shortFromLoadTest(
  { open, loaded, ohms }: { readonly open: number; readonly loaded: number; readonly ohms: number },
  step = METER_STEP,
): LoadTestResult {
  const wrong = Object.entries({ open, loaded, ohms }).filter(([, value]) => !(value >= 0 && Number.isFinite(value)));
  if (wrong.length > 0)
    return noTest(
      'not-a-number',
      wrong.map(([name]) => name),
    );
  if (ohms === 0) return noTest('not-a-number', ['ohms']);
  if (loaded === 0 || open === 0) return noTest('no-volts', [open === 0 ? 'open' : 'loaded']);
  const drop = open - loaded;
  if (drop <= step / 2) return noTest('no-drop', ['open', 'loaded']);
  const loadAmps = loaded / ohms;
  const amps = (loadAmps * open) / drop;
  const inputs = [
    ['open-volts', open, 'V'],
    ['loaded-volts', loaded, 'V'],
    ['load-ohms', ohms, 'ohm'],
  ] as const;
  return {
    kind: 'measured',
    amps,
    least: (loadAmps * open) / (drop + step),
    ...(drop > step ? { most: (loadAmps * open) / (drop - step) } : {}),
    ohms: drop / loadAmps,
    loadAmps,
    working: working('load-test', amps, 'A', inputs, ['loop-test']),
  };
}

function noTest(because: 'no-drop' | 'no-volts' | 'not-a-number', parts: string[]): LoadTestResult {
  return { kind: 'no-solution', because, parts };
}

export interface LoadResistor {
  readonly ohms: number;
  /** Rating to buy, watts. */
  readonly rating: number;
  /** What it draws and the heat it makes at the stage, amperes and watts. */
  readonly amps: number;
  readonly watts: number;
}

/**
 * The resistor for the harmless test: the smallest common one that stays below half the trip current, with a rating above its
 * heat; undefined where none is sold. Volts and trip (amperes) > 0. Source: common-practice.
 */
export function chooseResistor(volts: number, trip: number): LoadResistor | undefined {
  const ohms = RESISTORS.ohms.find((one) => volts / one < LOAD_SHARE * trip);
  if (ohms === undefined) return undefined;
  const watts = volts ** 2 / ohms;
  const rating = RESISTORS.watts.find((one) => one >= RESISTOR_MARGIN * watts);
  return rating === undefined ? undefined : { ohms, rating, amps: volts / ohms, watts };
}

/** Volts a meter should show across the resistor (ohms > 0) behind a loop of these ohms. Source: own-derivation. */
export function loadedVolts({ volts, ohms }: FaultLoop, resistor: number): number {
  return (volts * resistor) / (resistor + ohms);
}

/** Least volts across the resistor at which a dead short there would still draw `margin` times the trip current. All > 0. */
export function leastLoadedVolts(volts: number, trip: number, resistor: number, margin = SHORT_MARGIN): number {
  return loadedVolts({ volts, ohms: volts / (margin * trip) }, resistor);
}

export interface Protection {
  /** Trip current, amperes, and time from short to off, seconds. */
  readonly trip: number;
  readonly seconds: number;
}

export interface Grading {
  readonly finding: 'well-graded' | 'not-lower' | 'not-faster' | 'neither';
  /** Highest trip current the breaker should have, amperes. */
  readonly tripAtMost: number;
  /** Time it should open in, seconds. */
  readonly seconds: Span;
  /** Opens before the inrush of decoders is over: it may trip on nothing. */
  readonly tripsOnInrush: boolean;
}

/** Whether a breaker opens before its stage does: it has to be lower and faster, either alone is not enough. Source: common-practice. */
export function gradeBreaker(breaker: Protection, stage: Protection): Grading {
  const tripAtMost = BREAKER_SHARE * stage.trip;
  const lower = breaker.trip <= tripAtMost + 1e-9;
  const faster = breaker.seconds <= BREAKER_TIME.to + 1e-9 && breaker.seconds < stage.seconds;
  return {
    finding: gradingOf(lower, faster),
    tripAtMost,
    seconds: { from: BREAKER_TIME.from, to: Math.min(BREAKER_TIME.to, stage.seconds) },
    tripsOnInrush: breaker.seconds < BREAKER_TIME.from,
  };
}

function gradingOf(lower: boolean, faster: boolean): Grading['finding'] {
  if (lower) return faster ? 'well-graded' : 'not-faster';
  return faster ? 'not-lower' : 'neither';
}

/** Longest time from a dead short to off, seconds, at this trip current: 0.5 s up to 3 A, 0.1 s above. Source: common-practice. */
export function longestTripTime(trip: number): number {
  return trip <= 3 ? 0.5 : 0.1;
}

export interface TripLevel {
  readonly finding: 'usual' | 'above-usual' | 'above-ceiling';
  /** What districts of this scale usually have, and the most its wheels and contacts should see, amperes. */
  readonly usual: Span;
  readonly ceiling: number;
}

/** Whether a trip current (amperes) suits the scale's wheels, pick-ups and decoder wires. Source: common-practice. */
export function tripLevel(scale: Scale, trip: number): TripLevel {
  const { trip: usual, tripCeiling: ceiling } = DRAWS[scale];
  if (trip > ceiling) return { finding: 'above-ceiling', usual, ceiling };
  return { finding: trip > usual.to ? 'above-usual' : 'usual', usual, ceiling };
}
