// Money and time, each as a band.
import type { Cost } from '../../../engine/index.ts';
import type { Numbers, Say } from '../../words/index.ts';

const HALF_HOUR = 0.5;

export function costWords({ money, hours }: Cost, say: Say, numbers: Numbers): string {
  if (money.to === 0) return say('costs-nothing');
  const plain = (value: number): string => numbers.plain(value, 0);
  const bands = { least: plain(money.from), most: plain(money.to) };
  if (hours.to <= HALF_HOUR) return say('costs-half-hour', bands);
  const [quick, slow] = [Math.ceil(hours.from), Math.ceil(hours.to)];
  return say(quick === slow ? 'costs-hours' : 'costs', { ...bands, quick: plain(quick), slow: plain(slow) });
}
