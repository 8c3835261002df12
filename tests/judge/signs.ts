// Signs read off the virtual layout: what an all-seeing observer would note, sign by sign, from what the circuit does. Nothing here is read off a
// cause's row.
import { DRAWS } from '../../src/engine/power/draws.ts';
import type { TableLayout } from '../../src/engine/table/layout.ts';
import { meterReads } from '../../src/engine/table/meter.ts';
import { idleVolts } from '../../src/engine/table/moment.ts';
import { lampOf } from '../../src/engine/table/table.ts';
import type { SignId, SignValue } from '../../src/wizards/put-it-right/model/signs.ts';
import { acrossTheGap, swapTrackWires } from './answers/gap.ts';
import {
  clipPowerToRails,
  dimOrSnap,
  halveTheTrains,
  helpingFeeder,
  middleJoin,
  moveTrainsOver,
  throwTurnouts,
} from './answers/load.ts';
import { meterAlongTheWay, meterSupplyCurrent } from './answers/meter.ts';
import { bothLit, gapOf, hasBridge, isHungry, isLasting, isQuietAtRest, troubled } from './answers/shared.ts';
import {
  borrowSupply,
  coolAir,
  exchangeCable,
  exchangeSupplies,
  exchangeUnits,
  putSuppliesBack,
} from './answers/units.ts';
import type { Situation } from './complaints.ts';
import {
  inFarPart,
  inPiece,
  isBlink,
  isFed,
  isWeakVehicle,
  leakWatts,
  NEW_PIECES,
  runsBeyond,
  shutdownOf,
} from './complaints.ts';
import type { GapSides } from './instruments.ts';
import { coinTest, empty, gapLamps, ohmsBetween } from './instruments.ts';
import type { Off, VehicleKind } from './observation.ts';
import { bothRails, pulled } from './observation.ts';
import type { Shutdown } from './scenes.ts';
import {
  atRest,
  crossed,
  crossedRound,
  drops,
  emptyState,
  evening,
  hasRound,
  isNew,
  overTurnout,
  restState,
  stoodAcross,
  stoodIn,
  throughLoop,
  thrown,
  volts,
} from './scenes.ts';

type Read<Id extends SignId> = (asked: Situation) => SignValue<Id> | undefined;

// --- what happens ------------------------------------------------------------------------------------------------------------

/** A unit that goes off and is back in a blink, with nothing standing that keeps it off, only makes trains jerk. */
const isHardlySeen = (asked: Situation): boolean => isBlink(asked.layout) && !isLasting(asked);

/** What leaks through damp ballast warms a metre of it, and no spot. */
const isHotSpot = (layout: TableLayout): boolean => leakWatts(layout) > 5 && !hasBridge(layout, 'damp');

const trouble: Read<'trouble'> = (asked) => {
  const { layout, complaint } = asked;
  const off = shutdownOf(asked);
  if (off !== undefined) return isHardlySeen(asked) && off.offs[0]?.kind === 'trip' ? 'jerks' : 'switches-off';
  if (complaint === 'still-runs-past-gap') return 'none';
  if (isHotSpot(layout)) return 'gets-hot';
  if (layout.stopped || !isFed(layout)) return 'stops-dark';
  const { state } = inFarPart(layout);
  if (state === 'dark') return 'stops-dark';
  if (state === 'takes-off') return 'runs-by-itself';
  if (state === 'lit-but-deaf') return 'stops-lit';
  if (complaint === 'slow-far-away') return 'slow-or-dim';
  if (crossed(layout, layout.usual).outcome === 'stops') return 'stops-dark';
  return complaint === 'short-not-noticed' ? 'none' : 'jerks';
};

const AT_THE_GAP: readonly Situation['complaint'][] = [
  'stops-at-gap',
  'trips-at-gap',
  'jerks-at-gap',
  'still-runs-past-gap',
];

const WHEN = {
  'from-switch-on': 'at-switching-on',
  'at-the-gap': 'at-the-gap',
  'at-another-place': 'at-one-place',
  'with-traffic': 'with-traffic',
  'after-minutes': 'after-minutes',
} as const satisfies Readonly<Record<Shutdown['when'], SignValue<'when'>>>;

