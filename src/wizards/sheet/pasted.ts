// Rows copied from a spreadsheet: sections or trains, one a line, with tabs, semicolons or commas between the columns.
import type { MeasureSystem } from '../../engine/index.ts';
import { freshMark } from './answers.ts';
import { COLUMNS, type Column, readCell } from './columns.ts';
import { edited } from './edits.ts';
import { MOST, type Sheet } from './sheet.ts';

/** What can be pasted, and its columns from the left; those on the right may be left out. */
export const PASTED = {
  sections: ['name', 'metres', 'traffic', 'fixedAmps'],
  trains: ['name', 'count', 'runningAmps', 'standingAmps'],
} as const;
export type PastedTable = keyof typeof PASTED;

/** Longest text that is read, characters. Source: own-choice. */
const MOST_TEXT = 200_000;

/** A line that was not read, from 1, and the column of it that is to blame; no column where it is too much. */
export interface Unread {
  readonly line: number;
  readonly field: string | undefined;
  readonly given: string;
}

export interface Pasted {
  readonly sheet: Sheet;
  readonly added: number;
  readonly unread: readonly Unread[];
  /** The line that was taken for headings, from 1. */
  readonly heading: number | undefined;
}

type Row = { readonly fields: Readonly<Record<string, unknown>> } | { readonly field: string };

/**
 * The sheet with what was pasted at the end. `joined`: each new section meets the one above it. A first line without a number is
 * headings. Lines that cannot be read are told and left out.
 */
export function pasted(
  sheet: Sheet,
  table: PastedTable,
  text: string,
  { joined = false, bare = 'metric' }: { readonly joined?: boolean; readonly bare?: MeasureSystem } = {},
): Pasted {
  const lines = text.slice(0, MOST_TEXT).split(/\r\n|\r|\n/);
  const between = separatorOf(lines);
  let read: Pasted = { sheet, added: 0, unread: [], heading: undefined };
  for (const [index, given] of lines.entries()) {
    if (given.trim() === '') continue;
    const line = { number: index + 1, given, cells: cellsOf(given, between) };
    read = withLine(read, table, line, joined, bare);
  }
  return read;
}

interface Line {
  readonly number: number;
  readonly given: string;
  readonly cells: readonly string[];
}

function withLine(before: Pasted, table: PastedTable, line: Line, joined: boolean, bare: MeasureSystem): Pasted {
  const { sheet, added, unread, heading } = before;
  const row = rowOf(table, line.cells, bare);
  const told = (field: string | undefined): Pasted => {
    const given = line.given.slice(0, MOST.name);
    return { ...before, unread: [...unread, { line: line.number, field, given }] };
  };
  if ('field' in row) {
    const isFirst = added === 0 && unread.length === 0 && heading === undefined;
    return isFirst && !/\d/.test(line.given) ? { ...before, heading: line.number } : told(row.field);
  }
  const more = withRow(sheet, table, row.fields, joined && added > 0);
  return more === undefined ? told(undefined) : { ...before, sheet: more, added: added + 1 };
}

type Separator = '\t' | ';' | ',';

/** A comma between columns is one only where neither tabs nor semicolons are. */
function separatorOf(lines: readonly string[]): Separator {
  if (lines.some((line) => line.includes('\t'))) return '\t';
  return lines.some((line) => line.includes(';')) ? ';' : ',';
}

/** The cells of a line; in quotes a separator is none, and two quotes are one. */
function cellsOf(line: string, between: Separator): string[] {
  const cells = [''];
  let quoted = false;
  for (let at = 0; at < line.length; at++) {
    const sign = line.charAt(at);
    const last = cells.length - 1;
    if (sign === '"' && quoted && line.charAt(at + 1) === '"') {
      cells[last] += '"';
      at++;
    } else if (sign === '"' && (quoted || cells[last] === '')) quoted = !quoted;
    else if (sign === between && !quoted) cells.push('');
    else cells[last] += sign;
  }
  return cells.map((cell) => cell.trim());
}

function columnOf(table: PastedTable, field: string): Column | undefined {
  return COLUMNS[table].find((column) => column.field === field);
}

function rowOf(table: PastedTable, cells: readonly string[], bare: MeasureSystem): Row {
  const fields: Record<string, unknown> = {};
  for (const [at, field] of PASTED[table].entries()) {
    const column = columnOf(table, field);
    const cell = cells[at] ?? '';
    // Traffic left out is like the length.
    if (column === undefined || (cell === '' && field !== 'metres' && field !== 'count')) continue;
    const read = readCell(column, cell, bare);
    if ('problem' in read) return { field };
    fields[field] = read.value;
  }
  return { fields };
}

/** Undefined where it does not fit. */
function withRow(
  sheet: Sheet,
  table: PastedTable,
  fields: Readonly<Record<string, unknown>>,
  joined: boolean,
): Sheet | undefined {
  const after = table === 'sections' ? withSection(sheet, fields, joined) : withTrains(sheet, fields);
  const read = edited(after);
  return 'sheet' in read ? read.sheet : undefined;
}

function withSection(sheet: Sheet, fields: Readonly<Record<string, unknown>>, joined: boolean): unknown {
  const { districts: _, ...rest } = sheet;
  const id = freshMark('section', sheet.sections);
  const above = sheet.sections.at(-1);
  const joint = {
    id: freshMark('joint', sheet.joints),
    from: above?.id,
    to: id,
    gap: 'possible',
    cut: 'none',
    awkward: 0,
  };
  return {
    ...rest,
    sections: [...sheet.sections, { id, traffic: fields['metres'], ...fields }],
    joints: joined && above !== undefined ? [...sheet.joints, joint] : sheet.joints,
  };
}

const withTrains = (sheet: Sheet, fields: Readonly<Record<string, unknown>>): unknown => ({
  ...sheet,
  trains: [...sheet.trains, { kind: 'runningAmps' in fields ? 'measured' : 'modern', ...fields }],
});
