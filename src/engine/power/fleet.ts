// What stands on the track, as a person described it, turned into the load of one district.

import type { Span } from '../units.ts';
import { middle } from '../units.ts';
import type { Working } from '../workings.ts';
import { working } from '../workings.ts';
import type { Stage, Supply } from './capacity.ts';
import { trackPerSupply } from './capacity.ts';
import type { Distribution, FixedGroup, TrainGroup } from './demand.ts';
import { constant, even, fittingDemand, MOST_DRAW, meanOf } from './demand.ts';
import type { Scale, Sureness } from './draws.ts';
import { ACCESSORY_DRAW, COACH_DRAWS, COLD_FILAMENT_TIMES, DRAWS, STORED_ENERGY_INRUSH } from './draws.ts';
import type { JointLaw } from './joint.ts';
import { jointLaw } from './joint.ts';
import type { Draw } from './kernels.ts';
import type { Able, DistrictLoad, Verdict } from './rules.ts';
import { atLeast, judgeInGroups } from './rules.ts';

/** Trains of one kind. Currents in amperes. */
export interface Trains {
  readonly kind: 'modern' | 'older' | 'modern-sound' | 'older-sound' | 'measured';
  readonly count: number;
  readonly running: Span;
  readonly standing: number;
  readonly stall: number;
}

export interface Fleet {
  readonly trains: readonly Trains[];
  /** How many move at once. */
  readonly moving: number;
  readonly coaches: number;
  readonly lamps: 'filament' | 'led';
  /** Accessory decoders, signals and powered turnout motors fed from the rails. */
  readonly accessories: number;
  /** Vehicles with stored energy. */
  readonly stored: number;
}

/** Counts by kind into train groups at the scale's default draws. Sound goes to modern locomotives first; sound <= modern + older. */
export function countedTrains(scale: Scale, modern: number, older: number, sound: number): Trains[] {
  const soundModern = Math.min(sound, modern);
  const soundOlder = Math.min(sound - soundModern, older);
  const groups = [
    kindOf(scale, 'modern', modern - soundModern, false),
    kindOf(scale, 'modern', soundModern, true),
    kindOf(scale, 'older', older - soundOlder, false),
    kindOf(scale, 'older', soundOlder, true),
  ];
  return groups.filter((group) => group.count > 0);
}

function kindOf(scale: Scale, age: 'modern' | 'older', count: number, sound: boolean): Trains {
  const draws = DRAWS[scale];
  const run = draws[age];
  const extra = sound ? draws.sound : { from: 0, to: 0 };
  return {
    kind: sound ? `${age}-sound` : age,
    count,
    running: { from: run.from + extra.from, to: run.to + extra.to },
    standing: middle(draws.standing) + middle(extra),
    stall: middle(age === 'modern' ? draws.modernStall : draws.olderStall) + middle(extra),
  };
}

/** Trains a person has measured. Without a stall figure of their own, twice the running maximum. Source: from-memory. */
export function measuredTrains(count: number, running: Span, standing: number): Trains {
  return { kind: 'measured', count, running, standing: Math.min(standing, running.from), stall: 2 * running.to };
}

/**
 * Draws that were measured in the lead of the supply, as amperes on the track, and how many times as many these are. Behind a step-down
 * converter the power is the same and not the current. Undefined where nothing was measured, or without such a converter.
 */
export function trackAsMeasured(
  fleet: Fleet,
  supply: Supply,
  stage: Pick<Stage, 'rails'>,
): { readonly times: number; readonly fleet: Fleet } | undefined {
  const times = trackPerSupply(supply, stage);
  if (times === 1 || !fleet.trains.some(({ kind }) => kind === 'measured')) return undefined;
  const trains = fleet.trains.map((group) => {
    if (group.kind !== 'measured') return group;
    const { from, to } = group.running;
    const track = (amps: number): number => Math.min(MOST_DRAW, times * amps);
    return measuredTrains(group.count, { from: track(from), to: track(to) }, track(group.standing));
  });
  return { times, fleet: { ...fleet, trains } };
}

