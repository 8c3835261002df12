// Roughly how many questions are to come.
import type { Compiled } from './compile.ts';
import { update } from './posterior.ts';
import { firstCheck } from './standing.ts';
import type { Choice, Standing } from './value.ts';
import { Valuer } from './value.ts';

/**
 * Roughly how many questions are to come before a fix is proposed: for each of the likeliest causes the walk that its
 * likeliest answers make, looked one step ahead, weighted by chance. Not rounded; 0 when the next step is no question.
 */
export function leftFrom(compiled: Compiled, standing: Standing): number {
  const valuer = new Valuer(compiled);
  const likely = [...standing.chances.keys()]
    .sort((a, b) => (standing.chances[b] ?? 0) - (standing.chances[a] ?? 0) || a - b)
    .slice(0, CAUSES_FOLLOWED);
  const short = valuer.shortlist(standing, CHECKS_FOLLOWED);
  const open = standing.open.map((isOpen, at) =>
    compiled.checks[at]?.first === true ? isOpen : (short.open[at] ?? 0),
  );
  let questions = 0;
  let weight = 0;
  for (const fault of likely) {
    const chance = standing.chances[fault] ?? 0;
    questions += chance * walkOf(compiled, valuer, { ...short, open }, fault);
    weight += chance;
  }
  return weight > 0 ? questions / weight : 0;
}

const CAUSES_FOLLOWED = 3;
const CHECKS_FOLLOWED = 20;
const ONE_STEP = { checks: 0, second: 0, fixes: 1 } as const;

/** Questions until a fix or a hand-on, when `fault` is the cause and always gives its likeliest answer. */
function walkOf(compiled: Compiled, valuer: Valuer, from: Standing, fault: number): number {
  const chances = from.chances.slice();
  const open = from.open.slice();
  let { holds } = from;
  for (let asked = 0; ; asked++) {
    const standing: Standing = { ...from, chances, open, holds, questions: from.questions - asked };
    const first = firstCheck(compiled, standing);
    const choice: Choice = first >= 0 ? { kind: 'ask', at: first, wasted: 0 } : valuer.choose(standing, ONE_STEP);
    if (choice.kind !== 'ask') return asked;
    const option = likeliest(compiled, choice.at, fault);
    open[choice.at] = 0;
    holds |= compiled.establishes[option] ?? 0;
    update(compiled, chances, option);
  }
}

function likeliest(compiled: Compiled, check: number, fault: number): number {
  const from = compiled.optionStart[check] ?? 0;
  const end = compiled.optionStart[check + 1] ?? from;
  const chanceOf = (option: number): number => compiled.likelihood[option * compiled.faults.length + fault] ?? 0;
  let best = from;
  for (let option = from + 1; option < end; option++) if (chanceOf(option) > chanceOf(best)) best = option;
  return best;
}
