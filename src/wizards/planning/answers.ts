// Answers and how they travel in an address: ?field=value, names sorted, unknown names dropped. Parsed once, here.
import type { MeasureSystem, Quantity, Span } from '../../engine/index.ts';
import { writeBare, writeQuantity } from '../../engine/index.ts';
import type { Answer, Field, Problem } from './field.ts';
import { parseField, UNKNOWN_TEXT } from './field.ts';
import type { Question } from './questions.ts';
import { QUESTIONS } from './questions.ts';

/** Answers by field id. */
export type Answers = Readonly<Record<string, Answer>>;

/** Whether the field is asked, given the answers of its question so far. */
export function isAsked(field: Field, answers: Answers): boolean {
  const { when } = field;
  if (when === undefined) return true;
  const other = answers[when.field];
  if (other === undefined) return false;
  if (when.is !== undefined) return other.kind === 'choice' && when.is.includes(other.option);
  return other.kind === 'number' && other.span.to > (when.above ?? 0);
}

/** The system of a number without a unit. */
export type BareNumbers = (quantity: Quantity) => MeasureSystem;

/** Reads every field of a question from texts by field id; absent texts are left out, not complained about. `before`: answers to other questions. */
export function parseQuestion(
  question: Question,
  texts: ReadonlyMap<string, string>,
  bare: BareNumbers = () => 'metric',
  before: Answers = {},
): { answers: Answers; problems: Problem[] } {
  const answers: Record<string, Answer> = {};
  const problems: Problem[] = [];
  for (const field of question.fields) {
    const text = texts.get(field.id);
    if (text === undefined) continue;
    const read = parseField(field, text, {
      volts: voltsFor(field, { ...before, ...answers }),
      ...(field.kind === 'number' ? { bare: bare(field.quantity) } : {}),
    });
    if (read.kind === 'answer') answers[field.id] = read.answer;
    else problems.push(read.problem);
  }
  return { answers, problems };
}

/** Texts by field id. Where a question only counts, what is left empty beside what was told is none. */
export function withNone(
  { fields }: Question,
  texts: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> {
  const told = Object.entries(texts).filter(([, text]) => text.trim());
  const counts = told.length > 0 && fields.every((field) => field.kind === 'number' && field.quantity === 'count');
  return counts ? Object.fromEntries([...fields.map(({ id }) => [id, '0'] as const), ...told]) : texts;
}

function voltsFor(field: Field, answers: Answers): number | undefined {
  const answer = field.kind === 'number' && field.volts !== undefined ? answers[field.volts] : undefined;
  return answer?.kind === 'number' ? answer.span.from : undefined;
}

/** Reads an address (the part from "?"): good answers, and what could not be read. Never throws, whatever it is given. */
export function parseAddress(
  questions: readonly Question[],
  search: string,
): { answers: Answers; problems: Problem[] } {
  const texts = new Map<string, string>();
  for (const [name, value] of new URLSearchParams(search)) if (!texts.has(name)) texts.set(name, value);
  let answers: Answers = {};
  const problems: Problem[] = [];
  for (const question of questions) {
    const read = parseQuestion(question, texts, undefined, answers);
    answers = { ...answers, ...read.answers };
    problems.push(...read.problems);
  }
  return { answers, problems };
}

/** The name in the address of a question that is wanted at a quick answer: `?…&ask=coaches`. It is no answer. */
const ASK = 'ask';

/** The question that an address wants asked at a quick answer; any text, for the chart to know. */
export const wantedIn = (search: string): string | undefined => new URLSearchParams(search).get(ASK) ?? undefined;

/** The address of answers: names sorted, values as `parseAddress` reads them. Empty answers give an empty text. */
export function toAddress(answers: Answers, wanted?: string): string {
  const told = Object.entries(answers).map(([name, answer]): [string, string] => [
    name,
    answerText(answer, fieldOf(name)),
  ]);
  const all = wanted === undefined ? told : [...told, [ASK, wanted]];
  const text = new URLSearchParams(all.sort(([a = ''], [b = '']) => (a < b ? -1 : 1))).toString();
  return text === '' ? '' : `?${text}`;
}

const FIELDS = new Map<string, Field>(
  Object.values(QUESTIONS).flatMap((question) => question.fields.map((field): [string, Field] => [field.id, field])),
);

/** The field of an id, whatever question it stands in. */
export const fieldOf = (id: string): Field | undefined => FIELDS.get(id);

/** An answer as the address holds it: what `parseField` reads as the same answer. */
export function answerText(answer: Answer, field: Field | undefined): string {
  if (answer.kind === 'unknown') return UNKNOWN_TEXT;
  if (answer.kind === 'choice') return answer.option;
  const { typed } = answer;
  const write = (value: number): string => {
    if (field?.kind !== 'number') return String(value);
    return typed === undefined ? writeBare(value, field.quantity) : writeQuantity(value, field.quantity, typed);
  };
  const { from, to } = answer.span;
  return from === to ? write(from) : `${write(from)}-${write(to)}`;
}

/** The option chosen, else what is assumed for "I don't know", else undefined. */
export function optionOf(answers: Answers, field: Field): string | undefined {
  const answer = answers[field.id];
  if (answer?.kind === 'choice') return answer.option;
  return field.kind === 'choice' ? field.assume : undefined;
}

/** The number given, else what is assumed, else undefined. */
export function spanOf(answers: Answers, field: Field): Span | undefined {
  const answer = answers[field.id];
  if (answer?.kind === 'number') return answer.span;
  if (field.kind !== 'number' || field.assume === undefined) return undefined;
  return { from: field.assume, to: field.assume };
}

/** The systems a person measures in, from the units they typed: most count; as many of each: the first. Undefined where nothing has a unit. */
export interface SystemsTyped {
  readonly lengths: MeasureSystem | undefined;
  /** Wires are bought by gauge or by mm², whatever lengths are measured in. */
  readonly wires: MeasureSystem | undefined;
}

export function systemsTyped(answers: Answers): SystemsTyped {
  const of = (isWire: boolean): MeasureSystem[] =>
    [...FIELDS].flatMap(([id, field]) => {
      const answer = answers[id];
      const counts = field.kind === 'number' && (field.quantity === 'area') === isWire;
      return counts && answer?.kind === 'number' && answer.typed !== undefined ? [answer.typed] : [];
    });
  return { lengths: mostOf(of(false)), wires: mostOf(of(true)) };
}

/** The unit that a bare number of this field is taken as, for the sentence that says so; undefined where there is but one. */
export function takenAs(field: Field, system: MeasureSystem): string | undefined {
  if (field.kind !== 'number' || !TWO_UNITS.has(field.quantity)) return undefined;
  return `${field.quantity}-${system === 'metric' ? 'metric' : 'feet'}`;
}

const TWO_UNITS: ReadonlySet<Quantity> = new Set<Quantity>(['length', 'area', 'resistance-per-metre']);

function mostOf(typed: readonly MeasureSystem[]): MeasureSystem | undefined {
  const inFeet = typed.filter((one) => one === 'feet-and-gauge').length;
  if (2 * inFeet === typed.length) return typed[0];
  return 2 * inFeet > typed.length ? 'feet-and-gauge' : 'metric';
}
