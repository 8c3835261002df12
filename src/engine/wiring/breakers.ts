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
  /** What trains of other parts may draw until a short that the breaker does not see takes the stage along, amperes. */
  readonly leftForOthers: number;
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
    leftForOthers: stage.trip - tripAtMost,
    seconds: { from: BREAKER_TIME.from, to: Math.min(BREAKER_TIME.to, stage.seconds) },
    tripsOnInrush: breaker.seconds < BREAKER_TIME.from,
  };
}

function gradingOf(lower: boolean, faster: boolean): Grading['finding'] {
  if (lower) return faster ? 'well-graded' : 'not-faster';
  return faster ? 'not-lower' : 'neither';
}

/** Of two protections in a row the one is surely first if the other takes this many times as long. Source: from-memory. */
export const SURELY_FIRST = 2;

/** A breaker below its unit, and what trains in the other parts draw through the unit meanwhile, amperes >= 0. */
export interface Row {
  readonly breaker: Protection;
  readonly unit: Protection;
  readonly others: number;
}

/** `either`: both see it, and their times are too close to tell. `nothing`: neither sees it, and the fault goes on heating. */
export interface Opening {
  readonly opens: 'breaker' | 'unit' | 'either' | 'nothing';
  /** What each of the two has to pass, amperes. */
  readonly passes: Readonly<Record<'breaker' | 'unit', number>>;
  /** Seconds until power is gone at the fault; undefined where nothing opens. */
  readonly seconds: number | undefined;
}

/**
 * Which of the two opens on a short that draws `amps` (>= 0) in the breaker's part. The unit passes the short and the trains of all
 * other parts, so it may see enough where the breaker does not. Source: own-derivation.
 */
export function openedBy(amps: number, { breaker, unit, others }: Row): Opening {
  const passes = { breaker: amps, unit: amps + others };
  const [one, two] = [passes.breaker > breaker.trip, passes.unit > unit.trip];
  if (!(one || two)) return { opens: 'nothing', passes, seconds: undefined };
  if (!two) return { opens: 'breaker', passes, seconds: breaker.seconds };
  if (!one) return { opens: 'unit', passes, seconds: unit.seconds };
  return { opens: quicker(breaker.seconds, unit.seconds), passes, seconds: Math.min(breaker.seconds, unit.seconds) };
}

function quicker(breaker: number, unit: number): Opening['opens'] {
  if (breaker * SURELY_FIRST <= unit) return 'breaker';
  return unit * SURELY_FIRST <= breaker ? 'unit' : 'either';
}
