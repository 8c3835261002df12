// What a supply and a power stage together can put on the track.
import type { Working } from '../workings.ts';
import { working } from '../workings.ts';

export interface Supply {
  /** Printed on it: direct or alternating current. */
  readonly kind: 'dc' | 'ac';
  /** Printed voltage, volts (r.m.s. for a.c.). */
  readonly volts: number;
  /** Printed current, amperes (r.m.s. for a.c.). */
  readonly amps: number;
}

export interface Stage {
  /** Most it passes to the track, amperes. */
  readonly limit: number;
  readonly rails: RailSetting;
  /** What the unit itself takes, amperes, with nothing on the track. */
  readonly ownUse: number;
  /** Not known where left out. */
  readonly build?: StageBuild | undefined;
}

/** How an output stage is built: transistors that are on or off, or such as drop volts of their own. */
export type StageBuild = 'switching' | 'bipolar';

/** Rail voltage follows the supply, is set, or is set and made by a step-down converter (less current in than out). */
export type RailSetting =
  | { readonly kind: 'follows' }
  | { readonly kind: 'set'; readonly volts: number }
  | { readonly kind: 'converter'; readonly volts: number };

/** Alternating current behind a rectifier with capacitor: r.m.s. input over d.c. output, 1.6 at best, 1.8 in winders' tables. Source: rectifier-table. */
export const AC_FACTOR = { usual: 1.8, best: 1.6 } as const;
/** Efficiency of a step-down converter, low end of 0.85-0.9. Source: from-memory. */
export const CONVERTER_EFFICIENCY = 0.85;
/** Share kept back once for heat, mains and meter error. Source: common-practice. */
export const RESERVE = 0.1;
/** A supply gives 1.0 to 1.3 times its rating for the moment a trip takes. Source: from-memory. */
export const SHORT_TIME_FACTOR = 1.3;
/** NEM 609, 6.1: at most 10 A over all outputs and 200 VA. Source: nem-609. */
export const MODEL_SUPPLY_LIMIT = { amps: 10, voltAmps: 200 } as const;
/** Ratings that supplies are commonly sold in, amperes. Source: common-practice. */
export const COMMON_RATINGS = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10] as const;

/** Least that a unit of an example passes, amperes. Source: common-practice. */
const USUAL_LIMIT = 3;

/** What the unit of an example passes, amperes, on a supply of so many (> 0): never less than the supply's label, so that the supply decides. */
export const limitFor = (amps: number): number => Math.max(USUAL_LIMIT, amps);

/** Most that may flow, and the same less the reserve, amperes. */
export interface Limits {
  readonly hard: number;
  readonly usable: number;
}

export interface Capacity extends Limits {
  /** Most that can reach the track at any moment, amperes. */
  readonly hard: number;
  /** Hard limit less the reserve: what to plan with, amperes. */
  readonly usable: number;
  /** The same two with the best rectifier, where an a.c. supply sets the limit. */
  readonly atBest?: Limits;
  /** The same two for a moment: a transformer's rating is one of heat, and it gives more for a while; an electronic supply does not. */
  readonly moment?: Limits;
  readonly limitedBy: 'supply' | 'stage';
  readonly working: Working;
}

/** Usable track current of a supply on a stage. All currents >= 0, volts > 0. Formulas: common-practice; factors as marked above. */
export function capacity(supply: Supply, stage: Stage, reserve = RESERVE): Capacity {
  const fromSupply = trackCurrent(supply, stage, AC_FACTOR.usual);
  const limitedBy = fromSupply < stage.limit ? 'supply' : 'stage';
  const within = (amps: number): Limits => {
    const hard = Math.min(stage.limit, amps);
    return { hard, usable: hard * (1 - reserve) };
  };
  const { hard, usable } = within(fromSupply);
  return {
    hard,
    usable,
    ...(supply.kind === 'ac' && limitedBy === 'supply' ? transformer(supply, stage, within) : {}),
    limitedBy,
    working: capacityWorking(supply, stage, reserve, usable),
  };
}

const transformer = (supply: Supply, stage: Stage, within: (amps: number) => Limits) => ({
  atBest: within(trackCurrent(supply, stage, AC_FACTOR.best)),
  moment: within(trackCurrent({ ...supply, amps: supply.amps * SHORT_TIME_FACTOR }, stage)),
});

/** What one more ampere on the supply's label adds to the usable current, amperes >= 0. */
export function worthOfOneAmpere(supply: Supply, stage: Stage): number {
  const more = capacity({ ...supply, amps: supply.amps + 1 }, stage);
  return Math.max(0, more.usable - capacity(supply, stage).usable);
}

/** Current that a supply can put on the track through a stage that would pass any amount, amperes, never below 0. */
export function trackCurrent(supply: Supply, stage: Stage, acFactor: number = AC_FACTOR.usual): number {
  if (supply.kind === 'ac') return Math.max(0, supply.amps / acFactor - stage.ownUse);
  return trackPerSupply(supply, stage) * Math.max(0, supply.amps - stage.ownUse);
}

/** Amperes on the track for one taken from the supply: more than 1 behind a step-down converter. */
export const trackPerSupply = (supply: Supply, { rails }: Pick<Stage, 'rails'>): number =>
  supply.kind === 'dc' && rails.kind === 'converter' ? (CONVERTER_EFFICIENCY * supply.volts) / rails.volts : 1;

/** Whether NEM 609 allows such a supply for models. */
export function withinModelLimit(supply: Supply): boolean {
  return supply.amps <= MODEL_SUPPLY_LIMIT.amps && supply.amps * supply.volts <= MODEL_SUPPLY_LIMIT.voltAmps;
}

function capacityWorking(supply: Supply, stage: Stage, reserve: number, usable: number): Working {
  const common = [
    ['stage-limit', stage.limit, 'A'],
    ['supply-amps', supply.amps, 'A'],
    ['own-use', stage.ownUse, 'A'],
    ['reserve', reserve, 'share'],
  ] as const;
  if (supply.kind === 'ac') {
    return working(
      'usable-ac',
      usable,
      'A',
      [...common, ['ac-factor', AC_FACTOR.usual, 'times']],
      ['rectifier-table', 'common-practice'],
    );
  }
  if (stage.rails.kind === 'converter') {
    const more = [
      ['supply-volts', supply.volts, 'V'],
      ['rail-volts', stage.rails.volts, 'V'],
      ['efficiency', CONVERTER_EFFICIENCY, 'share'],
    ] as const;
    return working('usable-converter', usable, 'A', [...common, ...more], ['own-derivation', 'from-memory']);
  }
  return working('usable-dc', usable, 'A', common, ['common-practice']);
}
