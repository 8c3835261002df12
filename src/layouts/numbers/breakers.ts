// Numbers of the lesson breakers: what the figure's breaker and unit pass, and how high a breaker may stand under the figure's unit.
import { openingOf, WHO_OPENS_START } from '../../components/figures/who-opens/index.ts';
import { gradeBreaker } from '../../engine/index.ts';
import type { Written } from './written.ts';

const START = WHO_OPENS_START;
const GRADED = gradeBreaker(
  { trip: START.breaker, seconds: START.breakerTime },
  { trip: START.unit, seconds: START.unitTime },
);

export const BREAKERS: Written = {
  'alike-unit-passes': (numbers) => numbers.amps(openingOf({ ...START, short: 4, breaker: START.unit }).passes.unit),
  'at-most-under-5-a': (numbers) => numbers.amps(GRADED.tripAtMost),
  'left-for-others': (numbers) => numbers.amps(GRADED.leftForOthers),
};
