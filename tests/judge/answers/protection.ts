// What protection and reversing sections show.
import type { PieceId, TableLayout } from '../../../src/engine/table/layout.ts';
import type { PROTECTION_CHECKS } from '../../../src/wizards/put-it-right/faults/checks-protection.ts';
import { shutdownOf } from '../complaints.ts';
import { coinTest, loadTest } from '../instruments.ts';
import { atRest, throughLoop, volts } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';

/** Clearly weaker under the resistor, as a share. */
const SAGS = 0.11;

const sag = (layout: TableLayout, piece: PieceId): number => {
  const { idle, loaded } = loadTest(layout, piece);
  return idle > 3 ? 1 - loaded / idle : 0;
};

const loadTestAnswer: Look = ({ layout }) => {
  const dead = Math.min(volts(layout, 'new-gap'), volts(layout, 'new-far')) < 5;
  if (dead || atRest(layout, 'lifted').offs.length > 0) return;
  if (sag(layout, 'new-gap') > SAGS) return 'weak-everywhere';
  return Math.max(sag(layout, 'new-mid'), sag(layout, 'new-far')) > SAGS ? 'weak-far' : 'firm-everywhere';
};

const coin =
  (piece: PieceId, late: string): Look =>
  ({ layout }) => {
    if (volts(layout, piece) < 5 || atRest(layout, 'lifted').offs.length > 0) return;
    const { trips } = coinTest(layout, piece);
    if (trips === undefined) return 'stays-on';
    if (trips.stage === 0) return late === 'off-late' ? 'wrong-one' : undefined;
    return trips.seconds >= 0.5 ? late : 'off-at-once';
  };

const shortThroughLoop: Look = ({ layout }) => {
  if (!layout.hasLoop) return 'no-loop';
  const { outcome, front, offs } = throughLoop(layout, 'locomotive');
  if (offs.length === 0) return outcome === 'crosses' ? 'fine' : undefined;
  if (layout.vehicles.locomotive.wheelShort === 'at-frog') return 'trips-at-turnout';
  return front < 0.5 * layout.lengths.loop ? 'trips-entering' : 'trips-leaving';
};

const whatReverses: Look = ({ layout }) => {
  if (!layout.hasLoop) return 'no-loop';
  if (layout.partReverser.kind === 'automatic') return 'two-neighbours';
  return layout.loopReverser.kind === 'none' ? 'none' : 'automatic';
};

const doesItReverse: Look = ({ layout }) => {
  if (!layout.hasLoop || layout.loopReverser.kind === 'none') return 'none-there';
  const { reversals, offs } = throughLoop(layout, layout.usual);
  if (reversals === 0) return 'silent';
  if (reversals > 2) return 'chatters';
  return offs.length > 0 ? 'acts-but-off' : 'acts-and-passes';
};

/** Handsets live on the command station: they start anew with it. */
const whatElseHappens: Look = (asked) => {
  const offs = shutdownOf(asked)?.offs ?? [];
  return offs.some(({ stage, kind }) => stage === 0 && kind !== 'trip' && kind !== 'hot')
    ? 'handsets-restart'
    : 'nothing';
};

const accessoriesAreWell =
  (option: string): Look =>
  ({ complaint }) =>
    complaint === 'accessories-misbehave' ? undefined : option;

export const PROTECTION_ANSWERS = {
  'load-test': loadTestAnswer,
  'coin-near': coin('new-gap', 'off-late'),
  'coin-far': coin('new-far', 'off-at-once'),
  'short-locomotive-through-loop': shortThroughLoop,
  'what-reverses': whatReverses,
  'does-it-reverse': doesItReverse,
  'accessories-without-trains': accessoriesAreWell('not-affected'),
  'accessory-moment': accessoriesAreWell('at-random'),
  'one-accessory-or-all': accessoriesAreWell('none'),
  'what-else-happens': whatElseHappens,
} as const satisfies Answered<(typeof PROTECTION_CHECKS)[number]['id']>;
