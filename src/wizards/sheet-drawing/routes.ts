// How the track runs from one section to the next: along the lines of a grid, level, at 45° or upright, never through a section or its name, and
// bending by no more than 45° at once. Two tracks may cross, but never lie on each other.
import type { End } from './ends.ts';

/** A point of the grid. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The end of a section: where it is, and which section's it is (`section` counts from 0). */
export interface EndPoint extends Point {
  readonly section: number;
  readonly end: End;
}

export interface Route {
  /** From end to end, a point at each step. */
  readonly points: readonly Point[];
  /** Where its joint is: this many steps along it, in halves. */
  readonly mark: number;
}

interface Field {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Directions in eighths of a turn, from right by way of down. */
const DX = [1, 1, 0, -1, -1, -1, 0, 1] as const;
const DY = [0, 1, 1, 1, 0, -1, -1, -1] as const;

/** Costs in tenths of a step. */
const STEP = 10;
const SLANT = 14;
const UPRIGHT = 4;
const BEND = 4;
const CROSSING = 60;
const SHARED = 40;
const OVERLAP = 400;

/** What lies on a point: bits 0 to 3, a track straight through it along that line; BENT, a track that bends there; SHUT, nothing may pass. */
const BENT = 16;
const SHUT = 32;
const JOINT = 64;
const ANY_TRACK = 31;

export class Router {
  private readonly field: Field;
  private readonly taken: Uint8Array;
  /** What is shut, alone. */
  private readonly closed: Uint8Array;
  /** The end whose own track alone lies here, counted from 1: other joints of that end may begin on it. */
  private readonly stub: Uint16Array;
  private readonly costs: Int32Array;
  private readonly from: Int32Array;
  private readonly seen: Uint32Array;
  /** The search that has gone on from a state: it is taken from the queue once more where a cheaper way to it was found later. */
  private readonly left: Uint32Array;
  private search = 0;

  constructor(field: Field) {
    this.field = field;
    const points = field.width * field.height;
    this.taken = new Uint8Array(points);
    this.closed = new Uint8Array(points);
    this.stub = new Uint16Array(points);
    this.costs = new Int32Array(points * 8);
    this.from = new Int32Array(points * 8);
    this.seen = new Uint32Array(points * 8);
    this.left = new Uint32Array(points * 8);
  }

  /** Takes up all that was laid; what is shut stays so. */
  clear(): void {
    this.stub.fill(0);
    this.taken.set(this.closed);
  }

  /** Nothing may pass here but what ends here. */
  shut(point: Point): void {
    const at = this.index(point.x, point.y);
    if (at === undefined) return;
    this.taken[at] = SHUT;
    this.closed[at] = SHUT;
  }

  /**
   * The best way from end to end, or nothing where there is none, or none that costs `most` at most (tenths of a step). With `overlap`, other
   * tracks are in nobody's way.
   */
  lay(
    from: EndPoint,
    to: EndPoint,
    { most = Number.POSITIVE_INFINITY, overlap = false }: Bounds = {},
  ): Route | undefined {
    const points = this.find(from, to, { most, overlap });
    if (points === undefined) return undefined;
    const mark =
      this.markOn(points, 0) ?? (overlap ? (this.markOn(points, ANY_TRACK) ?? points.length - 1) : undefined);
    if (mark === undefined) return undefined;
    const route = { points, mark };
    this.keep(route, from, to);
    return route;
  }

  private index(x: number, y: number): number | undefined {
    const { left, top, width, height } = this.field;
    const [column, row] = [x - left, y - top];
    return column < 0 || row < 0 || column >= width || row >= height ? undefined : row * width + column;
  }

  private at(index: number): Point {
    const { left, top, width } = this.field;
    return { x: left + (index % width), y: top + Math.floor(index / width) };
  }

