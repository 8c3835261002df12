// The columns of the tables of a sheet: what each holds, and how what is typed there is read and shown.
import type { MeasureSystem, Quantity } from '../../engine/index.ts';
import { SQUARE_MILLIMETRE, writeBare, writeQuantity } from '../../engine/index.ts';
import type { NumberField, Problem } from '../planning/index.ts';
import { number, parseField } from '../planning/index.ts';
import { SECTION_TAGS } from './sheet.ts';

/** The lists that are shown as tables. */
export const TABLES = ['sections', 'joints', 'trains', 'stages', 'supplies'] as const;
export type Table = (typeof TABLES)[number];

/** `needed`: it may not be left empty. A quantity is typed with or without its unit. */
export type Column = { readonly field: string; readonly needed?: boolean } & (
  | { readonly kind: 'text' | 'section' | 'supply' | 'sections' | 'flag' | 'place' }
  | { readonly kind: 'number'; readonly number: NumberField; readonly plain?: boolean }
  | { readonly kind: 'choice' | 'choices'; readonly options: readonly string[] }
);

const text = (field: string): Column => ({ field, kind: 'text' });
const flag = (field: string): Column => ({ field, kind: 'flag' });
const choice = (field: string, options: readonly string[], needed = false): Column => ({
  field,
  kind: 'choice',
  options,
  needed,
});
const measure = (
  field: string,
  quantity: Quantity,
  least: number,
  most: number,
  more: Pick<NumberField, 'range'> = {},
): Column => ({ field, kind: 'number', number: number(field, quantity, least, most, more) });
const needed = (column: Column): Column => ({ ...column, needed: true });

const PLUGS = ['centre-plus', 'centre-minus', 'terminals'] as const;

/** The columns of each table, from the left; the same ranges as in the shape of a sheet. */
export const COLUMNS: Readonly<Record<Table, readonly Column[]>> = {
  sections: [
    text('name'),
    needed(measure('metres', 'length', 0.01, 500)),
    { field: 'traffic', kind: 'number', number: number('traffic', 'current', 0, 1000), plain: true, needed: true },
    { field: 'tags', kind: 'choices', options: SECTION_TAGS },
    measure('fixedAmps', 'current', 0, 10),
    { field: 'at', kind: 'place' },
    needed(text('id')),
  ],
  joints: [
    { field: 'from', kind: 'section', needed: true },
    { field: 'to', kind: 'section', needed: true },
    choice('gap', ['possible', 'impossible', 'required'], true),
    choice('cut', ['none', 'one', 'both', 'unknown'], true),
    choice('awkward', ['0', '1', '2', '3'], true),
  ],
  trains: [
    text('name'),
    choice('kind', ['modern', 'older', 'measured'], true),
    needed(measure('count', 'count', 0, 100)),
    flag('sound'),
    measure('runningAmps', 'current', 0.005, 10, { range: true }),
    measure('standingAmps', 'current', 0, 5),
  ],
  stages: [
    text('name'),
    measure('limitAmps', 'current', 0.3, 30),
    measure('tripAmps', 'current', 0.3, 40),
    { field: 'supply', kind: 'supply' },
    choice('inputKind', ['dc', 'ac', 'either']),
    measure('leastInputVolts', 'voltage', 3, 60),
    measure('inputVolts', 'voltage', 3, 60),
    choice('plug', PLUGS),
    choice('rails', ['follows', 'set', 'converter']),
    measure('railVolts', 'voltage', 5, 30),
    measure('ownUseAmps', 'current', 0, 5),
    measure('tripSeconds', 'time', 0, 10),
    choice('comesBack', ['by-itself', 'by-hand']),
    choice('common', ['isolated', 'joined']),
    flag('cutout'),
    flag('autoReversing'),
    measure('breakers', 'count', 0, 12),
    { field: 'feeds', kind: 'sections' },
  ],
  supplies: [
    text('name'),
    choice('kind', ['dc', 'ac']),
    measure('volts', 'voltage', 3, 60),
    measure('amps', 'current', 0.1, 40),
    choice('plug', PLUGS),
    flag('earthed'),
  ],
};

