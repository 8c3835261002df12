// What "Which supply goes on which unit?" works out of its answers.
import type {
  Arrangement,
  CrossingAdviceId,
  CrossingMoment,
  CrossingMoments,
  CrossingSide,
  Fleet,
  GapExpected,
  InPhaseCrossing,
  LabelFinding,
  LoadedStage,
  NamedSupply,
  OutOfReach,
  Placed,
  PlacedSide,
  Reckoned,
  Scale,
  Span,
  Supply,
  WithheldAdvice,
} from '../../engine/index.ts';
import {
  arrange,
  atLeast,
  BOOSTER_OWN_USE,
  bothBusy,
  CROSSING_ADVICE,
  CROSSING_MOMENTS,
  chanceEither,
  checkLabels,
  crossingOf,
  districtLoad,
  gapExpected,
  isAboveUsual,
  jointLoad,
  judgeRails,
  largestPush,
  middle,
  neighbourVolts,
  ROUNDING_VOLTS,
  railsOutOfReach,
  recommendedRating,
  SCALE_RANGE,
  STEP_TOO_LARGE,
  stepFinding,
  stepSize,
  summarise,
  supplyTrip,
  tripLevel,
  worstVerdict,
} from '../../engine/index.ts';
import type { Answers, Assumption, ReadFirst } from '../planning/index.ts';
import { knownSupply, Reader, readFirst } from '../planning/index.ts';
import type { Alike, UnitId } from './alike.ts';
import { alikeOf, UNITS } from './alike.ts';
import type { WhichSupplyOutcome } from './outcomes.ts';

/** Why it comes to an outcome, where that has more than one reason. */
export type PlacementBecause =
  /** Both supplies are the same. */
  | 'identical'
  /** Either way is enough, or the amperes are the same. */
  | 'enough'
  | 'same-amperes'
  /** The labels permit, or the trip currents want, only this way round. */
  | 'labels'
  | 'trip'
  /** The part with more traffic, as was said; or the part that else has too little. */
  | 'traffic'
  | 'amperes'
  /** Both outputs can be set, or one of them follows its supply. */
  | 'both-set'
  | 'one-follows'
  /** The rails follow an a.c. supply, or get less than decoders need. */
  | 'alternating'
  | 'too-low'
  /** The rails stand well above what is usual for the scale, though below what no track may pass. */
  | 'above-usual';

/** A unit whose supply cannot drive it to its trip current, or that is set above what the scale bears. */
export interface UnitFound {
  readonly unit: UnitId;
  readonly limit: number;
  /** The scale's, amperes. */
  readonly ceiling: number;
  /** What the supply printed on it has to give more than, amperes. */
  readonly ratingAbove: number;
  /** The one to get that surely trips it, of the kind, volts and plug that the unit takes; undefined where its plug sign is not read, or none does. */
  readonly buy: NamedSupply | undefined;
}

/** A unit whose rails are set to more than the supply that is on it can give them, volts. */
export interface UnitOutOfReach extends OutOfReach {
  readonly unit: UnitId;
}

export interface Placement {
  readonly outcome: WhichSupplyOutcome;
  readonly because: PlacementBecause | undefined;
  /** Nothing but the outcome is to be shown: a stop, labels first, or nothing that matters. */
  readonly only: boolean;
  /** The unit that an outcome speaks of. */
  readonly unit: UnitFound | undefined;
  /** What of the units' labels is to be read before the supply that it takes is bought; undefined where all is read, or nothing is to be got. */
  readonly readFirst: ReadFirst | undefined;
  /** Which supply stays and what is got, where two alike are wanted and everything about them is read. */
  readonly alike: Alike | undefined;
  /** Units that their supply in the best arrangement may be too small to trip: that is tested. */
  readonly toProve: readonly UnitId[];
  /** Rails that stand too high, volts. */
  readonly railVolts: Span | undefined;
  /** Rails above the range of the scale that are no reason to stop, and whether it is known where they come from; volts. */
  readonly aboveRange: { readonly volts: number; readonly known: boolean } | undefined;
  /** Units set to more volts than their supply in the best arrangement lifts the rails to; volts. */
  readonly outOfReach: readonly UnitOutOfReach[];
  readonly scale: Scale;
  readonly supplies: readonly NamedSupply[];
  /** Best first; empty while a label is not known. */
  readonly arrangements: readonly Arrangement[];
  /** A train across the gap, for each arrangement; none while the volts on the rails are not known. */
  readonly crossings: readonly CrossingMoments[];
  /** What there is to measure at the gap in the best arrangement; none while the volts on the rails are not known. */
  readonly expected: GapExpected | undefined;
  /** Chance that a consumer is in the command station's district. */
  readonly stationShare: number;
  readonly railsKnown: boolean;
  /** Even in the best arrangement a district has too little. */
  readonly stillShort: boolean;
  /** Share of moments at which at least one of the two parts has too little in the best arrangement, by their joint law; 0 where only the outcome is shown. */
  readonly eitherShort: number;
  /** Nobody has told which trains run. */
  readonly trainsUntold: boolean;
  readonly assumptions: readonly Assumption[];
}

