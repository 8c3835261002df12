// The two stages switch at different instants: on every edge the rails across the gap stand against each other for a moment.

import type { Working, WorkingInput } from '../workings.ts';
import { working } from '../workings.ts';
import type { CrossingProblem } from './range.ts';
import { problemIn } from './range.ts';

/** Edges a second: all halves of 100 us, all of 58 us, and a usual mix of both. Source: nmra-s-9-1, the mix own-derivation. */
export const EDGES_PER_SECOND = { from: 1 / 100e-6, usual: 13_000, to: 1 / 58e-6 } as const;

/** Up to this long nothing is noticed, and from beyond the second the crossing is not usable, seconds. Source: own-derivation. */
export const SKEW_LIMITS = { fine: 1e-6, notUsable: 5e-6 } as const;

/** Skew over time constant below which the series takes over. Source: own-choice. */
const SHORT = 1e-3;

export type SkewFinding = 'fine' | 'noticeable' | 'not-usable';

export interface SkewInput {
  /** Volts across the loop while the stages disagree: the sum of both rail voltages, >= 0. */
  readonly volts: number;
  /** Loop resistance, ohms > 0. */
  readonly ohms: number;
  /** Loop inductance, henries >= 0. */
  readonly henries: number;
  /** How long they disagree, seconds >= 0. */
  readonly seconds: number;
  /** Edges a second > 0; the usual mix where left out. */
  readonly edges?: number;
}

export interface CrossingSkew {
  readonly kind: 'skew';
  readonly timeConstant: number;
  /** Current when the stages agree again: the peak, amperes. */
  readonly peak: number;
  /** Charge through the wheels while they disagree, coulombs, and with the current that runs on afterwards. */
  readonly charge: number;
  readonly wholeCharge: number;
  /** Heat in the loop while they disagree, joules; what the inductance still holds then; and both. */
  readonly energy: number;
  readonly stored: number;
  readonly wholeEnergy: number;
  /** Heat without any inductance: the most there can be, joules an edge. */
  readonly energyBound: number;
  /** Over all edges of a second: mean size of the current, amperes, and power, watts. */
  readonly meanCurrent: number;
  readonly power: number;
  readonly finding: SkewFinding;
  readonly workings: readonly Working[];
}

/**
 * Charge and energy of one skew and of a second of them.
 * Source: own-derivation (a step of voltage on resistance and inductance).
 */
export function crossingSkew(input: SkewInput): CrossingSkew | CrossingProblem {
  const { volts, ohms, henries, seconds, edges = EDGES_PER_SECOND.usual } = input;
  const problem = problemIn([
    ['volts', volts, 'not-negative'],
    ['ohms', ohms, 'positive'],
    ['henries', henries, 'not-negative'],
    ['seconds', seconds, 'not-negative'],
    ['edges', edges, 'positive'],
  ]);
  if (problem !== undefined) return problem;
  const full = volts / ohms;
  const timeConstant = henries / ohms;
  const { risen, flowing, heating } = courseOf(seconds, timeConstant);
  const peak = full * risen;
  const charge = full * flowing;
  const wholeCharge = full * seconds;
  const energy = full * volts * heating;
  const stored = (henries * peak ** 2) / 2;
  const wholeEnergy = energy + stored;
  const given: WorkingInput[] = [
    { name: 'volts', value: volts, unit: 'V' },
    { name: 'ohms', value: ohms, unit: 'ohm' },
    { name: 'henries', value: henries, unit: 'H' },
    { name: 'seconds', value: seconds, unit: 's' },
  ];
  const row = (formula: string, value: number, unit: Working['unit']): Working => ({
    ...working(formula, value, unit, [], ['own-derivation']),
    inputs: given,
  });
  const perSecond: WorkingInput = { name: 'edges', value: edges, unit: 'times' };
  const power = wholeEnergy * edges;
  return {
    kind: 'skew',
    timeConstant,
    peak,
    charge,
    wholeCharge,
    energy,
    stored,
    wholeEnergy,
    energyBound: full * volts * seconds,
    meanCurrent: wholeCharge * edges,
    power,
    finding: skewFinding(seconds),
    workings: [
      row('crossing-skew-current', peak, 'A'),
      row('crossing-skew-charge', wholeCharge, 'C'),
      row('crossing-skew-energy', energy, 'J'),
      { ...row('crossing-skew-power', power, 'W'), inputs: [...given, perSecond] },
    ],
  };
}

/** What a skew of this length does. Seconds >= 0. Edges of 2.4 V a microsecond hide about the first microsecond. */
export function skewFinding(seconds: number): SkewFinding {
  if (seconds <= SKEW_LIMITS.fine) return 'fine';
  return seconds <= SKEW_LIMITS.notUsable ? 'noticeable' : 'not-usable';
}

// With tau = L/R and x = t/tau: the share of the full current that is reached, 1 - e^-x; the time for which the full current would
// carry the same charge, tau (x - 1 + e^-x); and make the same heat, tau (x - 2 (1 - e^-x) + (1 - e^-2x)/2). A skew that is short
// against tau goes by the first terms of the series, where the differences would lose their digits.
function courseOf(seconds: number, timeConstant: number) {
  if (timeConstant === 0) return { risen: seconds > 0 ? 1 : 0, flowing: seconds, heating: seconds };
  const x = seconds / timeConstant;
  const risen = -Math.expm1(-x);
  if (x < SHORT) {
    const flowing = timeConstant * (x ** 2 / 2 - x ** 3 / 6 + x ** 4 / 24);
    return { risen, flowing, heating: timeConstant * (x ** 3 / 3 - x ** 4 / 4 + (7 * x ** 5) / 60) };
  }
  return {
    risen,
    flowing: timeConstant * (x - risen),
    heating: timeConstant * (x - 2 * risen - Math.expm1(-2 * x) / 2),
  };
}
