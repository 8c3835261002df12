// A walk over signs: what was told becomes chances of causes, and those the next question, a repair, or the few that are left side by side.

import { atOnce } from '../at-once.ts';
import type { Compiled, DiagnosisSettings, FixClass } from './compile.ts';
import { bitsOf } from './compile.ts';
import type { InParts } from './in-parts.ts';
import { eachInParts } from './in-parts.ts';
import { SOMETHING_ELSE } from './model.ts';
import type { Seen } from './posterior.ts';
import { lastAnswers } from './posterior.ts';
import type { Belief } from './sign-belief.ts';
import { believeInParts } from './sign-belief.ts';
import type { OpeningRow, Price, SignCause, SignModel, Source } from './sign-model.ts';
import type { CauseTables, SignTables, Table } from './sign-tables.ts';
import { signTables, valuesOf } from './sign-tables.ts';
import type { WalkState } from './standing.ts';
import { openOf } from './standing.ts';
import type { Standing } from './value.ts';

export interface WalkSettings extends DiagnosisSettings {
  /** Share of answers that slipped, by where they come from, 0 to 1. Source: from-memory (judgement). */
  readonly slips: Readonly<Record<Source, number>>;
  /** Share of signs that are not as the row of the true cause has them, 0 to 1: then they are as with any trouble. Source: from-memory (judgement). */
  readonly rowsDoubted: number;
  /** Share of people whose title fits in half only, 0 to 1. Source: from-memory (judgement). */
  readonly halfFits: number;
  /** A repair is proposed from this chance on, by its price. Source: from-memory (judgement). */
  readonly proposeFrom: Readonly<Record<Price, number>>;
  /**
   * Once more than `after` things are known, each further one lowers what work is proposed from by `each` of it, down to `least` of it. Fractions.
   * Source: from-memory (judgement).
   */
  readonly patience: { readonly after: number; readonly each: number; readonly least: number };
}

/** A model ready to be asked: everything that no answer changes. */
export interface WalkModel {
  readonly settings: WalkSettings;
  /** Causes class by class; the last is `something-else`, whose row is the average of all. */
  readonly tables: SignTables;
  /** All but chances of answers, which hang on what was told. */
  readonly compiled: Compiled;
  readonly openings: ReadonlyMap<string, Opened>;
  /** P(cause) over all troubles, in the order of the causes. */
  readonly overall: Float64Array;
}

/** What an opening makes of the causes. */
export interface Opened {
  readonly row: OpeningRow;
  /** Reckoned when first asked for. */
  readonly chances: () => Float64Array;
  /** Checks with what this opening withholds, and what each needs here. */
  readonly checks: Compiled['checks'];
  readonly needs: Int32Array;
}

/** The state of a walk that began with an opening. */
export interface SignState extends WalkState {
  readonly opening: string;
}

/** How things stand. */
export interface Stand {
  /** All but chances of answers: see `likelyOnly`. */
  readonly compiled: Compiled;
  readonly standing: Standing;
  readonly belief: Belief;
}

/** Throws RangeError naming the row as `signTables` does, and where an opening names an unknown cause or sign. */
export const walkModel = (model: SignModel, settings: WalkSettings): WalkModel =>
  atOnce(walkModelInParts(model, settings));

/** The same a part at a time. */
export function* walkModelInParts(model: SignModel, settings: WalkSettings): InParts<WalkModel> {
  const { causes, classes } = byClass(model.causes);
  const ordered = { ...model, causes };
  const plain = yield* signTables(ordered, settings.slips);
  for (const opening of model.openings) {
    assertOpening(opening, model);
    yield;
  }
  const overall = overallShares(ordered, settings.elseShare);
  yield;
  const other = yield* average(plain, overall);
  yield;
  const tables = { ...plain, causes: [...(yield* doubted(plain.causes, other, settings.rowsDoubted)), other] };
  const openings = yield* eachInParts(model.openings, (row): [string, Opened] => {
    let known: Float64Array | undefined;
    const chances = (): Float64Array => {
      known ??= openedBy(row, tables, causes, overall, settings);
      return known;
    };
    return [row.id, { row, chances, ...allowedBy(row, model) }];
  });
  return {
    settings,
    tables,
    openings: new Map(openings),
    overall,
    compiled: compiledOf(ordered, classes, settings, overall, tables.optionStart),
  };
}

