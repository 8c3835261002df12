// What this room lets out.
export { ENOUGH_CURRENT_QUESTIONS, enoughCurrent } from './flow.ts';
export type { Conclusion, Power, Reckoning } from './result.ts';
export { buys, conclude, reckon, verdictAtOwnUse } from './result.ts';