/** A supply that must not be plugged, by its place among the two, into which units, and why not. */
export interface Forbidden {
  readonly supply: number;
  readonly units: readonly UnitId[];
  readonly because: Extract<LabelFinding, { kind: 'not-permitted' }>['because'];
}

/** All that the labels forbid, supply by supply; the same reason is told once. */
export function forbiddenIn(arrangements: readonly Arrangement[]): Forbidden[] {
  const pairs = arrangements.flatMap(({ stages }) =>
    stages.flatMap(({ supply, label }, at) =>
      label.kind === 'not-permitted'
        ? [{ supply, unit: at === 0 ? ('station' as const) : ('booster' as const), because: label.because }]
        : [],
    ),
  );
  const same = (one: (typeof pairs)[number], other: (typeof pairs)[number]): boolean =>
    one.supply === other.supply && one.because === other.because;
  return pairs
    .filter((one, i) => pairs.findIndex((other) => same(one, other)) === i)
    .map(({ supply, because }) => ({
      supply,
      units: UNITS.filter((unit) =>
        pairs.some((one) => one.unit === unit && one.supply === supply && one.because === because),
      ),
      because,
    }))
    .sort((a, b) => a.supply - b.supply);
}

/** Share of consumers in the busier district where one is busier. Source: common-practice. */
const BUSIER_SHARE = 0.65;
const STATION_SHARE = { station: BUSIER_SHARE, booster: 1 - BUSIER_SHARE, same: 0.5 } as const;

/** Works out the placement. Labels not known end in reading them, rail volts not known in measuring them. */
export function placeSupplies(answers: Answers): Placement {
  const reader = new Reader(answers);
  const scale = reader.scale();
  const fleet = reader.fleet(scale);
  const busier = reader.option('busier');
  const stationShare = STATION_SHARE[busier === 'station' || busier === 'booster' ? busier : 'same'];
  const stages: LoadedStage[] = [
    {
      ...reader.stage('station', scale, 0),
      input: reader.inputLabel('station'),
      load: districtLoad(fleet, stationShare),
    },
    {
      ...reader.stage('booster', scale, BOOSTER_OWN_USE),
      input: reader.inputLabel('booster'),
      load: districtLoad(fleet, 1 - stationShare),
    },
  ];
  const railsKnown = reader.rails('station') !== undefined && reader.rails('booster') !== undefined;
  const known = [knownSupply(reader.supplyLabel('one')), knownSupply(reader.supplyLabel('two'))];
  const supplies = known.filter((supply) => supply !== undefined);
  const whole = districtLoad(fleet).distribution;
  const arrangements = supplies.length < stages.length ? [] : arrange(supplies, stages, undefined, () => whole);
  const together = bothBusy(whole, stationShare);
  const told = {
    busier,
    limits: ['station', 'booster'].map((unit) => reader.answers[`${unit}-limit`]?.kind === 'number'),
  };
  const found = outcomeOf({ arrangements, stages, supplies, railsKnown, scale, told });
  const standing = { ...fleet, moving: 0 };
  const idle = [stationShare, 1 - stationShare].map(
    (share) => summarise(districtLoad(standing, share).distribution).p95,
  );
  const crossings = railsKnown
    ? arrangements.map((one) => crossingAt(one, stages, supplies, { idle, together: [together.near, together.far] }))
    : [];
  return {
    ...found,
    aboveRange: warnsOfVolts(found) ? aboveRange(arrangements[0], scale, railsKnown) : undefined,
    outOfReach: warnsOfVolts(found) ? unitsOutOfReach(arrangements[0], scale) : [],
    readFirst: BUYS.includes(found.outcome) ? readFirstOf(answers, found.unit) : undefined,
    alike: found.outcome === 'two-supplies-alike' ? alikeOf({ supplies, stages, scale }) : undefined,
    toProve: PLACES.includes(found.outcome) ? toProveIn(arrangements[0]) : [],
    scale,
    supplies,
    arrangements,
    crossings,
    expected: railsKnown ? expectedAt(arrangements[0], scale) : undefined,
    stationShare,
    railsKnown,
    stillShort: isShort(arrangements[0]),
    eitherShort: found.only ? 0 : eitherShort(arrangements[0], fleet, stationShare),
    trainsUntold: reader.answers['moving'] === undefined || reader.answers['modern']?.kind !== 'number',
    assumptions: reader.assumptions,
  };
}