function assertOpening({ id, shares, says }: OpeningRow, { causes, signs }: SignModel): void {
  const unknown = Object.keys(shares).find((cause) => !causes.some((one) => one.id === cause));
  if (unknown !== undefined) throw new RangeError(`opening "${id}": cause "${unknown}" is not known`);
  if (!(Object.values(shares).reduce((sum, share) => sum + share, 0) > 0))
    throw new RangeError(`opening "${id}": no cause has a share`);
  for (const [sign, values] of Object.entries(says)) {
    const row = signs.find((one) => one.id === sign);
    const value = values.find((one) => row?.values.includes(one) !== true);
    const stray = row === undefined ? sign : value;
    if (stray !== undefined) throw new RangeError(`opening "${id}": "${stray}" is not known`);
  }
}

function allowedBy({ id, withheld = [], needs = {}, lead }: OpeningRow, { checks }: SignModel) {
  const known = new Set(checks.map((check) => check.id));
  const stray = [...withheld, ...Object.keys(needs), ...(lead === undefined ? [] : [lead])].find(
    (check) => !known.has(check),
  );
  if (stray !== undefined) throw new RangeError(`opening "${id}": check "${stray}" is not known`);
  return {
    checks: checks.map((check) => (withheld.includes(check.id) ? { ...check, withheld: true } : check)),
    needs: Int32Array.from(checks, (check) => bitsOf([...check.needs, ...(needs[check.id] ?? [])])),
  };
}

function byClass(rows: readonly SignCause[]): {
  readonly causes: SignCause[];
  readonly classes: Map<string, SignCause[]>;
} {
  const classes = new Map<string, SignCause[]>();
  for (const row of rows) classes.set(row.fixClass, [...(classes.get(row.fixClass) ?? []), row]);
  return { causes: [...classes.values()].flat(), classes };
}

/** P(cause) over all openings, with `something-else` last. */
function overallShares({ causes, openings }: SignModel, elseShare: number): Float64Array {
  const all = openings.reduce((sum, { often }) => sum + often, 0);
  const shares = causes.map(({ id }) =>
    openings.reduce((sum, { often, shares: of }) => {
      const total = Object.values(of).reduce((one, share) => one + share, 0);
      return sum + ((often / all) * (of[id] ?? 0)) / total;
    }, 0),
  );
  const silent = causes.find((_, at) => !((shares[at] ?? 0) > 0));
  if (silent !== undefined) throw new RangeError(`cause "${silent.id}": no opening has a share for it`);
  return Float64Array.from([...shares.map((share) => share * (1 - elseShare)), elseShare]);
}

/** The row of `something-else`: for each sign what is met on average, with no circumstance that it needs. */
function* average({ causes, groups, mean: meanOf, model }: SignTables, overall: Float64Array): InParts<CauseTables> {
  const total = causes.reduce((sum, _, at) => sum + (overall[at] ?? 0), 0);
  return {
    circumstances: model.circumstances.map(({ values }) => {
      const sum = Object.values(values).reduce((all, one) => all + one, 0);
      return Float64Array.from(Object.values(values), (one) => one / sum);
    }),
    well: 0,
    groups: yield* eachInParts([...groups.entries()], ([group, { size, circumstance }]) => {
      const own = causes[0]?.groups[group];
      if (circumstance >= 0 && own !== undefined) return own;
      const chances = new Float64Array(size);
      for (const [at, cause] of causes.entries()) {
        const mean = meanOf(cause, group);
        for (let v = 0; v < size; v++) chances[v] = (chances[v] ?? 0) + ((overall[at] ?? 0) / total) * (mean[v] ?? 0);
      }
      return { by: 0, width: size, chances };
    }),
  };
}

/**
 * Rows as far as they are believed: in so many cases a group of signs shows what is met on average, whatever the row of the true cause says. A
 * sign that speaks against a cause then never counts for more than that, however many looks at it agree. Alike tables stay one and the same.
 */
