// Two parts are joined though they should not be: a rail, a route, a feeder, a lamp or old wires. As long as both sides agree and have equal
// volts, most of it shows nothing but in a test.
import { BACK_AS_THE_UNIT_DOES, BACK_WHEN_REMOVED, MAY_TRIP, TRIPS_ITS_UNIT } from '../families.ts';
import type { CauseRow, Row, ShowsOf } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** Joined, and in step: quiet, until polarity, volts or load differ. */
const JOINED = {
  trouble: { none: usually, 'switches-off': usually, 'shown-occupied': rarely, jerks: rarely, 'only-shown': sometimes },
  when: {
    always: sometimes,
    'at-switching-on': sometimes,
    'at-the-gap': usually,
    'with-traffic': rarely,
    'now-and-then': rarely,
  },
  where: { part: usually, gaps: usually, everywhere: sometimes },
  vehicles: { 'every-one': usually, 'none-needed': usually },
  'goes-off': MAY_TRIP,
  'comes-back': BACK_AS_THE_UNIT_DOES,
  'unit-shows': { ready: usually, fault: sometimes, 'only-breaker': rarely },
  volts: { full: usually, none: rarely },
  commands: { arrive: usually, none: rarely },
  short: { none: usually, 'both-on': sometimes, feeder: rarely },
  hot: 'unaffected',
  draw: { 'well-below': usually, 'near-the-limit': rarely, above: rarely },
  reports: {
    by: 'sensing',
    is: { none: { fine: always }, some: { fine: usually, 'one-occupied': sometimes, wild: rarely } },
  },
} as const satisfies Partial<Row>;

/** What trips one part takes the other along; most days nothing trips. */
const JOINED_GO_TOGETHER: ShowsOf<'goes-off'> = {
  by: 'protection',
  is: {
    latches: { nothing: usually, 'all-at-once': usually, 'that-part': sometimes, 'one-after-the-other': usually },
    'tries-again': { nothing: usually, 'all-at-once': usually, 'that-part': sometimes, 'one-after-the-other': usually },
    blinks: { nothing: always, 'that-part': sometimes, 'all-at-once': sometimes },
    'folds-back': { nothing: always, 'that-part': sometimes, 'all-at-once': sometimes },
  },
};

