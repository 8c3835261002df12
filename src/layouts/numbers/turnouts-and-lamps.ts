// Numbers of the lesson turnouts-and-lamps: what reaches a turnout at the far end of the figure's track while trains there draw little or much.
import { farEnd } from './voltage-along-the-track.ts';
import type { Written } from './written.ts';

export const TURNOUTS_AND_LAMPS: Written = {
  'turnout-on-a-quiet-track': (numbers) => numbers.volts(farEnd({ amps: 0.5 })),
  'turnout-on-a-busy-track': (numbers) => numbers.volts(farEnd({ amps: 3 })),
};
