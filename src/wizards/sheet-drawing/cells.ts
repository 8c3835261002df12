// Where each section stands in the drawing: a cell of a grid, as in a signal-box diagram. One cell holds one section with its name.
import type { Sheet } from '../sheet/index.ts';

/** Sections and the joints between them: what a placement depends on. */
export type Tracks = Pick<Sheet, 'sections' | 'joints'>;

/** Columns from the left, rows from the top; the least is 0. Two cells are at least a column or a row apart. */
export interface Cell {
  readonly column: number;
  readonly row: number;
}

type Neighbours = ReadonlyMap<string, readonly string[]>;

/**
 * A cell for every section. What was placed by hand stays there unless two would lie on each other; the second one moves to the nearest free
 * cell. A part of the layout in which nothing is placed is laid out by itself, below what is placed.
 */
export function cellsOf(tracks: Tracks): ReadonlyMap<string, Cell> {
  const neighbours = neighboursOf(tracks);
  const cells = new Map<string, Cell>();
  for (const { id, at } of tracks.sections) if (at !== undefined && isFree(at, cells)) cells.set(id, at);
  for (const part of partsOf(tracks, neighbours)) {
    if (part.some((id) => cells.has(id))) fillIn(part, neighbours, cells);
    else putBelow(laidOut(part, neighbours), cells);
  }
  return fromZero(cells);
}

/** Who is joined to whom; a section joined to itself is no neighbour of its own. */
function neighboursOf({ sections, joints }: Tracks): Neighbours {
  const neighbours = new Map<string, string[]>(sections.map(({ id }) => [id, []]));
  for (const { from, to } of joints) {
    if (from === to) continue;
    const one = neighbours.get(from);
    const other = neighbours.get(to);
    if (one === undefined || other === undefined || one.includes(to)) continue;
    one.push(to);
    other.push(from);
  }
  return neighbours;
}

/** The parts that hang together, each in the order in which it is come upon. */
function partsOf({ sections }: Tracks, neighbours: Neighbours): readonly (readonly string[])[] {
  const parts: (readonly string[])[] = [];
  const seen = new Set<string>();
  for (const { id } of sections) {
    if (seen.has(id)) continue;
    const part = layersFrom(id, neighbours).flat();
    for (const one of part) seen.add(one);
    parts.push(part);
  }
  return parts;
}

/** All that is reached from a section, by how many joints away it is. */
function layersFrom(start: string, neighbours: Neighbours): string[][] {
  const seen = new Set([start]);
  const layers: string[][] = [];
  for (let layer = [start]; layer.length > 0; ) {
    layers.push(layer);
    const next: string[] = [];
    for (const id of layer) {
      for (const other of neighbours.get(id) ?? []) {
        if (seen.has(other)) continue;
        seen.add(other);
        next.push(other);
      }
    }
    layer = next;
  }
  return layers;
}

/**
 * A part laid out from its far end to the other: what is n joints away stands in column n, so every joint leads to the next column or stays in
 * its own, and a ring becomes two rows.
 */
function laidOut(part: readonly string[], neighbours: Neighbours): ReadonlyMap<string, Cell> {
  const layers = layersFrom(farEnd(part, neighbours), neighbours);
  for (let pass = 0; pass < 4; pass++) {
    sortLayers(layers, neighbours, 1);
    sortLayers(layers, neighbours, -1);
  }
  sortLayers(layers, neighbours, 1);
  const cells = new Map<string, Cell>();
  layers.forEach((layer, column) => {
    const wishes = layer.map((id) => meanOf(neighbours.get(id) ?? [], (other) => cells.get(other)?.row) ?? 0);
    const rows = apart(wishes);
    layer.forEach((id, i) => {
      cells.set(id, { column, row: rows[i] ?? i });
    });
  });
  return cells;
}

/** The end of a track, if there is one, else any section; of those the farthest from where one comes in. */
function farEnd(part: readonly string[], neighbours: Neighbours): string {
  const [first = ''] = part;
  const reached = layersFrom(first, neighbours).flat().toReversed();
  const end = reached.find((id) => neighbours.get(id)?.length === 1);
  return end ?? reached[0] ?? first;
}

