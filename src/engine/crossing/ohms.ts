// What resists a current that runs from one stage through a train into another.

import type { Span } from '../units.ts';
import type { CrossingProblem } from './range.ts';
import { problemIn } from './range.ts';

/** Range of a loop resistance, ohms, and what it usually is. */
export interface CrossingOhms extends Span {
  /** Between from and to; their geometric mean where left out. */
  readonly typical?: number;
}

/**
 * The whole loop, ohms: all-metal train with many wheels and a short bus, the usual one, a two-axle vehicle on dirty track.
 * Source: from-memory.
 */
export const CROSSING_OHMS = { from: 0.3, typical: 1, to: 3 } as const satisfies CrossingOhms;

/** What is wrong with a loop resistance, if anything: it is above 0, and what it usually is lies within its range. */
export function ohmsProblem(ohms: number | CrossingOhms): CrossingProblem | undefined {
  const problem = problemIn([['ohms', ohms, 'positive']]);
  if (problem !== undefined || typeof ohms === 'number') return problem;
  const { from, to } = ohms;
  const typical = typicalOhms(ohms);
  if (!Number.isFinite(typical)) return { kind: 'no-solution', because: 'not-a-number', parts: ['ohms.typical'] };
  const within = typical >= from && typical <= to;
  return within ? undefined : { kind: 'no-solution', because: 'wrong-order', parts: ['ohms.typical'] };
}

/** What a loop of this range usually has, ohms. */
export function typicalOhms(ohms: number | CrossingOhms): number {
  return typeof ohms === 'number' ? ohms : (ohms.typical ?? Math.sqrt(ohms.from * ohms.to));
}
