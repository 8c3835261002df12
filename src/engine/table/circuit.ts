// A small circuit solver for the virtual layout: resistors, and parts whose current is a rising broken line of their voltage
// (sources that cannot take current back, diodes, rectified loads). Nodal analysis by a symmetric factorisation.

/** Current through a part from its first to its second node: slope times volts plus offset, by the piece that the volts lie in. */
export interface Curve {
  /** Volts where one piece ends and the next begins, rising. */
  readonly breaks: readonly number[];
  /** One more than breaks. Siemens, >= 0. */
  readonly slopes: readonly number[];
  /** Amperes, so that the line does not jump. */
  readonly offsets: readonly number[];
}

/** What a blocked part still passes, siemens. Source: from-memory. */
const BLOCKED = 1e-9;
/** Every node leaks to earth by this, siemens: ten megohms of dust and wood. Source: from-memory. */
const TO_EARTH = 1e-7;
/** Volts across a silicon junction in the forward direction, and its ohms beyond. Source: from-memory. */
const JUNCTION = { volts: 0.7, ohms: 0.05 } as const;
/** A rectified load draws its full current from here on, volts. Source: from-memory. */
export const LOAD_KNEE = 3;
/** Rounds in which all parts may change at once, then in all. Source: own-choice. */
const FREE_ROUNDS = 12;
const MOST_ROUNDS = 400;
/** So near to its bend a part may lie on either side of it, volts or amperes. Source: own-choice. */
const SLACK = 1e-7;

/** A source of `volts` behind `ohms` that gives up to `limit` amperes and takes nothing back. All > 0. */
export function sourceCurve(volts: number, ohms: number, limit: number): Curve {
  const full = volts - ohms * limit;
  return {
    breaks: [full, volts],
    slopes: [BLOCKED, 1 / ohms, BLOCKED],
    offsets: [-limit - BLOCKED * full, -volts / ohms, -BLOCKED * volts],
  };
}

/** A consumer behind a rectifier: `amps` >= 0 whichever way round, less in proportion below the knee. */
export function loadCurve(amps: number): Curve {
  const slope = Math.max(BLOCKED, amps / LOAD_KNEE);
  const rest = (slope - BLOCKED) * LOAD_KNEE;
  return { breaks: [-LOAD_KNEE, LOAD_KNEE], slopes: [BLOCKED, slope, BLOCKED], offsets: [-rest, 0, rest] };
}

/** Passes from the first to the second node only: volts where it bends, siemens, amperes. Source: from-memory. */
export const DIODE: Curve = {
  breaks: [JUNCTION.volts],
  slopes: [BLOCKED, 1 / JUNCTION.ohms],
  offsets: [0, -JUNCTION.volts / JUNCTION.ohms + BLOCKED * JUNCTION.volts],
};

/** Two junctions in series each way: what a detector of the diode kind puts into one rail, volts. Source: common-practice. */
const DETECTOR_VOLTS = 1.2;
/** What such a detector passes: volts where it bends, siemens, amperes. Source: common-practice. */
export const DETECTOR: Curve = {
  breaks: [-DETECTOR_VOLTS, DETECTOR_VOLTS],
  slopes: [1 / JUNCTION.ohms, BLOCKED, 1 / JUNCTION.ohms],
  offsets: [DETECTOR_VOLTS / JUNCTION.ohms, 0, -DETECTOR_VOLTS / JUNCTION.ohms],
};

interface Bent {
  readonly from: number;
  readonly to: number;
  readonly curve: Curve;
  piece: number;
}

/** The earth, as a node. */
export const EARTH = -1;

/** What a circuit came to: volts of every node against earth, amperes through every bent part. */
export interface CircuitState {
  readonly volts: Float64Array;
  readonly amps: readonly number[];
  /** False where no state was found that fits all parts; the last one tried is given. */
  readonly settled: boolean;
}

/** Nodes are numbered from 0; parts are added, then it is solved once. */
export class Circuit {
  readonly #size: number;
  readonly #matrix: Float64Array;
  readonly #right: Float64Array;
  readonly #bent: Bent[] = [];

  constructor(nodes: number) {
    this.#size = nodes;
    this.#matrix = new Float64Array(nodes * nodes);
    this.#right = new Float64Array(nodes);
    for (let i = 0; i < nodes; i++) this.#matrix[i * nodes + i] = TO_EARTH;
  }

