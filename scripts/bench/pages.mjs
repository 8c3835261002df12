// What a page weighs and how fast it is on a throttled phone: 150 ms away, 1.6 Mbit/s, a processor four times slower. And the
// engine's networks in the browser's own runtime.
import { globSync, readFileSync } from 'node:fs';
import { stripTypeScriptTypes } from 'node:module';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { WIZARD_IDS } from '../../src/wizards/index.ts';
import { chromiumOptions, ROOT } from '../machine.mjs';
import { serve } from '../serve.mjs';
import { diagramRows } from './diagram.mjs';

const KIB = 1024;
const RUNS = 3;

const PAGES = [
  { path: 'en/fixes/larger-supply/', kib: 25, scripts: 0 },
  ...WIZARD_IDS.map((id) => ({ path: `en/work-it-out/${id}/`, kib: 70 })),
  { path: 'en/put-it-right/trips-at-gap/', kib: 70 },
];

/** A figure of each kind. All lessons are weighed, and the heaviest is measured beside these. */
const LESSONS = [
  'en/learn/no-single-number/',
  'en/learn/voltage-along-the-track/',
  'en/learn/one-train-two-supplies/',
  'en/learn/what-both-sides-carry/',
  'en/learn/drive-across-the-gap/',
];
const LESSON_KIB = 60;

/** The yardstick: what the machine makes of a page with next to nothing on it. */
const EMPTY = '/yardstick/';
const EMPTY_PAGE = '<!doctype html><html lang="en"><title>Yardstick</title><h1>Yardstick</h1></html>';

/** The fix page once more as a second page, in the site's own faces, which the first one kept. */
const IN_OWN_FACES = 'en/fixes/larger-supply/';

const LARGEST_PAINT = 700;
const BLOCKING = 100;

const PHONE = {
  viewport: { width: 390, height: 780 },
  deviceScaleFactor: 2,
  isMobile: true,
  hasTouch: true,
  serviceWorkers: 'block',
};
const NETWORK = { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 94_000 };

/** Runs in the page, before anything else. */
function watch() {
  const seen = { paint: 0, shift: 0, blocking: 0 };
  window.seen = seen;
  const on = (type, note) =>
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) note(entry);
    }).observe({ type, buffered: true });
  on('largest-contentful-paint', ({ startTime }) => {
    seen.paint = startTime;
  });
  on('layout-shift', ({ value }) => {
    seen.shift += value;
  });
  on('longtask', ({ duration }) => {
    seen.blocking += Math.max(0, duration - 50);
  });
}

/** Adds up what comes over the wire, headers included, faces apart. */
function weigh(session) {
  const types = new Map();
  const weight = { bytes: 0, faces: 0, scripts: 0 };
  session.on('Network.requestWillBeSent', ({ requestId, type }) => {
    types.set(requestId, type);
    if (type === 'Script') weight.scripts += 1;
  });
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    weight[types.get(requestId) === 'Font' ? 'faces' : 'bytes'] += encodedDataLength;
  });
  return weight;
}

/** One visit of an address on the throttled phone; `before` it another page, which keeps the faces. */
export async function visit(browser, address, before) {
  const context = await browser.newContext(PHONE);
  if (address.endsWith(EMPTY)) {
    await context.route(`**${EMPTY}`, (route) => route.fulfill({ contentType: 'text/html', body: EMPTY_PAGE }));
  }
  await context.addInitScript(watch);
  const page = await context.newPage();
  if (before !== undefined) {
    await page.goto(before, { waitUntil: 'load' });
    await page.waitForFunction(() => localStorage.getItem('both-rails-faces') === '1');
  }
  const session = await context.newCDPSession(page);
  await session.send('Network.enable');
  const weight = weigh(session);
  await session.send('Network.emulateNetworkConditions', NETWORK);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const answer = await page.goto(address, { waitUntil: 'networkidle' });
  if (answer?.status() !== 200) throw new Error(`${address} answered ${answer?.status()}`);
  const seen = await page.evaluate(() => window.seen);
  await context.close();
  if (seen.paint === 0 || (weight.bytes === 0 && !address.endsWith(EMPTY)))
    throw new Error(`${address}: nothing was measured`);
  return { ...weight, ...seen };
}

export const middle = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

async function measure(browser, address, before) {
  const visits = [];
  for (let i = 0; i < RUNS; i += 1) visits.push(await visit(browser, address, before));
  return Object.fromEntries(Object.keys(visits[0]).map((key) => [key, middle(visits.map((one) => one[key]))]));
}

