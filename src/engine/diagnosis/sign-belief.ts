// How likely each cause is after what was told, and what each check would say next: exact sums over circumstances, over whether a trouble
// that comes and goes shows just now, and over whether a source of answers slipped. See docs/decisions/019.
import type { InParts } from './in-parts.ts';
import { eachInParts } from './in-parts.ts';
import type { Seen } from './posterior.ts';
import type { CauseTables, SignTables, Table } from './sign-tables.ts';

const MEMORY = 0;

/** Showing just now, and well just now. */
const SHOWING = 0;
const WELL = 1;

export interface Belief {
  /** P(what was told | cause), in the order of the causes. */
  readonly likelihood: Float64Array;
  /**
   * P(option | cause, what was told) at [option of all checks x places + place], for the causes at these places, each of which must be able to
   * bring about what was told. Where `open` is given, options of the checks that are not 1 in it stay 0. Cause by cause.
   */
  readonly expect: (places: readonly number[], open?: Uint8Array) => InParts<Float64Array>;
}

/** Answers to the checks of one group from one source: they slip together or not at all. */
interface Heard {
  readonly group: number;
  readonly source: number;
  /** The circumstances that their readings hang on. */
  readonly by: number;
  /** P(these answers | joint value, source right) at [combination of `by` x values + value]. */
  readonly right: Float64Array;
  /** The same whether it slipped or not. */
  readonly mixed: Float64Array;
  /** The same if the source slipped: one over the number of options, for each. */
  readonly anyhow: number;
}

/**
 * Exact chances of what was told under each cause, and of each answer that could come next. Total: unknown answers are passed over, of two to
 * one check the later one counts. Cause by cause. Source: own-derivation, Bayes.
 */
export function* believeInParts(tables: SignTables, answers: readonly Seen[]): InParts<Belief> {
  const teller = new Teller(tables, heardOf(tables, answers));
  const sums = yield* eachInParts(tables.causes, (cause) => new CauseSum(tables, cause, teller));
  return {
    likelihood: Float64Array.from(sums, ({ total }) => total),
    *expect(places, open) {
      const next = new Float64Array((tables.optionStart.at(-1) ?? 0) * places.length);
      for (const [i, place] of places.entries()) {
        sums[place]?.expect(next, i, places.length, open);
        yield;
      }
      return next;
    },
  };
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
  { checks, groups, dims, slips }: SignTables,
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
  const slip = slips[first.source] ?? 0;
  const mixed = right.map((one) => (1 - slip) * one + slip * anyhow);
  return { group: first.group, source: first.source, by, right, mixed, anyhow };
}

/** A group of which something was told, under the causes that make one and the same of it. */
interface Told {
  readonly table: Table;
  /** Joint value of the group while the trouble is well, -1 where it does not come and go. */
  readonly sound: number;
  readonly by: number;
  readonly heard: readonly Heard[];
  /** P(what was told of it | combination of `by`), showing and well. */
  readonly chances: readonly [Float64Array, Float64Array];
}

/** What was told, group by group; reckoned once for all causes that make the same of a group. */
class Teller {
  readonly groups: readonly number[];
  readonly #tables: SignTables;
  readonly #heard: readonly Heard[];
  readonly #known = new Map<Table, Told>();

  constructor(tables: SignTables, heard: readonly Heard[]) {
    this.#tables = tables;
    this.#heard = heard;
    this.groups = [...new Set(heard.map(({ group }) => group))];
  }

  told(group: number, table: Table): Told {
    const known = this.#known.get(table) ?? this.#toldOf(group, table);
    this.#known.set(table, known);
    return known;
  }

  #toldOf(group: number, table: Table): Told {
    const { dims, groups } = this.#tables;
    const heard = this.#heard.filter((one) => one.group === group);
    const by = heard.reduce((mask, one) => mask | one.by, table.by);
    const { seenWell: sound = -1 } = groups[group] ?? {};
    const chances = [SHOWING, WELL].map((z) => {
      const said = saidIf(this.#tables, heard, by, z === WELL ? sound : -1, table.width);
      return summedOver(table, dims.within(by, table.by), said);
    });
    const [showing = new Float64Array(0), well = showing] = chances;
    return { table, sound, by, heard, chances: [showing, well] };
  }
}

/**
 * P(all these answers | joint value, circumstances) at [combination of `by` x width + value]. While the trouble is well, what is seen now is
 * the value `sound` (-1: it shows, or the sign does not come and go); what is remembered is not.
 */
function saidIf({ dims }: SignTables, heard: readonly Heard[], by: number, sound: number, width: number): Float64Array {
  const said = new Float64Array(dims.of(by).size * width).fill(1);
  for (const one of heard) {
    const rows = dims.within(by, one.by);
    const seen = one.source === MEMORY ? -1 : sound;
    for (let k = 0; k < rows.length; k++) {
      const from = (rows[k] ?? 0) * width;
      for (let v = 0; v < width; v++) {
        const at = k * width + v;
        said[at] = (said[at] ?? 0) * (one.mixed[from + (seen >= 0 ? seen : v)] ?? 0);
      }
    }
  }
  return said;
}

