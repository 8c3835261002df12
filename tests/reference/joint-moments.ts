// What else a joint law of two districts says: it judges the law, no page asks it.
import type { JointLaw } from '../../src/engine/power/joint.ts';

type District = 'near' | 'far';

/** Sum over all pairs of what each counts for. */
function over(law: JointLaw, counts: (near: number, far: number) => number): number {
  const { step, cells, nearFrom, totalFrom, mass } = law;
  let sum = 0;
  for (let a = 0; a < cells; a++) {
    for (let t = 0; t < cells; t++) {
      const near = nearFrom + a * step;
      sum += (mass[a * cells + t] ?? 0) * counts(near, totalFrom + t * step - near);
    }
  }
  return sum;
}

/** Part of a cell around `current` that lies above `limit`. */
const above = (current: number, limit: number, step: number): number =>
  Math.min(1, Math.max(0, (current - limit) / step + 0.5));

/** Share of moments at which both districts draw more than their limits (amperes) at once. */
export const chanceBoth = (law: JointLaw, limits: Readonly<Record<District, number>>): number =>
  over(law, (near, far) => above(near, limits.near, law.step) * above(far, limits.far, law.step));

/** Current that `district` does not pass in the share `q` of the moments at which the other draws more than `amps`; undefined where it never does. */
export function besideBusy(law: JointLaw, district: District, amps: number, q = 0.95): number | undefined {
  const busy = (near: number, far: number): number => above(district === 'near' ? far : near, amps, law.step);
  const moments = over(law, busy);
  if (moments <= 0) return undefined;
  let [low, high] = [0, law.nearFrom + law.totalFrom + 2 * law.cells * law.step];
  for (let i = 0; i < 24; i++) {
    const limit = (low + high) / 2;
    const passed = over(law, (a, b) => busy(a, b) * above(district === 'near' ? a : b, limit, law.step));
    if (passed > (1 - q) * moments) low = limit;
    else high = limit;
  }
  return high;
}
