// More is drawn than can be given, for long or for an instant, or heat and mains set the limit.
import {
  BACK_AS_THE_UNIT_DOES,
  BACK_WHEN_COOL,
  QUIET,
  SHORT_ON_THE_LAMPS,
  SNAPS_OFF,
  TOO_LITTLE,
  TRIPS_ITS_UNIT,
} from '../families.ts';
import type { CauseRow, ShowsOf } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** What goes off when a supply gives way: all that hangs on it. */
const SUPPLY_GOES: ShowsOf<'goes-off'> = {
  by: 'parts',
  is: {
    one: { 'all-at-once': always, nothing: sometimes },
    several: { 'all-at-once': usually, 'that-part': usually, nothing: sometimes, 'one-after-the-other': rarely },
  },
};

const ANEW = { seconds: usually, blink: sometimes, button: sometimes, minutes: rarely } as const;
/** The unit starts anew as soon as its supply is there again; some then wait for a button. */
const BACK_WITH_THE_SUPPLY: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: { nothing: { 'never-off': always }, 'that-part': ANEW, 'all-at-once': ANEW, 'one-after-the-other': ANEW },
};

const LIFTED = { 'when-removed': usually, button: sometimes, seconds: sometimes, blink: rarely } as const;
const BACK_WHEN_SOME_ARE_LIFTED: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: { nothing: { 'never-off': always }, 'that-part': LIFTED, 'all-at-once': LIFTED, 'one-after-the-other': LIFTED },
};

/** Vehicles that charge, or lamps that are cold, look like a short for an instant. */
const CHARGING = {
  ...QUIET,
  'goes-off': TRIPS_ITS_UNIT,
  'comes-back': BACK_WHEN_SOME_ARE_LIFTED,
  'unit-shows': SHORT_ON_THE_LAMPS,
  volts: { full: usually, moments: usually, none: sometimes },
  commands: { arrive: usually, none: sometimes },
  // Nothing is shorted; it is over once vehicles are lifted.
  short: { vehicle: usually, none: usually, 'only-shown': sometimes },
  draw: { 'well-below': usually, 'near-the-limit': sometimes },
  fewer: { helps: usually, 'no-help': rarely, 'lit-do-it': rarely, 'one-does-it': rarely },
  before: { snaps: usually, 'not-off': usually },
  'supply-lamp': { steady: usually, pulses: rarely },
} as const;

