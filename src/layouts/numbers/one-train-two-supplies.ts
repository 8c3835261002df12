// Numbers of the lesson one-train-two-supplies: the moments of a train across the gap, by the model of its figure.
import {
  TRAIN_ACROSS_START,
  type TrainAcrossSettings,
  trainAcross,
} from '../../components/figures/train-across/index.ts';
import type { Written } from './written.ts';

/** The lower side draws so much; the higher one stands where the figure begins. */
function push(loadA: number) {
  const set: TrainAcrossSettings = { ...TRAIN_ACROSS_START, loadA };
  const found = trainAcross(set);
  const [one] = found.kind === 'crossing' ? found.pushes : [];
  if (one === undefined) throw new Error('Nothing is pushed across the gap of the text');
  return one;
}

export const ONE_TRAIN_TWO_SUPPLIES: Written = {
  'push-pulse': (numbers) => numbers.amps(push(1).pulse.typical),
  'push-link': (numbers) => numbers.volts(push(1).link.typical),
  'push-over': (numbers) => numbers.amps(push(1).takeOver.typical),
  'busy-over': (numbers) => numbers.amps(push(3).takeOver.typical),
};
