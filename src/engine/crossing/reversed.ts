// Two sides whose polarity is opposite: a train across both gaps puts both stages in series on one loop.

import type { Span } from '../units.ts';
import { working } from '../workings.ts';
import type { CrossingOhms } from './ohms.ts';
import { CROSSING_OHMS, ohmsProblem, typicalOhms } from './ohms.ts';
import { pushAt } from './push.ts';
import type { Certainty, CrossingProblem, Ranged, Reckoned, SideId } from './range.ts';
import { otherSide, problemIn, rangeOf, usualOf } from './range.ts';

/** Two diodes of a switched-off output stage in the way of a current from outside, volts. Source: own-derivation. */
export const FLYBACK_DROP = 1.4;

export interface ReversedSide {
  /** Rail volts. */
  readonly volts: Ranged;
  /** Trip current of its stage, amperes > 0. */
  readonly trip: number;
  /** How long it takes to open, seconds >= 0. */
  readonly tripSeconds: Ranged;
  /** What its district draws, and its stage, amperes >= 0. */
  readonly load: number;
  readonly ownUse: number;
  /** True where it switches itself on again. */
  readonly retries?: boolean;
}

/** `either`: alike, or not known apart. `none`: the loop lets too little through, and nothing opens. */
export type OpensFirst = SideId | 'either' | 'none';

export type ReversedFinding =
  | 'both-in-series'
  | 'other-may-show-nothing'
  | 'may-not-trip'
  | 'nothing-trips'
  | 'pulses-without-end'
  | 'tripped-side-comes-alive';

export interface CrossingReversed {
  readonly kind: 'reversed';
  /** Current by Ohm's law alone, through both stages and every wheel in the loop, amperes. */
  readonly prospective: Reckoned;
  readonly reaches: Readonly<Record<SideId, Certainty>>;
  readonly opens: OpensFirst;
  /** How long until something opens, seconds; undefined where nothing surely does. */
  readonly lasts: Span | undefined;
  /** Heat in the whole loop until then, watts, most of it at wheels and wires. */
  readonly power: Reckoned;
  /** What the other stage still feeds into the tripped side through the train. */
  readonly afterTrip: { readonly amps: number; readonly linkVolts: number } | undefined;
  readonly findings: readonly ReversedFinding[];
  readonly verdict: 'do-not-run';
  readonly reasons: readonly ['reversed'];
  readonly advice: readonly ['turn-one-pair-round'];
}

/** Both stages in series over the loop. Source: own-derivation (Kirchhoff's and Ohm's laws). */
export function crossingReversed(
  near: ReversedSide,
  far: ReversedSide,
  ohms: number | CrossingOhms = CROSSING_OHMS,
): CrossingReversed | CrossingProblem {
  const problem = problemIn([...checksOf('near', near), ...checksOf('far', far)]) ?? ohmsProblem(ohms);
  if (problem !== undefined) return problem;
  const [v1, v2, loop] = [rangeOf(near.volts), rangeOf(far.volts), rangeOf(ohms)];
  const volts = { from: v1.from + v2.from, to: v1.to + v2.to };
  const usualVolts = usualOf(near.volts) + usualOf(far.volts);
  const amps = { from: volts.from / loop.to, to: volts.to / loop.from };
  const given = [
    ['near-volts', v1.to, 'V'],
    ['far-volts', v2.to, 'V'],
    ['ohms', loop.from, 'ohm'],
  ] as const;
  const reaches = { near: reach(amps, near.trip), far: reach(amps, far.trip) };
  const opens = opensFirst(reaches, near, far);
  const usualOhms = typicalOhms(ohms);
  const afterTrip = opens === 'near' || opens === 'far' ? afterTripOf(opens, near, far, usualOhms) : undefined;
  const surely = reaches.near === 'yes' || reaches.far === 'yes';
  return {
    kind: 'reversed',
    prospective: {
      span: amps,
      typical: usualVolts / usualOhms,
      working: working('crossing-reversed', amps.to, 'A', given, ['own-derivation']),
    },
    reaches,
    opens,
    lasts: surely ? lastsOf(reaches, near, far) : undefined,
    power: {
      span: { from: volts.from * amps.from, to: volts.to * amps.to },
      typical: usualVolts ** 2 / usualOhms,
      working: working('crossing-reversed-power', volts.to * amps.to, 'W', given, ['own-derivation']),
    },
    afterTrip,
    findings: findingsOf(reaches, opens, near, far, afterTrip?.amps ?? 0),
    verdict: 'do-not-run',
    reasons: ['reversed'],
    advice: ['turn-one-pair-round'],
  };
}

