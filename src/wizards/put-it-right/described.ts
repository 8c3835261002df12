// A cause as somebody who works on the model reads it: its whole row, what each check then shows, its place behind each title. The command
// `npm run fault` and the contributors' page print the same.
import type { LikelihoodWord, Price, SignCause } from '../../engine/index.ts';
import { SIGN_MODEL } from './model/index.ts';
import { walkModelNow } from './step.ts';

/** What holds, by circumstance or by an earlier sign of its group; empty where it always holds. */
type When = readonly { readonly of: string; readonly is: string }[];

interface DescribedSign {
  readonly sign: string;
  readonly isCore: boolean;
  /** The words of each value, `unaffected` as one of them. */
  readonly lines: readonly {
    readonly when: When;
    readonly says: readonly { readonly value: string; readonly word?: LikelihoodWord }[];
  }[];
}

interface DescribedCheck {
  readonly check: string;
  readonly reads: readonly string[];
  /** The likeliest answer where its source is right and the trouble shows, with its chance from 0 to 1. */
  readonly lines: readonly { readonly whens: readonly When[]; readonly option: string; readonly chance: number }[];
}

interface DescribedCause {
  readonly id: string;
  readonly fixClass: string;
  readonly minutes: number;
  readonly price: Price;
  /** How often it is well just while one looks. */
  readonly well: LikelihoodWord | undefined;
  readonly needs: When;
  /** What it touches, core signs first; and the signs that it leaves as they are. */
  readonly signs: readonly DescribedSign[];
  readonly untouched: readonly string[];
  readonly checks: readonly DescribedCheck[];
  /** Share of all troubles, 0 to 1. */
  readonly share: number;
  /** Titles that name it, with its share behind them from 0 to 1 and its place from 1, the largest share first. */
  readonly openings: readonly { readonly opening: string; readonly share: number; readonly place: number }[];
}

/** Undefined where no cause has this id. */
function describedCause(id: string): DescribedCause | undefined {
  const cause = SIGN_MODEL.causes.find((one) => one.id === id);
  const at = walkModelNow().compiled.faults.findIndex((one) => one.id === id);
  if (cause === undefined || at < 0) return undefined;
  const signs = signsOf(cause);
  const touched = new Set(signs.map(({ sign }) => sign));
  return {
    id,
    fixClass: cause.fixClass,
    minutes: cause.minutes,
    price: SIGN_MODEL.prices?.[cause.fixClass] ?? 'work',
    well: cause.well,
    needs: Object.entries(cause.needs ?? {}).flatMap(([of, values]) => [{ of, is: values.join(', ') }]),
    signs,
    untouched: SIGN_MODEL.signs.map((sign) => sign.id).filter((sign) => !touched.has(sign)),
    checks: checksOf(at, touched),
    share: walkModelNow().overall[at] ?? 0,
    openings: openingsOf(id, at),
  };
}

/** All causes, by id. */
export const describedCauses = (): DescribedCause[] =>
  SIGN_MODEL.causes
    .map(({ id }) => id)
    .sort()
    .flatMap((id) => describedCause(id) ?? []);

type Shows = SignCause['shows'][string];

function signsOf({ shows }: SignCause): DescribedSign[] {
  const core = new Set(SIGN_MODEL.core);
  return SIGN_MODEL.signs.flatMap(({ id: sign }) => {
    const own = shows[sign];
    return own === undefined || own === 'unaffected'
      ? []
      : [{ sign, isCore: core.has(sign), lines: signLines(own, []) }];
  });
}

function signLines(shows: Shows, when: When): DescribedSign['lines'] {
  if (shows === 'unaffected') return [{ when, says: [{ value: 'unaffected' }] }];
  const by = branches(shows);
  if (by !== undefined) return by.flatMap(([of, is, then]) => signLines(then, [...when, { of, is }]));
  const says = Object.entries(shows).flatMap(([value, word]) => (isWord(word) ? [{ value, word }] : []));
  return [{ when, says }];
}

const WORDS = ['always', 'usually', 'sometimes', 'rarely', 'never'] as const;
const isWord = (word: unknown): word is LikelihoodWord => WORDS.some((one) => one === word);

/** The branches of a row that hangs on something; undefined for a plain mix. */
function branches(shows: Exclude<Shows, 'unaffected'>): [string, string, Shows][] | undefined {
  const { by, is } = shows;
  if (typeof by !== 'string' || typeof is !== 'object') return undefined;
  return Object.entries(is).map(([value, then]) => [by, value, then]);
}

function checksOf(at: number, touched: ReadonlySet<string>): DescribedCheck[] {
  return SIGN_MODEL.checks.flatMap(({ id: check, reads }, place) => {
    const signs = [reads].flat();
    if (!signs.some((sign) => touched.has(sign))) return [];
    return [{ check, reads: signs, lines: checkLines(at, place) }];
  });
}

