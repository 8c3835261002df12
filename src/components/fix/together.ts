// Several fixes done in one go: what is looked at before everything is switched off first, then that once, then the work of each, and
// what all of them measure at the end once, at the end.
import type { FixWords, StepWords } from '../words/index.ts';

/** `fixes` in the order of the work, at least one; `said`: what they are called together, and what is said of all of them. */
export function together(
  fixes: readonly FixWords[],
  said: Pick<FixWords, 'title' | 'next' | 'effort'>,
): FixWords | undefined {
  const [first, ...more] = fixes;
  if (first === undefined || more.length === 0) return first;
  const off = first.steps
    .map(keyOf)
    .find((key) => more.every(({ steps }) => steps.some((step) => keyOf(step) === key)));
  const split = fixes.map(({ steps }) => {
    const at = steps.findIndex((step) => keyOf(step) === off);
    return { before: steps.slice(0, Math.max(0, at)), from: steps.slice(Math.max(0, at)) };
  });
  // A job at the end of a fix proves it, so it waits for all the others.
  const closing = fixes.flatMap(({ steps }) => steps.slice(-1).filter(({ job }) => job !== undefined));
  const work = [...split.flatMap(({ from }) => from.filter((step) => !closing.includes(step))), ...closing];
  const places = work.map(keyOf);
  const once = work.filter((step, at) => {
    const key = keyOf(step);
    return at === (key === off ? places.indexOf(key) : places.lastIndexOf(key));
  });
  const proof = fixes.findLast(({ steps }) => steps.some(({ job }) => job !== undefined)) ?? fixes.at(-1) ?? first;
  return {
    ...first,
    ...said,
    before: [...new Set(fixes.flatMap(({ before }) => before))],
    steps: [...split.flatMap(({ before }) => before), ...once],
    verify: proof.verify,
  };
}

/** A job is one however it is introduced. */
const keyOf = ({ do: act, job }: StepWords): string => job?.href ?? act;
