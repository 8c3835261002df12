// Writes the search index into the built site. Which pages are in it, they say themselves: data-pagefind-body.
import { readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { close, createIndex } from 'pagefind';

/** Ready-made search boxes and highlighting, which the site does not use. */
const UNUSED = /-ui\.|highlight/;

function sure(step, { errors, ...result }) {
  if (errors.length > 0) throw new Error(`Search index, ${step}: ${errors.join('; ')}`);
  return result;
}

/** @returns {import('astro').AstroIntegration} */
export const searchIndex = () => ({
  name: 'search-index',
  hooks: {
    'astro:build:done': async ({ dir, logger }) => {
      const outputPath = fileURLToPath(new URL('pagefind/', dir));
      const { index } = sure('creating it', await createIndex());
      const { page_count: pages } = sure('reading pages', await index.addDirectory({ path: fileURLToPath(dir) }));
      if (pages === 0) throw new Error('Search index: no page was found');
      sure('writing it', await index.writeFiles({ outputPath }));
      await close();
      for (const file of readdirSync(outputPath)) if (UNUSED.test(file)) rmSync(new URL(`pagefind/${file}`, dir));
      logger.info(`${pages} pages read`);
    },
  },
});
