// A drive across the gap in time: the table as it runs, what is read off it, and what happened since the train came where it is.
import type { Place, Snapshot, StageIndex, TableRail, TableRun } from '../table/index.ts';
import { moveTo, resetStage, rewire, snapshot, startTable, step, throttle } from '../table/index.ts';
import type { DriveSettings } from './layout.ts';
import { DRIVE_TRIP, frontRange, layoutOf, vehicleOf } from './layout.ts';

/** Which rails the wheels stand on. */
export type Where = 'a' | 'across' | 'b' | 'dead';
/** Why a stage tripped: too many amperes, or lifted above its own volts by the other. */
export type OffBecause = 'over' | 'lifted';

export interface Tripped {
  readonly because: OffBecause;
  readonly where: Where;
  /** It would not be so with the train taken off. */
  readonly byTrain: boolean;
  /** What flowed before, amperes. */
  readonly amps: number;
}

export interface DriveFrame {
  readonly settings: DriveSettings;
  readonly probes: readonly [Place, Place];
  readonly table: TableRun;
  readonly shot: Snapshot;
  readonly where: Where;
  /** What was too much on each stage when it was last looked at. */
  readonly strain: readonly [Tripped | undefined, Tripped | undefined];
  /** What tripped since the train came where it is. */
  readonly trips: readonly [Tripped | undefined, Tripped | undefined];
}

/** Where the leads of the meter can be held. */
export const DRIVE_POINTS = ['a-upper', 'a-lower', 'b-upper', 'b-lower'] as const;
export type DrivePoint = (typeof DRIVE_POINTS)[number];
const PLACES: Readonly<Record<DrivePoint, Place>> = {
  'a-upper': ['old-gap', 'a'],
  'a-lower': ['old-gap', 'b'],
  'b-upper': ['new-gap', 'a'],
  'b-lower': ['new-gap', 'b'],
};
export const placeOf = (point: DrivePoint): Place => PLACES[point];
export const pointOf = ([piece, rail]: Place): DrivePoint =>
  DRIVE_POINTS.find((point) => PLACES[point][0] === piece && PLACES[point][1] === rail) ?? 'a-upper';

/** A longer pause is taken in pieces of this, seconds: shorter than any trip. Source: own-choice. */
const SUB_STEP = 0.05;
/** What happens at once takes this, seconds. Source: own-choice. */
const INSTANT = 1e-3;
/** Throttle of a slow drive, share of full. Source: own-choice. */
const SLOWLY = 0.4;

const START_PROBES = [PLACES['b-upper'], PLACES['b-lower']] as const;

/** Switched on, with the train in A. */
export function beginDrive(settings: DriveSettings, probes: DriveFrame['probes'] = START_PROBES): DriveFrame {
  const layout = layoutOf(settings);
  const placed = { vehicle: vehicleOf(settings), route: 'main', front: frontRange(settings).least, drive: 0 } as const;
  const table = step(startTable(layout, [placed]), INSTANT);
  const shot = snapshot(table, probes);
  const none = [undefined, undefined] as const;
  return watch({ settings, probes, table, shot, where: whereIs(shot, 'a'), strain: none, trips: none });
}

/** Throws a switch or moves a slider while everything runs. */
export function rewireDrive(frame: DriveFrame, settings: DriveSettings): DriveFrame {
  const wired = rewire(frame.table, () => layoutOf(settings));
  const vehicle = vehicleOf(settings);
  const cars = wired.world.cars.map((car) => ({ ...car, vehicle }));
  const table = { ...wired, world: { ...wired.world, cars } };
  const { least, most } = frontRange(settings);
  const front = Math.min(most, Math.max(least, frontOf(frame)));
  const changed = { ...frame, settings, table: moveTo(table, 0, front) };
  return forget(observe(changed, step(changed.table, INSTANT)));
}

