// The layout sheets on this device: all of them in one text, and which was last opened.
import * as z from 'zod/mini';
import { readSheet, type Sheet, writeSheet } from '../../wizards/sheet/index.ts';
import { type Found, freshMark, KeptText } from '../device/index.ts';

/** Most sheets that are kept. Source: own-choice. */
export const MOST_SHEETS = 100;

/** A sheet as it is kept. `change` tells one state of it from another: two tabs never write over each other's unseen. */
export interface KeptSheet {
  readonly id: string;
  readonly change: string;
  /** When it was changed last, ISO 8601 in UTC. */
  readonly on: string;
  readonly sheet: Sheet;
}

export interface Shelf {
  readonly sheets: readonly KeptSheet[];
  /** The mark of the one last opened. */
  readonly last: string | undefined;
}

const mark = z.string().check(z.minLength(1), z.maxLength(100));
const FRAME = z.strictObject({
  'both-rails-layout-sheets': z.literal(1),
  last: z.optional(mark),
  sheets: z
    .array(z.strictObject({ id: mark, change: mark, on: z.iso.datetime(), sheet: z.unknown() }))
    .check(z.maxLength(MOST_SHEETS)),
});

/** @param text what lies on the device. Undefined unless every sheet in it is whole. */
export function readShelf(text: string): Shelf | undefined {
  try {
    const frame = z.parse(FRAME, JSON.parse(text));
    const sheets = frame.sheets.map(({ sheet, ...rest }) => ({ ...rest, sheet: wholeSheet(sheet) }));
    return { sheets, last: frame.last };
  } catch {
    return undefined;
  }
}

function wholeSheet(told: unknown): Sheet {
  const read = readSheet(JSON.stringify(told));
  if ('problem' in read || read.flaws.length > 0) throw new TypeError('no whole sheet');
  return read.sheet;
}

export function writeShelf({ sheets, last }: Shelf): string {
  const kept = sheets.map(({ sheet, ...rest }) => ({ ...rest, sheet: JSON.parse(writeSheet(sheet)) }));
  return JSON.stringify({ 'both-rails-layout-sheets': 1, ...(last === undefined ? {} : { last }), sheets: kept });
}

const SHEETS = new KeptText<Shelf>({
  database: 'layout-sheets',
  store: 'layout-sheets',
  empty: { sheets: [], last: undefined },
  read: readShelf,
  write: writeShelf,
});

/** The sheets as they lie there. Rejects where the browser keeps nothing for this site. */
export const openShelf = (): Promise<Found<Shelf>> => SHEETS.open();

/** What became of a sheet that was kept. `apart`: another tab had changed it meanwhile, so it was kept beside, under a new mark. */
export interface Put {
  readonly kept: KeptSheet;
  readonly apart: boolean;
}

/**
 * Keeps a sheet, as the one last opened. `since`: the state that it was made from; undefined for a new sheet. Gives where it lies. Rejects,
 * with nothing changed, as `KeptText.change` does.
 */
export async function putSheet(sheet: Sheet, since?: Pick<KeptSheet, 'id' | 'change'>, now = new Date()): Promise<Put> {
  let put: Put | undefined;
  await SHEETS.change((shelf) => {
    put = placed(shelf, sheet, since, now);
    return withSheet(shelf, put.kept);
  });
  if (put === undefined) throw new TypeError('nothing was kept');
  return put;
}

/** Where a sheet goes among those that there are. */
export function placed(
  { sheets }: Shelf,
  sheet: Sheet,
  since: Pick<KeptSheet, 'id' | 'change'> | undefined,
  now: Date,
): Put {
  const there = sheets.find(({ id }) => id === since?.id);
  const apart = there !== undefined && there.change !== since?.change;
  const id = since === undefined || apart ? freshMark() : since.id;
  return { kept: { id, change: freshMark(), on: now.toISOString(), sheet }, apart };
}

function withSheet({ sheets }: Shelf, kept: KeptSheet): Shelf {
  const others = sheets.filter(({ id }) => id !== kept.id);
  if (others.length >= MOST_SHEETS) throw new DOMException('too many sheets', 'QuotaExceededError');
  return { sheets: [...others, kept], last: kept.id };
}

/** Makes a sheet the one last opened. */
export async function turnTo(id: string): Promise<void> {
  await SHEETS.change((shelf) => (shelf.last === id ? shelf : { ...shelf, last: id }));
}

export async function deleteSheet(id: string): Promise<void> {
  await SHEETS.change(({ sheets, last }) => ({
    sheets: sheets.filter((one) => one.id !== id),
    last: last === id ? undefined : last,
  }));
}

/** What could not be read is not wanted any more. */
export const forgetSpoiltSheets = (): Promise<void> => SHEETS.forgetSpoilt();

export const clearSheets = (): Promise<void> => SHEETS.clear();

/** How many sheets are kept; undefined where nothing at all lies there, or nothing can. */
export const keptSheets = (): Promise<number | undefined> => SHEETS.lying().then((shelf) => shelf?.sheets.length);

/** Calls when a sheet was changed, in this tab or another. Gives what ends that. */
export const onSheets = (listener: () => void): (() => void) => SHEETS.onChange(listener);
