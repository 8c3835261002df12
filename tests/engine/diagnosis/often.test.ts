import { expect, test } from 'vitest';
import { howOften } from '../../../src/engine/diagnosis/often.ts';

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
