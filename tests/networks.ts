// Networks that several tests solve: a bus and both rails as they lie on layouts, and ladders.
import type { Branch, CurrentLoad, Network, Source } from '../src/engine/circuit/parts.ts';

/** One supply between `plus` and the reference `0`. */
export const supply = (volts: number, ohms: number, plus = 's', more: Partial<Source> = {}): Source => ({
  id: `supply-${plus}`,
  plus,
  minus: '0',
  volts,
  ohms,
  ...more,
});

export const wire = (from: string, to: string, ohms: number): Branch => ({ id: `${from}-${to}`, from, to, ohms });

export const draws = (plus: string, amps: number, minus = '0'): CurrentLoad => ({
  id: `load-${plus}`,
  plus,
  minus,
  amps,
});

/** Sections of a single conductor one after the other, the return counted in: nodes `n0`, `n1` and so on. */
export const ladder = (ohms: readonly number[]): Branch[] => ohms.map((one, i) => wire(`n${i}`, `n${i + 1}`, one));

export interface RandomLayout {
  readonly network: Network;
  readonly loads: readonly CurrentLoad[];
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
  const loads = Array.from({ length: trains }, (_, i): CurrentLoad => {
    const place = Math.floor(random() * stations);
    return { id: `train-${i}`, plus: `rp${place}`, minus: `rm${place}`, amps: between(0.05, 3 / trains) };
  });
  return { network: { branches, sources, reference: '0' }, loads, stations, sections };
}
