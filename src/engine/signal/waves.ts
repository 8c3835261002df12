// The signal in time: edges, and lines that a figure can draw, which repeat for ever and end where they begin. Seconds, volts, farads, ohms.
import { SINE_FACTOR } from '../crossing/index.ts';
import type { Span } from '../units.ts';
import type { Bit, Role } from './bits.ts';
import { ONE_HALF, ZERO_HALF } from './bits.ts';

/** Length of one half of a 1 and of a 0, seconds. */
export interface HalfLengths {
  readonly one: number;
  readonly zero: number;
}

/** Half of a 1 and half of a 0 as they should be, seconds. Source: nmra-s-9-1. */
export const NOMINAL_HALVES: HalfLengths = { one: ONE_HALF.nominal, zero: ZERO_HALF.nominal };

/** When each bit begins, and at the end of the list when the last one ends, seconds. */
export function bitTimes(bits: readonly Bit[], halves: HalfLengths = NOMINAL_HALVES): number[] {
  const times = [0];
  for (const bit of bits) times.push((times.at(-1) ?? 0) + 2 * (bit === 1 ? halves.one : halves.zero));
  return times;
}

/** A signal that repeats: polarity just before time 0 (0: nothing there), and the times at which it changes over. */
export interface SignalEdges {
  readonly before: -1 | 0 | 1;
  /** Seconds, rising, within [0, `seconds`); an even number, as the signal repeats. */
  readonly at: readonly number[];
  /** After so long it repeats. */
  readonly seconds: number;
}

/** Bits as edges: the first half of each bit positive, the last negative (convention of RCN-210, read in a summary: rcn-210). */
export function signalEdges(bits: readonly Bit[], halves: HalfLengths = NOMINAL_HALVES): SignalEdges {
  const times = bitTimes(bits, halves);
  const at = bits.flatMap((bit, i) => {
    const start = times[i] ?? 0;
    return [start, start + (bit === 1 ? halves.one : halves.zero)];
  });
  return { before: bits.length === 0 ? 0 : -1, at, seconds: times.at(-1) ?? 0 };
}

/** Both rails exchanged. */
export function reversedEdges(edges: SignalEdges): SignalEdges {
  return edges.before === 0 ? edges : { ...edges, before: edges.before === 1 ? -1 : 1 };
}

/** All edges later by `seconds` (>= 0); the signal repeats, so what passes its end comes in at its beginning. */
export function delayedEdges(edges: SignalEdges, seconds: number): SignalEdges {
  const by = edges.seconds > 0 ? seconds % edges.seconds : 0;
  const moved = edges.at.map((time) => time + by);
  const wrapped = moved.filter((time) => time >= edges.seconds).map((time) => time - edges.seconds);
  const stay = moved.slice(0, moved.length - wrapped.length);
  const flips = stay.length % 2 === 1;
  return { ...(flips ? reversedEdges(edges) : edges), at: [...wrapped, ...stay] };
}

export interface WavePoint {
  readonly seconds: number;
  readonly volts: number;
}

/** Points joined by straight lines, times never falling; at a jump two points share a time. */
export type Wave = readonly WavePoint[];

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly polarity: number;
}

function stretches({ before, at, seconds }: SignalEdges): Stretch[] {
  const ends = [...at, seconds];
  const first: Stretch = { from: 0, to: ends[0] ?? seconds, polarity: before };
  const rest = at.map((from, i) => ({ from, to: ends[i + 1] ?? seconds, polarity: i % 2 === 0 ? -before : before }));
  return [first, ...rest].filter(({ from, to }) => to > from);
}

/** The signal between the two rails of a stage whose peak is `volts`, with upright edges. Without edges the last level is held. */
export function squareWave(edges: SignalEdges, volts: number): Wave {
  return stretches(edges).flatMap(({ from, to, polarity }) => [
    { seconds: from, volts: polarity * volts },
    { seconds: to, volts: polarity * volts },
  ]);
}

/**
 * In time constants: the first step of a curve, which grows as the curve flattens (no chord is then farther from the curve than 0.13 % of
 * the swing), and where it is drawn flat. Source: own-choice.
 */
const STEP = 0.1;
const DRAWN = 8;

/**
 * The same behind a resistance with a capacitor across the rails, in the state that repeats. `timeConstant` = ohms x farads,
 * seconds; 0 gives upright edges. The points lie on the exponential curve.
 */
