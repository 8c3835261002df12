// The course of the current that the engine tells the beginning, the end and the time constant of.
import type { PushInput } from '../../../src/engine/crossing/push.ts';
import { pushAt } from '../../../src/engine/crossing/push.ts';

/** Current `seconds` >= 0 after the train reached across, amperes. */
export function pushCurrentAt(input: PushInput, seconds: number): number {
  const { pulse, takeOver, timeConstant } = pushAt(input);
  if (timeConstant === 0) return takeOver;
  return takeOver + (pulse - takeOver) * Math.exp(-seconds / timeConstant);
}