const when: Read<'when'> = (asked) => {
  const off = shutdownOf(asked);
  if (off !== undefined) return whenOff(asked.layout, off);
  const { layout, complaint } = asked;
  if (hasUnitFault(layout)) return 'at-switching-on';
  if (!layout.vehicles.locomotive.obeys) return 'always';
  if (layout.spots.some(({ kind }) => kind === 'dirty')) return 'at-one-place';
  const { state, piece } = inFarPart(layout);
  if (AT_THE_GAP.includes(complaint)) return piece === 'new-far' && state === 'dark' ? 'at-one-place' : 'at-the-gap';
  if (complaint === 'short-not-noticed') return leakWatts(layout) > 5 ? 'always' : undefined;
  return complaint === 'slow-far-away' ? whenSlow(layout) : 'always';
};

const whenSlow = (layout: TableLayout): SignValue<'when'> => {
  const { beyondGap, firstHalf, secondHalf } = drops(layout, 'run');
  if (secondHalf > 0.06 && firstHalf < 0.02) return 'at-one-place';
  if (firstHalf + secondHalf > 0.06)
    return volts(layout, 'new-far') < 0.94 * volts(layout, 'new-gap') ? 'always' : 'with-traffic';
  return beyondGap > 0.06 ? 'at-the-gap' : 'with-traffic';
};

const whenOff = (layout: TableLayout, off: Shutdown): SignValue<'when'> => {
  if (off.scene === 'thrown') return 'when-thrown';
  if (off.when === 'at-the-gap' && tripsInside(layout))
    return off.scene === 'standing' ? 'when-set-on' : 'with-traffic';
  return off.scene === 'standing' && layout.vehicles.locomotive.wheelShort === 'always'
    ? 'when-set-on'
    : WHEN[off.when];
};

/** One running train puts a unit out wherever it is, and not only at the gap. */
const tripsInside = (layout: TableLayout): boolean =>
  (['old-gap', 'new-mid'] as const).some((piece) => stoodIn(layout, piece).offs.length > 0);

/** A unit that reports a fault, or gets what it cannot work with, from the first moment. */
const hasUnitFault = (layout: TableLayout): boolean =>
  layout.supplies.some(({ fits, defect }) => !fits || defect === 'dead') ||
  restState(layout, 0) === 'fault' ||
  restState(layout, 1) === 'fault';

// --- what goes off, and how it comes back ----------------------------------------------------------------------------------------

const goesOff: Read<'goes-off'> = (asked) => {
  const off = shutdownOf(asked);
  const { layout } = asked;
  if (off === undefined) return layout.stopped ? 'all-at-once' : 'nothing';
  return isHardlySeen(asked) && off.offs[0]?.kind === 'trip' ? 'nothing' : whichParts(layout, off.offs);
};

// A command station that is out takes the booster's signal along, unless the bus goes on without its track output.
const whichParts = (layout: TableLayout, offs: readonly Off[]): SignValue<'goes-off'> => {
  const [first] = offs;
  const other = offs.find(({ stage }) => stage !== first?.stage);
  if (first === undefined) return 'nothing';
  const takesBoth = first.stage === 0 && (first.kind !== 'trip' || layout.link.from === 'track-output');
  if (layout.reportsShorts || takesBoth) return 'all-at-once';
  if (other === undefined) return 'that-part';
  return other.time - first.time < 0.15 ? 'all-at-once' : 'one-after-the-other';
};

// Where trains move, what goes off comes back as its unit does, and goes off once more where the train still stands.
const STANDS: readonly Shutdown['scene'][] = ['empty', 'standing', 'thrown'];

const comesBack: Read<'comes-back'> = (asked) => {
  const off = shutdownOf(asked);
  const { layout } = asked;
  if (off === undefined) return layout.stopped ? 'button' : 'never-off';
  const [first] = off.offs;
  if (first === undefined) return 'never-off';
  if (first.kind === 'hot' || first.kind === 'supply-hot') return 'minutes';
  if (first.kind !== 'trip') return 'seconds';
  if (STANDS.includes(off.scene) && isLasting(asked)) return 'when-removed';
  if (isBlink(layout)) return 'blink';
  return layout.stages[first.stage].comesBack === 'latched' ? 'button' : 'seconds';
};

const LAMPS = {
  ready: 'ready',
  fault: 'fault',
  'no-signal': 'no-signal',
  off: 'dark',
  starting: 'restarts',
} as const satisfies Readonly<Record<ReturnType<typeof lampOf>, SignValue<'unit-shows'>>>;

