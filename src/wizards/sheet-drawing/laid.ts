// The layout laid out as a picture: where each section, its name and each joint lies, in pixels. Districts change nothing of it.
import { atOnce, type InParts } from '../../engine/index.ts';
import { type Cell, cellsOf, type Tracks } from './cells.ts';
import { type End, endsOf } from './ends.ts';
import { LETTERS, LINE, LINES, linesOfAll, widthOf } from './labels.ts';
import { type EndPoint, type Point, type Route, Router, wayAt } from './routes.ts';

/** One step of the grid on which tracks run, pixels. Source: own-choice. */
export const STEP = 24;
/** How long a section is drawn, steps: a diagram tells what follows what, not how long it is. */
const BAR = 4;
/** Pixels between the middle of a track and the name above it: room for the letter of its district. */
const CLEAR = 13;
/** Pixels from a name to the middle of a track beside it: a step, since one at 45° comes nearer between two points. */
const BESIDE = STEP;
/** Columns and rows of the grid, in steps: just wide enough for one track between, and wider where more have to pass. */
const PITCHES = [0, 1, 2, 3, 5, 7, 10].map((more) => ({ column: BAR + 2 + more, row: 4 + more }));

/** A track that comes to be longer than this, in steps of level track, is laid before the others: where none is in its way yet. Source: own-choice. */
const mostOf = (far: number): number => 10 * (1.5 * far + 15);
/** So often at each pitch. Source: own-choice. */
const TURNS = 4;

