// Volts lost on the way, rails that do not touch, stretches that lack power.
import { QUIET } from '../families.ts';
import type { CauseRow, Row, ShowsOf } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** Volts are lost between unit and train: the more, the more current flows. Nothing goes off. */
const LOST_ON_THE_WAY = {
  ...QUIET,
  trouble: {
    'slow-or-dim': always,
    // Decoders that fall below their least volts start anew, and turnouts do not throw.
    jerks: sometimes,
    'accessories-wrong': sometimes,
    'gets-hot': sometimes,
    'switches-off': rarely,
  },
  when: { always: usually, 'with-traffic': usually },
  where: { far: always, everywhere: sometimes, part: rarely, spot: rarely },
  vehicles: { 'every-one': usually, many: usually, 'one-kind': sometimes },
  since: { nothing: usually, 'track-or-wires': usually, vehicle: sometimes, 'new-place': sometimes, time: rarely },
  volts: { 'low-loaded': always, low: rarely },
  commands: { arrive: always, spoiled: rarely },
  short: { none: always, weak: rarely },
  draw: { 'well-below': usually, 'near-the-limit': sometimes },
  fewer: { helps: usually, 'no-help': sometimes },
  step: { none: usually, loaded: sometimes },
  // What is lost on the way there, and the same on the way back, keeps a short far out below the trip level.
  'protection-far': { not: usually, 'at-once': sometimes },
  accessories: {
    by: 'accessory-feed',
    is: {
      'own-supply': 'unaffected',
      'shares-a-wire': 'unaffected',
      'from-the-track': { fine: usually, 'far-ones': usually, 'with-trains': sometimes },
    },
  },
} as const satisfies Partial<Row>;

/** A stretch beyond one place has no power on one rail, at least. */
const DEAD_BEYOND = {
  ...QUIET,
  trouble: { 'stops-dark': always, jerks: rarely },
  when: { 'at-one-place': always, 'at-the-gap': rarely, always: rarely },
  where: { spot: usually, part: sometimes, turnout: sometimes },
  vehicles: { 'every-one': always, 'short-ones': rarely },
  volts: { none: always },
  commands: { none: always },
  swap: { 'no-change': always },
} as const satisfies Partial<Row>;

const TOUCHING = {
  minutes: sometimes,
  seconds: sometimes,
  blink: sometimes,
  stays: sometimes,
  button: rarely,
} as const;
const BACK_WHEN_IT_TOUCHES: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: {
    nothing: { 'never-off': always },
    'that-part': TOUCHING,
    'all-at-once': TOUCHING,
    'one-after-the-other': TOUCHING,
  },
};

