// What this room lets out.
export type { PowerUp, Seen } from './flow.ts';
export { CANNOT, NO_COIN, replayPowerUp } from './flow.ts';
export type { HandOver } from './hand-over.ts';
export { handOver } from './hand-over.ts';
export { isOwnTest, OWN_ACTS } from './own-acts.ts';
export type { ReadingField } from './readings.ts';
export { fieldsOf, lossSays, optionRead } from './readings.ts';
