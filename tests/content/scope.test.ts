// The words of the figure that shows both sides of a gap: one for all it can say, and none that it never says.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import GapScope, { SCOPE_CHOICES } from '../../src/components/figures/gap-scope/GapScope.tsx';
import { LANGUAGES, wordsOf } from './folder.ts';

const FIGURE = readFileSync(join(import.meta.dirname, '../../src/components/figures/gap-scope/GapScope.tsx'), 'utf8');

/** What the figure says by an id of the engine. */
const BY_ID: Readonly<Record<string, readonly string[]>> = {
  heard: ['packet', 'doubtful', 'garbled', 'no-volts', 'no-edges', 'too-few-volts'],
  means: ['idle', 'reset', 'stop', 'cut', 'other', 'speed'],
  compare: ['small', 'large', 'alike', 'nothing', 'floating'],
  line: ['near', 'far', 'same', 'crosswise'],
  part: ['preamble', 'byte', 'check'],
  seen: ['right', 'step', 'reversed', 'held', 'dead', 'late', 'rounded'],
};

/** Values that its sentences are given. */
const VALUES = [
  ...['step', 'us', 'share', 'volts', 'amps', 'watts', 'meaning', 'address', 'way', 'same', 'crosswise'],
  ...['number', 'least', 'most'],
];

const NUMBERS = ['near', 'far', 'late', 'farads', 'ohms', 'first-bit', 'bit'];

const NEEDED = [
  ...Object.entries({ ...BY_ID, ...SCOPE_CHOICES }).flatMap(([kind, ids]) => ids.map((id) => `scope-${kind}-${id}`)),
  ...Object.keys(SCOPE_CHOICES).map((choice) => `scope-${choice}`),
  ...NUMBERS.map((id) => `scope-${id}`),
  ...[...FIGURE.matchAll(/'(scope-[a-z-]*[a-z])'/g)].map(([, key = '']) => key),
];

describe.each(LANGUAGES)('in "%s"', (language) => {
  const words = wordsOf(language, 'words').find(({ id }) => id === 'gap-scope')?.data ?? {};

  test('everything the figure says has words, and no word is left over', () => {
    expect(Object.keys(words).sort()).toEqual([...new Set(NEEDED)].sort());
  });

  test('every sentence asks only for values that it is given', () => {
    for (const [key, sentence] of Object.entries(words)) {
      for (const [, name] of String(sentence).matchAll(/\{([\w-]+)/g)) expect(VALUES, key).toContain(name);
    }
  });
});

describe('one pair of rails alone', () => {
  const said = Object.assign({}, ...wordsOf('en', 'words').map(({ id, data }) => (id === 'gap-scope' ? data : {})));
  const drawn = (begins?: string): string =>
    renderToString(h(GapScope, { alone: true, language: 'en', words: said, begins })).replaceAll('\u00a0', ' ');

  test('is one line, one row of meters, and no word of a gap or its sides', () => {
    expect(drawn().match(/<path class="trace /g)).toHaveLength(1);
    expect(drawn().match(/<th scope="row">/g)).toHaveLength(1);
    expect(drawn()).not.toMatch(/side [AB]|\bgap\b|crosswise|one edge/);
  });

  test('tells what a decoder there reads, and what three kinds of meters make of it', () => {
    expect(drawn()).toContain('A decoder reads: locomotive 3, forward, step 1 of 28.');
    expect(drawn('near=12')).toMatch(/from rail to rail<\/th><td>0<\/td><td>13.3<\/td><td>12<\/td>/);
  });

  test('keeps the height of its line, whatever is told to the trains', () => {
    for (const sent of SCOPE_CHOICES.sent) expect(drawn(`sent=${sent}`), sent).toContain('up to 15 V');
  });

  test('says so where a decoder has too few volts to work', () => {
    expect(drawn('near=5')).toContain('A decoder need not work with so few volts.');
  });
});
