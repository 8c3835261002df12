// A plan as a circuit: laid, ordered and factored once, it tells what any train finds and what any short circuit draws at every place.
import type { Branch, NetworkProblem, Pair, Prepared } from '../circuit/index.ts';
import { impedance, prepare } from '../circuit/index.ts';
import type { Parabola, TrackPiece } from './along-track.ts';
import { extreme, partOf, pointsOf, valueAt } from './along-track.ts';
import type { FeedingPlan, FeedingProblem } from './plan.ts';
import { problem, SAME_PLACE, wrongPlan } from './plan.ts';
import type { FeedingNetwork, RailSection } from './plan-network.ts';
import { feedingNetwork, RETURN_NODE } from './plan-network.ts';
import type { ShortAlong } from './short-circuit.ts';
import { shortAlong } from './short-circuit.ts';

export interface StandingTrain {
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
  /** Volts at the train, piece by piece. */
  readonly pieces: readonly TrackPiece[];
  /** In order of place; at a joint there are two of the same place. */
  readonly points: readonly TrainPoint[];
  /** What the stage itself takes under all trains drawn, volts. */
  readonly stageDrop: number;
  /** Lowest of all places, not only of the points; `share` is the drop over the source's volts, `wiringShare` that part of it which wires and rails lose, not the stage. */
  readonly worst: TrainPoint & { readonly share: number; readonly wiringShare: number };
}

export interface PlanCircuit {
  readonly kind: 'circuit';
  readonly plan: FeedingPlan;
  /**
   * What a train that draws `amps` (>= 0) finds at every place, while the others stand where they are. The lowest place is found in closed
   * form along each stretch. `step`: metres between points, > 0. Problems: `below-zero`; `more-than-the-source` where all trains together
   * pass its limit; `no-operating-point` where so much is lost that nothing is left. Source: own-derivation.
   */
  train(amps: number, step?: number): TrainAlong | FeedingProblem;
  /**
   * What a short circuit of `faultOhms` (>= 0) draws at every place, trains away; never more than the source's limit. The weakest place
   * is found in closed form along each stretch. `step`: metres between points, > 0. Problem: `below-zero`. Source: own-derivation.
   */
  short(faultOhms?: number, step?: number): ShortAlong | FeedingProblem;
}

/** The circuit of a plan with trains that stand on it. Problems: as of the plan; `below-zero` and `outside-the-track` of a train. */
export function solvePlan(plan: FeedingPlan, standing: readonly StandingTrain[] = []): PlanCircuit | FeedingProblem {
  const wrong = wrongPlan(plan) ?? wrongStanding(plan, standing);
  if (wrong !== undefined) return wrong;
  const circuit = circuitOf(
    plan,
    standing.map(({ at }) => at),
  );
  if (circuit.kind === 'no-solution') return circuit;
  return {
    kind: 'circuit',
    plan,
    train: (amps, step) => wrongTrain(plan, amps, standing) ?? trainOn(circuit, { plan, standing, amps }, step),
    short: (faultOhms = 0, step) =>
      wrongShort(faultOhms) ?? shortAlong(shortPieces(circuit), plan.source, faultOhms, step),
  };
}

/** Volts at the train where it stands at this spot, metres along the track. */
export const voltsAt = ({ pieces }: TrainAlong, at: number): number => valueAt(pieces, at);

const soundAmps = (amps: number): boolean => amps >= 0 && Number.isFinite(amps);

function wrongStanding({ rails }: FeedingPlan, standing: readonly StandingTrain[]): FeedingProblem | undefined {
  const named = (fails: (one: StandingTrain) => boolean): string[] =>
    standing.flatMap((one, i) => (fails(one) ? [`train-${i + 1}`] : []));
  const bad = named(({ amps }) => !soundAmps(amps));
  if (bad.length > 0) return problem('below-zero', ...bad);
  const off = named(({ at }) => !(at >= 0 && at <= rails.length + SAME_PLACE));
  return off.length > 0 ? problem('outside-the-track', ...off) : undefined;
}