function checkLines(at: number, place: number): DescribedCheck['lines'] {
  const { tables } = walkModelNow();
  const cause = tables.causes[at];
  const options = SIGN_MODEL.checks[place]?.options ?? [];
  if (cause === undefined) return [];
  const { by, chances } = tables.expected(cause, place, false);
  const { of, size } = tables.dims.of(by);
  const found = new Map<string, { cells: Cell[]; chance: number }>();
  for (let k = 0; k < size; k++) {
    const cell = of.map((dim) => new Set([tables.dims.within(by, 1 << dim)[k] ?? 0]));
    if (of.some((dim, i) => [...(cell[i] ?? [])].some((value) => cause.circumstances[dim]?.[value] === 0))) continue;
    const row = chances.slice(k * options.length, (k + 1) * options.length);
    const likeliest = row.indexOf(Math.max(...row));
    const chance = row[likeliest] ?? 0;
    const key = `${likeliest} ${Math.round(chance * 20)}`;
    const line = found.get(key) ?? { cells: [], chance };
    line.cells.push(cell);
    found.set(key, line);
  }
  return [...found].map(([key, { cells, chance }]) => ({
    whens: found.size === 1 ? [] : joined(cells).map((cell) => whenOf(cell, of, cause.circumstances)),
    option: options[Number.parseInt(key, 10)] ?? '',
    chance,
  }));
}

/** Values of each circumstance, by their places. */
type Cell = readonly ReadonlySet<number>[];

/** Cells that differ in one circumstance only become one. */
function joined(cells: readonly Cell[]): Cell[] {
  const dims = cells[0]?.length ?? 0;
  let left = [...cells];
  for (let dim = 0; dim < dims; dim++) {
    const byRest = new Map<string, Cell>();
    for (const cell of left) {
      const key = cell.map((values, i) => (i === dim ? '' : [...values].join('.'))).join(' ');
      const same = byRest.get(key);
      const both = new Set([...(same?.[dim] ?? []), ...(cell[dim] ?? [])]);
      byRest.set(
        key,
        cell.map((values, i) => (i === dim ? both : values)),
      );
    }
    left = [...byRest.values()];
  }
  return left;
}

/** The circumstances that matter: those of which not every possible value is among them. */
function whenOf(cell: Cell, of: readonly number[], chances: readonly Float64Array[]): When {
  return of.flatMap((dim, i) => {
    const row = SIGN_MODEL.circumstances[dim];
    const names = Object.keys(row?.values ?? {});
    const possible = names.filter((_, value) => (chances[dim]?.[value] ?? 0) > 0);
    const met = names.filter((_, value) => cell[i]?.has(value));
    return row === undefined || met.length === possible.length ? [] : [{ of: row.id, is: met.join('/') }];
  });
}

function openingsOf(id: string, at: number): DescribedCause['openings'] {
  return [...walkModelNow().openings.values()]
    .filter(({ row }) => row.shares[id] !== undefined)
    .map(({ row, chances: of }) => {
      const chances = of();
      const share = chances[at] ?? 0;
      return { opening: row.id, share, place: 1 + chances.slice(0, -1).filter((other) => other > share).length };
    })
    .sort((a, b) => b.share - a.share);
}

/** The whole of it in lines of text; a line that belongs to the one above is set in by two spaces more. */
export function causeLines(cause: DescribedCause): string[] {
  const { id, fixClass, minutes, price, well, needs, share, signs, untouched, checks, openings } = cause;
  return [
    `${id}: put right by ${fixClass} (${minutes} min, ${price}); ${percent(share, 2)} of all troubles`,
    ...(well === undefined ? [] : [`well just while one looks: ${well}`]),
    ...(needs.length > 0 ? [`only where ${whenText(needs)}`] : []),
    ...headed('shows', signs.flatMap(signText)),
    ...headed('leaves as it is', [untouched.join(', ')]),
    ...headed('likeliest answers, where the trouble shows', checks.flatMap(checkText)),
    ...headed(
      'behind the titles',
      openings.map(({ opening, share: part, place }) => `${opening}: ${percent(part, 1)}, place ${place}`),
    ),
  ];
}

const percent = (chance: number, digits: number): string => `${(100 * chance).toFixed(digits)} %`;
const whenText = (when: When): string => when.map(({ of, is }) => `${of} ${is}`).join(', ');
const headed = (title: string, lines: readonly string[]): string[] =>
  lines.length > 0 ? [title, ...lines.map((line) => `  ${line}`)] : [];

function signText({ sign, isCore, lines }: DescribedSign): string[] {
  const says = lines.map(({ when, says: values }) => {
    const mix = values.map(({ value, word }) => (word === undefined ? value : `${value} ${word}`)).join(', ');
    return when.length > 0 ? `  ${whenText(when)}: ${mix}` : `  ${mix}`;
  });
  const head = isCore ? sign : `${sign} (not core)`;
  return says.length === 1 ? [`${head}: ${says[0]?.trim()}`] : [head, ...says];
}

function checkText({ check, reads, lines }: DescribedCheck): string[] {
  const says = lines.map(({ whens, option, chance }) => {
    const where = whens.map(whenText).join(' or ');
    return `  ${where === '' ? '' : `${where}: `}${option} ${percent(chance, 0)}`;
  });
  const head = `${check} (reads ${reads.join(', ')})`;
  return says.length === 1 ? [`${head}: ${says[0]?.trim()}`] : [head, ...says];
}
