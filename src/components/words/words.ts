// Sentences out of the content with their values filled in, and numbers as the reader's language writes them.
import type { Quantity, Working } from '../../engine/index.ts';
import { gaugeOf } from '../../engine/index.ts';

export interface StepWords {
  readonly do: string;
  readonly more?: string | undefined;
  readonly cautions: readonly string[];
}

export interface FixWords {
  readonly title: string;
  readonly lead: string;
  readonly short: string;
  readonly because: string;
  readonly needs: string;
  readonly effort: string;
  readonly steps: readonly StepWords[];
  readonly verify: string;
  readonly next: string;
}

export interface FieldWords {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly known: string;
  readonly unknown: string;
  readonly options?:
    | Readonly<Record<string, { readonly label: string; readonly hint?: string | undefined }>>
    | undefined;
}

export interface QuestionWords {
  readonly title: string;
  readonly why: string;
  readonly fields: Readonly<Record<string, FieldWords>>;
}

export interface CautionWords {
  readonly harm: string;
  readonly do: string;
}

/** What the answer page says; fetched, and so checked once at the door by its shape. */
export interface AnswerWords {
  readonly words: Readonly<Record<string, string>>;
  readonly fixes: Readonly<Record<string, FixWords>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
}

export type Values = Readonly<Record<string, string | number>>;

// Making a formatter costs far more than using it, and a slider asks for a hundred numbers a frame.
const PLURALS = new Map<string, Intl.PluralRules>();
const FORMATS = new Map<string, Intl.NumberFormat>();

function pluralRules(language: string): Intl.PluralRules {
  const rules = PLURALS.get(language) ?? new Intl.PluralRules(language);
  PLURALS.set(language, rules);
  return rules;
}

function numberFormat(language: string, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = `${language} ${options.maximumFractionDigits} ${options.maximumSignificantDigits}`;
  const format = FORMATS.get(key) ?? new Intl.NumberFormat(language, options);
  FORMATS.set(key, format);
  return format;
}

/** Fills {name}; {name:one|many} picks by the plural rules of the language. A name without value stays visible. */
export function fill(template: string, values: Values, language: string): string {
  return template.replace(
    /\{([\w-]+)(?::([^|{}]*)\|([^{}]*))?\}/g,
    (place, name: string, one?: string, many?: string) => {
      const value = values[name];
      if (value === undefined) return place;
      if (one === undefined || many === undefined) return String(value);
      return pluralRules(language).select(Number(value)) === 'one' ? one : many;
    },
  );
}

/** The look of a tag for what may be done about a train across the gap. */
export const CROSSING_TAGS = { fine: 'enough', adjust: 'tight', 'do-not-run': 'short' } as const;

export type Say = (key: string, values?: Values) => string;

/** Sentences by key; a key without words shows itself. */
export function sayer(words: Readonly<Record<string, string>>, language: string): Say {
  return (key, values = {}) => fill(words[key] ?? `[${key}]`, values, language);
}

const NARROW = '\u00a0';

/** Numbers with their units as the language writes them. */
export class Numbers {
  readonly #language: string;

  constructor(language: string) {
    this.#language = language;
  }

  plain(value: number, digits: number): string {
    return numberFormat(this.#language, { maximumFractionDigits: digits }).format(value);
  }

  amps(value: number): string {
    return `${this.plain(value, value < 1 ? 2 : 1)}${NARROW}A`;
  }

  /** Two decimals: for a number read off beside another that differs little. */
  ampsExactly(value: number): string {
    return `${this.plain(value, 2)}${NARROW}A`;
  }

  volts(value: number): string {
    return `${this.plain(value, 1)}${NARROW}V`;
  }

  /** Two decimals: for volts read off beside others that differ little. */
  voltsExactly(value: number): string {
    return `${this.plain(value, 2)}${NARROW}V`;
  }

  metres(value: number): string {
    return `${this.plain(value, value < 10 ? 2 : 1)}${NARROW}m`;
  }

  /** Square metres in, square millimetres or the gauge out, as the wire is sold. */
  wire(area: number): string {
    const gauge = gaugeOf(area);
    return gauge === undefined ? `${this.plain(area * 1e6, 2)}${NARROW}mm²` : `AWG${NARROW}${gauge}`;
  }

  ohms(value: number): string {
    return `${numberFormat(this.#language, { maximumSignificantDigits: 3 }).format(value)}${NARROW}ohm`;
  }

  watts(value: number): string {
    return `${this.plain(value, value < 10 ? 1 : 0)}${NARROW}W`;
  }

  /** A value of a working. */
  inUnit(value: number, unit: Working['unit']): string {
    if (unit === 'A') return this.ampsExactly(value);
    if (unit === 'V') return this.voltsExactly(value);
    if (unit === 'share') return this.share(value);
    if (WITHOUT_UNIT.has(unit)) return this.plain(value, 2);
    const [name, factor] = FINER[unit] ?? [unit, 1];
    const digits = numberFormat(this.#language, { maximumSignificantDigits: 3 }).format(value * factor);
    return `${digits}${NARROW}${name}`;
  }

  /** A value of a question's field, in the unit people use for it. */
  quantity(value: number, quantity: Quantity): string {
    return WRITE[quantity](this, value);
  }

  hours(value: number): string {
    return `${this.plain(value, 2)}${NARROW}h`;
  }

  /** A share of time in per cent; what is too small to matter is said so. */
  share(value: number): string {
    if (value <= 0) return `0${NARROW}%`;
    if (value < 0.0001) return `less than ${this.plain(0.01, 2)}${NARROW}%`;
    return `${numberFormat(this.#language, { maximumSignificantDigits: 2 }).format(value * 100)}${NARROW}%`;
  }
}

const WITHOUT_UNIT: ReadonlySet<string> = new Set(['trains', 'pieces', 'times']);

/** Units that are written in a finer one. */
const FINER: Readonly<Partial<Record<Working['unit'], readonly [name: string, factor: number]>>> = {
  hours: ['h', 1],
  'ohm/m': ['mohm/m', 1000],
  F: ['mF', 1000],
  C: ['mC', 1000],
  s: ['ms', 1000],
};

const WRITE: Readonly<Record<Quantity, (numbers: Numbers, value: number) => string>> = {
  current: (numbers, value) => numbers.ampsExactly(value),
  voltage: (numbers, value) => numbers.volts(value),
  hours: (numbers, value) => numbers.hours(value),
  count: (numbers, value) => numbers.plain(value, 0),
  length: (numbers, value) => numbers.metres(value),
  area: (numbers, value) => numbers.wire(value),
  resistance: (numbers, value) => numbers.ohms(value),
  'resistance-per-metre': (numbers, value) => `${numbers.plain(value * 1000, 1)}${NARROW}mohm/m`,
  time: (numbers, value) => `${numbers.plain(value, 3)}${NARROW}s`,
};
