// What can be measured on any open page.
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** Each accessibility violation as a sentence with the first elements that have it. */
export async function accessibilityFaults(page: Page): Promise<readonly string[]> {
  const { violations, passes } = await new AxeBuilder({ page }).setLegacyMode(true).analyze();
  if (passes.length === 0) return ['axe looked at nothing'];
  return violations.map(({ id, help, nodes }) => {
    const where = nodes.slice(0, 3).map(({ target }) => target.join(' '));
    return `${id}: ${help} (${nodes.length}: ${where.join(', ')})`;
  });
}

/** Letters twice as large, as somebody sets them who sees little. */
export const enlarge = (page: Page): Promise<void> =>
  page.evaluate(() => {
    document.documentElement.style.fontSize = '200%';
  });

/** Pixels by which the page is wider than the screen, and the elements that stick out. */
export function overflow(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const room = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= room) return [];
    const wide = [...document.body.querySelectorAll('*')].filter((one) => one.getBoundingClientRect().right > room + 1);
    const names = wide.slice(-3).map((one) => `${one.tagName.toLowerCase()}.${one.getAttribute('class') ?? ''}`);
    return [`${document.documentElement.scrollWidth} px wide on ${room} px: ${names.join(', ')}`];
  });
}

/** Below this a person sees nothing move: a line of text that moves by its own height makes more. */
export const NO_SHIFT = 0.001;

/** The sum of layout shifts so far. */
export const layoutShift = (page: Page): Promise<number> => page.evaluate(() => window.seen?.shift ?? Number.NaN);

/**
 * Faces of the machine, not of the site, that print something on the page when it is visited a second time: a face that
 * comes late is not used on the first. (The browser tells them element by element.)
 */
export async function foreignFaces(page: Page): Promise<readonly string[]> {
  await page.goto(page.url(), { waitUntil: 'networkidle' });
  const session = await page.context().newCDPSession(page);
  await session.send('DOM.enable');
  await session.send('CSS.enable');
  const { root } = await session.send('DOM.getDocument');
  const { nodeIds } = await session.send('DOM.querySelectorAll', { nodeId: root.nodeId, selector: 'body *' });
  const perElement = await Promise.all(
    nodeIds.map((nodeId) => session.send('CSS.getPlatformFontsForNode', { nodeId })),
  );
  await session.detach();
  const used = perElement.flatMap(({ fonts }) => fonts);
  if (used.length === 0) return ['nothing is printed'];
  return [...new Set(used.filter(({ isCustomFont }) => !isCustomFont).map(({ familyName }) => familyName))];
}

export interface Frame {
  readonly title: string;
  readonly lang: string;
  readonly headings: readonly string[];
  readonly text: string;
}

/** Title, language, first-level headings and the main text, as the page has them now. */
export async function frame(page: Page): Promise<Frame> {
  return {
    title: await page.title(),
    lang: (await page.locator('html').getAttribute('lang')) ?? '',
    headings: await page.locator('h1').allInnerTexts(),
    text: await page.locator('main').innerText(),
  };
}
