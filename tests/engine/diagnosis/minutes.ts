// What the choice of a step rests on: the minutes that a walk is expected to take to its end, which no page shows.

import { atOnce } from '../../../src/engine/at-once.ts';
import { findingsOf } from '../../../src/engine/diagnosis/posterior.ts';
import { likelyOnly } from '../../../src/engine/diagnosis/sign-likely.ts';
import type { SignState, WalkModel } from '../../../src/engine/diagnosis/sign-walk.ts';
import { standAt } from '../../../src/engine/diagnosis/sign-walk.ts';
import { Valuer } from '../../../src/engine/diagnosis/value.ts';

/** Average minutes to the end, with the work of the right fix. */
export function expectedMinutes(model: WalkModel, state: SignState): number {
  const { compiled, standing } = likelyOnly(standAt(model, state));
  const { wasted } = atOnce(new Valuer(compiled).choose(standing, compiled.settings.lookAhead));
  const work = new Map(compiled.classes.map(({ fixClass, minutes }) => [fixClass, minutes]));
  return findingsOf(compiled, standing.chances).reduce(
    (sum, { fixClass, chance }) => sum + chance * (work.get(fixClass) ?? 0),
    wasted,
  );
}
