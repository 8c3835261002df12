// What was seen, as a browser keeps it with a page of its history; read with care, for an older release may have written it.
import * as v from 'valibot';
import type { Seen } from '../../wizards/first-power-up/index.ts';

const KEPT = v.object({
  powerUp: v.array(
    v.object({ row: v.string(), option: v.string(), values: v.optional(v.record(v.string(), v.number())) }),
  ),
});

export function seenIn(state: unknown): readonly Seen[] {
  const read = v.safeParse(KEPT, state);
  return read.success ? read.output.powerUp : [];
}
