// What a walk over signs shows on its way: what is still possible, what each answer ruled out, what speaks for each cause, what hardly goes together.

import { atOnce } from '../at-once.ts';
import type { InParts } from './in-parts.ts';
import type { Evidence, Posterior, RuledOut, Seen } from './posterior.ts';
import { findingsOf, RULED_OUT_BELOW, RULED_OUT_FALL, SPEAKS } from './posterior.ts';
import { believeInParts } from './sign-belief.ts';
import type { SignState, WalkModel } from './sign-walk.ts';
import { knownAnswers, standAt, standInParts } from './sign-walk.ts';

/** Chances of all causes and fix classes, most likely first, and what fell out by which answer. Total; unknown answers are listed in `ignored`. */
export const signPosterior = (model: WalkModel, state: SignState): Posterior =>
  atOnce(signPosteriorInParts(model, state));

/** The same a part at a time. */
export function* signPosteriorInParts(model: WalkModel, state: SignState): InParts<Posterior> {
  const { compiled, standing } = yield* standInParts(model, state);
  const causes = compiled.faults.map(({ id, fixClass }, i) => ({
    fault: id,
    fixClass,
    chance: standing.chances[i] ?? 0,
  }));
  const known = knownAnswers(model, state.answers);
  return {
    causes: causes.sort((a, b) => b.chance - a.chance),
    findings: findingsOf(compiled, standing.chances),
    ruledOut: yield* ruledOut(model, state, known),
    ignored: state.answers.filter(
      (one) => !known.some(({ check, option }) => check === one.check && option === one.option),
    ),
  };
}

/** A cause fell out by the answer after which it stays below the limit. */
function* ruledOut(model: WalkModel, state: SignState, known: readonly Seen[]): InParts<RuledOut[]> {
  const steps: Float64Array[] = [];
  for (const i of known.keys()) {
    const { standing } = yield* standInParts(model, { ...state, answers: known.slice(0, i + 1) });
    steps.push(standing.chances);
  }
  yield;
  const isOut = (chances: Float64Array | undefined, i: number): boolean => {
    const chance = chances?.[i] ?? 0;
    return chance < RULED_OUT_BELOW && chance < RULED_OUT_FALL * (model.overall[i] ?? 0);
  };
  const fellAt = model.compiled.faults.map((_, i) => {
    const last = steps.findLastIndex((chances) => !isOut(chances, i));
    return last + 1;
  });
  return known
    .map((answer, at) => ({
      ...answer,
      faults: model.compiled.faults.filter((_, i) => fellAt[i] === at).map(({ id }) => id),
    }))
    .filter(({ faults }) => faults.length > 0);
}

/** Every cause that is still possible, most likely first, with the answers that speak for and against it. Total. */
export function signEvidence(model: WalkModel, state: SignState): Evidence[] {
  const { compiled, standing } = standAt(model, state);
  const known = knownAnswers(model, state.answers);
  const without = known.map((one) => standAt(model, { ...state, answers: known.filter((other) => other !== one) }));
  return compiled.faults
    .map(({ id, fixClass }, i) => {
      const lifted = known
        .map((answer, at) => {
          const before = without[at]?.standing.chances[i] ?? 0;
          const now = standing.chances[i] ?? 0;
          return { answer: { check: answer.check, option: answer.option }, lift: odds(now) / odds(before) };
        })
        .sort((a, b) => b.lift - a.lift);
      return {
        fault: id,
        fixClass,
        chance: standing.chances[i] ?? 0,
        speaksFor: lifted.filter(({ lift }) => lift >= SPEAKS).map(({ answer }) => answer),
        speaksAgainst: lifted
          .filter(({ lift }) => lift <= 1 / SPEAKS)
          .map(({ answer }) => answer)
          .reverse(),
      };
    })
    .filter(({ chance }) => chance >= RULED_OUT_BELOW)
    .sort((a, b) => b.chance - a.chance);
}

const odds = (chance: number): number => chance / Math.max(1e-12, 1 - chance);

export interface Conflict {
  /** The answer to check again: the one that all others make least likely. */
  readonly again: Seen;
  /** The answer it goes worst with. */
  readonly against: Seen;
  /** Chance of `again` given all other answers, and alone, 0 to 1. */
  readonly chance: number;
  readonly alone: number;
}

/**
 * An answer is in conflict below this chance given all the others, if that is also below this part of its chance alone. Source:
 * own-choice.
 */
const CONFLICT = { chance: 0.15, fall: 0.25 } as const;

/**
 * Pairs of answers that hardly go together, worst first; each pair once. A part at a time. Total; unknown answers are left out.
 * Source: the conflict measure P(a)P(b)/P(a,b) of F.V. Jensen, from memory; the limits are from memory (judgement).
 */
export function* signConflictsInParts(model: WalkModel, state: SignState): InParts<Conflict[]> {
  const known = knownAnswers(model, state.answers);
  const prior = (yield* standInParts(model, { ...state, answers: [] })).compiled.share;
  function* chanceOf(answers: readonly Seen[]): InParts<number> {
    const { likelihood } = yield* believeInParts(model.tables, answers);
    return likelihood.reduce((sum, one, i) => sum + one * (prior[i] ?? 0), 0);
  }
  const all = yield* chanceOf(known);
  const found: Conflict[] = [];
  for (const one of known) {
    const others = known.filter((other) => other !== one);
    const chance = all / (yield* chanceOf(others));
    const alone = yield* chanceOf([one]);
    if (chance >= CONFLICT.chance || chance >= CONFLICT.fall * alone) continue;
    const lifts: number[] = [];
    for (const other of others) lifts.push((yield* chanceOf([one, other])) / (yield* chanceOf([other])));
    const worst = others[lifts.indexOf(Math.min(...lifts))];
    if (worst !== undefined) found.push({ again: one, against: worst, chance, alone });
  }
  const sorted = found.sort((a, b) => a.chance / a.alone - b.chance / b.alone);
  return sorted.filter(
    (one, i) =>
      !sorted
        .slice(0, i)
        .some(({ again, against }) => again.check === one.against.check && against.check === one.again.check),
  );
}