function rowsOf({ path, kib, scripts }, seen) {
  const row = (name, value, most, unit, digits = 0) => ({
    name: `${path} ${name}`,
    value: `${value.toFixed(digits)} ${unit}`.trim(),
    demand: `≤ ${most} ${unit}`.trim(),
    ok: value <= most,
  });
  return [
    row('over the wire', seen.bytes / KIB, kib, 'KiB', 1),
    ...(scripts === undefined ? [] : [row('scripts', seen.scripts, scripts, '')]),
    row('largest paint', seen.paint, LARGEST_PAINT, 'ms'),
    row('layout shift', seen.shift, 0, '', 4),
    row('blocking time', seen.blocking, BLOCKING, 'ms'),
  ];
}

/** An answered wizard, so that there is a what-if slider to move. */
const ANSWERED =
  'en/work-it-out/enough-current/?accessories=0&aim=enough&coaches=0&draw=count&evening=2&modern=4&moving=3&older=2&own-use=bare&scale=h0' +
  '&sound=0&stored=0&supply-amps=2&supply-kind=dc&supply-plug=unknown&supply-volts=16&system=two-rail&unit-input=dc&unit-input-volts=18' +
  '&unit-limit=3&unit-plug=unknown&unit-rails=follows';
const FRAME = 1000 / 60;

