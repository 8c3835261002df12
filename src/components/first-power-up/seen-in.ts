// What was seen, as a browser keeps it with a page of its history or in a tab; read with care, for an older release may have written it.
import * as v from 'valibot';
import type { Seen } from '../../wizards/first-power-up/index.ts';
import type { Plan } from '../../wizards/plan/index.ts';
import { testsInTab } from '../device/index.ts';

const SEEN = v.array(
  v.object({ row: v.string(), option: v.string(), values: v.optional(v.record(v.string(), v.number())) }),
);
const KEPT = v.object({ powerUp: SEEN, of: v.string(), steps: v.number() });

export interface Standing {
  readonly seen: readonly Seen[];
  /** Tests made since the page was opened, each a step of its history. */
  readonly steps: number;
}

export const NOTHING_SEEN: Standing = { seen: [], steps: 0 };

/** Of which tests something was seen: gaps are counted anew where a sheet is changed, and what was seen then says nothing of these. */
export const markOf = ({ tests, track }: Pick<Plan, 'tests' | 'track'>): string =>
  [...tests.map(({ id }) => id), ...track.gaps.map(({ joint }) => joint.id)].join(' ');

/** What a page of the history keeps of these tests, else what this tab does. */
export function standingIn(state: unknown, plan: Plan, here: string): Standing {
  const mark = markOf(plan);
  const read = v.safeParse(KEPT, state);
  if (read.success)
    return read.output.of === mark ? { seen: read.output.powerUp, steps: read.output.steps } : NOTHING_SEEN;
  const tab = testsInTab();
  const seen = v.safeParse(SEEN, tab?.seen);
  return seen.success && tab?.of === mark && tab.back === here ? { seen: seen.output, steps: 0 } : NOTHING_SEEN;
}
