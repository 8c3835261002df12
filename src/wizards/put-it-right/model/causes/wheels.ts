// One vehicle: its wheels, its wipers, its body, and what is loose or touching inside it.
import {
  BACK_AS_THE_UNIT_DOES,
  QUIET,
  SHORT_FOR_A_MOMENT,
  SHORT_ON_THE_LAMPS,
  SNAPS_OFF,
  TRIPS_BOTH,
  TRIPS_ITS_UNIT,
} from '../families.ts';
import type { CauseRow, Row, ShowsOf } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** A vehicle that shorts stays where it is, so that most often it has to be lifted before anything comes back. */
const BACK_WHEN_LIFTED: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: {
    nothing: { 'never-off': always, blink: rarely },
    'that-part': { 'when-removed': usually, button: sometimes, seconds: sometimes, blink: rarely, stays: rarely },
    'all-at-once': { 'when-removed': usually, button: sometimes, seconds: sometimes, blink: rarely, stays: rarely },
    'one-after-the-other': { 'when-removed': usually, button: sometimes, seconds: sometimes, stays: rarely },
  },
};

/** Metal of one vehicle joins the two sides. */
const SHORTED_BY_A_VEHICLE = {
  trouble: SHORT_FOR_A_MOMENT,
  vehicles: { 'one-only': always },
  'goes-off': TRIPS_ITS_UNIT,
  'comes-back': BACK_WHEN_LIFTED,
  'unit-shows': SHORT_ON_THE_LAMPS,
  volts: { full: usually, none: usually, moments: sometimes },
  commands: { arrive: usually, none: usually },
  draw: 'unaffected',
  fewer: { 'one-does-it': always },
  'moved-trains': { 'goes-along': always },
  before: SNAPS_OFF,
} as const satisfies Partial<Row>;

/** Only this one runs badly; the others have nothing of it. */
const BAD_CONTACT = {
  ...QUIET,
  vehicles: { 'one-only': always },
  fewer: { 'one-does-it': usually, 'no-help': usually },
  'moved-trains': { 'goes-along': always },
} as const satisfies Partial<Row>;

