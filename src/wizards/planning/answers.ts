// Answers and how they travel in an address: ?field=value, names sorted, unknown names dropped. Parsed once, here.
import * as z from 'zod/mini';
import type { Span } from '../../engine/index.ts';
import { parseQuantity, writeQuantity } from '../../engine/index.ts';
import type { Field, NumberField, Question } from './questions.ts';
import { QUESTIONS } from './questions.ts';

export type Answer =
  | { readonly kind: 'choice'; readonly option: string }
  | { readonly kind: 'number'; readonly span: Span }
  | { readonly kind: 'unknown' };

/** Answers by field id. */
export type Answers = Readonly<Record<string, Answer>>;

const BECAUSE = [
  'empty',
  'not-an-option',
  'not-a-number',
  'unknown-unit',
  'not-whole',
  'one-number',
  'too-small',
  'too-large',
  'needs-volts',
  'more-than-trains',
] as const;

/** Why something could not be taken; each has its sentence `problem-<because>`. */
export type Because = (typeof BECAUSE)[number];

export interface Problem {
  readonly field: string;
  readonly because: Because;
  /** What was given, cut to 40 characters. */
  readonly given: string;
  /** The permitted range, in the unit that a bare number has there, where that is what was missed. */
  readonly least?: number;
  readonly most?: number;
}

export const UNKNOWN: Answer = { kind: 'unknown' };
const UNKNOWN_TEXT = 'unknown';
const MOST_TEXT = 60;

// The schema of one field's text: trimmed, of bounded length, an option or a readable number, in range.
function schemaOf(field: Field, volts: number | undefined) {
  return z.pipe(
    z.string(),
    z.transform((text, context): Answer => {
      const answer = readField(field, text, volts);
      if ('because' in answer) {
        context.issues.push({ code: 'custom', input: text, params: answer });
        return z.NEVER;
      }
      return answer;
    }),
  );
}

export type Read =
  | { readonly kind: 'answer'; readonly answer: Answer }
  | { readonly kind: 'problem'; readonly problem: Problem };

/** Reads what stands in one field, typed or out of an address. `volts`: the voltage beside it, so that VA or W can become amperes. */
export function parseField(field: Field, text: string, volts?: number): Read {
  const parsed = z.safeParse(schemaOf(field, volts), text);
  if (parsed.success) return { kind: 'answer', answer: parsed.data };
  const [issue] = parsed.error.issues;
  const found = issue?.code === 'custom' ? REFUSAL.safeParse(issue.params) : undefined;
  return {
    kind: 'problem',
    problem: {
      field: field.id,
      given: text.trim().slice(0, 40),
      because: 'not-a-number',
      ...(found?.success === true ? found.data : {}),
    },
  };
}

const REFUSAL = z.object({
  because: z.enum(BECAUSE),
  least: z.exactOptional(z.number()),
  most: z.exactOptional(z.number()),
});
type Refusal = z.infer<typeof REFUSAL>;

function readField(field: Field, text: string, volts: number | undefined): Answer | Refusal {
  const plain = text.trim();
  if (plain === '') return { because: 'empty' };
  if (plain === UNKNOWN_TEXT) return UNKNOWN;
  if (field.kind === 'choice') {
    return field.options.includes(plain) ? { kind: 'choice', option: plain } : { because: 'not-an-option' };
  }
  return plain.length > MOST_TEXT ? { because: 'not-a-number' } : readNumber(field, plain, volts);
}

function readNumber(field: NumberField, text: string, volts: number | undefined): Answer | Refusal {
  const parsed = parseQuantity(text, field.quantity);
  if (parsed.kind === 'bad') return { because: parsed.because };
  if (parsed.kind === 'power') {
    if (volts === undefined) return { because: 'needs-volts' };
    const amps = Number((parsed.watts / volts).toPrecision(4));
    return inRange(field, { from: amps, to: amps });
  }
  return inRange(field, parsed.span);
}

function inRange(field: NumberField, span: Span): Answer | Refusal {
  const written = (value: number): number => Number.parseFloat(writeQuantity(value, field.quantity));
  const range = { least: written(field.least), most: written(field.most) };
  if (span.from < field.least) return { because: 'too-small', ...range };
  if (span.to > field.most) return { because: 'too-large', ...range };
  if (field.range !== true && span.from !== span.to) return { because: 'one-number' };
  if (field.quantity === 'count' && !Number.isInteger(span.from)) return { because: 'not-whole' };
  return { kind: 'number', span };
}

/** Whether the field is asked, given the answers of its question so far. */
export function isAsked(field: Field, answers: Answers): boolean {
  const { when } = field;
  if (when === undefined) return true;
  const other = answers[when.field];
  if (other === undefined) return false;
  if (when.is !== undefined) return other.kind === 'choice' && when.is.includes(other.option);
  return other.kind === 'number' && other.span.to > (when.above ?? 0);
}

/** Reads every field of a question from texts by field id; absent texts are left out, not complained about. */
export function parseQuestion(
  question: Question,
  texts: ReadonlyMap<string, string>,
): { answers: Answers; problems: Problem[] } {
  const answers: Record<string, Answer> = {};
  const problems: Problem[] = [];
  for (const field of question.fields) {
    const text = texts.get(field.id);
    if (text === undefined) continue;
    const read = parseField(field, text, voltsBeside(question, answers));
    if (read.kind === 'answer') answers[field.id] = read.answer;
    else problems.push(read.problem);
  }
  return { answers, problems };
}

function voltsBeside(question: Question, answers: Answers): number | undefined {
  const volts = question.fields.find((field) => field.kind === 'number' && field.quantity === 'voltage');
  const answer = volts === undefined ? undefined : answers[volts.id];
  return answer?.kind === 'number' ? answer.span.from : undefined;
}

/** Reads an address (the part from "?"): good answers, and what could not be read. Never throws, whatever it is given. */
export function parseAddress(
  questions: readonly Question[],
  search: string,
): { answers: Answers; problems: Problem[] } {
  const texts = new Map<string, string>();
  for (const [name, value] of new URLSearchParams(search)) if (!texts.has(name)) texts.set(name, value);
  const read = questions.map((question) => parseQuestion(question, texts));
  return {
    answers: Object.assign({}, ...read.map((one) => one.answers)),
    problems: read.flatMap((one) => one.problems),
  };
}

/** The address of answers: names sorted, values as `parseAddress` reads them. Empty answers give an empty text. */
export function toAddress(answers: Answers): string {
  const pairs = Object.entries(answers).sort(([a], [b]) => (a < b ? -1 : 1));
  const text = new URLSearchParams(
    pairs.map(([name, answer]): [string, string] => [name, answerText(answer, fieldOf(name))]),
  ).toString();
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
  const write = (value: number): string =>
    field?.kind === 'number' ? writeQuantity(value, field.quantity) : String(value);
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
