// The virtual layout in time: protection that trips and comes back, supplies that give up, heat, reversers, vehicles that move.
// Between two events nothing changes but heat and places, so time jumps from event to event.

import { crossingSkew } from '../crossing/index.ts';
import type { StageIndex, TableLayout, TableVehicle } from './layout.ts';
import type { CarNow, Moment, ReverserNow, StageNow, SupplyNow, Traffic, World } from './moment.ts';
import { BROWN_OUT, idleVolts, isFed, railNode, solveMoment, stageState } from './moment.ts';
import type { RouteId } from './route.ts';
import { nextChange, touches } from './route.ts';

export type TableEvent =
  | { readonly kind: 'trip' | 'back' | 'restart' | 'hot'; readonly time: number; readonly stage: StageIndex }
  | { readonly kind: 'supply-off' | 'supply-back' | 'supply-hot'; readonly time: number; readonly stage: StageIndex }
  | { readonly kind: 'reverser'; readonly time: number; readonly section: 'loop' | 'part' }
  | { readonly kind: 'dark' | 'lit' | 'stops' | 'starts'; readonly time: number; readonly car: number };

/** What a vehicle does at a moment. */
export interface CarState {
  /** Mean size of the volts between its sides. */
  readonly volts: number;
  readonly lit: boolean;
  /** `commands`: it obeys. `none`: power without commands. `garbled`: they arrive spoiled. `direct`: plain direct current. */
  readonly hears: 'commands' | 'foreign' | 'garbled' | 'direct' | 'none';
  /** Stands with wheels in both parts. */
  readonly straddles: boolean;
}

/** A supply gives up this long after it began to limit, and tries again after, seconds. Source: from-memory. */
const HICCUP = { after: 0.28, pause: 1.2 } as const;
/** A processor lives on its own capacitor for this long, then starts anew; how long that takes, seconds. Source: from-memory. */
const RESTART = { after: 0.3, pause: 1.5 } as const;
/** A unit's heat: its time constant in seconds, and the share below which it comes back. Source: from-memory. */
const HEAT = { seconds: 600, back: 0.6 } as const;
/** Lamps show light from, and a decoder works from, volts. Source: from-memory. */
export const LAMP_VOLTS = 5;
/** Model speed at nominal rail volts and full throttle, metres a second. Source: from-memory. */
const TOP_SPEED = 0.25;
/** A motor stands still below this on the rails, volts. Source: from-memory. */
const MOTOR_VOLTS = 3;
/** Just beyond a place, metres. Source: own-choice. */
const BEYOND = 1e-6;
/** Farads from which commands are spoiled. Source: from-memory. */
const SPOILS = 0.2e-6;

const READY: StageNow = {
  mode: 'ready',
  until: Number.POSITIVE_INFINITY,
  overSince: Number.NaN,
  lowSince: Number.NaN,
  heat: 0,
};
const ON: SupplyNow = { mode: 'on', until: Number.POSITIVE_INFINITY, limitSince: Number.NaN, heat: 0 };
const STRAIGHT: ReverserNow = { flipped: false, overSince: Number.NaN };

export interface Placed {
  readonly vehicle: TableVehicle;
  readonly route: RouteId;
  /** Metres along the way; the main gap is at 0. */
  readonly front: number;
  /** -1 backward at full speed to 1 forward. */
  readonly drive: number;
}

/** Everything ready at time 0, just switched on, with these vehicles on the rails. */
export function worldOf(layout: TableLayout, placed: readonly Placed[], traffic: Traffic): World {
  return {
    time: 0,
    traffic,
    stages: [READY, READY],
    supplies: [ON, ON],
    cars: placed.map((car) => ({
      ...car,
      speed: 0,
      litSince: 0,
      darkSince: Number.NaN,
      darkFrom: car.front,
    })),
    loop: STRAIGHT,
    part: STRAIGHT,
    aliveSince: layout.consumers.map(() => 0),
  };
}

/** A world somewhat later, with what happened on the way. */
export interface Ran {
  readonly world: World;
  readonly events: readonly TableEvent[];
  readonly moment: Moment;
}

/** Most events of one run, so that it ends. Source: own-choice. */
const MOST_EVENTS = 600;

/**
 * Lets `seconds` pass. Shape: a layout and a world in; the later world, its last moment and the events out. `halt` ends it early.
 * Stops by itself after 600 events, which only a chatter reaches.
 */
