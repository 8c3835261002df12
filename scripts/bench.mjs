// npm run bench: the engine against its yardsticks, and what pages cost a phone. Ends with 1 when a demand is not met.
// `npm run bench -- engine`, `-- pages` or `-- theme` (installs a documentation theme in reports/theme) runs one of them, `-- course` what pages measures of the lessons.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ASTRO, assertNode, findChromium, ROOT, startNode } from './machine.mjs';

assertNode();

const chosen = process.argv.slice(2);
const wanted = (name) => (chosen.length === 0 ? name !== 'course' : chosen.includes(name));

function print(title, columns, rows) {
  const cells = rows.map((row) => [...columns.map((column) => String(row[column])), row.ok ? 'ok' : 'NOT MET']);
  const widths = [...columns, ''].map((column, i) => Math.max(column.length, ...cells.map((line) => line[i].length)));
  const line = (texts) =>
    texts
      .map((text, i) => text.padEnd(widths[i]))
      .join('  ')
      .trimEnd();
  console.log(`\n${title}\n${line([...columns, ''])}`);
  for (const texts of cells) console.log(line(texts));
}

async function engine() {
  if (!existsSync(new URL('bench/engine.mjs', import.meta.url))) throw new Error('scripts/bench/engine.mjs is missing');
  const { run } = await import(new URL('bench/engine.mjs', import.meta.url).href);
  const rows = await run();
  print('Engine', ['name', 'ours', 'yardstick', 'ratio', 'demand'], rows);
  return rows;
}

async function build() {
  const child = startNode([ASTRO, 'build', '--silent'], { env: { BASE_PATH: '' } });
  const code = await new Promise((done) => child.on('exit', done));
  if (code !== 0) throw new Error('The site was not built');
}

async function measured(run) {
  if (findChromium() === undefined) throw new Error('Pages could not be measured: Chromium is not installed');
  await build();
  const rows = await run(await import('./bench/pages.mjs'), join(ROOT, 'dist'));
  print('Pages on a throttled phone (gzip, faces apart, middle of three visits)', ['name', 'value', 'demand'], rows);
  return rows;
}
const pages = () => measured(({ run }, folder) => run(folder));
const theme = () => measured(async (_, folder) => (await import('./bench/theme.mjs')).runTheme(folder));
const course = () => measured(({ runCourse }, folder) => runCourse(folder));

const rows = [];
const failures = [];
for (const [name, part] of Object.entries({ engine, pages, theme, course })) {
  if (!wanted(name)) continue;
  try {
    rows.push(...(await part()));
  } catch (error) {
    failures.push(`${name}: ${error.message}`);
  }
}
const missed = rows.filter(({ ok }) => !ok);
console.log(`\n${rows.length - missed.length} demands met, ${missed.length} not met`);
for (const failure of failures) console.error(failure);
process.exitCode = missed.length + failures.length > 0 || rows.length === 0 ? 1 : 0;
