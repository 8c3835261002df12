// What is still possible after the answers so far, what each answer ruled out, and what speaks for each cause.
import type { Compiled } from './compile.ts';
import { SOMETHING_ELSE } from './model.ts';

/** What was seen at a check: one of its options. */
export interface Seen {
  readonly check: string;
  readonly option: string;
}

export interface Cause {
  readonly fault: string;
  readonly fixClass: string;
  /** 0 to 1. */
  readonly chance: number;
}

export interface Finding {
  readonly fixClass: string;
  readonly chance: number;
}

export interface RuledOut extends Seen {
  /** Fault ids that were possible before this answer and are not any more. */
  readonly faults: readonly string[];
}

export interface Posterior {
  /** All causes of the complaint, most likely first; those set aside have chance 0. Chances add up to 1. */
  readonly causes: readonly Cause[];
  /** The same by fix class, most likely first, without `something-else`. */
  readonly findings: readonly Finding[];
  readonly ruledOut: readonly RuledOut[];
  /** Answers that were left out: the check or option is not in the model, or no cause left can give that answer. */
  readonly ignored: readonly Seen[];
}

/** Below this chance a cause counts as ruled out, if it also fell to less than a quarter of its share. */
export const RULED_OUT_BELOW = 0.02;
export const RULED_OUT_FALL = 0.25;

/** Place of the option among all options, -1 where it is unknown. */
export function optionAt(compiled: Compiled, { check, option }: Seen): number {
  const at = compiled.checkAt.get(check);
  const place = at === undefined ? -1 : (compiled.checks[at]?.options.indexOf(option) ?? -1);
  return at === undefined || place < 0 ? -1 : (compiled.optionStart[at] ?? 0) + place;
}

/** Chances before any answer without the fix classes set aside; `something-else` stays. All 0 when nothing is left. */
export function startingChances(compiled: Compiled, setAside: readonly string[]): Float64Array {
  const aside = new Set(setAside.filter((one) => one !== SOMETHING_ELSE));
  const chances = compiled.share.map((share, i) => (aside.has(compiled.faults[i]?.fixClass ?? '') ? 0 : share));
  normalise(chances);
  return chances;
}

/** Scales chances to add up to 1 and returns what they added up to before; 0 leaves them alone. */
function normalise(chances: Float64Array): number {
  let sum = 0;
  for (const chance of chances) sum += chance;
  if (sum > 0) for (let i = 0; i < chances.length; i++) chances[i] = (chances[i] ?? 0) / sum;
  return sum;
}

/** Bayes for one answer, in place. Returns its chance beforehand; an impossible answer (0) changes nothing. */
export function update(compiled: Compiled, chances: Float64Array, option: number): number {
  const from = option * chances.length;
  let sum = 0;
  for (let i = 0; i < chances.length; i++) sum += (chances[i] ?? 0) * (compiled.likelihood[from + i] ?? 0);
  if (!(sum > 0)) return 0;
  for (let i = 0; i < chances.length; i++) {
    chances[i] = ((chances[i] ?? 0) * (compiled.likelihood[from + i] ?? 0)) / sum;
  }
  return sum;
}

/** The answers that count: of two to the same check the later one. */
export function lastAnswers(answers: readonly Seen[]): Seen[] {
  return [...new Map(answers.map((one) => [one.check, one])).values()];
}

/**
 * Exact chances under the assumption of one cause, after the answers and without the fix classes that did not help.
 * A skipped check is simply not among the answers. Total: unknown answers are listed in `ignored`. Source: Bayes.
 */
export function posterior(compiled: Compiled, answers: readonly Seen[], setAside: readonly string[] = []): Posterior {
  const chances = startingChances(compiled, setAside);
  const fellAt = new Int32Array(chances.length).fill(-1);
  const counted = lastAnswers(answers);
  const ignored: Seen[] = [];
  for (const [at, answer] of counted.entries()) {
    const option = optionAt(compiled, answer);
    const before = chances.slice();
    if (option < 0 || update(compiled, chances, option) === 0) ignored.push(answer);
    else markFallen(compiled, before, chances, fellAt, at);
  }
  const causes = compiled.faults.map(({ id, fixClass }, i) => ({ fault: id, fixClass, chance: chances[i] ?? 0 }));
  const ruledOut = counted.map((answer, at) => ({
    ...answer,
    faults: compiled.faults.filter((_, i) => fellAt[i] === at).map(({ id }) => id),
  }));
  return {
    causes: causes.sort((a, b) => b.chance - a.chance),
    findings: findingsOf(compiled, chances),
    ruledOut: ruledOut.filter(({ faults }) => faults.length > 0),
    ignored,
  };
}

function markFallen(
  compiled: Compiled,
  before: Float64Array,
  chances: Float64Array,
  fellAt: Int32Array,
  at: number,
): void {
  for (let i = 0; i < chances.length; i++) {
    const chance = chances[i] ?? 0;
    const out = chance < RULED_OUT_BELOW && chance < RULED_OUT_FALL * (compiled.share[i] ?? 0);
    if (!out || before[i] === 0) fellAt[i] = -1;
    else if (fellAt[i] === -1) fellAt[i] = at;
  }
}

export function findingsOf(compiled: Compiled, chances: Float64Array): Finding[] {
  let from = 0;
  const findings = compiled.classes.map(({ fixClass }, at) => {
    const to = compiled.classEnd[at] ?? from;
    let chance = 0;
    for (; from < to; from++) chance += chances[from] ?? 0;
    return { fixClass, chance };
  });
  return findings.sort((a, b) => b.chance - a.chance);
}

export interface Evidence extends Cause {
  /** Answers this cause makes likelier than the complaint alone does, strongest first; and those it makes less likely. */
  readonly speaksFor: readonly Seen[];
  readonly speaksAgainst: readonly Seen[];
}

/** An answer speaks for a cause from this many times its chance beforehand on, and against it below one over that. */
export const SPEAKS = 1.25;

/** Every cause that is still possible, most likely first, with the answers that speak for and against it. Total. */
export function evidence(compiled: Compiled, answers: readonly Seen[], setAside: readonly string[] = []): Evidence[] {
  const start = startingChances(compiled, setAside);
  const known = lastAnswers(answers).flatMap((answer) => {
    const option = optionAt(compiled, answer);
    const alone = option < 0 ? 0 : update(compiled, start.slice(), option);
    return alone > 0 ? [{ answer: { check: answer.check, option: answer.option }, option, alone }] : [];
  });
  const place = new Map(compiled.faults.map(({ id }, i) => [id, i]));
  const { causes } = posterior(compiled, answers, setAside);
  return causes
    .filter(({ chance }) => chance >= RULED_OUT_BELOW)
    .map((cause) => {
      const lifted = known
        .map(({ answer, option, alone }) => {
          const at = option * compiled.faults.length + (place.get(cause.fault) ?? 0);
          return { answer, lift: (compiled.likelihood[at] ?? 0) / alone };
        })
        .sort((a, b) => b.lift - a.lift);
      return {
        ...cause,
        speaksFor: lifted.filter(({ lift }) => lift >= SPEAKS).map(({ answer }) => answer),
        speaksAgainst: lifted
          .filter(({ lift }) => lift <= 1 / SPEAKS)
          .map(({ answer }) => answer)
          .reverse(),
      };
    });
}
