// npm start: builds the site and serves it on this machine.
import { styleText } from 'node:util';
import { ASTRO, assertNode, startNode, stopWithParent } from './machine.mjs';

assertNode();
const { serve } = await import('./serve.mjs');

const WANTED_PORT = Number(process.env.PORT ?? 4321);

let stop = () => {};
stopWithParent(() => stop());

console.log('Building the site …');
const build = startNode([ASTRO, 'build', '--silent'], { stdio: ['ignore', 'inherit', 'inherit'] });
stop = () => {
  build.kill();
  process.exitCode = 130;
};
const code = await new Promise((done) => build.on('exit', done));
if (code !== 0) {
  console.error('The site was not built; nothing is served.');
  process.exit(code ?? process.exitCode ?? 1);
}

const site = await serve({ folder: 'dist', base: process.env.BASE_PATH, port: WANTED_PORT });
stop = () => site.close().then(() => process.exit());

if (site.port !== WANTED_PORT) console.log(`Port ${WANTED_PORT} is taken, so this is the next free one.`);
console.log(`
Both Rails is running at  ${styleText('bold', `${site.address}en/`)}

Open the address, choose «Work it out», then «Is my power enough?», and answer what you know;
"I don't know" is an answer too. Ctrl+C stops it.
`);
