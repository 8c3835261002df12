// What this room lets out.
export type { LeftOut, Sitting, Told, Walk } from './address.ts';
export { CANNOT, NOTHING_TOLD, verdictOf, walkAddress } from './address.ts';
export type { ChipGroup } from './chips.ts';
export { CHIP_GROUPS, CHIPS } from './chips.ts';
export { COMPLAINT_GROUPS } from './complaint-groups.ts';
export { causeLines, describedCauses } from './described.ts';
export { ended, mendingCheck, withoutMending } from './mended.ts';
export type { ComplaintId, FixClass } from './model/index.ts';
export {
  COMPLAINT_IDS,
  dangerOfAnswer,
  ENDS_AT_ONCE,
  fitsOnePart,
  isDoneFirst,
  isOnePart,
  isRepair,
  leavesATrace,
  optionsFor,
  powerActsOf,
  SIGN_MODEL,
  showsSafety,
  speaksOfAnotherPart,
  TWO_PARTS,
} from './model/index.ts';
export type { Place } from './place.ts';
export { placeInParts, placeOf } from './place.ts';
export {
  besideInParts,
  causesOf,
  chancesOfRepairs,
  checkThatTells,
  conflictIn,
  handedOn,
  possibleNow,
} from './possible.ts';
export { isRead } from './read.ts';
export type { Isolation, Phase, WalkContext } from './states.ts';
export { ISOLATION, isUnproven, lookLeft, PHASE, putItRight, secondFault } from './states.ts';
export { readyInParts, rowOfCheck, walkModelNow } from './step.ts';
