// Tests that are no checks of the walk, or that are told here in words of their own: what hands do in them, and in how many steps.
import type { Act } from '../safety/index.ts';

export const OWN_ACTS = {
  'first-look': ['sends-a-train-over-the-gap', 'touches-what-is-off'],
  crossing: ['sends-a-train-over-the-gap', 'stands-across-the-gap'],
  traffic: ['lets-it-run'],
} as const satisfies Readonly<Record<string, readonly Act[]>>;

export type OwnTest = keyof typeof OWN_ACTS;
export const isOwnTest = (kind: string): kind is OwnTest => Object.hasOwn(OWN_ACTS, kind);

/** A check that the walk answers from memory is made here. */
export const MORE_ACTS: Readonly<Partial<Record<string, readonly Act[]>>> = {
  'short-locomotive-through-loop': ['sends-a-train-over-the-gap', 'stands-across-the-gap'],
};

/** Steps of the tests that are told in words of their own: the walk knows of one booster only, and speaks of a trouble. Source: own-choice. */
const OWN_STEPS: Readonly<Partial<Record<string, number>>> = {
  'first-look': 1,
  'jumper-test': 6,
  'each-stage-alone': 3,
  'vehicle-in-far-part': 4,
  'programming-track': 2,
  'short-locomotive-through-loop': 1,
  crossing: 1,
  traffic: 1,
};

/** Undefined where the words of the check hold. */
export const ownSteps = (kind: string): number | undefined => OWN_STEPS[kind];

/** Tests whose question is the check's own, though their steps are not. */
const ASKED_AS_CHECK: readonly string[] = ['jumper-test'];
export const hasOwnQuestion = (kind: string): boolean => ownSteps(kind) !== undefined && !ASKED_AS_CHECK.includes(kind);
