// What the wiring of a district is judged by, and what is usual where nobody has said: levels that charts draw and wizards assume.
import type { Conductor } from './wire.ts';

/** Share of the volts that wires and rails should lose at most, and may lose at most; what the stage takes is none of theirs. Source: common-practice. */
export const DROP_WANTED = 0.05;
export const DROP_LIMIT = 0.1;

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
