// Steps for a layout that may stand in a garden: where a supply is handled, what mains voltage does in wet ground stands too.
import type { FixWords, StepWords } from '../words/index.ts';

/**
 * What each step brings outdoors stands among its cautions, the worst first. It all stands at the first step with the power on too, which
 * may come before any supply is handled; where no step handles one, the first step tells it all the same.
 */
export function outdoors(fix: FixWords, always: readonly string[]): FixWords {
  const handled = fix.steps.findIndex(({ outdoors: brings = [] }) => brings.length > 0);
  const live = fix.steps.findIndex((step) => step.live === true);
  const first = handled < 0 ? 0 : live;
  const steps = fix.steps.map((step, at): StepWords => {
    const more = at === first && (handled < 0 || at < handled) ? always : (step.outdoors ?? []);
    return more.length === 0 ? step : { ...step, cautions: [...more, ...step.cautions] };
  });
  return { ...fix, steps };
}
