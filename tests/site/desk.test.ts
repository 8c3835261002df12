// Pages on a wide screen in dark colours.
import { expect, test } from 'vitest';
import { open, pages } from './browser.ts';
import { accessibilityFaults, layoutShift, NO_SHIFT, overflow } from './measure.ts';

/** Fix pages are made alike and each is looked at on a phone: of them every sixth, of all others every one. */
const LOOKED_AT = pages().filter((path, index) => !path.includes('/fixes/') || index % 6 === 0);

test.concurrent.each(LOOKED_AT)(
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
