// A model of signs made ready to reckon with: words become chances, each cause gets one table per group of signs, each check one per option.
import type { InParts } from './in-parts.ts';
import { eachInParts } from './in-parts.ts';
import { WORD_CHANCE } from './model.ts';
import { DimsTable, maskOf } from './sign-dims.ts';
import type {
  Gives,
  Line,
  Mix,
  Reading,
  Shows,
  SignCause,
  SignCheck,
  SignModel,
  SignRow,
  Source,
} from './sign-model.ts';
import { SOURCES } from './sign-model.ts';

/** Signs that are reckoned with together, or one circumstance: every combination of their values is one joint value. */
export interface Group {
  readonly id: string;
  readonly signs: readonly { readonly id: string; readonly values: readonly string[] }[];
  readonly size: number;
  /** Joint value of a layout without trouble; -1 for a circumstance, which does not come and go. */
  readonly sound: number;
  /** Joint value seen while a trouble that comes and goes is well; -1 where it is seen as it is. */
  readonly seenWell: number;
  /** Place of the circumstance, -1 for signs. */
  readonly circumstance: number;
}

/** A table over the values of a few circumstances: one row of `width` chances for each of their combinations. */
export interface Table {
  /** Set of circumstances, at most three, as a mask of their places. */
  readonly by: number;
  readonly width: number;
  readonly chances: Float64Array;
}

export interface CauseTables {
  /** P(value) of each circumstance where the cause exists. */
  readonly circumstances: readonly Float64Array[];
  /** P(well just now), 0 to 1. */
  readonly well: number;
  /** P(joint value | circumstances) for each group. */
  readonly groups: readonly Table[];
}

export interface CheckTable {
  readonly group: number;
  readonly source: number;
  readonly options: number;
  /** P(option | joint value) without slips at [option x size + joint value]. */
  readonly says: Table;
}

export interface SignTables {
  readonly model: SignModel;
  readonly groups: readonly Group[];
  readonly dims: DimsTable;
  readonly causes: readonly CauseTables[];
  readonly checks: readonly CheckTable[];
  /** P(slip) of each source, in the order of SOURCES. */
  readonly slips: readonly number[];
  readonly checkAt: ReadonlyMap<string, number>;
  /** Place of the first option of each check among all options, with one more entry for the end. */
  readonly optionStart: Int32Array;
  /** Chances of the combinations of some circumstances where the cause exists. */
  readonly prior: (cause: CauseTables, mask: number) => Float64Array;
  /** P(option | cause, circumstances) of a check whose source is right, at [combination x options + option]; of a sound layout with `isSound`. */
  readonly expected: (cause: CauseTables, check: number, isSound: boolean) => Expectation;
  /** P(option | cause) of a check, slips and all, with these chances of the circumstances that `expected` hangs on. */
  readonly said: (cause: CauseTables, check: number, isSound: boolean, weights: Float64Array) => Float64Array;
  /** The same before any answer. */
  readonly usual: (cause: CauseTables, check: number, isSound: boolean) => Float64Array;
  /** P(joint value of a group | cause) over all circumstances in which it exists. */
  readonly mean: (cause: CauseTables, group: number) => Float64Array;
}

export interface Expectation {
  readonly by: number;
  readonly chances: Float64Array;
}

/** Throws RangeError naming the row when an id or a value is unknown, a value has no line, or a table hangs on more than three circumstances. */
export function* signTables(model: SignModel, slips: Readonly<Record<Source, number>>): InParts<SignTables> {
  const groups = groupsOf(model);
  const dims = new DimsTable(model.circumstances.map(({ values }) => Object.keys(values).length));
  const builder = new Builder(model, groups, dims);
  const checks = yield* eachInParts(model.checks, (check) => builder.check(check));
  const rates = SOURCES.map((source) => slips[source]);
  const causes = yield* eachInParts(model.causes, (cause) => builder.cause(cause));
  const optionStart = new Int32Array(checks.length + 1);
  for (const [i, { options }] of checks.entries()) optionStart[i + 1] = (optionStart[i] ?? 0) + options;
  return {
    model,
    groups,
    dims,
    causes,
    checks,
    slips: rates,
    checkAt: new Map(model.checks.map(({ id }, at) => [id, at])),
    optionStart,
    ...remembered(checks, groups, dims, rates),
  };
}

