// What a decoder makes of a line.
import { TRACK_LIMITS } from '../power/index.ts';
import type { Bit } from './bits.ts';
import { judgeHalves } from './bits.ts';
import type { NoPacket } from './packets.ts';
import { parsePacket } from './packets.ts';
import type { SignalEdges, Wave } from './waves.ts';
import { edgesIn, peakOf, slowestEdge } from './waves.ts';

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
