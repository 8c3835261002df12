// Power is there, or could be, but commands do not arrive, arrive spoiled, or come from somebody else.
import {
  ALL_OF_ITS_UNIT,
  BACK_AS_THE_UNIT_DOES,
  BACK_WHEN_REMOVED,
  STAYS_OFF,
  TRIPS_ITS_UNIT,
  TURNOUTS_ASLEEP,
  UNIT_ITSELF,
} from '../families.ts';
import type { CauseRow, Row } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** A unit without commands: most go quiet, some leave direct current on the rails, which a decoder that is allowed to may run away on. */
const NO_COMMANDS = {
  trouble: {
    'stops-dark': usually,
    'stops-lit': usually,
    'runs-by-itself': sometimes,
    'only-shown': rarely,
    jerks: rarely,
    'switches-off': rarely,
  },
  when: { 'at-the-gap': usually, always: usually, 'at-switching-on': rarely },
  // A command station that feeds no track itself speaks to all units by one cable.
  where: { part: always, everywhere: sometimes },
  vehicles: { 'every-one': always, 'one-only': rarely, 'decoders-only': rarely },
  'goes-off': { nothing: always, 'that-part': rarely },
  'comes-back': STAYS_OFF,
  'unit-shows': { 'no-signal': usually, ready: sometimes, fault: rarely, dark: rarely },
  volts: { none: usually, direct: sometimes, full: rarely },
  commands: { none: always },
  short: 'unaffected',
  hot: 'unaffected',
  draw: 'unaffected',
  swap: { 'no-change': always },
  // Rails that keep one level agree with commands half of the time.
  sides: { agree: usually, drift: sometimes },
  step: { idle: usually, none: usually },
  'dead-rail': { both: usually, none: usually },
  'goes-with-unit': { 'goes-along': usually, stays: sometimes },
  sparks: { none: usually, 'at-the-gap': rarely },
  accessories: TURNOUTS_ASLEEP,
  before: { 'not-off': always, snaps: rarely },
} as const satisfies Partial<Row>;

/** Where one unit feeds all it is the command station itself, most often, and no cable leads to another one. */
const BESIDE_THE_COMMAND_STATION = { parts: ['several'] } as const;

