// Each figure of the course by keyboard alone: Tab reaches every control, each has a name, and keys set it.
import { describe, expect, test } from 'vitest';
import { wordsOf } from '../content/folder.ts';
import { type Opened, open } from './browser.ts';

type Page = Opened['page'];

/** The first lesson that shows each figure. */
const FIRST = new Map<string, string>();
for (const { id, data } of wordsOf('en', 'lessons')) {
  const figure = String(data['figure']);
  if (!FIRST.has(figure)) FIRST.set(figure, id);
}

const LIVE = '#figure astro-island';
const MOST_STOPS = 120;

/** What a person can set or press in the figure, in view; of radio buttons one stands for its group, as Tab has it. */
const controlsOf = (page: Page): Promise<readonly string[]> =>
  page.evaluate((live) => {
    const all = [
      ...document.querySelectorAll<HTMLElement | SVGElement>(
        `${live} :is(input, select, button, summary, a[href], [tabindex])`,
      ),
    ];
    const seen = all.filter(
      (one) => one.checkVisibility({ visibilityProperty: true }) && !one.matches(':disabled, [tabindex="-1"]'),
    );
    return [...new Set(seen.map((one) => (one.dataset.stop = keyOf(one, all))))];
    function keyOf(one: Element, among: readonly Element[]): string {
      return one instanceof HTMLInputElement && one.type === 'radio'
        ? `radio ${one.name}`
        : `${one.localName} ${among.indexOf(one)}`;
    }
  }, LIVE);

/** Goes through the figure by Tab, from what stands before it to what comes after. */
async function reached(page: Page): Promise<ReadonlySet<string>> {
  await page.locator('#figure .tries a').last().focus();
  const found = new Set<string>();
  for (let stop = 0; stop < MOST_STOPS; stop += 1) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate((live) => {
      const focused = document.activeElement;
      const inside = focused instanceof HTMLElement || focused instanceof SVGElement;
      return inside && focused.closest(live) !== null ? (focused.dataset['stop'] ?? 'unknown') : undefined;
    }, LIVE);
    if (at === undefined) return found;
    found.add(at);
  }
  throw new Error('Tab does not leave the figure');
}

/** What a control stands at, as a person would read it off. */
const standing = (page: Page, stop: string): Promise<string> =>
  page.evaluate((name) => {
    const group = [...document.querySelectorAll(`[data-stop="${name}"]`)];
    return group.map(told).join(' ');
    function told(one: Element): string {
      if (one instanceof HTMLInputElement && /radio|checkbox/.test(one.type)) return String(one.checked);
      if (one instanceof HTMLInputElement || one instanceof HTMLSelectElement) return one.value;
      return one.getAttribute('aria-valuetext') ?? one.getAttribute('aria-valuenow') ?? '';
    }
  }, stop);

/** Keys that change a control of this kind, one after the other until it stands otherwise. */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  checkbox: ['Space'],
  radio: ['ArrowDown', 'ArrowUp'],
  range: ['ArrowRight', 'ArrowLeft'],
  slider: ['ArrowRight', 'ArrowLeft'],
  select: ['ArrowDown', 'ArrowUp'],
};

const kindOf = (page: Page, stop: string): Promise<string> =>
  page.evaluate((name) => {
    const one = document.querySelector(`[data-stop="${name}"]`);
    if (one instanceof HTMLInputElement) return one.type;
    return one?.getAttribute('role') ?? one?.localName ?? '';
  }, stop);

/** Whether keys alone set it otherwise. */
async function obeys(page: Page, stop: string): Promise<boolean> {
  const one = page.locator(`[data-stop="${stop}"]`);
  const kind = await kindOf(page, stop);
  const before = await standing(page, stop);
  const chosen = kind === 'radio' ? page.locator(`[data-stop="${stop}"]:checked`) : one;
  for (const key of KEYS[kind] ?? []) {
    await chosen.first().focus();
    await page.keyboard.press(key);
    if ((await standing(page, stop)) !== before) return true;
  }
  return false;
}

const unnamed = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement | SVGElement>('[data-stop]')]
      .filter((one) => {
        const labels =
          one instanceof HTMLInputElement || one instanceof HTMLSelectElement ? [...(one.labels ?? [])] : [];
        const named = one
          .getAttribute('aria-labelledby')
          ?.split(' ')
          .map((id) => document.getElementById(id)?.textContent);
        const name = [one.getAttribute('aria-label'), ...(named ?? []), ...labels.map((label) => label.textContent)];
        return [...name, one.textContent].join('').trim() === '';
      })
      .map((one) => one.outerHTML),
  );

describe('By keyboard alone', () => {
  test.each([...FIRST])('the figure %s (in %s) is reached, named and set', async (_figure, lesson) => {
    const { page, problems, close } = await open(`en/learn/${lesson}/`);
    await page.locator(`${LIVE} :is(input, select, button)`).first().focus();
    await page.locator(`${LIVE}:not([ssr])`).waitFor();
    const controls = await controlsOf(page);
    expect(controls.length).toBeGreaterThan(0);
    const found = await reached(page);
    expect(controls.filter((one) => !found.has(one))).toEqual([]);
    expect(await unnamed(page)).toEqual([]);
    const disobeyed: string[] = [];
    for (const stop of controls) {
      const kind = await kindOf(page, stop);
      if (kind in KEYS && !(await obeys(page, stop))) disobeyed.push(`${kind} ${stop}`);
    }
    expect(disobeyed).toEqual([]);
    expect(await problems()).toEqual([]);
    await close();
  });
});
