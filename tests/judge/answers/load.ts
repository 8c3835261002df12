// What load, track and vehicles show.

import type { PieceId, TableFeeder, TableLayout } from '../../../src/engine/table/layout.ts';
import type { Situation } from '../complaints.ts';
import { inFarPart, inPiece, isFed, runsBeyond, shutdownOf } from '../complaints.ts';
import { across, bridged, ohmsBetween } from '../instruments.ts';
import type { VehicleKind } from '../observation.ts';
import { bothRails, eachAlone } from '../observation.ts';
import { again, atRest, isNew, ranIn, restState, thrown } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { isCured, isHungry, isQuietAtRest, terminalOf, without } from './shared.ts';

/** Before it cuts out. */
export const dimOrSnap = (asked: Situation): 'dims-first' | 'snaps-off' | 'neither' => {
  const off = shutdownOf(asked);
  if (off === undefined) return asked.complaint === 'slow-far-away' ? 'dims-first' : 'neither';
  const [first] = off.offs;
  if (first === undefined) return 'neither';
  const { limits, mainsOhms } = asked.layout.supplies[first.stage];
  const sags = first.kind === 'restart' && (limits === 'holds-current' || mainsOhms > 0);
  return sags ? 'dims-first' : 'snaps-off';
};

export const halveTheTrains: Look<'halve-the-trains'> = (asked) => {
  const { layout } = asked;
  const off = shutdownOf(asked);
  if (off === undefined) return;
  const { wheelShort } = layout.vehicles.locomotive;
  if (wheelShort !== undefined || (off.vehicle !== undefined && layout.vehicles[off.vehicle].wheelShort !== undefined))
    return 'one-alone-does-it';
  if (
    isCured(
      asked,
      without(layout, ({ kind }) => kind === 'coaches'),
    ) &&
    layout.consumers.some(({ kind }) => kind === 'coaches')
  )
    return 'lit-coaches';
  if (isHungry(layout)) return 'one-alone-does-it';
  return isCured(
    asked,
    without(layout, (_, i) => i % 2 === 0),
  )
    ? 'cured'
    : 'no-change';
};

export const moveTrainsOver: Look<'move-trains-over'> = (asked) => {
  const off = shutdownOf(asked);
  if (off === undefined) return;
  const from = off.offs[0]?.stage ?? 1;
  const to: PieceId = from === 1 ? 'old-far' : 'new-mid';
  const { layout } = asked;
  const consumers = layout.consumers.map((consumer, i) =>
    isNew(consumer.piece) === (from === 1) && i % 2 === 0 ? { ...consumer, piece: to } : consumer,
  );
  if (isHungry(layout) || Object.values(layout.vehicles).some(({ wheelShort }) => wheelShort !== undefined))
    return 'moves-along';
  const after = again({ ...layout, consumers }, off);
  if (after.length === 0) return 'cured';
  return after[0]?.stage === from ? 'no-change' : 'moves-along';
};

export const liftAllVehicles: Look<'lift-all-vehicles'> = (asked) => {
  const { layout } = asked;
  const off = shutdownOf(asked);
  if (off?.scene === 'empty' || off?.scene === 'thrown') return 'still-there';
  if (isHungry(layout)) return 'one-brings-it-back';
  if (Object.values(layout.vehicles).some(({ wheelShort }) => wheelShort !== undefined)) return 'one-brings-it-back';
  return 'all-well';
};

export const throwTurnouts: Look<'throw-turnouts'> = (asked) => {
  const other = thrown(asked.layout);
  const rests = (layout: TableLayout): boolean => atRest(layout, 'lifted').offs.length === 0;
  const off = shutdownOf(asked);
  const isOnce = off !== undefined && off.scene !== 'thrown' && again(other, off).length === 0;
  if (off?.scene === 'thrown' || isOnce || (!rests(asked.layout) && rests(other))) return 'trouble-clears';
  if (inFarPart(asked.layout).state === 'dark' && rests(asked.layout) && inFarPart(other).state !== 'dark')
    return 'part-comes-alive';
  return 'no-change';
};

/** Whether the short goes with one certain pair of wires. */
export const helpingFeeder = (layout: TableLayout): boolean => {
  const pairs = [...new Set(layout.feeders.map(({ stage, piece }) => `${stage} ${piece}`))];
  const isGone = (pair: string): boolean => {
    const feeders = layout.feeders.filter(({ stage, piece }) => `${stage} ${piece}` !== pair);
    return atRest({ ...layout, feeders }, 'lifted').offs.length === 0;
  };
  return pairs.filter(isGone).length === 1;
};

export const unclipFeeders: Look<'unclip-feeders'> = ({ layout }) =>
  atRest(layout, 'lifted').offs.length > 0 && helpingFeeder(layout) ? 'one-feeder' : 'no-change';

