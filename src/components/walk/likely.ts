// How likely something is, in a word beside a rounded figure: more than that nobody knows.
import { toldShare } from '../../engine/index.ts';
import type { Numbers, Say } from '../words/index.ts';

/** A chance of 0 to 1 as "likely, about 35 %"; what is next to nothing or next to certain is said so. */
export function likely(chance: number, say: Say, numbers: Numbers): string {
  const { word, share } = toldShare(chance);
  return say(`walk-share-${word}`, { share: numbers.share(share) });
}