/** What is reckoned when it is first asked for, and remembered: causes that make the same of a group share it. */
function remembered(
  checks: readonly CheckTable[],
  groups: readonly Group[],
  dims: DimsTable,
  slips: readonly number[],
): Pick<SignTables, 'prior' | 'expected' | 'said' | 'usual' | 'mean'> {
  const priors = new Map<CauseTables['circumstances'], Map<number, Float64Array>>();
  const prior: SignTables['prior'] = ({ circumstances }, mask) => {
    const mine = getOr(priors, circumstances, () => new Map());
    return getOr(mine, mask, () => priorOf(circumstances, dims, mask));
  };
  const shown = new Map<Table, (Expectation | undefined)[]>();
  const expected: SignTables['expected'] = (cause, check, isSound) => {
    const { group } = at(checks, check);
    const { seenWell } = at(groups, group);
    const table = isSound && seenWell >= 0 ? onlySound(groups, group) : at(cause.groups, group);
    const mine = getOr(shown, table, () => []);
    const found = mine[check] ?? expectation(table, at(checks, check), dims);
    mine[check] = found;
    return found;
  };
  const said: SignTables['said'] = (cause, check, isSound, weights) => {
    const { options, source } = at(checks, check);
    return averaged(expected(cause, check, isSound).chances, options, weights, slips[source] ?? 0);
  };
  const shared = new Map<Expectation, Map<CauseTables['circumstances'], Float64Array>>();
  const usualOf = (cause: CauseTables, check: number, isSound: boolean): Float64Array => {
    const found = expected(cause, check, isSound);
    const mine = getOr(shared, found, () => new Map());
    return getOr(mine, cause.circumstances, () => said(cause, check, isSound, prior(cause, found.by)));
  };
  const usually = new Map<CauseTables, (Float64Array | undefined)[]>();
  const usual: SignTables['usual'] = (cause, check, isSound) => {
    const mine = getOr(usually, cause, () => []);
    const place = check * 2 + (isSound ? 1 : 0);
    const found = mine[place] ?? usualOf(cause, check, isSound);
    mine[place] = found;
    return found;
  };
  const sounds = new Map<number, Table>();
  const onlySound = (all: readonly Group[], group: number): Table =>
    getOr(sounds, group, () => {
      const { size, sound } = at(all, group);
      const chances = new Float64Array(size);
      chances[sound] = 1;
      return { by: 0, width: size, chances };
    });
  const means = new Map<Table, Map<CauseTables['circumstances'], Float64Array>>();
  const mean: SignTables['mean'] = (cause, group) => {
    const table = at(cause.groups, group);
    const mine = getOr(means, table, () => new Map());
    return getOr(mine, cause.circumstances, () => averaged(table.chances, table.width, prior(cause, table.by), 0));
  };
  return { prior, expected, said, usual, mean };
}

function getOr<Key, Value>(known: Map<Key, Value>, key: Key, make: () => Value): Value {
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = make();
  known.set(key, made);
  return made;
}

function at<Row>(rows: readonly Row[], place: number): Row {
  const row = rows[place];
  if (row === undefined) throw new RangeError(`${place} is not in the tables`);
  return row;
}

function priorOf(circumstances: CauseTables['circumstances'], dims: DimsTable, mask: number): Float64Array {
  const { of, size } = dims.of(mask);
  const chances = new Float64Array(size).fill(1);
  for (const one of of) {
    const values = dims.within(mask, 1 << one);
    const shares = circumstances[one];
    for (let k = 0; k < size; k++) chances[k] = (chances[k] ?? 0) * (shares?.[values[k] ?? 0] ?? 0);
  }
  return chances;
}

function expectation(table: Table, { says, options }: CheckTable, dims: DimsTable): Expectation {
  const by = says.by | table.by;
  const rows = dims.within(by, table.by);
  const readings = dims.within(by, says.by);
  const chances = new Float64Array(rows.length * options);
  for (let k = 0; k < rows.length; k++) {
    const from = (rows[k] ?? 0) * table.width;
    for (let option = 0; option < options; option++) {
      const reading = (readings[k] ?? 0) * says.width + option * table.width;
      let chance = 0;
      for (let v = 0; v < table.width; v++) chance += (table.chances[from + v] ?? 0) * (says.chances[reading + v] ?? 0);
      chances[k * options + option] = chance;
    }
  }
  return { by, chances };
}

/** Over the circumstances; whoever slipped gives any option. */
function averaged(chances: Float64Array, options: number, weights: Float64Array, slip: number): Float64Array {
  const mean = new Float64Array(options).fill(slip / options);
  for (let k = 0; k < weights.length; k++) {
    const weight = (1 - slip) * (weights[k] ?? 0);
    for (let option = 0; option < options; option++)
      mean[option] = (mean[option] ?? 0) + weight * (chances[k * options + option] ?? 0);
  }
  return mean;
}

