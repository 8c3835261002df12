// The next step of a walk over signs: ask, mend, or set side by side what is left.

import { atOnce } from '../at-once.ts';
import type { Compiled } from './compile.ts';
import type { InParts } from './in-parts.ts';
import type { Seen } from './posterior.ts';
import { findingsOf } from './posterior.ts';
import type { Likely } from './sign-likely.ts';
import { likelyInParts } from './sign-likely.ts';
import type { Price } from './sign-model.ts';
import type { SignState, Stand, WalkModel } from './sign-walk.ts';
import { standInParts } from './sign-walk.ts';
import { dangerOf, firstCheck } from './standing.ts';
import { isShown, Valuer } from './value.ts';

export type NextStep =
  | {
      readonly kind: 'ask';
      readonly check: string;
      /** `first`: danger comes before everything. `separates`: it spares more minutes than it costs. */
      readonly because: 'first' | 'separates';
    }
  | {
      readonly kind: 'fix';
      readonly fixClass: string;
      /** Chance of the class. */
      readonly chance: number;
      /** The answer that means danger, when that is why. */
      readonly danger?: Seen;
    }
  | {
      readonly kind: 'hand-on';
      /** Every known cause was set aside, the most questions were asked, or no check or fix is worth its minutes. */
      readonly because: 'no-cause-left' | 'questions-used-up' | 'nothing-separates';
    };

/** A repair that is dear waits while a cheaper one is likelier than this. Source: from-memory (judgement). */
const CHEAPER_FIRST = 0.1;
/** An answer contradicts a cause whose row makes it less likely than this part of what it is on average. Source: from-memory (judgement). */
const CONTRADICTED = 0.15;

/**
 * The next step. Total and deterministic, whatever the order of the answers. Dangers come first, then `first` checks in their order, then what
 * wastes the fewest minutes; a repair only from the chance on that its price asks for, and not while its cause was contradicted by one source
 * alone and another can still be asked. Source: Heckerman, Breese and Rommelse, Communications of the ACM 38(3), 1995, with a second step looked ahead.
 */
export const signStep = (model: WalkModel, state: SignState): NextStep => atOnce(signStepInParts(model, state));

/** The same a part at a time. */
export function* signStepInParts(model: WalkModel, state: SignState): InParts<NextStep> {
  const stand = yield* standInParts(model, state);
  const { compiled, standing } = stand;
  const danger = dangerOf(compiled, state);
  if (danger !== undefined)
    return { kind: 'fix', fixClass: danger.fixClass, chance: chanceOf(stand, danger.fixClass), danger: danger.answer };
  const first = firstCheck(compiled, standing);
  if (first >= 0) return { kind: 'ask', check: compiled.checks[first]?.id ?? '', because: 'first' };
  const lead = leadOf(model, stand, state);
  if (lead >= 0) return asks(compiled, lead);
  const likely = yield* likelyInParts(stand);
  const valuer = new Valuer(likely.compiled);
  const choice = yield* valuer.choose(likely.standing, compiled.settings.lookAhead);
  yield;
  if (choice.kind === 'ask') return asks(compiled, choice.at);
  if (choice.kind === 'fix') {
    const at = likely.classes[choice.at] ?? -1;
    const first = waitsFor(model, stand, likely, at, state) ?? freeFirst(model, likely, choice.at, state);
    if (first === undefined) return proposes(stand, at);
    if (first >= 0) return asks(compiled, first);
  }
  // However many minutes it may take: nothing is handed on that a question can still tell apart.
  const telling = choice.kind === 'hand-on' && standing.questions > 0 ? tellsMost(likely) : -1;
  if (telling >= 0) return asks(compiled, telling);
  return { kind: 'hand-on', because: whyHandOn(stand) };
}

/** Place of the check that an opening begins with, -1 where it has none or it was asked. */
function leadOf({ openings, tables }: WalkModel, stand: Stand, { opening }: SignState): number {
  const lead = openings.get(opening)?.row.lead;
  const at = lead === undefined ? -1 : (tables.checkAt.get(lead) ?? -1);
  return at >= 0 && isAskable(stand, at) ? at : -1;
}

const asks = ({ checks }: Compiled, at: number): NextStep => ({
  kind: 'ask',
  check: checks[at]?.id ?? '',
  because: 'separates',
});

function proposes(stand: Stand, at: number): NextStep {
  const fixClass = stand.compiled.classes[at]?.fixClass ?? '';
  return { kind: 'fix', fixClass, chance: chanceOf(stand, fixClass) };
}

