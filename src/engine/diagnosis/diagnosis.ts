// The next step towards the one cause: ask, mend or hand on, whichever costs the fewest minutes on average.
import type { Compiled } from './compile.ts';
import type { Answer, Evidence } from './posterior.ts';
import { evidence, findingsOf, update } from './posterior.ts';
import type { Danger, WalkState } from './standing.ts';
import { dangerOf, firstCheck, standingOf } from './standing.ts';
import type { Choice, Standing } from './value.ts';
import { Valuer } from './value.ts';

export type { Compiled, DiagnosisSettings, FixClass, NumberedCheck, NumberedModel } from './compile.ts';
export { compile, compileNumbers, DIAGNOSIS_SETTINGS } from './compile.ts';
export type { Answer, Cause, Evidence, Finding, Posterior, RuledOut } from './posterior.ts';
export { evidence, posterior, RULED_OUT_BELOW } from './posterior.ts';
export type { WalkState } from './standing.ts';

export interface OptionOutlook {
  readonly option: string;
  /** Chance that this will be the answer, 0 to 1. */
  readonly chance: number;
  /** The fix class this answer lifts most, if it lifts any. */
  readonly pointsTo?: string;
}

export type AskReason = { readonly kind: 'first' } | { readonly kind: 'separates'; readonly saves: number };

export type NextStep =
  | {
      readonly kind: 'ask';
      readonly check: string;
      /** `first`: danger comes before everything. `separates`: saves so many minutes against the best fix or a call now. */
      readonly because: AskReason;
      readonly options: readonly OptionOutlook[];
      readonly expectedMinutes: number;
    }
  | {
      readonly kind: 'fix';
      readonly fixClass: string;
      /** Chance of the class, and the fault in it that is most likely, if the complaint has one. */
      readonly chance: number;
      readonly fault?: string;
      /** The answer that means danger, when that is why. */
      readonly danger?: Answer;
      readonly expectedMinutes: number;
    }
  | {
      readonly kind: 'hand-on';
      /** Every known cause was set aside, the most questions were asked, or no check or fix is worth its minutes. */
      readonly because: 'no-cause-left' | 'questions-used-up' | 'nothing-separates';
      readonly remaining: readonly Evidence[];
      readonly expectedMinutes: number;
    };

/**
 * The next step of a walk. `expectedMinutes` is the average to the end, with the work of the right fix. Total and
 * deterministic: the same state gives the same step, whatever the order of its answers. Dangers come first, then `first`
 * checks in their order, then what wastes the fewest minutes. No walk asks more than `mostQuestions`.
 * Source: Heckerman, Breese and Rommelse, Communications of the ACM 38(3), 1995, with a second step looked ahead.
 */
export function nextStep(compiled: Compiled, state: WalkState): NextStep {
  const standing = standingOf(compiled, state);
  const danger = dangerOf(compiled, state);
  if (danger !== undefined) return dangerFix(compiled, standing, danger);
  const valuer = new Valuer(compiled);
  const first = firstCheck(compiled, standing);
  const choice = valuer.choose(standing, compiled.settings.lookAhead);
  if (first >= 0) {
    const wasted = choice.wasted + (compiled.checkCost[first] ?? 0);
    return ask(compiled, standing, { kind: 'ask', at: first, wasted }, { kind: 'first' });
  }
  if (choice.kind === 'ask') {
    const now = valuer.choose({ ...standing, questions: 0 }, compiled.settings.lookAhead);
    return ask(compiled, standing, choice, { kind: 'separates', saves: now.wasted - choice.wasted });
  }
  if (choice.kind === 'fix') return fix(compiled, standing, choice);
  return {
    kind: 'hand-on',
    because: whyHandOn(compiled, standing),
    remaining: evidence(compiled, state.answers, state.setAside),
    expectedMinutes: choice.wasted + rightFixMinutes(compiled, standing.chances),
  };
}

function dangerFix(compiled: Compiled, { chances }: Standing, { fixClass, answer }: Danger): NextStep {
  const at = compiled.classes.findIndex((one) => one.fixClass === fixClass);
  return {
    kind: 'fix',
    fixClass,
    ...inClass(compiled, chances, at),
    danger: answer,
    expectedMinutes: compiled.minutesOf.get(fixClass) ?? 0,
  };
}

function ask(
  compiled: Compiled,
  { chances }: Standing,
  { at, wasted }: Choice & { readonly kind: 'ask' },
  because: AskReason,
): NextStep {
  const { id, options } = compiled.checks[at] ?? { id: '', options: [] };
  return {
    kind: 'ask',
    check: id,
    because,
    options: options.map((option, k) => outlook(compiled, chances, option, (compiled.optionStart[at] ?? 0) + k)),
    expectedMinutes: wasted + rightFixMinutes(compiled, chances),
  };
}

function outlook(compiled: Compiled, chances: Float64Array, option: string, place: number): OptionOutlook {
  const after = chances.slice();
  const chance = update(compiled, after, place);
  const before = new Map(findingsOf(compiled, chances).map((one) => [one.fixClass, one.chance]));
  let pointsTo: string | undefined;
  let most = 0;
  for (const one of findingsOf(compiled, after)) {
    const lift = one.chance - (before.get(one.fixClass) ?? 0);
    if (lift > most) {
      most = lift;
      pointsTo = one.fixClass;
    }
  }
  return pointsTo === undefined ? { option, chance } : { option, chance, pointsTo };
}

function fix(compiled: Compiled, { chances }: Standing, { at, wasted }: Choice & { readonly kind: 'fix' }): NextStep {
  return {
    kind: 'fix',
    fixClass: compiled.classes[at]?.fixClass ?? '',
    ...inClass(compiled, chances, at),
    expectedMinutes: wasted + rightFixMinutes(compiled, chances),
  };
}

function inClass(compiled: Compiled, chances: Float64Array, at: number): { chance: number; fault?: string } {
  const places = [...compiled.classOf.keys()].filter((i) => at >= 0 && compiled.classOf[i] === at);
  const chance = places.reduce((sum, i) => sum + (chances[i] ?? 0), 0);
  const [best] = places.sort((a, b) => (chances[b] ?? 0) - (chances[a] ?? 0) || a - b);
  const fault = compiled.faults[best ?? -1]?.id;
  return fault === undefined ? { chance } : { chance, fault };
}

/** Average work of the right fix, minutes; what no fix of ours mends has none. */
function rightFixMinutes(compiled: Compiled, chances: Float64Array): number {
  return findingsOf(compiled, chances).reduce((sum, { chance, minutes }) => sum + chance * minutes, 0);
}

function whyHandOn(
  compiled: Compiled,
  { chances, questions }: Standing,
): 'no-cause-left' | 'questions-used-up' | 'nothing-separates' {
  if (findingsOf(compiled, chances).every(({ chance }) => chance === 0)) return 'no-cause-left';
  return questions === 0 ? 'questions-used-up' : 'nothing-separates';
}
