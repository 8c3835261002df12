// Numbers of the lesson no-single-number: modern trains on the figure's supply.
import { TRAINS_START, trainsOn } from '../../components/figures/how-many-trains/index.ts';
import { GOALS } from '../../engine/index.ts';
import type { Written } from './written.ts';

const moving = (count: number) => trainsOn({ ...TRAINS_START, total: count, moving: count });

export const NO_SINGLE_NUMBER: Written = {
  'usable-of-2-a': (numbers) => numbers.ampsExactly(moving(4).able.usable),
  'four-moving-share': (numbers) => numbers.share(moving(4).judgement.aboveUsable),
  'five-moving-share': (numbers) => numbers.share(moving(5).judgement.aboveUsable),
  'five-over-limit': (numbers) => numbers.share(moving(5).judgement.aboveHard),
  'limit-of-2-a': (numbers) => numbers.ampsExactly(moving(5).able.hard),
  'goal-reserve': (numbers) => numbers.share(GOALS.reserveTouched),
  'goal-limit': (numbers) => numbers.share(GOALS.limitPassed),
};
