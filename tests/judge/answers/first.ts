// What a person answers to the early questions.
import type { PieceId, TableLayout } from '../../../src/engine/table/layout.ts';
import type { FIRST_CHECKS } from '../../../src/wizards/put-it-right/faults/checks-first.ts';
import type { ComplaintId } from '../../../src/wizards/put-it-right/faults/rows.ts';
import type { Situation } from '../complaints.ts';
import {
  inFarPart,
  inPiece,
  isFed,
  isWeakVehicle,
  leakWatts,
  NEW_PIECES,
  runsBeyond,
  shutdownOf,
} from '../complaints.ts';
import { coinTest } from '../instruments.ts';
import type { Off, VehicleKind } from '../observation.ts';
import type { Shutdown } from '../scenes.ts';
import {
  crossed,
  crossedRound,
  drops,
  hasRound,
  overTurnout,
  restState,
  stoodAcross,
  stoodIn,
  throughLoop,
  volts,
} from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { isCured, isHungry, isLasting, without } from './shared.ts';

const AT_THE_GAP: readonly ComplaintId[] = ['stops-at-gap', 'trips-at-gap', 'jerks-at-gap', 'still-runs-past-gap'];

const whenItHappens: Look = (asked) => {
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

const whatGoesDark: Look = (asked) => {
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

const howItComesBack: Look = (asked) => {
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

const whichVehicles: Look = (asked) => {
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

const byLoad = (asked: Situation): string => {
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

const whichPlaces: Look = (asked) => {
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

export const FIRST_ANSWERS = {
  'danger-now': ({ layout }) => (layout.secondSource === undefined ? 'none' : 'analogue-transformer'),
  'when-it-happens': whenItHappens,
  'what-goes-dark': whatGoesDark,
  'how-it-comes-back': howItComesBack,
  'which-vehicles': whichVehicles,
  'which-places': whichPlaces,
  'last-change': ({ layout }) => layout.lastChange,
} as const satisfies Answered<(typeof FIRST_CHECKS)[number]['id']>;
