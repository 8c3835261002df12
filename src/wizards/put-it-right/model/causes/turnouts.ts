// Frogs, cuts and wheels inside turnouts and crossings.
import {
  AT_A_TURNOUT,
  QUIET,
  SHORT_FOR_A_MOMENT,
  SHORT_ON_THE_LAMPS,
  SNAPS_OFF,
  STANDING_SHORT,
  TRIPS_BOTH,
} from '../families.ts';
import type { CauseRow, Row } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** A standing short that most often is there with one setting of a turnout only. */
const SHORT_AT_A_TURNOUT = {
  ...STANDING_SHORT,
  where: { turnout: usually, part: usually, everywhere: usually, spot: rarely },
  hot: { nothing: usually, 'joint-or-rail': sometimes, accessory: rarely },
  sparks: { none: usually, 'at-a-frog': sometimes },
} as const satisfies Partial<Row>;

export const TURNOUTS = [
  // A live frog without cuts in the rails beyond it: it meets a rail that is fed the other way, with one setting or as soon as a feeder is added.
  {
    id: 'live-frog',
    fixClass: 'live-frog',
    minutes: 30,
    needs: { rails: ['two'] },
    shows: {
      ...SHORT_AT_A_TURNOUT,
      // A train that comes from the frog's end against the blades joins them too.
      when: { 'when-thrown': usually, 'at-switching-on': usually, always: usually, 'at-one-place': sometimes },
      vehicles: { 'none-needed': always, 'every-one': sometimes },
      since: { 'track-or-wires': usually, nothing: sometimes },
      short: { 'one-setting': usually, feeder: usually, track: sometimes },
      // Of several turnouts that lack it another shorts while one is thrown.
      'setting-matters': { 'short-in-one': always, no: usually },
      'turnout-cuts': { missing: always },
      // A plastic one too, where rails beyond it were joined to the blades, whatever its box said.
      'frog-feed': { fed: usually, plastic: sometimes },
      // With the other setting there is nothing to measure; of several such turnouts one stands the wrong way, mostly.
      ohms: { short: usually, open: sometimes },
      unplugging: { 'no-change': usually, 'frog-wire': sometimes },
      // With the setting that is well the part has power: then the wires matter.
      swap: { 'no-change': usually, worse: usually },
      volts: { none: usually, full: sometimes, moments: sometimes, low: rarely },
      commands: { none: usually, arrive: sometimes },
    },
  },
  // A cut inside a turnout, or in one of its ties, has closed or was never quite through: warmth, a whisker of copper, dust, solder.
  {
    id: 'frog-gap-closed',
    fixClass: 'frog-gap-closed',
    minutes: 25,
    needs: { rails: ['two'] },
    well: rarely,
    shows: {
      ...SHORT_AT_A_TURNOUT,
      trouble: { 'switches-off': always, 'gets-hot': rarely, jerks: rarely },
      when: {
        'at-switching-on': usually,
        always: usually,
        'when-thrown': usually,
        // A frog without a feed of its own waits for the first wheel that stands on it.
        'at-one-place': usually,
        'after-minutes': sometimes,
        'in-mid-run': sometimes,
        'now-and-then': sometimes,
      },
      vehicles: { 'none-needed': always, 'every-one': usually },
      since: { time: usually, 'track-or-wires': usually, nothing: usually },
      short: { track: usually, 'one-setting': usually, weak: rarely },
      'setting-matters': { 'short-in-one': usually, no: usually },
      'turnout-cuts': { closed: always },
      'frog-feed': { fed: usually, none: rarely, plastic: rarely },
      ohms: { short: always, open: sometimes, some: sometimes },
      weather: { 'no-matter': usually, warm: usually },
      unplugging: { 'no-change': usually, 'frog-wire': sometimes },
    },
  },
  // A crossing or another piece of track whose routes touch inside.
  {
    id: 'track-piece-faulty',
    fixClass: 'track-piece-faulty',
    minutes: 15,
    shows: {
      ...STANDING_SHORT,
      // Where the other route has no power of its own it waits for a train.
      when: { 'at-switching-on': usually, always: usually, 'at-one-place': sometimes },
      where: { everywhere: usually, spot: usually, part: sometimes, turnout: sometimes },
      since: { 'track-or-wires': usually, nothing: sometimes },
      short: { track: always },
      'piece-alone': { shorted: always },
      'turnout-cuts': { missing: usually, right: usually },
    },
  },
  // At the frog a wide or narrow-set wheel touches both rails where they come closest.
  {
    id: 'wheel-bridges-frog',
    fixClass: 'wheel-bridges-frog',
    minutes: 30,
    needs: { rails: ['two'] },
    shows: {
      ...AT_A_TURNOUT,
      vehicles: { 'one-only': usually, 'one-kind': usually, 'every-one': sometimes },
      since: { vehicle: usually, nothing: usually, 'track-or-wires': sometimes, 'supply-or-unit': sometimes },
      way: { either: usually, 'one-way': usually, 'one-route': usually },
      fewer: { 'one-does-it': usually, 'no-help': usually },
      'moved-trains': { 'no-change': usually, 'goes-along': sometimes },
      varnish: { cured: always },
      'one-loco': { 'at-one-place': usually, 'like-the-others': usually, 'shorts-alone': sometimes },
    },
  },
  // The switch that turns an automatic live frog over is slower than the unit or breaker: off before it has turned.
  {
    id: 'frog-unit-slow',
    fixClass: 'frog-unit-slow',
    minutes: 20,
    needs: { rails: ['two'], frogs: ['live'] },
    shows: {
      ...AT_A_TURNOUT,
      vehicles: { 'every-one': always, 'one-only': rarely },
      since: { 'supply-or-unit': usually, 'track-or-wires': usually, setting: rarely, nothing: sometimes },
      // Only where the frog stands the other way round as the wheel comes.
      way: { 'one-route': usually, 'one-way': usually, either: sometimes },
      settings: { right: usually, 'trip-low': sometimes },
      'frog-feed': { fed: usually, 'wrong-pole': sometimes },
      unplugging: { 'frog-wire': usually, 'no-change': sometimes },
      'setting-matters': { no: usually, changing: sometimes, 'short-in-one': sometimes },
    },
  },
  // A frog, or its switch, takes its power from the neighbouring part.
  {
    id: 'frog-cross-district',
    fixClass: 'frog-cross-district',
    minutes: 20,
    needs: { rails: ['two'], parts: ['several'], frogs: ['live'] },
    shows: {
      ...AT_A_TURNOUT,
      // Units that share no wire only leave a train without power on that frog; with a shared one it is a short.
      trouble: {
        by: 'commons',
        is: {
          floating: { jerks: usually, 'stops-dark': usually, 'switches-off': sometimes },
          joined: SHORT_FOR_A_MOMENT,
        },
      },
      // A turnout that is left set across joins the parts as soon as both are on.
      when: {
        'at-one-place': usually,
        'at-the-gap': usually,
        'when-thrown': sometimes,
        'at-switching-on': sometimes,
        creeping: rarely,
      },
      where: { turnout: usually, gaps: usually, part: sometimes },
      vehicles: { 'every-one': usually, 'none-needed': sometimes },
      since: { 'track-or-wires': usually, nothing: sometimes },
      'goes-off': {
        by: 'commons',
        is: { floating: { nothing: usually, 'that-part': sometimes, 'all-at-once': sometimes }, joined: TRIPS_BOTH },
      },
      'unit-shows': {
        by: 'commons',
        is: { floating: { ready: usually, fault: sometimes }, joined: SHORT_ON_THE_LAMPS },
      },
      before: { by: 'commons', is: { floating: 'unaffected', joined: SNAPS_OFF } },
      contact: { good: usually, wide: sometimes, dirty: rarely },
      way: { 'one-route': usually, either: usually, 'one-way': rarely },
      short: { none: usually, 'one-setting': usually, vehicle: sometimes, 'both-on': rarely },
      sides: { agree: usually, reversed: sometimes },
      cut: { 'both-cut': usually, 'one-joined': sometimes, 'faintly-joined': rarely },
      'setting-matters': { no: usually, 'short-in-one': usually, 'dead-in-one': rarely },
      unplugging: { 'frog-wire': always },
      'frog-feed': { fed: usually, 'wrong-pole': usually, none: rarely },
      'unfed-test': { stops: usually, 'lit-beyond': sometimes, 'rolls-on': rarely },
      volts: { full: usually, none: sometimes },
      commands: { arrive: usually, none: sometimes },
      draw: { 'well-below': usually, 'high-idle': sometimes },
      sparks: { 'at-a-frog': usually, none: sometimes, 'at-a-wheel': sometimes, 'at-the-gap': sometimes },
    },
  },
  // The switch that feeds a frog has its two wires the wrong way round: the frog has the pole of the other rail with each setting. Weak or well
  // cut off it trips nothing, and trains buzz, spark or stall there.
  {
    id: 'frog-wrong-rail',
    fixClass: 'frog-wrong-rail',
    minutes: 10,
    needs: { rails: ['two'], frogs: ['live'] },
    shows: {
      ...AT_A_TURNOUT,
      trouble: {
        'switches-off': usually,
        jerks: usually,
        'stops-dark': usually,
        hums: sometimes,
        none: sometimes,
        'only-shown': rarely,
      },
      when: { 'at-one-place': always, always: sometimes, 'when-thrown': sometimes },
      vehicles: { 'every-one': always, 'short-ones': sometimes, 'none-needed': sometimes },
      since: { 'track-or-wires': usually, 'supply-or-unit': sometimes, nothing: rarely },
      short: { none: usually, vehicle: usually, 'one-setting': sometimes },
      'setting-matters': { no: usually, 'short-in-one': sometimes, 'dead-in-one': rarely },
      volts: { full: usually, none: sometimes },
      commands: { arrive: usually, none: sometimes },
      before: { 'not-off': usually, snaps: usually },
      way: { either: usually, 'one-route': sometimes },
      unplugging: { 'frog-wire': always, 'no-change': rarely },
      // Without its wire the frog is dead, and long locomotives pass.
      contact: { good: usually, wide: sometimes },
      accessories: { fine: always, 'one-always': rarely },
      'frog-feed': { 'wrong-pole': always, none: rarely },
    },
  },
  // A metal frog that nothing feeds: cut off all round, and its wire was never laid or has come off, or the contact of the motor that should feed
  // it fails. What picks up over a shorter length than the frog stops on it.
  {
    id: 'frog-not-fed',
    fixClass: 'frog-not-fed',
    minutes: 30,
    needs: { rails: ['two'] },
    shows: {
      ...QUIET,
      trouble: { 'stops-dark': always, jerks: usually },
      when: { 'at-one-place': always, creeping: usually, 'at-the-gap': rarely, 'in-mid-run': rarely },
      where: { turnout: always, spot: usually },
      vehicles: { 'short-ones': always, 'one-only': usually, 'every-one': rarely },
      since: { 'track-or-wires': usually, nothing: usually, vehicle: usually, time: sometimes },
      // On both sides of the frog; on itself none.
      volts: { full: usually, none: usually },
      commands: { arrive: usually, none: usually },
      contact: { wide: usually, good: usually },
      'wheel-contact': { breaks: always },
      'dead-rail': { none: usually, one: usually },
      'setting-matters': { no: usually, 'dead-in-one': usually, changing: sometimes },
      way: { either: usually, 'one-route': sometimes },
      'one-loco': { 'at-one-place': usually, 'like-the-others': usually, 'runs-badly': rarely },
      'frog-feed': { none: always, 'one-setting': usually },
      sparks: { none: usually, 'at-a-frog': sometimes },
    },
  },
] as const satisfies readonly CauseRow[];
