// How the total current drawn is distributed, exactly: no simulation. Method: a dynamic programme over groups of trains
// and the number of movers among them; each row is a mass function on a current grid (elementary symmetric convolution,
// the multi-state relative of the Poisson-binomial recursion; source: hong-2013 for the two-state case). Every term is
// positive, so the tails keep their relative accuracy. Where many draw, each draw split between two cells would add up to a law that is
// too wide; there `fittingDemand` goes through the characteristic function (smooth.ts), on a grid that is laid over the total alone.
import type { Span } from '../units.ts';
import type { Draw, Kernel, Row } from './kernels.ts';
import { Convolver, isConstant, kernelOf, withShare } from './kernels.ts';
import { GRID_STEPS, leastOf, momentsOf, mostOf, smoothLaw } from './smooth.ts';

export type { Draw } from './kernels.ts';

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
  /** Share of moments at which each of them draws, by itself; always where left out. */
  readonly chance?: number;
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
  /** True where an evenly spread draw is always in it: then a cell stands for all currents from half a step below to half a step above. */
  readonly spread?: boolean;
  /** Least and most that can be drawn at all, amperes, where they are known; the outermost cells may reach a little beyond. */
  readonly ends?: Span;
}

/** Steps in which totals of few trains are reckoned, amperes. Source: own-choice. */
export const GRID_STEP = 0.005;
/** Most consumers that are reckoned. Source: own-choice. */
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

/** Up to so many draws that vary are folded one by one; above, the sum is smooth. Source: own-choice. */
const FEW_DRAWS = 12;
/**
 * Cells that the table of kernels may take: for a few draws as many as show the tails, else as many as still answer at once. Source:
 * own-choice.
 */
const MOST_CELLS = { few: 6000, many: 1500 } as const;

/** The same on the grid that fits it, and whose step the result names: tails down to 1e-5 are right to 2 %. `step` is not read. */
export function fittingDemand(input: DemandInput): Distribution {
  const share = input.share ?? 1;
  check(input, input.moving, input.moving, share, GRID_STEP);
  const ends = endsOf(input, share);
  const few = drawsThatVary(input, share) <= FEW_DRAWS;
  const smooth = few ? undefined : smoothLaw({ ...input, share }, ends);
  if (smooth !== undefined) return { ...smooth, spread: true, ends };
  const range = share === 1 ? ends.to - steadyPart(input) : ends.to;
  const step = GRID_STEPS.find((one) => range / one <= MOST_CELLS[few ? 'few' : 'many']) ?? 1;
  return demand({ ...input, step });
}

function drawsThatVary(input: DemandInput, share: number): number {
  const varies = ({ draw, chance = 1 }: FixedGroup): boolean => share * chance < 1 || !isConstant(draw);
  const standing = input.trains.filter((group) => varies({ count: group.count, draw: group.standing }));
  return countOf(input.fixed.filter(varies)) + Math.max(input.moving, countOf(standing));
}

/** What is drawn at every moment, whatever moves. */
function steadyPart({ trains, fixed }: DemandInput): number {
  const always = [
    ...fixed,
    ...trains.map((one) => ({ count: one.count, draw: one.alwaysMoving === true ? one.running : one.standing })),
  ];
  return always
    .filter((one) => !('chance' in one) || one.chance === undefined || one.chance === 1)
    .reduce((sum, { count, draw }) => sum + (isConstant(draw) ? count * draw.span.from : 0), 0);
}

/** Least and most that the total can be, amperes: the movers are those that make it so. */
export function endsOf(input: DemandInput, share: number): Span {
  const always = input.trains.filter((group) => group.alwaysMoving === true);
  const free = input.trains.filter((group) => group.alwaysMoving !== true);
  const movers = input.moving - countOf(always);
  const steady: FixedGroup[] = [...input.fixed, ...always.map(({ count, running }) => ({ count, draw: running }))];
  const end = (of: (draw: Draw) => number, order: 1 | -1): number => {
    const extras = free.flatMap(({ count, running, standing }) =>
      Array.from({ length: count }, () => of(running) - of(standing)),
    );
    return [
      ...steady.map(({ count, draw, chance = 1 }) => (chance < 1 && order === 1 ? 0 : count * of(draw))),
      ...free.map(({ count, standing }) => count * of(standing)),
      ...extras.sort((a, b) => order * (a - b)).slice(0, movers),
    ].reduce((sum, part) => sum + part, 0);
  };
  const to = end(mostOf, -1);
  return { from: share < 1 ? 0 : Math.min(to, end(leastOf, 1)), to };
}

