// What protection and reversing sections show.
import type { PieceId, TableLayout } from '../../../src/engine/table/layout.ts';
import { coinTest, loadTest } from '../instruments.ts';
import { atRest, volts } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';

/** Clearly weaker under the resistor, as a share. */
const SAGS = 0.11;

const sag = (layout: TableLayout, piece: PieceId): number => {
  const { idle, loaded } = loadTest(layout, piece);
  return idle > 3 ? 1 - loaded / idle : 0;
};

export const loadTestAnswer: Look<'load-test'> = ({ layout }) => {
  const dead = Math.min(volts(layout, 'new-gap'), volts(layout, 'new-far')) < 5;
  if (dead || atRest(layout, 'lifted').offs.length > 0) return;
  if (sag(layout, 'new-gap') > SAGS) return 'weak-everywhere';
  return Math.max(sag(layout, 'new-mid'), sag(layout, 'new-far')) > SAGS ? 'weak-far' : 'firm-everywhere';
};

/** What goes off under a coin, undefined where nothing can be tried. */
const underCoin = (layout: TableLayout, piece: PieceId): ReturnType<typeof coinTest> | undefined =>
  volts(layout, piece) < 5 || atRest(layout, 'lifted').offs.length > 0 ? undefined : coinTest(layout, piece);

export const coinNear: Look<'coin-near'> = ({ layout }) => {
  const found = underCoin(layout, 'new-gap');
  if (found === undefined) return;
  if (found.trips === undefined) return 'stays-on';
  if (found.trips.stage === 0) return 'wrong-one';
  return found.trips.seconds >= 0.5 ? 'off-late' : 'off-at-once';
};

export const coinFar: Look<'coin-far'> = ({ layout }) => {
  const found = underCoin(layout, 'new-far');
  if (found === undefined) return;
  return found.trips === undefined ? 'stays-on' : 'off-at-once';
};

export const whatReverses: Look<'what-reverses'> = ({ layout }) => {
  if (!layout.hasLoop) return 'none';
  if (layout.partReverser.kind === 'automatic') return 'two-neighbours';
  return layout.loopReverser.kind === 'none' ? 'none' : 'automatic';
};

export const PROTECTION_ANSWERS = {
  'load-test': loadTestAnswer,
  'coin-near': coinNear,
  'coin-far': coinFar,
  'what-reverses': whatReverses,
} as const satisfies Answered;
