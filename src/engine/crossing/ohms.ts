// What resists a current that runs from one stage through a train into another: the parts of the loop and their sum.

import type { Span } from '../units.ts';
import { working } from '../workings.ts';
import type { CrossingProblem, Reckoned } from './range.ts';
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

export interface OhmsPart {
  /** One piece, ohms. */
  readonly ohms: Span;
  /** How many of them stand in the loop of an ordinary crossing. */
  readonly usually: number;
  readonly source: string;
}

/** Parts of the loop. A bus is 5 m long, two wires of 1.5 mm2, with its feeders; rails are 1 m of both. */
export const OHMS_PARTS = {
  'switching-stage': { ohms: { from: 0.05, to: 0.3 }, usually: 2, source: 'from-memory' },
  'bipolar-stage': { ohms: { from: 0.1, to: 0.1 }, usually: 0, source: 'from-memory' },
  'regulated-supply': { ohms: { from: 0.02, to: 0.1 }, usually: 1, source: 'from-memory' },
  'unregulated-supply': { ohms: { from: 0.5, to: 2 }, usually: 0, source: 'from-memory' },
  bus: { ohms: { from: 0.18, to: 0.18 }, usually: 1, source: 'iec-60228' },
  rails: { ohms: { from: 0.11, to: 0.4 }, usually: 1, source: 'rail-samples' },
  'clean-contacts': { ohms: { from: 0.05, to: 0.3 }, usually: 4, source: 'from-memory' },
  'dirty-wheel': { ohms: { from: 1, to: 10 }, usually: 0, source: 'from-memory' },
  'locomotive-leads': { ohms: { from: 0.05, to: 0.2 }, usually: 1, source: 'own-derivation' },
} as const satisfies Readonly<Record<string, OhmsPart>>;
export type OhmsPartId = keyof typeof OHMS_PARTS;

const PART_IDS: readonly OhmsPartId[] = [
  'switching-stage',
  'bipolar-stage',
  'regulated-supply',
  'unregulated-supply',
  'bus',
  'rails',
  'clean-contacts',
  'dirty-wheel',
  'locomotive-leads',
];

/**
 * Sum of the parts, ohms; `counts` says how many of a part there are where it is not the usual number. Every count >= 0.
 * The usual value is the geometric mean of the ends.
 */
export function crossingOhms(
  counts: Readonly<Partial<Record<OhmsPartId, number>>> = {},
): (Reckoned & { readonly kind: 'ohms' }) | CrossingProblem {
  const rows = PART_IDS.map((id) => ({ id, part: OHMS_PARTS[id], count: counts[id] ?? OHMS_PARTS[id].usually }));
  const problem = problemIn(rows.map(({ id, count }) => [id, count, 'not-negative']));
  if (problem !== undefined) return problem;
  const there = rows.filter(({ count }) => count > 0);
  const sum = (end: 'from' | 'to') => there.reduce((total, { part, count }) => total + part.ohms[end] * count, 0);
  const span = { from: sum('from'), to: sum('to') };
  if (span.from === 0) return { kind: 'no-solution', because: 'not-positive', parts: ['ohms'] };
  return {
    kind: 'ohms',
    span,
    typical: typicalOhms(span),
    working: working(
      'crossing-ohms',
      span.to,
      'ohm',
      there.map(({ id, part, count }) => [id, part.ohms.to * count, 'ohm']),
      [...new Set(there.map(({ part }) => part.source))],
    ),
  };
}

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
