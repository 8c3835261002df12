// Turnouts, signals and occupancy reports.
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const ACCESSORY_CHECKS = [
  // Try the turnouts and signals with no train running.
  // right: all right then · wrong-too: just as wrong · not-affected: the accessories work anyway.
  check({
    id: 'accessories-without-trains',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['right', 'wrong-too', 'not-affected'],
    reads: 'accessories',
    reading: {
      fine: 'not-affected',
      'with-trains': { right: always, 'wrong-too': rarely },
      'after-trips': { right: always, 'wrong-too': rarely },
      'several-at-once': { 'wrong-too': usually, right: sometimes },
      'one-always': 'wrong-too',
      'far-ones': { 'wrong-too': always, right: sometimes },
      'all-always': 'wrong-too',
      'at-random': { 'wrong-too': usually, right: usually },
      'sensing-only': { right: always, 'wrong-too': rarely },
      'other-one': 'wrong-too',
    },
  }),

  // When exactly do the accessories act up?
  // after-trip-or-power-up: just after something went off or at switching on · when-trains-run: while trains run or start · several-at-once: when
  // several are thrown one after the other quickly · only-by-itself: commands work, and only what should happen by itself (sensing a train, throwing
  // before it) stays away · always · at-random: now and then, no pattern · they-are-well.
  check({
    id: 'accessory-moment',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: [
      'after-trip-or-power-up',
      'when-trains-run',
      'several-at-once',
      'only-by-itself',
      'always',
      'at-random',
      'they-are-well',
    ],
    reads: 'accessories',
    reading: {
      fine: 'they-are-well',
      'with-trains': { 'when-trains-run': usually, 'at-random': sometimes },
      'after-trips': { 'after-trip-or-power-up': usually, 'at-random': sometimes },
      'several-at-once': { 'several-at-once': usually, 'at-random': sometimes },
      'one-always': { always: always, 'at-random': rarely },
      'far-ones': { always: usually, 'several-at-once': rarely, 'when-trains-run': rarely },
      'all-always': 'always',
      'at-random': { 'at-random': always, 'when-trains-run': rarely },
      // Sensing needs a way back between the units; commands come without one.
      'sensing-only': 'only-by-itself',
      'other-one': { always: always, 'at-random': rarely },
    },
  }),

  // One accessory, a few, or all?
  // one: always the same one · two-as-one: two act on one command, or another one on it · far-ones: those far from the feed · all · now-one-now-another:
  // changing ones · none: the accessories are well.
  check({
    id: 'one-accessory-or-all',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: ['one', 'two-as-one', 'far-ones', 'all', 'now-one-now-another', 'none'],
    reads: 'accessories',
    reading: {
      fine: 'none',
      'with-trains': { all: usually, 'now-one-now-another': usually, 'far-ones': sometimes },
      'after-trips': { all: usually, 'now-one-now-another': usually, one: sometimes },
      'several-at-once': { 'now-one-now-another': usually, all: sometimes },
      'one-always': 'one',
      'far-ones': { 'far-ones': always, 'now-one-now-another': rarely },
      'all-always': 'all',
      'at-random': { 'now-one-now-another': usually, one: sometimes },
      'sensing-only': { all: usually, one: sometimes },
      'other-one': { 'two-as-one': always, one: rarely },
    },
  }),

  // Everything off: feed the accessories from a supply of their own for a test (same kind and volts as they ask for).
  check({
    id: 'accessories-own-supply',
    minutes: 8,
    tool: 'second-supply',
    risk: 1,
    needs: ['power-off'],
    source: 'eye',
    options: ['cured', 'no-change'],
    reads: 'accessories-apart',
    reading: { 'no-change': { 'no-change': always, cured: rarely }, cured: { cured: always, 'no-change': rarely } },
  }),

  // Everything off: exchange the accessory with the trouble and a sound neighbour at their decoder. Where is the trouble now?
  // no-change: both fail, or the same one as before whatever it hangs on · with-the-accessory: it went to the other socket with it · with-the-number: it
  // stayed at that socket or number.
  check({
    id: 'exchange-accessories',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['no-change', 'with-the-accessory', 'with-the-number'],
    reads: 'accessory-exchanged',
    reading: {
      'stays-everywhere': 'no-change',
      'with-the-accessory': 'with-the-accessory',
      'with-the-number': 'with-the-number',
    },
  }),

  // Which tracks are shown as occupied though they are empty, or the other way round?
  // fine · one-occupied: one empty track · long-wires: only those with the longest wires · wild: many, changing · absent: nothing is reported any more.
  check({
    id: 'what-is-reported',
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.1,
    options: ['fine', 'one-occupied', 'long-wires', 'wild', 'absent'],
    reads: 'reports',
    reading: {
      fine: 'fine',
      'one-occupied': { 'one-occupied': always, 'long-wires': rarely },
      wild: { wild: always, 'one-occupied': rarely },
      absent: 'absent',
      'long-wires': { 'long-wires': usually, 'one-occupied': sometimes },
    },
  }),
] as const;
