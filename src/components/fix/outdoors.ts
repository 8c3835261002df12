// Steps for a layout that may stand in a garden: where a supply is handled, what mains voltage does in wet ground stands too.
import type { FixWords, StepWords } from '../words/index.ts';

/** What each step brings outdoors stands among its cautions, the worst first; where no step has any, the first step tells it all the same. */
export function outdoors(fix: FixWords, always: readonly string[]): FixWords {
  const met = fix.steps.some(({ outdoors: brings = [] }) => brings.length > 0);
  const steps = fix.steps.map((step, at): StepWords => {
    const more = step.outdoors ?? (met || at > 0 ? [] : always);
    return more.length === 0 ? step : { ...step, cautions: [...more, ...step.cautions] };
  });
  return { ...fix, steps };
}
