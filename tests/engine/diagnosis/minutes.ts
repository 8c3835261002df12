// What the choice of a step rests on: the minutes that a walk is expected to take to its end, which no page shows.
import type { Compiled } from '../../../src/engine/diagnosis/compile.ts';
import { findingsOf } from '../../../src/engine/diagnosis/posterior.ts';
import type { WalkState } from '../../../src/engine/diagnosis/standing.ts';
import { firstCheck, standingOf } from '../../../src/engine/diagnosis/standing.ts';
import { Valuer } from '../../../src/engine/diagnosis/value.ts';

/** Average minutes to the end, with the work of the right fix. */
export function expectedMinutes(compiled: Compiled, state: WalkState): number {
  const standing = standingOf(compiled, state);
  const first = firstCheck(compiled, standing);
  const { wasted } = new Valuer(compiled).choose(standing, compiled.settings.lookAhead);
  const work = new Map(compiled.classes.map(({ fixClass, minutes }) => [fixClass, minutes]));
  const right = findingsOf(compiled, standing.chances).reduce(
    (sum, { fixClass, chance }) => sum + chance * (work.get(fixClass) ?? 0),
    0,
  );
  return wasted + (first >= 0 ? (compiled.checkCost[first] ?? 0) : 0) + right;
}

/** Minutes that asking on spares, where nothing may be asked instead. */
export function sparedByAsking(compiled: Compiled, state: WalkState): number {
  const standing = standingOf(compiled, state);
  const valuer = new Valuer(compiled);
  const wastedBy = (questions: number) => valuer.choose({ ...standing, questions }, compiled.settings.lookAhead).wasted;
  return wastedBy(0) - wastedBy(standing.questions);
}