function* doubted(causes: readonly CauseTables[], other: CauseTables, doubt: number): InParts<CauseTables[]> {
  const known = new Map<Table, Table>();
  const doubtful = (table: Table, group: number): Table => {
    const usual = other.groups[group]?.chances;
    if (usual?.length !== table.width) return table;
    const found = known.get(table);
    if (found !== undefined) return found;
    const chances = table.chances.map((one, at) => (1 - doubt) * one + doubt * (usual[at % table.width] ?? 0));
    const made = { ...table, chances };
    known.set(table, made);
    return made;
  };
  return yield* eachInParts(causes, (cause) => ({ ...cause, groups: cause.groups.map(doubtful) }));
}

/**
 * A title fits in half only where no more than one of the signs it says can be counted on to hold; no cause falls below this part of its
 * share. Source: from-memory.
 */
const NEVER_BELOW = 0.02;

/** P(cause | opening): its shares, and for those whose title fits in half the causes under which one of its signs holds. */
function openedBy(
  { shares, says }: OpeningRow,
  tables: SignTables,
  causes: readonly SignCause[],
  overall: Float64Array,
  { halfFits, elseShare }: WalkSettings,
): Float64Array {
  const total = Object.values(shares).reduce((sum, share) => sum + share, 0);
  const said = saidBy(tables, says);
  const half = causes.map((_, at) => (overall[at] ?? 0) * Math.max(NEVER_BELOW, bestFit(tables, at, said)));
  const halves = half.reduce((sum, one) => sum + one, 0);
  const chances = causes.map(
    (cause, at) => (1 - halfFits) * ((shares[cause.id] ?? 0) / total) + halfFits * ((half[at] ?? 0) / halves),
  );
  return Float64Array.from([...chances.map((one) => one * (1 - elseShare)), elseShare]);
}

/** P(one of these values) of the sign that fits best. */
function bestFit({ causes, mean }: SignTables, at: number, says: readonly Said[]): number {
  const cause = causes[at];
  if (cause === undefined) return 0;
  const fits = says.map(({ group, holds }) =>
    mean(cause, group).reduce((sum, chance, joint) => (holds[joint] === true ? sum + chance : sum), 0),
  );
  return Math.max(0, ...fits);
}

/** A sign that an opening says: its group, and whether each joint value of that has one of the values said. */
interface Said {
  readonly group: number;
  readonly holds: readonly boolean[];
}

const saidBy = ({ groups }: SignTables, says: OpeningRow['says']): Said[] =>
  Object.entries(says).flatMap(([sign, values]) =>
    groups.flatMap((of, group) => {
      const place = of.signs.findIndex(({ id }) => id === sign);
      if (place < 0) return [];
      const holds = Array.from({ length: of.size }, (_, joint) => {
        const value = valuesOf(of, joint)[place];
        return value !== undefined && values.includes(value);
      });
      return [{ group, holds }];
    }),
  );

function compiledOf(
  { checks, causes, harms = {} }: SignModel,
  classes: ReadonlyMap<string, readonly SignCause[]>,
  settings: WalkSettings,
  overall: Float64Array,
  optionStart: Int32Array,
): Compiled {
  const ids = [...causes.map(({ id }) => id), SOMETHING_ELSE];
  let end = 0;
  const ends = [...classes.values()].map((rows) => {
    end += rows.length;
    return end;
  });
  const rows = [...classes].map(([fixClass, members]): FixClass => {
    const shares = members.map(({ id }) => overall[ids.indexOf(id)] ?? 0);
    const total = shares.reduce((sum, one) => sum + one, 0);
    const minutes = members.reduce((sum, { minutes: of }, i) => sum + of * (shares[i] ?? 0), 0) / total;
    return { fixClass, minutes, faults: members.map(({ id }) => id) };
  });
  const classCost = Float64Array.from(rows, ({ minutes }) => minutes + settings.wrongFixMinutes);
  return {
    settings,
    faults: [...causes, { id: SOMETHING_ELSE, fixClass: SOMETHING_ELSE, minutes: 1 }],
    share: overall,
    classes: rows,
    classEnd: Int32Array.from(ends),
    classOf: Int32Array.from([...[...classes.values()].flatMap((members, at) => members.map(() => at)), -1]),
    classCost,
    perCost: classCost.map((cost) => 1 / cost),
    harms: rows.map(({ fixClass }) => (harms[fixClass] ?? []).map((id) => ids.indexOf(id)).filter((at) => at >= 0)),
    checks,
    optionStart,
    likelihood: new Float64Array(0),
    checkCost: Float64Array.from(
      checks,
      ({ minutes, risk, unsure = 0 }) => (minutes + settings.riskMinutes[risk]) / (1 - unsure),
    ),
    needs: Int32Array.from(checks, ({ needs }) => bitsOf(needs)),
    establishes: Int32Array.from(
      checks.flatMap(({ options, establishes }) => options.map((id) => bitsOf(establishes?.[id] ?? []))),
    ),
    checkAt: new Map(checks.map(({ id }, i) => [id, i])),
  };
}

