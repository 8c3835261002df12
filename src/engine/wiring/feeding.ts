// One district as a circuit: a stage, a bus, feeders and rails. What reaches a train, and what a short draws, at every place.
import type { Branch, Network, NetworkProblem, Pair, Prepared } from '../circuit/index.ts';
import { impedance, prepare } from '../circuit/index.ts';
import type { ShortAlong, TrackPiece } from './short-circuit.ts';

/** A district in metres along its track; the bus runs beside it. Every resistance is of one conductor or one rail: the loop has two. */
export interface FeedingPlan {
  readonly source: {
    /** Without load, volts, > 0. */
    readonly volts: number;
    /** Of the stage, its supply and the leads to the bus, ohms, >= 0. */
    readonly ohms: number;
    /** Most it passes, amperes, > 0; absent: only resistance limits. */
    readonly limit?: number;
  };
  readonly bus: {
    /** Metres, > 0, from the same zero as the track. */
    readonly length: number;
    readonly ohmsPerMetre: number;
    /** Where the stage feeds it, metres from its start. */
    readonly fedAt: number;
    /** Its two ends are joined. */
    readonly ring: boolean;
    /** Metres of the same pair of wires between the stage and where it feeds the bus, >= 0; absent: none. */
    readonly lead?: number;
  };
  readonly feeders: readonly Feeder[];
  readonly rails: {
    readonly length: number;
    readonly ohmsPerMetre: number;
    readonly joints: readonly RailJoint[];
    /** The track is an oval: its two ends are one place. */
    readonly closed?: boolean;
  };
}

/** A pair of wires from bus to rails. `at`: metres along the track; a feeder exactly on a joint holds the side towards the start. */
export interface Feeder {
  readonly at: number;
  readonly length: number;
  readonly ohmsPerMetre: number;
}

/** A joint of the rails that resists: ohms in each rail. Inside the track, not at its ends. */
export interface RailJoint {
  readonly at: number;
  readonly ohms: number;
}

export interface FeedingProblem {
  readonly kind: 'no-solution';
  readonly because:
    | 'not-above-zero'
    | 'below-zero'
    | 'outside-the-track'
    | 'outside-the-bus'
    | 'no-feeder'
    | 'more-than-the-source'
    | 'no-operating-point'
    | 'too-far-apart';
  /** `source`, `bus`, `rails`, `short`, `train`, `train-2`, `feeder-3`, `joint-1`: counted from 1. */
  readonly parts: readonly string[];
}

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
  /** Bus and feeders alone. */
  readonly wires: readonly Branch[];
  readonly sections: readonly RailSection[];
  /** Nodes of the places that were asked for, in their order. */
  readonly nodes: readonly string[];
  /** Nodes of the rails with more than two ways out, or asked for: in between, ohms alone tell. */
  readonly hubs: ReadonlySet<string>;
}

/** The node that every train, short and source stands against. */
export const RETURN_NODE = 'return';
/** Places nearer than this are one place, metres. */
const SAME_PLACE = 1e-6;
/** A stage without resistance is reckoned with this, ohms: 5 microvolts at 5 A. */
const LEAST_SOURCE = 1e-6;
/** Points along the whole track where no step is given. */
const POINTS = 120;

/**
 * The circuit of a plan, with a node of the rails at each of `places` (metres along the track, exactly on a joint: the side towards the
 * start), or what is wrong with the plan.
 */
export function feedingNetwork(plan: FeedingPlan, places: readonly number[] = []): FeedingNetwork | FeedingProblem {
  const wrong = wrongPlan(plan);
  if (wrong !== undefined) return wrong;
  const bus = busBranches(plan);
  const rails = railBranches(plan, places);
  const { volts, limit } = plan.source;
  const ohms = sourceOhms(plan);
  const source = {
    id: 'source',
    plus: bus.nodeAt(plan.bus.fedAt),
    minus: RETURN_NODE,
    volts,
    ohms: Math.max(ohms, LEAST_SOURCE),
    ...(limit === undefined ? {} : { limit }),
  };
  const feeders = plan.feeders.map(({ at, length, ohmsPerMetre }, i) => ({
    id: `feeder-${i + 1}`,
    from: bus.nodeAt(at),
    to: rails.nodeAt(at),
    ohms: 2 * length * ohmsPerMetre,
  }));
  const wires = [...bus.branches, ...feeders];
  return {
    kind: 'network',
    network: { branches: [...wires, ...rails.branches], sources: [source], reference: RETURN_NODE },
    wires,
    sections: rails.sections,
    nodes: places.map(rails.nodeAt),
    hubs: new Set(
      [...(plan.rails.closed === true ? [0] : []), ...plan.feeders.map(({ at }) => at), ...places].map(rails.nodeAt),
    ),
  };
}

