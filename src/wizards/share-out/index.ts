// What this room lets out.

export { shareOut } from './flow.ts';
export { BREAKERS, LABELS_FIRST, LOOP_DEVICE, SHARE_OUT_OUTCOMES } from './outcomes.ts';
export type { GapPlace, PlacedWay, ShareFound } from './result.ts';
export { shareOutFor, takenInto } from './result.ts';
