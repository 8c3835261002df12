// Reversing sections and routes: where the red rail meets the blue one.
import { AT_THE_GAP, BACK_AS_THE_UNIT_DOES, QUIET, SHORT_FOR_A_MOMENT, TRIPS_ITS_UNIT } from '../families.ts';
import type { CauseRow, Row, ShowsOf } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** A short while wheels join the reversing section with the rest. */
const AT_THE_LOOP = {
  ...AT_THE_GAP,
  trouble: SHORT_FOR_A_MOMENT,
  when: { 'at-the-gap': usually, 'at-one-place': usually },
  where: { loop: always, gaps: rarely, turnout: rarely },
  vehicles: { 'every-one': always, 'lit-or-long': rarely },
  since: { 'track-or-wires': usually, nothing: usually, 'supply-or-unit': rarely },
  'goes-off': TRIPS_ITS_UNIT,
  'red-rail': { 'meets-the-other': always },
  sparks: { none: usually, 'at-the-gap': usually },
  // Then the other end is the wrong one.
  swap: { 'no-change': usually, worse: usually },
} as const satisfies Partial<Row>;

/** A short that stands where no gap was ever cut; else over with the train. */
const BACK_OR_REMOVED: ShowsOf<'comes-back'> = {
  by: 'goes-off',
  is: {
    nothing: { 'never-off': always, blink: sometimes },
    'that-part': { 'when-removed': usually, button: usually, seconds: usually, stays: sometimes, blink: rarely },
    'all-at-once': { 'when-removed': usually, button: usually, seconds: usually, stays: sometimes, blink: rarely },
    'one-after-the-other': { 'when-removed': usually, button: usually, seconds: usually, blink: rarely },
  },
};

