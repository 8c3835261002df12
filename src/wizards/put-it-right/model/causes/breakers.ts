// Protection that comes too late, not at all, in the wrong order, or sooner than anything before it.
import { BACK_AS_THE_UNIT_DOES, QUIET, SHORT_ON_THE_LAMPS, SNAPS_OFF, TRIPS_ITS_UNIT } from '../families.ts';
import type { CauseRow, Row, ShowsOf } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

const BREAKER_BACK = { seconds: usually, blink: sometimes, 'when-removed': sometimes, button: rarely } as const;
/** A breaker opens, and most close again by themselves. */
const BACK_AS_BREAKERS_DO: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: {
    nothing: { 'never-off': always },
    'that-part': BREAKER_BACK,
    'all-at-once': BREAKER_BACK,
    'one-after-the-other': BREAKER_BACK,
  },
};

/** A short somewhere takes everything with it, since its own breaker did not open. */
const WRONG_ONE_OPENS = {
  ...QUIET,
  trouble: { 'switches-off': always, 'gets-hot': sometimes },
  vehicles: { 'every-one': usually, 'one-only': sometimes, 'none-needed': rarely },
  'goes-off': { 'all-at-once': always, 'that-part': rarely },
  'comes-back': BACK_AS_THE_UNIT_DOES,
  'unit-shows': { fault: always, ready: rarely, 'only-breaker': rarely },
  // Whatever shorted it: a wheel at a turnout, a derailing.
  short: { none: usually, vehicle: usually },
  before: SNAPS_OFF,
} as const satisfies Partial<Row>;

/** It opens below what trains draw, or faster than they fill up as they come in: no short, and nothing wrong with a train. */
const OPENS_TOO_SOON = {
  ...QUIET,
  trouble: { 'switches-off': always, 'only-shown': rarely },
  when: {
    'with-traffic': usually,
    'at-the-gap': usually,
    'at-switching-on': usually,
    'when-set-on': usually,
    'now-and-then': usually,
    'in-mid-run': sometimes,
    'after-a-short': sometimes,
  },
  // Each guards its own part, and it opens as a train comes in.
  where: {
    by: 'parts',
    is: {
      one: { everywhere: always, part: rarely },
      several: { part: usually, gaps: usually, everywhere: rarely },
    },
  },
  vehicles: {
    many: usually,
    'lit-or-long': usually,
    'every-one': usually,
    'one-only': sometimes,
    'one-kind': sometimes,
  },
  since: {
    'supply-or-unit': usually,
    setting: usually,
    nothing: usually,
    vehicle: sometimes,
    'track-or-wires': sometimes,
  },
  'goes-off': TRIPS_ITS_UNIT,
  'comes-back': BACK_AS_THE_UNIT_DOES,
  'unit-shows': SHORT_ON_THE_LAMPS,
  short: { none: always, 'only-shown': rarely },
  draw: { 'well-below': usually, 'near-the-limit': usually, above: rarely },
  before: SNAPS_OFF,
  fewer: { helps: usually, 'no-help': sometimes, 'lit-do-it': sometimes, 'one-does-it': sometimes },
  'moved-trains': { cured: usually, 'no-change': sometimes },
  // What a number in a manual stands for is easily misread.
  settings: { 'trip-low': always, right: sometimes },
  'one-loco': { 'like-the-others': usually, 'at-one-place': usually },
  'goes-with-unit': { stays: usually, 'goes-along': usually },
} as const satisfies Partial<Row>;

