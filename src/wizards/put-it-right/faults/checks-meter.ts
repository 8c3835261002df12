// With a multimeter. The same meter for both readings of a comparison; an ordinary meter's value is not believed, only
// compared. Ohms only with everything off and unplugged. Its ampere socket never goes across the rails.
import type { CheckRow } from '../../../engine/index.ts';
import { JOINED, LEAKS, LOOP, NO_SIGNAL, PHASE, STANDING_SHORT, UNFED } from './groups.ts';
import { always, never, rarely, rows, sometimes, usually } from './likelihood.ts';

export const METER_CHECKS = [
  // Volts a.c. at the booster's output screws, then rail to rail in the far part.
  // both: about the same at both · screws-only: at the screws, not at the rails · neither: nothing at the screws either ·
  // only-moments: it comes and goes · only-near-joint: rails live up to one joint or turnout, dead beyond.
  {
    id: 'meter-output',
    minutes: 4,
    tool: 'multimeter',
    risk: 0,
    needs: [],
    options: ['both', 'screws-only', 'neither', 'only-moments', 'only-near-joint'],
    otherwise: [always, rarely, rarely, rarely, rarely],
    when: rows(
      [[never, always, rarely, never, rarely], 'feed-missing'],
      [[rarely, usually, never, sometimes, sometimes], 'feed-wire-broken'],
      [[rarely, rarely, sometimes, usually, never], 'wrong-output'],
      [[never, never, always, rarely, never], 'booster-off', 'stop-active'],
      [[rarely, never, rarely, rarely, always], 'turnout-routing', 'dead-joint'],
      [[sometimes, never, usually, rarely, never], 'link-missing', 'link-wrong-socket', 'wrong-supply-kind'],
      [[sometimes, never, usually, sometimes, never], 'link-faulty', 'stage-defect', 'supply-defect'],
      [[rarely, never, usually, sometimes, never], ...STANDING_SHORT, 'wrong-format'],
      [[sometimes, rarely, rarely, usually, rarely], 'socket-damaged'],
      [
        [sometimes, rarely, sometimes, sometimes, rarely],
        ...JOINED,
        'inrush',
        'supply-hiccup',
        'mains-sag',
        'two-sources',
      ],
      [[usually, rarely, rarely, rarely, sometimes], 'loose-joiner'],
    ),
  },

  // Volts d.c. rail to rail in the far part.
  // about-zero: less than about a volt · several-volts: several volts (no signal, or half of the stage dead) · dead: the
  // far part is dead by a.c. as well.
  {
    id: 'meter-direct-volts',
    minutes: 2,
    tool: 'multimeter',
    risk: 0,
    needs: [],
    options: ['about-zero', 'several-volts', 'dead'],
    otherwise: [always, rarely, rarely],
    when: rows(
      [[rarely, usually, usually], ...NO_SIGNAL],
      [[rarely, sometimes, always], 'booster-off', 'wrong-format'],
      [[never, never, always], 'feed-missing', 'stop-active'],
      [[rarely, never, usually], 'feed-wire-broken', 'wrong-output', 'dead-joint', 'turnout-routing'],
      [[sometimes, usually, rarely], 'two-sources'],
      [[sometimes, sometimes, usually], 'stage-defect'],
      [[usually, sometimes, never], 'analogue-mode', 'suppressor'],
      [[rarely, never, usually], 'metal-across', 'crossed-feeder', 'wrong-supply-kind', 'supply-defect'],
      [[sometimes, never, sometimes], 'live-frog', 'moving-contact', ...JOINED, 'leftover-wiring'],
      [[usually, never, sometimes], 'frog-cross-district', 'inrush', 'loop-not-isolated'],
    ),
  },

  // Both parts on, no vehicle near. Join rail B across the gap through a lamp. Volts from rail A to rail A across the gap,
  // then from A to B across it (the diagonal). Compare the two.
  // diagonal-large: same rail near nothing, diagonal about the rail voltage (in phase) · same-rail-large: the same rail clearly
  // more than the diagonal (reversed: floating units show both rail voltages in series there, and one of them on the diagonal) ·
  // both-small: one part has no volts from rail to rail · wanders: neither, or it changes.
  {
    id: 'meter-same-and-diagonal',
    minutes: 4,
    tool: 'multimeter',
    risk: 0,
    needs: ['vehicles-off'],
    options: ['diagonal-large', 'same-rail-large', 'both-small', 'wanders'],
    establishes: { 'diagonal-large': ['parts-agree'] },
    otherwise: [always, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, rarely, rarely], ...PHASE, 'reverse-route'],
      [[usually, sometimes, rarely, rarely], 'loop-no-device', 'loop-not-isolated', 'reverser-grading'],
      [[usually, sometimes, never, rarely], 'loop-too-short'],
      [[sometimes, rarely, never, usually], 'booster-role', 'two-sources'],
      [[sometimes, sometimes, never, usually], 'two-auto-reversers'],
      [[rarely, never, sometimes, usually], ...NO_SIGNAL],
      [[sometimes, never, usually, rarely], ...UNFED, 'stop-active'],
      [[usually, rarely, never, sometimes], 'skew', 'cutout-mismatch'],
      [[sometimes, never, usually, rarely], 'metal-across', 'crossed-feeder', 'wrong-supply-kind', 'supply-defect'],
      [[sometimes, never, usually, rarely], 'live-frog', 'moving-contact', 'stage-defect', 'wrong-format'],
    ),
  },

  // Volts a.c. rail to rail beside the feed of each part, same meter, idle; then with a train standing lit on each.
  // alike: within about half a volt · differ-idle: differ by a volt or more already idle · differ-loaded: alike idle, but
  // one falls with a train · one-zero: one is dead.
  {
    id: 'meter-two-stages',
    minutes: 4,
    tool: 'multimeter',
    risk: 0,
    needs: [],
    options: ['alike', 'differ-idle', 'differ-loaded', 'one-zero'],
    otherwise: [always, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, sometimes, never], 'supplies-swapped', 'unlike-supplies', 'low-setting'],
      [[sometimes, rarely, usually, never], 'supply-limit', 'supply-hiccup', 'overload-district', 'mains-sag'],
      [[usually, rarely, sometimes, never], 'overload-total', 'stage-limit', 'lamps', 'supply-heat'],
      [[rarely, rarely, rarely, always], 'booster-off', 'wrong-output', 'wrong-format', 'feed-missing', 'stop-active'],
      [[sometimes, rarely, rarely, usually], 'link-missing', 'link-wrong-socket', 'link-faulty', 'stage-defect'],
      [[sometimes, rarely, rarely, usually], 'supply-defect', 'wrong-supply-kind', ...STANDING_SHORT],
      [[sometimes, usually, sometimes, never], 'detector-drop'],
      [[usually, sometimes, rarely, never], 'suppressor', 'two-sources'],
      [[usually, rarely, rarely, sometimes], ...JOINED, 'feed-wire-broken'],
    ),
  },

  // One train standing lit at the slow spot. Volts at the unit, at the bus end below the spot, at the rails on both sides
  // of the nearest joiners, same meter: where is most of the drop?
  // none: same everywhere · in-the-bus: between unit and bus end · in-the-rails: along the rails, bit by bit ·
  // at-one-joiner: across one joiner or wire joint · at-the-unit: low already at the unit.
  {
    id: 'meter-along-the-way',
    minutes: 8,
    tool: 'multimeter',
    risk: 0,
    needs: [],
    options: ['none', 'in-the-bus', 'in-the-rails', 'at-one-joiner', 'at-the-unit'],
    otherwise: [always, rarely, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, sometimes, rarely, rarely], 'thin-wire'],
      [[rarely, rarely, always, rarely, rarely], 'few-feeds'],
      [[rarely, rarely, rarely, always, rarely], 'loose-joiner', 'dead-joint'],
      [[rarely, sometimes, never, usually, never], 'feed-wire-broken', 'turnout-routing'],
      [[rarely, rarely, rarely, never, usually], 'supply-limit', 'supply-hiccup', 'low-setting', 'mains-sag'],
      [[sometimes, rarely, rarely, never, usually], 'overload-total', 'overload-district', 'stage-limit', 'lamps'],
      [
        [sometimes, never, never, never, usually],
        'supplies-swapped',
        'unlike-supplies',
        'supply-defect',
        'booster-off',
      ],
      [[usually, rarely, rarely, sometimes, never], 'detector-drop', 'dirty'],
      [[sometimes, rarely, rarely, rarely, usually], ...NO_SIGNAL, 'stage-defect', 'wrong-supply-kind', 'stop-active'],
    ),
  },

  // Volts at the supply's own plug or terminals, unloaded, then while the trouble happens (mains parts stay shut).
  // steady: as on its label, hardly lower loaded · collapses: falls far down or pulses under load · wrong-or-none: unloaded
  // far from what the unit asks for, a.c. instead of d.c., minus where plus belongs, or nothing · two-differ: each steady,
  // but the two supplies differ.
  {
    id: 'meter-supply',
    minutes: 4,
    tool: 'multimeter',
    risk: 0,
    needs: [],
    options: ['steady', 'collapses', 'wrong-or-none', 'two-differ'],
    otherwise: [always, rarely, rarely, rarely],
    when: rows(
      [[rarely, usually, rarely, rarely], 'supply-limit', 'mains-sag', 'supply-heat'],
      [[rarely, always, rarely, rarely], 'supply-hiccup'],
      [[rarely, rarely, rarely, always], 'supplies-swapped', 'unlike-supplies'],
      [[rarely, rarely, always, sometimes], 'wrong-supply-kind'],
      [[rarely, usually, usually, rarely], 'supply-defect'],
      [[sometimes, rarely, usually, rarely], 'booster-off'],
      [[usually, sometimes, rarely, rarely], 'overload-total', 'lamps', 'inrush', 'binding-locomotive', 'two-sources'],
      [[usually, sometimes, rarely, rarely], ...STANDING_SHORT, 'stage-defect'],
    ),
  },

  // Amperes d.c. in the supply's d.c. lead: idle with nothing on the track, and while running.
  // well-below: far below the limits of unit and supply · near-limit: running, it comes near one of them · high-idle: high
  // with nothing on the track · one-hungry: one locomotive alone draws twice what a sister does · leaps: it leaps up for a
  // moment when the trouble comes.
  {
    id: 'meter-supply-current',
    minutes: 8,
    tool: 'multimeter',
    risk: 1,
    needs: ['power-off'],
    options: ['well-below', 'near-limit', 'high-idle', 'one-hungry', 'leaps'],
    otherwise: [always, rarely, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, rarely, rarely, rarely], 'overload-total', 'overload-district', 'stage-limit', 'lamps'],
      [[rarely, always, rarely, rarely, rarely], 'supply-limit'],
      [[rarely, usually, rarely, rarely, sometimes], 'supply-hiccup', 'stage-heat', 'supply-heat'],
      [[rarely, sometimes, never, usually, rarely], 'binding-locomotive'],
      [[rarely, rarely, always, never, rarely], ...LEAKS],
      [[sometimes, rarely, usually, never, rarely], 'suppressor', 'two-sources', 'crossed-feeder'],
      [[rarely, rarely, usually, never, sometimes], 'metal-across'],
      [[rarely, rarely, sometimes, never, usually], 'moving-contact', 'live-frog'],
      [[sometimes, rarely, rarely, rarely, usually], ...PHASE, 'wheelset-short', 'wheelset-at-turnouts', 'inrush'],
      [
        [sometimes, rarely, rarely, never, usually],
        ...LOOP,
        'wheel-bridges-frog',
        'metal-bodies',
        'frog-cross-district',
      ],
      [[sometimes, sometimes, rarely, rarely, sometimes], 'supplies-swapped', 'unlike-supplies', 'stage-order'],
      [[sometimes, rarely, sometimes, never, sometimes], ...JOINED, 'hidden-common', 'skew', 'leftover-wiring'],
    ),
  },

  // Ohms rail to rail in the part with the trouble: everything off, its track plug out, every vehicle off. Touch the leads
  // first and subtract.
  // short: below about 10 ohms · some-ohms: 10 to some hundred ohms, steady · high: thousands, rising, or open ·
  // with-one-setting: short only with one setting of a turnout.
  {
    id: 'meter-ohms-between-rails',
    minutes: 5,
    tool: 'multimeter',
    risk: 0,
    needs: ['power-off', 'all-unplugged', 'vehicles-off'],
    options: ['short', 'some-ohms', 'high', 'with-one-setting'],
    otherwise: [rarely, rarely, always, never],
    when: rows(
      [[always, rarely, rarely, never], 'metal-across', 'crossed-feeder'],
      [[sometimes, rarely, sometimes, usually], 'moving-contact'],
      [[sometimes, never, sometimes, usually], 'live-frog'],
      [[rarely, always, rarely, never], ...LEAKS],
      [[rarely, sometimes, usually, never], 'two-sources', 'leftover-wiring', 'lamps', 'shared-wire', 'detector-false'],
      [[sometimes, rarely, usually, rarely], 'loop-not-isolated', 'reverse-route', 'loop-no-device'],
      [[rarely, rarely, usually, sometimes], 'frog-cross-district'],
    ),
  },

  // Ohms from the same rail to the same rail across the boundary: all feeders and detectors of one part unplugged, every
  // vehicle off, turnouts thrown both ways; first rail A, then rail B.
  // open-on-both: no beep, above 100 000 ohms · one-through: one rail reads through, below a few ohms · both-through ·
  // some-ohms: tens or hundreds of ohms.
  {
    id: 'meter-across-the-gap',
    minutes: 8,
    tool: 'multimeter',
    risk: 0,
    needs: ['power-off', 'all-unplugged', 'vehicles-off'],
    options: ['open-on-both', 'one-through', 'both-through', 'some-ohms'],
    otherwise: [always, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, rarely, rarely], 'one-rail'],
      [[rarely, usually, usually, rarely], 'forgotten-path', 'gap-closed'],
      [[usually, rarely, sometimes, rarely], 'old-feeder-left'],
      [[rarely, sometimes, rarely, always], 'shared-wire'],
      [[sometimes, usually, rarely, rarely], 'frog-cross-district'],
      [[sometimes, usually, sometimes, rarely], 'loop-not-isolated', 'program-bridge'],
      [[sometimes, sometimes, sometimes, sometimes], 'leftover-wiring'],
      [[usually, rarely, rarely, sometimes], 'detector-false', 'two-sources'],
    ),
  },
] as const satisfies readonly CheckRow[];
