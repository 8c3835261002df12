// npm run build: the site into dist/, or into the folder given with --outDir; BASE_PATH puts it under a sub-path.
import { ASTRO, assertNode, startNode, stopWithParent } from './machine.mjs';

assertNode();
const astro = startNode([ASTRO, 'build', ...process.argv.slice(2)]);
stopWithParent(() => astro.kill());
astro.on('exit', (code) => process.exit(code ?? 1));