const unitShows: Read<'unit-shows'> = (asked) => {
  const { layout } = asked;
  const stage = troubled(asked);
  const off = shutdownOf(asked)?.offs[0];
  if (off?.kind === 'restart' || off?.kind === 'supply-off' || off?.kind === 'supply-hot') return 'restarts';
  if (off !== undefined) return 'fault';
  if (layout.stopped) return 'stopped';
  return LAMPS[lampOf(restState(layout, stage), layout.stages[stage].withoutSignal)];
};

// --- where, and which vehicles -----------------------------------------------------------------------------------------------------

/** Whether this vehicle meets the trouble at the place where the trouble is. */
const meets = (asked: Situation, kind: VehicleKind): boolean => {
  const { layout } = asked;
  const scene = shutdownOf(asked)?.scene ?? 'gap';
  if (scene === 'turnout') return overTurnout(layout, kind).offs.length > 0;
  if (scene === 'loop') return throughLoop(layout, kind).offs.length > 0;
  if (scene === 'round') return crossedRound(layout, kind).offs.length > 0;
  const { outcome, blinks } = crossed(layout, kind);
  return outcome !== 'crosses' || blinks > 0;
};

const vehicles: Read<'vehicles'> = (asked) => {
  const { layout, complaint } = asked;
  if (complaint === 'still-runs-past-gap') return whichRunsOn(layout);
  const off = shutdownOf(asked);
  if (off?.scene === 'empty' || off?.scene === 'thrown' || hasUnitFault(layout)) return 'none-needed';
  if (off !== undefined && ['standing', 'traffic', 'evening'].includes(off.scene)) return byLoad(asked);
  if (!layout.vehicles.locomotive.obeys) return 'one-only';
  const [one, short, long, rake] = (['locomotive', 'short', 'long', 'rake'] as const).map((kind) => meets(asked, kind));
  if (!(one || short) && (long || rake)) return 'lit-or-long';
  if (one && !short && !long) return 'one-only';
  if ((one || short) && !long) return 'short-ones';
  return 'every-one';
};

const whichRunsOn = (layout: TableLayout): SignValue<'vehicles'> => {
  if (runsBeyond(layout, 'long')) return 'every-one';
  return layout.usual === 'rake' ? 'lit-or-long' : 'one-only';
};

const byLoad = (asked: Situation): SignValue<'vehicles'> => {
  const { layout } = asked;
  if (layout.vehicles.locomotive.wheelShort === 'always' || isHungry(layout)) return 'one-only';
  return halveTheTrains(asked) === 'lit-coaches' ? 'lit-or-long' : 'many';
};

const where: Read<'where'> = (asked) => {
  const off = shutdownOf(asked);
  const { layout } = asked;
  if (off !== undefined) return whereOff(layout, off);
  if (layout.stopped || !layout.vehicles.locomotive.obeys) return 'everywhere';
  if (asked.complaint === 'still-runs-past-gap') return 'gaps';
  if (asked.complaint === 'short-not-noticed') return whereWeakShort(layout);
  const { state, piece } = inFarPart(layout);
  if (state !== 'runs-well' && state !== 'runs-poorly') return piece === 'new-gap' ? 'part' : 'spot';
  if (layout.spots.some(({ kind }) => kind === 'dirty') || isWeakVehicle(layout)) return 'everywhere';
  return whereDrops(layout) ?? (isPoorAnywhere(layout) ? 'part' : whichGaps(layout));
};

const isPoorAnywhere = (layout: TableLayout): boolean =>
  NEW_PIECES.every((piece) => inPiece(layout, piece) === 'runs-poorly');

/** Where a short does not put the unit out, or something is warm. */
const whereWeakShort = (layout: TableLayout): SignValue<'where'> => {
  if (leakWatts(layout) > 5) return 'spot';
  if (isMissed(layout, 'new-gap')) return 'part';
  return whereDrops(layout) ?? (isMissed(layout, 'new-mid') ? 'far' : 'spot');
};

/** A coin there stays on for half a second or more. */
const isMissed = (layout: TableLayout, piece: 'new-gap' | 'new-mid'): boolean =>
  (coinTest(layout, piece).trips?.seconds ?? 9) > 0.5;