/** Chance of a fix class, 0 to 1. */
const chanceOf = ({ compiled, standing }: Stand, fixClass: string): number =>
  findingsOf(compiled, standing.chances).find((one) => one.fixClass === fixClass)?.chance ?? 0;

/** Undefined where the repair need not wait; else the check to ask first, or -1 where none can be asked. */
function waitsFor(model: WalkModel, stand: Stand, likely: Likely, at: number, state: SignState): number | undefined {
  const { compiled, standing } = stand;
  const fixClass = compiled.classes[at]?.fixClass ?? '';
  const chance = chanceOf(stand, fixClass);
  const price = priceOf(model, fixClass);
  const second = secondSource(model, stand, at, state);
  if (second !== undefined) return second;
  const isLikely = chance >= proposedFrom(model, price, state);
  if (isLikely && !(price === 'dear' && cheaperIsLikely(model, stand))) return undefined;
  const telling = standing.questions > 0 ? tellsMost(likely) : -1;
  // What is likely enough waits for a cheaper one only as long as a question can tell the two apart.
  return isLikely && telling < 0 ? undefined : telling;
}

/**
 * The chance from which a repair is proposed, 0 to 1. The more was asked, the less the next question tells: then work is tried on a lesser chance.
 * What is dear never is, and what is cheap needs none.
 */
function proposedFrom(model: WalkModel, price: Price, state: SignState): number {
  const { proposeFrom, patience } = model.settings;
  if (price !== 'work') return proposeFrom[price];
  const beyond = Math.max(0, knownRows(model, state).length - patience.after);
  return proposeFrom.work * Math.max(patience.least, 1 - patience.each * beyond);
}

/** Checks of which something is known, or that cannot be made; what comes before everything else is left out. */
function knownRows({ tables }: WalkModel, { answers, skipped }: SignState) {
  const known = new Set([...answers.map(({ check }) => check), ...skipped]);
  return tables.model.checks.filter(({ id, first }) => first !== true && known.has(id));
}

const priceOf = ({ tables }: WalkModel, fixClass: string): Price => tables.model.prices?.[fixClass] ?? 'work';

/** Something that is not dear is likely too. */
function cheaperIsLikely(model: WalkModel, stand: Stand): boolean {
  return stand.compiled.classes.some(
    ({ fixClass }) => priceOf(model, fixClass) !== 'dear' && chanceOf(stand, fixClass) > CHEAPER_FIRST,
  );
}

/** The check that can be asked and tells most for its minutes; -1 where none tells anything. */
function tellsMost(likely: Likely): number {
  let best = -1;
  let most = 0;
  for (const check of likely.compiled.checks.keys()) {
    const bits = isAskable(likely, check) ? bitsOf(likely, check) : 0;
    const worth = bits / (likely.compiled.checkCost[check] ?? 1);
    if (bits < LEAST_BITS || worth <= most) continue;
    best = check;
    most = worth;
  }
  return best;
}

/** A question that costs nothing is asked before work where its answer takes the proposal back in so many cases, 0 to 1. Source: from-memory (judgement). */
const TAKEN_BACK = 0.1;

/** With so few answers one more is asked for nothing. Source: from-memory (judgement). */
const FEW_ANSWERS = 4;

/** Whether hardly anything was told or asked yet, and nothing looked at or measured; what comes before everything else is left out. */
function isEarly(model: WalkModel, state: SignState): boolean {
  const told = new Set(state.answers.map(({ check }) => check));
  const known = knownRows(model, state);
  return known.length < FEW_ANSWERS && known.every(({ id, source }) => source === 'memory' || !told.has(id));
}

/**
 * What people know without doing anything and would often enough leave the repair less likely than it must be to be proposed: asked before a
 * repair that is work, for nobody minds being asked, and everybody minds mending what was well. Undefined where there is none.
 */
function freeFirst(model: WalkModel, likely: Likely, at: number, state: SignState): number | undefined {
  const { tables, settings } = model;
  const price = priceOf(model, likely.compiled.classes[at]?.fixClass ?? '');
  if (price === 'cheap' || !isEarly(model, state)) return undefined;
  const from = settings.proposeFrom[price];
  let best: number | undefined;
  let most: number = TAKEN_BACK;
  for (const [check, row] of tables.model.checks.entries()) {
    if (row.source !== 'memory' || !isAskable(likely, check)) continue;
    const part = takenBackBy(likely, check, at, from) * (1 - (row.unsure ?? 0));
    if (part < most) continue;
    best = check;
    most = part;
  }
  return best;
}