const BUYS: readonly WhichSupplyOutcome[] = [
  'regulated-supply',
  'supply-cannot-trip',
  'volts-too-low',
  'two-supplies-alike',
];

/** The supplies are placed, or may be used as they are: whether a short trips their units counts then. */
const PLACES: readonly WhichSupplyOutcome[] = [
  'supplies-either-way',
  'larger-to-command-station',
  'larger-to-booster',
  'higher-rails-to-command-station',
  'set-both-outputs-equal',
  'measure-rail-volts-first',
];

const toProveIn = (best: Arrangement | undefined): UnitId[] =>
  UNITS.filter((_, at) => best?.stages[at]?.trip === 'perhaps');

/** Of the unit that the outcome speaks of, else of both. */
function readFirstOf(answers: Answers, unit: UnitFound | undefined): ReadFirst | undefined {
  const units = unit === undefined ? (['station', 'booster'] as const) : [unit.unit];
  const unread = units.flatMap((one) => readFirst(answers, one) ?? []);
  return unread.find((one) => one === 'input') ?? unread[0];
}

const isShort = (best: Arrangement | undefined): boolean =>
  best?.permitted === true && best.stages.some((one) => !atLeast(one.judgement.verdict, 'tight'));

/** Without load, for that is how one measures: the middle of what the rails can then have. */
function expectedAt(best: Arrangement | undefined, scale: Scale): GapExpected | undefined {
  const [near, far] = best?.stages.map(({ rails }) => middle(rails.idle)) ?? [];
  return near === undefined || far === undefined ? undefined : gapExpected(scale, near, far);
}

/** What happens while a train spans the gap: the command station is near, the booster far. */
function crossingAt(
  { stages: placed }: Arrangement,
  stages: readonly LoadedStage[],
  supplies: readonly NamedSupply[],
  { idle, together }: Readonly<Record<'idle' | 'together', readonly number[]>>,
): CrossingMoments {
  const side = (index: 0 | 1, role: NonNullable<CrossingSide['role']>): PlacedSide => {
    const stage = stages[index];
    const here = placed[index];
    if (stage === undefined || here === undefined) throw new RangeError(`crossingAt: no stage ${index}`);
    const other = supplies[placed[1 - index]?.supply ?? 0];
    const permits = other === undefined ? 'unknown' : checkLabels(other, stage.input).kind;
    return {
      role,
      placed: here,
      load: summarise(stage.load.distribution).p95,
      loadTogether: together[index] ?? 0,
      idleLoad: idle[index] ?? 0,
      ownUse: stage.ownUse,
      output: stage.rails.kind === 'follows' ? 'follows' : 'settable',
      ...(permits === 'unknown' ? {} : { mayStandHigher: permits === 'permitted' }),
    };
  };
  const [station, booster] = placed;
  const volts = station === undefined || booster === undefined ? undefined : neighbourVolts(station.fed, booster.fed);
  return crossingOf(side(0, 'command-station'), side(1, 'booster'), volts === undefined ? {} : { volts });
}

/** A crossing at one moment: the larger of its two directions, where either side may be the higher. */
export interface CrossingRow extends Pick<InPhaseCrossing, 'verdict' | 'reasons'> {
  readonly moment: CrossingMoment;
  /** Undefined where both sides stand alike. Volts and amperes, none below 0. */
  readonly push:
    | {
        readonly step: number;
        readonly pulse: Span;
        readonly takeOver: Span;
        readonly carries: Span;
        readonly limit: number;
      }
    | undefined;
}

