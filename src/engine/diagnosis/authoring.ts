// Mistakes an author can make in a fault model, each named with its row.
import type { CheckRow, FaultModel, LikelihoodWord, Precondition, Tool } from './model.ts';
import { PRECONDITIONS, SOMETHING_ELSE, TOOLS, WORD_CHANCE } from './model.ts';

/** A coin across the rails can burn: never where something got hot, and only after the load test. */
const BEFORE_COIN: readonly Precondition[] = ['nothing-got-hot', 'load-test-passed'];

/** Throws RangeError naming the row when an id is unknown or double, a list has the wrong length or a number is out of range. */
export function assertModel({ faults, checks, complaints, harms = {} }: FaultModel): void {
  unique(
    'fault',
    faults.map(({ id }) => id),
  );
  unique(
    'check',
    checks.map(({ id }) => id),
  );
  unique(
    'complaint',
    complaints.map(({ id }) => id),
  );
  const known = new Set([...faults.map(({ id }) => id), SOMETHING_ELSE]);
  const fixClasses = new Set(faults.map(({ fixClass }) => fixClass));
  for (const { id, minutes } of faults) positive(minutes, `fault "${id}": minutes`);
  belong(Object.keys(harms), fixClasses, 'harm: fix class');
  belong(Object.values(harms).flat(), known, 'harm: fault');
  for (const row of checks) assertRow(row, known, fixClasses);
  for (const { id, priors } of complaints) {
    belong(Object.keys(priors), known, `complaint "${id}": fault`);
    for (const [fault, share] of Object.entries(priors)) positive(share, `complaint "${id}": share of "${fault}"`);
  }
}

function assertRow(row: CheckRow, faults: ReadonlySet<string>, fixClasses: ReadonlySet<string>): void {
  const name = `check "${row.id}"`;
  const options = new Set(row.options);
  unique(`${name}: option`, row.options);
  positive(row.minutes, `${name}: minutes`);
  if (row.options.length < 2) throw new RangeError(`${name}: needs at least two options`);
  belong([row.tool], new Set<Tool>(TOOLS), `${name}: tool`);
  belong(row.needs, new Set<Precondition>(PRECONDITIONS), `${name}: precondition`);
  if (row.tool === 'coin' && BEFORE_COIN.some((one) => !row.needs.includes(one))) {
    throw new RangeError(`${name}: a coin needs ${BEFORE_COIN.join(' and ')}`);
  }
  belong([row.risk], new Set([0, 1, 2, 3]), `${name}: risk`);
  belong(Object.keys(row.when), faults, `${name}: fault`);
  belong(Object.keys(row.danger ?? {}), options, `${name}: danger option`);
  belong(Object.values(row.danger ?? {}), fixClasses, `${name}: fix class`);
  belong(Object.keys(row.establishes ?? {}), options, `${name}: establishing option`);
  belong(Object.values(row.establishes ?? {}).flat(), new Set<Precondition>(PRECONDITIONS), `${name}: precondition`);
  belong(Object.keys(row.forbids ?? {}), options, `${name}: forbidding option`);
  for (const [of, words] of [['otherwise', row.otherwise] as const, ...Object.entries(row.when)]) {
    assertWords(words, row.options.length, `${name}, ${of}`);
  }
}

function assertWords(words: readonly LikelihoodWord[], length: number, name: string): void {
  if (words.length !== length) throw new RangeError(`${name}: ${words.length} words for ${length} options`);
  belong(words, new Set(Object.keys(WORD_CHANCE)), `${name}: word`);
}

function unique(what: string, ids: readonly string[]): void {
  const twice = ids.find((id, i) => ids.indexOf(id) !== i);
  if (twice !== undefined) throw new RangeError(`${what} "${twice}" stands there twice`);
}

function belong<T extends string | number>(ids: readonly T[], known: ReadonlySet<T>, what: string): void {
  const stray = ids.find((id) => !known.has(id));
  if (stray !== undefined) throw new RangeError(`${what} "${stray}" is not known`);
}

function positive(value: number, what: string): void {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${what} is ${value}, not above 0`);
}
