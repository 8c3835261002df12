// How the total current drawn is distributed, exactly: no simulation. Method: a dynamic programme over trains and the
// number of movers among them; each row is a mass function on a current grid (elementary symmetric convolution, the
// multi-state relative of the Poisson-binomial recursion; source: hong-2013 for the two-state case). Every term is
// positive, so the tails keep their relative accuracy.
import type { Span } from './units.ts';

/** What one consumer draws at a random moment, amperes: evenly spread over a span, or one of some states. */
export type Draw =
  | { readonly kind: 'even'; readonly span: Span }
  | { readonly kind: 'states'; readonly states: readonly { readonly current: number; readonly probability: number }[] };

/** Identical trains. */
export interface TrainGroup {
  readonly count: number;
  readonly running: Draw;
  readonly standing: Draw;
  /** These move at every moment and count among the movers. */
  readonly alwaysMoving?: boolean;
}

/** Consumers that are always on, whatever moves: coach lamps, accessory decoders. */
export interface FixedGroup {
  readonly count: number;
  readonly draw: Draw;
}

export interface DemandInput {
  readonly trains: readonly TrainGroup[];
  /** How many of all trains move at a random moment; which ones: uniformly random among those not always moving. */
  readonly moving: number;
  readonly fixed: readonly FixedGroup[];
  /** Chance that any one consumer is in this district; 1: the whole layout. */
  readonly share?: number;
  /** Grid step in amperes; 0.005 where absent. */
  readonly step?: number;
}

/** Mass function: probability mass[i] at current i * step, amperes. */
export interface Distribution {
  readonly step: number;
  readonly mass: Float64Array;
}

export const GRID_STEP = 0.005;
export const MOST_CONSUMERS = 1500;

export const even = (from: number, to: number): Draw => ({ kind: 'even', span: { from, to } });
export const constant = (current: number): Draw => even(current, current);

/**
 * Distribution of the total draw of one district.
 * Accepts counts that are whole and not negative, at most 1500 consumers in all, currents from 0 A up, `moving` between the number of
 * always moving trains and the number of trains, 0 < share <= 1, step from 0.0005 to 1 A. Throws RangeError naming the
 * offending value otherwise.
 */
export function demand(input: DemandInput): Distribution {
  const row = demandRows(input, input.moving, input.moving)[0];
  if (row === undefined) throw new RangeError('demand: no row');
  return row;
}

/** The same for every number of movers from `least` to `most`, out of one pass. */
export function demandRows(input: DemandInput, least: number, most: number): Distribution[] {
  const share = input.share ?? 1;
  const step = input.step ?? GRID_STEP;
  check(input, least, most, share, step);
  const always = countOf(input.trains.filter((group) => group.alwaysMoving === true));
  const free = countOf(input.trains) - always;
  const width = gridWidth(input, step);
  const table = new Rows(most - always, least - always, width);

  // Constant draws that are there at every moment are one number, added at the end.
  let base = 0;
  const everyMoment = (count: number, draw: Draw): void => {
    if (share === 1 && isConstant(draw)) base += count * draw.span.from;
    else for (let i = 0; i < count; i++) table.everyRow(withShare(kernelOf(draw, step), share));
  };
  for (const group of input.fixed) everyMoment(group.count, group.draw);
  for (const group of input.trains.filter((g) => g.alwaysMoving === true)) everyMoment(group.count, group.running);
  let left = free;
  for (const group of input.trains.filter((g) => g.alwaysMoving !== true)) {
    const beyondBase = share === 1 ? extraWhenMoving(group) : undefined;
    if (beyondBase !== undefined) base += group.count * meanOf(group.standing);
    const running = withShare(kernelOf(beyondBase ?? group.running, step), share);
    const standing = beyondBase === undefined ? withShare(kernelOf(group.standing, step), share) : undefined;
    for (let i = 0; i < group.count; i++) table.oneTrain(running, standing, --left);
  }
  if (base > 0) table.everyRow(kernelOf(constant(base), step));

  const rows: Distribution[] = [];
  for (let movers = least; movers <= most; movers++) {
    rows.push({ step, mass: table.row(movers - always, binomial(free, movers - always)) });
  }
  return rows;
}

// What a moving train draws beyond a standing one, where that is an even spread that never goes below nothing.
function extraWhenMoving(group: TrainGroup): Draw | undefined {
  const { running, standing } = group;
  if (!isConstant(standing) || running.kind !== 'even' || running.span.from < standing.span.from) return undefined;
  return even(running.span.from - standing.span.from, running.span.to - standing.span.from);
}

