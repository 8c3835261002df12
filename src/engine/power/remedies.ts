// What would mend a shortage, each computed for this fleet with what it would bring and what it takes: what is free first, then by money,
// then by time.
import type { Cost } from '../cost.ts';
import { byMoneyThenTime, costOf as sumOf } from '../cost.ts';
import type { Capacity, Stage, Supply } from './capacity.ts';
import { COMMON_RATINGS, capacity, trackCurrent } from './capacity.ts';
import type { Scale } from './draws.ts';
import { BOOSTER_OWN_USE, DRAWS } from './draws.ts';
import type { Fleet } from './fleet.ts';
import { districtLoad, largestMoving, mostParked, muted, parked, trainCount, withSound } from './fleet.ts';
import type { InputLabel } from './labels.ts';
import { dcVoltsFor, railsTooHigh, railVoltage } from './rail-voltage.ts';
import type { Verdict } from './rules.ts';
import { atLeast, judge, judgeInGroups, worstVerdict } from './rules.ts';
import type { NamedSupply } from './supplies.ts';
import { recommendedRating, supplyTrip } from './trip-reach.ts';

export type RemedyId =
  | 'mute-and-park'
  | 'calm-the-consumption'
  | 'larger-supply'
  | 'leds-and-larger-supply'
  | 'booster-with-freed-supply'
  | 'booster-with-own-supply'
  | 'larger-unit'
  | 'more-districts'
  | 'fewer-moving'
  | 'breakers-and-sub-districts';

/** Most districts that are advised. Source: own-choice. */
export const MOST_DISTRICTS = 6;

/** How many of each a remedy is about. */
export interface Counts {
  /** Trains that may move at once. */
  readonly moving?: number;
  /** Trains whose sound is off while they stand, and trains on track that is switched off. */
  readonly muted?: number;
  readonly parked?: number;
  /** Coaches that get LEDs. */
  readonly coaches?: number;
  /** To be got. */
  readonly boosters?: number;
  readonly supplies?: number;
}

export interface Remedy {
  readonly id: RemedyId;
  /** Usable current of each district, amperes; never added up. */
  readonly usable: readonly number[];
  readonly verdict: Verdict;
  /** Largest chance of any district to pass its hard limit, and its usable current. */
  readonly aboveHard: number;
  readonly aboveUsable: number;
  /** Trains have to be put on in groups after it, since all that charges at once is too much. */
  readonly inGroups: boolean;
  /** Supplies to get: kind, volts, and the rating of each, amperes. */
  readonly ratings: readonly number[];
  readonly supply: Pick<Supply, 'kind' | 'volts'>;
  readonly cost: Cost;
  readonly counts: Counts;
  /** What each booster to get passes, amperes, where that is more than the unit there is; the track is then fed by such boosters alone. */
  readonly limit: number | undefined;
}

export interface RemedyInput {
  readonly fleet: Fleet;
  readonly scale: Scale;
  readonly supply: NamedSupply;
  readonly stage: Stage;
  /** What is printed at the unit's input; a booster is taken to have the same. */
  readonly input: InputLabel;
  /** Boosters that are there already and need not be bought. */
  readonly boosters?: number;
  /** The unit is only set lower than it could pass: no larger one is looked for. */
  readonly setLower?: boolean;
}

/** What one piece takes: euros, and hours. Source: from-memory. */
const COSTS = {
  'quiet-train': { money: { from: 0, to: 0 }, hours: { from: 0.02, to: 0.1 } },
  'coach-leds': { money: { from: 3, to: 15 }, hours: { from: 0.5, to: 1.5 } },
  supply: { money: { from: 30, to: 90 }, hours: { from: 0.3, to: 1 } },
  booster: { money: { from: 80, to: 250 }, hours: { from: 0, to: 0 } },
  /** Gaps, feeders, leads and tests of one more part of the track. */
  district: { money: { from: 10, to: 30 }, hours: { from: 6, to: 14 } },
  /** The track's leads moved to another unit, and a short proven there. */
  'other-unit': { money: { from: 0, to: 0 }, hours: { from: 1, to: 3 } },
  breaker: { money: { from: 25, to: 70 }, hours: { from: 2, to: 5 } },
} as const satisfies Readonly<Record<string, Cost>>;

