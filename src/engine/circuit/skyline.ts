// Symmetric positive definite systems of long thin networks: reverse Cuthill-McKee ordering and LDLt within the skyline.
// Ordering: E. Cuthill, J. McKee, 1969, reversed as A. George showed. Factorisation: the textbook row scheme, from memory.

/** Neighbours of each place, one list after the other: those of `i` stand from `start[i]` to before `start[i + 1]`. */
interface Neighbours {
  readonly start: Int32Array;
  readonly list: Int32Array;
}

/**
 * An order that keeps neighbours close: `rank[place]` is the row of a place, 0 to `count` - 1. `from` and `to` are the ends of the edges;
 * an end of -1 is outside (the reference) and its edge joins nothing. Parts that hang together by nothing follow one another.
 */
export function closeOrder(count: number, from: Int32Array, to: Int32Array): Int32Array {
  const near = neighbours(count, from, to);
  const walk = new Walk(near, count);
  const rank = new Int32Array(count).fill(-1);
  let filled = 0;
  for (let place = 0; place < count; place++) {
    if (int(rank, place) !== -1) continue;
    const reached = walk.from(walk.farEnd(place));
    for (let i = 0; i < reached; i++) rank[int(walk.queue, i)] = count - 1 - filled - i;
    filled += reached;
  }
  return rank;
}

/** First column that holds anything, for each row; both ends of every edge in rows, or -1. */
export function skylineOf(count: number, from: Int32Array, to: Int32Array): Int32Array {
  const first = ints(count, (row) => row);
  for (let edge = 0; edge < from.length; edge++) {
    const low = Math.min(int(from, edge), int(to, edge));
    const high = Math.max(int(from, edge), int(to, edge));
    if (low >= 0 && low < int(first, high)) first[high] = low;
  }
  return first;
}

function neighbours(count: number, from: Int32Array, to: Int32Array): Neighbours {
  const start = new Int32Array(count + 1);
  const joins = (edge: number) => int(from, edge) >= 0 && int(to, edge) >= 0 && int(from, edge) !== int(to, edge);
  for (let edge = 0; edge < from.length; edge++) {
    if (!joins(edge)) continue;
    start[int(from, edge) + 1] = int(start, int(from, edge) + 1) + 1;
    start[int(to, edge) + 1] = int(start, int(to, edge) + 1) + 1;
  }
  for (let place = 0; place < count; place++) start[place + 1] = int(start, place + 1) + int(start, place);
  const list = new Int32Array(int(start, count));
  const next = start.slice();
  const put = (place: number, other: number) => {
    list[int(next, place)] = other;
    next[place] = int(next, place) + 1;
  };
  for (let edge = 0; edge < from.length; edge++) {
    if (!joins(edge)) continue;
    put(int(from, edge), int(to, edge));
    put(int(to, edge), int(from, edge));
  }
  for (let place = 0; place < count; place++) sortByDegree(start, list, place);
  return { start, list };
}

/** Insertion sort: the lists are short. */
function sortByDegree(start: Int32Array, list: Int32Array, place: number): void {
  const degree = (one: number) => int(start, one + 1) - int(start, one);
  for (let i = int(start, place) + 1; i < int(start, place + 1); i++) {
    const one = int(list, i);
    let j = i - 1;
    while (j >= int(start, place) && degree(int(list, j)) > degree(one)) {
      list[j + 1] = int(list, j);
      j -= 1;
    }
    list[j + 1] = one;
  }
}

/** Breadth first walks that reuse their memory. */
class Walk {
  readonly queue: Int32Array;
  readonly #near: Neighbours;
  readonly #seen: Int32Array;
  #round = 0;
  /** Steps to the farthest place of the last walk, and where in the queue the places so far away begin. */
  #depth = 0;
  #lastLevel = 0;

  constructor(near: Neighbours, count: number) {
    this.#near = near;
    this.queue = new Int32Array(count);
    this.#seen = new Int32Array(count);
  }

  /** Fills the queue from its beginning and says how many places were reached. */
  from(root: number): number {
    this.#round += 1;
    this.#depth = 0;
    this.#lastLevel = 0;
    this.queue[0] = root;
    this.#seen[root] = this.#round;
    let filled = 1;
    let levelEnd = 1;
    for (let i = 0; i < filled; i++) {
      if (i === levelEnd) {
        this.#depth += 1;
        this.#lastLevel = i;
        levelEnd = filled;
      }
      filled = this.#spread(int(this.queue, i), filled);
    }
    return filled;
  }

  #spread(place: number, filledBefore: number): number {
    const { start, list } = this.#near;
    let filled = filledBefore;
    for (let i = int(start, place); i < int(start, place + 1); i++) {
      const other = int(list, i);
      if (this.#seen[other] === this.#round) continue;
      this.#seen[other] = this.#round;
      this.queue[filled] = other;
      filled += 1;
    }
    return filled;
  }

