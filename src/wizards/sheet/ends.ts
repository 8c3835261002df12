// Two sections may meet at both ends: their joints are told apart by their order in the sheet.
import type { Joint, Sheet } from './sheet.ts';

/** Which of how many joints between the same two sections, counted from 1; undefined where there is but one. */
export interface End {
  readonly number: number;
  readonly of: number;
}

export function endOf(
  { id, from, to }: Pick<Joint, 'id' | 'from' | 'to'>,
  { joints }: Pick<Sheet, 'joints'>,
): End | undefined {
  const same = joints.filter((one) => (one.from === from && one.to === to) || (one.from === to && one.to === from));
  return same.length < 2 ? undefined : { number: same.findIndex((one) => one.id === id) + 1, of: same.length };
}
