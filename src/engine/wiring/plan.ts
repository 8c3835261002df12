// A district as it is wired: a stage, a bus, feeders and rails; what can be wrong with it, and feeders laid out evenly.

/** A district in metres along its track; the bus runs beside it. Every resistance is of one conductor or one rail: the loop has two. */
export interface FeedingPlan {
  readonly source: {
    /** Without load, volts, > 0. */
    readonly volts: number;
    /** Of the stage, its supply and the leads to the bus, ohms, >= 0. */
    readonly ohms: number;
    /** Most it passes, amperes, > 0; absent: only resistance limits. */
    readonly limit?: number;
  };
  readonly bus: {
    /** Metres, > 0, from the same zero as the track. */
    readonly length: number;
    readonly ohmsPerMetre: number;
    /** Where the stage feeds it, metres from its start. */
    readonly fedAt: number;
    /** Its two ends are joined. */
    readonly ring: boolean;
    /** Metres of the same pair of wires between the stage and where it feeds the bus, >= 0; absent: none. */
    readonly lead?: number;
  };
  readonly feeders: readonly Feeder[];
  readonly rails: {
    readonly length: number;
    readonly ohmsPerMetre: number;
    readonly joints: readonly RailJoint[];
    /** The track is an oval: its two ends are one place. */
    readonly closed?: boolean;
  };
}

/** A pair of wires from bus to rails. `at`: metres along the track; a feeder exactly on a joint holds the side towards the start. */
export interface Feeder {
  readonly at: number;
  readonly length: number;
  readonly ohmsPerMetre: number;
}

/** A joint of the rails that resists: ohms in each rail. Inside the track, not at its ends. */
export interface RailJoint {
  readonly at: number;
  readonly ohms: number;
}

export interface FeedingProblem {
  readonly kind: 'no-solution';
  readonly because:
    | 'not-above-zero'
    | 'below-zero'
    | 'outside-the-track'
    | 'outside-the-bus'
    | 'no-feeder'
    | 'more-than-the-source'
    | 'no-operating-point'
    | 'too-far-apart';
  /** `source`, `bus`, `rails`, `short`, `train`, `train-2`, `feeder-3`, `joint-1`: counted from 1. */
  readonly parts: readonly string[];
}

/** Places nearer than this are one place, metres. Source: own-choice. */
export const SAME_PLACE = 1e-6;

/** What lies before the bus: stage, supply and leads, and the bus's own lead there and back, ohms. */
export const sourceOhms = ({ source, bus }: FeedingPlan): number =>
  source.ohms + 2 * (bus.lead ?? 0) * bus.ohmsPerMetre;

const above = (value: number): boolean => value > 0 && Number.isFinite(value);
/** A plan without an answer, and the parts to blame. */
export const problem = (because: FeedingProblem['because'], ...parts: string[]): FeedingProblem => ({
  kind: 'no-solution',
  because,
  parts,
});

/** What is wrong with a plan, the first kind of mistake with all its parts. */
export const wrongPlan = (plan: FeedingPlan): FeedingProblem | undefined => wrongPart(plan) ?? wrongPlace(plan);

function wrongPart({ source, bus, feeders, rails }: FeedingPlan): FeedingProblem | undefined {
  const values: readonly (readonly [string, ...number[]])[] = [
    ['source', source.volts, source.limit === undefined ? 1 : source.limit],
    ['bus', bus.length, bus.ohmsPerMetre],
    ['rails', rails.length, rails.ohmsPerMetre],
    ...feeders.map((one, i) => [`feeder-${i + 1}`, one.length, one.ohmsPerMetre] as const),
  ];
  const notAbove = values.filter(([, ...numbers]) => !numbers.every(above)).map(([part]) => part);
  if (notAbove.length > 0) return problem('not-above-zero', ...notAbove);
  const below = [
    ['source', source.ohms] as const,
    ['bus', bus.lead ?? 0] as const,
    ...rails.joints.map((one, i) => [`joint-${i + 1}`, one.ohms] as const),
  ].filter(([, ohms]) => !(ohms >= 0 && Number.isFinite(ohms)));
  if (below.length > 0) return problem('below-zero', ...below.map(([part]) => part));
  return feeders.length === 0 ? problem('no-feeder', 'rails') : undefined;
}

function wrongPlace({ bus, feeders, rails }: FeedingPlan): FeedingProblem | undefined {
  const offTrack = [
    ...feeders.map((one, i) => [`feeder-${i + 1}`, one.at >= 0 && one.at <= rails.length + SAME_PLACE] as const),
    ...rails.joints.map(
      (one, i) => [`joint-${i + 1}`, one.at > SAME_PLACE && one.at < rails.length - SAME_PLACE] as const,
    ),
  ].filter(([, inside]) => !inside);
  if (offTrack.length > 0) return problem('outside-the-track', ...offTrack.map(([part]) => part));
  const offBus = [
    ['source', bus.fedAt] as const,
    ...feeders.map((one, i) => [`feeder-${i + 1}`, one.at] as const),
  ].filter(([, at]) => !(at >= 0 && at <= bus.length + SAME_PLACE));
  return offBus.length > 0 ? problem('outside-the-bus', ...offBus.map(([part]) => part)) : undefined;
}

/** Most feeders that are laid out evenly. Source: own-choice. */
export const MOST_FEEDERS = 200;

/**
 * Feeders of one kind spread over a track: so many, or so many that none is farther than `spacing` metres from the next. On a track
 * with two ends the outer ones stand a quarter of their distance from the ends, for a dead end of that length loses as much as the middle between two
 * feeders; on an oval the distances are equal. At most 200; none where the count, spacing or length is not above 0. Source:
 * own-derivation.
 */
export function evenFeeders(
  how: { readonly count: number } | { readonly spacing: number },
  { length, closed = false }: Pick<FeedingPlan['rails'], 'length' | 'closed'>,
  wire: Omit<Feeder, 'at'>,
): Feeder[] {
  const wanted = 'count' in how ? Math.round(how.count) : Math.ceil(length / how.spacing + (closed ? 0 : 0.5) - 1e-9);
  if (!(length > 0 && wanted > 0)) return [];
  const count = Math.min(wanted, MOST_FEEDERS);
  const apart = closed ? length / count : length / (count - 0.5);
  const first = closed ? apart / 2 : apart / 4;
  return Array.from({ length: count }, (_, i) => ({ ...wire, at: first + i * apart }));
}
