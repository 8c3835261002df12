// The track signal: bit halves (S-9.1), packets (S-9.2), and what both sides of a gap carry, as lines that a figure can draw.
// Seconds, volts, farads, ohms throughout. A signal here repeats one packet for ever, so every line ends where it begins.
import { SINE_FACTOR } from '../crossing/index.ts';
import { TRACK_LIMITS } from '../power/index.ts';
import type { Span } from '../units.ts';

export type Bit = 0 | 1;

/** S-9.1 (2020) Table 1: length of one half of a bit, seconds. Source: nmra-s-9-1. */
export const ONE_HALF = {
  nominal: 58e-6,
  sent: { from: 55e-6, to: 61e-6 },
  accepted: { from: 52e-6, to: 64e-6 },
  /** The two halves of a 1 differ by no more. It is no limit between two stages: the standard has none. */
  differs: { sent: 3e-6, accepted: 6e-6 },
} as const;

/** The same for a 0; a stretched 0 sent is no longer than `total`, both halves together. Source: nmra-s-9-1. */
export const ZERO_HALF = {
  nominal: 100e-6,
  sent: { from: 95e-6, to: 9900e-6 },
  accepted: { from: 90e-6, to: 10_000e-6 },
  total: 12_000e-6,
} as const;

/** `sent` by a command station, or what a decoder has to have `accepted`. */
export type Role = 'sent' | 'accepted';
export type Half = 'first' | 'last';

export type HalvesFinding =
  | { readonly kind: 'bit'; readonly bit: Bit }
  | {
      readonly kind: 'no-bit';
      /** `outside`: no bit has such a half; `unlike`: one half of a 1 with one of a 0; `stretched`: too long in all. */
      readonly because: 'not-a-length' | 'outside' | 'unlike' | 'differ' | 'stretched';
      readonly parts: readonly Half[];
    };

// A picosecond: sums of decimal fractions are not exact.
const HAIR = 1e-12;
const BOTH: readonly Half[] = ['first', 'last'];
const noBit = (because: Extract<HalvesFinding, { kind: 'no-bit' }>['because'], parts = BOTH): HalvesFinding => ({
  kind: 'no-bit',
  because,
  parts,
});
const within = (seconds: number, span: Span): boolean => seconds >= span.from - HAIR && seconds <= span.to + HAIR;

function halfOf(seconds: number, role: Role): Bit | undefined {
  if (within(seconds, ONE_HALF[role])) return 1;
  return within(seconds, ZERO_HALF[role]) ? 0 : undefined;
}

/**
 * Which bit two halves make, each in seconds between two crossings of zero volts. `sent` judges a command station, `accepted`
 * asks what a decoder must take. Anything else is no bit, with the reason and the halves at fault. Source: nmra-s-9-1.
 */
export function judgeHalves(first: number, last: number, role: Role): HalvesFinding {
  const halves = [first, last];
  const bad = BOTH.filter((_, i) => !((halves[i] ?? 0) > 0 && Number.isFinite(halves[i])));
  if (bad.length > 0) return noBit('not-a-length', bad);
  const bits = halves.map((seconds) => halfOf(seconds, role));
  const outside = BOTH.filter((_, i) => bits[i] === undefined);
  if (outside.length > 0) return noBit('outside', outside);
  const [bit] = bits;
  if (bit === undefined || bit !== bits[1]) return noBit('unlike');
  if (bit === 1 && Math.abs(first - last) > ONE_HALF.differs[role] + HAIR) return noBit('differ');
  if (bit === 0 && role === 'sent' && first + last > ZERO_HALF.total + HAIR) return noBit('stretched');
  return { kind: 'bit', bit };
}

/**
 * Ones before a packet: a command station sends at least `sent`; a decoder takes no fewer than `never` and asks for no more
 * than `always`. Source: nmra-s-9-2.
 */
export const PREAMBLE = { sent: 14, never: 10, always: 12 } as const;

/** Bytes as sent, the check byte last. */
export interface Packet {
  readonly kind: 'packet';
  readonly bytes: readonly number[];
}

