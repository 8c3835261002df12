// npm run checked [FOLDER]: after a whole `npm test`, writes docs/checked.json from its reports, here or in the named copy of the project:
// how many tests of each room passed and failed, which failed, and what judges from outside. The page "How this was checked" shows it.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { ROOT } from './machine.mjs';

const from = process.argv[2] ?? ROOT;
const REPORTS = ['rooms-engine-wizards-judge-content-reference', 'site', 'engines', 'sub-path', 'made-up'];

/** What a test file says of itself in its first lines: a reader understands that, seldom the name of one test. */
const saysOf = (file) =>
  (/^(?:\/\/.*\n)+/.exec(readFileSync(join(from, file), 'utf8'))?.[0] ?? '')
    .replaceAll(/^\/\/ ?/gm, '')
    .replaceAll(/\s+/g, ' ')
    .trim();

const reports = REPORTS.map((name) => {
  const file = join(from, 'reports', `${name}.json`);
  if (!existsSync(file)) throw new Error(`${file} is missing: run the whole npm test first`);
  return JSON.parse(readFileSync(file, 'utf8'));
});

const parts = new Map();
const outside = [];
const failed = [];
for (const { name, assertionResults } of reports.flatMap(({ testResults }) => testResults)) {
  const file = relative(from, name).replaceAll('\\', '/');
  const part = file === 'tests/site/sub-path.test.ts' ? 'sub-path' : (/^tests\/([a-z-]+)\//.exec(file)?.[1] ?? 'rooms');
  const passed = assertionResults.filter(({ status }) => status === 'passed').length;
  const wrong = assertionResults.filter(({ status }) => status === 'failed');
  const before = parts.get(part) ?? { id: part, passed: 0, failed: 0, unrun: 0 };
  parts.set(part, {
    id: part,
    passed: before.passed + passed,
    failed: before.failed + wrong.length,
    unrun: before.unrun + assertionResults.length - passed - wrong.length,
  });
  if (part === 'reference') outside.push({ file, says: saysOf(file), passed, failed: wrong.length });
  failed.push(...wrong.map(({ fullName }) => ({ file, part, about: saysOf(file), says: fullName })));
}

const { version } = JSON.parse(readFileSync(join(from, 'package.json'), 'utf8'));
const checked = {
  date: new Date(Math.min(...reports.map(({ startTime }) => startTime))).toISOString().slice(0, 10),
  release: version,
  commit: execFileSync('git', ['rev-parse', '--short=7', 'HEAD'], { cwd: from, encoding: 'utf8' }).trim(),
  parts: [...parts.values()].sort((one, two) => two.passed - one.passed),
  outside: outside.sort((one, two) => one.file.localeCompare(two.file)),
  failed,
};
writeFileSync(join(ROOT, 'docs/checked.json'), `${JSON.stringify(checked, undefined, 2)}\n`);
console.log(
  `docs/checked.json: ${checked.parts.map(({ id, passed }) => `${id} ${passed}`).join(', ')}; ${failed.length} failed`,
);
