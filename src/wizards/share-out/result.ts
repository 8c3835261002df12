// What "Where do I divide the layout?" works out: the shape as a layout sheet with two stages, divided as every sheet is.
import { capacity, gradeBreaker, supplyTrip, trackCurrent } from '../../engine/index.ts';
import type { SheetDivided, Way } from '../division/index.ts';
import { bestOf, dividedSheet } from '../division/index.ts';
import type { Answers, Assumption } from '../planning/index.ts';
import { knownSupply, Reader, readFirst } from '../planning/index.ts';
import type { Joint, ShapeId, Sheet } from '../sheet/index.ts';
import { fleetOf, freshMark, SHAPE_IDS, SHAPES, stagesOf, withAnswers } from '../sheet/index.ts';
import type { Placement } from '../which-supply-where/index.ts';
import { placeSupplies } from '../which-supply-where/index.ts';
import type { ShareOutOutcome } from './outcomes.ts';
import { BREAKERS, STOPS } from './outcomes.ts';

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

type Asked = Way['asked'][number];

/** Where the amperes come from that a unit is taken to give. */
interface UnitGives {
  /** What its supply brings to the track after what the unit takes for itself, and what the unit passes, amperes. */
  readonly fromSupply: number;
  readonly limit: number;
  readonly ownUse: number;
  /** Nobody has told what it passes: that is usual for the scale. */
  readonly limitAssumed: boolean;
  /** The smaller of the two with the reserve taken off, amperes. */
  readonly usable: number;
}

interface MayNotTrip {
  readonly unit: 'station' | 'booster';
  /** What the supply gives on the track at the most, even for a moment, and what the unit then switches off at, amperes. */
  readonly most: number;
  readonly trip: number;
}

export interface ShareFound {
  readonly outcome: ShareOutOutcome;
  /** Why nothing is plugged yet, as the placing of supplies says it. */
  readonly stop: Placement | undefined;
  /** The shape that was told, as it is divided; none where something stops before that. */
  readonly sheet: Sheet | undefined;
  /** First the one with the fewest gaps among those that are good, or else as even as can be; then the others. None where there is no division. */
  readonly ways: readonly PlacedWay[];
  /** The ends of loops: both rails are cut there in any case, and something turns each loop's rails over. */
  readonly loopGaps: readonly GapPlace[];
  readonly loops: number;
  /** What is told of the units; of one only where breakers part what it feeds. */
  readonly units: readonly UnitGives[];
  /** Whether every label that counts is read. */
  readonly labelsRead: boolean;
  /** Units that are set to more volts than their supply can lift the rails to; said once every label is read. */
  readonly outOfReach: Placement['outOfReach'];
  /** The supplies are exchanged: the one that was told of the booster goes on the command station. */
  readonly exchanged: boolean;
  /** What the command station has to bear by itself, where it bears everything; good only once its labels are read. */
  readonly alone: Asked | undefined;
  /** One short shall not stop everyone: that was told. */
  readonly wantsShorts: boolean;
  /** How many districts would do, where two do not. */
  readonly districts: number | undefined;
  /** How many running trains the two parts carry, of so many, where nothing else helps than fewer. */
  readonly fewer: { readonly carries: number; readonly running: number; readonly wait: number } | undefined;
  /** Units that will hardly switch off a short on their supply, as far as its amperes and what is usual tell; said until every label is read. */
  readonly mayNotTrip: readonly MayNotTrip[];
  readonly assumptions: readonly Assumption[];
}

export function shareOutFor(answers: Answers): ShareFound {
  const told = withAmps(answers);
  const reader = new Reader(told);
  reader.fleet(reader.scale());
  const placement = placeSupplies(told);
  const allRead = isAllRead(told);
  const exchanged = allRead && placement.arrangements[0]?.stages[0]?.supply === 1;
  const wantsShorts = reader.option('aim') === 'shorts';
  const common = { mayNotTrip: [], exchanged, wantsShorts, outOfReach: allRead ? placement.outOfReach : [] };
  const stop = STOPS.find((id) => id === placement.outcome);
  if (stop !== undefined) {
    const { assumptions } = reader;
    return { ...NOT_DIVIDED, ...common, outcome: stop, stop: placement, labelsRead: allRead, assumptions };
  }
  const sheet = sheetOf(exchanged ? exchange(told) : told, reader);
  const shown = shownOf(dividedOf(sheet), wantsShorts);
  const behindOne = shown.outcome === BREAKERS;
  if (shown.ways.length > 0) {
    for (const unit of behindOne ? UNITS.slice(0, 1) : UNITS) reader.stageLimit(unit, reader.scale());
  }
  const labelsRead = behindOne ? isUnitRead(told, 'station', 'one') : allRead;
  const mayNotTrip = labelsRead ? [] : mayNotTripIn(sheet).slice(0, behindOne ? 1 : undefined);
  return { ...common, ...shown, stop: undefined, labelsRead, mayNotTrip, assumptions: reader.assumptions };
}