const whereDrops = (layout: TableLayout): SignValue<'where'> | undefined => {
  const { beyondGap, firstHalf, secondHalf } = drops(layout, 'run');
  if (secondHalf > 0.06 && firstHalf < 0.02) return 'spot';
  if (firstHalf + secondHalf > 0.06) return 'far';
  return beyondGap > 0.06 ? 'part' : undefined;
};

/** Something between the two units themselves, which shows at each of their gaps. */
const isBetweenUnits = (layout: TableLayout): boolean => {
  const [old, far] = [volts(layout, 'old-gap'), volts(layout, 'new-gap')];
  return stoodAcross(layout, 'locomotive').edgeAmps > 0.3 || (Math.min(old, far) > 5 && Math.abs(old - far) > 0.8);
};

// Where there is only one gap, it is every gap.
const whichGaps = (layout: TableLayout): SignValue<'where'> => {
  if (!hasRound(layout)) return 'gaps';
  const { blinks, offs, outcome } = crossedRound(layout, layout.usual);
  return blinks > 0 || offs.length > 0 || outcome === 'stops' || isBetweenUnits(layout) ? 'gaps' : 'spot';
};

const whereOff = (layout: TableLayout, { scene, offs }: Shutdown): SignValue<'where'> => {
  if (layout.vehicles.locomotive.wheelShort === 'always' || isHungry(layout)) return 'everywhere';
  if (scene === 'turnout' || scene === 'thrown') return 'turnout';
  if (scene === 'loop') return 'loop';
  if (scene === 'round') return 'spot';
  if (scene === 'gap' || scene === 'busy-gap') {
    if (tripsInside(layout)) return 'everywhere';
    return whichGaps(layout);
  }
  const stages = new Set(offs.map(({ stage }) => stage));
  return stages.size > 1 ? 'everywhere' : 'part';
};

// --- power and commands ------------------------------------------------------------------------------------------------------------

/** The piece where the trouble is looked for. */
const railVolts: Read<'volts'> = ({ layout }) => {
  if (layout.feeders.some(({ state }) => state === 'programming')) return 'moments';
  const { piece } = inFarPart(layout);
  const now = volts(layout, piece, 'standing');
  if (atRest(layout, 'lifted').offs.length > 0 || now < 4) return 'none';
  const { world } = empty(layout, 0.5, 'standing');
  if (meterReads(layout, world, ...bothRails(piece)).dc > 2) return 'direct';
  const should = Math.max(idleVolts(layout, 0), idleVolts(layout, 1));
  if (now < should - 1) return 'low';
  return isQuietAtRest(layout) && volts(layout, 'new-far', 'half') < 0.9 * now ? 'low-loaded' : 'full';
};

const commands: Read<'commands'> = ({ layout }) => {
  const { piece } = inFarPart(layout);
  const { lit, hears } = stoodIn(layout, piece);
  if (!lit || layout.stopped || hears === 'direct') return 'none';
  if (hears === 'foreign') return 'other';
  if (hears === 'garbled') return 'spoiled';
  return layout.vehicles.locomotive.obeys ? 'arrive' : 'one-deaf';
};

// --- the boundary --------------------------------------------------------------------------------------------------------------------

const sides: Read<'sides'> = (asked) => {
  const { layout } = asked;
  const gap: GapSides = gapOf(asked);
  if (atRest(layout, 'lifted').offs.length > 0 || !bothLit(layout, gap)) return;
  if (Math.abs(layout.stages[0].late - layout.stages[1].late) > 1.5e-6 || layout.stages[1].ownCommands) return 'drift';
  const { a, b } = gapLamps(layout, ['a', 'b'], gap);
  return [a, b].some((glow) => glow === 'light' || glow === 'over-bright') ? 'reversed' : 'agree';
};

const step: Read<'step'> = ({ layout }) => {
  const apart = (traffic: 'standing' | 'half'): number =>
    Math.abs(volts(layout, 'old-gap', traffic) - volts(layout, 'new-gap', traffic));
  if (Math.min(volts(layout, 'old-gap'), volts(layout, 'new-gap')) < 3) return;
  if (apart('standing') > 0.9) return 'idle';
  return isQuietAtRest(layout) && apart('half') > 0.9 ? 'loaded' : 'none';
};

