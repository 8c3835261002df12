// One pair of neighbouring stages on their supplies, at the moments that differ: rails idle, rails loaded, one side busy.

import type { Placed } from '../power/index.ts';
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

/** The crossing between two placed stages at each moment. A stage that puts nothing on the track gives `no-solution`. */
export function crossingOf(
  near: PlacedSide,
  far: PlacedSide,
  options: Pick<CrossingInput, 'ohms' | 'stepLimit'> = {},
): CrossingMoments {
  const at = (nearLoad: Load, farLoad: Load) =>
    crossingInPhase({ ...options, near: sideAt(near, nearLoad), far: sideAt(far, farLoad) });
  const moments = {
    idle: at('idle', 'idle'),
    loaded: at('together', 'together'),
    'near-busy': at('busy', 'idle'),
    'far-busy': at('idle', 'busy'),
  };
  const worst = CROSSING_MOMENTS.reduce((a, b) => (badness(moments[b]) > badness(moments[a]) ? b : a));
  const higher = CROSSING_MOMENTS.flatMap((moment) => higherSides(moments[moment]));
  return { moments, worst, signFlips: higher.includes('near') && higher.includes('far') };
}

type Load = 'idle' | 'busy' | 'together';

function sideAt({ placed, load, loadTogether = load, idleLoad = 0, ...side }: PlacedSide, at: Load): CrossingSide {
  return {
    ...side,
    volts: at === 'idle' ? placed.rails.idle : placed.rails.loaded,
    load: { idle: idleLoad, busy: load, together: loadTogether }[at],
    limit: placed.capacity.hard,
  };
}

const BADNESS = { fine: 0, adjust: 1, 'do-not-run': 2 } as const;

const badness = (result: CrossingResult): number => (result.kind === 'no-solution' ? 3 : BADNESS[result.verdict]);

const higherSides = (result: CrossingResult): readonly string[] =>
  result.kind === 'crossing' ? result.pushes.map(({ from }) => from) : [];
