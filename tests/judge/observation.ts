// What a person can see on the virtual layout: where a train stops, what goes dark, what its lights tell.
import type { PieceId, StageIndex, TableLayout, TableRail, TableVehicle } from '../../src/engine/table/layout.ts';
import type { Place } from '../../src/engine/table/meter.ts';
import type { Traffic, World } from '../../src/engine/table/moment.ts';
import { idleVolts } from '../../src/engine/table/moment.ts';
import type { CarState, Ran, TableEvent } from '../../src/engine/table/protection.ts';
import {
  bridges,
  carState,
  edgeAmps,
  LAMP_VOLTS,
  pieceVolts,
  run,
  worldOf,
} from '../../src/engine/table/protection.ts';
import type { RouteId } from '../../src/engine/table/route.ts';
import { routeOf } from '../../src/engine/table/route.ts';
import { across, bridged, empty } from './instruments.ts';

export type VehicleKind = TableVehicle['kind'];

/** Events that put a unit out. */
const OFF_KINDS = ['trip', 'restart', 'supply-off', 'hot', 'supply-hot'] as const;
export type OffKind = (typeof OFF_KINDS)[number];
export interface Off {
  readonly kind: OffKind;
  readonly time: number;
  readonly stage: StageIndex;
}

/** Units that went off, in order. */
export function offs(events: readonly TableEvent[]): Off[] {
  return events.flatMap((event) => {
    const kind = OFF_KINDS.find((one) => one === event.kind);
    return kind !== undefined && 'stage' in event ? [{ kind, time: event.time, stage: event.stage }] : [];
  });
}

export interface Crossing {
  readonly outcome: 'crosses' | 'stops' | 'trips';
  /** Where its front came to, metres along the way. */
  readonly front: number;
  readonly straddles: boolean;
  readonly offs: readonly Off[];
  /** Its light went out on the way and came on again, or it jerked, this many times. */
  readonly blinks: number;
  readonly reversals: number;
  /** Volts between its sides just before and just after, where it has them. */
  readonly voltsBefore: number;
  readonly voltsAfter: number;
  readonly ran: Ran;
}

export interface CrossingWay {
  readonly route?: RouteId;
  readonly traffic?: Traffic;
  readonly seconds?: number;
  /** How far beyond the last gap its end has to come, metres. */
  readonly beyond?: number;
}

/** Drives one vehicle at full throttle over the gap of a way, from wholly on one side to wholly on the other. */
export function crossing(layout: TableLayout, kind: VehicleKind, way: CrossingWay = {}): Crossing {
  const { route = 'main', traffic = 'standing', seconds = 25, beyond = 0.05 } = way;
  const vehicle = layout.vehicles[kind];
  const start = worldOf(layout, [{ vehicle, route, front: -0.05, drive: 1 }], traffic);
  const goal = (routeOf(layout, route).gaps.at(-1) ?? 0) + vehicle.length + beyond;
  const passed = (world: World): boolean => (world.cars[0]?.front ?? 0) >= goal;
  const halted = (world: World, events: readonly TableEvent[]): boolean =>
    passed(world) || offs(events).length > 8 || events.length > 150;
  const voltsBefore = carState(layout, start, run(layout, start, 0).moment, 0).volts;
  const ran = run(layout, start, seconds, halted);
  const off = offs(ran.events);
  const front = ran.world.cars[0]?.front ?? 0;
  const arrived = passed(ran.world);
  return {
    outcome: outcomeOf(off.length > 0, arrived),
    front,
    straddles: bridges(layout, vehicle, route, front),
    offs: off,
    blinks: ran.events.filter((event) => event.kind === 'lit').length + stutters(layout, vehicle, route),
    reversals: ran.events.filter((event) => event.kind === 'reverser').length,
    voltsBefore,
    voltsAfter: arrived ? carState(layout, ran.world, ran.moment, 0).volts : 0,
    ran,
  };
}

function outcomeOf(off: boolean, arrived: boolean): Crossing['outcome'] {
  if (off) return 'trips';
  return arrived ? 'crosses' : 'stops';
}

