// A text becomes a sheet: a file, a link, what a device keeps. Nothing thrown, whatever it is; what cannot be read of a sheet is left out
// and named, the rest is kept.
import * as z from 'zod/mini';
import { fitting } from './fit.ts';
import type { Flaw, List } from './flaws.ts';
import { LISTS } from './flaws.ts';
import { upToNow } from './migrations.ts';
import { MOST, SHEET_FORM, type Sheet, sheetShape } from './sheet.ts';

/** The longest text that is read at all, characters: ten times the largest sheet. Source: own-choice. */
export const MOST_SHEET_TEXT = 1_000_000;

/** Why a text is no sheet. `at`: the place in the text, from 1. `cut-link`: what came in a link is not whole. */
export type SheetProblem =
  | { readonly why: 'too-large' | 'no-sheet' | 'cut-link' }
  | { readonly why: 'broken-text'; readonly at: number }
  | { readonly why: 'later-version'; readonly version: number };

export type ReadSheet = { readonly sheet: Sheet; readonly flaws: readonly Flaw[] } | { readonly problem: SheetProblem };

const FRAME = z.looseObject({
  form: z.literal('both-rails-layout-sheet'),
  version: z.int().check(z.minimum(0)),
});

type Fields = Record<string, unknown>;
const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** @param text what is said to be a sheet; any text */
export function readSheet(text: string): ReadSheet {
  if (text.length > MOST_SHEET_TEXT) return { problem: { why: 'too-large' } };
  const data = jsonOf(text);
  return 'problem' in data ? data : checkSheet(data.value);
}

/** The same of what is no text any more: every change of a sheet goes through here. */
export function checkSheet(value: unknown): ReadSheet {
  const frame = z.safeParse(FRAME, value);
  if (!frame.success) return { problem: { why: 'no-sheet' } };
  const { version } = frame.data;
  if (version > SHEET_FORM) return { problem: { why: 'later-version', version } };
  const now = upToNow(version, frame.data);
  if (!isFields(now)) return { problem: { why: 'no-sheet' } };
  const flaws: Flaw[] = [];
  const good = z.safeParse(sheetShape, inShape(now, flaws));
  // Cannot be: every part was read by its own shape.
  if (!good.success) return { problem: { why: 'no-sheet' } };
  return { sheet: fitting(good.data, flaws), flaws };
}

/** A sheet as a text, its fields in the order of the shape: of a file, and of what is kept. */
export function writeSheet(sheet: Sheet): string {
  const { data = sheet } = z.safeParse(sheetShape, sheet);
  return `${JSON.stringify(data, undefined, 1)}\n`;
}

function jsonOf(text: string): { readonly value: unknown } | { readonly problem: SheetProblem } {
  try {
    return { value: JSON.parse(text) };
  } catch (error) {
    if (!(/^\s*\{/.test(text) && text.includes('both-rails-layout-sheet'))) return { problem: { why: 'no-sheet' } };
    // Browsers word it differently; some say the place.
    const [, place] = /position (\d+)/.exec(String(error)) ?? [];
    return { problem: { why: 'broken-text', at: place === undefined ? text.length : Number(place) + 1 } };
  }
}

const SHAPE = sheetShape.def.shape;
const isList = (key: string): key is List => LISTS.some((list) => list === key);

/** The elements of each list, by its shape. */
const ELEMENTS = {
  trains: SHAPE.trains.def.element,
  sections: SHAPE.sections.def.element,
  joints: SHAPE.joints.def.element,
  stages: SHAPE.stages.def.element,
  supplies: SHAPE.supplies.def.element,
  districts: SHAPE.districts.def.innerType.def.element,
} as const;

/** The most of each list that one sheet holds. Source: own-choice. */
const MOST_OF: Readonly<Record<List, number>> = {
  trains: MOST.trains,
  sections: MOST.sections,
  joints: MOST.joints,
  stages: MOST.stages,
  supplies: MOST.supplies,
  districts: MOST.stages,
};

/** What a sheet must have, where it cannot be read. */
const INSTEAD: Readonly<Record<string, unknown>> = {
  name: '',
  scale: 'h0',
  trains: [],
  sections: [],
  joints: [],
  stages: [],
  supplies: [],
};

/** The sheet with only what has the right shape. */
function inShape(told: Fields, flaws: Flaw[]): Fields {
  const kept: Fields = { ...INSTEAD };
  for (const [key, value] of Object.entries({ ...UNTOLD, ...told })) {
    if (value === undefined && !Object.hasOwn(INSTEAD, key)) continue;
    const read = isList(key) ? listOf(key, value, flaws) : partOf(SHAPE, key, value);
    if (read === undefined) flaws.push({ why: 'not-allowed', field: key.slice(0, MOST.name) });
    else kept[key] = read.value;
  }
  return kept;
}

/** What must be there and may not be. */
const UNTOLD: Fields = Object.fromEntries(Object.keys(INSTEAD).map((key) => [key, undefined]));

const listOf = (list: List, value: unknown, flaws: Flaw[]): { readonly value: unknown } | undefined =>
  Array.isArray(value) ? { value: elementsOf(list, value, flaws) } : undefined;

type Shapes = Readonly<Record<string, z.ZodMiniType>>;

function partOf(shapes: Shapes, key: string, value: unknown): { readonly value: unknown } | undefined {
  const shape = Object.hasOwn(shapes, key) ? shapes[key] : undefined;
  const read = shape?.safeParse(value);
  return read?.success === true ? { value: read.data } : undefined;
}

/** What somebody has written there, as far as it is looked at. */
const shortOf = (value: unknown): string => (JSON.stringify(value) ?? '').replace(/^"|"$/g, '').slice(0, MOST.name);

function elementsOf(list: List, values: readonly unknown[], flaws: Flaw[]): unknown[] {
  const most = MOST_OF[list];
  if (values.length > most) flaws.push({ why: 'too-many', list, at: most + 1 });
  return values.slice(0, most).flatMap((value, index) => {
    const at = index + 1;
    if (!isFields(value)) {
      flaws.push({ why: 'not-allowed', list, at });
      return [];
    }
    const shapes: Shapes = ELEMENTS[list].def.shape;
    const kept: Fields = {};
    const bad: string[] = [];
    for (const [field, told] of Object.entries(value)) {
      if (told === undefined) continue;
      const read = partOf(shapes, field, told);
      if (read === undefined) bad.push(field.slice(0, MOST.name));
      else kept[field] = read.value;
    }
    const whole = ELEMENTS[list].safeParse(kept);
    if (whole.success) {
      flaws.push(...bad.map((field): Flaw => ({ why: 'not-allowed', list, at, field })));
      return [whole.data];
    }
    const [{ path = [] } = {}] = whole.error.issues;
    const field = String(path[0] ?? bad[0] ?? '');
    flaws.push(
      bad.includes(field)
        ? { why: 'left-out', list, at, field, mark: shortOf(value[field]) }
        : { why: 'not-whole', list, at, field },
    );
    return [];
  });
}
