// The unit or its supply is of the wrong kind, broken, or makes bad contact; and heat, whatever its cause.
import { ALL_OF_ITS_UNIT, BACK_AS_THE_UNIT_DOES, STAYS_OFF, UNIT_ITSELF } from '../families.ts';
import type { CauseRow, Row, ShowsOf } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

const OFF_WITH_ITS_UNIT: ShowsOf<'goes-off'> = {
  by: 'parts',
  is: {
    one: { 'all-at-once': usually, nothing: sometimes },
    several: { 'that-part': usually, nothing: sometimes, 'all-at-once': sometimes },
  },
};

/** Handhelds, where the unit that has lost its supply is the command station. */
const CONTROL_WITH_ITS_UNIT: ShowsOf<'control'> = {
  by: 'parts',
  is: {
    one: { fine: usually, 'all-dead': usually, restarts: sometimes },
    several: { fine: always, 'all-dead': rarely, restarts: rarely },
  },
};

/** It shows without track, train or traffic. */
const WITHOUT_ANY_TRACK = {
  where: UNIT_ITSELF,
  vehicles: { 'none-needed': always, 'every-one': sometimes },
  'goes-off': OFF_WITH_ITS_UNIT,
  'comes-back': STAYS_OFF,
  draw: 'unaffected',
  swap: { 'no-change': always },
  step: { idle: usually, none: sometimes },
  'dead-rail': { both: usually, none: sometimes },
  before: { 'not-off': usually, snaps: usually },
} as const satisfies Partial<Row>;

