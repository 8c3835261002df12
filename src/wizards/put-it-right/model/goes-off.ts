// Questions that make no sense for a trouble, by what people came with and told: about going off where nothing goes off, about the lights where
// the unit goes off and takes them with it, about the number of trains where one locomotive alone is meant. They are only not asked; whoever tells such a thing is heard. The model's rows know nothing of it.
import type { Seen } from '../../../engine/index.ts';
import type { CheckId } from './checks/index.ts';
import type { OpeningId } from './openings.ts';
import { OPENINGS } from './openings.ts';
import { gapQuestions, ONE_PART, PARTS_CHECK } from './second-part.ts';
import type { Options, Supposed } from './supposed.ts';
import { SUPPOSED } from './supposed.ts';

/** Checks whose words need something that went off. */
export const ABOUT_GOING_OFF = ['what-goes-dark', 'how-it-comes-back', 'dim-or-snap'] as const satisfies CheckId[];
/** What came before it went off. */
export const ABOUT_WHAT_CAME_BEFORE = ['dim-or-snap'] as const satisfies CheckId[];
/** Checks that spread or thin out trains, to see whether they are too many. */
export const ABOUT_MANY_TRAINS = ['halve-the-trains', 'move-trains-over'] as const satisfies CheckId[];

/**
 * What the lights of a train did. Where the unit goes off they go out with it, whatever made it go off; and some answers have said it already.
 */
export const ABOUT_LIGHTS = ['lights-then'] as const satisfies CheckId[];

/** Troubles whose words say what the lights did, or that are none of a train. */
const SAY_LIGHTS: Options = {
  'what-happens': [
    ...(['stops-dark', 'stops-lit', 'slow-or-dim', 'fast-or-bright'] as const),
    ...(['accessories-wrong', 'shown-occupied', 'gets-hot', 'cannot-be-read', 'house-fuse', 'tingle'] as const),
    'acts-otherwise',
    'wheels-spin',
    // Nothing has run yet.
    'just-testing',
  ],
};
/** Troubles of a title in which the unit goes off, that are none of a train, or that say what the lights do. */
const LIGHTS_TELL_NOTHING: ReadonlySet<string> = new Set([
  'stops-lit',
  ...(['switches-off', 'only-shown', 'accessories-wrong', 'shown-occupied', 'gets-hot', 'cannot-be-read'] as const),
  ...(['house-fuse', 'tingle'] as const),
]);

/**
 * Troubles in which nothing goes off. A train that stops dark is none: behind it may be a unit that has gone off. Nor is a jerk: behind it
 * may be one that goes off for a blink.
 */
const STAYS_ON: ReadonlySet<string> = new Set([
  ...(['stops-lit', 'slow-or-dim', 'fast-or-bright', 'runs-by-itself', 'accessories-wrong', 'gets-hot'] as const),
  ...(['shown-occupied', 'handhelds-dead', 'cannot-be-read', 'hums', 'acts-otherwise', 'wheels-spin'] as const),
]);

/** Complaints whose title names these troubles and no other. */
const titled = (troubles: ReadonlySet<string>): ReadonlySet<string> =>
  new Set<OpeningId>(
    OPENINGS.filter(({ says }) => 'trouble' in says && says.trouble.every((one) => troubles.has(one))).map(
      ({ id }) => id,
    ),
  );

/** Complaints that say so by their title. */
export const NOTHING_GOES_OFF: ReadonlySet<string> = titled(STAYS_ON);
/** Complaints in which the lights of a train tell nothing; where the wrong one trips, one trips. */
export const WITHOUT_LIGHTS: ReadonlySet<string> = new Set([
  ...titled(LIGHTS_TELL_NOTHING),
  'wrong-one-trips' satisfies OpeningId,
]);

const ONE_LOCOMOTIVE = 'one-locomotive-only' satisfies OpeningId;

/** Answers that say that nothing goes off. Of one locomotive alone, what is wrong with it says so too. */
const SAY_STAYS_ON: Options = {
  'what-goes-dark': ['nothing-goes-off'],
  'how-it-comes-back': ['never-off'],
  'what-happens': [...STAYS_ON],
  // What a unit says in place of a short.
  'booster-lamp': ['no-signal', 'stopped'],
};
const OF_ONE: Options = {
  'one-or-all': ['deaf', 'runs-badly', 'another-number', 'runs-off', 'lights-only', 'acts-otherwise'],
};

/** Troubles that have no place on the track: of one locomotive, of handhelds, of turnouts. */
const OF_NO_PLACE: Options = {
  'what-happens': ['acts-otherwise', 'cannot-be-read', 'handhelds-dead', 'accessories-wrong', 'shown-occupied'],
  'one-or-all': ['deaf', 'another-number', 'runs-off', 'lights-only', 'acts-otherwise', 'shorts-alone'],
};
/** Answers that say that it is one locomotive. */
const OF_ONE_VEHICLE: Options = {
  'one-or-all': [...(OF_ONE['one-or-all'] ?? []), 'shorts-alone', 'stops-later'],
};
/** What that has said already. */
export const ABOUT_WHICH = ['which-vehicles'] as const satisfies CheckId[];
/** Checks that bring something else to the place of the trouble. */
export const ABOUT_A_PLACE = ['another-one-there', 'clean-a-stretch'] as const satisfies CheckId[];

/** Answers by which nothing ran before it went off: then nothing can have got slower or dimmer first. */
const SAY_NOTHING_RAN: Options = {
  'when-it-happens': ['all-the-time', 'from-switch-on', 'when-set-on', 'after-a-short'],
  'which-vehicles': ['none-needed'],
  'what-happens': ['just-testing'],
};
/** Complaints whose title says so. */
export const NOTHING_RAN: ReadonlySet<string> = new Set<OpeningId>(['trips-at-power-on', 'trips-when-set-on']);

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
  const goesOff = told(SAY_GOES_OFF);
  return new Set<string>([
    ...(staysOn && !goesOff ? ABOUT_GOING_OFF : []),
    ...(NOTHING_RAN.has(complaint) || told(SAY_NOTHING_RAN) ? ABOUT_WHAT_CAME_BEFORE : []),
    ...(WITHOUT_LIGHTS.has(complaint) || goesOff || told(SAY_LIGHTS) ? ABOUT_LIGHTS : []),
    ...(isOne ? ABOUT_MANY_TRAINS : []),
    ...(told(OF_NO_PLACE) ? ABOUT_A_PLACE : []),
    ...(told(OF_ONE_VEHICLE) ? ABOUT_WHICH : []),
    ...gapQuestions(complaint, told({ [PARTS_CHECK]: [ONE_PART] })),
    ...SUPPOSED.flatMap((one) => (isExcluded(one, complaint, told) ? one.checks : [])),
  ]);
}

function isExcluded(of: Supposed, complaint: string, told: (options: Options) => boolean): boolean {
  const byTitle = of.titles?.some((one) => one === complaint) === true;
  const byOthers = of.allBut?.every((one) => one !== complaint) === true;
  const { unless = {} } = of;
  return (byTitle || byOthers || told(of.told)) && !told(unless);
}
