// A second way to the law of a large fleet, which shares no code with the engine: every consumer is folded in one by one on a grid of
// 0.1 mA, where an even spread is so many equal cells (a running sum), and every choice of movers by kind is weighed by its chance.

/** Alike trains, or alike consumers that are always on. Currents in amperes, whole multiples of 0.1 mA. */
export interface FineTrains {
  readonly count: number;
  readonly from: number;
  readonly to: number;
  readonly standing: number;
}
export type FineFixed = Omit<FineTrains, 'standing'>;

export interface FineFleet {
  readonly trains: readonly FineTrains[];
  readonly moving: number;
  readonly fixed: readonly FineFixed[];
  /** Chance that any one consumer is in the district that is looked at; all of them where left out. */
  readonly share?: number;
}

/** Chances of the cells; cell i stands for i * FINE_STEP amperes. */
export type FineLaw = Float64Array;

export const FINE_STEP = 1e-4;

/** The law of the total draw of a fleet, or of the part of it in one district. */
export function fineLaw({ trains, moving, fixed, share = 1 }: FineFleet): FineLaw {
  const all = choose(
    trains.reduce((sum, one) => sum + one.count, 0),
    moving,
  );
  let mass = new Float64Array(1);
  for (const movers of choices(trains, moving)) {
    let part = Float64Array.of(movers.reduce((product, k, g) => product * choose(trains[g]?.count ?? 0, k), 1) / all);
    for (const [g, { count, from, to, standing }] of trains.entries()) {
      const runs = movers[g] ?? 0;
      for (let i = 0; i < count; i++) {
        part = i < runs ? withOne(part, { from, to }, share) : withOne(part, { from: standing, to: standing }, share);
      }
    }
    mass = sumOf(mass, part);
  }
  for (const one of fixed) for (let i = 0; i < one.count; i++) mass = withOne(mass, one, share);
  return mass;
}

/** Every way to share the movers out over the kinds. */
function choices(trains: readonly FineTrains[], moving: number): number[][] {
  const [first, ...others] = trains;
  if (first === undefined) return moving === 0 ? [[]] : [];
  const found: number[][] = [];
  for (let k = 0; k <= Math.min(first.count, moving); k++) {
    for (const rest of choices(others, moving - k)) found.push([k, ...rest]);
  }
  return found;
}

function choose(n: number, k: number): number {
  let value = 1;
  for (let i = 1; i <= k; i++) value = (value * (n - k + i)) / i;
  return value;
}

/** One consumer more, who is here with the chance `share`. */
function withOne(mass: Float64Array, { from, to }: Pick<FineFixed, 'from' | 'to'>, share: number) {
  const width = Math.round((to - from) / FINE_STEP);
  const spread = width === 0 ? mass : withBox(mass, width);
  const shift = Math.round(from / FINE_STEP);
  const target = new Float64Array(spread.length + shift);
  for (let i = 0; i < spread.length; i++) target[i + shift] = share * (spread[i] ?? 0);
  if (share < 1) for (let i = 0; i < mass.length; i++) target[i] = (target[i] ?? 0) + (1 - share) * (mass[i] ?? 0);
  return target;
}

/** A spread over so many cells has its mass in their middles: half of it at this end of the cell, half at the next. */
function withBox(mass: Float64Array, width: number) {
  const target = new Float64Array(mass.length + width);
  let sum = 0;
  let before = 0;
  for (let i = 0; i < target.length; i++) {
    sum += (mass[i] ?? 0) - (i >= width ? (mass[i - width] ?? 0) : 0);
    const inside = Math.max(0, sum);
    target[i] = (inside + before) / (2 * width);
    before = inside;
  }
  return target;
}

function sumOf(one: Float64Array, other: Float64Array) {
  const sum = new Float64Array(Math.max(one.length, other.length));
  for (let i = 0; i < sum.length; i++) sum[i] = (one[i] ?? 0) + (other[i] ?? 0);
  return sum;
}

/** Chance of more than `limit` amperes; of the cell at the limit the part above it. */
export function fineChanceAbove(mass: FineLaw, limit: number): number {
  const place = limit / FINE_STEP;
  let sum = 0;
  for (let i = mass.length - 1; i >= 0; i--) {
    const above = Math.min(1, i + 0.5 - place);
    if (above <= 0) break;
    sum += (mass[i] ?? 0) * above;
  }
  return sum;
}

/** The limit that is passed with the chance `tail`, amperes. */
export function finePoint(mass: FineLaw, tail: number): number {
  let sum = 0;
  for (let i = mass.length - 1; i >= 0; i--) {
    const cell = mass[i] ?? 0;
    if (sum + cell >= tail) return (i + 0.5 - (tail - sum) / cell) * FINE_STEP;
    sum += cell;
  }
  return 0;
}

export function fineMoments(mass: FineLaw): { readonly mean: number; readonly deviation: number } {
  let mean = 0;
  for (let i = 0; i < mass.length; i++) mean += i * (mass[i] ?? 0);
  let square = 0;
  for (let i = 0; i < mass.length; i++) square += (i - mean) ** 2 * (mass[i] ?? 0);
  return { mean: mean * FINE_STEP, deviation: Math.sqrt(square) * FINE_STEP };
}
