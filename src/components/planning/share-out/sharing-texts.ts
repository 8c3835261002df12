// What the answer to "Where do I divide the layout?" and its trial say in a word and a headline.
import type { PlacedWay, ShareFound } from '../../../wizards/share-out/index.ts';
import type { Numbers, Say } from '../../words/index.ts';
import { outOfReachSaid, type Tone } from '../frame/index.ts';

export const headlineOf = ({ outcome, ways: [best] }: ShareFound, say: Say): string =>
  say(`share-headline-${outcome}`, { n: best?.gaps.length ?? 0 });

export function verdictOf({ outcome, stop, ways, labelsRead }: ShareFound, say: Say): { tone: Tone; word: string } {
  if (stop !== undefined) return { tone: 'stop', word: say('verdict-stop') };
  if (outcome === 'power-is-enough') return { tone: 'open', word: say('share-verdict-none') };
  const asked = ways[0]?.asked;
  if (asked === undefined) return { tone: 'short', word: say('verdict-short') };
  if (!labelsRead) return { tone: 'open', word: say('verdict-unknown') };
  const tight = asked.some(({ verdict }) => verdict === 'tight');
  return { tone: tight ? 'tight' : 'enough', word: say(tight ? 'verdict-tight' : 'verdict-enough') };
}

/** What a unit with its supply can give; while a label is unread that holds only if the labels say so. */
export function givesSaid({ usable, verdict }: PlacedWay['asked'][number], say: Say, numbers: Numbers): string {
  const gives = numbers.amps(usable);
  return verdict === 'unknown' ? say('share-if-read', { gives }) : gives;
}

/** Who feeds the part at this place. */
export const unitName = (at: number, say: Say): string => say(at === 0 ? 'share-station' : 'share-booster');

/** What may not be read past: labels that are unread, and rails that stay below what they are set to. */
export const warningsOf = ({ labelsRead, outOfReach }: ShareFound, say: Say, numbers: Numbers): string[] => [
  ...(labelsRead ? [] : [say('share-labels-first')]),
  ...outOfReach.map((one) => outOfReachSaid(one, say, numbers)),
];