/** What one supply takes: euros, and hours. Source: from-memory. */
export const SUPPLY_COST: Cost = COSTS.supply;

type Piece = keyof typeof COSTS;

const costOf = (pieces: readonly (readonly [count: number, piece: Piece])[]): Cost =>
  sumOf(pieces.map(([count, piece]) => [count, COSTS[piece]]));

/**
 * What breakers for parts of the track take, and then a district more (its booster, its supply, and the work): euros, and hours. Source:
 * from-memory.
 */
export const BREAKERS_COST = costOf([[2, 'breaker']]);
export const SECOND_DISTRICT_COST = costOf([
  [1, 'booster'],
  [1, 'supply'],
  [1, 'district'],
]);

/**
 * Every remedy that applies: by money, then by time; breakers last, since they give no power. A booster is taken to pass as much as the command station, with rails set
 * alike. Where two such districts do not do and the unit passes less than is usual for the scale, boosters that pass that are looked at
 * too, before more districts: they feed the whole track, and the command station gives the commands. Each district holds any one consumer with equal chance. Those with verdict enough or ample reach the goal.
 */
export function remedies(input: RemedyInput): Remedy[] {
  const two = [freed(input), own(input)];
  const stages = stagesFor(input, two);
  const found = [
    fewer(input),
    quiet(input),
    calm(input),
    larger(input),
    calmAndLarger(input),
    ...two,
    largerUnit(input, stages),
    moreDistricts(input, stages),
  ];
  const sorted = found.filter((remedy) => remedy !== undefined).sort((a, b) => byMoneyThenTime(a.cost, b.cost));
  return [...sorted, breakers(input)];
}

/** More than this times as dear, a remedy with room to spare gives way to one that is tight. Source: common-practice. */
const DEARER = 1.5;

/** Who may move less than this part of what is wished has been given no remedy, be it free or be it districts. Source: common-practice. */
const LEAST_LEFT = 1 / 4;
/** Weekends of work are worth it for so many times what may move without. Source: common-practice. */
const WORTH_DIVIDING = 2;

/**
 * The one to take: the cheapest that is enough and lets run what is wished; a much cheaper one that is tight comes before it. Where nothing
 * lets all of it run, fewer moving; and the most districts, where that leaves less than a quarter of the `wished` trains, and these carry a
 * quarter and twice as many. Undefined where nothing helps. Breakers give no power.
 */
export function chosenOf(found: readonly Remedy[], wished = 0): Remedy | undefined {
  const keep = found.filter(
    ({ id, counts }) => !(NO_REMEDY.has(id) || (id === 'larger-unit' && counts.moving !== undefined)),
  );
  const reaches = (wanted: Verdict) => keep.find(({ verdict }) => atLeast(verdict, wanted));
  const [ample, tight] = [reaches('enough'), reaches('tight')];
  if (tight === undefined) return leastGivenUp(found, wished);
  if (ample === undefined || ample.cost.money.to > DEARER * tight.cost.money.to) return tight;
  return ample;
}

/** Breakers give no power, and fewer moving gives up what is wished. */
const NO_REMEDY: ReadonlySet<RemedyId> = new Set(['breakers-and-sub-districts', 'fewer-moving']);

function leastGivenUp(found: readonly Remedy[], wished: number): Remedy | undefined {
  const fewer = found.find(({ id }) => id === 'fewer-moving');
  const most = found.find(({ id }) => id === 'more-districts');
  const { moving: left } = fewer?.counts ?? {};
  const carried = most?.counts.moving;
  if (left === undefined || carried === undefined) return fewer;
  const quarter = LEAST_LEFT * wished;
  return left < quarter && carried >= Math.max(quarter, WORTH_DIVIDING * left) ? most : fewer;
}

