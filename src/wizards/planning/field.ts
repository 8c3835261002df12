// One field of a question: a choice or a number, and how what stands in it is read. Figures use it for their sliders too.
import type { MeasureSystem, Quantity, Span } from '../../engine/index.ts';
import { parseQuantity, writeQuantity } from '../../engine/index.ts';

/** A choice between options. `assume` is what "I don't know" stands for; absent: stays unknown. */
export interface ChoiceField {
  readonly kind: 'choice';
  readonly id: string;
  readonly options: readonly string[];
  readonly assume?: string;
  readonly when?: Condition;
}

/** A number in [least, most], in SI; a range such as "0.3-0.6 A" where `range` is true. */
export interface NumberField {
  readonly kind: 'number';
  readonly id: string;
  readonly quantity: Quantity;
  readonly least: number;
  readonly most: number;
  readonly range?: boolean;
  readonly assume?: number;
  readonly when?: Condition;
  /** The field whose volts turn VA or W into amperes here; without one, a power cannot be read. */
  readonly volts?: string;
}

/** The field is asked only when another field of the same question has one of these values (or, `above`, is larger). */
export interface Condition {
  readonly field: string;
  readonly is?: readonly string[];
  readonly above?: number;
}

export type Field = ChoiceField | NumberField;

/** A number in [least, most], in SI; for a question or for a slider of a figure. */
export const number = (
  id: string,
  quantity: Quantity,
  least: number,
  most: number,
  more: Pick<NumberField, 'assume' | 'when' | 'range' | 'volts'> = {},
): NumberField => ({ kind: 'number', id, quantity, least, most, ...more });

export type Answer =
  | { readonly kind: 'choice'; readonly option: string }
  /** `typed`: the system of the unit it was typed with; absent for a bare number, and where both systems have the same unit. */
  | { readonly kind: 'number'; readonly span: Span; readonly typed?: MeasureSystem }
  | { readonly kind: 'unknown' };

/** Why something could not be taken; each has its sentence `problem-<because>`. */
export type Because =
  | 'empty'
  | 'not-chosen'
  | 'not-an-option'
  | 'not-a-number'
  | 'unknown-unit'
  | 'not-whole'
  | 'one-number'
  | 'too-small'
  | 'too-large'
  | 'mains-side'
  | 'bare-gauge'
  | 'needs-volts'
  | 'power-no-amperes'
  | 'more-than-trains';

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
export const UNKNOWN_TEXT = 'unknown';
/** Most letters of a field that are read. Source: own-choice. */
const MOST_TEXT = 60;
/** From here on a label speaks of the wall socket: 100 V is the least that any has, volts. Source: common-practice. */
const MAINS_VOLTS = 100;

export type Read =
  | { readonly kind: 'answer'; readonly answer: Answer }
  | { readonly kind: 'problem'; readonly problem: Problem };

/** What else is known where a number is read. */
export interface Beside {
  /** The volts that go with the field, so that VA or W can become amperes. */
  readonly volts?: number | undefined;
  /** The system of a bare number: metric in every address, the person's own in a field. */
  readonly bare?: MeasureSystem;
}

/** Reads what stands in one field, typed or out of an address: trimmed, of bounded length, an option or a readable number in range. */
export function parseField(field: Field, text: string, beside: Beside = {}): Read {
  const read = readField(field, text, beside);
  return 'because' in read
    ? { kind: 'problem', problem: { field: field.id, given: text.trim().slice(0, 40), ...read } }
    : { kind: 'answer', answer: read };
}

type Refusal = Pick<Problem, 'because' | 'least' | 'most'>;

function readField(field: Field, text: string, beside: Beside): Answer | Refusal {
  const plain = text.trim();
  if (plain === '') return { because: emptyIn(field) };
  if (plain === UNKNOWN_TEXT) return UNKNOWN;
  if (field.kind === 'choice') {
    return field.options.includes(plain) ? { kind: 'choice', option: plain } : { because: 'not-an-option' };
  }
  return plain.length > MOST_TEXT ? { because: 'not-a-number' } : readNumber(field, plain, beside);
}

/** Why a field with nothing in it cannot be taken. */
export const emptyIn = (field: Field): Because => (field.kind === 'choice' ? 'not-chosen' : 'empty');

function readNumber(field: NumberField, text: string, { volts, bare }: Beside): Answer | Refusal {
  const parsed = parseQuantity(text, field.quantity, bare);
  if (parsed.kind === 'bad') return { because: parsed.because };
  if (parsed.kind === 'power') {
    if (field.volts === undefined) return { because: 'power-no-amperes' };
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
  if (field.quantity === 'voltage' && span.to >= MAINS_VOLTS) return { because: 'mains-side', ...range };
  if (span.from < field.least) return { because: 'too-small', ...range };
  if (span.to > field.most) return { because: 'too-large', ...range };
  if (field.range !== true && span.from !== span.to) return { because: 'one-number' };
  if (field.quantity === 'count' && !Number.isInteger(span.from)) return { because: 'not-whole' };
  return { kind: 'number', span, ...(typed === undefined ? {} : { typed }) };
}
