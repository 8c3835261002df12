// Questions that make no sense for a trouble, by what people came with and told: about going off where nothing goes off, about the number of
// trains where one locomotive alone is meant. They are only not asked; whoever tells such a thing is heard. The model's rows know nothing of it.
import type { Seen } from '../../../engine/index.ts';
import type { CheckId } from './checks/index.ts';
import type { OpeningId } from './openings.ts';
import { OPENINGS } from './openings.ts';

/** Checks whose words need something that went off. */
export const ABOUT_GOING_OFF = ['what-goes-dark', 'how-it-comes-back', 'dim-or-snap'] as const satisfies CheckId[];
/** Checks that spread or thin out trains, to see whether they are too many. */
export const ABOUT_MANY_TRAINS = ['halve-the-trains', 'move-trains-over'] as const satisfies CheckId[];

/**
 * Troubles in which nothing goes off. A train that stops dark is none: behind it may be a unit that has gone off. Nor is a jerk: behind it
 * may be one that goes off for a blink.
 */
const STAYS_ON: ReadonlySet<string> = new Set([
  ...(['stops-lit', 'slow-or-dim', 'fast-or-bright', 'runs-by-itself', 'accessories-wrong', 'gets-hot'] as const),
  ...(['shown-occupied', 'handhelds-dead', 'cannot-be-read', 'hums'] as const),
]);

/** Complaints that say so by their title. */
export const NOTHING_GOES_OFF: ReadonlySet<string> = new Set<OpeningId>(
  OPENINGS.filter(({ says }) => 'trouble' in says && says.trouble.every((one) => STAYS_ON.has(one))).map(
    ({ id }) => id,
  ),
);

const ONE_LOCOMOTIVE = 'one-locomotive-only' satisfies OpeningId;

type Options = Readonly<Partial<Record<CheckId, readonly string[]>>>;

/** Answers that say that nothing goes off. Of one locomotive alone, what is wrong with it says so too. */
const SAY_STAYS_ON: Options = {
  'what-goes-dark': ['nothing-goes-off'],
  'how-it-comes-back': ['never-off'],
  'what-happens': [...STAYS_ON],
};
const OF_ONE: Options = { 'one-or-all': ['deaf', 'runs-badly', 'another-number', 'runs-off', 'lights-only'] };

/** Answers that say that something does, whatever else was told. */
const SAY_GOES_OFF: Options = {
  'what-goes-dark': ['only-that-part', 'everything-at-once', 'one-after-the-other'],
  'how-it-comes-back': ['blink', 'seconds', 'minutes', 'button', 'when-removed', 'stays'],
  'what-happens': ['switches-off'],
  'when-it-happens': ['from-switch-on', 'after-a-short'],
  'one-or-all': ['shorts-alone'],
  'last-change': ['a-short'],
};

const has = <Id extends string>(options: Readonly<Partial<Record<Id, readonly string[]>>>, id: string): id is Id =>
  Object.hasOwn(options, id);
const isAmong = (options: Options, { check, option }: Seen): boolean =>
  has(options, check) && options[check]?.includes(option) === true;

/** The checks that are not asked: their words suppose what is not so. */
export function senselessFor(complaint: string, answers: readonly Seen[]): ReadonlySet<string> {
  const isOne = complaint === ONE_LOCOMOTIVE;
  const told = (options: Options): boolean => answers.some((seen) => isAmong(options, seen));
  const staysOn = NOTHING_GOES_OFF.has(complaint) || told(SAY_STAYS_ON) || (isOne && told(OF_ONE));
  return new Set<string>([
    ...(staysOn && !told(SAY_GOES_OFF) ? ABOUT_GOING_OFF : []),
    ...(isOne ? ABOUT_MANY_TRAINS : []),
  ]);
}
