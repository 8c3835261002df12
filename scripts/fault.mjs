// npm run fault <id>: a cause as the model has it: its whole row, what each check then shows, its place behind each title, its fix, and the
// reported cases that its fix page would have solved. Without an id: all causes.
import { assertNode } from './machine.mjs';

assertNode();

const { describedCause, SIGN_MODEL } = await import('../src/wizards/put-it-right/index.ts');
const { REPORTED_CASES } = await import('../tests/judge/cases/cases.ts');

const percent = (chance) => `${Math.round(100 * chance)} %`;
const whenText = (when) => when.map(({ of, is }) => `${of} ${is}`).join(', ');
const headed = (title, lines) => (lines.length > 0 ? ['', title, ...lines.map((line) => `  ${line}`)] : []);

function signLines({ sign, isCore, lines }) {
  const says = lines.map(({ when, says: values }) => {
    const mix = values.map(({ value, word }) => (word === undefined ? value : `${value} ${word}`)).join(', ');
    return when.length > 0 ? `  ${whenText(when)}: ${mix}` : `  ${mix}`;
  });
  return [`${sign}${isCore ? '' : ' (not core)'}`, ...says];
}

function checkLines({ check, reads, lines }) {
  const says = lines.map(({ whens, option, chance }) => {
    const where = whens.map(whenText).join(' or ');
    return `  ${where === '' ? '' : `${where}: `}${option} ${percent(chance)}`;
  });
  return [`${check} (reads ${reads.join(', ')})`, ...says];
}

function caseLines({ id, set, sure, told, found }) {
  return [`${id} (${set}, ${sure})`, `  ${told}`, `  Found: ${found}`];
}

function print(cause) {
  const { id, fixClass, minutes, price, well, needs, share } = cause;
  const cases = REPORTED_CASES.filter(({ accepts }) => accepts.includes(fixClass));
  return [
    `${id}: put right by ${fixClass} (${minutes} min, ${price}); ${(100 * share).toFixed(2)} % of all troubles`,
    ...(well === undefined ? [] : [`well just now: ${well}`]),
    ...(needs.length > 0 ? [`only where ${whenText(needs)}`] : []),
    ...headed('shows', cause.signs.flatMap(signLines)),
    ...headed('leaves as it is', [cause.untouched.join(', ')]),
    ...headed('likeliest answers, where the trouble shows', cause.checks.flatMap(checkLines)),
    ...headed(
      'behind the titles',
      cause.openings.map(
        ({ opening, share: part, place }) => `${opening} ${(100 * part).toFixed(1)} %, place ${place}`,
      ),
    ),
    ...headed(`reported cases of ${fixClass}`, cases.flatMap(caseLines)),
  ].join('\n');
}

const [asked] = process.argv.slice(2);
const ids = SIGN_MODEL.causes.map(({ id }) => id).sort();
const cause = asked === undefined ? undefined : describedCause(asked);

if (asked === undefined) console.log(ids.join('\n'));
if (cause !== undefined) console.log(print(cause));
if (asked !== undefined && cause === undefined) {
  console.error(
    `There is no cause "${asked}". Near it: ${ids.filter((id) => id.includes(asked)).join(', ') || 'none'}.`,
  );
  process.exitCode = 2;
}