export function run(
  layout: TableLayout,
  start: World,
  seconds: number,
  halt?: (world: World, events: readonly TableEvent[]) => boolean,
): Ran {
  const end = start.time + seconds;
  const events: TableEvent[] = [];
  let moment = solveMoment(layout, start);
  let world = settle(layout, start, moment, events);
  for (let count = 0; count < MOST_EVENTS && world.time < end && halt?.(world, events) !== true; count++) {
    const until = Math.min(end, nextEvent(layout, world, moment));
    world = pass(layout, world, moment, until - world.time);
    world = happen(layout, world, events);
    moment = solveMoment(layout, world);
    world = settle(layout, world, moment, events);
  }
  return { world, events, moment };
}

const stageAmps = ({ plus, minus }: Moment, stage: StageIndex): number =>
  Math.max(Math.abs(plus.stageAmps[stage]), Math.abs(minus.stageAmps[stage]));
const linkVolts = ({ plus, minus }: Moment, stage: StageIndex): number =>
  Math.min(plus.linkVolts[stage], minus.linkVolts[stage]);
const supplyAmps = ({ plus, minus }: Moment, stage: StageIndex): number =>
  (plus.supplyAmps[stage] + minus.supplyAmps[stage]) / 2;

/** Amperes that the output of a stage feels, with what unequal edges of the neighbour add while something straddles. */
export function feltAmps(layout: TableLayout, world: World, moment: Moment, stage: StageIndex): number {
  return stageAmps(moment, stage) + edgeAmps(layout, world);
}

/** What edges that do not agree meet on their way round, ohms. Source: from-memory. */
const EDGE_OHMS = 1;
/** The same, henries. Source: from-memory. */
const EDGE_HENRIES = 10e-6;
/** The cutout shorts the rails for this share of the time. Source: own-derivation. */
const CUTOUT_SHARE = 0.06;

/** What late edges, foreign commands or a cutout on one side only drive through a vehicle that joins both parts, mean amperes. */
export function edgeAmps(layout: TableLayout, world: World): number {
  const both = ([0, 1] as const).every((stage) => stageState(layout, world, stage) === 'driving');
  if (!both || layout.trackPulled.includes(true) || !joinsParts(layout, world)) return 0;
  const volts = idleVolts(layout, 0) + idleVolts(layout, 1);
  const { ownCommands, late, cutout } = layout.stages[1];
  if (ownCommands) return volts / EDGE_OHMS / 4;
  const skew = crossingSkew({ volts, ohms: EDGE_OHMS, henries: EDGE_HENRIES, seconds: Math.max(0, late - 1e-6) });
  const edges = skew.kind === 'skew' ? skew.meanCurrent : 0;
  const cut = cutout === layout.stages[0].cutout ? 0 : (CUTOUT_SHARE * volts) / 2 / EDGE_OHMS;
  return edges + cut;
}

function joinsParts(layout: TableLayout, world: World): boolean {
  return world.cars.some(({ vehicle, route, front }) => bridges(layout, vehicle, route, front));
}

/** True where a vehicle's wheels join the rails of both parts on both its sides. */
export function bridges(layout: TableLayout, vehicle: TableVehicle, route: RouteId, front: number): boolean {
  const all = touches(layout, vehicle, route, front);
  return (['a', 'b'] as const).every((side) => {
    const pieces = all.filter((touch) => touch.side === side).map(({ piece }) => piece);
    return (
      pieces.some((piece) => piece.startsWith('old')) &&
      pieces.some((piece) => !piece.startsWith('old') && piece !== 'dead')
    );
  });
}

/** What each vehicle gets and hears. */
export function carState(layout: TableLayout, world: World, moment: Moment, index: number): CarState {
  const car = world.cars[index];
  const plus = moment.plus.carVolts[index] ?? 0;
  const minus = moment.minus.carVolts[index] ?? 0;
  const volts = (Math.abs(plus) + Math.abs(minus)) / 2;
  if (car === undefined) return { volts, lit: false, hears: 'none', straddles: false };
  const pieces = touches(layout, car.vehicle, car.route, car.front).map(({ piece }) => piece);
  const inOld = pieces.some((piece) => piece.startsWith('old'));
  const inNew = pieces.some((piece) => !piece.startsWith('old') && piece !== 'dead');
  return {
    volts,
    lit: volts > LAMP_VOLTS,
    hears: hearing(layout, world, (plus - minus) / 2, (plus + minus) / 2, inNew && !inOld),
    straddles: inOld && inNew,
  };
}

