// Numbers of the lesson two-labels: what a transformer of 16 V and 3 A makes on the track, and what the figure's supplies let its unit pass.
import { LARGER_START, largerSupply } from '../../components/figures/how-many-trains/index.ts';
import { capacity, railVoltage } from '../../engine/index.ts';
import type { Written } from './written.ts';

const TRANSFORMER = { kind: 'ac', volts: 16, amps: 3 } as const;
const FOLLOWS = { kind: 'follows' } as const;
const onTrack = capacity(TRANSFORMER, { limit: 10, ownUse: 0, rails: FOLLOWS });
const idle = railVoltage(TRANSFORMER, FOLLOWS).idle;
const usableOn = (supply: number): number => largerSupply({ ...LARGER_START, limit: 3, supply }).able.usable;

export const TWO_LABELS: Written = {
  'three-a-of-ac': (numbers) => numbers.amps(onTrack.hard),
  'three-a-of-ac-at-best': (numbers) => numbers.amps(onTrack.atBest?.hard ?? onTrack.hard),
  'sixteen-v-of-ac-from': (numbers) => numbers.plain(idle.from, 0),
  'sixteen-v-of-ac-to': (numbers) => numbers.plain(idle.to, 0),
  'usable-on-2-a': (numbers) => numbers.ampsExactly(usableOn(2)),
  'usable-on-2-5-a': (numbers) => numbers.ampsExactly(usableOn(2.5)),
};