  private find(from: EndPoint, to: EndPoint, bounds: Required<Bounds>): readonly Point[] | undefined {
    const start = this.index(from.x, from.y);
    const goal = this.index(to.x, to.y);
    if (start === undefined || goal === undefined) return undefined;
    this.search += 1;
    const { search } = this;
    const queue = new Queue();
    const { width } = this.field;
    const wanted = { start, goal, column: goal % width, row: Math.floor(goal / width), from, to, ...bounds };
    for (const way of outward(from.end))
      this.enter(queue, start * 8 + way, 0, -1, start % width, Math.floor(start / width), wanted);
    for (let state = queue.take(); state !== undefined; state = queue.take()) {
      if (this.left[state] === search) continue;
      this.left[state] = search;
      if (state >> 3 === goal && (this.from[state] ?? -1) >= 0) return this.trace(state);
      this.spread(queue, state, wanted);
    }
    return undefined;
  }

  /** Goes one step on from a state, in each direction that it may. */
  private spread(queue: Queue, state: number, search: Search): void {
    const { width } = this.field;
    const here = state >> 3;
    const way = state & 7;
    const row = Math.floor(here / width);
    const column = here - row * width;
    const first = here === search.start && (this.from[state] ?? -1) < 0;
    const soFar = this.costs[state] ?? 0;
    // No bend right at the end of a section.
    const bend = first ? 0 : 1;
    for (let turn = -bend; turn <= bend; turn += 1) {
      const out = (way + turn) & 7;
      const across = column + (DX[out] ?? 0);
      const down = row + (DY[out] ?? 0);
      if (!this.isIn(across, down)) continue;
      const next = down * width + across;
      if (this.isShut(next, out, search)) continue;
      const through = first ? 0 : this.passing(here, way, out, search);
      if (through === undefined) continue;
      this.enter(queue, next * 8 + out, soFar + through + stepCost(out, turn), state, across, down, search);
    }
  }

  private isIn(column: number, row: number): boolean {
    return column >= 0 && row >= 0 && column < this.field.width && row < this.field.height;
  }

  /** Whether one may not come here in this direction at all. */
  private isShut(next: number, way: number, { goal, to }: Search): boolean {
    return next === goal ? !arrives(way, to.end) : ((this.taken[next] ?? 0) & SHUT) !== 0;
  }

  /** What it costs to pass a point, coming in one direction and leaving in another; nothing where it may not be. */
  private passing(here: number, way: number, out: number, { from, to, overlap }: Search): number | undefined {
    const taken = this.taken[here] ?? 0;
    if (taken === 0) return 0;
    if (overlap) return (taken & SHUT) === 0 ? OVERLAP : undefined;
    if ((taken & (SHUT | JOINT)) !== 0) return undefined;
    const stub = this.stub[here] ?? 0;
    if (stub !== 0 && (stub === endNumber(from) || stub === endNumber(to))) return SHARED;
    const straight = way === out && (taken & BENT) === 0 && (taken & (1 << (way & 3))) === 0;
    return straight ? CROSSING : undefined;
  }

  /** Puts a state into the queue that was not reached as cheaply before; `x` and `y` say where it is. */
  private enter(queue: Queue, state: number, cost: number, before: number, x: number, y: number, to: Search): void {
    if (this.seen[state] === this.search && (this.costs[state] ?? 0) <= cost) return;
    this.seen[state] = this.search;
    this.costs[state] = cost;
    this.from[state] = before;
    const across = Math.abs(to.column - x);
    const down = Math.abs(to.row - y);
    const slant = Math.min(across, down);
    const least = cost + SLANT * slant + STEP * (across - slant) + (STEP + UPRIGHT) * (down - slant);
    if (least <= to.most) queue.put(state, least);
  }

  private trace(state: number): readonly Point[] {
    const points: Point[] = [];
    for (let one = state; one >= 0; one = this.from[one] ?? -1) points.push(this.at(one >> 3));
    return points.reverse();
  }

  /** Where the joint stands: as near to the middle as there is a place of its own, away from ends, bends and crossings. */
  private markOn(points: readonly Point[], on: number): number | undefined {
    const steps = points.length - 1;
    for (let away = 0; away <= steps - 2; away += 1) {
      const half = [steps - away, steps + away].find((one) => this.mayStand(points, one, on));
      if (half !== undefined) return half;
    }
    return undefined;
  }

  private mayStand(points: readonly Point[], half: number, on: number): boolean {
    if (half % 2 === 0 && bendsAt(points, half / 2)) return false;
    return aroundMark(points, half).every(({ x, y }) => {
      const index = this.index(x, y);
      return index !== undefined && ((this.taken[index] ?? 0) & ~on) === 0;
    });
  }

