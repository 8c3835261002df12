// What the figure of a breaker below its unit begins from: the same for the picture and for the numbers in a lesson's text.
import { type Opening, openedBy } from '../../../engine/index.ts';

export interface WhoOpensSettings {
  /** What the short draws, amperes. */
  readonly short: number;
  /** What trains in the other parts draw, amperes. */
  readonly others: number;
  /** Amperes and seconds. */
  readonly breaker: number;
  readonly breakerTime: number;
  readonly unit: number;
  readonly unitTime: number;
}

export const WHO_OPENS_START: WhoOpensSettings = {
  short: 8,
  others: 1.5,
  breaker: 3.5,
  breakerTime: 0.02,
  unit: 5,
  unitTime: 0.3,
};

export const openingOf = ({ short, others, breaker, breakerTime, unit, unitTime }: WhoOpensSettings): Opening =>
  openedBy(short, {
    breaker: { trip: breaker, seconds: breakerTime },
    unit: { trip: unit, seconds: unitTime },
    others,
  });
