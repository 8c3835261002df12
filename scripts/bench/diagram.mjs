// How long the diagram of a large layout takes, placed by the site itself, the first time on a page; and another division of it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';
import { seeded } from '../../tests/seeded.ts';
import { ROOT } from '../machine.mjs';

const SECTIONS = 60;
const JOINTS = 68;
const DISTRICTS = 4;
const DRAWN_MS = 100;
const RUNS = 5;
/** A phone's processor beside this one. */
const SLOWER = 4;
const STYLES = ['tokens', 'base', 'parts', 'diagram'];

/** A layout that hangs together as clubs build them, nothing of it placed by hand, in districts of neighbours. */
function club() {
  const draw = seeded(5);
  const sections = Array.from({ length: SECTIONS }, (_, i) => ({
    id: `s${i}`,
    name: `Section ${i}`,
    metres: 1,
    traffic: 1,
  }));
  const pairs = new Map();
  const join = (from, to) => pairs.set(`${from} ${to}`, { from: `s${from}`, to: `s${to}` });
  for (let i = 1; i < SECTIONS; i += 1) join(draw() < 0.75 ? i - 1 : Math.max(0, i - 1 - Math.floor(draw() * 8)), i);
  while (pairs.size < JOINTS) {
    const from = Math.floor(draw() * (SECTIONS - 10));
    join(from, from + 2 + Math.floor(draw() * 8));
  }
  const joints = [...pairs.values()].map((pair, i) => ({
    id: `j${i}`,
    ...pair,
    gap: 'possible',
    cut: 'none',
    awkward: 0,
  }));
  const stages = Array.from({ length: DISTRICTS }, (_, i) => ({
    id: `stage-${i}`,
    kind: i === 0 ? 'station' : 'booster',
  }));
  return { trains: [], supplies: [], sections, joints, stages };
}

/** The sheet in districts of neighbours; `moved`: the borders of them a few sections further on. */
const divided = (sheet, moved = 0) => ({
  ...sheet,
  districts: sheet.stages.map(({ id }, at) => ({
    stage: id,
    sections: sheet.sections
      .filter((_, i) => Math.floor(((i + moved) % SECTIONS) / (SECTIONS / DISTRICTS)) === at)
      .map((section) => section.id),
  })),
});

async function script() {
  const bundle = await rolldown({
    input: fileURLToPath(new URL('drawn-diagram.mjs', import.meta.url)),
    logLevel: 'silent',
    transform: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  });
  const { output } = await bundle.generate({ format: 'iife', minify: true });
  return output[0].code;
}

const row = (name, value) => ({
  name: `${name}, ${SECTIONS} sections, ${JOINTS} joints, processor time on one ${SLOWER} times slower`,
  value: `${value.toFixed(0)} ms`,
  demand: `≤ ${DRAWN_MS} ms`,
  ok: value <= DRAWN_MS,
});

/**
 * @param {import('playwright-core').Browser} browser
 * @param {object} phone
 * @param {(values: number[]) => number} middle
 */
export async function diagramRows(browser, phone, middle) {
  const sheet = club();
  const code = await script();
  const styles = STYLES.map((name) => readFileSync(join(ROOT, `src/styles/${name}.css`), 'utf8')).join('');
  const [first, drawnAhead, others] = [[], [], []];
  for (let i = 0; i < 2 * RUNS; i += 1) {
    const isAhead = i % 2 === 1;
    const context = await browser.newContext(phone);
    const page = await context.newPage();
    await page.setContent(`<!doctype html><html lang="en"><title>Diagram</title><style>${styles}</style><body></body>`);
    await page.addScriptTag({ content: code });
    const session = await context.newCDPSession(page);
    // Processor time of the page, not the clock's: what else the machine does meanwhile is no matter of the diagram.
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    const spent = async () => {
      const { metrics } = await session.send('Performance.getMetrics');
      return 1000 * (metrics.find(({ name }) => name === 'ThreadTime')?.value ?? Number.NaN);
    };
    const draw = async (one) => {
      const before = await spent();
      await page.evaluate((given) => window.drawDiagram(given), one);
      return SLOWER * ((await spent()) - before);
    };
    if (isAhead) await page.evaluate((given) => window.layOutAhead(given), divided(sheet));
    if (isAhead) drawnAhead.push(await draw({}));
    else first.push(await draw(divided(sheet)));
    // The same track, as when another way to divide it is looked at.
    const { districts } = divided(sheet, 7);
    others.push(await draw({ districts }));
    await context.close();
  }
  return [
    row('the diagram laid out and drawn at once', middle(first)),
    row('the diagram drawn that was laid out while the page loaded', middle(drawnAhead)),
    row('another division shown in it', middle(others)),
  ];
}
