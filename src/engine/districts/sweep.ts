// The exact method: sections are taken up one by one, and of all ways to join those that were taken only what the rest can tell apart is
// kept: which sections on the frontier belong together, what each such part holds, and which stages have their district. Of ways that
// look the same the cheapest stays, and what costs more than a limit is dropped, so that a first answer within it is a best one.
// Source: cohen-addad-2021 (that a narrow frontier makes it polynomial); the bounds: own derivation.
import type { Layer } from './layer.ts';
import type { Step } from './order.ts';
import { Sweeper } from './sweeper.ts';
import type { Whole } from './whole.ts';

export interface Swept {
  /** Links that are kept in the cheapest division within the limit; undefined where there is none. */
  readonly kept?: ReadonlySet<number> | undefined;
  /** The least that anything dropped for its cost would cost; infinite where nothing was. */
  readonly beyond: number;
  /** Whether nothing was dropped for want of room. */
  readonly whole: boolean;
  readonly states: number;
}

/** Most states that are kept after one step. Source: own-choice. */
export const MOST_STATES = 300_000;
/** After so many states whoever sweeps may look up. Source: own-choice. */
const A_WHILE = 4096;

/** A step, and what there was after it. */
interface Looked {
  readonly layer: Layer;
  readonly step: Step;
}

/** Divides with gaps of at most `limit` together. Yields the share of the steps that is done. */
export function* sweep(
  whole: Whole,
  steps: readonly Step[],
  limit: number,
  mostStates = MOST_STATES,
): Generator<number, Swept> {
  const sweeper = new Sweeper(whole, steps, limit);
  const looked: Looked[] = [];
  let layer = sweeper.first();
  let [states, spared] = [0, true];
  for (const [at, step] of steps.entries()) {
    const next = sweeper.layer();
    for (let state = 0; state < layer.count; state++) {
      sweeper.takeUp(step, layer, state, next);
      if (next.count >= mostStates) {
        next.halve();
        spared = false;
      }
      if (++states % A_WHILE === 0) yield (at + state / layer.count) / steps.length;
    }
    looked.push({ layer: next, step });
    layer = next;
  }
  const kept = layer.count === 0 ? undefined : traced(looked);
  return { kept, beyond: sweeper.beyond, whole: spared, states };
}

/** The links that were kept on the way to the one state after the last step. */
function traced(looked: readonly Looked[]): ReadonlySet<number> {
  const kept = new Set<number>();
  let state = 0;
  for (const { layer, step } of looked.toReversed()) {
    const bits = layer.kept[state] ?? 0;
    for (const [bit, { link }] of step.backs.entries()) if ((bits >>> bit) & 1) kept.add(link);
    state = layer.parent[state] ?? 0;
  }
  return kept;
}
