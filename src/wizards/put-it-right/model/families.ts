// What several causes show alike, so that a row says only what is its own. Source: common practice, no source (judgement).
import type { Row, ShowsOf } from './rows.ts';
import { always, rarely, sometimes, usually } from './words.ts';

const BREAKER_FIRST = { 'that-part': usually, 'all-at-once': sometimes, nothing: rarely } as const;
const UNIT_TRIPS: ShowsOf<'goes-off'> = {
  by: 'protection',
  is: {
    latches: {
      by: 'parts',
      is: {
        one: { 'all-at-once': always },
        several: { 'that-part': usually, 'all-at-once': sometimes, 'one-after-the-other': rarely },
      },
    },
    'tries-again': {
      by: 'parts',
      is: {
        one: { 'all-at-once': always },
        several: { 'that-part': usually, 'all-at-once': sometimes, 'one-after-the-other': rarely },
      },
    },
    blinks: { nothing: usually, 'that-part': sometimes, 'all-at-once': sometimes },
    'folds-back': { nothing: usually, 'that-part': sometimes, 'all-at-once': sometimes },
  },
};
/**
 * What goes off when a short or an overload trips a unit: all, or that part, or nothing that anyone sees where the unit is back in a blink.
 * Where each stretch has a breaker, that stretch.
 */
export const TRIPS_ITS_UNIT: ShowsOf<'goes-off'> = {
  by: 'between',
  is: { nothing: UNIT_TRIPS, reverser: UNIT_TRIPS, breaker: BREAKER_FIRST },
};

const UNIT_KEPT_OFF: ShowsOf<'goes-off'> = {
  by: 'parts',
  is: {
    one: { 'all-at-once': always, nothing: rarely },
    several: { 'that-part': usually, 'all-at-once': usually, nothing: rarely, 'one-after-the-other': rarely },
  },
};
/** A short that stays keeps off what it trips, however often the unit tries again. */
const KEPT_OFF: ShowsOf<'goes-off'> = {
  by: 'between',
  is: { nothing: UNIT_KEPT_OFF, reverser: UNIT_KEPT_OFF, breaker: BREAKER_FIRST },
};

/** Two units are shorted on each other: both may go. */
export const TRIPS_BOTH: ShowsOf<'goes-off'> = {
  by: 'protection',
  is: {
    latches: { 'that-part': sometimes, 'all-at-once': usually, 'one-after-the-other': sometimes },
    'tries-again': { 'that-part': sometimes, 'all-at-once': usually, 'one-after-the-other': sometimes },
    blinks: { nothing: usually, 'that-part': sometimes, 'all-at-once': sometimes },
    'folds-back': { nothing: usually, 'that-part': sometimes, 'all-at-once': sometimes },
  },
};

export const NOTHING_OFF: ShowsOf<'goes-off'> = { nothing: always };

const UNIT_OR_NOTHING: ShowsOf<'unit-shows'> = {
  by: 'protection',
  is: {
    latches: { fault: always },
    'tries-again': { fault: always },
    blinks: { ready: usually, fault: usually },
    'folds-back': { ready: usually, fault: sometimes },
  },
};
/** A short, as the lamps show it: the unit's, unless a breaker between unit and track was first. */
export const SHORT_ON_THE_LAMPS: ShowsOf<'unit-shows'> = {
  by: 'between',
  is: {
    nothing: UNIT_OR_NOTHING,
    breaker: { 'only-breaker': usually, fault: sometimes, ready: rarely },
    reverser: { fault: usually, 'only-breaker': sometimes, ready: sometimes },
  },
};

/** A short for a moment, as people tell it. A unit that is back in a blink, or lets its volts fall, hardly looks off. */
export const SHORT_FOR_A_MOMENT: ShowsOf<'trouble'> = {
  by: 'protection',
  is: {
    latches: { 'switches-off': always },
    'tries-again': { 'switches-off': always, jerks: rarely },
    blinks: { jerks: usually, 'switches-off': sometimes, 'runs-by-itself': rarely, 'only-shown': sometimes },
    'folds-back': { 'stops-dark': sometimes, 'switches-off': sometimes, jerks: sometimes },
  },
};

