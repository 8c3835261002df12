// Which supply belongs on which power stage. Two effects, kept apart: volts on the rails decide what happens at the gap,
// amperes against the district's demand decide capacity.

import type { Span } from '../units.ts';
import { assign, FORBIDDEN } from './assignment.ts';
import type { Capacity, Stage, Supply } from './capacity.ts';
import { capacity } from './capacity.ts';
import type { Distribution } from './demand.ts';
import { chanceAbove, quantile } from './demand.ts';
import type { InputLabel, LabelFinding, Plug } from './labels.ts';
import { checkLabels } from './labels.ts';
import type { FedStage, RailVoltage } from './rail-voltage.ts';
import { neighbourVolts, railVoltage } from './rail-voltage.ts';
import type { DistrictLoad, Judgement } from './rules.ts';
import { judge } from './rules.ts';
import { isLevel, STEP_LIMIT } from './steps.ts';
import type { TripReach } from './trip-reach.ts';
import { tripReach } from './trip-reach.ts';

export interface NamedSupply extends Supply {
  readonly plug: Plug | undefined;
}

/** A stage with its printed input and the load of its district; the command station first. */
export interface LoadedStage extends Stage {
  readonly input: InputLabel;
  readonly load: DistrictLoad;
}

export interface Placed {
  readonly supply: number;
  readonly label: LabelFinding;
  /** Loaded: at the current that its district does not pass in 95 % of moments, as far as it can give it. */
  readonly rails: RailVoltage;
  /** What the rails were worked out from, to set them beside a neighbour's. */
  readonly fed: FedStage;
  readonly capacity: Capacity;
  readonly judgement: Judgement;
  readonly trip: TripReach;
}

export interface Arrangement {
  /** For each stage in order. */
  readonly stages: readonly Placed[];
  readonly permitted: boolean;
  /** Every stage can switch off on a short: its supply gives more than its trip current, or perhaps. */
  readonly trips: boolean;
  /** Rails of the highest booster less those of the command station, volts, over idle and loaded; positive: a booster stands higher. */
  readonly step: Span;
  /** True where a bridging train could make one stage carry both districts beyond its limit, and the other then too: `cascadeChance` above `CASCADE_GOAL`. */
  readonly cascade: boolean;
  /** Share of moments at which two districts together draw more than either of their stages can give, the worst pair. */
  readonly cascadeChance: number;
  /** Share of moments above the usable current, worst district. */
  readonly strain: number;
}

/** Up to so many supplies every way of placing them is tried. Source: own-choice. */
export const MOST_ENUMERATED = 6;
/** Share of moments at which two districts may draw more together than either stage gives. Source: common-practice. */
export const CASCADE_GOAL = 0.05;

/** What the districts of two stages draw together; see `arrange`. */
export type Together = (one: number, other: number) => Distribution;

/**
 * All arrangements, best first: permitted by labels, each stage able to trip, step within the limit, else the higher rails at the command
 * station, no cascade, least strain. Up to six supplies every arrangement is compared; above that only the one with the
 * least strain among the permitted (assignment). Stages <= supplies; throws RangeError otherwise. `together`: what two districts draw at
 * the same moment, which is less than both at their busiest where the same trains move in either; districts that have nothing to do with
 * each other where left out.
 */
export function arrange(
  supplies: readonly NamedSupply[],
  stages: readonly LoadedStage[],
  stepLimit = STEP_LIMIT,
  together?: Together,
): Arrangement[] {
  if (stages.length === 0 || stages.length > supplies.length) {
    throw new RangeError(`arrange: ${supplies.length} supplies for ${stages.length} stages`);
  }
  const table = stages.map((stage) => supplies.map((supply, index) => place(supply, index, stage)));
  const choices =
    supplies.length <= MOST_ENUMERATED ? permutations(supplies.length, stages.length) : [leastStrain(table)];
  const pairAbove: PairAbove = (i, j, limit) =>
    together === undefined
      ? apartAbove(stages[i]?.load.distribution, stages[j]?.load.distribution, limit)
      : chanceAbove(together(i, j), limit);
  const arrangements = choices.map((choice) =>
    arrangementOf(
      choice.flatMap((supply, stage) => table[stage]?.[supply] ?? []),
      pairAbove,
    ),
  );
  return arrangements.sort((a, b) => compare(a, b, stepLimit));
}