const isTouching = ({ joins }: TableLayout): boolean =>
  joins.some(({ kind, ohmsA, ohmsB }) => kind === 'gap' && Number.isFinite(ohmsA) && Number.isFinite(ohmsB));

const cut: Read<'cut'> = ({ layout }) => {
  const ohms = (rail: 'a' | 'b'): number => {
    const of = (one: TableLayout): number => ohmsBetween(one, ['old-gap', rail], ['new-gap', rail], 0);
    return Math.min(of(layout), of(thrown(layout)));
  };
  const loop = layout.joins.filter(({ from, to }) => layout.hasLoop && (from === 'loop' || to === 'loop'));
  const [a, b] = [
    Math.min(ohms('a'), ...loop.map(({ ohmsA }) => ohmsA)),
    Math.min(ohms('b'), ...loop.map(({ ohmsB }) => ohmsB)),
  ];
  if (isTouching(layout)) return 'touching';
  const through = [a, b].filter((one) => one < 5).length;
  if (through === 2) return 'both-joined';
  if (through === 1) return 'one-joined';
  return Math.min(a, b) < 1e4 ? 'faintly-joined' : 'both-cut';
};

const unplugging: Read<'unplugging'> = ({ layout }) => {
  if (hasBridge(layout, 'frog-wire')) return 'frog-wire';
  if (hasBridge(layout, 'detector') || layout.diodeDetector) return 'detector';
  return hasBridge(layout, 'lamp') ? 'lamp-or-decoder' : 'no-change';
};

const redRail: Read<'red-rail'> = ({ layout }) => {
  const isCrossed = layout.joins.some(({ from, to, crossed: is }) => is && from !== 'loop' && to !== 'loop');
  return isCrossed || layout.hasLoop ? 'meets-the-other' : 'meets-itself';
};

const unfedTest: Read<'unfed-test'> = ({ layout, complaint }) => {
  if (complaint !== 'still-runs-past-gap') return;
  if (!layout.trackPulled[1]) return 'fed-already';
  if (layout.usual === 'rake') return 'still-across';
  if (layout.usual === 'stored') return 'rolls-on';
  return runsBeyond(layout, layout.usual) ? 'lit-beyond' : 'stops';
};

// --- shorts and losses ---------------------------------------------------------------------------------------------------------------

const isOffEmpty = (layout: TableLayout): boolean => atRest(layout, 'lifted').offs.some(({ kind }) => kind === 'trip');

const short: Read<'short'> = (asked) => {
  const { layout } = asked;
  if (isOffEmpty(layout)) return standingShort(layout);
  if (isOffEmpty(thrown(layout))) return 'one-setting';
  const stage = troubled(asked);
  if (restState(layout, stage) === 'fault' && emptyState(pulled(layout, stage), stage) === 'fault')
    return layout.stages[stage].defect === undefined ? 'only-shown' : 'unit';
  if (!isQuietAtRest(layout) || layout.vehicles.locomotive.wheelShort === 'always') return shortByVehicle(layout);
  return leakWatts(layout) > 5 ? 'weak' : 'none';
};

const standingShort = (layout: TableLayout): SignValue<'short'> => {
  if (!isOffEmpty(thrown(layout))) return 'one-setting';
  const isOneAlone = [pulled(layout, 0), pulled(layout, 1)].some(isOffEmpty);
  if (!isOneAlone) return 'both-on';
  return helpingFeeder(layout) ? 'feeder' : 'track';
};

const shortByVehicle = ({ vehicles: all }: TableLayout): SignValue<'short'> =>
  all.locomotive.wheelShort === 'always' ? 'vehicle' : 'none';

const ohms: Read<'ohms'> = ({ layout }) => {
  const is = ohmsBetween(layout, ...bothRails('new-mid'), 1);
  if (is < 10) return 'short';
  return is < 1000 ? 'some' : 'open';
};

const settingMatters: Read<'setting-matters'> = (asked) => {
  const change = throwTurnouts(asked);
  if (change === 'trouble-clears') return 'short-in-one';
  return change === 'part-comes-alive' ? 'dead-in-one' : 'no';
};

const LOSS = {
  none: 'none',
  'in-the-bus': 'bus',
  'in-the-rails': 'rails',
  'at-one-joiner': 'joint',
  'at-the-unit': 'at-the-unit',
} as const satisfies Readonly<Record<NonNullable<ReturnType<typeof meterAlongTheWay>>, SignValue<'loss'>>>;

