// npm run dev: the site while you work on it. The security policy and the search exist in builds only.
import { ASTRO, assertNode, startNode, stopWithParent } from './machine.mjs';

assertNode();
const astro = startNode([ASTRO, 'dev', ...process.argv.slice(2)]);
stopWithParent(() => astro.kill());
astro.on('exit', (code) => process.exit(code ?? 0));
