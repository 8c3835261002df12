// What load, track and vehicles show.

import type { PieceId, TableFeeder, TableLayout } from '../../../src/engine/table/layout.ts';
import type { LOAD_CHECKS } from '../../../src/wizards/put-it-right/faults/checks-load.ts';
import { inFarPart, inPiece, isFed, isWeakVehicle, NEW_PIECES, runsBeyond, shutdownOf } from '../complaints.ts';
import { across, bridged, ohmsBetween } from '../instruments.ts';
import { bothRails, coachInUnfedPart, eachAlone } from '../observation.ts';
import { again, atRest, drops, isNew, ranIn, restState, stoodIn, thrown } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { hasBridge, isCured, isHungry, isQuietAtRest, terminalOf, without } from './shared.ts';

const dimOrSnap: Look = (asked) => {
  const off = shutdownOf(asked);
  if (off === undefined) return asked.complaint === 'slow-far-away' ? 'dims-first' : 'neither';
  const [first] = off.offs;
  if (first === undefined) return 'neither';
  const { limits, mainsOhms } = asked.layout.supplies[first.stage];
  const sags = first.kind === 'restart' && (limits === 'holds-current' || mainsOhms > 0);
  return sags ? 'dims-first' : 'snaps-off';
};

const halveTheTrains: Look = (asked) => {
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

const moveTrainsOver: Look = (asked) => {
  const off = shutdownOf(asked);
  if (off === undefined) return;
  const from = off.offs[0]?.stage ?? 1;
  const to: PieceId = from === 1 ? 'old-far' : 'new-mid';
  const { layout } = asked;
  const consumers = layout.consumers.map((consumer, i) =>
    isNew(consumer.piece) === (from === 1) && i % 2 === 0 ? { ...consumer, piece: to } : consumer,
  );
  if (isHungry(layout) || layout.vehicles.locomotive.wheelShort === 'always') return 'moves-along';
  const after = again({ ...layout, consumers }, off);
  if (after.length === 0) return 'cured';
  return after[0]?.stage === from ? 'no-change' : 'moves-along';
};

const liftAllVehicles: Look = (asked) => {
  const { layout } = asked;
  const off = shutdownOf(asked);
  if (off === undefined) return;
  if (off.scene === 'empty' || off.scene === 'thrown') return 'still-there';
  if (isHungry(layout)) return 'one-brings-it-back';
  if (Object.values(layout.vehicles).some(({ wheelShort }) => wheelShort !== undefined)) return 'one-brings-it-back';
  return off.scene === 'traffic' || off.scene === 'evening' ? 'returns-with-many' : 'all-well';
};

const throwTurnouts: Look = (asked) => {
  const other = thrown(asked.layout);
  const rests = (layout: TableLayout): boolean => atRest(layout, 'lifted').offs.length === 0;
  const off = shutdownOf(asked);
  const isOnce = off !== undefined && off.scene !== 'thrown' && again(other, off).length === 0;
  if (off?.scene === 'thrown' || isOnce || (!rests(asked.layout) && rests(other))) return 'trouble-clears';
  if (inFarPart(asked.layout).state === 'dark' && rests(asked.layout) && inFarPart(other).state !== 'dark')
    return 'part-comes-alive';
  return 'no-change';
};

const unclipFeeders: Look = ({ layout }) => {
  const pairs = [...new Set(layout.feeders.map(({ stage, piece }) => `${stage} ${piece}`))];
  const trips = atRest(layout, 'lifted').offs.length > 0;
  const lit = coachInUnfedPart(layout) === 'lit';
  if (!(trips || lit)) return 'no-change';
  const gone = (pair: string): boolean => {
    const feeders = layout.feeders.filter(({ stage, piece }) => `${stage} ${piece}` !== pair);
    const less = { ...layout, feeders };
    return trips ? atRest(less, 'lifted').offs.length === 0 : coachInUnfedPart(less) !== 'lit';
  };
  const helping = pairs.filter(gone);
  return helping.length === 1 ? 'one-feeder' : 'no-change';
};

const lampInSeries: Look = ({ layout }) => {
  if (layout.secondSource !== undefined) return;
  const joinedReversed = eachAlone(layout).second.length === 0 && atRest(layout, 'lifted').offs.length > 0;
  const ohms = ohmsBetween(layout, ...bothRails('new-gap'), 1);
  const share = 7 / (7 + ohms);
  if (share > 0.5 || (joinedReversed && isFed(layout))) return 'bright';
  return share > 0.04 ? 'faint' : 'dark';
};

const middleJoin = (layout: TableLayout) => layout.joins.find(({ from, to }) => from === 'new-mid' && to === 'new-far');

const pressTheJoiners: Look = ({ layout }) => {
  const join = middleJoin(layout);
  return join !== undefined && Math.max(join.ohmsA, join.ohmsB) > 4 * Math.min(join.ohmsA, join.ohmsB)
    ? 'flickers'
    : 'no-change';
};

const farVolts = (layout: TableLayout): number => ranIn(layout, 'new-far').volts;

const isBetter = (is: number, was: number): boolean => is > 5 && is > 1.05 * was;

const bridgeTheJoiner: Look = ({ layout }) => {
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

const clipPowerToRails: Look = ({ layout }) => {
  if (!isQuietAtRest(layout)) return;
  const { state, piece } = inFarPart(layout);
  if (state !== 'dark') return 'was-alive';
  if (layout.trackPulled[1] || restState(layout, 1) === 'stopped') return 'stays-dead';
  const alive = (rails: readonly ('a' | 'b')[]): boolean =>
    inPiece(extraFeed(layout, piece, rails, 0.05), piece) !== 'dark';
  if (alive(['a']) || alive(['b'])) return 'one-rail-lacks';
  return alive(['a', 'b']) ? 'both-lack' : 'stays-dead';
};

const clipThickPair: Look = ({ layout }) =>
  isBetter(farVolts(extraFeed(layout, 'new-far', ['a', 'b'], 0.02)), farVolts(layout)) ? 'better' : 'no-change';

const clipAlongTheBus: Look = ({ layout }) => {
  const feeders = layout.feeders.map((feeder) =>
    feeder.stage === 1 ? { ...feeder, ohms: 0.15 * feeder.ohms } : feeder,
  );
  return isBetter(farVolts({ ...layout, feeders }), farVolts(layout)) ? 'better' : 'no-change';
};

const timeAMetre: Look = ({ layout }) => {
  if (NEW_PIECES.some((piece) => !stoodIn(layout, piece).lit)) return;
  const { beyondGap, firstHalf, secondHalf, everywhere } = drops(layout, 'run');
  if (firstHalf + secondHalf > 0.06)
    return secondHalf > 0.05 && firstHalf < 0.25 * secondHalf ? 'slower-at-one-stretch' : 'slower-with-distance';
  if (beyondGap > 0.06) return 'slower-in-whole-part';
  return everywhere > 0.1 || isHungry(layout) ? 'slower-everywhere' : 'alike';
};

const varnishTheFrog: Look = (asked) => {
  const { layout } = asked;
  const shorts = Object.values(layout.vehicles).map(({ wheelShort }) => wheelShort);
  if (shorts.includes('at-frog')) return 'cured';
  return shorts.includes('at-turnouts') || hasBridge(layout, 'live-frog') ? 'no-change' : 'not-at-a-turnout';
};

const turnTheVehicle: Look = (asked) => {
  const { layout } = asked;
  const { locomotive } = layout.vehicles;
  const bad = locomotive.wheelShort !== undefined && locomotive.wheelShort !== 'at-frog';
  if (bad || !locomotive.obeys || isWeakVehicle(layout)) return 'this-one-both-ways';
  return 'not-the-vehicle';
};

/** Vehicles set apart and driven one by one over the place where it happens. */
const uncouple: Look = (asked) => {
  const off = shutdownOf(asked);
  const { layout } = asked;
  const kind = off?.vehicle ?? layout.usual;
  if (kind !== 'rake' && kind !== 'long') return 'was-alone';
  if (off === undefined) return runsBeyond(layout, 'locomotive') ? 'no-change' : 'well-apart';
  return again(layout, { ...off, vehicle: 'locomotive' }).length === 0 ? 'well-apart' : 'no-change';
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
  'time-a-metre': timeAMetre,
  'varnish-the-frog': varnishTheFrog,
  uncouple,
  'turn-the-vehicle': turnTheVehicle,
} as const satisfies Answered<(typeof LOAD_CHECKS)[number]['id']>;
