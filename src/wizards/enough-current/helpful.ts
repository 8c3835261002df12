// Which remedies stand beside the answer.
import type { Remedy } from '../../engine/index.ts';
import { atLeast, byMoneyThenTime } from '../../engine/index.ts';
import type { Conclusion } from './result.ts';

/** What else would do, tight at the least; of boosters nothing dearer than the first that is enough, be it the answer itself. */
export function helpful({
  remedies,
  outcome,
  tighter,
}: Pick<Conclusion, 'remedies' | 'outcome' | 'tighter'>): readonly Remedy[] {
  const boosters = remedies.filter(({ counts }) => (counts.boosters ?? 0) > 0 && counts.moving === undefined);
  const first = boosters.findIndex(({ verdict }) => atLeast(verdict, 'enough'));
  const needless = new Set(first < 0 ? [] : boosters.slice(first + 1));
  const others = remedies.filter((one) => one.id !== outcome && atLeast(one.verdict, 'tight') && !needless.has(one));
  return [...others, ...(tighter === undefined ? [] : [tighter])].sort((a, b) => byMoneyThenTime(a.cost, b.cost));
}
