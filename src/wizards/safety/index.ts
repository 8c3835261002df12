// What this room lets out.
export type { Act, PowerAct } from './acts.ts';
export { ACTS, HAND_ACTS } from './acts.ts';
export type { Rank } from './dangers.ts';
export { ALL_OUTDOORS, dangersOf, dangersOutdoors, hasPowerOn, RANKS, rankOf } from './dangers.ts';
export { JOBS } from './jobs.ts';
