// What one ampere does.
import type { Prepared } from './matrix.ts';
import { between, inject, rowIn, voltsFor } from './matrix.ts';
import type { Pair } from './parts.ts';

/** Where rounding takes more than two digits, what one ampere does is refined as well. Source: own-choice. */
const BEARABLE_LOSS = 100;

/** Volts lost at each row for one ampere drawn from `plus` to `minus`. */
function column({ matrix, conductors, columns }: Prepared, plus: number, minus: number): Float64Array {
  const key = (plus + 1) * (matrix.count + 1) + minus + 1;
  const known = columns.get(key);
  if (known !== undefined) return known;
  const drawn = new Float64Array(matrix.count);
  inject(drawn, plus, minus, 1);
  const lost = matrix.lost > BEARABLE_LOSS ? voltsFor(matrix, conductors, drawn) : drawn;
  if (lost === drawn) matrix.solve(drawn);
  columns.set(key, lost);
  return lost;
}

/**
 * Volts lost between `b` for one ampere drawn between `a`, ohms; without `b`, between `a` itself: what a train there sees of wires, rails and
 * sources together. The same with `a` and `b` exchanged. Throws RangeError for an unknown node.
 */
export function impedance(prepared: Prepared, a: Pair, b: Pair = a): number {
  const lost = column(prepared, rowIn(prepared, a[0]), rowIn(prepared, a[1]));
  return between(lost, rowIn(prepared, b[0]), rowIn(prepared, b[1]));
}