export interface NoPacket {
  readonly kind: 'no-packet';
  readonly because:
    | 'no-such-address'
    | 'no-such-step'
    | 'no-start-bit'
    | 'preamble-too-short'
    | 'cut-off'
    | 'too-few-bytes'
    | 'wrong-check-byte';
  /** What is at fault: `preamble`, `byte-1`, `end-bit`, `address` … */
  readonly parts: readonly string[];
}

const noPacket = (because: NoPacket['because'], ...parts: string[]): NoPacket => ({
  kind: 'no-packet',
  because,
  parts,
});

/** The bytes combined bit by bit with exclusive or; 0 for no bytes. Source: nmra-s-9-2 section B. */
export function checkByte(bytes: readonly number[]): number {
  return bytes.reduce((sum, byte) => sum ^ byte, 0);
}

const packed = (...data: number[]): Packet => ({ kind: 'packet', bytes: [...data, checkByte(data)] });

/** To nobody: keeps volts on the rails while there is nothing to say. Source: nmra-s-9-2 section B. */
export const IDLE_PACKET = packed(0xff, 0);
/** To all: forget what you were told. Source: nmra-s-9-2 section B. */
export const RESET_PACKET = packed(0, 0);
/** To all: come to a stop. Source: nmra-s-9-2 section B. */
export const STOP_PACKET = packed(0, 0b0110_0000);
/** To all: no more energy to the motor. Source: nmra-s-9-2 section B. */
export const CUT_PACKET = packed(0, 0b0110_0001);

export interface SpeedCommand {
  /** A short address, 1 to 127. */
  readonly address: number;
  readonly forward: boolean;
  /** 0 stops, 1 to 28 runs, `cut` takes the motor's energy away at once. */
  readonly step: number | 'cut';
}

export const SPEED_STEPS = 28;
const INSTRUCTION = 0b0100_0000;
const FORWARD = 0b0010_0000;
const FINER = 0b0001_0000;

/** Speed in 28 steps for a short address: 0AAAAAAA 01DCSSSS, where C is the least bit of the speed. Source: nmra-s-9-2. */
export function speedPacket({ address, forward, step }: SpeedCommand): Packet | NoPacket {
  if (!(Number.isInteger(address) && address >= 1 && address <= 127)) return noPacket('no-such-address', 'address');
  const speed = step === 'cut' ? 1 : speedBits(step);
  if (speed === undefined) return noPacket('no-such-step', 'step');
  return packed(address, INSTRUCTION | (forward ? FORWARD : 0) | speed);
}

function speedBits(step: number): number | undefined {
  if (!(Number.isInteger(step) && step >= 0 && step <= SPEED_STEPS)) return undefined;
  return step === 0 ? 0 : (2 + ((step - 1) >> 1)) | (step % 2 === 0 ? FINER : 0);
}

export type Meaning =
  | { readonly kind: 'idle' | 'reset' | 'stop' | 'cut' | 'other' }
  | ({ readonly kind: 'speed' } & SpeedCommand);

/** What the bytes of a packet (check byte included) tell decoders, among the packets that are built here. */
export function meaningOf(bytes: readonly number[]): Meaning {
  const [address = 0, instruction = 0] = bytes;
  if (bytes.length !== 3) return { kind: 'other' };
  if (address === 0xff && instruction === 0) return { kind: 'idle' };
  if (address === 0 && instruction === 0) return { kind: 'reset' };
  if (instruction >> 6 !== 1) return { kind: 'other' };
  if (address === 0 && (instruction & 0b1110) === 0) return { kind: (instruction & 1) === 0 ? 'stop' : 'cut' };
  if (address < 1 || address > 127) return { kind: 'other' };
  const slow = instruction & 0b1111;
  const finer = (instruction & FINER) === 0 ? 0 : 1;
  const forward = (instruction & FORWARD) !== 0;
  if (slow === 1) return { kind: 'speed', address, forward, step: 'cut' };
  return { kind: 'speed', address, forward, step: slow === 0 ? 0 : 2 * (slow - 2) + finer + 1 };
}

/** Bits as sent: ones of the preamble, before each byte a 0, highest bit first, a 1 at the end. Source: nmra-s-9-2 section A. */
export function packetBits({ bytes }: Packet, preamble: number = PREAMBLE.sent): Bit[] {
  const ones = Array.from({ length: preamble }, (): Bit => 1);
  return [...ones, ...bytes.flatMap((byte) => [0 as const, ...bitsOfByte(byte)]), 1];
}

