// What the answer to "Where do I divide the layout?" and its trial say in a word and a headline.
import type { PlacedWay, ShareFound } from '../../../wizards/share-out/index.ts';
import { BREAKERS } from '../../../wizards/share-out/index.ts';
import type { Numbers, Say } from '../../words/index.ts';
import { outOfReachSaid, type Tone } from '../frame/index.ts';

/** Whether the verdict is that nothing has to be divided. */
export const needsNone = ({ alone, outcome }: ShareFound): boolean => alone !== undefined && outcome !== BREAKERS;

export function headlineOf(found: ShareFound, say: Say): string {
  const { outcome, ways, loopGaps, loops, labelsRead, stop } = found;
  if (needsNone(found)) return say(labelsRead ? 'share-headline-alone' : 'share-headline-alone-unread');
  const n = ways[0]?.gaps.length ?? 0;
  if (outcome === 'divide-the-track' && loopGaps.length > 0) return say('share-headline-and-loop', { n, loops });
  return say(`share-headline-${outcome}`, { n, unit: say(`share-${stop?.unit?.unit ?? 'booster'}`) });
}

export function verdictOf(found: ShareFound, say: Say): { tone: Tone; word: string } {
  const { outcome, stop, ways, labelsRead, alone } = found;
  if (stop !== undefined) return { tone: 'stop', word: say('verdict-stop') };
  if (outcome === 'power-is-enough') return { tone: 'open', word: say('share-verdict-none') };
  const asked = ways[0]?.asked;
  if (asked === undefined || outcome === 'more-districts') return { tone: 'short', word: say('verdict-short') };
  if (!labelsRead) return { tone: 'open', word: say('verdict-unknown') };
  if (alone !== undefined) {
    const { verdict } = alone;
    return verdict === 'unknown'
      ? { tone: 'open', word: say('verdict-unknown') }
      : { tone: verdict, word: say(`verdict-${verdict}`) };
  }
  const tight = asked.some(({ verdict }) => verdict === 'tight');
  return { tone: tight ? 'tight' : 'enough', word: say(tight ? 'verdict-tight' : 'verdict-enough') };
}

/** What a unit with its supply can give; while a label is unread that holds only if the labels say so. */
export function givesSaid({ usable, verdict }: PlacedWay['asked'][number], say: Say, numbers: Numbers): string {
  const gives = numbers.amps(usable);
  return verdict === 'unknown' ? say('share-if-read', { gives }) : gives;
}

/** Who feeds the part at this place: units, or breakers behind one. */
export function unitName(at: number, { outcome, ways }: ShareFound, say: Say): string {
  if (outcome === BREAKERS) return say('share-breaker', { n: at + 1 });
  if (at === 0) return say('share-station');
  return (ways[0]?.districts.length ?? 0) > 2 ? say('share-booster-n', { n: at }) : say('share-booster');
}

/** What each part draws in a trial: the table of the answer stays as it is. */
export const partsTried = (found: ShareFound, say: Say, numbers: Numbers): string[] =>
  (found.ways[0]?.asked ?? []).map((asked, at) =>
    say('share-trial', {
      part: unitName(at, found, say),
      draws: numbers.amps(asked.often),
      gives: givesSaid(asked, say, numbers),
    }),
  );

/** Where what a unit can give comes from. */
export const givesHow = (found: ShareFound, say: Say, numbers: Numbers): string[] =>
  found.units.map(({ fromSupply, ownUse, limit, limitAssumed, usable }, at) =>
    say('share-how', {
      unit: say(at === 0 ? 'share-station' : 'share-booster'),
      supply: numbers.amps(fromSupply),
      own: numbers.ampsExactly(ownUse),
      limit: say(limitAssumed ? 'share-how-assumed' : 'share-how-told', { limit: numbers.amps(limit) }),
      usable: numbers.amps(usable, 'at-most'),
    }),
  );

const LABELS: Readonly<Partial<Record<ShareFound['outcome'], string>>> = {
  [BREAKERS]: 'share-labels-of-one',
  'more-districts': 'share-labels-of-all',
};

/** Units that may not switch off a short, said below the first act: its steps begin with the labels. */
export const mayNotTripSaid = ({ mayNotTrip }: ShareFound, say: Say, numbers: Numbers): string[] =>
  mayNotTrip.map(({ unit, most, trip }) =>
    say('share-may-not-trip', {
      unit: say(`share-${unit}`),
      most: numbers.amps(most, 'at-most'),
      trip: numbers.amps(trip),
    }),
  );

/** What may not be read past: labels that are unread, and rails that stay below what they are set to. */
export const warningsOf = ({ labelsRead, outcome, outOfReach }: ShareFound, say: Say, numbers: Numbers): string[] => [
  ...(labelsRead && outcome !== 'more-districts' ? [] : [say(LABELS[outcome] ?? 'share-labels-first')]),
  ...outOfReach.map((one) => outOfReachSaid(one, say, numbers)),
];
