// Numbers of the lesson test-the-short: the readings of its example, the pass marks, and what a lost feeder does in the figure.
import { ALONG_START, planOf } from '../../components/figures/along-the-track/index.ts';
import { shortAmpsAt, shortFromLoadTest, shortTest, solvePlan, sureTrip, TEST_RESISTOR } from '../../engine/index.ts';
import type { Written } from './written.ts';

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

function withOneFeeder(): number {
  const circuit = solvePlan(planOf({ ...ALONG_START, feeds: [2] }));
  if (circuit.kind === 'no-solution') throw new Error('The figure along the track has no solution with one feeder');
  const along = circuit.short();
  if (along.kind === 'no-solution') throw new Error('No short circuit flows at the far end with one feeder');
  return shortAmpsAt(along, ALONG_START.length);
}

export const TEST_THE_SHORT: Written = {
  'one-feeder-short': (numbers) => numbers.amps(withOneFeeder()),
  'sure-trip-5': (numbers) => numbers.amps(sureTrip(5)),
  'seconds-15-v': (numbers) => numbers.plain(test(15, 5).seconds, 0),
  'seconds-20-v': (numbers) => numbers.plain(test(20, 5).seconds, 0),
  'seconds-22-v': (numbers) => numbers.plain(test(22, 5).seconds, 0),
  'far-load': (numbers) => numbers.amps(measured(11.5).loadAmps),
  'far-load-short': (numbers) => numbers.amps(measured(11.5).amps),
  'may-lose-3': (numbers) => numbers.volts(test(15, 3).mayLose, 'at-most'),
  'may-lose-5': (numbers) => numbers.volts(test(15, 5).mayLose, 'at-most'),
};