/** Off without any warning, where the unit goes off at all. */
export const SNAPS_OFF: ShowsOf<'before'> = {
  by: 'protection',
  is: {
    latches: { snaps: always },
    'tries-again': { snaps: always },
    blinks: { 'not-off': usually, snaps: usually },
    'folds-back': { 'not-off': sometimes, dims: usually, snaps: sometimes },
  },
};

/** Each trip takes the power from turnouts that the track feeds, and may upset modules that watch for trains. */
const UPSET_BY_TRIPS = {
  accessories: {
    by: 'accessory-feed',
    is: {
      'own-supply': { fine: always, 'after-trips': rarely },
      'shares-a-wire': { fine: always, 'after-trips': rarely },
      'from-the-track': { fine: usually, 'after-trips': sometimes },
    },
  },
  reports: { by: 'sensing', is: { none: 'unaffected', some: { fine: usually, wild: sometimes } } },
} as const satisfies Partial<Row>;

/** Turnouts that the track feeds suffer where its volts fall as trains run. */
export const TURNOUTS_SAG: ShowsOf<'accessories'> = {
  by: 'accessory-feed',
  is: {
    'own-supply': 'unaffected',
    'shares-a-wire': 'unaffected',
    'from-the-track': { fine: usually, 'with-trains': usually, 'after-trips': rarely, 'far-ones': rarely },
  },
};

const NEVER_OFF = { 'never-off': always } as const;

/** What is over as soon as the train has moved on or been taken off: then it is the unit that says how it comes back. */
export const BACK_AS_THE_UNIT_DOES: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: {
    nothing: {
      by: 'protection',
      is: {
        latches: NEVER_OFF,
        'tries-again': NEVER_OFF,
        blinks: { 'never-off': usually, blink: usually },
        'folds-back': NEVER_OFF,
      },
    },
    'that-part': {
      by: 'protection',
      is: {
        latches: { button: always, 'when-removed': sometimes },
        'tries-again': { seconds: usually, 'when-removed': sometimes },
        blinks: { blink: always, seconds: rarely },
        'folds-back': { seconds: usually, 'when-removed': sometimes },
      },
    },
    'all-at-once': {
      by: 'protection',
      is: {
        latches: { button: always, 'when-removed': sometimes },
        'tries-again': { seconds: usually, 'when-removed': sometimes },
        blinks: { blink: always, seconds: rarely },
        'folds-back': { seconds: usually, 'when-removed': sometimes },
      },
    },
    'one-after-the-other': {
      by: 'protection',
      is: {
        latches: { button: always, 'when-removed': sometimes },
        'tries-again': { seconds: usually, 'when-removed': sometimes },
        blinks: { blink: usually, seconds: sometimes },
        'folds-back': { seconds: usually, 'when-removed': sometimes },
      },
    },
  },
};

const REMOVED = { 'when-removed': usually, stays: sometimes, seconds: rarely, button: rarely } as const;
/** A short that stands: nothing is well before it is found and taken away. */
export const BACK_WHEN_REMOVED: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: { nothing: NEVER_OFF, 'that-part': REMOVED, 'all-at-once': REMOVED, 'one-after-the-other': REMOVED },
};

const LATCHED = { button: always, 'when-removed': sometimes, minutes: sometimes } as const;
const TRIED_AGAIN = { seconds: usually, 'when-removed': sometimes, minutes: sometimes } as const;
const OVERLOADED = {
  by: 'protection',
  is: {
    latches: LATCHED,
    'tries-again': TRIED_AGAIN,
    blinks: { blink: always, seconds: rarely, minutes: rarely },
    'folds-back': TRIED_AGAIN,
  },
} as const;
/**
 * More drawn than can be given: as the unit does; but a little too much for long is felt as warmth, and many units let nothing through until
 * that has gone.
 */
export const BACK_AFTER_OVERLOAD: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: {
    nothing: BACK_AS_THE_UNIT_DOES.is.nothing,
    'that-part': OVERLOADED,
    'all-at-once': OVERLOADED,
    'one-after-the-other': OVERLOADED,
  },
};

