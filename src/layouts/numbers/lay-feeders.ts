// Numbers of the lesson lay-feeders: the lowest volts of the figure's track, fed at one end and at both.
import { ALONG_START, planOf } from '../../components/figures/along-the-track/index.ts';
import { solvePlan } from '../../engine/index.ts';
import type { Written } from './written.ts';

function worstWith(feeds: readonly number[]): number {
  const circuit = solvePlan(planOf({ ...ALONG_START, bus: 1.5e-6, feeds }));
  if (circuit.kind === 'no-solution')
    throw new Error('The figure along the track has no solution as the lesson begins');
  const along = circuit.train(ALONG_START.amps);
  if (along.kind === 'no-solution') throw new Error('No train draws its current in the lesson on feeders');
  return along.worst.volts;
}

export const LAY_FEEDERS: Written = {
  'one-end-worst': (numbers) => numbers.volts(worstWith([0])),
  'both-ends-worst': (numbers) => numbers.volts(worstWith([0, ALONG_START.length])),
};
