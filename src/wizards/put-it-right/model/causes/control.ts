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
      control: { 'one-dead': always, 'comes-and-goes': rarely },
      weather: { 'no-matter': usually, 'much-radio': sometimes },
      'handheld-exchanged': { 'with-the-handheld': always, 'with-the-socket': rarely },
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
      control: {
        'weak-bus': usually,
        restarts: usually,
        'one-dead': sometimes,
        'comes-and-goes': sometimes,
        'all-dead': rarely,
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
      control: { 'all-dead': usually, 'weak-bus': usually, restarts: sometimes, 'one-dead': rarely },
      'bus-volts': { low: usually, none: usually, 'low-far': sometimes },
      'handheld-exchanged': { 'all-alike': usually, 'with-the-socket': sometimes, 'with-a-device': sometimes },
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
      where: { 'off-track': usually, everywhere: sometimes, spot: rarely, turnout: rarely },
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
      'handheld-exchanged': { 'all-alike': usually, 'with-a-device': usually },
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
      since: { 'new-place': usually, nothing: sometimes, 'supply-or-unit': rarely },
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
] as const satisfies readonly CauseRow[];
