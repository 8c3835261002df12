// Which cause is how likely after what was seen, and what to ask, mend or hand on next.

export type { InParts } from './in-parts.ts';
export type {
  LikelihoodWord,
  Precondition,
  Risk,
  Tool,
} from './model.ts';
export { OF_THE_LAYOUT, SOMETHING_ELSE, TOOLS } from './model.ts';
export type { HowOften } from './often.ts';
export { howOften, toldShare, WORTH_SHOWING } from './often.ts';
export type { Evidence, Posterior, Seen } from './posterior.ts';
export { tellsApart } from './sign-apart.ts';
export type {
  CircumstanceRow,
  OpeningRow,
  Price,
  Shows,
  SignCause,
  SignCheck,
  SignModel,
  SignRow,
  Source,
} from './sign-model.ts';
export type { Conflict } from './sign-shown.ts';
export {
  signConflictsInParts,
  signEvidence,
  signPosterior,
  signPosteriorInParts,
} from './sign-shown.ts';
export type { NextStep } from './sign-step.ts';
export { signStep, signStepInParts } from './sign-step.ts';
export type { SignState, WalkModel } from './sign-walk.ts';
export { walkModel, walkModelInParts } from './sign-walk.ts';
