// Numbers of the lesson gap-both-rails: how much rail grows from a cool room to a warm one.
import { railGrowth } from '../../engine/index.ts';
import type { Written } from './written.ts';

export const GAP_BOTH_RAILS: Written = {
  'rail-growth-of-ten': (numbers) => numbers.thin(railGrowth(10, 10)),
};