export function roundedWave(edges: SignalEdges, volts: number, timeConstant: number): Wave {
  const parts = stretches(edges);
  if (!(timeConstant > 0) || parts.length === 0) return squareWave(edges, volts);
  const after = (start: number, toward: number, seconds: number): number =>
    toward + (start - toward) * Math.exp(-seconds / timeConstant);
  const ended = parts.reduce((at, { from, to, polarity }) => after(at, polarity * volts, to - from), 0);
  let start = ended / -Math.expm1(-edges.seconds / timeConstant);
  const points: WavePoint[] = [{ seconds: 0, volts: start }];
  for (const { from, to, polarity } of parts) {
    const length = to - from;
    const last = Math.min(DRAWN, length / timeConstant);
    for (let step = STEP; step < last; step += STEP * Math.exp(step / 2)) {
      const seconds = step * timeConstant;
      points.push({ seconds: from + seconds, volts: after(start, polarity * volts, seconds) });
    }
    start = after(start, polarity * volts, length);
    points.push({ seconds: to, volts: start });
  }
  return points;
}

interface Piece {
  readonly from: WavePoint;
  readonly to: WavePoint;
}

function piecesOf(wave: Wave): Piece[] {
  const pieces: Piece[] = [];
  let from: WavePoint | undefined;
  for (const to of wave) {
    if (from !== undefined) pieces.push({ from, to });
    from = to;
  }
  return pieces;
}

const lasting = ({ from, to }: Piece): boolean => to.seconds > from.seconds;

function voltsAt({ from, to }: Piece, seconds: number): number {
  if (seconds <= from.seconds || from.volts === to.volts) return from.volts;
  if (seconds >= to.seconds) return to.volts;
  return from.volts + ((to.volts - from.volts) * (seconds - from.seconds)) / (to.seconds - from.seconds);
}

/** A line made of two, moment by moment, by a rule that is straight in both (such as a difference). Ends with the shorter one. */
export function combinedWave(one: Wave, other: Wave, rule: (one: number, other: number) => number): Wave {
  const left = piecesOf(one).filter(lasting);
  const right = piecesOf(other).filter(lasting);
  const points: WavePoint[] = [];
  let [p, i] = [left[0], 0];
  let [q, j] = [right[0], 0];
  while (p !== undefined && q !== undefined) {
    const from = Math.max(p.from.seconds, q.from.seconds);
    const to = Math.min(p.to.seconds, q.to.seconds);
    if (to > from) points.push(ruled(p, q, rule, from), ruled(p, q, rule, to));
    const [endsLeft, endsRight] = [p.to.seconds <= to, q.to.seconds <= to];
    if (endsLeft) p = left[++i];
    if (endsRight) q = right[++j];
  }
  return points;
}

function ruled(p: Piece, q: Piece, rule: (one: number, other: number) => number, seconds: number): WavePoint {
  return { seconds, volts: rule(voltsAt(p, seconds), voltsAt(q, seconds)) };
}

interface Passage {
  readonly seconds: number;
  readonly level: number;
}

// Each time the line passes one of the levels (given in rising order), in the order in which it does.
function passages(wave: Wave, levels: readonly number[]): Passage[] {
  const falling = [...levels].reverse();
  const found: Passage[] = [];
  for (const { from, to } of piecesOf(wave)) {
    for (const level of to.volts > from.volts ? levels : falling) {
      if (from.volts >= level === to.volts >= level) continue;
      const share = (level - from.volts) / (to.volts - from.volts);
      found.push({ level, seconds: from.seconds + share * (to.seconds - from.seconds) });
    }
  }
  return found;
}

function polarity(volts: number): -1 | 0 | 1 {
  if (volts === 0) return 0;
  return volts > 0 ? 1 : -1;
}

/** Where a line crosses zero volts, read as a signal that repeats. A line that never does has no edges. */
export function edgesIn(wave: Wave): SignalEdges {
  const first = wave[0]?.volts ?? 0;
  const last = wave.at(-1)?.volts ?? 0;
  const at = passages(wave, [0]).map(({ seconds }) => seconds);
  const around = first >= 0 !== last >= 0;
  return {
    before: polarity(around ? last : first),
    at: around ? [0, ...at] : at,
    seconds: wave.at(-1)?.seconds ?? 0,
  };
}

/** S-9.1 (2020) Table 2: from -4 to +4 V no slower than this, volts a second. Source: nmra-s-9-1. */
export const EDGE_RATE = { sent: 2.4e6, accepted: 2e6 } as const;
/** The levels between which an edge is timed, volts. Source: nmra-s-9-1. */
export const EDGE_WINDOW: Span = { from: -4, to: 4 };

