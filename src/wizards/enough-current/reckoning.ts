// What is worked out first of the answers to "Is my power enough?": the draw, the labels, what the supply gives. It follows a slider.
import type {
  Bar,
  Capacity,
  DistrictLoad,
  Fleet,
  Judgement,
  LabelFinding,
  NamedSupply,
  OutOfReach,
  OverloadSeen,
  RailFinding,
  RailVoltage,
  RemedyInput,
  Scale,
  Span,
  Stage,
  Summary,
  SupplyTrip,
  Sureness,
  Working,
} from '../../engine/index.ts';
import {
  capacity,
  checkLabels,
  coldFilaments,
  DRAWS,
  districtLoad,
  drawsSure,
  highestRails,
  histogram,
  isAboveUsual,
  judge,
  judgedVolts,
  judgeRails,
  overloadSeen,
  overloadsIn,
  plainSum,
  railsOutOfReach,
  railsTooHigh,
  railsTooLow,
  railVoltage,
  SCALE_RANGE,
  summarise,
  supplyTrip,
  toMinutes,
  trackAsMeasured,
  trainCount,
  withinModelLimit,
} from '../../engine/index.ts';
import type { Answers, Assumption } from '../planning/index.ts';
import { knownSupply, Reader } from '../planning/index.ts';

export interface Reckoning {
  readonly scale: Scale;
  readonly fleet: Fleet;
  readonly trains: number;
  /** Which trains run, or how many of them, nobody has told: what is drawn and said of them is an example. */
  readonly trainsAssumed: boolean;
  readonly load: DistrictLoad;
  readonly summary: Summary;
  readonly bars: readonly Bar[];
  /** How long the busiest spell lasts, minutes: overloads are counted in it. */
  readonly busyMinutes: number;
  readonly labels: LabelFinding;
  /** Fields of the two labels that nobody has read. */
  readonly unread: readonly string[];
  /** As the unit is, and as it is reckoned with: tripping no higher than the scale bears. */
  readonly unit: Stage;
  readonly stage: Stage;
  readonly assumptions: readonly Assumption[];
  /** Own measurements at the lead of a unit with a step-down converter, as track amperes: so many times the measured ones. */
  readonly measuredTimes: number | undefined;
  readonly plainSum: Working;
  /** What the usual draws rest on, the least sure of them; undefined where all trains were measured. */
  readonly drawsSure: Sureness | undefined;
  /** Present once the supply's label is known. */
  readonly power: Power | undefined;
}

export interface Power {
  readonly supply: NamedSupply;
  /** More than NEM 609 allows for models. */
  readonly beyondNorm: boolean;
  readonly capacity: Capacity;
  readonly judgement: Judgement;
  /** What one will see of an overload, and how many of them in ten busy minutes: a band. */
  readonly seen: OverloadSeen;
  readonly overloads: Span;
  /** Undefined while the unit's limit is not known. */
  readonly trip: SupplyTrip | undefined;
  readonly rails: Rails;
  /** What cold lamps draw for a twentieth of a second, amperes, where a fast unit may take it for a short. */
  readonly coldLamps: Span | undefined;
}

export interface Rails {
  /** Whether it is known how they come about; else they are taken to follow the supply. */
  readonly known: boolean;
  readonly voltage: RailVoltage;
  readonly finding: RailFinding;
  readonly tooHigh: ReturnType<typeof railsTooHigh>;
  readonly tooLow: boolean;
  /** Whether they may stand well above what is usual for the scale. */
  readonly aboveUsual: boolean;
  /** The volts that the finding speaks of. */
  readonly volts: number;
  /** What no setting lifts them above on this supply, volts. */
  readonly highest: number;
  /** Whether that lies below the scale’s range, and nobody has told a setting: trains stay slow whatever it is. */
  readonly slowAtBest: boolean;
  /** What they are set to, where no setting lifts them so far. */
  readonly outOfReach: OutOfReach | undefined;
}

/** Fields of the two labels, all of which must be read before anything is called good. */
const LABEL_FIELDS = [
  'supply-kind',
  'supply-volts',
  'supply-amps',
  'unit-limit',
  'unit-input',
  'unit-input-volts',
] as const;