/** Runs in the page: moves the slider and gives the milliseconds until what the trial comes to has changed. */
function moveSlider() {
  const slider = document.querySelector('#what-if-moving');
  const figure = document.querySelector('.trial');
  return new Promise((done) => {
    const start = performance.now();
    new MutationObserver((_, observer) => {
      observer.disconnect();
      done(performance.now() - start);
    }).observe(figure, { attributes: true, childList: true, subtree: true });
    slider.value = String(slider.valueAsNumber === 3 ? 4 : 3);
    slider.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
}

async function sliderRow(browser, address) {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  await page.goto(address, { waitUntil: 'networkidle' });
  await page.locator('.histogram').waitFor();
  const times = [];
  for (let i = 0; i < 15; i += 1) {
    times.push(await page.evaluate(moveSlider));
    await page.waitForTimeout(250);
  }
  await context.close();
  const value = middle(times);
  return {
    name: 'what-if slider to what it comes to, processor not throttled',
    value: `${value.toFixed(1)} ms`,
    demand: `≤ ${FRAME.toFixed(1)} ms`,
    ok: value <= FRAME,
  };
}

/** Runs in the page: moves a feeder of the figure and gives the milliseconds until the line has changed. */
function moveFeeder() {
  const slider = document.querySelector('#what-if-along-feed-1');
  const line = document.querySelector('.along .curve');
  return new Promise((done) => {
    const start = performance.now();
    new MutationObserver((_, observer) => {
      observer.disconnect();
      done(performance.now() - start);
    }).observe(line, { attributes: true });
    slider.value = String(slider.valueAsNumber === 3 ? 2 : 3);
    slider.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
}

const FIGURE = 'en/learn/voltage-along-the-track/';

async function feederRow(browser, address) {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  await page.goto(`${address}${FIGURE}`, { waitUntil: 'networkidle' });
  await page.locator('.along .curve').scrollIntoViewIfNeeded();
  await page.locator('#what-if-along-feed-1').waitFor();
  await page.evaluate(moveFeeder);
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const times = [];
  for (let i = 0; i < 25; i += 1) {
    times.push(await page.evaluate(moveFeeder));
    await page.waitForTimeout(150);
  }
  await context.close();
  const value = middle(times);
  return {
    name: 'a feeder moved to the new line, processor four times slower',
    value: `${value.toFixed(1)} ms`,
    demand: `≤ ${FRAME.toFixed(1)} ms`,
    ok: value <= FRAME,
  };
}

/** Runs in the page: taps a link that sets the figure and gives the milliseconds until the line has changed. */
function tapSet(place) {
  const line = document.querySelector('.along .curve');
  return new Promise((done) => {
    const start = performance.now();
    new MutationObserver((_, observer) => {
      observer.disconnect();
      requestAnimationFrame(() => done(performance.now() - start));
    }).observe(line, { attributes: true });
    document.querySelectorAll('.tries a[data-set]')[place].click();
  });
}

async function setRow(browser, address) {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  await page.goto(`${address}${FIGURE}`, { waitUntil: 'networkidle' });
  await page.locator('.along .curve').scrollIntoViewIfNeeded();
  await page.locator('#what-if-along-feed-1').waitFor();
  await page.evaluate(tapSet, 2);
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const times = [];
  // The second and the third have feeders at other places, so that the line is another one each time.
  for (let i = 0; i < 14; i += 1) {
    times.push(await page.evaluate(tapSet, 1 + (i % 2)));
    await page.waitForTimeout(400);
  }
  await context.close();
  const value = middle(times);
  return {
    name: `a tap on “Set the figure so” to the new line, ${times.length} taps, processor four times slower`,
    value: `${value.toFixed(1)} ms`,
    demand: `≤ ${TAP} ms`,
    ok: value <= TAP,
  };
}

/** What a lesson weighs as it opens. */
async function weightOf(browser, address) {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Network.enable');
  const weight = weigh(session);
  await page.goto(address, { waitUntil: 'networkidle' });
  await context.close();
  return weight.bytes / KIB;
}

/** The course: each lesson weighed, some measured whole, and the tap that sets a figure. */
async function courseRows(browser, address, folder) {
  const weighed = [];
  for (const file of globSync('en/learn/*/index.html', { cwd: folder })) {
    const path = file.replaceAll('\\', '/').replace('index.html', '');
    weighed.push({ path, kib: await weightOf(browser, `${address}${path}`) });
  }
  weighed.sort((a, b) => b.kib - a.kib);
  const [{ path, kib }] = weighed;
  const rows = [
    {
      name: `every lesson over the wire, ${weighed.length} of them from ${weighed.at(-1).kib.toFixed(1)} KiB; the heaviest: ${path}`,
      value: `${kib.toFixed(1)} KiB`,
      demand: `≤ ${LESSON_KIB} KiB`,
      ok: kib <= LESSON_KIB,
    },
  ];
  for (const lesson of new Set([...LESSONS, path]))
    rows.push(...rowsOf({ path: lesson, kib: LESSON_KIB }, await measure(browser, `${address}${lesson}`)));
  return [...rows, await setRow(browser, address)];
}

/** A walk: danger is asked first, then each tap opens another question, until something is proposed. */
const TOLD = '?told=yes&tools=lamps.multimeter.wire';
const WALK = `en/put-it-right/jerks-at-gap/${TOLD}`;
const TAP = 50;
const QUESTIONS = 6;
/** Walks that differ in what they ask and in whether it has a picture. */
const WHOLE = ['jerks-at-gap', 'trips-at-gap', 'stops-at-gap', 'all-slow', 'accessories-misbehave', 'none-of-these'];
const WALK_KIB = 130;

/** Runs in the page: taps an answer and gives the milliseconds until something else stands there. */
function tapAnswer(place) {
  const asked = document.querySelector('.walk h1').textContent;
  return new Promise((done) => {
    const start = performance.now();
    const watch = new MutationObserver(() => {
      const now = document.querySelector('.walk h1');
      if (now === null || now.textContent === asked) return;
      watch.disconnect();
      requestAnimationFrame(() => done(performance.now() - start));
    });
    watch.observe(document.body, { childList: true, subtree: true, characterData: true });
    const buttons = document.querySelectorAll('.answers button');
    buttons[Math.min(place, buttons.length - 1)].click();
  });
}

/** Goes from the first question on and gives the time of each tap after the one about danger. */
async function walk(page, address, rate) {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  await page.goto(address, { waitUntil: 'networkidle' });
  await page.evaluate(tapAnswer, 0);
  await page.waitForLoadState('networkidle');
  await session.send('Emulation.setCPUThrottlingRate', { rate });
  const times = [];
  while (times.length < QUESTIONS && (await page.locator('.answers').count()) > 0) {
    times.push(await page.evaluate(tapAnswer, times.length % 2));
    await page.waitForTimeout(500);
  }
  if (times.length === 0) throw new Error(`${address}: no question was asked`);
  return times;
}

async function tapRow(browser, address) {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  // The first walk warms up, as the questions before it would have.
  await walk(page, `${address}${WALK}`, 1);
  const times = await walk(page, `${address}${WALK}`, 4);
  await context.close();
  const value = middle(times);
  return {
    name: `a tap to the next question, ${times.length} taps, processor four times slower`,
    value: `${value.toFixed(1)} ms`,
    demand: `≤ ${TAP} ms`,
    ok: value <= TAP,
  };
}

/** From danger to what is asked or proposed after the last answer, nothing in a person's own words. */
async function wholeWalk(browser, address) {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Network.enable');
  const weight = weigh(session);
  const { length } = await walk(page, address, 1);
  await page.waitForLoadState('networkidle');
  await context.close();
  return { questions: length + 1, kib: weight.bytes / KIB };
}

async function wholeWalkRow(browser, address) {
  const walks = [];
  for (const complaint of WHOLE) {
    walks.push({ complaint, ...(await wholeWalk(browser, `${address}en/put-it-right/${complaint}/${TOLD}`)) });
  }
  const { complaint, questions, kib } = walks.toSorted((a, b) => b.kib - a.kib)[0];
  return {
    name: `a whole walk over the wire, heaviest of ${walks.length}: ${complaint}, ${questions} questions`,
    value: `${kib.toFixed(1)} KiB`,
    demand: `≤ ${WALK_KIB} KiB`,
    ok: kib <= WALK_KIB,
  };
}

/** The longest task from the first answer to the second question, nothing of it done before: script, model and words come meanwhile. */
async function readyRow(browser, address) {
  const tasks = [];
  for (let i = 0; i < RUNS; i += 1) {
    const context = await browser.newContext(PHONE);
    await context.addInitScript(watch);
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await page.goto(address, { waitUntil: 'networkidle' });
    await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
    await page.evaluate(() => {
      window.seen.task = 0;
    });
    await page.evaluate(tapAnswer, 0);
    await page.locator('.answers').waitFor();
    await page.waitForTimeout(500);
    tasks.push(await page.evaluate(() => window.seen.task));
    await context.close();
  }
  const value = middle(tasks);
  return {
    name: 'from the first answer of a walk to its second question: longest task, processor four times slower',
    value: `${value.toFixed(0)} ms`,
    demand: `≤ ${LONG_TASK} ms`,
    ok: value <= LONG_TASK,
  };
}

const MODULES = '/modules/';
const LIBRARY = 'node_modules/mathjs/lib/browser/math.js';
const MODULE_PAGE = `<!doctype html><html lang="en"><title>Networks</title><script src="${MODULES}${LIBRARY}"></script></html>`;

/** The files of the project as a browser takes them: types taken out. */
function moduleOf(path) {
  if (path === '') return { contentType: 'text/html', body: MODULE_PAGE };
  const text = readFileSync(join(ROOT, path), 'utf8');
  return { contentType: 'text/javascript', body: path.endsWith('.ts') ? stripTypeScriptTypes(text) : text };
}

/** The networks of the engine bench, in the browser. */
async function networkRows(browser, address) {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  await context.route(`**${MODULES}**`, (route) =>
    route.fulfill(moduleOf(new URL(route.request().url()).pathname.slice(MODULES.length))),
  );
  const page = await context.newPage();
  await page.goto(`${address}${MODULES.slice(1)}`);
  const rows = await page.evaluate(async (module) => {
    const { networks } = await import(module);
    return networks(window.math);
  }, `${MODULES}scripts/bench/networks.mjs`);
  await context.close();
  return rows.map(({ name, ours, yardstick, ratio, demand, ok }) => ({
    name: `in the browser: ${name}`,
    value: `${ours} against ${yardstick}, ${ratio} times`,
    demand,
    ok,
  }));
}

/**
 * Measures the course alone.
 * @param {string} folder
 */
export async function runCourse(folder) {
  const site = await serve({ folder, brotli: false });
  const browser = await chromium.launch(chromiumOptions());
  try {
    return await courseRows(browser, site.address, folder);
  } finally {
    await browser.close();
    await site.close();
  }
}

/**
 * Measures the fixed pages of the built site in `folder`.
 * @param {string} folder
 * @returns {Promise<{ name: string, value: string, demand: string, ok: boolean }[]>}
 */
export async function run(folder) {
  const site = await serve({ folder, brotli: false });
  const browser = await chromium.launch(chromiumOptions());
  try {
    const rows = [];
    const empty = await measure(browser, `${site.address}${EMPTY.slice(1)}`);
    for (const [name, value] of [
      ['largest paint', empty.paint],
      ['blocking time', empty.blocking],
    ]) {
      rows.push({
        name: `an empty page, for comparison: ${name}`,
        value: `${value.toFixed(0)} ms`,
        demand: '',
        ok: true,
      });
    }
    const second = await measure(browser, `${site.address}${IN_OWN_FACES}`, `${site.address}en/`);
    rows.push({
      name: `${IN_OWN_FACES} as a second page, in our own faces, for comparison: largest paint, blocking time`,
      value: `${second.paint.toFixed(0)} ms, ${second.blocking.toFixed(0)} ms`,
      demand: '',
      ok: true,
    });
    for (const page of PAGES) rows.push(...rowsOf(page, await measure(browser, `${site.address}${page.path}`)));
    rows.push(...(await courseRows(browser, site.address, folder)));
    rows.push(await sliderRow(browser, `${site.address}${ANSWERED}`));
    rows.push(await feederRow(browser, site.address));
    rows.push(await tapRow(browser, site.address));
    rows.push(await readyRow(browser, `${site.address}${WALK}`));
    rows.push(await wholeWalkRow(browser, site.address));
    rows.push(...(await networkRows(browser, site.address)));
    rows.push(...(await diagramRows(browser, PHONE, middle)));
    return rows;
  } finally {
    await browser.close();
    await site.close();
  }
}
