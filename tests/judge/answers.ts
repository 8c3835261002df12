// What a person with this virtual layout on the table would answer: check by check, from what the circuit shows. A check that the
// circuit cannot answer is skipped.

import { DRAWS } from '../../src/engine/power/draws.ts';
import type {
  BridgeKind,
  PieceId,
  StageIndex,
  TableConsumer,
  TableFeeder,
  TableLayout,
} from '../../src/engine/table/layout.ts';
import type { GapSides, Place } from '../../src/engine/table/meter.ts';
import {
  across,
  beyond,
  bridged,
  coinTest,
  empty,
  gapLamps,
  LAMP_OHMS,
  loadTest,
  MAIN_GAP,
  meterReads,
  ohmsBetween,
} from '../../src/engine/table/meter.ts';
import { idleVolts } from '../../src/engine/table/moment.ts';
import type { Crossing, Off, Standing, VehicleKind } from '../../src/engine/table/observe.ts';
import {
  bothRails,
  coachInUnfedPart,
  eachAlone,
  jumperTest,
  pulled,
  runsIntoUnfed,
  standAcross as standAcrossOn,
  swappedWires,
} from '../../src/engine/table/observe.ts';
import { run, worldOf } from '../../src/engine/table/protection.ts';
import type { Shutdown } from '../../src/engine/table/trouble.ts';
import {
  again,
  atRest,
  crossed,
  crossedRound,
  drops,
  emptyState,
  evening,
  hasRound,
  isNew,
  lampOf,
  overTurnout,
  ranIn,
  restState,
  stageVolts,
  stoodAcross,
  stoodIn,
  throughLoop,
  thrown,
  unitState,
  volts,
  withRunner,
} from '../../src/engine/table/trouble.ts';
import { checksFor } from '../../src/wizards/put-it-right/faults/fitting.ts';
import type { CheckId, ComplaintId } from '../../src/wizards/put-it-right/faults/rows.ts';
import type { Asked } from './complaints.ts';
import {
  COMPLAINT_SIGNS,
  inFarPart,
  inPiece,
  isFed,
  isWeakVehicle,
  leakWatts,
  NEW_PIECES,
  runsBeyond,
  shutdownOf,
} from './complaints.ts';

const AT_THE_GAP: readonly ComplaintId[] = ['stops-at-gap', 'trips-at-gap', 'jerks-at-gap', 'still-runs-past-gap'];

/** True where nothing goes off any more where something did before. */
const isCured = (asked: Asked, layout: TableLayout): boolean => {
  const before = shutdownOf(asked);
  return before !== undefined && again(layout, before).length === 0 && isFed(layout);
};

/** The unit that the person looks at: the one that went off first, else that of the new part. */
const troubled = (asked: Asked): StageIndex => {
  const off = shutdownOf(asked)?.offs[0];
  if (off !== undefined) return off.stage;
  const { layout } = asked;
  return restState(layout, 0) === 'no-power' || restState(layout, 0) === 'fault' ? 0 : 1;
};

type Answer = (asked: Asked) => string | undefined;

// --- the first questions ---------------------------------------------------------------------------------------------------------

const whenItHappens: Answer = (asked) => {
  const off = shutdownOf(asked);
  if (off !== undefined) return whenOff(asked.layout, off);
  const { layout, complaint } = asked;
  if (hasUnitFault(layout) || !layout.vehicles.locomotive.obeys) return 'from-switch-on';
  if (layout.spots.some(({ kind }) => kind === 'dirty')) return 'at-another-place';
  const { state, piece } = inFarPart(layout);
  if (AT_THE_GAP.includes(complaint))
    return piece === 'new-far' && state === 'dark' ? 'at-another-place' : 'at-the-gap';
  if (complaint === 'short-not-noticed') return whenWeakShort(layout);
  return complaint === 'slow-far-away' ? whenSlow(layout) : 'from-switch-on';
};

// All the time, or beyond some place.
const whenWeakShort = (layout: TableLayout): string =>
  leakWatts(layout) > 5 || isMissed(layout, 'new-gap') ? 'from-switch-on' : 'at-another-place';

const whenSlow = (layout: TableLayout): string => {
  const { beyondGap, firstHalf, secondHalf } = drops(layout, 'run');
  if (Math.max(firstHalf, secondHalf) > 0.06) return 'at-another-place';
  return beyondGap > 0.06 ? 'at-the-gap' : 'with-traffic';
};

const whenOff = (layout: TableLayout, { when }: Shutdown): string =>
  when === 'at-the-gap' && tripsInside(layout) ? 'with-traffic' : when;

/** One running train puts a unit out wherever it is, and not only at the gap. */
const tripsInside = (layout: TableLayout): boolean =>
  (['old-gap', 'new-mid'] as const).some((piece) => stoodIn(layout, piece).offs.length > 0);

/** A unit that reports a fault, or gets what it cannot work with, from the first moment. */
const hasUnitFault = (layout: TableLayout): boolean =>
  layout.supplies.some(({ fits, defect }) => !fits || defect === 'dead') ||
  restState(layout, 0) === 'fault' ||
  restState(layout, 1) === 'fault';

const whatGoesDark: Answer = (asked) => {
  if (asked.complaint === 'still-runs-past-gap') return 'nothing-goes-off';
  const off = shutdownOf(asked);
  const { layout } = asked;
  if (off !== undefined) return whichParts(layout, off.offs);
  if (layout.stopped) return 'everything-at-once';
  if (!isFed(layout)) return restState(layout, 0) === 'no-power' ? 'everything-at-once' : 'only-that-part';
  return inFarPart(layout).state === 'dark' && inFarPart(layout).piece === 'new-gap'
    ? 'only-that-part'
    : 'nothing-goes-off';
};

// A command station that is out takes the booster's signal along, unless the bus goes on without its track output.
const whichParts = (layout: TableLayout, offs: readonly Off[]): string => {
  const first = offs[0];
  const other = offs.find(({ stage }) => stage !== first?.stage);
  if (first === undefined) return 'nothing-goes-off';
  const takesBoth = first.stage === 0 && (first.kind !== 'trip' || layout.link.from === 'track-output');
  if (layout.reportsShorts || takesBoth) return 'everything-at-once';
  if (other === undefined) return 'only-that-part';
  return other.time - first.time < 0.15 ? 'everything-at-once' : 'one-after-the-other';
};

