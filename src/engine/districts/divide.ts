// Divides: with gaps that lie too near each other kept from being made both, and a reason where nothing can be found.
import { atOnce } from '../at-once.ts';
import { deepen } from './deepen.ts';
import { divisionOf } from './division.ts';
import { hindrancesOf, looser } from './hindrances.ts';
import { orderOf } from './order.ts';
import type { Divided, Dividing, Division, DivisionOptions, DivisionProblem, Hindrance } from './problem.ts';
import type { Sought } from './search.ts';
import { Search } from './search.ts';
import type { Whole } from './whole.ts';
import { wholeOf } from './whole.ts';

/**
 * The division with the fewest and least awkward gaps that every stage bears, and among those of the same cost the most even one. The
 * same problem always gives the same. Throws RangeError for numbers and places that are no problem.
 */
export const divide = (problem: DivisionProblem, options: DivisionOptions = {}): Divided =>
  atOnce(divideInParts(problem, options));

export function* divideInParts(problem: DivisionProblem, options: DivisionOptions = {}): Dividing<Divided> {
  const sought = yield* seek(problem, options);
  if (sought.kind !== 'none') return sought;
  const because = yield* whyNot(problem, options);
  const nearest = yield* nearestOf(problem, sought.order);
  return { kind: 'impossible', because, ...(nearest === undefined ? {} : { nearest }) };
}

/** The division, or that there is none; nothing is said of the reason. */
export function* seek(problem: DivisionProblem, options: DivisionOptions): Dividing<Sought> {
  const whole = wholeOf(problem, options);
  const order = orderOf(whole);
  if (hindrancesOf(problem, whole).length > 0) return { kind: 'none', order };
  return yield* new Search(problem, whole, { order }).run();
}

/** What no division gets round: what can be seen, or else what it can be left out of and then there is one. */
function* whyNot(problem: DivisionProblem, options: DivisionOptions): Dividing<readonly Hindrance[]> {
  const whole = wholeOf(problem, options);
  const seen = hindrancesOf(problem, whole);
  if (seen.length > 0) return seen;
  const found: Hindrance[] = [];
  for (const { without, say } of looser(problem, options)) {
    const sought = yield* seek(without.problem, without.options);
    if (sought.kind === 'divided') found.push(say(sought.division));
  }
  return found;
}

/** How closely the most even use is looked for, as a share of the even one. Source: own-choice. */
const CLOSE = 0.01;
/** A division that uses a stage so many times as much as an even one is no help to anybody. Source: own-choice. */
const FULLEST = 12;
/** States that are looked at for one try of it. Source: own-choice. */
const SHORT_WORK = 400_000;

/** The most even division there is, whatever the stages bear. */
function* nearestOf(problem: DivisionProblem, order: readonly number[]): Dividing<Division | undefined> {
  const { conflicts: _, ...without } = problem;
  const asBorne = wholeOf(without);
  if (asBorne.evenUse === 0) return undefined;
  let best: Division | undefined;
  let [lowest, highest] = [1, FULLEST];
  while (highest - lowest > CLOSE) {
    const busiest: number = best === undefined ? highest : (lowest + highest) / 2;
    const whole = overfull(asBorne, busiest * asBorne.evenUse);
    const { kept } = yield* deepen(whole, { order, mostWork: SHORT_WORK, mostStates: SHORT_WORK / 10 });
    const division = kept === undefined ? undefined : divisionOf(without, whole, kept);
    if (division === undefined && best === undefined) return undefined;
    if (division === undefined) lowest = busiest;
    else [best, highest] = [division, Math.min(busiest, division.busiest)];
  }
  return best;
}

/** Stages that take so many times what they bear. */
const overfull = (whole: Whole, times: number): Whole => ({
  ...whole,
  kinds: whole.kinds.map((kind) => ({
    ...kind,
    least: 0,
    most: (fixed) => Math.floor(times * Math.max(0, kind.bears(fixed)) + 1e-9),
  })),
});
