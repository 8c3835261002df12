import { expect, test } from 'vitest';
import { howOften, toldShare } from '../../../src/engine/diagnosis/often.ts';

test('one in ten is common, one in thirty is sometimes, less is rare', () => {
  expect([0.5, 0.1, 0.099, 0.03, 0.029, 0].map(howOften)).toEqual([
    'common',
    'common',
    'sometimes',
    'sometimes',
    'rare',
    'rare',
  ]);
});

// Nobody knows a chance closer than to a twentieth; what is all but sure is never told as certain.
test.each<[number, string, number]>([
  [0, 'least', 0.05],
  [0.024, 'least', 0.05],
  [0.026, 'perhaps', 0.05],
  [0.29, 'perhaps', 0.3],
  [0.3, 'likely', 0.3],
  [0.52, 'likely', 0.5],
  [0.59, 'likely', 0.6],
  [0.6, 'most', 0.6],
  [0.97, 'most', 0.95],
  [0.98, 'sure', 0.95],
  [1, 'sure', 0.95],
])('a chance of %d is told as “%s”, %d', (chance, word, share) => {
  const told = toldShare(chance);
  expect(told.word).toBe(word);
  expect(told.share).toBeCloseTo(share, 12);
});