export const WIRES_AND_RAILS = [
  // The wire from the unit to the rails is too thin for its length and its load.
  {
    id: 'thin-wire',
    fixClass: 'thin-wire',
    minutes: 60,
    shows: {
      ...LOST_ON_THE_WAY,
      // A wire too thin is warm all along, and a short at its end trips nothing.
      trouble: { 'slow-or-dim': always, jerks: rarely, 'gets-hot': sometimes },
      hot: { nothing: usually, wire: usually },
      loss: { bus: always, rails: rarely },
      // It only gets slower.
      before: { 'not-off': usually, dims: usually },
    },
  },
  // Long rails and many joiners between two feeders: the rails themselves lose the volts.
  {
    id: 'few-feeds',
    fixClass: 'few-feeds',
    minutes: 60,
    shows: {
      ...LOST_ON_THE_WAY,
      when: { always: usually, 'with-traffic': usually, 'at-the-gap': rarely },
      where: { far: always, everywhere: sometimes, part: rarely, spot: rarely, gaps: rarely },
      hot: { nothing: always, 'joint-or-rail': rarely },
      loss: { rails: always, joint: rarely },
      'feed-wires': { right: usually, missing: sometimes },
      // It only gets slower.
      before: { 'not-off': usually, dims: usually },
      // Only a coin or a load shows it.
      trouble: { 'slow-or-dim': always, none: sometimes, jerks: rarely },
    },
  },
  // A joiner or a screwed or soldered joint that hardly touches: it loses volts, gets warm, comes and goes.
  {
    id: 'loose-joiner',
    fixClass: 'bad-joiner',
    minutes: 25,
    well: sometimes,
    shows: {
      ...LOST_ON_THE_WAY,
      trouble: {
        'slow-or-dim': usually,
        jerks: usually,
        'stops-dark': sometimes,
        'switches-off': sometimes,
        'gets-hot': sometimes,
        // Only a coin or a load beyond it shows it.
        none: sometimes,
      },
      when: {
        'at-one-place': usually,
        'now-and-then': sometimes,
        always: sometimes,
        'after-minutes': sometimes,
        'with-traffic': sometimes,
      },
      where: { spot: usually, far: sometimes, part: rarely, turnout: usually },
      vehicles: { 'every-one': always, many: rarely },
      since: { time: usually, nothing: usually, 'track-or-wires': sometimes, 'new-place': sometimes },
      // It goes off where the joint feeds all that lies beyond, and comes back when it cools or is touched.
      'goes-off': { nothing: usually, 'that-part': sometimes },
      'comes-back': BACK_WHEN_IT_TOUCHES,
      volts: { 'low-loaded': usually, moments: usually, none: rarely },
      commands: { arrive: usually, none: sometimes, spoiled: rarely },
      // The commonest hot spot there is.
      hot: { 'joint-or-rail': usually, nothing: sometimes },
      loss: { joint: always },
      contact: { flickers: always, dirty: rarely },
      'dead-rail': { none: usually, one: sometimes },
      'feed-wires': { right: usually, 'one-loose': sometimes },
      sparks: { none: usually, elsewhere: sometimes },
      weather: { 'no-matter': usually, warm: sometimes, cold: sometimes },
      fewer: { 'no-help': usually, helps: sometimes },
      // It only gets slower.
      before: { 'not-off': usually, dims: usually },
      'setting-matters': { no: usually, changing: sometimes, 'dead-in-one': rarely },
    },
  },
  // The same joint when it no longer touches at all: beyond it one rail is dead.
  {
    id: 'dead-joint',
    fixClass: 'bad-joiner',
    minutes: 25,
    shows: {
      ...DEAD_BEYOND,
      // Jumpers and blades inside turnouts are joints too. In a ring the rail beyond still has power, the long way round.
      trouble: { 'stops-dark': always, 'slow-or-dim': sometimes, jerks: rarely },
      where: { spot: usually, part: sometimes, far: sometimes, turnout: usually },
      volts: { none: always, 'low-loaded': rarely },
      since: { time: usually, 'track-or-wires': usually, nothing: usually, 'new-place': sometimes },
      loss: { joint: always },
      weather: { 'no-matter': usually, cold: sometimes, warm: rarely },
      contact: { flickers: usually, good: sometimes, dirty: rarely },
      'dead-rail': { one: always, both: rarely },
      // What is alive before the joint is turned round as well, and meets the other part the wrong way.
      swap: { 'no-change': usually, worse: usually },
      'setting-matters': { no: usually, changing: sometimes, 'dead-in-one': sometimes },
    },
  },
  // An insulated joiner or a cut was left inside one part, and nothing feeds the rail beyond it.
  {
    id: 'joiner-forgotten',
    fixClass: 'joiner-forgotten',
    minutes: 15,
    shows: {
      ...DEAD_BEYOND,
      // Left at the boundary of the new part, more often than not.
      when: { 'at-one-place': usually, 'at-the-gap': usually },
      where: { spot: usually, part: sometimes, gaps: sometimes, turnout: rarely },
      since: { 'track-or-wires': usually, nothing: sometimes, 'new-place': rarely },
      loss: { joint: always },
      contact: { insulated: always, wide: rarely },
      'dead-rail': { one: usually, both: sometimes },
      // A feeder there would be the other way to mend it.
      'feed-wires': { right: usually, missing: usually },
    },
  },
  // Dust, oil, glue or oxide on rails and wheels.
  {
    id: 'dirty',
    fixClass: 'dirty',
    minutes: 20,
    well: rarely,
    shows: {
      ...QUIET,
      trouble: { jerks: always, 'stops-dark': usually, 'slow-or-dim': sometimes, 'cannot-be-read': rarely },
      when: {
        'now-and-then': usually,
        'at-one-place': usually,
        always: sometimes,
        'at-the-gap': sometimes,
        'in-mid-run': sometimes,
        creeping: usually,
      },
      where: {
        everywhere: usually,
        spot: usually,
        // Blades that should pass the power on, and rails that scenery was made beside.
        turnout: usually,
        part: sometimes,
        gaps: sometimes,
        far: rarely,
      },
      vehicles: { 'every-one': usually, 'short-ones': usually, 'one-only': sometimes, 'one-kind': sometimes },
      since: { time: usually, nothing: usually, 'track-or-wires': usually, 'new-place': rarely },
      // Between rails all is well; under the wheels it comes and goes.
      volts: { full: usually, moments: sometimes },
      commands: { arrive: usually, spoiled: sometimes },
      loss: { none: usually, rails: rarely, joint: rarely },
      weather: { 'no-matter': usually, damp: sometimes, cold: rarely },
      contact: { dirty: always },
      'wheel-contact': { breaks: always },
      'protection-far': { 'at-once': usually, not: sometimes },
      sparks: { none: usually, 'at-a-wheel': sometimes },
      programming: { works: usually, 'cannot-read': sometimes },
      'vehicle-in-hand': { nothing: usually, wipers: usually },
      'one-loco': { 'like-the-others': usually, 'runs-badly': sometimes },
      'setting-matters': { no: always, changing: sometimes },
      // Blades that should pass the power on to the frog.
      'frog-feed': { fed: usually, plastic: usually, 'one-setting': rarely, none: rarely },
    },
  },
  // Rail ends that do not meet, in height, sideways or with a burr: wheels catch there, also when pushed by hand.
  {
    id: 'joint-step',
    fixClass: 'joint-step',
    minutes: 20,
    shows: {
      ...QUIET,
      trouble: { jerks: always, 'stops-dark': rarely },
      when: { 'at-one-place': usually, 'at-the-gap': usually },
      where: { gaps: usually, spot: usually, turnout: rarely },
      vehicles: { 'every-one': usually, 'short-ones': sometimes, 'one-only': rarely },
      since: { 'track-or-wires': usually, time: sometimes, nothing: sometimes, 'new-place': sometimes },
      contact: { 'plain-step': always },
      'one-loco': { 'like-the-others': usually, 'at-one-place': sometimes },
      // Wheels hop.
      'wheel-contact': { holds: usually, breaks: sometimes },
    },
  },
  // A dead piece, at a gap, a plastic frog or a crossing, longer than the distance some locomotives pick up over.
  {
    id: 'long-dead-gap',
    fixClass: 'long-dead-gap',
    minutes: 40,
    shows: {
      ...QUIET,
      trouble: { 'stops-dark': usually, jerks: usually },
      when: { 'at-the-gap': usually, 'at-one-place': usually, creeping: sometimes },
      where: { gaps: usually, turnout: usually, spot: sometimes },
      vehicles: { 'short-ones': always, 'one-only': sometimes },
      since: { 'track-or-wires': usually, vehicle: usually, nothing: sometimes },
      // On both sides of the piece; on the piece itself none.
      volts: { full: usually, none: usually },
      commands: { arrive: usually, none: usually },
      contact: { wide: always, insulated: rarely },
      'wheel-contact': { breaks: usually, holds: rarely },
      'dead-rail': { none: usually, one: sometimes, both: rarely },
      // A metal frog without a feed is a cause of its own.
      'frog-feed': { plastic: usually, fed: usually },
      'one-loco': { 'at-one-place': usually, 'like-the-others': usually },
    },
  },
  // A braking stretch or a diode in one rail, left in from former days or made by accident: trains stop there in one direction, lit.
  {
    id: 'brake-section',
    fixClass: 'brake-section',
    minutes: 15,
    shows: {
      ...QUIET,
      trouble: { 'stops-lit': always, 'stops-dark': sometimes, 'slow-or-dim': rarely, jerks: rarely },
      when: { 'at-one-place': usually, 'at-the-gap': usually, 'in-mid-run': rarely },
      where: { spot: usually, part: sometimes, gaps: sometimes },
      // Only decoders that are set to heed it.
      vehicles: { 'every-one': usually, 'one-kind': usually, 'one-only': sometimes },
      since: { 'track-or-wires': usually, setting: sometimes, vehicle: sometimes, nothing: sometimes },
      volts: { full: usually, low: sometimes, direct: sometimes },
      commands: { arrive: usually, none: sometimes },
      way: { 'one-way': always, either: sometimes },
      'feed-piece': { capacitor: usually, plain: sometimes },
      'old-wiring': { none: usually, 'dead-wires': sometimes },
      loss: { none: usually, joint: sometimes },
      contact: { good: always },
      swap: { 'no-change': usually, worse: usually },
    },
  },
] as const satisfies readonly CauseRow[];
