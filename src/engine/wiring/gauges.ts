// American wire gauges as they are sold.
import { gaugeArea, nearestGauge } from '../units.ts';

/** American gauges that are commonly sold, thin to thick. Source: common-practice. */
export const GAUGE_SIZES: readonly number[] = [20, 18, 16, 14, 12, 10];

/** The thinnest gauge on sale with at least this much metal, square metres, > 0; where none has, the thinnest gauge there is that has. */
export function gaugeAtLeast(area: number): number {
  const enough = (gauge: number): boolean => gaugeArea(gauge) >= area * (1 - 1e-6);
  const nearest = nearestGauge(area) ?? 0;
  return GAUGE_SIZES.find(enough) ?? (enough(nearest) ? nearest : nearest - 1);
}
