// The list of all fixes goes by the place on the layout where each is done.
import { expect, test } from 'vitest';
import { FIX_PLACES } from '../../src/layouts/fix-places.ts';
import { wordsOf } from './folder.ts';

test('every fix is done at one place, and every place has fixes that are there', () => {
  const placed = Object.values(FIX_PLACES).flat();
  expect(placed.toSorted()).toEqual(
    wordsOf('en', 'fixes')
      .map(({ id }) => id)
      .toSorted(),
  );
  for (const fixes of Object.values(FIX_PLACES)) expect(fixes.length).toBeGreaterThan(2);
});
