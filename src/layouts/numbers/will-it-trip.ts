// Numbers of the lesson will-it-trip: what a short at the far end of the figure's track draws, and the examples of the text.
import { ALONG_START, planOf } from '../../components/figures/along-the-track/index.ts';
import { shortAmpsAt, shortOver, solvePlan, sureTrip, worstFaultHeat } from '../../engine/index.ts';
import type { Written } from './written.ts';

function shortAtEnd(): number {
  const circuit = solvePlan(planOf(ALONG_START));
  if (circuit.kind === 'no-solution') throw new Error('The figure along the track has no solution as it begins');
  const along = circuit.short();
  if (along.kind === 'no-solution') throw new Error('No short circuit flows at the far end');
  return shortAmpsAt(along, ALONG_START.length);
}

const QUIET = worstFaultHeat({ volts: 15, ohms: 2.5 }, 5);

export const WILL_IT_TRIP: Written = {
  'far-short': (numbers) => numbers.amps(shortAtEnd()),
  'sure-trip-3': (numbers) => numbers.amps(sureTrip(3)),
  'short-over-1-ohm': (numbers) => numbers.ampsExactly(shortOver({ volts: 15, ohms: 1 })),
  'short-over-4-ohms': (numbers) => numbers.ampsExactly(shortOver({ volts: 15, ohms: 4 })),
  'clean-short': (numbers) => numbers.amps(shortOver({ volts: 15, ohms: 2.5 })),
  'quiet-amps': (numbers) => numbers.amps(QUIET.atAmps),
  'quiet-watts': (numbers) => numbers.watts(QUIET.watts),
};