function groupsOf({ signs, circumstances }: SignModel): Group[] {
  const members = new Map<string, SignRow[]>();
  for (const sign of signs) {
    const id = sign.group ?? sign.id;
    members.set(id, [...(members.get(id) ?? []), sign]);
  }
  const ofSigns = [...members].map(([id, rows]) => {
    const sound = rows.reduce((at, { values, sound: value }) => at * values.length + values.indexOf(value), 0);
    return {
      id,
      signs: rows,
      size: rows.reduce((product, { values }) => product * values.length, 1),
      sound,
      seenWell: rows.every(({ stands }) => stands === true) ? -1 : sound,
      circumstance: -1,
    };
  });
  const ofLayouts = circumstances.map(({ id, values }, circumstance) => {
    const names = Object.keys(values);
    return { id, signs: [{ id, values: names }], size: names.length, sound: -1, seenWell: -1, circumstance };
  });
  return [...ofSigns, ...ofLayouts];
}

/** Most circumstances that one row may hang on. Source: own-choice. */
const MOST_CIRCUMSTANCES = 3;

class Builder {
  readonly #model: SignModel;
  readonly #groups: readonly Group[];
  readonly #dims: DimsTable;
  readonly #signs: ReadonlyMap<string, SignRow>;
  readonly #circumstanceAt: ReadonlyMap<string, number>;

  constructor(model: SignModel, groups: readonly Group[], dims: DimsTable) {
    this.#model = model;
    this.#groups = groups;
    this.#dims = dims;
    this.#signs = new Map(model.signs.map((sign) => [sign.id, sign]));
    this.#circumstanceAt = new Map(model.circumstances.map(({ id }, at) => [id, at]));
  }

