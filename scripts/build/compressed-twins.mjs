// Puts a .br and a .gz beside each text file of the built site, for servers that send ready-made ones. Runs last.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

const TEXT_FILE = /\.(html|css|js|mjs|svg|json|txt|xml|webmanifest)$/;
const brotliHardest = { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } };

async function writeTwins(path) {
  const bytes = readFileSync(path);
  const twins = {
    br: await promisify(brotliCompress)(bytes, brotliHardest),
    gz: await promisify(gzip)(bytes, { level: 9 }),
  };
  for (const [ending, twin] of Object.entries(twins)) {
    if (twin.length < bytes.length) writeFileSync(`${path}.${ending}`, twin);
  }
}

/** @returns {import('astro').AstroIntegration} */
export const compressedTwins = () => ({
  name: 'compressed-twins',
  hooks: {
    'astro:build:done': async ({ dir, logger }) => {
      const folder = fileURLToPath(dir);
      const files = readdirSync(folder, { recursive: true }).filter((file) => TEXT_FILE.test(file));
      await Promise.all(files.map((file) => writeTwins(`${folder}${file}`)));
      logger.info(`${files.length} files`);
    },
  },
});