  private keep(route: Route, from: EndPoint, to: EndPoint): void {
    route.points.slice(1, -1).forEach((point, before) => {
      const at = this.index(point.x, point.y);
      if (at === undefined) return;
      const whose = stubAt(route, before + 1, from, to);
      this.stub[at] = this.taken[at] === 0 || this.stub[at] === whose ? whose : 0;
      this.taken[at] = (this.taken[at] ?? 0) | lying(route, before + 1);
    });
    for (const { x, y } of aroundMark(route.points, route.mark)) {
      const at = this.index(x, y);
      if (at !== undefined) this.taken[at] = (this.taken[at] ?? 0) | JOINT;
    }
  }
}

/** Whose end's own track alone lies at a point of a route: the two ends have numbers from 1, 0 is nobody's. */
function stubAt({ points, mark }: Route, i: number, from: EndPoint, to: EndPoint): number {
  if (i <= STUB && 2 * i < mark - 1) return endNumber(from);
  return points.length - 1 - i <= STUB && 2 * i > mark + 1 ? endNumber(to) : 0;
}

/** What a route leaves at one of its points. */
const lying = ({ points }: Route, i: number): number => (bendsAt(points, i) ? BENT : 1 << (wayAt(points, i) & 3));

/** The points that a joint needs for itself: its own, those it lies between, and on a slant the other two corners. */
function aroundMark(points: readonly Point[], half: number): readonly Point[] {
  const [one, other] = [points[Math.floor(half / 2)], points[Math.ceil(half / 2)]];
  if (one === undefined || other === undefined || one === other) return one === undefined ? [] : [one];
  if (one.x === other.x || one.y === other.y) return [one, other];
  return [one, other, { x: one.x, y: other.y }, { x: other.x, y: one.y }];
}

export interface Bounds {
  readonly most?: number;
  readonly overlap?: boolean;
}

interface Search extends Required<Bounds> {
  readonly start: number;
  readonly goal: number;
  /** Where the goal lies in the field. */
  readonly column: number;
  readonly row: number;
  readonly from: EndPoint;
  readonly to: EndPoint;
}

/** So many steps from its end a section's track may fork to several joints. */
const STUB = 2;
function stepCost(way: number, turn: number): number {
  const upright = way === 2 || way === 6 ? UPRIGHT : 0;
  return ((way & 1) === 1 ? SLANT : STEP) + upright + (turn === 0 ? 0 : BEND);
}

const endNumber = ({ section, end }: EndPoint): number => 2 * section + (end === 'left' ? 1 : 2);

/** The directions in which a track leaves an end. */
const outward = (end: End): readonly number[] => (end === 'right' ? [0, 1, 7] : [4, 3, 5]);

/** Whether one comes to an end from its outside. */
const arrives = (way: number, end: End): boolean => outward(end).includes((way + 4) & 7);

/** The direction from a point of a way to its next one. */
export function wayAt(points: readonly Point[], i: number): number {
  const [one, other] = [points[i], points[i + 1]];
  if (one === undefined || other === undefined) return 0;
  return WAYS[3 * Math.sign(other.y - one.y) + Math.sign(other.x - one.x) + 4] ?? 0;
}

/** Directions by where the next point lies, row by row; to the point itself there is none. */
const WAYS = [5, 6, 7, 4, 0, 0, 3, 2, 1] as const;

const bendsAt = (points: readonly Point[], i: number): boolean =>
  i > 0 && i < points.length - 1 && wayAt(points, i - 1) !== wayAt(points, i);

/** States by what they cost at least, a whole number; of those that cost the same, the one put in last, since it lies nearest to the goal. */
class Queue {
  private readonly piles: number[][] = [];
  private least = 0;

  put(state: number, cost: number): void {
    const pile = this.piles[cost];
    if (pile === undefined) this.piles[cost] = [state];
    else pile.push(state);
    if (cost < this.least) this.least = cost;
  }

  take(): number | undefined {
    for (; this.least < this.piles.length; this.least += 1) {
      const state = this.piles[this.least]?.pop();
      if (state !== undefined) return state;
    }
    return undefined;
  }
}
