// What people read and type is turned into SI and back by src/engine/units.ts alone: outside the engine no factor of a unit stands.
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');

/** Powers of a thousand and of ten metres, feet, inches, inches a foot, seconds a minute. */
const FACTOR = String.raw`(?:1e[+-]?[2-9]|1_?000(?:_?000)?|0\.0{1,5}1|0\.3048|0\.0254|25\.4|2\.54|3\.28\d*|39\.37\d*|12|60)`;
const CONVERSION = new RegExp(String.raw`[*/]\s*${FACTOR}(?![\w.])|(?<![\w.])${FACTOR}\s*[*/](?![*/>])`);

const conversionsIn = (text: string): string[] =>
  text
    .split('\n')
    .filter((line) => !/^\s*(?:\/\/|\/?\*)/.test(line))
    .filter((line) => CONVERSION.test(line.replace(/\s\/\/ .*$/, '')))
    .map((line) => line.trim());

test('components, layouts, pages and wizards leave every conversion to the engine', () => {
  const files = globSync('src/{components,layouts,pages,wizards}/**/*.{ts,tsx,astro}', { cwd: ROOT });
  expect(files.length).toBeGreaterThan(100);
  const found = files.flatMap((file) =>
    conversionsIn(readFileSync(join(ROOT, file), 'utf8')).map((line) => `${file}: ${line}`),
  );
  expect(found).toEqual([]);
});

test.each([
  'area * 1e6',
  'seconds / 1e-6',
  'value*1000',
  'metres / 0.3048',
  '25.4 * inches',
  'whole / 12',
  '0.001 * ms',
])('a conversion would be noticed: %s', (text) =>
  expect(conversionsIn(`const made = ${text};`)).toEqual([`const made = ${text};`]),
);

test.each(['value + 1e-6', 'x="12"', '100 * share', '// a * 1000', 'y={12} />', '<circle r="12"/>'])(
  'what is none is let pass: %s',
  (text) => expect(conversionsIn(text)).toEqual([]),
);
