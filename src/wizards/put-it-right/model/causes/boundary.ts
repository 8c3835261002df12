// Rails that agree and yet do not fit together at the gap: volts, instants, a common wire too few or one too many.
import { ALL_OF_ITS_UNIT, AT_THE_GAP, BACK_AS_THE_UNIT_DOES, MAY_TRIP, QUIET } from '../families.ts';
import type { CauseRow, Row } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** What flows over a train that stands across, when the two parts do not quite fit. */
const DOES_NOT_FIT = {
  ...AT_THE_GAP,
  trouble: {
    by: 'protection',
    is: {
      latches: { 'switches-off': usually, jerks: usually, hums: sometimes, 'gets-hot': rarely, 'only-shown': rarely },
      'tries-again': {
        'switches-off': usually,
        jerks: usually,
        hums: sometimes,
        'gets-hot': rarely,
        'only-shown': rarely,
      },
      blinks: { jerks: usually, 'switches-off': sometimes, hums: sometimes, 'gets-hot': rarely, 'only-shown': rarely },
      'folds-back': {
        jerks: usually,
        'switches-off': sometimes,
        'slow-or-dim': sometimes,
        hums: sometimes,
        'gets-hot': rarely,
      },
    },
  },
  vehicles: { 'every-one': usually, 'lit-or-long': usually },
  'goes-off': MAY_TRIP,
  'unit-shows': { ready: usually, fault: usually, restarts: rarely, 'only-breaker': rarely },
  short: { none: always, vehicle: rarely },
  before: { 'not-off': usually, snaps: usually, dims: rarely },
  sparks: { none: usually, 'at-the-gap': usually },
} as const satisfies Partial<Row>;

/** One side stands higher: what is lit changes at the gap, and the higher unit may have to carry both parts. */
const A_STEP = {
  ...DOES_NOT_FIT,
  trouble: {
    by: 'protection',
    is: {
      latches: {
        'switches-off': usually,
        jerks: usually,
        'slow-or-dim': sometimes,
        hums: sometimes,
        'fast-or-bright': rarely,
      },
      'tries-again': {
        'switches-off': usually,
        jerks: usually,
        'slow-or-dim': sometimes,
        hums: sometimes,
        'fast-or-bright': rarely,
      },
      blinks: {
        jerks: usually,
        'slow-or-dim': sometimes,
        'switches-off': sometimes,
        hums: sometimes,
        'fast-or-bright': rarely,
      },
      'folds-back': {
        jerks: usually,
        'slow-or-dim': usually,
        'switches-off': sometimes,
        hums: sometimes,
        'fast-or-bright': rarely,
      },
    },
  },
  when: { 'at-the-gap': always, 'with-traffic': sometimes },
  where: { gaps: always, part: sometimes },
  vehicles: { 'every-one': usually, 'lit-or-long': usually, many: rarely },
  'unit-shows': { ready: usually, fault: usually, restarts: sometimes },
  volts: { full: usually, low: sometimes, 'low-loaded': rarely },
  draw: { 'well-below': usually, 'near-the-limit': sometimes, above: rarely },
  fewer: { 'no-help': usually, helps: sometimes },
} as const satisfies Partial<Row>;

