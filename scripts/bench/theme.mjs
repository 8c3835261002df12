// First paint beside a documentation theme of the same framework: a page of it with the same text for each kind of page here, visited in turn
// with ours in one run. The theme is installed when this is asked for, in a folder of its own: `npm ci` and the lock know nothing of it.
import { spawnSync } from 'node:child_process';
import { existsSync, globSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { parse } from 'node-html-parser';
import { chromium } from 'playwright-core';
import { chromiumOptions, ROOT } from '../machine.mjs';
import { serve } from '../serve.mjs';
import { middle, visit } from './pages.mjs';

const THEME = '@astrojs/starlight@0.42.4';
const FOLDER = join(ROOT, 'reports/theme');
const RUNS = 5;
const RATIO = 0.75;
const BLOCKING = 100;

/** One page of each kind. */
const PAGES = {
  home: 'en/',
  wizard: 'en/work-it-out/enough-current/',
  walk: 'en/put-it-right/trips-at-gap/',
  fix: 'en/fixes/larger-supply/',
  'fix with a figure': 'en/fixes/reversed/',
  lesson: 'en/learn/no-single-number/',
};

const CONFIG = `import starlight from '@astrojs/starlight';
import { defineConfig } from 'astro/config';
export default defineConfig({ integrations: [starlight({ title: 'Theme', pagefind: false })] });
`;
const COLLECTIONS = `import { defineCollection } from 'astro:content';
import { docsLoader } from '@astrojs/starlight/loaders';
import { docsSchema } from '@astrojs/starlight/schema';
export const collections = { docs: defineCollection({ loader: docsLoader(), schema: docsSchema() }) };
`;

/** What stands in the main part of a page, as headings, points and paragraphs. */
function asMarkdown(html) {
  const main = parse(html).querySelector('main');
  for (const one of main.querySelectorAll('script, style, svg, template')) one.remove();
  const lines = main.structuredText.split('\n').map((line) => line.trim().replaceAll(/[\\`*_{}[\]<>#|~$]/g, '\\$&'));
  const headings = new Set(main.querySelectorAll('h2, h3').map((one) => one.text.trim()));
  const text = lines.filter(Boolean).map((line) => (headings.has(line) ? `## ${line}` : line));
  return `---\ntitle: ${JSON.stringify(main.querySelector('h1')?.text.trim() || 'Home')}\n---\n\n${text.join('\n\n')}\n`;
}

const nameOf = (kind) => (kind === 'home' ? 'index' : kind.replaceAll(' ', '-'));
const addressOf = (kind) => (kind === 'home' ? '' : `${nameOf(kind)}/`);

function run(command, args) {
  const { status, stderr, stdout } = spawnSync(command, args, { cwd: FOLDER, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${command} ${args.join(' ')}: ${stderr || stdout}`);
}

/** Sent as small as ours: text has a compressed twin beside it. */
function compress() {
  const site = join(FOLDER, 'dist');
  for (const name of globSync('**/*.{html,css,js,svg}', { cwd: site })) {
    const text = readFileSync(join(site, name));
    writeFileSync(join(site, `${name}.br`), brotliCompressSync(text));
    writeFileSync(join(site, `${name}.gz`), gzipSync(text, { level: 9 }));
  }
}

function buildTheme(site) {
  const { dependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  const docs = join(FOLDER, 'src/content/docs');
  rmSync(docs, { recursive: true, force: true });
  mkdirSync(docs, { recursive: true });
  const own = { name: 'theme', private: true, type: 'module' };
  if (!existsSync(join(FOLDER, 'node_modules/@astrojs/starlight'))) {
    writeFileSync(join(FOLDER, 'package.json'), JSON.stringify(own));
    const npm = [process.env.npm_execpath].filter((path) => path !== undefined);
    const args = ['install', '--no-audit', '--no-fund', '--ignore-scripts', `astro@${dependencies.astro}`, THEME];
    if (npm.length > 0) run(process.execPath, [...npm, ...args]);
    else run('npm', args);
  }
  writeFileSync(join(FOLDER, 'astro.config.mjs'), CONFIG);
  writeFileSync(join(FOLDER, 'src/content.config.ts'), COLLECTIONS);
  for (const [kind, path] of Object.entries(PAGES))
    writeFileSync(join(docs, `${nameOf(kind)}.md`), asMarkdown(readFileSync(join(site, path, 'index.html'), 'utf8')));
  run(process.execPath, ['node_modules/astro/bin/astro.mjs', 'build']);
  compress();
}

export async function runTheme(folder) {
  buildTheme(folder);
  const ours = await serve({ folder, port: 0 });
  const theirs = await serve({ folder: join(FOLDER, 'dist'), port: 0 });
  const browser = await chromium.launch(chromiumOptions());
  const rows = [];
  try {
    for (const [kind, path] of Object.entries(PAGES)) {
      const seen = { ours: [], theirs: [] };
      for (let i = 0; i < RUNS; i += 1) {
        seen.ours.push(await visit(browser, `${ours.address}${path}`));
        seen.theirs.push(await visit(browser, `${theirs.address}${addressOf(kind)}`));
      }
      const of = (whose, what) => middle(seen[whose].map((one) => one[what]));
      const ratio = of('ours', 'paint') / of('theirs', 'paint');
      rows.push(
        {
          name: `${kind}: largest paint, beside the theme`,
          value: `${of('ours', 'paint').toFixed(0)} / ${of('theirs', 'paint').toFixed(0)} ms = ${ratio.toFixed(2)}`,
          demand: `≤ ${RATIO} ×`,
          ok: ratio <= RATIO,
        },
        {
          name: `${kind}: blocking time, beside the theme`,
          value: `${of('ours', 'blocking').toFixed(0)} / ${of('theirs', 'blocking').toFixed(0)} ms`,
          demand: `≤ ${BLOCKING} ms`,
          ok: of('ours', 'blocking') <= BLOCKING,
        },
      );
    }
  } finally {
    await browser.close();
    await Promise.all([ours.close(), theirs.close()]);
  }
  return rows;
}