function bitsOfByte(byte: number): Bit[] {
  return Array.from({ length: 8 }, (_, i) => ((byte >> (7 - i)) & 1 ? 1 : 0));
}

export interface PacketPart {
  readonly part: 'preamble' | 'byte' | 'check';
  /** Counts bytes from 1; 0 for the preamble. */
  readonly number: number;
  /** First bit and the bit after the last, counted from 0. */
  readonly from: number;
  readonly to: number;
}

/** Where in its bits a packet has which part; start and end bits belong to none. */
export function packetParts({ bytes }: Packet, preamble: number = PREAMBLE.sent): PacketPart[] {
  const parts = bytes.map((_, i): PacketPart => {
    const from = preamble + 9 * i + 1;
    return { part: i === bytes.length - 1 ? 'check' : 'byte', number: i + 1, from, to: from + 8 };
  });
  return [{ part: 'preamble', number: 0, from: 0, to: preamble }, ...parts];
}

export interface FoundPacket extends Packet {
  /** Ones in front of it. */
  readonly preamble: number;
  /** The bit after its end bit. */
  readonly next: number;
}

/** The first packet in a row of bits, read as a decoder reads that asks for `least` ones of preamble; or what is wrong with it. */
export function parsePacket(bits: readonly Bit[], least: number = PREAMBLE.never): FoundPacket | NoPacket {
  const start = startBit(bits, least);
  if (typeof start === 'string') return noPacket(start, start === 'no-start-bit' ? 'start-bit' : 'preamble');
  const bytes: number[] = [];
  let at = start.at;
  while (bits[at] === 0) {
    const taken = bits.slice(at + 1, at + 9);
    if (taken.length < 8) return noPacket('cut-off', `byte-${bytes.length + 1}`);
    bytes.push(taken.reduce<number>((byte, bit) => 2 * byte + bit, 0));
    at += 9;
  }
  if (bits[at] === undefined) return noPacket('cut-off', 'end-bit');
  if (bytes.length < 2) return noPacket('too-few-bytes', `byte-${bytes.length + 1}`);
  if (checkByte(bytes) !== 0) return noPacket('wrong-check-byte', `byte-${bytes.length}`);
  return { kind: 'packet', bytes, preamble: start.ones, next: at + 1 };
}

function startBit(bits: readonly Bit[], least: number): { at: number; ones: number } | NoPacket['because'] {
  let ones = 0;
  for (const [at, bit] of bits.entries()) {
    if (bit === 0 && ones >= least) return { at, ones };
    ones = bit === 0 ? 0 : ones + 1;
  }
  return bits.includes(0) ? 'preamble-too-short' : 'no-start-bit';
}

/** Length of one half of a 1 and of a 0, seconds. */
export interface HalfLengths {
  readonly one: number;
  readonly zero: number;
}

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

// In time constants: the first step of a curve, which grows as the curve flattens (no chord is then farther from the curve than
// 0.13 % of the swing), and where it is drawn flat.
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

function peakOf(wave: Wave): number {
  return wave.reduce((peak, { volts }) => Math.max(peak, Math.abs(volts)), 0);
}

// Average distance from zero along a straight line from a to b.
function averageSize(a: number, b: number): number {
  if (a * b >= 0) return Math.abs(a + b) / 2;
  return (a * a + b * b) / (2 * (Math.abs(a) + Math.abs(b)));
}

/** What is wrong with one side of a gap, and its peak volts. `late` and `rounded`: seconds, farads, ohms >= 0. */
export type SideState =
  | { readonly kind: 'right' | 'reversed'; readonly volts: number }
  /** The control link is missing and the stage holds the last level: plain d.c. */
  | { readonly kind: 'held'; readonly volts: number }
  | { readonly kind: 'dead' }
  | { readonly kind: 'late'; readonly volts: number; readonly seconds: number }
  /** A capacitor across the rails, behind `ohms` of stage, wire and joints. */
  | { readonly kind: 'rounded'; readonly volts: number; readonly farads: number; readonly ohms: number };

