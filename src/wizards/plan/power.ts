// Which supply belongs on which unit, whether every district has enough, and what helps where one has not.
import type {
  Arrangement,
  DistrictAdvice,
  DistrictFinding,
  DividedLayout,
  Fleet,
  Fuse,
  LoadedStage,
  NamedSupply,
  Placed,
  RailSetting,
  Scale,
  Span,
  Stage,
  SupplyTrip,
  Verdict,
} from '../../engine/index.ts';
import {
  arrange,
  atLeast,
  BOOSTER_OWN_USE,
  districtLoad,
  dividedLayout,
  fuseFor,
  judgeRails,
  leadAmps,
  OWN_USE_DOUBT,
  stepFinding,
  supplyTrip,
  trainCount,
  tripLevel,
  withFixedDraw,
  worstVerdict,
} from '../../engine/index.ts';
import type { Sheet, SheetStage, SheetSupply } from '../sheet/index.ts';
import type { TrackDistrict } from './track.ts';
import type { Unread } from './unread.ts';

/** A unit of a district with the supply that it gets. */
export interface PlacedUnit {
  readonly district: string;
  readonly stage: SheetStage;
  readonly supply: SheetSupply;
  /** The sheet had another one there, or none. */
  readonly moved: boolean;
  /** Volts on its rails with nothing on the track, and with its trains. */
  readonly idle: Span;
  readonly loaded: Span;
  readonly trip: SupplyTrip;
  readonly fuse: Fuse;
  /**
   * Amperes in the lead of its supply, with nothing on the track but what is always on, and in the busiest moment of twenty; the most it may be
   * where nobody has told what the unit takes for itself. Undefined where a usual meter reads none there.
   */
  readonly lead: Span | undefined;
}

/** What comes before the plan can be built, or what makes it better; each has its page. */
export type Remedy =
  | 'read-labels'
  | 'no-trains'
  | 'too-many-trains'
  | 'own-supplies'
  | 'not-permitted'
  | 'rails-too-high'
  | 'rails-too-low'
  | 'lower-trip'
  | 'set-equal'
  | Exclude<DistrictAdvice['kind'], 'nothing'>
  | 'nothing';

export interface Power {
  /** `unknown`: a label is not read, no train is told, a unit has no supply. Never good. */
  readonly verdict: Verdict | 'unknown';
  readonly remedy: Remedy;
  readonly advice: DistrictAdvice | undefined;
  /** By district in order; empty while unknown. */
  readonly findings: readonly DistrictFinding[];
  /** Whether that holds whatever is not known. */
  readonly sure: DividedLayout['kind'] | undefined;
  /** In the order of the districts; empty while a label is unread or supplies are too few. */
  readonly units: readonly PlacedUnit[];
  /** Rails of the highest booster less those of the command station, volts; undefined with one unit, or while unknown. */
  readonly step: Span | undefined;
}

/** Beyond so many trains on one layout the figures say nothing any more. Source: own-choice. */
const MOST_TRAINS = 200;

/** How an unread or unjudged plan stands. */
const unknown = (remedy: Remedy): Power => ({
  verdict: 'unknown',
  remedy,
  ...{ advice: undefined, findings: [], sure: undefined, units: [], step: undefined },
});

export interface PowerTold {
  readonly sheet: Sheet;
  readonly districts: readonly TrackDistrict[];
  readonly unread: readonly Unread[];
  readonly fleet: Fleet;
}

/** Judges the division of a sheet. Nothing is judged while a label is unread. */
export function powerOf({ sheet, districts, unread, fleet }: PowerTold): Power {
  if (unread.length > 0) return unknown('read-labels');
  if (districts.length === 0) return unknown('own-supplies');
  if (fleet.trains.length === 0) return unknown('no-trains');
  if (trainCount(fleet) > MOST_TRAINS) return unknown('too-many-trains');
  const supplies = sheet.supplies.flatMap(namedSupply);
  if (supplies.length < districts.length) return unknown('own-supplies');
  const stages = districts.map((district) => loadedStage(district, fleet, supplies[0]));
  const chosen = chooseFrom(sheet, districts, supplies, stages, fleet);
  if (chosen === undefined) return unknown('own-supplies');
  const layout = dividedLayout(
    fleet,
    districts.flatMap(({ share, stage, fixedAmps }, at) => {
      const supply = supplies[chosen.stages[at]?.supply ?? -1];
      return supply === undefined
        ? []
        : [{ traffic: share, supply, stage: withFixedDraw(supply, stageOf(stage), fixedAmps) }];
    }),
    sheet.lamps !== undefined,
  );
  const units = unitsOf(sheet, districts, chosen, layout);
  return {
    verdict: layout.verdict,
    remedy: remedyFor(chosen, units, layout, sheet.scale),
    advice: layout.advice,
    findings: layout.districts.map((one, at) => withAlwaysOn(one, districts[at]?.fixedAmps ?? 0)),
    sure: layout.kind,
    units,
    step: chosen.stages.length > 1 ? chosen.step : undefined,
  };
}

/** What is told of a district holds the draws that are always on, as the sheet tells it. */
const withAlwaysOn = (finding: DistrictFinding, amps: number): DistrictFinding => ({
  ...finding,
  often: finding.often + amps,
  capacity: { ...finding.capacity, hard: finding.capacity.hard + amps, usable: finding.capacity.usable + amps },
});

function namedSupply({ kind, volts, amps, plug }: SheetSupply): NamedSupply[] {
  return kind === undefined || volts === undefined || amps === undefined ? [] : [{ kind, volts, amps, plug }];
}

