// Networks that several tests ask: a bus and both rails as they lie on layouts, and what loads leave there.
import { impedance } from '../src/engine/circuit/impedance.ts';
import type { Prepared } from '../src/engine/circuit/matrix.ts';
import { prepare } from '../src/engine/circuit/matrix.ts';
import type { Branch, Network, Pair } from '../src/engine/circuit/parts.ts';

export interface Source {
  readonly id: string;
  readonly plus: string;
  readonly minus: string;
  /** Without load, volts. */
  readonly volts: number;
  /** Inner resistance, ohms, > 0. */
  readonly ohms: number;
}

/** Draws the same at any voltage, amperes from plus to minus. */
export interface Load {
  readonly id: string;
  readonly plus: string;
  readonly minus: string;
  readonly amps: number;
}

/** A network with what feeds it. */
export interface Fed extends Network {
  readonly sources: readonly Source[];
}

/** One supply between `plus` and the reference `0`. */
export const supply = (volts: number, ohms: number, plus = 's'): Source => ({
  id: `supply-${plus}`,
  plus,
  minus: '0',
  volts,
  ohms,
});

export function ready(network: Network): Prepared {
  const prepared = prepare(network);
  if (prepared.kind === 'no-solution') throw new Error(`${prepared.because}: ${prepared.parts.join(', ')}`);
  return prepared;
}

/** What is left once nothing pushes: each source is its inner resistance. */
export const resistances = ({ branches, sources, reference }: Fed): Network => ({
  branches: [...branches, ...sources.map(({ id, plus, minus, ohms }) => ({ id, from: plus, to: minus, ohms }))],
  reference,
});

/**
 * Volts and amperes under load from impedances alone: each source brings its short-circuit current (Norton), each load takes its own, and
 * what they do adds up (superposition).
 */
export function running(fed: Fed, loads: readonly Load[]) {
  const prepared = ready(resistances(fed));
  const drawn = [
    ...fed.sources.map(({ plus, minus, volts, ohms }) => ({ plus, minus, amps: -volts / ohms })),
    ...loads.filter(({ amps }) => amps !== 0),
  ];
  const across = (pair: Pair) =>
    drawn.reduce((sum, { plus, minus, amps }) => sum - amps * impedance(prepared, [plus, minus], pair), 0);
  const source = new Map(fed.sources.map((one) => [one.id, one]));
  const branch = new Map(fed.branches.map((one) => [one.id, one]));
  const one = <Part>(parts: ReadonlyMap<string, Part>, id: string): Part => {
    const part = parts.get(id);
    if (part === undefined) throw new RangeError(`There is no ${id}`);
    return part;
  };
  return {
    volts: (node: string) => across([node, fed.reference]),
    across,
    branchAmps: (id: string) => {
      const { from, to, ohms } = one(branch, id);
      return across([from, to]) / ohms;
    },
    sourceAmps: (id: string) => {
      const { plus, minus, volts, ohms } = one(source, id);
      return (volts - across([plus, minus])) / ohms;
    },
  };
}

export const wire = (from: string, to: string, ohms: number): Branch => ({ id: `${from}-${to}`, from, to, ohms });

export const draws = (plus: string, amps: number, minus = '0'): Load => ({
  id: `load-${plus}`,
  plus,
  minus,
  amps,
});

export interface RandomLayout {
  readonly network: Fed;
  readonly loads: readonly Load[];
  readonly stations: number;
  /** Stations beyond which both rails run on without a joint that parts them. */
  readonly sections: readonly { readonly from: number; readonly to: number; readonly ohms: number }[];
}

/**
 * A layout of `stations` places, each with both conductors of the bus (`bp`, `bm`) and both rails (`rp`, `rm`): four nodes a station.
 * Feeders where a die says so, an oval or a line, rail joints of any quality, rails parted here and there; supplies at the bus.
 */
export function randomLayout(random: () => number, stations: number, supplies = 1): RandomLayout {
  const between = (low: number, high: number) => low + (high - low) * random();
  const branches: Branch[] = [];
  const sections: { from: number; to: number; ohms: number }[] = [];
  const oval = random() < 0.5;
  const bus = between(0.002, 0.03);
  const rail = between(0.01, 0.08);
  const bothRails = (from: number, to: number) => {
    const joint = random() < 0.1 ? between(0.05, 0.5) : 0.001;
    const plus = rail * between(0.5, 1.5) + joint;
    const minus = rail * between(0.5, 1.5);
    branches.push(wire(`rp${from}`, `rp${to}`, plus), wire(`rm${from}`, `rm${to}`, minus));
    sections.push({ from, to, ohms: plus + minus });
  };
  for (let i = 0; i + 1 < stations; i++) {
    branches.push(wire(`bp${i}`, `bp${i + 1}`, bus * between(0.8, 1.2)), wire(`bm${i}`, `bm${i + 1}`, bus));
    if (random() < 0.9) bothRails(i, i + 1);
  }
  if (oval && stations > 2) bothRails(stations - 1, 0);
  for (let i = 0; i < stations; i++) {
    const fed = i === 0 || random() < 0.3 || !sections.some(({ to }) => to === i);
    if (fed) branches.push(wire(`bp${i}`, `rp${i}`, between(0.01, 0.1)), wire(`bm${i}`, `rm${i}`, between(0.01, 0.1)));
  }
  const at = (i: number) => Math.floor((i * stations) / supplies);
  const volts = between(12, 20);
  const sources = Array.from({ length: supplies }, (_, i): Source => {
    const minus = i === 0 ? '0' : `bm${at(i)}`;
    return { id: `supply-${i}`, plus: `bp${at(i)}`, minus, volts: volts + 0.1 * i, ohms: between(0.02, 0.2) };
  });
  branches.push(wire('0', 'bm0', 0.004));
  const trains = Math.max(1, Math.round(stations / 8));
  const loads = Array.from({ length: trains }, (_, i): Load => {
    const place = Math.floor(random() * stations);
    return { id: `train-${i}`, plus: `rp${place}`, minus: `rm${place}`, amps: between(0.05, 3 / trains) };
  });
  return { network: { branches, sources, reference: '0' }, loads, stations, sections };
}
