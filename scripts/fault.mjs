// npm run fault <id>: a cause as the model has it: its whole row, what each check then shows, its place behind each title, its fix (the
// contributors' page shows the same), and the reported cases that its fix page would have solved. Without an id: the ids of all causes.
import { assertNode } from './machine.mjs';

assertNode();

const { causeLines, describedCauses } = await import('../src/wizards/put-it-right/index.ts');
const { REPORTED_CASES } = await import('../tests/judge/cases/cases.ts');

const caseLines = ({ id, set, sure, told, found }) => [
  `  ${id} (${set}, ${sure})`,
  `    ${told}`,
  `    Found: ${found}`,
];

function print(cause) {
  const cases = REPORTED_CASES.filter(({ accepts }) => accepts.includes(cause.fixClass));
  const reported = cases.length > 0 ? [`reported cases of ${cause.fixClass}`, ...cases.flatMap(caseLines)] : [];
  console.log([...causeLines(cause), ...reported].join('\n'));
}

const [asked] = process.argv.slice(2);
const all = describedCauses();
const ids = all.map(({ id }) => id);
const cause = all.find(({ id }) => id === asked);

if (asked === undefined) console.log(ids.join('\n'));
else if (cause !== undefined) print(cause);
else {
  const near = ids.filter((id) => id.includes(asked));
  console.error(`There is no cause "${asked}".${near.length > 0 ? ` Near it: ${near.join(', ')}.` : ''}`);
  process.exitCode = 2;
}
