// The track of a plan: its districts in order, what keeps a plan from being one, and where both rails are gapped.
import type { End, Joint, Section, SectionTag, Sheet, SheetStage } from '../sheet/index.ts';
import { endOf } from '../sheet/index.ts';

/** What one feed of a unit reaches: a district, or where breakers part it, one of its sub-districts. */
export interface Fed {
  /** A1, A2 … for sub-districts. */
  readonly letter: string;
  readonly sections: readonly Section[];
  readonly metres: number;
}

export interface TrackDistrict extends Fed {
  /** A, B, C … in the order of the sheet. */
  readonly letter: string;
  readonly stage: SheetStage;
  /** Its sub-districts, each behind a breaker of its own, where gaps inside it part it; none where no breaker is told. */
  readonly parts: readonly Fed[];
  /** Of all traffic, 0 to 1. */
  readonly share: number;
  /** What is always on here besides trains, coaches and accessories, amperes. */
  readonly fixedAmps: number;
}

/** Why both rails are cut: what lies beyond turns its rails round, turns as a whole, hangs on another output, or on another unit. */
export type GapReason = 'programming' | 'reversing' | 'turntable' | 'district';

export interface PlanGap {
  /** Counted from 1 in the order of the sheet; what wires and test sheet call it. */
  readonly number: number;
  readonly joint: Joint;
  readonly from: Section;
  readonly to: Section;
  /** The letters of both sides; the same twice where it lies inside one district. Undefined for track of its own. */
  readonly districts: readonly [string | undefined, string | undefined];
  /** Two sub-districts of one unit that meet here. */
  readonly parts: readonly [string, string] | undefined;
  readonly why: GapReason;
  /** Where the same two sections meet at several joints: which of them. */
  readonly end: End | undefined;
  /** Rails that are still to be cut, at the most; somebody has to look where that is not known. None at a bridge, which has an air gap at each end. */
  readonly railsToCut: 0 | 1 | 2;
}

export type TrackProblem =
  | { readonly kind: 'no-sections' }
  | { readonly kind: 'no-stages' }
  | { readonly kind: 'too-many-districts'; readonly most: number }
  /** Several units, and nobody has said which track each feeds: two on one uncut track would feed each other. */
  | { readonly kind: 'not-divided'; readonly stages: readonly string[] }
  /** Units that no district of the division has: they stay off the track. Nothing to stop at. */
  | { readonly kind: 'unused'; readonly stages: readonly string[] }
  | { readonly kind: 'stage-twice' | 'stage-missing'; readonly district: string; readonly stage: string }
  /** Sections that no district has, that two have, or that the sheet does not have. */
  | { readonly kind: 'left-out' | 'in-two' | 'not-there'; readonly sections: readonly string[] }
  /** No track leads from one part of the district to the other: each needs feeders of its own. Nothing to stop at. */
  | { readonly kind: 'in-pieces'; readonly district: string; readonly sections: readonly string[] }
  /** A gap would be needed where rails cannot be cut. */
  | {
      readonly kind: 'cannot-gap';
      readonly joint: string;
      readonly sections: readonly [string, string];
      readonly why: Exclude<GapReason, 'turntable'>;
    };

export interface Track {
  readonly districts: readonly TrackDistrict[];
  readonly gaps: readonly PlanGap[];
  readonly problems: readonly TrackProblem[];
}

/** What is told beside the plan, and stops nothing. */
export const isOnlyNamed = ({ kind }: TrackProblem): boolean => kind === 'in-pieces' || kind === 'unused';

/** As many as the engine judges. Source: own-choice. */
const MOST_DISTRICTS = 12;
const LETTERS = 'ABCDEFGHIJKL';

export const has = ({ tags = [] }: Section, tag: SectionTag): boolean => tags.includes(tag);
const isApart = (section: Section): boolean => has(section, 'programming');