/** Sorts each layer by where its neighbours stand in the layer before (step 1) or after it (step -1). */
function sortLayers(layers: string[][], neighbours: Neighbours, step: 1 | -1): void {
  const order = step === 1 ? layers.keys() : [...layers.keys()].toReversed();
  for (const i of order) {
    const layer = layers[i];
    const beside = layers[i - step];
    if (layer === undefined || beside === undefined) continue;
    const place = new Map(beside.map((id, at) => [id, at]));
    const means = new Map(
      layer.map((id, at) => [id, meanOf(neighbours.get(id) ?? [], (other) => place.get(other)) ?? at]),
    );
    layers[i] = layer.toSorted((one, other) => (means.get(one) ?? 0) - (means.get(other) ?? 0));
  }
}

function meanOf(ids: readonly string[], value: (id: string) => number | undefined): number | undefined {
  let [sum, count] = [0, 0];
  for (const id of ids) {
    const one = value(id);
    if (one === undefined) continue;
    sum += one;
    count += 1;
  }
  return count === 0 ? undefined : sum / count;
}

/** Whole rows in the given order, each its own and all together as near to the wishes as can be (pool adjacent violators). */
function apart(wishes: readonly number[]): readonly number[] {
  const pools: { sum: number; count: number }[] = [];
  wishes.forEach((wish, i) => {
    pools.push({ sum: wish - i, count: 1 });
    for (;;) {
      const last = pools.at(-1);
      const before = pools.at(-2);
      if (last === undefined || before === undefined || before.sum / before.count <= last.sum / last.count) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  const bases = pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => Math.round(sum / count)));
  return bases.map((base, i) => base + i);
}

/** Sections that have no cell yet go near their neighbours that have one. */
function fillIn(part: readonly string[], neighbours: Neighbours, cells: Map<string, Cell>): void {
  for (let left = part.filter((id) => !cells.has(id)); left.length > 0; ) {
    const later: string[] = [];
    for (const id of left) {
      const beside = (neighbours.get(id) ?? []).map((other) => cells.get(other)).filter((cell) => cell !== undefined);
      const [first] = beside;
      if (first === undefined) later.push(id);
      else cells.set(id, nearestFree(first, cells));
    }
    // A section without any neighbour: its own wish was taken by another one.
    const [stuck] = later;
    if (later.length === left.length && stuck !== undefined) {
      cells.set(stuck, nearestFree({ column: 0, row: 0 }, cells));
      later.shift();
    }
    left = later;
  }
}

function nearestFree(to: Cell, cells: ReadonlyMap<string, Cell>): Cell {
  for (let far = 1; ; far++) {
    const ring = ringOf(far).map(([columns, rows]) => ({ column: to.column + columns, row: to.row + rows }));
    const free = ring.find((cell) => isFree(cell, cells));
    if (free !== undefined) return free;
  }
}

/** Whole steps to the cells of a square ring; beside before above and below, right before left. */
function ringOf(far: number): readonly (readonly [columns: number, rows: number])[] {
  const steps = Array.from({ length: 2 * far + 1 }, (_, i) => i - far).toSorted((a, b) => Math.abs(a) - Math.abs(b));
  return [
    ...steps.flatMap((row) => [[far, row] as const, [-far, row] as const]),
    ...steps.flatMap((column) => [[column, far] as const, [column, -far] as const]),
  ];
}

function isFree({ column, row }: Cell, cells: ReadonlyMap<string, Cell>): boolean {
  for (const taken of cells.values()) {
    if (Math.abs(taken.column - column) < 1 && Math.abs(taken.row - row) < 1) return false;
  }
  return true;
}

function putBelow(part: ReadonlyMap<string, Cell>, cells: Map<string, Cell>): void {
  const lowest = Math.max(-1, ...[...cells.values()].map(({ row }) => row));
  const top = Math.min(...[...part.values()].map(({ row }) => row));
  for (const [id, { column, row }] of part) cells.set(id, { column, row: row - top + Math.floor(lowest) + 2 });
}

function fromZero(cells: ReadonlyMap<string, Cell>): ReadonlyMap<string, Cell> {
  const left = Math.min(...[...cells.values()].map(({ column }) => column));
  const top = Math.min(...[...cells.values()].map(({ row }) => row));
  return new Map([...cells].map(([id, { column, row }]) => [id, { column: column - left, row: row - top }]));
}
