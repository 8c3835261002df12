// A stretch, a part or the whole layout gets no power. A dead stretch shows nothing but that; what is found along its wires tells the rest.
import { ALL_OF_ITS_UNIT, NO_POWER, TURNOUTS_ASLEEP } from '../families.ts';
import type { CauseRow, Row, ShowsOf } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

const WHEN_A_TRAIN_GETS_THERE: ShowsOf<'when'> = {
  by: 'parts',
  is: {
    one: { always: usually, 'at-one-place': sometimes },
    several: { 'at-the-gap': always, always: sometimes, 'at-one-place': sometimes },
  },
};

/** Behind a wire, switch or plug of its own: a stretch, seldom the whole layout. */
const BEHIND_ITS_FEED: ShowsOf<'where'> = {
  by: 'parts',
  is: {
    one: { everywhere: usually, part: usually, spot: usually },
    several: { part: always, gaps: sometimes, spot: sometimes, everywhere: rarely },
  },
};

const A_BUTTON = { button: usually, stays: sometimes } as const;
/** Somebody has to press or switch something, and then it is there. */
const BACK_ON_A_BUTTON: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: {
    nothing: { 'never-off': always },
    'that-part': A_BUTTON,
    'all-at-once': A_BUTTON,
    'one-after-the-other': A_BUTTON,
  },
};

/** The unit is well and ready; what it feeds does not reach the rails. */
const CUT_OFF = {
  ...NO_POWER,
  when: WHEN_A_TRAIN_GETS_THERE,
  where: BEHIND_ITS_FEED,
  'unit-shows': { ready: always },
  swap: { 'no-change': always },
  step: { idle: usually, none: usually },
  accessories: TURNOUTS_ASLEEP,
  before: { 'not-off': always },
} as const satisfies Partial<Row>;

