// What "Where do I divide the layout?" works out: the shape as a layout sheet with two stages, divided as every sheet is.
import type { SheetDivided, Way } from '../division/index.ts';
import { dividedSheet } from '../division/index.ts';
import type { Answers, Assumption } from '../planning/index.ts';
import { knownSupply, Reader, readFirst } from '../planning/index.ts';
import type { Joint, ShapeId, Sheet } from '../sheet/index.ts';
import { freshMark, SHAPE_IDS, SHAPES, withAnswers } from '../sheet/index.ts';
import type { Placement } from '../which-supply-where/index.ts';
import { placeSupplies } from '../which-supply-where/index.ts';
import type { ShareOutOutcome } from './outcomes.ts';
import { STOPS } from './outcomes.ts';

/** A place where both rails are cut: the sections on its two sides. */
export interface GapPlace {
  readonly joint: string;
  readonly from: string;
  readonly to: string;
  /** Which of them, where the same two sections meet twice. */
  readonly end?: 1 | 2;
}

export interface PlacedWay extends Omit<Way, 'gaps'> {
  readonly gaps: readonly GapPlace[];
}

export interface ShareFound {
  readonly outcome: ShareOutOutcome;
  /** Why nothing is plugged yet, as the placing of supplies says it. */
  readonly stop: Placement | undefined;
  /** The shape that was told, as it is divided; none where something stops before that. */
  readonly sheet: Sheet | undefined;
  /** First the one with the fewest gaps among those that are good, or else as even as can be; then the others. None where there is no division. */
  readonly ways: readonly PlacedWay[];
  /** Whether every label is read. */
  readonly labelsRead: boolean;
  /** Units that are set to more volts than their supply can lift the rails to; said once every label is read. */
  readonly outOfReach: Placement['outOfReach'];
  /** The supplies are exchanged: the one that was told of the booster goes on the command station. */
  readonly exchanged: boolean;
  /** The command station bears everything by itself; nothing that is said before every label is read. */
  readonly enoughAlone: boolean;
  /** How many districts would do, where two do not. */
  readonly districts: number | undefined;
  readonly assumptions: readonly Assumption[];
}

export function shareOutFor(answers: Answers): ShareFound {
  const told = withAmps(answers);
  const reader = new Reader(told);
  reader.fleet(reader.scale());
  const placement = placeSupplies(told);
  const stops = STOPS.find((id) => id === placement.outcome);
  const labelsRead = isAllRead(told);
  const exchanged = labelsRead && placement.arrangements[0]?.stages[0]?.supply === 1;
  const found = stops === undefined ? dividedOf(sheetOf(exchanged ? exchange(told) : told, reader)) : undefined;
  const ways = found === undefined ? [] : evenFirst(waysOf(found));
  return {
    outcome: stops ?? outcomeOf(found?.division.division, found?.division.fewest),
    stop: stops === undefined ? undefined : placement,
    sheet: found?.sheet,
    ways,
    labelsRead,
    outOfReach: labelsRead ? placement.outOfReach : [],
    exchanged,
    enoughAlone: labelsRead && ways[0]?.asked[0]?.most === 1,
    districts: found?.division.fewest?.districts,
    assumptions: reader.assumptions,
  };
}

/** The amperes that were told of the supplies stand for their labels until those are read. */
function withAmps(answers: Answers): Answers {
  const label = (prefix: string, quick: string): Answers => {
    const given = answers[quick];
    return answers[prefix] === undefined && given?.kind === 'number' ? { [prefix]: given } : {};
  };
  return { ...answers, ...label('one-amps', 'station-amps'), ...label('two-amps', 'booster-amps') };
}

function isAllRead(answers: Answers): boolean {
  const reader = new Reader(answers);
  const supplies = ['one', 'two'].map((prefix) => knownSupply(reader.supplyLabel(prefix)));
  const isRead = (supply: (typeof supplies)[number]): boolean =>
    supply !== undefined && (supply.kind === 'ac' || supply.plug !== undefined);
  return supplies.every(isRead) && ['station', 'booster'].every((prefix) => readFirst(answers, prefix) === undefined);
}

const exchange = (answers: Answers): Answers =>
  Object.fromEntries(
    Object.entries(answers).map(([id, answer]) => [
      id.replace(/^(one|two)-/, (_, prefix) => (prefix === 'one' ? 'two-' : 'one-')),
      answer,
    ]),
  );