function wrongTrain(
  { source }: FeedingPlan,
  amps: number,
  standing: readonly StandingTrain[],
): FeedingProblem | undefined {
  if (!soundAmps(amps)) return problem('below-zero', 'train');
  const total = standing.reduce((sum, one) => sum + one.amps, amps);
  return source.limit !== undefined && total > source.limit ? problem('more-than-the-source', 'source') : undefined;
}

const wrongShort = (faultOhms: number): FeedingProblem | undefined =>
  soundAmps(faultOhms) ? undefined : problem('below-zero', 'short');

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

interface Circuit {
  readonly kind: 'circuit';
  readonly prepared: Prepared;
  readonly nodes: readonly string[];
  /** With the ohms that a train or a short sees along each. */
  readonly chains: readonly { readonly chain: Chain; readonly seen: Parabola }[];
}

/** Volts beyond this are taken for a slip. Source: own-choice. */
const LARGEST_VOLTS = 1e12;

function circuitOf(plan: FeedingPlan, places: readonly number[]): Circuit | FeedingProblem {
  const built = feedingNetwork(plan, places);
  if (built.kind === 'no-solution') return built;
  if (plan.source.volts > LARGEST_VOLTS) return problem('too-far-apart', 'source');
  const chains = chainsOf(built);
  if (chains.some(({ ohms }) => !(ohms > 0 && ohms < Number.POSITIVE_INFINITY)))
    return problem('too-far-apart', 'rails');
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
function piecesOf({ parts, ohms }: Chain, whole: Parabola): TrackPiece[] {
  return parts.map(({ section, ohmsBefore }) => ({
    from: section.from,
    to: section.to,
    ...partOf(whole, ohmsBefore / ohms, section.ohms / ohms),
  }));
}

// A plan that passed its own checks is connected, so only its size can still be wrong.
const fromNetwork = ({ parts }: NetworkProblem): FeedingProblem => problem('too-far-apart', ...parts);

interface Trains {
  readonly plan: FeedingPlan;
  readonly standing: readonly StandingTrain[];
  readonly amps: number;
}

function trainOn(circuit: Circuit, { plan, standing, amps }: Trains, step?: number): TrainAlong | FeedingProblem {
  const { volts } = plan.source;
  const pieces = circuit.chains.flatMap(({ chain, seen }) => {
    const start = leftBy(circuit, volts, standing, chain.from ?? chain.to);
    const end = leftBy(circuit, volts, standing, chain.to ?? chain.from);
    return piecesOf(chain, {
      constant: start - amps * seen.constant,
      linear: end - start - amps * seen.linear,
      square: -amps * seen.square,
    });
  });
  const lowest = extreme(pieces, -1);
  if (!(lowest.value > 0)) return problem('no-operating-point', 'train');
  const drop = volts - lowest.value;
  const points = pointsOf(pieces, step).map(({ at, value }) => ({ at, volts: value, drop: volts - value }));
  const stageDrop = plan.source.ohms * standing.reduce((sum, one) => sum + one.amps, amps);
  const worst = {
    at: lowest.at,
    volts: lowest.value,
    drop,
    share: drop / volts,
    wiringShare: Math.max(0, drop - stageDrop) / volts,
  };
  return { kind: 'along', pieces, points, stageDrop, worst };
}

/** Volts that the other trains leave at a hub; between two hubs they change evenly with the ohms. */
function leftBy(
  { prepared, nodes }: Circuit,
  volts: number,
  standing: readonly StandingTrain[],
  hub = RETURN_NODE,
): number {
  const lost = standing.map(
    ({ amps }, i) => amps * impedance(prepared, againstReturn(nodes[i] ?? RETURN_NODE), againstReturn(hub)),
  );
  return lost.reduce((left, one) => left - one, volts);
}

const shortPieces = ({ chains }: Circuit): TrackPiece[] => chains.flatMap(({ chain, seen }) => piecesOf(chain, seen));
