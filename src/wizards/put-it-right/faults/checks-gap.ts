// What happens at the boundary between the parts: polarity, voltage, both rails really cut, no other path.
import type { CheckRow } from '../../../engine/index.ts';
import {
  CONTACT,
  JOINED,
  LOAD,
  LOOP,
  MISLED,
  NO_SIGNAL,
  PHASE,
  STANDING_SHORT,
  STEP,
  UNFED,
  WHEELS,
} from './groups.ts';
import { always, never, rarely, rows, sometimes, usually } from './likelihood.ts';

export const GAP_CHECKS = [
  // All units on: let one locomotive stand across the gap, some wheels on either side, for a breath.
  // trips-at-once: something goes off · sparks-or-ticks: a spark, ticking or flicker, but it stays on ·
  // speed-or-light-changes: only the light or the speed differs on the two sides · stalls: no light, or it does not move
  // off · nothing: nothing out of the ordinary.
  {
    id: 'stand-across',
    minutes: 2,
    tool: 'eyes',
    risk: 2,
    needs: ['nothing-got-hot', 'parts-agree'],
    options: ['trips-at-once', 'sparks-or-ticks', 'speed-or-light-changes', 'stalls', 'nothing'],
    otherwise: [rarely, rarely, rarely, rarely, always],
    when: rows(
      [[always, rarely, never, never, never], ...PHASE],
      [[sometimes, sometimes, usually, never, rarely], 'supplies-swapped', 'unlike-supplies'],
      [[rarely, rarely, always, never, sometimes], 'low-setting'],
      [[rarely, always, rarely, never, sometimes], 'skew', 'cutout-mismatch'],
      // Two units that send commands of their own are against each other half of the time.
      [[usually, usually, rarely, never, rarely], 'booster-role'],
      [[never, never, never, always, rarely], 'stop-active'],
      [[rarely, rarely, never, usually, sometimes], 'no-reference'],
      [[usually, sometimes, rarely, never, sometimes], 'hidden-common'],
      [[usually, rarely, never, never, sometimes], ...LOOP],
      [[rarely, usually, never, never, sometimes], 'two-auto-reversers'],
      [[usually, rarely, rarely, never, sometimes], 'metal-bodies', 'frog-cross-district', 'program-bridge'],
      [[sometimes, rarely, never, never, usually], ...LOAD, 'inrush', 'supply-hiccup', 'stage-order'],
      [[sometimes, rarely, sometimes, rarely, usually], ...NO_SIGNAL, 'booster-off', 'two-sources'],
      [[never, never, rarely, usually, rarely], 'long-dead-gap', 'pickup'],
      [[never, rarely, rarely, sometimes, usually], 'joint-step', 'dirty', 'feed-missing', 'few-feeds'],
      [[never, rarely, usually, never, sometimes], 'detector-drop'],
      [[sometimes, sometimes, rarely, rarely, usually], ...JOINED, 'gap-closed', 'leftover-wiring', 'wheelset-short'],
      [[never, rarely, rarely, never, always], 'one-rail'],
    ),
  },

  // From memory: as trains crossed the gap, was there a spark, a ticking or a flicker of the lamps there?
  // none · spark-or-tick.
  {
    id: 'sparks-at-the-gap',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['none', 'spark-or-tick'],
    otherwise: [always, rarely],
    when: rows(
      [[rarely, always], ...PHASE, 'skew', 'cutout-mismatch'],
      [[sometimes, usually], 'booster-role', 'two-auto-reversers', 'hidden-common', 'metal-bodies', ...LOOP],
      [[usually, sometimes], 'supplies-swapped', 'unlike-supplies', 'frog-cross-district', ...JOINED, 'dirty'],
    ),
  },

  // Two equal lamps (24 V), one across the gap of each rail, no vehicle near; first show that each part lights a lamp by
  // itself. Which shine?
  // both-dark: both dark or a faint glow · both-light: both clearly light · one-lights: one dark, the other over-bright
  // (take off at once).
  {
    id: 'two-lamps',
    minutes: 5,
    tool: 'lamps',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    options: ['both-dark', 'both-light', 'one-lights'],
    establishes: { 'both-dark': ['parts-agree'] },
    otherwise: [always, rarely, rarely],
    when: rows(
      [[never, always, rarely], ...PHASE],
      [[rarely, usually, rarely], 'booster-role', 'reverse-route'],
      [[sometimes, usually, rarely], 'two-sources', 'loop-no-device', ...NO_SIGNAL],
      [[sometimes, sometimes, sometimes], 'loop-not-isolated', 'two-auto-reversers', 'reverser-grading'],
      [[usually, sometimes, rarely], 'loop-too-short', 'cutout-mismatch'],
      [[usually, rarely, sometimes], ...JOINED],
      // A frog wire to the other rail is a reversed part to the lamps.
      [[sometimes, sometimes, sometimes], 'frog-cross-district'],
      [[always, never, never], ...UNFED, 'one-rail'],
    ),
  },

  // Everything off, vehicles off: swap the two track wires of the new part at its unit, then try again.
  // cured: the trouble is gone · no-change · worse: now it trips at every crossing or already at switching on (then it was
  // right before: swap back).
  {
    id: 'swap-track-wires',
    minutes: 6,
    tool: 'eyes',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    options: ['cured', 'no-change', 'worse'],
    otherwise: [never, usually, sometimes],
    when: rows(
      [[always, rarely, never], ...PHASE],
      [[never, sometimes, usually], ...STEP, 'skew', 'no-reference', 'cutout-mismatch', 'inrush', 'stage-order'],
      [[rarely, sometimes, usually], ...JOINED, 'one-rail', 'hidden-common', 'frog-cross-district', 'booster-role'],
      [[rarely, sometimes, usually], 'reverse-route', 'loop-not-isolated', 'loop-no-device'],
      [[never, always, rarely], ...UNFED, ...NO_SIGNAL, 'crossed-feeder', 'metal-across', 'live-frog'],
      [[usually, sometimes, rarely], 'accessory-polarity'],
    ),
  },

  // Power off: run a fingernail over the joint at the gap, and push a wagon over it by hand.
  // smooth · clicks: it catches or clicks at the joint · wide: the joint or the dead piece is wider than a hand's breadth
  // or than the wheel base of the vehicle that stops.
  {
    id: 'joint-by-hand',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['smooth', 'clicks', 'wide'],
    otherwise: [always, rarely, rarely],
    when: rows(
      [[rarely, always, rarely], 'joint-step'],
      [[sometimes, rarely, usually], 'long-dead-gap'],
      [[usually, sometimes, rarely], 'gap-closed', 'pickup', 'wheel-bridges-frog'],
    ),
  },

  // Go round the boundary with a pencil: every track, both legs of each crossover, hidden tracks, lift-outs, metal bridges.
  // Is each rail cut at each of them?
  // all-cut: both rails at every one · one-rail-only: somewhere only one rail is cut · joint-forgotten: a track or
  // crossover without any gap · touching: cut, but the rail ends touch or a metal joiner still sits there.
  {
    id: 'list-every-path',
    minutes: 8,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['all-cut', 'one-rail-only', 'joint-forgotten', 'touching'],
    otherwise: [always, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, rarely, rarely], 'one-rail'],
      [[sometimes, rarely, usually, rarely], 'forgotten-path'],
      [[sometimes, rarely, rarely, usually], 'gap-closed'],
      [[sometimes, usually, sometimes, rarely], 'loop-not-isolated', 'program-bridge'],
      [[usually, sometimes, rarely, rarely], 'frog-cross-district', 'live-frog'],
    ),
  },

  // Power off: a thin card must pass through every gap that is known, in both rails. Press the rails sideways while doing so.
  // passes · touches: at one gap it does not pass · not-cut: at one of them a rail was never cut.
  {
    id: 'card-through-gaps',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['passes', 'touches', 'not-cut'],
    otherwise: [always, rarely, rarely],
    when: rows(
      [[rarely, always, rarely], 'gap-closed'],
      [[rarely, rarely, always], 'one-rail'],
      [[sometimes, rarely, usually], 'loop-not-isolated'],
      [[usually, rarely, sometimes], 'forgotten-path'],
      [[usually, rarely, sometimes], 'program-bridge', 'live-frog'],
    ),
  },

  // Jumper test: the far part's track plug is pulled; a lit vehicle without stored energy stands wholly in the far part.
  // Clip a wire across the gap of rail A only, look; then of rail B only, look.
  // dead-with-each: it stays dark both times · alive-with-one: it comes alive with one of the two clips (the other rail is
  // not cut) · alive-without: it is alive without any clip.
  {
    id: 'jumper-test',
    minutes: 6,
    tool: 'wire',
    risk: 1,
    needs: ['power-off'],
    options: ['dead-with-each', 'alive-with-one', 'alive-without'],
    otherwise: [always, rarely, rarely],
    when: rows(
      [[rarely, always, rarely], 'one-rail'],
      [[rarely, sometimes, always], 'old-feeder-left'],
      [[rarely, usually, usually], 'forgotten-path', 'gap-closed'],
      [[sometimes, usually, rarely], 'shared-wire', 'loop-not-isolated'],
      [[usually, usually, rarely], 'frog-cross-district'],
      [[sometimes, sometimes, sometimes], 'leftover-wiring', 'detector-false', 'program-bridge'],
      [[sometimes, rarely, usually], 'two-sources'],
      [[sometimes, rarely, sometimes], 'wrong-output'],
    ),
  },

  // The far part's track plug is pulled, nothing stands across the gap: put a lit coach wholly into the far part.
  // dark · faint: a faint glow · lit.
  {
    id: 'coach-in-far-part',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['dark', 'faint', 'lit'],
    otherwise: [always, rarely, never],
    when: rows(
      [[sometimes, rarely, usually], ...JOINED],
      [[rarely, never, always], 'old-feeder-left'],
      [[sometimes, usually, sometimes], 'shared-wire'],
      [[usually, sometimes, rarely], 'detector-false', 'frog-cross-district'],
      [[sometimes, rarely, sometimes], 'leftover-wiring', 'two-sources'],
      [[always, never, never], 'one-rail', ...UNFED, ...MISLED],
    ),
  },

  // Pull the far part's track plug with everything off. Then let another locomotive, without stored energy or flywheel, run
  // towards that part.
  // stops: it stops once its last wheel has left · runs-on. (It stops with one rail cut as well: this shows only that not
  // both rails are joined.)
  {
    id: 'other-locomotive-runs-on',
    minutes: 4,
    tool: 'second-locomotive',
    risk: 0,
    needs: ['power-off'],
    options: ['stops', 'runs-on'],
    otherwise: [always, rarely],
    when: rows(
      [[rarely, always], 'old-feeder-left'],
      [[sometimes, usually], 'forgotten-path', 'gap-closed'],
      [[usually, sometimes], 'shared-wire', 'frog-cross-district', 'leftover-wiring', 'two-sources'],
      [[always, never], 'stored-energy', 'one-rail', 'already-fed'],
      [[usually, sometimes], 'still-straddling'],
    ),
  },

  // Everything off: unplug, one after the other, what could reach across the boundary, and try again each time.
  // no-change · detector: well without a detector or its lamp module · lamp-or-decoder: well without a lamp or a decoder
  // wired across · frog-wire: well without a turnout's frog wire or polarity switch.
  {
    id: 'unplug-across-boundary',
    minutes: 8,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    options: ['no-change', 'detector', 'lamp-or-decoder', 'frog-wire'],
    otherwise: [always, rarely, rarely, rarely],
    when: rows(
      [[rarely, always, rarely, never], 'detector-false', 'detector-drop'],
      [[rarely, sometimes, usually, never], 'shared-wire'],
      [[rarely, never, rarely, always], 'frog-cross-district'],
      [[usually, rarely, never, sometimes], 'live-frog', 'moving-contact', 'leftover-wiring'],
    ),
  },

  // Mark one rail with red tape beside the track, from the feed right round every route, through the gap and back.
  // meets-itself: the red rail always meets the red rail · meets-the-other: by some route it meets the other rail.
  {
    id: 'follow-the-red-rail',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['meets-itself', 'meets-the-other'],
    otherwise: [always, rarely],
    when: rows(
      [[rarely, always], 'reverse-route', 'loop-no-device', 'loop-not-isolated', 'reverser-grading'],
      [[rarely, always], 'loop-too-short', 'two-auto-reversers'],
      [[usually, sometimes], 'crossed-feeder'],
    ),
  },

  // With power on and the locomotive at the gap, watch the lamps of both units at the very instant of the jerk or stop.
  // steady: no lamp moves · blinks: a unit's lamp blinks or changes.
  {
    id: 'lamps-at-the-jerk',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    options: ['steady', 'blinks'],
    otherwise: [usually, sometimes],
    when: rows(
      [
        [always, rarely],
        ...CONTACT,
        'dead-joint',
        'few-feeds',
        'low-setting',
        'detector-drop',
        'address',
        'no-reference',
      ],
      [[rarely, always], ...PHASE, ...STANDING_SHORT, 'loop-no-device', 'loop-not-isolated', 'reverser-grading'],
      [
        [rarely, usually],
        ...WHEELS,
        'reverse-route',
        'two-auto-reversers',
        'loop-too-short',
        'inrush',
        'supply-hiccup',
      ],
      [[sometimes, usually], 'booster-role', 'cutout-mismatch', 'hidden-common', 'frog-cross-district', 'stage-order'],
      [[usually, rarely], ...UNFED, ...NO_SIGNAL, 'suppressor', 'long-bus'],
    ),
  },
] as const satisfies readonly CheckRow[];
