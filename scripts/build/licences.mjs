// Notices and licences travel with what is shipped: the bundler says which packages went into the scripts, the rest is named here, and
// the page of licences is filled with them.
import { globSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { findPackageJSON } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FACES } from './faces.mjs';

/** Stands in the page until the list is known. */
const PLACE = /<div data-licences[^>]*>[\s\S]*?<\/div>/;
/** What the bundler of the islands does not see: Astro's own lines in each page, and what unpacks the copy for use without a line. */
const BESIDE = ['astro', 'fzstd'];

const root = new URL('../../', import.meta.url);

/**
 * @typedef {{ name: string, version: string, identifier: string, text: string }} Shipped a package, its licence by SPDX name, and that licence's text
 */

/** @returns {Shipped} an installed package with its licence */
export function packageOf(name) {
  const file = findPackageJSON(name, import.meta.url);
  if (file === undefined) throw new Error(`${name} is shipped and not installed`);
  const folder = dirname(file);
  const { version, license } = JSON.parse(readFileSync(file, 'utf8'));
  const text = readdirSync(folder).find((one) => /^licen[cs]e/i.test(one));
  if (text === undefined) throw new Error(`${name} has no licence beside it`);
  return { name, version, identifier: license, text: readFileSync(join(folder, text), 'utf8') };
}

const { version, license: identifier } = JSON.parse(readFileSync(new URL('package.json', root), 'utf8'));
const OWN = { name: 'Both Rails', version, identifier, text: readFileSync(new URL('LICENSE', root), 'utf8') };

/** The name of the package that a file belongs to, or undefined where it is ours. */
const packageAt = (path) =>
  /.*[\\/]node_modules[\\/]((?:@[^\\/]+[\\/])?[^\\/]+)/.exec(path)?.[1]?.replaceAll('\\', '/');

/** Notes which packages went into the scripts that pages load. */
const noted = (bundled) => ({
  name: 'note-packages',
  applyToEnvironment: ({ name }) => name === 'client',
  generateBundle(_, bundle) {
    const modules = Object.values(bundle).flatMap((file) => (file.type === 'chunk' ? file.moduleIds : []));
    // What begins with a zero byte is not a file.
    const names = modules.filter((id) => !id.startsWith('\0')).map(packageAt);
    for (const name of names) if (name !== undefined) bundled.add(name);
  },
});

/** @returns {readonly Shipped[]} the site itself, then the rest by name, each once */
function shipped(bundled) {
  if (bundled.size === 0) throw new Error('The bundler did not say which packages are shipped');
  const all = [OWN, ...[...new Set([...bundled, ...BESIDE, ...FACES])].sort().map(packageOf)];
  for (const { name, identifier, text } of all) {
    if (!(identifier && text.trim())) throw new Error(`${name} is shipped, and no licence of it was found`);
  }
  return all;
}

/** Lines that were broken for a width of so many letters run on: a page breaks them where it ends, also with its text at twice the size. */
const unwrapped = (text) => text.replaceAll(/(?<=[^\n]{49,}[A-Za-z,;"])\n(?=[a-z"(]|[A-Z]{2,}[ ,])/g, ' ');

const escaped = (text) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

const entry = ({ name, version, identifier, text }) =>
  `<details lang="en"><summary>${escaped(`${name} ${version} · ${identifier}`)}</summary><pre class="licence">${escaped(unwrapped(text.trim()))}</pre></details>`;

/** @returns {import('astro').AstroIntegration} */
export const licences = () => {
  const bundled = new Set();
  return {
    name: 'licences',
    hooks: {
      'astro:config:setup': ({ updateConfig }) => {
        updateConfig({ vite: { plugins: [noted(bundled)] } });
      },
      'astro:build:done': ({ dir, logger }) => {
        const all = shipped(bundled);
        const list = `<div>${all.map(entry).join('')}</div>`;
        for (const name of globSync('*/licences/index.html', { cwd: fileURLToPath(dir) })) {
          const page = new URL(encodeURI(name), dir);
          writeFileSync(
            page,
            readFileSync(page, 'utf8').replace(PLACE, () => list),
          );
        }
        logger.info(`${all.length} packages`);
      },
    },
  };
};
