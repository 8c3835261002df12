// A prepared network under its loads: constant currents, constant powers, and sources at their limit.
import { flows } from './joins.ts';
import type { Conductors, Ends, Prepared } from './matrix.ts';
import {
  addSolution,
  between,
  broughtIn,
  carryAway,
  conductances,
  endsAt,
  inject,
  numberNodes,
  rowIn,
  voltsFor,
  withoutOhms,
} from './matrix.ts';
import type { Load, NetworkProblem, Pair, PowerLoad } from './parts.ts';
import { ids, problem, repeated, sound } from './parts.ts';
import type { Skyline } from './skyline.ts';
import { at, int, ints, raise } from './skyline.ts';

export interface Operating {
  readonly kind: 'solved';
  /** Volts of a node against the reference. Throws RangeError for a node the network does not have, as all here do for an unknown id. */
  volts(node: string): number;
  /** Volts from plus to minus. */
  across(pair: Pair): number;
  /** Amperes from `from` to `to` of a branch. */
  branchAmps(id: string): number;
  /** Amperes a source gives at its plus; below 0 it takes in. */
  sourceAmps(id: string): number;
  /** Amperes of a load from plus to minus. */
  loadAmps(id: string): number;
  /** Sources that give their limit and no more. */
  readonly limited: readonly string[];
  /** The most by which the currents into a node miss their sum of nothing, amperes. */
  readonly residual: number;
}

/** Share of its own conductance that a source at its limit keeps while the set of such sources is being looked for. Source: own-choice. */
const NEARLY_HELD = 1e-6;

/** Everything the solution of one state of the sources needs. */
interface State {
  readonly conductors: Conductors;
  readonly matrix: Skyline;
  readonly fed: Float64Array;
  readonly held: Uint8Array;
}

/** The state in which held sources give their limit and conduct `kept` times what they did; undefined where that bears no voltage. */
function stateOf(prepared: Prepared, held: Uint8Array, kept: number): State | undefined {
  const { network, branchEnds, sourceEnds, first } = prepared;
  const siemens = prepared.conductors.siemens.slice();
  for (const [i, one] of held.entries()) {
    const place = branchEnds.from.length + i;
    if (one === 1) siemens[place] = kept * at(siemens, place);
  }
  const conductors = { ...prepared.conductors, siemens };
  const matrix = conductances(first, conductors);
  if (!matrix.factor()) return;
  return { conductors, matrix, held, fed: broughtIn(network, sourceEnds, first.length, held, kept) };
}

/** Loads in rows of the matrix, constant currents already gathered. */
interface Placed {
  readonly loads: readonly Load[];
  readonly ends: Ends;
  /** Constant currents, amperes into each row, so mostly below 0. */
  readonly drawn: Float64Array;
  /** Which of the loads are of constant power and draw any. */
  readonly powered: readonly { readonly load: PowerLoad; readonly plus: number; readonly minus: number }[];
}

function place(prepared: Prepared, loads: readonly Load[]): Placed | NetworkProblem {
  const twice = repeated(loads);
  if (twice.length > 0) return problem('same-id', twice);
  const bad = loads.filter((load) => ('amps' in load ? !sound(load.amps) : !(load.watts >= 0 && sound(load.watts))));
  if (bad.length > 0) return problem('bad-load', ids(bad));
  const from = new Int32Array(loads.length);
  const to = new Int32Array(loads.length);
  const drawn = new Float64Array(prepared.first.length);
  const powered: Placed['powered'][number][] = [];
  for (const [i, load] of loads.entries()) {
    const plus = prepared.rows.get(load.plus);
    const minus = prepared.rows.get(load.minus);
    if (plus === undefined) return problem('unknown-node', [load.id, load.plus]);
    if (minus === undefined) return problem('unknown-node', [load.id, load.minus]);
    from[i] = plus;
    to[i] = minus;
    if ('amps' in load) inject(drawn, plus, minus, -load.amps);
    else if (load.watts > 0) powered.push({ load, plus, minus });
  }
  return { loads, ends: { from, to }, drawn, powered };
}

