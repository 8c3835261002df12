// Whether power and commands arrive in the far part.
import type { TableLayout } from '../../../src/engine/table/layout.ts';
import type { Situation } from '../complaints.ts';
import { inFarPart, inPiece, shutdownOf } from '../complaints.ts';
import type { Crossing, VehicleKind } from '../observation.ts';
import { atRest, crossed, crossedRound, emptyState, throughLoop } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { isQuietAtRest } from './shared.ts';

export const vehicleInFarPart: Look<'vehicle-in-far-part'> = ({ layout }) =>
  isQuietAtRest(layout) ? inFarPart(layout).state : undefined;

export const sameLocomotiveInOldPart: Look<'same-locomotive-in-old-part'> = ({ layout }) => {
  if (!isQuietAtRest(layout)) return;
  const state = inPiece(layout, 'old-gap');
  if (state === 'runs-well') return 'obeys';
  return state === 'runs-poorly' ? 'poorly' : 'does-not';
};

/** A fault is reported with no vehicle there. */
const reportsWhenEmpty = (layout: TableLayout): boolean =>
  emptyState(layout, 1) === 'fault' || atRest(layout, 'lifted').offs.length > 0;

export const pullControlCable: Look<'pull-control-cable'> = ({ layout }) => {
  const off = { ...layout, link: { ...layout.link, state: 'missing' } as const };
  if (reportsWhenEmpty(layout)) return 'nothing-changes';
  const was = emptyState(layout, 1);
  const is = emptyState(off, 1);
  return was !== is && is === 'no-signal' && was === 'driving' ? 'goes-dead' : 'nothing-changes';
};

export const longerLocomotive: Look<'longer-locomotive'> = (asked) => {
  const { layout } = asked;
  if (!isQuietAtRest(layout)) return;
  const { outcome, blinks } = crossingOf(asked)(layout, 'long');
  return outcome !== 'crosses' || blinks > 0 ? 'stops-too' : 'crosses';
};

/** The way on which the person meets the trouble. */
const crossingOf = (asked: Situation): ((layout: TableLayout, kind: VehicleKind) => Crossing) => {
  const scene = shutdownOf(asked)?.scene;
  if (scene === 'round') return crossedRound;
  return scene === 'loop' ? throughLoop : crossed;
};

export const SIGNAL_ANSWERS = {
  'vehicle-in-far-part': vehicleInFarPart,
  'same-locomotive-in-old-part': sameLocomotiveInOldPart,
  'pull-control-cable': pullControlCable,
  'own-throttle': ({ layout }) => (layout.stages[1].ownCommands ? 'drives-there' : 'does-not'),
  'longer-locomotive': longerLocomotive,
} as const satisfies Answered;
