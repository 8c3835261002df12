// What "Is my power enough?" works out of its answers. The quick part follows a slider; the remedies may come a moment later.
import type {
  Bar,
  Capacity,
  DistrictLoad,
  Fleet,
  Judgement,
  LabelFinding,
  OverloadOften,
  RailFinding,
  RailVoltage,
  Remedy,
  Scale,
  Stage,
  Summary,
  Supply,
  Sureness,
  TripReach,
  Verdict,
  Working,
} from '../../engine/index.ts';
import {
  atLeast,
  betterAtBest,
  capacity,
  checkLabels,
  districtLoad,
  drawsSure,
  eveningsBetween,
  firstThatReaches,
  histogram,
  judge,
  judgedVolts,
  judgeRails,
  largestMoving,
  moreTrains,
  OWN_USE_DOUBT,
  overloadOften,
  plainSum,
  railVoltage,
  remedies,
  spellDigits,
  spellsCount,
  spellsPerEvening,
  summarise,
  trainCount,
  tripReach,
} from '../../engine/index.ts';
import type { Answers, Assumption } from '../planning/index.ts';
import { knownSupply, Reader } from '../planning/index.ts';
import type { EnoughCurrentOutcome } from './outcomes.ts';

export interface Reckoning {
  readonly scale: Scale;
  readonly fleet: Fleet;
  readonly trains: number;
  readonly load: DistrictLoad;
  readonly summary: Summary;
  readonly bars: readonly Bar[];
  readonly eveningHours: number;
  readonly labels: LabelFinding;
  readonly stage: Stage;
  readonly assumptions: readonly Assumption[];
  readonly plainSum: Working;
  /** What the usual draws rest on, the least sure of them; undefined where all trains were measured. */
  readonly drawsSure: Sureness | undefined;
  /** Present once the supply's label is known. */
  readonly power: Power | undefined;
  /** The verdict with the own use that a silent unit may have, amperes, where that would change it. */
  readonly ownUseDoubt: { readonly amps: number; readonly verdict: Verdict } | undefined;
}

export interface Power {
  readonly supply: Supply;
  readonly capacity: Capacity;
  /** Usable current with the best factor of an a.c. supply, amperes, where it is worth a word. */
  readonly usableAtBest: number | undefined;
  readonly judgement: Judgement;
  /** Share of moments within the usable current. */
  readonly inside: number;
  /** Stretches of overload in an evening, evenings from one to the next, and how often that is in words. */
  readonly spells: number;
  readonly evenings: number;
  readonly often: OverloadOften;
  readonly spellsCount: boolean;
  /** Digits after the point that they are told with. */
  readonly spellDigits: number;
  readonly trip: TripReach;
  /** Undefined while it is not known how the rail voltage comes about. */
  readonly rails:
    | {
        readonly voltage: RailVoltage;
        readonly finding: RailFinding;
        readonly certain: RailFinding;
        /** The volts that the finding speaks of. */
        readonly volts: number;
      }
    | undefined;
}

/** The part that follows a slider. */
export function reckon(answers: Answers): Reckoning {
  const reader = new Reader(answers);
  const scale = reader.scale();
  const fleet = reader.fleet(scale);
  const stage = reader.stage('unit', scale, reader.ownUse());
  const label = reader.supplyLabel('supply');
  const supply = knownSupply(label);
  const load = districtLoad(fleet);
  const summary = summarise(load.distribution);
  const eveningHours = reader.evening();
  const known =
    supply === undefined
      ? undefined
      : power(supply, stage, load, scale, eveningHours, reader.rails('unit') !== undefined);
  return {
    scale,
    fleet,
    trains: trainCount(fleet),
    load,
    summary,
    bars: histogram(load.distribution, barWidth(summary.most - summary.least)),
    eveningHours,
    labels: checkLabels(label, reader.inputLabel('unit')),
    stage,
    assumptions: reader.assumptions,
    plainSum: plainSum(fleet),
    drawsSure: drawsSure(fleet, scale),
    power: known,
    ownUseDoubt: known === undefined ? undefined : ownUseDoubt(load, stage, known),
  };
}

function ownUseDoubt(load: DistrictLoad, stage: Stage, { supply, judgement }: Power): Reckoning['ownUseDoubt'] {
  if (stage.ownUse !== 0) return undefined;
  const { verdict } = judge(load, capacity(supply, { ...stage, ownUse: OWN_USE_DOUBT }));
  return verdict === judgement.verdict ? undefined : { amps: OWN_USE_DOUBT, verdict };
}

