// What an answer or a walk fetches passes a door where its shape is read. A field that the door does not know is lost on the screen, without a
// word: so was the mark of the steps that have the power on, and with it the caution for a garden.
import { globSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { answerWordsIn } from '../../src/components/planning/frame/answer-words.ts';
import { readAsked, readFix, readWalkWords } from '../../src/components/walk/word-shapes.ts';

const SITE = process.env.SITE_FOLDER ?? 'dist';
const FETCHED: readonly (readonly [files: string, read: (value: unknown) => unknown])[] = [
  ['en/work-it-out/*.json', answerWordsIn],
  ['en/put-it-right/words.json', readWalkWords],
  ['en/put-it-right/asked/*.json', readAsked],
  ['en/fixes/*.json', readFix],
];

test.each(FETCHED)('%s loses nothing at the door', (files, read) => {
  const found = globSync(files, { cwd: SITE });
  expect(found.length).toBeGreaterThan(0);
  for (const file of found) {
    const value: unknown = JSON.parse(readFileSync(`${SITE}/${file}`, 'utf8'));
    expect(read(value), file).toEqual(value);
  }
});
