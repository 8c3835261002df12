// What a check or a repair is worth, in minutes wasted on average. The work of the right repair is paid whatever is done,
// so it does not count: a cause that is the only one left costs nothing to try, and no check is asked to confirm it.
import type { Compiled } from './compile.ts';
import { bitsOf } from './compile.ts';
import type { InParts } from './in-parts.ts';
import { OF_THE_LAYOUT } from './model.ts';
import { Weigher } from './weigh.ts';

/** Preconditions that must have been shown to hold; the others are lines to do first. Source: own-choice. */
const SHOWN = bitsOf(['nothing-got-hot', 'load-test-passed', 'labels-read', 'parts-agree', ...OF_THE_LAYOUT]);

/** Chances, checks that could be asked and preconditions shown to hold, as one reckons with them. */
export interface Standing {
  readonly chances: Float64Array;
  /** 1 for a check that is neither asked nor out of reach. */
  readonly open: Uint8Array;
  /** Bits in the order of PRECONDITIONS. */
  readonly holds: number;
  /** How many questions may still be asked. */
  readonly questions: number;
}

export type Choice =
  | { readonly kind: 'ask'; readonly at: number; readonly wasted: number }
  | { readonly kind: 'fix'; readonly at: number; readonly wasted: number }
  | { readonly kind: 'hand-on'; readonly wasted: number };

/** From this far apart a check tells two groups of faults apart. Source: from-memory (judgement). */
const TELLS = 0.6;

/** A check of so few minutes is worth asking though the harm is unlikely, and though it tells less. Source: from-memory (judgement). */
const QUICK = 4;
const TELLS_QUICKLY = 0.35;

/** Gains smaller than this, in minutes, are none. Source: own-choice. */
const NO_GAIN = 1e-9;

/** Whether all that must have been shown for this check holds. */
export function isShown(compiled: Compiled, check: number, holds: number): boolean {
  return ((compiled.needs[check] ?? 0) & SHOWN & ~holds) === 0;
}

/** Chooses with one compiled model; holds the scratch arrays, so that nothing is made in the inner loops. */
export class Valuer {
  readonly #compiled: Compiled;
  readonly #weigher: Weigher;
  readonly #branch: Float64Array;
  readonly #values: Float64Array;

  constructor(compiled: Compiled) {
    this.#compiled = compiled;
    this.#weigher = new Weigher(compiled);
    this.#branch = new Float64Array(compiled.faults.length);
    this.#values = new Float64Array(compiled.checks.length);
  }

  /** The choice with the fewest minutes wasted that does no harm. A part at a time. */
  *choose(standing: Standing, ahead: Compiled['settings']['lookAhead']): InParts<Choice> {
    const choice = yield* this.#cheapest(standing, ahead);
    return choice.kind === 'fix' ? this.#harmless(standing, choice) : choice;
  }

  /** The choice with the fewest minutes wasted; ties go to the fix, then to the check that looks better one step ahead. */
  *#cheapest(standing: Standing, ahead: Compiled['settings']['lookAhead']): InParts<Choice> {
    const { chances, holds, questions } = standing;
    this.#weigher.perBit = Number.POSITIVE_INFINITY;
    const ranked = questions > 0 ? yield* this.#rank(standing) : [];
    const now = ranked.filter((at) => isShown(this.#compiled, at, holds)).slice(0, Math.max(1, ahead.checks));
    const next = ranked.slice(0, ahead.second);
    let best: Choice = { kind: 'hand-on', wasted: sum(chances) * this.#compiled.settings.callMinutes };
    for (const at of this.#weigher.promising(chances, Math.max(1, ahead.fixes))) {
      const wasted = this.#fix(standing, at, next);
      yield;
      if (wasted < best.wasted - NO_GAIN) best = { kind: 'fix', at, wasted };
    }
    for (const at of now) {
      const wasted = this.#ask(standing, at, questions > 1 ? next : [], best.wasted);
      yield;
      if (wasted < best.wasted - NO_GAIN) best = { kind: 'ask', at, wasted };
    }
    return best;
  }

  /** In place of a repair that could harm: a check that tells whether it would, or the repair of the likeliest cause under which it would. */
  #harmless(standing: Standing, fix: Choice & { readonly kind: 'fix' }): Choice {
    const { harms, settings, classOf } = this.#compiled;
    const { chances, questions } = standing;
    const above = (least: number): number[] =>
      (harms[fix.at] ?? []).filter((fault) => (chances[fault] ?? 0) > least * sum(chances));
    const likely = above(settings.harmBelow.mend);
    const [faults, minutes] =
      likely.length > 0 ? [likely, Number.POSITIVE_INFINITY] : [above(settings.harmBelow.ask), QUICK];
    const telling = questions > 0 ? this.#telling(standing, fix.at, faults, minutes) : undefined;
    if (telling !== undefined) return { kind: 'ask', at: telling, wasted: fix.wasted };
    const [worst] = likely.sort((a, b) => (chances[b] ?? 0) - (chances[a] ?? 0));
    return worst === undefined ? fix : { ...fix, at: classOf[worst] ?? fix.at };
  }

  /** The open check that tells a fix class and these faults apart best, if one does well and damages nothing; or what must come before it. */
  #telling(standing: Standing, fixClass: number, faults: readonly number[], minutes: number): number | undefined {
    const { checks, checkCost, classOf } = this.#compiled;
    const members = [...classOf.keys()].filter((fault) => classOf[fault] === fixClass);
    let best: number | undefined;
    let most = minutes > QUICK ? TELLS : TELLS_QUICKLY;
    for (const [at, isOpen] of standing.open.entries()) {
      const fits = isOpen === 1 && faults.length > 0 && (checks[at]?.risk ?? 0) < 2 && (checkCost[at] ?? 0) <= minutes;
      const apart = fits ? this.#apart(at, standing.chances, members, faults) : 0;
      const next = apart > most ? this.#within(standing, at) : undefined;
      if (next === undefined) continue;
      most = apart;
      best = next;
    }
    return best;
  }