/** Sum over the joint values, for each combination of circumstances. */
function summedOver({ width, chances }: Table, rows: Int32Array, said: Float64Array): Float64Array {
  const sums = new Float64Array(rows.length);
  for (let k = 0; k < sums.length; k++) {
    const from = (rows[k] ?? 0) * width;
    let sum = 0;
    for (let v = 0; v < width; v++) sum += (chances[from + v] ?? 0) * (said[k * width + v] ?? 0);
    sums[k] = sum;
  }
  return sums;
}

/** Circumstances that hang together by what was told, with the weight of each of their combinations. */
interface Part {
  readonly mask: number;
  /** Adds up to 1. */
  readonly weights: Float64Array;
}

class CauseSum {
  /** P(what was told | cause). */
  readonly total: number;
  readonly #tables: SignTables;
  readonly #cause: CauseTables;
  readonly #told = new Map<number, Told>();
  /** Showing and well: P(it | what was told), and what is then known of the circumstances. */
  readonly #share: readonly [number, number];
  readonly #parts: readonly [readonly Part[], readonly Part[]];
  readonly #known = new Map<number, Float64Array>();

  constructor(tables: SignTables, cause: CauseTables, teller: Teller) {
    this.#tables = tables;
    this.#cause = cause;
    for (const group of teller.groups) this.#told.set(group, teller.told(group, this.#table(group)));
    const masks = joinedMasks([...this.#told.values()].map(({ by }) => by));
    const showing = this.#partsOf(masks, SHOWING);
    const well = cause.well > 0 ? this.#partsOf(masks, WELL) : { parts: [], total: 0 };
    const both = [showing.total * (1 - cause.well), well.total * cause.well] as const;
    this.total = both[0] + both[1];
    this.#share = [both[0] / this.total, both[1] / this.total];
    this.#parts = [showing.parts, well.parts];
  }

  #table(group: number): Table {
    const table = this.#cause.groups[group];
    if (table === undefined) throw new RangeError(`group ${group} is not in the tables`);
    return table;
  }

  #partsOf(masks: readonly number[], z: 0 | 1): { readonly parts: readonly Part[]; readonly total: number } {
    const { dims } = this.#tables;
    let total = 1;
    for (const told of this.#told.values()) if (told.by === 0) total *= told.chances[z][0] ?? 0;
    const parts = masks.map((mask) => {
      const weights = this.#tables.prior(this.#cause, mask).slice();
      for (const { by, chances } of this.#told.values()) {
        if ((by & mask) !== 0) multiply(weights, dims.within(mask, by), chances[z]);
      }
      let sum = 0;
      for (const one of weights) sum += one;
      total *= sum;
      for (let k = 0; k < weights.length; k++) weights[k] = (weights[k] ?? 0) / sum;
      return { mask, weights };
    });
    return { parts, total };
  }

  /** Chances of the combinations of some circumstances after what was told. */
  #marginal(mask: number, z: 0 | 1): Float64Array {
    const key = mask * 2 + z;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const { dims } = this.#tables;
    let rest = mask;
    const marginal = new Float64Array(dims.of(mask).size).fill(1);
    for (const part of this.#parts[z]) {
      const shared = part.mask & mask;
      if (shared === 0) continue;
      rest &= ~shared;
      multiply(
        marginal,
        dims.within(mask, shared),
        summed(part.weights, dims.within(part.mask, shared), dims.of(shared).size),
      );
    }
    if (rest !== 0) multiply(marginal, dims.within(mask, rest), this.#tables.prior(this.#cause, rest));
    this.#known.set(key, marginal);
    return marginal;
  }

  /** Writes what each open check would say next under this cause. */
  expect(next: Float64Array, place: number, places: number, open: Uint8Array | undefined): void {
    const { checks, optionStart } = this.#tables;
    const changed = this.#parts[SHOWING].reduce((mask, part) => mask | part.mask, 0);
    const read = new Map<string, Expected>();
    for (let check = 0; check < checks.length; check++) {
      if (open !== undefined && open[check] !== 1) continue;
      const chances = this.#next(check, changed, read);
      const start = optionStart[check] ?? 0;
      for (let option = 0; option < chances.length; option++)
        next[(start + option) * places + place] = chances[option] ?? 0;
    }
  }

  #next(check: number, changed: number, read: Map<string, Expected>): Float64Array {
    const { group = -1, says = { by: 0 } } = this.#tables.checks[check] ?? {};
    const told = this.#told.get(group);
    if (told !== undefined) return this.#further(check, told, read);
    // What was told changes only a part of what is expected: the rest stays as it is before any answer.
    const asBefore = ((says.by | this.#table(group).by) & changed) === 0;
    const [showing, well] = this.#share;
    if (well === 0) return this.#fresh(check, SHOWING, asBefore);
    if (showing === 0) return this.#fresh(check, WELL, asBefore);
    const [one, other] = [this.#fresh(check, SHOWING, asBefore), this.#fresh(check, WELL, asBefore)];
    return one === other ? one : mixed(one, showing, other, well);
  }

  /** Of a group of which nothing was told yet. */
  #fresh(check: number, z: 0 | 1, asBefore: boolean): Float64Array {
    const isSound = z === WELL && this.#tables.checks[check]?.source !== MEMORY;
    if (asBefore) return this.#tables.usual(this.#cause, check, isSound);
    const { by } = this.#tables.expected(this.#cause, check, isSound);
    return this.#tables.said(this.#cause, check, isSound, this.#marginal(by, z));
  }

  /** Of a group of which something was told: the source of the check may have slipped already. */
  #further(check: number, told: Told, read: Map<string, Expected>): Float64Array {
    const { options, source, says } = this.#tables.checks[check] ?? {
      options: 0,
      source: 0,
      says: { by: 0, width: 0, chances: [] },
    };
    const key = `${told.heard[0]?.group} ${source} ${says.by}`;
    const expected = read.get(key) ?? this.#expected(told, source, says.by);
    read.set(key, expected);
    const { width } = told.table;
    const chances = new Float64Array(options).fill(expected.off / options);
    const rows = expected.right.length / width;
    for (let option = 0; option < options; option++) {
      for (let row = 0; row < rows; row++) {
        const from = row * says.width + option * width;
        for (let v = 0; v < width; v++)
          chances[option] =
            (chances[option] ?? 0) + (expected.right[row * width + v] ?? 0) * (says.chances[from + v] ?? 0);
      }
    }
    return chances;
  }

