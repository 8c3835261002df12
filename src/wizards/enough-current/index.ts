// What this room lets out.
export { enoughCurrent } from './flow.ts';
export { ENOUGH_CURRENT_OUTCOMES } from './outcomes.ts';
export type { Conclusion, Power, Reckoning } from './result.ts';
export { conclude, reckon } from './result.ts';
