// A walk as text: what was told, seen and tried and what is left, short enough for a forum post.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { CARD_LENGTH, cardLines } from '../../src/components/walk/card.ts';
import { likely } from '../../src/components/walk/likely.ts';
import { Numbers, sayer } from '../../src/components/words/index.ts';
import { NOTHING_TOLD, SIGN_MODEL, type Told } from '../../src/wizards/put-it-right/index.ts';

const wordsIn = (room: string): Record<string, string> =>
  Object.fromEntries(
    Object.entries(Object(parse(readFileSync(`src/content/en/words/${room}.yaml`, 'utf8')))).map(([id, text]) => [
      id,
      String(text),
    ]),
  );
const CLASSES = [...new Set(SIGN_MODEL.causes.map(({ fixClass }) => fixClass))];
const WORDS = {
  ...wordsIn('walk'),
  'complaint-trips-at-gap': 'It trips at the gap',
  ...Object.fromEntries(CLASSES.map((id) => [`class-${id}`, `the repair ${id}`])),
};
const say = sayer(WORDS, 'en-GB');
const numbers = new Numbers('en-GB', 'metric', WORDS);
const checks = Object.fromEntries(
  SIGN_MODEL.checks.map(({ id, options }) => [
    id,
    { known: `look at ${id}`, options: Object.fromEntries(options.map((one) => [one, { label: `it was ${one}` }])) },
  ]),
);
const cardOf = (told: Told, left: readonly { fixClass: string; chance: number }[], link = 0): string =>
  cardLines({ complaint: 'trips-at-gap', told, left, checks, say, numbers }, link).join('\n');

describe('the card', () => {
  const told: Told = {
    ...NOTHING_TOLD,
    seen: { 'when-it-happens': 'at-the-gap', 'read-labels': 'cannot', 'card-through-gaps': 'touches' },
    tried: ['no-feed', 'reversed'],
    left: ['reversed'],
  };

  test('says what was told, what was seen, what was tried and left as changed, and what is left', () => {
    expect(cardOf(told, [{ fixClass: 'one-rail', chance: 0.43 }])).toBe(
      [
        'It trips at the gap',
        'Told: look at when-it-happens: it was at-the-gap; look at card-through-gaps: it was touches.',
        'Tried without success: the repair no-feed; the repair reversed (left as it was changed).',
        'Still possible: the repair one-rail (likely, about 45\u00a0%).',
        'Not checked: 1 thing.',
        'The link asks first whether anything is hot or damaged, then goes on from here.',
      ].join('\n'),
    );
  });

  test('calls no danger that was dealt with a repair tried in vain', () => {
    expect(cardOf({ ...told, tried: ['switch-off-now'] }, [])).not.toContain('Tried');
  });

  test('says first what to try where a fix is proposed, and does not call it still possible', () => {
    const left = [
      { fixClass: 'one-rail', chance: 0.72 },
      { fixClass: 'skew', chance: 0.1 },
    ];
    const lines = cardLines(
      { complaint: 'trips-at-gap', told, left, proposed: 'one-rail', checks, say, numbers },
      0,
    ).filter((line) => line.includes('the repair one-rail') || line.includes('the repair skew'));
    expect(lines).toEqual([
      'Try this now: the repair one-rail (most likely, about 70\u00a0%).',
      'Still possible: the repair skew (perhaps, about 10\u00a0%).',
    ]);
  });

  test('says where all is well that it runs, what the trouble was and what mended it, and calls nothing still possible', () => {
    const left = [{ fixClass: 'one-rail', chance: 0.55 }];
    const solved = ['What it was: turned round.', 'What helped: Swap the two wires.'];
    const lines = cardLines({ complaint: 'trips-at-gap', told, left, solved, checks, say, numbers }, 0);
    expect(lines.slice(0, 4)).toEqual(['It runs again.', 'The trouble was: It trips at the gap.', ...solved]);
    expect(lines.join(' ')).not.toContain('The link asks');
    expect(lines.join(' ')).not.toContain('the repair one-rail');
    expect(lines.join(' ')).not.toContain('Still possible');
  });

  test('is short enough for a forum post with its link, however much was told', () => {
    const everything = Object.fromEntries(SIGN_MODEL.checks.map(({ id, options }) => [id, options[0] ?? '']));
    const anyLeft = fc.array(
      fc.record({ fixClass: fc.constantFrom(...CLASSES), chance: fc.double({ min: 0, max: 1 }) }),
      {
        maxLength: 5,
      },
    );
    fc.assert(
      fc.property(anyLeft, fc.subarray(CLASSES), fc.integer({ min: 0, max: 700 }), (left, tried, link) => {
        const card = cardOf({ ...told, seen: everything, tried }, left, link);
        expect(card.length + link).toBeLessThanOrEqual(CARD_LENGTH);
        expect(card).toContain('It trips at the gap');
        expect(card).toMatch(/Told: .*\d+ more\./);
      }),
      { numRuns: 40, seed: 11 },
    );
  });
});

describe('a share', () => {
  test.each([
    [0.004, 'under 5\u00a0%'],
    [0.024, 'under 5\u00a0%'],
    [0.03, 'perhaps, about 5\u00a0%'],
    [0.17, 'perhaps, about 15\u00a0%'],
    [0.43, 'likely, about 45\u00a0%'],
    [0.72, 'most likely, about 70\u00a0%'],
    [0.999, 'almost certain, over 95\u00a0%'],
  ])('of %d is told as "%s"', (chance, told) => expect(likely(chance, say, numbers)).toBe(told));
});
