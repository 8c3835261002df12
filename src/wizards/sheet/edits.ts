// Changes of a sheet. Each gives a whole sheet again, or what forbids it; nothing is changed in place, so that every one can be undone.
import type { MeasureSystem } from '../../engine/index.ts';
import type { Problem } from '../planning/index.ts';
import { freshMark } from './answers.ts';
import { type Column, readCell, type Table } from './columns.ts';
import type { Flaw } from './flaws.ts';
import { checkSheet } from './read.ts';
import { MOST, type Sheet } from './sheet.ts';

export type Edited = { readonly sheet: Sheet } | { readonly flaw: Flaw } | { readonly problem: Omit<Problem, 'field'> };

/** A sheet that somebody changed, if it is one still. */
export function edited(value: unknown): Edited {
  const read = checkSheet(value);
  if ('problem' in read) return { flaw: { why: 'not-whole' } };
  const [flaw] = read.flaws;
  return flaw === undefined ? { sheet: read.sheet } : { flaw };
}

type Fields = Readonly<Record<string, unknown>>;

/** The fields with one of them told, or left out where undefined. */
function withField(fields: Fields, field: string, value: unknown): Fields {
  const { [field]: _, ...others } = fields;
  return value === undefined ? others : { ...others, [field]: value };
}

/** @param at place in the list, from 0 */
export function withCell(
  sheet: Sheet,
  table: Table,
  at: number,
  column: Column,
  typed: string,
  bare: MeasureSystem = 'metric',
): Edited {
  const read = readCell(column, typed, bare);
  if ('problem' in read) return read;
  if (table === 'sections' && column.field === 'id') return withMark(sheet, at, markFrom(String(read.value)));
  const parts = sheet[table].map(
    (part, index): Fields => (index === at ? withField(part, column.field, read.value) : part),
  );
  return edited({ ...sheet, [table]: parts });
}

/** A mark as a sheet takes it: small letters, digits and hyphens. */
const markFrom = (typed: string): string =>
  typed
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');

/** The sheet with another mark for a section, wherever it is named. */
function withMark(sheet: Sheet, at: number, to: string): Edited {
  const from = sheet.sections[at]?.id;
  if (from === undefined || from === to) return { sheet };
  const flaw = { list: 'sections', at: at + 1, field: 'id', mark: to } as const;
  if (to === '') return { flaw: { why: 'not-allowed', ...flaw } };
  if (sheet.sections.some(({ id }) => id === to)) return { flaw: { why: 'taken', ...flaw } };
  const named = (id: string): string => (id === from ? to : id);
  return edited({
    ...sheet,
    sections: sheet.sections.map((section) => ({ ...section, id: named(section.id) })),
    joints: sheet.joints.map((joint) => ({ ...joint, from: named(joint.from), to: named(joint.to) })),
    stages: sheet.stages.map(({ feeds, ...stage }) => ({ ...stage, ...told({ feeds: feeds?.map(named) }) })),
    ...told({
      districts: sheet.districts?.map((district) => ({ ...district, sections: district.sections.map(named) })),
    }),
  });
}

/** A field of the sheet itself, or of its wiring. */
export const withTold = (sheet: Sheet, field: string, value: unknown): Edited => edited(withField(sheet, field, value));

export function withWire(sheet: Sheet, column: Column, typed: string, bare: MeasureSystem = 'metric'): Edited {
  const read = readCell(column, typed, bare);
  if ('problem' in read) return read;
  const wiring = withField({ ...sheet.wiring }, column.field, read.value);
  return edited({ ...sheet, wiring: Object.keys(wiring).length === 0 ? undefined : wiring });
}

/** Metres of a section that somebody has just added. Source: own-choice. */
const NEW_METRES = 1;

