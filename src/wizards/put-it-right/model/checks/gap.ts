// What happens at the gap: are both rails cut, do the two sides agree, what else joins them?
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const GAP_CHECKS = [
  // Only after lamps or a meter: all units on, let one locomotive stand across the gap, some wheels on either side, for a breath.
  // trips-at-once: something goes off · sparks-or-ticks: a spark, ticking or flicker, but it stays on · nothing: nothing out of the ordinary.
  check({
    id: 'stand-across',
    minutes: 2,
    tool: 'eyes',
    risk: 2,
    needs: ['nothing-got-hot', 'parts-agree'],
    source: 'eye',
    options: ['trips-at-once', 'sparks-or-ticks', 'nothing'],
    reads: 'sides',
    reading: {
      // They agree, and yet it sparks where their volts differ.
      agree: { nothing: always, 'sparks-or-ticks': sometimes },
      reversed: { 'trips-at-once': always, 'sparks-or-ticks': rarely },
      drift: { 'sparks-or-ticks': usually, 'trips-at-once': sometimes, nothing: sometimes },
      changes: { nothing: usually, 'sparks-or-ticks': usually, 'trips-at-once': sometimes },
    },
  }),

  // Two equal lamps (24 V), one across the gap of each rail, no vehicle near; first show that each part lights a lamp by itself. Which shine?
  // both-dark: both dark or a faint glow · both-light: they shine clearly, or one far too bright (take off at once) · flickers: now and then, or
  // changing as a polarity switcher acts.
  check({
    id: 'two-lamps',
    minutes: 5,
    tool: 'lamps',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    source: 'instrument',
    establishes: { 'both-dark': ['parts-agree'] },
    options: ['both-dark', 'both-light', 'flickers'],
    reads: 'sides',
    reading: {
      agree: 'both-dark',
      reversed: { 'both-light': always, 'both-dark': rarely },
      drift: { flickers: usually, 'both-dark': usually, 'both-light': rarely },
      changes: { 'both-dark': usually, 'both-light': usually, flickers: sometimes },
    },
  }),

  // Everything off, vehicles off: swap the two track wires of the new part at its unit, then try again.
  // cured: the trouble is gone · no-change · worse: now it trips at every crossing or already at switching on (then it was right before: swap back).
  check({
    id: 'swap-track-wires',
    minutes: 6,
    tool: 'eyes',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    source: 'eye',
    options: ['cured', 'no-change', 'worse'],
    reads: 'swap',
    reading: {
      'no-change': 'no-change',
      cured: { cured: always, 'no-change': rarely },
      worse: { worse: always, 'no-change': rarely },
    },
  }),

  // Go round the boundary with a pencil: every track, both legs of each crossover, hidden tracks, lift-outs, metal bridges. Is each rail cut at
  // each of them?
  // all-cut: both rails at every one · one-rail-only: somewhere only one rail is cut · joint-forgotten: a track or crossover without any gap ·
  // touching: cut, but the rail ends touch or a metal joiner still sits there.
  check({
    id: 'list-every-path',
    minutes: 8,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['all-cut', 'one-rail-only', 'joint-forgotten', 'touching'],
    reads: 'cut',
    reading: {
      // Who goes along every rail with a pencil overlooks no cut that is there, or has slipped.
      'both-cut': 'all-cut',
      'one-joined': { 'one-rail-only': always, touching: rarely, 'all-cut': rarely },
      'both-joined': { 'joint-forgotten': usually, 'all-cut': sometimes, touching: rarely },
      'faintly-joined': 'all-cut',
      // A sliver is hard to see.
      touching: { touching: usually, 'all-cut': usually, 'one-rail-only': rarely },
    },
  }),

  // Power off: a thin card must pass through every gap that is known, in both rails. Press the rails sideways while doing so.
  // passes · touches: at one gap it does not pass · not-cut: at one of them a rail was never cut.
  check({
    id: 'card-through-gaps',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['passes', 'touches', 'not-cut'],
    reads: 'cut',
    reading: {
      'both-cut': 'passes',
      'one-joined': { 'not-cut': usually, touches: sometimes, passes: sometimes },
      // Mostly by a way that has no gap at all.
      'both-joined': { passes: usually, 'not-cut': sometimes, touches: sometimes },
      'faintly-joined': 'passes',
      touching: { touches: always, passes: rarely },
    },
  }),

  // Jumper test: the new part's track plug is pulled; a lit vehicle without stored energy stands wholly in it. Clip a wire across the gap of rail A
  // only, look; then of rail B only, look.
  // dead-with-each: it stays dark both times · alive-with-one: it comes alive with one of the two clips (the other rail is not cut) ·
  // alive-without: it is alive without any clip.
  check({
    id: 'jumper-test',
    minutes: 6,
    tool: 'wire',
    risk: 1,
    needs: ['power-off'],
    source: 'instrument',
    options: ['dead-with-each', 'alive-with-one', 'alive-without'],
    reads: 'cut',
    reading: {
      'both-cut': 'dead-with-each',
      'one-joined': { 'alive-with-one': always, 'dead-with-each': rarely },
      'both-joined': 'alive-without',
      'faintly-joined': { 'dead-with-each': usually, 'alive-without': rarely },
      touching: { 'alive-with-one': usually, 'dead-with-each': sometimes, 'alive-without': sometimes },
    },
  }),

  // The new part's track plug is pulled, nothing stands across the gap: put a coach with filament lamps wholly into it.
  // dark · faint: a faint glow · lit.
  check({
    id: 'coach-in-far-part',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'instrument',
    options: ['dark', 'faint', 'lit'],
    reads: 'cut',
    reading: {
      'both-cut': 'dark',
      'one-joined': 'dark',
      'both-joined': { lit: always, faint: rarely },
      'faintly-joined': { faint: always, dark: sometimes },
      touching: { dark: usually, lit: sometimes },
    },
  }),

  // Pull that part's track plug with everything off. Then let another locomotive, without stored energy or flywheel, run towards it.
  // stops: it stops once its last wheel has left · runs-on. (It stops with one rail cut as well: this shows only that not both rails are joined.)
  check({
    id: 'other-locomotive-runs-on',
    minutes: 4,
    tool: 'second-locomotive',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['stops', 'runs-on'],
    reads: 'unfed-test',
    reading: {
      stops: 'stops',
      'rolls-on': { stops: always, 'runs-on': rarely },
      'lit-beyond': 'runs-on',
      'still-across': { stops: always, 'runs-on': rarely },
      // Now its plug is out.
      'fed-already': { stops: always, 'runs-on': rarely },
    },
  }),

  // Everything off: unplug, one after the other, what could reach across the boundary, and try again each time.
  // no-change · detector: well without a detector or its lamp module · lamp-or-decoder: well without a lamp or a decoder wired across · frog-wire:
  // well without a turnout's frog wire or polarity switch.
  check({
    id: 'unplug-across-boundary',
    minutes: 8,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['no-change', 'detector', 'lamp-or-decoder', 'frog-wire'],
    reads: 'unplugging',
    reading: {
      'no-change': 'no-change',
      detector: { detector: always, 'no-change': rarely },
      'lamp-or-decoder': { 'lamp-or-decoder': always, 'no-change': rarely },
      'frog-wire': { 'frog-wire': always, 'no-change': rarely },
    },
  }),

  // Mark one rail with red tape beside the track, from the feed right round every route, through the gap and back.
  // meets-itself: the red rail always meets the red rail · meets-the-other: by some route it meets the other rail.
  check({
    id: 'follow-the-red-rail',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['meets-itself', 'meets-the-other'],
    reads: 'red-rail',
    reading: {
      'meets-itself': { 'meets-itself': always, 'meets-the-other': rarely },
      'meets-the-other': { 'meets-the-other': always, 'meets-itself': rarely },
    },
  }),

  // From memory: the lamps of the units at the very instant of the jerk or stop.
  // steady: no lamp moved · blinks: a unit's lamp blinked or changed.
  check({
    id: 'lamps-at-the-jerk',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.4,
    options: ['steady', 'blinks'],
    reads: 'unit-shows',
    reading: {
      ready: { steady: always, blinks: rarely },
      dark: { steady: usually, blinks: sometimes },
      fault: { blinks: always, steady: rarely },
      'no-signal': { steady: usually, blinks: usually },
      restarts: 'blinks',
      stopped: { steady: usually, blinks: sometimes },
      'only-breaker': { steady: usually, blinks: sometimes },
      code: { blinks: always, steady: rarely },
    },
  }),

  // Power off: run a fingernail over the joint at the gap, and push a wagon over it by hand.
  // smooth · clicks: it catches or clicks at the joint · wide: the joint or the dead piece is wider than a hand's breadth or than the wheel base of
  // the vehicle that stops.
  check({
    id: 'joint-by-hand',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['smooth', 'clicks', 'wide'],
    reads: 'contact',
    reading: {
      good: { smooth: always, clicks: rarely },
      dirty: { smooth: always, clicks: rarely },
      'plain-step': { clicks: always, smooth: rarely },
      wide: { wide: always, smooth: sometimes },
      flickers: { smooth: usually, clicks: sometimes },
      // A plastic joiner is often a little wide.
      insulated: { smooth: always, wide: sometimes, clicks: sometimes },
    },
  }),
] as const;
