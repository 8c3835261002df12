// What this room lets out.
export type { LeftOut, Told, Walk } from './address.ts';
export { CANNOT, NOTHING_TOLD, parseWalk, replayWalk, verdictOf, walkAddress } from './address.ts';
export type { ComplaintId, FixClass } from './faults/index.ts';
export { COMPLAINT_IDS, FAULT_MODEL, powerActsOf, TWO_PARTS } from './faults/index.ts';
export { causesOf, checksThatTell, handedOn, possibleNow } from './possible.ts';
export { isRead } from './read.ts';
export type { Isolation, Phase, WalkContext } from './states.ts';
export { ISOLATION, PHASE, putItRight, secondFault } from './states.ts';
export { compiledFor, questionsToGo, rowOfCheck } from './step.ts';
