// A model of signs made ready to reckon with: words become chances, each cause gets one table per group of signs, each check one per option.
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
  /** P(option | cause, circumstances) of a check whose source is right, at [combination x options + option]; of a sound layout with `well`. */
  readonly expected: (cause: CauseTables, check: number, well: boolean) => Expectation;
}

export interface Expectation {
  readonly by: number;
  readonly chances: Float64Array;
}

/** Throws RangeError naming the row when an id or a value is unknown, a value has no line, or a table hangs on more than three circumstances. */
export function signTables(model: SignModel, slips: Readonly<Record<Source, number>>): SignTables {
  const groups = groupsOf(model);
  const dims = new DimsTable(model.circumstances.map(({ values }) => Object.keys(values).length));
  const builder = new Builder(model, groups, dims);
  const checks = model.checks.map((check) => builder.check(check));
  return {
    model,
    groups,
    dims,
    causes: model.causes.map((cause) => builder.cause(cause)),
    checks,
    expected: expectations(checks, groups, dims),
    slips: SOURCES.map((source) => slips[source]),
    checkAt: new Map(model.checks.map(({ id }, at) => [id, at])),
  };
}

/** Reckoned when first asked for, and remembered. */
function expectations(
  checks: readonly CheckTable[],
  groups: readonly Group[],
  dims: DimsTable,
): SignTables['expected'] {
  const known = new Map<CauseTables, (Expectation | undefined)[]>();
  return (cause, check, well) => {
    const mine = known.get(cause) ?? [];
    known.set(cause, mine);
    const at = check * 2 + (well ? 1 : 0);
    const found = mine[at] ?? expectation(cause, checks[check], groups, dims, well);
    mine[at] = found;
    return found;
  };
}

function expectation(
  cause: CauseTables,
  check: CheckTable | undefined,
  groups: readonly Group[],
  dims: DimsTable,
  well: boolean,
): Expectation {
  const table = cause.groups[check?.group ?? -1];
  if (check === undefined || table === undefined) return { by: 0, chances: new Float64Array(0) };
  const { sound = -1 } = groups[check.group] ?? {};
  const shown = well && sound >= 0 ? onlySound(table.width, sound) : table;
  const { says, options } = check;
  const by = says.by | shown.by;
  const rows = dims.within(by, shown.by);
  const readings = dims.within(by, says.by);
  const chances = new Float64Array(rows.length * options);
  for (let at = 0; at < chances.length; at++) {
    const k = Math.floor(at / options);
    const from = (rows[k] ?? 0) * table.width;
    const reading = (readings[k] ?? 0) * says.width + (at % options) * table.width;
    let chance = 0;
    for (let v = 0; v < table.width; v++) chance += (shown.chances[from + v] ?? 0) * (says.chances[reading + v] ?? 0);
    chances[at] = chance;
  }
  return { by, chances };
}

/** The table of a layout without trouble. */
function onlySound(width: number, sound: number): Table {
  const chances = new Float64Array(width);
  chances[sound] = 1;
  return { by: 0, width, chances };
}

