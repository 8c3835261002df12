// The copy for use without a line: stamps each page with its release, puts all files of the site into one pack, and writes the worker that
// keeps it (src/offline) and the script that starts the worker. Runs after the policies, since pages are packed as they are sent.
import { createHash } from 'node:crypto';
import { globSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { constants, zstdCompressSync } from 'node:zlib';
import { writeIcons } from './icons.mjs';
import { inlineScript } from './inline-script.mjs';
import { packageOf } from './licences.mjs';

/** What a page needs of the site. The worker itself, the pictures for the home screen and other packs stay outside. */
const PACKED = '**/*.{html,json,js,css,svg,woff2,webmanifest}';
const WORKER = 'sw.js';
/** A page says its release in its first tag. */
const STAMPED = /<html(?: data-release="[^"]*")? /;

const source = (path) => new URL(`../../src/${path}`, import.meta.url);
const digestOf = (bytes) => createHash('sha256').update(bytes).digest('hex');
const kindOf = (path) => path.slice(path.lastIndexOf('.') + 1);

/** Like things beside each other: what they share is then found by the compressor. */
const likeFirst = (one, other) => {
  const [a, b] = [one, other].map((path) => `${kindOf(path)} ${path}`);
  return a < b ? -1 : 1;
};

const filesOf = (dir) =>
  globSync(PACKED, { cwd: fileURLToPath(dir) })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path !== WORKER)
    .sort(likeFirst);

const at = (dir, path) => new URL(encodeURI(path), dir);

/** What the worker is made with asks that its notice goes along. */
const NOTICE = `/*! fzstd\n${packageOf('fzstd').text}*/`;

/** The same hash for the same site, wherever and whenever it is built. */
function hashOfAll(dir, paths, worker) {
  const hash = createHash('sha256').update(worker);
  for (const path of paths) {
    const bytes = readFileSync(at(dir, path));
    hash.update(`\n${path}\n`).update(kindOf(path) === 'html' ? bytes.toString().replace(STAMPED, '<html ') : bytes);
  }
  return hash.digest('hex').slice(0, 10);
}

function stamp(dir, paths, release) {
  for (const path of paths.filter((path) => kindOf(path) === 'html')) {
    const page = readFileSync(at(dir, path), 'utf8');
    writeFileSync(at(dir, path), page.replace(STAMPED, `<html data-release="${release}" `));
  }
}

/** Read by src/offline/pack.ts. Gives the compressed bytes. */
function packed(dir, paths) {
  const files = paths.map((path) => readFileSync(at(dir, path)));
  const list = Buffer.from(JSON.stringify(paths.map((path, i) => [path, files[i].length])));
  const count = Buffer.alloc(4);
  count.writeUInt32BE(list.length);
  const params = { [constants.ZSTD_c_compressionLevel]: 19, [constants.ZSTD_c_windowLog]: 24 };
  return zstdCompressSync(Buffer.concat([count, list, ...files]), { params });
}

/**
 * Makes a built site work without a line; what an earlier call wrote is replaced.
 * @param {URL} dir the folder of the built site, with a slash at its end
 * @param {number} [safety] how many releases for safety there were up to this one; else what src/layouts/release.ts says
 * @returns {Promise<{ release: string, files: number, bytes: number }>}
 */
export async function writeOffline(dir, safety) {
  for (const old of globSync('_astro/*.pack', { cwd: fileURLToPath(dir) })) rmSync(at(dir, old));
  writeFileSync(at(dir, 'offline.js'), await inlineScript(source('components/page-scripts/offline.ts')));
  const worker = await inlineScript(source('offline/worker.ts'));
  const paths = filesOf(dir);
  const { lost, safety: said } = JSON.parse(readFileSync(at(dir, 'offline.json'), 'utf8'));
  const release = `${hashOfAll(dir, paths, worker)}.${safety ?? said}`;
  stamp(dir, paths, release);
  const bytes = packed(dir, paths);
  const digest = digestOf(bytes);
  const pack = `_astro/site.${digest.slice(0, 10)}.pack`;
  writeFileSync(at(dir, pack), bytes);
  const built = JSON.stringify({ release, pack, digest, lost });
  writeFileSync(at(dir, WORKER), `${NOTICE}\nconst OFFLINE=${built};\n${worker}`);
  return { release, files: paths.length, bytes: bytes.length };
}

/** @returns {import('astro').AstroIntegration} */
export const offline = () => ({
  name: 'offline',
  hooks: {
    'astro:build:done': async ({ dir, logger }) => {
      await writeIcons(dir);
      const { release, files, bytes } = await writeOffline(dir);
      logger.info(`${release}: ${files} files in ${Math.round(bytes / 1024)} KiB`);
    },
  },
});
