// What the figure of both sides of a gap can be set to, and what it begins from.
import type { Joined } from '../../../engine/index.ts';

export const STATES = ['right', 'reversed', 'held', 'dead', 'late', 'rounded'] as const;
export const JOINS = ['other-rail', 'negatives', 'nothing'] as const satisfies readonly Joined[];
export const VIEWS = ['bits', 'packet', 'edge'] as const;
export type View = (typeof VIEWS)[number];
export const PACKET_IDS = ['speed-3', 'speed-55', 'idle', 'stop', 'cut', 'reset'] as const;
export type PacketId = (typeof PACKET_IDS)[number];

/** What a person has set: volts, whole microseconds, nanofarads, ohms, the number of a bit from 1. */
export interface GapScopeSettings {
  readonly state: (typeof STATES)[number];
  readonly near: number;
  readonly far: number;
  readonly late: number;
  readonly nanofarads: number;
  readonly ohms: number;
  readonly sent: PacketId;
  readonly joined: Joined;
  readonly view: View;
  readonly bit: number;
}

export const GAP_SCOPE_START: GapScopeSettings = {
  state: 'right',
  near: 15,
  far: 15,
  late: 3,
  nanofarads: 100,
  ohms: 1,
  sent: 'speed-3',
  joined: 'other-rail',
  view: 'bits',
  bit: 13,
};
