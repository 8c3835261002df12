// Danger told in plain words is heard, in four languages; what only sounds like it is not.
import { describe, expect, test } from 'vitest';
import { dangerOfAnswer } from '../../src/wizards/put-it-right/index.ts';
import { dangersIn, LANGUAGES, LISTENER } from './heard.ts';
import {
  dangers,
  dangersLast,
  dangersLater,
  dangersOfTerminals,
  harmless,
  harmlessLast,
  harmlessLater,
  harmlessOfTerminals,
} from './told-dangers.ts';

const pagesFor = (text: string): readonly string[] =>
  LISTENER.hear(text).flatMap(({ check, option }) => dangerOfAnswer(check, option) ?? []);

/** A mark of what was hot is asked about by a chip of its own: it is no reason to switch off at the wall. */
const ONLY_A_MARK = 'the sleeper plastic has melted under the loco';

test.each([...dangers, ...dangersLater, ...dangersLast, ...dangersOfTerminals].filter((one) => one !== ONLY_A_MARK))(
  'danger is heard in “%s”',
  (text) => {
    expect(pagesFor(text)).not.toEqual([]);
  },
);

test.each([...harmless, ...harmlessLater, ...harmlessLast, ...harmlessOfTerminals])(
  'no danger is heard in “%s”',
  (text) => {
    expect(pagesFor(text)).toEqual([]);
  },
);

test('what left a mark is proposed as that', () => {
  expect(pagesFor(ONLY_A_MARK)).toEqual([]);
  expect(LISTENER.hear(ONLY_A_MARK).map(({ option }) => option)).toContain('browned');
});

describe('The page that is opened first', () => {
  test.each([
    ['the RCD trips when I plug in the booster', 'house-protection'],
    ['Der FI fliegt raus, wenn ich die Zentrale einstecke', 'house-protection'],
    ['I got a shock from the rails', 'tingle'],
    ['j’ai pris une décharge en touchant les rails', 'tingle'],
    ['the transformer lead is melted', 'switch-off-now'],
    ['er is water in de booster gelopen', 'switch-off-now'],
  ])('for “%s” is %s', (text, page) => {
    expect(pagesFor(text)).toEqual([page]);
  });
});

describe('A “no”', () => {
  test.each([
    ['No smoke, smell or heat', []],
    ['No shock, and the trains run', []],
    ['There was no power, then smoke came out of the booster', ['switch-off-now']],
    ['Nothing happens and the plug is cracked', ['switch-off-now']],
    ['The booster is so hot that I can’t keep my hand on it', ['switch-off-now']],
    ['The RCD does not trip, but the plug sparks', ['switch-off-now']],
  ])('in “%s” leaves %o', (text, pages) => {
    expect(pagesFor(text)).toEqual(pages);
  });
});

test('what tells a danger is not proposed as a fault of the layout too', () => {
  expect(LISTENER.hear('The RCD trips').map(({ option }) => option)).toEqual(['house-fuse']);
});

test.each(['en', ...LANGUAGES])('the words of danger in %s are of answers that mean danger', (language) => {
  const answers = [...dangersIn(language).keys()];
  expect(answers).toEqual(['what-happens/house-fuse', 'what-happens/tingle', 'danger-now/smoke-heat-or-damage']);
  for (const answer of answers) {
    const [check = '', option = ''] = answer.split('/');
    expect(dangerOfAnswer(check, option), answer).toBeDefined();
  }
});
