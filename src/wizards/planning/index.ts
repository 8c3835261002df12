// What this room lets out.

export type { Answer, Answers, Problem } from './answers.ts';
export {
  answerText,
  fieldOf,
  isAsked,
  parseAddress,
  parseField,
  parseQuestion,
  systemTyped,
  takenAs,
  toAddress,
} from './answers.ts';
export { OUT_OF_SCOPE } from './outcomes.ts';
export type { Field, NumberField, Question, QuestionId } from './questions.ts';
export { number, QUESTIONS } from './questions.ts';
export type { Assumption } from './read.ts';
export { knownSupply, Reader } from './read.ts';
export type { Replayed } from './replay.ts';
export {
  answersTo,
  askSystem,
  chose,
  ENDS,
  misfits,
  nothingToMove,
  questionsIn,
  replay,
  SCOPE_GUARDS,
  TYPES,
  trainsIn,
  without,
} from './replay.ts';