const checksOf = (id: SideId, side: ReversedSide) =>
  [
    [`${id}.volts`, side.volts, 'not-negative'],
    [`${id}.trip`, side.trip, 'positive'],
    [`${id}.trip-seconds`, side.tripSeconds, 'not-negative'],
    [`${id}.load`, side.load, 'not-negative'],
    [`${id}.own-use`, side.ownUse, 'not-negative'],
  ] as const;

function reach(amps: Span, trip: number): Certainty {
  if (amps.to <= trip) return 'no';
  return amps.from > trip ? 'yes' : 'perhaps';
}

// Among the stages that see a short: the faster one; where the times overlap, the one with the lower trip current.
function opensFirst(reaches: Readonly<Record<SideId, Certainty>>, near: ReversedSide, far: ReversedSide): OpensFirst {
  if (reaches.near === 'no') return reaches.far === 'no' ? 'none' : 'far';
  if (reaches.far === 'no') return 'near';
  const [a, b] = [rangeOf(near.tripSeconds), rangeOf(far.tripSeconds)];
  if (a.to < b.from) return 'near';
  if (b.to < a.from) return 'far';
  if (near.trip === far.trip) return 'either';
  return near.trip < far.trip ? 'near' : 'far';
}

// Until the first of those opens that surely do; one that perhaps does can only make it shorter.
function lastsOf(reaches: Readonly<Record<SideId, Certainty>>, near: ReversedSide, far: ReversedSide): Span {
  const both = [
    { sure: reaches.near, time: rangeOf(near.tripSeconds) },
    { sure: reaches.far, time: rangeOf(far.tripSeconds) },
  ];
  return {
    from: Math.min(...both.filter(({ sure }) => sure !== 'no').map(({ time }) => time.from)),
    to: Math.min(...both.filter(({ sure }) => sure === 'yes').map(({ time }) => time.to)),
  };
}

// The tripped output is off, and its diodes let the other side in: into its rails and its empty link.
function afterTripOf(opened: SideId, near: ReversedSide, far: ReversedSide, ohms: number) {
  const sides = { near, far };
  const tripped = sides[opened];
  const feeding = sides[otherSide(opened)];
  const { takeOver, link } = pushAt({
    higherVolts: usualOf(feeding.volts),
    lowerVolts: 0,
    ohms,
    load: tripped.load,
    ownUse: tripped.ownUse,
    linkFarads: 0,
    backDrop: FLYBACK_DROP,
  });
  return { amps: takeOver, linkVolts: link };
}

function findingsOf(
  reaches: Readonly<Record<SideId, Certainty>>,
  opens: OpensFirst,
  near: ReversedSide,
  far: ReversedSide,
  fedAfterwards: number,
): ReversedFinding[] {
  const surely = reaches.near === 'yes' || reaches.far === 'yes';
  const retries = near.retries === true || far.retries === true;
  const all: readonly (readonly [ReversedFinding, boolean])[] = [
    ['both-in-series', true],
    ['nothing-trips', opens === 'none'],
    ['may-not-trip', opens !== 'none' && !surely],
    ['other-may-show-nothing', opens === 'near' || opens === 'far'],
    ['pulses-without-end', opens !== 'none' && retries],
    ['tripped-side-comes-alive', fedAfterwards > 0],
  ];
  return all.filter(([, holds]) => holds).map(([finding]) => finding);
}