/** Only supplies whose amperes somebody has told are judged. */
const mayNotTripIn = (sheet: Sheet): readonly MayNotTrip[] =>
  stagesOf(sheet).flatMap(({ stage, supply, unread }, at) => {
    const unit = UNITS[at];
    const { kind, gives, trip } = supplyTrip(supply, stage);
    const isTold = !(unread.includes('supply') || unread.includes('supplyAmps'));
    return unit !== undefined && isTold && kind === 'surely-not' ? [{ unit, most: gives.to, trip }] : [];
  });

type Shown = Omit<
  ShareFound,
  'stop' | 'labelsRead' | 'outOfReach' | 'exchanged' | 'wantsShorts' | 'mayNotTrip' | 'assumptions'
>;

const NOT_DIVIDED = {
  sheet: undefined,
  ways: [],
  loopGaps: [],
  loops: 0,
  units: [],
  alone: undefined,
  districts: undefined,
  fewer: undefined,
} as const satisfies Omit<Shown, 'outcome'>;

/** The division between the two units, or the one that is wanted instead. */
function shownOf(found: Found, wantsShorts: boolean): Shown {
  const { division } = found;
  const first = outcomeOf(division.division, division.fewest);
  const alone = aloneIn(division);
  const parted = partedOf(found, first, wantsShorts ? alone : undefined);
  const { sheet, ...shown } = parted ?? { ...found, outcome: first };
  const ways = bestFirst(waysOf({ sheet, division: shown.division }));
  return {
    outcome: shown.outcome,
    sheet,
    ways,
    loopGaps: loopGapsOf(sheet, ways[0]),
    loops: sheet.sections.filter(isLoop).length,
    units: ways.length === 0 ? [] : unitsOf(found.sheet).slice(0, shown.outcome === BREAKERS ? 1 : undefined),
    alone,
    districts: division.fewest?.districts,
    fewer: shown.outcome === 'fewer-moving' ? fewerIn(sheet) : undefined,
  };
}

/** Most running trains with which there is a division; none where even what stands is too much. */
function fewerIn(sheet: Sheet): ShareFound['fewer'] {
  const running = fleetOf(sheet).moving;
  let [carries, beyond] = [-1, running];
  while (beyond - carries > 1) {
    const moving = Math.floor((carries + beyond) / 2);
    if (dividedSheet({ ...sheet, moving }).division.kind === 'choice') carries = moving;
    else beyond = moving;
  }
  return carries > 0 ? { carries, running, wait: running - carries } : undefined;
}

const UNITS = ['station', 'booster'] as const;

/** The whole layout on the command station, where that is enough. */
function aloneIn({ fewest }: SheetDivided): Asked | undefined {
  return fewest?.districts === 1 ? fewest.way?.asked[0] : undefined;
}

interface Parted extends Found {
  readonly outcome: ShareOutOutcome;
}

/** Another division than that between the two units: into more parts where two do not bear it, or behind breakers; none where neither is wanted. */
function partedOf({ sheet, division }: Found, outcome: ShareOutOutcome, alone: Asked | undefined): Parted | undefined {
  if (outcome === 'more-districts') {
    return { ...dividedOf(withBoosters(sheet, division.fewest?.districts ?? 0)), outcome };
  }
  if (alone === undefined) return undefined;
  const behind = dividedOf(withBreakers(sheet));
  return behind.division.division.kind === 'choice' ? { ...behind, outcome: BREAKERS } : undefined;
}

/** As many units, those beyond the ones that are there like the last of them. */
function withBoosters(sheet: Sheet, count: number): Sheet {
  const last = sheet.stages.at(-1);
  if (last === undefined || sheet.stages.length >= count) return sheet;
  const fed = sheet.supplies.find(({ id }) => id === last.supply);
  const supply = { ...fed, id: freshMark('supply', sheet.supplies) };
  const stage = { ...last, kind: 'booster' as const, id: freshMark('booster', sheet.stages), supply: supply.id };
  return withBoosters({ ...sheet, stages: [...sheet.stages, stage], supplies: [...sheet.supplies, supply] }, count);
}

