// Which stages have their district already, as one number, and what those that have none can still take.
import type { Kind, Whole } from './whole.ts';

/** The words of what is closed: so many bits for each kind of stage, as its count takes. */
export class Closing {
  /** The word where every stage has its district. */
  readonly all: number;
  /** By word: stages that have none yet; the least and the most that these take together; the most that any of them takes. */
  readonly open: Int32Array;
  readonly least: Float64Array;
  readonly most: Float64Array;
  readonly largest: Float64Array;
  readonly kinds: readonly Kind[];
  readonly unfed: readonly number[];
  readonly #ones: readonly number[];
  readonly #bits: readonly number[];
  readonly #rooms: readonly Float64Array[];
  /** Stands for no room at all. */
  readonly #tiny = 1e-6;

  constructor({ kinds, fixed }: Whole) {
    this.kinds = kinds;
    this.unfed = kinds.flatMap(({ fed }, kind) => (fed ? [] : [kind]));
    const most = fixed.reduce((all, amps) => all + amps, 0);
    this.#rooms = kinds.map(() => new Float64Array(most + 1).fill(Number.NaN));
    this.#bits = kinds.map(({ stages }) => 32 - Math.clz32(stages.length));
    let shift = 0;
    this.#ones = this.#bits.map((bits) => {
      const one = 1 << shift;
      shift += bits;
      return one;
    });
    this.all = kinds.reduce((word, { stages }, kind) => word + stages.length * this.#one(kind), 0);
    const words = 1 << shift;
    this.open = new Int32Array(words);
    this.least = new Float64Array(words);
    this.most = new Float64Array(words);
    this.largest = new Float64Array(words);
    for (let word = 0; word < words; word++) this.#tell(word);
  }

  /** Most traffic of a district of this kind with so much always on. */
  room(kind: number, fixed: number): number {
    const rooms = this.#rooms[kind];
    const known = rooms?.[fixed] ?? 0;
    if (!Number.isNaN(known)) return known;
    const room = this.kinds[kind]?.most(fixed) ?? -1;
    if (rooms !== undefined) rooms[fixed] = room;
    return room;
  }

  /** How full a district is, 1 being all that its stage bears. */
  use(kind: number, traffic: number, fixed: number): number {
    if (traffic === 0) return 0;
    return traffic / Math.max(this.#tiny, this.kinds[kind]?.bears(fixed) ?? 0);
  }

  /** Whether a district of this kind may hold so much, and one is still wanted. */
  suits(word: number, kind: number, traffic: number, fixed: number): boolean {
    if (this.left(word, kind) <= 0 || traffic < (this.kinds[kind]?.least ?? 0)) return false;
    return traffic <= this.room(kind, fixed);
  }

  /** Most traffic of a part that is not closed, with so much always on, fed by such a stage or by none yet (-1). */
  roomFor(word: number, fed: number, fixed: number): number {
    if (fed !== -1) return this.left(word, fed) > 0 ? this.room(fed, fixed) : -1;
    if (fixed === 0) return this.largest[word] ?? -1;
    let most = -1;
    for (let kind = 0; kind < this.kinds.length; kind++) {
      if (this.left(word, kind) > 0) most = Math.max(most, this.room(kind, fixed));
    }
    return most;
  }

  /** Stages of this kind that have no district yet. */
  left(word: number, kind: number): number {
    const one = this.#one(kind);
    const bits = (1 << (this.#bits[kind] ?? 0)) - 1;
    return (this.kinds[kind]?.stages.length ?? 0) - ((word >>> (31 - Math.clz32(one))) & bits);
  }

  /** The word once one more of this kind has its district. */
  with(word: number, kind: number): number {
    return word + this.#one(kind);
  }

  #one(kind: number): number {
    return this.#ones[kind] ?? 0;
  }

  #tell(word: number): void {
    let [open, least, most, largest] = [0, 0, 0, -1];
    for (const [kind, { least: low }] of this.kinds.entries()) {
      const left = this.left(word, kind);
      if (left <= 0) continue;
      const room = this.room(kind, 0);
      open += left;
      least += left * low;
      most += left * Math.max(0, room);
      largest = Math.max(largest, room);
    }
    this.open[word] = open;
    this.least[word] = least;
    this.most[word] = most;
    this.largest[word] = largest;
  }
}
