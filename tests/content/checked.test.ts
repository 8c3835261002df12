// The page "How this was checked" shows a run that is past: what it names must still be there.
import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { CHECKED } from '../../src/layouts/checked.ts';

const named = [...CHECKED.outside, ...CHECKED.failed].map(({ file }) => file);

test('no test file that the report names is gone', () => {
  expect(CHECKED.outside.length).toBeGreaterThan(10);
  expect(
    [...new Set(named)].filter((file) => !existsSync(file)),
    'run npm test, then npm run checked',
  ).toEqual([]);
});

test('each test that failed is told, and every part has a name', () => {
  const failed = CHECKED.parts.reduce((sum, part) => sum + part.failed, 0);
  expect(CHECKED.failed).toHaveLength(failed);
  const words: Record<string, string> = parse(readFileSync('src/content/en/words/checked.yaml', 'utf8'));
  expect(CHECKED.parts.filter(({ id }) => words[`checked-of-${id}`] === undefined)).toEqual([]);
});

test('of each test that failed it is told in words what its file is about', () => {
  for (const { file, about } of CHECKED.failed) {
    expect(readFileSync(file, 'utf8').replaceAll(/\n\/\/ /g, ' '), file).toContain(about.slice(0, 60));
    expect(about.length, file).toBeGreaterThan(20);
  }
});

test('what is told of each judge from outside is what its file says', () => {
  for (const { file, says } of CHECKED.outside) {
    expect(says.length, file).toBeGreaterThan(20);
    expect(readFileSync(file, 'utf8').replaceAll(/\n\/\/ /g, ' '), file).toContain(says.slice(0, 60));
  }
});
