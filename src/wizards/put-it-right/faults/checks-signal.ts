// Is there power in the far part, and do commands arrive with it? "Far part" is the part with the trouble.
import type { CheckRow } from '../../../engine/index.ts';
import { ACCESSORY, DROP, JOINED, LEAKS, LOAD, NO_SIGNAL, PHASE, STANDING_SHORT, STEP, UNFED } from './groups.ts';
import { always, never, rarely, rows, sometimes, usually } from './likelihood.ts';

export const SIGNAL_CHECKS = [
  // Put one locomotive with lights wholly into the far part, every wheel beyond the gap, all units on, a hand ready to lift
  // it off (it may take off by itself): what does it do?
  // dark: no light · lit-but-deaf: light, but it does not obey · takes-off: it runs off by itself at full speed ·
  // runs-poorly: it obeys, but slow, dim, stuttering or erratic · runs-well.
  {
    id: 'vehicle-in-far-part',
    minutes: 3,
    tool: 'eyes',
    risk: 1,
    needs: [],
    options: ['dark', 'lit-but-deaf', 'takes-off', 'runs-poorly', 'runs-well'],
    otherwise: [rarely, never, never, rarely, always],
    when: rows(
      [[always, never, never, never, never], 'feed-missing', 'booster-off'],
      [[always, never, never, rarely, never], 'feed-wire-broken'],
      [[usually, sometimes, never, sometimes, never], 'wrong-output'],
      [[usually, sometimes, never, rarely, rarely], 'stop-active'],
      [[usually, never, never, rarely, sometimes], 'turnout-routing', 'dead-joint'],
      [[usually, usually, sometimes, never, never], ...NO_SIGNAL],
      [[usually, sometimes, rarely, rarely, rarely], 'link-faulty'],
      [[rarely, usually, rarely, usually, rarely], 'suppressor'],
      [[never, sometimes, rarely, sometimes, usually], 'long-bus'],
      [[sometimes, usually, sometimes, sometimes, rarely], 'two-sources'],
      [[never, always, rarely, rarely, rarely], 'booster-role'],
      [[usually, sometimes, never, never, rarely], 'wrong-format'],
      [[rarely, rarely, never, rarely, usually], ...JOINED, 'one-rail', 'frog-cross-district', 'leftover-wiring'],
      [[never, always, rarely, rarely, never], 'address'],
      [[never, rarely, always, never, rarely], 'analogue-mode'],
      [[rarely, rarely, never, usually, sometimes], 'dirty', 'pickup', 'loose-joiner'],
      [[never, rarely, never, usually, sometimes], ...DROP, 'low-setting', 'binding-locomotive'],
      [[never, never, never, sometimes, usually], 'supplies-swapped', 'unlike-supplies', 'detector-drop'],
      [[usually, never, never, rarely, sometimes], 'metal-across', 'crossed-feeder', 'moving-contact', 'live-frog'],
      [[usually, never, never, rarely, rarely], 'supply-defect', 'wrong-supply-kind'],
      [[usually, sometimes, rarely, sometimes, rarely], 'stage-defect'],
      [[sometimes, rarely, never, usually, sometimes], 'socket-damaged'],
      [[sometimes, never, never, rarely, usually], 'inrush', 'supply-hiccup'],
    ),
  },

  // Put the same locomotive into the old part: does it obey there?
  // obeys · does-not: it does not obey there either · poorly: it stutters, stalls or labours there too.
  {
    id: 'same-locomotive-in-old-part',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['obeys', 'does-not', 'poorly'],
    otherwise: [always, rarely, rarely],
    when: rows(
      [[never, always, rarely], 'address', 'stop-active'],
      [[usually, sometimes, rarely], 'analogue-mode'],
      [[rarely, rarely, always], 'binding-locomotive', 'pickup'],
      [[sometimes, rarely, usually], 'dirty'],
      [[sometimes, sometimes, rarely], 'two-sources', 'wrong-format', 'program-bridge', 'wheelset-short'],
      [[usually, rarely, sometimes], 'joint-step', 'few-feeds', 'mains-sag', 'overload-total', 'supply-limit'],
    ),
  },

  // Look at the control cable between command station and booster, both ends.
  // right-and-firm · missing-or-loose · wrong-socket: one end sits in a socket that is labelled for something else ·
  // looks-damaged: crushed, bent pins, home-made.
  {
    id: 'look-at-control-cable',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['right-and-firm', 'missing-or-loose', 'wrong-socket', 'looks-damaged'],
    otherwise: [always, rarely, rarely, rarely],
    when: rows(
      [[never, always, rarely, never], 'link-missing'],
      [[sometimes, rarely, always, never], 'link-wrong-socket'],
      [[usually, rarely, rarely, sometimes], 'link-faulty'],
      [[usually, never, rarely, sometimes], 'link-inverted'],
      [[usually, never, sometimes, never], 'stage-order', 'booster-role'],
    ),
  },

  // Everything off, vehicles off the far part, pull the control cable at the booster, switch on, look at the booster and
  // at the rails (a lit coach, no locomotive). What has changed?
  // nothing-changes: just as before · goes-dead: the far part is off or its lamp says "no signal" · fault-clears: a fault
  // or short it reported before is gone.
  {
    id: 'pull-control-cable',
    minutes: 4,
    tool: 'eyes',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    options: ['nothing-changes', 'goes-dead', 'fault-clears'],
    otherwise: [sometimes, usually, never],
    when: rows(
      [[always, rarely, never], ...NO_SIGNAL],
      // The rails stay dead, but a unit that is on may now say "no signal".
      [[sometimes, usually, never], 'feed-missing', 'feed-wire-broken', 'wrong-output'],
      [[always, rarely, never], 'booster-off'],
      // The other unit keeps the part alive; reversed as well, the short between the two is gone.
      [[usually, never, sometimes], ...JOINED, 'leftover-wiring'],
      [[sometimes, usually, sometimes], 'frog-cross-district', 'inrush', 'loop-not-isolated'],
      [[usually, sometimes, rarely], 'two-sources', 'booster-role', 'supply-defect', 'wrong-supply-kind'],
      [[usually, sometimes, never], 'already-fed', 'stop-active'],
      [[sometimes, rarely, usually], ...STANDING_SHORT],
      // A broken output stage shows itself as soon as the signal makes it switch.
      [[usually, rarely, usually], 'stage-defect'],
      [[rarely, rarely, always], 'wrong-format'],
    ),
  },

  // Look at the piece where the wires reach the rails, below too, and at the plug: anything between the two wires?
  // plain: only wires · capacitor-or-choke: a small component, a thick piece or an unknown box.
  {
    id: 'look-at-feed-piece',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['plain', 'capacitor-or-choke'],
    otherwise: [always, rarely],
    when: rows([[rarely, always], 'suppressor'], [[usually, sometimes], 'leftover-wiring', 'long-bus']),
  },

  // Has the second unit a throttle of its own, or keys? Try whether the locomotive in the far part obeys that one.
  // drives-there: yes · does-not · has-none.
  {
    id: 'own-throttle',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['drives-there', 'does-not', 'has-none'],
    otherwise: [never, rarely, always],
    when: rows([[always, rarely, never], 'booster-role'], [[usually, sometimes, sometimes], 'two-sources']),
  },

  // Follow every wire that ends at the rails, also old ones under the board.
  // only-ours: each comes from the one unit of its part · old-wiring: old block switches, old wires or an unplugged old
  // transformer still hang on · second-unit: another live unit or throttle is also connected there · to-other-part: a
  // feeder comes from the unit of the other part.
  {
    id: 'follow-every-wire',
    minutes: 8,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['only-ours', 'old-wiring', 'second-unit', 'to-other-part'],
    otherwise: [always, rarely, never, rarely],
    when: rows(
      [[rarely, always, rarely, rarely], 'leftover-wiring'],
      [[rarely, rarely, always, rarely], 'two-sources'],
      [[rarely, rarely, never, always], 'old-feeder-left'],
      [[usually, rarely, never, sometimes], 'forgotten-path', 'frog-cross-district', 'shared-wire', 'detector-false'],
      [[usually, rarely, rarely, sometimes], 'crossed-feeder', 'feed-missing'],
    ),
  },

  // Look under the far part: a pair of wires from the booster's track output to these rails?
  // both-firm: two wires, both firm · none-or-unplugged: none, or a plug is out · one-loose: one wire is off, broken or a
  // screw is loose · other-socket: they come from the programming or the control socket.
  {
    id: 'look-at-feed-wires',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['both-firm', 'none-or-unplugged', 'one-loose', 'other-socket'],
    otherwise: [always, rarely, rarely, never],
    when: rows(
      [[rarely, always, rarely, rarely], 'feed-missing'],
      [[sometimes, rarely, usually, never], 'feed-wire-broken'],
      [[rarely, never, never, always], 'wrong-output'],
      [[usually, rarely, sometimes, never], 'socket-damaged'],
    ),
  },

  // Put a second, longer locomotive (or one with many wheels that pick up) slowly across the gap.
  // crosses: it runs through without a stop or a jerk · stops-too: it stops or jerks just the same · trips: something
  // shuts down.
  {
    id: 'longer-locomotive',
    minutes: 3,
    tool: 'second-locomotive',
    risk: 0,
    needs: [],
    options: ['crosses', 'stops-too', 'trips'],
    otherwise: [usually, sometimes, rarely],
    when: rows(
      [[always, rarely, never], 'long-dead-gap', 'pickup', 'address', 'wheelset-short', 'analogue-mode'],
      [[usually, sometimes, never], 'joint-step', 'dirty', 'no-reference', 'metal-bodies', 'binding-locomotive'],
      [[never, always, rarely], ...UNFED, 'stop-active'],
      // It crosses the gap, and stops beyond it.
      [[usually, usually, never], 'dead-joint', 'turnout-routing'],
      [[rarely, always, rarely], ...NO_SIGNAL, 'suppressor'],
      [[rarely, usually, sometimes], 'booster-off', 'booster-role', 'two-sources'],
      [[never, rarely, always], ...PHASE],
      [[sometimes, sometimes, sometimes], ...STEP, 'cutout-mismatch', 'skew', 'hidden-common'],
      [[rarely, rarely, usually], 'reverse-route', 'loop-not-isolated', 'loop-no-device', 'reverser-grading'],
      [[sometimes, rarely, usually], 'two-auto-reversers', 'loop-too-short', 'frog-cross-district', 'program-bridge'],
      [[usually, rarely, sometimes], 'wheelset-at-turnouts', 'wheel-bridges-frog', 'inrush'],
      [[sometimes, usually, never], ...DROP],
      [[always, rarely, never], ...ACCESSORY, ...LEAKS],
      [[usually, rarely, sometimes], ...LOAD],
      [[sometimes, sometimes, sometimes], ...STANDING_SHORT],
    ),
  },
] as const satisfies readonly CheckRow[];
