// What this room lets out.
export type { PowerUp, Seen } from './flow.ts';
export { CANNOT, NO_COIN, replayPowerUp } from './flow.ts';
export type { HandOver } from './hand-over.ts';
export { handOver } from './hand-over.ts';
export { hasOwnQuestion, isOwnTest, MORE_ACTS, OWN_ACTS, ownSteps } from './own-acts.ts';
export type { ReadingDoubt, ReadingField } from './readings.ts';
export { doubtOf, fieldsOf, lossSays, optionRead } from './readings.ts';