/** Mixture of regimes that exclude each other (evening with lamps on, day): exact; variances are never added across. */
export function mix(regimes: readonly { readonly probability: number; readonly distribution: Distribution }[]): Distribution {
  const step = regimes[0]?.distribution.step ?? GRID_STEP;
  const sum = regimes.reduce((total, regime) => total + regime.probability, 0);
  if (Math.abs(sum - 1) > 1e-9) throw new RangeError(`mix: probabilities add up to ${sum}, not 1`);
  const mass = new Float64Array(Math.max(1, ...regimes.map((regime) => regime.distribution.mass.length)));
  for (const { probability, distribution } of regimes) {
    if (distribution.step !== step) throw new RangeError('mix: distributions on different grids');
    for (let i = 0; i < distribution.mass.length; i++) mass[i] = at(mass, i) + probability * at(distribution.mass, i);
  }
  return { step, mass };
}

/** Chance that the draw is above `limit` amperes (strictly). */
export function chanceAbove(distribution: Distribution, limit: number): number {
  const { mass, step } = distribution;
  let sum = 0;
  for (let i = mass.length - 1; i >= 0 && i * step > limit + step * 1e-6; i--) sum += at(mass, i);
  return Math.min(1, sum);
}

/** Smallest grid current, amperes, with at least the share `q` of moments at or below it; 0 < q < 1. */
export function quantile(distribution: Distribution, q: number): number {
  const { mass, step } = distribution;
  let below = 0;
  for (let i = 0; i < mass.length; i++) {
    below += at(mass, i);
    if (below >= q - 1e-12) return i * step;
  }
  return (mass.length - 1) * step;
}

export interface Summary {
  readonly mean: number;
  readonly deviation: number;
  readonly p50: number;
  readonly p95: number;
  readonly p99: number;
  readonly least: number;
  readonly most: number;
}

/** Mean, standard deviation, 50, 95 and 99 % points and the extremes, all amperes. */
export function summarise(distribution: Distribution): Summary {
  const { mass, step } = distribution;
  let mean = 0;
  let square = 0;
  let least = -1;
  let most = 0;
  for (let i = 0; i < mass.length; i++) {
    const weight = at(mass, i);
    if (weight <= 0) continue;
    if (least < 0) least = i;
    most = i;
    mean += weight * i * step;
    square += weight * (i * step) ** 2;
  }
  return {
    mean,
    deviation: Math.sqrt(Math.max(0, square - mean * mean)),
    p50: quantile(distribution, 0.5),
    p95: quantile(distribution, 0.95),
    p99: quantile(distribution, 0.99),
    least: Math.max(0, least) * step,
    most: most * step,
  };
}

export interface Bar {
  readonly from: number;
  readonly to: number;
  readonly probability: number;
}

/** The distribution gathered into bars `width` amperes wide, from the first to the last that holds anything; a grid current on an edge belongs to the lower bar. */
export function histogram(distribution: Distribution, width: number): Bar[] {
  const { mass, step } = distribution;
  const bars = new Map<number, number>();
  for (let i = 0; i < mass.length; i++) {
    const weight = at(mass, i);
    if (weight > 1e-12) {
      const bar = Math.max(0, Math.ceil((i * step) / width - 1e-9) - 1);
      bars.set(bar, (bars.get(bar) ?? 0) + weight);
    }
  }
  const keys = [...bars.keys()];
  if (keys.length === 0) return [];
  const first = Math.min(...keys);
  const last = Math.max(...keys);
  return Array.from({ length: last - first + 1 }, (_, k) => ({
    from: (first + k) * width,
    to: (first + k + 1) * width,
    probability: bars.get(first + k) ?? 0,
  }));
}

/** Mean of a draw, amperes. */
export function meanOf(draw: Draw): number {
  return draw.kind === 'even'
    ? (draw.span.from + draw.span.to) / 2
    : draw.states.reduce((sum, state) => sum + state.current * state.probability, 0);
}

// A kernel is a mass function of one consumer on the grid: equal weights on a run of cells, and single cells beside it.
interface Kernel {
  readonly runFrom: number;
  readonly runTo: number;
  readonly runWeight: number;
  readonly cells: readonly (readonly [offset: number, weight: number])[];
  /** Lowest and highest offset that holds anything. */
  readonly first: number;
  readonly last: number;
}

const NO_CELLS = { low: Infinity, high: -1 } as const;

function kernelOf(draw: Draw, step: number): Kernel {
  if (draw.kind === 'states') return kernel(gather(draw.states, step));
  const { from, to } = draw.span;
  if (isConstant(draw)) return kernel(gather([{ current: from, probability: 1 }], step));
  return evenKernel(from / step, to / step);
}