// By the changing and the standing part of the volts, and by whose commands they carry.
function hearing(
  layout: TableLayout,
  world: World,
  changing: number,
  standing: number,
  onlyNew: boolean,
): CarState['hears'] {
  if (Math.abs(changing) < LAMP_VOLTS) return Math.abs(standing) > MOTOR_VOLTS ? 'direct' : 'none';
  if (Math.abs(standing) > 1) return 'garbled';
  if (!onlyNew) return 'commands';
  if (layout.capacitor >= SPOILS || layout.secondSource !== undefined) return 'garbled';
  return layout.stages[1].ownCommands && !layout.trackPulled[1] && stageState(layout, world, 1) === 'driving'
    ? 'foreign'
    : 'commands';
}

/** Metres a second that a vehicle wants to do now; a deaf one that rolls goes on, one on direct current stops or runs off. */
export function wantedSpeed(layout: TableLayout, car: CarNow, state: CarState): number {
  if (!(state.lit && car.vehicle.motor)) return 0;
  const share = Math.max(0, (state.volts - MOTOR_VOLTS) / (idleVolts(layout, 0) - MOTOR_VOLTS));
  if (state.hears === 'direct') return car.vehicle.dcRunning ? TOP_SPEED * share : 0;
  if (state.hears === 'none') return 0;
  if (state.hears === 'commands') return car.vehicle.obeys ? TOP_SPEED * share * car.drive : 0;
  return car.speed === 0 ? 0 : TOP_SPEED * share * car.drive;
}

// --- when the next thing happens ---------------------------------------------------------------------------------------

function nextEvent(layout: TableLayout, world: World, moment: Moment): number {
  const times: number[] = [];
  for (const stage of [0, 1] as const) {
    times.push(...stageTimes(layout, world, moment, stage), ...supplyTimes(layout, world, moment, stage));
  }
  times.push(reverserTime(world.loop, layout.loopReverser), reverserTime(world.part, layout.partReverser));
  world.cars.forEach((car) => {
    times.push(carTime(layout, world, car));
  });
  world.aliveSince.forEach((since, i) => {
    const end = since + (layout.consumers[i]?.inrushSeconds ?? 0);
    times.push(end);
  });
  let least = Number.POSITIVE_INFINITY;
  for (const time of times) if (time > world.time + 1e-9 && time < least) least = time;
  return least;
}

const after = (since: number, seconds: number): number =>
  Number.isNaN(since) ? Number.POSITIVE_INFINITY : since + seconds;

function stageTimes(layout: TableLayout, world: World, moment: Moment, stage: StageIndex): number[] {
  const now = world.stages[stage];
  const unit = layout.stages[stage];
  if (now.mode === 'hot') return [world.time + coolTime(now.heat)];
  return [
    now.until,
    after(now.overSince, unit.tripSeconds),
    after(now.lowSince, RESTART.after),
    world.time + heatTime(now.heat, feltAmps(layout, world, moment, stage) / unit.continuous),
  ];
}

function supplyTimes(layout: TableLayout, world: World, moment: Moment, stage: StageIndex): number[] {
  const now = world.supplies[stage];
  if (now.mode === 'off') return [now.until];
  const supply = layout.supplies[stage];
  const hiccup = supply.limits === 'hiccup' ? after(now.limitSince, HICCUP.after) : Number.POSITIVE_INFINITY;
  return [hiccup, world.time + heatTime(now.heat, supplyAmps(moment, stage) / supply.continuous)];
}

// Heat runs towards the square of the load with one time constant; 1 is where the unit cuts out.
function heatTime(heat: number, load: number): number {
  const goal = load ** 2;
  return goal <= 1 ? Number.POSITIVE_INFINITY : HEAT.seconds * Math.log((goal - heat) / (goal - 1));
}

const coolTime = (heat: number): number => HEAT.seconds * Math.log(Math.max(heat, HEAT.back) / HEAT.back);

const reverserTime = ({ overSince }: ReverserNow, { kind, tripSeconds }: TableLayout['loopReverser']): number =>
  kind === 'automatic' ? after(overSince, tripSeconds) : Number.POSITIVE_INFINITY;

function carTime(layout: TableLayout, world: World, car: CarNow): number {
  if (car.speed === 0) return Number.POSITIVE_INFINITY;
  const metres = nextChange(layout, car.vehicle, car.route, car.front, car.speed > 0 ? 1 : -1);
  const left = Number.isNaN(car.darkSince) ? Number.POSITIVE_INFINITY : coastLeft(car);
  return world.time + Math.min(metres + BEYOND, Math.max(left, BEYOND)) / Math.abs(car.speed);
}

