// Two sides and a train between them: what the figure begins from and computes, for the picture and for a lesson's text.
import type { CrossingSide } from '../../../engine/index.ts';
import { crossingInPhase } from '../../../engine/index.ts';

export interface TrainAcrossSettings {
  readonly voltsA: number;
  readonly voltsB: number;
  readonly loadA: number;
  readonly loadB: number;
  readonly limitA: number;
  readonly limitB: number;
  readonly ohms: number;
  readonly reversed: boolean;
}

export const TRAIN_ACROSS_START: TrainAcrossSettings = {
  voltsA: 15,
  voltsB: 17,
  loadA: 1.5,
  loadB: 1,
  limitA: 3,
  limitB: 3,
  ohms: 1,
  reversed: false,
};

/** Both units of the figure, alike, so that only the trip current decides which opens. */
export const UNIT = { ownUse: 0.1, tripSeconds: 0.3 } as const;

const sideOf = (volts: number, load: number, limit: number): CrossingSide => ({
  volts,
  load,
  ownUse: UNIT.ownUse,
  limit,
});

/** What flows while the train spans the gap, in phase. */
export const trainAcross = (set: TrainAcrossSettings) =>
  crossingInPhase({
    near: sideOf(set.voltsA, set.loadA, set.limitA),
    far: sideOf(set.voltsB, set.loadB, set.limitB),
    ohms: set.ohms,
  });
