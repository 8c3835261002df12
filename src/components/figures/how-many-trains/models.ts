// What the figures about trains compute, and the settings they begin from: the same for the picture and for the numbers in a lesson's text.
import type { Capacity, DistrictLoad, Fleet, Judgement, Stage, Supply } from '../../../engine/index.ts';
import { capacity, countedTrains, districtLoad, judge, limitFor, worthOfOneAmpere } from '../../../engine/index.ts';

const RAILS = { kind: 'follows' } as const;
const stageOf = (limit: number): Stage => ({ limit, rails: RAILS, ownUse: 0 });
const supplyOf = (amps: number): Supply => ({ kind: 'dc', volts: 16, amps });

const fleetOf = (modern: number, older: number, moving: number): Fleet => ({
  trains: countedTrains('h0', modern, older, 0),
  moving,
  coaches: 0,
  lamps: 'led',
  accessories: 0,
  stored: 0,
});

/** A load on what a supply and a unit give, and what comes of it. */
export interface Carried {
  readonly load: DistrictLoad;
  readonly able: Capacity;
  readonly judgement: Judgement;
}

function carried(fleet: Fleet, able: Capacity): Carried {
  const load = districtLoad(fleet);
  return { load, able, judgement: judge(load, able) };
}

export interface Trains {
  readonly total: number;
  readonly moving: number;
  readonly older: boolean;
  /** Amperes of the supply. */
  readonly supply: number;
}

/** All four that are there move. */
export const TRAINS_START: Trains = { total: 4, moving: 4, older: false, supply: 2 };

export const movingOf = ({ total, moving }: Trains): number => Math.min(moving, total);

export function trainsOn(set: Trains): Carried {
  const moving = movingOf(set);
  const fleet = set.older ? fleetOf(0, set.total, moving) : fleetOf(set.total, 0, moving);
  return carried(fleet, capacity(supplyOf(set.supply), stageOf(limitFor(set.supply))));
}

export interface Larger {
  readonly supply: number;
  readonly limit: number;
}

export const LARGER_START: Larger = { supply: 2, limit: 3 };
export const LARGER_FLEET = { modern: 4, older: 2, moving: 3 } as const;

export function largerSupply({ supply, limit }: Larger): Carried & { readonly more: number } {
  const { modern, older, moving } = LARGER_FLEET;
  const [from, stage] = [supplyOf(supply), stageOf(limit)];
  return {
    ...carried(fleetOf(modern, older, moving), capacity(from, stage)),
    more: worthOfOneAmpere(from, stage),
  };
}

export interface Divided {
  /** Trains in part A and in part B. */
  readonly here: number;
  readonly there: number;
  /** Amperes of the two supplies. */
  readonly a: number;
  readonly b: number;
}

export const DIVIDED_START: Divided = { here: 3, there: 3, a: 3, b: 2 };

export function dividedParts({ here, there, a, b }: Divided): readonly (Carried & { readonly trains: number })[] {
  return [[here, a] as const, [there, b] as const].map(([trains, supply]) => ({
    trains,
    ...carried(fleetOf(trains, 0, trains), capacity(supplyOf(supply), stageOf(3))),
  }));
}