function groupsOf({ signs, circumstances }: SignModel): Group[] {
  const members = new Map<string, SignRow[]>();
  for (const sign of signs) {
    const id = sign.group ?? sign.id;
    members.set(id, [...(members.get(id) ?? []), sign]);
  }
  const ofSigns = [...members].map(([id, rows]) => ({
    id,
    signs: rows,
    size: rows.reduce((product, { values }) => product * values.length, 1),
    sound: rows.reduce((at, { values, sound }) => at * values.length + values.indexOf(sound), 0),
    circumstance: -1,
  }));
  const ofLayouts = circumstances.map(({ id, values }, circumstance) => {
    const names = Object.keys(values);
    return { id, signs: [{ id, values: names }], size: names.length, sound: -1, circumstance };
  });
  return [...ofSigns, ...ofLayouts];
}

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
      circumstances: this.#model.circumstances.map(({ id, values }) => {
        const needed = cause.needs?.[id];
        return normalised(
          Object.entries(values).map(([value, share]) => (needed?.includes(value) === false ? 0 : share)),
        );
      }),
      well: cause.well === undefined ? 0 : WORD_CHANCE[cause.well],
      groups: this.#groups.map((group) => this.#shown(cause, group)),
    };
  }

  #checkNeed(cause: string, id: string, values: readonly string[]): void {
    const row = this.#model.circumstances[this.#circumstanceAt.get(id) ?? -1];
    const stray = row === undefined ? id : values.find((value) => row.values[value] === undefined);
    if (stray !== undefined) throw new RangeError(`cause "${cause}": "${stray}" is no circumstance`);
  }

  #shown(cause: SignCause, group: Group): Table {
    if (group.circumstance >= 0) return this.#itself(group);
    const shows = group.signs.map(({ id }) => cause.shows[id] ?? 'unaffected');
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
    let chances = Float64Array.of(1);
    let told: readonly ReadonlyMap<string, string>[] = [circumstances];
    const last = group.signs.length - 1;
    for (const [i, { id, values }] of group.signs.entries()) {
      const mixes = told.map((one) => this.#mix(shows[i] ?? 'unaffected', id, one, cause));
      const before = chances;
      chances = Float64Array.from({ length: before.length * values.length }, (_, at) => {
        const earlier = Math.floor(at / values.length);
        return (before[earlier] ?? 0) * (mixes[earlier]?.[at % values.length] ?? 0);
      });
      if (i < last) told = told.flatMap((one) => values.map((value) => new Map([...one, [id, value]])));
    }
    return chances;
  }

  /** A circumstance is what it is. */
  #itself({ circumstance, size }: Group): Table {
    const chances = new Float64Array(size * size);
    for (let i = 0; i < size; i++) chances[i * size + i] = 1;
    return { by: 1 << circumstance, width: size, chances };
  }

  readonly #mixes = new Map<Mix, Float64Array>();

  /** Chances of the values of a sign, in their order. */
  #mix(shows: Shows, sign: string, told: ReadonlyMap<string, string>, cause: string): Float64Array {
    const row = this.#signs.get(sign);
    if (row === undefined) throw new RangeError(`cause "${cause}": sign "${sign}" is not known`);
    const name = `cause "${cause}", sign "${sign}"`;
    if (shows === 'unaffected') return this.#sharesOf(row.unaffected, row.values, name);
    if (!isBy(shows)) return this.#sharesOf(shows, row.values, name);
    const inner = shows.is[told.get(shows.by) ?? ''];
    if (inner === undefined) throw new RangeError(`${name}: nothing is said by "${shows.by}" ${told.get(shows.by)}`);
    return this.#mix(inner, sign, told, cause);
  }

  /** Remembered: families of causes share their mixes. */
  #sharesOf(mix: Mix, values: readonly string[], name: string): Float64Array {
    const known = this.#mixes.get(mix);
    if (known !== undefined) return known;
    const found = shares(mix, values, name);
    this.#mixes.set(mix, found);
    return found;
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
    const { of, size } = this.#dims.of(by);
    return Array.from({ length: size }, (_, combination) => {
      const values = of.map((at): [string, string] => {
        const { id = '', values: all = {} } = this.#model.circumstances[at] ?? {};
        return [id, Object.keys(all)[this.#dims.within(by, 1 << at)[combination] ?? 0] ?? ''];
      });
      return row(new Map(values));
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
  const weights = values.map((value) => {
    const word = mix[value];
    return word === undefined ? unnamed : WORD_CHANCE[word];
  });
  if (weights.every((weight) => weight === 0)) throw new RangeError(`${name}: no value has a word`);
  return normalised(weights);
}

function normalised(weights: readonly number[]): Float64Array {
  const total = weights.reduce((sum, one) => sum + one, 0);
  return Float64Array.from(weights, (one) => one / total);
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
