// How likely each cause is after what was told, and what each check would say next: exact sums over circumstances, over whether a trouble
// that comes and goes shows just now, and over whether a source of answers slipped. See docs/decisions/019.
import type { Seen } from './posterior.ts';
import type { CauseTables, SignTables, Table } from './sign-tables.ts';

const MEMORY = 0;

/** Showing just now, and well just now. */
const SHOWING = 0;
const WELL = 1;

export interface Belief {
  /** P(what was told | cause). */
  readonly likelihood: Float64Array;
  /** P(option | cause, what was told) at [option of all checks x causes + cause]. */
  readonly next: Float64Array;
  /** Place of the first option of each check among all options, with one more entry for the end. */
  readonly optionStart: Int32Array;
}

/** Answers to the checks of one group from one source: they slip together or not at all. */
interface Heard {
  readonly group: number;
  readonly source: number;
  /** The circumstances that their readings hang on. */
  readonly by: number;
  /** P(these answers | joint value, source right) at [combination of `by` x values + value]. */
  readonly right: Float64Array;
  /** The same if the source slipped: one over the number of options, for each. */
  readonly anyhow: number;
}

/**
 * Exact chances of what was told under each cause, and of each answer that could come next. Shapes: answers in, one entry per cause and per
 * option and cause out; a cause that is not worth it keeps what it would say before any answer. Total: unknown answers are passed over, of two to one check the later one counts. Source: own-derivation, Bayes.
 */
export function believe(
  tables: SignTables,
  answers: readonly Seen[],
  worth: (likelihood: Float64Array) => Uint8Array = ({ length }) => new Uint8Array(length).fill(1),
): Belief {
  const heard = heardOf(tables, answers);
  const optionStart = new Int32Array(tables.checks.length + 1);
  for (const [i, { options }] of tables.checks.entries()) optionStart[i + 1] = (optionStart[i] ?? 0) + options;
  const count = tables.causes.length;
  // What was told changes only a part of what is expected: the rest stays as it is before any answer.
  const before = heard.length === 0 ? undefined : beforeAny(tables);
  const next = before?.next.slice() ?? new Float64Array((optionStart[tables.checks.length] ?? 0) * count);
  const sums = tables.causes.map((cause) => new CauseSum(tables, cause, heard));
  const likelihood = Float64Array.from(sums, ({ total }) => total);
  const asked = before === undefined ? new Uint8Array(count).fill(1) : worth(likelihood);
  for (const [at, sum] of sums.entries()) {
    if (sum.total > 0 && asked[at] === 1) sum.expect(next, at, count, optionStart, before !== undefined);
  }
  return { likelihood, next, optionStart };
}

const BEFORE = new WeakMap<SignTables, Belief>();

/** Belief before any answer, remembered. */
function beforeAny(tables: SignTables): Belief {
  const known = BEFORE.get(tables) ?? believe(tables, []);
  BEFORE.set(tables, known);
  return known;
}

function heardOf(tables: SignTables, answers: readonly Seen[]): Heard[] {
  const { model, checks, checkAt } = tables;
  const found = new Map<string, { readonly check: number; readonly option: number }[]>();
  const last = new Map(answers.map((one) => [one.check, one.option]));
  // In the order of the model, so that rounding is the same whatever the order of the answers.
  for (const [id, name] of [...last].sort(([a], [b]) => (checkAt.get(a) ?? 0) - (checkAt.get(b) ?? 0))) {
    const check = checkAt.get(id) ?? -1;
    const option = model.checks[check]?.options.indexOf(name) ?? -1;
    const table = checks[check];
    if (table === undefined || option < 0) continue;
    const key = `${table.group} ${table.source}`;
    found.set(key, [...(found.get(key) ?? []), { check, option }]);
  }
  return [...found.values()].flatMap((said) => heardTogether(tables, said) ?? []);
}

