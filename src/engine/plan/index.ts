// What a plan needs besides loads and wires: what is always on, fuses, how far wire is stripped, when a bus is long, what meters show.
export { HARDLY, leadAmps, lostAsPlanned, metersShow } from './expected.ts';
export { withFixedDraw } from './fixed.ts';
export type { Fuse } from './fuse.ts';
export { fuseFor } from './fuse.ts';
export { isLongBus, STRIPPED } from './wires.ts';
