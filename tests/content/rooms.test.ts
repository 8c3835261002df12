// Words by room: whoever asks for a sentence finds it in a room that they read, and no room holds a sentence that nobody asks for.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { drawn } from '../../src/layouts/drawn.ts';
import { FIGURE_IDS, FIGURES } from '../../src/layouts/figures.ts';
import type { Room } from '../../src/layouts/rooms.ts';
import {
  ANSWER_ROOMS,
  CHECK_ASKING,
  CHECK_ROOMS,
  PLAN_ROOMS,
  POWER_UP_ROOMS,
  QUESTION_ROOMS,
  SHEET_ROOMS,
  WALK_FIRST_ROOMS,
  WALK_ROOMS,
} from '../../src/layouts/rooms.ts';
import { WIZARD_IDS } from '../../src/wizards/index.ts';
import { COMPLAINT_IDS } from '../../src/wizards/put-it-right/index.ts';
import type { Asked } from './asked.ts';
import { askedBy, codeIn, drawnBy, idsIn, isAsked, isSaid, maybeAsked, SRC, surelyAsked, written } from './asked.ts';
import { wordsOf } from './folder.ts';

/** Whoever reads rooms: the code, and what it says by other words than those of its rooms. */
interface Reader {
  readonly name: string;
  readonly files: readonly string[];
  readonly rooms: readonly Room[];
  /** Single sentences of a room that is not read whole. */
  readonly single?: readonly string[];
}

/** Said by a component out of other content than rooms: titles of complaints and sources, and what to do first. */
const ELSEWHERE = /^(?:source-|complaint-|walk-first$)/;

const said = new Map(wordsOf('en', 'words').map(({ id, data }) => [id, Object.keys(data)]));
const keysOf = (rooms: readonly string[]): string[] => rooms.flatMap((room) => said.get(room) ?? []);

const ROOM_NAMES: ReadonlySet<string> = new Set(said.keys());
const isRoom = (name: string): name is Room => ROOM_NAMES.has(name);

/** A page reads the frame and the rooms it names; drawings in it say with what the page says with. */
function pageReader(file: string): Reader[] {
  const text = readFileSync(join(SRC, file), 'utf8');
  const [, named] = /wordsFor\(\s*[\w.]+([\s\S]*?)\)/.exec(text) ?? [];
  if (named === undefined) return [];
  const rooms = [...named.matchAll(/'([\w-]+)'/g)].map(([, room = '']) => room).filter(isRoom);
  const drawings = rooms.includes('drawings') ? codeIn('components/drawings') : [];
  return [{ name: file, files: [file, ...drawings], rooms: ['frame', ...rooms] }];
}

const READERS: readonly Reader[] = [
  ...codeIn('pages', 'layouts').flatMap(pageReader),
  ...FIGURE_IDS.map((figure) => ({
    name: `the figure ${figure}`,
    files: drawnBy(`components/figures/${FIGURES[figure].folder}/index.ts`),
    rooms: FIGURES[figure].rooms,
  })),
  { name: 'the figure on a fix page', files: ['layouts/Drive.astro'], rooms: FIGURES['drive-across'].rooms },
  ...WIZARD_IDS.map((wizard) => ({
    name: wizard,
    files: drawnBy(`components/planning/${wizard}/index.ts`),
    rooms: [...QUESTION_ROOMS, ...ANSWER_ROOMS[wizard]],
  })),
  {
    name: 'a computed question',
    files: drawnBy('components/course/index.ts'),
    rooms: CHECK_ROOMS,
    single: CHECK_ASKING,
  },
  {
    name: 'where to divide',
    files: drawnBy('components/division/index.ts'),
    rooms: ['diagram', 'sheet-names', 'division', 'units'],
  },
  { name: 'the plan', files: drawnBy('components/plan/index.ts'), rooms: PLAN_ROOMS },
  {
    name: 'the walk through its tests',
    files: drawnBy('components/first-power-up/index.ts'),
    rooms: POWER_UP_ROOMS,
  },
  { name: 'the case notebook', files: drawnBy('components/notebook/index.ts'), rooms: ['notebook'] },
  {
    name: 'the layout sheet',
    files: drawnBy('components/sheet/index.ts'),
    rooms: ['sheet', ...SHEET_ROOMS],
  },
  { name: 'a walk', files: drawnBy('components/walk/index.ts'), rooms: [...WALK_FIRST_ROOMS, ...WALK_ROOMS] },
];

const IDS = idsIn(['content.config.ts', ...codeIn('components', 'wizards', 'engine', 'layouts', 'pages')]);
const askedIn = new Map(READERS.map((reader) => [reader.name, askedBy(reader.files, maybeAsked)]));

/** Everything that somebody who reads a room asks for. */
const askedOf = (room: Room): Asked[] =>
  READERS.filter(({ rooms }) => rooms.includes(room)).flatMap(({ name }) => askedIn.get(name) ?? []);

