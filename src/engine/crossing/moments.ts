// One pair of neighbouring stages on their supplies, at the moments that differ: rails idle, rails loaded, one side busy.

import type { NeighbourVolts, Placed } from '../power/index.ts';
import type { Span } from '../units.ts';
import type { CrossingInput, CrossingResult } from './crossing.ts';
import { crossingInPhase } from './crossing.ts';
import type { CrossingSide } from './sides.ts';

/** A stage on its supply, as an arrangement places it, with what else a crossing depends on. Amperes. */
export interface PlacedSide extends Omit<CrossingSide, 'volts' | 'load' | 'limit'> {
  /** Rail volts idle and loaded, and the most it can put on the track. */
  readonly placed: {
    readonly rails: Placed['rails'];
    readonly capacity: Pick<Placed['capacity'], 'hard'>;
  };
  /** 95 % point of what its district draws. */
  readonly load: number;
  /** What its district draws while both are as busy together as they get; `load` where the two have nothing to do with each other. */
  readonly loadTogether?: number;
  /** What its district draws while idle; nothing where left out. */
  readonly idleLoad?: number;
}

/** Both sides idle, both busy (their 95 % load together), and one busy while the other is idle. */
export const CROSSING_MOMENTS = ['idle', 'loaded', 'near-busy', 'far-busy'] as const;
export type CrossingMoment = (typeof CROSSING_MOMENTS)[number];

export interface CrossingMoments {
  readonly moments: Readonly<Record<CrossingMoment, CrossingResult>>;
  /** The moment with the worst verdict; the earliest of several alike. */
  readonly worst: CrossingMoment;
  /** True where one side is the higher at one moment and the other at another. */
  readonly signFlips: boolean;
}

/**
 * The crossing between two placed stages at each moment. `volts`: of both at each moment, where what is not known of both in the same way
 * was taken out (`neighbourVolts`); the volts of each alone where left out. A stage that puts nothing on the track gives `no-solution`.
 */
export function crossingOf(
  near: PlacedSide,
  far: PlacedSide,
  { volts, ...options }: Pick<CrossingInput, 'ohms' | 'stepLimit'> & { readonly volts?: NeighbourVolts } = {},
): CrossingMoments {
  const at = (moment: CrossingMoment) => {
    const { near: nearLoad, far: farLoad } = LOADS[moment];
    const told = volts?.[moment];
    return crossingInPhase({
      ...options,
      near: sideAt(near, nearLoad, told?.near),
      far: sideAt(far, farLoad, told?.far),
    });
  };
  const moments = {
    idle: at('idle'),
    loaded: at('loaded'),
    'near-busy': at('near-busy'),
    'far-busy': at('far-busy'),
  };
  const worst = CROSSING_MOMENTS.reduce((a, b) => (badness(moments[b]) > badness(moments[a]) ? b : a));
  const higher = CROSSING_MOMENTS.flatMap((moment) => higherSides(moments[moment]));
  return { moments, worst, signFlips: higher.includes('near') && higher.includes('far') };
}

type Load = 'idle' | 'busy' | 'together';
const LOADS: Readonly<Record<CrossingMoment, Readonly<Record<'near' | 'far', Load>>>> = {
  idle: { near: 'idle', far: 'idle' },
  loaded: { near: 'together', far: 'together' },
  'near-busy': { near: 'busy', far: 'idle' },
  'far-busy': { near: 'idle', far: 'busy' },
};

function sideAt(
  { placed, load, loadTogether = load, idleLoad = 0, ...side }: PlacedSide,
  at: Load,
  told: Span | undefined,
): CrossingSide {
  return {
    ...side,
    volts: told ?? (at === 'idle' ? placed.rails.idle : placed.rails.loaded),
    load: { idle: idleLoad, busy: load, together: loadTogether }[at],
    limit: placed.capacity.hard,
  };
}

/** The worst verdict of all moments stands: its rank. Source: own-choice. */
const BADNESS = { fine: 0, adjust: 1, 'do-not-run': 2 } as const;

const badness = (result: CrossingResult): number => (result.kind === 'no-solution' ? 3 : BADNESS[result.verdict]);

const higherSides = (result: CrossingResult): readonly string[] =>
  result.kind === 'crossing' ? result.pushes.map(({ from }) => from) : [];
