// Two answers that hardly go together are pointed out in lines that can be read.
import { expect, test } from 'vitest';
import { open } from './browser.ts';
import { nothingIsWarm } from './danger.ts';
import { overflow } from './measure.ts';

const CONTRARY =
  'en/put-it-right/none-of-these/?told=yes&detectors-there=none&how-it-comes-back=never-off&lights-then=lit-not-obeying' +
  '&what-goes-dark=everything-at-once&when-it-happens=all-the-time&which-vehicles=one-vehicle';

test.each([360, 1280])('at %i px the words have the width of their frame', async (width) => {
  const { page, close } = await open(CONTRARY, { width });
  await nothingIsWarm(page);
  const notice = page.locator('.said .caution', { hasText: 'Two answers hardly go together.' });
  await notice.waitFor();
  const words = await notice.locator('p').boundingBox();
  const frame = await notice.boundingBox();
  expect(words?.width).toBeGreaterThan(0.8 * (frame?.width ?? Number.NaN));
  expect(words?.width).toBeGreaterThan(240);
  expect(words?.height).toBeLessThan(200);
  expect(await overflow(page)).toEqual([]);
  await close();
});
