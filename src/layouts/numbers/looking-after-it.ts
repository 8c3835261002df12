// Numbers of the lesson looking-after-it: what two readings were on the figure's track, and what they are once its joiners have aged.
import { ALONG_START, planOf } from '../../components/figures/along-the-track/index.ts';
import { solvePlan, voltsAt } from '../../engine/index.ts';
import type { Written } from './written.ts';

/** How the lesson sets its figure: a light train, a thicker bus, and the last feeder close to the end. */
const LAID = { ...ALONG_START, amps: 1, feeds: [2, 10], bus: 1.5e-6 } as const;
/** Ohms a metre of one rail with tired joiners, as the lesson sets its figure. Source: from-memory. */
const TIRED = 0.25;
/** The first feeder, metres from the unit. */
const NEAR = LAID.feeds[0];

function reading(at: number, rail: number): number {
  const set = { ...LAID, rail };
  const circuit = solvePlan(planOf(set));
  if (circuit.kind === 'no-solution') throw new Error('The figure along the track has no solution as it begins');
  const along = circuit.train(set.amps);
  if (along.kind === 'no-solution') throw new Error('No train draws its current on the track');
  return voltsAt(along, at);
}

export const LOOKING_AFTER_IT: Written = {
  'near-now': (numbers) => numbers.volts(reading(NEAR, TIRED)),
  'far-then': (numbers) => numbers.volts(reading(LAID.length, LAID.rail)),
  'far-now': (numbers) => numbers.volts(reading(LAID.length, TIRED)),
};
