// Which nodes hang together, and what flows through wires without resistance.
import { at, int, ints } from './skyline.ts';

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

/** Edges in the order in which they come off as the last edge of a place, and the edges that never do: those on loops. */
export interface Peeled {
  readonly edges: readonly { readonly edge: number; readonly leaf: number; readonly rest: number }[];
  readonly loops: readonly number[];
}

/** Takes edges off a graph from its loose ends. `from` and `to` are places below `count`. */
export function peel(count: number, from: Int32Array, to: Int32Array): Peeled {
  const degree = new Int32Array(count);
  // The exclusive or of the edges of a place: with one edge left, that edge.
  const mixed = new Int32Array(count);
  const change = (place: number, edge: number, by: number) => {
    degree[place] = int(degree, place) + by;
    mixed[place] = int(mixed, place) ^ edge;
  };
  for (let edge = 0; edge < from.length; edge++) {
    change(int(from, edge), edge, 1);
    change(int(to, edge), edge, 1);
  }
  const left = new Set(from.keys());
  const edges: { edge: number; leaf: number; rest: number }[] = [];
  for (let start = 0; start < count; start++) {
    let leaf = start;
    while (int(degree, leaf) === 1) {
      const edge = int(mixed, leaf);
      const rest = int(from, edge) === leaf ? int(to, edge) : int(from, edge);
      edges.push({ edge, leaf, rest });
      left.delete(edge);
      change(leaf, edge, -1);
      change(rest, edge, -1);
      leaf = rest;
    }
  }
  return { edges, loops: [...left] };
}

/**
 * Currents through edges without resistance and without loops, amperes from `from` to `to`. `surplus`: what all else brings into each
 * place, amperes; used up.
 */
export function flows(from: Int32Array, to: Int32Array, surplus: Float64Array): Float64Array {
  const through = new Float64Array(from.length);
  for (const { edge, leaf, rest } of peel(surplus.length, from, to).edges) {
    const amps = at(surplus, leaf);
    through[edge] = int(from, edge) === leaf ? amps : -amps;
    surplus[rest] = at(surplus, rest) + amps;
  }
  return through;
}