/** The shape with what was told of it: two stages, each with its supply. */
function sheetOf(answers: Answers, reader: Reader): Sheet {
  const trains = [{ kind: 'modern' as const, count: reader.number('modern') ?? 0 }];
  return withAnswers({ ...withShape(undefined, reader), trains }, answers);
}

const shapeTold = (reader: Reader): ShapeId => SHAPE_IDS.find((id) => id === reader.option('shape')) ?? 'oval';

/** A sheet without track gets that of the shape that was told, and two stages with their supplies where it lacks them. */
function withShape(open: Sheet | undefined, reader: Reader): Sheet {
  const shape = shapeTold(reader);
  const laid = SHAPES[shape](0, reader.scale());
  const { sections, joints } = laid;
  const { districts: _, ...sheet } = open ?? { ...laid, trains: [] };
  const own = { ...sheet, stages: sheet.stages.map(({ feeds: __, ...stage }) => stage) };
  return { ...withStage(withStage(own, 0), 1), scale: reader.scale(), sections, joints };
}

function withStage(sheet: Sheet, at: number): Sheet {
  if (sheet.stages[at] !== undefined) return sheet;
  const supply = freshMark('supply', sheet.supplies);
  const stage =
    at === 0
      ? { id: 'station', kind: 'station' as const, supply }
      : { id: freshMark('booster', sheet.stages), kind: 'booster' as const, supply };
  return { ...sheet, stages: [...sheet.stages, stage], supplies: [...sheet.supplies, { id: supply }] };
}

/** A sheet to keep; `fresh`: it stands beside the one that was open. */
interface SheetTaken {
  readonly sheet: Sheet;
  readonly fresh: boolean;
  /** What its track was told to look like; it is called so where it has no name. */
  readonly shape: ShapeId;
}

/** The layout that was told with the division of the answer, laid over a sheet that has no track yet: track of its own is never written over. */
export function takenInto(open: Sheet | undefined, answers: Answers): SheetTaken {
  const fresh = open === undefined || open.sections.length > 0 || open.stages.length > 2;
  const { exchanged, ways } = shareOutFor(answers);
  const told = withAmps(answers);
  const reader = new Reader(told);
  const sheet = withAnswers(withShape(fresh ? undefined : open, reader), exchanged ? exchange(told) : told);
  const districts = ways[0]?.districts.map(({ stage, sections }) => ({
    stage: sheet.stages[stage === 'station' ? 0 : 1]?.id ?? stage,
    sections: [...sections],
  }));
  return { sheet: { ...sheet, ...(districts === undefined ? {} : { districts }) }, fresh, shape: shapeTold(reader) };
}

interface Found {
  readonly sheet: Sheet;
  readonly division: SheetDivided;
}

const dividedOf = (sheet: Sheet): Found => ({ sheet, division: dividedSheet(sheet) });

function outcomeOf(division: SheetDivided['division'] | undefined, fewest: SheetDivided['fewest']): ShareOutOutcome {
  if (division === undefined || division.kind === 'missing') return 'power-is-enough';
  if (division.kind === 'choice') return 'divide-the-track';
  return fewest !== undefined && fewest.more > 0 ? 'more-districts' : 'fewer-moving';
}

/** One stage that has nearly all of the traffic is no division that anybody wants. Source: common-practice. */
function evenFirst(ways: readonly PlacedWay[]): readonly PlacedWay[] {
  const best =
    ways.find(({ evenness }) => evenness === 'good') ??
    ways.findLast(({ evenness }) => evenness === 'fair') ??
    ways.at(-1);
  return best === undefined ? [] : [best, ...ways.filter((way) => way !== best)];
}

function placeOf(joint: Joint, { joints }: Sheet): GapPlace {
  const { id, from, to } = joint;
  const alike = joints.filter((one) => one.from === from && one.to === to);
  const place = { joint: id, from, to };
  return alike.length < 2 ? place : { ...place, end: joint === alike[0] ? 1 : 2 };
}

function waysOf({ sheet, division: { division } }: Found): readonly PlacedWay[] {
  if (division.kind !== 'choice') return [];
  return division.ways.map((way) => ({
    ...way,
    gaps: sheet.joints.flatMap((joint) => (way.gaps.includes(joint.id) ? [placeOf(joint, sheet)] : [])),
  }));
}
