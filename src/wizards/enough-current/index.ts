// What this room lets out.
export { ENOUGH_CURRENT_QUESTIONS, enoughCurrent } from './flow.ts';
export type { Conclusion, Power, Reckoning } from './result.ts';
export { conclude, reckon } from './result.ts';
