// A state of the sweep: which sections on the frontier belong to which part, and what each part holds.
import type { Layer } from './layer.ts';

/** What a part holds, or some parts together with a section. */
export interface Holding {
  traffic: number;
  fixed: number;
  /** Kind of the stage that it belongs to in any case, or -1. */
  fed: number;
}

/** Numbers that a row takes for a frontier so wide: the word of what is closed, and four for each place. */
export const rowLength = (wide: number): number => 1 + 4 * wide;

export class State {
  /** Of each place on the frontier its part; parts are numbered in the order of the places. */
  readonly part: Int32Array;
  readonly traffic: Int32Array;
  readonly fixed: Int32Array;
  readonly fed: Int32Array;
  parts = 0;
  readonly #wide: number;

  constructor(wide: number) {
    this.#wide = wide;
    const places = (): Int32Array => new Int32Array(wide + 1);
    [this.part, this.traffic, this.fixed, this.fed] = [places(), places(), places(), places()];
  }

  /** Reads a row of a layer with so many places on the frontier; gives the word of what is closed. */
  read({ rows, stride }: Layer, at: number, width: number): number {
    const wide = this.#wide;
    const from = at * stride;
    let parts = 0;
    for (let slot = 0; slot < width; slot++) {
      const part = rows[from + 1 + slot] ?? 0;
      this.part[slot] = part;
      if (part >= parts) parts = part + 1;
    }
    for (let part = 0, place = from + 1 + wide; part < parts; part++, place++) {
      this.traffic[part] = rows[place] ?? 0;
      this.fixed[part] = rows[place + wide] ?? 0;
      this.fed[part] = rows[place + 2 * wide] ?? 0;
    }
    this.parts = parts;
    return rows[from] ?? 0;
  }

  /** Writes itself, with so many places on the frontier, as a row. */
  write(row: Int32Array, word: number, width: number): void {
    const wide = this.#wide;
    row.fill(0);
    row[0] = word;
    for (let slot = 0; slot < width; slot++) row[1 + slot] = this.part[slot] ?? 0;
    for (let part = 0, place = 1 + wide; part < this.parts; part++, place++) {
      row[place] = this.traffic[part] ?? 0;
      row[place + wide] = this.fixed[part] ?? 0;
      row[place + 2 * wide] = this.fed[part] ?? 0;
    }
  }

  hold(part: number, { traffic, fixed, fed }: Holding): void {
    this.traffic[part] = traffic;
    this.fixed[part] = fixed;
    this.fed[part] = fed;
  }

  take(part: number, from: State, other: number): void {
    this.traffic[part] = from.traffic[other] ?? 0;
    this.fixed[part] = from.fixed[other] ?? 0;
    this.fed[part] = from.fed[other] ?? -1;
  }

  /** Adds the parts of `joins` among those near to what a holding has; false where they are fed by two stages. */
  addTo(holding: Holding, near: Near, joins: number): boolean {
    for (let i = 0; i < near.count; i++) {
      if (((joins >>> i) & 1) === 0) continue;
      const part = near.parts[i] ?? 0;
      const fed = this.fed[part] ?? -1;
      if (fed !== -1 && holding.fed !== -1 && fed !== holding.fed) return false;
      holding.traffic += this.traffic[part] ?? 0;
      holding.fixed += this.fixed[part] ?? 0;
      if (fed !== -1) holding.fed = fed;
    }
    return true;
  }
}

/** A link to a place on the frontier. */
export interface Reach {
  readonly slot: number;
  readonly cost: number;
  readonly kept: boolean;
}

/** The parts that a section is joined to, each once. */
export class Near {
  count = 0;
  /** Bits of the parts that it must stay with. */
  must = 0;
  readonly parts: Int32Array;
  readonly costs: Int32Array;
  /** Bits of the links to each part. */
  readonly links: Int32Array;

  constructor(wide: number) {
    [this.parts, this.costs, this.links] = [new Int32Array(wide), new Int32Array(wide), new Int32Array(wide)];
  }

  look(reaches: readonly Reach[], part: Int32Array): void {
    this.count = 0;
    this.must = 0;
    for (let bit = 0; bit < reaches.length; bit++) this.#add(reaches[bit], bit, part);
  }

  #add(reach: Reach | undefined, bit: number, parts: Int32Array): void {
    if (reach === undefined) return;
    const part = parts[reach.slot] ?? 0;
    let i = 0;
    while (i < this.count && this.parts[i] !== part) i++;
    if (i === this.count) {
      this.parts[i] = part;
      this.costs[i] = 0;
      this.links[i] = 0;
      this.count++;
    }
    this.costs[i] = (this.costs[i] ?? 0) + reach.cost;
    this.links[i] = (this.links[i] ?? 0) | (1 << bit);
    if (reach.kept) this.must |= 1 << i;
  }

  /** Bits of all parts. */
  get all(): number {
    return (1 << this.count) - 1;
  }

  /** What it costs to be parted from those that are not joined. */
  parted(joins: number): number {
    let cost = 0;
    for (let i = 0; i < this.count; i++) if (((joins >>> i) & 1) === 0) cost += this.costs[i] ?? 0;
    return cost;
  }

  /** Bits of the links to those that are joined. */
  kept(joins: number): number {
    let bits = 0;
    for (let i = 0; i < this.count; i++) if ((joins >>> i) & 1) bits |= this.links[i] ?? 0;
    return bits;
  }
}