export function trainCount(fleet: Pick<Fleet, 'trains'>): number {
  return fleet.trains.reduce((sum, group) => sum + group.count, 0);
}

/** Load of a district that holds any one consumer with the chance `share` (1: the whole fleet). */
export function districtLoad(fleet: Fleet, share = 1): DistrictLoad {
  return loadWith(fleet, lawOf(fleet, share), share);
}

/** What a district that holds any one consumer with the chance `share` draws together with the rest of the fleet; 0 < share < 1. */
export const jointLoad = (fleet: Fleet, share: number): JointLaw =>
  jointLaw({ ...demandParts(fleet), moving: fleet.moving }, share);

const lawOf = (fleet: Fleet, share = 1): Distribution =>
  fittingDemand({ ...demandParts(fleet), moving: fleet.moving, share });

const SOURCES_OF: Readonly<Record<Sureness, readonly string[]>> = {
  sourced: ['withheld-manuals', 'trade-magazine-2014'],
  practice: ['common-practice'],
  memory: ['from-memory'],
};

/** The least sure of what the draws of these trains rest on; undefined where all were measured. */
export function drawsSure({ trains }: Pick<Fleet, 'trains'>, scale: Scale): Sureness | undefined {
  const { modernSure, olderSure } = DRAWS[scale];
  const used = trains.flatMap(({ kind }) => {
    if (kind === 'measured') return [];
    return kind.startsWith('older') ? [olderSure] : [modernSure];
  });
  return LEAST_SURE_FIRST.find((sure) => used.includes(sure));
}

const LEAST_SURE_FIRST: readonly Sureness[] = ['memory', 'practice', 'sourced'];

/**
 * How a figure of the draw (mean, 95 % point, largest; amperes) came about. Measured trains need no source but the person. `law`: the
 * fleet's, where it is known already.
 */
export function demandWorking(fleet: Fleet, scale: Scale, value: number, law = lawOf(fleet)): Working {
  const { modernSure, olderSure } = DRAWS[scale];
  const sources = fleet.trains.flatMap(({ kind }) => {
    if (kind === 'measured') return [];
    return SOURCES_OF[kind.startsWith('older') ? olderSure : modernSure];
  });
  const inputs = [
    ['trains', trainCount(fleet), 'trains'],
    ['moving', fleet.moving, 'trains'],
    ['coaches', fleet.coaches, 'pieces'],
    ['accessories', fleet.accessories, 'pieces'],
    ['grid', law.step, 'A'],
  ] as const;
  return working('demand', value, 'A', inputs, [...new Set(['hong-2013', 'own-derivation', ...sources])]);
}

/** Plain sum of the middle running draw of every train, and of all that is always on, for comparison, amperes. */
export function plainSum(fleet: Fleet): Working {
  const running = fleet.trains.reduce((total, group) => total + group.count * middle(group.running), 0);
  const inputs = [
    ['trains', trainCount(fleet), 'trains'],
    ['coaches', fleet.coaches, 'pieces'],
    ['accessories', fleet.accessories, 'pieces'],
  ] as const;
  return working('plain-sum', running + alwaysOn(fleet), 'A', inputs, ['common-practice']);
}

/** Coach lamps and accessories, amperes. */
const alwaysOn = (fleet: Fleet): number =>
  demandParts(fleet).fixed.reduce((sum, group) => sum + group.count * meanOf(group.draw), 0);

/** What cold filament lamps draw for the first twentieth of a second, amperes; nothing where there are none. */
export function coldFilaments({ coaches, lamps }: Pick<Fleet, 'coaches' | 'lamps'>): Span {
  const warm = lamps === 'filament' ? coaches * middle(COACH_DRAWS.filament) : 0;
  return { from: COLD_FILAMENT_TIMES.from * warm, to: COLD_FILAMENT_TIMES.to * warm };
}

const standingTrains = (fleet: Pick<Fleet, 'trains' | 'moving'>): number => trainCount(fleet) - fleet.moving;

