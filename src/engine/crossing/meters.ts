// What a meter and two lamps show across a gap, and what can be told from it.

import type { Span } from '../units.ts';
import type { Working } from '../workings.ts';
import { working } from '../workings.ts';
import type { CrossingPhase } from './loops.ts';
import type { CrossingProblem } from './range.ts';
import { problemIn } from './range.ts';

/**
 * `averaging`: the usual hand-held, mean of the size, marked in r.m.s. of a sine. `true-rms`: one that is good up to the frequencies
 * of a track signal, which few hand-helds are. `cheapest`: averaging, behind a diode and with one high range only.
 */
export const METER_KINDS = ['averaging', 'true-rms', 'cheapest'] as const;
export type MeterKind = (typeof METER_KINDS)[number];

/** R.m.s. of a sine over its mean size: what an averaging meter multiplies by. Source: own-derivation, moving-average-meter. */
export const SINE_FACTOR = Math.PI / (2 * Math.SQRT2);
/** Below this the reading of the cheapest meters means nothing, volts. Source: from-memory. */
export const CHEAPEST_LEAST = 1;
/** The finest share of the rail voltage that a reading across the gap may be judged by. Source: common-practice. */
export const FINEST_SHARE = 0.2;

/** A voltage and the share of the time for which it stands. */
export interface WavePart {
  readonly volts: number;
  readonly share: number;
}

export type GapReading =
  | { readonly kind: 'shows'; readonly volts: number }
  /** Too small for this meter. */
  | { readonly kind: 'means-nothing'; readonly below: number }
  /** Nothing ties the two sides together: any reading, often tens of volts through filter capacitors. */
  | { readonly kind: 'floats' }
  /** What stands on a dead part decides. */
  | { readonly kind: 'between'; readonly volts: Span };

/** What a meter makes of a wave whose shares add up to 1. */
export function meterShows(meter: MeterKind, wave: readonly WavePart[]): GapReading {
  const volts = readingOf(meter, wave);
  return meter === 'cheapest' && volts < CHEAPEST_LEAST
    ? { kind: 'means-nothing', below: CHEAPEST_LEAST }
    : { kind: 'shows', volts };
}

/** What a meter shows from rail to rail of a part with so many volts, >= 0. */
export const railsRead = (meter: MeterKind, volts: number): GapReading => meterShows(meter, square(volts));

function readingOf(meter: MeterKind, wave: readonly WavePart[]): number {
  if (meter === 'true-rms') return Math.sqrt(wave.reduce((sum, { volts, share }) => sum + volts ** 2 * share, 0));
  return SINE_FACTOR * wave.reduce((sum, { volts, share }) => sum + Math.abs(volts) * share, 0);
}

/** How the two sides are tied together while one measures; `other-pair`: the other two rails joined, by a lamp or for good. */
export type GapTie = 'floating' | 'other-pair' | 'joined-negatives';

export interface GapMeasurement {
  /** Rail volts of both sides, > 0. */
  readonly nearVolts: number;
  readonly farVolts: number;
  readonly phase: CrossingPhase;
  readonly tie: GapTie;
  /** A dead far part carries nothing of its own. */
  readonly farDead?: boolean;
  readonly meter: MeterKind;
  /** By how much the far side switches later, seconds >= 0, and the length of half a bit, seconds > 0. */
  readonly skew?: number;
  readonly halfBit?: number;
}

export interface GapReadings {
  readonly kind: 'readings';
  /** Rail to rail on either side. */
  readonly near: GapReading;
  readonly far: GapReading;
  /** Rail A to rail A across the gap, and rail A of the near side to rail B of the far side. */
  readonly sameRail: GapReading;
  readonly diagonal: GapReading;
  /** What the comparison says of these readings. */
  readonly comparison: PhaseComparison;
  readonly workings: readonly Working[];
}

/** Half of a 1-bit, seconds. Source: nmra-s-9-1. */
export const ONE_HALF_BIT = 58e-6;

/**
 * All four readings at one gap, for square waves. Source: own-derivation.
 */
export function gapReadings(input: GapMeasurement): GapReadings | CrossingProblem {
  const { nearVolts, farVolts, meter, skew = 0, halfBit = ONE_HALF_BIT } = input;
  const problem = problemIn([
    ['near.volts', nearVolts, 'positive'],
    ['far.volts', farVolts, 'positive'],
    ['skew', skew, 'not-negative'],
    ['half-bit', halfBit, 'positive'],
  ]);
  if (problem !== undefined) return problem;
  const near = meterShows(meter, square(nearVolts));
  const far = meterShows(meter, square(input.farDead === true ? 0 : farVolts));
  const sameRail = across(input, 'same-rail');
  const diagonal = across(input, 'diagonal');
  const given = [
    ['near-volts', nearVolts, 'V'],
    ['far-volts', farVolts, 'V'],
    ['skew', skew, 's'],
    ['half-bit', halfBit, 's'],
  ] as const;
  const rows = [
    ['crossing-meter-same-rail', sameRail],
    ['crossing-meter-diagonal', diagonal],
  ] as const;
  return {
    kind: 'readings',
    near,
    far,
    sameRail,
    diagonal,
    comparison: comparisonOf(near, far, sameRail, diagonal),
    workings: rows.flatMap(([formula, reading]) =>
      reading.kind === 'shows'
        ? [working(formula, reading.volts, 'V', given, ['own-derivation', 'moving-average-meter'])]
        : [],
    ),
  };
}