  /** The check itself, or one that can show what it still needs; undefined where none can. */
  #within({ open, holds }: Standing, check: number): number | undefined {
    const { optionStart, establishes } = this.#compiled;
    if (isShown(this.#compiled, check, holds)) return check;
    const shows = (at: number): number =>
      establishes.slice(optionStart[at], optionStart[at + 1]).reduce((bits, one) => bits | one, holds);
    return [...open.keys()].find(
      (at) => open[at] === 1 && isShown(this.#compiled, at, holds) && isShown(this.#compiled, check, shows(at)),
    );
  }

  /** How far the answers of two groups of faults lie apart, 0 alike to 1 never the same. */
  #apart(check: number, chances: Float64Array, some: readonly number[], others: readonly number[]): number {
    const { optionStart, likelihood } = this.#compiled;
    const answers = (faults: readonly number[], option: number): number => {
      const mass = faults.reduce((total, fault) => total + (chances[fault] ?? 0), 0);
      const row = option * chances.length;
      return faults.reduce((total, i) => total + ((chances[i] ?? 0) * (likelihood[row + i] ?? 0)) / mass, 0);
    };
    let apart = 0;
    for (let option = optionStart[check] ?? 0; option < (optionStart[check + 1] ?? 0); option++)
      apart += Math.abs(answers(some, option) - answers(others, option)) / 2;
    return apart;
  }

  /** Open checks, best first when looked at one step ahead; ties in the order of the rows. */
  *#rank({ chances, open, questions }: Standing): InParts<number[]> {
    const values = this.#values;
    const mass = sum(chances);
    const places: number[] = [];
    this.#weigher.perBit = yield* this.#weigher.minutesPerBit(chances, open, questions);
    for (const [at, isOpen] of open.entries()) {
      if (isOpen !== 1) continue;
      values[at] = this.#weigher.check(chances, mass, at, Number.POSITIVE_INFINITY);
      places.push(at);
      yield;
    }
    return places.sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0) || a - b);
  }

  /** Tries the fix first; if it does not help, goes on with the best check of `then` or with fixes alone. */
  #fix({ chances, open, holds }: Standing, at: number, then: readonly number[]): number {
    const { classEnd, classCost } = this.#compiled;
    const from = at === 0 ? 0 : (classEnd[at - 1] ?? 0);
    this.#branch.set(chances);
    this.#branch.fill(0, from, classEnd[at] ?? from);
    const remaining = sum(this.#branch);
    return (classCost[at] ?? 0) * remaining + this.#goOn(remaining, open, holds, -1, then);
  }

  /** Asks the check; after each answer goes on with the best second check or with fixes alone. Gives up beyond `most`. */
  #ask({ chances, open, holds }: Standing, at: number, then: readonly number[], most: number): number {
    const { optionStart, likelihood, establishes, checkCost } = this.#compiled;
    const end = optionStart[at + 1] ?? 0;
    const branch = this.#branch;
    if (then.length === 0) return this.#values[at] ?? 0;
    let total = sum(chances) * (checkCost[at] ?? 0);
    for (let option = optionStart[at] ?? 0; option < end && total < most; option++) {
      const row = option * chances.length;
      let mass = 0;
      for (let i = 0; i < branch.length; i++) {
        const joint = (chances[i] ?? 0) * (likelihood[row + i] ?? 0);
        branch[i] = joint;
        mass += joint;
      }
      if (mass > 0) total += this.#goOn(mass, open, holds | (establishes[option] ?? 0), at, then);
    }
    return total;
  }

  /** From the chances in #branch: the best of one more check among `then`, other than `asked`, and fixes alone. */
  #goOn(mass: number, open: Uint8Array, holds: number, asked: number, then: readonly number[]): number {
    let best = this.#weigher.fixesAlone(this.#branch);
    for (const next of then) {
      if (next === asked || open[next] !== 1 || !isShown(this.#compiled, next, holds)) continue;
      if (mass * (this.#compiled.checkCost[next] ?? 0) >= best) continue;
      best = Math.min(best, this.#weigher.check(this.#branch, mass, next, best));
    }
    return best;
  }
}

function sum(chances: Float64Array): number {
  let total = 0;
  for (const chance of chances) total += chance;
  return total;
}
