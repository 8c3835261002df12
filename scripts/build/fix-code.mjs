// What draws the square code of a fix on paper: a file in the root of the site, since a page of a fix comes without a script file.
import { writeFileSync } from 'node:fs';
import { inlineScript } from './inline-script.mjs';

const SCRIPT = new URL('../../src/components/page-scripts/fix-code.ts', import.meta.url);

/** @returns {import('astro').AstroIntegration} */
export const fixCode = () => ({
  name: 'fix-code',
  hooks: {
    'astro:build:done': async ({ dir }) => writeFileSync(new URL('code.js', dir), await inlineScript(SCRIPT)),
  },
});