/** Trains with sound, whether it plays while they stand or not. */
export const withSound = ({ trains }: Pick<Fleet, 'trains'>): number =>
  trains.reduce((sum, { kind, count }) => sum + (kind.endsWith('-sound') ? count : 0), 0);

/** The fleet with sound in every train that was counted. */
export const withAllSound = (fleet: Fleet, scale: Scale): Fleet => ({
  ...fleet,
  trains: fleet.trains.map((group) => {
    if (group.kind !== 'modern' && group.kind !== 'older') return group;
    return kindOf(scale, group.kind, group.count, true);
  }),
});

/** The fleet with the sound of all that stands turned off; own measurements hold their sound as they are. */
export function muted(fleet: Fleet, scale: Scale): Fleet {
  const sound = middle(DRAWS[scale].sound);
  const trains = fleet.trains.map((group) =>
    group.kind.endsWith('-sound') ? { ...group, standing: group.standing - sound } : group,
  );
  return { ...fleet, trains };
}

/** The fleet with so many of the standing trains on track that is switched off: they draw nothing, whichever they are. */
export function parked(fleet: Fleet, count: number): Fleet {
  const left = 1 - count / Math.max(1, standingTrains(fleet));
  return { ...fleet, trains: fleet.trains.map((group) => ({ ...group, standing: group.standing * left })) };
}

/** How many trains may be parked at most. */
export const mostParked = standingTrains;

function demandParts(fleet: Fleet): { trains: TrainGroup[]; fixed: FixedGroup[] } {
  const lamps = COACH_DRAWS[fleet.lamps];
  const fixed: FixedGroup[] = [
    { count: fleet.coaches, draw: even(lamps.from, lamps.to) },
    { count: fleet.accessories, draw: even(ACCESSORY_DRAW.from, ACCESSORY_DRAW.to) },
  ];
  return { trains: fleet.trains.map(toGroup), fixed: fixed.filter((group) => group.count > 0) };
}

function toGroup(trains: Trains): TrainGroup {
  const standing: Draw = constant(trains.standing);
  return { count: trains.count, running: even(trains.running.from, trains.running.to), standing };
}

function loadWith(fleet: Fleet, distribution: Distribution, share: number): DistrictLoad {
  const standing = fleet.trains.reduce((sum, group) => sum + group.count * group.standing, 0);
  const fixed = alwaysOn(fleet);
  // At the 95 % point the hungriest train already runs at the top of its range: only the rest is extra.
  const stallExtra =
    fleet.moving === 0 ? 0 : Math.max(0, ...fleet.trains.map((group) => group.stall - group.running.to));
  return { distribution, stallExtra, powerUp: share * (standing + fixed + fleet.stored * STORED_ENERGY_INRUSH) };
}

/**
 * Most trains of this fleet that may move at once with at least the wanted verdict, put on in groups if need be; -1 where not even standing
 * does. One more train that moves never makes a verdict better, so the last that passes is found by halving. `share`: of a district that
 * holds so much of the fleet.
 */
export function largestMoving(fleet: Fleet, capacity: Able, wanted: Verdict, share = 1): number {
  const passes = (moving: number): boolean =>
    atLeast(judgeInGroups(districtLoad({ ...fleet, moving }, share), capacity).verdict, wanted);
  let [most, failing] = [-1, trainCount(fleet) + 1];
  while (failing - most > 1) {
    const moving = Math.floor((most + failing) / 2);
    if (passes(moving)) most = moving;
    else failing = moving;
  }
  return most;
}

/** How many more trains of the kind `group` could be added and moved, the others as now, with at least the wanted verdict; at most `most`. */
export function moreTrains(fleet: Fleet, group: Trains, capacity: Able, wanted: Verdict, most = 30): number {
  const passes = (more: number): boolean => {
    const trains = [...fleet.trains, { ...group, count: more }];
    return atLeast(
      judgeInGroups(districtLoad({ ...fleet, trains, moving: fleet.moving + more }), capacity).verdict,
      wanted,
    );
  };
  if (!passes(0)) return 0;
  let more = 0;
  while (more < most && passes(more + 1)) more++;
  return more;
}
