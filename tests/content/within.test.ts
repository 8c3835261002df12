// Which lines of a list fit what was typed: the index for helpers and the notebook.
import { describe, expect, test } from 'vitest';
import { fitting } from '../../src/components/search/index.ts';

describe.each([
  ['supply', 'A larger supply for the booster'],
  ['supplies', 'A larger supply for the booster'],
  ['supply', 'Two supplies alike'],
  ['many', 'Too many trains at once'],
  ['runs the wrong way', 'It runs the wrong way'],
  ['tuesday harry battery', 'Asked on Tuesday by Harry, battery too'],
  ['tues', 'Asked on Tuesday'],
  ['crossing', 'It crosses the gap'],
])('“%s”', (typed, line) => {
  test(`finds “${line}”`, () => {
    expect(fitting(typed)(line)).toBe(true);
  });
});

test.each([
  ['battery', 'A larger supply'],
  ['supply', 'It supposes a gap'],
])('“%s” does not find “%s”', (typed, line) => {
  expect(fitting(typed)(line)).toBe(false);
});