export const BOUNDARY = [
  // The supplies of two units were exchanged, and now one side of the gap stands higher than the other, or the wrong one does.
  {
    id: 'supplies-swapped',
    fixClass: 'voltage-step',
    minutes: 12,
    needs: { parts: ['several'] },
    shows: {
      ...A_STEP,
      since: { supply: usually, 'supply-or-unit': rarely, nothing: sometimes },
      step: { idle: usually, loaded: sometimes },
      labels: { 'volts-differ': usually, fit: sometimes, 'too-few-amps': rarely },
      // Back where they were, it is well.
      // Put back as they were it is well; with two that differ anyway the step stays.
      'goes-with-supply': { 'goes-along': usually, stays: sometimes },
      'supply-volts': { steady: always, wrong: rarely },
      'goes-with-unit': { stays: usually, 'goes-along': sometimes },
    },
  },
  // The supplies are unlike, and so are the volts on both sides of the gap.
  {
    id: 'unlike-supplies',
    fixClass: 'voltage-step',
    minutes: 15,
    needs: { parts: ['several'] },
    shows: {
      ...A_STEP,
      since: { supply: usually, 'supply-or-unit': usually, nothing: rarely, 'track-or-wires': sometimes },
      step: { idle: usually, loaded: sometimes },
      labels: { 'volts-differ': usually, fit: sometimes, 'too-few-amps': rarely },
      // Exchanged for each other, the two still differ.
      'goes-with-supply': { 'goes-along': usually, stays: sometimes },
      'supply-volts': { steady: always, wrong: rarely },
      'goes-with-unit': { stays: usually, 'goes-along': sometimes },
      // Of the weaker one the volts are low at the unit already.
      loss: { none: usually, 'at-the-unit': sometimes },
    },
  },
  // The rail volts of one unit are set lower than its neighbour's: everything is slower or dimmer there, beside its feed too. Alone it trips nothing.
  {
    id: 'low-setting',
    fixClass: 'voltage-step',
    minutes: 8,
    needs: { parts: ['several'] },
    shows: {
      ...QUIET,
      trouble: { 'slow-or-dim': usually, jerks: sometimes, 'switches-off': sometimes, hums: rarely },
      when: { always: usually, 'at-the-gap': usually },
      where: { part: usually, gaps: usually, everywhere: rarely },
      vehicles: { 'every-one': always, 'lit-or-long': rarely },
      since: { supply: rarely, 'supply-or-unit': usually, setting: usually, nothing: sometimes },
      'goes-off': { nothing: usually, 'that-part': sometimes, 'all-at-once': rarely },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      volts: { low: always },
      step: { idle: always },
      settings: { 'volts-low': usually, right: rarely },
      sparks: { none: usually, 'at-the-gap': rarely },
      // At the gap the two still differ, whichever of them is low.
      'goes-with-unit': { 'goes-along': usually, stays: usually },
      before: { 'not-off': always, snaps: rarely, dims: rarely },
      // Set low, the volts are low at the unit already.
      loss: { none: usually, 'at-the-unit': usually },
    },
  },
  // A knob, a jumper or the choice of a scale holds the rail volts of the unit too low for the trains, wherever they are.
  {
    id: 'unit-set-low',
    fixClass: 'volts-set-low',
    minutes: 8,
    shows: {
      ...QUIET,
      trouble: { 'slow-or-dim': always, jerks: sometimes, 'accessories-wrong': rarely, 'stops-lit': rarely },
      when: { always: always, 'with-traffic': rarely, 'at-switching-on': rarely },
      where: {
        by: 'parts',
        is: { one: { everywhere: always, far: rarely }, several: { everywhere: usually, part: usually } },
      },
      // Sound and large ones want more volts than the others.
      vehicles: { 'every-one': always, 'one-kind': sometimes },
      since: { 'supply-or-unit': usually, setting: usually, nothing: sometimes, supply: sometimes, time: rarely },
      volts: { low: always },
      settings: { 'volts-low': usually, right: sometimes },
      step: { by: 'parts', is: { one: { none: always }, several: { none: usually, idle: sometimes } } },
      labels: { fit: usually, 'volts-differ': sometimes },
      loss: { none: usually, 'at-the-unit': usually },
      'goes-with-unit': { 'goes-along': usually, stays: usually },
      accessories: { fine: usually, 'all-always': rarely, 'far-ones': rarely },
      before: { 'not-off': always, dims: rarely },
    },
  },
  // A selector or setting gives the rails more than the scale bears: fast, bright, hot, and decoders protect themselves or die.
  {
    id: 'rail-volts-too-high',
    fixClass: 'volts-too-high',
    minutes: 10,
    shows: {
      trouble: {
        'fast-or-bright': usually,
        'gets-hot': usually,
        hums: sometimes,
        'switches-off': usually,
        'stops-lit': rarely,
        'stops-dark': rarely,
      },
      when: {
        always: usually,
        'at-the-gap': sometimes,
        'after-minutes': sometimes,
        'at-switching-on': sometimes,
        'with-traffic': rarely,
      },
      where: ALL_OF_ITS_UNIT,
      vehicles: { 'every-one': usually, 'lit-or-long': sometimes, 'one-only': sometimes },
      since: { supply: usually, 'supply-or-unit': usually, setting: usually, nothing: rarely },
      'goes-off': { nothing: usually, 'all-at-once': sometimes, 'that-part': sometimes },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { ready: usually, fault: sometimes },
      volts: { high: always },
      commands: { arrive: always, 'one-deaf': rarely },
      short: 'unaffected',
      hot: { vehicle: usually, unit: sometimes, nothing: usually, accessory: rarely },
      draw: { 'well-below': usually, 'near-the-limit': sometimes },
      step: { by: 'parts', is: { one: { none: always }, several: { idle: usually, none: sometimes } } },
      settings: { 'volts-high': usually, right: sometimes },
      labels: { 'volts-differ': usually, fit: usually },
      // The volts come from a setting of the unit, or from the supply that it follows.
      'goes-with-unit': { 'goes-along': usually, stays: usually },
      'goes-with-supply': { stays: usually, 'goes-along': usually },
      sparks: { none: usually, 'at-the-gap': sometimes },
      'supply-volts': { steady: usually, wrong: sometimes },
      'one-loco': { 'like-the-others': usually, 'runs-badly': rarely, deaf: rarely },
      // Bulbs burn through, and decoders die one after the other.
      'dead-since': { nothing: usually, vehicle: usually, accessory: sometimes },
    },
  },
  // Units of different kinds, or a repeater in between: one switches a little later, and at each edge current flows across a train.
  {
    id: 'skew',
    fixClass: 'skew',
    minutes: 30,
    needs: { parts: ['several'] },
    shows: {
      ...DOES_NOT_FIT,
      trouble: {
        jerks: usually,
        none: sometimes,
        'gets-hot': sometimes,
        hums: sometimes,
        'switches-off': sometimes,
        'only-shown': rarely,
      },
      since: { 'supply-or-unit': usually, 'track-or-wires': sometimes, nothing: sometimes },
      'goes-off': { nothing: always, 'that-part': rarely, 'all-at-once': rarely },
      'unit-shows': { ready: usually, fault: sometimes },
      hot: { nothing: usually, unit: sometimes },
      sides: { drift: usually, agree: sometimes },
      settings: { 'kinds-differ': always },
      sparks: { 'at-the-gap': usually, none: sometimes },
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
    },
  },
  // The units lack the common wire they need: an engine that takes one rail per truck or tender stalls at the gap, sensing has no way back.
  {
    id: 'no-reference',
    fixClass: 'no-reference',
    minutes: 15,
    needs: { parts: ['several'], commons: ['floating'] },
    shows: {
      ...QUIET,
      trouble: {
        'stops-dark': usually,
        'accessories-wrong': usually,
        jerks: usually,
        'switches-off': rarely,
        'only-shown': rarely,
      },
      when: { 'at-the-gap': always, always: sometimes, creeping: rarely },
      where: { gaps: always, part: sometimes, everywhere: rarely },
      // Those that take each rail with another truck.
      vehicles: {
        'one-only': usually,
        'one-kind': usually,
        'short-ones': sometimes,
        'none-needed': sometimes,
        'every-one': rarely,
      },
      since: { 'supply-or-unit': usually, 'track-or-wires': usually, nothing: rarely },
      'unit-shows': { ready: always, 'no-signal': rarely },
      commands: { arrive: always, spoiled: rarely },
      accessories: { fine: usually, 'sensing-only': usually, 'at-random': rarely },
      reports: {
        by: 'sensing',
        is: { none: { fine: always }, some: { fine: usually, absent: sometimes, wild: rarely } },
      },
      before: { 'not-off': always, snaps: rarely },
    },
  },
  // A computer's cable or the earth pins of two supplies join the units behind the layout's back.
  {
    id: 'hidden-common',
    fixClass: 'hidden-common',
    minutes: 20,
    needs: { parts: ['several'] },
    shows: {
      ...DOES_NOT_FIT,
      when: { 'at-the-gap': usually, 'at-switching-on': sometimes, 'now-and-then': sometimes, always: rarely },
      where: { gaps: usually, part: sometimes, everywhere: sometimes },
      vehicles: { 'every-one': usually, 'lit-or-long': sometimes, 'none-needed': sometimes },
      since: {
        supply: usually,
        'supply-or-unit': usually,
        setting: sometimes,
        'track-or-wires': rarely,
        nothing: rarely,
      },
      'unit-shows': { fault: usually, ready: usually, restarts: rarely },
      commands: { arrive: usually, spoiled: rarely },
      'other-path': { 'unplugging-cures': always },
      'goes-with-supply': { stays: usually, 'goes-along': sometimes },
      control: { fine: usually, 'acts-by-itself': rarely, restarts: rarely },
      trouble: { 'switches-off': usually, jerks: sometimes, 'accessories-wrong': sometimes, 'only-shown': rarely },
      accessories: { fine: usually, 'at-random': sometimes, 'after-trips': sometimes },
      short: { none: always, 'both-on': sometimes, vehicle: rarely },
    },
  },
  // One unit makes the pause for feedback and its neighbour does not: in the pause one feeds the short that the other makes.
  {
    id: 'cutout-mismatch',
    fixClass: 'cutout-mismatch',
    minutes: 15,
    needs: { parts: ['several'] },
    shows: {
      ...DOES_NOT_FIT,
      since: { setting: usually, 'supply-or-unit': usually, nothing: rarely },
      sides: { agree: usually, drift: sometimes },
      settings: { 'feedback-differs': always },
      reports: { by: 'sensing', is: { none: { fine: always }, some: { fine: usually, absent: sometimes } } },
      sparks: { 'at-the-gap': usually, none: sometimes },
      'goes-with-unit': { stays: usually, 'goes-along': usually },
    },
  },
] as const satisfies readonly CauseRow[];
