// The whole model of what can be wrong: signs, circumstances, causes, checks that read signs, and what people come with.
import type { Precondition, Seen, SignCheck, SignModel } from '../../../engine/index.ts';
import { ACTS_OF, FORBIDDEN_AFTER, intoAShort } from './acts.ts';
import { CAUSES } from './causes/index.ts';
import type { CheckId } from './checks/index.ts';
import { CHECKS } from './checks/index.ts';
import { CIRCUMSTANCES } from './circumstances.ts';
import { fittingOf } from './fitting.ts';
import type { OpeningId } from './openings.ts';
import { OPENINGS } from './openings.ts';
import { HARMS, PRICES } from './repairs.ts';
import {
  ANOTHER_PART,
  HAS_A_SECTION,
  ONE_PART,
  PARTS_CHECK,
  saysOfLayout,
  supposes,
  wordsNeed,
} from './second-part.ts';
import { CORE_SIGNS, SIGNS } from './signs.ts';

export { powerActsOf } from './acts.ts';
export type { FixClass } from './causes/index.ts';
export { CIRCUMSTANCES } from './circumstances.ts';
export { senselessFor } from './goes-off.ts';
export { OPENINGS } from './openings.ts';
export { isRepair, leavesATrace, needsLastLook } from './repairs.ts';
export { isDoneFirst, optionsFor, speaksOfAnotherPart } from './second-part.ts';

const actsOf = (id: CheckId): readonly string[] => [
  ...ACTS_OF[id],
  ...intoAShort(id),
  ...(wordsNeed(id) === undefined ? [] : [ANOTHER_PART]),
];

/** What each answer shows to hold, of safety and of the layout. */
function establishesOf({ id, options, establishes = {} }: SignCheck & { readonly id: CheckId }) {
  const layout = saysOfLayout(id, options);
  const all = new Set([...Object.keys(establishes), ...Object.keys(layout)]);
  return Object.fromEntries(
    [...all].map((option) => [option, [...(establishes[option] ?? []), ...(layout[option] ?? [])]]),
  );
}

const forbiddenAfter = (id: CheckId): Readonly<Record<string, readonly string[]>> =>
  id === PARTS_CHECK ? { [ONE_PART]: [ANOTHER_PART] } : (FORBIDDEN_AFTER[id] ?? {});

/** Whether somebody has told that the layout is one part. */
export const isOnePart = (answers: readonly Seen[]): boolean =>
  answers.findLast(({ check }) => check === PARTS_CHECK)?.option === ONE_PART;

export const SIGN_MODEL: SignModel = {
  signs: SIGNS,
  circumstances: CIRCUMSTANCES,
  causes: CAUSES,
  // Every check with what it makes people do, and with what an answer forbids from then on.
  checks: CHECKS.map((row) => ({
    ...row,
    needs: [...row.needs, ...supposes(row.id)],
    establishes: establishesOf(row),
    acts: actsOf(row.id),
    forbids: forbiddenAfter(row.id),
  })),
  openings: OPENINGS.map((row) => ({
    ...{ id: row.id, often: row.often, says: row.says, ...fittingOf(row.id, CHECKS) },
    // A browser unpacks them when they are first asked for.
    get shares() {
      return row.shares;
    },
  })),
  core: CORE_SIGNS.map(({ id }) => id),
  prices: PRICES,
  harms: HARMS,
};

/** Titles that leave nothing to find out: unplug, leave it unplugged, an electrician. */
export const ENDS_AT_ONCE = { 'house-protection-goes': 'house-protection', tingles: 'tingle' } as const;

/** Somebody whom no title fits begins with every cause. */
const NO_TITLE_FITS = 'none-of-these';

/** What a walk begins with. */
export type ComplaintId = Exclude<OpeningId, keyof typeof ENDS_AT_ONCE> | typeof NO_TITLE_FITS;

const isWalked = (id: OpeningId): id is Exclude<OpeningId, keyof typeof ENDS_AT_ONCE> =>
  !Object.hasOwn(ENDS_AT_ONCE, id);

export const COMPLAINT_IDS: readonly ComplaintId[] = [...OPENINGS.map(({ id }) => id).filter(isWalked), NO_TITLE_FITS];

/** Complaints of people who have two parts, since they say so themselves; with any other there may be one. */
export const TWO_PARTS: ReadonlySet<ComplaintId> = new Set<ComplaintId>([
  ...(['stops-at-gap', 'trips-at-gap', 'still-runs-past-gap', 'jerks-at-gap'] as const),
  ...(['shuts-down-after-swap', 'loop-trips'] as const),
]);

/** What a complaint says of the layout by itself. */
export function givenBy(complaint: ComplaintId): readonly Precondition[] {
  if (complaint === HAS_A_SECTION) return ['a-gap-there'];
  return TWO_PARTS.has(complaint) ? ['a-gap-there', 'several-parts'] : [];
}

/** Whether somebody has told of a second part with a unit of its own, by the complaint or by an answer. */
export const tellsOfParts = (complaint: ComplaintId, answers: readonly Seen[]): boolean =>
  !isOnePart(answers) &&
  (givenBy(complaint).includes('several-parts') ||
    answers.some(
      ({ check, option }) => own(CHECK_OF.get(check)?.establishes, option)?.includes('several-parts') === true,
    ));

/** Whether a complaint makes sense on a layout of one part: a reversing section does not make it several. */
export const fitsOnePart = (complaint: ComplaintId): boolean => !givenBy(complaint).includes('several-parts');

const CHECK_OF = new Map(SIGN_MODEL.checks.map((check) => [check.id, check]));

/** What is told of an option; a link may name one that every object has, such as "constructor". */
const own = <Value>(by: Readonly<Record<string, Value>> | undefined, option: string): Value | undefined =>
  by !== undefined && Object.hasOwn(by, option) ? by[option] : undefined;

/** Whether an answer shows that nothing is hot: such an answer stands in no address. */
export const showsSafety = (check: string, option: string): boolean =>
  own(CHECK_OF.get(check)?.establishes, option)?.includes('nothing-got-hot') === true;

/** The fix class that an answer ends in at once, undefined for all others. */
export const dangerOfAnswer = (check: string, option: string): string | undefined =>
  own(CHECK_OF.get(check)?.danger, option);

const COMES_AND_GOES: Readonly<Record<string, readonly string[]>> = {
  'when-it-happens': ['after-minutes', 'now-and-then', 'in-mid-run'],
};
const WAITED_FOR: ReadonlySet<string> = new Set<OpeningId>(['now-and-then', 'cuts-out-after-a-while']);

/** Whether a trouble comes and goes, by what was told: it is not gone because it is not there now. */
export const comesAndGoes = ({
  complaint,
  answers,
}: {
  readonly complaint: string;
  readonly answers: readonly Seen[];
}): boolean =>
  WAITED_FOR.has(complaint) || answers.some(({ check, option }) => COMES_AND_GOES[check]?.includes(option) === true);
