// A script that stands in the page itself, bundled and made small: one request less for every page, and none at all for a fix.
import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';

/** @param {URL} file @returns {Promise<string>} its code with all that it imports, as one block without exports. */
export async function inlineScript(file) {
  const bundle = await rolldown({ input: fileURLToPath(file), logLevel: 'warn' });
  const { output } = await bundle.generate({ format: 'iife', minify: true });
  await bundle.close();
  if (output.length !== 1) throw new Error(`${file} became ${output.length} files, but has to stand in a page`);
  return output[0].code.trim();
}

/** What the page's policy knows it by. @param {string} code @returns {`sha256-${string}`} */
export const hashOf = (code) => `sha256-${createHash('sha256').update(code).digest('base64')}`;