interface With {
  readonly counts?: Counts;
  readonly ratings?: readonly number[];
  readonly supply?: Pick<Supply, 'kind' | 'volts'>;
  readonly cost?: Cost;
  readonly limit?: number;
}

function remedy(
  id: RemedyId,
  input: RemedyInput,
  capacities: readonly Capacity[],
  { counts = {}, ratings = [], supply = input.supply, cost = costOf([]), limit }: With = {},
): Remedy {
  const load = districtLoad(input.fleet, 1 / capacities.length);
  const judgements = capacities.map((one) => judgeInGroups(load, one));
  const { kind, volts } = supply;
  return {
    id,
    usable: capacities.map((one) => one.usable),
    verdict: worstVerdict(judgements.map((one) => one.verdict)),
    aboveHard: Math.max(...judgements.map((one) => one.aboveHard)),
    aboveUsable: Math.max(...judgements.map((one) => one.aboveUsable)),
    inGroups: capacities.some((one) => !judge(load, one).powerUp.passes),
    ratings,
    supply: { kind, volts },
    cost,
    counts,
    limit,
  };
}

const asItIs = ({ supply, stage }: RemedyInput): Capacity => capacity(supply, stage);

const hasFilamentLamps = (fleet: Fleet): boolean => fleet.coaches > 0 && fleet.lamps === 'filament';

/** Sound off in what stands, and as few as will do of what stands on track that is switched off. */
function quiet(input: RemedyInput): Remedy | undefined {
  const { fleet, scale } = input;
  const able = asItIs(input);
  const [most, mutes] = [mostParked(fleet), withSound(fleet)];
  if (most === 0) return undefined;
  const hushed = mutes === 0 ? fleet : muted(fleet, scale);
  const verdict = (count: number) => judgeInGroups(districtLoad(parked(hushed, count)), able).verdict;
  const now = judgeInGroups(districtLoad(fleet), able).verdict;
  const goal: Verdict = atLeast(verdict(most), 'enough') ? 'enough' : 'tight';
  if (atLeast(now, verdict(most))) return undefined;
  const count = leastThat((parkedTrains) => atLeast(verdict(parkedTrains), goal), most);
  return remedy('mute-and-park', { ...input, fleet: parked(hushed, count) }, [able], {
    counts: { ...(mutes > 0 ? { muted: mutes } : {}), ...(count > 0 ? { parked: count } : {}) },
    cost: costOf([[mutes + count, 'quiet-train']]),
  });
}

/** The least number from 0 to `most` that passes, where every larger one does too; `most` where none does. */
function leastThat(passes: (count: number) => boolean, most: number): number {
  let [failing, passing] = [-1, most];
  while (passing - failing > 1) {
    const between = Math.floor((failing + passing) / 2);
    if (passes(between)) passing = between;
    else failing = between;
  }
  return passing;
}

const withLeds = (input: RemedyInput): RemedyInput => ({ ...input, fleet: { ...input.fleet, lamps: 'led' } });

function calm(input: RemedyInput): Remedy | undefined {
  const { coaches } = input.fleet;
  if (!hasFilamentLamps(input.fleet)) return undefined;
  return remedy('calm-the-consumption', withLeds(input), [asItIs(input)], {
    counts: { coaches },
    cost: costOf([[coaches, 'coach-leds']]),
  });
}

function larger(input: RemedyInput): Remedy | undefined {
  const wanted = largerSupply(input);
  if (wanted === undefined) return undefined;
  return remedy('larger-supply', input, [capacity(wanted, input.stage)], {
    supply: wanted,
    ratings: [wanted.amps],
    counts: { supplies: 1 },
    cost: costOf([[1, 'supply']]),
  });
}

