// One-to-one assignment at least total cost: shortest augmenting paths with potentials (Hungarian method, O(n^2 m)).

/** Cost of a pair that must not be: large, finite, and recognisable. Source: own-choice. */
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
    for (const cost of row)
      if (!Number.isFinite(cost)) throw new RangeError(`assign: cost ${cost} is not a finite number`);
  }
  const matching = new Matching(costs, n, m);
  for (let row = 1; row <= n; row++) matching.add(row);
  const columns = matching.columns();
  const pairs = columns.map((column, row) => costs[row]?.[column] ?? 0);
  return {
    columns,
    cost: pairs.reduce((sum, cost) => sum + cost, 0),
    permitted: pairs.every((cost) => cost < FORBIDDEN),
  };
}

// Rows and columns count from 1; column 0 stands for the row being added.
class Matching {
  readonly #costs: readonly (readonly number[])[];
  readonly #rowPotential: Float64Array;
  readonly #columnPotential: Float64Array;
  readonly #rowOf: Int32Array;

  constructor(costs: readonly (readonly number[])[], rows: number, columns: number) {
    this.#costs = costs;
    this.#rowPotential = new Float64Array(rows + 1);
    this.#columnPotential = new Float64Array(columns + 1);
    this.#rowOf = new Int32Array(columns + 1);
  }

  /** Adds a row along the shortest augmenting path. */
  add(row: number): void {
    const size = this.#rowOf.length;
    const tree: Tree = {
      slack: new Float64Array(size).fill(Infinity),
      before: new Int32Array(size),
      reached: new Uint8Array(size),
    };
    this.#rowOf[0] = row;
    let column = 0;
    do {
      tree.reached[column] = 1;
      const next = this.#nearest(column, tree);
      this.#shift(tree.slack[next] ?? 0, tree);
      column = next;
    } while ((this.#rowOf[column] ?? 0) !== 0);
    while (column !== 0) {
      const previous = tree.before[column] ?? 0;
      this.#rowOf[column] = this.#rowOf[previous] ?? 0;
      column = previous;
    }
  }

  /** Column of each row, both from 0. */
  columns(): number[] {
    const columns: number[] = new Array(this.#rowPotential.length - 1).fill(0);
    for (let column = 1; column < this.#rowOf.length; column++) {
      const row = this.#rowOf[column] ?? 0;
      if (row > 0) columns[row - 1] = column - 1;
    }
    return columns;
  }

  // Updates the slack of unreached columns from the row at `column`, and gives the nearest of them.
  #nearest(column: number, { slack, before, reached }: Tree): number {
    const row = this.#rowOf[column] ?? 0;
    let nearest = 0;
    for (let j = 1; j < slack.length; j++) {
      if (reached[j] === 1) continue;
      const cost = this.#costs[row - 1]?.[j - 1] ?? 0;
      const reduced = cost - (this.#rowPotential[row] ?? 0) - (this.#columnPotential[j] ?? 0);
      if (reduced < (slack[j] ?? Infinity)) {
        slack[j] = reduced;
        before[j] = column;
      }
      if (nearest === 0 || (slack[j] ?? Infinity) < (slack[nearest] ?? Infinity)) nearest = j;
    }
    return nearest;
  }

  #shift(delta: number, { slack, reached }: Tree): void {
    for (let j = 0; j < slack.length; j++) {
      if (reached[j] === 1) {
        const owner = this.#rowOf[j] ?? 0;
        this.#rowPotential[owner] = (this.#rowPotential[owner] ?? 0) + delta;
        this.#columnPotential[j] = (this.#columnPotential[j] ?? 0) - delta;
      } else slack[j] = (slack[j] ?? Infinity) - delta;
    }
  }
}

interface Tree {
  readonly slack: Float64Array;
  readonly before: Int32Array;
  readonly reached: Uint8Array;
}