const loss: Read<'loss'> = (asked) => {
  const found = meterAlongTheWay(asked);
  return found === undefined ? undefined : LOSS[found];
};

const contact: Read<'contact'> = ({ layout }) => {
  if (layout.lengths.dead > 0.03) return 'wide';
  if (layout.spots.some(({ kind }) => kind === 'dirty')) return 'dirty';
  if (layout.spots.some(({ kind }) => kind === 'step')) return 'plain-step';
  const join = middleJoin(layout);
  const isPoor = join !== undefined && Math.max(join.ohmsA, join.ohmsB) > 4 * Math.min(join.ohmsA, join.ohmsB);
  return isPoor ? 'flickers' : 'good';
};

/** On a dirty spot and on a dead piece wheels lose what they stand on, and so does a locomotive that stands on one wheel of each rail. */
const wheelContact: Read<'wheel-contact'> = ({ layout }) => {
  const isLost = layout.lengths.dead > 0.03 || layout.spots.some(({ kind }) => kind === 'dirty');
  const { pickUps } = layout.vehicles.locomotive;
  return isLost || pickUps.length <= ONE_A_SIDE ? 'breaks' : 'holds';
};
/** Wheels that pick up, one on each rail. */
const ONE_A_SIDE = 2;

const DEAD_RAIL = { 'one-rail-lacks': 'one', 'both-lack': 'both', 'stays-dead': 'none' } as const;

const deadRail: Read<'dead-rail'> = (asked) => {
  const { layout } = asked;
  // Nothing of that part is live: both rails lack power.
  if (inFarPart(layout).state === 'dark' && !layout.trackPulled[1] && !isFed(layout)) return 'both';
  const found = clipPowerToRails(asked);
  if (found === undefined) return;
  return DEAD_RAIL[found];
};

const alongTheTrack: Read<'along-the-track'> = ({ layout }) => {
  if (hasBridge(layout, 'metal', 'rod')) return 'metal';
  // What a leak looks like is not on the table.
  if (hasBridge(layout, 'leak')) return;
  return hasBridge(layout, 'damp') ? 'wet' : 'nothing';
};

// --- wires, units, supplies ----------------------------------------------------------------------------------------------------------

const feedWires: Read<'feed-wires'> = ({ layout }) => {
  const ours = layout.feeders.filter(({ stage }) => stage === 1);
  if (layout.trackPulled[1] || ours.every(({ state }) => state === 'missing')) return 'missing';
  if (ours.some(({ state }) => state === 'programming')) return 'wrong-socket';
  if (ours.some(({ state }) => state === 'broken')) return 'one-loose';
  return layout.feeders.some(({ stage, piece }) => stage === 0 && isNew(piece)) ? 'to-other-part' : 'right';
};

const LINK = {
  good: 'right',
  missing: 'missing',
  'wrong-socket': 'wrong-socket',
  faulty: 'damaged',
} as const satisfies Readonly<Record<TableLayout['link']['state'], SignValue<'link'>>>;

const link: Read<'link'> = ({ layout }) => (layout.link.inverted ? 'mirrored' : LINK[layout.link.state]);

const oldWiring: Read<'old-wiring'> = ({ layout }) => {
  if (layout.secondSource !== undefined) return 'live-source';
  return hasBridge(layout, 'old-wiring') ? 'dead-wires' : 'none';
};

const supplyLamp: Read<'supply-lamp'> = (asked) => {
  const { plugged, defect } = asked.layout.supplies[troubled(asked)];
  if (!plugged || defect === 'dead') return 'dark';
  const offs = shutdownOf(asked)?.offs ?? [];
  return offs.some(({ kind }) => kind !== 'trip' && kind !== 'hot') ? 'pulses' : 'steady';
};

const labels: Read<'labels'> = ({ layout }) => {
  const { supplies, stages } = layout;
  if (supplies.some(({ fits }) => !fits)) return 'wrong-kind';
  if (Math.abs(supplies[0].volts - supplies[1].volts) > 0.9) return 'volts-differ';
  if (stages.some(({ trip }) => trip > 1.05 * DRAWS[layout.scale].tripCeiling)) return 'unit-too-big';
  return stages.some(({ trip }, i) => (supplies[i]?.amps ?? trip) < trip) ? 'too-few-amps' : 'fit';
};