/**
 * Volts and currents with these loads. Loads of constant power: Newton's method from the voltages without them, which ends at the higher of
 * the two possible voltages; where the matrix loses its positive pivots or a voltage turns over there is none, and the load that sank
 * furthest is named. The lower voltage is never given. A load that draws a constant current and would stand at 0 V or turned over has
 * no operating point either. A source above its limit gives its limit instead; where no such choice of sources agrees with itself there is
 * no operating point.
 */
export function solve(prepared: Prepared, loads: readonly Load[]): Operating | NetworkProblem {
  const placed = place(prepared, loads);
  if ('kind' in placed) return placed;
  const held = new Uint8Array(prepared.network.sources.length);
  const free = withPower(prepared, placed, { ...prepared, held });
  if (!(free instanceof Float64Array)) return free;
  if (nextToChange(prepared, free, held) === -1) return finished(prepared, placed, free, held);
  const exact = settle(prepared, placed, held) ? stateOf(prepared, held, 0) : undefined;
  if (exact === undefined) return noOperatingPoint(prepared, placed, held);
  const volts = withPower(prepared, placed, exact);
  return volts instanceof Float64Array ? finished(prepared, placed, volts, held) : volts;
}

/** More sources than this at their limits and apart from each other are not tried in all their choices. Source: own-choice. */
const MOST_CHOICES = 8;

/**
 * Finds the sources at their limit by changing the first one that disagrees, until none does. Held sources keep a little conductance
 * meanwhile, which makes the search end (K. G. Murty's least-index rule for linear complementarity, from memory).
 */
function settle(prepared: Prepared, placed: Placed, held: Uint8Array): boolean {
  const rounds = 40 + 2 ** Math.min(held.length, MOST_CHOICES);
  for (let round = 0; round < rounds; round++) {
    const state = stateOf(prepared, held, NEARLY_HELD);
    if (state === undefined) return false;
    const volts = withPower(prepared, placed, state);
    if (!(volts instanceof Float64Array)) return false;
    const next = nextToChange(prepared, volts, held);
    if (next === -1) return true;
    held[next] = 1 - (held[next] ?? 0);
  }
  return false;
}

/** Beyond its limit by less than this share, a source is at it. Source: own-choice. */
export const LIMIT_TOLERANCE = 1e-12;

/** The first source whose state does not agree with its voltage, -1 for none. */
function nextToChange({ network, sourceEnds }: Prepared, volts: Float64Array, held: Uint8Array): number {
  return network.sources.findIndex(({ volts: unloaded, ohms, limit = Infinity }, i) => {
    const amps = (unloaded - between(volts, int(sourceEnds.from, i), int(sourceEnds.to, i))) / ohms;
    return held[i] === 1 ? amps < limit * (1 - LIMIT_TOLERANCE) : amps > limit * (1 + LIMIT_TOLERANCE);
  });
}

/** Steps after which Newton's method is given up. Source: own-choice. */
const MOST_STEPS = 80;
/**
 * Newton's method doubles the digits with each step: after a step this small, as a share, the next would change nothing. Source:
 * own-choice.
 */
const STEP_TOLERANCE = 1e-10;

