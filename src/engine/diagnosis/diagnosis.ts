// The next step towards the one cause: ask, mend or hand on, whichever costs the fewest minutes on average.
import type { Compiled } from './compile.ts';
import type { Seen } from './posterior.ts';
import { findingsOf } from './posterior.ts';
import type { Danger, WalkState } from './standing.ts';
import { dangerOf, firstCheck, standingOf } from './standing.ts';
import type { Standing } from './value.ts';
import { Valuer } from './value.ts';

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

/**
 * The next step of a walk. Total and deterministic: the same state gives the same step, whatever the order of its answers. Dangers
 * come first, then `first` checks in their order, then what wastes the fewest minutes. No walk asks more than `mostQuestions`.
 * Source: Heckerman, Breese and Rommelse, Communications of the ACM 38(3), 1995, with a second step looked ahead.
 */
export function nextStep(compiled: Compiled, state: WalkState): NextStep {
  const standing = standingOf(compiled, state);
  const danger = dangerOf(compiled, state);
  if (danger !== undefined) return dangerFix(compiled, standing, danger);
  const first = firstCheck(compiled, standing);
  if (first >= 0) return ask(compiled, first, 'first');
  const choice = new Valuer(compiled).choose(standing, compiled.settings.lookAhead);
  if (choice.kind === 'ask') return ask(compiled, choice.at, 'separates');
  if (choice.kind === 'hand-on') return { kind: 'hand-on', because: whyHandOn(compiled, standing) };
  const fixClass = compiled.classes[choice.at]?.fixClass ?? '';
  return { kind: 'fix', fixClass, chance: chanceOf(compiled, standing, fixClass) };
}

function ask({ checks }: Compiled, at: number, because: 'first' | 'separates'): NextStep {
  return { kind: 'ask', check: checks[at]?.id ?? '', because };
}

function dangerFix(compiled: Compiled, standing: Standing, { fixClass, answer }: Danger): NextStep {
  return { kind: 'fix', fixClass, chance: chanceOf(compiled, standing, fixClass), danger: answer };
}

/** Chance of a fix class, 0 to 1; 0 for one that the complaint has no share for. */
const chanceOf = (compiled: Compiled, { chances }: Standing, fixClass: string): number =>
  findingsOf(compiled, chances).find((one) => one.fixClass === fixClass)?.chance ?? 0;

function whyHandOn(
  compiled: Compiled,
  { chances, questions }: Standing,
): 'no-cause-left' | 'questions-used-up' | 'nothing-separates' {
  if (findingsOf(compiled, chances).every(({ chance }) => chance === 0)) return 'no-cause-left';
  return questions === 0 ? 'questions-used-up' : 'nothing-separates';
}
