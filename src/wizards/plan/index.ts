// What this room lets out.
export { csvOf } from './csv.ts';
export type { Part } from './parts.ts';
export type { Plan } from './plan.ts';
export { planOf } from './plan.ts';
export { FIX_OF_REMEDY } from './remedies.ts';
export type { PlanStep } from './steps.ts';
export { STEP_KINDS } from './steps.ts';
export type { Reading, TestRow, Where } from './test-sheet.ts';
export { CHECKED_BY } from './test-sheet.ts';
export type { Beyond, PlanGap, TrackProblem } from './track.ts';
export { beyondOf, districtOf, sidesOf } from './track.ts';
export type { Unread } from './unread.ts';
