// npm run map: the flow of every wizard as Mermaid text, read off its statechart. With the id of a check: what it shows under every cause. With
// the id of a language: what it lacks. One cause with all its checks: npm run fault.
import { assertNode } from './machine.mjs';

assertNode();

const { lacking } = await import('./check/lacking.mjs');
const { LANGUAGES } = await import('../src/components/words/languages.ts');
const { CHARTS, mermaidOf } = await import('../src/wizards/index.ts');
const { describedCauses, SIGN_MODEL } = await import('../src/wizards/put-it-right/index.ts');

const whenText = (when) => when.map(({ of, is }) => `${of} ${is}`).join(', ');
const lineText = ({ whens, option, chance }) =>
  [...(whens.length > 0 ? [whens.map(whenText).join(' or ')] : []), `${option} ${Math.round(100 * chance)} %`].join(
    ': ',
  );

/** One check under all causes: the likeliest answer of those that touch what it reads; the others show what a sound layout shows. */
function ofCheck({ id, reads }) {
  const named = describedCauses().map((cause) => ({
    id: cause.id,
    found: cause.checks.find(({ check }) => check === id),
  }));
  const silent = named.filter(({ found }) => found === undefined).map((cause) => cause.id);
  return [
    `${id} (reads ${[reads].flat().join(', ')})`,
    ...named.flatMap(({ id: cause, found }) =>
      found === undefined ? [] : [`  ${cause}: ${found.lines.map(lineText).join('; ')}`],
    ),
    `untouched: ${silent.join(', ')}`,
  ];
}

const [asked] = process.argv.slice(2);
const check = SIGN_MODEL.checks.find(({ id }) => id === asked);

if (check !== undefined) console.log(ofCheck(check).join('\n'));
if (asked === undefined) for (const chart of CHARTS) console.log(`\n%% ${chart.id}\n${mermaidOf(chart)}`);
const isLanguage = LANGUAGES.some(({ id }) => id === asked);
if (isLanguage) console.log(Object.values(lacking(asked)).flat().join('\n') || 'Nothing is lacking.');
if (asked !== undefined && check === undefined && !isLanguage) {
  console.error(`There is no check and no language "${asked}".`);
  process.exitCode = 2;
}