/** Two parts behind the command station, each with what a breaker under it passes. */
function withBreakers(sheet: Sheet): Sheet {
  const [unit] = stagesOf(sheet);
  const [stage] = sheet.stages;
  if (unit === undefined || stage === undefined) return sheet;
  const trip = { trip: unit.stage.limit, seconds: Number.POSITIVE_INFINITY };
  const behind = { ...stage, limitAmps: gradeBreaker(trip, trip).tripAtMost };
  return { ...sheet, stages: [behind, { ...behind, id: 'breaker-2', kind: 'booster', ownUseAmps: unit.stage.ownUse }] };
}

const isLoop = ({ tags = [] }: Sheet['sections'][number]): boolean => tags.includes('reversing');

/** Ends of loops at which nothing is divided. */
function loopGapsOf(sheet: Sheet, best: PlacedWay | undefined): readonly GapPlace[] {
  const loops = new Set(sheet.sections.filter(isLoop).map(({ id }) => id));
  return sheet.joints
    .filter(({ id, from, to }) => loops.has(from) !== loops.has(to) && !best?.gaps.some(({ joint }) => joint === id))
    .map((joint) => placeOf(joint, sheet));
}

const unitsOf = (sheet: Sheet): readonly UnitGives[] =>
  stagesOf(sheet).map(({ stage, supply, unread }) => ({
    fromSupply: trackCurrent(supply, stage),
    limit: stage.limit,
    ownUse: stage.ownUse,
    limitAssumed: unread.includes('limitAmps'),
    usable: capacity(supply, stage).usable,
  }));

/** The amperes that were told of the supplies stand for their labels until those are read. */
function withAmps(answers: Answers): Answers {
  const label = (prefix: string, quick: string): Answers => {
    const given = answers[quick];
    return answers[prefix] === undefined && given?.kind === 'number' ? { [prefix]: given } : {};
  };
  return { ...answers, ...label('one-amps', 'station-amps'), ...label('two-amps', 'booster-amps') };
}

const isAllRead = (answers: Answers): boolean =>
  isUnitRead(answers, 'station', 'one') && isUnitRead(answers, 'booster', 'two');

/** A unit with its supply. */
function isUnitRead(answers: Answers, unit: string, label: string): boolean {
  const supply = knownSupply(new Reader(answers).supplyLabel(label));
  const isRead = supply !== undefined && (supply.kind === 'ac' || supply.plug !== undefined);
  return isRead && readFirst(answers, unit) === undefined;
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
  const { exchanged, ways, outcome, districts } = shareOutFor(answers);
  const told = withAmps(answers);
  const reader = new Reader(told);
  const sheet = withAnswers(withShape(fresh ? undefined : open, reader), exchanged ? exchange(told) : told);
  return { sheet: dividedAs(sheet, outcome, ways[0], districts), fresh, shape: shapeTold(reader) };
}

/** A sheet with the division of the answer: a district for each unit, or one with its breakers and the gaps between them. */
function dividedAs(
  sheet: Sheet,
  outcome: ShareOutOutcome,
  way: PlacedWay | undefined,
  count: number | undefined,
): Sheet {
  if (way === undefined) return sheet;
  if (outcome !== BREAKERS) {
    const grown = outcome === 'more-districts' ? withBoosters(sheet, count ?? 0) : sheet;
    const districts = way.districts.flatMap(({ sections }, at) => {
      const stage = grown.stages[at]?.id;
      return stage === undefined ? [] : [{ stage, sections: [...sections] }];
    });
    return { ...grown, districts };
  }
  const [station, ...others] = sheet.stages;
  if (station === undefined) return sheet;
  const cut = new Set(way.gaps.map(({ joint }) => joint));
  return {
    ...sheet,
    stages: [{ ...station, breakers: way.districts.length }, ...others],
    joints: sheet.joints.map((joint) => (cut.has(joint.id) ? { ...joint, gap: 'required' as const } : joint)),
    districts: [{ stage: station.id, sections: sheet.sections.map(({ id }) => id) }],
  };
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

/** The best first, then the others as they came. */
function bestFirst(ways: readonly PlacedWay[]): readonly PlacedWay[] {
  const best = bestOf(ways);
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
