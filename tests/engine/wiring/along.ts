// One question to a plan that is laid for it alone.
import type { FeedingPlan, FeedingProblem } from '../../../src/engine/wiring/plan.ts';
import type { StandingTrain, TrainAlong } from '../../../src/engine/wiring/plan-circuit.ts';
import { solvePlan } from '../../../src/engine/wiring/plan-circuit.ts';
import type { ShortAlong } from '../../../src/engine/wiring/short-circuit.ts';

export function trainAlong(
  plan: FeedingPlan,
  amps: number,
  standing: readonly StandingTrain[] = [],
  step?: number,
): TrainAlong | FeedingProblem {
  const circuit = solvePlan(plan, standing);
  return circuit.kind === 'circuit' ? circuit.train(amps, step) : circuit;
}

export function shortAlong(plan: FeedingPlan, faultOhms = 0, step?: number): ShortAlong | FeedingProblem {
  const circuit = solvePlan(plan);
  return circuit.kind === 'circuit' ? circuit.short(faultOhms, step) : circuit;
}
