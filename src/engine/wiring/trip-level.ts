// Which trip current suits a scale.
import type { Scale } from '../power/index.ts';
import { DRAWS } from '../power/index.ts';
import type { Span } from '../units.ts';

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