/** The sheet with one part more at the end of a list; a division that does not know a new section no longer holds. */
export function withMore(sheet: Sheet, table: Table): Edited {
  if (sheet[table].length >= MOST[table]) return { flaw: { why: 'too-many', list: table, at: MOST[table] + 1 } };
  switch (table) {
    case 'sections': {
      const id = freshMark('section', sheet.sections);
      return edited(
        undivided({ ...sheet, sections: [...sheet.sections, { id, metres: NEW_METRES, traffic: NEW_METRES }] }),
      );
    }
    case 'joints': {
      const [from, to] = sheet.sections.slice(-2);
      if (from === undefined || to === undefined) return { flaw: { why: 'names-nothing', list: 'joints' } };
      const id = freshMark('joint', sheet.joints);
      const joint = { id, from: from.id, to: to.id, gap: 'possible', cut: 'none', awkward: 0 };
      return edited({ ...sheet, joints: [...sheet.joints, joint] });
    }
    case 'trains':
      return edited({ ...sheet, trains: [...sheet.trains, { kind: 'modern', count: 1 }] });
    case 'stages': {
      const first = sheet.stages.length === 0;
      const id = first ? 'station' : freshMark('booster', sheet.stages);
      const kind = first ? 'station' : 'booster';
      const supply = freshMark('supply', sheet.supplies);
      const room = sheet.supplies.length < MOST.supplies;
      const stages = [...sheet.stages, { id, kind, ...(room ? { supply } : {}) }];
      return edited({ ...sheet, stages, supplies: room ? [...sheet.supplies, { id: supply }] : sheet.supplies });
    }
    case 'supplies':
      return edited({ ...sheet, supplies: [...sheet.supplies, { id: freshMark('supply', sheet.supplies) }] });
  }
}

function undivided(sheet: Sheet): Sheet {
  const { districts: _, ...rest } = sheet;
  return rest;
}

/** The sheet without one part, and without what named it. */
export function without(sheet: Sheet, table: Table, at: number): Edited {
  const parts = sheet[table].filter((_, index) => index !== at);
  const gone = sheet[table][at];
  const mark = gone !== undefined && 'id' in gone ? gone.id : undefined;
  const less = { ...sheet, [table]: parts };
  if (mark === undefined || table === 'joints' || table === 'trains') return edited(less);
  if (table === 'sections') return edited(withoutSection(sheet, mark));
  if (table === 'supplies') {
    const stages = sheet.stages.map(({ supply, ...rest }) =>
      supply === mark ? rest : { ...rest, ...told({ supply }) },
    );
    return edited({ ...less, stages });
  }
  const [first, ...others] = sheet.stages.filter(({ id }) => id !== mark);
  const stages = first === undefined ? [] : [{ ...first, kind: 'station' }, ...others];
  return edited({ ...undivided(sheet), stages });
}

const told = (fields: Fields): Fields =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));

function withoutSection(sheet: Sheet, mark: string): unknown {
  const stages = sheet.stages.map((stage) =>
    stage.feeds === undefined ? stage : { ...stage, feeds: stage.feeds.filter((id) => id !== mark) },
  );
  const { districts } = sheet;
  const left = districts
    ?.map((district) => ({ ...district, sections: district.sections.filter((id) => id !== mark) }))
    .filter(({ sections }) => sections.length > 0);
  return {
    ...undivided(sheet),
    sections: sheet.sections.filter(({ id }) => id !== mark),
    joints: sheet.joints.filter(({ from, to }) => from !== mark && to !== mark),
    stages,
    ...told({ districts: left }),
  };
}

/** A sheet with what it was before and what was undone. */
export interface History {
  readonly now: Sheet;
  readonly past: readonly Sheet[];
  readonly future: readonly Sheet[];
}

/** So many changes can be undone. Source: own-choice. */
const MOST_UNDONE = 300;

export const begun = (now: Sheet): History => ({ now, past: [], future: [] });

export const done = ({ now, past }: History, sheet: Sheet): History => ({
  now: sheet,
  past: [...past.slice(1 - MOST_UNDONE), now],
  future: [],
});

export function undone(history: History): History {
  const { now, past, future } = history;
  const former = past.at(-1);
  return former === undefined ? history : { now: former, past: past.slice(0, -1), future: [now, ...future] };
}

export function redone(history: History): History {
  const { now, past, future } = history;
  const [next, ...later] = future;
  return next === undefined ? history : { now: next, past: [...past, now], future: later };
}