const settings: Read<'settings'> = ({ layout }) => {
  const [first, second] = layout.stages;
  if (second.ownCommands) return 'sends-own';
  if (second.wrongFormat) return 'other-format';
  if (first.cutout !== second.cutout) return 'feedback-differs';
  if (Math.abs(first.late - second.late) > 1.5e-6) return 'kinds-differ';
  if (second.tripSeconds > 0.5 || second.trip > 1.3 * first.trip) return 'trip-wrong';
  const set = first.setVolts !== undefined && second.setVolts !== undefined;
  return set && Math.abs(first.setVolts - second.setVolts) > 1 ? 'volts-low' : 'right';
};

const supplyVolts: Read<'supply-volts'> = (asked) => {
  const { supplies } = asked.layout;
  if (supplies.some(({ plugged, defect }) => !plugged || defect === 'dead')) return 'none';
  if (supplies.some(({ fits }) => !fits)) return 'wrong';
  const offs = shutdownOf(asked)?.offs ?? [];
  return offs.some(({ kind }) => kind !== 'trip' && kind !== 'hot') ? 'collapses' : 'steady';
};

const hot: Read<'hot'> = (asked) => {
  const { layout } = asked;
  const kinds = evening(layout, 'all').offs.map(({ kind }) => kind);
  if (kinds.includes('hot')) return 'unit';
  if (kinds.includes('supply-hot')) return 'supply';
  if (isHotSpot(layout)) return 'joint-or-rail';
  return isHungry(layout) ? 'vehicle' : 'nothing';
};

const DRAW = {
  'well-below': 'well-below',
  'near-limit': 'near-the-limit',
  above: 'above',
  'high-idle': 'high-idle',
} as const satisfies Readonly<Record<ReturnType<typeof meterSupplyCurrent>, SignValue<'draw'>>>;

const loosePlug: Read<'loose-plug'> = ({ layout }) => {
  if (layout.supplies.some(({ mainsOhms }) => mainsOhms > 0)) return 'mains-lead';
  if (layout.supplies.some(({ plugged }) => !plugged)) return 'supply-plug';
  if (layout.link.state === 'faulty') return 'control-cable';
  return layout.feeders.some(({ state }) => state === 'broken') ? 'track-plug' : 'none';
};

// --- loops and vehicles --------------------------------------------------------------------------------------------------------------

const loop: Read<'loop'> = ({ layout }) => {
  if (!layout.hasLoop) return 'no-loop';
  const { outcome, front, offs } = throughLoop(layout, 'locomotive');
  if (offs.length === 0) {
    if (throughLoop(layout, 'rake').offs.length > 0) return 'trips-long-only';
    return outcome === 'crosses' ? 'fine' : undefined;
  }
  if (layout.vehicles.locomotive.wheelShort === 'at-frog') return 'at-its-turnout';
  return front < 0.5 * layout.lengths.loop ? 'trips-entering' : 'trips-leaving';
};

const reverser: Read<'reverser'> = ({ layout }) => {
  if (!layout.hasLoop || layout.loopReverser.kind === 'none') return 'none-there';
  const { reversals, offs } = throughLoop(layout, layout.usual);
  if (reversals === 0) return 'silent';
  if (reversals > 2) return 'chatters';
  return offs.length > 0 ? 'acts-but-off' : 'acts';
};

const oneLoco: Read<'one-loco'> = ({ layout }) => {
  const { locomotive } = layout.vehicles;
  if (!locomotive.obeys) return 'another-number';
  if (locomotive.wheelShort === 'always') return 'shorts-alone';
  return isWeakVehicle(layout) ? 'runs-badly' : 'like-the-others';
};

const inHand: Read<'vehicle-in-hand'> = ({ layout }) => {
  const { locomotive, rake } = layout.vehicles;
  if (locomotive.wheelShort !== undefined && locomotive.wheelShort !== 'at-frog') return 'wheel-wrong';
  return rake.wheelShort === undefined ? 'nothing' : 'body-touches';
};

const SPARKS_BY = {
  'at-frog': 'at-a-frog',
  'at-turnouts': 'at-a-wheel',
  always: 'at-a-wheel',
  none: 'elsewhere',
} as const;