/** The fields of the wiring, one of each. Cross-sections are square millimetres in a sheet. */
export const WIRING_COLUMNS: readonly Column[] = [
  choice('rail', [
    ...(['code-100', 'code-83', 'code-80', 'code-70', 'code-55', 'brass', 'steel'] as const),
    ...(['large-brass', 'large-nickel-silver', 'large-steel'] as const),
  ]),
  measure('railOhmsPerMetre', 'resistance-per-metre', 0.001, 1),
  measure('busMetres', 'length', 0.1, 200),
  measure('busSquareMillimetres', 'area', 0.05e-6, 10e-6),
  measure('feederMetres', 'length', 0.02, 5),
  measure('feederSquareMillimetres', 'area', 0.05e-6, 4e-6),
  measure('metresBetweenFeeders', 'length', 0.1, 50),
];

const isSpan = (value: unknown): value is { readonly from: number; readonly to: number } =>
  typeof value === 'object' && value !== null && 'from' in value && 'to' in value;
const isPlace = (value: unknown): value is { readonly column: number; readonly row: number } =>
  typeof value === 'object' && value !== null && 'column' in value && 'row' in value;

/** What stands in a cell for a value of the sheet. */
export function cellText(column: Column, value: unknown, system: MeasureSystem = 'metric'): string {
  if (value === undefined) return '';
  if (isPlace(value)) return `${value.column} ${value.row}`;
  if (isSpan(value)) return `${value.from}–${value.to}`;
  if (Array.isArray(value)) return value.join(' ');
  if (column.kind !== 'number' || column.plain === true || typeof value !== 'number') return String(value);
  const { quantity } = column.number;
  const inUnits = quantity === 'area' ? value * SQUARE_MILLIMETRE : value;
  return system === 'metric' ? writeBare(inUnits, quantity) : writeQuantity(inUnits, quantity, system);
}

/** What is typed in a cell: a value of the sheet, undefined where it is left out. */
export type CellRead = { readonly value: unknown } | { readonly problem: Omit<Problem, 'field'> };

/** Reads a cell; never throws. `bare`: the system of a number without a unit. */
export function readCell(column: Column, typed: string, bare: MeasureSystem = 'metric'): CellRead {
  const given = typed.trim();
  if (given === '') {
    return column.needed === true ? { problem: { because: 'empty', given } } : { value: undefined };
  }
  if (column.kind === 'number') return readNumber(column.number, given, column.plain === true, bare);
  if (column.kind === 'flag') return { value: given === 'yes' };
  if (column.kind === 'choices' || column.kind === 'sections') return { value: given.split(/[\s,]+/) };
  if (column.kind === 'place') return readPlace(given);
  if (column.field === 'awkward') return { value: Number(given) };
  return { value: given };
}

function readNumber(field: NumberField, given: string, plain: boolean, bare: MeasureSystem): CellRead {
  // A share has no unit, and so none can be typed.
  if (plain && !/^\d*[.,]?\d+$/.test(given)) return { problem: { because: 'not-a-number', given } };
  const read = parseField(field, given, { bare });
  if (read.kind === 'problem') return { problem: read.problem };
  if (read.answer.kind !== 'number') return { problem: { because: 'not-a-number', given } };
  const { from, to } = read.answer.span;
  const scale = field.quantity === 'area' ? SQUARE_MILLIMETRE : 1;
  // Neither feet nor gauges come out even in metres.
  const told = (value: number): number => Number((value / scale).toPrecision(6));
  return { value: field.range === true ? { from: told(from), to: told(to) } : told(from) };
}

function readPlace(given: string): CellRead {
  const [column, row, ...more] = given.split(/[\s;]+/).map((part) => Number(part.replace(',', '.')));
  const isRead = more.length === 0 && Number.isFinite(column) && Number.isFinite(row);
  return isRead ? { value: { column, row } } : { problem: { because: 'not-a-number', given } };
}