export const LOAD = [
  // All trains together draw more than unit and supply give.
  {
    id: 'overload-total',
    fixClass: 'not-enough',
    minutes: 25,
    shows: {
      ...TOO_LITTLE,
      where: { everywhere: always, far: rarely, part: rarely },
      vehicles: { many: always, 'every-one': rarely, 'lit-or-long': rarely },
      since: {
        supply: rarely,
        vehicle: usually,
        nothing: sometimes,
        time: rarely,
        'supply-or-unit': sometimes,
        'track-or-wires': rarely,
      },
      hot: { nothing: usually, unit: usually, supply: sometimes },
      before: { dims: usually, snaps: usually },
      labels: { fit: usually, 'too-few-amps': sometimes },
      'supply-volts': { steady: usually, collapses: sometimes },
      'moved-trains': { 'goes-along': usually, 'no-change': usually, cured: rarely },
      'supply-lamp': { steady: always, pulses: rarely },
      'goes-with-unit': { stays: usually, 'goes-along': rarely },
      step: { none: usually, loaded: sometimes },
    },
  },
  // The unit itself is the limit: a stronger supply brings nothing, since the unit switches off at its own amperes.
  {
    id: 'stage-limit',
    fixClass: 'not-enough',
    minutes: 25,
    shows: {
      ...TOO_LITTLE,
      where: { everywhere: usually, part: sometimes },
      vehicles: { many: always, 'every-one': rarely, 'lit-or-long': rarely },
      since: { supply: sometimes, vehicle: usually, 'supply-or-unit': sometimes, nothing: sometimes, setting: rarely },
      volts: { full: usually, 'low-loaded': sometimes },
      hot: { nothing: usually, unit: usually },
      before: { snaps: usually, dims: sometimes },
      labels: { fit: always },
      'moved-trains': { 'goes-along': usually, cured: sometimes, 'no-change': sometimes },
      step: { none: usually, loaded: sometimes },
    },
  },
  // One part has more trains than its unit can feed, while another has room.
  {
    id: 'overload-district',
    fixClass: 'lopsided-split',
    minutes: 40,
    needs: { parts: ['several'] },
    shows: {
      ...TOO_LITTLE,
      where: { part: always, spot: rarely },
      vehicles: { many: always, 'every-one': rarely, 'lit-or-long': rarely },
      since: {
        supply: rarely,
        vehicle: usually,
        'track-or-wires': sometimes,
        'supply-or-unit': sometimes,
        nothing: sometimes,
      },
      hot: { nothing: usually, unit: usually, supply: rarely },
      // Of its own unit; all trains on all units may stay far below the sum.
      draw: { above: usually, 'near-the-limit': sometimes, 'well-below': sometimes },
      before: { dims: usually, snaps: usually },
      'moved-trains': { cured: always, 'goes-along': rarely },
      step: { none: usually, loaded: usually },
    },
  },
  // The supply gives less than the unit could pass on: its volts sag before the unit notices.
  {
    id: 'supply-limit',
    fixClass: 'supply-too-small',
    minutes: 15,
    shows: {
      ...TOO_LITTLE,
      trouble: { 'slow-or-dim': usually, 'switches-off': usually, jerks: sometimes, hums: rarely },
      where: { everywhere: usually, part: usually, far: rarely },
      vehicles: { many: usually, 'every-one': sometimes, 'lit-or-long': sometimes },
      since: { supply: usually, 'supply-or-unit': sometimes, vehicle: usually, nothing: sometimes },
      'goes-off': SUPPLY_GOES,
      'comes-back': BACK_WITH_THE_SUPPLY,
      'unit-shows': { ready: usually, restarts: sometimes, fault: sometimes, dark: rarely },
      volts: { 'low-loaded': always, full: sometimes, low: rarely },
      hot: { supply: usually, nothing: sometimes },
      loss: { none: usually, 'at-the-unit': sometimes, rails: rarely },
      step: { none: usually, loaded: usually },
      'goes-with-supply': { 'goes-along': usually, stays: sometimes },
      'moved-trains': { cured: usually, 'goes-along': sometimes, 'no-change': sometimes },
      'supply-lamp': { steady: usually, pulses: sometimes, dark: rarely },
      'supply-volts': { collapses: usually, steady: sometimes },
      labels: { 'too-few-amps': usually, fit: sometimes },
      // A transformer sags and goes on feeding a short that the unit would have cut off.
      'protection-near': { 'at-once': sometimes, late: sometimes, not: usually },
      'protection-far': { 'at-once': sometimes, not: usually },
      control: { fine: usually, restarts: sometimes },
      // Units are exchanged each with its own supply.
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
    },
  },
  // The supply holds its volts up to its limit, then shuts down and starts anew, before the unit sees anything.
  {
    id: 'supply-hiccup',
    fixClass: 'supply-too-small',
    minutes: 15,
    shows: {
      ...TOO_LITTLE,
      trouble: { 'switches-off': always, jerks: sometimes, 'slow-or-dim': rarely },
      when: {
        'with-traffic': usually,
        'at-switching-on': sometimes,
        'at-the-gap': sometimes,
        'when-set-on': rarely,
        'now-and-then': rarely,
      },
      where: { everywhere: usually, part: sometimes },
      since: { supply: usually, 'supply-or-unit': sometimes, vehicle: sometimes, nothing: sometimes },
      'goes-off': SUPPLY_GOES,
      'comes-back': BACK_WITH_THE_SUPPLY,
      'unit-shows': { restarts: usually, dark: usually, ready: rarely, fault: rarely },
      volts: { moments: usually, full: sometimes, 'low-loaded': sometimes },
      commands: { arrive: usually, none: sometimes },
      hot: { nothing: usually, supply: sometimes },
      draw: { above: usually, 'near-the-limit': usually, 'well-below': sometimes },
      before: { snaps: usually, dims: rarely },
      'goes-with-supply': { 'goes-along': usually, stays: sometimes },
      'moved-trains': { cured: usually, 'goes-along': sometimes, 'no-change': sometimes },
      'supply-lamp': { pulses: usually, dark: sometimes, steady: sometimes },
      'supply-volts': { collapses: always, steady: rarely },
      labels: { 'too-few-amps': usually, fit: sometimes },
      'protection-near': { 'at-once': usually, 'wrong-one': sometimes, not: rarely },
      control: { restarts: usually, fine: usually },
      // Units are exchanged each with its own supply.
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
      step: { none: usually, loaded: usually },
    },
  },
  // One locomotive runs hard, dry or with a tired motor and draws twice what it should.
  {
    id: 'binding-locomotive',
    fixClass: 'binding-locomotive',
    minutes: 40,
    shows: {
      ...TOO_LITTLE,
      trouble: { 'switches-off': usually, 'slow-or-dim': usually, jerks: sometimes, 'gets-hot': sometimes },
      when: {
        'with-traffic': usually,
        'in-mid-run': sometimes,
        'at-one-place': sometimes,
        'after-minutes': sometimes,
        creeping: sometimes,
        'when-set-on': rarely,
      },
      where: { everywhere: always, part: rarely, spot: rarely },
      vehicles: { 'one-only': always, many: rarely },
      since: { vehicle: usually, time: usually, nothing: sometimes },
      volts: { full: usually, 'low-loaded': sometimes },
      hot: { vehicle: usually, nothing: sometimes, unit: rarely },
      draw: { above: usually, 'near-the-limit': usually, 'well-below': sometimes },
      fewer: { 'one-does-it': always, helps: rarely },
      before: { dims: usually, snaps: sometimes, 'not-off': sometimes },
      'moved-trains': { 'goes-along': always },
      'one-loco': { 'runs-badly': usually, 'shorts-alone': sometimes, 'like-the-others': rarely },
    },
  },
  // The filament lamps of lit coaches draw more than the locomotives.
  {
    id: 'lamps',
    fixClass: 'filament-lamps',
    minutes: 40,
    needs: { trains: ['filament-lamps'] },
    shows: {
      ...TOO_LITTLE,
      when: { 'with-traffic': always, 'when-set-on': sometimes, 'after-minutes': sometimes, 'at-switching-on': rarely },
      vehicles: { 'lit-or-long': always, many: sometimes },
      since: { vehicle: usually, nothing: sometimes, 'supply-or-unit': rarely, time: rarely },
      hot: { nothing: usually, unit: usually, supply: sometimes, vehicle: sometimes },
      fewer: { 'lit-do-it': always, helps: sometimes },
      before: { dims: usually, snaps: usually },
      'moved-trains': { 'goes-along': usually, cured: sometimes },
      step: { none: usually, loaded: sometimes },
    },
  },
  // At switching on, or as a vehicle is set on, everything with stored energy, sound or cold lamps charges at once: it looks like a short.
  {
    id: 'inrush',
    fixClass: 'inrush',
    minutes: 20,
    needs: { trains: ['sound-or-stored', 'filament-lamps'] },
    shows: {
      ...CHARGING,
      trouble: { 'switches-off': always, 'only-shown': sometimes, jerks: rarely, 'stops-dark': rarely },
      when: {
        'at-switching-on': usually,
        'when-set-on': usually,
        'at-the-gap': sometimes,
        'after-a-short': rarely,
        'with-traffic': rarely,
        'now-and-then': rarely,
      },
      where: { everywhere: usually, part: usually, gaps: rarely },
      vehicles: { many: usually, 'lit-or-long': usually, 'one-kind': sometimes, 'one-only': sometimes },
      since: { supply: rarely, vehicle: usually, 'supply-or-unit': sometimes, setting: rarely, nothing: sometimes },
      'moved-trains': { 'goes-along': usually, cured: sometimes },
    },
  },
  // A short is cleared, and still nothing comes back, since all vehicles with sound or stored energy charge at each new start.
  {
    id: 'restart-load',
    fixClass: 'restart-load',
    minutes: 20,
    needs: { trains: ['sound-or-stored', 'filament-lamps'] },
    shows: {
      ...CHARGING,
      trouble: { 'switches-off': always, 'only-shown': sometimes, 'stops-dark': sometimes },
      when: { 'after-a-short': always, 'at-switching-on': sometimes, 'when-set-on': rarely },
      where: { everywhere: usually, part: usually },
      vehicles: { many: always, 'lit-or-long': sometimes, 'one-kind': sometimes, 'one-only': rarely },
      since: { 'a-short': usually, vehicle: sometimes, nothing: sometimes },
      'comes-back': {
        by: 'goes-off',
        is: {
          nothing: { 'never-off': always },
          'that-part': { 'when-removed': always, stays: sometimes },
          'all-at-once': { 'when-removed': always, stays: sometimes },
          'one-after-the-other': { 'when-removed': always, stays: sometimes },
        },
      },
      'moved-trains': { 'goes-along': sometimes, cured: usually, 'no-change': sometimes },
    },
  },
  // The unit works near its limit for long, or without air, and protects itself from its own heat.
  {
    id: 'stage-heat',
    fixClass: 'stage-heat',
    minutes: 15,
    well: sometimes,
    shows: {
      ...QUIET,
      trouble: { 'switches-off': always, 'gets-hot': sometimes, 'slow-or-dim': rarely },
      when: { 'after-minutes': always, 'with-traffic': sometimes, 'now-and-then': rarely },
      where: { everywhere: usually, part: usually },
      vehicles: { 'every-one': usually, many: usually, 'lit-or-long': sometimes },
      since: { supply: rarely, nothing: usually, vehicle: sometimes, time: sometimes, 'supply-or-unit': sometimes },
      'goes-off': {
        by: 'parts',
        is: { one: { 'all-at-once': always }, several: { 'that-part': usually, 'all-at-once': sometimes } },
      },
      'comes-back': BACK_WHEN_COOL,
      'unit-shows': { fault: usually, dark: sometimes, ready: rarely, stopped: rarely },
      volts: { full: usually, none: usually },
      commands: { arrive: usually, none: usually },
      hot: { unit: always },
      draw: { 'near-the-limit': usually, 'well-below': sometimes, above: sometimes },
      fewer: { helps: usually, 'no-help': sometimes },
      weather: { 'no-matter': usually, warm: sometimes },
      cooling: { helps: always },
      before: { snaps: always, dims: rarely },
      'goes-with-unit': { stays: usually, 'goes-along': sometimes },
      'moved-trains': { cured: usually, 'goes-along': sometimes, 'no-change': sometimes },
    },
  },
  // The supply works near its limit for long, or is covered, and shuts down from its own heat.
  {
    id: 'supply-heat',
    fixClass: 'supply-heat',
    minutes: 15,
    well: sometimes,
    shows: {
      ...QUIET,
      trouble: { 'switches-off': always, 'gets-hot': sometimes, 'slow-or-dim': sometimes },
      when: { 'after-minutes': always, 'with-traffic': sometimes, 'now-and-then': rarely },
      where: { everywhere: usually, part: sometimes },
      vehicles: { 'every-one': usually, many: usually, 'lit-or-long': sometimes },
      since: { supply: usually, nothing: usually, vehicle: sometimes, time: sometimes, 'supply-or-unit': sometimes },
      'goes-off': {
        by: 'parts',
        is: {
          one: { 'all-at-once': always },
          several: { 'all-at-once': usually, 'that-part': usually, 'one-after-the-other': rarely },
        },
      },
      'comes-back': BACK_WHEN_COOL,
      'unit-shows': { dark: usually, restarts: sometimes, ready: rarely, fault: rarely },
      volts: { none: usually, full: sometimes, 'low-loaded': sometimes },
      commands: { none: usually, arrive: sometimes },
      hot: { supply: always },
      draw: { 'near-the-limit': usually, 'well-below': sometimes, above: sometimes },
      fewer: { helps: usually, 'no-help': sometimes },
      weather: { 'no-matter': usually, warm: sometimes },
      'supply-volts': { steady: usually, none: usually, collapses: sometimes },
      cooling: { helps: always },
      before: { snaps: usually, dims: sometimes },
      'goes-with-supply': { 'goes-along': usually, stays: sometimes },
      'moved-trains': { 'goes-along': sometimes, cured: sometimes, 'no-change': usually },
      'supply-lamp': { dark: usually, pulses: sometimes, steady: sometimes },
      labels: { fit: usually, 'too-few-amps': usually },
      control: { fine: sometimes, 'all-dead': usually, restarts: sometimes },
      // Units are exchanged each with its own supply.
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
    },
  },
  // A worn socket strip, a plug not home or a long thin extension lead: the mains falls at the supply, with load or when touched.
  {
    id: 'mains-sag',
    fixClass: 'mains-sag',
    minutes: 6,
    well: sometimes,
    shows: {
      ...QUIET,
      trouble: { 'switches-off': usually, 'slow-or-dim': usually, jerks: sometimes, 'handhelds-dead': rarely },
      when: { 'now-and-then': usually, 'with-traffic': usually, 'after-minutes': sometimes, 'at-switching-on': rarely },
      where: { everywhere: always, part: rarely },
      vehicles: { 'every-one': usually, many: sometimes },
      since: {
        supply: usually,
        nothing: usually,
        'supply-or-unit': sometimes,
        time: sometimes,
        'new-place': sometimes,
      },
      'goes-off': { 'all-at-once': usually, nothing: usually, 'that-part': rarely },
      'comes-back': BACK_WITH_THE_SUPPLY,
      'unit-shows': { restarts: usually, dark: sometimes, ready: sometimes },
      volts: { 'low-loaded': usually, moments: usually, full: sometimes, low: sometimes },
      commands: { arrive: usually, none: sometimes },
      // The plug or socket itself: never touch its pins.
      hot: { nothing: usually, wire: sometimes },
      draw: 'unaffected',
      fewer: { 'no-help': usually, helps: sometimes },
      before: { dims: usually, snaps: usually },
      'supply-lamp': { pulses: usually, dark: sometimes, steady: sometimes },
      'supply-volts': { collapses: usually, steady: sometimes, none: rarely },
      // Exchanged at their low-voltage plugs the supplies take their mains sockets along.
      'goes-with-supply': { stays: usually, 'goes-along': usually },
      mains: { dips: always },
      'loose-plug': { 'mains-lead': usually, none: sometimes },
      control: { restarts: usually, fine: usually },
      'moved-trains': { 'no-change': always, 'goes-along': rarely },
      loss: { none: usually, 'at-the-unit': sometimes },
      step: { none: usually, loaded: sometimes },
    },
  },
  // A unit takes its commands from an output that trips, or one report line stops all: one short takes everything along.
  {
    id: 'stage-order',
    fixClass: 'stage-order',
    minutes: 20,
    needs: { parts: ['several'] },
    shows: {
      ...QUIET,
      trouble: { 'switches-off': always, 'stops-lit': rarely, 'stops-dark': rarely },
      when: { 'after-a-short': usually, 'with-traffic': sometimes, 'at-the-gap': sometimes, 'now-and-then': sometimes },
      where: { everywhere: always, part: sometimes },
      vehicles: { 'every-one': usually, many: rarely },
      since: {
        supply: rarely,
        'supply-or-unit': usually,
        'track-or-wires': sometimes,
        setting: rarely,
        nothing: sometimes,
      },
      'goes-off': { 'one-after-the-other': usually, 'all-at-once': usually, 'that-part': rarely },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { 'no-signal': usually, stopped: usually, fault: sometimes },
      volts: { none: usually, full: sometimes, direct: rarely },
      commands: { none: usually, arrive: sometimes },
      // The short that began it is of any kind and lies in another part.
      short: { none: usually, vehicle: sometimes, track: rarely },
      before: SNAPS_OFF,
      link: { right: usually, 'wrong-socket': sometimes },
      settings: { right: usually, 'feedback-differs': sometimes },
      'protection-near': { 'wrong-one': usually, 'at-once': usually },
    },
  },
] as const satisfies readonly CauseRow[];
