// What this room lets out.
export { WIRE_IT_QUESTIONS, wireIt } from './flow.ts';
export type { NotKnown, WireFound, Wiring } from './result.ts';
export { wire } from './result.ts';
