// The law of a sum of many draws, through its characteristic function (the mean of e^(itx), a product over independent draws; for m
// movers out of n the coefficient of z^m of a polynomial). It is taken back to currents on a grid that is laid over the total, not over
// the single draw: so no draw is split between cells, and mean, variance and shape are those of the draws themselves. Good where the
// sum is smooth on that grid, which is checked; a few draws, or draws that are there or not, are left to the table of kernels.
import type { Span } from '../units.ts';
import type { ComplexRow } from './fourier.ts';
import { complexRow, transform } from './fourier.ts';
import type { Draw } from './kernels.ts';

/** Alike consumers of which all, none or some move; see `DemandInput`. */
export interface ManyTrains {
  readonly count: number;
  readonly running: Draw;
  readonly standing: Draw;
  readonly alwaysMoving?: boolean;
}

export interface Many {
  readonly trains: readonly ManyTrains[];
  readonly moving: number;
  readonly fixed: readonly { readonly count: number; readonly draw: Draw; readonly chance?: number }[];
  readonly share: number;
}

/** Steps that a grid may have, amperes. Source: own-choice. */
export const GRID_STEPS = [0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1] as const;
/**
 * Cells to one standard deviation at least: the straight line within a cell is then right to 0.3 % at a chance of 1e-5. Source:
 * own-choice.
 */
const CELLS_PER_DEVIATION = 20;
/** The window holds so many standard deviations, half of them on either side of the mean. Source: own-choice. */
const WINDOW = 20;
/** What may be left of the characteristic function at the end of the window of frequencies. Source: own-choice. */
const ROUGHNESS = 1e-7;
/**
 * Where the characteristic function has stayed below the noise this long, only every so many frequencies are looked at: what comes back
 * is wider. Source: own-choice.
 */
const LOOK_EVERY = 4;
/** Chances below this are the noise of the reckoning. Source: own-choice. */
const NOISE = 1e-14;

export interface Moments {
  readonly mean: number;
  readonly variance: number;
}

/** Mean and variance of one draw that is here with the chance `share`. */
export function momentsOf(draw: Draw, share = 1): Moments {
  const { mean, square } =
    draw.kind === 'even'
      ? { mean: (draw.span.from + draw.span.to) / 2, square: squareOf(draw.span) }
      : {
          mean: draw.states.reduce((sum, { current, probability }) => sum + probability * current, 0),
          square: draw.states.reduce((sum, { current, probability }) => sum + probability * current ** 2, 0),
        };
  return { mean: share * mean, variance: Math.max(0, share * square - (share * mean) ** 2) };
}

const squareOf = ({ from, to }: Span): number => (from * from + from * to + to * to) / 3;

/** Exact mean and variance of the total: movers are drawn without putting back. */
export function totalMoments({ trains, moving, fixed, share }: Many): Moments {
  const always = trains.filter((group) => group.alwaysMoving === true);
  const free = trains.filter((group) => group.alwaysMoving !== true && group.count > 0);
  const steady = [
    ...fixed.map(({ count, draw, chance = 1 }) => ({ count, ...momentsOf(draw, share * chance) })),
    ...always.map(({ count, running }) => ({ count, ...momentsOf(running, share) })),
  ];
  const n = free.reduce((sum, { count }) => sum + count, 0);
  const moves = n === 0 ? 0 : (moving - always.reduce((sum, { count }) => sum + count, 0)) / n;
  const kinds = free.map(({ count, running, standing }) => {
    const [runs, stands] = [momentsOf(running, share), momentsOf(standing, share)];
    return {
      count,
      extra: runs.mean - stands.mean,
      mean: moves * runs.mean + (1 - moves) * stands.mean,
      variance: moves * runs.variance + (1 - moves) * stands.variance,
    };
  });
  const middle = n === 0 ? 0 : kinds.reduce((sum, { count, extra }) => sum + count * extra, 0) / n;
  const apart = kinds.reduce((sum, { count, extra }) => sum + count * (extra - middle) ** 2, 0);
  const all = [...steady, ...kinds];
  return {
    mean: all.reduce((sum, { count, mean }) => sum + count * mean, 0),
    variance:
      all.reduce((sum, { count, variance }) => sum + count * variance, 0) +
      (n < 2 ? 0 : (moves * (1 - moves) * n * apart) / (n - 1)),
  };
}

const currentsOf = (draw: Draw): readonly number[] =>
  draw.kind === 'even'
    ? [draw.span.from, draw.span.to]
    : draw.states.filter(({ probability }) => probability > 0).map(({ current }) => current);

/** Least and most that one consumer draws, amperes. */
export const leastOf = (draw: Draw): number => Math.min(...currentsOf(draw));
export const mostOf = (draw: Draw): number => Math.max(...currentsOf(draw));

