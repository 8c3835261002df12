// Looks at every address that the built HTML and CSS point to: it has to exist below the base, with its anchor.
import { existsSync, globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'node-html-parser';
import { folderOf } from '../serve.mjs';

const SITE = 'http://site.invalid';

/** Attributes that hold an address. */
const ADDRESSES = ['href', 'src', 'action', 'poster', 'data', 'xlink:href', 'component-url', 'renderer-url'];

const inHead = (element) => element.rawTagName === 'link' && element.getAttribute('rel') === 'canonical';

/** Files of the build that an island is told to fetch later. */
const builtFilesIn = (element) => element.getAttribute('props')?.match(/[^"']*_astro\/[^"']+/g) ?? [];

function addressesOfHtml(root) {
  const found = [];
  for (const element of root.querySelectorAll('*')) {
    if (inHead(element)) continue;
    const values = ADDRESSES.map((name) => element.getAttribute(name)).filter((value) => value !== undefined);
    const set = element.getAttribute('srcset')?.split(',') ?? [];
    found.push(...values, ...set.map((part) => part.trim().split(/\s+/)[0]), ...builtFilesIn(element));
  }
  return found;
}

const addressesOfCss = (text) => [...text.matchAll(/url\(\s*["']?([^"')]+)["']?\s*\)/g)].map(([, address]) => address);

const idsOf = (root) => new Set(root.querySelectorAll('[id]').map((element) => element.getAttribute('id')));

function readSite(folder) {
  const pages = new Map();
  for (const file of globSync('**/*.html', { cwd: folder })) {
    const root = parse(readFileSync(join(folder, file), 'utf8'));
    pages.set(file, { addresses: addressesOfHtml(root), ids: idsOf(root) });
  }
  const sheets = new Map();
  for (const file of globSync('**/*.css', { cwd: folder })) {
    sheets.set(file, { addresses: addressesOfCss(readFileSync(join(folder, file), 'utf8')), ids: new Set() });
  }
  return { pages, sheets };
}

/** What is wrong with `address` as written in `file`, or undefined. */
function fault({ folder, base, pages }, file, address) {
  const at = new URL(address, `${SITE}${base}${file}`);
  if (at.origin !== SITE) return;
  if (!at.pathname.startsWith(base)) return `leaves ${base}`;
  const inside = decodeURIComponent(at.pathname.slice(base.length));
  const target = inside === '' || inside.endsWith('/') ? `${inside}index.html` : inside;
  if (existsSync(join(folder, target, 'index.html'))) return 'lacks the final slash';
  if (!existsSync(join(folder, target))) return 'leads nowhere';
  const anchor = decodeURIComponent(at.hash.slice(1));
  if (anchor === '' || anchor === 'top' || !pages.has(target)) return;
  return pages.get(target).ids.has(anchor) ? undefined : `has no part #${anchor}`;
}

/**
 * @param {string} folder the built site
 * @param {string} [basePath] the sub-path it was built for
 * @returns {{ pages: number, links: number, broken: string[] }}
 */
export function checkLinks(folder, basePath) {
  const { pages, sheets } = readSite(folder);
  const site = { folder, base: folderOf(basePath), pages };
  const broken = new Set();
  let links = 0;
  for (const [file, { addresses }] of [...pages, ...sheets]) {
    for (const address of addresses) {
      links += 1;
      const wrong = fault(site, file, address);
      if (wrong !== undefined) broken.add(`${file}: ${address} ${wrong}`);
    }
  }
  return { pages: pages.size, links, broken: [...broken] };
}
