// How tests tell answers: texts by field id, as an address carries them.
import { writeQuantity } from '../../src/engine/quantity-text.ts';
import { enoughCurrent } from '../../src/wizards/enough-current/flow.ts';
import type { WizardId } from '../../src/wizards/index.ts';
import { WIZARD_IDS } from '../../src/wizards/index.ts';
import type { Answers } from '../../src/wizards/planning/answers.ts';
import { parseAddress } from '../../src/wizards/planning/answers.ts';
import type { Field, Problem } from '../../src/wizards/planning/field.ts';
import type { Question } from '../../src/wizards/planning/questions.ts';
import { QUESTIONS } from '../../src/wizards/planning/questions.ts';
import { questionsIn } from '../../src/wizards/planning/replay.ts';
import { shareOut } from '../../src/wizards/share-out/flow.ts';
import { whichSupplyWhere } from '../../src/wizards/which-supply-where/flow.ts';
import { wireIt } from '../../src/wizards/wire-it/flow.ts';

export const ALL_QUESTIONS: readonly Question[] = Object.values(QUESTIONS);
export const ALL_FIELDS: readonly Field[] = ALL_QUESTIONS.flatMap((question) => question.fields);

const named = <Machine extends Parameters<typeof questionsIn>[0]>(machine: Machine) => ({
  name: machine.id,
  machine,
  questions: questionsIn(machine).map((id): Question => QUESTIONS[id]),
});

/** Each wizard's machine; the type checker asks for that of a new one. */
const MACHINES = {
  'enough-current': enoughCurrent,
  'which-supply-where': whichSupplyWhere,
  'share-out': shareOut,
  'wire-it': wireIt,
} as const satisfies Readonly<Record<WizardId, Parameters<typeof questionsIn>[0]>>;

export const WIZARDS = WIZARD_IDS.map((id) => named(MACHINES[id]));

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