// Both cheap steps together may spare a booster.
function calmAndLarger(input: RemedyInput): Remedy | undefined {
  const wanted = largerSupply(input);
  const { coaches } = input.fleet;
  if (wanted === undefined || !hasFilamentLamps(input.fleet)) return undefined;
  return remedy('leds-and-larger-supply', withLeds(input), [capacity(wanted, input.stage)], {
    supply: wanted,
    ratings: [wanted.amps],
    counts: { coaches, supplies: 1 },
    cost: costOf([
      [coaches, 'coach-leds'],
      [1, 'supply'],
    ]),
  });
}

/** The supply to get for a stage: surely trips it, within its label, the scale and NEM 609; undefined where none does. */
export function supplyFor({ supply, input, scale }: RemedyInput, stage: Stage): Supply | undefined {
  const like = likeSupply(supply, { input, scale, stage });
  if (like === undefined) return undefined;
  const plug = like.kind === supply.kind ? supply.plug : undefined;
  const advice = recommendedRating({ ...like, plug, stage, input, scale });
  return advice.kind === 'rating' ? { ...like, amps: advice.amps } : undefined;
}

/** Kind and volts to get: as now, but regulated d.c. where a.c. may lift the rails too high; undefined where the unit takes no d.c. */
function likeSupply(
  supply: Supply,
  { input, scale, stage }: Pick<RemedyInput, 'input' | 'scale' | 'stage'>,
): Pick<Supply, 'kind' | 'volts'> | undefined {
  const { kind, volts } = supply;
  if (kind === 'dc' || railsTooHigh(railVoltage(supply, stage.rails), scale) === 'no') return { kind, volts };
  if (input.kind !== 'dc' && input.kind !== 'either') return undefined;
  const direct = dcVoltsFor(scale, input.volts ?? 0);
  return direct === undefined ? undefined : { kind: 'dc', volts: direct };
}

/** A supply that fills the stage, or undefined where it is filled already or none would. */
function largerSupply(input: RemedyInput): Supply | undefined {
  const { supply, stage } = input;
  if (trackCurrent(supply, stage) >= stage.limit - 1e-9) return undefined;
  return supplyFor(input, stage);
}

const boosterOf = (stage: Stage): Stage => ({ ...stage, ownUse: Math.min(stage.ownUse, BOOSTER_OWN_USE) });

/** Boosters that have to be bought for so many districts. */
const toBuy = ({ boosters = 0 }: RemedyInput, districts: number): number => Math.max(0, districts - 1 - boosters);

/** Boosters to get for a division into so many districts, and what it takes with them and so many supplies. */
export function divisionTakes(
  input: RemedyInput,
  districts: number,
  supplies: number,
): { readonly boosters: number; readonly cost: Cost } {
  const boosters = toBuy(input, districts);
  return {
    boosters,
    cost: costOf([
      [boosters, 'booster'],
      [supplies, 'supply'],
      [districts - 1, 'district'],
    ]),
  };
}

const divided = (input: RemedyInput, districts: number, supplies: number): With => ({
  counts: { boosters: divisionTakes(input, districts, supplies).boosters, supplies },
  cost: divisionTakes(input, districts, supplies).cost,
});

// The supply that becomes free must not keep the booster from tripping.
function freed(input: RemedyInput): Remedy | undefined {
  const { supply, stage } = input;
  const wanted = largerSupply(input);
  const booster = boosterOf(stage);
  if (wanted === undefined || wanted.kind !== supply.kind) return undefined;
  if (supplyTrip(supply, booster).kind === 'surely-not') return undefined;
  return remedy('booster-with-freed-supply', input, [capacity(wanted, stage), capacity(supply, booster)], {
    ...divided(input, 2, 1),
    ratings: [wanted.amps],
  });
}

interface Division {
  readonly capacities: readonly Capacity[];
  readonly more: With;
}

function full(input: RemedyInput, districts: number): Division | undefined {
  const { supply, stage } = input;
  const filling = largerSupply(input);
  const booster = supplyFor(input, boosterOf(stage));
  if (booster === undefined) return undefined;
  const boosters = Array.from({ length: districts - 1 }, () => booster);
  const ratings = [...(filling === undefined ? [] : [filling]), ...boosters].map(({ amps }) => amps);
  return {
    capacities: [capacity(filling ?? supply, stage), ...boosters.map((one) => capacity(one, boosterOf(stage)))],
    more: { ...divided(input, districts, ratings.length), ratings, supply: booster },
  };
}

