// A train spans the gap between two power stages whose rails are in phase: what flows, who carries what, who trips, and what to do.
// Stages cannot sink current, unless a side says so.

import type { Span } from '../units.ts';
import type { Working } from '../workings.ts';
import type { CrossingOhms } from './ohms.ts';
import { CROSSING_OHMS, ohmsProblem } from './ohms.ts';
import type { Certainty, CrossingProblem, SideId } from './range.ts';
import { problemIn } from './range.ts';
import type { CrossingPush, CrossingSide, KnownSide } from './sides.ts';
import { pushFrom, stepBetween } from './sides.ts';
import type { CrossingConclusion } from './verdict.ts';
import { concludeCrossing } from './verdict.ts';

export interface CrossingInput {
  readonly near: CrossingSide;
  readonly far: CrossingSide;
  /** Whole loop; `CROSSING_OHMS` where left out. */
  readonly ohms?: number | CrossingOhms;
  /** Largest step that counts as equal, volts; `STEP_LIMIT` where left out. */
  readonly stepLimit?: number;
}

export interface InPhaseCrossing extends CrossingConclusion {
  readonly kind: 'crossing';
  /** Near less far side at the gap, volts. */
  readonly step: Span;
  readonly higher: SideId | 'either' | 'neither';
  /** None where both stand alike, two where either may be the higher. */
  readonly pushes: readonly CrossingPush[];
  /** Steady current from the near into the far side, amperes, negative the other way. */
  readonly current: Span;
  /** Which stage the crossing trips first, and how sure that is. */
  readonly tripsFirst: SideId | 'either' | 'none';
  readonly trips: Certainty;
  readonly cascade: Certainty;
  /** True where one stage alone could carry both districts. */
  readonly oneCarriesBoth: boolean;
  readonly workings: readonly Working[];
}

export type CrossingResult =
  | InPhaseCrossing
  | {
      readonly kind: 'volts-unknown';
      readonly parts: readonly string[];
      readonly verdict: 'adjust';
      readonly reasons: readonly ['volts-unknown'];
      readonly advice: readonly [{ readonly id: 'measure-rail-volts-first' }];
    }
  | CrossingProblem;

/**
 * Two sides in phase with a train across both rails of the gap. Sources: own-derivation; parallel-sources for the higher of two
 * supplies taking all of the load.
 */
export function crossingInPhase(input: CrossingInput): CrossingResult {
  const { near, far, ohms = CROSSING_OHMS } = input;
  const limit = ['step-limit', input.stepLimit ?? 0, 'not-negative'] as const;
  const problem = problemIn([...checksOf('near', near), ...checksOf('far', far), limit]) ?? ohmsProblem(ohms);
  if (problem !== undefined) return problem;
  if (!(isKnown(near) && isKnown(far))) {
    const parts = [...(isKnown(near) ? [] : ['near.volts']), ...(isKnown(far) ? [] : ['far.volts'])];
    const advice = [{ id: 'measure-rail-volts-first' }] as const;
    return { kind: 'volts-unknown', parts, verdict: 'adjust', reasons: ['volts-unknown'], advice };
  }
  return crossingBetween(near, far, ohms, input.stepLimit);
}

const isKnown = (side: CrossingSide): side is KnownSide => side.volts !== undefined;

function checksOf(id: SideId, side: CrossingSide) {
  return [
    [`${id}.volts`, side.volts ?? 0, 'not-negative'],
    [`${id}.load`, side.load, 'not-negative'],
    [`${id}.own-use`, side.ownUse, 'not-negative'],
    [`${id}.limit`, side.limit, 'positive'],
    [`${id}.link-farads`, side.linkFarads ?? 0, 'not-negative'],
    [`${id}.detector-volts`, side.detectorVolts ?? 0, 'not-negative'],
    [`${id}.guard-volts`, side.guardVolts ?? 0, 'not-negative'],
  ] as const;
}

function crossingBetween(
  near: KnownSide,
  far: KnownSide,
  ohms: number | CrossingOhms,
  stepLimit?: number,
): InPhaseCrossing {
  const step = stepBetween(near, far);
  const fromNear = step.to > 0 ? [pushFrom('near', near, far, ohms)] : [];
  const fromFar = step.from < 0 ? [pushFrom('far', far, near, ohms)] : [];
  const pushes = [...fromNear, ...fromFar];
  const both = near.load + far.load;
  const tripping = pushes.filter(({ trips }) => trips !== 'no');
  const trips = strongest(pushes.map((one) => one.trips));
  const facts = {
    step,
    pushes,
    current: currentOf(fromNear[0], fromFar[0]),
    trips,
    cascade: strongest(pushes.map((one) => one.cascade)),
    oneCarriesBoth: both <= near.limit || both <= far.limit,
  };
  return {
    kind: 'crossing',
    ...facts,
    higher: onlyOne(pushes) ?? (pushes.length === 0 ? 'neither' : 'either'),
    tripsFirst: onlyOne(tripping) ?? (tripping.length === 0 ? 'none' : 'either'),
    ...concludeCrossing({ near, far }, facts, stepLimit),
    workings: pushes.flatMap((one) =>
      [one.step, one.pulse, one.charge, one.timeConstant, one.takeOver, one.link, one.carries].map(
        (row) => row.working,
      ),
    ),
  };
}

const onlyOne = (pushes: readonly CrossingPush[]): SideId | undefined =>
  pushes.length === 1 ? pushes[0]?.from : undefined;

const CERTAINTIES: readonly Certainty[] = ['yes', 'perhaps', 'no'];

// Over two directions of which only one is true at a time, "yes" in one is a "perhaps".
function strongest(all: readonly Certainty[]): Certainty {
  const most = CERTAINTIES.find((one) => all.includes(one)) ?? 'no';
  return most === 'yes' && all.includes('no') ? 'perhaps' : most;
}

function currentOf(fromNear: CrossingPush | undefined, fromFar: CrossingPush | undefined): Span {
  const forth = fromNear?.takeOver.span ?? { from: 0, to: 0 };
  const back = fromFar?.takeOver.span ?? { from: 0, to: 0 };
  const from = fromFar === undefined ? forth.from : -back.to;
  return { from, to: fromNear === undefined ? 0 - back.from : forth.to };
}
