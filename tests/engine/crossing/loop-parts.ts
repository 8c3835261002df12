// What the resistance of the loop through a train is made of: where the engine's range of it comes from.
import type { Span } from '../../../src/engine/units.ts';

interface LoopPart {
  /** One piece, ohms. */
  readonly ohms: Span;
  /** How many of them stand in the loop of an ordinary crossing. */
  readonly usually: number;
}

/** Sources: bus iec-60228, rails rail-samples, leads own-derivation, all others from-memory. A bus is 5 m long, two wires of 1.5 mm2, with its feeders; rails are 1 m of both. */
const LOOP_PARTS = {
  'switching-stage': { ohms: { from: 0.05, to: 0.3 }, usually: 2 },
  'bipolar-stage': { ohms: { from: 0.1, to: 0.1 }, usually: 0 },
  'regulated-supply': { ohms: { from: 0.02, to: 0.1 }, usually: 1 },
  'unregulated-supply': { ohms: { from: 0.5, to: 2 }, usually: 0 },
  bus: { ohms: { from: 0.18, to: 0.18 }, usually: 1 },
  rails: { ohms: { from: 0.11, to: 0.4 }, usually: 1 },
  'clean-contacts': { ohms: { from: 0.05, to: 0.3 }, usually: 4 },
  'dirty-wheel': { ohms: { from: 1, to: 10 }, usually: 0 },
  'locomotive-leads': { ohms: { from: 0.05, to: 0.2 }, usually: 1 },
} as const satisfies Readonly<Record<string, LoopPart>>;

type PartId = keyof typeof LOOP_PARTS;

/** Sum of the parts, ohms; `counts` says how many of a part there are where it is not the usual number. */
export function loopOhms(counts: Readonly<Partial<Record<PartId, number>>> = {}): Span {
  const count = new Map<string, number>(Object.entries(counts));
  const rows = Object.entries(LOOP_PARTS).map(([id, { ohms, usually }]) => ({
    ohms,
    pieces: count.get(id) ?? usually,
  }));
  const sum = (end: 'from' | 'to') => rows.reduce((total, { ohms, pieces }) => total + ohms[end] * pieces, 0);
  return { from: sum('from'), to: sum('to') };
}
