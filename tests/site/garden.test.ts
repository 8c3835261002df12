// A layout that may stand in a garden: what mains voltage does in wet ground stands at the first step with the power on, on the screen.
import { expect, test } from 'vitest';
import { open } from './browser.ts';

const UNIT = 'unit-input=dc&unit-input-volts=24&unit-limit=5&unit-plug=centre-plus&unit-rails=follows';
const SUPPLY = 'supply-kind=dc&supply-volts=22&supply-plug=centre-plus';

test.each([
  ['that must be tested first', 5, 0],
  ['that surely trips', 8, 0],
])('large scale on a supply %s', async (_, amps, at) => {
  const { page, close } = await open(
    `en/work-it-out/enough-current/?scale=1&system=two-rail&modern=4&older=0&moving=2&supply-amps=${amps}&${SUPPLY}&${UNIT}`,
    { width: 360 },
  );
  await page.locator('.steps > li').first().waitFor({ state: 'attached' });
  const told = await page.locator('.steps > li').allTextContents();
  expect(told.length).toBeGreaterThan(2);
  expect(told.findIndex((step) => step.includes('In a garden, mains voltage kills'))).toBe(at);
  await close();
});
