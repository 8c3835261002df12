// How far apart the rails of two neighbours stand at the gap, and what that comes to.
import type { Span } from '../units.ts';

/** Largest step between neighbours' rails that is taken as equal, volts. Source: from-memory; changeable. */
export const STEP_LIMIT = 0.5;
/** From here on every wheel sparks and the higher stage takes over the lower district, volts. Source: from-memory. */
export const STEP_TOO_LARGE = 2;

/** Largest size of the step, volts. */
export function stepSize(step: Span): number {
  return Math.max(Math.abs(step.from), Math.abs(step.to));
}

/** Which stands higher at the gap, or whether both count as level. */
export type StepFinding = 'level' | 'station-higher' | 'booster-higher';

/** What a step (volts, booster less command station) comes to. `stepLimit`: the largest that counts as level, volts >= 0. */
export function stepFinding(step: Span, stepLimit = STEP_LIMIT): StepFinding {
  if (isLevel(step, stepLimit)) return 'level';
  return step.to >= -step.from ? 'booster-higher' : 'station-higher';
}

/** Whether neighbours' rails count as equal. */
export const isLevel = (step: Span, stepLimit: number): boolean => stepSize(step) <= stepLimit + 1e-9;
