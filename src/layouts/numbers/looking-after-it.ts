// Numbers of the lesson looking-after-it: what two readings were on the figure's track, and what they are once its joiners have aged.
import { ALONG_START, planOf } from '../../components/figures/along-the-track/index.ts';
import { solvePlan, voltsAt } from '../../engine/index.ts';
import type { Written } from './written.ts';

/** Ohms a metre of one rail with tired joiners, as the lesson sets its figure. Source: from-memory. */
const TIRED = 0.2;
/** The first feeder, metres from the unit. */
const NEAR = ALONG_START.feeds[0] ?? 0;

function reading(at: number, rail: number): number {
  const set = { ...ALONG_START, rail };
  const circuit = solvePlan(planOf(set));
  if (circuit.kind === 'no-solution') throw new Error('The figure along the track has no solution as it begins');
  const along = circuit.train(set.amps);
  if (along.kind === 'no-solution') throw new Error('No train draws its current on the track');
  return voltsAt(along, at);
}

export const LOOKING_AFTER_IT: Written = {
  'near-now': (numbers) => numbers.volts(reading(NEAR, TIRED)),
  'far-then': (numbers) => numbers.volts(reading(ALONG_START.length, ALONG_START.rail)),
  'far-now': (numbers) => numbers.volts(reading(ALONG_START.length, TIRED)),
};