/** How far a vehicle without power still gets, metres. */
function coastLeft({ vehicle, front, darkFrom, speed }: CarNow): number {
  return Math.max(vehicle.rollsOn, vehicle.stored * Math.abs(speed)) - Math.abs(front - darkFrom);
}

// --- time passes ---------------------------------------------------------------------------------------------------------

function pass(layout: TableLayout, world: World, moment: Moment, seconds: number): World {
  const warm = (heat: number, load: number): number =>
    load ** 2 + (heat - load ** 2) * Math.exp(-seconds / HEAT.seconds);
  const stage = (i: StageIndex): StageNow => ({
    ...world.stages[i],
    heat: warm(world.stages[i].heat, Math.min(3, feltAmps(layout, world, moment, i) / layout.stages[i].continuous)),
  });
  const supply = (i: StageIndex): SupplyNow => ({
    ...world.supplies[i],
    heat: warm(world.supplies[i].heat, supplyAmps(moment, i) / layout.supplies[i].continuous),
  });
  return {
    ...world,
    time: world.time + seconds,
    stages: [stage(0), stage(1)],
    supplies: [supply(0), supply(1)],
    cars: world.cars.map((car) => ({ ...car, front: car.front + car.speed * seconds })),
  };
}

// --- what has become due -----------------------------------------------------------------------------------------------

const due = (time: number, world: World): boolean => time <= world.time + 1e-9;

function happen(layout: TableLayout, world: World, events: TableEvent[]): World {
  const time = world.time;
  const supplies = [supplyLater(layout, world, 0, events), supplyLater(layout, world, 1, events)] as const;
  let stages = [stageLater(layout, world, 0, events), stageLater(layout, world, 1, events)] as const;
  if (layout.reportsShorts && events.some((event) => event.time === time && event.kind === 'trip'))
    stages = [stopped(stages[0], stages[1]), stopped(stages[1], stages[0])];
  return {
    ...world,
    stages,
    supplies,
    loop: turnLater(world, world.loop, layout.loopReverser, 'loop', events),
    part: turnLater(world, world.part, layout.partReverser, 'part', events),
    cars: world.cars.map((car, i) => coastLater(car, i, time, events)),
  };
}

const stopped = (one: StageNow, another: StageNow): StageNow =>
  one.mode === 'ready' && another.mode === 'tripped' ? { ...one, mode: 'tripped', until: another.until } : one;

function stageLater(layout: TableLayout, world: World, stage: StageIndex, events: TableEvent[]): StageNow {
  const now = world.stages[stage];
  const { comesBack, retrySeconds, tripSeconds, defect } = layout.stages[stage];
  const { time } = world;
  const happened = (kind: 'trip' | 'back' | 'restart' | 'hot', later: StageNow): StageNow => {
    events.push({ kind, time, stage });
    return later;
  };
  if (now.mode === 'hot') return now.heat <= HEAT.back + 1e-6 ? happened('back', { ...READY, heat: now.heat }) : now;
  if (now.mode !== 'ready') return due(now.until, world) ? happened('back', { ...READY, heat: now.heat }) : now;
  if (due(after(now.lowSince, RESTART.after), world))
    return happened('restart', { ...READY, heat: now.heat, mode: 'resetting', until: time + RESTART.pause });
  if (defect !== 'no-trip' && due(after(now.overSince, tripSeconds), world)) {
    const until = comesBack === 'retry' ? time + retrySeconds : Number.POSITIVE_INFINITY;
    return happened('trip', { ...READY, heat: now.heat, mode: 'tripped', until });
  }
  return now.heat >= 1 - 1e-6 ? happened('hot', { ...READY, heat: now.heat, mode: 'hot' }) : now;
}

function supplyLater(layout: TableLayout, world: World, stage: StageIndex, events: TableEvent[]): SupplyNow {
  const now = world.supplies[stage];
  const { time } = world;
  if (now.mode === 'off') {
    if (!due(now.until, world)) return now;
    events.push({ kind: 'supply-back', time, stage });
    return { ...ON, heat: now.heat };
  }
  if (layout.supplies[stage].limits === 'hiccup' && due(after(now.limitSince, HICCUP.after), world)) {
    events.push({ kind: 'supply-off', time, stage });
    return { ...ON, heat: now.heat, mode: 'off', until: time + HICCUP.pause };
  }
  if (now.heat < 1 - 1e-6) return now;
  events.push({ kind: 'supply-hot', time, stage });
  return { ...ON, heat: now.heat, mode: 'off', until: time + coolTime(now.heat) };
}