  cause(cause: SignCause): CauseTables {
    for (const id of Object.keys(cause.shows)) {
      if (!this.#signs.has(id)) throw new RangeError(`cause "${cause.id}": sign "${id}" is not known`);
    }
    for (const [id, values] of Object.entries(cause.needs ?? {})) this.#checkNeed(cause.id, id, values);
    return {
      circumstances: this.#circumstances(cause.needs ?? {}),
      well: cause.well === undefined ? 0 : WORD_CHANCE[cause.well],
      groups: this.#groups.map((group) => this.#shown(cause, group)),
    };
  }

  readonly #layouts = new Map<string, CauseTables['circumstances']>();

  /** One and the same for all causes that need the same. */
  #circumstances(needs: NonNullable<SignCause['needs']>): CauseTables['circumstances'] {
    return getOr(this.#layouts, JSON.stringify(needs), () =>
      this.#model.circumstances.map(({ id, values }) => {
        const needed = needs[id];
        return normalised(
          Float64Array.from(Object.entries(values), ([value, share]) =>
            needed?.includes(value) === false ? 0 : share,
          ),
        );
      }),
    );
  }

  #checkNeed(cause: string, id: string, values: readonly string[]): void {
    const row = this.#model.circumstances[this.#circumstanceAt.get(id) ?? -1];
    const stray = row === undefined ? id : values.find((value) => row.values[value] === undefined);
    if (stray !== undefined) throw new RangeError(`cause "${cause}": "${stray}" is no circumstance`);
  }

  readonly #tables = new Map<string, Table>();

  /** One and the same for all causes that make the same of it. */
  #shown(cause: SignCause, group: Group): Table {
    const shows = group.signs.map(({ id }) => cause.shows[id] ?? 'unaffected');
    const key = `${group.id} ${shows.map((one) => this.#nameOf(one)).join(' ')}`;
    return getOr(this.#tables, key, () =>
      group.circumstance >= 0 ? this.#itself(group) : this.#tableOf(cause, group, shows),
    );
  }

  readonly #names = new Map<Shows, string>();

  /** Alike for what says the same. */
  #nameOf(shows: Shows): string {
    return typeof shows === 'string' ? '' : getOr(this.#names, shows, () => JSON.stringify(shows));
  }

  #tableOf(cause: SignCause, group: Group, shows: readonly Shows[]): Table {
    const by = this.#hangsOn(shows, `cause "${cause.id}", "${group.id}"`);
    const rows = this.#overAll(by, (values) => this.#joint(group, shows, values, cause.id));
    return { by, width: group.size, chances: joined(rows) };
  }

  /** P(joint value) of a group: each sign by the circumstances and the signs before it. */
  #joint(
    group: Group,
    shows: readonly Shows[],
    circumstances: ReadonlyMap<string, string>,
    cause: string,
  ): Float64Array {
    let chances: Float64Array = Float64Array.of(1);
    for (const [i, { id, values }] of group.signs.entries()) {
      const mixes = Array.from(chances, (_, earlier) =>
        this.#mix(
          shows[i] ?? 'unaffected',
          id,
          (by) => circumstances.get(by) ?? earlierValue(group, i, earlier, by),
          cause,
        ),
      );
      chances = timesEach(chances, mixes, values.length);
    }
    return chances;
  }

  /** A circumstance is what it is. */
  #itself({ circumstance, size }: Group): Table {
    const chances = new Float64Array(size * size);
    for (let i = 0; i < size; i++) chances[i * size + i] = 1;
    return { by: 1 << circumstance, width: size, chances };
  }

  readonly #mixes = new Map<SignRow, Map<Mix, Float64Array>>();

  /** Chances of the values of a sign, in their order; one and the same for one and the same mix. */
  #mix(shows: Shows, sign: string, told: (by: string) => string | undefined, cause: string): Float64Array {
    const row = this.#signs.get(sign);
    if (row === undefined) throw new RangeError(`cause "${cause}": sign "${sign}" is not known`);
    if (typeof shows !== 'string' && isBy(shows)) {
      const inner = shows.is[told(shows.by) ?? ''];
      if (inner !== undefined) return this.#mix(inner, sign, told, cause);
      throw new RangeError(`cause "${cause}", sign "${sign}": nothing is said by "${shows.by}" ${told(shows.by)}`);
    }
    const mix = shows === 'unaffected' ? row.unaffected : shows;
    const mine = getOr(this.#mixes, row, () => new Map());
    return getOr(mine, mix, () => shares(mix, row.values, `cause "${cause}", sign "${sign}"`));
  }

  /** The circumstances that are asked for anywhere in these. */
  #hangsOn(specs: readonly (Shows | Reading)[], name: string): number {
    const found = new Set<number>();
    const visit = (spec: Shows | Reading): void => {
      if (typeof spec === 'string' || !isBy(spec)) return;
      const at = this.#circumstanceAt.get(spec.by);
      if (at !== undefined) found.add(at);
      else if (!this.#signs.has(spec.by))
        throw new RangeError(`${name}: "${spec.by}" is neither sign nor circumstance`);
      for (const inner of Object.values<Shows | Reading>(spec.is)) visit(inner);
    };
    for (const spec of specs) visit(spec);
    if (found.size > MOST_CIRCUMSTANCES)
      throw new RangeError(`${name}: hangs on ${found.size} circumstances, at most ${MOST_CIRCUMSTANCES}`);
    return maskOf([...found]);
  }

  #overAll(by: number, row: (values: ReadonlyMap<string, string>) => Float64Array): Float64Array[] {
    return getOr(this.#combinations, by, () => this.#combinationsOf(by)).map(row);
  }

  readonly #combinations = new Map<number, readonly ReadonlyMap<string, string>[]>();

  /** Circumstance id to its value, for each combination. */
  #combinationsOf(by: number): ReadonlyMap<string, string>[] {
    const { of, size } = this.#dims.of(by);
    return Array.from({ length: size }, (_, combination) => {
      const values = of.map((at): [string, string] => {
        const { id = '', values: all = {} } = this.#model.circumstances[at] ?? {};
        return [id, Object.keys(all)[this.#dims.within(by, 1 << at)[combination] ?? 0] ?? ''];
      });
      return new Map(values);
    });
  }

  check(check: SignCheck): CheckTable {
    const name = `check "${check.id}"`;
    const reads = typeof check.reads === 'string' ? [check.reads] : check.reads;
    const at = this.#groups.findIndex(({ signs }) => signs.some(({ id }) => id === reads[0]));
    const group = this.#groups[at];
    const stray = reads.find((id) => !group?.signs.some((sign) => sign.id === id));
    if (group === undefined || stray !== undefined) {
      throw new RangeError(`${name}: "${stray ?? reads[0]}" is no sign of the group`);
    }
    const by = this.#hangsOn([check.reading], name);
    const rows = this.#overAll(by, (circumstances) => this.#said(check, group, reads, circumstances));
    const width = check.options.length * group.size;
    return {
      group: at,
      source: SOURCES.indexOf(check.source),
      options: check.options.length,
      says: { by, width, chances: joined(rows) },
    };
  }

  #said(
    check: SignCheck,
    group: Group,
    reads: readonly string[],
    circumstances: ReadonlyMap<string, string>,
  ): Float64Array {
    const reading = this.#readingOf(check, circumstances);
    const chances = new Float64Array(check.options.length * group.size);
    for (let joint = 0; joint < group.size; joint++) {
      const values = new Map(valuesOf(group, joint).map((value, i) => [group.signs[i]?.id ?? '', value]));
      const gives = givenBy(reading, reads, values);
      if (gives === undefined)
        throw new RangeError(`check "${check.id}": nothing is said for ${[...values.values()].join(', ')}`);
      const mix: Mix = typeof gives === 'string' ? { [gives]: 'always' } : gives;
      const said = shares(mix, check.options, `check "${check.id}"`, 0);
      for (const i of check.options.keys()) chances[i * group.size + joint] = said[i] ?? 0;
    }
    return chances;
  }

  #readingOf(
    { id, reading }: SignCheck,
    circumstances: ReadonlyMap<string, string>,
  ): Readonly<Record<string, Gives>> | readonly Line[] {
    let found: Reading | undefined = reading;
    while (found !== undefined && isBy(found)) found = found.is[circumstances.get(found.by) ?? ''];
    if (found === undefined) throw new RangeError(`check "${id}": a circumstance is missing in its reading`);
    return found;
  }
}