/** Boosters that pass more than the unit there is, up to what is usual for the scale, on supplies that surely trip them; the smallest first. */
function largerStages(input: RemedyInput): Stage[] {
  const { stage, scale, setLower = false } = input;
  if (setLower) return [];
  return COMMON_RATINGS.filter((limit) => limit > stage.limit + 1e-9 && limit <= DRAWS[scale].trip.to)
    .map((limit): Stage => ({ ...boosterOf(stage), limit }))
    .filter((one) => supplyFor(input, one) !== undefined);
}

/** The whole track on such boosters. */
function onLarger(input: RemedyInput, districts: number, stage: Stage): Division | undefined {
  const supply = supplyFor(input, stage);
  if (supply === undefined) return undefined;
  const each = <Thing>(thing: Thing): Thing[] => Array.from({ length: districts }, () => thing);
  const cost = costOf([
    [districts, 'booster'],
    [districts, 'supply'],
    [districts - 1, 'district'],
    [1, 'other-unit'],
  ]);
  const counts = { boosters: districts, supplies: districts };
  return {
    capacities: each(capacity(supply, stage)),
    more: { counts, cost, ratings: each(supply.amps), supply, limit: stage.limit },
  };
}

function own(input: RemedyInput): Remedy | undefined {
  const both = full(input, 2);
  return both === undefined ? undefined : remedy('booster-with-own-supply', input, both.capacities, both.more);
}

/**
 * One larger booster for the whole track. Where not even the largest carries all, it is told beside fewer moving, with so many as it does
 * carry, if these are more than now; where not one may move now, that would be no answer to what is wished.
 */
function largerUnit(input: RemedyInput, stages: readonly Stage[]): Remedy | undefined {
  const divisions = stages.flatMap((stage) => onLarger(input, 1, stage) ?? []);
  const carries = chosenOf(divisions.map(({ capacities, more }) => remedy('larger-unit', input, capacities, more)));
  const largest = divisions.at(-1);
  const [able] = largest?.capacities ?? [];
  if (carries !== undefined || largest === undefined || able === undefined) return carries;
  const { fleet } = input;
  const [now, moving] = [asItIs(input), able].map((one) => largestMoving(fleet, one, 'tight'));
  if (now === undefined || moving === undefined || now < 1 || moving <= now) return undefined;
  const counts = { ...largest.more.counts, moving };
  return remedy('larger-unit', { ...input, fleet: { ...fleet, moving } }, [able], { ...largest.more, counts });
}

/** As few districts as are enough; else as few as are tight; else as many as are reckoned with. */
function moreDistricts(input: RemedyInput, stages: readonly Stage[]): Remedy | undefined {
  const { alike, found } = divisions(input, stages);
  return chosenOf(found) ?? carrying(input, alike.at(-1));
}

function divisions(input: RemedyInput, stages: readonly Stage[]) {
  const alike = upToEnough(3, (districts) => full(input, districts), input);
  const larger = stages.flatMap((stage) => upToEnough(2, (districts) => onLarger(input, districts, stage), input));
  return { alike, found: [...alike, ...larger].sort((a, b) => byMoneyThenTime(a.cost, b.cost)) };
}

/** The cheapest division that is tight, beside a dearer one that is enough; undefined where there is none. */
export function tightBeside(input: RemedyInput, { id, verdict, cost }: Remedy): Remedy | undefined {
  if (id !== 'more-districts' || !atLeast(verdict, 'enough')) return undefined;
  const { found } = divisions(input, stagesFor(input, [freed(input), own(input)]));
  return found.find((one) => atLeast(one.verdict, 'tight') && byMoneyThenTime(one.cost, cost) < 0);
}