/** The crossing moment by moment; those that cannot be worked out are left out. */
export function crossingRows({ moments }: CrossingMoments): CrossingRow[] {
  return CROSSING_MOMENTS.flatMap((moment): CrossingRow[] => {
    const result = moments[moment];
    if (result.kind !== 'crossing') return [];
    const push = largestPush(result.pushes);
    const { verdict, reasons } = result;
    if (push === undefined) return [{ moment, verdict, reasons, push }];
    const { step, pulse, takeOver, carries, limit } = push;
    const shown = { step: step.span.to, pulse: flowing(pulse), takeOver: flowing(takeOver), carries: flowing(carries) };
    return [{ moment, verdict, reasons, push: { ...shown, limit } }];
  });
}

// Where either side may be the higher, the low end is a current the other way, and that is the other direction's.
const flowing = ({ span }: Reckoned): Span => ({ from: Math.max(0, span.from), to: span.to });

/** What to do about a crossing at any of its moments, in the order in which to try it; and what is kept back, with its reason. */
export function crossingAdvice(
  { moments }: CrossingMoments,
  supplies: readonly NamedSupply[],
  otherWay?: OtherWayFails,
): {
  readonly advice: readonly CrossingAdviceId[];
  readonly withheld: readonly Withheld[];
} {
  const found = CROSSING_MOMENTS.flatMap((moment) => {
    const result = moments[moment];
    return result.kind === 'crossing' ? [result] : [];
  });
  const [one, two] = supplies;
  // Nobody who has two supplies alike is told to get them.
  const alike = one !== undefined && one.kind === two?.kind && one.volts === two.volts;
  const advised = CROSSING_ADVICE.filter(
    (id) =>
      !(alike && id === 'two-supplies-alike') && found.some((moment) => moment.advice.some((row) => row.id === id)),
  );
  const advice = advised.filter((id) => id !== EXCHANGED || otherWay === undefined);
  const exchange: readonly Withheld[] =
    otherWay === 'trip' && advised.includes(EXCHANGED) ? [{ id: EXCHANGED, because: 'would-not-trip' }] : [];
  const kept = [...exchange, ...found.flatMap((one) => one.withheld)].filter(({ id }) => !advice.includes(id));
  return { advice, withheld: kept.filter((row, i) => kept.findIndex(({ id }) => id === row.id) === i) };
}

const EXCHANGED = 'higher-rails-to-command-station' satisfies CrossingAdviceId;

interface Withheld {
  readonly id: CrossingAdviceId;
  readonly because: WithheldAdvice['because'] | 'would-not-trip';
}

export type OtherWayFails = 'labels' | 'trip';

/** Why the other way round comes second whatever the volts at the gap say: a label forbids it, or a short would not switch a unit off. */
export function otherWayFails({
  arrangements: [best, other],
}: Pick<Placement, 'arrangements'>): OtherWayFails | undefined {
  if (best === undefined || other === undefined) return undefined;
  if (best.permitted && !other.permitted) return 'labels';
  return best.trips && !other.trips ? 'trip' : undefined;
}

function eitherShort(best: Arrangement | undefined, fleet: Fleet, share: number): number {
  const [near, far] = best?.stages.map(({ capacity }) => capacity.usable) ?? [];
  return near === undefined || far === undefined ? 0 : chanceEither(jointLoad(fleet, share), { near, far });
}

interface Placing {
  readonly arrangements: readonly Arrangement[];
  readonly stages: readonly LoadedStage[];
  readonly supplies: readonly NamedSupply[];
  readonly railsKnown: boolean;
  readonly scale: Scale;
  readonly told: { readonly busier: string | undefined; readonly limits: readonly boolean[] };
}

type Outcome = Pick<Placement, 'outcome' | 'because' | 'only' | 'unit' | 'railVolts'>;

const comesTo = (outcome: WhichSupplyOutcome, more: Partial<Outcome> = {}): Outcome => ({
  outcome,
  because: undefined,
  only: false,
  unit: undefined,
  railVolts: undefined,
  ...more,
});

