// A page's policy knows the styles and scripts of that page, and no others: shorter over the wire, and nothing allowed that is not there.
// It stands before all that it is about.
import { globSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { hashOf } from './inline-script.mjs';

const INLINE = /<(script|style)\b(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/\1>/g;
const POLICY = /<meta http-equiv="content-security-policy" content="([^"]*)"[^>]*>/;
const CHARSET = /<meta charset="[^"]*"[^>]*>/;
/** Planning wizards, plans and divisions work out large layouts beside the page. */
const WITH_WORKERS = /(?:^|[\\/])(?:work-it-out[\\/][^\\/]+|plan|layout-sheet)[\\/]/;

/**
 * No string becomes a script or markup. One rule lets the worker start that keeps a copy of the site (page-scripts/offline.ts); where other
 * workers are started, that of src/components/shared/own-workers.ts says from where.
 */
const typed = (workers) => `require-trusted-types-for 'script';trusted-types own-copy${workers ? ' default' : ''};`;

/**
 * @param {string} page
 * @param {{ workers?: boolean }} [needs] whether it starts workers
 * @returns {string} the page with a policy that allows only what stands in it, at the head of all else.
 */
export function withOwnPolicy(page, { workers = false } = {}) {
  const [tag, policy = ''] = POLICY.exec(page) ?? [];
  if (tag === undefined) return page;
  const hashes = new Set([...page.matchAll(INLINE)].map(([, , text = '']) => hashOf(text)));
  const named = policy.replace(/ '(sha256-[^']*)'/g, (given, hash) => (hashes.has(hash) ? given : ''));
  const own = tag.replace(policy, () => typed(workers) + named);
  return page.replace(tag, '').replace(CHARSET, (charset) => `${charset}${own}`);
}

/** @returns {import('astro').AstroIntegration} */
export const ownPolicies = () => ({
  name: 'own-policies',
  hooks: {
    'astro:build:done': ({ dir, logger }) => {
      const pages = globSync('**/*.html', { cwd: fileURLToPath(dir) });
      for (const name of pages) {
        const file = new URL(encodeURI(name), dir);
        const workers = WITH_WORKERS.test(name);
        writeFileSync(file, withOwnPolicy(readFileSync(file, 'utf8'), { workers }));
      }
      logger.info(`${pages.length} pages`);
    },
  },
});
