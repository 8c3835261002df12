// Fleets, supplies and units that several tests speak of.
import type { Capacity, Stage, Supply } from '../src/engine/power/capacity.ts';
import { capacity } from '../src/engine/power/capacity.ts';
import type { DemandInput } from '../src/engine/power/demand.ts';
import { constant, even } from '../src/engine/power/demand.ts';
import type { Fleet } from '../src/engine/power/fleet.ts';
import { countedTrains, districtLoad } from '../src/engine/power/fleet.ts';
import type { Draw } from '../src/engine/power/kernels.ts';
import type { RemedyInput } from '../src/engine/power/remedies.ts';
import type { Judgement, Verdict } from '../src/engine/power/rules.ts';
import { judge } from '../src/engine/power/rules.ts';
import type { Span } from '../src/engine/units.ts';

/** H0 locomotives without anything else on the track, at the default draws. */
export function h0(modern: number, older: number, moving: number): Fleet {
  return {
    trains: countedTrains('h0', modern, older, 0),
    moving,
    coaches: 0,
    lamps: 'filament',
    accessories: 0,
    stored: 0,
  };
}

export const dc = (amps: number, volts = 15): Supply => ({ kind: 'dc', volts, amps });
export const ac = (amps: number, volts = 16): Supply => ({ kind: 'ac', volts, amps });

/** A unit whose rails follow the supply and which needs nothing for itself. */
export const unit = (limit: number, more: Partial<Stage> = {}): Stage => ({
  limit,
  rails: { kind: 'follows' },
  ownUse: 0,
  ...more,
});

/** What to do about a fleet in H0 on d.c., all labels read. */
export const wish = (fleet: Fleet, amps: number, limit: number): RemedyInput => ({
  fleet,
  scale: 'h0',
  supply: { ...dc(amps, 16), plug: undefined },
  stage: unit(limit),
  input: { kind: 'dc', volts: 19, plug: undefined },
});

export function judged(fleet: Fleet, able: Pick<Capacity, 'hard' | 'usable'>): Judgement {
  return judge(districtLoad(fleet), able);
}

/** The verdict on a fleet with one supply on a unit that passes any amount of it. */
export function verdictOn(fleet: Fleet, amps: number): Verdict {
  return judged(fleet, capacity(dc(amps), unit(amps))).verdict;
}

/** Trains of one kind that draw nothing while they stand. */
export function movers(count: number, moving: number, running: Span, step?: number): DemandInput {
  return {
    trains: [{ count, running: even(running.from, running.to), standing: constant(0) }],
    moving,
    fixed: [],
    ...(step === undefined ? {} : { step }),
  };
}

/** A consumer that draws `current` with the chance `probability`, else nothing. */
export function onOff(probability: number, current = 1): Draw {
  return {
    kind: 'states',
    states: [
      { current, probability },
      { current: 0, probability: 1 - probability },
    ],
  };
}

/** Consumers that are on or off by themselves, one for each chance; 1 A each on a 1 A grid. */
export function independent(chances: readonly number[]): DemandInput {
  return { trains: [], moving: 0, fixed: chances.map((chance) => ({ count: 1, draw: onOff(chance) })), step: 1 };
}