export interface SmoothGrid {
  readonly step: number;
  readonly cells: number;
  /** Index of the first cell; cell i stands for the current i * step. May be below 0. */
  readonly first: number;
}

/** The grid that a total with these moments is reckoned on, or undefined where it is too narrow for one. */
export function smoothGrid({ mean, variance }: Moments): SmoothGrid | undefined {
  const deviation = Math.sqrt(variance);
  const step = GRID_STEPS.findLast((one) => one * CELLS_PER_DEVIATION <= deviation);
  if (step === undefined) return undefined;
  const cells = 2 ** Math.ceil(Math.log2((WINDOW * deviation) / step));
  return { step, cells, first: Math.round(mean / step) - cells / 2 };
}

/** Masses of the cells of the law, from the current 0 up, or undefined where it is not smooth on its grid. `ends`: least and most of the total, amperes. */
export function smoothLaw(many: Many, ends: Span): { readonly step: number; readonly mass: Float64Array } | undefined {
  const grid = smoothGrid(totalMoments(many));
  if (grid === undefined) return undefined;
  const { step, cells, first } = grid;
  const row = complexRow(cells);
  const sum = new SumOfDraws(many);
  let silent = 0;
  for (let k = 0; k <= cells / 2; k += silent < LOOK_EVERY ? 1 : LOOK_EVERY) {
    const frequency = (2 * Math.PI * k) / (cells * step);
    const { re, im } = sum.at(frequency);
    const size = Math.hypot(re, im);
    silent = size < NOISE ? silent + 1 : 0;
    if (size > ROUGHNESS && k > cells / 4) return undefined;
    setCell(row, k, re, im, { frequency, step, first });
  }
  transform(row, -1);
  const mass = new Float64Array(Math.max(1, Math.min(first + cells, Math.ceil(ends.to / step + 0.5))));
  const from = Math.max(0, first, Math.floor(ends.from / step + 0.5));
  for (let i = from; i < mass.length; i++) {
    const chance = (row.re[i - first] ?? 0) / cells;
    mass[i] = chance > NOISE ? chance : 0;
  }
  return { step, mass };
}

// A cell holds what lies within half a step of its current; the first cell's current is turned to the front.
function setCell(
  { re, im }: ComplexRow,
  k: number,
  x: number,
  y: number,
  { frequency, step, first }: { readonly frequency: number; readonly step: number; readonly first: number },
): void {
  const cells = re.length;
  const turn = -frequency * first * step;
  const factor = sinc((frequency * step) / 2);
  const [cos, sin] = [Math.cos(turn) * factor, Math.sin(turn) * factor];
  re[k] = x * cos - y * sin;
  im[k] = x * sin + y * cos;
  if (k === 0 || k === cells / 2) return;
  re[cells - k] = re[k] ?? 0;
  im[cells - k] = -(im[k] ?? 0);
}

export const sinc = (x: number): number => (Math.abs(x) < 1e-8 ? 1 : Math.sin(x) / x);

export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const times = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});

export function power({ re, im }: Complex, exponent: number): Complex {
  const size = Math.hypot(re, im) ** exponent;
  const angle = Math.atan2(im, re) * exponent;
  return { re: size * Math.cos(angle), im: size * Math.sin(angle) };
}

/** Characteristic function of one draw that is here with the chance `share`. */
export function characteristic(draw: Draw, frequency: number, share = 1): Complex {
  const whole = draw.kind === 'even' ? ofEven(draw.span, frequency) : ofStates(draw.states, frequency);
  return { re: 1 - share + share * whole.re, im: share * whole.im };
}

function ofEven({ from, to }: Span, frequency: number): Complex {
  const size = sinc((frequency * (to - from)) / 2);
  const angle = (frequency * (from + to)) / 2;
  return { re: size * Math.cos(angle), im: size * Math.sin(angle) };
}

function ofStates(
  states: readonly { readonly current: number; readonly probability: number }[],
  frequency: number,
): Complex {
  let [re, im] = [0, 0];
  for (const { current, probability } of states) {
    re += probability * Math.cos(frequency * current);
    im += probability * Math.sin(frequency * current);
  }
  return { re, im };
}

/** The characteristic function of a total, at one frequency after the other. */
class SumOfDraws {
  readonly #steady: readonly { readonly count: number; readonly draw: Draw; readonly chance?: number }[];
  readonly #free: readonly ManyTrains[];
  readonly #share: number;
  readonly #movers: MoversPolynomial;

