// Which nodes hang together.
import { int, ints } from './skyline.ts';

/** Sets of places that grow together. */
export class Groups {
  readonly #parent: Int32Array;

  constructor(count: number) {
    this.#parent = ints(count, (place) => place);
  }

  /** One place that stands for the whole group. */
  of(place: number): number {
    let root = place;
    while (int(this.#parent, root) !== root) {
      this.#parent[root] = int(this.#parent, int(this.#parent, root));
      root = int(this.#parent, root);
    }
    return root;
  }

  join(a: number, b: number): void {
    this.#parent[this.of(a)] = this.of(b);
  }
}
