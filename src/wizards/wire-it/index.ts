// What this room lets out.
export { wireIt } from './flow.ts';
export { WIRE_IT_OUTCOMES } from './outcomes.ts';
export type { Missing, NotKnown, Stopped, WireFound, Wiring } from './result.ts';
export { inOrderOfWork, isTripSure, partsOf, shortDrawn, wire } from './result.ts';
export type { Untold } from './sure.ts';
