// What can be changed about the wiring, and what that takes in money and hours.
import type { Cost } from '../cost.ts';
import { costOf } from '../cost.ts';
import { BREAKERS_COST, SECOND_DISTRICT_COST } from '../power/index.ts';
import type { FeedingPlan } from './plan.ts';
import type { Conductor } from './wire.ts';

/** What is laid anew, all of it together. */
export interface Rewired {
  readonly kind: 'rewired';
  /** Where the unit joins the bus then, or its one pair the track: the middle, metres along. */
  readonly middle?: number;
  /** The two ends of the bus are joined; for layouts where they meet. */
  readonly ring?: true;
  readonly feeders?: { readonly spacing: number; readonly count: number; readonly added: number };
  readonly bus?: Conductor;
  /** Of every feeder. */
  readonly feederWire?: Conductor;
}

export type WiringChange =
  | { readonly kind: 'as-it-is' }
  | Rewired
  | { readonly kind: 'lower-trip'; readonly trip: number }
  /** Breakers under the stage, which keeps its own trip current. */
  | { readonly kind: 'breakers'; readonly trip: number }
  /** Cut in the middle; the second half has a stage of its own, at the far end. */
  | { readonly kind: 'second-stage'; readonly cutAt: number; readonly fedAt: number };

const piece = (least: number, most: number, quick: number, slow: number): Cost => ({
  money: { from: least, to: most },
  hours: { from: quick, to: slow },
});

/** What one piece of the work takes: euros, then hours. Source: common-practice. */
const COSTS = {
  /** The unit's lead moved to the middle of the bus; one pair moved to the middle of its track. */
  middle: piece(0, 15, 1, 2),
  pairToMiddle: piece(0, 5, 0.3, 1),
  /** Two ends joined that meet or nearly so. */
  ring: piece(3, 15, 1, 3),
  /** A pair of feeder wires with what joins it to bus and rails. */
  feeder: piece(0.5, 2, 0.15, 0.4),
  /** To begin with a bus, its clamps, and to lay a metre of it. */
  bus: piece(5, 15, 1, 2),
  busMetre: piece(0, 0, 0.08, 0.16),
  /** A metre of both wires for each square millimetre. */
  wire: piece(0.4, 0.8, 0, 0),
  /** Turned on the unit itself. */
  trip: piece(0, 0, 0.1, 0.5),
} as const;

/** What joins the unit, bus and feeders anew. */
export interface Work {
  readonly middle: boolean;
  readonly ring: boolean;
  /** A new bus: its cross section, square metres; 0 where the cheapest is still to be found. */
  readonly bus: number | undefined;
  /** Feeders that are laid. */
  readonly feeders: number;
}

/** Where there is only a pair of wires, feeders want a bus, and that is of the pair's wire where no other is told. */
export function workCost(
  { middle, ring, bus, feeders }: Work,
  { bus: { length, lead = 0 } }: FeedingPlan,
  pair: boolean,
): Cost {
  const lays = bus !== undefined || (pair && feeders > 0);
  const metres = lays ? length + lead : 0;
  return costOf([
    [middle ? 1 : 0, pair ? COSTS.pairToMiddle : COSTS.middle],
    [ring ? 1 : 0, COSTS.ring],
    [lays ? 1 : 0, COSTS.bus],
    [metres, COSTS.busMetre],
    [metres * (bus ?? 0) * 1e6, COSTS.wire],
    [feeders, COSTS.feeder],
  ]);
}

export function changeCost(change: WiringChange, plan: FeedingPlan, pair: boolean): Cost {
  switch (change.kind) {
    case 'as-it-is':
      return costOf([]);
    case 'lower-trip':
      return COSTS.trip;
    case 'breakers':
      return BREAKERS_COST;
    case 'second-stage':
      return SECOND_DISTRICT_COST;
    case 'rewired':
      return workCost(workOf(change, plan), plan, pair);
  }
}

const workOf = ({ middle, ring, bus, feeders, feederWire }: Rewired, plan: FeedingPlan): Work => ({
  middle: middle !== undefined,
  ring: ring === true,
  bus: bus?.area,
  feeders: feederWire === undefined ? (feeders?.added ?? 0) : plan.feeders.length,
});
