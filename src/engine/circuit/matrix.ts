// A network as an ordered and factored matrix of conductances.
import { Groups } from './joins.ts';
import type { Branch, Network, NetworkProblem } from './parts.ts';
import { conducts, ids, problem, repeated } from './parts.ts';
import { at, closeOrder, int, ints, Skyline, skylineOf } from './skyline.ts';

/** Two-ended things as lists: rows of the matrix, -1 for the reference. */
interface Ends {
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** What conducts, siemens; 0 where there is no resistance, whose ends are the same row. */
interface Conductors extends Ends {
  readonly siemens: Float64Array;
}

/** A network ready to be asked. Plain data; made by `prepare` alone. */
export interface Prepared {
  readonly kind: 'prepared';
  /** Row of each node; -1 for the reference and what is joined to it without resistance. */
  readonly rows: ReadonlyMap<string, number>;
  readonly conductors: Conductors;
  /** Factored. */
  readonly matrix: Skyline;
  /** Volts at each row for one ampere drawn between two rows and taken negative, by both rows; filled as asked. */
  readonly columns: Map<number, Float64Array>;
}

/**
 * Orders and factors a network once, for any number of questions.
 *
 * Every node has to hang together with the reference; a dead end is allowed and carries nothing. Two districts that share nothing are two
 * networks, because no voltage between them exists. A branch of 0 ohms makes its ends one node. Gives a problem that names the parts otherwise.
 */
export function prepare(network: Network): Prepared | NetworkProblem {
  const { branches } = network;
  const twice = repeated(branches);
  if (twice.length > 0) return problem('same-id', twice);
  const ohms = branches.filter((branch) => branch.ohms !== 0 && !conducts(branch.ohms));
  if (ohms.length > 0) return problem('bad-ohms', ids(ohms));
  const numbered = numberNodes(branches);
  const reference = numbered.places.get(network.reference);
  if (reference === undefined) return problem('unknown-node', [network.reference]);
  return unconnected(numbered, reference) ?? factored(numbered, reference);
}

/** Nodes by number as they come, and the ends of branches. */
interface Numbered {
  readonly branches: readonly Branch[];
  readonly places: ReadonlyMap<string, number>;
  readonly ends: Ends;
}

function numberNodes(branches: readonly Branch[]): Numbered {
  const places = new Map<string, number>();
  const placeOf = (node: string) => {
    const known = places.get(node);
    if (known !== undefined) return known;
    places.set(node, places.size);
    return places.size - 1;
  };
  const from = new Int32Array(branches.length);
  const to = new Int32Array(branches.length);
  for (const [i, branch] of branches.entries()) {
    from[i] = placeOf(branch.from);
    to[i] = placeOf(branch.to);
  }
  return { branches, places, ends: { from, to } };
}

function unconnected({ branches, places, ends }: Numbered, reference: number): NetworkProblem | undefined {
  const { from, to } = ends;
  const groups = new Groups(places.size);
  for (let i = 0; i < from.length; i++) groups.join(int(from, i), int(to, i));
  const apart = branches.filter((_, i) => groups.of(int(from, i)) !== groups.of(reference));
  return apart.length > 0 ? problem('unconnected', ids(apart)) : undefined;
}

/** Rows before they are ordered: nodes joined without resistance share one, the reference has none. */
function joinedRows({ branches, places, ends }: Numbered, reference: number) {
  const groups = new Groups(places.size);
  for (const [i, { ohms }] of branches.entries()) if (ohms === 0) groups.join(int(ends.from, i), int(ends.to, i));
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
  const { branches, places, ends } = numbered;
  const { row, count } = joinedRows(numbered, reference);
  const loose = {
    from: ints(branches.length, (i) => int(row, int(ends.from, i))),
    to: ints(branches.length, (i) => int(row, int(ends.to, i))),
  };
  const rank = closeOrder(count, loose.from, loose.to);
  const rowOf = (before: number) => (before === -1 ? -1 : int(rank, before));
  const from = ints(branches.length, (i) => rowOf(int(loose.from, i)));
  const to = ints(branches.length, (i) => rowOf(int(loose.to, i)));
  const conductors = { from, to, siemens: siemensOf(branches) };
  const matrix = conductances(count, conductors);
  if (!matrix.factor()) return problem('too-far-apart', farthestApart(branches));
  const rows = new Map<string, number>();
  for (const [node, place] of places) rows.set(node, rowOf(int(row, place)));
  return { kind: 'prepared', rows, conductors, matrix, columns: new Map() };
}

function siemensOf(branches: readonly Branch[]): Float64Array {
  const siemens = new Float64Array(branches.length);
  for (const [i, { ohms }] of branches.entries()) if (ohms > 0) siemens[i] = 1 / ohms;
  return siemens;
}

function farthestApart(branches: readonly Branch[]): string[] {
  const byOhms = branches.filter(({ ohms }) => ohms > 0).sort((a, b) => a.ohms - b.ohms);
  return ids([...byOhms.slice(0, 1), ...byOhms.slice(1).slice(-1)]);
}

/** The matrix before it is factored. */
function conductances(count: number, { from, to, siemens }: Conductors): Skyline {
  const matrix = new Skyline(skylineOf(count, from, to));
  for (let i = 0; i < siemens.length; i++) matrix.addBetween(int(from, i), int(to, i), at(siemens, i));
  return matrix;
}

/** Takes what the conductors carry away off what is brought into each row, amperes. Differences first: they keep their digits. */
function carryAway({ from, to, siemens }: Conductors, volts: Float64Array, into: Float64Array): void {
  for (let i = 0; i < siemens.length; i++) {
    const amps = at(siemens, i) * between(volts, int(from, i), int(to, i));
    inject(into, int(from, i), int(to, i), -amps);
  }
}

/**
 * Volts for what is brought into each row, which is used up, with one step of refinement: a millimetre of wire beside a metre costs digits
 * otherwise.
 */
export function voltsFor(matrix: Skyline, conductors: Conductors, brought: Float64Array): Float64Array {
  const volts = brought.slice();
  matrix.solve(volts);
  carryAway(conductors, volts, brought);
  matrix.solve(brought);
  for (let row = 0; row < volts.length; row++) volts[row] = at(volts, row) + at(brought, row);
  return volts;
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