const howItComesBack: Answer = (asked) => {
  if (asked.complaint === 'still-runs-past-gap') return 'never-off';
  const off = shutdownOf(asked);
  const { layout } = asked;
  if (off === undefined) return withoutShutdown(layout);
  const [first] = off.offs;
  if (first === undefined) return 'never-off';
  if (first.kind === 'hot' || first.kind === 'supply-hot') return 'minutes';
  if (first.kind !== 'trip') return 'seconds';
  if (isLasting(asked)) return 'when-removed';
  return layout.stages[first.stage].comesBack === 'latched' ? 'button' : 'seconds';
};

const withoutShutdown = (layout: TableLayout): string => {
  if (layout.stopped) return 'button';
  const { state, piece } = inFarPart(layout);
  return (state === 'dark' && piece === 'new-gap') || !isFed(layout) ? 'when-removed' : 'never-off';
};

/** True where a unit that tries again trips again and again as long as nothing is taken away. */
const isLasting = (asked: Asked): boolean => {
  const before = shutdownOf(asked);
  if (before === undefined) return false;
  const [first, second] = asked.layout.stages;
  const retry = { comesBack: 'retry', retrySeconds: 2 } as const;
  const stages = [
    { ...first, ...retry },
    { ...second, ...retry },
  ] as const;
  return again({ ...asked.layout, stages }, before).filter(({ kind }) => kind === 'trip').length >= 3;
};

/** Whether this vehicle meets the trouble at the place where the trouble is. */
const meets = (asked: Asked, kind: VehicleKind): boolean => {
  const { layout } = asked;
  const scene = shutdownOf(asked)?.scene ?? 'gap';
  if (scene === 'turnout') return overTurnout(layout, kind).offs.length > 0;
  if (scene === 'loop') return throughLoop(layout, kind).offs.length > 0;
  if (scene === 'round') return crossedRound(layout, kind).offs.length > 0;
  const { outcome, blinks } = crossed(layout, kind);
  return outcome !== 'crosses' || blinks > 0;
};

const whichVehicles: Answer = (asked) => {
  const { layout, complaint } = asked;
  if (complaint === 'still-runs-past-gap') return whichRunsOn(layout);
  const off = shutdownOf(asked);
  if (off?.scene === 'empty' || off?.scene === 'thrown' || hasUnitFault(layout) || layout.stopped) return 'none-needed';
  if (off !== undefined && ['standing', 'traffic', 'evening'].includes(off.scene)) return byLoad(asked);
  if (!layout.vehicles.locomotive.obeys) return 'one-vehicle';
  const [one, short, long, rake] = (['locomotive', 'short', 'long', 'rake'] as const).map((kind) => meets(asked, kind));
  if (!(one || short) && (long || rake)) return 'long-or-lit';
  if (one && !short && !long) return 'one-vehicle';
  if ((one || short) && !long) return 'short-ones';
  return 'every-one';
};

const whichRunsOn = (layout: TableLayout): string => {
  const runs = (kind: VehicleKind): boolean => runsBeyond(layout, kind);
  if (runs('long')) return 'every-one';
  return layout.usual === 'rake' ? 'long-or-lit' : 'one-vehicle';
};

const byLoad = (asked: Asked): string => {
  const { layout } = asked;
  if (layout.vehicles.locomotive.wheelShort === 'always') return 'one-vehicle';
  if (
    isCured(
      asked,
      without(layout, ({ kind }) => kind === 'coaches'),
    )
  )
    return 'long-or-lit';
  return isHungry(layout) ? 'one-vehicle' : 'every-one';
};

const isHungry = ({ vehicles }: TableLayout): boolean => vehicles.locomotive.running > 2 * vehicles.long.running;

const without = (layout: TableLayout, which: (consumer: TableConsumer, index: number) => boolean): TableLayout => ({
  ...layout,
  consumers: layout.consumers.filter((consumer, i) => !which(consumer, i)),
});

const whichPlaces: Answer = (asked) => {
  const off = shutdownOf(asked);
  const { layout } = asked;
  if (off !== undefined) return placesOfShutdown(layout, off);
  if (layout.stopped || !layout.vehicles.locomotive.obeys) return 'anywhere';
  if (asked.complaint === 'short-not-noticed') return placesOfWeakShort(layout);
  const { state, piece } = inFarPart(layout);
  if (state !== 'runs-well' && state !== 'runs-poorly') return piece === 'new-gap' ? 'that-part' : 'one-spot';
  if (layout.spots.some(({ kind }) => kind === 'dirty') || isWeakVehicle(layout)) return 'anywhere';
  return placesOfDrop(layout) ?? (isPoorAnywhere(layout) ? 'that-part' : placesOfGap(layout));
};

const isPoorAnywhere = (layout: TableLayout): boolean =>
  NEW_PIECES.every((piece) => inPiece(layout, piece) === 'runs-poorly');

/** Where a short does not put the unit out, or something is warm. */
const placesOfWeakShort = (layout: TableLayout): string => {
  if (leakWatts(layout) > 5) return 'one-spot';
  if (isMissed(layout, 'new-gap')) return 'that-part';
  return placesOfDrop(layout) ?? (isMissed(layout, 'new-mid') ? 'with-distance' : 'one-spot');
};

/** A coin there stays on for half a second or more. */
const isMissed = (layout: TableLayout, piece: PieceId): boolean => (coinTest(layout, piece).trips?.seconds ?? 9) > 0.5;

const placesOfDrop = (layout: TableLayout): string | undefined => {
  const { beyondGap, firstHalf, secondHalf } = drops(layout, 'run');
  if (secondHalf > 0.06 && firstHalf < 0.02) return 'one-spot';
  if (firstHalf + secondHalf > 0.06) return 'with-distance';
  return beyondGap > 0.06 ? 'that-part' : undefined;
};

/** Something between the two units themselves, which shows at each of their gaps. */
const isBetweenUnits = (layout: TableLayout): boolean => {
  const [old, far] = [volts(layout, 'old-gap'), volts(layout, 'new-gap')];
  return stoodAcross(layout, 'locomotive').edgeAmps > 0.3 || (Math.min(old, far) > 5 && Math.abs(old - far) > 0.8);
};

