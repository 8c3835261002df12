// How likely each cause is after what was told, and what each check would say next: exact sums over circumstances, over whether a trouble
// that comes and goes shows just now, and over whether a source of answers slipped. See docs/decisions/019.
import type { Seen } from './posterior.ts';
import type { CauseTables, SignTables, Table } from './sign-tables.ts';
import { combinations } from './sign-tables.ts';

const MEMORY = 0;

/** Answers to the checks of one group from one source: what they say if the source is right, and if it slipped. */
interface Heard {
  readonly group: number;
  readonly source: number;
  readonly checks: readonly { readonly check: number; readonly option: number }[];
  /** Product of one over the number of options: what a slip says. */
  readonly anyhow: number;
}

export interface Belief {
  /** P(what was told | cause), up to one factor that all share. */
  readonly likelihood: Float64Array;
  /** P(option | cause, what was told) at [option of all checks x causes + cause]. */
  readonly next: Float64Array;
  /** Place of the first option of each check among all options, with one more entry for the end. */
  readonly optionStart: Int32Array;
}

/** The answers by group and source; of two to one check the later one counts, unknown ones are passed over. */
function heardOf({ model, checks, checkAt }: SignTables, answers: readonly Seen[]): Heard[] {
  const last = new Map(answers.map(({ check, option }) => [check, option]));
  const found = new Map<
    string,
    { group: number; source: number; checks: { check: number; option: number }[]; anyhow: number }
  >();
  for (const [id, name] of [...last].sort(([a], [b]) => (checkAt.get(a) ?? 0) - (checkAt.get(b) ?? 0))) {
    const check = checkAt.get(id);
    const table = check === undefined ? undefined : checks[check];
    const option = check === undefined ? -1 : (model.checks[check]?.options.indexOf(name) ?? -1);
    if (check === undefined || table === undefined || option < 0) continue;
    const key = `${table.group} ${table.source}`;
    const known = found.get(key) ?? { group: table.group, source: table.source, checks: [], anyhow: 1 };
    known.checks.push({ check, option });
    known.anyhow /= table.options;
    found.set(key, known);
  }
  return [...found.values()];
}

/**
 * Exact chances of what was told under each cause, and of each answer that could come next. Shapes: answers in, one entry per cause and per
 * option and cause out. Total: unknown answers are passed over. Source: own-derivation, Bayes; the order of the answers does not matter.
 */
export function believe(tables: SignTables, answers: readonly Seen[]): Belief {
  const heard = heardOf(tables, answers);
  const optionStart = new Int32Array(tables.checks.length + 1);
  for (const [i, { options }] of tables.checks.entries()) optionStart[i + 1] = (optionStart[i] ?? 0) + options;
  const count = tables.causes.length;
  const next = new Float64Array((optionStart[tables.checks.length] ?? 0) * count);
  const likelihood = Float64Array.from(tables.causes, (cause, at) =>
    new CauseSum(tables, cause, heard).into(next, at, count, optionStart),
  );
  return { likelihood, next, optionStart };
}

/** All circumstances that matter to a cause and to what was told, one combination after the other. */
class CauseSum {
  readonly #tables: SignTables;
  readonly #cause: CauseTables;
  readonly #heard: readonly Heard[];
  /** Places of the circumstances summed over, ascending, and how far apart their values lie in a combination. */
  readonly #over: readonly number[];
  readonly #step: ReadonlyMap<number, number>;
  readonly #count: number;
  /** For each combination the weight with the trouble showing, then with it well just now. */
  readonly #weights: readonly [Float64Array, Float64Array];