/** Volts at each row with the constant currents and the constant powers. */
function withPower(prepared: Prepared, placed: Placed, state: State): Float64Array | NetworkProblem {
  const { conductors, matrix, fed, held } = state;
  const steady = fed.map((amps, row) => amps + at(placed.drawn, row));
  const unloaded = voltsFor(matrix, conductors, steady);
  if (placed.powered.length === 0) return unloaded;
  const first = prepared.first.slice();
  raise(first, ...poweredEnds(placed));
  const volts = unloaded.slice();
  for (let step = 0; step < MOST_STEPS; step++) {
    if (turnedOver(placed, volts, unloaded)) break;
    const slope = conductances(first, conductors);
    const left = steady.slice();
    carryAway(conductors, volts, left);
    for (const { load, plus, minus } of placed.powered) {
      const across = between(volts, plus, minus);
      slope.addBetween(plus, minus, -load.watts / across ** 2);
      inject(left, plus, minus, -load.watts / across);
    }
    if (!slope.factor()) break;
    addSolution(slope, left, volts);
    if (farthestMove(placed, volts, left) < STEP_TOLERANCE) return volts;
  }
  return noOperatingPoint(prepared, placed, held, sunkFurthest(placed, volts, unloaded));
}

const poweredEnds = ({ powered }: Placed): [Int32Array, Int32Array] => [
  ints(powered.length, (i) => powered[i]?.plus ?? -1),
  ints(powered.length, (i) => powered[i]?.minus ?? -1),
];

const turnedOver = ({ powered }: Placed, volts: Float64Array, unloaded: Float64Array) =>
  powered.some(({ plus, minus }) => !(between(volts, plus, minus) * between(unloaded, plus, minus) > 0));

/** The greatest step, as a share of the voltage it led to. */
const farthestMove = ({ powered }: Placed, volts: Float64Array, step: Float64Array) =>
  powered.reduce((most, { plus, minus }) => {
    return Math.max(most, Math.abs(between(step, plus, minus) / between(volts, plus, minus)));
  }, 0);

function sunkFurthest({ powered }: Placed, volts: Float64Array, unloaded: Float64Array): string | undefined {
  let least = Infinity;
  let sunk = powered[0]?.load.id;
  for (const { load, plus, minus } of powered) {
    const before = between(unloaded, plus, minus);
    const share = before === 0 ? Number.NEGATIVE_INFINITY : between(volts, plus, minus) / before;
    if (share < least) {
      least = share;
      sunk = load.id;
    }
  }
  return sunk;
}

function noOperatingPoint({ network }: Prepared, { loads }: Placed, held: Uint8Array, load = heaviest(loads)) {
  const limited = network.sources.filter((_, i) => held[i] === 1);
  return problem('no-operating-point', [...(load === undefined ? [] : [load]), ...ids(limited)]);
}

function heaviest(loads: readonly Load[]): string | undefined {
  const powers = loads.flatMap((load) => ('watts' in load ? [{ id: load.id, size: load.watts }] : []));
  const currents = loads.flatMap((load) => ('amps' in load ? [{ id: load.id, size: load.amps }] : []));
  const ranked = (powers.length > 0 ? powers : currents).sort((a, b) => b.size - a.size);
  return ranked[0]?.id;
}

function finished(prepared: Prepared, placed: Placed, volts: Float64Array, held: Uint8Array) {
  const { from, to } = placed.ends;
  const starved = placed.loads.find(
    (load, i) => 'amps' in load && load.amps > 0 && !(between(volts, int(from, i), int(to, i)) > 0),
  );
  if (starved !== undefined) return noOperatingPoint(prepared, placed, held, starved.id);
  return new Solved(prepared, placed, volts, held);
}

class Solved implements Operating {
  readonly kind = 'solved' as const;
  readonly #prepared: Prepared;
  readonly #placed: Placed;
  readonly #volts: Float64Array;
  readonly #held: Uint8Array;
  #joined: Float64Array | undefined;

  constructor(prepared: Prepared, placed: Placed, volts: Float64Array, held: Uint8Array) {
    this.#prepared = prepared;
    this.#placed = placed;
    this.#volts = volts;
    this.#held = held;
  }

