// How a breaker has to stand under its stage.
import type { Span } from '../units.ts';

/** A breaker trips at no more than this share of its stage's trip current. Source: common-practice. */
export const BREAKER_SHARE = 0.7;
/** A breaker opens within this, seconds: slower than the inrush, faster than any stage. Source: common-practice. */
export const BREAKER_TIME: Span = { from: 0.005, to: 0.03 };
export interface Protection {
  /** Trip current, amperes, and time from short to off, seconds. */
  readonly trip: number;
  readonly seconds: number;
}

export interface Grading {
  readonly finding: 'well-graded' | 'not-lower' | 'not-faster' | 'neither';
  /** Highest trip current the breaker should have, amperes. */
  readonly tripAtMost: number;
  /** Time it should open in, seconds. */
  readonly seconds: Span;
  /** Opens before the inrush of decoders is over: it may trip on nothing. */
  readonly tripsOnInrush: boolean;
}

/** Whether a breaker opens before its stage does: it has to be lower and faster, either alone is not enough. Source: common-practice. */
export function gradeBreaker(breaker: Protection, stage: Protection): Grading {
  const tripAtMost = BREAKER_SHARE * stage.trip;
  const lower = breaker.trip <= tripAtMost + 1e-9;
  const faster = breaker.seconds <= BREAKER_TIME.to + 1e-9 && breaker.seconds < stage.seconds;
  return {
    finding: gradingOf(lower, faster),
    tripAtMost,
    seconds: { from: BREAKER_TIME.from, to: Math.min(BREAKER_TIME.to, stage.seconds) },
    tripsOnInrush: breaker.seconds < BREAKER_TIME.from,
  };
}

function gradingOf(lower: boolean, faster: boolean): Grading['finding'] {
  if (lower) return faster ? 'well-graded' : 'not-faster';
  return faster ? 'not-lower' : 'neither';
}
