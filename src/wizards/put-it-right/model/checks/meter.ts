// With a multimeter. The same meter for both readings of a comparison; an ordinary meter's value is not believed, only compared. Ohms only with
// everything off and unplugged. Its ampere socket never goes across the rails.
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const METER_CHECKS = [
  // Volts a.c. at the track output screws of the part's unit, then rail to rail in that part.
  // both: about the same at both · screws-only: at the screws, not at the rails · neither: nothing at the screws either · only-moments: they come and
  // go, as on a programming output.
  check({
    id: 'meter-output',
    minutes: 4,
    tool: 'multimeter',
    risk: 0,
    needs: [],
    source: 'instrument',
    options: ['both', 'screws-only', 'neither', 'only-moments'],
    reads: 'feed-wires',
    reading: {
      // A unit that gives nothing says nothing of its wires.
      right: { both: usually, neither: usually },
      missing: 'screws-only',
      'one-loose': { 'screws-only': always, both: rarely, 'only-moments': sometimes },
      'wrong-socket': { 'only-moments': usually, 'screws-only': sometimes, neither: sometimes },
      'to-other-part': { both: usually, 'screws-only': sometimes },
      'device-open': 'screws-only',
      'switch-off': 'screws-only',
      'fuse-blown': 'screws-only',
      'board-plug': { 'screws-only': always, 'only-moments': rarely },
    },
  }),

  // Volts a.c. rail to rail where the trouble is, against a place where all is well; then with about one ampere drawn there.
  // alike: as elsewhere, and they stay · lower: lower already with nothing running · higher: above what the scale takes · falls: alike, and they fall as soon as something is drawn · none:
  // next to none · comes-and-goes.
  check({
    id: 'meter-volts-there',
    minutes: 4,
    tool: 'multimeter',
    risk: 0,
    needs: [],
    source: 'instrument',
    options: ['alike', 'lower', 'higher', 'falls', 'none', 'comes-and-goes'],
    reads: 'volts',
    reading: {
      full: { alike: always, falls: rarely },
      low: { lower: always, alike: rarely },
      'low-loaded': { falls: usually, alike: sometimes, lower: rarely },
      none: { none: always, 'comes-and-goes': rarely },
      moments: { 'comes-and-goes': always, none: rarely },
      // What an a.c. range makes of direct current depends on the meter.
      direct: { none: usually, lower: sometimes, alike: sometimes },
      high: { higher: always, alike: sometimes },
    },
  }),

  // Volts a.c. from the frog to each of the two outer rails, with the turnout thrown one way and the other.
  // plastic: nothing there to touch · changes-over: with each setting next to nothing to the rail whose blade lies closed, and full to the other ·
  // none: next to nothing to both · one-setting: fed with one setting only · wrong-pole: full to the rail whose blade lies closed.
  check({
    id: 'meter-at-the-frog',
    minutes: 4,
    tool: 'multimeter',
    risk: 0,
    needs: [],
    source: 'instrument',
    options: ['changes-over', 'plastic', 'none', 'one-setting', 'wrong-pole'],
    reads: 'frog-feed',
    reading: {
      fed: { 'changes-over': always, 'one-setting': rarely },
      plastic: { plastic: always, none: rarely },
      none: { none: always, 'one-setting': rarely },
      'one-setting': { 'one-setting': always, 'changes-over': rarely },
      'wrong-pole': { 'wrong-pole': always, 'changes-over': rarely },
    },
  }),

  // Volts d.c. rail to rail in the part with the trouble.
  // about-zero: less than about a volt · several-volts: several volts (no signal, or half of the stage dead) · dead: that part is dead by a.c. as well.
  check({
    id: 'meter-direct-volts',
    minutes: 2,
    tool: 'multimeter',
    risk: 0,
    needs: [],
    source: 'instrument',
    options: ['about-zero', 'several-volts', 'dead'],
    reads: 'volts',
    reading: {
      full: 'about-zero',
      low: { 'about-zero': always, 'several-volts': rarely },
      'low-loaded': 'about-zero',
      none: { dead: always, 'about-zero': rarely },
      moments: { 'about-zero': usually, dead: sometimes },
      direct: { 'several-volts': always, dead: rarely },
      high: 'about-zero',
    },
  }),

  // Both parts on and alive, no vehicle near. Join rail B across the gap through a lamp. Volts from rail A to rail A across the gap, then from A to B
  // across it (the diagonal). Compare the two.
  // diagonal-large: A–A near nothing, A–B full volts (in phase) · same-rail-large: A–A clearly more than A–B (reversed: floating units show both rail
  // voltages in series there, and one of them on the diagonal) · wanders: neither, or it changes.
  check({
    id: 'meter-same-and-diagonal',
    minutes: 4,
    tool: 'multimeter',
    also: ['lamps'],
    risk: 0,
    needs: ['vehicles-off'],
    source: 'instrument',
    establishes: { 'diagonal-large': ['parts-agree'] },
    options: ['diagonal-large', 'same-rail-large', 'wanders'],
    reads: 'sides',
    reading: {
      agree: { 'diagonal-large': always, wanders: rarely },
      reversed: { 'same-rail-large': always, wanders: rarely },
      drift: { wanders: always, 'diagonal-large': sometimes },
      changes: { wanders: usually, 'diagonal-large': sometimes, 'same-rail-large': sometimes },
    },
  }),

  // Volts a.c. rail to rail beside the feed of each part, same meter, nothing running; then with the 15 ohm resistor across the rails of each, one after
  // the other.
  // alike: within about half a volt · differ-idle: a volt or more apart with nothing running · differ-loaded: alike idle, but one falls with the resistor.
  check({
    id: 'meter-two-stages',
    minutes: 6,
    tool: 'multimeter',
    also: ['resistor'],
    risk: 1,
    needs: ['vehicles-off', 'nothing-got-hot'],
    source: 'instrument',
    options: ['alike', 'differ-idle', 'differ-loaded'],
    reads: 'step',
    reading: {
      none: { alike: always, 'differ-idle': rarely },
      idle: { 'differ-idle': always, alike: rarely },
      // One ampere does not trouble a supply of two or three.
      loaded: { 'differ-loaded': usually, alike: usually },
    },
  }),

  // The 15 ohm resistor across the rails at the slow spot. Volts at the unit, at the bus end below the spot, at the rails on both sides of the nearest
  // joiners, same meter: where is most of the drop?
  // none: same everywhere · in-the-bus: between unit and bus end · in-the-rails: along the rails, bit by bit · at-one-joiner: across one joiner or wire
  // joint · at-the-unit: low already at the unit.
  check({
    id: 'meter-along-the-way',
    minutes: 8,
    tool: 'multimeter',
    also: ['resistor'],
    risk: 1,
    needs: ['vehicles-off', 'nothing-got-hot'],
    source: 'instrument',
    options: ['none', 'in-the-bus', 'in-the-rails', 'at-one-joiner', 'at-the-unit'],
    reads: 'loss',
    reading: {
      none: { none: always, 'in-the-rails': rarely },
      bus: { 'in-the-bus': always, 'in-the-rails': rarely },
      rails: { 'in-the-rails': always, 'at-one-joiner': rarely },
      joint: { 'at-one-joiner': always, 'in-the-rails': rarely },
      'at-the-unit': { 'at-the-unit': always, none: rarely },
    },
  }),

  // The same without a resistor, while the trains run that make it slow: they draw what loses the volts, and never quite alike.
  check({
    id: 'meter-while-they-run',
    minutes: 10,
    tool: 'multimeter',
    risk: 1,
    needs: ['nothing-got-hot'],
    source: 'instrument',
    options: ['none', 'in-the-bus', 'in-the-rails', 'at-one-joiner', 'at-the-unit'],
    reads: 'loss',
    reading: {
      none: { none: always, 'in-the-rails': rarely },
      bus: { 'in-the-bus': usually, none: sometimes, 'in-the-rails': rarely },
      rails: { 'in-the-rails': usually, none: sometimes, 'at-one-joiner': sometimes },
      joint: { 'at-one-joiner': usually, 'in-the-rails': sometimes, none: sometimes },
      'at-the-unit': { 'at-the-unit': always, none: rarely },
    },
  }),

  // Volts at the supply's own plug or terminals, unloaded, then while the trouble happens (mains parts stay shut).
  // steady: as on its label, hardly lower at work · collapses: they fall far down or pulse at work · wrong-or-none: unloaded far from what the unit asks
  // for, a.c. instead of d.c., minus where plus belongs · dead: none at all.
  check({
    id: 'meter-supply',
    minutes: 4,
    tool: 'multimeter',
    risk: 0,
    needs: [],
    source: 'instrument',
    options: ['steady', 'collapses', 'wrong-or-none', 'dead'],
    reads: 'supply-volts',
    reading: {
      steady: { steady: always, collapses: rarely },
      collapses: { collapses: always, steady: sometimes },
      wrong: { 'wrong-or-none': always, steady: rarely },
      none: { dead: always, 'wrong-or-none': rarely },
    },
  }),

  // Amperes d.c. in the supply's d.c. lead: with nothing on the track, and while running.
  // well-below: far below the limits of unit and supply · near-limit: running, it comes near one of them · above: it reaches or passes one of them ·
  // high-idle: high with nothing on the track.
  check({
    id: 'meter-supply-current',
    minutes: 8,
    tool: 'multimeter',
    risk: 1,
    needs: ['power-off'],
    source: 'instrument',
    options: ['well-below', 'near-limit', 'above', 'high-idle'],
    reads: 'draw',
    reading: {
      'well-below': { 'well-below': always, 'near-limit': rarely },
      'near-the-limit': { 'near-limit': always, 'well-below': rarely, above: rarely },
      above: { above: usually, 'near-limit': sometimes },
      'high-idle': { 'high-idle': always, 'near-limit': rarely },
    },
  }),

  // Ohms rail to rail in the part with the trouble: everything off, its track plug out, every vehicle off. Touch the leads first and subtract.
  // short: below about 10 ohms · some-ohms: 10 to some hundred ohms, steady · high: thousands, rising, or open.
  check({
    id: 'meter-ohms-between-rails',
    minutes: 5,
    tool: 'multimeter',
    risk: 0,
    needs: ['power-off', 'all-unplugged', 'vehicles-off'],
    source: 'instrument',
    options: ['short', 'some-ohms', 'high'],
    reads: 'ohms',
    reading: {
      open: { high: always, 'some-ohms': rarely },
      some: { 'some-ohms': always, high: rarely, short: rarely },
      short: { short: always, 'some-ohms': rarely },
    },
  }),

  // Ohms from the same rail to the same rail across the boundary: all feeders and detectors of one part unplugged, every vehicle off, turnouts thrown
  // both ways; first rail A, then rail B.
  // open-on-both: no beep, above 100 000 ohms · one-through: one rail reads through, below a few ohms · both-through · some-ohms: tens or hundreds.
  check({
    id: 'meter-across-the-gap',
    minutes: 8,
    tool: 'multimeter',
    risk: 0,
    needs: ['power-off', 'all-unplugged', 'vehicles-off'],
    source: 'instrument',
    options: ['open-on-both', 'one-through', 'both-through', 'some-ohms'],
    reads: 'cut',
    reading: {
      'both-cut': { 'open-on-both': always, 'some-ohms': rarely },
      'one-joined': { 'one-through': always, 'both-through': rarely },
      'both-joined': { 'both-through': always, 'one-through': rarely },
      // A detector is unplugged for this, and a lamp may stay.
      'faintly-joined': { 'some-ohms': always, 'open-on-both': sometimes },
      touching: { 'one-through': usually, 'both-through': sometimes, 'open-on-both': sometimes },
    },
  }),
] as const;