/** Reads the track of a sheet with the division chosen in it; without one, everything is one district of the only unit. */
export function trackOf(sheet: Sheet): Track {
  const byId = new Map(sheet.sections.map((section) => [section.id, section]));
  const chosen = chosenIn(sheet);
  const problems = problemsIn(sheet, chosen, byId);
  const districts = districtsOf(sheet, chosen, byId);
  const letterOf = new Map(
    districts.flatMap(({ letter, sections }) => sections.map(({ id }) => [id, letter] as const)),
  );
  const gaps = gapsOf(sheet, byId, letterOf, districts);
  return {
    districts,
    gaps,
    problems: [
      ...problems,
      ...gaps.flatMap(({ joint, from, to, why, railsToCut }): TrackProblem[] =>
        joint.gap === 'impossible' && railsToCut > 0 && why !== 'turntable'
          ? [{ kind: 'cannot-gap', joint: joint.id, sections: [from.id, to.id], why }]
          : [],
      ),
      ...districts.flatMap((district) => inPieces(district, sheet.joints)),
      ...unusedIn(sheet),
    ],
  };
}

const isDivided = ({ districts = [] }: Sheet): boolean => districts.length > 0;

function unusedIn(sheet: Sheet): TrackProblem[] {
  const used = new Set(sheet.districts?.map(({ stage }) => stage));
  const stages = sheet.stages.filter(({ id }) => !used.has(id)).map(({ id }) => id);
  return isDivided(sheet) && stages.length > 0 ? [{ kind: 'unused', stages }] : [];
}

interface Chosen {
  readonly stage: string;
  readonly sections: readonly string[];
}

function chosenIn({ districts, sections, stages }: Sheet): readonly Chosen[] {
  if (districts !== undefined && districts.length > 0) return districts;
  const [first] = stages;
  const all = sections.filter((section) => !isApart(section)).map(({ id }) => id);
  return first === undefined ? [] : [{ stage: first.id, sections: all }];
}

function problemsIn(sheet: Sheet, chosen: readonly Chosen[], byId: ReadonlyMap<string, Section>): TrackProblem[] {
  const { sections, stages } = sheet;
  if (sections.length === 0) return [{ kind: 'no-sections' }];
  if (stages.length === 0) return [{ kind: 'no-stages' }];
  if (!isDivided(sheet) && stages.length > 1) return [{ kind: 'not-divided', stages: stages.map(({ id }) => id) }];
  if (chosen.length > MOST_DISTRICTS) return [{ kind: 'too-many-districts', most: MOST_DISTRICTS }];
  const named = chosen.flatMap(({ sections: ids }) => ids);
  const lists: readonly (readonly ['left-out' | 'in-two' | 'not-there', readonly string[]])[] = [
    ['not-there', [...new Set(named.filter((id) => !byId.has(id)))]],
    ['in-two', [...new Set(named.filter((id, at) => named.indexOf(id) !== at))]],
    ['left-out', sections.filter((one) => !(isApart(one) || named.includes(one.id))).map(({ id }) => id)],
  ];
  return [
    ...chosen.flatMap(({ stage }, at): TrackProblem[] => {
      const district = LETTERS[at] ?? '';
      if (!stages.some(({ id }) => id === stage)) return [{ kind: 'stage-missing', district, stage }];
      return chosen.findIndex((one) => one.stage === stage) < at ? [{ kind: 'stage-twice', district, stage }] : [];
    }),
    ...lists.flatMap(([kind, ids]): TrackProblem[] => (ids.length > 0 ? [{ kind, sections: ids }] : [])),
  ];
}

const metresOf = (sections: readonly Section[]): number => sections.reduce((sum, { metres }) => sum + metres, 0);

function districtsOf(
  { stages, joints }: Sheet,
  chosen: readonly Chosen[],
  byId: ReadonlyMap<string, Section>,
): TrackDistrict[] {
  const found = chosen.slice(0, MOST_DISTRICTS).flatMap(({ stage: id, sections: ids }, at) => {
    const stage = stages.find((one) => one.id === id);
    // What hangs on the programming output draws nothing from the unit.
    const sections = ids.flatMap((one) => byId.get(one) ?? []).filter((one) => !isApart(one));
    return stage === undefined || sections.length === 0 ? [] : [{ letter: LETTERS[at] ?? '', stage, sections }];
  });
  const sum = (sections: readonly Section[], of: (section: Section) => number): number =>
    sections.reduce((total, section) => total + of(section), 0);
  const all = found.flatMap(({ sections }) => sections);
  // Nobody has told where trains run: as much as there is track.
  const told = sum(all, ({ traffic }) => traffic) > 0;
  const busy = ({ traffic, metres }: Section): number => (told ? traffic : metres);
  return found.map((one) => ({
    ...one,
    metres: metresOf(one.sections),
    parts: partsIn(one, joints),
    share: sum(one.sections, busy) / sum(all, busy),
    fixedAmps: sum(one.sections, ({ fixedAmps = 0 }) => fixedAmps),
  }));
}

