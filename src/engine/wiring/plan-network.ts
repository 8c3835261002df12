// A district laid out as a network: its nodes, its wires, and its rails section by section.
import type { Branch, Network } from '../circuit/index.ts';
import type { FeedingPlan, FeedingProblem } from './plan.ts';
import { SAME_PLACE, sourceOhms, wrongPlan } from './plan.ts';

/** A stretch of both rails between two nodes of the network, metres along the track. */
export interface RailSection {
  readonly from: number;
  readonly to: number;
  readonly start: string;
  readonly end: string;
  /** Both rails, ohms. */
  readonly ohms: number;
  /** Of a joint just before it, both rails, ohms; 0 for none. */
  readonly joint: number;
}

export interface FeedingNetwork {
  readonly kind: 'network';
  /** One line stands for both conductors: each branch has the ohms of there and back, and all currents return to `RETURN_NODE`. */
  readonly network: Network;
  /** Bus, feeders and the resistance of the source: all but the rails. */
  readonly wires: readonly Branch[];
  readonly sections: readonly RailSection[];
  /** Nodes of the places that were asked for, in their order. */
  readonly nodes: readonly string[];
  /** Nodes of the rails with more than two ways out, or asked for: in between, ohms alone tell. */
  readonly hubs: ReadonlySet<string>;
}

/** The node that every train, short and source stands against. */
export const RETURN_NODE = 'return';
/** A stage without resistance is reckoned with this, ohms: 5 microvolts at 5 A. Source: own-choice. */
const LEAST_SOURCE = 1e-6;

/**
 * The circuit of a plan, with a node of the rails at each of `places` (metres along the track, exactly on a joint: the side towards the
 * start), or what is wrong with the plan.
 */
export function feedingNetwork(plan: FeedingPlan, places: readonly number[] = []): FeedingNetwork | FeedingProblem {
  const wrong = wrongPlan(plan);
  if (wrong !== undefined) return wrong;
  const bus = busBranches(plan);
  const rails = railBranches(plan, places);
  const source = {
    id: 'source',
    from: bus.nodeAt(plan.bus.fedAt),
    to: RETURN_NODE,
    ohms: Math.max(sourceOhms(plan), LEAST_SOURCE),
  };
  const feeders = plan.feeders.map(({ at, length, ohmsPerMetre }, i) => ({
    id: `feeder-${i + 1}`,
    from: bus.nodeAt(at),
    to: rails.nodeAt(at),
    ohms: 2 * length * ohmsPerMetre,
  }));
  const wires = [...bus.branches, ...feeders, source];
  return {
    kind: 'network',
    network: { branches: [...wires, ...rails.branches], reference: RETURN_NODE },
    wires,
    sections: rails.sections,
    nodes: places.map(rails.nodeAt),
    hubs: new Set(
      [...(plan.rails.closed === true ? [0] : []), ...plan.feeders.map(({ at }) => at), ...places].map(rails.nodeAt),
    ),
  };
}

/** Places in order, those that are nearer to each other than counts taken as one. */
function inOrder(places: readonly number[]): number[] {
  const kept: number[] = [];
  for (const at of Float64Array.from(places).sort()) {
    if (kept.length === 0 || at - (kept.at(-1) ?? 0) > SAME_PLACE) kept.push(at);
  }
  return kept;
}

/** Index of the place in an ordered list that `at` was taken into: the last one at or before it. */
function placeOf(places: readonly number[], at: number): number {
  let low = 0;
  let high = places.length - 1;
  while (low < high) {
    const mid = (low + high + 1) >> 1;
    if ((places[mid] ?? 0) <= at) low = mid;
    else high = mid - 1;
  }
  return low;
}

function busBranches({ bus, feeders }: FeedingPlan) {
  const places = inOrder([bus.fedAt, ...feeders.map(({ at }) => at)]);
  const loop = 2 * bus.ohmsPerMetre;
  const branches: Branch[] = [];
  for (const [i, at] of places.entries()) {
    const next = places[i + 1];
    if (next === undefined) break;
    branches.push({ id: `bus-${i}`, from: `at-bus-${i}`, to: `at-bus-${i + 1}`, ohms: loop * (next - at) });
  }
  const last = places.length - 1;
  const back = bus.length - (places[last] ?? 0) + (places[0] ?? 0);
  if (bus.ring && last > 0) {
    const ohms = back > SAME_PLACE ? loop * back : 0;
    branches.push({ id: `bus-${last}`, from: `at-bus-${last}`, to: 'at-bus-0', ohms });
  }
  return { branches, nodeAt: (at: number) => `at-bus-${placeOf(places, at)}` };
}

function railBranches({ feeders, rails }: FeedingPlan, asked: readonly number[]) {
  const { length, ohmsPerMetre, joints, closed = false } = rails;
  // An oval needs a node apart from its seam, so that no section begins and ends at one.
  const seam = closed ? [length / 2] : [];
  const given = [...feeders.map(({ at }) => at), ...joints.map(({ at }) => at), ...asked];
  const places = inOrder([0, ...seam, ...given, length]);
  const last = places.length - 1;
  const before = (i: number): string => `at-rail-${closed && i === last ? 0 : i}`;
  const jointAt = new Map<number, number>();
  for (const { at, ohms } of joints) {
    const i = placeOf(places, at);
    jointAt.set(i, (jointAt.get(i) ?? 0) + 2 * ohms);
  }
  const after = (i: number): string => (jointAt.has(i) ? `beyond-rail-${i}` : before(i));
  const branches: Branch[] = [...jointAt].map(([i, ohms]) => ({
    id: `joint-at-${i}`,
    from: before(i),
    to: after(i),
    ohms,
  }));
  const sections: RailSection[] = [];
  for (let i = 0; i < last; i++) {
    const [from = 0, to = 0] = [places[i], places[i + 1]];
    const [start, end, ohms] = [after(i), before(i + 1), 2 * ohmsPerMetre * (to - from)];
    sections.push({ from, to, start, end, ohms, joint: jointAt.get(i) ?? 0 });
    branches.push({ id: `rail-${i}`, from: start, to: end, ohms });
  }
  return { branches, sections, nodeAt: (at: number) => before(placeOf(places, at)) };
}
