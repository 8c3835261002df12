// What comes of dividing a sheet, in the marks of the sheet: several ways with what each asks of every stage, or why there is none.
import type { DistrictFinder, Dividing, Division, Hindrance, Proof, Verdict } from '../../engine/index.ts';
import {
  atOnce,
  districtFinder,
  districtFindings,
  divisionChoiceInParts,
  fewestDistrictsInParts,
  trainCount,
  withFixedDraw,
} from '../../engine/index.ts';
import { fleetOf, islandsIn, type Sheet, stagesOf } from '../sheet/index.ts';
import { fitting, useOf } from './evenness.ts';
import { problemOf, type SheetProblem } from './problem.ts';

type Districts = NonNullable<Sheet['districts']>;

/** What a district asks of its stage. */
export interface DistrictAsked {
  readonly stage: string;
  /** Share of the traffic, 0 to 1. */
  readonly share: number;
  /** The largest share that its stage would bear. */
  readonly most: number;
  /** The share that would use all units evenly, by their amperes for trains. */
  readonly fits: number;
  /** What it draws in the busiest moment of twenty with what is always on, and what can be planned with, amperes. */
  readonly often: number;
  readonly usable: number;
  /** `unknown`: a label of its stage or supply is not read. */
  readonly verdict: Verdict | 'unknown';
}

export interface Way {
  readonly districts: Districts;
  readonly asked: readonly DistrictAsked[];
  /** Joints between two districts, and those of them where rails are still to be cut. */
  readonly gaps: readonly string[];
  readonly toCut: readonly string[];
  /** Gaps that are there or needed though they part no districts: at the ends of a loop or a bridge, or where somebody has one. */
  readonly anyway: readonly string[];
  /** Joints between two districts where somebody has said that no gap can be: nobody can build this. */
  readonly forbidden: readonly string[];
  readonly evenness: Division['evenness'];
  /** How sure it is that none costs less; left out for one that somebody has made. */
  readonly proof?: Proof;
}

/** What no division gets round, by marks of the sheet. */
export type Reason =
  | { readonly kind: 'too-much'; readonly bearable: number }
  | { readonly kind: 'one-section' | 'islands' | 'feeds'; readonly sections: readonly string[] }
  | { readonly kind: 'kept' | 'near'; readonly joints: readonly string[] }
  | { readonly kind: 'few-sections' | 'tolerance' };

/** What is missing before anything can be divided. */
export type Missing = 'sections' | 'stages' | 'trains' | 'traffic';

export type SheetDivision =
  | { readonly kind: 'missing'; readonly what: Missing }
  | { readonly kind: 'choice'; readonly ways: readonly Way[] }
  | { readonly kind: 'impossible'; readonly because: readonly Reason[]; readonly nearest?: Way }
  | { readonly kind: 'not-found' };

/** The smallest number of districts that will do; `more`: stages like the last one that are needed besides those of the sheet. */
export interface FewestFor {
  readonly districts: number;
  readonly more: number;
  readonly way?: Way;
}

export interface SheetDivided {
  readonly division: SheetDivision;
  readonly fewest?: FewestFor;
  /** The division that the sheet holds already. */
  readonly own?: Way;
}

/** Divides a sheet a part at a time. */
export function* divideSheet(sheet: Sheet): Dividing<SheetDivided> {
  const missing = missingIn(sheet);
  if (missing !== undefined) return { division: { kind: 'missing', what: missing } };
  const fleet = fleetOf(sheet);
  const told = { sheet, find: districtFinder(fleet), ...problemOf(sheet, fleet) };
  const own = sheet.districts === undefined ? {} : { own: wayOf(sheet.districts, told) };
  const choice = yield* divisionChoiceInParts(told.problem);
  const division = divisionFor(choice, told);
  const fewest = yield* fewestOf(told);
  return { division, ...own, ...(fewest === undefined ? {} : { fewest }) };
}

/** The same without a pause. */
export const dividedSheet = (sheet: Sheet): SheetDivided => atOnce(divideSheet(sheet));

/** What has to be told first. */
export function missingIn(sheet: Sheet): Missing | undefined {
  if (sheet.sections.length === 0) return 'sections';
  if (sheet.stages.length === 0) return 'stages';
  if (trainCount(fleetOf(sheet)) === 0) return 'trains';
  return sheet.sections.every(({ traffic }) => traffic === 0) ? 'traffic' : undefined;
}

/** Stretches that no joint joins to the largest one, each by its sections; none where the whole layout hangs together. */
export const apartIn = (sheet: Pick<Sheet, 'sections' | 'joints'>): readonly (readonly string[])[] =>
  islandsIn(sheet).slice(1);

interface Told extends SheetProblem {
  readonly sheet: Sheet;
  readonly find: DistrictFinder;
}

type Choice = ReturnType<typeof divisionChoiceInParts> extends Dividing<infer Made> ? Made : never;