export const UNITS = [
  // Danger, whatever the cause: something is hot. Switch off first, look for the cause when everything is cold.
  {
    id: 'unsafe-heat',
    fixClass: 'switch-off-now',
    minutes: 10,
    shows: {
      trouble: { 'gets-hot': always },
      when: {
        'after-minutes': usually,
        always: usually,
        'with-traffic': sometimes,
        'at-switching-on': sometimes,
        'after-a-short': rarely,
      },
      where: { spot: usually, 'off-track': usually, everywhere: sometimes, part: sometimes, turnout: rarely },
      vehicles: { 'none-needed': usually, 'every-one': usually, 'one-only': sometimes, many: sometimes },
      since: {
        supply: sometimes,
        nothing: usually,
        'track-or-wires': sometimes,
        'supply-or-unit': sometimes,
        time: sometimes,
        vehicle: sometimes,
        'a-short': sometimes,
      },
      'goes-off': { nothing: usually, 'all-at-once': sometimes, 'that-part': sometimes },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { ready: usually, fault: sometimes, dark: rarely },
      volts: { full: usually, 'low-loaded': sometimes, low: sometimes, none: rarely },
      commands: 'unaffected',
      short: { none: usually, weak: usually },
      hot: {
        smoking: usually,
        'joint-or-rail': sometimes,
        wire: sometimes,
        unit: sometimes,
        supply: sometimes,
        vehicle: sometimes,
        accessory: rarely,
      },
      draw: { 'well-below': usually, 'near-the-limit': sometimes, above: sometimes },
      loss: { none: usually, joint: sometimes, bus: rarely, 'at-the-unit': sometimes },
      sparks: { none: usually, elsewhere: sometimes, 'at-a-wheel': rarely },
    },
  },
  // The supply does not fit its unit: alternating for direct current, the plug the other way round, too many volts or too few.
  {
    id: 'wrong-supply-kind',
    fixClass: 'wrong-supply-kind',
    minutes: 10,
    shows: {
      ...WITHOUT_ANY_TRACK,
      trouble: {
        'switches-off': usually,
        'stops-dark': usually,
        'slow-or-dim': sometimes,
        'gets-hot': sometimes,
        'only-shown': rarely,
        hums: sometimes,
      },
      when: { 'at-switching-on': usually, always: usually, 'with-traffic': rarely, 'after-minutes': rarely },
      since: { supply: always, 'supply-or-unit': usually },
      'unit-shows': { dark: usually, fault: usually, restarts: sometimes, ready: rarely },
      volts: { none: usually, low: sometimes, full: rarely, high: rarely },
      commands: { none: usually, arrive: sometimes },
      short: { none: usually, unit: usually },
      hot: { nothing: usually, unit: sometimes, supply: sometimes },
      labels: { 'wrong-kind': always },
      'supply-lamp': { steady: usually, pulses: sometimes, dark: rarely },
      'goes-with-supply': { 'goes-along': always },
      control: CONTROL_WITH_ITS_UNIT,
      'supply-volts': { wrong: always, collapses: rarely },
      // Units are exchanged each with its own supply.
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
    },
  },
  // The supply is broken: dead, or it gives up as soon as something is drawn.
  {
    id: 'supply-defect',
    fixClass: 'supply-defect',
    minutes: 15,
    shows: {
      ...WITHOUT_ANY_TRACK,
      trouble: { 'stops-dark': usually, 'switches-off': usually, 'slow-or-dim': sometimes, 'gets-hot': rarely },
      when: {
        always: usually,
        'at-switching-on': sometimes,
        'in-mid-run': sometimes,
        'after-minutes': sometimes,
        'now-and-then': sometimes,
        'with-traffic': rarely,
      },
      vehicles: { 'none-needed': usually, 'every-one': usually, many: sometimes },
      // One that gives up as soon as something is drawn bears a little.
      fewer: { 'no-help': usually, helps: sometimes },
      since: {
        supply: sometimes,
        nothing: usually,
        time: sometimes,
        'supply-or-unit': sometimes,
        'a-short': sometimes,
      },
      // A dead one stays dead; with a weak one the unit starts anew again and again.
      'comes-back': { 'never-off': usually, stays: usually, seconds: usually },
      'unit-shows': { dark: usually, restarts: usually, ready: rarely, fault: rarely },
      volts: { none: usually, moments: sometimes, 'low-loaded': sometimes, low: sometimes, full: sometimes },
      commands: { none: usually, arrive: sometimes },
      short: { none: always, unit: rarely },
      hot: { nothing: usually, supply: sometimes },
      'supply-lamp': { dark: usually, pulses: usually, steady: sometimes },
      'goes-with-supply': { 'goes-along': always },
      control: CONTROL_WITH_ITS_UNIT,
      loss: { none: usually, 'at-the-unit': sometimes },
      before: { 'not-off': usually, snaps: usually, dims: sometimes },
      'supply-volts': { none: usually, collapses: usually, wrong: rarely },
      'dead-since': { nothing: usually, unit: sometimes },
      cooling: { 'no-help': usually, helps: sometimes },
      // Units are exchanged each with its own supply.
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
      swap: { 'no-change': usually, worse: sometimes },
      // A weak one has less to give for less.
      'moved-trains': { 'no-change': usually, cured: sometimes },
    },
  },
  // The unit is broken: a fault with only its supply, or only supply and control cable, connected; or it no longer acts on a short.
  {
    id: 'stage-defect',
    fixClass: 'stage-defect',
    minutes: 20,
    shows: {
      ...WITHOUT_ANY_TRACK,
      trouble: {
        'switches-off': usually,
        'stops-dark': usually,
        'only-shown': sometimes,
        'stops-lit': rarely,
        'gets-hot': sometimes,
        jerks: rarely,
      },
      when: { always: usually, 'at-switching-on': usually, 'after-a-short': sometimes, 'in-mid-run': rarely },
      // One that no longer acts on a short is found out where the short is.
      where: {
        by: 'parts',
        is: {
          one: { everywhere: usually, 'off-track': sometimes, turnout: rarely, spot: rarely },
          several: { part: usually, 'off-track': sometimes, everywhere: rarely, turnout: rarely, spot: rarely },
        },
      },
      since: { supply: rarely, 'a-short': usually, nothing: usually, 'supply-or-unit': sometimes, time: rarely },
      'unit-shows': { fault: usually, dark: sometimes, ready: sometimes },
      volts: { none: usually, low: rarely, direct: rarely, full: rarely, moments: rarely },
      commands: { none: usually, spoiled: rarely, arrive: rarely },
      short: { unit: usually, none: sometimes, 'only-shown': rarely },
      hot: { nothing: usually, unit: sometimes },
      'goes-with-unit': { 'goes-along': always },
      'protection-near': { 'at-once': usually, not: sometimes, late: rarely },
      control: CONTROL_WITH_ITS_UNIT,
      'dead-since': { unit: usually, nothing: usually },
      cooling: { 'no-help': usually, helps: rarely },
      'supply-lamp': { steady: always, pulses: rarely },
    },
  },
  // The unit goes off now and then without cause, below its load too, and is well after a restart. Decisive: fed from the other unit, the part is well.
  {
    id: 'unit-cuts-out',
    fixClass: 'unit-cuts-out',
    minutes: 20,
    well: usually,
    shows: {
      trouble: { 'switches-off': always, 'stops-dark': sometimes },
      when: {
        'now-and-then': usually,
        'in-mid-run': sometimes,
        // What trips below its load trips first where the load is high.
        'with-traffic': usually,
        'after-minutes': sometimes,
        'when-set-on': sometimes,
      },
      where: ALL_OF_ITS_UNIT,
      vehicles: { 'every-one': usually, many: usually, 'lit-or-long': usually, 'none-needed': sometimes },
      since: {
        supply: rarely,
        nothing: usually,
        'supply-or-unit': sometimes,
        time: sometimes,
        'track-or-wires': rarely,
        vehicle: sometimes,
        'a-short': rarely,
      },
      'goes-off': {
        by: 'parts',
        is: { one: { 'all-at-once': always }, several: { 'that-part': usually, 'all-at-once': sometimes } },
      },
      'comes-back': {
        button: usually,
        seconds: sometimes,
        'when-removed': sometimes,
        stays: sometimes,
        minutes: rarely,
      },
      'unit-shows': { fault: usually, dark: sometimes, restarts: sometimes },
      volts: { none: always, moments: sometimes },
      commands: { none: always, arrive: rarely },
      short: { none: always, 'only-shown': sometimes },
      hot: { nothing: always, unit: rarely },
      draw: { 'well-below': always, 'near-the-limit': rarely },
      fewer: { 'no-help': usually, helps: usually, 'lit-do-it': sometimes },
      cooling: { 'no-help': usually, helps: rarely },
      'goes-with-unit': { 'goes-along': always },
      before: { snaps: always },
      // Trains that leave its part have no more to fear.
      'moved-trains': { 'no-change': usually, cured: usually },
      control: {
        by: 'parts',
        is: { one: { fine: usually, restarts: sometimes, 'all-dead': rarely }, several: { fine: always } },
      },
    },
  },
  // A socket or plug of a unit is bent, worn or loose: it flickers as one touches it, and may grow warm.
  {
    id: 'socket-damaged',
    fixClass: 'socket-damaged',
    minutes: 15,
    well: sometimes,
    shows: {
      trouble: {
        'stops-dark': usually,
        'switches-off': usually,
        jerks: usually,
        'stops-lit': sometimes,
        'handhelds-dead': rarely,
        'gets-hot': rarely,
      },
      when: {
        'now-and-then': usually,
        always: usually,
        'in-mid-run': sometimes,
        'at-switching-on': rarely,
        'with-traffic': rarely,
      },
      where: ALL_OF_ITS_UNIT,
      vehicles: { 'every-one': always, 'none-needed': sometimes },
      since: {
        supply: sometimes,
        nothing: usually,
        time: sometimes,
        'track-or-wires': sometimes,
        'supply-or-unit': sometimes,
        'new-place': sometimes,
      },
      'goes-off': { nothing: usually, 'that-part': sometimes, 'all-at-once': rarely },
      'comes-back': STAYS_OFF,
      'unit-shows': { ready: usually, dark: sometimes, 'no-signal': sometimes, restarts: sometimes },
      volts: { moments: usually, none: usually, 'low-loaded': sometimes, full: sometimes },
      commands: { none: usually, arrive: sometimes, spoiled: sometimes },
      short: 'unaffected',
      hot: { nothing: usually, wire: usually, unit: rarely },
      draw: 'unaffected',
      swap: { 'no-change': always },
      loss: { 'at-the-unit': usually, none: sometimes },
      'feed-wires': { right: usually, 'one-loose': sometimes },
      'dead-rail': { both: usually, one: sometimes, none: sometimes },
      'loose-plug': { 'track-plug': usually, 'control-cable': usually, 'supply-plug': sometimes, none: rarely },
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
      'goes-with-cable': { stays: usually, 'goes-along': sometimes },
      control: { fine: usually, 'one-dead': rarely, 'comes-and-goes': rarely },
      step: { none: usually, idle: sometimes, loaded: sometimes },
      sparks: { none: usually, elsewhere: sometimes },
    },
  },
] as const satisfies readonly CauseRow[];
