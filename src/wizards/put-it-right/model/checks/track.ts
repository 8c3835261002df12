// Shorts, losses and bad contact along the track: what is found by taking away, throwing, unclipping, cleaning, pressing and bridging.
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const TRACK_CHECKS = [
  // Lift all vehicles off, switch on. Does a unit still go off or report a short? If not, put them back one by one.
  // still-there: with an empty track too · one-brings-it-back: always with the same vehicle or pair · all-well: it stays well, with the vehicles back
  // on the track too.
  check({
    id: 'lift-all-vehicles',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['still-there', 'one-brings-it-back', 'all-well'],
    reads: 'short',
    reading: {
      none: { 'all-well': always, 'one-brings-it-back': rarely },
      vehicle: { 'one-brings-it-back': always, 'all-well': sometimes },
      track: 'still-there',
      'one-setting': { 'still-there': usually, 'all-well': sometimes },
      feeder: 'still-there',
      unit: 'still-there',
      weak: { 'all-well': always, 'still-there': sometimes },
      'only-shown': { 'still-there': always, 'all-well': rarely },
      accessory: { 'still-there': usually, 'all-well': sometimes },
      'both-on': 'still-there',
    },
  }),

  // Throw every turnout both ways, one after the other (by hand if need be).
  // no-change · trouble-clears: the short is gone with one setting · part-comes-alive: a dead stretch is live with one setting.
  check({
    id: 'throw-turnouts',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['no-change', 'trouble-clears', 'part-comes-alive'],
    reads: 'setting-matters',
    reading: {
      no: 'no-change',
      'short-in-one': { 'trouble-clears': always, 'no-change': rarely },
      'dead-in-one': { 'part-comes-alive': always, 'no-change': rarely },
      changing: { 'no-change': usually, 'part-comes-alive': usually, 'trouble-clears': rarely },
    },
  }),

  // Power off, unclip the feeder that was added last (then half of all, and half again), power on.
  // no-change · one-feeder: the short goes with one certain pair of wires · one-accessory: it goes with the wires of one turnout motor or lamp.
  check({
    id: 'unclip-feeders',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off', 'vehicles-off'],
    source: 'eye',
    options: ['no-change', 'one-feeder', 'one-accessory'],
    reads: 'short',
    reading: {
      none: 'no-change',
      vehicle: 'no-change',
      // A stretch that stands apart goes dead with its feeder, and its short with it.
      track: { 'no-change': usually, 'one-feeder': sometimes },
      'one-setting': { 'no-change': usually, 'one-feeder': sometimes },
      feeder: { 'one-feeder': always, 'no-change': rarely },
      unit: 'no-change',
      weak: { 'no-change': always, 'one-feeder': rarely },
      'only-shown': 'no-change',
      accessory: { 'one-accessory': always, 'no-change': sometimes },
      'both-on': { 'no-change': usually, 'one-feeder': sometimes },
    },
  }),

  // Power off: put a lamp (24 V, 3 to 5 W, gets hot) in series with one wire of the part's feed; vehicles off, power on.
  // dark · faint: a faint glow · bright: bright, as if directly on the supply.
  check({
    id: 'lamp-in-series',
    minutes: 5,
    tool: 'lamps',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    source: 'instrument',
    options: ['dark', 'faint', 'bright'],
    reads: 'short',
    reading: {
      // Decoders, detectors and lamps that stay connected draw a little.
      none: { dark: always, faint: sometimes },
      vehicle: { dark: always, faint: sometimes },
      track: 'bright',
      'one-setting': { bright: usually, dark: sometimes },
      feeder: 'bright',
      unit: { dark: always, faint: rarely },
      weak: { faint: always, bright: sometimes },
      'only-shown': { dark: always, faint: rarely },
      accessory: { bright: usually, faint: sometimes, dark: sometimes },
      'both-on': { bright: usually, dark: sometimes },
    },
  }),

  // The cuts inside the turnouts and crossings of that part, and in their ties: a thin blade must pass through each, power off.
  // all-through · one-closed: somewhere it does not pass · one-missing: the instructions ask for a cut that is not there.
  check({
    id: 'blade-in-turnout-cuts',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    unsure: 0.2,
    options: ['all-through', 'one-closed', 'one-missing'],
    reads: 'turnout-cuts',
    reading: {
      // A blade that does not go through has found metal, or dirt that looks like it: hardly ever where the cut is right.
      right: 'all-through',
      closed: { 'one-closed': usually, 'all-through': sometimes },
      missing: { 'one-missing': usually, 'all-through': sometimes },
    },
  }),

  // Power off: paint nail varnish on the two rails where they come closest at the frog, let it dry, try again.
  check({
    id: 'varnish-the-frog',
    minutes: 10,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['cured', 'no-change'],
    reads: 'varnish',
    reading: { 'no-change': 'no-change', cured: { cured: always, 'no-change': rarely } },
  }),

  // Clean 30 cm of both rails and the wheels of one locomotive, power off until all is dry; try there.
  check({
    id: 'clean-a-stretch',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['better', 'no-change'],
    reads: 'contact',
    reading: {
      good: { 'no-change': always, better: rarely },
      dirty: { better: always, 'no-change': rarely },
      'plain-step': { 'no-change': always, better: rarely },
      wide: { 'no-change': usually, better: sometimes },
      flickers: { 'no-change': usually, better: sometimes },
      insulated: 'no-change',
    },
  }),

  // A coach with filament lamps stands beyond the suspect joint: press the rails and the joiners there with a wooden stick.
  // no-change · flickers: the light flickers, comes or gets brighter.
  check({
    id: 'press-the-joiners',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['no-change', 'flickers'],
    reads: 'contact',
    reading: {
      good: 'no-change',
      dirty: 'no-change',
      'plain-step': { 'no-change': usually, flickers: rarely },
      wide: 'no-change',
      flickers: { flickers: always, 'no-change': sometimes },
      insulated: 'no-change',
    },
  }),

  // Clip a wire over the suspect joint on one rail, then over the other rail's (same part, not across the gap between parts).
  // no-change · alive-or-better: the stretch beyond comes alive or runs well.
  check({
    id: 'bridge-the-joiner',
    minutes: 5,
    tool: 'wire',
    risk: 1,
    needs: ['power-off'],
    source: 'instrument',
    options: ['no-change', 'alive-or-better'],
    reads: 'loss',
    reading: {
      none: 'no-change',
      bus: 'no-change',
      rails: { 'no-change': always, 'alive-or-better': sometimes },
      joint: { 'alive-or-better': always, 'no-change': rarely },
      'at-the-unit': 'no-change',
    },
  }),

  // Power off: clip a pair of thick wires from the feed at the unit straight to the rails at the slow spot, same rails; with about one ampere drawn
  // there (a strong filament lamp or the resistor).
  check({
    id: 'clip-thick-pair',
    minutes: 5,
    tool: 'wire',
    also: ['strong-lamp'],
    risk: 1,
    needs: ['power-off'],
    source: 'instrument',
    options: ['better', 'no-change'],
    reads: 'loss',
    reading: {
      none: { 'no-change': always, better: rarely },
      bus: { better: always, 'no-change': rarely },
      rails: { better: always, 'no-change': rarely },
      joint: { better: always, 'no-change': rarely },
      'at-the-unit': 'no-change',
    },
  }),

  // Power off: clip the thick pair alongside the bus only, from the unit to the bus end under the slow spot, not to rails.
  check({
    id: 'clip-along-the-bus',
    minutes: 6,
    tool: 'wire',
    also: ['strong-lamp'],
    risk: 1,
    needs: ['power-off'],
    source: 'instrument',
    options: ['better', 'no-change'],
    reads: 'loss',
    reading: {
      none: { 'no-change': always, better: rarely },
      bus: { better: always, 'no-change': rarely },
      rails: { 'no-change': always, better: rarely },
      joint: { 'no-change': always, better: rarely },
      'at-the-unit': 'no-change',
    },
  }),

  // One strong filament lamp (24 V 21 W, about 0.7 A at 15 V) held across the rails: beside the unit, at the end of the bus, at the slow spot. Where
  // does it get dimmer?
  // alike · dim-everywhere: dim beside the unit already · dim-at-the-bus: at the end of the bus · dim-along-the-rails: bit by bit along the rails ·
  // dim-beyond-a-joint.
  check({
    id: 'bright-lamp-along',
    minutes: 5,
    tool: 'strong-lamp',
    risk: 1,
    needs: ['vehicles-off', 'nothing-got-hot'],
    source: 'instrument',
    options: ['alike', 'dim-everywhere', 'dim-at-the-bus', 'dim-along-the-rails', 'dim-beyond-a-joint'],
    reads: 'loss',
    reading: {
      none: { alike: always, 'dim-along-the-rails': rarely },
      bus: { 'dim-at-the-bus': usually, 'dim-along-the-rails': sometimes, alike: rarely },
      rails: { 'dim-along-the-rails': usually, 'dim-beyond-a-joint': rarely, alike: sometimes },
      joint: { 'dim-beyond-a-joint': usually, 'dim-along-the-rails': sometimes, alike: rarely },
      'at-the-unit': { 'dim-everywhere': usually, alike: sometimes },
    },
  }),

  // With a lamp along the whole track of that part, at its sides and below, everything off.
  // nothing · metal: something metal lies across both rails · wet: wet, freshly glued or plastered · charred: a browned or charred spot.
  check({
    id: 'lamp-along-the-track',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['nothing', 'metal', 'wet', 'charred'],
    reads: 'along-the-track',
    reading: {
      nothing: 'nothing',
      metal: { metal: usually, nothing: sometimes },
      wet: { wet: usually, nothing: sometimes },
      charred: { charred: usually, nothing: sometimes },
    },
  }),

  // The suspected crossing or other piece of track taken out, everything off: its rails measured by themselves, or the layout tried without it.
  // sound: no short in it, and the trouble stays without it · shorted: a short in it, or the trouble is gone without it.
  check({
    id: 'piece-by-itself',
    minutes: 15,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    unsure: 0.2,
    options: ['sound', 'shorted'],
    reads: 'piece-alone',
    reading: { sound: 'sound', shorted: { shorted: always, sound: rarely } },
  }),

  // Every joiner of the stretch, looked at: is one of them plastic, or is there a cut where the rail should go on?
  check({
    id: 'look-at-every-joiner',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['all-metal', 'plastic-or-cut'],
    reads: 'contact',
    reading: {
      good: 'all-metal',
      dirty: 'all-metal',
      'plain-step': 'all-metal',
      wide: { 'plastic-or-cut': usually, 'all-metal': usually },
      flickers: 'all-metal',
      insulated: { 'plastic-or-cut': always, 'all-metal': rarely },
    },
  }),

  // The bus and the feeders looked at with everything off: how thick, how long, how many. Source: common practice, no source.
  // ample · thin-bus: thin for its length · few-feeders: long rails to the nearest pair.
  check({
    id: 'wires-by-eye',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    unsure: 0.2,
    options: ['ample', 'thin-bus', 'few-feeders'],
    reads: 'loss',
    reading: {
      // Many a layout has thin wires and few feeders, and is well with its few trains.
      none: { ample: usually, 'thin-bus': sometimes, 'few-feeders': sometimes },
      bus: { 'thin-bus': always, 'few-feeders': sometimes, ample: rarely },
      rails: { 'few-feeders': always, 'thin-bus': sometimes, ample: rarely },
      joint: { ample: usually, 'few-feeders': usually, 'thin-bus': sometimes },
      'at-the-unit': { ample: usually, 'thin-bus': sometimes, 'few-feeders': sometimes },
    },
  }),

  // The frog of the turnout where it happens, looked at from above and below.
  // plastic · fed: metal, of one piece with its blades or with a wire · no-wire: metal, cut off all round, and no wire to be found.
  check({
    id: 'look-at-the-frog',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    unsure: 0.2,
    options: ['plastic', 'fed', 'no-wire'],
    reads: 'frog-feed',
    reading: {
      fed: { fed: always, 'no-wire': rarely },
      plastic: 'plastic',
      none: { 'no-wire': usually, fed: usually },
      'one-setting': { fed: always, 'no-wire': sometimes },
      'wrong-pole': 'fed',
    },
  }),
] as const;
