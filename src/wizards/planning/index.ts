// What this room lets out.

export type { Answers } from './answers.ts';
export {
  answerText,
  fieldOf,
  isAsked,
  parseAddress,
  parseQuestion,
  systemsTyped,
  takenAs,
  toAddress,
  wantedIn,
  withNone,
} from './answers.ts';
export type { Answer, Field, NumberField, Problem } from './field.ts';
export { emptyIn, number, parseField, UNKNOWN } from './field.ts';
export { OUT_OF_SCOPE } from './outcomes.ts';
export type { Question, QuestionId } from './questions.ts';
export { FURTHER_DISTRICTS, LEAST_LIMIT, QUESTIONS } from './questions.ts';
export type { Assumption, ReadFirst } from './read.ts';
export { knownSupply, Reader, readFirst } from './read.ts';
export type { Replayed } from './replay.ts';
export {
  answersTo,
  askSystem,
  chose,
  isWorkedOut,
  misfits,
  nothingToMove,
  questionsIn,
  replay,
  SCOPE_ENDS,
  SCOPE_GUARDS,
  surerBy,
  surerIn,
  TYPES,
  wants,
  without,
} from './replay.ts';