export interface SideSignal {
  /** From one rail to the other. */
  readonly wave: Wave;
  /** Volts inside the stage, from its plus to its minus. */
  readonly inside: number;
}

/** What one side of the gap carries while the command station sends these bits for ever. */
export function sideSignal(bits: readonly Bit[], state: SideState): SideSignal {
  const edges = signalEdges(bits);
  const inside = state.kind === 'dead' ? 0 : state.volts;
  return { wave: sideWave(edges, state), inside };
}

function sideWave(edges: SignalEdges, state: SideState): Wave {
  switch (state.kind) {
    case 'right':
      return squareWave(edges, state.volts);
    case 'reversed':
      return squareWave(reversedEdges(edges), state.volts);
    case 'late':
      return squareWave(delayedEdges(edges, state.seconds), state.volts);
    case 'rounded':
      return roundedWave(edges, state.volts, state.ohms * state.farads);
    case 'held':
      return squareWave({ ...edges, at: [] }, state.volts);
    case 'dead':
      return squareWave({ ...edges, at: [], before: 0 }, 0);
  }
}

/**
 * How the two sides hang together while a meter reads across the gap: the other pair of rails joined (common rail, or through
 * a lamp for the test), the minus sides of both stages joined, or not at all.
 */
export type Joined = 'other-rail' | 'negatives' | 'nothing';

export type AcrossGap =
  /** From a rail to the same rail beyond the gap, and to the other rail beyond it. */
  | { readonly kind: 'across'; readonly same: Wave; readonly crosswise: Wave }
  /** Without any joint a reading means nothing. */
  | { readonly kind: 'no-reading'; readonly because: 'floating'; readonly parts: readonly ['same', 'crosswise'] };

/**
 * Volts across the gap, near less far. With joined minus sides a rail stands at (inside volts + rail-to-rail volts) / 2 above
 * them, and a dead stage holds both its rails at its minus. Source: own-derivation.
 */
export function acrossGap(near: SideSignal, far: SideSignal, joined: Joined): AcrossGap {
  if (joined === 'nothing') return { kind: 'no-reading', because: 'floating', parts: ['same', 'crosswise'] };
  const of = (rule: (near: number, far: number) => number): Wave => combinedWave(near.wave, far.wave, rule);
  if (joined === 'other-rail') return { kind: 'across', same: of((a, b) => a - b), crosswise: near.wave };
  const step = near.inside - far.inside;
  return { kind: 'across', same: of((a, b) => (step + a - b) / 2), crosswise: of((a, b) => (step + a + b) / 2) };
}

/** Share of the time in which one side stands against the other, 0 to 1. A side without volts stands against nothing. */
export function againstShare(one: Wave, other: Wave): number {
  const [a, b] = [edgesIn(one), edgesIn(other)];
  const seconds = Math.min(a.seconds, b.seconds);
  if (a.before * b.before === 0 || seconds === 0) return 0;
  let [since, against, time] = [0, a.before !== b.before, 0];
  for (const at of [...a.at, ...b.at, seconds].sort((x, y) => x - y)) {
    if (against) time += at - since;
    since = at;
    against = !against;
  }
  return time / seconds;
}

/** Below this share of the crosswise reading the same-rail reading is small, above the other it is large. */
export const COMPARED = { small: 0.5, large: 1.5 } as const;

/**
 * Same rail against crosswise, with the same meter: its own error drops out. `small`: in phase. `large`: reversed. `alike`: one
 * side has no signal. `nothing`: no reading at all. Sure while the far rails stand at 0.5 to 1.5 times the volts of the near
 * ones, or with equal volts while lateness is below a fifth of a half. Source: own-derivation.
 */
