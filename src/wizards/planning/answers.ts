// Answers and how they travel in an address: ?field=value, names sorted, unknown names dropped. Parsed once, here.
import * as z from 'zod/mini';
import type { MeasureSystem, Quantity, Span } from '../../engine/index.ts';
import { parseQuantity, writeBare, writeQuantity } from '../../engine/index.ts';
import type { Field, NumberField, Question } from './questions.ts';
import { QUESTIONS } from './questions.ts';

export type Answer =
  | { readonly kind: 'choice'; readonly option: string }
  /** `typed`: the system of the unit it was typed with; absent for a bare number, and where both systems have the same unit. */
  | { readonly kind: 'number'; readonly span: Span; readonly typed?: MeasureSystem }
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
  'bare-gauge',
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
function schemaOf(field: Field, beside: Beside) {
  return z.pipe(
    z.string(),
    z.transform((text, context): Answer => {
      const answer = readField(field, text, beside);
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

/** What else is known where a number is read. */
export interface Beside {
  /** The voltage of the same question, so that VA or W can become amperes. */
  readonly volts?: number | undefined;
  /** The system of a bare number: metric in every address, the person's own in a field. */
  readonly bare?: MeasureSystem;
}

/** Reads what stands in one field, typed or out of an address. */
export function parseField(field: Field, text: string, beside: Beside = {}): Read {
  const parsed = z.safeParse(schemaOf(field, beside), text);
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

function readField(field: Field, text: string, beside: Beside): Answer | Refusal {
  const plain = text.trim();
  if (plain === '') return { because: 'empty' };
  if (plain === UNKNOWN_TEXT) return UNKNOWN;
  if (field.kind === 'choice') {
    return field.options.includes(plain) ? { kind: 'choice', option: plain } : { because: 'not-an-option' };
  }
  return plain.length > MOST_TEXT ? { because: 'not-a-number' } : readNumber(field, plain, beside);
}

function readNumber(field: NumberField, text: string, { volts, bare }: Beside): Answer | Refusal {
  const parsed = parseQuantity(text, field.quantity, bare);
  if (parsed.kind === 'bad') return { because: parsed.because };
  if (parsed.kind === 'power') {
    if (volts === undefined) return { because: 'needs-volts' };
    const amps = Number((parsed.watts / volts).toPrecision(4));
    return inRange(field, { span: { from: amps, to: amps } });
  }
  const answer = inRange(field, parsed);
  return 'because' in answer && isBareGauge(field, text, answer) ? { ...answer, because: 'bare-gauge' } : answer;
}

/** Whether a number that is too large for mm² would do as an American gauge. */
function isBareGauge(field: NumberField, text: string, { because }: Refusal): boolean {
  if (field.quantity !== 'area' || because !== 'too-large') return false;
  const gauge = parseQuantity(`${text} AWG`, 'area');
  return gauge.kind === 'span' && !('because' in inRange(field, gauge));
}

function inRange(
  field: NumberField,
  { span, typed }: { readonly span: Span; readonly typed?: MeasureSystem },
): Answer | Refusal {
  const written = (value: number): number => Number.parseFloat(writeQuantity(value, field.quantity));
  const range = { least: written(field.least), most: written(field.most) };
  if (span.from < field.least) return { because: 'too-small', ...range };
  if (span.to > field.most) return { because: 'too-large', ...range };
  if (field.range !== true && span.from !== span.to) return { because: 'one-number' };
  if (field.quantity === 'count' && !Number.isInteger(span.from)) return { because: 'not-whole' };
  return { kind: 'number', span, ...(typed === undefined ? {} : { typed }) };
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
  bare: MeasureSystem = 'metric',
): { answers: Answers; problems: Problem[] } {
  const answers: Record<string, Answer> = {};
  const problems: Problem[] = [];
  for (const field of question.fields) {
    const text = texts.get(field.id);
    if (text === undefined) continue;
    const read = parseField(field, text, { volts: voltsBeside(question, answers), bare });
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

/**
 * The system a person measures in, from the units they typed. Wires decide, since they are bought by it; without one, lengths do. The
 * most count; as many of each: the first. Undefined where nothing has a unit.
 */
export function systemTyped(answers: Answers): MeasureSystem | undefined {
  const of = (isWire: boolean): MeasureSystem[] =>
    [...FIELDS].flatMap(([id, field]) => {
      const answer = answers[id];
      const counts = field.kind === 'number' && (field.quantity === 'area') === isWire;
      return counts && answer?.kind === 'number' && answer.typed !== undefined ? [answer.typed] : [];
    });
  return mostOf(of(true)) ?? mostOf(of(false));
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