export const SIGNAL = [
  // The control cable between command station and booster is missing or not pushed home.
  {
    id: 'link-missing',
    fixClass: 'no-signal',
    needs: BESIDE_THE_COMMAND_STATION,
    minutes: 6,
    shows: {
      ...NO_COMMANDS,
      since: {
        supply: rarely,
        'track-or-wires': usually,
        'supply-or-unit': usually,
        nothing: sometimes,
        'new-place': sometimes,
      },
      link: { missing: always },
      'loose-plug': { none: usually, 'control-cable': usually },
      // Any cable that is plugged in both ends cures it.
      'goes-with-cable': { stays: usually, 'goes-along': sometimes },
    },
  },
  // One end of the control cable sits in a socket that is meant for something else; some of those carry supply volts.
  {
    id: 'link-wrong-socket',
    fixClass: 'no-signal',
    needs: BESIDE_THE_COMMAND_STATION,
    minutes: 6,
    shows: {
      ...NO_COMMANDS,
      since: {
        supply: rarely,
        'track-or-wires': usually,
        'supply-or-unit': usually,
        'new-place': sometimes,
        nothing: rarely,
      },
      'unit-shows': { 'no-signal': usually, ready: sometimes, fault: sometimes, dark: rarely },
      commands: { none: always, spoiled: rarely },
      link: { 'wrong-socket': always },
      control: { fine: always, restarts: rarely, 'all-dead': rarely },
    },
  },
  // The control cable is broken inside, crushed or badly made: no commands, or only while it lies just so.
  {
    id: 'link-faulty',
    fixClass: 'no-signal',
    needs: BESIDE_THE_COMMAND_STATION,
    minutes: 8,
    well: sometimes,
    shows: {
      ...NO_COMMANDS,
      trouble: {
        'stops-dark': usually,
        'stops-lit': usually,
        'runs-by-itself': sometimes,
        jerks: sometimes,
        'switches-off': sometimes,
      },
      when: { always: usually, 'now-and-then': usually, 'at-the-gap': usually, 'in-mid-run': sometimes },
      since: {
        supply: rarely,
        nothing: usually,
        'track-or-wires': sometimes,
        'supply-or-unit': usually,
        'new-place': sometimes,
        time: rarely,
      },
      volts: { none: usually, direct: sometimes, moments: sometimes, full: rarely },
      commands: { none: usually, spoiled: sometimes },
      link: { damaged: always, mirrored: sometimes, right: rarely },
      'loose-plug': { 'control-cable': usually, none: usually },
      'goes-with-cable': { 'goes-along': always },
      'goes-with-unit': { 'goes-along': usually, gone: sometimes, stays: sometimes },
    },
  },
  // A capacitor, choke or unknown box at the feed, made for analogue running, swallows the commands; lights stay on.
  {
    id: 'suppressor',
    fixClass: 'suppressor',
    minutes: 15,
    shows: {
      trouble: {
        'stops-lit': usually,
        jerks: sometimes,
        'stops-dark': rarely,
        'runs-by-itself': rarely,
        'gets-hot': rarely,
      },
      when: {
        by: 'parts',
        is: {
          one: { always: usually, 'now-and-then': sometimes, 'at-one-place': rarely },
          several: { always: usually, 'at-the-gap': sometimes, 'now-and-then': sometimes, 'at-one-place': rarely },
        },
      },
      where: ALL_OF_ITS_UNIT,
      // Decoders differ in what they can still read.
      vehicles: { 'every-one': usually, 'one-kind': usually, 'decoders-only': sometimes, 'one-only': sometimes },
      since: { 'supply-or-unit': usually, 'track-or-wires': usually, nothing: sometimes, vehicle: sometimes },
      'goes-off': { nothing: always, 'that-part': rarely, 'all-at-once': rarely },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { ready: always, fault: rarely },
      volts: { full: always },
      commands: { spoiled: usually, 'one-deaf': sometimes, none: sometimes },
      short: { none: always, weak: rarely },
      hot: { nothing: usually, unit: sometimes, accessory: rarely },
      draw: { 'well-below': usually, 'high-idle': sometimes, 'near-the-limit': rarely },
      // The part has power, and it meets the other one the wrong way then.
      swap: { 'no-change': usually, worse: usually },
      'feed-piece': { capacitor: always },
      'old-wiring': { none: usually, 'dead-wires': sometimes },
      'one-loco': { 'like-the-others': usually, deaf: sometimes },
      accessories: { fine: usually, 'at-random': sometimes, 'all-always': rarely },
      programming: { works: usually, 'cannot-read': sometimes },
      before: { 'not-off': always, snaps: rarely },
    },
  },
  // The bus is so long, or so spread out, that the edges of the signal suffer: commands are lost far out, turnouts act at random.
  {
    id: 'long-bus',
    fixClass: 'long-bus',
    minutes: 45,
    well: sometimes,
    shows: {
      trouble: {
        'accessories-wrong': usually,
        'stops-lit': sometimes,
        jerks: sometimes,
        'only-shown': rarely,
        'switches-off': rarely,
      },
      when: { 'now-and-then': usually, 'at-one-place': sometimes, 'with-traffic': rarely, always: rarely },
      where: { far: usually, part: sometimes, everywhere: sometimes },
      vehicles: { 'every-one': usually, 'one-kind': sometimes, 'one-only': sometimes, 'none-needed': usually },
      since: { 'track-or-wires': usually, nothing: usually, 'new-place': sometimes },
      'goes-off': { nothing: always, 'that-part': rarely, 'all-at-once': rarely },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { ready: always, fault: rarely },
      volts: { full: always },
      commands: { spoiled: usually, arrive: usually, 'one-deaf': rarely },
      short: 'unaffected',
      hot: { nothing: always, unit: rarely },
      draw: 'unaffected',
      swap: { 'no-change': always },
      accessories: { 'at-random': usually, 'far-ones': usually, fine: sometimes },
      reports: {
        by: 'sensing',
        is: { none: { fine: always }, some: { fine: usually, 'long-wires': rarely, wild: rarely } },
      },
      'one-loco': { 'like-the-others': usually, deaf: rarely },
      before: { 'not-off': always, snaps: rarely },
    },
  },
  // A second live source, mostly the old throttle, still feeds the same rails.
  {
    id: 'two-sources',
    fixClass: 'two-sources',
    minutes: 10,
    shows: {
      trouble: {
        'switches-off': usually,
        'stops-lit': usually,
        'runs-by-itself': sometimes,
        'gets-hot': sometimes,
        hums: sometimes,
        'only-shown': rarely,
        jerks: rarely,
      },
      when: { 'at-switching-on': usually, always: usually, 'now-and-then': rarely, 'at-the-gap': rarely },
      where: { everywhere: usually, part: usually, spot: rarely },
      vehicles: { 'every-one': usually, 'none-needed': usually, 'decoders-only': sometimes },
      since: { 'track-or-wires': usually, 'supply-or-unit': usually, nothing: rarely },
      'goes-off': TRIPS_ITS_UNIT,
      'comes-back': BACK_WHEN_REMOVED,
      'unit-shows': { fault: usually, ready: sometimes, 'only-breaker': rarely, dark: rarely },
      volts: { none: sometimes, low: sometimes, full: sometimes, direct: sometimes, moments: sometimes },
      commands: { spoiled: usually, none: usually, other: sometimes, arrive: sometimes },
      short: { feeder: usually, none: sometimes, weak: sometimes, track: sometimes },
      hot: { nothing: usually, supply: sometimes, unit: sometimes },
      draw: { 'well-below': usually, above: sometimes, 'high-idle': sometimes },
      // Where it does not trip, the part has power and meets the other one the wrong way then.
      swap: { 'no-change': usually, worse: usually },
      sides: { agree: usually, drift: sometimes },
      // The winding of an old transformer is a few ohms; an electronic throttle or an open switch shows nothing.
      ohms: { short: usually, some: usually, open: sometimes },
      'old-wiring': { 'live-source': always },
      'unfed-test': { stops: usually, 'fed-already': sometimes, 'lit-beyond': rarely },
      before: { 'not-off': usually, snaps: usually },
      cut: { 'both-cut': always, 'both-joined': rarely, 'one-joined': rarely },
      'protection-near': { 'at-once': usually, not: sometimes, late: rarely },
      step: { none: usually, idle: sometimes },
    },
  },
  // The second unit is a command station of its own that was never set to repeat only: each part has its own commands.
  {
    id: 'booster-role',
    fixClass: 'booster-role',
    minutes: 8,
    needs: { parts: ['several'] },
    shows: {
      // Half of the crossings meet unlike commands, so it trips, ticks or only stops obeying.
      trouble: {
        by: 'protection',
        is: {
          latches: { 'stops-lit': usually, 'switches-off': usually, 'runs-by-itself': sometimes, jerks: rarely },
          'tries-again': {
            'stops-lit': usually,
            'switches-off': usually,
            'runs-by-itself': sometimes,
            jerks: sometimes,
          },
          blinks: { 'stops-lit': usually, jerks: usually, 'switches-off': sometimes, 'runs-by-itself': sometimes },
          'folds-back': {
            'stops-lit': usually,
            jerks: usually,
            'switches-off': sometimes,
            'runs-by-itself': sometimes,
          },
        },
      },
      when: { 'at-the-gap': always, always: sometimes },
      where: { part: usually, gaps: usually },
      vehicles: { 'every-one': always },
      since: { 'supply-or-unit': usually, setting: sometimes, 'track-or-wires': sometimes, nothing: sometimes },
      'goes-off': {
        by: 'protection',
        is: {
          latches: {
            nothing: sometimes,
            'that-part': sometimes,
            'all-at-once': usually,
            'one-after-the-other': sometimes,
          },
          'tries-again': {
            nothing: sometimes,
            'that-part': sometimes,
            'all-at-once': usually,
            'one-after-the-other': sometimes,
          },
          blinks: { nothing: usually, 'that-part': sometimes, 'all-at-once': rarely },
          'folds-back': { nothing: usually, 'that-part': sometimes, 'all-at-once': rarely },
        },
      },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { ready: usually, fault: usually, 'only-breaker': rarely },
      volts: { full: always },
      commands: { other: usually, none: sometimes },
      short: { none: usually, vehicle: sometimes },
      hot: 'unaffected',
      draw: 'unaffected',
      sides: { drift: always },
      // No swap of wires makes two sets of commands alike.
      swap: { 'no-change': always },
      settings: { 'sends-own': always },
      link: { right: usually, missing: sometimes, 'wrong-socket': sometimes },
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
      sparks: { 'at-the-gap': usually, none: usually },
      reverser: { 'none-there': usually, acts: sometimes, chatters: rarely },
    },
  },
  // The command station sends a data format that the booster cannot handle, and it reports a fault with nothing but the cable connected; or
  // several formats at once, and decoders do not follow.
  {
    id: 'wrong-format',
    fixClass: 'wrong-format',
    minutes: 5,
    shows: {
      trouble: { 'switches-off': usually, 'only-shown': usually, 'stops-lit': usually, 'stops-dark': sometimes },
      when: { always: usually, 'at-switching-on': usually, 'at-the-gap': rarely },
      where: UNIT_ITSELF,
      // Where several formats are sent, those of one kind do not follow.
      vehicles: { 'none-needed': always, 'one-kind': sometimes, 'every-one': rarely, 'decoders-only': rarely },
      since: { setting: usually, 'supply-or-unit': sometimes, nothing: sometimes },
      'goes-off': {
        by: 'parts',
        is: {
          one: { nothing: sometimes, 'all-at-once': usually },
          several: { nothing: sometimes, 'that-part': usually, 'all-at-once': sometimes },
        },
      },
      'comes-back': STAYS_OFF,
      'unit-shows': { fault: usually, ready: sometimes, 'no-signal': rarely },
      volts: { none: usually, full: usually, moments: rarely },
      commands: { none: usually, spoiled: sometimes, 'one-deaf': sometimes },
      short: { 'only-shown': always, none: sometimes },
      hot: 'unaffected',
      draw: 'unaffected',
      swap: { 'no-change': always },
      step: { idle: usually, none: usually },
      settings: { 'other-format': always },
      // The other unit knows the format, mostly.
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
      'dead-rail': { both: usually, none: sometimes },
      before: { 'not-off': always },
    },
  },
] as const satisfies readonly CauseRow[];
