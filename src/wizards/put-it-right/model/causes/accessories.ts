// Turnouts, signals and what drives them.
import {
  BACK_AS_THE_UNIT_DOES,
  BACK_WHEN_REMOVED,
  QUIET,
  SNAPS_OFF,
  STANDING_SHORT,
  TRIPS_ITS_UNIT,
} from '../families.ts';
import type { CauseRow, Row } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** Trains are well; only turnouts or signals are not, with or without trains. */
const ONLY_ACCESSORIES = {
  ...QUIET,
  trouble: { 'accessories-wrong': always },
  vehicles: { 'none-needed': always, 'every-one': rarely },
} as const satisfies Partial<Row>;

export const ACCESSORIES = [
  // Turnouts live from the same rails as the trains, and those sag just when a turnout needs power.
  {
    id: 'sagging-accessories',
    fixClass: 'sagging-accessories',
    minutes: 40,
    needs: { 'accessory-feed': ['from-the-track'] },
    shows: {
      ...ONLY_ACCESSORIES,
      trouble: { 'accessories-wrong': always, 'slow-or-dim': sometimes, jerks: sometimes },
      when: { 'when-thrown': usually, 'with-traffic': usually, 'now-and-then': rarely },
      where: { far: usually, everywhere: sometimes, turnout: sometimes },
      vehicles: { many: usually, 'every-one': sometimes, 'none-needed': sometimes },
      since: { nothing: usually, 'track-or-wires': usually, vehicle: sometimes },
      volts: { 'low-loaded': usually, full: sometimes, low: rarely },
      draw: { 'near-the-limit': usually, 'well-below': usually, above: rarely },
      loss: { bus: sometimes, rails: sometimes, none: sometimes, joint: rarely },
      fewer: { helps: usually, 'no-help': rarely },
      accessories: { 'with-trains': usually, 'far-ones': usually, 'several-at-once': usually, 'all-always': rarely },
      'accessories-apart': { cured: always, 'no-change': rarely },
    },
  },

  // Decoders that live from the track lose power at each trip, and throw or forget something when it returns.
  {
    id: 'accessory-reset',
    fixClass: 'accessory-reset',
    minutes: 30,
    needs: { 'accessory-feed': ['from-the-track'] },
    shows: {
      ...ONLY_ACCESSORIES,
      trouble: { 'accessories-wrong': always, 'runs-by-itself': rarely, 'switches-off': rarely },
      when: { 'after-a-short': usually, 'at-switching-on': usually },
      where: { everywhere: usually, part: sometimes, turnout: sometimes },
      since: { nothing: usually, 'a-short': sometimes, setting: sometimes, 'track-or-wires': sometimes },
      // Something else trips first.
      'goes-off': { 'all-at-once': usually, 'that-part': usually, nothing: sometimes },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { ready: usually, fault: usually },
      short: { none: usually, vehicle: sometimes, 'one-setting': rarely },
      before: { snaps: usually, 'not-off': usually },
      accessories: { 'after-trips': always },
      'accessories-apart': { cured: usually, 'no-change': sometimes },
      'written-anew': { 'no-help': usually, cured: sometimes },
      'dead-since': { nothing: usually, accessory: usually },
    },
  },

  // The supply of the accessories, its capacitor unit or its wire has nothing left for the second and third throw.
  {
    id: 'accessory-supply-weak',
    fixClass: 'accessory-supply-weak',
    minutes: 20,
    needs: { 'accessory-feed': ['own-supply', 'shares-a-wire'] },
    shows: {
      ...ONLY_ACCESSORIES,
      when: { 'when-thrown': always, 'now-and-then': sometimes, 'after-minutes': rarely },
      where: { everywhere: usually, far: usually, turnout: sometimes },
      since: {
        supply: sometimes,
        'track-or-wires': usually,
        nothing: usually,
        'supply-or-unit': sometimes,
        time: rarely,
      },
      hot: { nothing: usually, supply: sometimes, accessory: rarely },
      'supply-lamp': { steady: usually, pulses: sometimes },
      labels: { fit: usually, 'too-few-amps': usually, 'volts-differ': rarely },
      accessories: { 'several-at-once': usually, 'far-ones': usually, 'all-always': rarely, 'at-random': rarely },
      'accessories-apart': { cured: usually, 'no-change': rarely },
    },
  },

  // An accessory listens to another number than it is called by, or two have the same.
  {
    id: 'accessory-address',
    fixClass: 'accessory-address',
    minutes: 8,
    shows: {
      ...ONLY_ACCESSORIES,
      when: { 'when-thrown': usually, always: usually },
      where: { turnout: always, everywhere: sometimes },
      since: {
        setting: usually,
        'supply-or-unit': sometimes,
        'track-or-wires': usually,
        'a-short': sometimes,
        nothing: sometimes,
      },
      accessories: { 'other-one': usually, 'one-always': usually, 'all-always': sometimes, 'after-trips': rarely },
      'accessory-exchanged': { 'with-the-number': usually, 'stays-everywhere': sometimes },
      'decoder-settings': { 'other-number': usually, right: sometimes },
      'written-anew': { cured: usually, 'no-help': rarely, 'not-taken': rarely },
      'dead-since': { nothing: usually, accessory: sometimes },
    },
  },

  // One accessory has a bad wire, a bad contact or a stiff mechanism.
  {
    id: 'accessory-wiring',
    fixClass: 'accessory-wiring',
    minutes: 15,
    shows: {
      ...ONLY_ACCESSORIES,
      when: { 'when-thrown': usually, always: usually, 'now-and-then': sometimes },
      where: { turnout: always, spot: rarely },
      since: { time: usually, nothing: usually, 'track-or-wires': usually, 'new-place': rarely },
      hot: { nothing: usually, accessory: sometimes },
      // Out of doors, in a cellar, behind damp scenery.
      weather: { 'no-matter': usually, damp: sometimes, warm: rarely },
      accessories: { 'one-always': always, 'at-random': sometimes, 'several-at-once': rarely },
      'accessory-exchanged': { 'with-the-accessory': usually, 'with-the-number': sometimes },
    },
  },

  // A motor with coils is kept under current: its output is set to hold, a switch stays closed, a button sticks.
  {
    id: 'coil-held',
    fixClass: 'coil-held',
    minutes: 15,
    shows: {
      ...ONLY_ACCESSORIES,
      trouble: { 'gets-hot': usually, 'accessories-wrong': usually, hums: usually, 'switches-off': rarely },
      when: { 'when-thrown': usually, always: usually, 'after-minutes': sometimes, 'at-switching-on': sometimes },
      where: { turnout: always, everywhere: rarely, 'off-track': rarely },
      since: {
        setting: usually,
        'supply-or-unit': usually,
        'track-or-wires': usually,
        nothing: usually,
        'a-short': rarely,
      },
      hot: { accessory: always, nothing: sometimes, supply: sometimes },
      // What is burnt moves no more; a supply or a capacitor unit that feeds one coil for good has nothing for the next.
      accessories: { 'one-always': always, 'several-at-once': sometimes, 'all-always': rarely, 'at-random': rarely },
      'accessory-exchanged': { 'with-the-number': usually, 'with-the-accessory': usually },
      'accessories-apart': { 'no-change': usually, cured: rarely },
      'dead-since': { nothing: usually, accessory: usually },
      'supply-lamp': { steady: usually, pulses: rarely },
    },
  },

  // The two wires of the accessory feed are changed over: trains do not mind, some decoders do.
  {
    id: 'accessory-polarity',
    fixClass: 'accessory-polarity',
    minutes: 6,
    shows: {
      ...ONLY_ACCESSORIES,
      when: { always: usually, 'when-thrown': usually },
      where: { everywhere: usually, part: sometimes, turnout: rarely },
      since: { 'supply-or-unit': usually, 'track-or-wires': usually, nothing: rarely },
      accessories: { 'all-always': usually, 'at-random': sometimes, 'one-always': rarely, 'several-at-once': rarely },
      // Where track and accessories share one pair, swapping it turns the whole part against its neighbours.
      swap: { cured: usually, worse: usually, 'no-change': sometimes },
    },
  },

  // A motor, a lamp or a wire of an accessory touches a conductor of the track, or is shorted in itself.
  {
    id: 'accessory-short',
    fixClass: 'accessory-short',
    minutes: 20,
    shows: {
      trouble: { 'switches-off': always, 'accessories-wrong': sometimes, 'gets-hot': rarely, 'handhelds-dead': rarely },
      when: {
        'when-thrown': usually,
        'at-switching-on': usually,
        always: sometimes,
        'now-and-then': sometimes,
        'with-traffic': rarely,
      },
      where: { turnout: usually, everywhere: usually, part: sometimes },
      vehicles: { 'none-needed': always },
      since: { 'track-or-wires': usually, nothing: usually, time: rarely, 'supply-or-unit': rarely },
      'goes-off': TRIPS_ITS_UNIT,
      'comes-back': BACK_WHEN_REMOVED,
      'unit-shows': STANDING_SHORT['unit-shows'],
      volts: { none: usually, moments: sometimes, full: sometimes },
      commands: { none: usually, arrive: sometimes },
      short: { accessory: usually, 'one-setting': usually, track: sometimes },
      hot: { nothing: usually, accessory: usually },
      draw: 'unaffected',
      before: SNAPS_OFF,
      ohms: { short: usually, open: sometimes, some: sometimes },
      'setting-matters': { 'short-in-one': usually, no: usually },
      accessories: { fine: usually, 'one-always': usually, 'after-trips': rarely },
      'accessory-exchanged': { 'with-the-accessory': usually, 'stays-everywhere': sometimes },
      control: { fine: usually, restarts: rarely, 'all-dead': rarely },
    },
  },

  // Now and then one does not throw, without a pattern: a long bus that is open at its end, a weak pulse, a sticky motor.
  {
    id: 'accessory-random',
    fixClass: 'accessory-random',
    minutes: 20,
    well: usually,
    shows: {
      ...ONLY_ACCESSORIES,
      when: { 'now-and-then': always, 'when-thrown': sometimes },
      where: { everywhere: usually, turnout: usually, far: sometimes },
      since: { nothing: usually, time: sometimes, 'track-or-wires': sometimes },
      commands: { arrive: usually, spoiled: sometimes },
      // Long plain wires beside motors and coils pick up their pulses.
      sparks: { none: usually, elsewhere: rarely },
      accessories: { 'at-random': always, 'far-ones': sometimes },
      'accessory-exchanged': { 'stays-everywhere': usually, 'with-the-accessory': sometimes },
      'accessories-apart': { 'no-change': usually, cured: sometimes },
    },
  },
  // A motor that has its decoder built in also feeds the frog: as it throws, or as a wheel stands across, the frog's contact makes a short for an
  // instant, and the motor's own decoder starts anew or forgets.
  {
    id: 'frog-upsets-motor',
    fixClass: 'frog-upsets-motor',
    minutes: 20,
    needs: { frogs: ['live'] },
    shows: {
      ...ONLY_ACCESSORIES,
      trouble: { 'accessories-wrong': always, 'switches-off': sometimes, jerks: rarely },
      when: { 'when-thrown': usually, 'at-one-place': sometimes, 'now-and-then': sometimes },
      where: { turnout: always, everywhere: rarely },
      vehicles: { 'none-needed': usually, 'every-one': usually },
      since: { 'track-or-wires': usually, 'supply-or-unit': usually, nothing: sometimes },
      'goes-off': { nothing: usually, 'that-part': sometimes, 'all-at-once': sometimes },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { ready: usually, fault: sometimes, 'only-breaker': rarely },
      short: { none: usually, 'one-setting': sometimes, vehicle: rarely },
      before: { 'not-off': usually, snaps: sometimes },
      accessories: {
        'one-always': usually,
        'with-trains': sometimes,
        'at-random': sometimes,
        'after-trips': sometimes,
      },
      'accessory-exchanged': { 'stays-everywhere': usually, 'with-the-accessory': usually },
      'accessories-apart': { 'no-change': usually, cured: sometimes },
      sparks: { none: usually, 'at-a-frog': usually },
      unplugging: { 'frog-wire': always, 'no-change': rarely },
    },
  },

  // The program of a computer sends "off" straight after "on": turnouts stop half way, or the power goes, though by hand all is well.
  {
    id: 'program-cuts-pulse',
    fixClass: 'program-cuts-pulse',
    minutes: 10,
    needs: { driven: ['computer'] },
    shows: {
      ...ONLY_ACCESSORIES,
      trouble: { 'accessories-wrong': always, 'switches-off': sometimes },
      when: { 'when-thrown': usually, 'now-and-then': sometimes, always: sometimes, 'in-mid-run': rarely },
      where: { everywhere: usually, turnout: usually },
      since: { setting: usually, 'supply-or-unit': usually, nothing: usually },
      'goes-off': { nothing: usually, 'all-at-once': sometimes },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { ready: usually, stopped: sometimes },
      before: { 'not-off': usually, snaps: sometimes },
      accessories: { 'at-random': usually, 'several-at-once': usually, 'all-always': usually, 'one-always': sometimes },
      control: { 'only-by-computer': always, 'acts-by-itself': sometimes },
      'written-anew': { 'no-help': always, cured: rarely },
    },
  },
  // The supply of signals or turnouts shares a wire with the track: lamps glow that are off, boards get warm, and a derailing may destroy them.
  {
    id: 'accessory-shared-return',
    fixClass: 'accessory-shared-return',
    minutes: 30,
    needs: { 'accessory-feed': ['shares-a-wire'] },
    shows: {
      ...ONLY_ACCESSORIES,
      trouble: {
        'accessories-wrong': always,
        'gets-hot': sometimes,
        'shown-occupied': sometimes,
        'switches-off': rarely,
      },
      when: { always: usually, 'after-a-short': sometimes, 'when-thrown': sometimes, 'now-and-then': sometimes },
      where: { everywhere: usually, turnout: usually, part: sometimes, 'off-track': rarely },
      since: { 'track-or-wires': usually, 'supply-or-unit': usually, nothing: sometimes, 'a-short': sometimes },
      hot: { nothing: usually, accessory: sometimes },
      accessories: { 'all-always': usually, 'at-random': usually, 'one-always': sometimes, 'after-trips': sometimes },
      'accessories-apart': { cured: usually, 'no-change': sometimes },
      reports: {
        by: 'sensing',
        is: { none: 'unaffected', some: { fine: usually, 'one-occupied': sometimes, wild: rarely } },
      },
      'dead-since': { nothing: usually, accessory: usually },
      'other-path': { 'none-matters': usually, 'unplugging-cures': sometimes },
      unplugging: { 'no-change': usually, 'lamp-or-decoder': usually },
    },
  },
] as const satisfies readonly CauseRow[];