function heardTogether(
  { checks, groups, dims }: SignTables,
  said: readonly { readonly check: number; readonly option: number }[],
): Heard | undefined {
  const first = checks[said[0]?.check ?? -1];
  if (first === undefined) return undefined;
  const width = groups[first.group]?.size ?? 1;
  const by = said.reduce((mask, { check }) => mask | (checks[check]?.says.by ?? 0), 0);
  const right = new Float64Array(dims.of(by).size * width).fill(1);
  let anyhow = 1;
  for (const { check, option } of said) {
    const { says, options } = checks[check] ?? first;
    const rows = dims.within(by, says.by);
    anyhow /= options;
    for (let at = 0; at < right.length; at++) {
      const row = rows[Math.floor(at / width)] ?? 0;
      right[at] = (right[at] ?? 0) * (says.chances[row * says.width + option * width + (at % width)] ?? 0);
    }
  }
  return { group: first.group, source: first.source, by, right, anyhow };
}

/** Circumstances that hang together by what was told, with the weight of each of their combinations. */
interface Part {
  readonly mask: number;
  /** Adds up to 1. */
  readonly weights: Float64Array;
}

/** A group of which something was told, under one cause. */
interface Told {
  readonly group: number;
  readonly by: number;
  readonly heard: readonly Heard[];
  /** P(what was told of it | combination of `by`), showing and well. */
  readonly chances: readonly [Float64Array, Float64Array];
}

class CauseSum {
  /** P(what was told | cause). */
  readonly total: number;
  readonly #tables: SignTables;
  readonly #cause: CauseTables;
  readonly #told: ReadonlyMap<number, Told>;
  /** Showing and well: P(it | what was told), and what is then known of the circumstances. */
  readonly #share: readonly [number, number];
  readonly #parts: readonly [readonly Part[], readonly Part[]];
  readonly #known = new Map<number, Float64Array>();

