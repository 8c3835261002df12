// Every page on a narrow phone in light colours.
import { expect, test } from 'vitest';
import { open, pages } from './browser.ts';
import { accessibilityFaults, enlarge, foreignFaces, frame, layoutShift, NO_SHIFT, overflow } from './measure.ts';
import { fewOf } from './some.ts';

test('there is a site of at least 20 pages to look at', () => {
  expect(pages().length).toBeGreaterThanOrEqual(20);
});

/** Fix pages are made alike: that each has its heading and its text, without-script.test.ts says. */
const LOOKED_AT = fewOf(pages(), (path) => path.includes('/fixes/'), 3);

test.concurrent.each(LOOKED_AT)(
  '/%s on a phone has its frame, fits with letters twice as large too, keeps still, keeps to itself and is accessible',
  async (path) => {
    const { page, problems, close } = await open(path, { width: 360, height: 740 });
    const { title, lang, headings } = await frame(page);
    expect(title).not.toBe('');
    expect(lang).toMatch(/^[a-z]{2}/);
    expect(headings).toHaveLength(1);
    expect(headings[0]).not.toBe('');
    expect(await overflow(page)).toEqual([]);
    expect(await layoutShift(page)).toBeLessThan(NO_SHIFT);
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await foreignFaces(page)).toEqual([]);
    await enlarge(page);
    expect(await overflow(page)).toEqual([]);
    expect(await problems()).toEqual([]);
    await close();
  },
);
