// What the meter shows.

import type { PieceId, StageIndex, TableLayout } from '../../../src/engine/table/layout.ts';
import type { Place } from '../../../src/engine/table/meter.ts';
import { meterReads } from '../../../src/engine/table/meter.ts';
import { idleVolts } from '../../../src/engine/table/moment.ts';
import { run, worldOf } from '../../../src/engine/table/protection.ts';
import type { METER_CHECKS } from '../../../src/wizards/put-it-right/faults/checks-meter.ts';
import { inFarPart, NEW_PIECES, shutdownOf } from '../complaints.ts';
import { across, beyond, bridged, empty, LAMP_OHMS, ohmsBetween } from '../instruments.ts';
import { bothRails } from '../observation.ts';
import { atRest, stageVolts, thrown, volts, withRunner } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { bothLit, gapOf, isHungry, isQuietAtRest } from './shared.ts';

/** Switching on with everything on the track puts a unit out, though the track itself is well: then nothing can be measured. */
const isOutByVehicles = (layout: TableLayout): boolean =>
  !isQuietAtRest(layout) && atRest(layout, 'lifted').offs.length === 0;

const meterOutput: Look = ({ layout }) => {
  if (isOutByVehicles(layout)) return;
  if (layout.feeders.some(({ state }) => state === 'programming')) return 'only-moments';
  if (stageVolts(layout, 1) < 4) return 'neither';
  const alive = NEW_PIECES.map((piece) => volts(layout, piece) > 4);
  if (alive.every((is) => is)) return 'both';
  return alive.some((is) => is) ? 'only-near-joint' : 'screws-only';
};

const meterDirectVolts: Look = ({ layout }) => {
  if (isOutByVehicles(layout)) return;
  const { world } = empty(layout, 0.5, 'standing');
  const { ac, dc } = meterReads(layout, world, ...bothRails(inFarPart(layout).piece));
  if (dc > 2) return 'several-volts';
  return ac < 3 ? 'dead' : 'about-zero';
};

const meterSameAndDiagonal: Look = (asked) => {
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

const meterTwoStages: Look = ({ layout }) => {
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

const meterAlongTheWay: Look = ({ layout }) => {
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

const meterSupply: Look = (asked) => {
  const { layout } = asked;
  const { supplies } = layout;
  if (supplies.some(({ fits, defect, plugged }) => !(fits && plugged) || defect === 'dead')) return 'wrong-or-none';
  const offs = shutdownOf(asked)?.offs ?? [];
  if (offs.some(({ kind }) => kind !== 'trip' && kind !== 'hot')) return 'collapses';
  return Math.abs(supplies[0].volts - supplies[1].volts) > 0.9 ? 'two-differ' : 'steady';
};

const meterSupplyCurrent: Look = (asked) => {
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

const meterOhmsBetweenRails: Look = ({ layout }) => {
  const ohms = (one: TableLayout): number => ohmsBetween(one, ...bothRails('new-mid'), 1);
  const is = ohms(layout);
  const other = ohms(thrown(layout));
  if (is < 10 !== other < 10) return 'with-one-setting';
  if (is < 10) return 'short';
  return is < 1000 ? 'some-ohms' : 'high';
};

const meterAcrossTheGap: Look = ({ layout }) => {
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

export const METER_ANSWERS = {
  'meter-output': meterOutput,
  'meter-direct-volts': meterDirectVolts,
  'meter-same-and-diagonal': meterSameAndDiagonal,
  'meter-two-stages': meterTwoStages,
  'meter-along-the-way': meterAlongTheWay,
  'meter-supply': meterSupply,
  'meter-supply-current': meterSupplyCurrent,
  'meter-ohms-between-rails': meterOhmsBetweenRails,
  'meter-across-the-gap': meterAcrossTheGap,
} as const satisfies Answered<(typeof METER_CHECKS)[number]['id']>;