  constructor(tables: SignTables, cause: CauseTables, heard: readonly Heard[]) {
    this.#tables = tables;
    this.#cause = cause;
    const groups = [...new Set(heard.map(({ group }) => group))];
    this.#told = new Map(
      groups.map((group) => [
        group,
        this.#toldOf(
          group,
          heard.filter((one) => one.group === group),
        ),
      ]),
    );
    const masks = joinedMasks([...this.#told.values()].map(({ by }) => by));
    const showing = this.#partsOf(masks, SHOWING);
    const well = cause.well > 0 ? this.#partsOf(masks, WELL) : { parts: [], total: 0 };
    const both = [showing.total * (1 - cause.well), well.total * cause.well] as const;
    this.total = both[0] + both[1];
    this.#share = [both[0] / this.total, both[1] / this.total];
    this.#parts = [showing.parts, well.parts];
  }

  #toldOf(group: number, heard: readonly Heard[]): Told {
    const { dims } = this.#tables;
    const table = this.#table(group);
    const by = heard.reduce((mask, one) => mask | one.by, table.by);
    const { size } = dims.of(by);
    const rows = dims.within(by, table.by);
    const chancesOf = (z: number): Float64Array =>
      Float64Array.from({ length: size }, (_, combination) => {
        const from = (rows[combination] ?? 0) * table.width;
        let sum = 0;
        for (let v = 0; v < table.width; v++) {
          const chance = table.chances[from + v] ?? 0;
          sum += chance * this.#heardIf(heard, by, combination, z, v);
        }
        return sum;
      });
    return {
      group,
      by,
      heard,
      chances: [chancesOf(SHOWING), this.#cause.well > 0 ? chancesOf(WELL) : new Float64Array(size)],
    };
  }

  #table(group: number): Table {
    const table = this.#cause.groups[group];
    if (table === undefined) throw new RangeError(`group ${group} is not in the tables`);
    return table;
  }

  /** P(all these answers | joint value, circumstances). */
  #heardIf(heard: readonly Heard[], by: number, combination: number, z: number, v: number): number {
    let product = 1;
    for (const one of heard) {
      const slip = this.#tables.slips[one.source] ?? 0;
      product *=
        (1 - slip) * this.#rightIf(one, by, combination, this.#seen(one.group, one.source, z, v)) + slip * one.anyhow;
    }
    return product;
  }

  #rightIf(one: Heard, by: number, combination: number, v: number): number {
    const row = this.#tables.dims.within(by, one.by)[combination] ?? 0;
    return one.right[row * this.#table(one.group).width + v] ?? 0;
  }

  /** What can be seen now of a joint value: the sound one while the trouble is well, except in memory. */
  #seen(group: number, source: number, z: number, v: number): number {
    const { sound = -1 } = this.#tables.groups[group] ?? {};
    return z === WELL && source !== MEMORY && sound >= 0 ? sound : v;
  }

  #partsOf(masks: readonly number[], z: number): { readonly parts: readonly Part[]; readonly total: number } {
    let total = 1;
    for (const told of this.#told.values()) if (told.by === 0) total *= told.chances[z]?.[0] ?? 0;
    const parts = masks.map((mask) => {
      const weights = this.#prior(mask).slice();
      for (const { by, chances } of this.#told.values()) {
        if (by === 0 || (by & mask) === 0) continue;
        const rows = this.#tables.dims.within(mask, by);
        for (let k = 0; k < weights.length; k++) weights[k] = (weights[k] ?? 0) * (chances[z]?.[rows[k] ?? 0] ?? 0);
      }
      const sum = weights.reduce((all, one) => all + one, 0);
      total *= sum;
      return { mask, weights: weights.map((one) => one / sum) };
    });
    return { parts, total };
  }

  /** Chances of the combinations of some circumstances where nothing was told. */
  #prior(mask: number): Float64Array {
    const { dims } = this.#tables;
    const { of, size } = dims.of(mask);
    return Float64Array.from({ length: size }, (_, k) =>
      of.reduce(
        (product, at) => product * (this.#cause.circumstances[at]?.[dims.within(mask, 1 << at)[k] ?? 0] ?? 0),
        1,
      ),
    );
  }

  /** Chances of the combinations of some circumstances after what was told. */
  #marginal(mask: number, z: number): Float64Array {
    const key = mask * 2 + z;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const { dims } = this.#tables;
    let rest = mask;
    const marginal = new Float64Array(dims.of(mask).size).fill(1);
    for (const part of this.#parts[z] ?? []) {
      const shared = part.mask & mask;
      if (shared === 0) continue;
      rest &= ~shared;
      multiply(
        marginal,
        dims.within(mask, shared),
        summed(part.weights, dims.within(part.mask, shared), dims.of(shared).size),
      );
    }
    if (rest !== 0) multiply(marginal, dims.within(mask, rest), this.#prior(rest));
    this.#known.set(key, marginal);
    return marginal;
  }

  /** Writes what each check would say next under this cause; only what the answers change where the rest is written already. */
  expect(next: Float64Array, cause: number, count: number, optionStart: Int32Array, onlyChanged: boolean): void {
    const changed = this.#parts[SHOWING].reduce((mask, part) => mask | part.mask, 0);
    const read = new Map<string, Expected>();
    for (const [check, table] of this.#tables.checks.entries()) {
      const start = optionStart[check] ?? 0;
      const told = this.#told.get(table.group);
      if (onlyChanged && told === undefined && this.#cause.well === 0 && (this.#by(check) & changed) === 0) continue;
      const chances = told === undefined ? this.#fresh(check) : this.#further(check, told, read);
      for (let option = 0; option < table.options; option++)
        next[(start + option) * count + cause] = chances[option] ?? 0;
    }
  }

  /** The circumstances that an answer hangs on. */
  #by(check: number): number {
    const { group, says } = this.#tables.checks[check] ?? { group: -1, says: { by: 0 } };
    return says.by | (this.#cause.groups[group]?.by ?? 0);
  }

  /** Of a group of which nothing was told yet. */
  #fresh(check: number): Float64Array {
    const { options, source } = this.#tables.checks[check] ?? { options: 0, source: 0 };
    const slip = this.#tables.slips[source] ?? 0;
    const chances = new Float64Array(options).fill(slip / options);
    for (const z of [SHOWING, WELL] as const) {
      if (this.#share[z] === 0) continue;
      const { by, chances: table } = this.#tables.expected(this.#cause, check, z === WELL && source !== MEMORY);
      const weights = this.#marginal(by, z);
      for (let k = 0; k < weights.length; k++) {
        const weight = this.#share[z] * (weights[k] ?? 0) * (1 - slip);
        for (let option = 0; option < options; option++)
          chances[option] = (chances[option] ?? 0) + weight * (table[k * options + option] ?? 0);
      }
    }
    return chances;
  }

  /** Of a group of which something was told: the source of the check may have slipped already. */
  #further(check: number, told: Told, read: Map<string, Expected>): Float64Array {
    const { options, source, says } = this.#tables.checks[check] ?? {
      options: 0,
      source: 0,
      says: { by: 0, width: 0, chances: [] },
    };
    const key = `${told.group} ${source} ${says.by}`;
    const expected = read.get(key) ?? this.#expected(told, source, says.by);
    read.set(key, expected);
    const { width } = this.#table(told.group);
    const rows = expected.right.length / width;
    return Float64Array.from({ length: options }, (_, option) => {
      let chance = expected.off / options;
      for (let row = 0; row < rows; row++) {
        const from = row * says.width + option * width;
        for (let v = 0; v < width; v++)
          chance += (expected.right[row * width + v] ?? 0) * (says.chances[from + v] ?? 0);
      }
      return chance;
    });
  }

  #expected(told: Told, source: number, by: number): Expected {
    const { dims } = this.#tables;
    const table = this.#table(told.group);
    const mask = told.by | by;
    const expected = { right: new Float64Array(dims.of(by).size * table.width), off: 0 };
    const at = {
      mask,
      told: dims.within(mask, told.by),
      table: dims.within(mask, table.by),
      by: dims.within(mask, by),
    };
    for (const z of [SHOWING, WELL] as const) {
      if (this.#share[z] === 0) continue;
      for (const [k, weight] of this.#marginal(mask, z).entries()) {
        const base = (this.#share[z] * weight) / (told.chances[z][at.told[k] ?? 0] ?? 1);
        this.#add(expected, {
          told,
          source,
          z,
          base,
          combination: k,
          mask,
          row: at.table[k] ?? 0,
          into: at.by[k] ?? 0,
        });
      }
    }
    return expected;
  }

  #add(expected: Expected, { told, source, z, base, combination, mask, row, into }: Adding): void {
    const table = this.#table(told.group);
    const slip = this.#tables.slips[source] ?? 0;
    const mine = told.heard.find((one) => one.source === source);
    const others = told.heard.filter((one) => one.source !== source);
    for (let v = 0; v < table.width; v++) {
      const chance = table.chances[row * table.width + v] ?? 0;
      const joint = base * chance * this.#heardIf(others, mask, combination, z, v);
      const seen = this.#seen(told.group, source, z, v);
      const right = mine === undefined ? 1 : this.#rightIf(mine, mask, combination, seen);
      const place = into * table.width + seen;
      expected.right[place] = (expected.right[place] ?? 0) + joint * (1 - slip) * right;
      expected.off += joint * slip * (mine?.anyhow ?? 1);
    }
  }
}

