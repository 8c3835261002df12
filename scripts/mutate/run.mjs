// Changes a room in one place at a time and runs the tests that judge it: was it noticed?
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import { ROOT } from '../machine.mjs';
import { alikeIn, told } from './alike.mjs';
import { strykerPlugins, tryOnly } from './ignored.mjs';
import { ROOMS } from './rooms.mjs';

const QUIET = { isDebugEnabled: () => false, debug() {}, info() {}, warn() {} };
const NOTICED = ['Killed', 'Timeout'];
/** Tests that take so many times as long go on for ever: a machine that is busy with something else takes its time too. */
const TIMES_AS_LONG = 3;
const UNNOTICED = ['Survived', 'NoCoverage'];

/** What the tests of these rooms do not read: not copied for them. */
const NOT_COPIED = ['dist', 'reports', 'docs', 'public', '.astro', 'src/pages', 'tests/site', 'tests/record'];

/** The files of a room, or those of them that are named (`engine/wiring/wire.ts`). */
const filesOf = (room, named) =>
  readdirSync(join(ROOT, 'src', room))
    .filter((file) => file.endsWith('.ts') && file !== 'index.ts')
    .map((file) => `src/${room}/${file}`)
    .filter((file) => named === undefined || named.includes(file.slice('src/'.length)));

const placeOf = ({ start, end }) => `${start.line}:${start.column}-${end.line}:${end.column}`;
const nameOf = ({ file, location, replacement }) => `${file}:${placeOf(location)} ${replacement}`;

/** Lines from 1, columns from 0: as a range of Stryker's is written. */
const shifted = ({ start, end }, lines, columns) => ({
  start: { line: start.line + lines, column: start.column + columns },
  end: { line: end.line + lines, column: end.column + columns },
});

/** Everything that can be changed in a room, or in some files of it, without what is left as it is and what nobody could notice. */
export async function changesOf(room, files) {
  const names = filesOf(room, files);
  const sources = new Map(names.map((name) => [name, readFileSync(join(ROOT, name), 'utf8')]));
  const read = names.map((name) => ({ name, mutate: true, content: sources.get(name) }));
  const ignorers = strykerPlugins.map(({ value }) => value);
  const options = { plugins: null, excludedMutations: [], ignorers };
  const { mutants } = await new Instrumenter(QUIET).instrument(read, options);
  const all = mutants
    .filter(({ status }) => status !== 'Ignored')
    .map(({ fileName, location, replacement }) => {
      const at = { file: fileName, location: shifted(location, 1, 0), replacement };
      return { ...at, ...told(sources.get(fileName), at) };
    });
  const alike = alikeIn(names);
  const tried = all.filter((change) => alike.why(change) === undefined);
  return { tried, alike: all.length - tried.length, fitNothing: alike.fitNothing() };
}

/**
 * Tries changes of one room and gives those that counted, each with `noticed`, and `stopped` where its tests did not come to an end. Constants and what else is worked out
 * once, as a file is read, are not tried.
 */
export async function tryChanges(room, changes, { whole, files: named }) {
  process.env.MUTATE_TESTS = ROOMS[room].join(',');
  const files = filesOf(room, named);
  tryOnly(whole ? undefined : changes.map(({ location }) => location));
  const mutate = whole ? files : changes.map(({ file, location }) => `${file}:${placeOf(location)}`);
  const results = await new Stryker({
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner', join(import.meta.dirname, 'ignored.mjs')],
    ignorers: ['left-as-it-is'],
    vitest: { configFile: 'scripts/mutate/vitest.config.ts', related: false },
    mutate,
    ignorePatterns: NOT_COPIED,
    disableTypeChecks: false,
    coverageAnalysis: 'perTest',
    ignoreStatic: true,
    concurrency: 1,
    timeoutMS: 5000,
    timeoutFactor: TIMES_AS_LONG,
    tempDirName: `reports/mutants-${process.pid}`,
    reporters: [],
    allowConsoleColors: false,
    logLevel: 'error',
  }).runMutationTest();
  const tried = new Map(changes.map((change) => [nameOf(change), change]));
  return results.flatMap(({ fileName, location, replacement, status }) => {
    const file = files.find((one) => fileName.replaceAll('\\', '/').endsWith(one));
    const change = tried.get(nameOf({ file, location: shifted(location, 0, -1), replacement }));
    if (change === undefined || ![...NOTICED, ...UNNOTICED].includes(status)) return [];
    return [
      {
        ...change,
        noticed: NOTICED.includes(status),
        reached: status !== 'NoCoverage',
        stopped: status === 'Timeout',
      },
    ];
  });
}
