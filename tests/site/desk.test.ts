// Pages on a wide screen in dark colours.
import { expect, test } from 'vitest';
import { open, pages } from './browser.ts';
import { accessibilityFaults, layoutShift, NO_SHIFT, overflow } from './measure.ts';
import { fewOf } from './some.ts';

/** Fixes, complaints and lessons are each made alike and looked at on a phone; lessons.test.ts opens all that folds in a lesson. */
const LOOKED_AT = fewOf(
  fewOf(
    fewOf(pages(), (path) => path.includes('/fixes/'), 6),
    (path) => path.includes('/put-it-right/'),
    4,
  ),
  (path) => path.includes('/learn/'),
  5,
);

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

test('what was said of two units and two supplies is whole on a desk: nothing of it is hidden in a box of its own', async () => {
  const unit = (name: string) =>
    `${name}-limit=3&${name}-input=dc&${name}-input-volts=16&${name}-plug=centre-plus&${name}-rails=set&${name}-rail-volts=14`;
  const supply = (name: string) => `${name}-kind=dc&${name}-volts=16&${name}-amps=4&${name}-plug=centre-plus`;
  const told = ['system=two-rail&scale=h0', unit('station'), unit('booster'), supply('one'), supply('two')].join('&');
  const { page, close } = await open(`en/work-it-out/which-supply-where/?${told}`, { width: 1280 });
  await page.locator('#answer').waitFor();
  const said = page.locator('.wizard > .said');
  expect(await said.locator('li').count()).toBeGreaterThan(20);
  expect(await said.evaluate((box) => box.scrollHeight - box.clientHeight)).toBeLessThanOrEqual(1);
  await said.locator('li').last().scrollIntoViewIfNeeded();
  expect(await said.locator('li').last().boundingBox()).toMatchObject({ y: expect.any(Number) });
  await close();
});