function turnLater(
  world: World,
  now: ReverserNow,
  device: TableLayout['loopReverser'],
  section: 'loop' | 'part',
  events: TableEvent[],
): ReverserNow {
  if (!due(reverserTime(now, device), world)) return now;
  events.push({ kind: 'reverser', time: world.time, section });
  return { flipped: !now.flipped, overSince: Number.NaN };
}

function coastLater(car: CarNow, index: number, time: number, events: TableEvent[]): CarNow {
  if (car.speed === 0 || Number.isNaN(car.darkSince) || coastLeft(car) > BEYOND) return car;
  events.push({ kind: 'stops', time, car: index });
  return { ...car, speed: 0 };
}

// --- what the new moment starts or ends ---------------------------------------------------------------------------------

function settle(layout: TableLayout, world: World, moment: Moment, events: TableEvent[]): World {
  const { time } = world;
  const since = (is: boolean, before: number): number => {
    if (!is) return Number.NaN;
    return Number.isNaN(before) ? time : before;
  };
  const stage = (i: StageIndex): StageNow => {
    const now = world.stages[i];
    const active = now.mode === 'ready';
    const { trip, guard = Number.POSITIVE_INFINITY } = layout.stages[i];
    const over = feltAmps(layout, world, moment, i) > trip || linkVolts(moment, i) > guard;
    const low = layout.stages[i].on && linkVolts(moment, i) < BROWN_OUT * idleVolts(layout, i);
    return {
      ...now,
      overSince: since(active && over, now.overSince),
      lowSince: since(active && low && supplied(layout, i), now.lowSince),
    };
  };
  const supply = (i: StageIndex): SupplyNow => {
    const now = world.supplies[i];
    const limits = isFed(layout, world, i) && linkVolts(moment, i) < 0.8 * idleVolts(layout, i);
    return { ...now, limitSince: since(limits, now.limitSince) };
  };
  const loopOver = layout.hasLoop && moment.plus.loopAmps > layout.loopReverser.trip;
  const partOver = stageAmps(moment, 1) > layout.partReverser.trip;
  return {
    ...world,
    stages: [stage(0), stage(1)],
    supplies: [supply(0), supply(1)],
    loop: { ...world.loop, overSince: since(loopOver, world.loop.overSince) },
    part: { ...world.part, overSince: since(partOver, world.part.overSince) },
    cars: world.cars.map((car, i) => settleCar(layout, world, moment, car, i, events)),
    aliveSince: world.aliveSince.map((before, i) => {
      const piece = layout.consumers[i]?.piece ?? 'dead';
      if (Math.abs(pieceVolts(moment, piece)) < LAMP_VOLTS) return Number.POSITIVE_INFINITY;
      return Number.isFinite(before) ? before : time;
    }),
  };
}

const supplied = ({ supplies }: TableLayout, stage: StageIndex): boolean =>
  supplies[stage].plugged && supplies[stage].fits;

/** Volts of rail a against rail b of a piece in the first half of the signal. */
export function pieceVolts({ plus }: Moment, piece: Parameters<typeof railNode>[0]): number {
  const { volts } = plus.state;
  return (volts[railNode(piece, 'a')] ?? 0) - (volts[railNode(piece, 'b')] ?? 0);
}

function settleCar(
  layout: TableLayout,
  world: World,
  moment: Moment,
  car: CarNow,
  index: number,
  events: TableEvent[],
): CarNow {
  const { time } = world;
  const state = carState(layout, world, moment, index);
  if (state.lit) {
    const wasDark = !Number.isNaN(car.darkSince);
    if (wasDark) events.push({ kind: 'lit', time, car: index });
    const speed = wantedSpeed(layout, car, state);
    if (car.speed !== 0 && speed === 0) events.push({ kind: 'stops', time, car: index });
    return { ...car, speed, darkSince: Number.NaN, litSince: wasDark ? time : car.litSince };
  }
  if (!Number.isNaN(car.darkSince)) return car;
  events.push({ kind: 'dark', time, car: index });
  return { ...car, darkSince: time, darkFrom: car.front };
}
