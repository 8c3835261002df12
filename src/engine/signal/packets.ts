// Packets (S-9.2): their bytes, their bits, and what they tell.
import type { Bit } from './bits.ts';

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

/**
 * Steps of speed that this form of command knows, and the marks in its byte: an order to drive, forwards, and the half step. Source:
 * nmra-s-9-2.
 */
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
