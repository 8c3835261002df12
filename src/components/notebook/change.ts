// Changing a kept answer, while another tab may do the same.
import { cutToFit, type Kept } from '../device/index.ts';

/** What somebody changes of an answer: what is left out stays as it is. */
export type Change = Readonly<Partial<Pick<Kept, 'name' | 'note'>>>;

/** What became of a change: `both`, where the same was changed elsewhere meanwhile and stands beside this one; `again`, where the answer had gone. */
export type Outcome = 'changed' | 'both' | 'again';

/** Changes one answer, which stood so when somebody began to change it; what was changed elsewhere meanwhile is not lost. */
export function withChange(
  kept: readonly Kept[],
  before: Kept,
  change: Change,
  freshId: () => string,
): { readonly kept: readonly Kept[]; readonly outcome: Outcome } {
  const now = kept.find(({ id }) => id === before.id);
  if (now === undefined) return { kept: [...kept, cutToFit({ ...before, ...change })], outcome: 'again' };
  const one = cutToFit({ ...now, ...change });
  const isLost = (['name', 'note'] as const).some((part) => now[part] !== before[part] && now[part] !== one[part]);
  if (isLost) return { kept: [...kept, { ...one, id: freshId() }], outcome: 'both' };
  return { kept: kept.map((other) => (other.id === one.id ? one : other)), outcome: 'changed' };
}
