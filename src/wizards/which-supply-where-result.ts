// What "Which supply goes on which unit?" works out of its answers.
import type { Arrangement, LoadedStage, NamedSupply, Scale } from '../engine/index.ts';
import {
  arrange,
  atLeast,
  BOOSTER_OWN_USE,
  districtLoad,
  judgeRails,
  STEP_LIMIT,
  STEP_TOO_LARGE,
  stepSize,
  worstVerdict,
} from '../engine/index.ts';
import type { Answers } from './answers.ts';
import type { OutcomeId } from './outcomes.ts';
import type { Assumption } from './read.ts';
import { knownSupply, Reader } from './read.ts';

export interface Placement {
  readonly outcome: OutcomeId;
  readonly scale: Scale;
  readonly supplies: readonly NamedSupply[];
  /** Best first; empty while a label is not known. */
  readonly arrangements: readonly Arrangement[];
  /** Chance that a consumer is in the command station's district. */
  readonly stationShare: number;
  readonly railsKnown: boolean;
  readonly assumptions: readonly Assumption[];
}

/** Share of consumers in the busier district where one is busier. Source: common-practice. */
const BUSIER_SHARE = 0.65;
const STATION_SHARE = { station: BUSIER_SHARE, booster: 1 - BUSIER_SHARE, same: 0.5 } as const;

/** Works out the placement. Labels not known end in reading them, rail volts not known in measuring them. */
export function placeSupplies(answers: Answers): Placement {
  const reader = new Reader(answers);
  const scale = reader.scale();
  const layout = reader.layout(scale);
  const busier = reader.option('busier');
  const stationShare = STATION_SHARE[busier === 'station' || busier === 'booster' ? busier : 'same'];
  const stages: LoadedStage[] = [
    {
      ...reader.stage('station', scale, 0),
      input: reader.inputLabel('station'),
      load: districtLoad(layout, stationShare),
    },
    {
      ...reader.stage('booster', scale, BOOSTER_OWN_USE),
      input: reader.inputLabel('booster'),
      load: districtLoad(layout, 1 - stationShare),
    },
  ];
  const railsKnown = reader.rails('station') !== undefined && reader.rails('booster') !== undefined;
  const known = [knownSupply(reader.supplyLabel('one')), knownSupply(reader.supplyLabel('two'))];
  const supplies = known.filter((supply) => supply !== undefined);
  const arrangements = supplies.length < stages.length ? [] : arrange(supplies, stages);
  const outcome = outcomeOf(arrangements, stages, railsKnown, scale);
  return { outcome, scale, supplies, arrangements, stationShare, railsKnown, assumptions: reader.assumptions };
}

function outcomeOf(
  arrangements: readonly Arrangement[],
  stages: readonly LoadedStage[],
  railsKnown: boolean,
  scale: Scale,
): OutcomeId {
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
  if (stepSize(best.step) > STEP_LIMIT + 1e-9) return steppedOutcome(best, stages);
  return levelOutcome(arrangements, best);
}

const isTooHigh = (finding: string): boolean => finding === 'over-stop' || finding === 'over-decoder';

// The rails differ: set them equal where a setting exists, else the higher to the command station, else other supplies.
function steppedOutcome(best: Arrangement, stages: readonly LoadedStage[]): OutcomeId {
  if (stages.some((stage) => stage.rails.kind !== 'follows')) return 'set-both-outputs-equal';
  if (stepSize(best.step) >= STEP_TOO_LARGE) return 'two-supplies-alike';
  return 'higher-rails-to-command-station';
}

// The rails are level, so only amperes against demand count; where both arrangements do as well, it does not matter.
function levelOutcome(arrangements: readonly Arrangement[], best: Arrangement): OutcomeId {
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