export const lampInSeries: Look<'lamp-in-series'> = ({ layout }) => {
  if (layout.secondSource !== undefined) return;
  const joinedReversed = eachAlone(layout).second.length === 0 && atRest(layout, 'lifted').offs.length > 0;
  const ohms = ohmsBetween(layout, ...bothRails('new-gap'), 1);
  const share = 7 / (7 + ohms);
  if (share > 0.5 || (joinedReversed && isFed(layout))) return 'bright';
  return share > 0.04 ? 'faint' : 'dark';
};

export const middleJoin = (layout: TableLayout) =>
  layout.joins.find(({ from, to }) => from === 'new-mid' && to === 'new-far');

export const pressTheJoiners: Look<'press-the-joiners'> = ({ layout }) => {
  const join = middleJoin(layout);
  return join !== undefined && Math.max(join.ohmsA, join.ohmsB) > 4 * Math.min(join.ohmsA, join.ohmsB)
    ? 'flickers'
    : 'no-change';
};

const farVolts = (layout: TableLayout): number => ranIn(layout, 'new-far').volts;

const isBetter = (is: number, was: number): boolean => is > 5 && is > 1.05 * was;

export const bridgeTheJoiner: Look<'bridge-the-joiner'> = ({ layout }) => {
  const over = (['a', 'b'] as const).map((rail) => across('jumper', ['new-mid', rail], ['new-far', rail], 0.05));
  const best = Math.max(...over.map((clip) => farVolts(bridged(layout, clip))));
  const was = farVolts(layout);
  const join = middleJoin(layout);
  const oneSided = join !== undefined && Math.max(join.ohmsA, join.ohmsB) > 4 * Math.min(join.ohmsA, join.ohmsB);
  return isBetter(best, was) && (oneSided || was < 5) ? 'alive-or-better' : 'no-change';
};

const extraFeed = (layout: TableLayout, piece: PieceId, rails: readonly ('a' | 'b')[], ohms: number): TableLayout => ({
  ...layout,
  feeders: [
    ...layout.feeders,
    ...rails.map(
      (rail): TableFeeder => ({ stage: 1, terminal: terminalOf(layout, rail), piece, rail, ohms, state: 'firm' }),
    ),
  ],
});

export const clipPowerToRails: Look<'clip-power-to-rails'> = ({ layout }) => {
  if (!isQuietAtRest(layout)) return;
  const { state, piece } = inFarPart(layout);
  if (state !== 'dark') return 'stays-dead';
  if (layout.trackPulled[1] || restState(layout, 1) === 'stopped') return 'stays-dead';
  const alive = (rails: readonly ('a' | 'b')[]): boolean =>
    inPiece(extraFeed(layout, piece, rails, 0.05), piece) !== 'dark';
  if (alive(['a']) || alive(['b'])) return 'one-rail-lacks';
  return alive(['a', 'b']) ? 'both-lack' : 'stays-dead';
};

export const clipThickPair: Look<'clip-thick-pair'> = ({ layout }) =>
  isBetter(farVolts(extraFeed(layout, 'new-far', ['a', 'b'], 0.02)), farVolts(layout)) ? 'better' : 'no-change';

export const clipAlongTheBus: Look<'clip-along-the-bus'> = ({ layout }) => {
  const feeders = layout.feeders.map((feeder) =>
    feeder.stage === 1 ? { ...feeder, ohms: 0.15 * feeder.ohms } : feeder,
  );
  return isBetter(farVolts({ ...layout, feeders }), farVolts(layout)) ? 'better' : 'no-change';
};

/** Vehicles set apart and driven one by one over the place where it happens. */
export const uncouple: Look<'uncouple'> = (asked) => {
  const off = shutdownOf(asked);
  const { layout } = asked;
  const kind = off?.vehicle ?? layout.usual;
  if (off === undefined) return kind === 'rake' && !runsBeyond(layout, 'locomotive') ? 'well-apart' : 'no-change';
  const by = (one: VehicleKind): boolean => again(layout, { ...off, vehicle: one }).length > 0;
  if (!by('locomotive')) return kind === 'rake' ? 'well-apart' : 'was-alone';
  return by('long') ? 'no-change' : 'was-alone';
};

export const LOAD_ANSWERS = {
  'dim-or-snap': dimOrSnap,
  'halve-the-trains': halveTheTrains,
  'move-trains-over': moveTrainsOver,
  'lift-all-vehicles': liftAllVehicles,
  'throw-turnouts': throwTurnouts,
  'unclip-feeders': unclipFeeders,
  'lamp-in-series': lampInSeries,
  'clean-a-stretch': ({ layout }) => (layout.spots.some(({ kind }) => kind === 'dirty') ? 'better' : 'no-change'),
  'press-the-joiners': pressTheJoiners,
  'bridge-the-joiner': bridgeTheJoiner,
  'clip-power-to-rails': clipPowerToRails,
  'clip-thick-pair': clipThickPair,
  'clip-along-the-bus': clipAlongTheBus,
  uncouple,
} as const satisfies Answered;
