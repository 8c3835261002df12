// Does the protection act, and what happens in reversing sections?
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const PROTECTION_CHECKS = [
  // Load test: everything cold, vehicles off. A power resistor (15 ohms, 50 W, in a holder, hot, 20 s at most) across the rails: close to the unit,
  // then far out. How much do the rails sag (meter, or the light of a filament coach beside it)?
  // firm-everywhere: hardly, near and far · weak-far: hardly near the unit, clearly far out · weak-everywhere: clearly already near the unit.
  check({
    id: 'load-test',
    minutes: 6,
    tool: 'resistor',
    risk: 1,
    needs: ['vehicles-off', 'nothing-got-hot'],
    source: 'instrument',
    establishes: { 'firm-everywhere': ['load-test-passed'] },
    options: ['firm-everywhere', 'weak-far', 'weak-everywhere'],
    reads: 'loss',
    reading: {
      none: 'firm-everywhere',
      bus: { 'weak-far': always, 'firm-everywhere': rarely },
      rails: { 'weak-far': always, 'firm-everywhere': rarely },
      joint: { 'weak-far': always, 'firm-everywhere': sometimes },
      'at-the-unit': { 'weak-everywhere': always, 'firm-everywhere': rarely },
    },
  }),

  // Coin close to the unit, only after a good load test: nothing hot, no smell, vehicles off, insulated handle. Touch, say "one", lift.
  // off-at-once: the unit (or the breaker of that part) goes off before you finish · off-late: it goes off only after that, with a mark on the rail ·
  // stays-on: lift at once · wrong-one: another unit or everything goes off, the breaker or reverser of that part does not.
  check({
    id: 'coin-near',
    minutes: 3,
    tool: 'coin',
    risk: 2,
    needs: ['vehicles-off', 'nothing-got-hot', 'load-test-passed'],
    source: 'instrument',
    options: ['off-at-once', 'off-late', 'stays-on', 'wrong-one'],
    reads: 'protection-near',
    reading: {
      'at-once': { 'off-at-once': always, 'stays-on': rarely },
      late: { 'off-late': always, 'off-at-once': rarely, 'stays-on': sometimes },
      not: { 'stays-on': always, 'off-late': rarely },
      'wrong-one': { 'wrong-one': always, 'off-at-once': rarely },
    },
  }),

  // Coin far out (end of a siding, beyond many joiners), same rules, after the coin near the unit was good.
  check({
    id: 'coin-far',
    minutes: 4,
    tool: 'coin',
    risk: 2,
    needs: ['vehicles-off', 'nothing-got-hot', 'load-test-passed'],
    source: 'instrument',
    options: ['off-at-once', 'stays-on'],
    reads: 'protection-far',
    reading: {
      'at-once': { 'off-at-once': always, 'stays-on': rarely },
      not: { 'stays-on': always, 'off-at-once': rarely },
    },
  }),

  // From memory: trains through the reversing section, one short locomotive alone among them.
  // fine: it goes right round · trips-entering: as it enters, at either end · trips-leaving: as it leaves, or at one end only · long-only: a short one
  // passes, long trains do not · trips-at-turnout: at the entry turnout's frog · no-loop: there is no reversing section.
  check({
    id: 'short-locomotive-through-loop',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.1,
    options: ['fine', 'trips-entering', 'trips-leaving', 'long-only', 'trips-at-turnout', 'no-loop'],
    reads: 'loop',
    reading: {
      // A triangle, or a line across an oval, is seldom seen as one.
      'no-loop': { 'no-loop': always, fine: rarely },
      fine: { fine: always, 'no-loop': rarely },
      'trips-entering': {
        'trips-entering': usually,
        'trips-leaving': rarely,
        'trips-at-turnout': rarely,
        'no-loop': rarely,
      },
      'trips-leaving': {
        'trips-leaving': usually,
        'trips-entering': sometimes,
        'trips-at-turnout': rarely,
        'no-loop': rarely,
      },
      'trips-long-only': { 'long-only': always, 'trips-leaving': rarely },
      'at-its-turnout': { 'trips-at-turnout': usually, 'trips-entering': sometimes },
    },
  }),

  // What changes the polarity of the reversing section? Follow its wires.
  // automatic: one automatic reverser · switch: a switch, by hand or with the turnout · two-neighbours: two neighbouring parts both reverse by
  // themselves · none: nothing does, or there is no such section · taken-out: there was an automatic reverser, and it was moved or taken out.
  check({
    id: 'what-reverses',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['automatic', 'switch', 'two-neighbours', 'none', 'taken-out'],
    reads: 'reverser',
    reading: {
      'none-there': { none: always, switch: rarely },
      acts: { automatic: usually, switch: usually },
      silent: { automatic: always, switch: rarely },
      chatters: { 'two-neighbours': usually, automatic: sometimes },
      'acts-but-off': { automatic: always, 'two-neighbours': rarely },
      'taken-out': { 'taken-out': usually, none: sometimes },
    },
  }),

  // From memory: what the reverser did, by its click or its lamp, as the train entered.
  // acts-and-passes: it acts and the train goes on · silent: it does nothing, the unit goes off · chatters: it changes to and fro · acts-but-off: it
  // acts, and still something goes off · none-there: there is none.
  check({
    id: 'does-it-reverse',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.2,
    options: ['acts-and-passes', 'silent', 'chatters', 'acts-but-off', 'none-there'],
    reads: 'reverser',
    reading: {
      'none-there': 'none-there',
      acts: 'acts-and-passes',
      silent: { silent: always, 'acts-but-off': rarely },
      chatters: { chatters: usually, 'acts-but-off': sometimes },
      'acts-but-off': { 'acts-but-off': usually, chatters: sometimes, silent: rarely },
      'taken-out': 'none-there',
    },
  }),
] as const;
