// What can be behind a complaint, and what is still possible after what was seen: what the pages list.
import type { Conflict, Evidence, HowOften, InParts, Posterior } from '../../engine/index.ts';
import {
  atOnce,
  howOften,
  signConflictsInParts,
  signEvidence,
  signPosterior,
  signPosteriorInParts,
  tellsApart,
  WORTH_SHOWING,
} from '../../engine/index.ts';
import type { ComplaintId } from './model/index.ts';
import { OPENINGS, SIGN_MODEL } from './model/index.ts';
import type { Known } from './step.ts';
import { stateOf, walkModelNow } from './step.ts';

export interface CauseOf {
  readonly id: string;
  readonly fixClass: string;
  readonly often: HowOften;
}

/** The causes that a complaint mostly has, the likeliest first. One that fits no title has those of all. */
export function causesOf(complaint: ComplaintId): CauseOf[] {
  const shares: Readonly<Record<string, number>> = OPENINGS.find(({ id }) => id === complaint)?.shares ?? overall();
  const total = Object.values(shares).reduce((sum, weight) => sum + weight, 0);
  const classOf = new Map(SIGN_MODEL.causes.map(({ id, fixClass }) => [id, fixClass]));
  return Object.entries(shares)
    .sort(([, a], [, b]) => b - a)
    .flatMap(([id, weight]) => {
      const fixClass = classOf.get(id);
      return fixClass === undefined ? [] : [{ id, fixClass, often: howOften(weight / total) }];
    });
}

const overall = (): Record<string, number> => {
  const { compiled, overall: shares } = walkModelNow();
  return Object.fromEntries(compiled.faults.map(({ id }, at) => [id, shares[at] ?? 0]));
};

/** Most causes that are shown as still possible, and handed on. Source: own-choice. */
const MOST_SHOWN = 5;
const MOST_HANDED_ON = 6;

export interface PossibleNow extends Pick<Posterior, 'ruledOut'> {
  /** Repairs that may still be needed, the likeliest first; and how many more there are. */
  readonly shown: Posterior['findings'];
  readonly more: number;
}

const POSSIBLE = new WeakMap<Known, PossibleNow>();
const CONFLICTS = new WeakMap<Known, readonly Conflict[]>();

/** What is still possible, and what fell out by which answer. */
export const possibleNow = (known: Known): PossibleNow => atOnce(possibleInParts(known));

function* possibleInParts(known: Known): InParts<PossibleNow> {
  const before = POSSIBLE.get(known);
  if (before !== undefined) return before;
  const { findings, ruledOut } = yield* signPosteriorInParts(walkModelNow(), stateOf(known));
  const possible = findings.filter(({ chance }) => chance >= WORTH_SHOWING);
  const shown = possible.slice(0, MOST_SHOWN);
  const now = { shown, more: possible.length - shown.length, ruledOut };
  POSSIBLE.set(known, now);
  return now;
}

/** Reckons what `possibleNow` and `conflictIn` say, a part at a time: then they have it. */
export function* besideInParts(known: Known): InParts<void> {
  yield* possibleInParts(known);
  yield* conflictsInParts(known);
}

/**
 * The causes that are left when the walk hands on, with what speaks for and against each. A repair that could harm under another cause that is
 * still possible stands after all others, however likely it is: people try the first.
 */
export function handedOn(known: Known): readonly Evidence[] {
  const left = signEvidence(walkModelNow(), stateOf(known));
  const { causes } = signPosterior(walkModelNow(), stateOf(known));
  const chanceOf = new Map(causes.map(({ fault, chance }) => [fault, chance]));
  const couldHarm = ({ fixClass }: Evidence): boolean =>
    (SIGN_MODEL.harms?.[fixClass] ?? []).some((cause) => (chanceOf.get(cause) ?? 0) > HARM_POSSIBLE);
  const likeliest = left.slice(0, MOST_HANDED_ON);
  return [...likeliest.filter((one) => !couldHarm(one)), ...likeliest.filter(couldHarm)];
}

/** The chance of each repair that may be needed, 0 to 1: causes with the same repair count together. */
export const chancesOfRepairs = (known: Known): ReadonlyMap<string, number> =>
  new Map(
    signPosterior(walkModelNow(), stateOf(known)).findings.map(({ fixClass, chance }) => [fixClass, chance] as const),
  );

/** From this chance on a cause is possible enough that nothing which harms under it comes first. Source: from-memory (judgement). */
const HARM_POSSIBLE = 0.005;

/** The check that tells these repairs apart best, though its tool may not be at hand; undefined where none does. */
export const checkThatTells = (known: Known, fixClasses: readonly string[]): string | undefined =>
  tellsApart(walkModelNow(), stateOf(known), fixClasses);

/** Two answers that hardly go together, the worst pair; undefined where all agree. */
export const conflictIn = (known: Known): Conflict | undefined => atOnce(conflictsInParts(known))[0];

function* conflictsInParts(known: Known): InParts<readonly Conflict[]> {
  const found = CONFLICTS.get(known) ?? (yield* signConflictsInParts(walkModelNow(), stateOf(known)));
  CONFLICTS.set(known, found);
  return found;
}
