// Two equal lamps, one across each rail's gap: a phase test without a meter.
import type { CommonReference, CrossingPhase } from './loops.ts';
import type { CrossingProblem } from './range.ts';
import { problemIn } from './range.ts';

/** A lamp's look by its volts as a share of the rail voltage: up to here dark, faint, lit; over-bright beyond. Source: from-memory. */
export const LAMP_SHARES = { dark: 0.05, faint: 1 / 3, lit: 1.5 } as const;

export type LampLook = 'dark' | 'faint' | 'lit' | 'over-bright';

export interface TwoLamps {
  readonly kind: 'lamps';
  /** Effective volts of the lamp over the gap of rail A and of rail B. A common rail is rail B. */
  readonly railA: number;
  readonly railB: number;
  readonly lookA: LampLook;
  readonly lookB: LampLook;
}

/**
 * What two equal lamps show. Volts of both sides > 0, both proven live. Source: own-derivation.
 */
export function twoLamps(
  nearVolts: number,
  farVolts: number,
  phase: CrossingPhase,
  reference: CommonReference,
): TwoLamps | CrossingProblem {
  const problem = voltsProblem(nearVolts, farVolts);
  if (problem !== undefined) return problem;
  const whole = phase === 'in-phase' ? Math.abs(nearVolts - farVolts) : nearVolts + farVolts;
  const [railA, railB] = lampVolts(nearVolts, farVolts, whole, phase, reference);
  const usual = (nearVolts + farVolts) / 2;
  return { kind: 'lamps', railA, railB, lookA: lampLook(railA / usual), lookB: lampLook(railB / usual) };
}

/**
 * What one lamp over one gap shows: with floating stages nothing, even reversed, since nothing leads back. Volts > 0.
 * @keptFor F what one lamp shows, and why it proves nothing where nothing is joined
 */
export function oneLamp(
  nearVolts: number,
  farVolts: number,
  phase: CrossingPhase,
  reference: CommonReference,
): LampLook | CrossingProblem {
  if (reference !== 'floating') {
    const both = twoLamps(nearVolts, farVolts, phase, reference);
    return both.kind === 'lamps' ? both.lookA : both;
  }
  return voltsProblem(nearVolts, farVolts) ?? 'dark';
}

const voltsProblem = (nearVolts: number, farVolts: number) =>
  problemIn([
    ['near.volts', nearVolts, 'positive'],
    ['far.volts', farVolts, 'positive'],
  ]);

function lampVolts(
  near: number,
  far: number,
  whole: number,
  phase: CrossingPhase,
  reference: CommonReference,
): readonly [railA: number, railB: number] {
  switch (reference) {
    // In series: equal lamps share what drives the loop.
    case 'floating':
      return [whole / 2, whole / 2];
    case 'common-rail':
      return [whole, 0];
    // Each lamp returns through the shared minus: in phase the difference for half of the time, reversed one side and then the other.
    case 'joined-negatives': {
      const each = phase === 'in-phase' ? whole / Math.SQRT2 : Math.sqrt((near ** 2 + far ** 2) / 2);
      return [each, each];
    }
  }
}

/** Look of a lamp by its volts over the usual rail volts, >= 0. */
export function lampLook(share: number): LampLook {
  if (share <= LAMP_SHARES.dark) return 'dark';
  if (share <= LAMP_SHARES.faint) return 'faint';
  return share <= LAMP_SHARES.lit ? 'lit' : 'over-bright';
}

export type LampFinding =
  | { readonly kind: 'in-phase' }
  | { readonly kind: 'reversed' }
  /** Reversed, and the rail of the dark lamp is joined somewhere: take the lamps off at once. */
  | { readonly kind: 'reversed-and-joined'; readonly rail: 'a' | 'b' }
  | { readonly kind: 'cannot-tell'; readonly because: 'only-one-lit' };

/**
 * Reads two equal lamps. Holds only after each side has lit a lamp by itself, else two dark lamps prove nothing.
 * @keptFor F what two lamps show before any vehicle stands across
 */
export function readTwoLamps(railA: LampLook, railB: LampLook): LampFinding {
  const bright = (look: LampLook) => look === 'lit' || look === 'over-bright';
  if (bright(railA) && bright(railB)) return { kind: 'reversed' };
  if (!(bright(railA) || bright(railB))) return { kind: 'in-phase' };
  if (railA === 'over-bright') return { kind: 'reversed-and-joined', rail: 'b' };
  if (railB === 'over-bright') return { kind: 'reversed-and-joined', rail: 'a' };
  return { kind: 'cannot-tell', because: 'only-one-lit' };
}
