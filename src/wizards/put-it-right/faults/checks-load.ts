// Load, shorts and the track itself: lift, halve, throw, clip.
import type { CheckRow } from '../../../engine/index.ts';
import { JOINED, LEAKS, LOAD, LOOP, NO_SIGNAL, PHASE, PROTECTION, STANDING_SHORT, UNFED, WHEELS } from './groups.ts';
import { always, never, rarely, rows, sometimes, usually } from './likelihood.ts';

export const LOAD_CHECKS = [
  // Just before it cuts out: does anything get slower or dimmer first?
  // dims-first: slower or dimmer, then off (or only slower) · snaps-off: full speed, then off at once · neither: it does
  // not go off.
  {
    id: 'dim-or-snap',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['dims-first', 'snaps-off', 'neither'],
    otherwise: [rarely, rarely, always],
    when: rows(
      [[rarely, always, rarely], ...PHASE, ...STANDING_SHORT, ...WHEELS, ...LOOP, 'program-bridge'],
      [
        [rarely, usually, sometimes],
        ...JOINED,
        'leftover-wiring',
        'frog-cross-district',
        'hidden-common',
        'one-rail',
        'two-sources',
      ],
      [[usually, usually, rarely], 'overload-total', 'stage-limit', 'overload-district', 'lamps', 'binding-locomotive'],
      [[usually, sometimes, rarely], 'supply-limit', 'supply-hiccup', 'supply-heat', 'sagging-accessories'],
      [[usually, sometimes, rarely], 'mains-sag', 'supply-defect'],
      [[rarely, usually, sometimes], 'inrush', 'stage-order', 'stage-heat'],
      [[rarely, usually, usually], 'stage-defect', 'wrong-supply-kind'],
      [[sometimes, sometimes, sometimes], 'supplies-swapped', 'unlike-supplies'],
      [[usually, rarely, sometimes], 'thin-wire', 'few-feeds', 'loose-joiner', 'low-setting', 'dirty'],
      [[rarely, sometimes, usually], 'cutout-mismatch', 'skew', 'booster-role', 'into-control-bus'],
      [[rarely, sometimes, usually], ...UNFED, 'stop-active'],
    ),
  },

  // Lift half of the trains off and run; then the other half; then one alone.
  // cured: well with fewer trains, whichever they are · one-alone-does-it: a single train, alone, brings it · lit-coaches:
  // well as soon as the lit coaches are off · no-change: just the same.
  {
    id: 'halve-the-trains',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['cured', 'one-alone-does-it', 'lit-coaches', 'no-change'],
    otherwise: [rarely, rarely, never, always],
    when: rows(
      [[always, rarely, sometimes, rarely], ...LOAD, 'supply-hiccup'],
      [[rarely, rarely, always, rarely], 'lamps'],
      [[rarely, always, rarely, rarely], 'binding-locomotive', 'wheelset-short', 'address', 'analogue-mode', 'pickup'],
      [[rarely, usually, rarely, sometimes], 'wheelset-at-turnouts', 'wheel-bridges-frog'],
      [[sometimes, sometimes, sometimes, rarely], 'metal-bodies', 'loop-too-short', 'still-straddling'],
      [[usually, rarely, rarely, rarely], 'inrush', 'stage-heat', 'supply-heat', 'mains-sag', 'stage-order'],
      [[sometimes, rarely, rarely, usually], 'thin-wire', 'few-feeds', 'supplies-swapped', 'unlike-supplies'],
      [[sometimes, rarely, rarely, usually], 'sagging-accessories', 'loose-joiner', 'supply-defect', ...PROTECTION],
    ),
  },

  // Move some trains from this part to the other part and run the same number.
  // cured: well now · moves-along: now the other part (or everything) shows it · no-change.
  {
    id: 'move-trains-over',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['cured', 'moves-along', 'no-change'],
    otherwise: [rarely, rarely, always],
    when: rows(
      [[always, rarely, rarely], 'overload-district'],
      [[rarely, usually, sometimes], 'overload-total', 'stage-limit', 'lamps'],
      // Each unit has a supply of its own, and only one of them is too small.
      [[usually, sometimes, rarely], 'supply-limit', 'supply-hiccup'],
      // A bad mains lead can sit behind one supply or behind both.
      [[sometimes, sometimes, sometimes], 'stage-heat', 'supply-heat', 'inrush', 'mains-sag'],
      [[rarely, always, rarely], 'binding-locomotive', 'wheelset-short', 'address', 'pickup'],
      [[sometimes, rarely, usually], 'thin-wire', 'few-feeds', 'loose-joiner'],
    ),
  },

  // Lift all vehicles off, switch on; then put them back one by one.
  // still-there: the trouble is there with an empty track · one-brings-it-back: always with the same vehicle or pair ·
  // all-well: put back one by one, everything stays well · returns-with-many: it returns once many are back.
  {
    id: 'lift-all-vehicles',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['still-there', 'one-brings-it-back', 'all-well', 'returns-with-many'],
    otherwise: [rarely, rarely, usually, rarely],
    when: rows(
      [[always, never, rarely, never], ...STANDING_SHORT, 'wrong-supply-kind', 'wrong-format', 'stage-defect'],
      [[usually, never, sometimes, never], 'moving-contact', 'live-frog', 'leftover-wiring', 'two-sources', ...LEAKS],
      [[usually, rarely, sometimes, never], ...JOINED, ...UNFED, 'supply-defect', 'stop-active'],
      [[rarely, always, rarely, never], 'wheelset-short', 'binding-locomotive', 'address', 'analogue-mode'],
      [[rarely, usually, sometimes, rarely], 'wheelset-at-turnouts', 'wheel-bridges-frog', 'metal-bodies', 'pickup'],
      [[rarely, rarely, always, sometimes], 'inrush'],
      [[rarely, rarely, rarely, always], ...LOAD],
      [[rarely, rarely, sometimes, usually], 'supply-hiccup', 'stage-heat', 'supply-heat', 'mains-sag'],
    ),
  },

  // Throw every turnout both ways, one after the other (by hand if need be).
  // no-change · trouble-clears: the short is gone with one setting · part-comes-alive: a dead stretch is live with one
  // setting.
  {
    id: 'throw-turnouts',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['no-change', 'trouble-clears', 'part-comes-alive'],
    otherwise: [always, rarely, rarely],
    when: rows(
      [[rarely, rarely, always], 'turnout-routing'],
      [[sometimes, always, rarely], 'live-frog', 'moving-contact'],
      [[sometimes, usually, rarely], 'frog-cross-district'],
      [[usually, sometimes, rarely], 'reverse-route', 'wheel-bridges-frog', 'loop-not-isolated'],
      [[usually, rarely, sometimes], 'feed-missing'],
      [[usually, sometimes, rarely], 'accessory-wiring'],
    ),
  },

  // Power off, unclip the feeder that was added last (then half of all, and half again), power on.
  // no-change · one-feeder: the trouble goes with one certain pair of wires.
  {
    id: 'unclip-feeders',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off', 'vehicles-off'],
    options: ['no-change', 'one-feeder'],
    otherwise: [always, rarely],
    when: rows(
      [[rarely, always], 'crossed-feeder'],
      [[sometimes, usually], 'live-frog', 'old-feeder-left', 'two-sources'],
      [[usually, sometimes], 'metal-across', 'suppressor', 'leftover-wiring', ...LEAKS, 'forgotten-path'],
    ),
  },

  // Power off: put a lamp (24 V, 3 to 5 W, gets hot) in series with one wire of the part's feed; vehicles off, power on.
  // dark · faint: a faint glow · bright: bright, as if directly on the supply.
  {
    id: 'lamp-in-series',
    minutes: 5,
    tool: 'lamps',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    options: ['dark', 'faint', 'bright'],
    otherwise: [always, rarely, never],
    when: rows(
      [[rarely, rarely, always], 'metal-across', 'crossed-feeder'],
      [[sometimes, rarely, usually], 'live-frog', 'moving-contact', ...JOINED, 'two-sources'],
      [[usually, rarely, sometimes], 'loop-not-isolated', 'leftover-wiring', 'frog-cross-district'],
      [[rarely, usually, sometimes], 'leak'],
      [[sometimes, usually, rarely], 'wet-ballast'],
      [[sometimes, usually, rarely], 'suppressor'],
      [[usually, sometimes, rarely], 'detector-false', 'sagging-accessories', 'shared-wire'],
    ),
  },

  // Clean 30 cm of both rails and the wheels of one locomotive, power off until all is dry; try there.
  // better · no-change.
  {
    id: 'clean-a-stretch',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['better', 'no-change'],
    otherwise: [rarely, always],
    when: rows([[always, rarely], 'dirty'], [[sometimes, usually], 'pickup', 'loose-joiner', 'long-dead-gap']),
  },

  // A lit vehicle stands beyond the suspect joint: press the rails and the joiners there with a wooden stick.
  // no-change · flickers: the light flickers, comes or gets brighter.
  {
    id: 'press-the-joiners',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['no-change', 'flickers'],
    otherwise: [always, rarely],
    when: rows(
      [[sometimes, usually], 'loose-joiner', 'dead-joint'],
      [[usually, sometimes], 'feed-wire-broken', 'joint-step', 'gap-closed', 'few-feeds', 'turnout-routing'],
    ),
  },

  // Clip a wire over the suspect joint on one rail, then over the other rail's (same part, not across the gap between parts).
  // no-change · alive-or-better: the stretch beyond comes alive or runs well.
  {
    id: 'bridge-the-joiner',
    minutes: 5,
    tool: 'wire',
    risk: 1,
    needs: ['power-off'],
    options: ['no-change', 'alive-or-better'],
    otherwise: [always, rarely],
    when: rows(
      [[rarely, always], 'dead-joint', 'loose-joiner'],
      [[usually, sometimes], 'few-feeds', 'turnout-routing', 'feed-wire-broken'],
    ),
  },

  // Power off: clip a wire from a rail of this part that is known to be live to the dead rail on the same side; first one
  // rail, then the other. Power on, look at the lit vehicle.
  // one-rail-lacks: alive with one of the two · both-lack: only with both · stays-dead · was-alive: it was never dead.
  {
    id: 'clip-power-to-rails',
    minutes: 6,
    tool: 'wire',
    risk: 1,
    needs: ['power-off'],
    options: ['one-rail-lacks', 'both-lack', 'stays-dead', 'was-alive'],
    otherwise: [rarely, rarely, rarely, always],
    when: rows(
      [[rarely, always, rarely, never], 'feed-missing', 'wrong-output'],
      [[usually, sometimes, rarely, rarely], 'feed-wire-broken'],
      [[always, rarely, rarely, rarely], 'dead-joint'],
      [[usually, rarely, rarely, sometimes], 'turnout-routing'],
      [[rarely, rarely, always, never], 'booster-off', 'stop-active'],
      // A unit that holds its level without a signal keeps the rails alive.
      [[rarely, rarely, usually, sometimes], ...NO_SIGNAL, 'stage-defect', 'supply-defect', 'wrong-supply-kind'],
      [[rarely, never, usually, rarely], 'metal-across', 'crossed-feeder', 'wrong-format'],
    ),
  },

  // Power off: clip a pair of thick wires from the feed at the unit straight to the rails at the slow spot, same rails.
  // better · no-change.
  {
    id: 'clip-thick-pair',
    minutes: 5,
    tool: 'wire',
    risk: 1,
    needs: ['power-off'],
    options: ['better', 'no-change'],
    otherwise: [rarely, always],
    when: rows(
      [[always, rarely], 'thin-wire', 'few-feeds', 'loose-joiner', 'dead-joint'],
      [[usually, sometimes], 'feed-wire-broken', 'feed-missing', 'turnout-routing'],
      [[sometimes, usually], 'long-bus', 'dirty', 'detector-drop'],
    ),
  },

  // Power off: clip the thick pair alongside the bus only, from the unit to the bus end under the slow spot, not to rails.
  // better · no-change.
  {
    id: 'clip-along-the-bus',
    minutes: 6,
    tool: 'wire',
    risk: 1,
    needs: ['power-off'],
    options: ['better', 'no-change'],
    otherwise: [rarely, always],
    when: rows([[always, rarely], 'thin-wire'], [[sometimes, usually], 'few-feeds', 'long-bus', 'feed-wire-broken']),
  },

  // Same locomotive, same speed step, lights on: time one metre in the old part, beside the feed of the far part, and far
  // from that feed.
  // alike · slower-in-whole-part: also beside its feed · slower-with-distance · slower-at-one-stretch: beyond one joint ·
  // slower-everywhere: in both parts, with others running or on gradients.
  {
    id: 'time-a-metre',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['alike', 'slower-in-whole-part', 'slower-with-distance', 'slower-at-one-stretch', 'slower-everywhere'],
    otherwise: [always, rarely, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, rarely, never, rarely], 'low-setting'],
      [[sometimes, usually, rarely, never, rarely], 'supplies-swapped', 'unlike-supplies'],
      [[rarely, rarely, always, rarely, rarely], 'thin-wire', 'few-feeds'],
      [[rarely, rarely, sometimes, always, rarely], 'loose-joiner'],
      [[rarely, rarely, rarely, usually, rarely], 'dead-joint'],
      // Of the diode kind it takes its volts from all that lies behind it.
      [[sometimes, usually, rarely, sometimes, rarely], 'detector-drop'],
      [[sometimes, rarely, sometimes, sometimes, sometimes], 'dirty', 'pickup'],
      [[rarely, sometimes, rarely, never, usually], 'supply-limit', 'overload-total', 'stage-limit', 'lamps'],
      [[sometimes, usually, rarely, never, rarely], 'overload-district'],
      [[rarely, rarely, rarely, sometimes, usually], 'binding-locomotive', 'mains-sag'],
      [[sometimes, rarely, sometimes, never, rarely], 'long-bus', 'suppressor'],
    ),
  },

  // Power off: paint nail varnish on the two rails where they come closest at the frog, let it dry, try again.
  // cured · no-change · not-at-a-turnout: the trouble is not at a turnout.
  {
    id: 'varnish-the-frog',
    minutes: 10,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['cured', 'no-change', 'not-at-a-turnout'],
    otherwise: [never, sometimes, always],
    when: rows(
      [[always, rarely, never], 'wheel-bridges-frog'],
      [[usually, sometimes, rarely], 'wheelset-at-turnouts'],
      [[rarely, always, sometimes], 'live-frog', 'frog-cross-district', 'moving-contact'],
      [[rarely, usually, usually], 'turnout-routing', 'metal-bodies', 'wheelset-short'],
    ),
  },

  // Uncouple the train: run or push its vehicles over the place one by one.
  // was-alone: a single vehicle brings it anyway · well-apart: apart they all pass · no-change: apart it is the same.
  {
    id: 'uncouple',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['was-alone', 'well-apart', 'no-change'],
    otherwise: [usually, rarely, usually],
    when: rows(
      [[rarely, always, rarely], 'metal-bodies'],
      [[rarely, usually, rarely], 'loop-too-short', 'still-straddling'],
      [[sometimes, sometimes, sometimes], 'no-reference', 'lamps'],
      [[always, rarely, sometimes], 'wheelset-short', 'wheelset-at-turnouts', 'stored-energy'],
    ),
  },

  // Look at the back of the wheels: turn the suspect vehicle round on the track, and let another of the same kind run there.
  // not-the-vehicle: every one does it · this-one-both-ways: only this one, either way round · this-one-one-way: only
  // this one, and it changes when turned round.
  {
    id: 'turn-the-vehicle',
    minutes: 4,
    tool: 'second-locomotive',
    risk: 0,
    needs: [],
    options: ['not-the-vehicle', 'this-one-both-ways', 'this-one-one-way'],
    otherwise: [always, rarely, rarely],
    when: rows(
      [[rarely, usually, sometimes], 'wheelset-short', 'wheelset-at-turnouts'],
      [[rarely, always, rarely], 'binding-locomotive', 'address', 'analogue-mode'],
      [[rarely, sometimes, usually], 'pickup'],
      [[sometimes, sometimes, sometimes], 'metal-bodies', 'long-dead-gap', 'no-reference'],
      [[sometimes, usually, rarely], 'stored-energy', 'dirty', 'joint-step'],
      // Every vehicle with wheels of that kind does it.
      [[usually, sometimes, rarely], 'wheel-bridges-frog'],
    ),
  },
] as const satisfies readonly CheckRow[];
