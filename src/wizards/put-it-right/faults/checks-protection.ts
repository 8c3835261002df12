// Does the protection act, and what happens in reversing sections and with accessories?
import type { CheckRow } from '../../../engine/index.ts';
import { ACCESSORY, LEAKS, PHASE } from './groups.ts';
import { always, never, rarely, rows, sometimes, usually } from './likelihood.ts';

export const PROTECTION_CHECKS = [
  // Load test: everything cold, vehicles off. A power resistor (10 to 15 ohms, 25 W, in a holder, hot, 20 s at most) or a
  // 12 V 21 W lamp across the rails: close to the unit, then far out. How much do the rails sag (meter, or the light of
  // a lit coach beside it)?
  // firm-everywhere: hardly, near and far · weak-far: hardly near the unit, clearly far out · weak-everywhere: clearly
  // already near the unit · sags-before: the rails are already weak, or the wire is warm, without the resistor.
  {
    id: 'load-test',
    minutes: 6,
    tool: 'resistor',
    risk: 1,
    needs: ['vehicles-off', 'nothing-got-hot'],
    options: ['firm-everywhere', 'weak-far', 'weak-everywhere', 'sags-before'],
    establishes: { 'firm-everywhere': ['load-test-passed'] },
    otherwise: [always, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, rarely, rarely], 'thin-wire', 'few-feeds'],
      [[sometimes, usually, rarely, rarely], 'loose-joiner', 'dead-joint'],
      [[rarely, rarely, usually, rarely], 'supply-hiccup', 'supply-limit', 'mains-sag', 'supply-defect'],
      [[sometimes, rarely, rarely, sometimes], ...LEAKS],
      [[sometimes, rarely, sometimes, sometimes], 'metal-across', 'two-sources', 'crossed-feeder'],
    ),
  },

  // Coin close to the unit, only after a good load test: nothing hot, no smell, vehicles off, insulated handle. Touch,
  // count "one", lift.
  // off-at-once: the unit (or the breaker of that part) goes off before you finish · off-late: it goes off only after half
  // a second or more, with a mark on the rail · stays-on: lift at once · wrong-one: another unit or everything goes off, the
  // breaker or reverser of that part does not.
  {
    id: 'coin-near',
    minutes: 3,
    tool: 'coin',
    risk: 2,
    needs: ['vehicles-off', 'nothing-got-hot', 'load-test-passed'],
    options: ['off-at-once', 'off-late', 'stays-on', 'wrong-one'],
    otherwise: [always, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, sometimes, rarely], 'slow-trip'],
      [[sometimes, rarely, sometimes, usually], 'breaker-setting'],
      [[sometimes, sometimes, usually, rarely], 'high-trip'],
      [[rarely, rarely, always, rarely], 'stage-defect'],
      // The supply gives way, and the unit starts anew: to the eye it goes off.
      [[usually, sometimes, sometimes, rarely], 'supply-hiccup', 'supply-limit'],
      [[rarely, rarely, rarely, always], 'reverser-grading'],
      [[sometimes, rarely, rarely, usually], 'stage-order', 'one-rail', 'frog-cross-district'],
    ),
  },

  // Coin far out (end of a siding, beyond many joiners), same rules, after the coin near the unit was good.
  // off-at-once · stays-on: lift at once.
  {
    id: 'coin-far',
    minutes: 4,
    tool: 'coin',
    risk: 2,
    needs: ['vehicles-off', 'nothing-got-hot', 'load-test-passed'],
    options: ['off-at-once', 'stays-on'],
    otherwise: [always, rarely],
    when: rows(
      [[rarely, always], 'thin-wire', 'few-feeds', 'high-trip', 'stage-defect'],
      [[rarely, usually], 'loose-joiner', 'dead-joint', 'dirty'],
      [[sometimes, usually], 'breaker-setting', 'slow-trip'],
      [[usually, sometimes], 'supply-hiccup', 'supply-limit'],
    ),
  },

  // Short locomotive, alone, slowly through the reversing section.
  // fine: it goes right round · trips-entering: as it enters, whichever end · trips-leaving: as it leaves, or at one end
  // only · trips-at-turnout: at the entry turnout's frog · no-loop: there is no reversing section.
  {
    id: 'short-locomotive-through-loop',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['fine', 'trips-entering', 'trips-leaving', 'trips-at-turnout', 'no-loop'],
    otherwise: [sometimes, rarely, rarely, rarely, usually],
    when: rows(
      [[always, rarely, rarely, rarely, never], 'loop-too-short'],
      [[rarely, usually, sometimes, never, never], 'loop-not-isolated', 'reverser-grading', 'gap-closed'],
      [[rarely, rarely, always, never, never], 'loop-no-device'],
      [[sometimes, sometimes, sometimes, never, rarely], 'two-auto-reversers'],
      [[rarely, sometimes, usually, never, sometimes], 'reverse-route'],
      [[rarely, usually, rarely, sometimes, sometimes], 'live-frog', 'crossed-feeder', ...PHASE],
      [[sometimes, rarely, rarely, usually, sometimes], 'wheel-bridges-frog', 'wheelset-at-turnouts'],
      [[usually, sometimes, rarely, rarely, sometimes], 'metal-bodies', 'old-feeder-left', 'high-trip', 'slow-trip'],
      [[usually, sometimes, rarely, rarely, sometimes], 'breaker-setting'],
    ),
  },

  // What changes the polarity of the reversing section?
  // automatic: an automatic reverser · switch: a switch, by hand or with the turnout · two-neighbours: two neighbouring
  // parts both reverse by themselves · none: nothing does · no-loop: there is no reversing section.
  {
    id: 'what-reverses',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['automatic', 'switch', 'two-neighbours', 'none', 'no-loop'],
    otherwise: [rarely, rarely, rarely, rarely, always],
    when: rows(
      [[rarely, rarely, never, always, rarely], 'loop-no-device'],
      [[rarely, rarely, always, never, never], 'two-auto-reversers'],
      [[always, rarely, rarely, never, never], 'reverser-grading'],
      [[usually, sometimes, rarely, rarely, never], 'loop-too-short', 'loop-not-isolated'],
      // Nobody takes it for a reversing section.
      [[rarely, rarely, never, sometimes, always], 'reverse-route'],
      [[sometimes, sometimes, rarely, rarely, usually], 'gap-closed', 'wheel-bridges-frog', 'high-trip', 'slow-trip'],
      [[sometimes, sometimes, rarely, rarely, usually], 'breaker-setting', 'crossed-feeder', 'old-feeder-left'],
    ),
  },

  // Listen at the reverser (or watch its lamp) as the train enters.
  // acts-and-passes: it acts and the train goes on · silent: it does nothing, the unit goes off · chatters: it changes to
  // and fro · acts-but-off: it acts, and still something goes off · none-there: there is none.
  {
    id: 'does-it-reverse',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['acts-and-passes', 'silent', 'chatters', 'acts-but-off', 'none-there'],
    otherwise: [rarely, rarely, never, rarely, always],
    when: rows(
      [[rarely, always, rarely, rarely, never], 'reverser-grading'],
      [[rarely, rarely, always, rarely, never], 'two-auto-reversers'],
      [[rarely, sometimes, sometimes, usually, rarely], 'loop-not-isolated', 'loop-too-short', 'gap-closed'],
      [[never, sometimes, never, rarely, always], 'loop-no-device'],
      [[sometimes, sometimes, rarely, sometimes, sometimes], 'wheel-bridges-frog', 'metal-bodies', 'crossed-feeder'],
      [[rarely, usually, rarely, sometimes, sometimes], 'high-trip', 'slow-trip', 'breaker-setting'],
    ),
  },

  // Try the turnouts and signals with no train running.
  // right: all right then · wrong-too: just as wrong · not-affected: the accessories work anyway.
  {
    id: 'accessories-without-trains',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['right', 'wrong-too', 'not-affected'],
    otherwise: [rarely, rarely, always],
    when: rows(
      [[always, rarely, rarely], 'sagging-accessories'],
      [[usually, rarely, rarely], 'accessory-reset', 'into-control-bus'],
      [[rarely, always, rarely], 'accessory-address', 'accessory-wiring', 'accessory-polarity'],
      [[sometimes, usually, rarely], 'accessory-supply-weak', 'no-reference', 'long-bus'],
      [[sometimes, sometimes, sometimes], 'detector-false', 'hidden-common', 'dirty'],
      [
        [sometimes, rarely, usually],
        'overload-total',
        'overload-district',
        'supply-limit',
        'supply-hiccup',
        'thin-wire',
      ],
    ),
  },

  // When exactly do the accessories act up?
  // after-trip-or-power-up: just after something went off or at switching on · when-trains-run: while trains run or start ·
  // several-at-once: when several are thrown one after the other quickly · only-by-itself: commands work, and only what
  // should happen by itself (sensing a train, throwing before it) stays away · always: always · at-random: now and then,
  // or they are well.
  {
    id: 'accessory-moment',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['after-trip-or-power-up', 'when-trains-run', 'several-at-once', 'only-by-itself', 'always', 'at-random'],
    otherwise: [rarely, rarely, rarely, never, rarely, always],
    when: rows(
      [[always, rarely, rarely, never, never, rarely], 'accessory-reset'],
      [[rarely, always, sometimes, never, rarely, rarely], 'sagging-accessories'],
      [[rarely, rarely, always, never, sometimes, rarely], 'accessory-supply-weak'],
      [[rarely, rarely, rarely, rarely, always, rarely], 'accessory-address', 'accessory-polarity'],
      [[rarely, rarely, rarely, rarely, usually, sometimes], 'accessory-wiring'],
      // Sensing needs a way back between the units; commands come without one.
      [[rarely, rarely, rarely, usually, sometimes, rarely], 'no-reference'],
      [[rarely, sometimes, rarely, never, sometimes, usually], 'long-bus', 'hidden-common'],
      [[rarely, sometimes, rarely, sometimes, sometimes, usually], 'detector-false'],
      [[sometimes, sometimes, rarely, never, rarely, sometimes], 'into-control-bus'],
    ),
  },

  // Everything off: feed the accessories from a supply of their own for a test (same kind and volts as they ask for).
  // cured · no-change.
  {
    id: 'accessories-own-supply',
    minutes: 8,
    tool: 'second-supply',
    risk: 1,
    needs: ['power-off'],
    options: ['cured', 'no-change'],
    otherwise: [never, always],
    when: rows(
      [[always, rarely], 'sagging-accessories', 'accessory-supply-weak'],
      [[usually, sometimes], 'accessory-reset'],
      [[rarely, usually], 'accessory-wiring', 'into-control-bus', 'no-reference'],
    ),
  },

  // One accessory, a few, or all?
  // one: always the same one · two-as-one: two act on one command, or one on a wrong command · far-ones: those far from the
  // feed · all · none: the accessories are well.
  {
    id: 'one-accessory-or-all',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['one', 'two-as-one', 'far-ones', 'all', 'none'],
    otherwise: [rarely, never, rarely, rarely, always],
    when: rows(
      [[usually, never, rarely, rarely, rarely], 'accessory-wiring'],
      [[sometimes, usually, never, rarely, rarely], 'accessory-address'],
      [[rarely, rarely, sometimes, usually, rarely], 'sagging-accessories', 'accessory-supply-weak'],
      [[rarely, rarely, rarely, always, rarely], 'accessory-reset', 'accessory-polarity', 'into-control-bus'],
      [[rarely, rarely, sometimes, usually, rarely], 'no-reference'],
      [[rarely, rarely, always, rarely, rarely], 'long-bus'],
      [[sometimes, rarely, rarely, rarely, usually], 'detector-false', 'dirty', 'hidden-common'],
    ),
  },

  // What else happens at that moment?
  // nothing · handsets-restart: handsets or the control bus start anew · turnouts-throw: turnouts or signals move by
  // themselves · all-took-one-address: several locomotives answer to one address, since a train stood at the programming
  // track · wrong-occupancy: a track shows occupied that is empty.
  {
    id: 'what-else-happens',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['nothing', 'handsets-restart', 'turnouts-throw', 'all-took-one-address', 'wrong-occupancy'],
    otherwise: [always, rarely, rarely, never, rarely],
    when: rows(
      [[rarely, always, sometimes, never, rarely], 'into-control-bus'],
      [[sometimes, rarely, always, never, rarely], 'accessory-reset'],
      [[sometimes, never, rarely, usually, rarely], 'program-bridge'],
      [[rarely, rarely, rarely, never, always], 'detector-false'],
      [[sometimes, rarely, rarely, never, usually], ...LEAKS, 'shared-wire'],
      [[usually, sometimes, rarely, never, rarely], 'supply-limit', 'supply-hiccup', 'mains-sag', 'supply-defect'],
      [[usually, rarely, rarely, never, sometimes], 'one-rail', 'leftover-wiring'],
      [[usually, rarely, sometimes, rarely, rarely], ...ACCESSORY],
      [[sometimes, rarely, always, never, rarely], 'accessory-reset'],
    ),
  },
] as const satisfies readonly CheckRow[];
