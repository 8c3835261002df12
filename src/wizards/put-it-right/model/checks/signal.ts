// Do power and commands reach the part beyond the gap, and by which wires?
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const SIGNAL_CHECKS = [
  // Put one locomotive with lights wholly into the part with the trouble, every wheel beyond the gap, all units on, a hand ready to lift it off (it
  // may take off by itself): what does it do?
  // dark: no light · lit-but-deaf: light, but it does not obey · takes-off: it runs off by itself at full speed · runs-poorly: it obeys, but slow,
  // dim, stuttering or erratic · runs-well.
  check({
    id: 'vehicle-in-far-part',
    minutes: 3,
    tool: 'eyes',
    risk: 1,
    needs: [],
    source: 'eye',
    options: ['dark', 'lit-but-deaf', 'takes-off', 'runs-poorly', 'runs-well'],
    reads: ['volts', 'commands'],
    reading: [
      { where: { volts: ['none'] }, gives: { dark: always } },
      // Whether it runs off on direct current stands in its decoder's settings.
      { where: { volts: ['direct'] }, gives: { 'takes-off': usually, 'lit-but-deaf': usually, dark: rarely } },
      { where: { volts: ['moments'] }, gives: { 'runs-poorly': usually, dark: sometimes } },
      { where: { commands: ['none', 'other'] }, gives: { 'lit-but-deaf': always, 'takes-off': rarely } },
      {
        where: { commands: ['spoiled'] },
        gives: { 'runs-poorly': usually, 'lit-but-deaf': sometimes, 'takes-off': rarely, 'runs-well': rarely },
      },
      { where: { commands: ['one-deaf'] }, gives: { 'lit-but-deaf': usually, 'runs-well': sometimes, dark: rarely } },
      // A decoder that holds its speed hides low volts.
      { where: { volts: ['low'] }, gives: { 'runs-poorly': usually, 'runs-well': usually } },
      { where: { volts: ['low-loaded'] }, gives: { 'runs-well': usually, 'runs-poorly': sometimes } },
      { where: {}, gives: { 'runs-well': always, 'runs-poorly': rarely } },
    ],
  }),

  // Look at the control cable between command station and booster, both ends.
  // right-and-firm · missing-or-loose · wrong-socket: one end sits in a socket that is labelled for something else · looks-damaged: crushed, bent
  // pins, home-made.
  check({
    id: 'look-at-control-cable',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['right-and-firm', 'missing-or-loose', 'wrong-socket', 'looks-damaged'],
    reads: 'link',
    reading: {
      right: { 'right-and-firm': always, 'looks-damaged': rarely },
      missing: { 'missing-or-loose': always, 'right-and-firm': rarely },
      'wrong-socket': { 'wrong-socket': usually, 'right-and-firm': sometimes },
      // What is broken inside looks sound.
      damaged: { 'looks-damaged': usually, 'right-and-firm': usually },
      mirrored: { 'right-and-firm': always, 'looks-damaged': rarely },
    },
  }),

  // Everything off, both ends of the control cable side by side, the latch on the same side: does the row of colours run the same way?
  // alike · mirrored: in one end the other way round · no-colours: they cannot be seen is "I can't check that".
  check({
    id: 'cable-ends-side-by-side',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    unsure: 0.3,
    options: ['alike', 'mirrored', 'broken'],
    reads: 'link',
    reading: {
      right: 'alike',
      missing: { alike: usually, broken: rarely },
      'wrong-socket': 'alike',
      damaged: { broken: usually, alike: sometimes },
      mirrored: 'mirrored',
    },
  }),

  // Everything off, vehicles off that part, pull the control cable at the booster, switch on, look at the booster and at the rails (a lit coach,
  // no locomotive). What has changed?
  // nothing-changes: just as before · goes-dead: that part is off or its lamp says "no signal".
  check({
    id: 'pull-control-cable',
    minutes: 4,
    tool: 'eyes',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    source: 'eye',
    options: ['nothing-changes', 'goes-dead'],
    reads: ['volts', 'commands'],
    reading: [
      { where: { volts: ['none', 'direct'] }, gives: 'nothing-changes' },
      { where: { commands: ['none', 'other'] }, gives: 'nothing-changes' },
      // A unit that holds its rails alive without a signal.
      { where: {}, gives: { 'goes-dead': always, 'nothing-changes': rarely } },
    ],
  }),

  // Look at the piece where the wires reach the rails, below too, and at the plug: anything between the two wires?
  // plain: only wires · capacitor-or-choke: a small component, a thick piece or an unknown box.
  check({
    id: 'look-at-feed-piece',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['plain', 'capacitor-or-choke'],
    reads: 'feed-piece',
    reading: { plain: 'plain', capacitor: { 'capacitor-or-choke': always, plain: rarely } },
  }),

  // Has the second unit a throttle of its own, or keys? Try whether the locomotive in that part obeys that one.
  // drives-there: yes · does-not: no, or the unit has none.
  check({
    id: 'own-throttle',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['drives-there', 'does-not'],
    reads: 'commands',
    reading: {
      arrive: 'does-not',
      none: 'does-not',
      spoiled: { 'does-not': always, 'drives-there': rarely },
      other: { 'drives-there': always, 'does-not': rarely },
      'one-deaf': 'does-not',
    },
  }),

  // Follow every wire that ends at the rails, also old ones under the board.
  // only-ours: each comes from the one unit of its part · old-wiring: old block switches, old wires or an unplugged old transformer still hang on ·
  // second-unit: another live unit or throttle is also connected there.
  check({
    id: 'follow-every-wire',
    minutes: 8,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['only-ours', 'old-wiring', 'second-unit'],
    reads: 'old-wiring',
    reading: {
      none: 'only-ours',
      'dead-wires': { 'old-wiring': always, 'only-ours': rarely },
      'live-source': { 'second-unit': always, 'old-wiring': rarely },
    },
  }),

  // Look under the part with the trouble: a pair of wires from its unit's track output to these rails?
  // both-firm: two wires, both firm · none-or-unplugged: none, or a plug is out · one-loose: one wire is off, broken or a screw is loose ·
  // other-socket: they come from the programming or the control socket · to-other-part: they come from the unit of another part · device-open: a
  // breaker or a detector sits between and is open · switch-off: an old block switch sits between · fuse-blown · board-plug: the plug between two
  // boards or modules is out or crossed.
  check({
    id: 'look-at-feed-wires',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: [
      'both-firm',
      'none-or-unplugged',
      'one-loose',
      'other-socket',
      'to-other-part',
      'device-open',
      'switch-off',
      'fuse-blown',
      'board-plug',
    ],
    reads: 'feed-wires',
    reading: {
      right: { 'both-firm': always, 'one-loose': rarely },
      missing: { 'none-or-unplugged': always, 'both-firm': rarely },
      'one-loose': { 'one-loose': usually, 'both-firm': sometimes },
      'wrong-socket': { 'other-socket': usually, 'both-firm': sometimes },
      'to-other-part': { 'to-other-part': usually, 'both-firm': sometimes },
      'device-open': { 'device-open': usually, 'both-firm': sometimes },
      'switch-off': { 'switch-off': usually, 'both-firm': sometimes },
      'fuse-blown': { 'fuse-blown': usually, 'both-firm': sometimes, 'device-open': rarely },
      'board-plug': { 'board-plug': usually, 'none-or-unplugged': sometimes, 'both-firm': rarely },
    },
  }),

  // Power off: clip a wire from a rail of this part that is known to be live to the dead rail on the same side; first one rail, then the other. Power
  // on, look at the lit vehicle.
  // one-rail-lacks: alive with one of the two · both-lack: only with both · stays-dead: dead with both, or it was never dead.
  check({
    id: 'clip-power-to-rails',
    minutes: 6,
    tool: 'wire',
    risk: 1,
    needs: ['power-off'],
    source: 'instrument',
    options: ['one-rail-lacks', 'both-lack', 'stays-dead'],
    reads: 'dead-rail',
    reading: {
      none: 'stays-dead',
      one: { 'one-rail-lacks': always, 'both-lack': rarely },
      both: { 'both-lack': always, 'stays-dead': rarely },
    },
  }),
] as const;
