// What the words of a check suppose of the trouble: of whoever came with something else, or told so, it is not asked. It is only not asked;
// whoever tells such a thing is heard. The model's rows know nothing of it.
import type { CheckId } from './checks/index.ts';
import type { OpeningId } from './openings.ts';

/** Check id to answers of it. */
export type Options = Readonly<Partial<Record<CheckId, readonly string[]>>>;

export interface Supposed {
  readonly checks: readonly CheckId[];
  /** Complaints whose title excludes it; or all but those. */
  readonly titles?: readonly OpeningId[];
  readonly allBut?: readonly OpeningId[];
  /** Answers that exclude it. */
  readonly told: Options;
  /** Answers that say it after all. */
  readonly unless?: Options;
}

/** Titles and answers of one vehicle alone. */
const OF_ONE = [
  'one-locomotive-only',
  'trips-when-set-on',
  'programming-fails',
] as const satisfies readonly OpeningId[];
const ONE_VEHICLE: Options = {
  'one-or-all': [
    ...(['deaf', 'runs-badly', 'another-number', 'shorts-alone', 'runs-off', 'stops-later'] as const),
    ...(['lights-only', 'acts-otherwise'] as const),
  ],
  'which-vehicles': ['one-vehicle'],
};

/** Titles and answers of a trouble that is none of the track. */
const NOT_OF_THE_TRACK = [
  ...(['accessories-misbehave', 'handhelds-dead', 'programming-fails'] as const),
] as const satisfies readonly OpeningId[];
const OFF_THE_TRACK: Options = {
  'what-happens': ['acts-otherwise', 'cannot-be-read', 'handhelds-dead', 'accessories-wrong'],
  'which-places': ['off-track'],
};

/** Titles of people whose two parts stand in them. A reversing section does not make it several. */
const TELL_OF_PARTS = [
  ...(['stops-at-gap', 'trips-at-gap', 'still-runs-past-gap', 'jerks-at-gap', 'shuts-down-after-swap'] as const),
] as const satisfies readonly OpeningId[];

/** Two units of one kind, or the cable between them. */
const OF_TWO_UNITS = [
  ...(['pull-control-cable', 'cable-ends-side-by-side', 'exchange-supplies', 'exchange-units'] as const),
] as const satisfies readonly CheckId[];

const SECTION: Options = { 'which-places': ['in-the-loop', 'on-the-turntable'] };

