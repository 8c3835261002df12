// What the units and their supplies show: lamps, displays, labels, plugs, and what exchanging them does.
import type { CheckRow } from '../../../engine/index.ts';
import { JOINED, LEAKS, LOAD, LOOP, NO_SIGNAL, PHASE, STANDING_SHORT, STEP, WHEELS } from './groups.ts';
import { always, never, rarely, rows, sometimes, usually } from './likelihood.ts';

export const UNIT_CHECKS = [
  // Look at the unit that feeds the part with the trouble, at the moment of the trouble: what does its lamp show?
  // no-lamp: dark · ready: as always · fault: shows a fault or a short, steady or with pauses of seconds · no-signal: it
  // says that no signal arrives · goes-out-and-on: the lamp itself goes out and comes on again, as at switching on.
  {
    id: 'booster-lamp',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['no-lamp', 'ready', 'fault', 'no-signal', 'goes-out-and-on'],
    otherwise: [never, always, rarely, never, rarely],
    when: rows(
      [[usually, rarely, sometimes, rarely, never], 'booster-off'],
      [[rarely, sometimes, rarely, usually, never], ...NO_SIGNAL],
      [[never, usually, rarely, sometimes, never], 'stop-active'],
      [[rarely, sometimes, always, never, rarely], ...PHASE],
      [[rarely, sometimes, always, never, rarely], ...LOOP, ...STANDING_SHORT, 'program-bridge'],
      [[rarely, sometimes, usually, never, rarely], ...WHEELS, 'frog-cross-district'],
      [[rarely, usually, sometimes, never, rarely], ...STEP, 'hidden-common', 'cutout-mismatch', 'skew'],
      [[never, always, rarely, never, rarely], 'low-setting'],
      [[rarely, sometimes, usually, rarely, rarely], ...JOINED, 'one-rail', 'two-sources'],
      [[rarely, sometimes, usually, never, sometimes], ...LOAD, 'inrush', 'binding-locomotive'],
      [[rarely, sometimes, rarely, never, usually], 'supply-limit'],
      [[rarely, rarely, rarely, never, always], 'supply-hiccup'],
      [[sometimes, rarely, rarely, never, usually], 'mains-sag', 'supply-heat'],
      [[usually, rarely, rarely, never, sometimes], 'supply-defect'],
      [[rarely, rarely, usually, never, sometimes], 'stage-heat'],
      [[usually, rarely, sometimes, never, sometimes], 'wrong-supply-kind'],
      [[rarely, rarely, always, rarely, never], 'wrong-format'],
      [[sometimes, sometimes, usually, rarely, rarely], 'stage-defect'],
      [[rarely, sometimes, sometimes, usually, rarely], 'stage-order'],
      [[never, usually, usually, rarely, rarely], 'booster-role'],
      [[never, usually, sometimes, rarely, rarely], 'leftover-wiring', 'suppressor', 'breaker-setting'],
      [[sometimes, sometimes, rarely, sometimes, sometimes], 'socket-damaged'],
      [[never, sometimes, sometimes, sometimes, sometimes], 'into-control-bus'],
    ),
  },

  // What does the command station show, or its handset?
  // normal · stop-or-programming: stop is pressed, or it is in programming, or that booster is switched off there ·
  // short: it reports a short or an overload · dark-or-restarting: nothing on it, or it starts anew.
  {
    id: 'command-display',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['normal', 'stop-or-programming', 'short', 'dark-or-restarting'],
    otherwise: [always, rarely, rarely, never],
    when: rows(
      [[rarely, always, rarely, rarely], 'stop-active'],
      [[usually, sometimes, rarely, never], 'wrong-output'],
      [[usually, rarely, sometimes, rarely], 'booster-off', ...STEP, 'hidden-common', 'cutout-mismatch', 'skew'],
      [[sometimes, rarely, usually, rarely], ...PHASE, ...LOOP, ...STANDING_SHORT, ...WHEELS, ...JOINED],
      [[sometimes, rarely, usually, sometimes], ...LOAD, 'inrush', 'binding-locomotive', 'two-sources'],
      [[sometimes, rarely, sometimes, usually], 'supply-limit', 'supply-hiccup', 'supply-heat'],
      [[rarely, never, rarely, usually], 'mains-sag', 'supply-defect', 'wrong-supply-kind'],
      [[rarely, rarely, always, sometimes], 'stage-order'],
      [[sometimes, rarely, usually, rarely], 'stage-heat', 'stage-defect', 'wrong-format', 'one-rail'],
      [[sometimes, rarely, usually, rarely], 'frog-cross-district', 'program-bridge', 'leftover-wiring'],
      [[sometimes, rarely, rarely, usually], 'into-control-bus'],
    ),
  },

  // Has the supply a lamp of its own? Watch it at the moment of the trouble.
  // steady: always on · pulses-or-goes-out: it goes out or blinks just then · dark: it never shines.
  {
    id: 'supply-lamp',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['steady', 'pulses-or-goes-out', 'dark'],
    otherwise: [always, rarely, never],
    when: rows(
      [[sometimes, never, usually], 'booster-off'],
      [[usually, sometimes, never], 'overload-total', 'supply-limit', 'lamps', 'inrush', 'binding-locomotive'],
      [[rarely, always, rarely], 'supply-hiccup'],
      [[rarely, usually, rarely], 'mains-sag', 'supply-heat'],
      [[sometimes, usually, sometimes], 'supply-defect'],
      [[sometimes, sometimes, rarely], 'wrong-supply-kind'],
      [[usually, sometimes, never], ...STANDING_SHORT, 'stage-defect', 'two-sources'],
    ),
  },

  // Read aloud every supply's label and what each unit asks for: volts, amperes, a.c. or d.c., plug picture; and the
  // unit's amperes against the scale.
  // all-fit: kinds right, volts alike, enough amperes · volts-differ: the two supplies (or set rail voltages) differ ·
  // wrong-kind: a.c. for d.c., plug the other way round, volts outside what the unit permits · too-few-amps: fewer
  // amperes than the unit can deliver or trips at · unit-too-big: the unit's trip current is above what the scale bears.
  {
    id: 'read-labels',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['all-fit', 'volts-differ', 'wrong-kind', 'too-few-amps', 'unit-too-big'],
    // Of the wrong kind: it is not switched on again.
    establishes: {
      'all-fit': ['labels-read'],
      'volts-differ': ['labels-read'],
      'too-few-amps': ['labels-read'],
      'unit-too-big': ['labels-read'],
    },
    otherwise: [usually, rarely, never, rarely, rarely],
    when: rows(
      [[rarely, always, rarely, sometimes, rarely], 'supplies-swapped', 'unlike-supplies'],
      [[usually, sometimes, never, rarely, rarely], 'low-setting'],
      [[rarely, sometimes, always, rarely, never], 'wrong-supply-kind'],
      [[rarely, rarely, never, always, rarely], 'supply-limit', 'supply-hiccup'],
      [[usually, rarely, never, sometimes, rarely], 'overload-total', 'supply-heat'],
      [[usually, never, never, never, rarely], 'stage-limit'],
      [[sometimes, rarely, never, never, usually], 'high-trip'],
    ),
  },

  // Just after it cut out, or after a while of running: which case is hot or clearly warm? Back of the hand, outside only.
  // none · unit: command station or booster · supply · locomotive · wire-or-rail: a wire, a joiner, a rail, a spot.
  {
    id: 'which-case-hot',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['none', 'unit', 'supply', 'locomotive', 'wire-or-rail'],
    otherwise: [always, rarely, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, rarely, rarely, rarely], 'stage-heat'],
      [[rarely, rarely, always, rarely, rarely], 'supply-heat'],
      [[sometimes, sometimes, usually, rarely, rarely], 'supply-limit', 'supply-hiccup'],
      [[sometimes, usually, sometimes, rarely, rarely], 'overload-total', 'stage-limit', 'overload-district', 'lamps'],
      [[rarely, sometimes, rarely, usually, rarely], 'binding-locomotive'],
      [[usually, rarely, rarely, sometimes, rarely], 'wheelset-short', 'metal-bodies', 'pickup'],
      [[sometimes, rarely, rarely, rarely, usually], ...LEAKS],
      [[usually, sometimes, rarely, rarely, sometimes], 'loose-joiner', 'thin-wire', 'metal-across', 'moving-contact'],
      [[usually, sometimes, rarely, rarely, rarely], 'skew', 'suppressor', 'two-sources'],
      [[sometimes, usually, rarely, rarely, rarely], 'stage-defect'],
      [[sometimes, rarely, sometimes, rarely, rarely], 'supply-defect', 'wrong-supply-kind'],
      [[usually, rarely, rarely, rarely, sometimes], 'few-feeds', 'high-trip', 'slow-trip', 'breaker-setting'],
      [[rarely, sometimes, sometimes, rarely, usually], 'unsafe-heat'],
    ),
  },

  // If supplies were exchanged: everything off, put them back as they were, switch on. Better?
  // cured · no-change.
  {
    id: 'put-supplies-back',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['cured', 'no-change'],
    otherwise: [rarely, always],
    when: rows(
      [[always, rarely], 'supplies-swapped', 'unlike-supplies', 'wrong-supply-kind'],
      [[usually, rarely], 'supply-limit', 'supply-hiccup', 'supply-heat', 'supply-defect'],
      [[sometimes, usually], 'hidden-common', 'booster-off', 'stage-order', 'overload-total', 'socket-damaged'],
      [[rarely, usually], 'low-setting'],
    ),
  },

  // Everything off: borrow a supply of the same volts and the same kind (a.c. or d.c., plug) with more amperes, for a test.
  // cured · no-change.
  {
    id: 'borrow-supply',
    minutes: 5,
    tool: 'second-supply',
    risk: 1,
    needs: ['power-off'],
    options: ['cured', 'no-change'],
    otherwise: [never, always],
    when: rows(
      [[always, rarely], 'supply-limit', 'supply-hiccup', 'supply-defect'],
      [[usually, rarely], 'wrong-supply-kind', 'supply-heat', 'booster-off'],
      [[sometimes, usually], 'overload-total', 'unlike-supplies', 'supplies-swapped', 'mains-sag', 'lamps', 'inrush'],
      [[rarely, always], 'stage-limit', 'overload-district', 'binding-locomotive', 'hidden-common'],
    ),
  },

  // Everything off: feed the part with the trouble from the other unit instead, the suspect unit from nothing. Where is the
  // trouble now?
  // stays-with-part: same trouble in that part · follows-unit: that part is well now.
  {
    id: 'feed-from-other-unit',
    minutes: 8,
    tool: 'wire',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    options: ['stays-with-part', 'follows-unit'],
    otherwise: [usually, rarely],
    when: rows(
      [[rarely, always], 'booster-off', ...NO_SIGNAL, 'booster-role', 'stage-defect', 'wrong-supply-kind'],
      [[sometimes, usually], 'wrong-format'],
      [[rarely, always], 'supply-defect', 'supply-heat', 'stage-heat', 'stage-order', 'socket-damaged'],
      [[rarely, usually], ...PHASE, ...STEP, 'skew', 'cutout-mismatch', 'no-reference', 'hidden-common'],
      [
        [sometimes, usually],
        'supply-limit',
        'supply-hiccup',
        'wrong-output',
        'high-trip',
        'slow-trip',
        'breaker-setting',
      ],
      [[sometimes, usually], 'overload-district', 'long-bus'],
      [
        [always, never],
        ...STANDING_SHORT,
        ...WHEELS,
        ...LEAKS,
        'suppressor',
        'few-feeds',
        'loose-joiner',
        'dead-joint',
      ],
      [[always, rarely], 'feed-missing', 'feed-wire-broken', 'turnout-routing', 'dirty', 'loop-not-isolated'],
    ),
  },

  // Unit off, pull its track plug so that no track is connected, switch on again. What does it report?
  // clears: the fault is gone · still-a-fault: it still reports a fault or stays dead · no-fault-before: it reported none
  // with the track connected either.
  {
    id: 'track-plug-pulled',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['clears', 'still-a-fault', 'no-fault-before'],
    otherwise: [rarely, rarely, always],
    when: rows(
      [[always, never, rarely], ...STANDING_SHORT],
      [[usually, never, sometimes], ...WHEELS, ...LOOP, ...PHASE, ...JOINED, 'one-rail', 'frog-cross-district'],
      [[usually, never, sometimes], 'inrush', 'two-sources', 'leftover-wiring', 'program-bridge'],
      [[sometimes, never, usually], ...LOAD, ...STEP, 'hidden-common', 'binding-locomotive', 'supply-hiccup', ...LEAKS],
      [[never, always, rarely], 'stage-defect', 'wrong-supply-kind', 'wrong-format', 'supply-defect'],
      [[rarely, usually, sometimes], 'booster-off', 'link-missing', 'link-wrong-socket', 'link-faulty'],
      [[rarely, sometimes, usually], 'stop-active', 'stage-heat', 'supply-heat', 'socket-damaged'],
      // Without the track there is nothing that pulls the volts down.
      [[sometimes, sometimes, usually], 'mains-sag'],
    ),
  },

  // All vehicles off, everything off. Switch on the command station alone, then the booster with it (its own part only
  // fed), then both parts: what shows?
  // all-fine: nothing wrong without vehicles · one-alone-faults: one of them reports a fault already by itself ·
  // only-together: each is fine alone, a fault comes only when both feed their parts.
  {
    id: 'each-stage-alone',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off', 'vehicles-off'],
    options: ['all-fine', 'one-alone-faults', 'only-together'],
    otherwise: [always, rarely, rarely],
    when: rows(
      [[sometimes, rarely, usually], ...JOINED],
      [[usually, rarely, sometimes], 'one-rail', 'shared-wire', 'hidden-common'],
      [[usually, rarely, usually], 'frog-cross-district', 'leftover-wiring'],
      [[rarely, always, never], 'metal-across', 'crossed-feeder', 'stage-defect', 'wrong-supply-kind', 'wrong-format'],
      [
        [sometimes, usually, rarely],
        'live-frog',
        'moving-contact',
        'supply-defect',
        'loop-not-isolated',
        'two-sources',
      ],
      [[sometimes, usually, rarely], 'booster-off', ...NO_SIGNAL],
      [[usually, rarely, sometimes], 'reverse-route'],
    ),
  },

  // With power on, gently move one low-voltage plug and cable after the other at the units (none pulled, no mains plug
  // touched): does something flicker, stop or come back?
  // nothing · track-plug: at a track or unit socket · control-cable · mains-lead: none of these, but
  // the supply's own lamp or a room lamp on the same socket strip flickers now and then.
  {
    id: 'move-the-plugs',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['nothing', 'track-plug', 'control-cable', 'mains-lead'],
    otherwise: [always, rarely, rarely, rarely],
    when: rows(
      [[rarely, usually, sometimes, rarely], 'socket-damaged'],
      [[sometimes, usually, rarely, never], 'feed-wire-broken'],
      [[usually, sometimes, never, never], 'feed-missing'],
      [[sometimes, never, usually, never], 'link-faulty'],
      [[usually, never, sometimes, never], 'link-missing'],
      [[sometimes, never, never, usually], 'mains-sag'],
      [[usually, rarely, rarely, sometimes], 'supply-defect', 'booster-off'],
    ),
  },

  // A table lamp with a filament or a dimmable one on the socket strip of the supplies: does it dim or flicker when the trouble comes,
  // or go out when the supplies' own lamps do? Nothing on the strip is touched.
  // steady · dims-or-flickers.
  {
    id: 'lamp-on-the-strip',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['steady', 'dims-or-flickers'],
    otherwise: [always, rarely],
    when: rows([[rarely, usually], 'mains-sag']),
  },

  // Let it cool, then run again with free air (or a fan) around the unit and its supply. How long does it last now?
  // much-longer · no-change.
  {
    id: 'cool-air',
    minutes: 20,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['much-longer', 'no-change'],
    otherwise: [rarely, always],
    when: rows(
      [[always, rarely], 'stage-heat', 'supply-heat'],
      [[sometimes, usually], 'overload-total', 'overload-district', 'stage-limit', 'supply-limit', 'supply-defect'],
      [[sometimes, usually], 'gap-closed', 'stage-defect'],
      [[rarely, usually], 'loose-joiner', 'binding-locomotive', 'lamps'],
    ),
  },

  // Unplug for a test what joins the units by another way: the computer cable, a second supply with an earth pin that
  // feeds something else. Everything off while unplugging; never cut an earth pin.
  // cured · no-change · none-there: nothing of that kind is connected.
  {
    id: 'computer-and-earth',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['cured', 'no-change', 'none-there'],
    otherwise: [never, sometimes, usually],
    when: rows(
      [[always, rarely, rarely], 'hidden-common'],
      [[rarely, usually, sometimes], 'no-reference', 'into-control-bus', 'one-rail'],
    ),
  },

  // Compare the settings of both units on their displays or in their manuals.
  // alike: same kind of unit, same settings · kinds-differ: different kinds of unit, or a repeater in between ·
  // feedback-differs: the feedback cutout is on in one and off in the other · sends-own: the second unit is a command
  // station that is not set to repeat only · volts-differ: the set rail voltages differ.
  {
    id: 'unit-settings',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['alike', 'kinds-differ', 'feedback-differs', 'sends-own', 'volts-differ'],
    otherwise: [usually, sometimes, rarely, never, rarely],
    when: rows(
      [[never, always, sometimes, rarely, rarely], 'skew'],
      // Units of different kinds differ in this too, but it is the cutout that stands in the settings.
      [[rarely, rarely, always, rarely, rarely], 'cutout-mismatch'],
      [[never, sometimes, rarely, always, rarely], 'booster-role'],
      [[never, sometimes, rarely, rarely, always], 'low-setting'],
      [[sometimes, sometimes, rarely, rarely, sometimes], 'supplies-swapped', 'unlike-supplies'],
      [[rarely, usually, rarely, rarely, rarely], 'no-reference', 'stage-order', 'hidden-common'],
    ),
  },
] as const satisfies readonly CheckRow[];
