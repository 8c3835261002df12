// Fewer gaps first: the limit on their cost is raised from the least possible until there is a division.

import { orderOf, stepsOf } from './order.ts';
import type { DivisionProgress } from './problem.ts';
import { sweep } from './sweep.ts';
import type { Whole } from './whole.ts';

/** What was found: links that are kept, or that there is nothing; `atLeast`: what any division costs at least. */
export interface Deepened {
  readonly kept?: ReadonlySet<number> | undefined;
  readonly atLeast: number;
  /** Whether nothing better, or nothing at all where nothing was found, is there for sure. */
  readonly proven: boolean;
}

/** By how much a limit is raised at least, so that awkward gaps of many kinds do not mean as many tries. Source: own-choice. */
const RAISE = 1.15;
/** Most states that are looked at before it is given up. Source: own-choice. */
export const MOST_WORK = 12_000_000;

export interface Deepening {
  /** In which order sections are taken up, where it is known. */
  readonly order?: readonly number[] | undefined;
  readonly mostWork?: number | undefined;
  readonly mostStates?: number | undefined;
}

export function* deepen(
  whole: Whole,
  { order = orderOf(whole), mostWork = MOST_WORK, mostStates }: Deepening = {},
): Generator<DivisionProgress, Deepened> {
  const steps = stepsOf(whole, order);
  let [limit, atLeast, proven, work] = [0, 0, true, 0];
  for (;;) {
    const sweeping = sweep(whole, steps, limit, mostStates);
    let turn = sweeping.next();
    while (turn.done !== true) {
      yield { cost: limit / whole.costUnits, done: turn.value };
      turn = sweeping.next();
    }
    const { kept, beyond, whole: looked, states } = turn.value;
    work += states;
    proven &&= looked;
    if (kept !== undefined) return { kept, atLeast, proven };
    if (proven) atLeast = beyond;
    if (beyond === Number.POSITIVE_INFINITY) return { atLeast, proven };
    if (work >= mostWork) return { atLeast, proven: false };
    limit = Math.max(beyond, Math.floor(limit * RAISE));
    yield { cost: limit / whole.costUnits, done: 0 };
  }
}