export const BREAKERS = [
  // The unit's trip level lies above what wheels and wires of this scale bear: a short goes on and heats.
  {
    id: 'high-trip',
    fixClass: 'protection-set-wrong',
    minutes: 15,
    shows: {
      ...QUIET,
      trouble: { 'gets-hot': always, none: usually, 'slow-or-dim': rarely, 'stops-dark': rarely },
      when: { 'now-and-then': usually, 'at-one-place': usually, always: sometimes },
      where: { far: usually, spot: usually, everywhere: sometimes, turnout: sometimes },
      vehicles: { 'every-one': usually, 'one-only': usually, 'none-needed': sometimes },
      since: { supply: rarely, 'supply-or-unit': usually, 'a-short': usually, nothing: sometimes, setting: sometimes },
      volts: { full: usually, low: sometimes },
      draw: { 'well-below': usually, 'high-idle': sometimes, 'near-the-limit': sometimes },
      short: { none: usually, weak: usually, vehicle: sometimes },
      hot: { nothing: sometimes, vehicle: usually, 'joint-or-rail': usually, wire: sometimes, smoking: sometimes },
      labels: { 'unit-too-big': usually, fit: sometimes },
      settings: { 'trip-wrong': usually, right: sometimes },
      // Near the unit a short is large enough to trip anything.
      'protection-near': { 'at-once': usually, late: sometimes, not: sometimes },
      'protection-far': { not: always, 'at-once': rarely },
      sparks: { none: usually, 'at-a-wheel': sometimes, 'at-a-frog': sometimes },
      'goes-with-unit': { stays: usually, 'goes-along': usually },
    },
  },
  // The unit does switch off, but so late that a short leaves marks and pits.
  {
    id: 'slow-trip',
    fixClass: 'protection-set-wrong',
    minutes: 15,
    shows: {
      ...QUIET,
      trouble: { 'gets-hot': usually, 'switches-off': usually, none: sometimes },
      when: { 'now-and-then': usually, 'at-one-place': usually },
      // Each unit guards its own part.
      where: { spot: usually, everywhere: usually, part: usually, turnout: sometimes, gaps: rarely },
      vehicles: { 'every-one': usually, 'one-only': usually },
      since: { 'supply-or-unit': usually, 'a-short': usually, nothing: sometimes, setting: sometimes },
      'goes-off': {
        by: 'parts',
        is: {
          one: { 'all-at-once': always, nothing: sometimes },
          several: { 'that-part': usually, 'all-at-once': sometimes, nothing: sometimes },
        },
      },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { fault: usually, ready: sometimes },
      short: { none: usually, vehicle: usually },
      hot: { nothing: usually, vehicle: usually, 'joint-or-rail': sometimes, smoking: rarely },
      settings: { 'trip-wrong': usually, right: sometimes },
      'protection-near': { late: always, not: rarely },
      'protection-far': { 'at-once': sometimes, not: usually },
      sparks: { 'at-a-wheel': usually, none: usually, 'at-a-frog': sometimes },
      'goes-with-unit': { stays: sometimes, 'goes-along': usually },
      before: { snaps: usually, dims: sometimes, 'not-off': sometimes },
    },
  },
  // A breaker between unit and track is set or programmed so that it opens after the unit, or not at all.
  {
    id: 'breaker-setting',
    fixClass: 'protection-set-wrong',
    minutes: 15,
    needs: { between: ['breaker'] },
    shows: {
      ...WRONG_ONE_OPENS,
      when: { 'now-and-then': usually, 'at-one-place': usually, 'after-a-short': sometimes, 'with-traffic': rarely },
      where: { everywhere: usually, part: sometimes, turnout: sometimes },
      since: { setting: usually, 'supply-or-unit': usually, nothing: usually },
      settings: { 'trip-wrong': usually, right: sometimes },
      'protection-near': { 'wrong-one': always, not: rarely },
      'protection-far': { 'at-once': usually, not: sometimes },
    },
  },
  // Breakers that switch unlike rails, or with in and out crossed: a short across the boundary finds its way round the one that opens.
  {
    id: 'breaker-wired-unlike',
    fixClass: 'breakers-alike',
    minutes: 20,
    needs: { between: ['breaker'], parts: ['several'] },
    shows: {
      ...WRONG_ONE_OPENS,
      when: { 'at-the-gap': usually, 'now-and-then': usually, 'at-one-place': sometimes },
      where: { gaps: usually, everywhere: usually, part: sometimes },
      since: { 'track-or-wires': usually, 'supply-or-unit': usually, nothing: usually },
      'goes-off': { 'all-at-once': always, 'one-after-the-other': sometimes },
      'feed-wires': { 'wrong-socket': always, right: sometimes },
      // Inside one part each breaker does its work.
      'protection-near': { 'at-once': usually, 'wrong-one': usually },
    },
  },
  // A new breaker or polarity switcher, faster than anything before it, opens at what was always there: wheels at frogs, vehicles that charge.
  {
    id: 'fast-breaker-shows',
    fixClass: 'fast-breaker',
    minutes: 15,
    needs: { between: ['breaker', 'reverser'] },
    shows: {
      ...QUIET,
      trouble: { 'switches-off': usually, jerks: usually, 'only-shown': rarely },
      when: {
        'at-one-place': usually,
        'at-switching-on': sometimes,
        'when-set-on': sometimes,
        'now-and-then': sometimes,
        'with-traffic': rarely,
        'at-the-gap': sometimes,
      },
      where: { turnout: usually, part: usually, gaps: sometimes, spot: rarely },
      vehicles: {
        'every-one': usually,
        'one-kind': sometimes,
        'lit-or-long': usually,
        'one-only': usually,
        many: sometimes,
      },
      since: { 'supply-or-unit': usually, setting: sometimes, 'track-or-wires': rarely, nothing: sometimes },
      'goes-off': { 'that-part': usually, nothing: usually, 'all-at-once': rarely },
      'comes-back': BACK_AS_BREAKERS_DO,
      'unit-shows': { 'only-breaker': always, ready: sometimes },
      short: { none: usually, vehicle: usually, 'only-shown': rarely },
      before: { snaps: usually, 'not-off': usually },
      fewer: { 'no-help': usually, helps: sometimes, 'one-does-it': sometimes },
      settings: { right: always, 'trip-low': sometimes },
      'one-loco': { 'like-the-others': usually, 'at-one-place': usually, 'shorts-alone': rarely },
      sparks: { none: usually, 'at-a-frog': usually },
      varnish: { 'no-change': usually, cured: usually },
    },
  },
  // A unit is set to open too soon.
  {
    id: 'low-trip',
    fixClass: 'protection-set-low',
    minutes: 15,
    shows: { ...OPENS_TOO_SOON },
  },
  // A breaker or polarity switcher is set, or was delivered, to open too soon.
  {
    id: 'breaker-low',
    fixClass: 'protection-set-low',
    minutes: 15,
    needs: { between: ['breaker', 'reverser'] },
    shows: {
      ...OPENS_TOO_SOON,
      'goes-off': { 'that-part': always, 'all-at-once': rarely },
      'comes-back': BACK_AS_BREAKERS_DO,
      'unit-shows': { 'only-breaker': always, ready: sometimes },
      // It stays with its part when units are exchanged behind it.
      'goes-with-unit': { stays: always },
    },
  },
  // After a short the unit or breaker waits for a button, since it was made so or set so. It does its work.
  {
    id: 'waits-for-button',
    fixClass: 'waits-for-button',
    minutes: 5,
    needs: { protection: ['latches'] },
    shows: {
      ...QUIET,
      trouble: { 'switches-off': always, 'stops-dark': sometimes, 'only-shown': rarely },
      when: { 'after-a-short': always, 'now-and-then': rarely, 'at-one-place': rarely, 'in-mid-run': sometimes },
      where: {
        by: 'parts',
        is: { one: { everywhere: always }, several: { part: usually, everywhere: usually } },
      },
      vehicles: { 'every-one': always, 'one-only': rarely },
      since: { 'supply-or-unit': usually, setting: usually, nothing: usually, 'a-short': usually },
      'goes-off': {
        by: 'parts',
        is: { one: { 'all-at-once': always }, several: { 'that-part': usually, 'all-at-once': usually } },
      },
      'comes-back': {
        by: 'goes-off',
        is: {
          nothing: { 'never-off': always },
          'that-part': { button: always },
          'all-at-once': { button: always },
          'one-after-the-other': { button: always },
        },
      },
      'unit-shows': { fault: usually, stopped: usually, ready: rarely },
      short: { none: usually, vehicle: sometimes },
      before: { snaps: always },
      settings: { 'stays-off': usually, right: usually },
    },
  },
] as const satisfies readonly CauseRow[];