/** Moves the train by hand: its front to `front` metres from the gap. */
export function placeTrain(frame: DriveFrame, front: number): DriveFrame {
  const { least, most } = frontRange(frame.settings);
  const moved = moveTo(throttle(frame.table, 0, 0), 0, Math.min(most, Math.max(least, front)));
  return observe(frame, step(moved, INSTANT));
}

/** Starts it: 1 towards B, -1 towards A, 0 stops it. */
export function driveTrain(frame: DriveFrame, way: -1 | 0 | 1): DriveFrame {
  return observe(frame, step(throttle(frame.table, 0, SLOWLY * way), INSTANT));
}

export function holdProbes(frame: DriveFrame, probes: DriveFrame['probes']): DriveFrame {
  return { ...frame, probes, shot: snapshot(frame.table, probes) };
}

/** The reset button of a stage. */
export function resetDrive(frame: DriveFrame, stage: StageIndex): DriveFrame {
  return observe(frame, step(resetStage(frame.table, stage), INSTANT));
}

/** Lets `seconds` pass; the train stops at the ends of what is seen. */
export function passTime(frame: DriveFrame, seconds: number): DriveFrame {
  let later = frame;
  for (let left = seconds; left > 1e-9; left -= SUB_STEP) {
    const next = step(later.table, Math.min(left, SUB_STEP));
    later = observe(later, next, left > SUB_STEP);
  }
  const { least, most } = frontRange(frame.settings);
  const front = frontOf(later);
  if (front < most && front > least) return later;
  const way = wayOf(later);
  const leaves = (front >= most && way > 0) || (front <= least && way < 0);
  return leaves ? placeTrain(later, front) : later;
}

/** True while something is under way that time will change. */
export function isUnderWay({ table }: DriveFrame): boolean {
  const { stages, supplies, cars } = table.world;
  const known = (time: number): boolean => !Number.isNaN(time);
  return (
    stages.some(({ mode, overSince, lowSince }) => mode !== 'ready' || known(overSince) || known(lowSince)) ||
    supplies.some(({ mode }) => mode !== 'on') ||
    cars.some(({ drive, speed }) => drive !== 0 || speed !== 0)
  );
}

export const frontOf = ({ table }: DriveFrame): number => table.world.cars[0]?.front ?? 0;

export function wayOf({ table }: DriveFrame): -1 | 0 | 1 {
  const way = Math.sign(table.world.cars[0]?.drive ?? 0);
  if (way === 0) return 0;
  return way > 0 ? 1 : -1;
}

// What a new state of the table adds; between two looks only the signs of trouble are needed, not the meter.
function observe(frame: DriveFrame, table: TableRun, passing = false): DriveFrame {
  const shot = passing ? snapshot(table) : snapshot(table, frame.probes);
  const where = whereIs(shot, frame.where);
  const trips = [0, 1].map((stage) => {
    const event = table.events.some((one) => one.kind === 'trip' && one.stage === stage);
    return event ? (frame.strain[stage] ?? frame.trips[stage]) : frame.trips[stage];
  });
  const seen = { ...frame, table, shot, where, trips: [trips[0], trips[1]] as const };
  return where === frame.where ? watch(seen) : watch(forget(seen));
}

// A stage that has come back is not spoken of any more once the train is somewhere else.
function forget(frame: DriveFrame): DriveFrame {
  const kept = ([0, 1] as const).map((stage) =>
    frame.table.world.stages[stage].mode === 'ready' ? undefined : frame.trips[stage],
  );
  return { ...frame, trips: [kept[0], kept[1]] };
}

function watch(frame: DriveFrame): DriveFrame {
  const strain = ([0, 1] as const).map((stage) => strainOf(frame, stage) ?? frame.strain[stage]);
  return { ...frame, strain: [strain[0], strain[1]] };
}

