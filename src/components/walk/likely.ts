// How likely something is, in a word beside a rounded figure: more than that nobody knows.
import type { Numbers, Say } from '../words/index.ts';

/** Where the words change, share of all that is still possible. Source: common practice, no source (judgement). */
const MOST = 0.6;
const LIKELY = 0.3;
/** Figures are rounded to this. */
const STEP = 0.05;

const wordFor = (chance: number): string => {
  if (chance >= MOST) return 'most';
  return chance >= LIKELY ? 'likely' : 'perhaps';
};

/** A chance of 0 to 1 as "likely, about 35 %"; what is next to nothing or next to certain is said so. */
export function likely(chance: number, say: Say, numbers: Numbers): string {
  const steps = Math.round(chance / STEP);
  if (steps < 1) return say('walk-share-least', { share: numbers.share(STEP) });
  if (steps >= 1 / STEP) return say('walk-share-sure', { share: numbers.share(1 - STEP) });
  return say(`walk-share-${wordFor(chance)}`, { share: numbers.share(steps * STEP) });
}
