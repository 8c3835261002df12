// Two districts with the same trains: what the near one draws and what the whole layout draws at the same moment, as one law. Every
// consumer is in the near district with the chance `share`, else in the far one. A train that moves here does not move there: the two are
// busy in turn more often than together. The characteristic function of the pair is that of the total (smooth.ts) with every draw counted
// for the whole, and where its owner is here for the near district too. Large fleets go through it as it is; a few draws are laid on the
// grid first, so that "no train is here" stays a single current.
import type { DemandInput, Distribution, FixedGroup } from './demand.ts';
import { endsOf, fittingDemand, quantile } from './demand.ts';
import type { ComplexRow } from './fourier.ts';
import { complexRow, transform } from './fourier.ts';
import type { Draw } from './kernels.ts';
import { kernelOf } from './kernels.ts';
import type { Complex, Many } from './smooth.ts';
import { characteristic, leastOf, MoversPolynomial, power, times, totalMoments } from './smooth.ts';

/** Chances of the pairs: cell i * cells + j stands for near = nearFrom + i * step, total = totalFrom + j * step, amperes. */
export interface JointLaw {
  readonly step: number;
  readonly cells: number;
  readonly nearFrom: number;
  readonly totalFrom: number;
  readonly mass: Float64Array;
  /** Law of the whole layout, on its own finer grid. */
  readonly total: Distribution;
}

/** As for `demand`, of consumers that always draw. */
export type JointInput = Pick<DemandInput, 'trains' | 'moving'> & {
  readonly fixed: readonly Pick<FixedGroup, 'count' | 'draw'>[];
};

/** Cells on each side of the table of two districts. Source: own-choice. */
const CELLS = 256;
/** The window holds so many standard deviations of the wider of the two. Source: own-choice. */
const WINDOW = 20;
/** Up to so many draws that vary are laid on the grid. Source: own-choice. */
const FEW_DRAWS = 12;
/** Chances below this are the noise of the reckoning. Source: own-choice. */
const NOISE = 1e-14;
/** So many frequencies in a row without anything, and no more is to be expected. Source: own-choice. */
const SILENT = 8;

/** The law of a near district with `share` of everything, and of the whole. 0 < share < 1; else as for `demand`. Throws RangeError otherwise. */
export function jointLaw(input: JointInput, share: number): JointLaw {
  if (!(share > 0 && share < 1)) throw new RangeError(`jointLaw: share ${share} is outside 0 to 1`);
  const total = fittingDemand(input);
  const varying = input.moving + input.fixed.reduce((sum, { count }) => sum + count, 0);
  const smooth = varying > FEW_DRAWS ? smoothPair({ ...input, share }) : undefined;
  return { ...(smooth ?? pairOnGrid({ ...input, share })), cells: CELLS, total };
}

type Pair = Pick<JointLaw, 'step' | 'nearFrom' | 'totalFrom' | 'mass'>;
/** What one consumer gives at a frequency of the near district and one of the whole. */
type PairFunction = (near: number, total: number) => Complex;

/** What all consumers give; `of`: what one does, given what it draws in any case. */
function sumOfPairs(
  { trains, moving, fixed }: JointInput,
  of: (draw: Draw, inAnyCase: number) => PairFunction,
): PairFunction {
  const always = trains.filter((group) => group.alwaysMoving === true);
  const free = trains.filter((group) => group.alwaysMoving !== true && group.count > 0);
  const steady = [...fixed, ...always.map(({ count, running }) => ({ count, draw: running }))];
  const steadyAt = steady.map(({ count, draw }) => ({ count, at: of(draw, leastOf(draw)) }));
  const running = free.map((group) => of(group.running, inAnyCase(group)));
  const standing = free.map((group) => of(group.standing, inAnyCase(group)));
  const movers = new MoversPolynomial(
    free.map(({ count }) => count),
    moving - always.reduce((sum, { count }) => sum + count, 0),
  );
  return (near, total) => {
    let product: Complex = { re: 1, im: 0 };
    for (const { count, at } of steadyAt) product = times(product, power(at(near, total), count));
    if (Math.hypot(product.re, product.im) < NOISE) return { re: 0, im: 0 };
    const each = (at: PairFunction): Complex => at(near, total);
    return times(product, movers.at(running.map(each), standing.map(each)));
  };
}

