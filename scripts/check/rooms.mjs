// Who imports whom: the one-way rule over TypeScript files by .dependency-cruiser.cjs, and over MDX by a look at its
// import lines. (Biome sees the imports in .astro files, see biome.json.)
import { existsSync, globSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { cruise } from 'dependency-cruiser';
import { ROOT } from '../machine.mjs';

const { forbidden, options } = createRequire(import.meta.url)('../../.dependency-cruiser.cjs');

const roomOf = (path) => /^src\/[^/]+(?=\/)/.exec(path)?.[0] ?? path;

const sentence = (from, to, because) =>
  `${from} imports ${to}: ${roomOf(from)} broke into ${roomOf(to.replace(/^.*node_modules/, 'node_modules'))}; ${because}`;

/** @param {string} root the folder that holds src */
async function inScripts(root) {
  const { output } = await cruise(['src'], { ...options, ruleSet: { forbidden }, validate: true, baseDir: root });
  const becauseOf = new Map(forbidden.map(({ name, comment }) => [name, comment]));
  const { violations, totalCruised } = output.summary;
  return {
    looked: totalCruised,
    crossings: violations.map(({ from, to, rule }) => sentence(from, to, becauseOf.get(rule.name))),
  };
}

const IMPORT = /^(?:import|export)\s[^'"]*['"]([^'"]+)['"]/gm;

/** Words may import components only. */
function inWords(root) {
  const files = globSync('src/content/**/*.mdx', { cwd: root });
  const wrong = files.flatMap((file) => {
    const imported = [...readFileSync(join(root, file), 'utf8').matchAll(IMPORT)].map(([, to]) => to);
    const reached = imported.map((to) => (to.startsWith('.') ? relative(root, join(root, dirname(file), to)) : to));
    return reached
      .filter((to) => !to.startsWith('src/components/'))
      .map((to) => sentence(file, to, 'words import components only.'));
  });
  return { looked: files.length, crossings: wrong };
}

/**
 * Every import below `root`/src that goes against the rule, as a sentence, and how many files were looked at.
 * @param {string} [root]
 * @returns {Promise<{ looked: number, crossings: string[] }>}
 */
export async function crossings(root = ROOT) {
  const scripts = existsSync(join(root, 'src')) ? await inScripts(root) : { looked: 0, crossings: [] };
  const words = inWords(root);
  return { looked: scripts.looked + words.looked, crossings: [...scripts.crossings, ...words.crossings] };
}