const CELL = 0.003;
/** A wheel on dirty rail has no contact in this share of places. Source: from-memory. */
const DIRTY_SHARE = 0.45;

/** How often a vehicle loses contact on dirty rail near the gap: wheel by wheel, place by place, always the same. */
export function stutters(layout: TableLayout, vehicle: TableVehicle, route: RouteId, from = -0.3, to = 0.5): number {
  const dirty = layout.spots.filter(({ kind }) => kind === 'dirty');
  if (dirty.length === 0 || route !== 'main') return 0;
  const open = (place: number, rail: TableRail): boolean =>
    dirty.some((spot) => place >= spot.from && place < spot.to) && scatter(place, rail) < DIRTY_SHARE;
  let count = 0;
  let was = false;
  for (let front = from; front < to; front += CELL) {
    const without = (rail: TableRail): boolean =>
      vehicle.pickUps.every((wheel) => wheel.rail !== rail || open(front - wheel.behind, rail));
    const now = without('a') || without('b');
    if (now && !was) count++;
    was = now;
  }
  return vehicle.stored > 0 ? 0 : count;
}

// A number in [0, 1) that belongs to a place on a rail.
function scatter(place: number, rail: TableRail): number {
  let mixed = Math.imul(Math.round(place / CELL) ^ (rail === 'a' ? 0x5bd1e995 : 0x1b873593), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 4294967296;
}

/** A vehicle that stands with wheels in both parts for some seconds. */
export interface Standing {
  readonly offs: readonly Off[];
  readonly state: CarState;
  /** Volts by which the two parts differ under it, and what unequal edges drive through it, amperes. */
  readonly stepVolts: number;
  readonly edgeAmps: number;
  readonly ran: Ran;
}

/** Places a vehicle across the gap of a way, all units on. */
export function standAcross(layout: TableLayout, kind: VehicleKind, route: RouteId = 'main', seconds = 8): Standing {
  const vehicle = layout.vehicles[kind];
  const behind = vehicle.pickUps.map((wheel) => wheel.behind);
  const gaps = route === 'main' ? routeOf(layout, route).gaps : [0];
  const middle = ((gaps[0] ?? 0) + (gaps.at(-1) ?? 0)) / 2;
  const front = middle + (Math.min(...behind) + Math.max(...behind)) / 2 + 1e-4;
  const start = worldOf(layout, [{ vehicle, route, front, drive: 0.3 }], 'standing');
  const still: World = { ...start, cars: start.cars.map((car) => ({ ...car, drive: 0 })) };
  const ran = run(layout, still, seconds, (_, events) => events.length > 60);
  const first = run(layout, still, 0);
  return {
    offs: offs(ran.events),
    state: carState(layout, still, first.moment, 0),
    stepVolts: Math.abs(idleVolts(layout, 0) - idleVolts(layout, 1)),
    edgeAmps: edgeAmps(layout, still),
    ran,
  };
}

/** A vehicle wholly in one piece, told to drive for a moment. */
export interface Inside {
  readonly lit: boolean;
  readonly volts: number;
  readonly hears: CarState['hears'];
  readonly speed: number;
  readonly offs: readonly Off[];
  /** Loses contact again and again. */
  readonly stutters: boolean;
}

/** Puts a vehicle wholly into a piece of the main way and opens its throttle; `others`: what else is on. */
export function inside(layout: TableLayout, kind: VehicleKind, piece: PieceId, others: Traffic = 'standing'): Inside {
  const vehicle = layout.vehicles[kind];
  const stretch = routeOf(layout, 'main').stretches.find((one) => one.piece === piece);
  const from = stretch?.from ?? 0;
  const to = stretch?.to ?? 0;
  const front = Math.min(to - 0.02, from + vehicle.length + 0.02 + 0.3 * (to - from - vehicle.length));
  const start = worldOf(layout, [{ vehicle, route: 'main', front, drive: 1 }], others);
  const ran = run(layout, start, 0.6, (_, events) => events.length > 40);
  const state = carState(layout, ran.world, ran.moment, 0);
  const car = ran.world.cars[0];
  return {
    lit: state.lit,
    volts: state.volts,
    hears: state.hears,
    speed: car?.speed ?? 0,
    offs: offs(ran.events),
    stutters: stutters(layout, vehicle, 'main', from, to) > 2,
  };
}

/** Both rails of a piece, for what is clipped across them. */
export const bothRails = (piece: PieceId): readonly [Place, Place] => [
  [piece, 'a'],
  [piece, 'b'],
];

/** The same layout with the track plug of one unit pulled. */
export function pulled(layout: TableLayout, stage: StageIndex): TableLayout {
  return { ...layout, trackPulled: stage === 0 ? [true, layout.trackPulled[1]] : [layout.trackPulled[0], true] };
}

/** Volts on the rails of a piece, both halves in the mean. */
export function railVolts({ moment }: Pick<Ran, 'moment'>, piece: PieceId): number {
  const minus = pieceVolts({ ...moment, plus: moment.minus }, piece);
  return (Math.abs(pieceVolts(moment, piece)) + Math.abs(minus)) / 2;
}

const CLIP_OHMS = 0.05;

/** How bright a lit coach wholly in the unfed far part shines; `clip` joins one rail across the gap. */
export function coachInUnfedPart(
  layout: TableLayout,
  clip?: TableRail,
  others: Traffic = 'lifted',
): 'dark' | 'faint' | 'lit' {
  const unfed = pulled(layout, 1);
  const clipped =
    clip === undefined ? unfed : bridged(unfed, across('jumper', ['old-gap', clip], ['new-gap', clip], CLIP_OHMS));
  const { volts } = inside(clipped, 'coach', 'new-gap', others);
  if (volts > LAMP_VOLTS) return 'lit';
  return volts > 1.5 ? 'faint' : 'dark';
}

/** The jumper test: alive without any clip, or with which one. A rail that makes it alive when the other is clipped is not cut. */
export interface JumperTest {
  readonly without: boolean;
  readonly clipA: boolean;
  readonly clipB: boolean;
  /** Rails that are joined across the boundary. */
  readonly joined: readonly TableRail[];
}

export function jumperTest(layout: TableLayout): JumperTest {
  const alive = (clip?: TableRail): boolean => coachInUnfedPart(layout, clip) !== 'dark';
  const without = alive();
  const clipA = alive('a');
  const clipB = alive('b');
  if (without) return { without, clipA, clipB, joined: ['a', 'b'] };
  const joined = [...(clipB ? (['a'] as const) : []), ...(clipA ? (['b'] as const) : [])];
  return { without, clipA, clipB, joined };
}

/** The running test: a locomotive drives towards the unfed far part. It stops with one rail cut as well. */
export function runsIntoUnfed(
  layout: TableLayout,
  kind: VehicleKind,
): { readonly runsOn: boolean; readonly front: number } {
  const unfed = pulled(layout, 1);
  const { outcome, front } = crossing(unfed, kind, { beyond: 0.03, traffic: 'lifted', seconds: 15 });
  return { runsOn: outcome === 'crosses', front };
}

/** Each unit alone on its part, then both; no vehicles. */
export interface AloneTest {
  readonly first: readonly Off[];
  readonly second: readonly Off[];
  readonly together: readonly Off[];
}

export function eachAlone(layout: TableLayout): AloneTest {
  const off = (tested: TableLayout): Off[] => offs(empty(tested, 6).events);
  return { first: off(pulled(layout, 1)), second: off(pulled(layout, 0)), together: off(layout) };
}

/** The two track wires of the new part exchanged at its unit. */
export function swappedWires(layout: TableLayout): TableLayout {
  return {
    ...layout,
    feeders: layout.feeders.map((feeder) =>
      feeder.stage === 1 ? { ...feeder, terminal: feeder.terminal === 'p' ? 'n' : 'p' } : feeder,
    ),
  };
}