const COOLED = { minutes: usually, button: sometimes, seconds: rarely } as const;
/** Heat: a pause helps. */
export const BACK_WHEN_COOL: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: { nothing: NEVER_OFF, 'that-part': COOLED, 'all-at-once': COOLED, 'one-after-the-other': COOLED },
};

export const NEVER_WENT_OFF: ShowsOf<'comes-back'> = NEVER_OFF;

const DARK = { stays: usually, button: rarely, 'when-removed': rarely } as const;
/** What is off stays off until it is mended. */
export const STAYS_OFF: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: { nothing: NEVER_OFF, 'that-part': DARK, 'all-at-once': DARK, 'one-after-the-other': DARK },
};

/** Nothing is wrong with power or commands, no short, nothing hot: rows that differ elsewhere start from this and say the rest. */
export const QUIET = {
  'goes-off': NOTHING_OFF,
  'comes-back': NEVER_WENT_OFF,
  'unit-shows': 'unaffected',
  volts: 'unaffected',
  commands: 'unaffected',
  short: 'unaffected',
  hot: 'unaffected',
  draw: 'unaffected',
} as const satisfies Partial<Row>;

/** There only while a vehicle joins two parts; well as soon as it is off the gap. */
export const AT_THE_GAP = {
  // Who drives over it seldom sees no pattern.
  when: { 'at-the-gap': always, always: rarely, 'now-and-then': sometimes },
  where: { gaps: always, spot: rarely, part: rarely },
  vehicles: { 'every-one': usually, 'lit-or-long': sometimes, 'short-ones': rarely },
  'goes-off': TRIPS_BOTH,
  'comes-back': BACK_AS_THE_UNIT_DOES,
  'unit-shows': SHORT_ON_THE_LAMPS,
  volts: 'unaffected',
  commands: 'unaffected',
  short: { none: usually, vehicle: sometimes },
  hot: 'unaffected',
  draw: 'unaffected',
  before: SNAPS_OFF,
  ...UPSET_BY_TRIPS,
} as const satisfies Partial<Row>;

/** There for a moment, at one turnout. */
export const AT_A_TURNOUT = {
  trouble: SHORT_FOR_A_MOMENT,
  when: {
    'at-one-place': always,
    'now-and-then': sometimes,
    'in-mid-run': rarely,
    'at-the-gap': rarely,
    'with-traffic': rarely,
  },
  where: { turnout: always, spot: sometimes, gaps: rarely, loop: rarely },
  'goes-off': TRIPS_ITS_UNIT,
  'comes-back': BACK_AS_THE_UNIT_DOES,
  'unit-shows': SHORT_ON_THE_LAMPS,
  volts: 'unaffected',
  commands: 'unaffected',
  short: { none: usually, vehicle: sometimes },
  hot: { nothing: always, vehicle: rarely, 'joint-or-rail': rarely },
  draw: 'unaffected',
  before: SNAPS_OFF,
  sparks: { 'at-a-frog': usually, none: sometimes, 'at-a-wheel': sometimes },
  ...UPSET_BY_TRIPS,
} as const satisfies Partial<Row>;

/** A short that stands without any train. */
export const STANDING_SHORT = {
  trouble: { 'switches-off': always, 'stops-dark': sometimes, 'only-shown': rarely },
  // It waits for a wheel where a stretch has no feed of its own.
  when: { 'at-switching-on': usually, always: usually, 'in-mid-run': sometimes, 'when-set-on': rarely },
  where: { everywhere: usually, part: usually, spot: rarely, turnout: rarely },
  vehicles: { 'none-needed': always, 'every-one': rarely },
  'goes-off': KEPT_OFF,
  'comes-back': BACK_WHEN_REMOVED,
  'unit-shows': {
    by: 'between',
    is: {
      nothing: { fault: always, restarts: rarely },
      breaker: { 'only-breaker': usually, fault: sometimes, restarts: rarely },
      reverser: { fault: usually, 'only-breaker': sometimes, restarts: rarely },
    },
  },
  volts: { none: usually, moments: sometimes, low: rarely },
  commands: { none: usually, arrive: rarely },
  hot: { nothing: usually, 'joint-or-rail': sometimes, unit: rarely },
  draw: { 'well-below': usually, above: sometimes, 'high-idle': sometimes },
  ohms: { short: always },
  swap: { 'no-change': always },
  before: { 'not-off': usually, snaps: usually },
  accessories: {
    by: 'accessory-feed',
    is: {
      'own-supply': 'unaffected',
      'shares-a-wire': 'unaffected',
      'from-the-track': { fine: sometimes, 'all-always': usually, 'after-trips': sometimes },
    },
  },
  reports: { by: 'sensing', is: { none: 'unaffected', some: { fine: usually, wild: sometimes, absent: sometimes } } },
  control: { fine: always, restarts: rarely },
} as const satisfies Partial<Row>;

