// What both sides of a gap carry, and what stands across it.
import type { Bit } from './bits.ts';
import type { Heard } from './heard.ts';
import { hear } from './heard.ts';
import type { Packet } from './packets.ts';
import { packetBits } from './packets.ts';
import type { CapacitorLoad, EdgeFinding, SignalEdges, Wave, WaveReadings } from './waves.ts';
import {
  combinedWave,
  delayedEdges,
  edgesIn,
  followingLoad,
  reversedEdges,
  roundedWave,
  signalEdges,
  slowestEdge,
  squareWave,
  waveReadings,
} from './waves.ts';

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

/** Below this share of the crosswise reading the same-rail reading is small, above the other it is large. Source: own-derivation. */
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

/** Everything that a figure of a gap shows. */
export interface GapPicture {
  readonly near: Wave;
  readonly far: Wave;
  readonly across: AcrossGap;
  /** Volts by which the peaks of both sides differ, >= 0. */
  readonly step: number;
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
  const [nearReads, farReads] = [waveReadings(near.wave), waveReadings(far.wave)];
  return {
    near: near.wave,
    far: far.wave,
    across,
    step: Math.abs(nearReads.peak - farReads.peak),
    readings: { near: nearReads, far: farReads, across: read },
    compared: read === undefined ? undefined : compareAcross(read.same.averaging, read.crosswise.averaging),
    heard: { near: hear(near.wave), far: hear(far.wave) },
    against: againstShare(near.wave, far.wave),
    slowest: slowestEdge(far.wave),
    capacitor: state.kind === 'rounded' ? followingLoad(far.wave, state.volts, state.farads) : undefined,
  };
}
