// What the meter shows.

import type { PieceId, StageIndex, TableLayout } from '../../../src/engine/table/layout.ts';
import type { Place } from '../../../src/engine/table/meter.ts';
import { meterReads } from '../../../src/engine/table/meter.ts';
import { idleVolts } from '../../../src/engine/table/moment.ts';
import { run, worldOf } from '../../../src/engine/table/protection.ts';
import type { Situation } from '../complaints.ts';
import { inFarPart, NEW_PIECES, shutdownOf } from '../complaints.ts';
import { across, beyond, bridged, empty, LAMP_OHMS, ohmsBetween } from '../instruments.ts';
import { bothRails } from '../observation.ts';
import { atRest, stageVolts, thrown, volts, withRunner } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { bothLit, gapOf, isQuietAtRest } from './shared.ts';

/** Switching on with everything on the track puts a unit out, though the track itself is well: then nothing can be measured. */
const isOutByVehicles = (layout: TableLayout): boolean =>
  !isQuietAtRest(layout) && atRest(layout, 'lifted').offs.length === 0;

export const meterOutput: Look<'meter-output'> = ({ layout }) => {
  if (isOutByVehicles(layout)) return;
  if (layout.feeders.some(({ state }) => state === 'programming')) return 'only-moments';
  if (stageVolts(layout, 1) < 4) return 'neither';
  const alive = NEW_PIECES.map((piece) => volts(layout, piece) > 4);
  if (alive.every((is) => is)) return 'both';
  return alive.some((is) => is) ? 'both' : 'screws-only';
};

export const meterDirectVolts: Look<'meter-direct-volts'> = ({ layout }) => {
  if (isOutByVehicles(layout)) return;
  const { world } = empty(layout, 0.5, 'standing');
  const { ac, dc } = meterReads(layout, world, ...bothRails(inFarPart(layout).piece));
  if (dc > 2) return 'several-volts';
  return ac < 3 ? 'dead' : 'about-zero';
};

export const meterSameAndDiagonal: Look<'meter-same-and-diagonal'> = (asked) => {
  const { layout } = asked;
  if (!isQuietAtRest(layout)) return;
  const gap = gapOf(asked);
  const joined = bridged(layout, across('test-lamp', [gap.from, 'b'], beyond(gap, 'b'), LAMP_OHMS));
  const { world } = empty(joined, 0.01, 'standing');
  const reads = (to: Place): number => meterReads(joined, world, [gap.from, 'a'], to).ac;
  if (!bothLit(layout, gap)) return;
  const same = reads(beyond(gap, 'a'));
  const diagonal = reads(beyond(gap, 'b'));
  // Reversed, the same rail shows both rail voltages in series where the units float, one of them where their negatives are joined.
  if (diagonal > 1.4 * same) return 'diagonal-large';
  return same > 1.4 * diagonal ? 'same-rail-large' : 'wanders';
};

export const meterTwoStages: Look<'meter-two-stages'> = ({ layout }) => {
  if (!isQuietAtRest(layout)) return;
  const reads = (piece: PieceId, traffic: 'standing' | 'half'): number => {
    const { world } = run(layout, worldOf(layout, [], traffic), 0.1);
    return meterReads(layout, world, ...bothRails(piece)).ac;
  };
  const idle = [reads('old-gap', 'standing'), reads('new-gap', 'standing')] as const;
  if (Math.min(...idle) < 3) return;
  if (Math.abs(idle[0] - idle[1]) > 0.8) return 'differ-idle';
  const loaded = [reads('old-gap', 'half'), reads('new-gap', 'half')] as const;
  return Math.abs(loaded[0] - loaded[1]) > 0.8 ? 'differ-loaded' : 'alike';
};

export const meterAlongTheWay = ({
  layout,
}: Situation): 'none' | 'in-the-bus' | 'in-the-rails' | 'at-one-joiner' | 'at-the-unit' | undefined => {
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

export const meterSupply: Look<'meter-supply'> = (asked) => {
  const { layout } = asked;
  const { supplies } = layout;
  if (supplies.some(({ defect, plugged }) => !plugged || defect === 'dead')) return 'dead';
  if (supplies.some(({ fits }) => !fits)) return 'wrong-or-none';
  const offs = shutdownOf(asked)?.offs ?? [];
  return offs.some(({ kind }) => kind !== 'trip' && kind !== 'hot') ? 'collapses' : 'steady';
};

export const meterSupplyCurrent = ({ layout }: Situation): 'well-below' | 'near-limit' | 'above' | 'high-idle' => {
  const amps = (traffic: 'lifted' | 'all', stage: StageIndex): number => {
    const one = traffic === 'all' ? withRunner(layout) : layout;
    const runner = { ...one, consumers: one.consumers.map((consumer) => ({ ...consumer, inrush: 0 })) };
    return run(runner, worldOf(runner, [], traffic), 0.04).moment.plus.supplyAmps[stage];
  };
  if (atRest(layout, 'lifted').offs.some(({ kind }) => kind === 'trip')) return 'high-idle';
  const idle = Math.max(amps('lifted', 0), amps('lifted', 1));
  if (idle > 0.2 * layout.stages[0].trip + 0.1) return 'high-idle';
  const part = ([0, 1] as const).map((stage) => {
    const { trip, continuous } = layout.stages[stage];
    const { amps: most, continuous: heat } = layout.supplies[stage];
    const limit = Math.min(trip, most, Math.max(continuous, 0.9 * trip), Math.max(heat, 0.9 * most));
    return amps('all', stage) / limit;
  });
  const worst = Math.max(...part);
  if (worst >= 1) return 'above';
  return worst > 0.85 ? 'near-limit' : 'well-below';
};

export const meterOhmsBetweenRails: Look<'meter-ohms-between-rails'> = ({ layout }) => {
  const ohms = (one: TableLayout): number => ohmsBetween(one, ...bothRails('new-mid'), 1);
  const is = ohms(layout);
  if (is < 10) return 'short';
  return is < 1000 ? 'some-ohms' : 'high';
};

export const meterAcrossTheGap: Look<'meter-across-the-gap'> = ({ layout }) => {
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
  // Trains that draw about an ampere are to the wires what the resistor is.
  'meter-while-they-run': meterAlongTheWay,
  'meter-supply': meterSupply,
  'meter-supply-current': meterSupplyCurrent,
  'meter-ohms-between-rails': meterOhmsBetweenRails,
  'meter-across-the-gap': meterAcrossTheGap,
} as const satisfies Answered;
