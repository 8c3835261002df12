// Handhelds, radio, the control bus and its supply, a computer.
import { BACK_WHEN_REMOVED, QUIET } from '../families.ts';
import type { CauseRow, Row } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** Track and trains are well; what they are driven with is not. */
const CANNOT_BE_DRIVEN = {
  ...QUIET,
  trouble: { 'handhelds-dead': always, 'stops-lit': sometimes },
  where: { 'off-track': usually, everywhere: sometimes },
  vehicles: { 'every-one': usually, 'none-needed': usually },
} as const satisfies Partial<Row>;

/** Throttles on a cable with too few volts. */
const WEAK_BUS = {
  'weak-bus': usually,
  restarts: usually,
  'one-dead': sometimes,
  'comes-and-goes': sometimes,
  'all-dead': sometimes,
} as const;

const NO_BUS_SUPPLY = { 'all-dead': usually, 'weak-bus': usually, restarts: sometimes, 'one-dead': rarely } as const;

export const CONTROL = [
  // One handheld is out of range, its battery is empty, or it is not registered; the others work.
  {
    id: 'handheld-lost',
    fixClass: 'handheld-lost',
    minutes: 5,
    needs: { driven: ['handhelds', 'radio'] },
    well: sometimes,
    shows: {
      ...CANNOT_BE_DRIVEN,
      // Its train runs on at the last command.
      trouble: { 'handhelds-dead': usually, 'stops-lit': usually, 'runs-by-itself': rarely },
      when: { 'now-and-then': usually, 'in-mid-run': usually, always: usually, 'at-switching-on': sometimes },
      vehicles: { 'every-one': usually, 'none-needed': usually, 'one-only': sometimes },
      since: { nothing: usually, time: usually, setting: sometimes, 'new-place': rarely },
      // Where one is all there is, one dead is all dead; set to another channel than its receiver it is dead from the first.
      control: {
        by: 'driven',
        is: {
          handhelds: { 'one-dead': always, 'comes-and-goes': rarely, 'all-dead': rarely },
          radio: { 'one-dead': usually, 'all-dead': usually, 'comes-and-goes': sometimes },
          'at-the-unit': { 'one-dead': always },
          computer: { 'one-dead': always },
        },
      },
      weather: { 'no-matter': usually, 'much-radio': sometimes },
      'handheld-exchanged': { 'with-the-handheld': usually, 'with-the-socket': rarely, 'all-alike': sometimes },
    },
  },

  // The control bus has too few volts where they are needed: a badly crimped plug, a long thin cable, too many devices on it.
  {
    id: 'bus-weak',
    fixClass: 'control-bus-weak',
    minutes: 20,
    needs: { driven: ['handhelds', 'radio', 'computer'] },
    well: sometimes,
    shows: {
      ...CANNOT_BE_DRIVEN,
      trouble: { 'handhelds-dead': always, 'stops-lit': sometimes, 'accessories-wrong': rarely, 'only-shown': rarely },
      when: { 'now-and-then': usually, always: usually, 'at-switching-on': sometimes, 'with-traffic': rarely },
      where: { 'off-track': usually, far: sometimes, everywhere: sometimes },
      since: {
        'track-or-wires': usually,
        'supply-or-unit': usually,
        nothing: sometimes,
        time: sometimes,
        'new-place': sometimes,
      },
      'unit-shows': { ready: always, restarts: rarely, 'no-signal': rarely },
      commands: { arrive: always, spoiled: rarely },
      // By radio only the receiver hangs on it: whether it works has nothing to do with where people stand, and a press is seldom lost.
      control: {
        by: 'driven',
        is: {
          handhelds: WEAK_BUS,
          radio: { 'all-dead': usually, restarts: sometimes, 'comes-and-goes': rarely },
          'at-the-unit': WEAK_BUS,
          computer: WEAK_BUS,
        },
      },
      'bus-volts': { 'low-far': usually, low: sometimes },
      'handheld-exchanged': { 'with-the-socket': usually, 'all-alike': sometimes, 'with-a-device': sometimes },
      'goes-with-cable': { 'goes-along': usually, stays: usually },
      'loose-plug': { none: usually, 'control-cable': sometimes },
    },
  },

  // The control bus, or a hub in it, lacks the supply of its own that it needs.
  {
    id: 'bus-supply-missing',
    fixClass: 'control-bus-supply',
    minutes: 10,
    needs: { driven: ['handhelds', 'radio', 'computer'] },
    shows: {
      ...CANNOT_BE_DRIVEN,
      trouble: { 'handhelds-dead': always, 'stops-lit': sometimes, 'stops-dark': rarely },
      when: { always: usually, 'at-switching-on': usually, 'in-mid-run': rarely },
      since: {
        supply: usually,
        'supply-or-unit': usually,
        'new-place': sometimes,
        nothing: sometimes,
        'track-or-wires': sometimes,
      },
      // By radio it is the receiver that hangs on it: then all are dead.
      control: {
        by: 'driven',
        is: {
          handhelds: NO_BUS_SUPPLY,
          radio: { 'all-dead': always, restarts: rarely },
          'at-the-unit': NO_BUS_SUPPLY,
          computer: NO_BUS_SUPPLY,
        },
      },
      'bus-volts': { low: usually, none: usually, 'low-far': sometimes },
      'handheld-exchanged': { 'all-alike': usually, 'with-the-socket': sometimes, 'with-a-device': rarely },
      'goes-with-supply': { stays: usually, 'goes-along': sometimes },
      'supply-lamp': { dark: usually, steady: sometimes },
      'supply-volts': { steady: usually, none: sometimes },
      'loose-plug': { none: usually, 'supply-plug': sometimes },
      mains: { steady: always, off: rarely },
    },
  },

  // Track power gets into the control bus, at a frame, a crushed cable, a turntable or another accessory.
  {
    id: 'into-control-bus',
    fixClass: 'into-control-bus',
    minutes: 20,
    shows: {
      trouble: {
        'handhelds-dead': usually,
        'switches-off': sometimes,
        'accessories-wrong': sometimes,
        'only-shown': sometimes,
      },
      when: {
        'at-switching-on': usually,
        always: usually,
        'when-thrown': sometimes,
        'after-a-short': sometimes,
        'now-and-then': sometimes,
        'at-one-place': sometimes,
        'at-the-gap': rarely,
      },
      where: { 'off-track': usually, everywhere: sometimes, spot: rarely, turnout: rarely, turntable: sometimes },
      vehicles: { 'none-needed': usually, 'every-one': sometimes },
      since: { 'track-or-wires': usually, nothing: usually, 'a-short': sometimes, time: sometimes },
      'goes-off': { nothing: usually, 'all-at-once': usually, 'that-part': rarely },
      'comes-back': BACK_WHEN_REMOVED,
      'unit-shows': { ready: usually, fault: usually, restarts: usually, dark: rarely },
      volts: { full: usually, none: sometimes },
      commands: { arrive: usually, none: sometimes, spoiled: sometimes },
      short: { none: usually, accessory: sometimes, 'only-shown': sometimes, weak: sometimes, feeder: rarely },
      hot: { nothing: usually, unit: sometimes, accessory: sometimes, wire: rarely },
      draw: 'unaffected',
      before: { 'not-off': usually, snaps: usually },
      accessories: { fine: usually, 'all-always': rarely, 'at-random': rarely, 'one-always': rarely },
      control: { 'all-dead': usually, restarts: usually, 'weak-bus': sometimes },
      'bus-volts': { low: usually, full: usually, none: rarely },
      'handheld-exchanged': { 'all-alike': sometimes, 'with-a-device': usually, 'with-the-socket': rarely },
      'goes-with-cable': { stays: usually, 'goes-along': sometimes },
      'dead-since': { nothing: usually, control: sometimes, unit: rarely },
      unplugging: { 'no-change': usually, 'lamp-or-decoder': sometimes, detector: rarely },
    },
  },

  // Radio throttles, or now and then the rails themselves, suffer from other radio: in a hall, at an exhibition, beside a mast.
  {
    id: 'radio-disturbed',
    fixClass: 'radio-disturbed',
    minutes: 20,
    needs: { driven: ['radio', 'computer'] },
    well: usually,
    shows: {
      ...CANNOT_BE_DRIVEN,
      trouble: { 'stops-lit': usually, 'handhelds-dead': usually, jerks: sometimes, 'runs-by-itself': sometimes },
      when: { 'now-and-then': always, 'in-mid-run': sometimes, always: rarely },
      where: { everywhere: usually, 'off-track': usually, far: sometimes, spot: rarely },
      vehicles: { 'every-one': always, 'none-needed': sometimes },
      since: { 'new-place': usually, nothing: usually, 'supply-or-unit': sometimes, time: rarely },
      commands: { arrive: usually, spoiled: sometimes },
      weather: { 'much-radio': usually, 'no-matter': sometimes },
      control: { 'comes-and-goes': usually, 'all-dead': sometimes, 'one-dead': sometimes, fine: rarely },
    },
  },

  // A computer switches the power on or off, stops trains or drives them, as it was told once.
  {
    id: 'computer-acts',
    fixClass: 'computer-acts',
    minutes: 10,
    needs: { driven: ['computer'] },
    well: sometimes,
    shows: {
      ...QUIET,
      trouble: {
        'runs-by-itself': usually,
        'switches-off': usually,
        'stops-lit': sometimes,
        'accessories-wrong': sometimes,
        'handhelds-dead': rarely,
        'stops-dark': rarely,
      },
      when: {
        'now-and-then': usually,
        'in-mid-run': sometimes,
        'after-a-short': sometimes,
        'at-switching-on': sometimes,
        'at-one-place': sometimes,
      },
      where: { everywhere: always, part: rarely, spot: rarely },
      vehicles: { 'every-one': usually, 'none-needed': sometimes, 'one-only': sometimes },
      since: { setting: usually, nothing: usually, 'supply-or-unit': rarely, 'new-place': rarely },
      'goes-off': { nothing: usually, 'all-at-once': usually },
      'comes-back': {
        by: 'goes-off',
        is: {
          nothing: { 'never-off': always },
          'that-part': { seconds: usually, stays: usually, button: sometimes },
          'all-at-once': { seconds: usually, stays: usually, button: sometimes },
          'one-after-the-other': { seconds: usually, stays: usually, button: sometimes },
        },
      },
      'unit-shows': { ready: usually, stopped: usually, fault: rarely },
      volts: { full: usually, none: sometimes },
      before: { 'not-off': usually, snaps: usually },
      accessories: { fine: usually, 'at-random': sometimes },
      control: { 'acts-by-itself': always },
      'other-path': { 'unplugging-cures': usually, 'none-matters': sometimes },
    },
  },
  // An accessory hangs on the line of the throttles or of the reports: it draws its power from it, or joins it to a supply of its own.
  {
    id: 'accessory-on-bus',
    fixClass: 'accessory-on-bus',
    minutes: 20,
    shows: {
      ...QUIET,
      trouble: {
        'handhelds-dead': usually,
        'accessories-wrong': usually,
        'shown-occupied': sometimes,
        'switches-off': rarely,
        'stops-lit': rarely,
      },
      when: {
        'when-thrown': usually,
        'at-switching-on': usually,
        always: usually,
        'now-and-then': sometimes,
        'with-traffic': rarely,
      },
      where: { 'off-track': usually, everywhere: sometimes, turnout: sometimes, part: rarely },
      vehicles: { 'none-needed': always, 'every-one': sometimes },
      since: { 'track-or-wires': usually, 'supply-or-unit': usually, nothing: sometimes },
      'unit-shows': { ready: usually, restarts: sometimes, fault: rarely },
      hot: { nothing: usually, accessory: sometimes },
      control: {
        restarts: usually,
        'weak-bus': usually,
        'all-dead': sometimes,
        fine: sometimes,
        'comes-and-goes': rarely,
      },
      'bus-volts': { low: usually, full: usually, 'low-far': sometimes },
      'handheld-exchanged': { 'with-a-device': usually, 'all-alike': sometimes },
      accessories: { fine: usually, 'one-always': sometimes, 'at-random': sometimes, 'all-always': rarely },
      reports: {
        by: 'sensing',
        is: { none: 'unaffected', some: { fine: usually, wild: usually, absent: sometimes, 'one-occupied': rarely } },
      },
      'accessories-apart': { cured: usually, 'no-change': sometimes },
      unplugging: { 'no-change': usually, 'lamp-or-decoder': usually },
    },
  },

  // The computer gets no connection to the layout: its cable, its interface, the port or the speed that its program asks for.
  {
    id: 'computer-silent',
    fixClass: 'computer-not-connected',
    minutes: 15,
    needs: { driven: ['computer'] },
    well: rarely,
    shows: {
      ...CANNOT_BE_DRIVEN,
      trouble: {
        'handhelds-dead': usually,
        'only-shown': usually,
        'stops-lit': usually,
        'accessories-wrong': sometimes,
        'cannot-be-read': rarely,
        'shown-occupied': rarely,
      },
      when: { always: usually, 'at-switching-on': usually, 'now-and-then': sometimes, 'in-mid-run': sometimes },
      where: { 'off-track': always, everywhere: rarely },
      since: {
        setting: usually,
        'supply-or-unit': usually,
        nothing: usually,
        time: usually,
        'new-place': sometimes,
      },
      control: { 'computer-silent': always, 'all-dead': rarely },
      'goes-with-cable': { stays: usually, 'goes-along': sometimes },
      reports: { by: 'sensing', is: { none: 'unaffected', some: { fine: usually, absent: sometimes } } },
      'loose-plug': { none: usually, 'control-cable': sometimes },
    },
  },
] as const satisfies readonly CauseRow[];
