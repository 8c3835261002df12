import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import mdx from '@astrojs/mdx';
import preact from '@astrojs/preact';
import { defineConfig } from 'astro/config';
import { compressedTwins } from './scripts/build/compressed-twins.mjs';
import { faces, fonts } from './scripts/build/faces.mjs';
import { searchIndex } from './scripts/build/search-index.mjs';
import { folderOf } from './scripts/serve.mjs';

/** The one inline script; the layout prints the same file, and the policy knows it by its hash. */
const resume = readFileSync(new URL('src/components/page-scripts/resume.inline.js', import.meta.url));
const resumeHash = /** @type {const} */ (`sha256-${createHash('sha256').update(resume).digest('base64')}`);

/** Astro's own marks in MDX modules are not understood by the bundler and need not be. */
function onLog(level, log, print) {
  if (log.code !== 'MODULE_LEVEL_DIRECTIVE') print(level, log);
}

export default defineConfig({
  output: 'static',
  base: folderOf(process.env.BASE_PATH),
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'always' },
  vite: { build: { assetsInlineLimit: 0, rolldownOptions: { onLog } } },
  markdown: { syntaxHighlight: false },
  devToolbar: { enabled: false },
  fonts,
  security: {
    csp: {
      directives: [
        "default-src 'self'",
        "img-src 'self' data:",
        "font-src 'self'",
        "connect-src 'self'",
        "worker-src 'self'",
        "object-src 'none'",
        "base-uri 'self'",
        "form-action 'self'",
      ],
      scriptDirective: { resources: ["'self'", "'wasm-unsafe-eval'"], hashes: [resumeHash] },
      styleDirective: { resources: ["'self'"] },
    },
  },
  integrations: [faces(), mdx(), preact(), searchIndex(), compressedTwins()],
});
