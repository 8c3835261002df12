// What is shown of where a walk stands: causes and fix classes by chance, what each answer ruled out, what speaks for each cause.
import type { Compiled } from './compile.ts';

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
  /** All causes, most likely first; those set aside have chance 0. Chances add up to 1. */
  readonly causes: readonly Cause[];
  /** The same by fix class, most likely first, without `something-else`. */
  readonly findings: readonly Finding[];
  readonly ruledOut: readonly RuledOut[];
  /** Answers that were left out: the check or option is not in the model, or no cause left can give that answer. */
  readonly ignored: readonly Seen[];
}

/** Below this chance a cause counts as ruled out, if it also fell to less than a quarter of its share. Source: own-choice. */
export const RULED_OUT_BELOW = 0.02;
export const RULED_OUT_FALL = 0.25;

/** Place of the option among all options, -1 where it is unknown. */
export function optionAt(compiled: Compiled, { check, option }: Seen): number {
  const at = compiled.checkAt.get(check);
  const place = at === undefined ? -1 : (compiled.checks[at]?.options.indexOf(option) ?? -1);
  return at === undefined || place < 0 ? -1 : (compiled.optionStart[at] ?? 0) + place;
}

/** The answers that count: of two to the same check the later one. */
export function lastAnswers(answers: readonly Seen[]): Seen[] {
  return [...new Map(answers.map((one) => [one.check, one])).values()];
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
  /** Answers that make this cause likelier together with what else was told, strongest first; and those that make it less likely. */
  readonly speaksFor: readonly Seen[];
  readonly speaksAgainst: readonly Seen[];
}

/** An answer speaks for a cause from this many times its chance beforehand on, and against it below one over that. Source: own-choice. */
export const SPEAKS = 1.25;