export const LOOPS = [
  // At one end of the reversing section a rail is not cut, or a leg of it was forgotten.
  {
    id: 'loop-not-isolated',
    fixClass: 'loop-not-isolated',
    minutes: 40,
    needs: { rails: ['two'] },
    shows: {
      ...AT_THE_LOOP,
      where: { loop: always, gaps: sometimes, turnout: rarely },
      // With both rails joined at one end the reverser can set it only one way: the other way it is a short that stands.
      vehicles: { 'every-one': usually, 'none-needed': usually },
      // That one ends as the section's own feeder is taken off.
      short: { none: usually, vehicle: sometimes, feeder: sometimes, track: sometimes },
      when: { 'at-the-gap': usually, 'at-one-place': usually, 'at-switching-on': usually, always: sometimes },
      since: { 'track-or-wires': usually, nothing: usually, time: sometimes },
      way: { either: usually, 'one-way': usually, 'one-route': rarely },
      cut: { 'one-joined': usually, 'both-joined': usually, touching: sometimes, 'both-cut': rarely },
      // A cut that closes with warmth is a cause of its own.
      weather: { 'no-matter': always, warm: rarely },
      sides: { changes: usually, reversed: sometimes, agree: sometimes },
      loop: { 'trips-leaving': usually, 'trips-entering': sometimes },
      reverser: { 'acts-but-off': usually, silent: sometimes, chatters: sometimes, 'none-there': sometimes },
      ohms: { open: usually, short: usually, some: rarely },
      'comes-back': BACK_OR_REMOVED,
    },
  },
  // The reversing section is shorter than the train: metal wheels stand at both ends at once.
  {
    id: 'loop-too-short',
    fixClass: 'loop-too-short',
    minutes: 60,
    needs: { rails: ['two'] },
    shows: {
      ...AT_THE_LOOP,
      vehicles: { 'lit-or-long': always, many: rarely, coupled: sometimes },
      since: { vehicle: usually, nothing: usually, 'track-or-wires': usually },
      sides: { changes: always, agree: rarely },
      loop: { 'trips-long-only': always },
      reverser: { 'acts-but-off': usually, chatters: usually, silent: rarely, 'none-there': rarely },
    },
  },
  // Nothing turns the reversing section over: it agrees with one end only; without gaps it is a short as soon as its last piece is in.
  {
    id: 'loop-no-device',
    fixClass: 'loop-no-device',
    minutes: 45,
    needs: { rails: ['two'] },
    shows: {
      ...AT_THE_LOOP,
      // It has never gone well.
      since: { 'track-or-wires': usually, nothing: sometimes },
      sides: { reversed: usually, agree: sometimes, changes: rarely },
      way: { either: usually, 'one-way': usually },
      loop: { 'trips-leaving': always, 'trips-entering': sometimes },
      reverser: { 'none-there': always, silent: rarely },
      trouble: SHORT_FOR_A_MOMENT,
      when: { 'at-the-gap': usually, 'at-one-place': usually, 'at-switching-on': usually, always: usually },
      vehicles: { 'every-one': usually, 'none-needed': usually, 'lit-or-long': rarely },
      where: { loop: always, everywhere: sometimes, gaps: rarely, turnout: rarely },
      short: { none: usually, vehicle: sometimes, track: usually, feeder: rarely },
      ohms: { open: usually, short: usually, some: rarely },
      cut: { 'both-cut': usually, 'both-joined': usually, 'one-joined': rarely },
      'comes-back': BACK_OR_REMOVED,
    },
  },
  // The unit, or a breaker before the reverser, is quicker than the reverser: it goes off before anything is turned over.
  {
    id: 'reverser-grading',
    fixClass: 'reverser-grading',
    minutes: 15,
    needs: { rails: ['two'], between: ['reverser', 'breaker'] },
    shows: {
      ...AT_THE_LOOP,
      since: { 'supply-or-unit': usually, setting: usually, 'track-or-wires': sometimes, nothing: sometimes },
      'unit-shows': {
        by: 'between',
        is: {
          nothing: { fault: always },
          breaker: { 'only-breaker': usually, fault: usually },
          reverser: { fault: always, ready: rarely },
        },
      },
      sides: { reversed: usually, agree: usually, changes: rarely },
      way: { either: usually, 'one-way': usually },
      // The section agrees with one end at any time.
      loop: { 'trips-leaving': usually, 'trips-entering': sometimes },
      reverser: { silent: usually, chatters: sometimes, 'acts-but-off': sometimes, acts: rarely },
      settings: { 'trip-wrong': usually, right: sometimes },
      'protection-near': { 'at-once': usually, 'wrong-one': usually },
      vehicles: { 'every-one': usually, 'lit-or-long': sometimes, many: sometimes, 'one-kind': sometimes },
    },
  },
  // Two neighbouring parts both turn over by themselves and answer each other to and fro.
  {
    id: 'two-auto-reversers',
    fixClass: 'two-auto-reversers',
    minutes: 30,
    needs: { rails: ['two'] },
    shows: {
      ...AT_THE_LOOP,
      trouble: { jerks: usually, 'switches-off': usually, hums: sometimes, 'only-shown': rarely, 'stops-dark': rarely },
      when: { 'at-the-gap': always, 'at-one-place': sometimes },
      where: { gaps: usually, loop: usually },
      vehicles: { 'every-one': usually, 'lit-or-long': sometimes },
      since: { 'supply-or-unit': usually, setting: usually, 'track-or-wires': usually, nothing: rarely },
      'goes-off': { nothing: usually, 'that-part': sometimes, 'all-at-once': sometimes },
      sides: { changes: always },
      settings: { reverses: usually, right: sometimes },
      'red-rail': { 'meets-the-other': usually, 'meets-itself': sometimes },
      // They answer each other at whichever end joins them.
      loop: { 'no-loop': sometimes, fine: sometimes, 'trips-entering': usually, 'trips-leaving': usually },
      reverser: { chatters: always, 'acts-but-off': sometimes },
      swap: { 'no-change': always },
    },
  },
  // A route through the gap, a triangle or a loop over two parts, comes back the other way round, and nobody takes it for a reversing section.
  {
    id: 'reverse-route',
    fixClass: 'reverse-route',
    minutes: 60,
    needs: { rails: ['two'], parts: ['several'] },
    shows: {
      ...AT_THE_GAP,
      trouble: SHORT_FOR_A_MOMENT,
      when: { 'at-the-gap': always, 'at-one-place': sometimes },
      // At the one gap by which the route comes back.
      where: { gaps: usually, spot: usually, loop: sometimes },
      since: { 'track-or-wires': usually, nothing: sometimes },
      way: { 'one-route': always, 'one-way': sometimes, either: rarely },
      // Reversed at that gap; at the other ones all is well.
      sides: { reversed: usually, agree: sometimes },
      swap: { 'no-change': usually, worse: usually, cured: rarely },
      'red-rail': { 'meets-the-other': always },
      loop: { 'no-loop': usually, 'trips-leaving': sometimes, 'trips-entering': rarely },
      reverser: { 'none-there': always, acts: rarely },
      sparks: { 'at-the-gap': usually, none: usually },
    },
  },
  // Dirty or wrongly set wipers, or a split ring in the wrong place: the bridge is dead, or shorts, in some positions.
  {
    id: 'turntable-wipers',
    fixClass: 'turntable',
    minutes: 25,
    shows: {
      ...QUIET,
      trouble: { 'stops-dark': usually, jerks: usually, 'switches-off': sometimes },
      when: {
        'at-one-place': usually,
        'when-thrown': usually,
        'now-and-then': sometimes,
        'at-the-gap': rarely,
        creeping: rarely,
      },
      where: { turntable: always, spot: rarely },
      // Each position rests on its own spot of the ring.
      bridge: { 'some-positions': always, 'half-round': sometimes, 'no-matter': sometimes },
      vehicles: { 'every-one': usually, 'none-needed': usually },
      since: { time: usually, nothing: usually, 'track-or-wires': usually },
      'goes-off': { nothing: usually, 'that-part': sometimes, 'all-at-once': sometimes },
      // A short there is over once the bridge is turned on.
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { ready: usually, fault: sometimes, 'only-breaker': rarely },
      volts: { none: usually, moments: usually, full: usually, low: rarely },
      commands: { arrive: usually, none: usually },
      short: { none: usually, 'one-setting': sometimes },
      'setting-matters': { 'dead-in-one': usually, 'short-in-one': usually, no: sometimes },
      contact: { dirty: usually, flickers: usually, good: sometimes },
      'dead-rail': { none: usually, one: usually, both: sometimes },
      loss: { none: usually, joint: usually },
      sides: { agree: usually, changes: usually, reversed: rarely },
      'red-rail': { 'meets-itself': usually, 'meets-the-other': usually },
      ohms: { open: usually, some: rarely, short: sometimes },
      sparks: { none: usually, elsewhere: sometimes },
      swap: { 'no-change': always, worse: rarely },
    },
  },
  // The bridge lies turned round at some tracks, and neither a split ring nor a reverser changes its poles: a short as a wheel joins it with the track.
  {
    id: 'turntable-reversed',
    fixClass: 'turntable-reversed',
    minutes: 45,
    needs: { rails: ['two'] },
    shows: {
      ...AT_THE_LOOP,
      when: { 'at-the-gap': usually, 'at-one-place': always, 'when-thrown': rarely },
      // Of one spot speaks who thinks of the track and not of the bridge.
      where: { turntable: always, loop: rarely, spot: usually },
      // What meets the wrong way meets the right way with the bridge turned half round.
      bridge: { 'half-round': always, 'no-matter': rarely },
      since: { 'track-or-wires': usually, nothing: usually, 'supply-or-unit': rarely },
      sides: { reversed: usually, agree: usually },
      // Some tracks only, or one way round of the bridge.
      way: { 'one-way': usually, 'one-route': usually, either: sometimes },
      'setting-matters': { 'short-in-one': usually, no: usually, 'dead-in-one': rarely },
      loop: { 'no-loop': usually, 'trips-entering': usually, 'trips-leaving': usually },
      reverser: { 'none-there': always, silent: sometimes },
      sparks: { 'at-the-gap': usually, elsewhere: usually, none: usually },
      swap: { 'no-change': always, worse: rarely },
    },
  },
  // A vehicle or a single wheelset is parked across the gap of a reversing section: both ends are joined, and whatever turns it over cannot suit both.
  {
    id: 'parked-across-loop',
    fixClass: 'parked-across-loop',
    minutes: 5,
    needs: { rails: ['two'] },
    shows: {
      ...AT_THE_LOOP,
      trouble: {
        'switches-off': usually,
        jerks: sometimes,
        'only-shown': sometimes,
        hums: sometimes,
        'stops-dark': sometimes,
      },
      when: {
        'at-switching-on': usually,
        always: usually,
        'at-the-gap': usually,
        'now-and-then': sometimes,
        'in-mid-run': sometimes,
      },
      where: { loop: usually, everywhere: usually, gaps: sometimes, turntable: rarely, part: sometimes },
      // Nobody thinks of the wagon that stands.
      vehicles: { 'every-one': usually, 'none-needed': usually, 'one-only': sometimes, 'lit-or-long': rarely },
      since: { nothing: usually, vehicle: usually, 'track-or-wires': rarely },
      volts: { none: usually, moments: usually, full: sometimes },
      commands: { none: usually, arrive: usually },
      short: { vehicle: always, none: rarely },
      sides: { changes: usually, agree: usually, reversed: sometimes },
      fewer: { 'no-help': usually, 'one-does-it': usually, helps: sometimes },
      loop: { 'trips-entering': usually, 'trips-leaving': usually, fine: sometimes },
      reverser: {
        chatters: usually,
        'acts-but-off': usually,
        silent: sometimes,
        acts: sometimes,
        'none-there': rarely,
      },
    },
  },
] as const satisfies readonly CauseRow[];
