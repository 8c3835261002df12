// Two answers that hardly go together: most often one of them was read or typed wrongly, or there are two causes.
import type { Compiled } from './compile.ts';
import type { Seen } from './posterior.ts';
import { lastAnswers, optionAt, startingChances, update } from './posterior.ts';

export interface Conflict {
  /** The answer to check again: the one that all others make least likely. */
  readonly again: Seen;
  /** The answer it goes worst with. */
  readonly against: Seen;
  /** Chance of `again` given all other answers, and alone, 0 to 1. */
  readonly chance: number;
  readonly alone: number;
}

/** An answer is in conflict below this chance given all the others, if that is also below this part of its chance alone. */
export const CONFLICT = { chance: 0.15, fall: 0.25 } as const;

/**
 * Pairs of answers that hardly go together, worst first; each pair once. Total; unknown answers are left out.
 * Source: the conflict measure P(a)P(b)/P(a,b) of F.V. Jensen, from memory; the limits are from memory (judgement).
 */
export function contradictions(
  compiled: Compiled,
  answers: readonly Seen[],
  setAside: readonly string[] = [],
): Conflict[] {
  const known = lastAnswers(answers).filter((one) => optionAt(compiled, one) >= 0);
  const start = startingChances(compiled, setAside);
  const chanceAfter = (one: Seen, given: readonly Seen[]): number => {
    const chances = start.slice();
    for (const other of given) update(compiled, chances, optionAt(compiled, other));
    return update(compiled, chances, optionAt(compiled, one));
  };
  const found = known.flatMap((one) => {
    const others = known.filter((other) => other !== one);
    const alone = chanceAfter(one, []);
    const chance = chanceAfter(one, others);
    if (chance >= CONFLICT.chance || chance >= CONFLICT.fall * alone) return [];
    const lifts = others.map((other) => chanceAfter(one, [other]));
    const worst = others[lifts.indexOf(Math.min(...lifts))];
    return worst === undefined ? [] : [{ again: plain(one), against: plain(worst), chance, alone }];
  });
  const sorted = found.sort((a, b) => a.chance / a.alone - b.chance / b.alone);
  return sorted.filter((one, i) => !sorted.slice(0, i).some((earlier) => samePair(earlier, one)));
}

const plain = ({ check, option }: Seen): Seen => ({ check, option });

function samePair(a: Conflict, b: Conflict): boolean {
  return a.again.check === b.against.check && a.against.check === b.again.check;
}
