// DEVELOPERS.md and the README name files and commands that are there.
import { existsSync, globSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..');
const read = (file: string): string => readFileSync(join(ROOT, file), 'utf8');

/** Where a path may begin that is not written out: the recipes leave out what the sentence before has said. */
const BELOW = [
  ...[
    '',
    'src',
    'src/content/en',
    'src/components',
    'src/components/planning',
    'src/components/planning/wire-it',
    'src/layouts',
    'src/wizards',
    'src/engine',
    'scripts',
  ],
  ...['src/wizards/put-it-right', 'src/wizards/put-it-right/model', 'src/wizards/planning', 'src/wizards/wire-it'],
  ...['src/content', 'src/components/words', 'tests/judge', 'tests/wizards', 'src/content/en/words'],
];

/** Paths in a text, holes such as <figure> filled by anything; what is made by a run is none. */
const pathsIn = (text: string): string[] =>
  [
    ...text.matchAll(
      /`([\w./[\]<>-]+\.(?:tsx?|astro|mjs|cjs|json|yaml|mdx|txt|md|css)|(?:src|tests|scripts|docs)\/[\w./[\]<>-]+)`/g,
    ),
  ]
    .map(([, path = '']) => path)
    .filter((path) => !path.startsWith('reports/'));

const isThere = (path: string): boolean =>
  BELOW.some((folder) => {
    const whole = join(ROOT, folder, path);
    if (!path.includes('<')) return existsSync(whole);
    return globSync(whole.replace(/[[\]]/g, '\\$&').replace(/<[^>]*>/g, '*')).length > 0;
  });

describe.each(['DEVELOPERS.md', 'README.md'])('%s', (file) => {
  test('names only files that are there', () => {
    const paths = pathsIn(read(file));
    expect(paths.length).toBeGreaterThan(1);
    expect(paths.filter((path) => !isThere(path)).map((path) => `${file} names ${path}, which is not there.`)).toEqual(
      [],
    );
  });

  test('names only commands that package.json has', () => {
    const { scripts }: { scripts: Readonly<Record<string, string>> } = JSON.parse(read('package.json'));
    const named = [...read(file).matchAll(/npm run ([\w-]+)/g)].map(([, name = '']) => name);
    expect(named.filter((name) => !Object.hasOwn(scripts, name))).toEqual([]);
  });
});

test('every room of the engine, of the wizards and of the components is in the list of rooms', () => {
  const [, list = ''] = /## Rooms\n([\s\S]*?)\n## /.exec(read('DEVELOPERS.md')) ?? [];
  const rooms = globSync('src/{engine,wizards,components}/*/', { cwd: ROOT }).map(
    (path) => path.split(/[\\/]/).at(-1) ?? '',
  );
  expect(rooms.length).toBeGreaterThan(15);
  expect(rooms.filter((room) => !list.includes(room))).toEqual([]);
});

/** Files that lie in a folder of rooms and in none of its rooms. */
const loose = (root: string): string[] =>
  globSync('src/components/*', { cwd: root, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ name }) => name);

test('no file lies loose beside the rooms of the components', () => {
  expect(loose(ROOT)).toEqual([]);
});

test('a file that lies loose would be noticed', () => {
  const root = mkdtempSync(join(tmpdir(), 'loose-'));
  mkdirSync(join(root, 'src/components/walk'), { recursive: true });
  writeFileSync(join(root, 'src/components/walk/index.ts'), '');
  writeFileSync(join(root, 'src/components/gasket.ts'), '');
  expect(loose(root)).toEqual(['gasket.ts']);
  rmSync(root, { recursive: true });
});

test('a path that is nowhere would be noticed', () => {
  const paths = pathsIn(
    'See `src/engine/gasket.ts`, `signs.ts` and `pages/[language]/learn/[lesson].astro`; `content/en/fixes/<id>.mdx`.',
  );
  expect(paths.filter((path) => !isThere(path))).toEqual(['src/engine/gasket.ts']);
});