// What must not be plugged, or is not known, ends it; then what no placing mends; then the placing itself.
function outcomeOf(placing: Placing): Outcome {
  const { arrangements, stages, railsKnown, scale } = placing;
  const best = arrangements[0];
  if (best === undefined) return comesTo('read-both-labels', { only: true });
  if (!best.permitted) return comesTo(hasTooFewVolts(best) ? 'volts-too-low' : 'wrong-supply', { only: true });
  if (best.stages.some((one) => one.label.kind === 'unknown')) return comesTo('read-both-labels', { only: true });
  const volts = railsKnown ? voltsOutcome(best, stages, scale) : undefined;
  if (volts !== undefined) return volts;
  const high = aboveCeiling(placing);
  if (high !== undefined) return comesTo('lower-trip-level', { only: true, unit: high });
  if (!best.trips) return comesTo('supply-cannot-trip', { only: true, unit: cannotTrip(best, placing) });
  if (!railsKnown) return comesTo('measure-rail-volts-first');
  if (sameForBoth(placing)) return comesTo('supplies-either-way', { only: true, because: 'identical' });
  if (stepFinding(best.step) !== 'level') return steppedOutcome(best, stages);
  return levelOutcome(best, placing);
}

/** Nothing but volts below what a unit asks for at least keeps it from being plugged. */
const hasTooFewVolts = ({ stages }: Arrangement): boolean =>
  stages.every(({ label }) => label.kind !== 'not-permitted' || label.because === 'too-few-volts');

/** Only what was told counts: where the limit is not known, the scale's own is taken. */
function aboveCeiling({ stages, scale, told, arrangements }: Placing): UnitFound | undefined {
  const found = stages.findIndex(
    ({ limit }, i) => told.limits[i] === true && tripLevel(scale, limit).finding === 'above-ceiling',
  );
  return found < 0 ? undefined : unitAt(found, arrangements[0], stages, scale);
}

function cannotTrip(best: Arrangement, { stages, scale }: Placing): UnitFound | undefined {
  const found = best.stages.findIndex(({ trip }) => trip === 'not-reached');
  return found < 0 ? undefined : unitAt(found, best, stages, scale);
}

function unitAt(
  index: number,
  best: Arrangement | undefined,
  stages: readonly LoadedStage[],
  scale: Scale,
): UnitFound | undefined {
  const [stage, placed] = [stages[index], best?.stages[index]];
  if (stage === undefined || placed === undefined) return undefined;
  return {
    unit: index === 0 ? 'station' : 'booster',
    limit: stage.limit,
    ceiling: tripLevel(scale, stage.limit).ceiling,
    ratingAbove: supplyTrip(placed.fed.supply, stage).ratingAbove,
    buy: likeButLarger(placed.fed.supply, stage, scale),
  };
}

function likeButLarger({ kind, volts }: Supply, stage: LoadedStage, scale: Scale): NamedSupply | undefined {
  const { input } = stage;
  const plug = kind === 'ac' ? 'terminals' : input.plug;
  if (plug === undefined) return undefined;
  const advice = recommendedRating({ kind, volts, plug, stage, input, scale });
  return advice.kind === 'rating' ? { kind, volts, plug, amps: advice.amps } : undefined;
}

/** Rails too high or too low with the best that there is: other supplies or a setting first. */
function voltsOutcome(best: Arrangement, stages: readonly LoadedStage[], scale: Scale): Outcome | undefined {
  const told = (placed: Placed, outcome: WhichSupplyOutcome, because?: PlacementBecause): Outcome =>
    comesTo(outcome, {
      only: true,
      because,
      railVolts: { from: placed.rails.loaded.from, to: placed.rails.idle.to },
    });
  const high = best.stages.findIndex((one) => isTooHigh(one, scale));
  const [placed, stage] = [best.stages[high], stages[high]];
  if (placed !== undefined && stage !== undefined) {
    if (!followsAlternating(placed)) return told(placed, 'rail-voltage-too-high');
    return told(placed, stage.input.kind === 'ac' ? 'rail-voltage-too-high' : 'regulated-supply', 'alternating');
  }
  const above = best.stages.find(({ rails }) => isAboveUsual(rails.idle.to, scale));
  if (above !== undefined) return told(above, 'rail-voltage-too-high', 'above-usual');
  const low = best.stages.find(({ rails }) => judgeRails(rails, scale) === 'too-low');
  return low === undefined ? undefined : told(low, 'volts-too-low', 'too-low');
}

const followsAlternating = ({ fed: { supply, rails } }: Placed): boolean =>
  supply.kind === 'ac' && rails.kind === 'follows';