function strainOf({ shot, table, where }: DriveFrame, stage: StageIndex): Tripped | undefined {
  const because = offBecause(table, shot, stage);
  if (because === undefined || table.world.stages[stage].mode !== 'ready') return undefined;
  const lifted = { ...table, world: { ...table.world, cars: [] } };
  const byTrain = offBecause(lifted, snapshot(lifted), stage) === undefined;
  return { because, where, byTrain, amps: shot.stages[stage]?.amps ?? 0 };
}

function offBecause({ layout }: TableRun, { stages }: Snapshot, stage: StageIndex): OffBecause | undefined {
  const { amps, linkVolts } = stages[stage] ?? { amps: 0, linkVolts: 0 };
  const { trip, guard = Number.POSITIVE_INFINITY } = layout.stages[stage];
  if (amps > trip) return 'over';
  return linkVolts > guard ? 'lifted' : undefined;
}

function whereIs({ cars: [car] }: Snapshot, before: Where): Where {
  if (car === undefined || car.pickUps.length === 0) return before;
  const inOld = car.pickUps.some(({ piece }) => piece.startsWith('old'));
  const inNew = car.pickUps.some(({ piece }) => piece.startsWith('new'));
  if (inOld && inNew) return 'across';
  if (inOld) return 'a';
  return inNew ? 'b' : 'dead';
}

/** Rails are told apart from dead ones from here on, volts. Source: from-memory. */
const ALIVE = 1;

/** The rails of a part at the gap: volts between them, and on which of them the plus is now. */
export interface PartRails {
  readonly volts: number;
  readonly alive: boolean;
  readonly plus: TableRail;
}

export function railsOf({ shot }: DriveFrame, part: 'a' | 'b'): PartRails {
  const rails = shot.rails.find(({ piece }) => piece === (part === 'a' ? 'old-gap' : 'new-gap'));
  const between = (rails?.a ?? 0) - (rails?.b ?? 0);
  return { volts: Math.abs(between), alive: Math.abs(between) > ALIVE, plus: between > 0 ? 'a' : 'b' };
}

/** A unit as it looks: its lamp, what it gives, amperes >= 0, what its supply has, volts, and whether only its button helps. */
export function unitOf({ shot, settings, table }: DriveFrame, stage: StageIndex) {
  const now = shot.stages[stage];
  return {
    lamp: now?.lamp ?? 'off',
    amps: Math.max(0, now?.amps ?? 0),
    trip: DRIVE_TRIP,
    supplyVolts: stage === 0 ? settings.voltsA : settings.voltsB,
    tripped: table.world.stages[stage].mode === 'tripped',
  } as const;
}

/** Amperes through the train that are worth a word. Source: from-memory. */
export const FELT = 0.25;

/** Current that goes in by wheels of one part and out by wheels of the other, on the rail where it is largest. */
export interface Through {
  readonly amps: number;
  readonly from: 'a' | 'b';
}

export function throughTrain({ shot }: DriveFrame): Through {
  const sum = (rail: TableRail, part: 'old' | 'new'): number =>
    (shot.cars[0]?.pickUps ?? [])
      .filter((one) => one.rail === rail && one.piece.startsWith(part))
      .reduce((total, { amps }) => total + amps, 0);
  const rails = (['a', 'b'] as const).map((rail) => {
    const [fromOld, fromNew] = [sum(rail, 'old'), sum(rail, 'new')];
    const amps = fromOld * fromNew < 0 ? Math.min(Math.abs(fromOld), Math.abs(fromNew)) : 0;
    // On one rail the current leaves the stronger side, on the other it comes back.
    const volts = shot.rails.find(({ piece }) => piece === (fromOld > 0 ? 'old-gap' : 'new-gap'));
    const outgoing = volts === undefined || (rail === 'a' ? volts.a >= volts.b : volts.b >= volts.a);
    return { amps, from: fromOld > 0 === outgoing ? ('a' as const) : ('b' as const) };
  });
  const [first, second] = rails;
  const none: Through = { amps: 0, from: 'a' };
  if (first === undefined || second === undefined) return none;
  return first.amps >= second.amps ? first : second;
}