function givenBy(
  reading: Readonly<Record<string, Gives>> | readonly Line[],
  reads: readonly string[],
  values: ReadonlyMap<string, string>,
): Gives | undefined {
  if (!isLines(reading)) return reading[values.get(reads[0] ?? '') ?? ''];
  return reading.find(({ where }) => Object.entries(where).every(([sign, any]) => any.includes(values.get(sign) ?? '')))
    ?.gives;
}

const isLines = (reading: Readonly<Record<string, Gives>> | readonly Line[]): reading is readonly Line[] =>
  Array.isArray(reading);

/** Told apart by their `by`, which no value of a sign is called. */
const isBy = <Spec extends object>(spec: Spec): spec is Extract<Spec, { readonly by: string }> =>
  Object.hasOwn(spec, 'by') && Object.hasOwn(spec, 'is');

/** The value of a sign in a joint value of the first `count` signs of its group. */
function earlierValue({ signs }: Group, count: number, joint: number, sign: string): string | undefined {
  let rest = joint;
  for (let at = count - 1; at >= 0; at--) {
    const { id, values } = signs[at] ?? { id: '', values: [] };
    if (id === sign) return values[rest % values.length];
    rest = Math.floor(rest / values.length);
  }
  return undefined;
}

/** Names of the values of each sign that a joint value stands for. */
export function valuesOf({ signs }: Group, joint: number): string[] {
  const names: string[] = [];
  let rest = joint;
  for (const { values } of [...signs].reverse()) {
    names.unshift(values[rest % values.length] ?? '');
    rest = Math.floor(rest / values.length);
  }
  return names;
}

/** The words of a mix as shares of 1, in the order of the values; a value without a word gets `unnamed`. */
function shares(mix: Mix, values: readonly string[], name: string, unnamed: number = WORD_CHANCE.never): Float64Array {
  const stray = Object.keys(mix).find((value) => !values.includes(value));
  if (stray !== undefined) throw new RangeError(`${name}: value "${stray}" is not known`);
  const weights = new Float64Array(values.length);
  for (let at = 0; at < weights.length; at++) {
    const word = mix[values[at] ?? ''];
    weights[at] = word === undefined ? unnamed : WORD_CHANCE[word];
  }
  if (weights.every((weight) => weight === 0)) throw new RangeError(`${name}: no value has a word`);
  return normalised(weights);
}

/** In place. */
function normalised(weights: Float64Array): Float64Array {
  let total = 0;
  for (const one of weights) total += one;
  for (let at = 0; at < weights.length; at++) weights[at] = (weights[at] ?? 0) / total;
  return weights;
}

/** Each chance times those of the mix that follows it. */
function timesEach(chances: Float64Array, mixes: readonly Float64Array[], width: number): Float64Array {
  const product = new Float64Array(chances.length * width);
  for (const [at, mix] of mixes.entries()) {
    for (let v = 0; v < width; v++) product[at * width + v] = (chances[at] ?? 0) * (mix[v] ?? 0);
  }
  return product;
}

function joined(rows: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(rows.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const row of rows) {
    all.set(row, at);
    at += row.length;
  }
  return all;
}
