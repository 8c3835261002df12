// What the wiring of a district is judged by, and what is usual where nobody has said: levels that charts draw and wizards assume.
import { DROP_LIMIT, DROP_WANTED } from './remedies.ts';
import type { Conductor } from './wire.ts';

/** A feeder where nothing is said: metres of it, and its wire. Source: common-practice. */
export const FEEDER_WIRE = { length: 0.3, area: 0.5e-6, make: 'flexible' } as const satisfies Conductor & {
  readonly length: number;
};

/**
 * Least volts a train should have, and may have, behind a stage of so many volts (> 0) that takes `stageDrop` volts itself
 * under the trains drawn (0 or more): the wiring is judged by what the wiring loses. Source: common-practice.
 */
export function trainLevels(volts: number, stageDrop: number): { readonly wanted: number; readonly least: number } {
  return { wanted: volts * (1 - DROP_WANTED) - stageDrop, least: volts * (1 - DROP_LIMIT) - stageDrop };
}

export type DropFinding = 'good' | 'bearable' | 'poor';

/** What is to be thought of a train that loses this share of the stage's volts, 0 to 1. Source: common-practice. */
export function dropFinding(share: number): DropFinding {
  if (share <= DROP_WANTED) return 'good';
  return share <= DROP_LIMIT ? 'bearable' : 'poor';
}
