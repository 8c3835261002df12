// A page's policy knows the styles and scripts of that page, and no others: shorter over the wire, and nothing allowed that is not there.
import { globSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { hashOf } from './inline-script.mjs';

const INLINE = /<(script|style)\b(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/\1>/g;
const POLICY = /(<meta http-equiv="content-security-policy" content=")([^"]*)(")/;

/** @param {string} page @returns {string} the page with a policy that names only hashes of what stands in it. */
export function withOwnPolicy(page) {
  const hashes = new Set([...page.matchAll(INLINE)].map(([, , text = '']) => hashOf(text)));
  return page.replace(POLICY, (_, before, policy, after) => {
    const own = policy.replace(/ '(sha256-[^']*)'/g, (given, hash) => (hashes.has(hash) ? given : ''));
    return `${before}${own}${after}`;
  });
}

/** @returns {import('astro').AstroIntegration} */
export const ownPolicies = () => ({
  name: 'own-policies',
  hooks: {
    'astro:build:done': ({ dir, logger }) => {
      const pages = globSync('**/*.html', { cwd: fileURLToPath(dir) });
      for (const name of pages) {
        const file = new URL(encodeURI(name), dir);
        writeFileSync(file, withOwnPolicy(readFileSync(file, 'utf8')));
      }
      logger.info(`${pages.length} pages`);
    },
  },
});