  /** Ohms > 0; an endless resistance is no part at all. A node may be EARTH. */
  resistor(from: number, to: number, ohms: number): void {
    if (Number.isFinite(ohms)) stamp(this.#matrix, this.#size, from, to, 1 / ohms);
  }

  /** Volts behind ohms, both ways: from `to` through the source to `from`. */
  twoWaySource(from: number, to: number, volts: number, ohms: number): void {
    this.resistor(from, to, ohms);
    push(this.#right, from, to, volts / ohms);
  }

  /** Amperes that flow into a node from outside. */
  push(node: number, amps: number): void {
    push(this.#right, node, EARTH, amps);
  }

  /** A bent part; gives its number in `amps`. `piece` is where the search for its state begins. */
  bent(from: number, to: number, curve: Curve, piece = 1): number {
    this.#bent.push({ from, to, curve, piece: Math.min(piece, curve.breaks.length) });
    return this.#bent.length - 1;
  }

  /** Finds the volts. Every part rises, so there is one solution; the last rounds go by the least-index rule, which ends. */
  solve(): CircuitState {
    const matrix = new Float64Array(this.#matrix.length);
    const volts = new Float64Array(this.#size);
    let settled = false;
    for (let round = 0; round < MOST_ROUNDS && !settled; round++) {
      matrix.set(this.#matrix);
      volts.set(this.#right);
      for (const { from, to, curve, piece } of this.#bent) {
        stamp(matrix, this.#size, from, to, curve.slopes[piece] ?? 0);
        push(volts, from, to, -(curve.offsets[piece] ?? 0));
      }
      solveInPlace(matrix, volts, this.#size);
      settled = !this.#moved(volts, round >= FREE_ROUNDS);
    }
    const amps = this.#bent.map(({ from, to, curve, piece }) => {
      const across = at(volts, from) - at(volts, to);
      return (curve.slopes[piece] ?? 0) * across + (curve.offsets[piece] ?? 0);
    });
    return { volts, amps, settled };
  }

  // Moves parts whose volts lie outside their piece by one piece; true if there was one.
  #moved(volts: Float64Array, onlyOne: boolean): boolean {
    let moved = false;
    for (const part of this.#bent) {
      const step = stepOf(part, at(volts, part.from) - at(volts, part.to));
      if (step === 0) continue;
      part.piece += step;
      moved = true;
      if (onlyOne) return true;
    }
    return moved;
  }
}

function stepOf({ curve, piece }: Bent, across: number): -1 | 0 | 1 {
  const low = curve.breaks[piece - 1];
  if (low !== undefined && across < low - SLACK) return -1;
  const high = curve.breaks[piece];
  return high !== undefined && across > high + SLACK ? 1 : 0;
}

const at = (volts: Float64Array, node: number): number => (node < 0 ? 0 : (volts[node] ?? 0));

function add(array: Float64Array, index: number, value: number): void {
  array[index] = (array[index] ?? 0) + value;
}

function stamp(matrix: Float64Array, size: number, from: number, to: number, siemens: number): void {
  if (from >= 0) add(matrix, from * size + from, siemens);
  if (to >= 0) add(matrix, to * size + to, siemens);
  if (from < 0 || to < 0) return;
  add(matrix, from * size + to, -siemens);
  add(matrix, to * size + from, -siemens);
}

function push(right: Float64Array, from: number, to: number, amps: number): void {
  if (from >= 0) add(right, from, amps);
  if (to >= 0) add(right, to, -amps);
}

// Lower factor in place, rows skipped up to their first entry; then forward and back.
function solveInPlace(matrix: Float64Array, right: Float64Array, size: number): void {
  const first = new Int32Array(size);
  for (let i = 0; i < size; i++) {
    first[i] = firstEntry(matrix, i * size, i);
    factorRow(matrix, first, i, size);
    forward(matrix, right, i, i * size, first[i] ?? 0);
  }
  for (let i = size - 1; i >= 0; i--) back(matrix, right, i, i * size, first[i] ?? 0);
}

function forward(matrix: Float64Array, right: Float64Array, i: number, row: number, first: number): void {
  let sum = right[i] ?? 0;
  for (let k = first; k < i; k++) sum -= (matrix[row + k] ?? 0) * (right[k] ?? 0);
  right[i] = sum / (matrix[row + i] ?? 1);
}

function back(matrix: Float64Array, right: Float64Array, i: number, row: number, first: number): void {
  const value = (right[i] ?? 0) / (matrix[row + i] ?? 1);
  right[i] = value;
  for (let k = first; k < i; k++) right[k] = (right[k] ?? 0) - (matrix[row + k] ?? 0) * value;
}

function firstEntry(matrix: Float64Array, row: number, end: number): number {
  let start = 0;
  while (start < end && matrix[row + start] === 0) start++;
  return start;
}

function factorRow(matrix: Float64Array, first: Int32Array, i: number, size: number): void {
  const row = i * size;
  const start = first[i] ?? 0;
  for (let j = start; j <= i; j++) {
    const other = j * size;
    let sum = matrix[row + j] ?? 0;
    for (let k = Math.max(start, first[j] ?? 0); k < j; k++) sum -= (matrix[row + k] ?? 0) * (matrix[other + k] ?? 0);
    matrix[row + j] = j === i ? Math.sqrt(Math.max(sum, TO_EARTH / 2)) : sum / (matrix[other + j] ?? 1);
  }
}