  #expected(told: Told, source: number, by: number): Expected {
    const { size } = this.#tables.dims.of(by);
    const expected = { right: new Float64Array(size * told.table.width), off: 0 };
    for (const z of [SHOWING, WELL] as const) {
      if (this.#share[z] > 0) this.#add(expected, told, source, by, z);
    }
    return expected;
  }

  #add(expected: Expected, told: Told, source: number, by: number, z: 0 | 1): void {
    const { dims } = this.#tables;
    const { table, heard, chances } = told;
    const mask = told.by | by;
    const marginal = this.#marginal(mask, z);
    const toldAt = dims.within(mask, told.by);
    const sound = z === WELL ? told.sound : -1;
    const mine = heard.find((one) => one.source === source);
    const said = saidIf(
      this.#tables,
      heard.filter((one) => one !== mine),
      mask,
      sound,
      table.width,
    );
    const reader: Reader = {
      mine,
      mineAt: dims.within(mask, mine?.by ?? 0),
      slip: this.#tables.slips[source] ?? 0,
      seen: source === MEMORY ? -1 : sound,
      width: table.width,
    };
    const [tableAt, into] = [dims.within(mask, table.by), dims.within(mask, by)];
    for (let k = 0; k < marginal.length; k++) {
      const base = (this.#share[z] * (marginal[k] ?? 0)) / (chances[z][toldAt[k] ?? 0] ?? 1);
      for (let v = 0; v < table.width; v++) {
        const chance = table.chances[(tableAt[k] ?? 0) * table.width + v] ?? 0;
        add(expected, reader, k, v, into[k] ?? 0, base * chance * (said[k * table.width + v] ?? 0));
      }
    }
  }
}

/** A source that is asked again, or for the first time. */
interface Reader {
  /** What it said already. */
  readonly mine: Heard | undefined;
  readonly mineAt: Int32Array;
  readonly slip: number;
  /** The joint value that it sees in place of the true one, -1 for the true one. */
  readonly seen: number;
  /** Joint values. */
  readonly width: number;
}

/** Adds the chance of one joint value in one combination of circumstances, which count to `row` of the reading. */
function add(
  expected: Expected,
  { mine, mineAt, slip, seen, width }: Reader,
  k: number,
  v: number,
  row: number,
  joint: number,
): void {
  const value = seen >= 0 ? seen : v;
  const right = mine?.right[(mineAt[k] ?? 0) * width + value] ?? 1;
  expected.right[row * width + value] = (expected.right[row * width + value] ?? 0) + joint * (1 - slip) * right;
  expected.off += joint * slip * (mine?.anyhow ?? 1);
}

/** By the circumstances of a reading: P(joint value as it is seen, source right), and P(source slipped), after what was told. */
interface Expected {
  readonly right: Float64Array;
  off: number;
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

function mixed(one: Float64Array, share: number, other: Float64Array, rest: number): Float64Array {
  const mix = new Float64Array(one.length);
  for (let i = 0; i < mix.length; i++) mix[i] = share * (one[i] ?? 0) + rest * (other[i] ?? 0);
  return mix;
}

function multiply(into: Float64Array, places: Int32Array, by: Float64Array): void {
  for (let k = 0; k < into.length; k++) into[k] = (into[k] ?? 0) * (by[places[k] ?? 0] ?? 0);
}

function summed(weights: Float64Array, places: Int32Array, size: number): Float64Array {
  const sums = new Float64Array(size);
  for (let k = 0; k < weights.length; k++) sums[places[k] ?? 0] = (sums[places[k] ?? 0] ?? 0) + (weights[k] ?? 0);
  return sums;
}