function power(
  supply: Supply,
  stage: Stage,
  load: DistrictLoad,
  scale: Scale,
  eveningHours: number,
  railsKnown: boolean,
): Power {
  const able = capacity(supply, stage);
  const judgement = judge(load, able);
  const voltage = railVoltage(supply, stage.rails, { build: stage.build, loaded: able.hard });
  const lowest: RailVoltage = { idle: { from: voltage.idle.from, to: voltage.idle.from }, loaded: voltage.loaded };
  const spells = spellsPerEvening(judgement.aboveHard, eveningHours);
  const finding = judgeRails(voltage, scale);
  return {
    supply,
    capacity: able,
    usableAtBest: betterAtBest(able),
    judgement,
    inside: 1 - judgement.aboveUsable,
    spells,
    evenings: eveningsBetween(spells),
    often: overloadOften(judgement.aboveHard, spells),
    spellsCount: spellsCount(spells),
    spellDigits: spellDigits(spells),
    trip: tripReach(supply, stage),
    rails: railsKnown
      ? { voltage, finding, certain: judgeRails(lowest, scale), volts: judgedVolts(finding, voltage) }
      : undefined,
  };
}

// Between about 18 and 60 bars of a round width.
function barWidth(range: number): number {
  const widths = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20];
  return widths.find((width) => range / width <= 60) ?? 50;
}

export interface Conclusion {
  readonly outcome: EnoughCurrentOutcome;
  readonly remedies: readonly Remedy[];
  /** Something must be bought or plugged round, and the labels are not known yet. */
  readonly labelsWanted: boolean;
  readonly chosen: Remedy | undefined;
  /** Most that may move at once with all rules kept, and with the everyday rule only; none where even standing is too much. */
  readonly mayMove: { readonly enough: number; readonly tight: number } | undefined;
  /** How many more of the first kind could be added and moved with the everyday rule kept. */
  readonly more: { readonly kind: string; readonly count: number } | undefined;
}

/** The part that may come a moment later: what to do. */
export function conclude(answers: Answers, reckoning: Reckoning): Conclusion {
  const { power: now, fleet, stage } = reckoning;
  if (now === undefined) {
    const outcome = reckoning.labels.kind === 'not-permitted' ? 'wrong-supply' : 'read-both-labels';
    return { outcome, remedies: [], labelsWanted: false, chosen: undefined, mayMove: undefined, more: undefined };
  }
  const found = remedies({ fleet, supply: now.supply, stage });
  const kind = fleet.trains[0];
  const wantsShorts = new Reader(answers).option('aim') === 'shorts';
  const chosen = firstThatReaches(found, 'enough') ?? firstThatReaches(found, 'tight');
  return {
    outcome: outcomeOf(reckoning, now, wantsShorts, chosen),
    remedies: found,
    labelsWanted: reckoning.labels.kind === 'unknown' && found.some(buys),
    chosen,
    mayMove: {
      enough: Math.max(0, largestMoving(fleet, now.capacity, 'enough')),
      tight: Math.max(0, largestMoving(fleet, now.capacity, 'tight')),
    },
    more: kind === undefined ? undefined : { kind: kind.kind, count: moreTrains(fleet, kind, now.capacity, 'tight') },
  };
}

function outcomeOf(
  reckoning: Reckoning,
  now: Power,
  wantsShorts: boolean,
  chosen: Remedy | undefined,
): EnoughCurrentOutcome {
  const { labels } = reckoning;
  const { judgement } = now;
  if (labels.kind === 'not-permitted') return 'wrong-supply';
  if (now.rails?.certain === 'over-stop' || now.rails?.certain === 'over-decoder') return 'rail-voltage-too-high';
  if (atLeast(judgement.verdict, 'enough')) return wantsShorts ? 'breakers-and-sub-districts' : 'power-is-enough';
  if (onlyPowerUpFails(judgement)) return 'put-on-in-two-groups';
  if (chosen === undefined) return 'fewer-moving';
  if (buys(chosen) && labels.kind === 'unknown') return 'read-both-labels';
  return chosen.id;
}

/** Whether a remedy means getting or re-plugging a supply or a unit, so that both labels must be known. */
export function buys(remedy: Remedy): boolean {
  return remedy.id !== 'calm-the-consumption' && remedy.id !== 'fewer-moving';
}

function onlyPowerUpFails(judgement: Judgement): boolean {
  return !judgement.powerUp.passes && judgement.everyday.passes && judgement.stall.passes && judgement.heat.passes;
}
