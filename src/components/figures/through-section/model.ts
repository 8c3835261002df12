// What the figure of a train through a reversing section begins from.
import type { SectionEnd, TurningDevice } from '../../../engine/index.ts';

export interface ThroughSectionSettings {
  /** Metres. */
  readonly length: number;
  readonly metal: number;
  readonly front: number;
  readonly device: TurningDevice;
  readonly thrown: SectionEnd;
}

export const THROUGH_SECTION_START: ThroughSectionSettings = {
  length: 1.5,
  metal: 0.8,
  front: -0.2,
  device: 'automatic',
  thrown: 'entry',
};
