// Combinations of circumstances: a set is a mask of bits, a combination of its values is one place, the last circumstance counting fastest.

/** More masks than there are of 16 circumstances. Source: own-choice. */
const MOST_MASKS = 2 ** 16;

export interface Dims {
  readonly mask: number;
  /** Places of the circumstances, ascending. */
  readonly of: readonly number[];
  /** How many combinations there are. */
  readonly size: number;
}

/** Looks up sets of circumstances and how their combinations hang together, and remembers them. */
export class DimsTable {
  readonly #sizes: readonly number[];
  readonly #dims = new Map<number, Dims>();
  readonly #within = new Map<number, Int32Array>();

  constructor(sizes: readonly number[]) {
    this.#sizes = sizes;
  }

  of(mask: number): Dims {
    const known = this.#dims.get(mask);
    if (known !== undefined) return known;
    const of = this.#sizes.map((_, at) => at).filter((at) => (mask >> at) % 2 === 1);
    const made = { mask, of, size: of.reduce((product, at) => product * (this.#sizes[at] ?? 1), 1) };
    this.#dims.set(mask, made);
    return made;
  }

  /** For each combination of `mask` the place of its part among the combinations of `part`, which `mask` holds. */
  within(mask: number, part: number): Int32Array {
    const key = mask * MOST_MASKS + part;
    const known = this.#within.get(key);
    if (known !== undefined) return known;
    const all = this.of(mask);
    const some = this.of(part);
    const places = Int32Array.from({ length: all.size }, (_, combination) => {
      const values = this.#valuesOf(all, combination);
      return some.of.reduce((place, at) => place * (this.#sizes[at] ?? 1) + (values.get(at) ?? 0), 0);
    });
    this.#within.set(key, places);
    return places;
  }

  #valuesOf({ of }: Dims, combination: number): Map<number, number> {
    const values = new Map<number, number>();
    let rest = combination;
    for (const at of [...of].reverse()) {
      const size = this.#sizes[at] ?? 1;
      values.set(at, rest % size);
      rest = Math.floor(rest / size);
    }
    return values;
  }
}

/** The set that holds these circumstances. */
export const maskOf = (places: readonly number[]): number => places.reduce((mask, at) => mask | (1 << at), 0);
