// How a sheet of each earlier form becomes one of the next, in order. A new form adds a line; none is ever taken away.
import { parseAddress, QUESTIONS } from '../planning/index.ts';
import { withAnswers } from './answers.ts';
import { SHEET_FORM, type Sheet } from './sheet.ts';

const fieldsOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? { ...value } : {};

/**
 * A layout of which nothing is told.
 */
export const EMPTY_SHEET: Sheet = {
  form: 'both-rails-layout-sheet',
  version: SHEET_FORM,
  name: '',
  scale: 'h0',
  trains: [],
  sections: [],
  joints: [],
  stages: [],
  supplies: [],
};

/** Form 0 held what a club told the wizard "Is my power enough?": `answers` is the address of its answers. */
function fromAnswers(told: unknown): unknown {
  const { name, answers } = fieldsOf(told);
  const read = parseAddress(Object.values(QUESTIONS), typeof answers === 'string' ? answers : '');
  return { ...withAnswers(EMPTY_SHEET, read.answers), name: typeof name === 'string' ? name : '' };
}

const NEXT_FORM: readonly ((told: unknown) => unknown)[] = [fromAnswers];

/** What a sheet of that form is in the form of now. */
export const upToNow = (version: number, told: unknown): unknown =>
  NEXT_FORM.slice(version).reduce((sheet, next) => next(sheet), told);
