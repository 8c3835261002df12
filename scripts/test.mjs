// npm test: everything that says whether the site is right, part by part, with one table at the end.
// `npm test -- types unit` runs the named parts only.
import { spawnSync } from 'node:child_process';
import { existsSync, globSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { styleText } from 'node:util';
import {
  ASTRO,
  assertNode,
  findChromium,
  HEADLESS_SHELL,
  hasCommand,
  ROOT,
  startNode,
  stopWithParent,
} from './machine.mjs';

assertNode();

const SUB_PATH = '/club/power/';
const SUB_PATH_FOLDER = 'reports/sub-path';
const MADE_UP_FOLDER = 'reports/made-up';
const SLOW_BUILD = 20;
/** Browser tests that may need their second try: one more and they hang together with something else than chance. */
const MOST_AGAIN = 5;
const VITEST = 'node_modules/vitest/vitest.mjs';

let running;
stopWithParent(() => {
  running?.kill();
  process.exit(130);
});

/** Runs a Node script and gives its exit code and everything it printed. */
function run(args, env = {}) {
  return new Promise((done) => {
    running = startNode(args, { env: { NO_COLOR: '1', ...env }, stdio: ['ignore', 'pipe', 'pipe'] });
    let printed = '';
    for (const stream of [running.stdout, running.stderr]) {
      stream.setEncoding('utf8');
      stream.on('data', (text) => {
        printed += text;
      });
    }
    running.on('close', (code) => done({ ok: code === 0, printed }));
  });
}

/** A part that is one check. */
const single = (name, { ok, printed }, note = '') => [{ name, passed: ok ? 1 : 0, failed: ok ? 0 : 1, note, printed }];

const couldNotRun = (name, why) => [
  { name, passed: 0, failed: process.env.CI ? 1 : 0, note: `COULD NOT RUN: ${why}`, printed: '' },
];

/** The tests of a vitest report, counted by folder of tests. */
function countByFolder(report) {
  const counts = new Map();
  for (const { name, assertionResults, status, message } of report.testResults) {
    const [, folder] = relative(ROOT, name).split(/[\\/]/);
    const key = folder.replace(/\.test\.ts$/, '');
    const count = counts.get(key) ?? { passed: 0, failed: 0, skipped: 0, again: [] };
    for (const { status: one, failureMessages, fullName } of assertionResults) {
      count[one === 'passed' || one === 'failed' ? one : 'skipped'] += 1;
      if (one === 'passed' && failureMessages.length > 0) {
        count.again.push({ fullName, why: failureMessages[0].split('\n')[0] });
      }
    }
    if (status === 'failed' && !assertionResults.some(({ status: one }) => one === 'failed')) count.failed += 1;
    counts.set(key, { ...count, message });
  }
  return counts;
}

/** Runs vitest projects and gives one row per folder of tests. Each of `expected` has to have run at least one test. */
async function tests(projects, expected, env = {}) {
  const file = `reports/${projects.join('-')}.json`;
  rmSync(join(ROOT, file), { force: true });
  const chosen = projects.flatMap((project) => ['--project', project]);
  const args = [VITEST, 'run', ...chosen, '--reporter=dot', '--reporter=json', `--outputFile.json=${file}`];
  const { ok, printed } = await run(args, env);
  if (!existsSync(join(ROOT, file)))
    return single(projects.join(', '), { ok: false, printed }, 'no report was written');
  const counts = countByFolder(JSON.parse(readFileSync(join(ROOT, file), 'utf8')));
  for (const folder of expected)
    if (!counts.has(folder)) counts.set(folder, { passed: 0, failed: 1, skipped: 0, again: [], missing: true });
  const rows = [...counts].map(([folder, count]) => testRow(folder, count));
  if (!ok && rows.every(({ failed }) => failed === 0))
    rows.push(...single('vitest', { ok: false, printed: '' }, 'ended with an error'));
  const failed = rows.find((row) => row.failed > 0);
  if (failed !== undefined) failed.printed = printed;
  return rows;
}

function testRow(folder, { passed, failed, skipped, again, missing }) {
  const notes = [];
  const tooOften = again.length > MOST_AGAIN;
  if (again.length > 0) {
    notes.push(`${again.length} PASSED ONLY WHEN RUN AGAIN${tooOften ? `, more than ${MOST_AGAIN}` : ''}`);
  }
  if (missing) notes.push('no test was found');
  if (skipped > 0) notes.push(`${skipped} COULD NOT RUN`);
  return {
    name: `tests/${folder}`,
    passed,
    failed: failed + (process.env.CI ? skipped : 0) + (tooOften ? 1 : 0),
    note: notes.join('; '),
    again,
    printed: '',
  };
}

async function types() {
  const pages = await run([ASTRO, 'check', '--minimumFailingSeverity', 'warning']);
  const engine = await run(['node_modules/typescript/bin/tsc', '-p', 'src/engine']);
  const worker = await run(['node_modules/typescript/bin/tsc', '-p', 'src/offline']);
  return [
    ...single('types', pages),
    ...single('types of the engine alone', engine),
    ...single('types of the worker that keeps a copy', worker),
  ];
}

const lint = async () =>
  single(
    'lint and format',
    await run(['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '--max-diagnostics=60', '.']),
  );

async function unit() {
  const rows = await tests(
    ['rooms', 'engine', 'wizards', 'judge', 'content', 'reference'],
    ['rooms', 'engine', 'wizards', 'judge', 'content', 'reference'],
  );
  const { LANGUAGES } = await import('../src/components/words/languages.ts');
  const { lackingLine } = await import('./check/lacking.mjs');
  const content = rows.find(({ name }) => name === 'tests/content');
  if (content !== undefined) {
    content.note = [content.note, ...LANGUAGES.map(({ id }) => lackingLine(id))].filter(Boolean).join('; ');
  }
  return hasCommand('ngspice') ? rows : [...rows, ...couldNotRun('circuits by ngspice', 'ngspice is not installed')];
}

/** Changes in one room, drawn by the date of the last commit: do its tests notice them? */
async function mutants() {
  const { ok, printed } = await run(['scripts/mutate.mjs', '--sample']);
  const said = printed.split('\n').filter(Boolean).slice(-2).join('; ');
  return single('changes that tests notice', { ok, printed }, ok ? said : '');
}

async function build() {
  const since = performance.now();
  const result = await run([ASTRO, 'build'], { BASE_PATH: '' });
  const seconds = (performance.now() - since) / 1000;
  const slow = seconds > SLOW_BUILD ? `, SLOWER THAN ${SLOW_BUILD} s` : '';
  return single('build', result, `${seconds.toFixed(1)} s${slow}`);
}

async function links() {
  const { checkLinks } = await import('./check/links.mjs');
  const { pages, links: looked, broken } = checkLinks(join(ROOT, 'dist'));
  const ok = pages > 0 && looked > 0 && broken.length === 0;
  return single('links', { ok, printed: broken.join('\n') }, `${looked} on ${pages} pages`);
}

async function site() {
  if (findChromium() === undefined) return couldNotRun('tests/site', 'Chromium is not installed');
  return await tests(['site'], ['site'], { SITE_FOLDER: 'dist', SITE_BASE: '/' });
}

/** The same errands in three engines, and the site behind the web server that the README tells how to set up. */
async function engines() {
  if (findChromium() === undefined) return couldNotRun('tests/engines', 'Chromium is not installed');
  const lacking = ENGINES.filter(({ is }) => !is()).map(({ apt }) => apt);
  const rows = lacking.length > 0 ? couldNotRun('all engines', `not installed: ${lacking.join(', ')}`) : [];
  return [...rows, ...(await tests(['engines'], ['engines'], { SITE_FOLDER: 'dist', SITE_BASE: '/' }))];
}

async function subPath() {
  if (findChromium() === undefined) return couldNotRun('sub-path', 'Chromium is not installed');
  const built = await run([ASTRO, 'build', '--outDir', SUB_PATH_FOLDER], {
    BASE_PATH: SUB_PATH,
    SITE: 'https://club.example',
  });
  if (!built.ok) return single(`build below ${SUB_PATH}`, built);
  const rows = await tests(['sub-path'], [], { SITE_FOLDER: SUB_PATH_FOLDER, SITE_BASE: SUB_PATH });
  return [
    ...single(`build below ${SUB_PATH}`, built),
    ...rows.map((row) => ({ ...row, name: `site below ${SUB_PATH}` })),
  ];
}

/** The site with a language more, made up from the English words. */
async function madeUp() {
  if (findChromium() === undefined) return couldNotRun('made-up language', 'Chromium is not installed');
  const { writeMadeUpSite } = await import('../tests/made-up/site.ts');
  writeMadeUpSite(MADE_UP_FOLDER);
  const built = await run([ASTRO, 'build', '--root', MADE_UP_FOLDER], { BASE_PATH: '' });
  if (!built.ok) return single('build with a made-up language', built);
  const rows = await tests(['made-up'], ['made-up'], { SITE_FOLDER: `${MADE_UP_FOLDER}/dist`, SITE_BASE: '/' });
  return [...single('build with a made-up language', built), ...rows];
}

const SHELL = 'chromium-headless-shell';

const PARTS = { types, lint, unit, mutants, build, links, site, engines, 'sub-path': subPath, 'made-up': madeUp };

const BROWSER_AND_CIRCUITS = [
  { apt: 'chromium', is: () => findChromium() !== undefined },
  { apt: 'ngspice', is: () => hasCommand('ngspice') },
];
const ENGINES = [
  { apt: 'firefox-esr', is: () => existsSync('/usr/bin/firefox-esr') },
  { apt: 'webkit2gtk-driver', is: () => hasCommand('WebKitWebDriver') },
  { apt: 'xvfb', is: () => existsSync('/usr/bin/xvfb-run') },
  { apt: 'xauth', is: () => existsSync('/usr/bin/xauth') },
  { apt: 'python3-gi', is: () => existsSync('/usr/lib/python3/dist-packages/gi') },
  { apt: 'gir1.2-webkit2-4.1', is: () => globSync('/usr/lib/*/girepository-1.0/WebKit2-4.1.typelib').length > 0 },
  { apt: 'nginx-light', is: () => existsSync('/usr/sbin/nginx') },
];

/** Whether the lists that this machine has name such a package to install. */
const isListed = (name) => spawnSync('apt-cache', ['show', name], { stdio: 'ignore' }).status === 0;

/** On a Debian-like machine where it may, installs what the browser tests and the circuit checks need. */
function installTools() {
  const missing = [...BROWSER_AND_CIRCUITS, ...ENGINES].filter(({ is }) => !is()).map(({ apt }) => apt);
  // An older Debian has no shell: there the tests take the whole browser, and longer, and nothing is fetched on its account.
  const wanted = () => !existsSync(HEADLESS_SHELL) && isListed(SHELL);
  if ((missing.length === 0 && !wanted()) || !hasCommand('apt-get')) return;
  const root = process.getuid?.() === 0;
  if (!root && spawnSync('sudo', ['-n', 'true'], { stdio: 'ignore' }).status !== 0) return;
  console.log('Installing what the tests need …');
  const apt = (...args) => {
    const line = root ? ['apt-get', ...args] : ['sudo', '-n', 'apt-get', ...args];
    return spawnSync(line[0], line.slice(1), { stdio: ['ignore', 'ignore', 'inherit'] });
  };
  apt('update');
  if (missing.length > 0) apt('install', '-y', '--no-install-recommends', ...missing);
  if (wanted()) apt('install', '-y', '--no-install-recommends', SHELL);
}

async function runPart(name) {
  const since = performance.now();
  process.stdout.write(`${name} … `);
  let rows;
  try {
    rows = await PARTS[name]();
  } catch (error) {
    rows = single(name, { ok: false, printed: String(error?.stack ?? error) });
  }
  const seconds = (performance.now() - since) / 1000;
  const failed = rows.some((row) => row.failed > 0);
  console.log(`${failed ? styleText('red', 'failed') : 'done'}, ${seconds.toFixed(1)} s`);
  for (const { printed } of rows.filter((row) => row.failed > 0)) console.log(printed.trimEnd());
  return rows.map((row, i) => ({ ...row, seconds: i === 0 ? seconds.toFixed(1) : '' }));
}

function printTable(rows) {
  const width = Math.max(...rows.map(({ name }) => name.length));
  console.log(`\n${'part'.padEnd(width)}  passed  failed  seconds`);
  for (const { name, passed, failed, seconds, note } of rows) {
    const line = `${name.padEnd(width)}  ${String(passed).padStart(6)}  ${String(failed).padStart(6)}  ${seconds.padStart(7)}  ${note}`;
    console.log(failed > 0 ? styleText('red', line.trimEnd()) : line.trimEnd());
  }
}

const chosen = process.argv.slice(2);
const unknown = chosen.filter((name) => !Object.hasOwn(PARTS, name));
if (unknown.length > 0) {
  console.error(`There is no part ${unknown.join(', ')}; there are: ${Object.keys(PARTS).join(', ')}`);
  process.exit(2);
}

mkdirSync(join(ROOT, 'reports'), { recursive: true });
installTools();

const rows = [];
for (const name of Object.keys(PARTS)) {
  if (chosen.length === 0 || chosen.includes(name)) rows.push(...(await runPart(name)));
}
printTable(rows);

const sum = (count) => rows.reduce((total, row) => total + row[count], 0);
for (const { fullName, why } of rows.flatMap(({ again = [] }) => again)) {
  console.log(styleText('yellow', `\nPassed only when run again: ${fullName}\n  ${why}`));
}
const unrun = rows.filter(({ note }) => note.includes('COULD NOT RUN'));
for (const { name, note } of unrun) console.log(styleText('yellow', `\n${name}: ${note}`));
process.exitCode = sum('failed') > 0 ? 1 : 0;
console.log(`\n${sum('passed')} passed, ${sum('failed')} failed`);