export const WHEELS = [
  // A wiper or a bogie of one vehicle has lost contact: dirty, bent, or too few wheels that pick up.
  {
    id: 'pickup',
    fixClass: 'pickup',
    minutes: 25,
    well: sometimes,
    shows: {
      ...BAD_CONTACT,
      trouble: {
        'stops-dark': usually,
        jerks: usually,
        'slow-or-dim': rarely,
        'stops-lit': sometimes,
        'cannot-be-read': rarely,
      },
      when: {
        'at-one-place': usually,
        'now-and-then': usually,
        'at-the-gap': usually,
        always: sometimes,
        'in-mid-run': rarely,
        creeping: usually,
      },
      where: { everywhere: usually, turnout: usually, spot: sometimes, gaps: usually, part: rarely },
      vehicles: { 'one-only': always, 'short-ones': rarely },
      since: {
        time: usually,
        nothing: sometimes,
        vehicle: sometimes,
        'vehicle-opened': sometimes,
        'track-or-wires': rarely,
      },
      way: { either: usually, 'one-way': sometimes, 'one-route': sometimes },
      'one-loco': {
        'runs-badly': usually,
        'at-one-place': sometimes,
        'stops-later': rarely,
        'like-the-others': rarely,
      },
      'vehicle-in-hand': { wipers: usually, nothing: sometimes, 'loose-inside': rarely },
      programming: { works: usually, 'cannot-read': sometimes },
      sparks: { none: usually, 'at-a-wheel': sometimes },
      'wheel-contact': { breaks: always },
    },
  },

  // A wire, a tab or a plug inside one locomotive works loose: it stops after a while, wherever it is.
  {
    id: 'loco-loose-contact',
    fixClass: 'loco-loose-contact',
    minutes: 30,
    well: sometimes,
    shows: {
      ...BAD_CONTACT,
      trouble: { 'stops-dark': usually, 'stops-lit': usually, jerks: usually },
      when: {
        'in-mid-run': usually,
        'now-and-then': usually,
        'after-minutes': sometimes,
        creeping: rarely,
        always: rarely,
      },
      where: { everywhere: always, turnout: rarely, spot: rarely },
      since: { vehicle: usually, 'vehicle-opened': usually, nothing: usually, time: sometimes, 'a-short': rarely },
      commands: { arrive: usually, 'one-deaf': usually },
      // In the motor's own wires the lamps stay.
      'wheel-contact': { breaks: usually, holds: sometimes },
      way: { either: usually, 'one-way': rarely, 'one-route': rarely },
      'one-loco': { 'stops-later': usually, 'runs-badly': usually, 'lights-only': sometimes, deaf: rarely },
      'vehicle-in-hand': { 'loose-inside': usually, nothing: sometimes },
      programming: { works: usually, 'cannot-read': sometimes },
      // A rest or a shove while the number is written helps for a moment.
      'written-anew': { 'no-help': usually, cured: rarely },
    },
  },

  // A wheelset joins the two rails: its insulated wheel is on the wrong side, has slipped, or its insulation is bridged.
  {
    id: 'wheelset-short',
    fixClass: 'wheelset-short',
    minutes: 15,
    needs: { rails: ['two'] },
    shows: {
      ...SHORTED_BY_A_VEHICLE,
      when: {
        'when-set-on': usually,
        always: usually,
        'in-mid-run': sometimes,
        'now-and-then': sometimes,
        'at-switching-on': sometimes,
        'at-one-place': rarely,
        'with-traffic': rarely,
        'at-the-gap': rarely,
      },
      where: { everywhere: always, spot: rarely, gaps: rarely },
      // Set on again after cleaning it may short for the first time, since dirt insulates too.
      since: { vehicle: usually, 'vehicle-opened': rarely, nothing: usually, 'a-short': sometimes, time: rarely },
      short: { vehicle: always, none: rarely },
      // The unit goes off before a wheel gets hot.
      hot: { nothing: usually, vehicle: rarely, 'joint-or-rail': rarely },
      // A wagon may be it: then the locomotives are all alike.
      'one-loco': { 'shorts-alone': usually, 'like-the-others': usually },
      'vehicle-in-hand': { 'wheel-wrong': usually, nothing: sometimes },
      programming: { works: usually, 'shorts-there': usually },
      sparks: { none: usually, 'at-a-wheel': sometimes },
    },
  },

  // A cracked axle gear, a bare wire or a blob of solder inside one locomotive joins the two sides, most often only now and then.
  {
    id: 'loco-short-inside',
    fixClass: 'loco-short-inside',
    minutes: 30,
    well: sometimes,
    shows: {
      ...SHORTED_BY_A_VEHICLE,
      // A wire of the motor at the frame drives it straight from the rails, and the decoder switches itself off or dies of it.
      trouble: {
        by: 'protection',
        is: {
          latches: { 'switches-off': always, 'runs-by-itself': sometimes, 'stops-lit': sometimes, jerks: rarely },
          'tries-again': {
            'switches-off': always,
            'runs-by-itself': sometimes,
            'stops-lit': sometimes,
            jerks: sometimes,
          },
          blinks: { jerks: usually, 'switches-off': sometimes, 'runs-by-itself': sometimes, 'stops-lit': sometimes },
          'folds-back': {
            'stops-dark': sometimes,
            'switches-off': sometimes,
            jerks: sometimes,
            'stops-lit': sometimes,
          },
        },
      },
      when: {
        'in-mid-run': usually,
        'now-and-then': usually,
        'when-set-on': usually,
        'at-switching-on': sometimes,
        always: sometimes,
        'at-one-place': rarely,
        'with-traffic': rarely,
      },
      where: { everywhere: always, spot: rarely },
      since: { vehicle: usually, 'vehicle-opened': usually, nothing: usually, time: sometimes, 'a-short': rarely },
      short: { vehicle: usually, none: sometimes },
      // The current goes through the decoder, which is not made for it.
      hot: { nothing: usually, vehicle: usually },
      way: { either: usually, 'one-way': sometimes, 'one-route': rarely },
      'one-loco': {
        'shorts-alone': usually,
        'runs-badly': sometimes,
        'runs-off': sometimes,
        deaf: rarely,
        'stops-later': rarely,
      },
      'vehicle-in-hand': { 'loose-inside': usually, nothing: sometimes },
      programming: { works: usually, 'shorts-there': usually, 'cannot-read': rarely },
      sparks: { none: usually, elsewhere: rarely, 'at-a-wheel': rarely },
    },
  },

  // Wheels of one vehicle stand too close or too wide, so that at turnouts they touch the rail of the other side.
  {
    id: 'wheelset-at-turnouts',
    fixClass: 'wheelset-short',
    minutes: 15,
    needs: { rails: ['two'] },
    shows: {
      ...SHORTED_BY_A_VEHICLE,
      when: { 'at-one-place': always, 'now-and-then': sometimes, 'with-traffic': rarely },
      where: { turnout: always, spot: rarely },
      vehicles: { 'one-only': usually, 'every-one': rarely },
      since: { vehicle: usually, nothing: usually, time: rarely, 'track-or-wires': rarely },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      volts: { full: usually, moments: sometimes, none: rarely },
      commands: { arrive: always, none: rarely },
      short: { none: usually, vehicle: usually },
      hot: { nothing: usually, vehicle: rarely, 'joint-or-rail': rarely },
      way: { 'one-route': usually, either: sometimes, 'one-way': sometimes },
      'one-loco': { 'shorts-alone': usually, 'like-the-others': sometimes, 'at-one-place': sometimes },
      'vehicle-in-hand': { 'wheel-wrong': usually, nothing: sometimes },
      reports: { fine: usually, wild: sometimes },
      varnish: { cured: usually, 'no-change': usually },
      sparks: { 'at-a-frog': usually, 'at-a-wheel': sometimes, none: sometimes },
    },
  },

  // Metal bodies or couplings of two vehicles touch, one on each rail's side: across a gap, in a curve, or at the end of a loop.
  {
    id: 'metal-bodies',
    fixClass: 'metal-bodies',
    minutes: 20,
    needs: { rails: ['two'] },
    well: sometimes,
    shows: {
      ...SHORTED_BY_A_VEHICLE,
      when: {
        'at-the-gap': usually,
        'at-one-place': usually,
        'now-and-then': sometimes,
        'when-set-on': sometimes,
        'with-traffic': rarely,
      },
      where: { gaps: usually, spot: usually, loop: sometimes, turnout: usually, everywhere: sometimes },
      vehicles: { coupled: usually, 'one-only': sometimes, 'lit-or-long': sometimes },
      since: { vehicle: usually, 'vehicle-opened': rarely, nothing: usually, time: rarely },
      'goes-off': {
        by: 'parts',
        is: { one: TRIPS_ITS_UNIT, several: TRIPS_BOTH },
      },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      volts: { full: usually, moments: sometimes, none: rarely },
      commands: { arrive: always, none: rarely },
      short: { none: usually, vehicle: usually },
      hot: { nothing: usually, vehicle: sometimes },
      way: { either: usually, 'one-route': sometimes, 'one-way': sometimes },
      fewer: { 'one-does-it': usually, 'no-help': sometimes },
      'one-loco': { 'like-the-others': usually, 'at-one-place': sometimes, 'shorts-alone': rarely },
      'vehicle-in-hand': { 'body-touches': usually, nothing: sometimes },
      loop: { 'no-loop': usually, fine: sometimes, 'trips-long-only': sometimes },
      sparks: { none: usually, elsewhere: sometimes, 'at-the-gap': sometimes },
    },
  },
  // Wheels turn and the train does not follow: a traction tyre is worn or gone, wheels or rails are oily, or the train is too heavy for the climb. No
  // fault of the power: lights are bright, and others climb there with as many wagons, or none does.
  {
    id: 'wheels-slip',
    fixClass: 'wheels-slip',
    minutes: 15,
    shows: {
      ...QUIET,
      trouble: { slips: always, 'slow-or-dim': sometimes, 'stops-lit': rarely },
      when: { always: usually, 'at-one-place': usually, 'after-minutes': rarely, 'now-and-then': rarely },
      where: { everywhere: usually, spot: sometimes },
      vehicles: { 'one-only': always, coupled: sometimes, 'lit-or-long': sometimes, 'one-kind': rarely },
      since: { time: usually, vehicle: usually, nothing: usually, 'track-or-wires': sometimes },
      fewer: { 'no-help': always },
      'one-loco': { 'runs-badly': usually, 'like-the-others': usually },
      'vehicle-in-hand': { 'no-grip': usually, nothing: usually, wipers: rarely },
      'written-anew': { 'no-help': always },
    },
  },
] as const satisfies readonly CauseRow[];
