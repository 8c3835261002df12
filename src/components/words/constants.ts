// Every fixed number of the engine and the wizards as the page of sources tells it. They are read off the code when the site is built
// (scripts/build/constants.mjs): what is not in the code is not told, and what is in the code cannot be left out.
import { type Language, localeOf } from './languages.ts';

export interface Constant {
  readonly file: string;
  readonly name: string;
  /** What its comment says: what it is, its unit, and `Source:` with ids. */
  readonly comment: string;
  readonly value: unknown;
}

/** In the order of the page; the folders and files whose numbers each tells. */
const GROUPS = {
  power: /^src\/(engine\/power|wizards\/(enough-current|which-supply-where|planning))\//,
  wiring: /^src\/(engine\/(wiring|circuit)|wizards\/wire-it)\//,
  crossing: /^src\/engine\/crossing\//,
  signal: /^src\/engine\/signal\//,
  table: /^src\/engine\/(table|drive|course)\//,
  diagnosis: /^src\/(engine\/diagnosis|wizards\/put-it-right)\//,
  units: /./,
} as const;
const OURS = 'own-choice';
export const CONSTANT_GROUPS = [
  'power',
  'wiring',
  'crossing',
  'signal',
  'table',
  'diagnosis',
  'units',
  'choice',
] as const;
export type ConstantGroup = (typeof CONSTANT_GROUPS)[number];

/** How units are said in comments, what is written for each, and what it multiplies by to be shown. */
const UNITS: Readonly<Record<string, readonly [string, number]>> = {
  'amperes a square metre': ['A/mm²', 1e-6],
  'metres a second': ['m/s', 1],
  'volts a second': ['V/s', 1],
  'edges a second': ['/s', 1],
  'ohm metres': ['Ω mm²/m', 1e6],
  'ohms a metre': ['Ω/m', 1],
  'ohms a kilometre': ['Ω/km', 1],
  'square metres': ['mm²', 1e6],
  'square millimetres': ['mm²', 1],
  'degrees celsius': ['°C', 1],
  volts: ['V', 1],
  amperes: ['A', 1],
  ohms: ['Ω', 1],
  metres: ['m', 1],
  watts: ['W', 1],
  joules: ['J', 1],
  farads: ['F', 1],
  henries: ['H', 1],
  siemens: ['S', 1],
  seconds: ['s', 1],
  minutes: ['min', 1],
  hours: ['h', 1],
  euros: ['euros', 1],
};
/** Parts of tables that are in a unit of their own, or in none, whatever the rest is in. */
const OF_PARTS: Readonly<Record<string, string>> = {
  amps: 'amperes',
  money: 'euros',
  'ohms per metre': 'ohms a metre',
  area: 'square metres',
  length: 'metres',
  behind: 'metres',
  'rolls on': 'metres',
  'pick up span': 'metres',
  speed: 'metres a second',
  running: 'amperes',
  standing: 'amperes',
  contact: 'ohms',
  rating: 'watts',
};
const NO_UNIT = /share|probability|factor/;

/** A unit stands by itself behind a comma or a colon, or begins: "Share of the volts" is in no unit. */
const SAID = new RegExp(
  `(?:^(?:In )?|[,:;] (?:and )?)(${Object.keys(UNITS)
    .toSorted((one, two) => two.length - one.length)
    .join('|')})(?= a (?:coach|piece)| between| from| of track| through| that are|[.,:; ]*(?:[.,:;(]|$)| in an)`,
  'gi',
);
const PREFIXED = new Set(['V', 'A', 'Ω', 'm', 's', 'F', 'H', 'S']);
const PREFIXES = [
  ['', 1],
  ['m', 1e-3],
  ['μ', 1e-6],
  ['n', 1e-9],
] as const;

interface Unit {
  readonly sign: string;
  readonly factor: number;
}

const unitNamed = (name: string): Unit | undefined => {
  const [sign, factor] = UNITS[name.toLowerCase()] ?? [];
  return sign === undefined || factor === undefined ? undefined : { sign, factor };
};

/** The units that a comment says. */
export const unitsIn = (comment: string): string[] => [...comment.matchAll(SAID)].map(([, unit = '']) => unit);

/** The one unit of a comment; where it says several, none can be told of one number. */
const unitOf = (comment: string): Unit | undefined => {
  const [first, ...others] = unitsIn(comment);
  return first === undefined || others.length > 0 ? undefined : unitNamed(first);
};

/** The unit of a part of a table, by its name. */
function unitOfPart(part: string, whole: Unit | undefined): Unit | undefined {
  if (NO_UNIT.test(part)) return undefined;
  return unitNamed(OF_PARTS[part] ?? part) ?? whole;
}

/** With signs that the faces have. */
const raised = (power: number): string => `^${power < 0 ? '−' : ''}${Math.abs(power)}`;

function bare(value: number, language: Language): string {
  const write = new Intl.NumberFormat(localeOf(language), { maximumSignificantDigits: 4 });
  const size = Math.abs(value);
  if (Number.isInteger(value) && size < 1e7) return value.toLocaleString(localeOf(language));
  if (value === 0 || (size >= 1e-4 && size < 1e7)) return write.format(value);
  const power = Math.floor(Math.log10(size) + 1e-9);
  const front = write.format(value / 10 ** power);
  return front === '1' ? `10${raised(power)}` : `${front} × 10${raised(power)}`;
}