// An a.c. supply rises by itself, so that above the range of the scale at all it is not the one to take.
function isTooHigh(placed: Placed, scale: Scale): boolean {
  const finding = judgeRails(placed.rails, scale);
  if (finding === 'over-stop' || finding === 'over-decoder') return true;
  return finding === 'above-range' && followsAlternating(placed);
}

/** Nothing is measured on an input that nobody has read, and what is said of the volts already needs no warning. */
const warnsOfVolts = ({ outcome, railVolts }: Outcome): boolean =>
  railVolts === undefined && outcome !== 'read-both-labels';

/** Where rails stand above the range of the scale without anything else being wrong with the plug: the higher of both. */
function aboveRange(best: Arrangement | undefined, scale: Scale, known: boolean): Placement['aboveRange'] {
  if (best?.permitted !== true) return undefined;
  const volts = Math.max(...best.stages.map(({ rails }) => rails.idle.to));
  return volts > SCALE_RANGE[scale].to + ROUNDING_VOLTS ? { volts, known } : undefined;
}

/**
 * Whatever they are set to, rails stand no higher than their supply lifts them: that matters where two that are set alike differ, or trains run
 * slower than the scale asks for. Rails above its range are set lower anyhow.
 */
function unitsOutOfReach(best: Arrangement | undefined, scale: Scale): UnitOutOfReach[] {
  if (best?.permitted !== true) return [];
  const { from, to } = SCALE_RANGE[scale];
  const differ = stepFinding(best.step) !== 'level';
  return UNITS.flatMap((unit, at) => {
    const fed = best.stages[at]?.fed;
    const beyond = fed === undefined ? undefined : railsOutOfReach(fed.supply, fed.rails);
    if (beyond === undefined) return [];
    const { highest } = beyond;
    const matters = highest < from - ROUNDING_VOLTS || (differ && highest <= to + ROUNDING_VOLTS);
    return matters ? [{ unit, ...beyond }] : [];
  });
}

/** The same printed on both, on units that make their rails alike: nothing depends on which is where. */
function sameForBoth({ supplies: [one, two], stages: [station, booster] }: Placing): boolean {
  if (one === undefined || two === undefined || station === undefined || booster === undefined) return false;
  const same = one.kind === two.kind && one.volts === two.volts && one.amps === two.amps;
  return same && station.rails.kind === booster.rails.kind && voltsOf(station) === voltsOf(booster);
}

const voltsOf = ({ rails }: LoadedStage): number => (rails.kind === 'follows' ? 0 : rails.volts);

// The rails differ: set them equal where a setting exists, else the higher to the command station, else other supplies.
function steppedOutcome(best: Arrangement, stages: readonly LoadedStage[]): Outcome {
  const follow = stages.filter((stage) => stage.rails.kind === 'follows').length;
  if (follow < stages.length)
    return comesTo('set-both-outputs-equal', { because: follow === 0 ? 'both-set' : 'one-follows' });
  // Where the higher rails cannot go to the command station, by a label or because a short would not trip then, no placing mends it.
  const placed = stepSize(best.step) < STEP_TOO_LARGE && stepFinding(best.step) === 'station-higher';
  return comesTo(placed ? 'higher-rails-to-command-station' : 'two-supplies-alike');
}

// The rails are level, so only amperes against demand count; where both arrangements do as well, it does not matter.
function levelOutcome(best: Arrangement, { arrangements, told }: Placing): Outcome {
  const other = arrangements.find((one) => one !== best);
  const [station, booster] = best.stages;
  if (station === undefined || booster === undefined) return comesTo('supplies-either-way', { because: 'enough' });
  const larger = station.capacity.hard >= booster.capacity.hard ? 'larger-to-command-station' : 'larger-to-booster';
  if (other === undefined || !other.permitted) return comesTo(larger, { because: 'labels' });
  if (!other.trips) return comesTo(larger, { because: 'trip' });
  if (atLeast(verdictOf(best), 'enough') && atLeast(verdictOf(other), 'enough'))
    return comesTo('supplies-either-way', { because: 'enough' });
  if (Math.abs(station.capacity.hard - booster.capacity.hard) < 0.05)
    return comesTo('supplies-either-way', { because: 'same-amperes' });
  const wanted = larger === 'larger-to-booster' ? 'booster' : 'station';
  return comesTo(larger, { because: told.busier === wanted ? 'traffic' : 'amperes' });
}

function verdictOf(arrangement: Arrangement) {
  return worstVerdict(arrangement.stages.map((one) => one.judgement.verdict));
}
