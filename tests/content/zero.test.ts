// The zero of the text face is drawn without its stroke, in running text and among digits of equal width.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { cutTo } from '../../scripts/build/cut.mjs';
import { withPlainZero, zeroContours } from '../../scripts/build/plain-zero.mjs';

const faceOf = (weight: number): Buffer =>
  readFileSync(
    new URL(
      import.meta.resolve(
        `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-${weight}-normal.woff2`,
      ),
    ),
  );

test.each([400, 700])('with letters of weight %i a zero is a ring with one opening', async (weight) => {
  const cut = await cutTo(faceOf(weight), '0123456789OH', { targetFormat: 'sfnt' });
  expect(zeroContours(cut)).toEqual([3]);
  expect(zeroContours(withPlainZero(cut))).toEqual([2]);
});

test('a face whose zero has no stroke is not taken for one that has', async () => {
  const cut = await cutTo(faceOf(400), '0123456789OH', { targetFormat: 'sfnt' });
  expect(() => withPlainZero(withPlainZero(cut))).toThrow('1 openings');
});