export function compareAcross(same: number, crosswise: number): 'small' | 'alike' | 'large' | 'nothing' {
  if (same === 0 && crosswise === 0) return 'nothing';
  if (same < COMPARED.small * crosswise) return 'small';
  return same > COMPARED.large * crosswise ? 'large' : 'alike';
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

export type Heard =
  | { readonly kind: 'packet'; readonly bytes: readonly number[] }
  /** It could be read here, but the edges are slower than a decoder has to take. */
  | { readonly kind: 'doubtful'; readonly because: 'slow-edges'; readonly bytes: readonly number[] }
  | { readonly kind: 'nothing'; readonly because: 'no-volts' | 'no-edges' | 'too-few-volts' }
  | { readonly kind: 'garbled'; readonly because: 'halves' | NoPacket['because'] };

/** Lowest peak at which a decoder has to work, volts. Source: nmra-s-9-1 Table 3. */
export const DECODER_LEAST = TRACK_LIMITS.h0.decoder.from;

/** What a decoder makes of a line: the first packet in it, or why there is none. Which rail is which makes no difference to it. */
export function hear(wave: Wave): Heard {
  const peak = peakOf(wave);
  const edges = edgesIn(wave);
  if (peak === 0) return { kind: 'nothing', because: 'no-volts' };
  if (edges.at.length === 0) return { kind: 'nothing', because: 'no-edges' };
  if (peak < DECODER_LEAST) return { kind: 'nothing', because: 'too-few-volts' };
  const bits = bitsIn(edges);
  if (bits === undefined) return { kind: 'garbled', because: 'halves' };
  const found = parsePacket([...bits, ...bits]);
  if (found.kind === 'no-packet') return { kind: 'garbled', because: found.because };
  const edge = slowestEdge(wave);
  const clear = edge.kind === 'edge' && edge.fit !== 'too-slow';
  return clear
    ? { kind: 'packet', bytes: found.bytes }
    : { kind: 'doubtful', because: 'slow-edges', bytes: found.bytes };
}

/** The bits that a decoder reads out of edges, whichever half it begins with; undefined where halves make no bits. */
export function bitsIn({ at, seconds }: SignalEdges): Bit[] | undefined {
  const halves = at.map((time, i) => (at[i + 1] ?? seconds + (at[0] ?? 0)) - time);
  return pairedBits(halves) ?? pairedBits([...halves.slice(1), ...halves.slice(0, 1)]);
}

function pairedBits(halves: readonly number[]): Bit[] | undefined {
  const bits: Bit[] = [];
  for (let i = 0; i < halves.length; i += 2) {
    const found = judgeHalves(halves[i] ?? 0, halves[i + 1] ?? 0, 'accepted');
    if (found.kind === 'no-bit') return undefined;
    bits.push(found.bit);
  }
  return bits;
}

/** Everything that a figure of a gap shows. */
export interface GapPicture {
  readonly near: Wave;
  readonly far: Wave;
  readonly across: AcrossGap;
  /** Rail to rail on each side; across the gap only where a reading means something. */
  readonly readings: {
    readonly near: WaveReadings;
    readonly far: WaveReadings;
    readonly across: { readonly same: WaveReadings; readonly crosswise: WaveReadings } | undefined;
  };
  /** Of the averaging meter's two readings across the gap. */
  readonly compared: ReturnType<typeof compareAcross> | undefined;
  /** What a decoder makes of each side. */
  readonly heard: { readonly near: Heard; readonly far: Heard };
  /** Share of the time in which the sides stand against each other. */
  readonly against: number;
  readonly slowest: EdgeFinding;
  /** The load of the far side's capacitor, if there is one. */
  readonly capacitor: CapacitorLoad | undefined;
}

/** Both sides of a gap while a packet is repeated for ever: the near side as it should be with `volts`, the far side as it is. */
export function gapPicture(sent: Packet, volts: number, state: SideState, joined: Joined): GapPicture {
  const bits = packetBits(sent);
  const near = sideSignal(bits, { kind: 'right', volts });
  const far = sideSignal(bits, state);
  const across = acrossGap(near, far, joined);
  const read =
    across.kind === 'across'
      ? { same: waveReadings(across.same), crosswise: waveReadings(across.crosswise) }
      : undefined;
  return {
    near: near.wave,
    far: far.wave,
    across,
    readings: { near: waveReadings(near.wave), far: waveReadings(far.wave), across: read },
    compared: read === undefined ? undefined : compareAcross(read.same.averaging, read.crosswise.averaging),
    heard: { near: hear(near.wave), far: hear(far.wave) },
    against: againstShare(near.wave, far.wave),
    slowest: slowestEdge(far.wave),
    capacitor: state.kind === 'rounded' ? followingLoad(far.wave, state.volts, state.farads) : undefined,
  };
}