const inAnyCase = ({ running, standing }: { readonly running: Draw; readonly standing: Draw }): number =>
  Math.min(leastOf(running), leastOf(standing));

/** All that is drawn in any case, amperes. */
const baseOf = ({ trains, fixed }: JointInput): number =>
  [
    ...fixed.map(({ count, draw }) => count * leastOf(draw)),
    ...trains.map((one) => one.count * (one.alwaysMoving === true ? leastOf(one.running) : inAnyCase(one))),
  ].reduce((sum, part) => sum + part, 0);

const hereOrThere = (share: number, here: Complex, there: Complex): Complex => ({
  re: share * here.re + (1 - share) * there.re,
  im: share * here.im + (1 - share) * there.im,
});

/** The pair of a large fleet: what lies beyond the frequencies of the grid is nothing. Undefined where it is not. */
function smoothPair(many: Many): Pair | undefined {
  const near = totalMoments(many);
  const whole = totalMoments({ ...many, share: 1 });
  const step = (WINDOW * Math.sqrt(Math.max(near.variance, whole.variance))) / CELLS;
  const nearFrom = near.mean - (CELLS / 2) * step;
  const totalFrom = whole.mean - (CELLS / 2) * step;
  const pair = sumOfPairs(
    many,
    (draw) => (a, t) => hereOrThere(many.share, characteristic(draw, a + t), characteristic(draw, t)),
  );
  const plane = complexRow(CELLS * CELLS);
  const frequency = (k: number): number => (2 * Math.PI * k) / (CELLS * step);
  const loudness = (k: number, t: number): number => {
    const turn = -frequency(k) * nearFrom - frequency(t) * totalFrom;
    const value = pair(frequency(k), frequency(t));
    setPair(plane, k, t, times(value, { re: Math.cos(turn), im: Math.sin(turn) }));
    return Math.hypot(value.re, value.im);
  };
  for (let t = 0; t < CELLS / 2; t++) {
    // In the way of the near district's mean the pair is loudest where the two frequencies cancel, at about -share * t.
    const middle = -Math.round(many.share * t);
    const up = silentFrom(middle, 1, (k) => loudness(k, t));
    const down = silentFrom(middle - 1, -1, (k) => loudness(k, t));
    if (up >= CELLS / 2 || down <= -CELLS / 2) return undefined;
    if (up - middle <= SILENT && middle - 1 - down <= SILENT) break;
  }
  return { step, nearFrom, totalFrom, mass: massesOf(plane) };
}

/** The frequency index from which on nothing is heard any more, or where the window ends. */
function silentFrom(start: number, way: 1 | -1, loudness: (k: number) => number): number {
  let silent = 0;
  let k = start;
  for (; Math.abs(k) < CELLS / 2 && silent < SILENT; k += way) silent = loudness(k) < NOISE ? silent + 1 : 0;
  return k;
}

/** The pair of a few draws, each laid on the grid. */
function pairOnGrid(many: Many): Pair {
  const { to } = endsOf(many, 1);
  const step = Math.max(to, 1e-3) / (CELLS - 8);
  const pair = sumOfPairs(many, (draw, least) => {
    const varying = tableOf(less(draw, least), step);
    const steady = tableOf({ kind: 'even', span: { from: least, to: least } }, step);
    return (a, t) => hereOrThere(many.share, times(lookUp(varying, a + t), lookUp(steady, a)), lookUp(varying, t));
  });
  const plane = complexRow(CELLS * CELLS);
  for (let t = 0; t <= CELLS / 2; t++) for (let a = 0; a < CELLS; a++) setPair(plane, a, t, pair(a, t));
  return { step, nearFrom: 0, totalFrom: baseOf(many), mass: massesOf(plane) };
}

/** The draw beyond what is drawn in any case. */
function less(draw: Draw, least: number): Draw {
  const rest = (current: number): number => Math.max(0, current - least);
  return draw.kind === 'even'
    ? { kind: 'even', span: { from: rest(draw.span.from), to: rest(draw.span.to) } }
    : { kind: 'states', states: draw.states.map((one) => ({ ...one, current: rest(one.current) })) };
}