/** The pieces into which the gaps that the sheet asks for part a district, if its unit has breakers behind it. */
function partsIn(
  { letter, stage, sections }: Pick<TrackDistrict, 'letter' | 'stage' | 'sections'>,
  joints: readonly Joint[],
): Fed[] {
  if ((stage.breakers ?? 0) === 0) return [];
  const byId = new Map(sections.map((section) => [section.id, section]));
  const kept = joints.filter(({ from, to, gap }) => {
    const [one, other] = [byId.get(from), byId.get(to)];
    return one !== undefined && other !== undefined && (gap !== 'required' || isEnd(one, other));
  });
  const pieces: Section[][] = [];
  for (const { id } of sections) {
    if (pieces.some((piece) => piece.some((one) => one.id === id))) continue;
    const reached = reachedFrom(id, kept);
    pieces.push(sections.filter((one) => reached.has(one.id)));
  }
  return pieces.length < 2
    ? []
    : pieces.map((piece, at) => ({ letter: `${letter}${at + 1}`, sections: piece, metres: metresOf(piece) }));
}

/** Where a loop or a bridge ends: it hangs on its unit by a device of its own. */
const isEnd = (one: Section, other: Section): boolean =>
  has(one, 'reversing') !== has(other, 'reversing') || has(one, 'turntable') || has(other, 'turntable');

/** What each feed of a unit reaches: the whole district, or each of its sub-districts. */
export const fedIn = (district: TrackDistrict): readonly Fed[] =>
  district.parts.length === 0 ? [district] : district.parts;

/** The district of a letter, its own or that of one of its sub-districts. */
export const districtOf = (letter: string, { districts }: Pick<Track, 'districts'>): TrackDistrict | undefined =>
  districts.find((district) => [district, ...district.parts].some((one) => one.letter === letter));

function gapsOf(
  { joints }: Sheet,
  byId: ReadonlyMap<string, Section>,
  letterOf: ReadonlyMap<string, string>,
  found: readonly TrackDistrict[],
): PlanGap[] {
  const gaps = joints.flatMap((joint) => {
    const [from, to] = [byId.get(joint.from), byId.get(joint.to)];
    if (from === undefined || to === undefined) return [];
    const districts = [letterOf.get(from.id), letterOf.get(to.id)] as const;
    const why = whyGapped(joint, from, to, districts);
    const district = districts[0] === districts[1] ? found.find(({ letter }) => letter === districts[0]) : undefined;
    const parts = why === 'district' && district !== undefined ? partsAt(from, to, district) : undefined;
    return why === undefined
      ? []
      : [{ joint, from, to, districts, parts, why, railsToCut: why === 'turntable' ? 0 : railsLeft(joint.cut) }];
  });
  return gaps.map((gap, at) => ({ ...gap, number: at + 1, end: endOf(gap.joint, { joints }) }));
}

function partsAt(from: Section, to: Section, { parts }: Pick<TrackDistrict, 'parts'>): PlanGap['parts'] {
  const [one, other] = [from, to].map(
    ({ id }) => parts.find(({ sections }) => sections.some((section) => section.id === id))?.letter,
  );
  return one === undefined || other === undefined || one === other ? undefined : [one, other];
}

/** Rails that are still to be cut: both where nobody has looked. */
function railsLeft(cut: Joint['cut']): PlanGap['railsToCut'] {
  if (cut === 'both') return 0;
  return cut === 'one' ? 1 : 2;
}

function whyGapped(joint: Joint, from: Section, to: Section, [near, far]: PlanGap['districts']): GapReason | undefined {
  const differ = (tag: SectionTag): boolean => has(from, tag) !== has(to, tag);
  if (differ('programming')) return 'programming';
  if (differ('reversing')) return 'reversing';
  if (has(from, 'turntable') || has(to, 'turntable')) return 'turntable';
  return near !== far || joint.gap === 'required' ? 'district' : undefined;
}