  constructor({ trains, moving, fixed, share }: Many) {
    const always = trains.filter((group) => group.alwaysMoving === true);
    this.#free = trains.filter((group) => group.alwaysMoving !== true && group.count > 0);
    this.#steady = [...fixed, ...always.map(({ count, running }) => ({ count, draw: running }))];
    this.#share = share;
    const alwaysCount = always.reduce((sum, { count }) => sum + count, 0);
    this.#movers = new MoversPolynomial(
      this.#free.map(({ count }) => count),
      moving - alwaysCount,
    );
  }

  at(frequency: number): Complex {
    let product: Complex = { re: 1, im: 0 };
    for (const { count, draw, chance = 1 } of this.#steady) {
      product = times(product, power(characteristic(draw, frequency, this.#share * chance), count));
    }
    // Where the rest is nothing already, the trains cannot make it more.
    if (Math.hypot(product.re, product.im) < 1e-17) return { re: 0, im: 0 };
    const running = this.#free.map((group) => characteristic(group.running, frequency, this.#share));
    const standing = this.#free.map((group) => characteristic(group.standing, frequency, this.#share));
    return times(product, this.#movers.at(running, standing));
  }
}

/**
 * Mean over all choices of `moving` out of the groups of the product of what movers and standing trains give: the coefficient of
 * z^moving in the product of (standing + running z)^count, weighed so that nothing grows or vanishes however many there are.
 */
export class MoversPolynomial {
  readonly #counts: readonly number[];
  readonly #moving: number;
  readonly #weights: readonly Float64Array[];
  readonly #ways: number;

  constructor(counts: readonly number[], moving: number) {
    const all = counts.reduce((sum, count) => sum + count, 0);
    const moves = all === 0 ? 0 : moving / all;
    this.#counts = counts;
    this.#moving = moving;
    this.#weights = counts.map((count) => binomialLaw(count, moves));
    this.#ways = binomialLaw(all, moves)[moving] ?? 1;
  }

  at(running: readonly Complex[], standing: readonly Complex[]): Complex {
    const [alike, ...others] = this.#counts;
    if (alike !== undefined && others.length === 0) {
      return times(power(running[0] ?? ONE, this.#moving), power(standing[0] ?? ONE, alike - this.#moving));
    }
    let rows = complexRow(1);
    rows.re[0] = 1;
    for (const [g, count] of this.#counts.entries()) {
      const group = this.#group(g, count, running[g] ?? ONE, standing[g] ?? ONE);
      const last = g === this.#counts.length - 1;
      const length = Math.min(this.#moving + 1, rows.re.length + group.re.length - 1);
      rows = folded(rows, group, length, last ? this.#moving : 0);
    }
    return { re: (rows.re[this.#moving] ?? 0) / this.#ways, im: (rows.im[this.#moving] ?? 0) / this.#ways };
  }

  /** Weight of each number of movers among `count` alike, times running^j standing^(count - j). */
  #group(g: number, count: number, running: Complex, standing: Complex): ComplexRow {
    const most = Math.min(count, this.#moving);
    const row = complexRow(most + 1);
    let sum = power(standing, count - most);
    const moves = powers(running, most);
    for (let j = most; j >= 0; j--) {
      const weight = this.#weights[g]?.[j] ?? 0;
      const [x = 0, y = 0] = [moves.re[j], moves.im[j]];
      row.re[j] = weight * (sum.re * x - sum.im * y);
      row.im[j] = weight * (sum.re * y + sum.im * x);
      sum = times(sum, standing);
    }
    return row;
  }
}

const ONE: Complex = { re: 1, im: 0 };

function powers(base: Complex, most: number): ComplexRow {
  const row = complexRow(most + 1);
  let value = ONE;
  for (let j = 0; j <= most; j++) {
    row.re[j] = value.re;
    row.im[j] = value.im;
    value = times(value, base);
  }
  return row;
}

/** Product of two polynomials, its coefficients from `from` up to below `length`. */
function folded(a: ComplexRow, b: ComplexRow, length: number, from: number): ComplexRow {
  const product = complexRow(length);
  for (let k = from; k < length; k++) {
    let [re, im] = [0, 0];
    for (let j = Math.max(0, k - a.re.length + 1); j < Math.min(k + 1, b.re.length); j++) {
      const [x = 0, y = 0, u = 0, v = 0] = [a.re[k - j], a.im[k - j], b.re[j], b.im[j]];
      re += x * u - y * v;
      im += x * v + y * u;
    }
    product.re[k] = re;
    product.im[k] = im;
  }
  return product;
}

/** Chances of 0 to `count` out of `count`, each by itself with the chance `p`. */
export function binomialLaw(count: number, p: number): Float64Array {
  const law = new Float64Array(count + 1);
  const middle = Math.min(count, Math.floor((count + 1) * p));
  law[middle] = 1;
  for (let k = middle; k < count; k++) law[k + 1] = ((law[k] ?? 0) * (count - k) * p) / ((k + 1) * (1 - p));
  for (let k = middle; k > 0; k--) law[k - 1] = ((law[k] ?? 0) * k * (1 - p)) / ((count - k + 1) * p);
  const sum = law.reduce((total, chance) => total + chance, 0);
  return law.map((chance) => chance / sum);
}