/** Frequencies of a draw laid on the grid: a wide spread a little narrower there, so that its variance stays what it is. */
function tableOf(draw: Draw, step: number): ComplexRow {
  const kernel = kernelOf(narrowed(draw, step), step);
  const row = complexRow(CELLS);
  const add = (cell: number, weight: number): void => {
    row.re[cell % CELLS] = (row.re[cell % CELLS] ?? 0) + weight;
  };
  for (const [cell, weight] of kernel.cells) add(cell, weight);
  for (let cell = kernel.runFrom; cell <= kernel.runTo; cell++) add(cell, kernel.runWeight);
  transform(row, 1);
  return row;
}

// Laying a spread on the grid adds a sixth of a cell squared to its variance: a spread narrower by twice a cell squared makes up for it.
function narrowed(draw: Draw, step: number): Draw {
  if (draw.kind === 'states') return draw;
  const { from, to } = draw.span;
  const square = (to - from) ** 2 - 2 * step ** 2;
  if (square <= 0 || to - from < 1e-9) return draw;
  const [middle, half] = [(from + to) / 2, Math.sqrt(square) / 2];
  return { kind: 'even', span: { from: middle - half, to: middle + half } };
}

function lookUp({ re, im }: ComplexRow, k: number): Complex {
  const at = ((k % CELLS) + CELLS) % CELLS;
  return { re: re[at] ?? 0, im: im[at] ?? 0 };
}

/** Sets a pair of frequencies and its mirror image: the law is real. */
function setPair({ re, im }: ComplexRow, near: number, total: number, value: Complex): void {
  const index = (a: number, t: number): number =>
    (((a % CELLS) + CELLS) % CELLS) * CELLS + (((t % CELLS) + CELLS) % CELLS);
  const [here, mirror] = [index(near, total), index(-near, -total)];
  re[here] = value.re;
  im[here] = value.im;
  if (mirror === here) return;
  re[mirror] = value.re;
  im[mirror] = -value.im;
}

function massesOf(plane: ComplexRow): Float64Array {
  for (let a = 0; a < CELLS; a++) {
    const row = {
      re: plane.re.subarray(a * CELLS, (a + 1) * CELLS),
      im: plane.im.subarray(a * CELLS, (a + 1) * CELLS),
    };
    transform(row, -1);
  }
  const column = complexRow(CELLS);
  const mass = new Float64Array(CELLS * CELLS);
  for (let t = 0; t < CELLS; t++) {
    for (let a = 0; a < CELLS; a++) {
      column.re[a] = plane.re[a * CELLS + t] ?? 0;
      column.im[a] = plane.im[a * CELLS + t] ?? 0;
    }
    transform(column, -1);
    for (let a = 0; a < CELLS; a++) {
      const chance = (column.re[a] ?? 0) / (CELLS * CELLS);
      mass[a * CELLS + t] = chance > NOISE ? chance : 0;
    }
  }
  return mass;
}

/** Which of the two districts. */
type District = 'near' | 'far';

/** Sum over all pairs of what each counts for. */
function over(law: JointLaw, counts: (near: number, far: number) => number): number {
  const { step, cells, nearFrom, totalFrom, mass } = law;
  let sum = 0;
  for (let a = 0; a < cells; a++) {
    for (let t = 0; t < cells; t++) {
      const chance = mass[a * cells + t] ?? 0;
      if (chance <= 0) continue;
      const near = nearFrom + a * step;
      sum += chance * counts(near, totalFrom + t * step - near);
    }
  }
  return sum;
}

/** Part of a cell around `current` that lies above `limit`. */
const above = (current: number, limit: number, step: number): number =>
  Math.min(1, Math.max(0, (current - limit) / step + 0.5));

/** Share of moments at which at least one of the two draws more than its limit, amperes. */
export const chanceEither = (law: JointLaw, limits: Readonly<Record<District, number>>): number =>
  over(law, (near, far) => 1 - (1 - above(near, limits.near, law.step)) * (1 - above(far, limits.far, law.step)));

/**
 * What each draws on average, amperes, at the moments when the whole layout draws what it does not pass in the share `q` of moments.
 * Where a consumer is does not depend on what it draws, so each has its share of the total, whatever the total is. Source: own-derivation.
 */
export function bothBusy(total: Distribution, share: number, q = 0.95): Readonly<Record<District, number>> {
  const whole = quantile(total, q);
  return { near: share * whole, far: (1 - share) * whole };
}