  constructor(tables: SignTables, cause: CauseTables, heard: readonly Heard[]) {
    this.#tables = tables;
    this.#cause = cause;
    this.#heard = heard;
    const over = new Set<number>();
    for (const { group, checks } of heard) {
      for (const at of cause.groups[group]?.by ?? []) over.add(at);
      for (const { check } of checks) for (const at of tables.checks[check]?.says.by ?? []) over.add(at);
    }
    this.#over = [...over].sort((a, b) => a - b);
    const step = new Map<number, number>();
    let apart = 1;
    for (const at of [...this.#over].reverse()) {
      step.set(at, apart);
      apart *= tables.sizes[at] ?? 1;
    }
    this.#step = step;
    this.#count = apart;
    this.#weights = [new Float64Array(apart), new Float64Array(apart)];
    this.#weigh();
  }

  #valueAt(combination: number, circumstance: number): number {
    return Math.floor(combination / (this.#step.get(circumstance) ?? 1)) % (this.#tables.sizes[circumstance] ?? 1);
  }

  /** Row of a table in a combination. Every circumstance of the table is summed over. */
  #row({ by }: Table, combination: number): number {
    return by.reduce((row, at) => row * (this.#tables.sizes[at] ?? 1) + this.#valueAt(combination, at), 0);
  }

  #prior(combination: number): number {
    return this.#over.reduce(
      (product, at) => product * (this.#cause.circumstances[at]?.[this.#valueAt(combination, at)] ?? 0),
      1,
    );
  }

  #weigh(): void {
    const { well } = this.#cause;
    const groups = [...new Set(this.#heard.map(({ group }) => group))];
    for (let k = 0; k < this.#count; k++) {
      const prior = this.#prior(k);
      for (const [z, share] of [1 - well, well].entries()) {
        let weight = prior * share;
        if (weight > 0) for (const group of groups) weight *= sum(this.#joint(group, k, z));
        const into = this.#weights[z];
        if (into !== undefined) into[k] = weight;
      }
    }
  }

  /** P(joint value, what was told of the group | circumstances, showing or well). */
  #joint(group: number, combination: number, z: number): Float64Array {
    const table = this.#cause.groups[group];
    const width = table?.width ?? 0;
    const from = table === undefined ? 0 : this.#row(table, combination) * width;
    const joint = Float64Array.from({ length: width }, (_, v) => table?.chances[from + v] ?? 0);
    for (const heard of this.#heard) {
      if (heard.group !== group) continue;
      for (let v = 0; v < width; v++)
        joint[v] = (joint[v] ?? 0) * this.#toldIf(heard, this.#seen(group, heard.source, z, v), combination);
    }
    return joint;
  }

  /** What can be seen now of a joint value: the sound one while the trouble is well, except in memory. */
  #seen(group: number, source: number, z: number, v: number): number {
    const { sound = -1 } = this.#tables.groups[group] ?? {};
    return z === 1 && source !== MEMORY && sound >= 0 ? sound : v;
  }

  #toldIf(heard: Heard, v: number, combination: number): number {
    const slip = this.#tables.slips[heard.source] ?? 0;
    return (1 - slip) * this.#rightIf(heard, v, combination) + slip * heard.anyhow;
  }

  #rightIf({ checks }: Heard, v: number, combination: number): number {
    let right = 1;
    for (const { check, option } of checks) {
      const { says } = this.#tables.checks[check] ?? {};
      const width = this.#tables.groups[this.#tables.checks[check]?.group ?? 0]?.size ?? 1;
      if (says === undefined) continue;
      right *= says.chances[this.#row(says, combination) * says.width + option * width + v] ?? 0;
    }
    return right;
  }

  /** Writes what each check would say under this cause, and returns how likely what was told is. */
  into(next: Float64Array, cause: number, count: number, optionStart: Int32Array): number {
    const total = sum(this.#weights[0]) + sum(this.#weights[1]);
    if (!(total > 0)) return 0;
    const known = new Map<string, Expected>();
    for (const [check, { group, source, options, says }] of this.#tables.checks.entries()) {
      const key = `${group} ${source} ${says.by.join()}`;
      const expected = known.get(key) ?? this.#expect(group, source, says.by);
      known.set(key, expected);
      const width = this.#tables.groups[group]?.size ?? 1;
      const start = optionStart[check] ?? 0;
      for (let option = 0; option < options; option++) {
        let chance = expected.off / options;
        for (const [row, right] of expected.right.entries()) {
          const from = row * says.width + option * width;
          for (let v = 0; v < width; v++) chance += (right[v] ?? 0) * (says.chances[from + v] ?? 0);
        }
        next[(start + option) * count + cause] = chance / total;
      }
    }
    return total;
  }

  /** What a further check of a group would find: by the circumstances its reading hangs on. */
  #expect(group: number, source: number, by: readonly number[]): Expected {
    const table = this.#cause.groups[group];
    const width = table?.width ?? 0;
    const right = Array.from({ length: combinations(by, this.#tables.sizes) }, () => new Float64Array(width));
    const expected = { right, off: 0 };
    if (table === undefined) return expected;
    const heard = this.#heard.filter((one) => one.group === group);
    return heard.length === 0
      ? this.#expectUnread(expected, table, group, source, by)
      : this.#expectRead(expected, table, group, source, by);
  }

  #expectUnread(expected: Expected, table: Table, group: number, source: number, by: readonly number[]): Expected {
    const slip = this.#tables.slips[source] ?? 0;
    const dims = union(table.by, by);
    for (const z of [0, 1]) {
      const weights = this.#marginal(dims, z);
      for (let combination = 0; combination < weights.length; combination++) {
        const weight = weights[combination] ?? 0;
        if (weight === 0) continue;
        const from = this.#within(combination, dims, table.by) * table.width;
        const right = expected.right[this.#within(combination, dims, by)];
        for (let v = 0; v < table.width; v++) {
          const seen = this.#seen(group, source, z, v);
          if (right !== undefined)
            right[seen] = (right[seen] ?? 0) + weight * (1 - slip) * (table.chances[from + v] ?? 0);
        }
        expected.off += weight * slip;
      }
    }
    return expected;
  }

  #expectRead(expected: Expected, table: Table, group: number, source: number, by: readonly number[]): Expected {
    const slip = this.#tables.slips[source] ?? 0;
    const mine = this.#heard.find((one) => one.group === group && one.source === source);
    const others = this.#heard.filter((one) => one.group === group && one.source !== source);
    const extra = by.filter((at) => !this.#over.includes(at));
    const extras = this.#priors(extra);
    for (const z of [0, 1])
      for (let k = 0; k < this.#count; k++) {
        const weight = this.#weights[z]?.[k] ?? 0;
        if (weight === 0) continue;
        const base = weight / sum(this.#joint(group, k, z));
        const from = this.#row(table, k) * table.width;
        for (let v = 0; v < table.width; v++) {
          let joint = base * (table.chances[from + v] ?? 0);
          for (const other of others) joint *= this.#toldIf(other, this.#seen(group, other.source, z, v), k);
          const seen = this.#seen(group, source, z, v);
          const right = joint * (1 - slip) * (mine === undefined ? 1 : this.#rightIf(mine, seen, k));
          expected.off += joint * slip * (mine?.anyhow ?? 1);
          for (const [e, prior] of extras.entries()) {
            const into = expected.right[this.#mixed(by, extra, k, e)];
            if (into !== undefined) into[seen] = (into[seen] ?? 0) + right * prior;
          }
        }
      }
    return expected;
  }

  readonly #marginals = new Map<string, Float64Array>();

  /** Weight of each combination of some circumstances after what was told. */
  #marginal(dims: readonly number[], z: number): Float64Array {
    const key = `${z} ${dims.join()}`;
    const known = this.#marginals.get(key);
    if (known !== undefined) return known;
    const extra = dims.filter((at) => !this.#over.includes(at));
    const extras = this.#priors(extra);
    const marginal = new Float64Array(combinations(dims, this.#tables.sizes));
    const weights = this.#weights[z] ?? new Float64Array(0);
    for (let k = 0; k < this.#count; k++) {
      const weight = weights[k] ?? 0;
      if (weight === 0) continue;
      for (const [e, prior] of extras.entries()) {
        const at = this.#mixed(dims, extra, k, e);
        marginal[at] = (marginal[at] ?? 0) + weight * prior;
      }
    }
    this.#marginals.set(key, marginal);
    return marginal;
  }

  /** Chances of the combinations of circumstances that nothing was told of. */
  #priors(extra: readonly number[]): Float64Array {
    const { sizes } = this.#tables;
    return Float64Array.from({ length: combinations(extra, sizes) }, (_, e) =>
      extra.reduce((product, at) => product * (this.#cause.circumstances[at]?.[valueIn(e, extra, sizes, at)] ?? 0), 1),
    );
  }

  /** Place among the combinations of `dims` of the one that has the values of `k`, and of `e` for those of `extra`. */
  #mixed(dims: readonly number[], extra: readonly number[], k: number, e: number): number {
    const { sizes } = this.#tables;
    return dims.reduce(
      (place, at) =>
        place * (sizes[at] ?? 1) + (extra.includes(at) ? valueIn(e, extra, sizes, at) : this.#valueAt(k, at)),
      0,
    );
  }

  /** Place among the combinations of `some` of a combination of `dims` that holds them. */
  #within(combination: number, dims: readonly number[], some: readonly number[]): number {
    const { sizes } = this.#tables;
    return some.reduce((place, at) => place * (sizes[at] ?? 1) + valueIn(combination, dims, sizes, at), 0);
  }
}

interface Expected {
  /** By the circumstances of the reading: P(joint value as it is seen, source right, what was told). */
  readonly right: readonly Float64Array[];
  /** P(source slipped, what was told). */
  off: number;
}

/** Value of one circumstance in a combination of several. */
function valueIn(combination: number, dims: readonly number[], sizes: readonly number[], circumstance: number): number {
  let rest = combination;
  for (let i = dims.length - 1; i >= 0; i--) {
    const size = sizes[dims[i] ?? 0] ?? 1;
    if (dims[i] === circumstance) return rest % size;
    rest = Math.floor(rest / size);
  }
  return 0;
}

const union = (some: readonly number[], others: readonly number[]): number[] =>
  [...new Set([...some, ...others])].sort((a, b) => a - b);

function sum(chances: Float64Array): number {
  let total = 0;
  for (const chance of chances) total += chance;
  return total;
}
