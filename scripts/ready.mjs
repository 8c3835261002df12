// Before any script: installs the dependencies when they are missing or older than the lock file.
// Runs under whatever Node the machine has, so it uses no package and nothing newer than Node 20.
import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = new URL('..', import.meta.url);
const changed = (file) => statSync(new URL(file, root), { throwIfNoEntry: false })?.mtimeMs ?? 0;

if (changed('node_modules/.package-lock.json') < changed('package-lock.json')) {
  const npm = process.env.npm_execpath;
  if (npm === undefined) {
    console.error('The dependencies are not installed: run npm ci');
    process.exit(1);
  }
  console.log('Installing what the site is built with; the first time takes a minute or two.');
  const node = process.env.npm_node_execpath ?? process.execPath;
  const { status } = spawnSync(node, [npm, 'ci'], { cwd: fileURLToPath(root), stdio: 'inherit' });
  if (status !== 0) {
    console.error('Installing failed. It needs a connection to the package registry that npm is set up with.');
    process.exit(status ?? 1);
  }
}