  /** A place from which the part that holds `place` is as long as can be found: walk to the far end until it gets no farther. */
  farEnd(place: number): number {
    let root = place;
    let best = -1;
    for (;;) {
      const reached = this.from(root);
      if (this.#depth <= best) return root;
      best = this.#depth;
      root = this.#leastDegree(this.#lastLevel, reached);
    }
  }

  #leastDegree(from: number, to: number): number {
    const { start } = this.#near;
    let least = int(this.queue, from);
    for (let i = from + 1; i < to; i++) {
      const one = int(this.queue, i);
      if (int(start, one + 1) - int(start, one) < int(start, least + 1) - int(start, least)) least = one;
    }
    return least;
  }
}

/** A pivot this small beside its own diagonal is nothing but rounding. Source: own-choice. */
const NOTHING = 1e-13;

/** A symmetric matrix, of each row what stands between its first entry and the diagonal. Add, factor once, then solve at will. */
export class Skyline {
  readonly count: number;
  readonly #first: Int32Array;
  /** Where the row would begin if it began at column 0. */
  readonly #offset: Int32Array;
  readonly #lower: Float64Array;
  readonly #diagonal: Float64Array;
  #lost = 1;

  /** `first`: first column of each row, at most the row itself. */
  constructor(first: Int32Array) {
    this.count = first.length;
    this.#first = first;
    this.#offset = new Int32Array(first.length);
    let size = 0;
    for (let row = 0; row < first.length; row++) {
      this.#offset[row] = size - int(first, row);
      size += row - int(first, row);
    }
    this.#lower = new Float64Array(size);
    this.#diagonal = new Float64Array(first.length);
  }

  /** A conductance, siemens, between two rows or a row and the reference (-1). The rows have to lie within the skyline. */
  addBetween(a: number, b: number, siemens: number): void {
    if (a === b) return;
    if (a >= 0) this.#diagonal[a] = at(this.#diagonal, a) + siemens;
    if (b >= 0) this.#diagonal[b] = at(this.#diagonal, b) + siemens;
    if (a < 0 || b < 0) return;
    const place = int(this.#offset, Math.max(a, b)) + Math.min(a, b);
    this.#lower[place] = at(this.#lower, place) - siemens;
  }

  /** L D Lt in place. False where a pivot is not above nothing: the matrix is not positive definite. */
  factor(): boolean {
    const lower = this.#lower;
    const diagonal = this.#diagonal;
    for (let row = 0; row < this.count; row++) {
      const from = int(this.#first, row);
      const offset = int(this.#offset, row);
      for (let column = from + 1; column < row; column++) {
        const other = int(this.#offset, column);
        let sum = at(lower, offset + column);
        for (let k = Math.max(from, int(this.#first, column)); k < column; k++) {
          sum -= at(lower, other + k) * at(lower, offset + k);
        }
        lower[offset + column] = sum;
      }
      const whole = at(diagonal, row);
      let pivot = whole;
      for (let k = from; k < row; k++) {
        const entry = at(lower, offset + k);
        const scaled = entry / at(diagonal, k);
        pivot -= entry * scaled;
        lower[offset + k] = scaled;
      }
      if (!(pivot > NOTHING * whole)) return false;
      diagonal[row] = pivot;
      this.#lost = Math.max(this.#lost, whole / pivot);
    }
    return true;
  }

  /** How many times a diagonal exceeds its pivot at most: its decimal digits are lost to rounding. Only after `factor` gave true. */
  get lost(): number {
    return this.#lost;
  }

  /** Replaces a right-hand side by its solution; only after `factor` gave true. */
  solve(values: Float64Array): void {
    const lower = this.#lower;
    const first = this.#first;
    const offsets = this.#offset;
    const diagonal = this.#diagonal;
    const count = this.count;
    let begin = 0;
    while (begin < count && values[begin] === 0) begin += 1;
    for (let row = begin + 1; row < count; row++) {
      const offset = int(offsets, row);
      let sum = at(values, row);
      for (let k = Math.max(begin, int(first, row)); k < row; k++) sum -= at(lower, offset + k) * at(values, k);
      values[row] = sum;
    }
    for (let row = begin; row < count; row++) values[row] = at(values, row) / at(diagonal, row);
    for (let row = count - 1; row >= 0; row--) {
      const offset = int(offsets, row);
      const value = at(values, row);
      for (let k = int(first, row); k < row; k++) values[k] = at(values, k) - at(lower, offset + k) * value;
    }
  }
}

/** A list of whole numbers by place. */
export function ints(count: number, of: (place: number) => number): Int32Array {
  const list = new Int32Array(count);
  for (let place = 0; place < count; place++) list[place] = of(place);
  return list;
}

// Two alike, because a function that sees one kind of list is compiled for it.

/** Entry of a list that is known to be long enough. */
export function at(list: Float64Array, index: number): number {
  return list[index] ?? 0;
}

/** Entry of a list that is known to be long enough. */
export function int(list: Int32Array, index: number): number {
  return list[index] ?? 0;
}
