// A mixture of laws on one grid, exact: the yardstick for what is worked out in another way.
import type { Distribution } from '../../../src/engine/power/demand.ts';

/** Regimes that exclude each other; their chances add up to one. */
export function mixed(
  regimes: readonly { readonly probability: number; readonly distribution: Distribution }[],
): Distribution {
  const step = regimes[0]?.distribution.step ?? 1;
  const mass = new Float64Array(Math.max(1, ...regimes.map(({ distribution }) => distribution.mass.length)));
  for (const { probability, distribution } of regimes) {
    if (distribution.step !== step) throw new RangeError('mixed: laws on different grids');
    for (const [i, chance] of distribution.mass.entries()) mass[i] = (mass[i] ?? 0) + probability * chance;
  }
  return { step, mass, spread: regimes.every(({ distribution }) => distribution.spread === true) };
}
