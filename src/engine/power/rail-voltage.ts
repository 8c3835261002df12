// Volts on the rails: from a fixed setting or from the supply, as intervals, and against the scale.

import type { Span } from '../units.ts';
import { middle } from '../units.ts';
import type { RailSetting, StageBuild, Supply } from './capacity.ts';
import { AC_FACTOR, CONVERTER_EFFICIENCY } from './capacity.ts';
import type { Scale } from './draws.ts';

export interface RailVoltage {
  /** With little load, volts. */
  readonly idle: Span;
  /** With load, volts. */
  readonly loaded: Span;
}

/** What is drawn through a stage, amperes on the track, and how it is built. */
export interface RailLoad {
  readonly build?: StageBuild | undefined;
  /** Nothing where left out. */
  readonly idle?: number;
  /** As much as the supply is rated for where left out. */
  readonly loaded?: number;
}

/** A part of its own, volts, and ohms times amperes. */
export interface StageDrop {
  readonly volts: Span;
  readonly ohms: Span;
}

/** What a stage takes off the volts, by its build. A bipolar one has its own part whatever flows. One model for every wizard. Source: from-memory. */
export const STAGE_DROP: Readonly<Record<StageBuild, StageDrop>> = {
  switching: { volts: { from: 0, to: 0 }, ohms: { from: 0.05, to: 0.3 } },
  bipolar: { volts: { from: 1, to: 3 }, ohms: { from: 0.1, to: 0.1 } },
};
/** Where the build is not known it may be a switching one or a usual bipolar one: volts, ohms. Source: from-memory. */
const UNKNOWN_DROPS: readonly StageDrop[] = [
  STAGE_DROP.switching,
  { volts: { from: 1, to: 1.4 }, ohms: STAGE_DROP.bipolar.ohms },
];
/** Of a regulated d.c. supply, ohms. Source: from-memory. */
export const SUPPLY_OHMS: Span = { from: 0.02, to: 0.1 };
/** What a train or a short circuit finds of the stage and a regulated supply before the wires, ohms; by its build, a band where nobody has said. */
export function stageOhms(build?: StageBuild): Span {
  const drops = build === undefined ? UNKNOWN_DROPS : [STAGE_DROP[build]];
  return {
    from: SUPPLY_OHMS.from + Math.min(...drops.map(({ ohms }) => ohms.from)),
    to: SUPPLY_OHMS.to + Math.max(...drops.map(({ ohms }) => ohms.to)),
  };
}
/** Shares: a transformer's voltage rises by 5 to 20 % without load; mains may be 10 % high. Source: from-memory. */
export const NO_LOAD_RISE: Span = { from: 0.05, to: 0.2 };
export const MAINS_HIGH = 0.1;
/** Rectifier with little load, and with all that the transformer gives, volts. Source: from-memory. */
export const RECTIFIER_DROP = { idle: 1.6, loaded: 2 } as const;
/** D.c. volts behind rectifier and capacitor before that drop, over the transformer's volts, at its full r.m.s. current. Source: own-derivation. */
export const LOADED_FACTOR: Span = { from: 1.22, to: 1.335 };
/** A stage whose output is set needs about this much above its setting, volts. Source: from-memory. */
export const HEADROOM = 1;

/** Rail voltage of a stage on a supply. Rules for a.c.: common-practice and own-derivation. Volts > 0. */
export function railVoltage(supply: Supply, rails: RailSetting, load: RailLoad = {}): RailVoltage {
  const fed = { supply, rails, load };
  return { idle: spanOf(wayByWay(fed, false)), loaded: spanOf(wayByWay(fed, true)) };
}

/** Above this no unit lifts its rails on such a supply, whatever it is set to: what comes behind the rectifier or from the label, volts. */
export const highestRails = (supply: Supply): number =>
  railVoltage(supply, { kind: 'set', volts: Number.POSITIVE_INFINITY }).idle.to;

/** Volts that are there for rounding only. Source: own-choice. */
export const ROUNDING_VOLTS = 1e-9;

/** Rails that are set to more than their supply lifts them to, both in volts. */
export interface OutOfReach {
  readonly set: number;
  readonly highest: number;
}

/** Rails set above what the supply lifts them to; undefined where it lifts them so far, or where they follow it. */
export function railsOutOfReach(supply: Supply, rails: RailSetting): OutOfReach | undefined {
  const highest = highestRails(supply);
  return rails.kind === 'follows' || rails.volts <= highest + ROUNDING_VOLTS
    ? undefined
    : { set: rails.volts, highest };
}

/** A stage with its supply and what is drawn through it. */
export interface FedStage {
  readonly supply: Supply;
  readonly rails: RailSetting;
  readonly load: RailLoad;
}

