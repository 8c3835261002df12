// Causes, checks and openings in the compact form in which the built site sends them to a browser (scripts/build/packed-model.mjs writes it), and
// the way back. Words are digits in the order of the values, a point for a value that is not named; trailing points are left out.
import type {
  CircumstanceRow,
  LikelihoodWord,
  OpeningRow,
  Precondition,
  Risk,
  Shows,
  SignCause,
  SignCheck,
  SignRow,
  Source,
  Tool,
} from '../../../engine/index.ts';

type Named = Readonly<Record<string, readonly string[]>>;

/** A mix as digits, '' for `unaffected`, or the id of what it hangs on with one entry for each value of that. */
export type PackedShows = string | readonly [string, ...PackedShows[]];

/** Column by column, since what causes make of one sign is much alike. */
export interface PackedCauses {
  /** Ids, parted by spaces. */
  readonly ids: string;
  /** By place of the cause, where it is not called like the cause. */
  readonly fixClasses: Readonly<Record<string, string>>;
  readonly minutes: readonly number[];
  /** By place of the cause. */
  readonly needs: Readonly<Record<string, Named>>;
  readonly well: Readonly<Record<string, LikelihoodWord>>;
  /** Sign id to what is met, and for each cause the place of it as a letter from FIRST_LETTER on; NOT_NAMED for a sign that it leaves out. */
  readonly shows: Readonly<Record<string, readonly [readonly PackedShows[], string]>>;
}

export const FIRST_LETTER = 0x30;
export const NOT_NAMED = ' ';

/** For each value of what is read an option as a letter from a on, or a mix of options as digits; parted by spaces. */
export type PackedReading =
  | string
  | readonly (readonly [Named, string])[]
  | { readonly by: string; readonly is: readonly PackedReading[] };

/** Column by column, as the causes. */
export interface PackedChecks {
  /** Parted by spaces. */
  readonly ids: string;
  readonly minutes: readonly number[];
  readonly tools: readonly Tool[];
  readonly risks: readonly Risk[];
  readonly needs: readonly (readonly Precondition[])[];
  readonly sources: readonly Source[];
  /** Of each check, parted by spaces. */
  readonly options: readonly string[];
  readonly reads: readonly (string | readonly string[])[];
  readonly readings: readonly PackedReading[];
  /** Whatever else a row has, by its place. */
  readonly more: Readonly<Record<string, Partial<SignCheck>>>;
}

export interface PackedOpenings {
  /** Parted by spaces. */
  readonly ids: string;
  readonly often: readonly number[];
  readonly says: readonly Named[];
  /** Of each opening how far each cause lies behind the one before it, and the weight of each. */
  readonly steps: readonly (readonly number[])[];
  readonly weights: readonly (readonly number[])[];
}

const WORDS = ['never', 'rarely', 'sometimes', 'usually', 'always'] as const satisfies readonly LikelihoodWord[];

/** Digits as words of these values. */
function mixOf(digits: string, values: readonly string[]): Partial<Record<string, LikelihoodWord>> {
  return Object.fromEntries(
    values.flatMap((value, at): [string, LikelihoodWord][] => {
      const word = WORDS[Number(digits[at] ?? '.')];
      return word === undefined ? [] : [[value, word]];
    }),
  );
}

type Rows = readonly { readonly id: string; readonly values: readonly string[] }[];

const rowsOf = (signs: readonly SignRow[], circumstances: readonly CircumstanceRow[]): Rows => [
  ...signs,
  ...circumstances.map(({ id, values }) => ({ id, values: Object.keys(values) })),
];

const valuesIn = (rows: Rows, id: string): readonly string[] => rows.find((row) => row.id === id)?.values ?? [];

/** The causes as they were written. */
export function unpackCauses(
  { ids, fixClasses, minutes, needs, well, shows }: PackedCauses,
  signs: readonly SignRow[],
  circumstances: readonly CircumstanceRow[],
): SignCause[] {
  const rows = rowsOf(signs, circumstances);
  const columns = Object.entries(shows).map(([sign, [met, places]]) => {
    const values = valuesIn(rows, sign);
    return { sign, met: met.map((one) => once(() => shownBy(one, values, rows))), places };
  });
  return ids.split(' ').map((id, at) => {
    const shown = once(() => Object.fromEntries(columns.flatMap((column) => shownIn(column, at))));
    const needed = needs[at];
    const comesAndGoes = well[at];
    return {
      id,
      fixClass: fixClasses[at] ?? id,
      minutes: minutes[at] ?? 0,
      ...(needed === undefined ? {} : { needs: needed }),
      ...(comesAndGoes === undefined ? {} : { well: comesAndGoes }),
      get shows() {
        return shown();
      },
    };
  });
}

