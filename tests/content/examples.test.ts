// A number in a hint is an example: it must not read as a fact, nor as what the answer ought to be.
import { expect, test } from 'vitest';
import { isRecord, wordsOf } from './folder.ts';

const hints = wordsOf('en', 'questions').flatMap(({ id, data }) =>
  Object.values(isRecord(data['fields']) ? data['fields'] : {}).flatMap((field) =>
    isRecord(field) && typeof field['hint'] === 'string' ? [{ id, hint: field['hint'] }] : [],
  ),
);

test.each(hints)('$id: $hint', ({ hint }) => {
  expect(hint).not.toMatch(/: \d[\d.,]*(?: ?[a-zA-Z²]+)?(?: or \d+ [A-Z]+)?[.;"]?(?= [A-Z]|$)/);
  expect(hint).not.toMatch(/\b(?:Type a number|unit): /);
});

test('there are hints with numbers to look at', () => {
  expect(hints.filter(({ hint }) => /for example \d/.test(hint)).length).toBeGreaterThan(15);
});
