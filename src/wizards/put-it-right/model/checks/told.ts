// What people know without doing anything: what happens, when, where, with which vehicles, since when. They answer from memory.
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const TOLD_CHECKS = [
  // Before anything else, as it is right now: is one of these the case? Feel with the back of the hand, only cases and wires outside, nothing
  // opened.
  // none: nothing is warmer than the hand · as-always: units and supplies are as warm and hum as they always did · warm-or-was-hot: something is
  // hotter or louder than before · browned: something is browned or melted, smelled or was too hot to touch earlier, and is cold now ·
  // smoke-heat-or-damage: smoke, a smell, too hot to keep a hand on, or a mains lead, plug or case that is damaged or got wet ·
  // analogue-transformer: a transformer of analogue days still reaches the rails; no sign is read by it, it ends the walk at once.
  check({
    id: 'danger-now',
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    first: true,
    establishes: { none: ['nothing-got-hot'], 'as-always': ['nothing-got-hot'] },
    danger: { 'smoke-heat-or-damage': 'switch-off-now', 'analogue-transformer': 'two-sources' },
    options: ['none', 'as-always', 'warm-or-was-hot', 'browned', 'smoke-heat-or-damage', 'analogue-transformer'],
    reads: 'hot',
    reading: {
      nothing: { none: usually, 'as-always': usually },
      // A bad joint is hot on a few millimetres only: it is seen by what it browned, or not at all.
      'joint-or-rail': { browned: usually, 'warm-or-was-hot': usually, none: sometimes, 'as-always': sometimes },
      wire: { 'warm-or-was-hot': usually, browned: sometimes, none: rarely },
      unit: { 'warm-or-was-hot': usually, 'as-always': usually, none: sometimes },
      supply: { 'warm-or-was-hot': usually, 'as-always': usually, none: sometimes },
      // What sits inside is browned or smells, and is cold by the time it is looked at.
      vehicle: { 'warm-or-was-hot': usually, browned: usually, none: sometimes, 'as-always': sometimes },
      accessory: { 'warm-or-was-hot': usually, browned: sometimes, none: sometimes, 'as-always': sometimes },
      smoking: 'smoke-heat-or-damage',
    },
  }),

  // Is an old transformer or throttle of analogue days still joined to the rails, or are old wires?
  // none · old-wires: old wires or switches only, with nothing plugged in behind them · still-connected: a transformer, a throttle or another
  // command station whose wires reach the rails, even with its knob at zero or its plug pulled.
  check({
    id: 'old-transformer',
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    danger: { 'still-connected': 'two-sources' },
    options: ['none', 'old-wires', 'still-connected'],
    reads: 'old-wiring',
    reading: {
      none: 'none',
      'dead-wires': { 'old-wires': usually, none: usually },
      'live-source': { 'still-connected': usually, none: sometimes, 'old-wires': rarely },
    },
  }),

  // What is wrong, in one line?
  check({
    id: 'what-happens',
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    danger: { 'house-fuse': 'house-protection', tingle: 'tingle' },
    options: [
      'switches-off',
      'stops-dark',
      'stops-lit',
      'slow-or-dim',
      'fast-or-bright',
      'jerks',
      'runs-by-itself',
      'accessories-wrong',
      'gets-hot',
      'shown-occupied',
      'handhelds-dead',
      'cannot-be-read',
      'only-shown',
      'hums',
      'acts-otherwise',
      'wheels-spin',
      'just-testing',
      'house-fuse',
      'tingle',
    ],
    reads: 'trouble',
    reading: {
      // Who finds it with a meter, before anything has run, is only testing too.
      'switches-off': { 'switches-off': always, 'stops-dark': rarely, 'only-shown': rarely, 'just-testing': rarely },
      // In daylight nobody sees whether a locomotive is lit, and a dead part looks like one that has switched off.
      'stops-dark': { 'stops-dark': always, 'stops-lit': rarely, 'switches-off': sometimes },
      'stops-lit': { 'stops-lit': always, 'stops-dark': sometimes },
      'slow-or-dim': { 'slow-or-dim': always, jerks: rarely },
      'fast-or-bright': 'fast-or-bright',
      jerks: { jerks: always, 'stops-dark': rarely, 'switches-off': rarely, 'slow-or-dim': rarely },
      'runs-by-itself': { 'runs-by-itself': always, 'stops-lit': rarely },
      'accessories-wrong': 'accessories-wrong',
      'gets-hot': { 'gets-hot': always, 'slow-or-dim': rarely },
      'shown-occupied': 'shown-occupied',
      'handhelds-dead': { 'handhelds-dead': always, 'stops-lit': rarely },
      'cannot-be-read': { 'cannot-be-read': always, 'only-shown': rarely },
      'only-shown': { 'only-shown': always, 'switches-off': sometimes },
      none: 'just-testing',
      'house-fuse': 'house-fuse',
      tingle: 'tingle',
      hums: { hums: always, jerks: rarely },
      // Who calls for a light that stays dark says that it does not obey.
      'acts-otherwise': { 'acts-otherwise': usually, 'stops-lit': rarely, 'slow-or-dim': rarely },
      // Who looks at the train and not at the wheels says that it is slow.
      slips: { 'wheels-spin': usually, 'slow-or-dim': sometimes, 'stops-lit': rarely },
    },
  }),

  // When does the trouble show?
  // all-the-time: as long as power is on · from-switch-on: it goes off at the moment of switching on, or at once again · at-the-gap: at the
  // instant a vehicle reaches or bridges the boundary · when-set-on: when a vehicle is set on the track · at-another-place: always at another
  // spot · when-thrown: when a turnout or signal is thrown · with-traffic: only when several trains run · after-minutes: only after a while ·
  // after-a-short: once a short is cleared, it does not start again · in-mid-run: it runs, then stops and stays so · while-programming: as the
  // programming track is in use · at-walking-pace: only as it creeps, and a push helps · now-and-then: no pattern.
  check({
    id: 'when-it-happens',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: [
      'all-the-time',
      'from-switch-on',
      'at-the-gap',
      'when-set-on',
      'at-another-place',
      'when-thrown',
      'with-traffic',
      'after-minutes',
      'after-a-short',
      'in-mid-run',
      'while-programming',
      'at-walking-pace',
      'now-and-then',
    ],
    reads: 'when',
    reading: {
      always: { 'all-the-time': always, 'from-switch-on': sometimes },
      'at-switching-on': { 'from-switch-on': always, 'all-the-time': rarely },
      'at-the-gap': { 'at-the-gap': always, 'at-another-place': sometimes },
      'when-set-on': { 'when-set-on': always, 'all-the-time': rarely },
      'at-one-place': { 'at-another-place': always, 'at-the-gap': rarely },
      'when-thrown': { 'when-thrown': always, 'at-another-place': rarely },
      'with-traffic': { 'with-traffic': always, 'now-and-then': rarely },
      'after-minutes': { 'after-minutes': always, 'now-and-then': rarely },
      'after-a-short': { 'after-a-short': always, 'all-the-time': rarely },
      'in-mid-run': { 'in-mid-run': always, 'now-and-then': sometimes },
      'now-and-then': { 'now-and-then': always, 'in-mid-run': rarely },
      'while-programming': { 'while-programming': always, 'at-another-place': rarely },
      creeping: { 'at-walking-pace': always, 'now-and-then': sometimes, 'at-another-place': rarely },
    },
  }),

  // Which parts go off when it happens?
  // nothing-goes-off: no unit goes off, trains only stop, jerk, run slow or do not obey · only-that-part: the part where the vehicle is, the
  // others run on · everything-at-once · one-after-the-other: first one part, then the other too.
  check({
    id: 'what-goes-dark',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: ['nothing-goes-off', 'only-that-part', 'everything-at-once', 'one-after-the-other'],
    reads: 'goes-off',
    reading: {
      nothing: 'nothing-goes-off',
      // With trains in one part only, nobody can tell it from all.
      'that-part': { 'only-that-part': always, 'everything-at-once': rarely },
      'all-at-once': { 'everything-at-once': always, 'only-that-part': rarely },
      // Within half a second it looks like one instant.
      'one-after-the-other': { 'one-after-the-other': usually, 'everything-at-once': usually },
    },
  }),

  // How does it come back?
  // never-off: nothing goes off · blink: at once, a wink of the lights · seconds: by itself, within seconds, though everything stays where it is ·
  // minutes: by itself, after some minutes, sooner when cool · button: only by a button or by switching off and on · when-removed: only once
  // a vehicle, a wire or a plug has been taken away; left as it is, it goes off again and again · stays: not at all.
  check({
    id: 'how-it-comes-back',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: ['never-off', 'blink', 'seconds', 'minutes', 'button', 'when-removed', 'stays'],
    reads: 'comes-back',
    reading: {
      'never-off': 'never-off',
      blink: { blink: always, 'never-off': sometimes, seconds: sometimes },
      seconds: { seconds: always, 'when-removed': rarely, blink: rarely },
      minutes: { minutes: always, button: rarely, seconds: rarely },
      // Whoever waits before pressing it tells of the wait.
      button: { button: always, 'when-removed': rarely, minutes: rarely },
      'when-removed': { 'when-removed': always, button: sometimes, seconds: rarely },
      stays: { stays: always, 'when-removed': sometimes },
    },
  }),

  // Which vehicles show it?
  // one-vehicle: always the same one · short-ones: short, two-axle or single vehicles, long ones pass · long-or-lit: long, lit or coupled trains,
  // a single locomotive passes · only-coupled: each alone is well, coupled together they are not ·
  // only-many: none of them alone, only many together · one-kind: several, all of one kind of decoder, drive or wheel · decoders-only: all that have
  // a decoder, an engine without one runs · every-one · none-needed: it happens with no vehicle there.
  check({
    id: 'which-vehicles',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: [
      'one-vehicle',
      'one-kind',
      'short-ones',
      'long-or-lit',
      'only-coupled',
      'only-many',
      'decoders-only',
      'every-one',
      'none-needed',
    ],
    reads: 'vehicles',
    reading: {
      'every-one': { 'every-one': always, 'one-vehicle': rarely },
      'one-only': { 'one-vehicle': always, 'every-one': rarely },
      'short-ones': { 'short-ones': always, 'one-vehicle': sometimes, 'every-one': rarely },
      'lit-or-long': { 'long-or-lit': always, 'one-vehicle': rarely, 'every-one': sometimes },
      many: { 'only-many': always, 'every-one': sometimes, 'long-or-lit': rarely },
      'none-needed': { 'none-needed': always, 'every-one': sometimes },
      coupled: { 'only-coupled': usually, 'long-or-lit': sometimes },
      'one-kind': { 'one-kind': always, 'every-one': sometimes, 'one-vehicle': sometimes },
      'decoders-only': { 'decoders-only': always, 'every-one': sometimes },
    },
  }),

  // Which places show it?
  // one-spot: one spot, joint or stretch · at-a-turnout: on one turnout or crossing · every-gap: every gap of that part (also if it has but one) ·
  // in-the-loop: a reversing loop or triangle, its ends too · on-the-turntable · that-part: anywhere in that part, also beside its feed ·
  // with-distance: the farther from the feed, the worse · anywhere: anywhere on the layout · off-track: not on the track, at units or handhelds.
  check({
    id: 'which-places',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.1,
    options: [
      'one-spot',
      'at-a-turnout',
      'every-gap',
      'in-the-loop',
      'on-the-turntable',
      'that-part',
      'with-distance',
      'anywhere',
      'off-track',
    ],
    reads: 'where',
    reading: {
      everywhere: { anywhere: always, 'that-part': rarely },
      part: { 'that-part': always, anywhere: rarely, 'every-gap': rarely },
      gaps: { 'every-gap': always, 'one-spot': sometimes },
      far: { 'with-distance': always, 'that-part': rarely, 'one-spot': sometimes },
      spot: { 'one-spot': always, 'at-a-turnout': rarely },
      turnout: { 'at-a-turnout': always, 'one-spot': sometimes },
      loop: { 'in-the-loop': always, 'every-gap': rarely, 'one-spot': sometimes },
      'off-track': { 'off-track': always, anywhere: sometimes },
      turntable: 'on-the-turntable',
    },
  }),

  // What was changed last, before the trouble began?
  // track-or-wires: track, joints, feeders, a new part, glue or paint · supply: a supply alone was exchanged, moved or
  // replugged · supply-or-unit: a unit, with or without its supply · vehicle: a new, cleaned or repaired vehicle or more trains · setting · a-short: it began with a short or a derailing · new-place: set up at
  // another place · time: nothing but age, a long pause, a season · nothing: nothing known.
  check({
    id: 'last-change',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: [
      'track-or-wires',
      'supply',
      'supply-or-unit',
      'vehicle',
      'vehicle-opened',
      'setting',
      'a-short',
      'new-place',
      'time',
      'nothing',
    ],
    reads: 'since',
    reading: {
      nothing: { nothing: always, time: rarely },
      'track-or-wires': { 'track-or-wires': always, nothing: rarely },
      time: { time: usually, nothing: usually },
      'supply-or-unit': { 'supply-or-unit': always, nothing: rarely },
      supply: { supply: always, 'supply-or-unit': sometimes, nothing: rarely },
      vehicle: { vehicle: always, nothing: rarely },
      'vehicle-opened': { 'vehicle-opened': always, vehicle: sometimes, nothing: rarely },
      setting: { setting: usually, nothing: sometimes },
      'a-short': { 'a-short': always, nothing: rarely },
      'new-place': { 'new-place': always, 'track-or-wires': rarely },
    },
  }),

  // Which way is a train going when it shows?
  check({
    id: 'which-way',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.3,
    options: ['either', 'one-way', 'one-route'],
    reads: 'way',
    reading: {
      either: { either: always, 'one-way': rarely },
      'one-way': { 'one-way': always, either: rarely },
      'one-route': { 'one-route': usually, 'one-way': sometimes },
    },
  }),

  // The bridge of a turntable turned half round, at the same track: is it the same again?
  // half-round: one way round it is well, the other way it is not · either-way: at that track either way round · here-and-there: in some positions,
  // which need not be the same again.
  check({
    id: 'bridge-half-round',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.3,
    options: ['half-round', 'either-way', 'here-and-there'],
    reads: 'bridge',
    reading: {
      'no-matter': { 'either-way': always, 'here-and-there': rarely },
      'half-round': { 'half-round': always, 'here-and-there': rarely },
      'some-positions': { 'here-and-there': always, 'either-way': rarely, 'half-round': rarely },
    },
  }),

  // Is it so with one setting of a turnout only?
  check({
    id: 'which-setting',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.3,
    options: ['no', 'short-in-one', 'dead-in-one', 'changing'],
    reads: 'setting-matters',
    reading: {
      no: 'no',
      'short-in-one': { 'short-in-one': always, no: sometimes },
      'dead-in-one': { 'dead-in-one': always, no: sometimes },
      changing: { changing: usually, 'dead-in-one': sometimes, no: sometimes },
    },
  }),

  // From memory: a locomotive without a decoder, driven on address 0, as it crossed the gap. It goes by the volts of the rails, so that it turns
  // round where they meet the wrong way; one with a decoder does not.
  check({
    id: 'analogue-one-at-the-gap',
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    // Few people run one.
    unsure: 0.8,
    options: ['went-on', 'turned-round'],
    reads: 'sides',
    reading: {
      agree: 'went-on',
      reversed: { 'turned-round': always, 'went-on': rarely },
      drift: { 'went-on': always, 'turned-round': rarely },
      changes: { 'went-on': usually, 'turned-round': sometimes },
    },
  }),

  // When it stopped or misbehaved: what did the lamps of the locomotive and the coaches do, and did it obey?
  // out · dim: dimmer than elsewhere · flickers: out and on again · lit-not-obeying: lit as always, but it did not obey · fades-with-trains:
  // bright until more trains run · lit-and-obeying.
  check({
    id: 'lights-then',
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.2,
    options: ['out', 'dim', 'flickers', 'fades-with-trains', 'lit-not-obeying', 'lit-and-obeying'],
    reads: ['volts', 'commands', 'wheel-contact'],
    reading: [
      { where: { volts: ['none'] }, gives: { out: always } },
      // Stored energy or light that a circuit holds steady hides it.
      {
        where: { 'wheel-contact': ['breaks'] },
        gives: { flickers: usually, out: usually, 'lit-and-obeying': sometimes, 'lit-not-obeying': rarely },
      },
      { where: { volts: ['moments'] }, gives: { flickers: always, out: sometimes } },
      { where: { volts: ['direct'] }, gives: { 'lit-not-obeying': always, out: rarely } },
      { where: { commands: ['none', 'other'] }, gives: { 'lit-not-obeying': always } },
      {
        where: { commands: ['spoiled'] },
        gives: { 'lit-not-obeying': usually, flickers: sometimes, 'lit-and-obeying': rarely },
      },
      {
        where: { commands: ['one-deaf'] },
        gives: { 'lit-not-obeying': usually, 'lit-and-obeying': sometimes, out: rarely },
      },
      // Light that a circuit holds steady hides a loss.
      { where: { volts: ['low'] }, gives: { dim: usually, 'lit-and-obeying': usually } },
      {
        where: { volts: ['low-loaded'] },
        gives: { 'fades-with-trains': usually, dim: sometimes, 'lit-and-obeying': sometimes },
      },
      { where: {}, gives: { 'lit-and-obeying': always, flickers: rarely } },
    ],
  }),

  // Just before it cuts out: does anything get slower or dimmer first?
  // dims-first: slower or dimmer, then off (or only slower) · snaps-off: full speed, then off at once · neither: it does not go off.
  check({
    id: 'dim-or-snap',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.1,
    options: ['dims-first', 'snaps-off', 'neither'],
    reads: 'before',
    reading: {
      'not-off': 'neither',
      dims: { 'dims-first': always, 'snaps-off': rarely },
      snaps: { 'snaps-off': always, 'dims-first': rarely },
    },
  }),

  // From memory: was there a spark or a ticking when it happened, and where?
  check({
    id: 'sparks-at-the-gap',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.3,
    options: ['none', 'spark-or-tick', 'at-a-frog', 'at-a-wheel', 'elsewhere'],
    reads: 'sparks',
    reading: {
      none: { none: always, 'at-a-wheel': rarely },
      'at-the-gap': { 'spark-or-tick': usually, none: usually },
      'at-a-frog': { 'at-a-frog': usually, none: sometimes },
      'at-a-wheel': { 'at-a-wheel': usually, none: sometimes },
      elsewhere: { elsewhere: usually, none: usually },
    },
  }),

  // After a short: what has been dead, or not itself, since?
  check({
    id: 'dead-since-a-short',
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: ['nothing', 'vehicle', 'unit', 'accessory', 'control'],
    reads: 'dead-since',
    reading: { nothing: 'nothing', vehicle: 'vehicle', unit: 'unit', accessory: 'accessory', control: 'control' },
  }),

  // Does the weather or the room matter?
  // no-matter · warm: on warm days, in the sun, in a heated room · damp: on damp days, in a cold room, or just after glue and water · much-radio: in
  // halls, beside a mast, where many people use radio.
  check({
    id: 'weather',
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.3,
    options: ['no-matter', 'warm', 'damp', 'much-radio', 'cold'],
    reads: 'weather',
    reading: {
      // Whoever says that it comes when it is warm has seen it stay away when it is not: that is no slip of the memory.
      'no-matter': 'no-matter',
      warm: { warm: usually, 'no-matter': sometimes },
      damp: { damp: usually, 'no-matter': sometimes },
      'much-radio': { 'much-radio': usually, 'no-matter': sometimes },
      cold: { cold: usually, 'no-matter': sometimes },
    },
  }),

  // Just after it cut out, or after a while of running: what was hot or clearly warm? Back of the hand, outside only.
  check({
    id: 'which-case-hot',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.2,
    options: ['none', 'unit', 'supply', 'locomotive', 'joint-or-rail', 'wire', 'accessory'],
    reads: 'hot',
    reading: {
      nothing: { none: always, unit: rarely, supply: rarely },
      'joint-or-rail': { 'joint-or-rail': usually, none: sometimes },
      wire: { wire: usually, none: sometimes },
      unit: { unit: always, none: rarely, supply: rarely },
      supply: { supply: always, none: rarely, unit: rarely },
      vehicle: { locomotive: usually, none: sometimes },
      accessory: { accessory: usually, none: sometimes },
      smoking: {
        supply: sometimes,
        unit: sometimes,
        wire: sometimes,
        'joint-or-rail': sometimes,
        locomotive: sometimes,
      },
    },
  }),

  // How it ran on into the part that should be dead, if that was tried.
  // stops: it stopped once its last wheel had left · rolls-on: a hand or two further, its lights or sound going on from stored energy, or by its
  // flywheel · lit-beyond: it drove on as if nothing were cut, and lamps there shine · still-across: another vehicle or a coach of the train was
  // still standing across the gap · fed-already: that part has wires of its own, and they were connected.
  check({
    id: 'how-it-ran-on',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: ['stops', 'rolls-on', 'lit-beyond', 'still-across', 'fed-already'],
    reads: 'unfed-test',
    reading: {
      stops: 'stops',
      'rolls-on': { 'rolls-on': usually, 'lit-beyond': sometimes },
      'lit-beyond': { 'lit-beyond': always, 'rolls-on': rarely },
      'still-across': { 'still-across': usually, 'lit-beyond': sometimes },
      'fed-already': { 'fed-already': usually, 'lit-beyond': sometimes },
    },
  }),
] as const;
