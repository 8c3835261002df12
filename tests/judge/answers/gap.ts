// What a person sees and tries at the gap.

import type { TableLayout } from '../../../src/engine/table/layout.ts';
import type { GAP_CHECKS } from '../../../src/wizards/put-it-right/faults/checks-gap.ts';
import { shutdownOf } from '../complaints.ts';
import { gapLamps } from '../instruments.ts';
import type { Standing } from '../observation.ts';
import {
  coachInUnfedPart,
  jumperTest,
  pulled,
  runsIntoUnfed,
  standAcross as standAcrossOn,
  swappedWires,
} from '../observation.ts';
import { atRest, crossed, crossedRound, hasRound, stoodAcross, volts } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { bothLit, gapOf, hasBridge, isQuietAtRest } from './shared.ts';

const standAcross: Look = (asked) => {
  const { layout } = asked;
  if (!isQuietAtRest(layout)) return;
  const route = shutdownOf(asked)?.scene === 'round' ? 'round' : 'main';
  const { offs, edgeAmps, state } = route === 'main' ? stoodAcross(layout, 'locomotive') : acrossRound(layout);
  if (offs.length > 0) return 'trips-at-once';
  if (!state.lit) return 'stalls';
  if (edgeAmps > 0.3) return 'sparks-or-ticks';
  const gap = gapOf(asked);
  const step = Math.abs(volts(layout, gap.from) - volts(layout, gap.to));
  return bothLit(layout, gap) && step > 0.9 ? 'speed-or-light-changes' : 'nothing';
};

const acrossRound = (layout: TableLayout): Standing => standAcrossOn(layout, 'locomotive', 'round');

/** What crosses joins the two parts as what stands there does, only for less long. */
const sparksAtTheGap: Look = (asked) => {
  const seen = standAcross(asked);
  if (seen === undefined) return;
  return seen === 'sparks-or-ticks' || seen === 'trips-at-once' ? 'spark-or-tick' : 'none';
};

const twoLamps: Look = (asked) => {
  const { layout } = asked;
  const gap = gapOf(asked);
  if (atRest(layout, 'lifted').offs.length > 0 || !bothLit(layout, gap)) return;
  const { a, b } = gapLamps(layout, ['a', 'b'], gap);
  const bright = [a, b].filter((glow) => glow === 'light' || glow === 'over-bright').length;
  if (bright === 2) return 'both-light';
  return bright === 1 ? 'one-lights' : 'both-dark';
};

const swapTrackWires: Look = (asked) => {
  const swapped = swappedWires(asked.layout);
  const trips = (layout: TableLayout): 0 | 1 | 2 => {
    if (atRest(layout, 'lifted').offs.length > 0) return 2;
    return crossed(layout, 'locomotive').offs.length > 0 ||
      (hasRound(layout) && crossedRound(layout, 'locomotive').offs.length > 0)
      ? 1
      : 0;
  };
  const was = trips(asked.layout);
  const is = trips(swapped);
  if (is > was) return 'worse';
  if (was > 0 && is === 0) return 'cured';
  return 'no-change';
};

const jointByHand: Look = ({ layout }) => {
  if (layout.lengths.dead > 0.03) return 'wide';
  return layout.spots.some(({ kind }) => kind === 'step') ? 'clicks' : 'smooth';
};

/** Which rails of the gaps that were made are not open. */
const closedAtGaps = ({ joins, hasLoop }: TableLayout): 'none' | 'one' | 'both' => {
  const gaps = joins.filter(({ kind, from, to }) => kind === 'gap' && (hasLoop || (from !== 'loop' && to !== 'loop')));
  if (gaps.some(({ ohmsA, ohmsB }) => Number.isFinite(ohmsA) && Number.isFinite(ohmsB))) return 'both';
  return gaps.some(({ ohmsA, ohmsB }) => Number.isFinite(ohmsA) || Number.isFinite(ohmsB)) ? 'one' : 'none';
};

const listEveryPath: Look = ({ layout }) => {
  if (hasBridge(layout, 'second-track')) return 'joint-forgotten';
  const closed = closedAtGaps(layout);
  if (closed === 'both') return 'touching';
  return closed === 'one' ? 'one-rail-only' : 'all-cut';
};

const cardThroughGaps: Look = ({ layout }) => {
  const closed = closedAtGaps(layout);
  if (closed === 'both') return 'touches';
  return closed === 'one' ? 'not-cut' : 'passes';
};

const jumper: Look = ({ layout }) => {
  if (atRest(pulled(layout, 1), 'lifted').offs.length > 0) return;
  const { without: alive, joined } = jumperTest(layout);
  if (alive) return 'alive-without';
  return joined.length > 0 ? 'alive-with-one' : 'dead-with-each';
};

const unplugAcross: Look = ({ layout }) => {
  if (hasBridge(layout, 'frog-wire')) return 'frog-wire';
  if (hasBridge(layout, 'detector') || layout.diodeDetector) return 'detector';
  return hasBridge(layout, 'lamp') ? 'lamp-or-decoder' : 'no-change';
};

const followTheRedRail: Look = ({ layout }) => {
  const crossedJoin = layout.joins.some(({ from, to, crossed: is }) => is && from !== 'loop' && to !== 'loop');
  return crossedJoin || layout.hasLoop ? 'meets-the-other' : 'meets-itself';
};

const lampsAtTheJerk: Look = (asked) => {
  const scene = shutdownOf(asked)?.scene;
  if (scene === 'empty' || scene === 'standing') return;
  const there = scene !== undefined && scene !== 'traffic' && scene !== 'evening';
  return there || crossed(asked.layout, asked.layout.usual).offs.length > 0 ? 'blinks' : 'steady';
};

export const GAP_ANSWERS = {
  'stand-across': standAcross,
  'sparks-at-the-gap': sparksAtTheGap,
  'two-lamps': twoLamps,
  'swap-track-wires': swapTrackWires,
  'joint-by-hand': jointByHand,
  'list-every-path': listEveryPath,
  'card-through-gaps': cardThroughGaps,
  'jumper-test': jumper,
  'coach-in-far-part': ({ layout }) => coachInUnfedPart(layout),
  'other-locomotive-runs-on': ({ layout }) => (runsIntoUnfed(layout, 'long').runsOn ? 'runs-on' : 'stops'),
  'unplug-across-boundary': unplugAcross,
  'follow-the-red-rail': followTheRedRail,
  'lamps-at-the-jerk': lampsAtTheJerk,
} as const satisfies Answered<(typeof GAP_CHECKS)[number]['id']>;