/** Whether each of two neighbours is idle or busy: both idle, both loaded, or one of them. */
export type NeighbourMoment = 'idle' | 'loaded' | 'near-busy' | 'far-busy';
export type NeighbourVolts = Readonly<Record<NeighbourMoment, { readonly near: Span; readonly far: Span }>>;

const BUSY: Readonly<Record<NeighbourMoment, { readonly near: boolean; readonly far: boolean }>> = {
  idle: { near: false, far: false },
  loaded: { near: true, far: true },
  'near-busy': { near: true, far: false },
  'far-busy': { near: false, far: true },
};

/**
 * Rail volts of two neighbours at each moment. What is not known of both in the same way cancels: between two stages built alike on
 * supplies of one kind only their volts and their loads make a step. The near one is then told at the highest that it may stand, the
 * far one by its step from there.
 */
export function neighbourVolts(near: FedStage, far: FedStage): NeighbourVolts {
  const alike = builtAlike(near, far);
  const at = (moment: NeighbourMoment) => {
    const here = wayByWay(near, BUSY[moment].near);
    const there = wayByWay(far, BUSY[moment].far);
    if (!alike) return { near: spanOf(here), far: spanOf(there) };
    const top = Math.max(...here);
    const steps = here.map((volts, i) => (there[i] ?? 0) - volts);
    return { near: exactly(top), far: { from: top + Math.min(...steps), to: top + Math.max(...steps) } };
  };
  return { idle: at('idle'), loaded: at('loaded'), 'near-busy': at('near-busy'), 'far-busy': at('far-busy') };
}

/** Its volts, each way it may be. */
const wayByWay = ({ supply, rails, load }: FedStage, busy: boolean): number[] =>
  cornersOf(load.build).map((corner) =>
    volts(supply, rails, busy ? loadedAmps(supply, load) : (load.idle ?? 0), corner),
  );

const builtAlike = (one: FedStage, other: FedStage): boolean =>
  one.supply.kind === other.supply.kind &&
  (one.rails.kind === 'follows') === (other.rails.kind === 'follows') &&
  one.load.build === other.load.build;

const exactly = (value: number): Span => ({ from: value, to: value });
const spanOf = (values: readonly number[]): Span => ({ from: Math.min(...values), to: Math.max(...values) });
const loadedAmps = (supply: Supply, { loaded }: RailLoad): number => loaded ?? fullLoad(supply);
/** All that a supply gives for good, amperes on the d.c. side. */
const fullLoad = ({ kind, amps }: Supply): number => (kind === 'ac' ? amps / AC_FACTOR.usual : amps);

/** D.c. volts behind a transformer's rectifier at its full r.m.s. current, volts. */
export const loadedLink = (volts: number): Span => ({
  from: Math.max(0, LOADED_FACTOR.from * volts - RECTIFIER_DROP.loaded),
  to: Math.max(0, LOADED_FACTOR.to * volts - RECTIFIER_DROP.loaded),
});

/** One way it may be: what the stage takes, what its supply's ohms are, and how stiff a transformer is (0 soft to 1 stiff). */
interface Corner {
  readonly own: number;
  readonly ohms: number;
  readonly supplyOhms: number;
  /** Whether a stage whose output is set needs its headroom. */
  readonly spares: boolean;
  readonly stiff: 0 | 1;
  readonly mains: number;
  /** How a transformer's volts fall with its load: evenly (1), or at first faster (1/2). */
  readonly bend: number;
}

const cornersOf = (build: StageBuild | undefined): Corner[] =>
  (build === undefined ? UNKNOWN_DROPS : [STAGE_DROP[build]]).flatMap(cornersOfDrop);

/** Loads at which the drop is looked at, share of full load. Source: own-choice. */
const BENDS = [1, 0.5] as const;

function cornersOfDrop(drop: StageDrop): Corner[] {
  const ways = [
    { ohms: drop.ohms.from, supplyOhms: SUPPLY_OHMS.from, spares: false },
    { ohms: drop.ohms.to, supplyOhms: SUPPLY_OHMS.to, spares: true },
  ];
  return [drop.volts.from, drop.volts.to].flatMap((own) =>
    ways.flatMap((way) =>
      ([0, 1] as const).flatMap((stiff) =>
        [0, MAINS_HIGH].flatMap((mains) => BENDS.map((bend) => ({ own, ...way, stiff, mains, bend }))),
      ),
    ),
  );
}

function volts(supply: Supply, rails: RailSetting, amps: number, corner: Corner): number {
  const link = supply.kind === 'ac' ? behindRectifier(supply, amps, corner) : supply.volts - amps * corner.supplyOhms;
  const through = Math.max(0, link - corner.own - amps * corner.ohms);
  if (rails.kind === 'follows') return through;
  // What its output is set to it holds with some volts to spare above it, or with next to none.
  const spared = (supply.kind === 'ac' ? link : supply.volts) - HEADROOM;
  return Math.max(0, Math.min(rails.volts, corner.spares ? spared : link - amps * corner.ohms));
}

