// How tests tell answers: texts by field id, as an address carries them.
import { writeQuantity } from '../../src/engine/units.ts';
import { ENOUGH_CURRENT_QUESTIONS, enoughCurrent } from '../../src/wizards/enough-current/flow.ts';
import type { Answers, Problem } from '../../src/wizards/planning/answers.ts';
import { parseAddress } from '../../src/wizards/planning/answers.ts';
import type { Field, Question } from '../../src/wizards/planning/questions.ts';
import { QUESTIONS } from '../../src/wizards/planning/questions.ts';
import { WHICH_SUPPLY_QUESTIONS, whichSupplyWhere } from '../../src/wizards/which-supply-where/flow.ts';
import { WIRE_IT_QUESTIONS, wireIt } from '../../src/wizards/wire-it/flow.ts';

export const ALL_QUESTIONS: readonly Question[] = Object.values(QUESTIONS);
export const ALL_FIELDS: readonly Field[] = ALL_QUESTIONS.flatMap((question) => question.fields);

export const WIZARDS = [
  {
    name: 'enough-current',
    machine: enoughCurrent,
    questions: ENOUGH_CURRENT_QUESTIONS.map((id): Question => QUESTIONS[id]),
  },
  {
    name: 'which-supply-where',
    machine: whichSupplyWhere,
    questions: WHICH_SUPPLY_QUESTIONS.map((id): Question => QUESTIONS[id]),
  },
  { name: 'wire-it', machine: wireIt, questions: WIRE_IT_QUESTIONS.map((id): Question => QUESTIONS[id]) },
] as const;

/** Answers out of texts. A text that cannot be read is a mistake of the test. */
export function told(texts: Readonly<Record<string, string>>): Answers {
  const { answers, problems } = read(`?${new URLSearchParams(texts).toString()}`);
  const known = new Set(ALL_FIELDS.map(({ id }) => id));
  const strange = Object.keys(texts).filter((id) => !known.has(id));
  if (problems.length > 0 || strange.length > 0)
    throw new Error(`cannot be told: ${JSON.stringify([...problems, ...strange])}`);
  return answers;
}

export function read(address: string): { answers: Answers; problems: Problem[] } {
  return parseAddress(ALL_QUESTIONS, address);
}

/** Texts that a field reads as answers: every option, or numbers from the least over small ones to the most, and not knowing. */
export function textsFor(field: Field): readonly string[] {
  if (field.kind === 'choice') return [...field.options, 'unknown'];
  const { least, most, quantity } = field;
  const small = [0, 1, 2, 3, 15].filter((value) => value > least && value < most);
  const range = field.range === true ? [`${least}-${most}`] : [];
  return [...[least, ...small, most].map((value) => writeQuantity(value, quantity)), ...range, 'unknown'];
}
