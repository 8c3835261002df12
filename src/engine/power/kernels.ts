// Mass functions of one consumer on a current grid, and how they are folded into the total.
import type { Span } from '../units.ts';

/** What one consumer draws at a random moment, amperes: evenly spread over a span, or one of some states. */
export type Draw =
  | { readonly kind: 'even'; readonly span: Span }
  | { readonly kind: 'states'; readonly states: readonly { readonly current: number; readonly probability: number }[] };

/** Mass function of one consumer on the grid: equal weights on a run of cells, and single cells beside it. */
export interface Kernel {
  readonly runFrom: number;
  readonly runTo: number;
  readonly runWeight: number;
  readonly cells: readonly (readonly [offset: number, weight: number])[];
  /** Lowest and highest offset that holds anything. */
  readonly first: number;
  readonly last: number;
}

/** A draw on a grid of `step` amperes; a value between two grid points is split between them so that the mean is kept. */
export function kernelOf(draw: Draw, step: number): Kernel {
  if (draw.kind === 'states') return kernel(gather(draw.states, step));
  const { from, to } = draw.span;
  if (isConstant(draw)) return kernel(gather([{ current: from, probability: 1 }], step));
  return evenKernel(from / step, to / step);
}

/** One current, not a span. */
export function isConstant(draw: Draw): draw is Draw & { kind: 'even' } {
  return draw.kind === 'even' && draw.span.to - draw.span.from < 1e-9;
}

function kernel(cells: readonly (readonly [number, number])[], runFrom = 0, runTo = -1, runWeight = 0): Kernel {
  const offsets = cells.map(([offset]) => offset);
  if (runTo >= runFrom) offsets.push(runFrom, runTo);
  return { cells, runFrom, runTo, runWeight, first: Math.min(...offsets), last: Math.max(...offsets) };
}

function gather(
  states: readonly { readonly current: number; readonly probability: number }[],
  step: number,
): [number, number][] {
  const cells = new Map<number, number>();
  for (const { current, probability } of states) {
    const place = current / step;
    const cell = Math.floor(place + 1e-9);
    const over = Math.max(0, place - cell);
    const part = over < 1e-9 ? 0 : over;
    cells.set(cell, (cells.get(cell) ?? 0) + probability * (1 - part));
    if (part > 0) cells.set(cell + 1, (cells.get(cell + 1) ?? 0) + probability * part);
  }
  return [...cells];
}

// Weight at grid point g = integral of the hat function around g over [a, b], divided by its length; inside it is constant.
function evenKernel(a: number, b: number): Kernel {
  const runFrom = Math.ceil(a + 1 - 1e-9);
  const runTo = Math.floor(b - 1 + 1e-9);
  const cells: [number, number][] = [];
  for (let g = Math.floor(a); g <= Math.ceil(b); g++) {
    if (g >= runFrom && g <= runTo) continue;
    const weight = (hatIntegral(b - g) - hatIntegral(a - g)) / (b - a);
    if (weight > 1e-15) cells.push([g, weight]);
  }
  return kernel(cells, runFrom, runTo, 1 / (b - a));
}

// Integral of max(0, 1 - |t|) from -infinity to x.
function hatIntegral(x: number): number {
  if (x <= -1) return 0;
  if (x >= 1) return 1;
  return x < 0 ? (1 + x) ** 2 / 2 : 1 - (1 - x) ** 2 / 2;
}

/** The same consumer, here with the chance `share` and elsewhere otherwise. */
export function withShare(whole: Kernel, share: number): Kernel {
  if (share === 1) return whole;
  const cells = whole.cells.map(([offset, weight]): [number, number] => [offset, weight * share]);
  return kernel([...cells, [0, 1 - share]], whole.runFrom, whole.runTo, whole.runWeight * share);
}

/** A mass function of a total: `mass[i]` at cell `low + i`. */
export interface Row {
  readonly low: number;
  readonly mass: Float64Array;
}

/** Folds kernels into rows; keeps its working space from one call to the next. */
export class Convolver {
  #source = new Float64Array(0);
  #suffix = new Float64Array(0);
  #prefix = new Float64Array(0);
  #target = new Float64Array(0);
  #other = new Float64Array(0);

