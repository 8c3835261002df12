// Who imports whom: the one-way rule and the doors of folders, over TypeScript files by .dependency-cruiser.cjs, over MDX
// and pages by a look at their import lines. (Biome sees the imports in .astro files, see biome.json.)
import { existsSync, globSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { cruise } from 'dependency-cruiser';
import { ROOT } from '../machine.mjs';

const { doorsOf, forbidden, options } = createRequire(import.meta.url)('../../.dependency-cruiser.cjs');

const roomOf = (path) => /^src\/[^/]+(?=\/)/.exec(path)?.[0] ?? path;

const sentence = (from, to, because) =>
  `${from} imports ${to}: ${roomOf(from)} broke into ${roomOf(to.replace(/^.*node_modules/, 'node_modules'))}; ${because}`;

const roundTheDoor = (from, to, because) => `${from} imports ${to}: it went round the door; ${because}`;

/** @param {string} root the folder that holds src */
async function inScripts(root) {
  const rules = [...forbidden, ...doorsOf(root)];
  const ruleSet = { forbidden: rules };
  const { output } = await cruise(['src'], { ...options, ruleSet, validate: true, baseDir: root });
  const becauseOf = new Map(rules.map(({ name, comment }) => [name, comment]));
  const { violations, totalCruised } = output.summary;
  return {
    looked: totalCruised,
    crossings: violations.map(({ from, to, rule }) =>
      (rule.name.endsWith('-has-a-door') ? roundTheDoor : sentence)(from, to, becauseOf.get(rule.name)),
    ),
  };
}

const IMPORT = /^(?:import|export)\s[^'"]*['"]([^'"]+)['"]/gm;

/** What a file that the cruiser cannot read imports, each as a path below the root where it is one. */
function importsOf(root, file) {
  const imported = [...readFileSync(join(root, file), 'utf8').matchAll(IMPORT)].map(([, to]) => to);
  return imported.map((to) =>
    to.startsWith('.') ? relative(root, join(root, dirname(file), to)).replaceAll('\\', '/') : to,
  );
}

/** Pages and words enter a room by its door too. */
function roundDoors(root, files) {
  const doors = doorsOf(root);
  return files.flatMap((file) =>
    importsOf(root, file).flatMap((to) =>
      doors
        .filter(
          ({ from, to: room }) =>
            !new RegExp(from.pathNot).test(file) &&
            new RegExp(room.path).test(to) &&
            !new RegExp(room.pathNot).test(to),
        )
        .map(({ comment }) => roundTheDoor(file, to, comment)),
    ),
  );
}

function inPages(root) {
  const files = globSync('src/**/*.astro', { cwd: root });
  return { looked: files.length, crossings: roundDoors(root, files) };
}

/** Words may import components only. */
function inWords(root) {
  const files = globSync('src/content/**/*.mdx', { cwd: root });
  const wrong = files.flatMap((file) => {
    return importsOf(root, file)
      .filter((to) => !to.startsWith('src/components/'))
      .map((to) => sentence(file, to, 'words import components only.'));
  });
  return { looked: files.length, crossings: [...wrong, ...roundDoors(root, files)] };
}

/**
 * Every import below `root`/src that goes against the rule, as a sentence, and how many files were looked at.
 * @param {string} [root]
 * @returns {Promise<{ looked: number, crossings: string[] }>}
 */
export async function crossings(root = ROOT) {
  const scripts = existsSync(join(root, 'src')) ? await inScripts(root) : { looked: 0, crossings: [] };
  const parts = [scripts, inWords(root), inPages(root)];
  return {
    looked: parts.reduce((sum, { looked }) => sum + looked, 0),
    crossings: parts.flatMap((part) => part.crossings),
  };
}