function place(supply: NamedSupply, index: number, stage: LoadedStage): Placed {
  const able = capacity(supply, stage);
  const loaded = Math.min(able.hard, quantile(stage.load.distribution, 0.95));
  const fed: FedStage = { supply, rails: stage.rails, load: { build: stage.build, loaded } };
  return {
    supply: index,
    label: checkLabels(supply, stage.input),
    rails: railVoltage(supply, stage.rails, fed.load),
    fed,
    capacity: able,
    judgement: judge(stage.load, able),
    trip: tripReach(supply, stage),
  };
}

function arrangementOf(placed: readonly Placed[], pairAbove: PairAbove): Arrangement {
  const cascadeChance = cascades(placed, pairAbove);
  return {
    stages: placed,
    permitted: placed.every((one) => one.label.kind !== 'not-permitted'),
    trips: placed.every((one) => one.trip !== 'not-reached'),
    step: stepOf(placed),
    cascade: cascadeChance > CASCADE_GOAL,
    cascadeChance,
    strain: Math.max(...placed.map((one) => one.judgement.aboveUsable)),
  };
}

// Idle is compared with idle and loaded with loaded; what one busy side does is the crossing's matter.
function stepOf(placed: readonly Placed[]): Span {
  const [station, ...boosters] = placed;
  if (station === undefined || boosters.length === 0) return { from: 0, to: 0 };
  const steps = boosters.flatMap((booster) => {
    const { idle, loaded } = neighbourVolts(station.fed, booster.fed);
    return [idle, loaded].flatMap(({ near, far }) => [far.from - near.to, far.to - near.from]);
  });
  return { from: Math.min(...steps), to: Math.max(...steps) };
}

/** Share of moments at which the districts i and j together draw more than `limit`. */
type PairAbove = (i: number, j: number, limit: number) => number;

function cascades(placed: readonly Placed[], pairAbove: PairAbove): number {
  const chances = placed.flatMap((one, i) =>
    placed.flatMap((other, j) => (i < j ? pairAbove(i, j, Math.max(one.capacity.hard, other.capacity.hard)) : [])),
  );
  return Math.max(0, ...chances);
}

/** The same for two districts that draw by themselves. */
function apartAbove(one: Distribution | undefined, other: Distribution | undefined, limit: number): number {
  if (one === undefined || other === undefined) return 0;
  return one.mass.reduce(
    (sum, chance, i) => (chance > 0 ? sum + chance * chanceAbove(other, limit - i * one.step) : sum),
    0,
  );
}

function compare(a: Arrangement, b: Arrangement, stepLimit: number): number {
  const within = (one: Arrangement): boolean => isLevel(one.step, stepLimit);
  return (
    Number(b.permitted) - Number(a.permitted) ||
    Number(b.trips) - Number(a.trips) ||
    Number(within(b)) - Number(within(a)) ||
    (within(a) ? 0 : middleOf(a.step) - middleOf(b.step)) ||
    Number(a.cascade) - Number(b.cascade) ||
    byStrain(a, b)
  );
}

const middleOf = (span: Span): number => (span.from + span.to) / 2;

// Equal strain (to one in a million): the more capable supply at the command station, as is the custom.
function byStrain(a: Arrangement, b: Arrangement): number {
  if (Math.abs(a.strain - b.strain) > 1e-6) return a.strain - b.strain;
  return (b.stages[0]?.capacity.usable ?? 0) - (a.stages[0]?.capacity.usable ?? 0);
}

function leastStrain(table: readonly (readonly Placed[])[]): number[] {
  const costs = table.map((row) =>
    row.map((one) => (one.label.kind === 'not-permitted' ? FORBIDDEN : one.judgement.aboveUsable)),
  );
  return [...assign(costs).columns];
}

function permutations(of: number, length: number): number[][] {
  if (length === 0) return [[]];
  return permutations(of, length - 1).flatMap((start) =>
    Array.from({ length: of }, (_, next) => next)
      .filter((next) => !start.includes(next))
      .map((next) => [...start, next]),
  );
}
