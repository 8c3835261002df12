// What this room lets out.
export type { Act, HandAct, PowerAct } from './acts.ts';
export { ACTS, HAND_ACTS, POWER_ACTS } from './acts.ts';
export type { DangerId, Rank } from './dangers.ts';
export { DANGERS_OF, dangersOf, RANK_OF, RANKS, rankOf } from './dangers.ts';
export type { Job } from './jobs.ts';
export { JOBS } from './jobs.ts';
