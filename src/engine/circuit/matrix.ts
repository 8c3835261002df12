// A network as an ordered and factored matrix of conductances.
import { Groups, peel } from './joins.ts';
import type { Branch, Network, NetworkProblem, Source } from './parts.ts';
import { conducts, ids, positive, problem, repeated, sound } from './parts.ts';
import { at, closeOrder, int, ints, Skyline, skylineOf } from './skyline.ts';

/** Two-ended things as lists: rows of the matrix, -1 for the reference. */
export interface Ends {
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** What conducts, siemens; 0 where there is no resistance, whose ends are the same row. */
export interface Conductors extends Ends {
  readonly siemens: Float64Array;
}

/** A network ready to be solved. Plain data; made by `prepare` alone. */
export interface Prepared {
  readonly kind: 'prepared';
  readonly network: Network;
  /** Row of each node; -1 for the reference and what is joined to it without resistance. */
  readonly rows: ReadonlyMap<string, number>;
  readonly branchEnds: Ends;
  readonly sourceEnds: Ends;
  /** Branches, then sources, none at its limit. */
  readonly conductors: Conductors;
  readonly first: Int32Array;
  /** Factored, no source at its limit. */
  readonly matrix: Skyline;
  /** What the sources bring into each row, none at its limit, amperes. */
  readonly fed: Float64Array;
  /** Volts at each row for one ampere drawn between two rows and taken negative, by both rows; filled as asked. */
  readonly columns: Map<number, Float64Array>;
}

/**
 * Orders and factors a network once, for any number of loads.
 *
 * Every node has to hang together with the reference through branches and sources; a dead end is allowed and carries nothing. Two districts
 * that share nothing are two networks, because no voltage between them exists. A branch of 0 ohms makes its ends one node, its current
 * still being told; a loop of such branches is refused. Gives a problem that names the parts otherwise.
 */
export function prepare(network: Network): Prepared | NetworkProblem {
  const wrong = wrongPart(network);
  if (wrong !== undefined) return wrong;
  const numbered = numberNodes(network);
  const reference = numbered.places.get(network.reference);
  if (reference === undefined) return problem('unknown-node', [network.reference]);
  return zeroLoop(numbered) ?? unconnected(numbered, reference) ?? factored(numbered, reference);
}

function wrongPart({ branches, sources }: Network): NetworkProblem | undefined {
  const twice = repeated([...branches, ...sources]);
  if (twice.length > 0) return problem('same-id', twice);
  const ohms = [...branches, ...sources].filter((part) => part.ohms !== 0 && !conducts(part.ohms));
  if (ohms.length > 0) return problem('bad-ohms', ids(ohms));
  const volts = sources.filter((source) => !sound(source.volts));
  if (volts.length > 0) return problem('bad-volts', ids(volts));
  const limits = sources.filter(({ limit }) => limit !== undefined && !positive(limit));
  if (limits.length > 0) return problem('bad-limit', ids(limits));
  return sources.length === 0 ? problem('no-source', []) : undefined;
}

/** Nodes by number as they come, and the ends of branches, then of sources. */
interface Numbered {
  readonly network: Network;
  readonly parts: readonly (Branch | Source)[];
  readonly places: ReadonlyMap<string, number>;
  readonly ends: Ends;
}

export function numberNodes(network: Network): Numbered {
  const { branches, sources } = network;
  const places = new Map<string, number>();
  const placeOf = (node: string) => {
    const known = places.get(node);
    if (known !== undefined) return known;
    places.set(node, places.size);
    return places.size - 1;
  };
  const from = new Int32Array(branches.length + sources.length);
  const to = new Int32Array(from.length);
  for (const [i, branch] of branches.entries()) {
    from[i] = placeOf(branch.from);
    to[i] = placeOf(branch.to);
  }
  for (const [i, { plus, minus }] of sources.entries()) {
    from[branches.length + i] = placeOf(plus);
    to[branches.length + i] = placeOf(minus);
  }
  return { network, parts: [...branches, ...sources], places, ends: { from, to } };
}

/** The ends of some parts. */
export const endsAt = ({ from, to }: Ends, parts: readonly number[]): Ends => ({
  from: ints(parts.length, (i) => int(from, parts[i] ?? 0)),
  to: ints(parts.length, (i) => int(to, parts[i] ?? 0)),
});

/** Which parts have no resistance. */
export const withoutOhms = (parts: readonly (Branch | Source)[]) =>
  [...parts.keys()].filter((i) => parts[i]?.ohms === 0);

function zeroLoop({ network, parts, places, ends }: Numbered): NetworkProblem | undefined {
  const zero = withoutOhms(parts);
  if (zero.length === 0) return;
  const { from, to } = endsAt(ends, zero);
  const loops = new Set(peel(places.size, from, to).loops.map((i) => zero[i]));
  if (loops.size > 0) return problem('zero-loop', ids(parts.filter((_, i) => loops.has(i))));
  const sourcesOfZero = network.sources.filter(({ ohms }) => ohms === 0);
  return sourcesOfZero.length > 0 ? problem('bad-ohms', ids(sourcesOfZero)) : undefined;
}

function unconnected({ parts, places, ends }: Numbered, reference: number): NetworkProblem | undefined {
  const { from, to } = ends;
  const groups = new Groups(places.size);
  for (let i = 0; i < from.length; i++) groups.join(int(from, i), int(to, i));
  const apart = parts.filter((_, i) => groups.of(int(from, i)) !== groups.of(reference));
  return apart.length > 0 ? problem('unconnected', ids(apart)) : undefined;
}

/** Rows before they are ordered: nodes joined without resistance share one, the reference has none. */
function joinedRows({ parts, places, ends }: Numbered, reference: number) {
  const groups = new Groups(places.size);
  for (const i of withoutOhms(parts)) groups.join(int(ends.from, i), int(ends.to, i));
  const row = new Int32Array(places.size).fill(-1);
  let count = 0;
  for (let place = 0; place < places.size; place++) {
    const root = groups.of(place);
    if (root === groups.of(reference)) continue;
    if (int(row, root) === -1) {
      row[root] = count;
      count += 1;
    }
    row[place] = int(row, root);
  }
  return { row, count };
}

function factored(numbered: Numbered, reference: number): Prepared | NetworkProblem {
  const { network, parts, places, ends } = numbered;
  const { row, count } = joinedRows(numbered, reference);
  const cut = network.branches.length;
  const loose = {
    from: ints(parts.length, (i) => int(row, int(ends.from, i))),
    to: ints(parts.length, (i) => int(row, int(ends.to, i))),
  };
  const rank = closeOrder(count, loose.from, loose.to);
  const rowOf = (before: number) => (before === -1 ? -1 : int(rank, before));
  const from = ints(parts.length, (i) => rowOf(int(loose.from, i)));
  const to = ints(parts.length, (i) => rowOf(int(loose.to, i)));
  const conductors = { from, to, siemens: siemensOf(parts) };
  const first = skylineOf(count, from, to);
  const matrix = conductances(first, conductors);
  if (!matrix.factor()) return problem('too-far-apart', farthestApart(parts));
  const rows = new Map<string, number>();
  for (const [node, place] of places) rows.set(node, rowOf(int(row, place)));
  const sourceEnds = { from: from.subarray(cut), to: to.subarray(cut) };
  return {
    kind: 'prepared',
    network,
    rows,
    branchEnds: { from: from.subarray(0, cut), to: to.subarray(0, cut) },
    sourceEnds,
    conductors,
    first,
    matrix,
    fed: broughtIn(network, sourceEnds, count),
    columns: new Map(),
  };
}

function siemensOf(parts: readonly (Branch | Source)[]): Float64Array {
  const siemens = new Float64Array(parts.length);
  for (const [i, { ohms }] of parts.entries()) if (ohms > 0) siemens[i] = 1 / ohms;
  return siemens;
}

function farthestApart(parts: readonly (Branch | Source)[]): string[] {
  const byOhms = parts.filter(({ ohms }) => ohms > 0).sort((a, b) => a.ohms - b.ohms);
  return ids([...byOhms.slice(0, 1), ...byOhms.slice(1).slice(-1)]);
}

/** The matrix before it is factored. */
export function conductances(first: Int32Array, { from, to, siemens }: Conductors): Skyline {
  const matrix = new Skyline(first);
  for (let i = 0; i < siemens.length; i++) matrix.addBetween(int(from, i), int(to, i), at(siemens, i));
  return matrix;
}

/** What sources bring into each row, amperes: Norton currents, or the limit of those that are held (1). */
export function broughtIn({ sources }: Network, ends: Ends, rows: number, held?: Uint8Array, kept = 0): Float64Array {
  const into = new Float64Array(rows);
  for (const [i, { volts, ohms, limit = Infinity }] of sources.entries()) {
    const amps = held?.[i] === 1 ? limit + kept * (volts / ohms - limit) : volts / ohms;
    inject(into, int(ends.from, i), int(ends.to, i), amps);
  }
  return into;
}

/** Takes what the conductors carry away off what is brought into each row, amperes. Differences first: they keep their digits. */
export function carryAway({ from, to, siemens }: Conductors, volts: Float64Array, into: Float64Array): void {
  for (let i = 0; i < siemens.length; i++) {
    const plus = int(from, i);
    const minus = int(to, i);
    const amps = at(siemens, i) * ((plus < 0 ? 0 : at(volts, plus)) - (minus < 0 ? 0 : at(volts, minus)));
    if (plus >= 0) into[plus] = at(into, plus) - amps;
    if (minus >= 0) into[minus] = at(into, minus) + amps;
  }
}

/** Volts for what is brought into each row, with one step of refinement: a millimetre of wire beside a metre costs digits otherwise. */
export function voltsFor(matrix: Skyline, conductors: Conductors, brought: Float64Array): Float64Array {
  const volts = brought.slice();
  matrix.solve(volts);
  const left = brought.slice();
  carryAway(conductors, volts, left);
  addSolution(matrix, left, volts);
  return volts;
}

/** Solves for `left`, which is used up, and adds the result to `volts`. */
export function addSolution(matrix: Skyline, left: Float64Array, volts: Float64Array): void {
  matrix.solve(left);
  for (let row = 0; row < volts.length; row++) volts[row] = at(volts, row) + at(left, row);
}

export function inject(into: Float64Array, plus: number, minus: number, amps: number): void {
  if (plus >= 0) into[plus] = at(into, plus) + amps;
  if (minus >= 0) into[minus] = at(into, minus) - amps;
}

export const between = (volts: Float64Array, plus: number, minus: number) =>
  (plus < 0 ? 0 : at(volts, plus)) - (minus < 0 ? 0 : at(volts, minus));

export function rowIn({ rows }: Prepared, node: string): number {
  const row = rows.get(node);
  if (row === undefined) throw new RangeError(`The network has no node ${node}`);
  return row;
}
