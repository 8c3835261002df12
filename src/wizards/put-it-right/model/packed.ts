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
  /** Ids and fix classes, parted by spaces. */
  readonly ids: string;
  readonly fixClasses: string;
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

export interface PackedCheck {
  readonly id: string;
  readonly minutes: number;
  readonly tool: Tool;
  readonly risk: Risk;
  readonly needs: readonly Precondition[];
  readonly source: Source;
  readonly options: string;
  readonly reads: string | readonly string[];
  readonly reading: PackedReading;
  /** Whatever else the row has. */
  readonly more: Partial<SignCheck>;
}

export interface PackedOpening {
  readonly id: string;
  readonly often: number;
  readonly says: Named;
  /** How far each cause lies behind the one before it, and the weight of each. */
  readonly steps: readonly number[];
  readonly weights: readonly number[];
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
  const classes = fixClasses.split(' ');
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
      fixClass: classes[at] ?? '',
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
  packed: readonly PackedCheck[],
  signs: readonly SignRow[],
  circumstances: readonly CircumstanceRow[],
): SignCheck[] {
  const rows = rowsOf(signs, circumstances);
  return packed.map(({ options, reading, more, ...row }) => {
    const all = options.split(' ');
    const values = typeof row.reads === 'string' ? valuesIn(rows, row.reads) : [];
    return { ...row, options: all, reading: readingOf(reading, values, all, rows), ...more };
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
  packed: readonly PackedOpening[],
  causes: readonly { readonly id: string }[],
): Pick<OpeningRow, 'id' | 'often' | 'says' | 'shares'>[] {
  return packed.map(({ steps, weights, ...row }) => {
    const shares = once(() => sharesOf(steps, weights, causes));
    return {
      ...row,
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
