// What comes of a state when one more section is taken up.
import { Closing } from './closing.ts';
import { Layer } from './layer.ts';
import type { Ahead, Step } from './order.ts';
import type { Holding } from './state.ts';
import { Near, rowLength, State } from './state.ts';
import type { Whole } from './whole.ts';

/** The way on which a state is reached. */
interface Way {
  cost: number;
  use: number;
  /** The state before. */
  state: number;
  /** Bits of the links that are kept. */
  kept: number;
}

export class Sweeper {
  /** The least that anything dropped for its cost would cost. */
  beyond = Number.POSITIVE_INFINITY;
  readonly #whole: Whole;
  readonly #limit: number;
  readonly #closing: Closing;
  readonly #row: Int32Array;
  readonly #from: State;
  readonly #to: State;
  readonly #near: Near;
  readonly #ahead: Near;
  readonly #holding: Holding = { traffic: 0, fixed: 0, fed: -1 };
  readonly #way: Way = { cost: 0, use: 0, state: 0, kept: 0 };
  /** New number of each part, -1 where nothing of it stays on the frontier. */
  readonly #renamed: Int32Array;
  readonly #closed: Int32Array;
  #closedCount = 0;
  readonly #union: Int32Array;
  readonly #group: Int32Array;

  constructor(whole: Whole, steps: readonly Step[], limit: number) {
    const wide = 1 + Math.max(1, ...steps.map(({ stay }) => stay.length));
    this.#whole = whole;
    this.#limit = limit;
    this.#closing = new Closing(whole);
    this.#row = new Int32Array(rowLength(wide));
    [this.#from, this.#to] = [new State(wide), new State(wide)];
    [this.#near, this.#ahead] = [new Near(wide), new Near(wide)];
    const places = (): Int32Array => new Int32Array(wide + 1);
    [this.#renamed, this.#closed, this.#union] = [places(), places(), places()];
    this.#group = new Int32Array(whole.traffic.length);
  }

  layer(): Layer {
    return new Layer(this.#row.length);
  }

  /** The layer before the first step: nothing taken up, no stage has its district. */
  first(): Layer {
    const layer = this.layer();
    layer.put(this.#row, 0, 0, 0, 0);
    return layer;
  }

  /** Every state that comes of the state at `at`, into `next`. */
  takeUp(step: Step, layer: Layer, at: number, next: Layer): void {
    const [from, near, way] = [this.#from, this.#near, this.#way];
    const word = from.read(layer, at, step.width);
    near.look(step.backs, from.part);
    way.state = at;
    for (let joins = 0; joins <= near.all; joins++) {
      if ((joins & near.must) !== near.must) continue;
      way.cost = (layer.cost[at] ?? 0) + near.parted(joins);
      way.kept = near.kept(joins);
      if (this.#tooDear(way.cost) || !this.#join(step, word, joins)) continue;
      this.#close(step, 0, word, layer.use[at] ?? 0, next);
    }
  }

  #tooDear(cost: number): boolean {
    if (cost <= this.#limit) return false;
    this.beyond = Math.min(this.beyond, cost);
    return true;
  }

  /** Joins the section to the parts of `joins`; false where no stage bears it. */
  #join(step: Step, word: number, joins: number): boolean {
    const holding = this.#begin(
      this.#whole.traffic[step.section] ?? 0,
      this.#whole.fixed[step.section] ?? 0,
      this.#whole.fedBy[step.section] ?? -1,
    );
    if (!(this.#from.addTo(holding, this.#near, joins) && this.#isBorne(holding, word))) return false;
    const own = this.#from.parts;
    this.#from.hold(own, holding);
    this.#from.part[step.width] = own;
    this.#settle(step, own, joins);
    return true;
  }

  #begin(traffic: number, fixed: number, fed: number): Holding {
    const holding = this.#holding;
    holding.traffic = traffic;
    holding.fixed = fixed;
    holding.fed = fed;
    return holding;
  }

  /** Whether some stage that has no district yet bears it. */
  #isBorne({ traffic, fixed, fed }: Holding, word: number): boolean {
    return traffic <= this.#closing.roomFor(word, fed, fixed);
  }

  /** Numbers the parts anew, in the order of the frontier that stays; those of which nothing stays are closed. */
  #settle({ stay, width }: Step, own: number, joins: number): void {
    const [from, to, renamed] = [this.#from, this.#to, this.#renamed];
    const merged = (part: number): number => (this.#isJoined(part, joins) ? own : part);
    renamed.fill(-1, 0, own + 1);
    to.parts = 0;
    for (const [i, slot] of stay.entries()) {
      const part = merged(from.part[slot] ?? 0);
      if (renamed[part] === -1) {
        to.take(to.parts, from, part);
        renamed[part] = to.parts++;
      }
      to.part[i] = renamed[part] ?? 0;
    }
    this.#closedCount = 0;
    for (let slot = 0; slot <= width; slot++) {
      const part = merged(from.part[slot] ?? 0);
      if (renamed[part] !== -1) continue;
      renamed[part] = 0;
      this.#closed[this.#closedCount++] = part;
    }
  }

  #isJoined(part: number, joins: number): boolean {
    const near = this.#near;
    for (let i = 0; i < near.count; i++) if (near.parts[i] === part) return ((joins >>> i) & 1) === 1;
    return false;
  }

  /** Each closed part is the district of some stage. */
  #close(step: Step, at: number, word: number, use: number, next: Layer): void {
    if (at === this.#closedCount) {
      this.#way.use = use;
      this.#keep(step, word, next);
      return;
    }
    const part = this.#closed[at] ?? 0;
    const fed = this.#from.fed[part] ?? -1;
    const [traffic, fixed] = [this.#from.traffic[part] ?? 0, this.#from.fixed[part] ?? 0];
    const closing = this.#closing;
    for (const kind of fed === -1 ? closing.unfed : [fed]) {
      if (!closing.suits(word, kind, traffic, fixed)) continue;
      const fuller = Math.max(use, closing.use(kind, traffic, fixed));
      this.#close(step, at + 1, closing.with(word, kind), fuller, next);
    }
  }

  /** Keeps what has come of it, unless it can come to nothing within the limit. */
  #keep(step: Step, word: number, next: Layer): void {
    const way = this.#way;
    if (!this.#mayHold(step, word)) return;
    // None where there are more stretches than stages.
    const cheapest = step.cheapest[(this.#closing.open[word] ?? 0) - this.#apart(step)];
    const forced = this.#forced(step, word);
    if (cheapest === undefined || forced === undefined) return;
    if (this.#tooDear(way.cost + Math.max(cheapest, forced))) return;
    this.#to.write(this.#row, word, step.stay.length);
    next.put(this.#row, way.cost, way.use, way.state, way.kept);
  }

  /** Whether the stages without a district bear what is left, each open part, and are not left with too little. */
  #mayHold({ trafficLeft }: Step, word: number): boolean {
    const [to, closing] = [this.#to, this.#closing];
    let all = trafficLeft;
    for (let part = 0; part < to.parts; part++) {
      const traffic = to.traffic[part] ?? 0;
      if (traffic > closing.roomFor(word, to.fed[part] ?? -1, to.fixed[part] ?? 0)) return false;
      all += traffic;
    }
    return all <= (closing.most[word] ?? 0) && all >= (closing.least[word] ?? 0);
  }

  /** Into how many stretches parts and all that is left fall, if no further gap is made. */
  #apart({ stay, joined, islands }: Step): number {
    const [to, union] = [this.#to, this.#union];
    for (let part = 0; part < to.parts; part++) union[part] = part;
    for (const group of joined) this.#group[group] = -1;
    let count = to.parts;
    for (let i = 0; i < stay.length; i++) {
      const part = rootOf(union, to.part[i] ?? 0);
      const group = joined[i] ?? 0;
      const seen = this.#group[group] ?? -1;
      this.#group[group] = part;
      if (seen === -1 || rootOf(union, seen) === part) continue;
      union[rootOf(union, seen)] = part;
      count--;
    }
    return count + islands;
  }

  /** What sections ahead cost at least, since no stage bears all parts that each is joined to; undefined where links that are kept ask for it. */
  #forced({ ahead }: Step, word: number): number | undefined {
    let cost = 0;
    for (const one of ahead) {
      const least = this.#parting(one, word);
      if (least === undefined) return undefined;
      cost += least;
    }
    return cost;
  }

  #parting(one: Ahead, word: number): number | undefined {
    const near = this.#ahead;
    near.look(one.links, this.#to.part);
    if (this.#bears(one, near.all, word)) return 0;
    let best: number | undefined;
    for (let joins = near.all - 1; joins >= 0; joins--) {
      if ((joins & near.must) !== near.must) continue;
      const cost = near.parted(joins);
      if ((best === undefined || cost < best) && this.#bears(one, joins, word)) best = cost;
    }
    return best;
  }

  #bears({ traffic, fixed, fedBy }: Ahead, joins: number, word: number): boolean {
    const holding = this.#begin(traffic, fixed, fedBy);
    return this.#to.addTo(holding, this.#ahead, joins) && this.#isBorne(holding, word);
  }
}

function rootOf(union: Int32Array, part: number): number {
  let root = part;
  while (union[root] !== root) root = union[root] ?? root;
  return root;
}