function divisionFor(choice: Choice, told: Told): SheetDivision {
  if (choice.kind === 'not-found') return { kind: 'not-found' };
  if (choice.kind === 'choice') {
    return { kind: 'choice', ways: choice.ways.map(({ division, proof }) => ({ ...madeOf(division, told), proof })) };
  }
  const { because, nearest } = choice;
  const reasons = together(because.map((one) => reasonOf(one, told)));
  return { kind: 'impossible', because: reasons, ...(nearest === undefined ? {} : { nearest: madeOf(nearest, told) }) };
}

function* fewestOf(told: Told): Dividing<FewestFor | undefined> {
  const { problem, sheet } = told;
  const [last] = problem.stages.slice(-1);
  const { districts, divided } = yield* fewestDistrictsInParts(problem, last && { bears: last.bears });
  if (divided.kind !== 'divided') return undefined;
  const more = Math.max(0, districts - sheet.stages.length);
  return { districts, more, ...(more > 0 ? {} : { way: { ...madeOf(divided.division, told), proof: divided.proof } }) };
}

/** A division by places as districts of the sheet; a stage that gets nothing has none. */
function madeOf({ parts }: Division, told: Told): Way {
  const districts = parts.flatMap((part, at) => {
    const stage = told.sheet.stages[at]?.id;
    const sections = part.flatMap((section) => told.sheet.sections[section]?.id ?? []);
    return stage === undefined || sections.length === 0 ? [] : [{ stage, sections }];
  });
  return wayOf(districts, told);
}

function wayOf(districts: Districts, { sheet, find }: Told): Way {
  const districtOf = new Map(districts.flatMap(({ sections }, at) => sections.map((id) => [id, at] as const)));
  const between = sheet.joints.filter(({ from, to }) => districtOf.get(from) !== districtOf.get(to));
  const parts = askedOf(districts, sheet, find);
  const fits = fitting(parts);
  const asked = parts.map(({ forTrains: _, ...part }, at) => ({ ...part, fits: fits[at] ?? 0 }));
  return {
    districts,
    asked,
    gaps: between.map(({ id }) => id),
    toCut: between.filter(({ cut }) => cut !== 'both').map(({ id }) => id),
    anyway: sheet.joints
      .filter((joint) => !between.includes(joint) && (joint.cut === 'both' || joint.gap === 'required'))
      .map(({ id }) => id),
    forbidden: between.filter(({ gap }) => gap === 'impossible').map(({ id }) => id),
    evenness: useOf(parts),
  };
}

/** What a district asks, with the amperes that its stage has for trains. */
interface Part extends Omit<DistrictAsked, 'fits'> {
  readonly forTrains: number;
}

/** What each district asks of its stage, by the law of its share of the fleet. */
function askedOf(districts: Districts, sheet: Sheet, find: DistrictFinder): readonly Part[] {
  const read = new Map(stagesOf(sheet).map((one) => [one.id, one]));
  const sections = new Map(sheet.sections.map((one) => [one.id, one]));
  const inEach = districts.flatMap(({ stage: id, sections: ids }) => {
    const found = read.get(id);
    const own = ids.flatMap((one) => sections.get(one) ?? []);
    if (found === undefined) return [];
    const fixed = own.reduce((sum, { fixedAmps = 0 }) => sum + fixedAmps, 0);
    return [{ ...found, fixed, traffic: own.reduce((sum, { traffic }) => sum + traffic, 0) }];
  });
  if (inEach.every(({ traffic }) => traffic === 0)) return [];
  const findings = districtFindings(
    inEach.map(({ traffic, supply, stage, fixed }) => ({
      traffic,
      supply,
      stage: withFixedDraw(supply, stage, fixed),
    })),
    find,
  );
  return findings.flatMap(({ share, often, capacity, judgement, mostShare }, at) => {
    const district = inEach[at];
    if (district === undefined) return [];
    const { id, fixed, unread } = district;
    const verdict = unread.length > 0 ? 'unknown' : judgement.verdict;
    const forTrains = capacity.usable;
    return [{ stage: id, share, most: mostShare, often: often + fixed, usable: forTrains + fixed, forTrains, verdict }];
  });
}

/** Sections that are each too much by themselves are one reason. */
function together(reasons: readonly Reason[]): readonly Reason[] {
  const alone = reasons.flatMap((reason) => (reason.kind === 'one-section' ? reason.sections : []));
  const others = reasons.filter(({ kind }) => kind !== 'one-section');
  return alone.length === 0 ? others : [{ kind: 'one-section', sections: alone }, ...others];
}

function reasonOf(hindrance: Hindrance, { sheet, joints }: Told): Reason {
  const named = (places: readonly number[]) => places.flatMap((at) => sheet.sections[at]?.id ?? []);
  const marks = (places: readonly number[]) => places.flatMap((at) => joints[at]?.id ?? []);
  switch (hindrance.kind) {
    case 'one-section':
      return { kind: 'one-section', sections: named([hindrance.section]) };
    case 'islands':
    case 'feeds':
      return { kind: hindrance.kind, sections: named(hindrance.sections) };
    case 'kept':
    case 'near':
      return { kind: hindrance.kind, joints: marks(hindrance.joints) };
    default:
      return hindrance;
  }
}
