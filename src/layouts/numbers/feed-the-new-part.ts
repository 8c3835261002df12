// Numbers of the lesson feed-the-new-part: what a capacitor across the wires takes from a unit at 15 V.
import { capacitorAmps } from '../../engine/index.ts';
import type { Written } from './written.ts';

const VOLTS = 15;

export const FEED_THE_NEW_PART: Written = {
  'capacitor-of-100-nf': (numbers) => numbers.ampsExactly(capacitorAmps(0.1e-6, VOLTS)),
  'capacitor-of-1000-nf': (numbers) => numbers.ampsExactly(capacitorAmps(1e-6, VOLTS)),
};
