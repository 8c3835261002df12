// Whether power and commands arrive in the far part.
import type { TableLayout } from '../../../src/engine/table/layout.ts';
import type { SIGNAL_CHECKS } from '../../../src/wizards/put-it-right/faults/checks-signal.ts';
import type { Situation } from '../complaints.ts';
import { inFarPart, inPiece, shutdownOf } from '../complaints.ts';
import type { Crossing, VehicleKind } from '../observation.ts';
import { atRest, crossed, crossedRound, emptyState, isNew, throughLoop } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { hasBridge, isQuietAtRest } from './shared.ts';

const vehicleInFarPart: Look = ({ layout }) => (isQuietAtRest(layout) ? inFarPart(layout).state : undefined);

const sameLocomotiveInOldPart: Look = ({ layout }) => {
  if (!isQuietAtRest(layout)) return;
  const state = inPiece(layout, 'old-gap');
  if (state === 'runs-well') return 'obeys';
  return state === 'runs-poorly' ? 'poorly' : 'does-not';
};

const CABLE = {
  good: 'right-and-firm',
  missing: 'missing-or-loose',
  'wrong-socket': 'wrong-socket',
  faulty: 'looks-damaged',
} as const;

/** A fault is reported with no vehicle there. */
const reportsWhenEmpty = (layout: TableLayout): boolean =>
  emptyState(layout, 1) === 'fault' || atRest(layout, 'lifted').offs.length > 0;

const pullControlCable: Look = ({ layout }) => {
  const off = { ...layout, link: { ...layout.link, state: 'missing' } as const };
  if (reportsWhenEmpty(layout)) return reportsWhenEmpty(off) ? 'nothing-changes' : 'fault-clears';
  const was = emptyState(layout, 1);
  const is = emptyState(off, 1);
  return was !== is && is === 'no-signal' && was === 'driving' ? 'goes-dead' : 'nothing-changes';
};

const followEveryWire: Look = ({ layout }) => {
  if (layout.secondSource !== undefined) return 'second-unit';
  if (hasBridge(layout, 'old-wiring')) return 'old-wiring';
  return layout.feeders.some(({ stage, piece }) => stage === 0 && isNew(piece)) ? 'to-other-part' : 'only-ours';
};

const lookAtFeedWires: Look = ({ layout }) => {
  const ours = layout.feeders.filter(({ stage, piece }) => stage === 1 && piece === 'new-gap');
  if (layout.trackPulled[1] || ours.every(({ state }) => state === 'missing')) return 'none-or-unplugged';
  if (ours.some(({ state }) => state === 'programming')) return 'other-socket';
  return ours.some(({ state }) => state === 'broken') ? 'one-loose' : 'both-firm';
};

const longerLocomotive: Look = (asked) => {
  const { layout } = asked;
  if (!isQuietAtRest(layout)) return;
  const { outcome, blinks } = crossingOf(asked)(layout, 'long');
  if (outcome === 'trips') return 'trips';
  return outcome === 'stops' || blinks > 0 ? 'stops-too' : 'crosses';
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
  'look-at-control-cable': ({ layout }) => CABLE[layout.link.state],
  'pull-control-cable': pullControlCable,
  'look-at-feed-piece': ({ layout }) => (layout.capacitor > 0 ? 'capacitor-or-choke' : 'plain'),
  'own-throttle': ({ layout }) => (layout.stages[1].ownCommands ? 'drives-there' : 'has-none'),
  'follow-every-wire': followEveryWire,
  'look-at-feed-wires': lookAtFeedWires,
  'longer-locomotive': longerLocomotive,
} as const satisfies Answered<(typeof SIGNAL_CHECKS)[number]['id']>;
