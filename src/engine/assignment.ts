// One-to-one assignment at least total cost: shortest augmenting paths with potentials (Hungarian method, O(n^2 m)).

/** Cost of a pair that must not be: large, finite, and recognisable. */
export const FORBIDDEN = 1e12;

export interface Assignment {
  /** Column of each row. */
  readonly columns: readonly number[];
  readonly cost: number;
  /** False where a forbidden pair could not be avoided. */
  readonly permitted: boolean;
}

/** Rows <= columns, every cost finite. Throws RangeError naming what is wrong otherwise. */
export function assign(costs: readonly (readonly number[])[]): Assignment {
  const n = costs.length;
  const m = costs[0]?.length ?? 0;
  if (n > m) throw new RangeError(`assign: ${n} rows, but only ${m} columns`);
  for (const row of costs) {
    if (row.length !== m) throw new RangeError(`assign: a row of ${row.length} costs among rows of ${m}`);
    for (const cost of row) if (!Number.isFinite(cost)) throw new RangeError(`assign: cost ${cost} is not a finite number`);
  }
  const rowPotential = new Float64Array(n + 1);
  const columnPotential = new Float64Array(m + 1);
  const rowOf = new Int32Array(m + 1);
  for (let row = 1; row <= n; row++) augment(costs, row, rowPotential, columnPotential, rowOf);
  const columns = new Array<number>(n).fill(0);
  for (let column = 1; column <= m; column++) {
    const row = rowOf[column] ?? 0;
    if (row > 0) columns[row - 1] = column - 1;
  }
  const pairs = columns.map((column, row) => costs[row]?.[column] ?? 0);
  return { columns, cost: pairs.reduce((sum, cost) => sum + cost, 0), permitted: pairs.every((cost) => cost < FORBIDDEN) };
}

function augment(costs: readonly (readonly number[])[], row: number, u: Float64Array, v: Float64Array, rowOf: Int32Array): void {
  const m = v.length - 1;
  const slack = new Float64Array(m + 1).fill(Infinity);
  const before = new Int32Array(m + 1);
  const used = new Uint8Array(m + 1);
  rowOf[0] = row;
  let column = 0;
  do {
    used[column] = 1;
    const current = rowOf[column] ?? 0;
    let delta = Infinity;
    let next = 0;
    for (let j = 1; j <= m; j++) {
      if (used[j] === 1) continue;
      const reduced = (costs[current - 1]?.[j - 1] ?? 0) - (u[current] ?? 0) - (v[j] ?? 0);
      if (reduced < (slack[j] ?? Infinity)) {
        slack[j] = reduced;
        before[j] = column;
      }
      if ((slack[j] ?? Infinity) < delta) {
        delta = slack[j] ?? Infinity;
        next = j;
      }
    }
    for (let j = 0; j <= m; j++) {
      if (used[j] === 1) {
        const owner = rowOf[j] ?? 0;
        u[owner] = (u[owner] ?? 0) + delta;
        v[j] = (v[j] ?? 0) - delta;
      } else slack[j] = (slack[j] ?? Infinity) - delta;
    }
    column = next;
  } while ((rowOf[column] ?? 0) !== 0);
  while (column !== 0) {
    const previous = before[column] ?? 0;
    rowOf[column] = rowOf[previous] ?? 0;
    column = previous;
  }
}
