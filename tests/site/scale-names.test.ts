// The slashed zero of the text face reads as another letter in the name of a scale, so that H0 and 00 are printed with an O; numbers keep it.
import { expect, test } from 'vitest';
import { type Opened, open } from './browser.ts';

/** Pixels that a text is wide in the face of running text. */
const width = (page: Opened['page'], text: string, weight: number): Promise<number> =>
  page.evaluate(
    ([written, thick]) => {
      const box = document.createElement('span');
      box.style.cssText = `position: absolute; font-size: 100px; white-space: pre; font-weight: ${thick}`;
      box.textContent = written;
      document.body.append(box);
      const { width } = box.getBoundingClientRect();
      box.remove();
      return width;
    },
    [text, weight] as const,
  );

test.each([400, 700])('with letters of weight %i', async (weight) => {
  const { page, close } = await open('en/privacy/');
  // Only on a second visit is a face that came late used.
  await page.reload({ waitUntil: 'networkidle' });
  const letters = (text: string) => width(page, text, weight);
  expect(await letters('')).toBe(0);
  for (const name of ['H0', '00', 'H0e', 'H0m', 'H0 or 00,', '(H0)'])
    expect(await letters(name), name).toBe(await letters(name.replaceAll('0', 'O')));
  for (const number of ['0', '0.00 A', '100', '1000', '10000', '2,000', '5:00', '−200'])
    expect(await letters(number), number).not.toBe(await letters(number.replaceAll('0', 'O')));
  await close();
});
