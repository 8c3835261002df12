// Numbers of the lesson voltage-along-the-track: the volts at the far end of the figure's track, and what wire and rail lose.
import { ALONG_START, planOf } from '../../components/figures/along-the-track/index.ts';
import type { Numbers } from '../../components/words/index.ts';
import { fromMetric, gaugeArea, pairLikeTrack, pairLoss, RAILS, solvePlan, voltsAt } from '../../engine/index.ts';
import type { Written } from './written.ts';

function trainAlong(set: typeof ALONG_START) {
  const circuit = solvePlan(planOf(set));
  if (circuit.kind === 'no-solution') throw new Error('The figure along the track has no solution as it begins');
  const along = circuit.train(set.amps);
  if (along.kind === 'no-solution') throw new Error('No train draws its current at the far end');
  return along;
}

/** Volts at the far end of the figure’s track, volts. */
export function farEnd(some: Partial<typeof ALONG_START>): number {
  const set = { ...ALONG_START, ...some };
  return voltsAt(trainAlong(set), set.length);
}

/** What stays inside the figure’s unit, volts. */
export const stageKeeps = (some: Partial<typeof ALONG_START>): number =>
  trainAlong({ ...ALONG_START, ...some }).stageDrop;

/** The wire that people of one system or the other buy. */
const metric = ({ system }: Numbers): boolean => system === 'metric';
const flexible = (numbers: Numbers, squareMillimetres: number, gauge: number) => ({
  area: metric(numbers) ? fromMetric(squareMillimetres, 'mm2') : gaugeArea(gauge),
  make: 'flexible' as const,
});
const TEN_METRES = 10;
const THIRTY_FEET = 9.144;
const loss = (numbers: Numbers, squareMillimetres: number, gauge: number): number =>
  pairLoss(flexible(numbers, squareMillimetres, gauge), metric(numbers) ? TEN_METRES : THIRTY_FEET, 3);

/** How much wire a length of track is worth: from the better to the worse of the samples. */
const worth = (numbers: Numbers, rail: keyof typeof RAILS): string => {
  const { from, to } = RAILS[rail].ohmsPerMetre;
  const wire = flexible(numbers, 1.5, 16);
  const [least, most] = [from, to].map((ohms) => numbers.plain(pairLikeTrack(wire, ohms), 0));
  return least === most ? `${least}` : `${least}–${most}`;
};

export const VOLTAGE_ALONG_THE_TRACK: Written = {
  'far-end-now': (numbers) => numbers.volts(farEnd({})),
  'far-end-thick-bus': (numbers) => numbers.volts(farEnd({ bus: 1.5e-6 })),
  'far-end-feeder': (numbers) => numbers.volts(farEnd({ feeds: [2, 12] })),
  'thin-pair-loss': (numbers) => numbers.volts(loss(numbers, 0.75, 18)),
  'thick-pair-loss': (numbers) => numbers.volts(loss(numbers, 1.5, 14)),
  'code-100-worth': (numbers) => worth(numbers, 'code-100'),
  'code-83-worth': (numbers) => worth(numbers, 'code-83'),
  'code-70-worth': (numbers) => worth(numbers, 'code-70'),
};
