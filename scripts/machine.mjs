// What the scripts need to know about the machine they run on.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('..', import.meta.url));

const NEEDED_NODE = [22, 14];

/** Ends the process with a sentence when this Node is too old to build the site. */
export function assertNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > NEEDED_NODE[0] || (major === NEEDED_NODE[0] && minor >= NEEDED_NODE[1])) return;
  console.error(
    `Node ${process.versions.node} is too old: ${NEEDED_NODE.join('.')} or newer is needed. On most machines npm ci ` +
      'brings one along; install without --omit=optional, or install a newer Node.',
  );
  process.exit(1);
}

/** Where Chromium may be, in the order of preference. */
const CHROMIUM = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** @returns {string | undefined} */
export const findChromium = () => CHROMIUM.find((path) => path !== undefined && existsSync(path));

const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // Letters as wide as the whole browser draws them.
  '--font-render-hinting=none',
];

/** Chromium without the programs around its pages: a new visitor costs it a tenth of the work. */
export const HEADLESS_SHELL = '/usr/bin/chromium-headless-shell';

/** @param {string | undefined} executablePath */
function started(executablePath) {
  if (executablePath === undefined) throw new Error('Chromium was not found: install it, or set CHROMIUM to its path');
  return { executablePath, args: CHROMIUM_FLAGS };
}

/** How playwright-core starts the machine's Chromium. */
export const chromiumOptions = () => started(findChromium());

/** How playwright-core starts what looks at very many pages, each as a new visitor: the shell of Chromium where there is one. */
export const manyVisitsOptions = () =>
  started(process.env.CHROMIUM === undefined && existsSync(HEADLESS_SHELL) ? HEADLESS_SHELL : findChromium());

/** @param {string} name */
export const hasCommand = (name) => spawnSync(name, ['--version'], { stdio: 'ignore' }).error === undefined;

const quietAstro = { ASTRO_TELEMETRY_DISABLED: '1' };

/**
 * Runs a Node script of the project in the project's own Node.
 * @param {readonly string[]} args
 * @param {{ env?: Record<string, string>, stdio?: import('node:child_process').StdioOptions }} [options]
 */
export const startNode = (args, { env = {}, stdio = 'inherit' } = {}) =>
  spawn(process.execPath, args, { cwd: ROOT, stdio, env: { ...process.env, ...quietAstro, ...env } });

export const ASTRO = 'node_modules/astro/bin/astro.mjs';

/**
 * Calls `stop` once when the process is told to end, or when the npm that started it is gone: npm ends its shell only,
 * and what runs inside would live on.
 * @param {() => void} stop
 */
export function stopWithParent(stop) {
  const parent = process.ppid;
  let stopped = false;
  const once = () => {
    if (stopped) return;
    stopped = true;
    stop();
  };
  setInterval(() => {
    if (process.ppid !== parent) once();
  }, 250).unref();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, once);
}