const sparks: Read<'sparks'> = (asked) => {
  const { layout } = asked;
  const off = shutdownOf(asked);
  if (off?.scene === 'turnout') return SPARKS_BY[layout.vehicles.locomotive.wheelShort ?? 'none'];
  if (off === undefined || off.scene === 'gap' || off.scene === 'round') {
    if (!isQuietAtRest(layout)) return;
    const { offs, edgeAmps } = acrossTheGap(asked);
    return offs.length > 0 || edgeAmps > 0.3 ? 'at-the-gap' : 'none';
  }
  return 'none';
};

const FEWER = {
  cured: 'helps',
  'one-alone-does-it': 'one-does-it',
  'lit-coaches': 'lit-do-it',
  'no-change': 'no-help',
} as const satisfies Readonly<Record<NonNullable<ReturnType<typeof halveTheTrains>>, SignValue<'fewer'>>>;

const MOVED = {
  cured: 'cured',
  'moves-along': 'goes-along',
  'no-change': 'no-change',
} as const satisfies Readonly<Record<NonNullable<ReturnType<typeof moveTrainsOver>>, SignValue<'moved-trains'>>>;

const EXCHANGED = { cured: 'goes-along', 'no-change': 'stays' } as const;

const exchanged = (found: keyof typeof EXCHANGED | undefined): 'goes-along' | 'stays' | undefined =>
  found === undefined ? undefined : EXCHANGED[found];

const COOLED = { 'much-longer': 'helps', 'no-change': 'no-help' } as const;

const BEFORE = { 'dims-first': 'dims', 'snaps-off': 'snaps', neither: 'not-off' } as const;

/** Every sign that the circuit of the virtual layout has, with how it is read off. */
export const SIGN_READS: { readonly [id in SignId]?: Read<id> } = {
  trouble,
  when,
  where,
  vehicles,
  since: ({ layout }) => layout.lastChange,
  'goes-off': goesOff,
  'comes-back': comesBack,
  'unit-shows': unitShows,
  volts: railVolts,
  commands,
  short,
  hot,
  draw: (asked) => DRAW[meterSupplyCurrent(asked)],
  sides,
  step,
  cut,
  loss,
  contact,
  'wheel-contact': wheelContact,
  'feed-wires': feedWires,
  link,
  'feed-piece': ({ layout }) => (layout.capacitor > 0 ? 'capacitor' : 'plain'),
  'old-wiring': oldWiring,
  swap: swapTrackWires,
  'goes-with-unit': exchangeUnits,
  'goes-with-supply': (asked) => {
    const isCured = borrowSupply(asked) === 'cured' || putSuppliesBack(asked) === 'cured';
    return isCured ? 'goes-along' : exchangeSupplies(asked);
  },
  'goes-with-cable': (asked) => exchanged(exchangeCable(asked)),
  fewer: (asked) => {
    const found = halveTheTrains(asked);
    return found === undefined ? undefined : FEWER[found];
  },
  cooling: (asked) => {
    const found = coolAir(asked);
    return found === undefined ? undefined : COOLED[found];
  },
  before: (asked) => BEFORE[dimOrSnap(asked)],
  'supply-lamp': supplyLamp,
  mains: ({ layout }) => (layout.supplies.some(({ mainsOhms }) => mainsOhms > 0) ? 'dips' : 'steady'),
  labels,
  settings,
  'supply-volts': supplyVolts,
  'loose-plug': loosePlug,
  ohms,
  loop,
  reverser,
  'setting-matters': settingMatters,
  unplugging,
  'one-loco': oneLoco,
  'vehicle-in-hand': inHand,
  sparks,
  'unfed-test': unfedTest,
  'red-rail': redRail,
  'moved-trains': (asked) => {
    const found = moveTrainsOver(asked);
    return found === undefined ? undefined : MOVED[found];
  },
  'dead-rail': deadRail,
  'along-the-track': alongTheTrack,
  varnish: ({ layout }) => (layout.vehicles.locomotive.wheelShort === 'at-frog' ? 'cured' : 'no-change'),
};

/** The value of a sign on this layout, or undefined where the circuit has it not, or nobody could tell here. */
export function signOf(asked: Situation, id: string): string | undefined {
  const found: [string, ((asked: Situation) => string | undefined) | undefined][] = Object.entries(SIGN_READS);
  return found.find(([sign]) => sign === id)?.[1]?.(asked);
}
