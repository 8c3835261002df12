// Whether a supply lets its unit trip on a short, and which rating to get so that it surely does.
import type { Span } from '../units.ts';
import type { Stage, Supply } from './capacity.ts';
import { AC_FACTOR, COMMON_RATINGS, SHORT_TIME_FACTOR, trackCurrent, withinModelLimit } from './capacity.ts';
import type { Scale } from './draws.ts';
import { DRAWS } from './draws.ts';
import type { InputLabel, LabelFinding, Plug } from './labels.ts';
import { checkLabels } from './labels.ts';

export type TripReach = 'reached' | 'perhaps' | 'not-reached';

/** What a supply can drive into a short, against what its unit trips at. */
export type SupplyTrip = {
  /** Track current at which the unit trips, amperes. */
  readonly trip: number;
  /** What the supply gives: its rating for as long as one likes, and the most for the moment that a trip takes, amperes on the track. */
  readonly gives: Span;
  /** The rating has to be above this, amperes as printed on the supply: trip current plus own use, as the supply sees them. */
  readonly ratingAbove: number;
} & (
  | { readonly kind: 'surely'; readonly because: 'rating-above-trip' }
  | { readonly kind: 'perhaps'; readonly because: 'ratings-equal' | 'better-rectifier' | 'for-a-moment' }
  | {
      readonly kind: 'surely-not';
      readonly because: 'supply-gives-way' | 'rectifier-takes-too-much' | 'unit-takes-all';
    }
);

/**
 * Whether the supply can drive the stage to its trip current (amperes, > 0). Surely not: the supply gives way first, and a short circuit
 * shows as a supply that restarts, not as a short. Supplies give 1.0 to 1.3 times their rating for a moment (from-memory); behind a
 * rectifier the factor is 1.6 to 1.8 (rectifier-table).
 */
export function supplyTrip(supply: Supply, stage: Stage, trip: number = stage.limit): SupplyTrip {
  const briefly = { ...supply, amps: supply.amps * SHORT_TIME_FACTOR };
  const gives = { from: trackCurrent(supply, stage), to: trackCurrent(briefly, stage, AC_FACTOR.best) };
  const figures = { trip, gives, ratingAbove: ratingFor(supply, stage, trip) };
  if (gives.from > trip + SAME) return { ...figures, kind: 'surely', because: 'rating-above-trip' };
  if (gives.to > trip + SAME) return { ...figures, kind: 'perhaps', because: perhaps(supply, stage, gives.from, trip) };
  return { ...figures, kind: 'surely-not', because: surelyNot(supply, stage, trip) };
}

/** The same in one word. */
export function tripReach(supply: Supply, stage: Stage, trip: number = stage.limit): TripReach {
  return REACH[supplyTrip(supply, stage, trip).kind];
}

const REACH = { surely: 'reached', perhaps: 'perhaps', 'surely-not': 'not-reached' } as const;

/** Currents nearer than this are one, amperes. Source: own-choice. */
const SAME = 1e-9;

type Because<Kind extends SupplyTrip['kind']> = Extract<SupplyTrip, { readonly kind: Kind }>['because'];

function perhaps(supply: Supply, stage: Stage, steady: number, trip: number): Because<'perhaps'> {
  if (supply.kind === 'ac' && trackCurrent(supply, stage, AC_FACTOR.best) > trip + SAME) return 'better-rectifier';
  return Math.abs(supply.amps - trip) <= SAME || Math.abs(steady - trip) <= SAME ? 'ratings-equal' : 'for-a-moment';
}

function surelyNot(supply: Supply, stage: Stage, trip: number): Because<'surely-not'> {
  if (trackCurrent(supply, stage) <= 0) return 'unit-takes-all';
  return supply.kind === 'ac' && supply.amps > trip ? 'rectifier-takes-too-much' : 'supply-gives-way';
}

/** Rating at which a supply of this kind and these volts gives exactly `trip` on the track; the inverse of `trackCurrent`. */
function ratingFor(supply: Pick<Supply, 'kind' | 'volts'>, stage: Stage, trip: number): number {
  if (supply.kind === 'ac') return AC_FACTOR.usual * (trip + stage.ownUse);
  const [none, one] = [0, 1].map((amps) => trackCurrent({ ...supply, amps }, { ...stage, ownUse: 0 }));
  const perAmpere = (one ?? 0) - (none ?? 0);
  return trip / perAmpere + stage.ownUse;
}

/**
 * What a supply is wanted for.
 */
export interface RatingWish {
  readonly kind: Supply['kind'];
  readonly volts: number;
  readonly plug?: Plug | undefined;
  readonly stage: Stage;
  /** Track current at which it trips, amperes; its limit where left out. */
  readonly trip?: number;
  /** What is printed at the unit's input. */
  readonly input: InputLabel;
  readonly scale: Scale;
}

/** What helps instead of a purchase. */
export type InsteadOfRating = 'read-the-label' | 'lower-the-trip' | 'breaker' | 'other-supply';

export type RatingAdvice =
  /** The smallest common rating that surely trips the unit, amperes. */
  | { readonly kind: 'rating'; readonly amps: number; readonly finding: SupplyTrip }
  | {
      readonly kind: 'no-rating';
      readonly because:
        | Extract<LabelFinding, { kind: 'not-permitted' }>['because']
        | 'label-not-read'
        | 'above-the-scale'
        | 'beyond-nem-609';
      /** Nothing is to be bought; these help, the cheapest first. */
      readonly instead: readonly InsteadOfRating[];
      /** The trip level has to be below this for some supply to be right, amperes; where lowering it helps. */
      readonly tripBelow?: number;
    };

/**
 * The next common rating above trip current plus own use: within NEM 609, the unit's input and what the scale bears. Where there is none,
 * a lower trip level or a breaker and no purchase.
 */
export function recommendedRating({
  kind,
  volts,
  plug,
  stage,
  trip = stage.limit,
  input,
  scale,
}: RatingWish): RatingAdvice {
  const { tripCeiling } = DRAWS[scale];
  if (trip > tripCeiling + SAME) {
    return {
      kind: 'no-rating',
      because: 'above-the-scale',
      instead: ['lower-the-trip', 'breaker'],
      tripBelow: tripCeiling,
    };
  }
  // The amperes are what is looked for: the smallest stand in for them here.
  const label = checkLabels({ kind, volts, amps: 0, plug }, input);
  if (label.kind === 'unknown') return { kind: 'no-rating', because: 'label-not-read', instead: ['read-the-label'] };
  if (label.kind === 'not-permitted') return { kind: 'no-rating', because: label.because, instead: ['other-supply'] };
  const permitted = COMMON_RATINGS.filter((amps) => withinModelLimit({ kind, volts, amps }));
  for (const amps of permitted) {
    const finding = supplyTrip({ kind, volts, amps }, stage, trip);
    if (finding.kind === 'surely') return { kind: 'rating', amps, finding };
  }
  const most = permitted.at(-1);
  const tripBelow = most === undefined ? 0 : trackCurrent({ kind, volts, amps: most }, stage);
  const instead = tripBelow > 0 ? (['lower-the-trip', 'breaker'] as const) : (['other-supply'] as const);
  return { kind: 'no-rating', because: 'beyond-nem-609', instead, ...(tripBelow > 0 ? { tripBelow } : {}) };
}
