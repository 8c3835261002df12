// A page that was begun as a copy of another says something of its own by now.
import { describe, expect, test } from 'vitest';
import { copied, madePage } from './copied.ts';
import { LANGUAGES, wordsOf } from './folder.ts';

const KINDS = ['fixes', 'checks', 'lessons', 'complaints', 'questions', 'cautions', 'glossary', 'sources'];

test.each(LANGUAGES.flatMap((language) => KINDS.map((kind) => [language, kind] as const)))(
  'in "%s" none of the %s says what another says',
  (language, kind) => {
    expect(wordsOf(language, kind).length).toBeGreaterThan(0);
    expect(copied(wordsOf(language, kind))).toEqual([]);
  },
);

describe('Of two made-up fixes', () => {
  const step = { do: 'Fit a new gasket.', cautions: [] };
  const gasket = {
    title: 'The gasket is worn',
    lead: 'Fit a new one.',
    steps: [step],
    effort: 'Ten minutes',
  };
  const own = {
    title: 'The lid is bent',
    lead: 'Bend it back.',
    steps: [{ do: 'Bend it.' }, step],
    effort: 'Ten minutes',
  };
  const found = (other: unknown, body = '') =>
    copied([madePage('gasket', gasket, 'Rubber ages.\n'), madePage('lid', other, body)]);

  test('one with words of its own passes, though it takes as long and shares a step', () => {
    expect(found(own, 'Tin bends.\n')).toEqual([]);
  });

  test.each([
    ['title', { ...own, title: 'the gasket is worn' }, ''],
    ['lead', { ...own, lead: 'Fit a new one.' }, ''],
    ['steps', { ...own, steps: [step] }, ''],
    ['text', own, '## Why\n\nRubber ages.\n'],
  ])('one that kept the %s of the other is named', (part, other, body) => {
    expect(found(other, body)).toHaveLength(1);
    expect(found(other, body)[0]).toMatch(new RegExp(`^"lid" says what "gasket" says \\(${part}: `));
  });
});