const square = (volts: number): readonly WavePart[] => [
  { volts, share: 0.5 },
  { volts: -volts, share: 0.5 },
];

function across(input: GapMeasurement, where: 'same-rail' | 'diagonal'): GapReading {
  if (input.tie === 'floating') return { kind: 'floats' };
  if (input.farDead === true) return acrossDead(input, where);
  return meterShows(input.meter, gapWave(input, where));
}

// The dead part's rail A hangs on its rail B by whatever stands there: by nothing, or by a lamp or a decoder.
function acrossDead({ nearVolts, tie, meter }: GapMeasurement, where: 'same-rail' | 'diagonal'): GapReading {
  const whole = readingOf(meter, square(nearVolts));
  if (tie === 'other-pair' && where === 'diagonal') return { kind: 'shows', volts: whole };
  return { kind: 'between', volts: { from: 0, to: whole } };
}

/** The voltage between two rails across the gap, part by part of the time. Volts and shares as in the measurement. */
export function gapWave(input: GapMeasurement, where: 'same-rail' | 'diagonal'): WavePart[] {
  const { skew = 0, halfBit = ONE_HALF_BIT } = input;
  const late = Math.min(1, skew / halfBit);
  const agree = input.phase === 'in-phase';
  return [true, false].flatMap((nearUp) => [
    { volts: voltsBetween(input, where, nearUp, agree ? nearUp : !nearUp), share: (1 - late) / 2 },
    { volts: voltsBetween(input, where, nearUp, agree ? !nearUp : nearUp), share: late / 2 },
  ]);
}

// Counted from the near side's link minus, while rail A of a side is up (at its plus) or down. What ties the sides together says how
// far the other side's minus stands from it.
function voltsBetween(input: GapMeasurement, where: 'same-rail' | 'diagonal', nearUp: boolean, farUp: boolean): number {
  const near = railVolts(input.nearVolts, nearUp);
  const far = railVolts(input.farVolts, farUp);
  const shift = input.tie === 'other-pair' ? near.b - far.b : 0;
  return near.a - (where === 'same-rail' ? far.a : far.b) - shift;
}

const railVolts = (volts: number, up: boolean) => (up ? { a: volts, b: 0 } : { a: 0, b: volts });

export type PhaseComparison =
  | { readonly kind: 'in-phase' }
  | { readonly kind: 'reversed' }
  | {
      readonly kind: 'cannot-tell';
      readonly because: 'not-a-number' | 'dead-side' | 'both-near-nothing' | 'too-alike' | 'nothing-ties-the-sides';
    };

/** One reading must be this many times the other; reversed with the other pair joined gives about twice. Source: own-derivation. */
export const CLEARLY_LARGER = 1.5;

/**
 * In phase or reversed, from two readings across the gap with the same meter: rail A to rail A, and rail A to the other side's
 * rail B. No threshold in volts is needed, and the meter's own error drops out. `railToRail`, the readings on either side, tell
 * a dead part, which otherwise looks in phase. Volts >= 0. Source: own-derivation.
 */
export function comparePhase(
  sameRail: number,
  diagonal: number,
  railToRail?: readonly [near: number, far: number],
): PhaseComparison {
  const all = [sameRail, diagonal, ...(railToRail ?? [])];
  if (!all.every((volts) => Number.isFinite(volts) && volts >= 0)) return cannotTell('not-a-number');
  const live = Math.max(...(railToRail ?? [0]));
  if (railToRail !== undefined && Math.min(...railToRail) <= FINEST_SHARE * live) return cannotTell('dead-side');
  const larger = Math.max(sameRail, diagonal);
  if (larger < CHEAPEST_LEAST || larger <= FINEST_SHARE * live) return cannotTell('both-near-nothing');
  if (larger < CLEARLY_LARGER * Math.min(sameRail, diagonal)) return cannotTell('too-alike');
  return { kind: sameRail < diagonal ? 'in-phase' : 'reversed' };
}

const cannotTell = (because: Extract<PhaseComparison, { kind: 'cannot-tell' }>['because']): PhaseComparison => ({
  kind: 'cannot-tell',
  because,
});

function comparisonOf(near: GapReading, far: GapReading, sameRail: GapReading, diagonal: GapReading): PhaseComparison {
  if (sameRail.kind === 'floats' || diagonal.kind === 'floats') return cannotTell('nothing-ties-the-sides');
  return comparePhase(readOff(sameRail), readOff(diagonal), [readOff(near), readOff(far)]);
}

/** What a person would write down. Readings without a value stand beside a dead side alone, which is told first. */
const readOff = (reading: GapReading): number => (reading.kind === 'shows' ? reading.volts : 0);
