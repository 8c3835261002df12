// No export of src without a caller in src: it holds here, and it would be noticed if it did not.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { unused } from '../scripts/check/unused.mjs';

test('whatever src lets out is called in src, or kept for a later letter that is named', () => {
  const { looked, sentences, kept } = unused();
  expect(looked).toBeGreaterThan(100);
  expect(sentences).toEqual([]);
  expect(kept.filter((one) => !/^[A-Z] /.test(one))).toEqual([]);
}, 60_000);

describe('in a made-up project', () => {
  const made: string[] = [];
  afterEach(() => {
    for (const folder of made.splice(0)) rmSync(folder, { recursive: true });
  });

  function project(files: Readonly<Record<string, string>>): string {
    const root = mkdtempSync(join(tmpdir(), 'unused-'));
    made.push(root);
    const settings = readFileSync(join(import.meta.dirname, '../knip.json'), 'utf8');
    const all = { 'knip.json': settings, 'package.json': '{ "name": "made-up", "type": "module" }', ...files };
    for (const [path, text] of Object.entries(all)) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), text);
    }
    return root;
  }

  const rooms = {
    'src/engine/index.ts': "export { lampGlow } from './crossing/index.ts';\n",
    'src/engine/crossing/index.ts': "export { lampGlow } from './lamps.ts';\n",
    'src/engine/crossing/lamps.ts': 'export const lampGlow = 1;\n',
    'src/components/walk/Walk.ts': "export const load = () => import('./rest.ts');\n",
    'src/components/walk/rest.ts': 'export const fixing = 2;\n',
    'src/pages/walk.ts':
      "import { load } from '../components/walk/Walk.ts';\nimport { lampGlow } from '../engine/index.ts';\nload(lampGlow);\n",
  };

  test('all is called, and what is loaded only when it is needed counts', () => {
    expect(unused(project(rooms))).toEqual({ looked: 6, sentences: [], kept: [] });
  }, 30_000);

  test.each([
    [
      'an export that only its own room knows',
      'src/engine/crossing/lamps.ts',
      'export const lampGlow = 1;\nexport const lampHum = 2;\n',
      'src/engine/crossing/lamps.ts lets out `lampHum`, which nobody in src calls.',
    ],
    [
      'a type that nobody names',
      'src/engine/crossing/lamps.ts',
      'export const lampGlow = 1;\nexport type LampLook = 1 | 2;\n',
      'src/engine/crossing/lamps.ts lets out `LampLook`, which nobody in src calls.',
    ],
    [
      'a name that goes out by a door and no further',
      'src/engine/index.ts',
      "export { lampGlow, lampHum } from './crossing/index.ts';\n",
      'src/engine/index.ts lets out `lampHum`, which nobody in src calls.',
    ],
    [
      'a file that only tests read',
      'src/engine/random.ts',
      'export const seeded = 1;\n',
      'src/engine/random.ts is a file that nobody in src reads.',
    ],
    [
      'something kept for nobody',
      'src/engine/crossing/lamps.ts',
      'export const lampGlow = 1;\n/** @keptFor later */\nexport const lampHum = 2;\n',
      'src/engine/crossing/lamps.ts keeps `lampHum` and does not say for which letter and what: @keptFor E meter readings.',
    ],
    [
      'something kept for later that is called by now',
      'src/engine/crossing/lamps.ts',
      '/** @keptFor E meter readings */\nexport const lampGlow = 1;\n',
      'src/engine/crossing/lamps.ts keeps `lampGlow` for later, yet it is called: take @keptFor away.',
    ],
  ])(
    '%s is named',
    (_, path, text, sentence) => {
      const through = "export { lampGlow, lampHum } from './lamps.ts';\n";
      const door = path === 'src/engine/index.ts' ? { 'src/engine/crossing/index.ts': through } : {};
      const lamps =
        path === 'src/engine/index.ts'
          ? { 'src/engine/crossing/lamps.ts': 'export const lampGlow = 1;\nexport const lampHum = 2;\n' }
          : {};
      expect(unused(project({ ...rooms, ...door, ...lamps, [path]: text })).sentences).toContain(sentence);
    },
    30_000,
  );

  test('what a later letter needs stays, with its door, and is listed with the letter', () => {
    const found = unused(
      project({
        ...rooms,
        'src/engine/crossing/index.ts': "export { lampGlow, lampHum } from './lamps.ts';\n",
        'src/engine/crossing/lamps.ts':
          'export const lampGlow = 1;\n/**\n * Hertz.\n * @keptFor E what a lamp\n * sounds like\n */\nexport function lampHum() {\n  return 50;\n}\n',
      }),
    );
    expect(found.sentences).toEqual([]);
    expect(found.kept).toEqual(['E what a lamp sounds like: lampHum (src/engine/crossing/lamps.ts)']);
  }, 30_000);
});
