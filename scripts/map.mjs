// npm run map: the flow of every wizard as Mermaid text, read off its statechart. With the id of a fault: what it does to every check; with
// the id of a check: what every fault does to it. With the id of a language: what it lacks.
import { assertNode } from './machine.mjs';

assertNode();

const { lacking } = await import('./check/lacking.mjs');
const { LANGUAGES } = await import('../src/components/words/languages.ts');
const { CHARTS, mermaidOf } = await import('../src/wizards/index.ts');
const { FAULT_MODEL } = await import('../src/wizards/put-it-right/index.ts');
const { faults, checks, complaints } = FAULT_MODEL;

const table = (options, words) => options.map((option, i) => `${option} ${words[i]}`).join(', ');
const named = (check, id) => Object.hasOwn(check.when, id);

/** One fault across all checks: those that name it, then those that it answers as most faults do. */
function ofFault({ id, fixClass, minutes }) {
  const comes = complaints.flatMap(({ id: complaint, priors }) => (priors[id] ? [`${complaint} ${priors[id]}`] : []));
  const line = (check) => `  ${check.id}: ${table(check.options, check.when[id] ?? check.otherwise)}`;
  return [
    `${id}: put right by ${fixClass}, ${minutes} min; brought by ${comes.join(', ') || 'no complaint'}`,
    'named by',
    ...checks.filter((check) => named(check, id)).map(line),
    'otherwise',
    ...checks.filter((check) => !named(check, id)).map(line),
  ];
}

/** One check across all faults. */
function ofCheck({ id, options, when, otherwise }) {
  const silent = faults.filter((fault) => when[fault.id] === undefined).map((fault) => fault.id);
  return [
    id,
    ...Object.entries(when).map(([fault, words]) => `  ${fault}: ${table(options, words)}`),
    `otherwise: ${table(options, otherwise)}`,
    `  ${silent.join(', ')}`,
  ];
}

const [asked] = process.argv.slice(2);
const fault = faults.find(({ id }) => id === asked);
const check = checks.find(({ id }) => id === asked);

if (fault !== undefined) console.log(ofFault(fault).join('\n'));
if (check !== undefined) console.log(ofCheck(check).join('\n'));
if (asked === undefined) for (const chart of CHARTS) console.log(`\n%% ${chart.id}\n${mermaidOf(chart)}`);
const isLanguage = LANGUAGES.some(({ id }) => id === asked);
if (isLanguage) console.log(Object.values(lacking(asked)).flat().join('\n') || 'Nothing is lacking.');
if (asked !== undefined && (fault ?? check) === undefined && !isLanguage) {
  console.error(`There is no fault, no check and no language "${asked}".`);
  process.exitCode = 2;
}
