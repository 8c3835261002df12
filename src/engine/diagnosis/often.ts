// How often a cause is met, in words: from its share of all that bring one complaint.

/** Where the words change, share of a complaint. Source: common-practice. */
const SHARES = { common: 0.1, sometimes: 0.03 } as const;

export type HowOften = 'common' | 'sometimes' | 'rare';

/** The word for a share of 0 to 1. */
export function howOften(share: number): HowOften {
  if (share >= SHARES.common) return 'common';
  return share >= SHARES.sometimes ? 'sometimes' : 'rare';
}

/** Less than this is not shown as still possible, share of 1. Source: common-practice. */
export const WORTH_SHOWING = 0.015;

/** Shares are told to this, of 1: more than that nobody knows. Source: own-choice. */
const TOLD_TO = 0.05;
/** Where the words change, share of all that is still possible. Source: common-practice (judgement). */
const LIKELY_FROM = { most: 0.6, likely: 0.3 } as const;

export interface ToldShare {
  /** `least` below the first step, `sure` from the last one on. */
  readonly word: 'least' | 'perhaps' | 'likely' | 'most' | 'sure';
  /** 0 to 1, on a step. */
  readonly share: number;
}

/** A chance of 0 to 1 as a word and a rounded share. */
export function toldShare(chance: number): ToldShare {
  const share = Math.round(chance / TOLD_TO) * TOLD_TO;
  if (share < TOLD_TO) return { word: 'least', share: TOLD_TO };
  if (share > 1 - TOLD_TO / 2) return { word: 'sure', share: 1 - TOLD_TO };
  if (chance >= LIKELY_FROM.most) return { word: 'most', share };
  return { word: chance >= LIKELY_FROM.likely ? 'likely' : 'perhaps', share };
}