// Where there is only one gap, it is every gap.
const placesOfGap = (layout: TableLayout): string => {
  if (!hasRound(layout)) return 'every-gap';
  const { blinks, offs, outcome } = crossedRound(layout, layout.usual);
  return blinks > 0 || offs.length > 0 || outcome === 'stops' || isBetweenUnits(layout) ? 'every-gap' : 'one-spot';
};

const placesOfShutdown = (layout: TableLayout, { scene, offs, vehicle }: Shutdown): string | undefined => {
  if (scene === 'turnout' || scene === 'thrown' || scene === 'loop' || scene === 'round') return 'one-spot';
  if (scene === 'gap' || scene === 'busy-gap') {
    if (tripsInside(layout)) return 'anywhere';
    if (vehicle !== undefined && layout.vehicles[vehicle].wheelShort === 'always') return 'anywhere';
    return placesOfGap(layout);
  }
  const stages = new Set(offs.map(({ stage }) => stage));
  return stages.size > 1 || stages.has(0) ? 'anywhere' : 'that-part';
};

// --- what units and supplies show ------------------------------------------------------------------------------------------------

const boosterLamp: Answer = (asked) => {
  const { layout } = asked;
  const stage = troubled(asked);
  const off = shutdownOf(asked)?.offs[0];
  if (off?.kind === 'restart' || off?.kind === 'supply-off' || off?.kind === 'supply-hot') return 'goes-out-and-on';
  if (off !== undefined) return 'fault';
  const lamp = lampOf(restState(layout, stage), layout.stages[stage].withoutSignal);
  return lamp === 'off' ? 'no-lamp' : lamp;
};

const commandDisplay: Answer = (asked) => {
  const { layout } = asked;
  if (layout.stopped) return 'stop-or-programming';
  if (restState(layout, 0) === 'no-power') return 'dark-or-restarting';
  const offs = shutdownOf(asked)?.offs ?? [];
  if (offs.some(({ stage, kind }) => stage === 0 && kind !== 'trip' && kind !== 'hot')) return 'dark-or-restarting';
  return offs.some(({ stage }) => stage === 0 || layout.reportsShorts) ? 'short' : 'normal';
};

const supplyLamp: Answer = (asked) => {
  const stage = troubled(asked);
  const { plugged, defect } = asked.layout.supplies[stage];
  if (!plugged || defect === 'dead') return 'dark';
  const offs = shutdownOf(asked)?.offs ?? [];
  return offs.some(({ kind }) => kind !== 'trip' && kind !== 'hot') ? 'pulses-or-goes-out' : 'steady';
};

const readLabels: Answer = ({ layout }) => {
  const { supplies, stages } = layout;
  if (supplies.some(({ fits }) => !fits)) return 'wrong-kind';
  const labels = Math.abs(supplies[0].volts - supplies[1].volts) > 0.9;
  const settings = Math.abs(idleVolts(layout, 0) - idleVolts(layout, 1)) > 1.5;
  if (labels || (settings && supplies.every(({ defect }) => defect === undefined))) return 'volts-differ';
  if (stages.some(({ trip }) => trip > 1.05 * DRAWS[layout.scale].tripCeiling)) return 'unit-too-big';
  return stages.some(({ trip }, i) => (supplies[i]?.amps ?? trip) < trip) ? 'too-few-amps' : 'all-fit';
};

const whichCaseHot: Answer = (asked) => {
  const { layout } = asked;
  const kinds = (evening(layout, 'all').offs ?? []).map(({ kind }) => kind);
  if (kinds.includes('hot')) return 'unit';
  if (kinds.includes('supply-hot') || kinds.includes('supply-off')) return 'supply';
  if (isHungry(layout)) return 'locomotive';
  if (leakWatts(layout) > 5) return 'wire-or-rail';
  return kinds.includes('trip') && shutdownOf(asked)?.scene === 'traffic' ? 'unit' : 'none';
};

const putSuppliesBack: Answer = (asked) => {
  const { layout } = asked;
  if (layout.lastChange !== 'supply-or-unit' || (shutdownOf(asked) === undefined && isFed(layout))) return;
  return curedBy(asked, withGoodSupplies(layout));
};

// As they were before: alike, of the right kind, strong enough.
const withGoodSupplies = (layout: TableLayout): TableLayout => {
  const least = Math.min(layout.supplies[0].volts, layout.supplies[1].volts);
  const good = (stage: StageIndex) => {
    const { defect: _, ...supply } = layout.supplies[stage];
    const amps = Math.max(supply.amps, 1.3 * layout.stages[stage].trip + 0.3);
    return { ...supply, volts: least, fits: true, plugged: true, amps, continuous: amps };
  };
  return { ...layout, supplies: [good(0), good(1)] };
};

const curedBy = (asked: Asked, changed: TableLayout): string => {
  if (shutdownOf(asked) !== undefined) return isCured(asked, changed) ? 'cured' : 'no-change';
  return isFed(changed) && !shows(asked, changed) ? 'cured' : 'no-change';
};

/** Whether the person would still come with the same complaint after something was changed. */
const shows = ({ complaint }: Asked, changed: TableLayout): boolean =>
  COMPLAINT_SIGNS.find(({ id }) => id === complaint)?.shows(changed) ?? true;

const borrowSupply: Answer = (asked) => {
  const stage = troubled(asked);
  const { layout } = asked;
  const { defect: _, ...supply } = layout.supplies[stage];
  const amps = Math.max(3 * supply.amps, 2 * layout.stages[stage].trip);
  const stronger = { ...supply, amps, continuous: amps, fits: true, plugged: true };
  const supplies = stage === 0 ? ([stronger, layout.supplies[1]] as const) : ([layout.supplies[0], stronger] as const);
  return curedBy(asked, { ...layout, supplies });
};

const feedFromOtherUnit: Answer = (asked) => {
  const { layout } = asked;
  const suspect = troubled(asked);
  const stage = suspect === 0 ? 1 : 0;
  // The other unit is clipped on with its wires the right way round.
  const feeders = layout.feeders.map((feeder): TableFeeder => {
    if (feeder.stage === stage) return feeder;
    const rightWay = feeder.terminal === terminalOf(layout, feeder.rail, suspect);
    const rail = rightWay === (feeder.rail === 'a') ? 'a' : 'b';
    const terminal = terminalOf(layout, rail, stage);
    return { ...feeder, stage, terminal, state: feeder.state === 'programming' ? 'firm' : feeder.state };
  });
  const [first, second] = layout.trackPulled;
  const trackPulled = suspect === 0 ? ([true, second] as const) : ([first, true] as const);
  const other: TableLayout = { ...layout, feeders, loopStage: stage, trackPulled };
  const before = shutdownOf(asked);
  const still = before === undefined ? shows(asked, other) : again(other, before).length > 0;
  return still ? 'stays-with-part' : 'follows-unit';
};

