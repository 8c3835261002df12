// Rails that stay below what they are set to.
import type { OutOfReach } from '../../../engine/index.ts';
import type { Numbers, Say } from '../../words/index.ts';

/** Of the unit that is named, where there are two. */
export const outOfReachSaid = (
  { unit, set, highest }: OutOfReach & { readonly unit?: 'station' | 'booster' },
  say: Say,
  numbers: Numbers,
): string =>
  say(unit === undefined ? 'rails-out-of-reach' : `rails-out-of-reach-${unit}`, {
    set: numbers.volts(set),
    high: numbers.volts(highest),
  });
