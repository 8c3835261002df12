// The drawing and the division on the page of the layout sheet, in a browser: a worker divides, each way is shown at once, one is taken and
// undone; a joint is selected by keyboard and forbidden.
import { expect, test } from 'vitest';
import { open } from './browser.ts';
import { accessibilityFaults, overflow } from './measure.ts';

test('from the oval to a division in the sheet: looked at, taken, undone, and divided anew where a gap is forbidden', async () => {
  const { page, problems, close } = await open('en/layout-sheet/', { width: 360 });
  await page.getByRole('button', { name: 'A beginner’s oval', exact: true }).click();
  const drawing = page.getByRole('group', { name: /^The layout as a diagram. Arrow keys/ });
  await drawing.waitFor();
  await page.getByRole('button', { name: 'Divide it', exact: true }).click();
  const ways = page.getByRole('group', { name: 'Ways to divide it' });
  await ways.waitFor();
  const gaps = drawing.getByRole('button', { name: /both rails to be cut$/ });
  await gaps.nth(2).waitFor();
  expect(await gaps.count()).toBe(3);
  await ways.getByRole('radio', { name: 'Way 1' }).check();
  await gaps.nth(2).waitFor({ state: 'detached' });
  expect(await gaps.count()).toBe(2);
  await ways.getByRole('radio', { name: 'Take this one.' }).check();
  await gaps.nth(2).waitFor();
  expect(await gaps.count()).toBe(3);
  await page.getByRole('button', { name: 'Take this division' }).click();
  await page.getByText('This division is in your sheet.').waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Take this division' }).waitFor();

  await drawing
    .getByRole('button', { name: /^Section: / })
    .first()
    .focus();
  // Keys that come faster than the page draws still go on from where the last one led.
  await page.evaluate(() => {
    for (const key of ['ArrowRight', 'ArrowLeft']) {
      document.activeElement?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    }
  });
  await drawing.locator('[aria-label^="Section: "]:focus').waitFor();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  expect(await drawing.locator('[aria-pressed=true]').count()).toBe(1);
  await page.getByRole('radio', { name: 'never here' }).check();
  await page.getByText(/way found|ways found/).waitFor();
  expect(await drawing.getByRole('button', { name: /no gap possible$/ }).count()).toBe(1);
  // A division in the sheet that cannot be built any more is said to be so, and is not the one that is chosen.
  await page.getByRole('button', { name: 'Take this division' }).click();
  await page.getByText('This division is in your sheet.').waitFor();
  await gaps.first().focus();
  await page.keyboard.press('Enter');
  await page.getByRole('radio', { name: 'never here' }).check();
  await page.getByText('The division in your sheet cannot be built').waitFor();
  expect(await ways.getByRole('radio', { name: 'The division in your sheet' }).isChecked()).toBe(false);
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await overflow(page)).toEqual([]);
  expect(await problems()).toEqual([]);
  await close();
});
