// What a person sees and tries at the gap.

import type { TableLayout } from '../../../src/engine/table/layout.ts';
import type { Situation } from '../complaints.ts';
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
import { atRest, crossed, crossedRound, hasRound, stoodAcross } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { bothLit, gapOf, hasBridge, isQuietAtRest } from './shared.ts';

export const standAcross: Look<'stand-across'> = (asked) => {
  const { layout } = asked;
  if (!isQuietAtRest(layout)) return;
  const { offs, edgeAmps } = acrossTheGap(asked);
  if (offs.length > 0) return 'trips-at-once';
  return edgeAmps > 0.3 ? 'sparks-or-ticks' : 'nothing';
};

/** A locomotive across the gap at which the person meets the trouble. */
export const acrossTheGap = (asked: Situation): Standing =>
  shutdownOf(asked)?.scene === 'round'
    ? standAcrossOn(asked.layout, 'locomotive', 'round')
    : stoodAcross(asked.layout, 'locomotive');

export const twoLamps: Look<'two-lamps'> = (asked) => {
  const { layout } = asked;
  const gap = gapOf(asked);
  if (atRest(layout, 'lifted').offs.length > 0 || !bothLit(layout, gap)) return;
  const { a, b } = gapLamps(layout, ['a', 'b'], gap);
  const bright = [a, b].filter((glow) => glow === 'light' || glow === 'over-bright').length;
  if (layout.stages[1].ownCommands) return 'flickers';
  return bright > 0 ? 'both-light' : 'both-dark';
};

export const swapTrackWires: Look<'swap-track-wires'> = (asked) => {
  const swapped = swappedWires(asked.layout);
  const trips = (layout: TableLayout): 0 | 1 | 2 => {
    if (atRest(layout, 'lifted').offs.length > 0) return 2;
    // Tried with whatever runs: a locomotive that cannot move shows nothing.
    const goesOff = (kind: 'locomotive' | 'long'): boolean =>
      crossed(layout, kind).offs.length > 0 || (hasRound(layout) && crossedRound(layout, kind).offs.length > 0);
    return goesOff('locomotive') || goesOff('long') ? 1 : 0;
  };
  const was = trips(asked.layout);
  const is = trips(swapped);
  if (is > was) return 'worse';
  if (was > 0 && is === 0) return 'cured';
  return 'no-change';
};

export const jointByHand: Look<'joint-by-hand'> = ({ layout }) => {
  if (layout.lengths.dead > 0.03) return 'wide';
  return layout.spots.some(({ kind }) => kind === 'step') ? 'clicks' : 'smooth';
};

/** Which rails of the gaps that were made are not open. */
const closedAtGaps = ({ joins, hasLoop }: TableLayout): 'none' | 'one' | 'both' => {
  const gaps = joins.filter(({ kind, from, to }) => kind === 'gap' && (hasLoop || (from !== 'loop' && to !== 'loop')));
  if (gaps.some(({ ohmsA, ohmsB }) => Number.isFinite(ohmsA) && Number.isFinite(ohmsB))) return 'both';
  return gaps.some(({ ohmsA, ohmsB }) => Number.isFinite(ohmsA) || Number.isFinite(ohmsB)) ? 'one' : 'none';
};

export const listEveryPath: Look<'list-every-path'> = ({ layout }) => {
  if (hasBridge(layout, 'second-track')) return 'joint-forgotten';
  const closed = closedAtGaps(layout);
  if (closed === 'both') return 'touching';
  return closed === 'one' ? 'one-rail-only' : 'all-cut';
};

export const cardThroughGaps: Look<'card-through-gaps'> = ({ layout }) => {
  const closed = closedAtGaps(layout);
  if (closed === 'both') return 'touches';
  return closed === 'one' ? 'not-cut' : 'passes';
};

export const jumper: Look<'jumper-test'> = ({ layout }) => {
  if (atRest(pulled(layout, 1), 'lifted').offs.length > 0) return;
  const { without: alive, joined } = jumperTest(layout);
  if (alive) return 'alive-without';
  return joined.length > 0 ? 'alive-with-one' : 'dead-with-each';
};

export const GAP_ANSWERS = {
  'stand-across': standAcross,
  'two-lamps': twoLamps,
  'swap-track-wires': swapTrackWires,
  'joint-by-hand': jointByHand,
  'list-every-path': listEveryPath,
  'card-through-gaps': cardThroughGaps,
  'jumper-test': jumper,
  'coach-in-far-part': ({ layout }) => coachInUnfedPart(layout),
  'other-locomotive-runs-on': ({ layout }) => (runsIntoUnfed(layout, 'long').runsOn ? 'runs-on' : 'stops'),
} as const satisfies Answered;