/** Between what stands there without load and with all that the transformer gives. A stiff one rises less and sags less. */
function behindRectifier({ volts: rms, amps: rated }: Supply, amps: number, { stiff, mains, bend }: Corner): number {
  const rise = stiff === 1 ? NO_LOAD_RISE.from : NO_LOAD_RISE.to;
  const idle = Math.SQRT2 * rms * (1 + rise + mains) - RECTIFIER_DROP.idle;
  const full = loadedLink(rms);
  const loaded = Math.min(idle, stiff === 1 ? full.to : full.from);
  const part = rated > 0 ? Math.min(1, amps / (rated / AC_FACTOR.usual)) : 1;
  return Math.max(0, idle + part ** bend * (loaded - idle));
}

/** S-9.1 (2020) Table 3: track peak volts at the power station, and what decoders must survive. Source: nmra-s-9-1. */
export interface TrackLimits {
  readonly least: number;
  readonly normal: number;
  readonly most: number;
  readonly decoder: Span;
}

/** Z, N and TT, volts: least, normal and most on the track, and what a decoder must work in and survive. Source: nmra-s-9-1. */
const SMALL: TrackLimits = { least: 8.5, normal: 12, most: 22, decoder: { from: 7, to: 24 } };
/** H0 and 0, volts: least, normal and most on the track, and what a decoder must work in and survive. Source: nmra-s-9-1. */
const MIDDLE: TrackLimits = { least: 8.5, normal: 15, most: 22, decoder: { from: 7, to: 27 } };
/** Scale 1, volts: least, normal and most on the track, and what a decoder must work in and survive. Source: nmra-s-9-1. */
const LARGE: TrackLimits = { least: 8.5, normal: 18, most: 22, decoder: { from: 7, to: 27 } };

/** By scale, volts: least, normal and most on the track, and what a decoder must work in and survive. Source: nmra-s-9-1. */
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

/** So far above its range rails may stand before they come before everything else, volts: nobody knows them closer. Source: common-practice. */
const NEAR_RANGE = 1;

/** Whether rails of so many volts stand well above what is usual for the scale. */
export const isAboveUsual = (volts: number, scale: Scale): boolean => volts > SCALE_RANGE[scale].to + NEAR_RANGE + 1e-9;

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

/** Whether rails surely stand too high (above 22 V, or above what decoders must survive), perhaps, or not. */
export function railsTooHigh(voltage: RailVoltage, scale: Scale): 'surely' | 'perhaps' | 'no' {
  const { most, decoder } = TRACK_LIMITS[scale];
  const limit = Math.min(most, decoder.to);
  if (voltage.idle.from > limit) return 'surely';
  return voltage.idle.to > limit ? 'perhaps' : 'no';
}

/** Whether rails stand too low to be of use: below what a power station must give, and even at best below the scale's range. */
export const railsTooLow = (voltage: RailVoltage, scale: Scale): boolean =>
  voltage.loaded.from < TRACK_LIMITS[scale].least && voltage.idle.to < SCALE_RANGE[scale].from;

/**
 * The step-down converter that a unit may have of which nobody has said where its rail volts come from: down to the low end of the scale's
 * range; undefined where the supply stands no higher, or gives a.c.
 */
export function railFromConverter({ kind, volts }: Supply, scale: Scale): RailSetting | undefined {
  const low = SCALE_RANGE[scale].from;
  return kind === 'dc' && CONVERTER_EFFICIENCY * volts > low ? { kind: 'converter', volts: low } : undefined;
}

/** What regulated d.c. supplies are commonly sold with, volts. Source: common-practice. */
const COMMON_DC_VOLTS: readonly number[] = [9, 12, 15, 16, 18, 19, 20];

/** Whether supplies with these volts (d.c.) are commonly sold. */
export const isCommonVolts = (volts: number): boolean => COMMON_DC_VOLTS.includes(volts);

/** The d.c. supply that puts the scale's own volts on rails that follow it, within what the unit takes (volts); undefined where none does. */
export function dcVoltsFor(scale: Scale, most: number): number | undefined {
  const wanted = middle(SCALE_RANGE[scale]);
  const fitting = COMMON_DC_VOLTS.filter((volts) => volts <= most && volts >= SCALE_RANGE[scale].from);
  return [...fitting].sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted) || b - a)[0];
}

/** The volts that a finding speaks of: the low end under load for what is too low, else the high end without load. */
export const judgedVolts = (finding: RailFinding, { idle, loaded }: RailVoltage): number =>
  finding === 'slow' || finding === 'too-low' ? loaded.from : idle.to;

/** Whether rails fall enough under load for both numbers to be told: half of the last digit a person reads, volts. */
export const sags = ({ idle, loaded }: RailVoltage): boolean => idle.to - loaded.from >= 0.05;
