// A zero is printed without a stroke across it: in the middle of one there is no ink, and it stays narrower than the letter O.
import { expect, test } from 'vitest';
import { open } from './browser.ts';

test.each([400, 700])('with letters of weight %i', async (weight) => {
  const { page, close } = await open('en/privacy/');
  // Only on a second visit is a face that came late used.
  await page.reload({ waitUntil: 'networkidle' });
  const drawn = (text: string) =>
    page.evaluate(
      ([written, thick]) => {
        const pen = new OffscreenCanvas(400, 400).getContext('2d');
        if (pen === null) return;
        pen.font = `${thick} 300px ${getComputedStyle(document.body).fontFamily}`;
        const { width, actualBoundingBoxAscent: height } = pen.measureText(written);
        pen.fillText(written, 0, 320);
        const row = pen.getImageData(0, Math.round(320 - height / 2), Math.round(width), 1).data;
        const ink = Array.from({ length: row.length / 4 }, (_, x) => (row[4 * x + 3] ?? 0) > 127);
        return { width, middle: ink[Math.round(width / 2)], strokes: ink.filter((on, x) => on && !ink[x - 1]).length };
      },
      [text, weight] as const,
    );
  const [zero, letter] = [await drawn('0'), await drawn('O')];
  expect(zero?.middle).toBe(false);
  expect(zero?.strokes).toBe(2);
  expect(zero?.width).toBeLessThan(letter?.width ?? 0);
  await close();
});