/** A number in the unit that people know: 0.0022 F is 2.2 mF. */
function written(values: readonly number[], unit: Unit | undefined, language: Language): string {
  if (unit === undefined) return values.map((value) => bare(value, language)).join(' – ');
  const shown = values.map((value) => value * unit.factor);
  const largest = Math.max(...shown.map(Math.abs));
  const small = PREFIXED.has(unit.sign) && largest > 0 && largest < 0.1;
  const [prefix, size] = (small && PREFIXES.find(([, one]) => largest >= one * (1 - 1e-9))) || PREFIXES[0];
  return `${shown.map((value) => bare(value / size, language)).join(' – ')} ${prefix}${unit.sign}`;
}

const isSpan = (value: object): value is { from: number; to: number } =>
  'from' in value &&
  'to' in value &&
  Object.keys(value).length === 2 &&
  typeof value.from === 'number' &&
  typeof value.to === 'number';

/** "modernStall" is "modern stall"; scales are written large. */
const inWords = (name: string): string => {
  const words = name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll(/[-_]/g, ' ')
    .toLowerCase()
    .replaceAll('ω', 'Ω')
    .replaceAll('µ', 'μ');
  return /^(?:z|n|tt|h0)$/.test(words)
    ? words.toUpperCase()
    : words.replace(/\b(ac|dc)\b/g, (one) => one.toUpperCase());
};

export interface Line {
  /** Which part of a table it is; empty where it is the whole. */
  readonly of: string;
  readonly value: string;
}

const isTable = (value: unknown): value is object => typeof value === 'object' && value !== null;
const partsOf = (value: object): [string, unknown][] =>
  Object.entries(value).map(([part, one]) => [inWords(part), one]);

/** A list of tables alike, part by part: what was row by row. */
function byPart(rows: readonly object[]): Record<string, unknown> {
  if (rows.every((row) => 'id' in row && typeof row.id === 'string'))
    return Object.fromEntries(rows.map((row) => ['id' in row ? String(row.id) : '', row]));
  const parts: Record<string, unknown[]> = {};
  for (const row of rows)
    for (const [part, value] of Object.entries(row)) parts[part] = [...(parts[part] ?? []), value];
  return parts;
}

/** What a value comes to in one line; empty where it has no number. */
function inLine(value: unknown, unit: Unit | undefined, language: Language): string {
  if (typeof value === 'number') return written([value], unit, language);
  if (!isTable(value)) return '';
  if (isSpan(value)) return written(value.from === value.to ? [value.from] : [value.from, value.to], unit, language);
  if (Array.isArray(value)) {
    if (value.some((one) => isTable(one) && !isSpan(one) && !Array.isArray(one)))
      return inLine(byPart(value.filter(isTable)), unit, language);
    return value
      .map((one) => inLine(one, unit, language))
      .filter(Boolean)
      .join(', ');
  }
  return partsOf(value)
    .map(([part, one]) => [part, inLine(one, unitOfPart(part, unit), language)])
    .filter(([, text]) => text !== '')
    .map((both) => both.join(' '))
    .join(', ');
}

/** A number, or a table with a line for each of its parts. */
function lines(value: unknown, unit: Unit | undefined, language: Language): Line[] {
  const rows =
    Array.isArray(value) && value.every((one) => isTable(one) && !isSpan(one) && !Array.isArray(one))
      ? byPart(value)
      : value;
  if (!isTable(rows) || Array.isArray(rows) || isSpan(rows)) return [{ of: '', value: inLine(rows, unit, language) }];
  return partsOf(rows)
    .map(([of, one]) => ({ of, value: inLine(one, unitOfPart(of, unit), language) }))
    .filter((line) => line.value !== '');
}

const SOURCE = /\bSources?: ([^.;]*)/;
/** Ids of the sources that a comment names. */
export const sourcesOf = (comment: string): string[] => SOURCE.exec(comment)?.[1]?.match(/[a-z]+(?:-[a-z\d]+)+/g) ?? [];

export interface ToldConstant {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  readonly lines: readonly Line[];
  readonly sources: readonly string[];
  readonly group: ConstantGroup;
}

function groupOf({ file, comment }: Constant): ConstantGroup {
  if (sourcesOf(comment).every((source) => source === OURS)) return 'choice';
  return CONSTANT_GROUPS.find((group) => group !== 'choice' && GROUPS[group].test(file)) ?? 'units';
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A constant as the page tells it. */
export function toldOf(constant: Constant, language: Language): ToldConstant {
  const { file, name, comment, value } = constant;
  const folder = file.replace(/^src\/(?:engine|wizards)\/|\.ts$/g, '').replaceAll('/', '-');
  return {
    id: `${folder}-${name.toLowerCase().replaceAll('_', '-')}`,
    name: capital(inWords(name)),
    says: comment
      .replace(/\s*\bSources?: [^.]*\.?\s*/, ' ')
      .replaceAll('`', '')
      .trim(),
    lines: lines(value, unitOf(comment), language),
    sources: sourcesOf(comment),
    group: groupOf(constant),
  };
}