const unsaid = (asked: readonly Asked[], rooms: readonly Room[], single: readonly string[] = []): string[] =>
  asked
    .filter((one) => !isSaid(one, [...keysOf(rooms), ...single]))
    .map(written)
    .filter((key) => !ELSEWHERE.test(key));

const unasked = (keys: readonly string[], asked: readonly Asked[]): string[] =>
  keys.filter((key) => !isAsked(key, asked, IDS));

describe('Whoever asks for a sentence finds it in a room that they read:', () => {
  test.each(READERS.map((reader) => [reader.name, reader] as const))('%s', (name, { files, rooms, single }) => {
    expect(unsaid(askedBy(files, surelyAsked), rooms, single), `${name} asks for what none of its rooms says`).toEqual(
      [],
    );
  });

  test('and one that is nowhere is noticed', () => {
    const text = `<p>{say('wire-made-up')} {say(x ? 'wire-other' : \`wire-verdict-\${y}\`, { n })} {say(\`zebra-\${x}\`)}</p>`;
    expect(unsaid(surelyAsked(text), ANSWER_ROOMS['wire-it'])).toEqual(['wire-made-up', 'wire-other', 'zebra-…']);
  });

  test('and one that stands in a room of others is noticed', () => {
    expect(unsaid(surelyAsked(`say('scope-title')`), ANSWER_ROOMS['wire-it'])).toEqual(['scope-title']);
  });
});

test('Every folder of figures draws one of the list, and every figure of the list stands in a lesson', () => {
  const listed = new Set(FIGURE_IDS.map((id): string => FIGURES[id].folder));
  const folders = readdirSync(join(SRC, 'components/figures')).filter((folder) => folder !== 'shared');
  const shown = new Set(wordsOf('en', 'lessons').map(({ data }) => data['figure']));
  expect([
    ...folders.filter((one) => !listed.has(one)).map((one) => `figures/${one} is not in src/layouts/figures.ts.`),
    ...[...listed]
      .filter((one) => !folders.includes(one))
      .map((one) => `There is no folder components/figures/${one}.`),
    ...FIGURE_IDS.filter((id) => !shown.has(id)).map((id) => `No lesson shows the figure "${id}".`),
  ]).toEqual([]);
});

test('What a page draws for an id is there, or the build stops with a sentence', () => {
  const all: Readonly<Record<string, () => string>> = { 'gap-scope': () => 'a scope' };
  expect(drawn('gap-scope', all)).toBe('a scope');
  expect(() => drawn('gasket', all)).toThrow('Nothing is drawn for "gasket"; there are gap-scope');
});

test('Every lesson, fix, walk and planning wizard is among the addresses that npm run record looks at', () => {
  const recorded = readFileSync(join(SRC, '../tests/record/addresses.txt'), 'utf8');
  const pages = [
    ...wordsOf('en', 'lessons').map(({ id }) => `en/learn/${id}/`),
    ...wordsOf('en', 'fixes').map(({ id }) => `en/fixes/${id}/`),
    ...COMPLAINT_IDS.map((id) => `en/put-it-right/${id}/`),
    ...WIZARD_IDS.map((id) => `en/work-it-out/${id}/`),
  ];
  expect(
    pages.filter((page) => !recorded.includes(page)).map((page) => `tests/record/addresses.txt lacks ${page}`),
  ).toEqual([]);
});

describe('Every sentence is asked for by somebody who reads its room:', () => {
  test.each([...said].filter(([room]) => isRoom(room)))('%s', (room, keys) => {
    const asked = isRoom(room) ? askedOf(room) : [];
    expect(unasked(keys, asked), `sentences of words/${room}.yaml that nobody asks for`).toEqual([]);
  });

  test.each(['frame', 'walk', 'drive-across', 'gap-scope', 'drawings', 'enough-current', 'causes'] as const)(
    'and one of %s that nobody asks for is noticed',
    (room) => {
      const start = keysOf([room])[0]?.split('-')[0] ?? '';
      expect(unasked([`${start}-zebra`, 'zebra-of-nobody'], askedOf(room))).toEqual([
        `${start}-zebra`,
        'zebra-of-nobody',
      ]);
    },
  );

  test('and every room is read by somebody', () => {
    const read = new Set<string>(READERS.flatMap(({ rooms }) => rooms));
    expect([...said.keys()].filter((room) => !read.has(room))).toEqual([]);
    expect([...read].filter((room) => !said.has(room))).toEqual([]);
  });

  test('and no two rooms that are read together say the same key', () => {
    for (const { name, rooms } of READERS) {
      const keys = keysOf(rooms);
      expect(
        keys.filter((key, i) => keys.indexOf(key) !== i),
        name,
      ).toEqual([]);
    }
  });
});
