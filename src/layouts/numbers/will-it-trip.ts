// Numbers of the lesson will-it-trip: what a short at the far end of the figure's track draws, and the examples of the text.
import { ALONG_START, planOf } from '../../components/figures/along-the-track/index.ts';
import {
  shortAmpsAt,
  shortFromLoadTest,
  shortOver,
  shortTest,
  solvePlan,
  sureTrip,
  TEST_RESISTOR,
  worstFaultHeat,
} from '../../engine/index.ts';
import type { Written } from './written.ts';

function shortAtEnd(): number {
  const circuit = solvePlan(planOf(ALONG_START));
  if (circuit.kind === 'no-solution') throw new Error('The figure along the track has no solution as it begins');
  const along = circuit.short();
  if (along.kind === 'no-solution') throw new Error('No short circuit flows at the far end');
  return shortAmpsAt(along, ALONG_START.length);
}

function measured(loaded: number) {
  const found = shortFromLoadTest({ open: 15, loaded, ohms: TEST_RESISTOR.ohms });
  if (found.kind === 'no-solution') throw new Error('The load test of the text has no answer');
  return found;
}

function test(volts: number, trip: number) {
  const one = shortTest({ volts, trip });
  if (one.kind === 'none') throw new Error('The text asks for a load test where there is none');
  return one;
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
  'seconds-15-v': (numbers) => numbers.plain(test(15, 5).seconds, 0),
  'seconds-20-v': (numbers) => numbers.plain(test(20, 5).seconds, 0),
  'seconds-22-v': (numbers) => numbers.plain(test(22, 5).seconds, 0),
  'near-load': (numbers) => numbers.amps(measured(14.2).loadAmps),
  'near-short': (numbers) => numbers.amps(measured(14.2).amps),
  'far-load': (numbers) => numbers.amps(measured(11.5).loadAmps),
  'far-load-short': (numbers) => numbers.amps(measured(11.5).amps),
  'may-lose-3': (numbers) => numbers.volts(test(15, 3).mayLose),
  'may-lose-5': (numbers) => numbers.volts(test(15, 5).mayLose),
};
