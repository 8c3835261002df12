// Quantities of a crossing are known as ranges. How they are read, checked, and kept with what they usually are.
import type { Span } from '../units.ts';
import { middle } from '../units.ts';
import type { Working } from '../workings.ts';

/** One value, or from and to, in SI. */
export type Ranged = number | Span;

/** A quantity that was worked out: its range, its usual value, and how the upper end of the range came about. */
export interface Reckoned {
  readonly span: Span;
  readonly typical: number;
  readonly working: Working;
}

/** No answer, and the parts of the input that are to blame, such as `lower.volts`. */
export interface CrossingProblem {
  readonly kind: 'no-solution';
  readonly because: 'not-a-number' | 'negative' | 'not-positive' | 'wrong-order';
  readonly parts: readonly string[];
}

export type Certainty = 'no' | 'perhaps' | 'yes';

export type SideId = 'near' | 'far';

export const otherSide = (side: SideId): SideId => (side === 'near' ? 'far' : 'near');

/** `any`: every finite number; the others bound it from below. */
export type Floor = 'any' | 'not-negative' | 'positive';

export function rangeOf(value: Ranged): Span {
  return typeof value === 'number' ? { from: value, to: value } : value;
}

export const usualOf = (value: Ranged): number => middle(rangeOf(value));

/** The ends of a range, once where they are equal. */
export function endsOf(value: Ranged): readonly number[] {
  const { from, to } = rangeOf(value);
  return from === to ? [from] : [from, to];
}

/** Smallest and largest of at least one value. */
export function spanAround(values: readonly number[]): Span {
  return { from: Math.min(...values), to: Math.max(...values) };
}

/** Whether something holds in none, some or all of the cases. */
export function certaintyOf(cases: readonly boolean[]): Certainty {
  if (!cases.includes(true)) return 'no';
  return cases.includes(false) ? 'perhaps' : 'yes';
}

/** The first kind of fault found among the named parts, with all parts that have it; undefined where the input is sound. */
export function problemIn(
  checks: readonly (readonly [part: string, value: Ranged, floor: Floor])[],
): CrossingProblem | undefined {
  for (const because of ['not-a-number', 'negative', 'not-positive', 'wrong-order'] as const) {
    const parts = checks.filter(([, value, floor]) => faultOf(rangeOf(value), floor) === because).map(([part]) => part);
    if (parts.length > 0) return { kind: 'no-solution', because, parts };
  }
  return undefined;
}

function faultOf({ from, to }: Span, floor: Floor): CrossingProblem['because'] | undefined {
  if (!(Number.isFinite(from) && Number.isFinite(to))) return 'not-a-number';
  const least = Math.min(from, to);
  if (floor === 'not-negative' && least < 0) return 'negative';
  if (floor === 'positive' && least <= 0) return 'not-positive';
  return from > to ? 'wrong-order' : undefined;
}