interface Column {
  readonly sign: string;
  readonly met: readonly (() => Shows)[];
  readonly places: string;
}

function shownIn({ sign, met, places }: Column, at: number): [string, Shows][] {
  const one = met[places.charCodeAt(at) - FIRST_LETTER];
  return one === undefined ? [] : [[sign, one()]];
}

/** Worked out when it is first asked for: a browser that has just got the model is not held up by all of it. */
function once<Made>(make: () => Made): () => Made {
  let made: { readonly is: Made } | undefined;
  return () => {
    made ??= { is: make() };
    return made.is;
  };
}

function shownBy(packed: PackedShows, values: readonly string[], rows: Rows): Shows {
  if (packed === '') return 'unaffected';
  if (typeof packed === 'string') return mixOf(packed, values);
  const [by, ...shows] = packed;
  return {
    by,
    is: Object.fromEntries(
      valuesIn(rows, by).map((value, at): [string, Shows] => [value, shownBy(shows[at] ?? '', values, rows)]),
    ),
  };
}

/** The checks as they were written. */
export function unpackChecks(
  packed: PackedChecks,
  signs: readonly SignRow[],
  circumstances: readonly CircumstanceRow[],
): SignCheck[] {
  const rows = rowsOf(signs, circumstances);
  return packed.ids.split(' ').map((id, at) => {
    const options = (packed.options[at] ?? '').split(' ');
    const reads = packed.reads[at] ?? '';
    const values = typeof reads === 'string' ? valuesIn(rows, reads) : [];
    return {
      id,
      minutes: packed.minutes[at] ?? 0,
      tool: packed.tools[at] ?? 'eyes',
      risk: packed.risks[at] ?? 0,
      needs: packed.needs[at] ?? [],
      source: packed.sources[at] ?? 'memory',
      options,
      reads,
      reading: readingOf(packed.readings[at] ?? '', values, options, rows),
      ...packed.more[at],
    };
  });
}

function readingOf(
  packed: PackedReading,
  values: readonly string[],
  options: readonly string[],
  rows: Rows,
): SignCheck['reading'] {
  if (typeof packed === 'string') {
    const given = packed.split(' ');
    return Object.fromEntries(values.map((value, at) => [value, givenBy(given[at] ?? '', options)]));
  }
  if ('by' in packed) {
    const { by, is } = packed;
    const inner = valuesIn(rows, by).map((value, at): [string, SignCheck['reading']] => [
      value,
      readingOf(is[at] ?? '', values, options, rows),
    ]);
    return { by, is: Object.fromEntries(inner) };
  }
  return packed.map(([where, gives]) => ({ where, gives: givenBy(gives, options) }));
}

/** An option by its letter, or a mix by its digits. */
const givenBy = (packed: string, options: readonly string[]): string | Partial<Record<string, LikelihoodWord>> =>
  /^[a-z]$/.test(packed) ? (options[packed.charCodeAt(0) - 0x61] ?? '') : mixOf(packed, options);

/** The openings as they were written. */
export function unpackOpenings(
  { ids, often, says, steps, weights }: PackedOpenings,
  causes: readonly { readonly id: string }[],
): Pick<OpeningRow, 'id' | 'often' | 'says' | 'shares'>[] {
  return ids.split(' ').map((id, at) => {
    const shares = once(() => sharesOf(steps[at] ?? [], weights[at] ?? [], causes));
    return {
      id,
      often: often[at] ?? 0,
      says: says[at] ?? {},
      get shares() {
        return shares();
      },
    };
  });
}

function sharesOf(
  steps: readonly number[],
  weights: readonly number[],
  causes: readonly { readonly id: string }[],
): Record<string, number> {
  let at = 0;
  const shares = steps.map((step, i): [string, number] => {
    at += step;
    return [causes[at]?.id ?? '', weights[i] ?? 0];
  });
  return Object.fromEntries(shares);
}
