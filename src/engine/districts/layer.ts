// The states after a step, each once, with the cheapest way to it.

/** A row that is looked up and not there yet. Source: own-choice. */
const FREE = -1;
/** States that a layer has room for at first. Source: own-choice. */
const FIRST_ROOM = 1024;

export class Layer {
  readonly stride: number;
  rows: Int32Array;
  cost: Int32Array;
  /** How full the fullest closed district is. */
  use: Float64Array;
  parent: Int32Array;
  kept: Int32Array;
  count = 0;
  #table: Int32Array;

  constructor(stride: number) {
    this.stride = stride;
    this.rows = new Int32Array(FIRST_ROOM * stride);
    this.cost = new Int32Array(FIRST_ROOM);
    this.use = new Float64Array(FIRST_ROOM);
    this.parent = new Int32Array(FIRST_ROOM);
    this.kept = new Int32Array(FIRST_ROOM);
    this.#table = new Int32Array(2 * FIRST_ROOM).fill(FREE);
  }

  /** Keeps a state, unless it is there at no greater cost, or at the same with no fuller district. */
  put(row: Int32Array, cost: number, use: number, parent: number, kept: number): void {
    const mask = this.#table.length - 1;
    let place = hash(row, this.stride) & mask;
    let at = this.#table[place] ?? FREE;
    while (at !== FREE && !this.#same(at, row)) {
      place = (place + 1) & mask;
      at = this.#table[place] ?? FREE;
    }
    if (at === FREE) {
      at = this.count++;
      if (at >= this.cost.length) this.#grow();
      this.rows.set(row, at * this.stride);
      this.#table[place] = at;
      this.#write(at, cost, use, parent, kept);
      if (this.count * 2 > this.#table.length) this.#spread(this.#table.length * 2);
      return;
    }
    const was = this.cost[at] ?? 0;
    if (cost < was || (cost === was && use < (this.use[at] ?? 0))) this.#write(at, cost, use, parent, kept);
  }

  /** Keeps the cheaper half; among alike ones those with the less full district. */
  halve(): void {
    const order = Array.from({ length: this.count }, (_, at) => at).sort(
      (a, b) => (this.cost[a] ?? 0) - (this.cost[b] ?? 0) || (this.use[a] ?? 0) - (this.use[b] ?? 0),
    );
    const stay = order.slice(0, this.count >> 1).sort((a, b) => a - b);
    for (const [to, from] of stay.entries()) {
      this.rows.copyWithin(to * this.stride, from * this.stride, (from + 1) * this.stride);
      this.#write(to, this.cost[from] ?? 0, this.use[from] ?? 0, this.parent[from] ?? 0, this.kept[from] ?? 0);
    }
    this.count = stay.length;
    this.#spread(this.#table.length);
  }

  #write(at: number, cost: number, use: number, parent: number, kept: number): void {
    this.cost[at] = cost;
    this.use[at] = use;
    this.parent[at] = parent;
    this.kept[at] = kept;
  }

  #same(at: number, row: Int32Array): boolean {
    const { rows, stride } = this;
    for (let i = 0, from = at * stride; i < stride; i++, from++) if (rows[from] !== row[i]) return false;
    return true;
  }

  #grow(): void {
    const room = this.cost.length * 2;
    this.rows = wider(this.rows, new Int32Array(room * this.stride));
    this.cost = wider(this.cost, new Int32Array(room));
    this.use = wider(this.use, new Float64Array(room));
    this.parent = wider(this.parent, new Int32Array(room));
    this.kept = wider(this.kept, new Int32Array(room));
  }

  #spread(places: number): void {
    this.#table = new Int32Array(places).fill(FREE);
    const mask = places - 1;
    for (let at = 0; at < this.count; at++) {
      let place = hash(this.rows.subarray(at * this.stride, (at + 1) * this.stride), this.stride) & mask;
      while (this.#table[place] !== FREE) place = (place + 1) & mask;
      this.#table[place] = at;
    }
  }
}

function wider<Numbers extends Int32Array | Float64Array>(from: Numbers, to: Numbers): Numbers {
  to.set(from);
  return to;
}

function hash(row: Int32Array, length: number): number {
  let mixed = 0x9e3779b9;
  for (let i = 0; i < length; i++) {
    mixed = Math.imul(mixed ^ (row[i] ?? 0), 0x85ebca6b);
    mixed ^= mixed >>> 15;
  }
  return mixed ^ (mixed >>> 13);
}
