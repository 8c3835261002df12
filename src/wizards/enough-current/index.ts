// What this room lets out.
export { type Divided, isDone, type Planned } from './divided.ts';
export { enoughCurrent } from './flow.ts';
export { helpful } from './helpful.ts';
export { ENOUGH_CURRENT_OUTCOMES } from './outcomes.ts';
export type { Power, Reckoning } from './reckoning.ts';
export { reckon } from './reckoning.ts';
export type { Conclusion } from './result.ts';
export { concluded } from './result.ts';
export type { Deciding } from './sure.ts';
export { isTold } from './sure.ts';
export type { Likely } from './surer.ts';
export { howLikely, surerOf } from './surer.ts';