const reportsFault = (layout: TableLayout, stage: StageIndex): boolean => {
  const state = restState(layout, stage);
  const { withoutSignal } = layout.stages[stage];
  return lampOf(state, withoutSignal) !== 'ready' || atRest(layout, 'standing').offs.some((off) => off.stage === stage);
};

const trackPlugPulled: Answer = (asked) => {
  const { layout } = asked;
  const stage = troubled(asked);
  if (reportsFault(layout, stage)) return reportsFault(pulled(layout, stage), stage) ? 'still-a-fault' : 'clears';
  const scene = shutdownOf(asked)?.scene;
  const byLoad = scene === undefined || scene === 'traffic' || scene === 'evening' || scene === 'busy-gap';
  return byLoad || !isLasting(asked) ? 'no-fault-before' : 'clears';
};

const eachStageAlone: Answer = ({ layout }) => {
  const { first, second, together } = eachAlone(layout);
  const alone = ([0, 1] as const).some((stage) => unitState(pulled(layout, stage), stage) !== 'ready');
  if (first.length > 0 || second.length > 0 || alone) return 'one-alone-faults';
  return together.length > 0 ? 'only-together' : 'all-fine';
};

const coolAir: Answer = (asked) => {
  const off = shutdownOf(asked);
  if (off === undefined) return;
  const { layout } = asked;
  const cool = {
    ...layout,
    stages: [
      { ...layout.stages[0], continuous: 1.5 * layout.stages[0].continuous },
      { ...layout.stages[1], continuous: 1.5 * layout.stages[1].continuous },
    ] as const,
    supplies: [
      { ...layout.supplies[0], continuous: 1.5 * layout.supplies[0].continuous },
      { ...layout.supplies[1], continuous: 1.5 * layout.supplies[1].continuous },
    ] as const,
  };
  return again(cool, off).length === 0 ? 'much-longer' : 'no-change';
};

const unitSettings: Answer = ({ layout }) => {
  const [first, second] = layout.stages;
  if (second.ownCommands) return 'sends-own';
  if (first.cutout !== second.cutout) return 'feedback-differs';
  if (Math.abs(first.late - second.late) > 1.5e-6) return 'kinds-differ';
  const set = first.setVolts !== undefined && second.setVolts !== undefined;
  return set && Math.abs(first.setVolts - second.setVolts) > 1 ? 'volts-differ' : 'alike';
};

// --- signal ------------------------------------------------------------------------------------------------------------------------

const isQuietAtRest = (layout: TableLayout): boolean => atRest(layout, 'standing').offs.length === 0;

const vehicleInFarPart: Answer = ({ layout }) => (isQuietAtRest(layout) ? inFarPart(layout).state : undefined);

