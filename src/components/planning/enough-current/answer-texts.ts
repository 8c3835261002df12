// What the answer to "Is my power enough?" says in sentences: verdict, headline, lead, tonight, and what a remedy is called and takes.
import type { Remedy } from '../../../engine/index.ts';
import type { Conclusion, Power, Reckoning } from '../../../wizards/enough-current/index.ts';
import type { Say } from '../../words/index.ts';
import type { Tone, WorkedOutProps } from '../frame/index.ts';

interface Found extends Pick<WorkedOutProps, 'say' | 'numbers' | 'fixes'> {
  readonly reckoning: Reckoning;
  readonly conclusion: Conclusion;
}

/** Outcomes that come before any verdict on the trains: each has its word. */
const BEFORE_THE_TRAINS: ReadonlySet<string> = new Set([
  'wrong-supply',
  'volts-too-low',
  'rail-voltage-too-high',
  'regulated-supply',
  'lower-trip-level',
  'supply-cannot-trip',
  'read-both-labels',
]);

/** The one word for it: a stop and unread labels come before any verdict on the trains. */
export function verdictOf({ reckoning, conclusion, say }: Found): { readonly tone: Tone; readonly word: string } {
  const { kind, outcome } = conclusion;
  const verdict = reckoning.power?.judgement.verdict;
  if (kind === 'stop') return { tone: 'stop', word: say('verdict-stop') };
  if (kind === 'labels-first' || verdict === undefined) return { tone: 'open', word: say('verdict-unknown') };
  if (BEFORE_THE_TRAINS.has(outcome)) return { tone: 'short', word: say(`verdict-of-${outcome}`) };
  if (kind === 'depends') return { tone: 'open', word: say('verdict-depends') };
  return { tone: verdict, word: say(verdict === 'tight' ? 'verdict-tight' : `verdict-surely-${verdict}`) };
}

export function headlineOf({ reckoning, conclusion, fixes, say }: Found): string {
  const { power, fleet } = reckoning;
  const { outcome, kind, deciding } = conclusion;
  if (power === undefined || BEFORE_THE_TRAINS.has(outcome)) return fixes[outcome]?.title ?? '';
  if (kind === 'depends' && deciding !== undefined)
    return say(`headline-depends-${deciding.unknown}`, { moving: fleet.moving });
  return trainsLine(reckoning, power, say);
}

/** What is said of the trains alone. */
export function trainsLine({ fleet }: Reckoning, { judgement, seen, capacity }: Power, say: Say): string {
  const { verdict } = judgement;
  const values = { moving: fleet.moving, by: say(`limited-by-${capacity.limitedBy}`) };
  if (verdict === 'short') return say(`headline-short-${seen}`, values);
  const standing = fleet.moving === 0 && verdict !== 'tight';
  return say(standing ? 'headline-standing-ample' : `headline-${verdict}`, values);
}

export function leadOf(found: Found): string {
  const { reckoning, conclusion, say, numbers } = found;
  const { power, labels, unit } = reckoning;
  const { chosen, mayMove, outcome, toBuy, tripBelow } = conclusion;
  const because = labels.kind === 'not-permitted' ? ` ${say(`because-not-permitted-${labels.because}`)}` : '';
  const [here = 0, there = 0] = chosen?.usable ?? [];
  const { muted = 0, parked = 0, moving = mayMove?.tight ?? 0 } = chosen?.counts ?? {};
  const way = variant(conclusion);
  const which = way === '' ? outcome : `${outcome}-${way}`;
  const lead = say(`lead-${which}`, {
    limit: numbers.amps(unit.limit),
    below: numbers.amps(tripBelow ?? unit.limit),
    usable: numbers.ampsExactly(power?.capacity.usable ?? 0),
    coaches: reckoning.fleet.coaches,
    rating: numbers.amps(toBuy?.amps ?? chosen?.ratings[0] ?? 0),
    supply: numbers.amps(power?.supply.amps ?? 0),
    volts: numbers.volts(toBuy?.volts ?? 0),
    high: numbers.volts(power?.rails.voltage.idle.to ?? 0),
    here: numbers.amps(here),
    there: numbers.amps(there),
    each: numbers.amps(here),
    districts: chosen?.usable.length ?? 1,
    moving,
    muted,
    parked,
  });
  return `${lead}${because}${chosen?.inGroups === true ? ` ${say('in-groups')}` : ''}`;
}

/** Which of the sentences of an outcome fits. */
function variant({ outcome, kind, toBuy, chosen }: Conclusion): string {
  if (outcome === 'power-is-enough') return kind === 'depends' ? 'open' : '';
  if (outcome === 'supply-cannot-trip') return toBuy === undefined ? 'lower' : '';
  if (outcome === 'fewer-moving' && chosen === undefined) return 'none';
  if (outcome === 'fewer-moving' && chosen?.counts.parked !== undefined) return 'parked';
  if (outcome !== 'mute-and-park') return '';
  if (chosen?.counts.muted === undefined) return 'park';
  return chosen.counts.parked === undefined ? 'mute' : '';
}

/** What can be run with what is there. With a label unread only what has run before. */
export function tonightOf({ reckoning, conclusion, say }: Found): string {
  const { kind, outcome, mayMove } = conclusion;
  if (kind === 'labels-first') return say('tonight-labels');
  if (outcome === 'rail-voltage-too-high' || outcome === 'regulated-supply') return say('tonight-measure');
  const most = mayMove?.tight ?? 0;
  const beside = outcome === 'supply-cannot-trip' || outcome === 'lower-trip-level' ? ` ${say('tonight-beside')}` : '';
  if (most < 1 && reckoning.fleet.moving > 0) return `${say('tonight-none')}${beside}`;
  const all = most >= reckoning.fleet.moving;
  return `${say(all ? 'tonight-all' : 'tonight', { moving: most })}${beside}`;
}

/** Its short name with what is to be got or counted. */
export function remedyName(remedy: Remedy, { fixes, say, numbers }: Pick<Found, 'fixes' | 'say' | 'numbers'>): string {
  const { counts, ratings } = remedy;
  const short = fixes[remedy.id]?.short ?? remedy.id;
  const pieces = counts.moving ?? counts.coaches ?? counts.parked ?? counts.muted;
  if (ratings.length === 0) return pieces === undefined ? short : say('remedy-counted', { short, n: pieces });
  const supplies =
    ratings.length > 2
      ? say('ratings-each', { n: ratings.length, amps: numbers.amps(ratings[0] ?? 0) })
      : ratings.map((amps) => numbers.amps(amps)).join(' + ');
  return say('remedy-supplies', { short, supplies });
}
