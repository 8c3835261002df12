// Volts on the rails: from a fixed setting or from the supply, as intervals, and against the scale.

import type { Span } from '../units.ts';
import type { RailSetting, Supply } from './capacity.ts';
import type { Scale } from './draws.ts';

export interface RailVoltage {
  /** With little load, volts. */
  readonly idle: Span;
  /** At full load, volts. */
  readonly loaded: Span;
}

/** A transformer's voltage rises by 5 to 20 % without load; mains may be 10 % high. Source: from-memory. */
export const NO_LOAD_RISE: Span = { from: 0.05, to: 0.2 };
export const MAINS_HIGH = 0.1;
/** Rectifier and output stage, volts. Source: from-memory. */
export const RECTIFIER_DROP: Span = { from: 1.6, to: 3 };
/** Drop of an output stage fed with d.c., volts, idle to loaded. Source: from-memory. */
export const STAGE_DROP: Span = { from: 0.3, to: 1.5 };
/** A stage needs about this much above its setting, volts. Source: from-memory. */
export const HEADROOM = 1;

const exactly = (volts: number): Span => ({ from: volts, to: volts });

/** Rail voltage of a stage on a supply. Rules for a.c.: common-practice and own-derivation. Volts > 0. */
export function railVoltage(supply: Supply, rails: RailSetting): RailVoltage {
  const followed = supply.kind === 'ac' ? fromAlternating(supply.volts) : fromDirect(supply.volts);
  if (rails.kind === 'follows') return followed;
  const reaches = supply.kind === 'ac' ? followed.loaded.from : supply.volts - HEADROOM;
  const loaded = Math.min(rails.volts, Math.max(0, reaches));
  return { idle: exactly(Math.min(rails.volts, followed.idle.to)), loaded: exactly(loaded) };
}

function fromAlternating(volts: number): RailVoltage {
  const peak = Math.SQRT2 * volts;
  const loaded = Math.max(0, 1.25 * volts - 2);
  return {
    idle: {
      from: Math.max(loaded, peak * (1 + NO_LOAD_RISE.from) - RECTIFIER_DROP.to),
      to: Math.max(loaded, peak * (1 + NO_LOAD_RISE.to + MAINS_HIGH) - RECTIFIER_DROP.from),
    },
    loaded: exactly(loaded),
  };
}

function fromDirect(volts: number): RailVoltage {
  const idle = Math.max(0, volts - STAGE_DROP.from);
  return { idle: exactly(idle), loaded: exactly(Math.max(0, volts - STAGE_DROP.to)) };
}

/** S-9.1 (2020) Table 3: track peak volts at the power station, and what decoders must survive. Source: nmra-s-9-1. */
export interface TrackLimits {
  readonly least: number;
  readonly normal: number;
  readonly most: number;
  readonly decoder: Span;
}

const SMALL: TrackLimits = { least: 8.5, normal: 12, most: 22, decoder: { from: 7, to: 24 } };
const MIDDLE: TrackLimits = { least: 8.5, normal: 15, most: 22, decoder: { from: 7, to: 27 } };
const LARGE: TrackLimits = { least: 8.5, normal: 18, most: 22, decoder: { from: 7, to: 27 } };

export const TRACK_LIMITS: Readonly<Record<Scale, TrackLimits>> = {
  z: SMALL,
  n: SMALL,
  tt: SMALL,
  h0: MIDDLE,
  '0': MIDDLE,
  '1': LARGE,
};

/** The scale's own range, volts. Source: rcn-210 (a summary of it), lower end for N and TT common-practice. */
export const SCALE_RANGE: Readonly<Record<Scale, Span>> = {
  z: { from: 9, to: 12 },
  n: { from: 12, to: 16 },
  tt: { from: 12, to: 16 },
  h0: { from: 15, to: 18 },
  '0': { from: 15, to: 18 },
  '1': { from: 18, to: 22 },
};

/** `too-low`: below what a power station must give; `over-stop`: above 22 V; `over-decoder`: above what decoders must survive. */
export type RailFinding = 'too-low' | 'slow' | 'in-range' | 'above-range' | 'over-stop' | 'over-decoder';

/** The worst that the interval allows, highs before lows. */
export function judgeRails(voltage: RailVoltage, scale: Scale): RailFinding {
  const limits = TRACK_LIMITS[scale];
  const range = SCALE_RANGE[scale];
  const high = voltage.idle.to;
  const low = voltage.loaded.from;
  if (high > limits.decoder.to) return 'over-decoder';
  if (high > limits.most) return 'over-stop';
  if (low < limits.least) return 'too-low';
  if (high > range.to) return 'above-range';
  return low < range.from ? 'slow' : 'in-range';
}

/** The volts that a finding speaks of: the low end under load for what is too low, else the high end without load. */
export const judgedVolts = (finding: RailFinding, { idle, loaded }: RailVoltage): number =>
  finding === 'slow' || finding === 'too-low' ? loaded.from : idle.to;

/** Whether rails fall enough under load for both numbers to be told: half of the last digit a person reads, volts. */
export const sags = ({ idle, loaded }: RailVoltage): boolean => idle.to - loaded.from >= 0.05;