const sameLocomotiveInOldPart: Answer = ({ layout }) => {
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

const pullControlCable: Answer = ({ layout }) => {
  const off = { ...layout, link: { ...layout.link, state: 'missing' } as const };
  if (reportsWhenEmpty(layout)) return reportsWhenEmpty(off) ? 'nothing-changes' : 'fault-clears';
  const was = emptyState(layout, 1);
  const is = emptyState(off, 1);
  return was !== is && is === 'no-signal' && was === 'driving' ? 'goes-dead' : 'nothing-changes';
};

const hasBridge = ({ bridges }: TableLayout, ...kinds: readonly BridgeKind[]): boolean =>
  bridges.some(({ kind }) => kinds.includes(kind));

const followEveryWire: Answer = ({ layout }) => {
  if (layout.secondSource !== undefined) return 'second-unit';
  if (hasBridge(layout, 'old-wiring')) return 'old-wiring';
  return layout.feeders.some(({ stage, piece }) => stage === 0 && isNew(piece)) ? 'to-other-part' : 'only-ours';
};

const lookAtFeedWires: Answer = ({ layout }) => {
  const ours = layout.feeders.filter(({ stage, piece }) => stage === 1 && piece === 'new-gap');
  if (layout.trackPulled[1] || ours.every(({ state }) => state === 'missing')) return 'none-or-unplugged';
  if (ours.some(({ state }) => state === 'programming')) return 'other-socket';
  return ours.some(({ state }) => state === 'broken') ? 'one-loose' : 'both-firm';
};

const longerLocomotive: Answer = (asked) => {
  const { layout } = asked;
  if (!isQuietAtRest(layout)) return;
  const { outcome, blinks } = crossingOf(asked)(layout, 'long');
  if (outcome === 'trips') return 'trips';
  return outcome === 'stops' || blinks > 0 ? 'stops-too' : 'crosses';
};

/** The way on which the person meets the trouble. */
const crossingOf = (asked: Asked): ((layout: TableLayout, kind: VehicleKind) => Crossing) => {
  const scene = shutdownOf(asked)?.scene;
  if (scene === 'round') return crossedRound;
  return scene === 'loop' ? throughLoop : crossed;
};

const ROUND_GAP = { from: 'old-far', to: 'new-far' } as const;

/** The gap at which the person meets the trouble. */
const gapOf = (asked: Asked): GapSides => {
  if (shutdownOf(asked)?.scene !== 'round') return MAIN_GAP;
  const join = asked.layout.joins.find(({ from, to }) => from === ROUND_GAP.to && to === ROUND_GAP.from);
  return { ...ROUND_GAP, crossed: join?.crossed ?? false };
};

const bothLit = (layout: TableLayout, { from, to }: GapSides): boolean =>
  volts(layout, from) > 5 && volts(layout, to) > 5;

// --- at the gap --------------------------------------------------------------------------------------------------------------------

const standAcross: Answer = (asked) => {
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
const sparksAtTheGap: Answer = (asked) => {
  const seen = standAcross(asked);
  if (seen === undefined) return;
  return seen === 'sparks-or-ticks' || seen === 'trips-at-once' ? 'spark-or-tick' : 'none';
};

const twoLamps: Answer = (asked) => {
  const { layout } = asked;
  const gap = gapOf(asked);
  if (atRest(layout, 'lifted').offs.length > 0 || !bothLit(layout, gap)) return;
  const { a, b } = gapLamps(layout, ['a', 'b'], gap);
  const bright = [a, b].filter((glow) => glow === 'light' || glow === 'over-bright').length;
  if (bright === 2) return 'both-light';
  return bright === 1 ? 'one-lights' : 'both-dark';
};

const swapTrackWires: Answer = (asked) => {
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

const jointByHand: Answer = ({ layout }) => {
  if (layout.lengths.dead > 0.03) return 'wide';
  return layout.spots.some(({ kind }) => kind === 'step') ? 'clicks' : 'smooth';
};

/** Which rails of the gaps that were made are not open. */
const closedAtGaps = ({ joins, hasLoop }: TableLayout): 'none' | 'one' | 'both' => {
  const gaps = joins.filter(({ kind, from, to }) => kind === 'gap' && (hasLoop || (from !== 'loop' && to !== 'loop')));
  if (gaps.some(({ ohmsA, ohmsB }) => Number.isFinite(ohmsA) && Number.isFinite(ohmsB))) return 'both';
  return gaps.some(({ ohmsA, ohmsB }) => Number.isFinite(ohmsA) || Number.isFinite(ohmsB)) ? 'one' : 'none';
};

const listEveryPath: Answer = ({ layout }) => {
  if (hasBridge(layout, 'second-track')) return 'joint-forgotten';
  const closed = closedAtGaps(layout);
  if (closed === 'both') return 'touching';
  return closed === 'one' ? 'one-rail-only' : 'all-cut';
};

const cardThroughGaps: Answer = ({ layout }) => {
  const closed = closedAtGaps(layout);
  if (closed === 'both') return 'touches';
  return closed === 'one' ? 'not-cut' : 'passes';
};

const jumper: Answer = ({ layout }) => {
  if (atRest(pulled(layout, 1), 'lifted').offs.length > 0) return;
  const { without: alive, joined } = jumperTest(layout);
  if (alive) return 'alive-without';
  return joined.length > 0 ? 'alive-with-one' : 'dead-with-each';
};

const unplugAcross: Answer = ({ layout }) => {
  if (hasBridge(layout, 'frog-wire')) return 'frog-wire';
  if (hasBridge(layout, 'detector') || layout.diodeDetector) return 'detector';
  return hasBridge(layout, 'lamp') ? 'lamp-or-decoder' : 'no-change';
};

const followTheRedRail: Answer = ({ layout }) => {
  const crossedJoin = layout.joins.some(({ from, to, crossed: is }) => is && from !== 'loop' && to !== 'loop');
  return crossedJoin || layout.hasLoop ? 'meets-the-other' : 'meets-itself';
};

const lampsAtTheJerk: Answer = (asked) => {
  const scene = shutdownOf(asked)?.scene;
  if (scene === 'empty' || scene === 'standing') return;
  const there = scene !== undefined && scene !== 'traffic' && scene !== 'evening';
  return there || crossed(asked.layout, asked.layout.usual).offs.length > 0 ? 'blinks' : 'steady';
};

// --- load and track ------------------------------------------------------------------------------------------------------------------

const dimOrSnap: Answer = (asked) => {
  const off = shutdownOf(asked);
  if (off === undefined) return asked.complaint === 'slow-far-away' ? 'dims-first' : 'neither';
  const [first] = off.offs;
  if (first === undefined) return 'neither';
  const { limits, mainsOhms } = asked.layout.supplies[first.stage];
  const sags = first.kind === 'restart' && (limits === 'holds-current' || mainsOhms > 0);
  return sags ? 'dims-first' : 'snaps-off';
};

const halveTheTrains: Answer = (asked) => {
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

const moveTrainsOver: Answer = (asked) => {
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

const liftAllVehicles: Answer = (asked) => {
  const { layout } = asked;
  const off = shutdownOf(asked);
  if (off === undefined) return;
  if (off.scene === 'empty' || off.scene === 'thrown') return 'still-there';
  if (isHungry(layout)) return 'one-brings-it-back';
  if (Object.values(layout.vehicles).some(({ wheelShort }) => wheelShort !== undefined)) return 'one-brings-it-back';
  return off.scene === 'traffic' || off.scene === 'evening' ? 'returns-with-many' : 'all-well';
};

const throwTurnouts: Answer = (asked) => {
  const other = thrown(asked.layout);
  const rests = (layout: TableLayout): boolean => atRest(layout, 'lifted').offs.length === 0;
  const off = shutdownOf(asked);
  const isOnce = off !== undefined && off.scene !== 'thrown' && again(other, off).length === 0;
  if (off?.scene === 'thrown' || isOnce || (!rests(asked.layout) && rests(other))) return 'trouble-clears';
  if (inFarPart(asked.layout).state === 'dark' && rests(asked.layout) && inFarPart(other).state !== 'dark')
    return 'part-comes-alive';
  return 'no-change';
};

const unclipFeeders: Answer = ({ layout }) => {
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

const lampInSeries: Answer = ({ layout }) => {
  if (layout.secondSource !== undefined) return;
  const joinedReversed = eachAlone(layout).second.length === 0 && atRest(layout, 'lifted').offs.length > 0;
  const ohms = ohmsBetween(layout, ...bothRails('new-gap'), 1);
  const share = 7 / (7 + ohms);
  if (share > 0.5 || (joinedReversed && isFed(layout))) return 'bright';
  return share > 0.04 ? 'faint' : 'dark';
};

const middleJoin = (layout: TableLayout) => layout.joins.find(({ from, to }) => from === 'new-mid' && to === 'new-far');

const pressTheJoiners: Answer = ({ layout }) => {
  const join = middleJoin(layout);
  return join !== undefined && Math.max(join.ohmsA, join.ohmsB) > 4 * Math.min(join.ohmsA, join.ohmsB)
    ? 'flickers'
    : 'no-change';
};

const farVolts = (layout: TableLayout): number => ranIn(layout, 'new-far').volts;
const isBetter = (is: number, was: number): boolean => is > 5 && is > 1.05 * was;

const bridgeTheJoiner: Answer = ({ layout }) => {
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

const NEXT_TO_GAP = ['old-gap', 'new-gap'] as const;
const terminalOf = ({ feeders }: TableLayout, rail: 'a' | 'b', of: StageIndex = 1): 'p' | 'n' =>
  feeders.find(({ stage, piece, rail: to }) => stage === of && piece === NEXT_TO_GAP[of] && to === rail)?.terminal ??
  'p';

const clipPowerToRails: Answer = ({ layout }) => {
  if (!isQuietAtRest(layout)) return;
  const { state, piece } = inFarPart(layout);
  if (state !== 'dark') return 'was-alive';
  if (layout.trackPulled[1] || restState(layout, 1) === 'stopped') return 'stays-dead';
  const alive = (rails: readonly ('a' | 'b')[]): boolean =>
    inPiece(extraFeed(layout, piece, rails, 0.05), piece) !== 'dark';
  if (alive(['a']) || alive(['b'])) return 'one-rail-lacks';
  return alive(['a', 'b']) ? 'both-lack' : 'stays-dead';
};

const clipThickPair: Answer = ({ layout }) =>
  isBetter(farVolts(extraFeed(layout, 'new-far', ['a', 'b'], 0.02)), farVolts(layout)) ? 'better' : 'no-change';

const clipAlongTheBus: Answer = ({ layout }) => {
  const feeders = layout.feeders.map((feeder) =>
    feeder.stage === 1 ? { ...feeder, ohms: 0.15 * feeder.ohms } : feeder,
  );
  return isBetter(farVolts({ ...layout, feeders }), farVolts(layout)) ? 'better' : 'no-change';
};

const timeAMetre: Answer = ({ layout }) => {
  if (NEW_PIECES.some((piece) => !stoodIn(layout, piece).lit)) return;
  const { beyondGap, firstHalf, secondHalf, everywhere } = drops(layout, 'run');
  if (firstHalf + secondHalf > 0.06)
    return secondHalf > 0.05 && firstHalf < 0.25 * secondHalf ? 'slower-at-one-stretch' : 'slower-with-distance';
  if (beyondGap > 0.06) return 'slower-in-whole-part';
  return everywhere > 0.1 || isHungry(layout) ? 'slower-everywhere' : 'alike';
};

const varnishTheFrog: Answer = (asked) => {
  const { layout } = asked;
  const shorts = Object.values(layout.vehicles).map(({ wheelShort }) => wheelShort);
  if (shorts.includes('at-frog')) return 'cured';
  return shorts.includes('at-turnouts') || hasBridge(layout, 'live-frog') ? 'no-change' : 'not-at-a-turnout';
};

const turnTheVehicle: Answer = (asked) => {
  const { layout } = asked;
  const { locomotive } = layout.vehicles;
  const bad = locomotive.wheelShort !== undefined && locomotive.wheelShort !== 'at-frog';
  if (bad || !locomotive.obeys || isWeakVehicle(layout)) return 'this-one-both-ways';
  return 'not-the-vehicle';
};

// --- protection, loops ---------------------------------------------------------------------------------------------------------------

/** Clearly weaker under the resistor, as a share. */
const SAGS = 0.11;
const sag = (layout: TableLayout, piece: PieceId): number => {
  const { idle, loaded } = loadTest(layout, piece);
  return idle > 3 ? 1 - loaded / idle : 0;
};

const loadTestAnswer: Answer = ({ layout }) => {
  const dead = Math.min(volts(layout, 'new-gap'), volts(layout, 'new-far')) < 5;
  if (dead || atRest(layout, 'lifted').offs.length > 0) return;
  if (sag(layout, 'new-gap') > SAGS) return 'weak-everywhere';
  return Math.max(sag(layout, 'new-mid'), sag(layout, 'new-far')) > SAGS ? 'weak-far' : 'firm-everywhere';
};

const coin =
  (piece: PieceId, late: string): Answer =>
  ({ layout }) => {
    if (volts(layout, piece) < 5 || atRest(layout, 'lifted').offs.length > 0) return;
    const { trips } = coinTest(layout, piece);
    if (trips === undefined) return 'stays-on';
    if (trips.stage === 0) return late === 'off-late' ? 'wrong-one' : undefined;
    return trips.seconds >= 0.5 ? late : 'off-at-once';
  };

const shortThroughLoop: Answer = ({ layout }) => {
  if (!layout.hasLoop) return 'no-loop';
  const { outcome, front, offs } = throughLoop(layout, 'locomotive');
  if (offs.length === 0) return outcome === 'crosses' ? 'fine' : undefined;
  if (layout.vehicles.locomotive.wheelShort === 'at-frog') return 'trips-at-turnout';
  return front < 0.5 * layout.lengths.loop ? 'trips-entering' : 'trips-leaving';
};

const whatReverses: Answer = ({ layout }) => {
  if (!layout.hasLoop) return 'no-loop';
  if (layout.partReverser.kind === 'automatic') return 'two-neighbours';
  return layout.loopReverser.kind === 'none' ? 'none' : 'automatic';
};

const doesItReverse: Answer = ({ layout }) => {
  if (!layout.hasLoop || layout.loopReverser.kind === 'none') return 'none-there';
  const { reversals, offs } = throughLoop(layout, layout.usual);
  if (reversals === 0) return 'silent';
  if (reversals > 2) return 'chatters';
  return offs.length > 0 ? 'acts-but-off' : 'acts-and-passes';
};

/** Handsets live on the command station: they start anew with it. */
const whatElseHappens: Answer = (asked) => {
  const offs = shutdownOf(asked)?.offs ?? [];
  return offs.some(({ stage, kind }) => stage === 0 && kind !== 'trip' && kind !== 'hot')
    ? 'handsets-restart'
    : 'nothing';
};

/** What hangs together badly makes itself known when it is moved. */
const movePlugs: Answer = ({ layout }) => {
  if (layout.supplies.some(({ mainsOhms }) => mainsOhms > 0)) return 'mains-lead';
  if (layout.link.state === 'faulty') return 'control-cable';
  const loose = layout.feeders.some(({ state }) => state === 'broken');
  return loose || layout.stages.some(({ wornSocket }) => wornSocket) ? 'track-plug' : 'nothing';
};

/** Vehicles set apart and driven one by one over the place where it happens. */
const uncouple: Answer = (asked) => {
  const off = shutdownOf(asked);
  const { layout } = asked;
  const kind = off?.vehicle ?? layout.usual;
  if (kind !== 'rake' && kind !== 'long') return 'was-alone';
  if (off === undefined) return runsBeyond(layout, 'locomotive') ? 'no-change' : 'well-apart';
  return again(layout, { ...off, vehicle: 'locomotive' }).length === 0 ? 'well-apart' : 'no-change';
};

const accessoriesAreWell =
  (option: string): Answer =>
  ({ complaint }) =>
    complaint === 'accessories-misbehave' ? undefined : option;

// --- with a meter --------------------------------------------------------------------------------------------------------------------

/** Switching on with everything on the track puts a unit out, though the track itself is well: then nothing can be measured. */
const isOutByVehicles = (layout: TableLayout): boolean =>
  !isQuietAtRest(layout) && atRest(layout, 'lifted').offs.length === 0;

const meterOutput: Answer = ({ layout }) => {
  if (isOutByVehicles(layout)) return;
  if (layout.feeders.some(({ state }) => state === 'programming')) return 'only-moments';
  if (stageVolts(layout, 1) < 4) return 'neither';
  const alive = NEW_PIECES.map((piece) => volts(layout, piece) > 4);
  if (alive.every((is) => is)) return 'both';
  return alive.some((is) => is) ? 'only-near-joint' : 'screws-only';
};

const meterDirectVolts: Answer = ({ layout }) => {
  if (isOutByVehicles(layout)) return;
  const { world } = empty(layout, 0.5, 'standing');
  const { ac, dc } = meterReads(layout, world, ...bothRails(inFarPart(layout).piece));
  if (dc > 2) return 'several-volts';
  return ac < 3 ? 'dead' : 'about-zero';
};

const meterSameAndDiagonal: Answer = (asked) => {
  const { layout } = asked;
  if (!isQuietAtRest(layout)) return;
  const gap = gapOf(asked);
  const joined = bridged(layout, across('test-lamp', [gap.from, 'b'], beyond(gap, 'b'), LAMP_OHMS));
  const { world } = empty(joined, 0.01, 'standing');
  const reads = (to: Place): number => meterReads(joined, world, [gap.from, 'a'], to).ac;
  if (!bothLit(layout, gap)) return 'both-small';
  const same = reads(beyond(gap, 'a'));
  const diagonal = reads(beyond(gap, 'b'));
  // Reversed, the same rail shows both rail voltages in series where the units float, one of them where their negatives are joined.
  if (diagonal > 1.4 * same) return 'diagonal-large';
  return same > 1.4 * diagonal ? 'same-rail-large' : 'wanders';
};

const meterTwoStages: Answer = ({ layout }) => {
  if (!isQuietAtRest(layout)) return;
  const reads = (piece: PieceId, traffic: 'standing' | 'half'): number => {
    const { world } = run(layout, worldOf(layout, [], traffic), 0.1);
    return meterReads(layout, world, ...bothRails(piece)).ac;
  };
  const idle = [reads('old-gap', 'standing'), reads('new-gap', 'standing')] as const;
  if (Math.min(...idle) < 3) return 'one-zero';
  if (Math.abs(idle[0] - idle[1]) > 0.8) return 'differ-idle';
  const loaded = [reads('old-gap', 'half'), reads('new-gap', 'half')] as const;
  return Math.abs(loaded[0] - loaded[1]) > 0.8 ? 'differ-loaded' : 'alike';
};

const meterAlongTheWay: Answer = ({ layout }) => {
  if (!isQuietAtRest(layout)) return;
  const loaded = bridged(layout, across('resistor', ...bothRails('new-far'), 20));
  const unit = stageVolts(loaded, 1, 'half');
  const [near, mid, far] = NEW_PIECES.map((piece) => volts(loaded, piece, 'half'));
  if (near === undefined || mid === undefined || far === undefined || Math.min(unit, far) < 4) return;
  // The bus ends below the last piece that has wires of its own.
  const fed = NEW_PIECES.findLast((piece) => hasOwnWires(layout, piece)) ?? 'new-gap';
  const end = volts(loaded, fed, 'half');
  const bus = unit - end;
  const rails = end - far;
  if (Math.max(bus, rails) < 0.7) return unit < idleVolts(layout, 0) - 1 ? 'at-the-unit' : 'none';
  if (bus > rails) return 'in-the-bus';
  return mid - far > 0.75 * rails ? 'at-one-joiner' : 'in-the-rails';
};

const hasOwnWires = ({ feeders }: TableLayout, piece: PieceId): boolean =>
  feeders.some((feeder) => feeder.stage === 1 && feeder.piece === piece && feeder.state === 'firm');

const meterSupply: Answer = (asked) => {
  const { layout } = asked;
  const { supplies } = layout;
  if (supplies.some(({ fits, defect, plugged }) => !(fits && plugged) || defect === 'dead')) return 'wrong-or-none';
  const offs = shutdownOf(asked)?.offs ?? [];
  if (offs.some(({ kind }) => kind !== 'trip' && kind !== 'hot')) return 'collapses';
  return Math.abs(supplies[0].volts - supplies[1].volts) > 0.9 ? 'two-differ' : 'steady';
};

const meterSupplyCurrent: Answer = (asked) => {
  const { layout } = asked;
  const amps = (traffic: 'lifted' | 'all', stage: StageIndex): number => {
    const one = traffic === 'all' ? withRunner(layout) : layout;
    const runner = { ...one, consumers: one.consumers.map((consumer) => ({ ...consumer, inrush: 0 })) };
    return run(runner, worldOf(runner, [], traffic), 0.04).moment.plus.supplyAmps[stage];
  };
  if (atRest(layout, 'lifted').offs.length > 0) return 'high-idle';
  const idle = Math.max(amps('lifted', 0), amps('lifted', 1));
  if (idle > 0.2 * layout.stages[0].trip + 0.1) return 'high-idle';
  if (isHungry(layout)) return 'one-hungry';
  const near = ([0, 1] as const).some((stage) => {
    const { trip, continuous } = layout.stages[stage];
    const { amps: most, continuous: heat } = layout.supplies[stage];
    return (
      amps('all', stage) > 0.85 * Math.min(trip, most, Math.max(continuous, 0.9 * trip), Math.max(heat, 0.9 * most))
    );
  });
  if (near) return 'near-limit';
  const scene = shutdownOf(asked)?.scene;
  return scene !== undefined && scene !== 'evening' ? 'leaps' : 'well-below';
};

const meterOhmsBetweenRails: Answer = ({ layout }) => {
  const ohms = (one: TableLayout): number => ohmsBetween(one, ...bothRails('new-mid'), 1);
  const is = ohms(layout);
  const other = ohms(thrown(layout));
  if (is < 10 !== other < 10) return 'with-one-setting';
  if (is < 10) return 'short';
  return is < 1000 ? 'some-ohms' : 'high';
};

const meterAcrossTheGap: Answer = ({ layout }) => {
  const ohms = (rail: 'a' | 'b'): number => {
    const of = (one: TableLayout): number => ohmsBetween(one, ['old-gap', rail], ['new-gap', rail], 0);
    return Math.min(of(layout), of(thrown(layout)));
  };
  const [a, b] = [ohms('a'), ohms('b')];
  const through = [a, b].filter((one) => one < 5).length;
  if (through === 2) return 'both-through';
  if (through === 1) return 'one-through';
  return Math.min(a, b) < 1e4 ? 'some-ohms' : 'open-on-both';
};

/** Ohms of each rail over the ends of the loop, everything unplugged: the lower of the two ends. */
const loopOhms = (layout: TableLayout): readonly [a: number, b: number] => {
  const ends = layout.joins.filter(({ from, to }) => from === 'loop' || to === 'loop');
  return [Math.min(...ends.map(({ ohmsA }) => ohmsA)), Math.min(...ends.map(({ ohmsB }) => ohmsB))];
};

const throughAtLoop = (layout: TableLayout): number => loopOhms(layout).filter((ohms) => ohms < 5).length;

// With trouble at a reversing section the boundary is that of the loop.
const AT_THE_LOOP: Readonly<Partial<Record<CheckId, Answer>>> = {
  'other-locomotive-runs-on': ({ layout }) => (throughAtLoop(layout) === 2 ? 'runs-on' : 'stops'),
  'coach-in-far-part': ({ layout }) => (throughAtLoop(layout) === 2 ? 'lit' : 'dark'),
  'jumper-test': ({ layout }) =>
    (['dead-with-each', 'alive-with-one', 'alive-without'] as const)[throughAtLoop(layout)],
  'meter-across-the-gap': ({ layout }) =>
    (['open-on-both', 'one-through', 'both-through'] as const)[throughAtLoop(layout)],
};

const ANSWERS: Readonly<Partial<Record<CheckId, Answer>>> = {
  'danger-now': ({ layout }) => (layout.secondSource === undefined ? 'none' : 'analogue-transformer'),
  'when-it-happens': whenItHappens,
  'what-goes-dark': whatGoesDark,
  'how-it-comes-back': howItComesBack,
  'which-vehicles': whichVehicles,
  'which-places': whichPlaces,
  'last-change': ({ layout }) => layout.lastChange,
  'booster-lamp': boosterLamp,
  'command-display': commandDisplay,
  'supply-lamp': supplyLamp,
  'read-labels': readLabels,
  'which-case-hot': whichCaseHot,
  'put-supplies-back': putSuppliesBack,
  'borrow-supply': borrowSupply,
  'feed-from-other-unit': feedFromOtherUnit,
  'track-plug-pulled': trackPlugPulled,
  'each-stage-alone': eachStageAlone,
  'lamp-on-the-strip': ({ layout }) =>
    layout.supplies.some(({ mainsOhms }) => mainsOhms > 0) ? 'dims-or-flickers' : 'steady',
  'cool-air': coolAir,
  'computer-and-earth': ({ layout }) => (layout.computerCable ? undefined : 'none-there'),
  'unit-settings': unitSettings,
  'vehicle-in-far-part': vehicleInFarPart,
  'same-locomotive-in-old-part': sameLocomotiveInOldPart,
  'look-at-control-cable': ({ layout }) => CABLE[layout.link.state],
  'pull-control-cable': pullControlCable,
  'look-at-feed-piece': ({ layout }) => (layout.capacitor > 0 ? 'capacitor-or-choke' : 'plain'),
  'own-throttle': ({ layout }) => (layout.stages[1].ownCommands ? 'drives-there' : 'has-none'),
  'follow-every-wire': followEveryWire,
  'look-at-feed-wires': lookAtFeedWires,
  'longer-locomotive': longerLocomotive,
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
  'load-test': loadTestAnswer,
  'coin-near': coin('new-gap', 'off-late'),
  'coin-far': coin('new-far', 'off-at-once'),
  'short-locomotive-through-loop': shortThroughLoop,
  'what-reverses': whatReverses,
  'does-it-reverse': doesItReverse,
  'accessories-without-trains': accessoriesAreWell('not-affected'),
  'one-accessory-or-all': accessoriesAreWell('none'),
  'accessory-moment': accessoriesAreWell('at-random'),
  'what-else-happens': whatElseHappens,
  'move-the-plugs': movePlugs,
  'meter-output': meterOutput,
  'meter-direct-volts': meterDirectVolts,
  'meter-same-and-diagonal': meterSameAndDiagonal,
  'meter-two-stages': meterTwoStages,
  'meter-along-the-way': meterAlongTheWay,
  'meter-supply': meterSupply,
  'meter-supply-current': meterSupplyCurrent,
  'meter-ohms-between-rails': meterOhmsBetweenRails,
  'meter-across-the-gap': meterAcrossTheGap,
};

/** Checks that the circuit can answer. */
export const TABLE_CHECKS: readonly string[] = Object.keys(ANSWERS);

/**
 * The option that a person with this layout would choose, or undefined where they cannot tell (a skip). Complaint and check are ids of
 * the fault model; unknown ones are skipped.
 */
export function answerCheck(layout: TableLayout, complaint: string, check: string): string | undefined {
  const known = COMPLAINT_SIGNS.find(({ id }) => id === complaint)?.id;
  const table = known === 'loop-trips' ? { ...ANSWERS, ...AT_THE_LOOP } : ANSWERS;
  const found = Object.entries(table).find(([id]) => id === check)?.[1];
  if (known === undefined || !checksFor(known).some(({ id }) => id === check)) return undefined;
  return found?.({ layout, complaint: known });
}
