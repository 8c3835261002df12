// Rails that meet without any wheel: metal, rods, crossed wires, damp, and the way into the programming track.
import { NEVER_WENT_OFF, NOTHING_OFF, QUIET, STANDING_SHORT } from '../families.ts';
import type { CauseRow, Row } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** A path from rail to rail that is too weak to trip anything: it warms, it loads, it is taken for a train. */
const WEAK_PATH = {
  ...QUIET,
  'goes-off': NOTHING_OFF,
  'comes-back': NEVER_WENT_OFF,
  'unit-shows': { ready: always },
  commands: 'unaffected',
  short: { weak: always },
  draw: { 'well-below': sometimes, 'high-idle': usually, 'near-the-limit': rarely },
  ohms: { some: always, short: rarely },
  swap: { 'no-change': usually, worse: usually },
} as const satisfies Partial<Row>;

export const TRACK_SHORTS = [
  // Something metal lies across the rails or touches them from below: a tool, a spike, a rod, foil, a wire end.
  {
    id: 'metal-across',
    fixClass: 'metal-across',
    minutes: 15,
    shows: {
      ...STANDING_SHORT,
      trouble: { 'switches-off': always, 'stops-dark': sometimes, 'only-shown': rarely, 'gets-hot': rarely },
      when: {
        'at-switching-on': usually,
        always: usually,
        'in-mid-run': sometimes,
        'when-thrown': rarely,
        'at-one-place': rarely,
        'now-and-then': rarely,
        'after-minutes': rarely,
      },
      where: { everywhere: usually, part: usually, spot: sometimes, turnout: rarely },
      since: { nothing: usually, 'track-or-wires': usually, 'a-short': rarely, 'new-place': rarely },
      short: { track: always, 'one-setting': rarely, weak: rarely },
      'setting-matters': { no: usually, 'short-in-one': rarely },
      ohms: { short: always, some: rarely },
      'along-the-track': { metal: usually, nothing: sometimes },
      sparks: { none: usually, elsewhere: sometimes },
    },
  },
  // A rod, a tie bar or a part of a turnout's motor touches both rails as it moves, or in one position.
  {
    id: 'moving-contact',
    fixClass: 'metal-across',
    minutes: 20,
    well: sometimes,
    shows: {
      ...STANDING_SHORT,
      when: {
        'when-thrown': usually,
        'at-switching-on': sometimes,
        'now-and-then': sometimes,
        'after-minutes': sometimes,
        'in-mid-run': sometimes,
      },
      where: { turnout: usually, part: usually, everywhere: usually, spot: rarely },
      since: { 'track-or-wires': usually, nothing: usually, time: sometimes },
      short: { 'one-setting': always, track: sometimes, accessory: rarely },
      'setting-matters': { 'short-in-one': always, no: sometimes, changing: sometimes },
      ohms: { short: usually, open: usually },
      'along-the-track': { nothing: usually, metal: sometimes },
      sparks: { none: usually, elsewhere: sometimes, 'at-a-frog': rarely },
      // With the setting that is well the part has power: then the wires matter.
      swap: { 'no-change': usually, worse: usually },
      volts: { none: usually, full: usually, moments: sometimes, low: rarely },
      commands: { none: usually, arrive: usually },
    },
  },
  // A pair of feeders, or one wire of a bundle, goes to the wrong rail.
  {
    id: 'crossed-feeder',
    fixClass: 'crossed-feeder',
    minutes: 10,
    shows: {
      ...STANDING_SHORT,
      // On a stretch with both rails cut it waits for the first train.
      when: { 'at-switching-on': usually, always: usually, 'in-mid-run': rarely, 'at-one-place': rarely },
      where: { everywhere: usually, part: usually, spot: rarely },
      vehicles: { 'none-needed': always, 'every-one': rarely },
      since: { 'track-or-wires': usually, nothing: sometimes, 'new-place': rarely },
      short: { feeder: always, track: rarely },
    },
  },
  // Old wire, flux, dust in a cut or charred plastic joins the rails through some ohms: a warm spot, weak volts, and no unit goes off.
  {
    id: 'leak',
    fixClass: 'leak',
    minutes: 40,
    well: rarely,
    shows: {
      ...WEAK_PATH,
      trouble: {
        'gets-hot': usually,
        'slow-or-dim': usually,
        'shown-occupied': sometimes,
        'only-shown': rarely,
        none: rarely,
      },
      when: { always: usually, 'after-minutes': sometimes, 'now-and-then': sometimes, 'at-one-place': sometimes },
      where: { spot: usually, part: usually, everywhere: sometimes, far: rarely, turnout: rarely },
      vehicles: { 'none-needed': usually, 'every-one': usually },
      since: { time: usually, 'track-or-wires': usually, nothing: usually, 'a-short': rarely },
      volts: { full: usually, low: usually, 'low-loaded': sometimes },
      hot: { nothing: sometimes, 'joint-or-rail': usually, wire: sometimes, accessory: rarely },
      loss: { none: usually, bus: sometimes, joint: rarely, rails: rarely },
      cut: { 'both-cut': usually, 'faintly-joined': sometimes },
      weather: { 'no-matter': usually, damp: sometimes, warm: rarely },
      'along-the-track': { nothing: usually, charred: sometimes, wet: rarely, metal: rarely },
      'old-wiring': { none: usually, 'dead-wires': sometimes },
      reports: { by: 'sensing', is: { none: 'unaffected', some: { fine: usually, 'one-occupied': usually } } },
      sparks: { none: usually, elsewhere: sometimes },
    },
  },
  // Ballast, glue or plaster that is still wet, or gets damp, joins the rails: it is taken for a train, and dries away.
  {
    id: 'wet-ballast',
    fixClass: 'leak',
    minutes: 30,
    shows: {
      ...WEAK_PATH,
      trouble: {
        'shown-occupied': usually,
        'switches-off': sometimes,
        jerks: sometimes,
        'slow-or-dim': sometimes,
        'gets-hot': rarely,
        'only-shown': rarely,
        none: sometimes,
      },
      when: { always: usually, 'at-one-place': sometimes, 'at-switching-on': sometimes, 'now-and-then': rarely },
      where: { spot: usually, part: usually },
      vehicles: { 'none-needed': usually, 'every-one': usually },
      since: { 'track-or-wires': usually, time: sometimes, nothing: sometimes },
      volts: { full: usually, low: sometimes },
      hot: { nothing: always, 'joint-or-rail': rarely },
      contact: { good: usually, dirty: usually },
      weather: { damp: always, 'no-matter': rarely },
      'along-the-track': { wet: usually, nothing: sometimes },
      reports: { by: 'sensing', is: { none: 'unaffected', some: { 'one-occupied': always, fine: sometimes } } },
    },
  },
  // A train on its way into the programming track joins it with the main: commands for one reach all, or the two outputs meet.
  {
    id: 'program-bridge',
    fixClass: 'program-bridge',
    minutes: 30,
    shows: {
      ...QUIET,
      trouble: {
        'switches-off': usually,
        'runs-by-itself': sometimes,
        'cannot-be-read': sometimes,
        'stops-lit': sometimes,
        jerks: rarely,
      },
      when: { 'while-programming': usually, 'at-the-gap': usually, 'at-one-place': usually, 'now-and-then': rarely },
      where: { gaps: usually, spot: usually, everywhere: rarely },
      vehicles: { 'every-one': usually, 'lit-or-long': sometimes },
      since: { 'track-or-wires': usually, 'supply-or-unit': sometimes, nothing: usually },
      'goes-off': { nothing: usually, 'all-at-once': usually, 'that-part': rarely },
      'comes-back': {
        by: 'goes-off',
        is: {
          nothing: { 'never-off': always },
          'that-part': { button: usually, seconds: usually, 'when-removed': sometimes },
          'all-at-once': { button: usually, seconds: usually, 'when-removed': sometimes },
          'one-after-the-other': { button: usually, seconds: usually, 'when-removed': sometimes },
        },
      },
      'unit-shows': { ready: usually, fault: usually },
      commands: { arrive: usually, other: usually },
      short: { none: usually, vehicle: usually },
      sides: { drift: usually, agree: sometimes, reversed: sometimes },
      cut: { 'both-cut': usually, 'one-joined': usually, 'both-joined': rarely },
      programming: { 'others-take-it': usually, 'shorts-there': usually, 'cannot-read': rarely, works: sometimes },
      'decoder-settings': { right: usually, 'other-number': usually },
      swap: { 'no-change': usually, worse: sometimes },
    },
  },
] as const satisfies readonly CauseRow[];