export const ISOLATION = [
  // Only one of the two rails is cut. A train that is not fed beyond it stops just as nicely; what needs both rails apart does not work. Between
  // units that share nothing else one rail closes no circuit and does no harm: whoever comes for it has a wire in common.
  {
    id: 'one-rail',
    fixClass: 'one-rail',
    minutes: 30,
    needs: { parts: ['several'], commons: ['joined'] },
    shows: {
      ...JOINED,
      // A short in one part takes the other along; or a test shows it.
      trouble: { 'switches-off': usually, none: usually, 'shown-occupied': sometimes, jerks: rarely },
      since: { 'track-or-wires': usually, 'supply-or-unit': sometimes, nothing: sometimes },
      cut: { 'one-joined': always },
      reverser: { 'none-there': usually, acts: sometimes, chatters: rarely, silent: rarely },
      short: { none: always, 'both-on': rarely },
      'protection-near': { 'at-once': usually, 'wrong-one': usually },
      'goes-off': JOINED_GO_TOGETHER,
    },
  },
  // Another way round joins the parts: a second track, a crossover, a yard, a metal bridge.
  {
    id: 'forgotten-path',
    fixClass: 'second-path',
    minutes: 40,
    needs: { parts: ['several'] },
    shows: {
      ...JOINED,
      since: { 'track-or-wires': usually, 'supply-or-unit': sometimes, nothing: sometimes },
      cut: { 'both-joined': usually, 'one-joined': sometimes },
      'unfed-test': { 'lit-beyond': usually, stops: sometimes, 'rolls-on': rarely },
      'setting-matters': { no: usually, 'short-in-one': rarely },
      swap: { worse: always },
      'protection-near': { 'at-once': usually, 'wrong-one': usually },
      // One unit may feed both parts then.
      draw: { 'well-below': usually, 'near-the-limit': sometimes, above: sometimes },
      'goes-off': JOINED_GO_TOGETHER,
    },
  },
  // A feeder of the old part still ends at the rails of the new part.
  {
    id: 'old-feeder-left',
    fixClass: 'second-path',
    minutes: 20,
    needs: { parts: ['several'] },
    shows: {
      ...JOINED,
      since: { 'track-or-wires': usually, 'supply-or-unit': sometimes, nothing: sometimes },
      cut: { 'both-joined': always, 'one-joined': rarely },
      'feed-wires': { 'to-other-part': always },
      'unfed-test': { 'lit-beyond': always, stops: rarely },
      short: { none: usually, 'both-on': sometimes, feeder: sometimes },
      swap: { worse: always },
      'protection-near': { 'at-once': usually, 'wrong-one': sometimes, late: rarely },
      // One unit may feed both parts then.
      draw: { 'well-below': usually, 'near-the-limit': sometimes, above: sometimes },
    },
  },
  // A cut has closed, or a metal joiner still sits in it: warmth, a burr, creeping rails. In a reversing section it is a short.
  {
    id: 'gap-closed',
    fixClass: 'gap-closed',
    minutes: 20,
    well: rarely,
    shows: {
      ...JOINED,
      trouble: {
        by: 'parts',
        is: {
          one: { 'switches-off': always, 'shown-occupied': sometimes, none: rarely },
          several: { none: usually, 'switches-off': usually, 'shown-occupied': sometimes, jerks: rarely },
        },
      },
      when: {
        by: 'parts',
        is: {
          // A reversing section has gaps, though one unit feeds all.
          one: {
            'at-the-gap': usually,
            'at-one-place': usually,
            'at-switching-on': usually,
            always: usually,
            'after-minutes': sometimes,
            'now-and-then': sometimes,
          },
          several: {
            'at-the-gap': usually,
            'at-switching-on': usually,
            'at-one-place': sometimes,
            always: sometimes,
            'after-minutes': sometimes,
            'now-and-then': sometimes,
          },
        },
      },
      where: {
        by: 'parts',
        is: {
          one: { loop: usually, everywhere: usually, spot: sometimes, turnout: sometimes },
          several: { gaps: usually, loop: sometimes, spot: sometimes, part: sometimes, everywhere: sometimes },
        },
      },
      since: { time: usually, nothing: usually, 'track-or-wires': sometimes, 'new-place': rarely },
      'unit-shows': { ready: usually, fault: usually, 'only-breaker': rarely },
      // The feeder of the section that it joins, taken off, ends it.
      short: { none: usually, track: usually, feeder: sometimes, 'both-on': sometimes },
      // Rails of one feed that meet again do no harm, unless they come back turned round.
      'red-rail': {
        by: 'parts',
        is: { one: { 'meets-the-other': always, 'meets-itself': rarely }, several: 'unaffected' },
      },
      hot: { nothing: always, 'joint-or-rail': rarely },
      cut: { touching: always, 'one-joined': sometimes, 'both-joined': rarely },
      'unfed-test': { stops: usually, 'lit-beyond': sometimes, 'rolls-on': rarely },
      ohms: {
        by: 'parts',
        is: { one: { short: usually, open: sometimes }, several: { open: usually, short: sometimes, some: sometimes } },
      },
      loop: {
        by: 'parts',
        is: {
          one: { 'trips-leaving': usually, 'trips-entering': sometimes, 'no-loop': usually },
          several: { 'no-loop': usually, fine: sometimes, 'trips-leaving': sometimes, 'trips-entering': sometimes },
        },
      },
      reverser: {
        by: 'parts',
        is: {
          one: { silent: usually, chatters: sometimes, acts: sometimes, 'none-there': sometimes },
          several: { 'none-there': usually, acts: sometimes, silent: sometimes, chatters: rarely },
        },
      },
      swap: { worse: usually, 'no-change': sometimes },
      weather: { 'no-matter': usually, warm: usually },
      cooling: { 'no-help': usually, helps: sometimes },
      // One unit may feed both parts then.
      draw: { 'well-below': usually, 'near-the-limit': sometimes, above: sometimes },
    },
  },
  // A lamp, a decoder, a detector or its return is wired across the boundary and joins the parts faintly.
  {
    id: 'shared-wire',
    fixClass: 'shared-wire',
    minutes: 15,
    needs: { parts: ['several'] },
    shows: {
      ...JOINED,
      trouble: {
        by: 'sensing',
        is: {
          none: { none: usually, 'accessories-wrong': sometimes, 'switches-off': rarely, 'only-shown': rarely },
          some: { 'shown-occupied': always, none: sometimes, 'accessories-wrong': sometimes, 'switches-off': rarely },
        },
      },
      when: { always: usually, 'at-the-gap': usually, 'now-and-then': rarely },
      since: { 'track-or-wires': usually, nothing: sometimes, 'supply-or-unit': rarely },
      'goes-off': { nothing: always, 'that-part': rarely, 'all-at-once': rarely },
      'unit-shows': { ready: always, fault: rarely },
      // Through a lamp or a decoder nothing is shorted.
      short: 'unaffected',
      volts: 'unaffected',
      commands: 'unaffected',
      cut: { 'faintly-joined': always },
      // It lights a lamp and moves nothing.
      'unfed-test': { stops: always, 'lit-beyond': sometimes },
      unplugging: { 'lamp-or-decoder': usually, detector: sometimes },
      reports: { by: 'sensing', is: { none: { fine: always }, some: { 'one-occupied': usually, fine: usually } } },
    },
  },
  // Dead old wires, block switches or an unplugged old transformer still hang on the rails and join what should be apart.
  {
    id: 'leftover-wiring',
    fixClass: 'leftover-wiring',
    minutes: 30,
    well: rarely,
    shows: {
      trouble: {
        'switches-off': usually,
        none: sometimes,
        'stops-lit': rarely,
        'shown-occupied': rarely,
        'gets-hot': rarely,
        jerks: rarely,
        'slow-or-dim': rarely,
      },
      when: {
        'at-switching-on': usually,
        always: usually,
        'at-the-gap': sometimes,
        // Old block switches, and turnouts that route power, decide whether it is a path.
        'when-thrown': sometimes,
        'now-and-then': usually,
      },
      where: { everywhere: usually, part: usually, spot: sometimes, gaps: rarely },
      vehicles: { 'none-needed': usually, 'every-one': usually },
      since: { 'track-or-wires': usually, 'supply-or-unit': usually, nothing: usually },
      'setting-matters': { no: usually, 'short-in-one': sometimes },
      'goes-off': TRIPS_ITS_UNIT,
      'comes-back': BACK_WHEN_REMOVED,
      'unit-shows': { fault: usually, ready: usually, 'only-breaker': rarely },
      volts: { full: usually, none: sometimes, low: sometimes, moments: rarely },
      commands: { arrive: usually, none: sometimes, spoiled: rarely },
      // Old wires that lead to the other part join the two: with a polarity reversed it is a short of both units.
      short: { feeder: usually, none: sometimes, weak: sometimes, 'both-on': sometimes },
      hot: { nothing: usually, wire: sometimes, accessory: rarely, unit: rarely },
      draw: { 'well-below': usually, 'high-idle': sometimes, above: sometimes },
      'old-wiring': { 'dead-wires': always },
      'feed-piece': { plain: usually, capacitor: sometimes },
      ohms: { short: usually, some: usually, open: usually },
      swap: { 'no-change': usually, worse: sometimes, cured: sometimes },
      cut: { 'both-cut': usually, 'one-joined': sometimes, 'both-joined': usually, 'faintly-joined': sometimes },
      'unfed-test': { stops: always, 'lit-beyond': sometimes },
      before: { 'not-off': usually, snaps: usually },
    },
  },
] as const satisfies readonly CauseRow[];
