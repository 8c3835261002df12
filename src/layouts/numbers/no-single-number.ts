// Numbers of the lesson no-single-number: modern and older trains on the figure's supply.
import { TRAINS_START, trainsOn } from '../../components/figures/how-many-trains/index.ts';
import type { Written } from './written.ts';

const moving = (count: number, older = false) => trainsOn({ ...TRAINS_START, total: count, moving: count, older });

export const NO_SINGLE_NUMBER: Written = {
  'usable-of-2-a': (numbers) => numbers.ampsExactly(moving(4).able.usable),
  'four-moving-share': (numbers) => numbers.share(moving(4).judgement.aboveUsable),
  'five-moving-share': (numbers) => numbers.share(moving(5).judgement.aboveUsable),
};