/** The same for every number of movers from `least` to `most`, out of one pass. */
export function demandRows(input: DemandInput, least: number, most: number): Distribution[] {
  const share = input.share ?? 1;
  const step = input.step ?? GRID_STEP;
  check(input, least, most, share, step);
  const kernel = (draw: Draw): Kernel => withShare(kernelOf(draw, step), share);
  const always = input.trains.filter((group) => group.alwaysMoving === true);
  const free = input.trains.filter((group) => group.alwaysMoving !== true);
  const table = new Table(most - countOf(always), least - countOf(always), countOf(free));

  // Constant draws that are there at every moment are one number, added at the end.
  let base = 0;
  const everyMoment = (count: number, draw: Draw): void => {
    if (share === 1 && isConstant(draw)) base += count * draw.span.from;
    else table.everyRow(kernel(draw), count);
  };
  for (const { count, draw, chance = 1 } of input.fixed) {
    if (chance === 1) everyMoment(count, draw);
    else table.everyRow(withShare(kernelOf(draw, step), share * chance), count);
  }
  for (const group of always) everyMoment(group.count, group.running);
  const groups = free
    .filter((group) => group.count > 0)
    .map((group) => {
      const beyondBase = share === 1 ? extraWhenMoving(group) : undefined;
      if (beyondBase !== undefined) base += group.count * meanOf(group.standing);
      const standing = beyondBase === undefined ? kernel(group.standing) : undefined;
      return { count: group.count, running: kernel(beyondBase ?? group.running), standing };
    });
  // The widest last: by then the fewest rows are wanted.
  groups.sort((a, b) => a.running.last - b.running.last);
  for (const { count, running, standing } of groups) {
    if (standing === undefined) table.groupOnBase(running, count);
    else table.group(running, standing, count);
  }
  if (base > 0) table.everyRow(kernelOf(constant(base), step), 1);

  const rows: Distribution[] = [];
  for (let movers = least; movers <= most; movers++) {
    const mass = table.massOf(movers - countOf(always), binomial(countOf(free), movers - countOf(always)));
    const ends = endsOf({ ...input, moving: movers }, share);
    rows.push(hasSpread(input, movers) ? { step, mass, spread: true, ends } : { step, mass, ends });
  }
  return rows;
}

// Whether whatever moves there is an evenly spread draw in the total.
function hasSpread(input: DemandInput, movers: number): boolean {
  const isSpread = (draw: Draw): boolean => draw.kind === 'even' && !isConstant(draw);
  const steady = input.trains.filter((group) => !isSpread(group.running));
  return (
    movers > countOf(steady) ||
    input.fixed.some(({ count, draw, chance = 1 }) => count > 0 && (isSpread(draw) || chance < 1))
  );
}

// What a moving train draws beyond a standing one, where that is an even spread that never goes below nothing.
function extraWhenMoving(group: TrainGroup): Draw | undefined {
  const { running, standing } = group;
  if (!isConstant(standing) || running.kind !== 'even' || running.span.from < standing.span.from) return undefined;
  return even(running.span.from - standing.span.from, running.span.to - standing.span.from);
}

/**
 * Mixture of regimes that exclude each other (trains together, trains apart), on the finest of their grids; variances are never added
 * across. The cells of all are taken as spread; least and most are left to whoever knows them.
 */
export function mixFitting(
  regimes: readonly { readonly probability: number; readonly distribution: Distribution }[],
): Distribution {
  const step = Math.min(...regimes.map(({ distribution }) => distribution.step));
  const length = Math.max(
    ...regimes.map(({ distribution: { mass, step: own } }) => Math.ceil((mass.length * own) / step) + 2),
  );
  const mass = new Float64Array(length);
  for (const { probability, distribution } of regimes) {
    for (let i = 0; i < distribution.mass.length; i++) {
      const weight = probability * at(distribution.mass, i);
      if (weight <= 0) continue;
      const [from, to] = [(i - 0.5) * distribution.step, (i + 0.5) * distribution.step];
      // Bars counted from half a step below nothing are the cells of the new grid.
      shareOut(from + step / 2, to + step / 2, step, (cell, part) => {
        mass[cell] = at(mass, cell) + weight * part;
      });
    }
  }
  return { step, mass, spread: true };
}

/** Chance that the draw is above `limit` amperes (strictly). Of the cell at the limit of a spread draw, the part above it counts. */
export function chanceAbove(distribution: Distribution, limit: number): number {
  const { mass, step, spread } = distribution;
  const place = limit / step;
  let sum = limit < 0 ? at(mass, 0) : 0;
  for (let i = mass.length - 1; i > 0; i--) {
    const above = spread === true ? Math.min(1, i + 0.5 - place) : Number(i > place + 1e-6);
    if (above <= 0) break;
    sum += at(mass, i) * above;
  }
  return Math.min(1, sum);
}

