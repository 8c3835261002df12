// npm run mutate: changes the rooms whose numbers people act on, one place at a time, and says which changes no test
// notices. `npm run mutate -- engine/wiring` takes one room, `-- engine/wiring/wire.ts` one file. `-- --sample` tries
// some changes of one room, drawn by the date of the last commit (`--seed N`: by another number, `--drawn N`: so many).
// `--write` keeps what was measured: what a sample is held against.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { assertNode, ROOT } from './machine.mjs';
import { between, draw, fewestNoticed } from './mutate/chance.mjs';
import { ROOMS } from './mutate/rooms.mjs';
import { changesOf, tryChanges } from './mutate/run.mjs';

assertNode();

const DRAWN = '24';
const CHANCE = 1e-3;
const MEASURED = join(ROOT, 'scripts/mutate/measured.json');

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'boolean' },
    seed: { type: 'string' },
    drawn: { type: 'string', default: DRAWN },
    write: { type: 'boolean' },
  },
});

const measured = JSON.parse(readFileSync(MEASURED, 'utf8'));
const share = ({ noticed, of }) => `${noticed} of ${of} (${((100 * noticed) / of).toFixed(1)} %)`;
const count = (changes) => ({ noticed: changes.filter(({ noticed }) => noticed).length, of: changes.length });

function printUnnoticed(changes) {
  for (const { file, location, from, to, noticed, reached } of changes) {
    if (!noticed)
      console.log(`${file}:${location.start.line}  ${from}  →  ${to}${reached ? '' : '  (no test gets here)'}`);
  }
}

function seedOfCommit() {
  const { stdout } = spawnSync('git', ['log', '-1', '--format=%ct'], { cwd: ROOT, encoding: 'utf8' });
  return Number(stdout || 1);
}

function keep(room, counted) {
  if (!values.write) return;
  measured[room] = counted;
  writeFileSync(MEASURED, `${JSON.stringify(measured, null, 2)}\n`);
}

/** What was measured before may be a sample: a smaller share alone says nothing. */
const leastOf = (room, now) => fewestNoticed(measured[room] ?? { noticed: 0, of: 0 }, now.of, CHANCE);

/** Some changes of one room: fails when so few are noticed that the room cannot be what it was measured to be. */
async function sample() {
  const seed = Number(values.seed ?? seedOfCommit());
  const names = Object.keys(measured);
  const room = positionals[0] ?? names[seed % names.length];
  const changes = await changesOf(room);
  const results = await tryChanges(room, draw(changes.tried, Number(values.drawn), seed), { whole: false });
  const now = count(results);
  const least = leastOf(room, now);
  tell(room, results, changes);
  const [low, high] = between(now).map((one) => (100 * one).toFixed(0));
  console.log(
    `drawn by ${seed}, so of all ${changes.tried.length} between ${low} and ${high} %; at least ${least} must be noticed`,
  );
  keep(room, now);
  return now.of > 0 && now.noticed >= least;
}

/** What was found, for a person to read and for a program (`reports/mutate`). */
function tell(room, results, { alike, fitNothing }) {
  printUnnoticed(results);
  for (const { file, line, from, to } of fitNothing)
    console.log(`alike.json fits nothing: ${file}  ${line}  ${from}  →  ${to}`);
  const stopped = results.filter((one) => one.stopped).length;
  console.log(
    `${room}: ${share(count(results))} noticed, ${stopped} of them by tests without an end; ${alike} could be noticed by nobody\n`,
  );
  mkdirSync(join(ROOT, 'reports/mutate'), { recursive: true });
  writeFileSync(join(ROOT, 'reports/mutate', `${room.replaceAll('/', '-')}.json`), JSON.stringify(results, null, 1));
}

/** A whole room: fails when fewer are noticed than fits what was measured before, or when an entry of `alike.json` fits nothing. */
async function whole(room) {
  const changes = await changesOf(room);
  const results = await tryChanges(room, changes.tried, { whole: true });
  tell(room, results, changes);
  const now = count(results);
  const least = leastOf(room, now);
  keep(room, now);
  if (now.noticed < least) console.log(`at least ${least} of ${now.of} must be noticed`);
  return changes.fitNothing.length === 0 && now.of > 0 && now.noticed >= least;
}

/** Some files of a room, to look at while tests are written. */
async function some(room, files) {
  const changes = await changesOf(room, files);
  tell(files.join(', '), await tryChanges(room, changes.tried, { whole: true, files }), changes);
}

const isRoom = (name) => Object.hasOwn(ROOMS, name);
const asked = Map.groupBy(positionals, (name) => (isRoom(name) ? name : dirname(name)));
const unknown = [...asked.keys()].filter((room) => !isRoom(room));
if (unknown.length > 0) {
  console.error(`There is no room ${unknown.join(', ')}; there are: ${Object.keys(ROOMS).join(', ')}`);
  process.exit(2);
}

if (values.sample) {
  process.exitCode = (await sample()) ? 0 : 1;
} else {
  for (const room of asked.size > 0 ? asked.keys() : Object.keys(ROOMS)) {
    const files = (asked.get(room) ?? []).filter((name) => !isRoom(name));
    if (files.length > 0) await some(room, files);
    else if (!(await whole(room))) process.exitCode = 1;
  }
}
