// Sentences out of the content with their values filled in.
import type { Rank } from '../../wizards/safety/index.ts';

export interface StepWords {
  readonly do: string;
  readonly more?: string | undefined;
  readonly cautions: readonly string[];
  /** What its acts, and those of its job, bring besides where the layout may stand in a garden. */
  readonly outdoors?: readonly string[] | undefined;
  /** The power is on, or comes on, in it or in its job. Told to answers alone. */
  readonly live?: boolean | undefined;
  /** A job with a page of its own that this step asks for: its name and address. */
  readonly job?: { readonly title: string; readonly href: string } | undefined;
}

export interface FixWords {
  readonly title: string;
  readonly lead: string;
  readonly short: string;
  readonly because: string;
  readonly needs: string;
  /** How it is done without the tools, where one is needed. */
  readonly without?: string | undefined;
  readonly effort: string;
  /** What holds for all steps, each worded as something to do; none where the first act may not wait. */
  readonly before: readonly string[];
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
  /** Words of the glossary that it uses, to be opened in place. */
  readonly terms?: readonly { readonly term: string; readonly means: string }[];
  readonly fields: Readonly<Record<string, FieldWords>>;
}

export interface CautionWords {
  readonly rank: Rank;
  readonly harm: string;
  readonly do: string;
  /** Harm and act in one line, where only something may break: what stands once it was told in full. */
  readonly line?: string | undefined;
  /** It holds for a whole page and is told before the first step: at a step its line is enough. */
  readonly wide?: boolean | undefined;
}

/** What the answer page says; fetched, and so checked once at the door by its shape. */
export interface AnswerWords {
  readonly words: Readonly<Record<string, string>>;
  readonly fixes: Readonly<Record<string, FixWords>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
}

export type Values = Readonly<Record<string, string | number>>;

const PLURALS = new Map<string, Intl.PluralRules>();

function pluralRules(language: string): Intl.PluralRules {
  const rules = PLURALS.get(language) ?? new Intl.PluralRules(language);
  PLURALS.set(language, rules);
  return rules;
}

/** The form of a word that goes with a number: `one|many`, or by the names of the language's own forms, `one=…|few=…|other=…`. */
function formFor(value: string | number, forms: string, language: string): string {
  const category = pluralRules(language).select(Number(value));
  const named = new Map(forms.split('|').map((form) => [form.slice(0, form.indexOf('=')), form]));
  const chosen = named.get(category) ?? named.get('other');
  if (chosen !== undefined) return chosen.slice(chosen.indexOf('=') + 1);
  const [one = '', many = one] = forms.split('|');
  return category === 'one' ? one : many;
}

/** Fills {name}; {name:…} picks the form of a word by the plural rules of the language. A name without value stays visible. */
export function fill(template: string, values: Values, language: string): string {
  return template.replace(/\{([\w-]+)(?::([^{}]*\|[^{}]*))?\}/g, (place, name: string, forms?: string) => {
    const value = values[name];
    if (value === undefined) return place;
    return forms === undefined ? String(value) : formFor(value, forms, language);
  });
}

/** The look of a tag for what may be done about a train across the gap. */
export const CROSSING_TAGS = { fine: 'enough', adjust: 'tight', 'do-not-run': 'short' } as const;

export type Say = (key: string, values?: Values) => string;

/** Sentences by key; a key without words shows itself. */
export function sayer(words: Readonly<Record<string, string>>, language: string): Say {
  return (key, values = {}) => fill(words[key] ?? `[${key}]`, values, language);
}