export const SUPPOSED: readonly Supposed[] = [
  // Turnouts or signals that act up.
  {
    checks: [
      ...(['accessory-moment', 'one-accessory-or-all', 'accessories-without-trains', 'exchange-accessories'] as const),
    ],
    allBut: ['accessories-misbehave'],
    told: {},
    unless: {
      'what-happens': ['accessories-wrong'],
      'dead-since-a-short': ['accessory'],
      'which-case-hot': ['accessory'],
      'accessory-moment': ['after-trip-or-power-up', 'when-trains-run', 'several-at-once', 'only-by-itself', 'always'],
      'one-accessory-or-all': ['one', 'two-as-one', 'far-ones', 'all', 'now-one-now-another'],
    },
  },
  // A train, or what a unit or a breaker did: whose turnouts act up has told of none.
  {
    checks: [
      ...(['uncouple', 'halve-the-trains', 'write-anew', 'lamps-at-the-jerk', 'one-or-all', 'which-vehicles'] as const),
    ],
    titles: ['accessories-misbehave'],
    told: {},
    unless: {
      'what-happens': ['switches-off', 'jerks', 'slow-or-dim', 'stops-dark', 'stops-lit'],
      'accessory-moment': ['when-trains-run', 'they-are-well'],
      'which-vehicles': ['one-vehicle', 'only-many', 'every-one'],
    },
  },
  // A breaker that may have opened.
  {
    checks: ['breaker-lamp'],
    titles: ['accessories-misbehave'],
    told: {},
    unless: { 'what-happens': ['switches-off'], 'what-is-between': ['breaker', 'reverser'] },
  },
  // Whether there are modules that report trains: the title has told of them.
  {
    checks: ['detectors-there', 'which-vehicles'],
    titles: ['empty-shown-occupied'],
    told: { 'what-happens': ['shown-occupied'] },
  },
  // Whether there is a reverser: whoever has told what it does has told that there is one.
  {
    checks: ['what-is-between'],
    told: {
      'does-it-reverse': ['acts-and-passes', 'silent', 'chatters', 'acts-but-off'],
      'what-reverses': ['automatic', 'two-neighbours'],
    },
  },
  // What swaps the rails: something does where its act was told; only one that works against another leaves it open.
  { checks: ['what-reverses'], told: { 'does-it-reverse': ['acts-and-passes', 'silent', 'acts-but-off'] } },
  // One of several locomotives: none of them was said to be well.
  { checks: ['one-or-all'], titles: ['programming-fails'], told: {} },
  // One vehicle apart from the others: several that show it have said that it is none.
  {
    checks: ['one-or-all'],
    told: {
      'which-vehicles': [
        ...(['one-kind', 'short-ones', 'long-or-lit', 'only-coupled', 'only-many', 'decoders-only'] as const),
        ...(['every-one', 'none-needed'] as const),
      ],
    },
  },
  // The bridge of a turntable.
  {
    checks: ['bridge-half-round'],
    allBut: [],
    told: {},
    unless: { 'which-places': ['on-the-turntable'] },
  },
  // A decoder that can be read.
  {
    checks: ['read-its-decoder'],
    told: { 'what-happens': ['cannot-be-read'], 'programming-track': ['cannot-read', 'shorts-there'] },
    unless: { 'programming-track': ['works', 'others-take-it'] },
  },
  // A decoder that can be written; some take what is written and answer nothing.
  {
    checks: ['write-anew'],
    told: { 'programming-track': ['shorts-there'] },
    unless: { 'programming-track': ['works', 'others-take-it'] },
  },
  // Settings of which nothing wrong is known yet.
  {
    checks: ['write-anew'],
    told: { 'read-its-decoder': ['other-number', 'double-heading', 'direct-allowed'] },
  },
  // Many trains.
  {
    checks: ['what-trains', 'count-the-draw'],
    titles: OF_ONE,
    told: { ...ONE_VEHICLE, ...OFF_THE_TRACK },
    unless: { 'which-vehicles': ['only-many'], 'when-it-happens': ['with-traffic'] },
  },
  {
    checks: ['halve-the-trains', 'move-trains-over'],
    told: ONE_VEHICLE,
    unless: { 'when-it-happens': ['with-traffic'] },
  },
  // A unit that may be at fault.
  { checks: ['track-plug-pulled', 'unit-settings'], titles: ['one-locomotive-only'], told: { 'one-or-all': ['deaf'] } },
  // A reversing section.
  {
    checks: ['what-reverses', 'does-it-reverse', 'short-locomotive-through-loop', 'follow-the-red-rail'],
    titles: [...TELL_OF_PARTS, ...NOT_OF_THE_TRACK, ...OF_ONE],
    told: {
      ...OFF_THE_TRACK,
      ...ONE_VEHICLE,
      'which-places': ['that-part', 'with-distance', 'anywhere', 'off-track'],
    },
    unless: SECTION,
  },
  // A trouble of the track, where turnouts lie.
  {
    checks: ['live-frogs'],
    titles: [...NOT_OF_THE_TRACK, 'one-locomotive-only'],
    told: { ...OFF_THE_TRACK, 'which-places': ['with-distance', 'off-track'] },
    unless: { 'which-places': ['at-a-turnout'], 'when-it-happens': ['when-thrown'] },
  },
  // One turnout.
  {
    checks: ['look-at-the-frog', 'meter-at-the-frog'],
    allBut: [],
    told: {},
    unless: { 'which-places': ['at-a-turnout'], 'sparks-at-the-gap': ['at-a-frog'] },
  },
  // A trouble that has a place on the track.
  { checks: ['which-places'], titles: NOT_OF_THE_TRACK, told: OFF_THE_TRACK },
  // Whoever has told of the bridge has told where.
  { checks: ['which-places'], told: { 'bridge-half-round': ['half-round', 'either-way', 'here-and-there'] } },
  // Commands that do not come from the throttles as they should.
  {
    checks: ['what-the-handhelds-do', 'exchange-handhelds', 'meter-control-bus'],
    titles: ['all-slow', 'slow-far-away', 'short-not-noticed'],
    told: {
      'what-happens': ['slow-or-dim', 'fast-or-bright', 'hums', 'gets-hot', 'shown-occupied', 'cannot-be-read'],
      'one-accessory-or-all': ['one', 'two-as-one', 'far-ones'],
    },
    unless: {
      'what-happens': ['handhelds-dead'],
      'what-the-handhelds-do': ['all-dead', 'one-dead', 'restarts', 'late-or-lost', 'acts-by-itself'],
    },
  },
  // Poles that may be swapped: what was measured across the gap says that they are not, and to swap them would make it so.
  {
    checks: ['swap-track-wires'],
    titles: OF_ONE,
    told: { 'meter-same-and-diagonal': ['diagonal-large'], 'two-lamps': ['both-dark'], ...OFF_THE_TRACK },
  },
  // Supplies that were exchanged.
  {
    checks: ['put-supplies-back'],
    allBut: ['shuts-down-after-swap'],
    told: {},
    unless: { 'last-change': ['supply', 'supply-or-unit'] },
  },
  // A programming track that is in use.
  {
    checks: ['piece-at-programming'],
    allBut: ['programming-fails'],
    told: {},
    unless: {
      'what-happens': ['cannot-be-read'],
      'programming-track': ['cannot-read'],
      'when-it-happens': ['while-programming'],
    },
  },
  // A spot that is slower or dimmer, or a wire or joint that gets warm.
  {
    checks: [
      'meter-along-the-way',
      'meter-while-they-run',
      'bright-lamp-along',
      'clip-thick-pair',
      'clip-along-the-bus',
    ],
    allBut: [
      ...(['slow-far-away', 'all-slow', 'short-not-noticed', 'trips-with-traffic', 'stops-at-a-spot'] as const),
      ...(['jerks-at-gap', 'wrong-one-trips', 'cuts-out-after-a-while'] as const),
    ],
    told: {},
    unless: {
      'what-happens': ['slow-or-dim', 'gets-hot', 'jerks'],
      'which-places': ['with-distance'],
      'lights-then': ['dim', 'flickers', 'fades-with-trains'],
      'meter-volts-there': ['lower', 'falls'],
      'which-case-hot': ['joint-or-rail', 'wire'],
      'dim-or-snap': ['dims-first'],
      'coin-far': ['stays-on'],
      'load-test': ['weak-far', 'weak-everywhere'],
    },
  },
  // A turnout: where it is the bridge of a turntable, nothing is thrown but the bridge.
  {
    checks: [
      ...(['throw-turnouts', 'which-setting', 'live-frogs', 'varnish-the-frog', 'look-at-the-frog'] as const),
      ...(['meter-at-the-frog', 'blade-in-turnout-cuts', 'weather'] as const),
    ],
    told: { 'which-places': ['on-the-turntable'] },
  },
  // A train of several vehicles.
  {
    checks: ['uncouple'],
    titles: OF_ONE,
    told: { 'which-vehicles': ['none-needed'] },
    unless: { 'which-vehicles': ['only-coupled', 'long-or-lit'] },
  },
  // Something that went off: where short ones alone stop, a dead piece is longer than they reach, and no unit goes off.
  {
    checks: ['how-it-comes-back', 'what-goes-dark'],
    told: { 'which-vehicles': ['short-ones'] },
    unless: {
      'what-goes-dark': ['only-that-part', 'everything-at-once', 'one-after-the-other'],
      'what-happens': ['switches-off'],
      'booster-lamp': ['fault', 'goes-out-and-on', 'counts', 'no-lamp'],
      'breaker-lamp': ['opened'],
    },
  },
  // A track that is shown as occupied or free.
  {
    checks: ['what-is-reported'],
    titles: [...OF_ONE, 'short-not-noticed', 'slow-far-away', 'all-slow'],
    told: {},
    unless: { 'what-happens': ['shown-occupied'] },
  },
  // A second unit, and a cable to it: with one part there is hardly one.
  {
    checks: [...OF_TWO_UNITS, 'move-trains-over'],
    told: { 'how-many-parts': ['one'] },
  },
  // And before anybody has told of a second part, nobody knows of a second unit.
  {
    checks: OF_TWO_UNITS,
    allBut: [...TELL_OF_PARTS, 'ignores-commands', 'slow-far-away', 'jerks-at-gap', 'wrong-one-trips'],
    told: {},
    unless: {
      'how-many-parts': ['several'],
      'which-places': ['that-part', 'every-gap'],
      'when-it-happens': ['at-the-gap'],
      'what-goes-dark': ['only-that-part', 'one-after-the-other'],
    },
  },
  // One vehicle and its place: where every one shows it, anywhere, there is neither.
  {
    checks: ['same-locomotive-in-old-part'],
    told: { 'which-vehicles': ['every-one', 'only-many'], 'which-places': ['anywhere'] },
  },
  {
    checks: ['uncouple'],
    told: { 'which-places': ['anywhere', 'with-distance'] },
    unless: { 'which-vehicles': ['only-coupled', 'long-or-lit'] },
  },
  // Something that the cable could still take away: where all goes off at once with nothing on the track, nothing is there to see; nor with one
  // vehicle that is to blame, or one spot.
  {
    checks: ['pull-control-cable'],
    titles: ['trips-at-power-on', 'programming-fails', 'one-locomotive-only', 'stops-at-a-spot'],
    told: {
      ...ONE_VEHICLE,
      'which-vehicles': ['none-needed', 'one-vehicle', 'short-ones'],
      'which-places': ['one-spot', 'at-a-turnout'],
      'lift-all-vehicles': ['still-there'],
    },
  },
  // A trouble that weather may bring: what got hot was not made so by the room.
  {
    checks: ['weather'],
    told: {
      'danger-now': ['browned', 'smoke-heat-or-damage'],
      'which-case-hot': ['joint-or-rail', 'wire', 'locomotive'],
    },
    unless: { 'when-it-happens': ['now-and-then'] },
  },
  // Whether there are several parts is not known yet.
  {
    checks: ['how-many-parts'],
    titles: TELL_OF_PARTS,
    told: { 'what-goes-dark': ['one-after-the-other'] },
  },
];
