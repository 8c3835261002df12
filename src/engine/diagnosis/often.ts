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
