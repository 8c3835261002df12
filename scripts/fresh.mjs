// npm run fresh: what a stranger does. Clones the last commit into a temporary folder, runs npm start there, opens the
// site in a browser, takes it down, runs npm test there. Changes that are not committed are not in it.
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { stripVTControlCharacters } from 'node:util';
import { chromium } from 'playwright-core';
import { assertNode, chromiumOptions, ROOT } from './machine.mjs';

assertNode();

const MOST_MINUTES = 5;

/** The environment of a person's own shell: without what npm adds for this project. */
const plainEnvironment = () => {
  const entries = Object.entries(process.env).filter(([name]) => !/^npm_/i.test(name) && name !== 'INIT_CWD');
  const path = (process.env.PATH ?? '').split(delimiter).filter((folder) => !folder.includes('node_modules'));
  return { ...Object.fromEntries(entries), PATH: path.join(delimiter) };
};

const env = plainEnvironment();
const folder = mkdtempSync(join(tmpdir(), 'both-rails-fresh-'));
const clone = join(folder, 'both-rails');

function sure(sentence, holds) {
  if (!holds) throw new Error(sentence);
  console.log(`${sentence}: yes`);
}

/** The address that npm start prints, once it does. */
function addressOf(start) {
  return new Promise((done, fail) => {
    let printed = '';
    start.stdout.on('data', (text) => {
      printed += text;
      process.stdout.write(text);
      const [address] = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(stripVTControlCharacters(printed)) ?? [];
      if (address !== undefined) done(address);
    });
    start.on('exit', (code) => fail(new Error(`npm start ended with ${code} before it served anything`)));
    setTimeout(
      () => fail(new Error(`npm start served nothing within ${MOST_MINUTES} minutes`)),
      MOST_MINUTES * 60_000,
    ).unref();
  });
}

async function heading(address) {
  const browser = await chromium.launch(chromiumOptions());
  try {
    const page = await browser.newPage();
    await page.goto(address);
    return (await page.locator('h1').textContent()) ?? '';
  } finally {
    await browser.close();
  }
}

const answers = (address) =>
  fetch(address).then(
    ({ status }) => status === 200,
    () => false,
  );

async function tryStart() {
  const since = performance.now();
  const start = spawn('npm', ['start'], {
    cwd: clone,
    env: { ...env, PORT: '4390' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    const address = await addressOf(start);
    console.log(`npm start served after ${((performance.now() - since) / 1000).toFixed(0)} s`);
    sure(`${address} answers`, await answers(address));
    sure('its first page has a heading in a browser', (await heading(address)) !== '');
    start.kill('SIGTERM');
    await wait(2000);
    sure('nothing is left running after npm start was ended', !(await answers(address)));
  } finally {
    start.kill('SIGTERM');
  }
}

try {
  const git = spawnSync('git', ['clone', '--quiet', ROOT, clone], { stdio: 'inherit' });
  sure('the project clones', git.status === 0);
  await tryStart();
  const test = spawnSync('npm', ['test'], { cwd: clone, env, stdio: 'inherit' });
  sure('npm test passes in the clone', test.status === 0);
} catch (error) {
  console.error(`FAILED: ${error.message}`);
  process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