/** How much dearer a check gets by each check with the same tool that could not be done. Source: from-memory (judgement). */
const DEARER = 0.5;

/**
 * Chances after what was told, exact under the assumption of one cause, with the checks that can still be asked. Total: unknown ids are passed
 * over; an unknown opening is one that says nothing. "I cannot check that" changes no chance, only what is asked.
 */
export const standAt = (model: WalkModel, state: SignState): Stand => atOnce(standInParts(model, state));

/** The same a part at a time. */
export function* standInParts(model: WalkModel, state: SignState): InParts<Stand> {
  const { tables, compiled } = model;
  const aside = new Set(state.setAside.filter((one) => one !== SOMETHING_ELSE));
  const prior = priorOf(model, state).map((share, at) => (aside.has(compiled.faults[at]?.fixClass ?? '') ? 0 : share));
  yield;
  const belief = yield* believeInParts(tables, state.answers);
  const chances = prior.map((share, at) => share * (belief.likelihood[at] ?? 0));
  const total = chances.reduce((sum, one) => sum + one, 0);
  if (total > 0) for (let at = 0; at < chances.length; at++) chances[at] = (chances[at] ?? 0) / total;
  const { checks, needs } = model.openings.get(state.opening) ?? compiled;
  const now = { ...compiled, checks, needs, share: prior, checkCost: costs(compiled, state) };
  return { compiled: now, standing: { chances, ...openOf(now, state) }, belief };
}

function costs({ checks, checkCost, checkAt }: Compiled, { skipped }: WalkState): Float64Array {
  const failed = new Map<string, number>();
  for (const id of skipped) {
    const tool = checks[checkAt.get(id) ?? -1]?.tool;
    if (tool !== undefined && tool !== 'eyes') failed.set(tool, (failed.get(tool) ?? 0) + 1);
  }
  return checkCost.map((cost, at) => cost * (1 + DEARER * (failed.get(checks[at]?.tool ?? '') ?? 0)));
}

/**
 * A title holds more than the signs it says: what practice knows to stand behind such words. So much of it stays once all its signs were told in
 * other ways, 0 to 1. Source: from-memory (judgement); with none of it the first proposals of the cases to work with were too unsure, see decision 019.
 */
const TITLE_STAYS = 0.5;

/** The opening counts for the signs it says that were not told in any other way: what says the same replaces that part of it. */
function priorOf({ tables, openings, overall }: WalkModel, { opening, answers }: SignState): Float64Array {
  const opened = openings.get(opening);
  if (opened === undefined) return overall;
  const signs = Object.keys(opened.row.says);
  const told = new Set(
    lastAnswers(answers).flatMap(({ check }) => {
      const reads = tables.model.checks[tables.checkAt.get(check) ?? -1]?.reads ?? [];
      return typeof reads === 'string' ? [reads] : reads;
    }),
  );
  const untold = signs.length === 0 ? 1 : signs.filter((sign) => !told.has(sign)).length / signs.length;
  const left = TITLE_STAYS + (1 - TITLE_STAYS) * untold;
  const chances = opened.chances();
  if (left === 1) return chances;
  const mixed = overall.map((share, at) => share ** (1 - left) * (chances[at] ?? 0) ** left);
  const known = mixed.reduce((sum, one, at) => (at < mixed.length - 1 ? sum + one : sum), 0);
  const other = overall[mixed.length - 1] ?? 0;
  return mixed.map((one, at) => (at < mixed.length - 1 ? (one / known) * (1 - other) : other));
}

/** Answers that count: the later of two to one check, known ones only. */
export const knownAnswers = ({ tables }: WalkModel, answers: readonly Seen[]): Seen[] =>
  lastAnswers(answers).filter(({ check, option }) => {
    const row = tables.model.checks[tables.checkAt.get(check) ?? -1];
    return row?.options.includes(option) === true;
  });
