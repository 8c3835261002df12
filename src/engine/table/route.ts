// Where wheels stand: a way through the layout as a chain of pieces, and which rails a vehicle touches on it.
import type { PieceId, TableLayout, TableRail, TableVehicle } from './layout.ts';

/** `main`: from the old part through the gap into the new one. `round`: the other way, by the far ends of both parts. `loop`: round the loop. */
export type RouteId = 'main' | 'round' | 'loop';

export interface Stretch {
  readonly piece: PieceId;
  /** Metres along the way. */
  readonly from: number;
  readonly to: number;
  /** The left rail of the way is rail b here. */
  readonly swapped: boolean;
}

export interface Route {
  readonly id: RouteId;
  readonly stretches: readonly Stretch[];
  /** Where the way enters another part, metres. */
  readonly gaps: readonly number[];
}

/** Half the length of a turnout, and of what a wide wheel bridges at its frog, metres. Source: from-memory. */
const HALF_TURNOUT = 0.008;
const FROG = 0.005;
/** Half the width of a gap, metres. Source: common-practice. */
const GAP_HALF = 0.0005;
const known = new WeakMap<TableLayout, Map<RouteId, Route>>();

/** The way, with 0 at the main gap for `main`, and at its first gap for the others. Worked out once for a layout. */
export function routeOf(layout: TableLayout, id: RouteId): Route {
  const routes = known.get(layout) ?? new Map<RouteId, Route>();
  known.set(layout, routes);
  const there = routes.get(id);
  if (there !== undefined) return there;
  const made = makeRoute(layout, id);
  routes.set(id, made);
  return made;
}

function makeRoute(layout: TableLayout, id: RouteId): Route {
  const dead: readonly [PieceId, boolean][] = layout.lengths.dead > 0 ? [['dead', false]] : [];
  const round = layout.joins.find(({ from, to }) => from === 'new-far' && to === 'old-far');
  const ways: Readonly<Record<RouteId, readonly (readonly [PieceId, boolean])[]>> = {
    main: [['old-far', false], ['old-gap', false], ...dead, ['new-gap', false], ['new-mid', false], ['new-far', false]],
    round: [
      ['old-gap', false],
      ['old-far', false],
      ['new-far', round?.crossed ?? false],
      ['new-mid', round?.crossed ?? false],
    ],
    loop: [
      ['new-mid', false],
      ['new-far', false],
      ['loop', false],
      ['new-far', true],
      ['new-mid', true],
    ],
  };
  const way = ways[id];
  const before = layout.lengths[way[0]?.[0] ?? 'dead'] + layout.lengths[way[1]?.[0] ?? 'dead'];
  let from = -before;
  const stretches = way.map(([piece, swapped]) => {
    const stretch = { piece, from, to: from + layout.lengths[piece], swapped };
    from = stretch.to;
    return stretch;
  });
  const gaps = stretches.slice(2, id === 'loop' ? 4 : 3).map((stretch) => stretch.from);
  return { id, stretches, gaps: id === 'main' && dead.length > 0 ? [0, layout.lengths.dead] : gaps };
}

/** A rail that a vehicle's side touches, and with how many wheels. */
export interface Touch {
  readonly side: TableRail;
  readonly piece: PieceId;
  readonly rail: TableRail;
  readonly wheels: number;
}

/** All rails that a vehicle touches with its front at `front` metres. */
export function touches(layout: TableLayout, vehicle: TableVehicle, routeId: RouteId, front: number): Touch[] {
  const route = routeOf(layout, routeId);
  const found: Touch[] = [];
  for (const { rail: side, behind } of vehicle.pickUps) {
    const place = front - behind;
    const stretch = stretchAt(route, place);
    if (stretch === undefined || inGap(route, place) || lifted(layout, routeId, place)) continue;
    const rail = stretch.swapped ? other(side) : side;
    const same = found.findIndex((t) => t.side === side && t.piece === stretch.piece && t.rail === rail);
    const wheels = (found[same]?.wheels ?? 0) + 1;
    const touch = { side, piece: stretch.piece, rail, wheels };
    if (same >= 0) found[same] = touch;
    else found.push(touch);
  }
  return found;
}

export const other = (rail: TableRail): TableRail => (rail === 'a' ? 'b' : 'a');

function stretchAt({ stretches }: Route, place: number): Stretch | undefined {
  return stretches.find(({ from, to }) => place >= from && place < to);
}

function inGap({ gaps }: Route, place: number): boolean {
  return gaps.some((gap) => Math.abs(place - gap) < GAP_HALF);
}

function lifted({ spots }: TableLayout, route: RouteId, place: number): boolean {
  return route === 'main' && spots.some(({ kind, from, to }) => kind === 'step' && place >= from && place < to);
}

/** Metal of a vehicle that joins the two rails where it stands now: the piece, or undefined. */
export function wheelShortAt(
  layout: TableLayout,
  vehicle: TableVehicle,
  routeId: RouteId,
  front: number,
): PieceId | undefined {
  const { wheelShort, pickUps } = vehicle;
  if (wheelShort === undefined) return undefined;
  const first = pickUps[0]?.behind ?? 0;
  const piece = stretchAt(routeOf(layout, routeId), front - first)?.piece;
  if (wheelShort === 'always') return piece;
  const turnout = turnoutAt(layout, routeId);
  const reach = wheelShort === 'at-frog' ? FROG : HALF_TURNOUT;
  return turnout !== undefined && Math.abs(front - first - turnout) <= reach ? piece : undefined;
}

/** Where the turnout lies on a way, metres; undefined where it is not on it. */
export function turnoutAt(layout: TableLayout, routeId: RouteId): number | undefined {
  if (routeId === 'main') return layout.turnout.at + layout.lengths.dead;
  const first = routeOf(layout, routeId).stretches[0];
  return first === undefined ? undefined : (first.from + first.to) / 2;
}

/** How far the front has to go, forward or backward, until anything under the vehicle changes, metres > 0; endless where nothing will. */
export function nextChange(
  layout: TableLayout,
  vehicle: TableVehicle,
  routeId: RouteId,
  front: number,
  direction: 1 | -1 = 1,
): number {
  const places = changesOf(layout, routeId);
  let least = Number.POSITIVE_INFINITY;
  for (const { behind } of vehicle.pickUps) {
    for (const place of places) {
      const ahead = direction * (place + behind - front);
      if (ahead > 1e-9 && ahead < least) least = ahead;
    }
  }
  return least;
}

const changes = new WeakMap<Route, number[]>();

function changesOf(layout: TableLayout, routeId: RouteId): number[] {
  const route = routeOf(layout, routeId);
  const there = changes.get(route);
  if (there !== undefined) return there;
  const places = route.stretches.flatMap(({ from, to }) => [from, to]);
  places.push(...route.gaps.flatMap((gap) => [gap - GAP_HALF, gap + GAP_HALF]));
  if (routeId === 'main')
    places.push(...layout.spots.filter(({ kind }) => kind === 'step').flatMap(({ from, to }) => [from, to]));
  const turnout = turnoutAt(layout, routeId);
  const shorts = Object.values(layout.vehicles).some(({ wheelShort }) => wheelShort?.startsWith('at-') ?? false);
  if (turnout !== undefined && shorts)
    places.push(turnout - HALF_TURNOUT, turnout - FROG, turnout + FROG, turnout + HALF_TURNOUT);
  const sorted = [...new Set(places)].sort((a, b) => a - b);
  changes.set(route, sorted);
  return sorted;
}