export type EdgeFinding =
  /** Seconds for the slowest crossing of the window. `fit`: `sent` as a power station must, `accepted` as a decoder must take. */
  | { readonly kind: 'edge'; readonly seconds: number; readonly fit: Role | 'too-slow' }
  /** No edges at all, or one that turns back inside the window. */
  | { readonly kind: 'no-edge'; readonly because: 'no-edges' | 'turns-back' };

/** The slowest edge of a line against the edge rates of S-9.1. */
export function slowestEdge(wave: Wave): EdgeFinding {
  const changes = edgesIn(wave).at;
  if (changes.length === 0) return { kind: 'no-edge', because: 'no-edges' };
  const passed = passages(wave, [EDGE_WINDOW.from, EDGE_WINDOW.to]);
  // The same level twice running is a dip outside the window, or an edge that turns back inside it.
  const through = passed.slice(1).flatMap((one, i) => {
    const before = passed[i];
    return before !== undefined && before.level !== one.level ? [one.seconds - before.seconds] : [];
  });
  // An edge at time 0 lies between the end of the line and its beginning, and is upright.
  if (through.length < changes.filter((seconds) => seconds > 0).length)
    return { kind: 'no-edge', because: 'turns-back' };
  const seconds = Math.max(0, ...through);
  const rate = (EDGE_WINDOW.to - EDGE_WINDOW.from) / seconds;
  if (rate >= EDGE_RATE.sent) return { kind: 'edge', seconds, fit: 'sent' };
  return { kind: 'edge', seconds, fit: rate >= EDGE_RATE.accepted ? 'accepted' : 'too-slow' };
}

/** What meters show for a line that repeats, volts. */
export interface WaveReadings {
  /** On a d.c. range. */
  readonly direct: number;
  /** On the a.c. range of an averaging meter, which is marked in r.m.s. of a sine and so shows 1.11 times the average. */
  readonly averaging: number;
  /** On the a.c. range of a true-r.m.s. meter fast enough for this signal; a hand-held one is not, and may show less. */
  readonly rms: number;
  /** The largest distance from zero: no meter, the figure's own number. */
  readonly peak: number;
}

/** Readings of both kinds of meter, the d.c. part kept off their a.c. range. All 0 for a line without length. */
export function waveReadings(wave: Wave): WaveReadings {
  const pieces = piecesOf(wave).filter(lasting);
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (first === undefined || last === undefined) return { direct: 0, averaging: 0, rms: 0, peak: 0 };
  const length = last.to.seconds - first.from.seconds;
  let area = 0;
  for (const { from, to } of pieces) area += ((from.volts + to.volts) / 2) * (to.seconds - from.seconds);
  const direct = area / length;
  let [average, square] = [0, 0];
  for (const { from, to } of pieces) {
    const [a, b, share] = [from.volts - direct, to.volts - direct, (to.seconds - from.seconds) / length];
    average += share * averageSize(a, b);
    square += (share * (a * a + a * b + b * b)) / 3;
  }
  return { direct, averaging: SINE_FACTOR * average, rms: Math.sqrt(square), peak: peakOf(wave) };
}

export function peakOf(wave: Wave): number {
  return wave.reduce((peak, { volts }) => Math.max(peak, Math.abs(volts)), 0);
}

// Average distance from zero along a straight line from a to b.
function averageSize(a: number, b: number): number {
  if (a * b >= 0) return Math.abs(a + b) / 2;
  return (a * a + b * b) / (2 * (Math.abs(a) + Math.abs(b)));
}

export interface CapacitorLoad {
  /** Amperes that the stage gives on average. */
  readonly current: number;
  /** Watts, all of it heat in the stage and the wires. */
  readonly heat: number;
}

/**
 * What a capacitor across the rails draws, from the line that it follows: 2 x volts x farads for an edge that turns it over fully, less
 * where none does. `volts`: peak of the stage. Source: own-derivation.
 */
export function followingLoad(wave: Wave, volts: number, farads: number): CapacitorLoad {
  const seconds = wave.at(-1)?.seconds ?? 0;
  const turned = piecesOf(wave).reduce((sum, { from, to }) => sum + Math.abs(to.volts - from.volts), 0);
  const current = seconds > 0 ? (farads * turned) / seconds : 0;
  return { current, heat: current * volts };
}