export const NO_POWER_CAUSES = [
  // No wires lead from the unit to these rails, or their plug is out: the old joint fed them before it was cut.
  {
    id: 'feed-missing',
    fixClass: 'no-feed',
    minutes: 20,
    shows: {
      ...CUT_OFF,
      since: { supply: rarely, 'track-or-wires': usually, 'new-place': rarely, nothing: sometimes },
      'feed-wires': { missing: always },
      'dead-rail': { both: usually, one: sometimes },
      'loose-plug': { none: usually, 'track-plug': rarely },
    },
  },
  // One of the two wires is off, broken or under a loose screw: mostly one rail is dead, and it may flicker as the wire is moved.
  {
    id: 'feed-wire-broken',
    fixClass: 'no-feed',
    minutes: 20,
    well: rarely,
    shows: {
      ...CUT_OFF,
      trouble: { 'stops-dark': always, jerks: sometimes },
      when: {
        by: 'parts',
        is: {
          one: { always: usually, 'at-one-place': usually, 'in-mid-run': sometimes, 'now-and-then': sometimes },
          several: {
            'at-the-gap': usually,
            'at-one-place': sometimes,
            'in-mid-run': sometimes,
            'now-and-then': sometimes,
          },
        },
      },
      since: {
        supply: rarely,
        'track-or-wires': usually,
        nothing: usually,
        time: sometimes,
        'new-place': sometimes,
        'a-short': rarely,
      },
      volts: { none: always, moments: sometimes },
      hot: { nothing: usually, wire: rarely, 'joint-or-rail': rarely },
      'feed-wires': { 'one-loose': always },
      'dead-rail': { one: always, both: rarely },
      contact: { good: usually, flickers: sometimes, dirty: sometimes },
      'loose-plug': { none: usually, 'track-plug': sometimes },
      loss: { none: usually, joint: sometimes, rails: rarely },
      before: { 'not-off': always },
      // A rail that is fed some other way is turned round as well.
      swap: { 'no-change': usually, worse: sometimes },
    },
  },
  // The track wires sit in the programming or another socket: power for moments only, or too little, and programming reaches that part.
  {
    id: 'wrong-output',
    fixClass: 'wrong-output',
    minutes: 6,
    shows: {
      ...CUT_OFF,
      trouble: {
        'stops-dark': usually,
        'stops-lit': usually,
        jerks: sometimes,
        'slow-or-dim': rarely,
        'runs-by-itself': rarely,
      },
      where: ALL_OF_ITS_UNIT,
      since: {
        supply: rarely,
        'track-or-wires': usually,
        'supply-or-unit': usually,
        'new-place': sometimes,
        nothing: rarely,
      },
      'unit-shows': { ready: always, fault: rarely },
      volts: { none: usually, moments: usually, 'low-loaded': sometimes },
      commands: { none: usually, spoiled: sometimes, arrive: rarely },
      'feed-wires': { 'wrong-socket': always },
      'dead-rail': { both: always },
      programming: { works: usually, 'others-take-it': usually },
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
      loss: { none: usually, 'at-the-unit': usually },
      'one-loco': { 'like-the-others': usually, 'another-number': sometimes },
      'decoder-settings': { right: usually, 'other-number': sometimes, 'direct-allowed': sometimes },
    },
  },
  // The unit is off, has no supply plugged in, or stands latched after a short that is long gone.
  {
    id: 'booster-off',
    fixClass: 'booster-off',
    minutes: 5,
    shows: {
      ...NO_POWER,
      // A bridging train wakes the dead part, which may trip the living one.
      trouble: { 'stops-dark': always, 'switches-off': rarely, jerks: rarely },
      when: {
        by: 'parts',
        is: {
          one: { always: usually, 'at-switching-on': sometimes, 'after-a-short': sometimes },
          several: { 'at-the-gap': usually, always: sometimes, 'after-a-short': sometimes, 'at-switching-on': rarely },
        },
      },
      where: ALL_OF_ITS_UNIT,
      since: {
        supply: usually,
        nothing: usually,
        'supply-or-unit': usually,
        'a-short': sometimes,
        'track-or-wires': sometimes,
        'new-place': sometimes,
      },
      'goes-off': {
        by: 'parts',
        is: {
          one: { nothing: usually, 'all-at-once': sometimes },
          several: { nothing: usually, 'that-part': sometimes },
        },
      },
      'comes-back': BACK_ON_A_BUTTON,
      'unit-shows': { dark: usually, fault: sometimes, ready: rarely },
      swap: { 'no-change': always },
      step: { idle: always },
      accessories: TURNOUTS_ASLEEP,
      'dead-rail': { both: always },
      'supply-lamp': { steady: usually, dark: usually },
      'loose-plug': { none: usually, 'supply-plug': usually, 'mains-lead': rarely },
      control: {
        by: 'parts',
        is: { one: { fine: usually, 'all-dead': usually }, several: { fine: always } },
      },
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
      'goes-with-supply': { stays: usually, 'goes-along': sometimes },
      'unfed-test': { stops: usually, 'lit-beyond': rarely },
      'supply-volts': { steady: usually, none: sometimes },
      'dead-since': { nothing: usually, unit: sometimes },
      before: { 'not-off': always, snaps: rarely },
      sparks: { none: always, 'at-the-gap': rarely },
    },
  },
  // Stop is pressed, programming is on, or that unit is switched off by command: all is well but told to be quiet.
  {
    id: 'stop-active',
    fixClass: 'stop-active',
    minutes: 3,
    shows: {
      ...NO_POWER,
      // Some systems only stop the trains and leave the rails on.
      trouble: { 'stops-dark': usually, 'stops-lit': usually, 'handhelds-dead': rarely },
      when: {
        by: 'parts',
        is: {
          one: { always: usually, 'in-mid-run': usually, 'at-switching-on': sometimes, 'after-a-short': sometimes },
          several: {
            always: usually,
            'in-mid-run': usually,
            // A unit that is switched off by command waits for the first train.
            'at-the-gap': usually,
            'at-switching-on': rarely,
            'after-a-short': sometimes,
          },
        },
      },
      where: { by: 'parts', is: { one: { everywhere: always }, several: { everywhere: usually, part: usually } } },
      since: { nothing: usually, setting: usually, 'a-short': sometimes },
      'goes-off': { nothing: usually, 'all-at-once': sometimes, 'that-part': rarely },
      'comes-back': BACK_ON_A_BUTTON,
      'unit-shows': { stopped: usually, ready: sometimes, dark: sometimes, 'no-signal': rarely },
      volts: { none: usually, full: sometimes },
      swap: { 'no-change': always },
      accessories: TURNOUTS_ASLEEP,
      'dead-rail': { both: usually, none: usually },
      // Another unit that is not stopped brings the part to life.
      'goes-with-unit': { stays: usually, 'goes-along': sometimes },
      before: { 'not-off': usually, snaps: sometimes },
    },
  },
  // A turnout cuts the power off: what lies behind it lives with one setting only, or lies dead behind dirty blades.
  {
    id: 'turnout-routing',
    fixClass: 'turnout-routing',
    minutes: 30,
    shows: {
      ...CUT_OFF,
      when: {
        by: 'parts',
        is: {
          one: { 'at-one-place': usually, 'when-thrown': sometimes, always: rarely },
          several: { 'at-one-place': usually, 'at-the-gap': usually, 'when-thrown': sometimes, always: rarely },
        },
      },
      where: { spot: usually, turnout: usually, part: usually },
      since: { 'track-or-wires': usually, nothing: usually, time: sometimes },
      'setting-matters': { 'dead-in-one': usually, changing: sometimes },
      way: { either: usually, 'one-route': usually },
      'feed-wires': { right: usually, missing: sometimes },
      'dead-rail': { one: usually, both: sometimes },
      // What is alive before the turnout is turned round as well, and meets the other part the wrong way.
      swap: { 'no-change': usually, worse: usually },
    },
  },
  // The plug between two boards or modules is out, or its wires are crossed: dead beyond it, or a short there.
  {
    id: 'module-plug',
    fixClass: 'board-plug',
    minutes: 10,
    shows: {
      ...CUT_OFF,
      trouble: { 'stops-dark': usually, 'switches-off': usually, jerks: rarely },
      when: {
        by: 'parts',
        is: {
          one: { always: usually, 'at-one-place': usually, 'at-switching-on': usually },
          several: { 'at-the-gap': always, 'at-switching-on': sometimes, always: sometimes },
        },
      },
      where: { part: always, gaps: sometimes, everywhere: sometimes },
      vehicles: { 'every-one': usually, 'none-needed': sometimes },
      since: { 'new-place': usually, 'track-or-wires': usually, nothing: rarely },
      'goes-off': { nothing: usually, 'all-at-once': sometimes, 'that-part': sometimes },
      'unit-shows': { ready: usually, fault: sometimes, 'only-breaker': rarely },
      volts: { none: always, full: rarely, moments: rarely },
      commands: { none: always, arrive: rarely },
      short: { none: usually, feeder: sometimes },
      swap: { 'no-change': usually, cured: rarely },
      sides: { agree: usually, reversed: sometimes },
      ohms: { open: usually, short: sometimes },
      'feed-wires': { 'board-plug': always },
      'dead-rail': { both: usually, one: sometimes, none: sometimes },
      'loose-plug': { none: usually, 'track-plug': usually },
      before: { 'not-off': usually, snaps: sometimes },
    },
  },
  // A detector or breaker in the feed is open, tripped or dead: its stretch is dead though the unit is well. Its own lamp may tell.
  {
    id: 'device-open',
    fixClass: 'device-open',
    minutes: 15,
    shows: {
      ...CUT_OFF,
      trouble: { 'stops-dark': always, 'switches-off': sometimes, jerks: rarely },
      // A tired one lets power through on some days.
      when: {
        by: 'parts',
        is: {
          one: {
            always: usually,
            'at-one-place': usually,
            'in-mid-run': sometimes,
            'after-a-short': sometimes,
            'now-and-then': sometimes,
          },
          several: {
            'now-and-then': sometimes,
            'at-the-gap': usually,
            'in-mid-run': sometimes,
            'after-a-short': sometimes,
            always: usually,
          },
        },
      },
      // In the main feed, before the parts divide, it takes all of them.
      where: {
        by: 'parts',
        is: {
          one: { everywhere: usually, part: usually, spot: sometimes },
          several: { part: always, everywhere: sometimes, gaps: sometimes, spot: sometimes },
        },
      },
      // It is a device itself, and most often a new one.
      since: {
        nothing: usually,
        'a-short': usually,
        'track-or-wires': usually,
        'new-place': sometimes,
        'supply-or-unit': usually,
      },
      'goes-off': { nothing: usually, 'that-part': usually, 'all-at-once': sometimes },
      'unit-shows': {
        by: 'between',
        is: {
          nothing: { ready: always },
          breaker: { 'only-breaker': usually, ready: sometimes },
          reverser: { 'only-breaker': sometimes, ready: usually },
        },
      },
      'feed-wires': { 'device-open': always },
      'dead-rail': { one: usually, both: usually },
      reports: {
        by: 'sensing',
        is: { none: { fine: always }, some: { fine: usually, absent: usually, 'one-occupied': rarely } },
      },
      unplugging: { 'no-change': usually, detector: sometimes },
      'dead-since': { nothing: usually, unit: sometimes },
    },
  },
  // A fuse in a feed or in the line of the turnouts has blown, mostly in a short.
  {
    id: 'fuse-blown',
    fixClass: 'fuse-blown',
    minutes: 10,
    shows: {
      ...CUT_OFF,
      trouble: { 'stops-dark': usually, 'accessories-wrong': usually },
      when: {
        by: 'parts',
        is: {
          one: { always: usually, 'in-mid-run': sometimes, 'after-a-short': sometimes, 'at-one-place': rarely },
          several: { always: usually, 'at-the-gap': usually, 'in-mid-run': sometimes, 'after-a-short': sometimes },
        },
      },
      where: {
        by: 'parts',
        is: {
          one: { everywhere: usually, part: usually, spot: sometimes },
          several: { part: usually, everywhere: sometimes },
        },
      },
      vehicles: { 'every-one': usually, 'none-needed': usually },
      since: { 'a-short': usually, nothing: sometimes, 'track-or-wires': rarely },
      'goes-off': { nothing: usually, 'that-part': usually },
      // The line of the turnouts or that of the rails.
      volts: { none: usually, full: usually },
      commands: { none: usually, arrive: usually },
      accessories: { 'all-always': usually, fine: usually },
      'feed-wires': { 'fuse-blown': always },
      'dead-rail': { one: usually, none: usually, both: rarely },
      'dead-since': { nothing: usually, accessory: sometimes, unit: rarely },
    },
  },
  // An old block or panel switch in the feed is off, or its contact has gone.
  {
    id: 'panel-switch',
    fixClass: 'old-switch',
    minutes: 10,
    shows: {
      ...CUT_OFF,
      since: {
        'track-or-wires': usually,
        'supply-or-unit': usually,
        nothing: usually,
        setting: sometimes,
        time: rarely,
      },
      'feed-wires': { 'switch-off': always },
      'old-wiring': { 'dead-wires': usually, none: usually },
      'dead-rail': { one: usually, both: usually },
    },
  },
  // No mains: a socket strip or switch is off, or a plug is not home. Nothing anywhere.
  {
    id: 'mains-off',
    fixClass: 'mains-off',
    minutes: 5,
    shows: {
      ...NO_POWER,
      trouble: { 'stops-dark': always, 'handhelds-dead': sometimes },
      when: { always: always, 'at-switching-on': sometimes, 'in-mid-run': rarely },
      where: { everywhere: always, 'off-track': rarely, part: rarely },
      vehicles: { 'every-one': usually, 'none-needed': usually },
      since: { supply: sometimes, nothing: usually, 'new-place': sometimes, 'supply-or-unit': sometimes },
      'goes-off': { nothing: usually, 'all-at-once': sometimes },
      'unit-shows': { dark: always },
      swap: { 'no-change': always },
      accessories: { 'all-always': usually, fine: usually },
      'dead-rail': { both: always },
      'supply-lamp': { dark: always },
      mains: { off: always },
      'loose-plug': { none: usually, 'mains-lead': usually },
      control: { 'all-dead': always, fine: rarely },
      'bus-volts': { none: always },
      programming: { 'cannot-read': always },
      'supply-volts': { none: always },
      before: { 'not-off': usually, snaps: sometimes },
    },
  },
] as const satisfies readonly CauseRow[];
