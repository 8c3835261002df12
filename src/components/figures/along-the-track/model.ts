// The district that the figures along a track begin from: the same for the picture and for the numbers in a lesson's text.
import type { FeedingPlan } from '../../../engine/index.ts';
import { FEEDER_WIRE, ohmsPerMetre, stageOhms } from '../../../engine/index.ts';

export interface AlongSettings {
  readonly volts: number;
  readonly amps: number;
  readonly trip: number;
  readonly length: number;
  /** Square metres. */
  readonly bus: number;
  readonly feeds: readonly number[];
  /** Where the train or the short is. */
  readonly at: number;
  /** Ohms a metre of one rail. */
  readonly rail: number;
}

export const ALONG_START: AlongSettings = {
  volts: 15,
  amps: 1.5,
  trip: 3,
  length: 12,
  bus: 0.75e-6,
  feeds: [2, 6],
  at: 10,
  rail: 0.108,
};

const FEEDER = { length: FEEDER_WIRE.length, ohmsPerMetre: ohmsPerMetre(FEEDER_WIRE) };

export function planOf({ volts, length, bus, feeds, rail }: AlongSettings): FeedingPlan {
  return {
    source: { volts, ohms: stageOhms().to },
    bus: { length, ohmsPerMetre: ohmsPerMetre({ area: bus, make: 'flexible' }), fedAt: 0, ring: false },
    feeders: feeds.map((at) => ({ at, ...FEEDER })),
    rails: { length, ohmsPerMetre: rail, joints: [] },
  };
}