  /** The row folded with the kernel, and `weight` times another row on top. */
  apply(kernel: Kernel, row: Row, more?: Row, weight = 0): Row {
    const { low, mass } = this.pass(kernel, row, more, weight);
    return { low, mass: mass.slice() };
  }

  /** The same, in working space: good until the next but one call. */
  pass(kernel: Kernel, row: Row, more?: Row, weight = 0): Row {
    const low = Math.min(row.low + kernel.first, more?.low ?? Number.POSITIVE_INFINITY);
    const foldedEnd = row.low + kernel.last + row.mass.length;
    const end = Math.max(foldedEnd, more === undefined ? 0 : more.low + more.mass.length);
    const target = this.#space(end - low);
    const start = row.low + kernel.first - low;
    target.fill(0, 0, start);
    if (kernel.runTo >= kernel.runFrom) {
      target.fill(0, foldedEnd - low);
      this.#run(target, start, row.mass, kernel);
    } else {
      target.fill(0, start);
      for (const [offset, cell] of kernel.cells) addTo(target, row.low + offset - low, row.mass, cell);
    }
    if (more !== undefined) addTo(target, more.low - low, more.mass, weight);
    return { low, mass: target };
  }

  // Two spaces in turn: what the call before gave may be what this call reads.
  #space(length: number): Float64Array {
    const space = this.#other.length < length ? new Float64Array(2 * length) : this.#other;
    this.#other = this.#target;
    this.#target = space;
    return space.subarray(0, length);
  }

  // Sliding sum by block prefixes and suffixes (van Herk): additions only, so nothing cancels. A window of `length` cells
  // that begins inside a block is the rest of this block and the beginning of the next.
  #run(target: Float64Array, start: number, row: Float64Array, kernel: Kernel): void {
    const length = kernel.runTo - kernel.runFrom + 1;
    const width = kernel.last - kernel.first + 1;
    this.#prepare(row, length, width);
    const source = this.#source;
    const suffix = this.#suffix;
    const prefix = this.#prefix;
    const [left, right, ...others] = kernel.cells;
    const leftWeight = left?.[1] ?? 0;
    const rightWeight = right?.[1] ?? 0;
    const leftAt = width - (left?.[0] ?? kernel.first) + kernel.first;
    const rightAt = width - (right?.[0] ?? kernel.first) + kernel.first;
    const prefixAt = width - kernel.runFrom + kernel.first;
    const suffixAt = prefixAt - length + 1;
    const weight = kernel.runWeight;
    const count = row.length + width - 1;
    for (let i = 0; i < count; i++) {
      target[start + i] =
        weight * ((suffix[i + suffixAt] ?? 0) + (prefix[i + prefixAt] ?? 0)) +
        leftWeight * (source[i + leftAt] ?? 0) +
        rightWeight * (source[i + rightAt] ?? 0);
    }
    for (const [offset, cell] of others) addTo(target, start + offset - kernel.first, row, cell);
  }

  // Copies the row between `width` empty cells on each side, and sums it up within blocks of `length` cells.
  #prepare(row: Float64Array, length: number, width: number): void {
    const blocks = Math.ceil(row.length / length);
    const space = blocks * length + 2 * width;
    if (this.#source.length < space) {
      this.#source = new Float64Array(2 * space);
      this.#suffix = new Float64Array(2 * space);
      this.#prefix = new Float64Array(2 * space);
    }
    const source = this.#source;
    const suffix = this.#suffix;
    const prefix = this.#prefix;
    for (const array of [source, suffix, prefix]) {
      array.fill(0, 0, width);
      array.fill(0, width + row.length, space);
    }
    source.set(row, width);
    for (let block = 0; block < blocks; block++) {
      const from = width + block * length;
      const to = from + length - 1;
      let rising = 0;
      let falling = 0;
      for (let i = 0; i < length; i++) {
        rising += source[from + i] ?? 0;
        falling += source[to - i] ?? 0;
        prefix[from + i] = rising;
        suffix[to - i] = falling;
      }
      // A window that is a whole block is counted by its suffix alone.
      prefix[to] = 0;
    }
  }
}

function addTo(target: Float64Array, start: number, row: Float64Array, weight: number): void {
  for (let i = 0; i < row.length; i++) target[start + i] = (target[start + i] ?? 0) + weight * (row[i] ?? 0);
}
