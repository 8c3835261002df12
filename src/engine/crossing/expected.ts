// What there is to see and to measure at a gap between two parts of known volts, whose wiring is right or turned round.
import type { Scale } from '../power/index.ts';
import type { Span } from '../units.ts';
import type { Working } from '../workings.ts';
import type { TwoLamps } from './lamps.ts';
import { twoLamps } from './lamps.ts';
import type { CrossingLoop, CrossingPhase } from './loops.ts';
import { crossingLoop } from './loops.ts';
import type { GapReading, MeterKind } from './meters.ts';
import { gapReadings, METER_KINDS } from './meters.ts';
import { CROSSING_OHMS } from './ohms.ts';
import type { BridgingTime } from './time.ts';
import { bridgingTime } from './time.ts';

/** How many times smaller than the real thing each scale is. Source: from-memory. */
const RATIO: Readonly<Record<Scale, number>> = { z: 220, n: 160, tt: 120, h0: 87, '0': 45, '1': 32 };

/** A full-size engine: metres between its outermost pick-up wheels, and 16 to 160 km/h in metres a second. Source: from-memory. */
const FULL_SIZE = { pickUpSpan: 10.5, speed: { from: 16 / 3.6, to: 160 / 3.6 } } as const;

/** An engine of the scale: metres between its outermost pick-up wheels, metres a second from shunting to full speed. Source: own-derivation. */
export function usualEngine(scale: Scale): { readonly pickUpSpan: number; readonly speed: Span } {
  const ratio = RATIO[scale];
  const { pickUpSpan, speed } = FULL_SIZE;
  return { pickUpSpan: pickUpSpan / ratio, speed: { from: speed.from / ratio, to: speed.to / ratio } };
}

/** What one kind of meter shows, with a lamp across the gap of the other rail so that the two parts are tied together. */
export interface MeterAtGap {
  readonly meter: MeterKind;
  /** Rail to rail in the near part, and just as much from a rail to the other rail across the gap. */
  readonly railToRail: GapReading;
  /** From a rail to the same rail across the gap. */
  readonly inPhase: GapReading;
  readonly reversed: GapReading;
}

export interface GapExpected {
  /** Metres between the outermost pick-up wheels that the time is reckoned with. */
  readonly pickUpSpan: number;
  readonly lasts: BridgingTime;
  readonly meters: readonly MeterAtGap[];
  /** Two equal lamps, one across the gap of each rail, where nothing else joins the two units. */
  readonly lamps: Readonly<Record<CrossingPhase, TwoLamps>>;
  /** What a train across would be with one part turned round. */
  readonly reversed: CrossingLoop;
  readonly workings: readonly Working[];
}

/** Volts of both parts without load, > 0; undefined where one of them has none. Source: own-derivation. */
export function gapExpected(scale: Scale, nearVolts: number, farVolts: number): GapExpected | undefined {
  const lampsIn = (phase: CrossingPhase) => twoLamps(nearVolts, farVolts, phase, 'floating');
  const [inPhase, turned] = [lampsIn('in-phase'), lampsIn('reversed')];
  const across = { gapped: 'both', bridged: 'both', ohms: CROSSING_OHMS, reference: 'floating' } as const;
  const reversed = crossingLoop({ ...across, phase: 'reversed', nearVolts, farVolts });
  if (inPhase.kind !== 'lamps' || turned.kind !== 'lamps' || reversed.kind === 'no-solution') return undefined;
  const { pickUpSpan, speed } = usualEngine(scale);
  const lasts = bridgingTime(pickUpSpan, speed);
  return {
    pickUpSpan,
    lasts,
    meters: METER_KINDS.flatMap((meter) => meterAtGap(meter, nearVolts, farVolts) ?? []),
    lamps: { 'in-phase': inPhase, reversed: turned },
    reversed,
    workings: [
      ...(lasts.kind === 'seconds' ? [lasts.working] : []),
      ...ordinaryMeter(nearVolts, farVolts),
      reversed.working,
    ],
  };
}

/** How the largest of the readings came about: the same rail, with one part turned round, on an ordinary meter. */
function ordinaryMeter(nearVolts: number, farVolts: number): readonly Working[] {
  const turned = gapReadings({ nearVolts, farVolts, tie: 'other-pair', meter: 'averaging', phase: 'reversed' });
  return turned.kind === 'readings' ? turned.workings.slice(0, 1) : [];
}

function meterAtGap(meter: MeterKind, nearVolts: number, farVolts: number): MeterAtGap | undefined {
  const given = { nearVolts, farVolts, tie: 'other-pair', meter } as const;
  const right = gapReadings({ ...given, phase: 'in-phase' });
  const turned = gapReadings({ ...given, phase: 'reversed' });
  if (right.kind === 'no-solution' || turned.kind === 'no-solution') return undefined;
  return { meter, railToRail: right.near, inPhase: right.sameRail, reversed: turned.sameRail };
}
