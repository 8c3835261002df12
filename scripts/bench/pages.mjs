// What a page weighs and how fast it is on a throttled phone: 150 ms away, 1.6 Mbit/s, a processor four times slower.
import { chromium } from 'playwright-core';
import { chromiumOptions } from '../machine.mjs';
import { serve } from '../serve.mjs';

const KIB = 1024;
const RUNS = 3;

const PAGES = [
  { path: 'en/fixes/larger-supply/', kib: 25, scripts: 0 },
  { path: 'en/learn/no-single-number/', kib: 60 },
  { path: 'en/work-it-out/enough-current/', kib: 70 },
];

/** The yardstick: what the machine makes of a page with next to nothing on it. */
const EMPTY = '/yardstick/';
const EMPTY_PAGE = '<!doctype html><html lang="en"><title>Yardstick</title><h1>Yardstick</h1></html>';

const LARGEST_PAINT = 700;
const LONG_TASK = 50;

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
  const seen = { paint: 0, shift: 0, task: 0 };
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
    seen.task = Math.max(seen.task, duration);
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

async function visit(browser, address) {
  const context = await browser.newContext(PHONE);
  if (address.endsWith(EMPTY)) {
    await context.route(`**${EMPTY}`, (route) => route.fulfill({ contentType: 'text/html', body: EMPTY_PAGE }));
  }
  await context.addInitScript(watch);
  const page = await context.newPage();
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

const middle = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

async function measure(browser, address) {
  const visits = [];
  for (let i = 0; i < RUNS; i += 1) visits.push(await visit(browser, address));
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
    row('longest task', seen.task, LONG_TASK, 'ms'),
  ];
}

/** An answered wizard, so that there is a what-if slider to move. */
const ANSWERED =
  'en/work-it-out/enough-current/?accessories=0&aim=enough&coaches=0&draw=count&evening=2&modern=4&moving=3&older=2&own-use=bare&scale=h0' +
  '&sound=0&stored=0&supply-amps=2&supply-kind=dc&supply-plug=unknown&supply-volts=16&system=two-rail&unit-input=dc&unit-input-volts=18' +
  '&unit-limit=3&unit-plug=unknown&unit-rails=follows';
const FRAME = 1000 / 60;

/** Runs in the page: moves the slider and gives the milliseconds until the figure has changed. */
function moveSlider() {
  const slider = document.querySelector('#what-if-moving');
  const figure = document.querySelector('.histogram');
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
    name: 'what-if slider to new figure, processor not throttled',
    value: `${value.toFixed(1)} ms`,
    demand: `≤ ${FRAME.toFixed(1)} ms`,
    ok: value <= FRAME,
  };
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
      ['longest task', empty.task],
    ]) {
      rows.push({
        name: `an empty page, for comparison: ${name}`,
        value: `${value.toFixed(0)} ms`,
        demand: '',
        ok: true,
      });
    }
    for (const page of PAGES) rows.push(...rowsOf(page, await measure(browser, `${site.address}${page.path}`)));
    rows.push(await sliderRow(browser, `${site.address}${ANSWERED}`));
    return rows;
  } finally {
    await browser.close();
    await site.close();
  }
}