/** A part that gets no power at all. */
export const NO_POWER = {
  trouble: { 'stops-dark': always, jerks: rarely },
  when: { 'at-the-gap': usually, always: usually },
  where: { part: always },
  vehicles: { 'every-one': always },
  'goes-off': { nothing: usually, 'that-part': rarely },
  'comes-back': STAYS_OFF,
  volts: { none: always },
  commands: { none: always },
  short: 'unaffected',
  hot: 'unaffected',
  draw: 'unaffected',
} as const satisfies Partial<Row>;

/** More is drawn than can be given: it shows as trains add up, wherever they are in that part. */
export const TOO_LITTLE = {
  trouble: { 'switches-off': usually, 'slow-or-dim': usually, jerks: rarely },
  when: { 'with-traffic': always, 'after-minutes': sometimes, 'when-set-on': rarely, 'now-and-then': sometimes },
  where: { everywhere: usually, part: sometimes },
  vehicles: { many: usually, 'every-one': sometimes, 'lit-or-long': sometimes },
  'goes-off': TRIPS_ITS_UNIT,
  'comes-back': BACK_AFTER_OVERLOAD,
  'unit-shows': {
    by: 'between',
    is: {
      nothing: { fault: usually, ready: sometimes, restarts: rarely },
      breaker: { 'only-breaker': usually, fault: usually, ready: sometimes, restarts: rarely },
      reverser: { fault: usually, ready: sometimes, restarts: rarely, 'only-breaker': rarely },
    },
  },
  volts: { 'low-loaded': usually, full: sometimes },
  commands: { arrive: always },
  short: { none: always },
  draw: { above: usually, 'near-the-limit': sometimes },
  // Lit coaches are a part of it.
  fewer: { helps: always, 'lit-do-it': rarely },
  before: { dims: usually, snaps: sometimes },
  accessories: TURNOUTS_SAG,
} as const satisfies Partial<Row>;

/** All that one unit feeds. */
export const ALL_OF_ITS_UNIT: ShowsOf<'where'> = {
  by: 'parts',
  is: { one: { everywhere: always }, several: { part: always, everywhere: rarely } },
};

/** A unit or its supply: all that it feeds, and just the same with the track unplugged. */
export const UNIT_ITSELF: ShowsOf<'where'> = {
  by: 'parts',
  is: {
    one: { everywhere: usually, 'off-track': sometimes },
    several: { part: usually, 'off-track': sometimes, everywhere: rarely },
  },
};

/** At the gap, but not each time: what flows there trips a unit only when there is much of it. */
export const MAY_TRIP: ShowsOf<'goes-off'> = {
  by: 'protection',
  is: {
    latches: { nothing: usually, 'that-part': usually, 'all-at-once': sometimes, 'one-after-the-other': sometimes },
    'tries-again': {
      nothing: usually,
      'that-part': usually,
      'all-at-once': sometimes,
      'one-after-the-other': sometimes,
    },
    blinks: { nothing: always, 'that-part': sometimes, 'all-at-once': rarely },
    'folds-back': { nothing: always, 'that-part': sometimes, 'all-at-once': rarely },
  },
};

/** Turnouts that live on track power sleep where there is none. */
export const TURNOUTS_ASLEEP: ShowsOf<'accessories'> = {
  by: 'accessory-feed',
  is: {
    'own-supply': { fine: always },
    'shares-a-wire': { fine: always },
    'from-the-track': { fine: usually, 'all-always': sometimes, 'far-ones': sometimes },
  },
};