interface Pitch {
  readonly column: number;
  readonly row: number;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface LaidSection {
  readonly id: string;
  /** The track runs from `left` to `right` at `y`. */
  readonly left: number;
  readonly right: number;
  readonly y: number;
  /** Lines of its name, each with its middle and the foot of its letters. */
  readonly lines: readonly { readonly text: string; readonly x: number; readonly y: number }[];
  readonly label: Box;
}

export interface LaidJoint {
  readonly id: string;
  /** The track of each of the two sections, from its end to the joint. */
  readonly from: readonly Point[];
  readonly to: readonly Point[];
  /** Where both meet, and how the track lies there: degrees, 0 level, 90 upright. */
  readonly at: Point;
  readonly turned: number;
  readonly ends: { readonly from: End; readonly to: End };
}

/** Where one track passes over another; `part`: which half of its joint's track it is. */
export interface Over extends Point {
  readonly joint: string;
  readonly part: 'from' | 'to';
  readonly turned: number;
}

export interface Laid {
  readonly width: number;
  readonly height: number;
  readonly sections: readonly LaidSection[];
  readonly joints: readonly LaidJoint[];
  /** Where the track of a joint passes over another one without being joined to it. */
  readonly over: readonly Over[];
}

/** Names what a section is called in the drawing. */
export type NameOf = (section: Tracks['sections'][number]) => string;

/** Lays a layout out. A joint to a section that is not there is left away. */
export const layOut = (tracks: Tracks, nameOf: NameOf): Laid => atOnce(layOutInParts(tracks, nameOf));

/** The same a part at a time: the first time on a page a large layout takes longer than a hand should wait. */
export function* layOutInParts({ sections, joints }: Tracks, nameOf: NameOf): InParts<Laid> {
  const there = new Set(sections.map(({ id }) => id));
  const tracks = { sections, joints: joints.filter(({ from, to }) => there.has(from) && there.has(to)) };
  const cells = cellsOf(tracks);
  yield;
  const ends = endsOf(tracks, cells);
  yield;
  const names = linesOfAll(sections.map(nameOf), BAR * STEP);
  const linesOf = (section: Tracks['sections'][number]) => names.get(nameOf(section)) ?? [];
  for (const pitch of PITCHES) {
    const placed = { cells, ends, pitch, linesOf };
    const routes = yield* routesOf(tracks, placed);
    if (routes !== undefined) return drawn(tracks, placed, routes);
  }
  const widest = { cells, ends, pitch: PITCHES.at(-1) ?? { column: BAR + 2, row: 4 }, linesOf };
  return drawn(tracks, widest, routesOverlapping(tracks, widest));
}

interface Placed {
  readonly cells: ReadonlyMap<string, Cell>;
  readonly ends: ReturnType<typeof endsOf>;
  readonly pitch: Pitch;
  /** The name of a section, as it stands above it. */
  readonly linesOf: (section: Tracks['sections'][number]) => readonly string[];
}

/** Where the left end of each section lies, in steps. */
function spotsOf({ cells, pitch }: Placed): ReadonlyMap<string, Point> {
  return new Map(
    [...cells].map(([id, { column, row }]) => [
      id,
      { x: Math.round(column * pitch.column), y: Math.round(row * pitch.row) },
    ]),
  );
}

interface Wanted {
  readonly id: string;
  readonly start: EndPoint;
  readonly goal: EndPoint;
  /** How long its track would be about if nothing were in its way, steps. */
  readonly far: number;
}

/**
 * A way for each joint, the shortest first; nothing if one finds none that is not far too long. One that finds none is boxed in by others: it goes
 * before them, and all are laid anew.
 */
function* routesOf(tracks: Tracks, placed: Placed): InParts<ReadonlyMap<string, Route> | undefined> {
  const spots = spotsOf(placed);
  const router = routerFor(tracks, placed, spots);
  let order = wantedOf(tracks, placed, spots);
  for (let turn = 0; turn < TURNS; turn += 1) {
    router.clear();
    const routes = new Map<string, Route>();
    let boxedIn: Wanted | undefined;
    for (const wanted of order) {
      yield;
      const route = router.lay(wanted.start, wanted.goal, { most: mostOf(wanted.far) });
      if (route === undefined) {
        boxedIn = wanted;
        break;
      }
      routes.set(wanted.id, route);
    }
    if (boxedIn === undefined) return routes;
    order = [boxedIn, ...order.filter((one) => one !== boxedIn)];
  }
  return undefined;
}

/** The same where nothing else is left: other tracks are in nobody's way. */
function routesOverlapping(tracks: Tracks, placed: Placed): ReadonlyMap<string, Route> {
  const spots = spotsOf(placed);
  const router = routerFor(tracks, placed, spots);
  const routes = new Map<string, Route>();
  for (const { id, start, goal } of wantedOf(tracks, placed, spots)) {
    const route = router.lay(start, goal) ?? router.lay(start, goal, { overlap: true });
    if (route !== undefined) routes.set(id, route);
  }
  return routes;
}

function wantedOf(
  { sections, joints }: Tracks,
  { ends }: Placed,
  spots: ReadonlyMap<string, Point>,
): readonly Wanted[] {
  const order = new Map(sections.map(({ id }, i) => [id, i]));
  const pointOf = (id: string, end: End): EndPoint => {
    const { x, y } = spots.get(id) ?? { x: 0, y: 0 };
    return { x: end === 'left' ? x : x + BAR, y, section: order.get(id) ?? 0, end };
  };
  const wanted = joints.map(({ id, from, to }) => {
    const joint = ends.get(id);
    const [start, goal] = [pointOf(from, joint?.from ?? 'right'), pointOf(to, joint?.to ?? 'left')];
    const round = (outwards(start, goal) ? 0 : 1) + (outwards(goal, start) ? 0 : 1);
    return { id, start, goal, far: Math.abs(start.x - goal.x) + 1.5 * Math.abs(start.y - goal.y) + 8 * round };
  });
  return wanted.toSorted((one, other) => one.far - other.far);
}

/** Whether a goal lies on the side to which an end looks. */
const outwards = ({ x, end }: EndPoint, goal: Point): boolean => (end === 'right' ? goal.x > x : goal.x < x);

/** A router that knows where sections and names lie. */
function routerFor({ sections }: Tracks, { linesOf, pitch }: Placed, spots: ReadonlyMap<string, Point>): Router {
  const all = [...spots.values()];
  const right = Math.max(0, ...all.map(({ x }) => x)) + BAR;
  const bottom = Math.max(0, ...all.map(({ y }) => y));
  // Room round everything for tracks that lead round a section.
  const margin = pitch.row;
  const router = new Router({
    left: -margin,
    top: -margin,
    width: right + 2 * margin + 1,
    height: bottom + 2 * margin + 1,
  });
  for (const section of sections) {
    const spot = spots.get(section.id);
    if (spot === undefined) continue;
    for (let i = 0; i <= BAR; i++) router.shut({ x: spot.x + i, y: spot.y });
    const lines = linesOf(section);
    const half = widestOf(lines) / 2 + BESIDE;
    for (let i = 0; i <= BAR; i++) {
      if (Math.abs(i - BAR / 2) * STEP >= half) continue;
      router.shut({ x: spot.x + i, y: spot.y - 1 });
      if (stepsAbove(lines) > 1) router.shut({ x: spot.x + i, y: spot.y - 2 });
    }
  }
  return router;
}

/** So far above its track a name reaches, steps. */
const stepsAbove = (lines: readonly string[]): number => (lines.length > LINES ? 2 : 1);

const widestOf = (lines: readonly string[]): number => Math.max(0, ...lines.map(widthOf));

/** From steps to pixels, with everything in sight. */
function drawn(tracks: Tracks, placed: Placed, routes: ReadonlyMap<string, Route>): Laid {
  const spots = spotsOf(placed);
  const points = [
    ...tracks.sections.flatMap((section) => {
      const { x, y } = spots.get(section.id) ?? { x: 0, y: 0 };
      return [
        { x, y: y - stepsAbove(placed.linesOf(section)) },
        { x: x + BAR, y },
      ];
    }),
    ...[...routes.values()].flatMap((route) => route.points),
  ];
  const left = Math.min(...points.map(({ x }) => x)) - 1;
  const top = Math.min(...points.map(({ y }) => y)) - 1;
  const pixels = ({ x, y }: Point): Point => ({ x: (x - left) * STEP, y: (y - top) * STEP });
  return {
    width: points.length === 0 ? 0 : (Math.max(...points.map(({ x }) => x)) - left + 1) * STEP,
    height: points.length === 0 ? 0 : (Math.max(...points.map(({ y }) => y)) - top + 1) * STEP,
    sections: tracks.sections.map((section) =>
      sectionAt(section, pixels(spots.get(section.id) ?? { x: 0, y: 0 }), placed),
    ),
    joints: tracks.joints.flatMap(({ id }) => {
      const route = routes.get(id);
      return route === undefined ? [] : [jointOn(id, route, placed, pixels)];
    }),
    over: crossings(routes).map((one) => ({ ...one, ...pixels(one) })),
  };
}

function sectionAt(section: Tracks['sections'][number], { x, y }: Point, { linesOf }: Placed): LaidSection {
  const texts = linesOf(section);
  const middle = x + (BAR * STEP) / 2;
  const foot = y - CLEAR - LETTERS / 4;
  const width = widestOf(texts);
  const height = texts.length === 0 ? 0 : LETTERS + LINE * (texts.length - 1);
  return {
    id: section.id,
    left: x,
    right: x + BAR * STEP,
    y,
    lines: texts.map((text, i) => ({ text, x: middle, y: foot - LINE * (texts.length - 1 - i) })),
    label: { x: middle - width / 2, y: y - CLEAR - height, width, height },
  };
}

function jointOn(id: string, { points, mark }: Route, { ends }: Placed, pixels: (point: Point) => Point): LaidJoint {
  const before = Math.floor(mark / 2);
  const [one, other] = [points[before] ?? { x: 0, y: 0 }, points[Math.ceil(mark / 2)] ?? { x: 0, y: 0 }];
  const at = pixels({ x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 });
  const path = (part: readonly Point[]): readonly Point[] => withoutBetween([...part.map(pixels), at]);
  return {
    id,
    from: path(points.slice(0, before + 1)),
    to: path(points.slice(Math.ceil(mark / 2)).toReversed()),
    at,
    turned: 45 * (wayAt(points, before) & 3),
    ends: ends.get(id) ?? { from: 'right', to: 'left' },
  };
}

/** Leaves away points on a straight line between their neighbours, and points twice. */
function withoutBetween(points: readonly Point[]): readonly Point[] {
  return points.filter((point, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (before === undefined) return true;
    if (before.x === point.x && before.y === point.y) return false;
    if (after === undefined) return true;
    return (
      (point.x - before.x) * (after.y - point.y) !== (point.y - before.y) * (after.x - point.x) ||
      (after.x === point.x && after.y === point.y)
    );
  });
}

/** Where a track passes over one that was laid before it: at a point of the grid, or in the middle between four. */
function crossings(routes: ReadonlyMap<string, Route>): readonly Over[] {
  const found: Over[] = [];
  const straight = new Map<string, number>();
  for (const [joint, { points, mark }] of routes) {
    const own: { readonly key: string; readonly way: number; readonly half: number }[] = [];
    points.forEach((point, i) => {
      const next = points[i + 1];
      const way = wayAt(points, i) & 3;
      if (i > 0 && next !== undefined) own.push({ key: `${point.x} ${point.y}`, way, half: 2 * i });
      if (next !== undefined && (way & 1) === 1) {
        own.push({ key: `${(point.x + next.x) / 2} ${(point.y + next.y) / 2}`, way, half: 2 * i + 1 });
      }
    });
    for (const { key, way, half } of own) {
      const [x = 0, y = 0] = key.split(' ').map(Number);
      const other = straight.get(key);
      if (other !== undefined && other !== way)
        found.push({ joint, part: half < mark ? 'from' : 'to', x, y, turned: 45 * way });
    }
    for (const { key, way } of own) straight.set(key, way);
  }
  return found;
}