const TRAIN_FIELDS: readonly string[] = ['modern', 'older', 'trains', 'moving'];

/** The part that follows a slider. */
export function reckon(answers: Answers): Reckoning {
  const reader = new Reader(answers);
  const scale = reader.scale();
  const unit = reader.stage('unit', scale, reader.ownUse());
  const stage = { ...unit, limit: Math.min(unit.limit, DRAWS[scale].tripCeiling) };
  const label = reader.supplyLabel('supply');
  const supply = knownSupply(label);
  const told = reader.fleet(scale);
  const measuredTimes = supply === undefined ? undefined : trackAsMeasured(told, supply, stage);
  const fleet = measuredTimes === undefined ? told : measuredTimes.fleet;
  const load = districtLoad(fleet);
  const busyHours = reader.evening();
  const summary = summarise(load.distribution);
  const unread = LABEL_FIELDS.filter((id) => answers[id]?.kind !== 'number' && answers[id]?.kind !== 'choice');
  const railsKnown = reader.rails('unit') !== undefined;
  return {
    scale,
    fleet,
    trains: trainCount(fleet),
    trainsAssumed: reader.assumptions.some(({ field }) => TRAIN_FIELDS.includes(field)),
    load,
    summary,
    bars: histogram(load.distribution, barWidth(summary.most - summary.least)),
    busyMinutes: toMinutes(busyHours),
    labels: checkLabels(label, reader.inputLabel('unit')),
    unread,
    unit,
    stage,
    assumptions: reader.assumptions,
    measuredTimes: measuredTimes?.times,
    plainSum: plainSum(fleet),
    drawsSure: drawsSure(fleet, scale),
    power:
      supply === undefined
        ? undefined
        : power({
            supply,
            stage,
            unit,
            load,
            fleet,
            scale,
            busyHours,
            railsKnown,
            limitKnown: !unread.includes('unit-limit'),
          }),
  };
}

/** What remedies are looked for with. */
export function wishOf(answers: Answers, { fleet, scale, stage }: Reckoning, { supply }: Power): RemedyInput {
  const reader = new Reader(answers);
  return { fleet, scale, supply, stage, input: reader.inputLabel('unit'), boosters: reader.number('boosters') ?? 0 };
}

interface Given extends Pick<Reckoning, 'stage' | 'unit' | 'load' | 'fleet' | 'scale'> {
  readonly supply: NamedSupply;
  readonly busyHours: number;
  readonly railsKnown: boolean;
  readonly limitKnown: boolean;
}

function power({ supply, stage, unit, load, fleet, scale, busyHours, railsKnown, limitKnown }: Given): Power {
  const able = capacity(supply, stage);
  const judgement = judge(load, able);
  const cold = coldFilaments(fleet);
  return {
    supply,
    beyondNorm: !withinModelLimit(supply),
    capacity: able,
    judgement,
    seen: overloadSeen(judgement.aboveHard),
    overloads: overloadsIn(judgement.aboveHard, busyHours),
    trip: limitKnown ? supplyTrip(supply, unit) : undefined,
    rails: railsOf(supply, stage, scale, railsKnown),
    coldLamps: cold.to > able.hard ? cold : undefined,
  };
}

function railsOf(supply: NamedSupply, stage: Stage, scale: Scale, known: boolean): Rails {
  const voltage = railVoltage(supply, stage.rails, { build: stage.build, loaded: capacity(supply, stage).hard });
  const finding = judgeRails(voltage, scale);
  const high = railsTooHigh(voltage, scale);
  const highest = highestRails(supply);
  return {
    known,
    voltage,
    finding,
    // A unit that sets its rails may hold them lower than its supply: that they are surely too high is known only where they follow.
    tooHigh: high === 'surely' && !known ? 'perhaps' : high,
    tooLow: railsTooLow(voltage, scale),
    aboveUsual: isAboveUsual(voltage.idle.to, scale),
    volts: judgedVolts(finding, voltage),
    highest,
    slowAtBest: !known && highest < SCALE_RANGE[scale].from,
    outOfReach: railsOutOfReach(supply, stage.rails),
  };
}

// Between about 18 and 60 bars of a round width.
function barWidth(range: number): number {
  const widths = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20];
  return widths.find((width) => range / width <= 60) ?? 50;
}
