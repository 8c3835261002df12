// How well consumers are shared out over parts with a stage each. Limits of current are never pooled: each part carries its own.

export type Evenness = 'good' | 'fair' | 'poor';

/** Busiest part against an even share: 1 is even; up to 1.2 good, up to 1.4 fair. Source: common-practice. */
export const EVENNESS = { good: 1.2, fair: 1.4 } as const;

/** Judges a division by the load of each part (any one unit, all >= 0). Nothing on the track counts as good. */
export function evenness(loads: readonly number[]): { readonly evenness: Evenness; readonly busiest: number } {
  const total = loads.reduce((sum, load) => sum + load, 0);
  if (total === 0) return { evenness: 'good', busiest: 1 };
  const busiest = (Math.max(...loads) * loads.length) / total;
  return { evenness: evennessOf(busiest), busiest };
}

/** Judges the busiest part against an even share (1 is even). */
export function evennessOf(busiest: number): Evenness {
  if (busiest <= EVENNESS.good + 1e-9) return 'good';
  return busiest <= EVENNESS.fair + 1e-9 ? 'fair' : 'poor';
}