/** By the circumstances of a reading: P(joint value as it is seen, source right), and P(source slipped), after what was told. */
interface Expected {
  readonly right: Float64Array;
  off: number;
}

interface Adding {
  readonly told: Told;
  readonly source: number;
  readonly z: 0 | 1;
  readonly base: number;
  readonly combination: number;
  readonly mask: number;
  /** Row of the cause's table, and of the reading. */
  readonly row: number;
  readonly into: number;
}

/** Sets that share a circumstance become one. */
function joinedMasks(masks: readonly number[]): number[] {
  let joined: number[] = [];
  for (const mask of masks) {
    if (mask === 0) continue;
    const touching = joined.filter((one) => (one & mask) !== 0).reduce((all, one) => all | one, mask);
    joined = [...joined.filter((one) => (one & mask) === 0), touching];
  }
  return joined;
}

function multiply(into: Float64Array, places: Int32Array, by: Float64Array): void {
  for (let k = 0; k < into.length; k++) into[k] = (into[k] ?? 0) * (by[places[k] ?? 0] ?? 0);
}

function summed(weights: Float64Array, places: Int32Array, size: number): Float64Array {
  const sums = new Float64Array(size);
  for (let k = 0; k < weights.length; k++) sums[places[k] ?? 0] = (sums[places[k] ?? 0] ?? 0) + (weights[k] ?? 0);
  return sums;
}
