// Numbers of the lesson turnouts-and-lamps: what reaches a turnout at the far end of the figure's track while trains there draw little or
// much, and what stands on the rails all evening without a train.
import { districtLoad, summarise } from '../../engine/index.ts';
import { farEnd, stageKeeps } from './voltage-along-the-track.ts';
import type { Written } from './written.ts';

/** Ten coaches, twenty decoders and twenty slow motors, amperes. */
const allEvening = (lamps: 'filament' | 'led'): number => {
  const things = { trains: [], moving: 0, coaches: 10, lamps, accessories: 40, stored: 0 } as const;
  return summarise(districtLoad(things).distribution).mean;
};

export const TURNOUTS_AND_LAMPS: Written = {
  'turnout-on-a-quiet-track': (numbers) => numbers.volts(farEnd({ amps: 0.5 })),
  'turnout-on-a-busy-track': (numbers) => numbers.volts(farEnd({ amps: 3 })),
  'turnout-with-a-feeder': (numbers) => numbers.volts(farEnd({ amps: 3, feeds: [2, 12] })),
  'kept-by-the-unit': (numbers) => numbers.volts(stageKeeps({ amps: 3 })),
  'all-evening-with-filaments': (numbers) => numbers.amps(allEvening('filament')),
  'all-evening-with-leds': (numbers) => numbers.amps(allEvening('led')),
};