/** Smallest current, amperes, with at least the share `q` of moments at or below it; 0 < q < 1. Of a spread draw within the cell, else a grid current. */
export function quantile(distribution: Distribution, q: number): number {
  const { mass, step, spread, ends } = distribution;
  const within = (current: number): number =>
    ends === undefined ? current : Math.min(Math.max(current, ends.from), ends.to);
  let below = 0;
  for (let i = 0; i < mass.length; i++) {
    const cell = at(mass, i);
    below += cell;
    if (below < q - 1e-12) continue;
    return within(spread === true && cell > 0 ? (i + 0.5 - Math.max(0, below - q) / cell) * step : i * step);
  }
  return within((mass.length - 1) * step);
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
    least: distribution.ends?.from ?? Math.max(0, least) * step,
    most: distribution.ends?.to ?? most * step,
  };
}

export interface Bar {
  readonly from: number;
  readonly to: number;
  readonly probability: number;
}

/**
 * The distribution gathered into bars `width` amperes wide, from the first to the last that holds anything; a grid current on an edge
 * belongs to the lower bar, and a cell of a spread draw to all bars that it reaches into.
 */
export function histogram(distribution: Distribution, width: number): Bar[] {
  const { mass, step, spread } = distribution;
  const bars = new Map<number, number>();
  const add = (bar: number, weight: number) => bars.set(bar, (bars.get(bar) ?? 0) + weight);
  for (let i = 0; i < mass.length; i++) {
    const weight = at(mass, i);
    if (weight <= 1e-12) continue;
    if (spread === true) shareOut((i - 0.5) * step, (i + 0.5) * step, width, (bar, part) => add(bar, weight * part));
    else add(Math.max(0, Math.ceil((i * step) / width - 1e-9) - 1), weight);
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

/** Whether a bar counts as above a current, amperes: by its middle. */
export const isAbove = ({ from, to }: Bar, amps: number): boolean => (from + to) / 2 > amps;

/** The same bars in at most `most` rows (whole number >= 1), neighbours taken together. */
export function gather(bars: readonly Bar[], most: number): Bar[] {
  const per = Math.max(1, Math.ceil(bars.length / most));
  return Array.from({ length: Math.ceil(bars.length / per) }, (_, i) => {
    const part = bars.slice(i * per, (i + 1) * per);
    const from = part[0]?.from ?? 0;
    return { from, to: part.at(-1)?.to ?? from, probability: part.reduce((sum, bar) => sum + bar.probability, 0) };
  });
}

/** Parts of a cell by the bars that it reaches into. */
function shareOut(from: number, to: number, width: number, add: (bar: number, part: number) => void): void {
  const last = Math.max(0, Math.ceil(to / width - 1e-9) - 1);
  for (let bar = Math.max(0, Math.floor(from / width + 1e-9)); bar <= last; bar++) {
    const start = bar === 0 ? from : Math.max(from, bar * width);
    add(bar, (Math.min(to, (bar + 1) * width) - start) / (to - from));
  }
}

/** Mean of a draw, amperes. */
export const meanOf = (draw: Draw): number => momentsOf(draw).mean;

/** Mass rows by number of movers so far, not yet divided by the number of ways to choose them. */
class Table {
  readonly #most: number;
  readonly #least: number;
  readonly #convolver = new Convolver();
  #left: number;
  /** Rows from `#first` movers on. */
  #rows: Row[] = [{ low: 0, mass: Float64Array.of(1) }];
  #first = 0;

  constructor(most: number, least: number, trains: number) {
    this.#most = most;
    this.#least = least;
    this.#left = trains;
  }

  everyRow(kernel: Kernel, count: number): void {
    this.#rows = this.#rows.map((row) => {
      let sum = row;
      for (let i = 0; i < count; i++) sum = this.#convolver.apply(kernel, sum);
      return sum;
    });
  }

  /** Adds `count` alike trains of which a standing one adds nothing: row m is the sum of ways(j) * running^j * row (m - j). */
  groupOnBase(running: Kernel, count: number): void {
    const [lowest, highest] = this.#rangeAfter(count);
    const rows: Row[] = [];
    for (let movers = lowest; movers <= highest; movers++) {
      rows.push(
        this.#rows.length === 1
          ? this.#power(running, count, movers, rows.at(-1))
          : this.#horner(running, count, movers),
      );
    }
    this.#rows = rows;
    this.#first = lowest;
  }

  /** Adds `count` alike trains one by one: row m becomes standing * row m + running * row (m - 1). */
  group(running: Kernel, standing: Kernel, count: number): void {
    const moving = this.#most - this.#first;
    if (this.#rows.length === 1 && this.#left === count && this.#least === this.#most) {
      // All that may move are alike: whichever of them do, so many move and the others stand.
      this.everyRow(running, moving);
      this.everyRow(standing, count - moving);
      this.#rows = this.#rows.map((row) => scaled(row, binomial(count, moving)));
      this.#first = this.#most;
      return;
    }
    for (let i = 0; i < count; i++) {
      const [lowest, highest] = this.#rangeAfter(1);
      const rows: Row[] = [];
      for (let movers = lowest; movers <= highest; movers++) {
        const stands = this.#rowOf(movers);
        const moves = this.#rowOf(movers - 1);
        const sum = moves === undefined ? undefined : this.#convolver.apply(running, moves);
        rows.push(stands === undefined ? (sum ?? NOTHING) : this.#convolver.apply(standing, stands, sum, 1));
      }
      this.#rows = rows;
      this.#first = lowest;
    }
  }

  massOf(movers: number, ways: number): Float64Array {
    const { low, mass } = this.#rowOf(movers) ?? NOTHING;
    const whole = new Float64Array(low + mass.length);
    for (let i = 0; i < mass.length; i++) whole[low + i] = at(mass, i) / ways;
    return whole;
  }

  // Rows that the trains still to come can take to the wanted ones.
  #rangeAfter(count: number): readonly [lowest: number, highest: number] {
    this.#left -= count;
    const last = this.#first + this.#rows.length - 1;
    return [Math.max(this.#first, this.#least - this.#left), Math.min(this.#most, last + count)];
  }

  #rowOf(movers: number): Row | undefined {
    return this.#rows[movers - this.#first];
  }

  // The only row there is, with one mover more than in `before`.
  #power(running: Kernel, count: number, movers: number, before: Row | undefined): Row {
    const more = movers - this.#first;
    if (before !== undefined) return scaled(this.#convolver.apply(running, before), (count - more + 1) / more);
    let sum = this.#rows[0] ?? NOTHING;
    for (let j = 0; j < more; j++) sum = this.#convolver.apply(running, sum);
    return scaled(sum, binomial(count, more));
  }

  #horner(running: Kernel, count: number, movers: number): Row {
    const most = Math.min(count, movers - this.#first);
    let sum = scaled(this.#rowOf(movers - most) ?? NOTHING, binomial(count, most));
    for (let j = most - 1; j >= 0; j--) {
      sum = this.#convolver.pass(running, sum, this.#rowOf(movers - j), binomial(count, j));
    }
    return { low: sum.low, mass: sum.mass.slice() };
  }
}

const NOTHING: Row = { low: 0, mass: Float64Array.of(0) };

function scaled(row: Row, factor: number): Row {
  return { low: row.low, mass: row.mass.map((mass) => mass * factor) };
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

function check(input: DemandInput, least: number, most: number, share: number, step: number): void {
  for (const { count } of [...input.trains, ...input.fixed]) {
    if (!Number.isInteger(count) || count < 0) fail(`count ${count} is not a whole number from 0 up`);
  }
  for (const { running, standing } of input.trains) for (const draw of [running, standing]) checkDraw(draw);
  for (const { draw, chance = 1 } of input.fixed) {
    checkDraw(draw);
    if (!(chance >= 0 && chance <= 1)) fail(`chance ${chance} is outside 0 to 1`);
  }
  checkMovers(input, least, most);
  if (!(share > 0 && share <= 1)) fail(`share ${share} is outside 0 to 1`);
  if (!(step >= 0.0005 && step <= 1)) fail(`grid step ${step} A is outside 0.0005 to 1 A`);
}

/** Most that one consumer may draw, amperes: more is no model. Source: own-choice. */
export const MOST_DRAW = 100;

function fail(what: string): never {
  throw new RangeError(`demand: ${what}`);
}

function checkDraw(draw: Draw): void {
  const currents = draw.kind === 'even' ? [draw.span.from, draw.span.to] : draw.states.map((state) => state.current);
  for (const current of currents) {
    if (!(current >= 0 && current <= MOST_DRAW)) fail(`current ${current} A is outside 0 to ${MOST_DRAW} A`);
  }
  if (draw.kind === 'even') {
    if (draw.span.from > draw.span.to) fail(`span from ${draw.span.from} A to ${draw.span.to} A runs backwards`);
    return;
  }
  const sum = draw.states.reduce((total, state) => total + state.probability, 0);
  if (!(Math.abs(sum - 1) <= 1e-9)) fail(`state probabilities add up to ${sum}, not 1`);
}

function checkMovers(input: DemandInput, least: number, most: number): void {
  const trains = countOf(input.trains);
  const always = countOf(input.trains.filter((group) => group.alwaysMoving === true));
  if (trains + countOf(input.fixed) > MOST_CONSUMERS) fail(`more than ${MOST_CONSUMERS} consumers`);
  if (!Number.isInteger(least) || least < always) fail(`${least} moving, but ${always} always move`);
  if (!Number.isInteger(most) || most > trains) fail(`${most} moving of ${trains} trains`);
  if (least > most) fail(`rows from ${least} to ${most}`);
}