/** What lies before the bus: stage, supply and leads, and the bus's own lead there and back, ohms. */
export const sourceOhms = ({ source, bus }: FeedingPlan): number =>
  source.ohms + 2 * (bus.lead ?? 0) * bus.ohmsPerMetre;

const above = (value: number): boolean => value > 0 && Number.isFinite(value);
const problem = (because: FeedingProblem['because'], ...parts: string[]): FeedingProblem => ({
  kind: 'no-solution',
  because,
  parts,
});

const wrongPlan = (plan: FeedingPlan): FeedingProblem | undefined => wrongPart(plan) ?? wrongPlace(plan);

function wrongPart({ source, bus, feeders, rails }: FeedingPlan): FeedingProblem | undefined {
  const values: readonly (readonly [string, ...number[]])[] = [
    ['source', source.volts, source.limit === undefined ? 1 : source.limit],
    ['bus', bus.length, bus.ohmsPerMetre],
    ['rails', rails.length, rails.ohmsPerMetre],
    ...feeders.map((one, i) => [`feeder-${i + 1}`, one.length, one.ohmsPerMetre] as const),
  ];
  const notAbove = values.filter(([, ...numbers]) => !numbers.every(above)).map(([part]) => part);
  if (notAbove.length > 0) return problem('not-above-zero', ...notAbove);
  const below = [
    ['source', source.ohms] as const,
    ['bus', bus.lead ?? 0] as const,
    ...rails.joints.map((one, i) => [`joint-${i + 1}`, one.ohms] as const),
  ].filter(([, ohms]) => !(ohms >= 0 && Number.isFinite(ohms)));
  if (below.length > 0) return problem('below-zero', ...below.map(([part]) => part));
  return feeders.length === 0 ? problem('no-feeder', 'rails') : undefined;
}

