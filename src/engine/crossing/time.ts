// How long a vehicle joins the two sides of a gap.

import type { Span } from '../units.ts';
import type { Working } from '../workings.ts';
import { working } from '../workings.ts';
import type { CrossingProblem, Ranged } from './range.ts';
import { problemIn, rangeOf } from './range.ts';

/** `never`: its wheels do not reach across. `without-limit`: it stands there. Seconds; the longest has the working. */
export type BridgingTime =
  | { readonly kind: 'seconds'; readonly seconds: Span; readonly working: Working }
  | { readonly kind: 'without-limit' }
  | { readonly kind: 'never' }
  | CrossingProblem;

/** Width of a gap, metres: 0.5 to 2 mm are used. Source: common-practice. */
export const GAP_WIDTH = 0.001;

/**
 * A vehicle with through pick-ups joins both sides while its outermost pick-up wheels stand on either side: (pick-up span - gap) /
 * speed. Metres >= 0; metres a second >= 0, 0 for a vehicle that stands across. Source: own-derivation.
 */
export function bridgingTime(pickUpSpan: number, speed: Ranged, gap = GAP_WIDTH): BridgingTime {
  const problem = problemIn([
    ['speed', speed, 'not-negative'],
    ['gap', gap, 'not-negative'],
    ['pick-up-span', pickUpSpan, 'not-negative'],
  ]);
  if (problem !== undefined) return problem;
  const metres = pickUpSpan - gap;
  if (!(metres > 0)) return { kind: 'never' };
  const { from, to } = rangeOf(speed);
  if (from === 0) return { kind: 'without-limit' };
  const seconds = { from: metres / to, to: metres / from };
  const inputs = [
    ['pick-up-span', pickUpSpan, 'm'],
    ['gap', gap, 'm'],
    ['metres-a-second', from, 'm'],
  ] as const;
  return {
    kind: 'seconds',
    seconds,
    working: working('crossing-bridging-time', seconds.to, 's', inputs, ['own-derivation']),
  };
}
