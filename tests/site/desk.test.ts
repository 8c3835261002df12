// Every page on a wide screen in dark colours.
import { expect, test } from 'vitest';
import { open, pages } from './browser.ts';
import { accessibilityFaults, layoutShift, NO_SHIFT, overflow } from './measure.ts';

test.concurrent.each(pages())(
  '/%s on a desk fits, keeps still, keeps to itself and is accessible in the dark',
  async (path) => {
    const { page, problems, close } = await open(path, { width: 1280, dark: true });
    expect(await overflow(page)).toEqual([]);
    expect(await layoutShift(page)).toBeLessThan(NO_SHIFT);
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await problems()).toEqual([]);
    await close();
  },
);