/** A reversing section and a bridge hang on their unit by a device of their own, so that only the rest is to be one piece. */
function inPieces({ letter, sections }: TrackDistrict, joints: readonly Joint[]): TrackProblem[] {
  const mine = sections.filter((section) => !(has(section, 'reversing') || has(section, 'turntable')));
  const inside = new Set(sections.map(({ id }) => id));
  const kept = joints.filter(({ from, to }) => inside.has(from) && inside.has(to));
  const [first] = mine;
  if (first === undefined) return [];
  const reached = reachedFrom(first.id, kept);
  const away = mine.filter(({ id }) => !reached.has(id)).map(({ id }) => id);
  return away.length === 0 ? [] : [{ kind: 'in-pieces', district: letter, sections: away }];
}

/** Every section that these joints lead to from one. */
function reachedFrom(start: string, joints: readonly Pick<Joint, 'from' | 'to'>[]): ReadonlySet<string> {
  const reached = new Set([start]);
  // A set that grows is walked to its end.
  for (const id of reached) {
    for (const { from, to } of joints) {
      if (from === id) reached.add(to);
      if (to === id) reached.add(from);
    }
  }
  return reached;
}

/** Sections of a tag that lie together, each run once. */
export function runsOf(
  { sections, joints }: { readonly sections: readonly Section[]; readonly joints: readonly Joint[] },
  tag: SectionTag,
): Section[][] {
  const tagged = sections.filter((section) => has(section, tag));
  const ids = new Set(tagged.map(({ id }) => id));
  const inside = joints.filter(({ from, to }) => ids.has(from) && ids.has(to));
  const told = new Set<string>();
  return tagged.flatMap(({ id }) => {
    if (told.has(id)) return [];
    const run = reachedFrom(id, inside);
    for (const one of run) told.add(one);
    return [tagged.filter((section) => run.has(section.id))];
  });
}

/** Gaps at which two units meet, at a loop and a bridge too: what is proven there is isolation, phase and volts. */
export const isBoundary = ({ why, districts: [near, far] }: Pick<PlanGap, 'why' | 'districts'>): boolean =>
  why !== 'programming' && near !== undefined && far !== undefined && near !== far;

/** What lies beyond a gap, and so what is unplugged to prove it dead. `inside`: the same unit feeds both sides, and nothing can be. */
export type Beyond = 'unit' | 'breaker' | 'loop' | 'bridge' | 'programming' | 'inside';

export function beyondOf(gap: Pick<PlanGap, 'why' | 'districts' | 'parts'>): Beyond {
  if (isBoundary(gap)) return 'unit';
  if (gap.parts !== undefined) return 'breaker';
  switch (gap.why) {
    case 'reversing':
      return 'loop';
    case 'turntable':
      return 'bridge';
    case 'programming':
      return 'programming';
    case 'district':
      return 'inside';
  }
}

/** Each side has a bus of its own, whose two wires somebody may have turned round. */
export const isFedApart = (gap: Pick<PlanGap, 'why' | 'districts' | 'parts'>): boolean =>
  beyondOf(gap) === 'unit' || beyondOf(gap) === 'breaker';

/** Two districts that meet at a gap: the old part keeps its power while the new one is tested. */
export interface Sides {
  readonly old: TrackDistrict;
  readonly new: TrackDistrict;
}

/** The command station’s side is the old part, else the district before the other in the order of the sheet; undefined where no two districts meet. */
export function sidesOf(
  gap: Pick<PlanGap, 'why' | 'districts'>,
  { districts }: Pick<Track, 'districts'>,
): Sides | undefined {
  const [first, second] = districts.filter(({ letter }) => gap.districts.includes(letter));
  if (first === undefined || second === undefined) return undefined;
  return second.stage.kind === 'station' ? { old: second, new: first } : { old: first, new: second };
}

/** Beyond it rails change sides while trains run, so that one look at their phase is not enough. */
export const isTurning = ({ why }: PlanGap): boolean => why === 'reversing' || why === 'turntable';
