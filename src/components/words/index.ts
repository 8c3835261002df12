// What this room lets out.
export { CONSTANT_GROUPS, toldOf } from './constants.ts';
export { CAUTIONS, FIX, SENTENCES } from './fetched-shapes.ts';
export { BASE, languageOf } from './language.ts';
export type { Language } from './languages.ts';
export { FALLBACK, LANGUAGES, languageNamed, lineOf, localeOf } from './languages.ts';
export { joined, listed } from './lists.ts';
export { Measured } from './Measured.tsx';
export { inMeasures } from './measured.ts';
export { Numbers } from './numbers.ts';
export { firstSentence } from './sentences.ts';
export type {
  AnswerWords,
  CautionWords,
  FieldWords,
  FixWords,
  QuestionWords,
  Say,
  StepWords,
  Values,
} from './words.ts';
export { CROSSING_TAGS, fill, sayer } from './words.ts';
