// A sheet as the engine divides it: sections and joints by their places, stages by what they bear.
import type { DivisionProblem, Fleet } from '../../engine/index.ts';
import { bearsShare, capacity } from '../../engine/index.ts';
import { type Joint, type Sheet, stagesOf } from '../sheet/index.ts';

/** What a gap costs besides its awkwardness of 0 to 3: the work of cutting both rails and feeding both sides. Source: own-choice. */
const WORK = 1;
/** Where one rail is cut already, half of that work is done. Source: own-choice. */
const HALF_DONE = 0.5;
/** Track that has its gaps at both ends in any case, to whichever district it belongs. */
const GAPPED = ['reversing', 'turntable'] as const;

/** Whether the track asks for gaps that part no districts: round what is gapped in any case, or where somebody demands one. */
export const isGappedAnyway = ({ sections, joints }: Pick<Sheet, 'sections' | 'joints'>): boolean =>
  joints.some(({ gap }) => gap === 'required') ||
  sections.some(({ tags = [] }) => tags.some((tag) => tag === 'programming' || GAPPED.some((one) => one === tag)));

/** The sheet as a problem. Joints of sections that are not there are left away; `joints` says which are in it. */
export interface SheetProblem {
  readonly problem: DivisionProblem;
  readonly joints: readonly Joint[];
}

export function problemOf(sheet: Sheet, fleet: Fleet): SheetProblem {
  const { problem, joints } = divisionProblem(sheet);
  const place = new Map(sheet.sections.map(({ id }, at) => [id, at]));
  const placesOf = (ids: readonly string[] = []) => ids.map((id) => place.get(id)).filter((at) => at !== undefined);
  const stages = able(sheet, fleet).map((stage, at) => ({ ...stage, feeds: placesOf(sheet.stages[at]?.feeds) }));
  return { joints, problem: { ...problem, stages } };
}

/** Its track alone: whoever divides says into what. */
export function divisionProblem(sheet: Pick<Sheet, 'sections' | 'joints'>): SheetProblem {
  const place = new Map(sheet.sections.map(({ id }, at) => [id, at]));
  const placed = sheet.joints.flatMap((joint) => {
    const [a, b] = [place.get(joint.from), place.get(joint.to)];
    return a === undefined || b === undefined || a === b ? [] : [{ joint, a, b }];
  });
  const has = (at: number, tags: readonly string[]): boolean =>
    sheet.sections[at]?.tags?.some((tag) => tags.includes(tag)) === true;
  return {
    joints: placed.map(({ joint }) => joint),
    problem: {
      sections: sheet.sections.map(({ traffic, fixedAmps }) => ({ traffic, fixedAmps })),
      joints: placed.map(({ joint, a, b }) => {
        const ends = { either: has(a, GAPPED) || has(b, GAPPED), loop: has(a, ['reversing']) && has(b, ['reversing']) };
        return { a, b, cost: costOf(joint, ends.either), gap: gapOf(joint, ends) };
      }),
      stages: [],
    },
  };
}

/** What a new gap would cost here; nothing where there is one in any case. */
function costOf({ cut, gap, awkward }: Joint, gapped: boolean): number {
  if (cut === 'both' || (gap === 'required' && gapped)) return 0;
  return (WORK + awkward) * (cut === 'one' ? HALF_DONE : 1);
}

/**
 * A gap at the end of a reversing section or turntable is there in any case, and the stage of either side may feed it; any other one that
 * somebody demands parts two districts, or the same one by another way. A reversing section of several stretches is never cut inside.
 */
function gapOf(
  { gap }: Joint,
  { either, loop }: { readonly either: boolean; readonly loop: boolean },
): 'free' | 'kept' | 'cut' {
  if (gap === 'impossible' || loop) return 'kept';
  return gap === 'required' && !either ? 'cut' : 'free';
}

type Able = Pick<DivisionProblem['stages'][number], 'bears' | 'usable'>;

/** What each stage bears, and can give. Stages that can give the same share one function, so that the engine sees that they are alike. */
function able(sheet: Sheet, fleet: Fleet): readonly Able[] {
  const known = new Map<string, Able['bears']>();
  return stagesOf(sheet).map(({ stage, supply }) => {
    const key = JSON.stringify([stage, supply]);
    const gives = capacity(supply, stage);
    const bears = known.get(key) ?? bearsShare(fleet, gives);
    known.set(key, bears);
    return { bears, usable: gives.usable };
  });
}
