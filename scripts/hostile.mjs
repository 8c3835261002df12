// npm run hostile: two hundred thousand addresses through the parsers and ten thousand through the built site (npm run build first); a sample of
// both is part of npm test. Takes about half an hour.
import { startNode } from './machine.mjs';

const env = { HOSTILE_TEXTS: '200000', HOSTILE_LINKS: '10000', SITE_FOLDER: 'dist', SITE_BASE: '/' };
const args = [
  'node_modules/vitest/vitest.mjs',
  'run',
  '--project',
  'wizards',
  '--project',
  'site',
  '--testTimeout',
  '3600000',
  'hostile',
];
startNode(args, { env }).on('close', (code) => {
  process.exitCode = code ?? 1;
});