function isConstant(draw: Draw): draw is Draw & { kind: 'even' } {
  return draw.kind === 'even' && draw.span.to - draw.span.from < 1e-9;
}

function kernel(cells: readonly (readonly [number, number])[], runFrom = 0, runTo = -1, runWeight = 0): Kernel {
  const offsets = cells.map(([offset]) => offset);
  if (runTo >= runFrom) offsets.push(runFrom, runTo);
  return { cells, runFrom, runTo, runWeight, first: Math.min(...offsets), last: Math.max(...offsets) };
}

// A value between two grid points is split between them so that the mean is kept.
function gather(states: readonly { readonly current: number; readonly probability: number }[], step: number): [number, number][] {
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

function withShare(whole: Kernel, share: number): Kernel {
  if (share === 1) return whole;
  const cells = whole.cells.map(([offset, weight]): [number, number] => [offset, weight * share]);
  return kernel([...cells, [0, 1 - share]], whole.runFrom, whole.runTo, whole.runWeight * share);
}

/** Mass rows by number of movers so far, not yet divided by the number of ways to choose them. */
class Rows {
  readonly #rows: Float64Array[];
  readonly #low: Int32Array;
  readonly #high: Int32Array;
  readonly #least: number;
  #spare: Float64Array;
  readonly #suffix: Float64Array;
  readonly #prefix: Float64Array;

  constructor(most: number, least: number, width: number) {
    this.#rows = Array.from({ length: most + 1 }, () => new Float64Array(width));
    this.#low = new Int32Array(most + 1).fill(width);
    this.#high = new Int32Array(most + 1).fill(-1);
    this.#least = least;
    this.#spare = new Float64Array(width);
    this.#suffix = new Float64Array(width);
    this.#prefix = new Float64Array(width);
    const first = this.#rows[0];
    if (first !== undefined) first[0] = 1;
    this.#low[0] = 0;
    this.#high[0] = 0;
  }

  everyRow(kernel: Kernel): void {
    for (let j = 0; j < this.#rows.length; j++) this.#rewrite(j, kernel, undefined);
  }

  /**
   * Adds a train that may move; `left` trains follow, so rows that can no longer reach the least row are skipped.
   * `standing` is undefined where a standing train adds nothing (its draw is in the common base).
   */
  oneTrain(running: Kernel, standing: Kernel | undefined, left: number): void {
    const lowest = Math.max(0, this.#least - left);
    for (let j = this.#rows.length - 1; j >= lowest; j--) {
      if (standing !== undefined) this.#rewrite(j, standing, running);
      else if (j > 0) this.#gainInPlace(j, running);
    }
  }

  row(movers: number, ways: number): Float64Array {
    const row = this.#rows[movers] ?? new Float64Array(1);
    const end = (this.#high[movers] ?? 0) + 1;
    return row.slice(0, Math.max(1, end)).map((mass) => mass / ways);
  }

  // Row j becomes row j * same + row (j - 1) * next.
  #rewrite(j: number, same: Kernel, next: Kernel | undefined): void {
    const old = this.#rows[j];
    if (old === undefined) return;
    const target = this.#spare;
    const own = this.#gain(target, j, same);
    const other = next === undefined ? NO_CELLS : this.#gain(target, j - 1, next);
    this.#rows[j] = target;
    old.fill(0, 0, (this.#high[j] ?? -1) + 1);
    this.#spare = old;
    this.#low[j] = Math.min(own.low, other.low);
    this.#high[j] = Math.max(own.high, other.high);
  }

  // Row j becomes row j + row (j - 1) * next.
  #gainInPlace(j: number, next: Kernel): void {
    const target = this.#rows[j];
    if (target === undefined) return;
    const other = this.#gain(target, j - 1, next);
    this.#low[j] = Math.min(this.#low[j] ?? other.low, other.low);
    this.#high[j] = Math.max(this.#high[j] ?? -1, other.high);
  }

  #gain(target: Float64Array, source: number, kernel: Kernel): { low: number; high: number } {
    const row = this.#rows[source];
    const from = this.#low[source] ?? 0;
    const to = this.#high[source] ?? -1;
    if (row === undefined || to < from) return NO_CELLS;
    for (const [offset, weight] of kernel.cells) {
      for (let i = from; i <= to; i++) target[i + offset] = at(target, i + offset) + weight * at(row, i);
    }
    if (kernel.runTo >= kernel.runFrom) this.#addRun(target, row, from, to, kernel);
    return { low: from + kernel.first, high: to + kernel.last };
  }

  // Sliding sum by block prefixes and suffixes (van Herk): additions only, so nothing cancels.
  #addRun(target: Float64Array, row: Float64Array, from: number, to: number, kernel: Kernel): void {
    const { runFrom, runTo, runWeight } = kernel;
    const length = runTo - runFrom + 1;
    const span = to - from + 1;
    const prefix = this.#prefix;
    const suffix = this.#suffix;
    for (let block = 0; block < span; block += length) fillBlock(prefix, suffix, row, from, block, Math.min(block + length, span));
    const base = from + runFrom;
    // Windows that begin at or before the first cell.
    for (let i = 0; i < length; i++) target[base + i] = at(target, base + i) + runWeight * at(prefix, Math.min(i, span - 1));
    // Windows that begin at cell `left`: the rest of its block, and the beginning of the next.
    const shift = base + length - 1;
    for (let block = 0; block < span; block += length) {
      const end = Math.min(block + length, span);
      if (block > 0) target[shift + block] = at(target, shift + block) + runWeight * at(prefix, Math.min(block + length, span) - 1);
      for (let left = block + 1; left < end; left++) {
        const right = Math.min(left + length - 1, span - 1);
        const beyond = right >= end ? at(prefix, right) : 0;
        target[shift + left] = at(target, shift + left) + runWeight * (at(suffix, left) + beyond);
      }
    }
  }
}

// Sums of row[from + block ..] within one block: from its start up to i, and from i to its end.
function fillBlock(prefix: Float64Array, suffix: Float64Array, row: Float64Array, from: number, block: number, end: number): void {
  let sum = 0;
  for (let i = block; i < end; i++) {
    sum += at(row, from + i);
    prefix[i] = sum;
  }
  sum = 0;
  for (let i = end - 1; i >= block; i--) {
    sum += at(row, from + i);
    suffix[i] = sum;
  }
}

function at(array: Float64Array, index: number): number {
  return array[index] ?? 0;
}

function countOf(groups: readonly { readonly count: number }[]): number {
  return groups.reduce((sum, group) => sum + group.count, 0);
}

function binomial(n: number, k: number): number {
  let value = 1;
  for (let i = 1; i <= Math.min(k, n - k); i++) value = (value * (n - i + 1)) / i;
  return value;
}

function mostOf(draw: Draw): number {
  return draw.kind === 'even' ? draw.span.to : Math.max(0, ...draw.states.map((state) => state.current));
}

function gridWidth(input: DemandInput, step: number): number {
  const cells = (count: number, current: number): number => count * (Math.ceil(current / step) + 2);
  const trains = input.trains.reduce((sum, g) => sum + cells(g.count, Math.max(mostOf(g.running), mostOf(g.standing))), 0);
  return trains + input.fixed.reduce((sum, g) => sum + cells(g.count, mostOf(g.draw)), 0) + 4;
}

function check(input: DemandInput, least: number, most: number, share: number, step: number): void {
  const fail = (what: string): never => {
    throw new RangeError(`demand: ${what}`);
  };
  for (const group of [...input.trains, ...input.fixed]) {
    if (!Number.isInteger(group.count) || group.count < 0) fail(`count ${group.count} is not a whole number from 0 up`);
  }
  const draws = [...input.trains.flatMap((g) => [g.running, g.standing]), ...input.fixed.map((g) => g.draw)];
  for (const draw of draws) {
    const currents = draw.kind === 'even' ? [draw.span.from, draw.span.to] : draw.states.map((state) => state.current);
    for (const current of currents) if (!(current >= 0 && current <= 100)) fail(`current ${current} A is outside 0 to 100 A`);
    if (draw.kind === 'even' && draw.span.from > draw.span.to) fail(`span from ${draw.span.from} A to ${draw.span.to} A runs backwards`);
    if (draw.kind === 'states') {
      const sum = draw.states.reduce((total, state) => total + state.probability, 0);
      if (Math.abs(sum - 1) > 1e-9) fail(`state probabilities add up to ${sum}, not 1`);
    }
  }
  const trains = countOf(input.trains);
  const always = countOf(input.trains.filter((group) => group.alwaysMoving === true));
  if (trains + countOf(input.fixed) > MOST_CONSUMERS) fail(`more than ${MOST_CONSUMERS} consumers`);
  if (!Number.isInteger(least) || least < always) fail(`${least} moving, but ${always} always move`);
  if (!Number.isInteger(most) || most > trains) fail(`${most} moving of ${trains} trains`);
  if (least > most) fail(`rows from ${least} to ${most}`);
  if (!(share > 0 && share <= 1)) fail(`share ${share} is outside 0 to 1`);
  if (!(step >= 0.0005 && step <= 1)) fail(`grid step ${step} A is outside 0.0005 to 1 A`);
}
