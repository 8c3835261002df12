// What "Which supply goes on which unit?" works out of its answers.
import type {
  Arrangement,
  CrossingAdviceId,
  CrossingMoment,
  CrossingMoments,
  CrossingSide,
  GapExpected,
  InPhaseCrossing,
  LoadedStage,
  NamedSupply,
  PlacedSide,
  Reckoned,
  Scale,
  Span,
  WithheldAdvice,
} from '../../engine/index.ts';
import {
  arrange,
  atLeast,
  BOOSTER_OWN_USE,
  bothBusy,
  CROSSING_ADVICE,
  CROSSING_MOMENTS,
  checkLabels,
  crossingOf,
  districtLoad,
  gapExpected,
  judgeRails,
  largestPush,
  middle,
  neighbourVolts,
  STEP_TOO_LARGE,
  stepFinding,
  stepSize,
  summarise,
  worstVerdict,
} from '../../engine/index.ts';
import type { Answers, Assumption } from '../planning/index.ts';
import { knownSupply, Reader } from '../planning/index.ts';
import type { WhichSupplyOutcome } from './outcomes.ts';

export interface Placement {
  readonly outcome: WhichSupplyOutcome;
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
  readonly assumptions: readonly Assumption[];
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
  const outcome = outcomeOf(arrangements, stages, railsKnown, scale);
  const standing = { ...fleet, moving: 0 };
  const idle = [stationShare, 1 - stationShare].map(
    (share) => summarise(districtLoad(standing, share).distribution).p95,
  );
  const crossings = railsKnown
    ? arrangements.map((one) => crossingAt(one, stages, supplies, { idle, together: [together.near, together.far] }))
    : [];
  return {
    outcome,
    scale,
    supplies,
    arrangements,
    crossings,
    expected: railsKnown ? expectedAt(arrangements[0], scale) : undefined,
    stationShare,
    railsKnown,
    stillShort: isShort(arrangements[0]),
    assumptions: reader.assumptions,
  };
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
export function crossingAdvice({ moments }: CrossingMoments): {
  readonly advice: readonly CrossingAdviceId[];
  readonly withheld: readonly WithheldAdvice[];
} {
  const found = CROSSING_MOMENTS.flatMap((moment) => {
    const result = moments[moment];
    return result.kind === 'crossing' ? [result] : [];
  });
  const advice = CROSSING_ADVICE.filter((id) => found.some((one) => one.advice.some((row) => row.id === id)));
  const kept = found.flatMap((one) => one.withheld).filter(({ id }) => !advice.includes(id));
  return { advice, withheld: kept.filter((row, i) => kept.findIndex(({ id }) => id === row.id) === i) };
}

function outcomeOf(
  arrangements: readonly Arrangement[],
  stages: readonly LoadedStage[],
  railsKnown: boolean,
  scale: Scale,
): WhichSupplyOutcome {
  const best = arrangements[0];
  if (best === undefined) return 'read-both-labels';
  if (!best.permitted) return 'wrong-supply';
  if (best.stages.some((one) => one.label.kind === 'unknown')) return 'read-both-labels';
  if (!railsKnown) return 'measure-rail-volts-first';
  if (
    best.stages.some((one) =>
      isTooHigh(
        judgeRails({ idle: { from: one.rails.idle.from, to: one.rails.idle.from }, loaded: one.rails.loaded }, scale),
      ),
    )
  ) {
    return 'rail-voltage-too-high';
  }
  if (stepFinding(best.step) !== 'level') return steppedOutcome(best, stages);
  return levelOutcome(arrangements, best);
}

const isTooHigh = (finding: string): boolean => finding === 'over-stop' || finding === 'over-decoder';

// The rails differ: set them equal where a setting exists, else the higher to the command station, else other supplies.
function steppedOutcome(best: Arrangement, stages: readonly LoadedStage[]): WhichSupplyOutcome {
  if (stages.some((stage) => stage.rails.kind !== 'follows')) return 'set-both-outputs-equal';
  if (stepSize(best.step) >= STEP_TOO_LARGE) return 'two-supplies-alike';
  return 'higher-rails-to-command-station';
}

// The rails are level, so only amperes against demand count; where both arrangements do as well, it does not matter.
function levelOutcome(arrangements: readonly Arrangement[], best: Arrangement): WhichSupplyOutcome {
  const other = arrangements.find((one) => one !== best && one.permitted);
  const [station, booster] = best.stages;
  if (station === undefined || booster === undefined) return 'supplies-either-way';
  if (other === undefined)
    return station.capacity.hard >= booster.capacity.hard ? 'larger-to-command-station' : 'larger-to-booster';
  const alike = verdictOf(best) === verdictOf(other) && atLeast(verdictOf(best), 'enough');
  if (alike || Math.abs(station.capacity.hard - booster.capacity.hard) < 0.05) return 'supplies-either-way';
  return station.capacity.hard >= booster.capacity.hard ? 'larger-to-command-station' : 'larger-to-booster';
}

function verdictOf(arrangement: Arrangement) {
  return worstVerdict(arrangement.stages.map((one) => one.judgement.verdict));
}