/** Larger boosters are looked at where two districts do not do. */
const stagesFor = (input: RemedyInput, two: readonly (Remedy | undefined)[]): Stage[] =>
  two.some((one) => one !== undefined && atLeast(one.verdict, 'tight')) ? [] : largerStages(input);

/** Divisions from so many districts on, until one is enough. */
function upToEnough(from: number, division: (districts: number) => Division | undefined, input: RemedyInput): Remedy[] {
  const found: Remedy[] = [];
  for (let districts = from; districts <= MOST_DISTRICTS; districts++) {
    const all = division(districts);
    if (all === undefined) return [];
    const one = remedy('more-districts', input, all.capacities, all.more);
    found.push(one);
    if (atLeast(one.verdict, 'enough')) break;
  }
  return found;
}

/** Too few districts all the same: with how many moving they would be enough, or else tight. */
function carrying(input: RemedyInput, most: Remedy | undefined): Remedy | undefined {
  const all = most === undefined ? undefined : full(input, most.usable.length);
  if (most === undefined || all === undefined) return most;
  const share = 1 / all.capacities.length;
  // All boosters are alike.
  const [station, booster = station] = all.capacities;
  const able = (wanted: Verdict): number =>
    Math.min(
      ...[station, booster].map((one) => (one === undefined ? -1 : largestMoving(input.fleet, one, wanted, share))),
    );
  const enough = able('enough');
  const moving = enough >= 1 ? enough : able('tight');
  return moving < 1 ? most : { ...most, counts: { ...most.counts, moving } };
}

/** Districts that would do as well once what only stands has its sound off, or stands on track that is switched off; undefined where as many are needed. */
export interface OnceQuiet {
  readonly muted: number | undefined;
  readonly parked: number | undefined;
}

/** How many fewer districts than a division has would do after what is free. Parking is told only where it spares more than muting. */
export function onceQuiet(input: RemedyInput, { usable, verdict }: Pick<Remedy, 'usable' | 'verdict'>): OnceQuiet {
  const { fleet, scale } = input;
  const goal: Verdict = atLeast(verdict, 'enough') ? 'enough' : 'tight';
  const least = (quietened: Fleet, below: number): number | undefined =>
    Array.from({ length: below - 1 }, (_, i) => i + 1).find((districts) => {
      const of = { ...input, fleet: quietened };
      const all = full(of, districts);
      return all !== undefined && atLeast(remedy('more-districts', of, all.capacities, all.more).verdict, goal);
    });
  const hushed = withSound(fleet) === 0 ? undefined : least(muted(fleet, scale), usable.length);
  return { muted: hushed, parked: least(allParked(fleet), hushed ?? usable.length) };
}

/** Whatever does not move stands on track that is switched off. */
export const allParked = (fleet: Fleet): Fleet => ({
  ...parked({ ...fleet, moving: 0 }, trainCount(fleet)),
  moving: fleet.moving,
});

/** So many that it is enough; where not even one is, so many that it is tight; where not even that, with all others parked. */
function fewer(input: RemedyInput): Remedy | undefined {
  const { fleet } = input;
  const now = asItIs(input);
  const most = (of: Fleet): number | undefined =>
    [largestMoving(of, now, 'enough'), largestMoving(of, now, 'tight')].find((count) => count >= 1);
  const alone = allParked(fleet);
  const asIs = most(fleet);
  const moving = asIs ?? most(alone);
  if (moving === undefined || moving >= fleet.moving) return undefined;
  if (asIs !== undefined)
    return remedy('fewer-moving', { ...input, fleet: { ...fleet, moving } }, [now], { counts: { moving } });
  const waiting = trainCount(fleet) - moving;
  return remedy('fewer-moving', { ...input, fleet: { ...alone, moving } }, [now], {
    counts: { moving, parked: waiting },
    cost: costOf([[waiting, 'quiet-train']]),
  });
}

function breakers(input: RemedyInput): Remedy {
  return remedy('breakers-and-sub-districts', input, [asItIs(input)], { cost: BREAKERS_COST });
}