  volts(node: string): number {
    return between(this.#volts, rowIn(this.#prepared, node), -1);
  }

  across([plus, minus]: Pair): number {
    return between(this.#volts, rowIn(this.#prepared, plus), rowIn(this.#prepared, minus));
  }

  branchAmps(id: string): number {
    const index = indexOf(this.#prepared.network.branches, id, 'branch');
    const ohms = this.#prepared.network.branches[index]?.ohms ?? 0;
    return ohms > 0 ? this.#resistive(index, ohms) : this.#withoutResistance(index);
  }

  sourceAmps(id: string): number {
    return this.#given(indexOf(this.#prepared.network.sources, id, 'source'));
  }

  loadAmps(id: string): number {
    return this.#taken(indexOf(this.#placed.loads, id, 'load'));
  }

  get limited(): readonly string[] {
    return ids(this.#prepared.network.sources.filter((_, i) => this.#held[i] === 1));
  }

  get residual(): number {
    const into = this.#surplus(
      this.#prepared.branchEnds,
      this.#prepared.sourceEnds,
      this.#placed.ends,
      this.#volts.length,
    );
    return into.reduce((most, amps) => Math.max(most, Math.abs(amps)), 0);
  }

  #resistive(index: number, ohms: number): number {
    const { from, to } = this.#prepared.branchEnds;
    return between(this.#volts, int(from, index), int(to, index)) / ohms;
  }

  #given(index: number): number {
    const { network, sourceEnds } = this.#prepared;
    const source = network.sources[index];
    if (source === undefined) return 0;
    if (this.#held[index] === 1) return source.limit ?? 0;
    return (source.volts - between(this.#volts, int(sourceEnds.from, index), int(sourceEnds.to, index))) / source.ohms;
  }

  #taken(index: number): number {
    const load = this.#placed.loads[index];
    if (load === undefined) return 0;
    if ('amps' in load) return load.amps;
    if (load.watts === 0) return 0;
    return load.watts / between(this.#volts, int(this.#placed.ends.from, index), int(this.#placed.ends.to, index));
  }

  /** What resistances, sources and loads bring into each place, amperes. */
  #surplus(branches: Ends, sources: Ends, loads: Ends, count: number): Float64Array {
    const into = new Float64Array(count);
    for (const [i, { ohms }] of this.#prepared.network.branches.entries()) {
      if (ohms > 0) inject(into, int(branches.from, i), int(branches.to, i), -this.#resistive(i, ohms));
    }
    for (let i = 0; i < sources.from.length; i++)
      inject(into, int(sources.from, i), int(sources.to, i), this.#given(i));
    for (let i = 0; i < loads.from.length; i++) inject(into, int(loads.from, i), int(loads.to, i), -this.#taken(i));
    return into;
  }

  #withoutResistance(index: number): number {
    this.#joined ??= this.#throughJoints();
    return at(this.#joined, index);
  }

  #throughJoints(): Float64Array {
    const { places, ends } = numberNodes(this.#prepared.network);
    const cut = this.#prepared.network.branches.length;
    const loads = this.#placed.loads;
    const placeOf = (node: string | undefined) => places.get(node ?? '') ?? 0;
    const surplus = this.#surplus(
      { from: ends.from.subarray(0, cut), to: ends.to.subarray(0, cut) },
      { from: ends.from.subarray(cut), to: ends.to.subarray(cut) },
      {
        from: ints(loads.length, (i) => placeOf(loads[i]?.plus)),
        to: ints(loads.length, (i) => placeOf(loads[i]?.minus)),
      },
      places.size,
    );
    const zero = withoutOhms(this.#prepared.network.branches);
    const { from, to } = endsAt(ends, zero);
    const amps = flows(from, to, surplus);
    const through = new Float64Array(cut);
    for (const [k, i] of zero.entries()) through[i] = at(amps, k);
    return through;
  }
}

function indexOf(parts: readonly { readonly id: string }[], id: string, what: string): number {
  const index = parts.findIndex((part) => part.id === id);
  if (index === -1) throw new RangeError(`There is no ${what} ${id}`);
  return index;
}
