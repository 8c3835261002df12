// npm run hostile: two hundred thousand addresses through the parsers and ten thousand through all pages of the built site (npm run build first),
// none of them slower than a tenth of a second; a sample of both is part of npm test. Takes some ten minutes. `npm run hostile -- wizards` tries
// the parsers alone, `-- site` the pages.
import { assertNode, startNode } from './machine.mjs';

assertNode();

const env = {
  HOSTILE_TEXTS: '200000',
  HOSTILE_LINKS: '10000',
  HOSTILE_SLOWEST: '100',
  SITE_FOLDER: 'dist',
  SITE_BASE: '/',
};
const asked = process.argv.slice(2);

/** One after the other: what is timed has the machine to itself. */
for (const project of asked.length > 0 ? asked : ['wizards', 'site']) {
  const args = ['run', '--project', project, '--testTimeout', '3600000', 'hostile'];
  const run = startNode(['node_modules/vitest/vitest.mjs', ...args], { env });
  const code = await new Promise((done) => run.on('close', done));
  if (code !== 0) process.exitCode = code ?? 1;
}
