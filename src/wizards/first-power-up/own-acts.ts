// What hands do in the tests that are no checks of the walk.
import type { Act } from '../safety/index.ts';

export const OWN_ACTS = {
  'first-look': ['sends-a-train-over-the-gap', 'touches-what-is-off'],
  crossing: ['sends-a-train-over-the-gap', 'stands-across-the-gap'],
  traffic: ['lets-it-run'],
} as const satisfies Readonly<Record<string, readonly Act[]>>;

export type OwnTest = keyof typeof OWN_ACTS;
export const isOwnTest = (kind: string): kind is OwnTest => Object.hasOwn(OWN_ACTS, kind);