function wrongPlace({ bus, feeders, rails }: FeedingPlan): FeedingProblem | undefined {
  const offTrack = [
    ...feeders.map((one, i) => [`feeder-${i + 1}`, one.at >= 0 && one.at <= rails.length + SAME_PLACE] as const),
    ...rails.joints.map(
      (one, i) => [`joint-${i + 1}`, one.at > SAME_PLACE && one.at < rails.length - SAME_PLACE] as const,
    ),
  ].filter(([, inside]) => !inside);
  if (offTrack.length > 0) return problem('outside-the-track', ...offTrack.map(([part]) => part));
  const offBus = [
    ['source', bus.fedAt] as const,
    ...feeders.map((one, i) => [`feeder-${i + 1}`, one.at] as const),
  ].filter(([, at]) => !(at >= 0 && at <= bus.length + SAME_PLACE));
  return offBus.length > 0 ? problem('outside-the-bus', ...offBus.map(([part]) => part)) : undefined;
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

/** Track between two hubs, or from a hub to its dead end: no current enters or leaves it but through those. */
interface Chain {
  readonly from: string | undefined;
  readonly to: string | undefined;
  /** Where on the track, and where within the chain, ohms from its beginning. */
  readonly parts: readonly { readonly section: RailSection; readonly ohmsBefore: number }[];
  readonly ohms: number;
}

function chainsOf({ sections, hubs }: FeedingNetwork): Chain[] {
  const chains: Chain[] = [];
  let parts: { section: RailSection; ohmsBefore: number }[] = [];
  let ohms = 0;
  let from = sections[0]?.start;
  for (const section of sections) {
    parts.push({ section, ohmsBefore: ohms + section.joint });
    ohms += section.joint + section.ohms;
    const ends = hubs.has(section.end);
    if (!ends && section !== sections.at(-1)) continue;
    chains.push({ from: hubOf(hubs, from), to: hubOf(hubs, section.end), parts, ohms });
    parts = [];
    ohms = 0;
    from = section.end;
  }
  return chains;
}

const hubOf = (hubs: ReadonlySet<string>, node: string | undefined): string | undefined =>
  node !== undefined && hubs.has(node) ? node : undefined;

/** constant + linear t + square t^2 for t from 0 to 1. */
type Parabola = Pick<TrackPiece, 'constant' | 'linear' | 'square'>;

interface Circuit {
  readonly kind: 'circuit';
  readonly prepared: Prepared;
  readonly nodes: readonly string[];
  /** With the ohms that a train or a short sees along each. */
  readonly chains: readonly { readonly chain: Chain; readonly seen: Parabola }[];
}

function circuitOf(plan: FeedingPlan, places: readonly number[]): Circuit | FeedingProblem {
  const built = feedingNetwork(plan, places);
  if (built.kind === 'no-solution') return built;
  const chains = chainsOf(built);
  const prepared = prepare({ ...built.network, branches: [...built.wires, ...chains.flatMap(asBranch)] });
  if (prepared.kind === 'no-solution') return fromNetwork(prepared);
  const seen = chains.map((chain) => ({ chain, seen: seenAlong(prepared, chain) }));
  return { kind: 'circuit', prepared, nodes: built.nodes, chains: seen };
}

/** A chain as one resistance; a dead end or a loop back to its own hub joins nothing. */
function asBranch({ from, to, ohms }: Chain, index: number): Branch[] {
  return from === undefined || to === undefined || from === to ? [] : [{ id: `rails-${index}`, from, to, ohms }];
}

const againstReturn = (node: string): Pair => [node, RETURN_NODE];

// (1-t)^2 Zaa + t^2 Zbb + 2t(1-t) Zab + t(1-t) R. All that a dead end draws passes its hub.
function seenAlong(prepared: Prepared, { from, to, ohms }: Chain): Parabola {
  const start = from === undefined ? undefined : impedance(prepared, againstReturn(from));
  const end = to === undefined ? undefined : impedance(prepared, againstReturn(to));
  if (from === undefined || to === undefined || start === undefined || end === undefined) {
    return start === undefined
      ? { constant: (end ?? 0) + ohms, linear: -ohms, square: 0 }
      : { constant: start, linear: ohms, square: 0 };
  }
  const middle = 2 * impedance(prepared, againstReturn(from), againstReturn(to)) + ohms;
  return { constant: start, linear: middle - 2 * start, square: start + end - middle };
}

/** A parabola over a chain as one over each of its sections. */
function piecesOf({ parts, ohms }: Chain, { constant, linear, square }: Parabola): TrackPiece[] {
  return parts.map(({ section, ohmsBefore }) => {
    const begins = ohmsBefore / ohms;
    const share = section.ohms / ohms;
    return {
      from: section.from,
      to: section.to,
      constant: constant + begins * (linear + begins * square),
      linear: share * (linear + 2 * begins * square),
      square: share * share * square,
    };
  });
}

// A plan that passed its own checks is connected and has one source, so only its size can still be wrong.
function fromNetwork({ because, parts }: NetworkProblem): FeedingProblem {
  return problem(because === 'no-operating-point' ? because : 'too-far-apart', ...parts);
}

const pieceAt = ({ constant, linear, square }: TrackPiece, t: number): number => constant + t * (linear + t * square);

export interface OtherTrain {
  /** Metres along the track, and amperes >= 0. */
  readonly at: number;
  readonly amps: number;
}

export interface TrainPoint {
  /** Metres along the track. */
  readonly at: number;
  /** At the train, volts, and below the source's no-load volts. */
  readonly volts: number;
  readonly drop: number;
}

export interface TrainAlong {
  readonly kind: 'along';
  /** In order of place; at a joint there are two of the same place. */
  readonly points: readonly TrainPoint[];
  /** Volts at the train over each stretch, in the same closed form as the ohms of a short. */
  readonly pieces: readonly TrackPiece[];
  /** Lowest of all places, not only of the points; `share` is the drop over the source's volts. */
  readonly worst: TrainPoint & { readonly share: number };
}

/**
 * What a train that draws `amps` (>= 0) finds at every place, while other trains stand where they are. The lowest place is found in
 * closed form along each stretch. `step`: metres between points, > 0. Problems: as of the plan; `more-than-the-source` where all trains
 * together pass its limit; `no-operating-point` where so much is lost that nothing is left. Source: own-derivation.
 */
export function trainAlong(
  plan: FeedingPlan,
  amps: number,
  others: readonly OtherTrain[] = [],
  step = plan.rails.length / POINTS,
): TrainAlong | FeedingProblem {
  const wrong = wrongPlan(plan) ?? wrongTrains(plan, amps, others);
  if (wrong !== undefined) return wrong;
  const circuit = circuitOf(
    plan,
    others.map(({ at }) => at),
  );
  if (circuit.kind === 'no-solution') return circuit;
  const volts = circuit.chains.flatMap(({ chain, seen }) => {
    const start = leftBy(circuit, plan.source.volts, others, chain.from ?? chain.to);
    const end = leftBy(circuit, plan.source.volts, others, chain.to ?? chain.from);
    return piecesOf(chain, {
      constant: start - amps * seen.constant,
      linear: end - start - amps * seen.linear,
      square: -amps * seen.square,
    });
  });
  return alongVolts(plan.source.volts, volts, step);
}

/** Volts that the other trains leave at a hub; between two hubs they change evenly with the ohms. */
function leftBy({ prepared, nodes }: Circuit, volts: number, others: readonly OtherTrain[], hub = RETURN_NODE): number {
  const lost = others.map(
    ({ amps }, i) => amps * impedance(prepared, againstReturn(nodes[i] ?? RETURN_NODE), againstReturn(hub)),
  );
  return lost.reduce((left, one) => left - one, volts);
}

function wrongTrains(
  { rails, source }: FeedingPlan,
  amps: number,
  others: readonly OtherTrain[],
): FeedingProblem | undefined {
  const trains = [['train', amps] as const, ...others.map((one, i) => [`train-${i + 1}`, one.amps] as const)];
  const bad = trains.filter(([, current]) => !(current >= 0 && Number.isFinite(current)));
  if (bad.length > 0) return problem('below-zero', ...bad.map(([part]) => part));
  const off = others.flatMap(({ at }, i) => (at >= 0 && at <= rails.length + SAME_PLACE ? [] : [`train-${i + 1}`]));
  if (off.length > 0) return problem('outside-the-track', ...off);
  const total = trains.reduce((sum, [, current]) => sum + current, 0);
  return source.limit !== undefined && total > source.limit ? problem('more-than-the-source', 'source') : undefined;
}

function alongVolts(source: number, pieces: readonly TrackPiece[], step: number): TrainAlong | FeedingProblem {
  const lowest = extreme(pieces, -1);
  if (!(lowest.value > 0)) return problem('no-operating-point', 'train');
  const drop = source - lowest.value;
  const points = pointsOf(pieces, step).map(({ at, value }) => ({ at, volts: value, drop: source - value }));
  return { kind: 'along', points, pieces, worst: { at: lowest.at, volts: lowest.value, drop, share: drop / source } };
}

/**
 * What the train finds at `at` itself, metres along the track, and not at the nearest point of a drawing; places off the track count as
 * its nearer end, a joint as its side towards the start. Volts. Source: own-derivation.
 */
export function voltsAt({ pieces }: TrainAlong, at: number): number {
  return valueAt(pieces, at);
}

/** What a short at `at` itself draws, amperes; places as in `voltsAt`. Source: own-derivation. */
export function shortAmpsAt(along: ShortAlong, at: number): number {
  return shortAmps(along, valueAt(along.pieces, at));
}

const shortAmps = ({ volts, limit, faultOhms }: Pick<ShortAlong, 'volts' | 'limit' | 'faultOhms'>, ohms: number) =>
  Math.min(limit, volts / (ohms + faultOhms));

function valueAt(pieces: readonly TrackPiece[], at: number): number {
  const piece = pieces.find(({ to }) => at <= to) ?? pieces.at(-1);
  if (piece === undefined) return 0;
  const wide = piece.to - piece.from;
  return pieceAt(piece, wide > 0 ? Math.min(1, Math.max(0, (at - piece.from) / wide)) : 0);
}

interface Value {
  readonly at: number;
  readonly value: number;
}

/** Highest (side 1) or lowest (side -1) value of all pieces and where it is; of equal ones the nearest to the start. */
function extreme(pieces: readonly TrackPiece[], side: 1 | -1): Value {
  let best: Value = { at: 0, value: side * Number.NEGATIVE_INFINITY };
  for (const piece of pieces) {
    const top = -piece.linear / (2 * piece.square);
    for (const t of top > 0 && top < 1 ? [0, top, 1] : [0, 1]) {
      const value = pieceAt(piece, t);
      if (side * (value - best.value) > 1e-12) best = { at: piece.from + t * (piece.to - piece.from), value };
    }
  }
  return best;
}

function pointsOf(pieces: readonly TrackPiece[], step: number): Value[] {
  const length = (pieces.at(-1)?.to ?? 0) - (pieces[0]?.from ?? 0);
  const apart = step > 0 ? Math.max(step, length / 10_000) : length / POINTS;
  const points: Value[] = [];
  for (const piece of pieces) {
    const start = { at: piece.from, value: pieceAt(piece, 0) };
    const last = points.at(-1);
    if (last === undefined || Math.abs(last.value - start.value) > 1e-12) points.push(start);
    const wide = piece.to - piece.from;
    for (let k = Math.floor(piece.from / apart + 1e-9) + 1; k * apart < piece.to - SAME_PLACE; k++) {
      const at = k * apart;
      points.push({ at, value: pieceAt(piece, (at - piece.from) / wide) });
    }
    points.push({ at: piece.to, value: pieceAt(piece, 1) });
  }
  return points;
}

/**
 * What a short circuit of `faultOhms` (>= 0) draws at every place, trains away; never more than the source's limit. The weakest place is
 * found in closed form along each stretch. `step`: metres between points, > 0. Problems: as of the plan. Source: own-derivation.
 */
export function shortAlong(
  plan: FeedingPlan,
  faultOhms = 0,
  step = plan.rails.length / POINTS,
): ShortAlong | FeedingProblem {
  if (!(faultOhms >= 0 && Number.isFinite(faultOhms))) return problem('below-zero', 'short');
  const circuit = circuitOf(plan, []);
  if (circuit.kind === 'no-solution') return circuit;
  const { volts, limit = Number.POSITIVE_INFINITY } = plan.source;
  const amps = (ohms: number): number => shortAmps({ volts, limit, faultOhms }, ohms);
  const pieces = circuit.chains.flatMap(({ chain, seen }) => piecesOf(chain, seen));
  const farthest = extreme(pieces, 1);
  return {
    kind: 'along',
    volts,
    limit,
    faultOhms,
    pieces,
    points: pointsOf(pieces, step).map(({ at, value }) => ({ at, amps: amps(value) })),
    weakest: { at: farthest.at, amps: amps(farthest.value), ohms: farthest.value },
  };
}

/** Most feeders that are laid out evenly. */
export const MOST_FEEDERS = 200;

/**
 * Feeders of one kind spread over a track: so many, or so many that none is farther than `spacing` metres from the next. On a track
 * with two ends the outer ones stand a quarter of their distance from the ends, for a dead end of that length loses as much as the middle between two
 * feeders; on an oval the distances are equal. At most 200; none where the count, spacing or length is not above 0. Source:
 * own-derivation.
 */
export function evenFeeders(
  how: { readonly count: number } | { readonly spacing: number },
  { length, closed = false }: Pick<FeedingPlan['rails'], 'length' | 'closed'>,
  wire: Omit<Feeder, 'at'>,
): Feeder[] {
  const wanted = 'count' in how ? Math.round(how.count) : Math.ceil(length / how.spacing + (closed ? 0 : 0.5) - 1e-9);
  if (!(length > 0 && wanted > 0)) return [];
  const count = Math.min(wanted, MOST_FEEDERS);
  const apart = closed ? length / count : length / (count - 0.5);
  const first = closed ? apart / 2 : apart / 4;
  return Array.from({ length: count }, (_, i) => ({ ...wire, at: first + i * apart }));
}
