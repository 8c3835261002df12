// What would mend a shortage, cheapest first, each computed for this fleet with what it would bring.
import type { Capacity, Stage, Supply } from './capacity.ts';
import { capacity, trackCurrent } from './capacity.ts';
import { BOOSTER_OWN_USE } from './draws.ts';
import type { Fleet } from './fleet.ts';
import { districtLoad, largestMoving } from './fleet.ts';
import type { Judgement, Verdict } from './rules.ts';
import { atLeast, judge, worstVerdict } from './rules.ts';
import { ratingThatFills } from './trip-reach.ts';

export type RemedyId =
  | 'calm-the-consumption'
  | 'larger-supply'
  | 'leds-and-larger-supply'
  | 'booster-with-freed-supply'
  | 'booster-with-own-supply'
  | 'more-districts'
  | 'fewer-moving'
  | 'breakers-and-sub-districts';

export const MOST_DISTRICTS = 6;

export interface Remedy {
  readonly id: RemedyId;
  /** Usable current of each district, amperes; never added up. */
  readonly usable: readonly number[];
  readonly verdict: Verdict;
  /** Largest chance of any district to pass its hard limit, and its usable current. */
  readonly aboveHard: number;
  readonly aboveUsable: number;
  /** Rating of the supplies to get, amperes. */
  readonly ratings: readonly number[];
  /** Trains that may move, where the remedy is about that. */
  readonly moving?: number;
}

export interface RemedyInput {
  readonly fleet: Fleet;
  readonly supply: Supply;
  readonly stage: Stage;
}

/**
 * Every remedy that applies, cheapest first. A booster is taken to pass as much as the command station, with rails set
 * alike; each district holds any one consumer with equal chance. Those with verdict enough or ample reach the goal.
 */
export function remedies(input: RemedyInput): Remedy[] {
  const found = [
    calm(input),
    larger(input),
    calmAndLarger(input),
    freed(input),
    own(input),
    moreDistricts(input),
    fewer(input),
    breakers(input),
  ];
  return found.filter((remedy) => remedy !== undefined);
}

/** The first that reaches the wanted verdict. */
export function firstThatReaches(candidates: readonly Remedy[], wanted: Verdict): Remedy | undefined {
  return candidates.find((remedy) => remedy.id !== 'breakers-and-sub-districts' && atLeast(remedy.verdict, wanted));
}

function remedy(
  id: RemedyId,
  fleet: Fleet,
  capacities: readonly Capacity[],
  ratings: readonly number[],
  more: Pick<Remedy, 'moving'> = {},
): Remedy {
  const load = districtLoad(fleet, 1 / capacities.length);
  const judgements: Judgement[] = capacities.map((one) => judge(load, one));
  return {
    id,
    usable: capacities.map((one) => one.usable),
    verdict: worstVerdict(judgements.map((one) => one.verdict)),
    aboveHard: Math.max(...judgements.map((one) => one.aboveHard)),
    aboveUsable: Math.max(...judgements.map((one) => one.aboveUsable)),
    ratings,
    ...more,
  };
}

const hasFilamentLamps = (fleet: Fleet): boolean => fleet.coaches > 0 && fleet.lamps === 'filament';

function calm({ fleet, supply, stage }: RemedyInput): Remedy | undefined {
  if (!hasFilamentLamps(fleet)) return undefined;
  return remedy('calm-the-consumption', { ...fleet, lamps: 'led' }, [capacity(supply, stage)], []);
}

function larger({ fleet, supply, stage }: RemedyInput): Remedy | undefined {
  const amps = largerRating(supply, stage);
  if (amps === undefined) return undefined;
  return remedy('larger-supply', fleet, [capacity({ ...supply, amps }, stage)], [amps]);
}

// Both cheap steps together may spare a booster.
function calmAndLarger({ fleet, supply, stage }: RemedyInput): Remedy | undefined {
  const amps = largerRating(supply, stage);
  if (amps === undefined || !hasFilamentLamps(fleet)) return undefined;
  return remedy('leds-and-larger-supply', { ...fleet, lamps: 'led' }, [capacity({ ...supply, amps }, stage)], [amps]);
}

/** Rating that fills the stage, or undefined where the supply fills it already or none within NEM 609 would. */
function largerRating(supply: Supply, stage: Stage): number | undefined {
  if (trackCurrent(supply, stage) >= stage.limit - 1e-9) return undefined;
  return ratingThatFills(supply.kind, supply.volts, stage);
}

function boosterOf(stage: Stage): Stage {
  return { ...stage, ownUse: Math.min(stage.ownUse, BOOSTER_OWN_USE) };
}

function freed({ fleet, supply, stage }: RemedyInput): Remedy | undefined {
  const amps = largerRating(supply, stage);
  if (amps === undefined) return undefined;
  const capacities = [capacity({ ...supply, amps }, stage), capacity(supply, boosterOf(stage))];
  return remedy('booster-with-freed-supply', fleet, capacities, [amps]);
}

function full(
  { supply, stage }: RemedyInput,
  districts: number,
): { capacities: Capacity[]; ratings: number[] } | undefined {
  const filling = largerRating(supply, stage);
  const station = { ...supply, amps: Math.max(supply.amps, filling ?? 0) };
  const booster = ratingThatFills(supply.kind, supply.volts, boosterOf(stage));
  if (booster === undefined) return undefined;
  const boosters = Array.from({ length: districts - 1 }, () => booster);
  return {
    capacities: [capacity(station, stage), ...boosters.map((amps) => capacity({ ...supply, amps }, boosterOf(stage)))],
    ratings: filling === undefined ? boosters : [filling, ...boosters],
  };
}

function own(input: RemedyInput): Remedy | undefined {
  const both = full(input, 2);
  return both === undefined ? undefined : remedy('booster-with-own-supply', input.fleet, both.capacities, both.ratings);
}

function moreDistricts(input: RemedyInput): Remedy | undefined {
  let last: Remedy | undefined;
  for (let districts = 3; districts <= MOST_DISTRICTS; districts++) {
    const all = full(input, districts);
    if (all === undefined) return undefined;
    last = remedy('more-districts', input.fleet, all.capacities, all.ratings);
    if (atLeast(last.verdict, 'enough')) return last;
  }
  return last;
}

function fewer({ fleet, supply, stage }: RemedyInput): Remedy | undefined {
  const now = capacity(supply, stage);
  const moving = largestMoving(fleet, now, 'enough');
  if (moving < 1 || moving >= fleet.moving) return undefined;
  return remedy('fewer-moving', { ...fleet, moving }, [now], [], { moving });
}

function breakers({ fleet, supply, stage }: RemedyInput): Remedy {
  return remedy('breakers-and-sub-districts', fleet, [capacity(supply, stage)], []);
}