export function railsOf({ rails, railVolts }: Pick<SheetStage, 'rails' | 'railVolts'>): RailSetting {
  return (rails === 'set' || rails === 'converter') && railVolts !== undefined
    ? { kind: rails, volts: railVolts }
    : { kind: 'follows' };
}

/** A unit without a figure of its own: the command station is left to the reserve, a booster takes what is usual. */
const stageOf = (stage: SheetStage): Stage => ({
  limit: stage.limitAmps ?? 0,
  rails: railsOf(stage),
  ownUse: stage.ownUseAmps ?? (stage.kind === 'booster' ? BOOSTER_OWN_USE : 0),
});

/** Amperes at which it switches off: as its instructions say, else what it lets through at the most. */
export const tripOf = ({ tripAmps, limitAmps }: Pick<SheetStage, 'tripAmps' | 'limitAmps'>): number | undefined =>
  tripAmps ?? limitAmps;

function loadedStage(
  { stage, share, fixedAmps }: TrackDistrict,
  fleet: Fleet,
  supply: NamedSupply | undefined,
): LoadedStage {
  const { inputKind, inputVolts, leastInputVolts, plug } = stage;
  const alone = stageOf(stage);
  const beside = supply === undefined ? alone : withFixedDraw(supply, alone, fixedAmps);
  return {
    ...beside,
    input: { kind: inputKind, volts: inputVolts, leastVolts: leastInputVolts, plug },
    load: districtLoad(fleet, Math.max(share, LEAST_SHARE)),
  };
}

/** A district without traffic is still a district; a share of the fleet is above 0. Source: own-choice. */
const LEAST_SHARE = 0.001;

/** The best way round; as the sheet has it where that does as well. */
function chooseFrom(
  sheet: Sheet,
  districts: readonly TrackDistrict[],
  supplies: readonly NamedSupply[],
  stages: readonly LoadedStage[],
  fleet: Fleet,
): Arrangement | undefined {
  const laws = new Map<string, LoadedStage['load']['distribution']>();
  // Two districts together hold any one consumer with the chance of either.
  const together = (one: number, other: number) => {
    const key = `${one} ${other}`;
    const share = Math.min(1, (districts[one]?.share ?? 0) + (districts[other]?.share ?? 0));
    const law = laws.get(key) ?? districtLoad(fleet, Math.max(share, LEAST_SHARE)).distribution;
    laws.set(key, law);
    return law;
  };
  const all = arrange(supplies, stages, undefined, together);
  const [best] = all;
  const told = districts.map(({ stage }) => sheet.supplies.findIndex(({ id }) => id === stage.supply));
  const asTold = all.find(({ stages: placed }) => placed.every(({ supply }, at) => supply === told[at]));
  return asTold !== undefined && best !== undefined && doesAsWell(asTold, best) ? asTold : best;
}

function doesAsWell(told: Arrangement, best: Arrangement): boolean {
  const enough = (one: Arrangement): boolean =>
    atLeast(worstVerdict(one.stages.map(({ judgement }) => judgement.verdict)), 'enough');
  return (
    told.permitted === best.permitted &&
    told.trips === best.trips &&
    told.cascade === best.cascade &&
    stepFinding(told.step) === stepFinding(best.step) &&
    enough(told) === enough(best)
  );
}

function unitsOf(
  sheet: Sheet,
  districts: readonly TrackDistrict[],
  { stages: placed }: Arrangement,
  { districts: findings }: DividedLayout,
): PlacedUnit[] {
  return districts.flatMap(({ letter, stage, fixedAmps }, at) => {
    const one = placed[at];
    const supply = sheet.supplies[one?.supply ?? -1];
    if (one === undefined || supply === undefined) return [];
    const trip = supplyTrip(one.fed.supply, stageOf(stage), tripOf(stage));
    return [
      {
        district: letter,
        stage,
        supply,
        moved: stage.supply !== supply.id,
        idle: one.rails.idle,
        loaded: one.rails.loaded,
        trip,
        fuse: fuseFor(trip),
        lead: leadOf(one, stage, fixedAmps, findings[at]?.often ?? 0),
      },
    ];
  });
}

/** @param often the trains alone, beside what is always on */
function leadOf({ fed: { supply } }: Placed, stage: SheetStage, fixedAmps: number, often: number): Span | undefined {
  const unit = { ...stageOf(stage), ownUse: stage.ownUseAmps ?? OWN_USE_DOUBT };
  const [from, to] = [leadAmps(supply, unit, fixedAmps), leadAmps(supply, unit, fixedAmps + often)];
  return from === undefined || to === undefined ? undefined : { from, to };
}

/** What must not be plugged comes first, then what would not switch off, then what the gap does, then amperes. */
function remedyFor(chosen: Arrangement, units: readonly PlacedUnit[], layout: DividedLayout, scale: Scale): Remedy {
  if (!chosen.permitted || chosen.stages.some(isUnreadLabel)) return 'not-permitted';
  const rails = chosen.stages.map((one) => judgeRails(one.rails, scale));
  if (rails.some((one) => one === 'over-stop' || one === 'over-decoder')) return 'rails-too-high';
  if (rails.includes('too-low')) return 'rails-too-low';
  if (units.some(({ trip }) => tripLevel(scale, trip.trip).finding === 'above-ceiling')) return 'lower-trip';
  if (units.some(({ trip }) => trip.kind === 'surely-not')) return 'cannot-trip';
  if (stepFinding(chosen.step) !== 'level') return 'set-equal';
  return layout.advice.kind;
}

const isUnreadLabel = ({ label }: Placed): boolean => label.kind === 'unknown';