/** How often the answer to a check leaves a class less likely than it must be to be proposed, 0 to 1. */
function takenBackBy({ compiled, standing }: Likely, check: number, at: number, from: number): number {
  const { optionStart, likelihood, classOf, classes } = compiled;
  const { chances } = standing;
  const sums = new Float64Array(classes.length);
  let elsewhere = 0;
  let total = 0;
  for (let option = optionStart[check] ?? 0; option < (optionStart[check + 1] ?? 0); option++) {
    sums.fill(0);
    let mass = 0;
    for (const [i, chance] of chances.entries()) {
      const one = chance * (likelihood[option * chances.length + i] ?? 0);
      const of = classOf[i] ?? -1;
      mass += one;
      if (of >= 0) sums[of] = (sums[of] ?? 0) + one;
    }
    total += mass;
    if ((sums[at] ?? 0) < from * mass) elsewhere += mass;
  }
  return total > 0 ? elsewhere / total : 0;
}

/** Below this a question is for nothing, bits. Source: from-memory (judgement). */
const LEAST_BITS = 0.02;

/** Bits that the answer to a check tells of the cause on average. Source: own-derivation, mutual information. */
function bitsOf({ compiled, standing }: Likely, check: number): number {
  const { optionStart, likelihood } = compiled;
  const { chances } = standing;
  const mass = chances.reduce((sum, chance) => sum + chance, 0);
  let bits = 0;
  for (let option = optionStart[check] ?? 0; option < (optionStart[check + 1] ?? 0); option++) {
    const row = option * chances.length;
    const mean = chances.reduce((sum, chance, i) => sum + chance * (likelihood[row + i] ?? 0), 0) / mass;
    for (const [i, chance] of chances.entries()) {
      const one = likelihood[row + i] ?? 0;
      if (chance * one > 0) bits += chance * one * Math.log2(one / mean);
    }
  }
  return bits;
}

/** A check of another source on the sign that contradicts the likeliest cause of a class, where only one source has spoken of it. */
function secondSource(model: WalkModel, stand: Stand, at: number, state: SignState): number | undefined {
  const cause = likeliestOf(stand, at);
  if (cause === undefined || stand.standing.questions === 0) return undefined;
  const told = toldOf(model, state);
  for (const { check, option, group } of told) {
    const sources = new Set(told.filter((one) => one.group === group).map(({ source }) => source));
    if (sources.size > 1 || !contradicts(model, cause, check, option)) continue;
    const other = model.tables.checks.findIndex(
      (one, i) => one.group === group && !sources.has(one.source) && isAskable(stand, i),
    );
    if (other >= 0) return other;
  }
  return undefined;
}

const isAskable = ({ compiled, standing }: Pick<Stand, 'compiled' | 'standing'>, check: number): boolean =>
  standing.open[check] === 1 && isShown(compiled, check, standing.holds);

function likeliestOf({ compiled, standing }: Stand, at: number): number | undefined {
  const from = at === 0 ? 0 : (compiled.classEnd[at - 1] ?? 0);
  const members = [...standing.chances.keys()].slice(from, compiled.classEnd[at]);
  return members.sort((a, b) => (standing.chances[b] ?? 0) - (standing.chances[a] ?? 0))[0];
}

function toldOf({ tables }: WalkModel, { answers }: SignState) {
  return answers.flatMap(({ check: id, option: name }) => {
    const check = tables.checkAt.get(id) ?? -1;
    const table = tables.checks[check];
    const option = tables.model.checks[check]?.options.indexOf(name) ?? -1;
    return table === undefined || option < 0 ? [] : [{ check, option, group: table.group, source: table.source }];
  });
}

function contradicts({ tables, settings }: WalkModel, cause: number, check: number, option: number): boolean {
  const mine = expectedOf(tables, cause, check, option);
  const usual = expectedOf(tables, tables.causes.length - 1, check, option);
  // As far as rows are believed.
  const { rowsDoubted: doubt } = settings;
  return mine < (doubt + (1 - doubt) * CONTRADICTED) * usual;
}

/** P(option | cause) with nothing told, the source right. */
function expectedOf(tables: WalkModel['tables'], at: number, check: number, option: number): number {
  const cause = tables.causes[at];
  if (cause === undefined) return 0;
  const { by, chances } = tables.expected(cause, check, false);
  const options = tables.checks[check]?.options ?? 1;
  return tables.prior(cause, by).reduce((sum, weight, k) => sum + weight * (chances[k * options + option] ?? 0), 0);
}

function whyHandOn({ compiled, standing }: Stand): 'no-cause-left' | 'questions-used-up' | 'nothing-separates' {
  if (findingsOf(compiled, standing.chances).every(({ chance }) => chance === 0)) return 'no-cause-left';
  return standing.questions === 0 ? 'questions-used-up' : 'nothing-separates';
}
