// Numbers of the lesson your-own-consumption: what an ordinary meter makes of the rails, and what an ampere in the lead is on the track.
import { capacity, railsRead } from '../../engine/index.ts';
import type { Written } from './written.ts';

function ordinaryMeter(rails: number): number {
  const read = railsRead('averaging', rails);
  if (read.kind !== 'shows') throw new Error(`An ordinary meter shows nothing at ${rails} V`);
  return read.volts;
}

/** One ampere in the lead of a unit that brings 24 V down to 15 V itself. */
const behindConverter = (): number =>
  capacity({ kind: 'dc', volts: 24, amps: 1 }, { limit: 10, ownUse: 0, rails: { kind: 'converter', volts: 15 } }).hard;

export const YOUR_OWN_CONSUMPTION: Written = {
  'meter-on-15-v': (numbers) => numbers.volts(ordinaryMeter(15)),
  'meter-on-12-v': (numbers) => numbers.volts(ordinaryMeter(12)),
  'one-ampere-behind-converter': (numbers) => numbers.amps(behindConverter()),
};
