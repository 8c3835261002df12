// The words of a walk are sent without what can be told from the model: each name is found all the same.
import { describe, expect, test } from 'vitest';
import { wholeWords } from '../../src/components/walk/word-shapes.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/index.ts';

const SENT = {
  pictures: [],
  words: { 'class-pickup': 'A wiper has lost contact', 'fault-few-feeds': 'Too few feeders' },
  checks: { 'which-setting': ['Setting', 'No', 'Short in one', 'Dead in one', 'Now so, now so'] },
  cautions: {},
};

describe('Words of a walk as they are sent', () => {
  test('name each answer by its place in the row of its check', () => {
    expect(wholeWords(SENT).checks['which-setting']).toEqual({
      known: 'Setting',
      options: {
        no: { label: 'No' },
        'short-in-one': { label: 'Short in one' },
        'dead-in-one': { label: 'Dead in one' },
        changing: { label: 'Now so, now so' },
      },
    });
  });

  test('name a cause as its repair where it has no name of its own', () => {
    const { words } = wholeWords(SENT);
    expect(words['fault-pickup']).toBe('A wiper has lost contact');
    expect(words['fault-few-feeds']).toBe('Too few feeders');
    expect(SIGN_MODEL.causes.filter(({ id }) => words[`fault-${id}`] === undefined)).toEqual([]);
  });

  test('that are of another model are not shown beside the wrong answers', () => {
    expect(() => wholeWords({ ...SENT, checks: { 'which-setting': ['Setting', 'No'] } })).toThrow(/which-setting/);
  });
});
