// npm run judge: scores the walk by the reported cases and writes docs/judged.json and docs/judged.md. With -- --ask: what walks ask for and
// nobody has answered yet; with -- --ask <case>: the check that this case is asked next, to be answered in tests/judge/cases/cases.json.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { assertNode } from './machine.mjs';

assertNode();

const ROOT = join(import.meta.dirname, '..');
const { SCORED } = await import('../tests/judge/cases/cases.ts');
const { askedNext } = await import('../tests/judge/cases/score.ts');
const { judge, reportOf } = await import('../tests/judge/cases/report.ts');

/** A check as a person reads it, with its options. */
function worded(check) {
  const { title, options } = parse(readFileSync(join(ROOT, `src/content/en/checks/${check}.yaml`), 'utf8'));
  return [title, ...Object.entries(options).map(([id, { label }]) => `  ${id}: ${label}`)].join('\n');
}

function ask(id) {
  const one = SCORED.find((each) => each.id === id);
  if (one === undefined) return `There is no such case among those that score.`;
  const check = askedNext(one);
  return [
    one.told,
    `Found: ${one.found}`,
    '',
    check === undefined ? 'All answered.' : `${check}: ${worded(check)}`,
  ].join('\n');
}

const [what, id] = process.argv.slice(2);
if (what === '--ask' && id !== undefined) console.log(ask(id));
else if (what === '--ask') for (const one of SCORED) console.log(`${one.id}: ${askedNext(one) ?? '–'}`);
else {
  const judged = judge();
  writeFileSync(join(ROOT, 'docs/judged.json'), `${JSON.stringify(judged, null, 2)}\n`);
  writeFileSync(join(ROOT, 'docs/judged.md'), reportOf(judged));
  console.log(reportOf(judged));
}
