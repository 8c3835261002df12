// What can be behind a complaint, and what is still possible after what was seen: what the pages list.
import type { CheckRow, Evidence, HowOften, Posterior } from '../../engine/index.ts';
import { evidence, howOften, posterior, WORTH_SHOWING } from '../../engine/index.ts';
import type { ComplaintId } from './faults/index.ts';
import { checksAsked, FAULT_MODEL } from './faults/index.ts';
import type { WalkContext } from './states.ts';
import { compiledFor } from './step.ts';

export interface CauseOf {
  readonly id: string;
  readonly fixClass: string;
  readonly often: HowOften;
}

/** The causes that a complaint can have, the likeliest first. */
export function causesOf(complaint: ComplaintId): CauseOf[] {
  const priors = FAULT_MODEL.complaints.find(({ id }) => id === complaint)?.priors ?? {};
  const total = Object.values(priors).reduce((sum, weight) => sum + weight, 0);
  const classOf = new Map(FAULT_MODEL.faults.map(({ id, fixClass }) => [id, fixClass]));
  return Object.entries(priors)
    .sort(([, a], [, b]) => b - a)
    .flatMap(([id, weight]) => {
      const fixClass = classOf.get(id);
      return fixClass === undefined ? [] : [{ id, fixClass, often: howOften(weight / total) }];
    });
}

/** The checks of a complaint that tell at least one of its causes from the others. */
export function checksThatTell(complaint: ComplaintId): readonly CheckRow[] {
  const known = new Set(causesOf(complaint).map(({ id }) => id));
  return checksAsked(complaint).filter(({ when }) => Object.keys(when).some((id) => known.has(id)));
}

const MOST_SHOWN = 5;
const MOST_HANDED_ON = 6;

export interface PossibleNow extends Pick<Posterior, 'ruledOut'> {
  /** Repairs that may still be needed, the likeliest first; and how many more there are. */
  readonly shown: Posterior['findings'];
  readonly more: number;
}

/** What is still possible, and what fell out by which answer. */
export function possibleNow({ complaint, answers, tried }: WalkContext): PossibleNow {
  const { findings, ruledOut } = posterior(compiledFor(complaint), answers, tried);
  const possible = findings.filter(({ chance }) => chance >= WORTH_SHOWING);
  const shown = possible.slice(0, MOST_SHOWN);
  return { shown, more: possible.length - shown.length, ruledOut };
}

/** The causes that are left when the walk hands on, with what speaks for and against each. */
export function handedOn({ complaint, answers, tried }: WalkContext): readonly Evidence[] {
  return evidence(compiledFor(complaint), answers, tried).slice(0, MOST_HANDED_ON);
}
