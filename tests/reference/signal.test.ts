// The track signal against what is printed in the standards, and against figures worked out apart from the engine.
import { describe, expect, test } from 'vitest';
import type { Bit, Role } from '../../src/engine/signal/bits.ts';
import { judgeHalves, ONE_HALF, ZERO_HALF } from '../../src/engine/signal/bits.ts';
import { gapPicture } from '../../src/engine/signal/gap.ts';
import { DECODER_LEAST } from '../../src/engine/signal/heard.ts';
import type { Packet } from '../../src/engine/signal/packets.ts';
import {
  CUT_PACKET,
  checkByte,
  IDLE_PACKET,
  PREAMBLE,
  packetBits,
  parsePacket,
  RESET_PACKET,
  STOP_PACKET,
  speedPacket,
} from '../../src/engine/signal/packets.ts';
import {
  bitTimes,
  EDGE_RATE,
  EDGE_WINDOW,
  roundedWave,
  signalEdges,
  slowestEdge,
  squareWave,
  waveReadings,
} from '../../src/engine/signal/waves.ts';
import { allNear, near } from '../near.ts';

const us = 1e-6;
const bitsOf = (text: string): Bit[] => [...text.replaceAll(' ', '')].map((sign) => (sign === '1' ? 1 : 0));
const P14 = '11111111111111';

describe('NMRA S-9.1, version of March 2020, Table 1: bit timing', () => {
  test('t1, a 1 sent: 55 / 58 / 61 us a half; tr1, accepted: 52 / 58 / 64 us', () => {
    near(ONE_HALF.nominal, 58 * us, 1e-15);
    allNear([ONE_HALF.sent.from, ONE_HALF.sent.to], [55 * us, 61 * us], 1e-15);
    allNear([ONE_HALF.accepted.from, ONE_HALF.accepted.to], [52 * us, 64 * us], 1e-15);
  });

  test('t1d and tr1d: the halves of a 1 differ by at most 3 us sent, 6 us accepted', () => {
    allNear([ONE_HALF.differs.sent, ONE_HALF.differs.accepted], [3 * us, 6 * us], 1e-15);
  });

  test('t0, a 0 sent: 95 / 100 / 9900 us a half; tr0, accepted: 90 / 100 / 10000 us; t0total: 12000 us', () => {
    near(ZERO_HALF.nominal, 100 * us, 1e-15);
    allNear([ZERO_HALF.sent.from, ZERO_HALF.sent.to], [95 * us, 9900 * us], 1e-15);
    allNear([ZERO_HALF.accepted.from, ZERO_HALF.accepted.to], [90 * us, 10_000 * us], 1e-15);
    near(ZERO_HALF.total, 12_000 * us, 1e-15);
  });

  // First half, last half in us, then what the rows of the table say about it.
  const judged: readonly (readonly [Role, number, number, Bit | string])[] = [
    ['sent', 58, 58, 1],
    ['sent', 55, 55, 1],
    ['sent', 61, 61, 1],
    ['sent', 58, 61, 1],
    ['sent', 56, 60, 'differ'],
    ['sent', 54.9, 58, 'outside'],
    ['sent', 58, 61.1, 'outside'],
    ['sent', 100, 100, 0],
    ['sent', 95, 95, 0],
    ['sent', 94.9, 95, 'outside'],
    ['sent', 95, 9900, 0],
    ['sent', 9900, 2100, 0],
    ['sent', 9900, 2101, 'stretched'],
    ['sent', 95, 9901, 'outside'],
    ['sent', 58, 100, 'unlike'],
    ['accepted', 52, 58, 1],
    ['accepted', 64, 64, 1],
    ['accepted', 64, 58, 1],
    ['accepted', 57.9, 64, 'differ'],
    ['accepted', 51.9, 52, 'outside'],
    ['accepted', 90, 10_000, 0],
    ['accepted', 9900, 2101, 0],
    ['accepted', 89.9, 90, 'outside'],
    ['accepted', 90, 10_001, 'outside'],
    ['accepted', 64, 90, 'unlike'],
  ];
  test.each(judged)('%s, %d and %d us: %s', (role, first, last, expected) => {
    const found = judgeHalves(first * us, last * us, role);
    expect(found.kind === 'bit' ? found.bit : found.because).toBe(expected);
  });
});

describe('NMRA S-9.1, version of March 2020, Tables 2 and 3: shape', () => {
  test('from -4 to +4 V at 2.4 V/us or faster at the power station, 2.0 V/us at the decoder, which works from 7 V up', () => {
    expect(EDGE_RATE).toEqual({ sent: 2.4e6, accepted: 2e6 });
    expect(EDGE_WINDOW).toEqual({ from: -4, to: 4 });
    expect(DECODER_LEAST).toBe(7);
  });

  // 8 V at those rates take 3.33 and 4.0 us. Behind a resistance and a capacitor the way from -4 to +4 V takes
  // tau x ln((15 + 4)/(15 - 4)) = 0.546544 tau at 15 V: worked out by hand.
  test.each([
    [6.0, 'sent'],
    [6.2, 'accepted'],
    [7.2, 'accepted'],
    [7.4, 'too-slow'],
  ])('15 V rounded with %d us: %s', (timeConstant, fit) => {
    const found = slowestEdge(roundedWave(signalEdges(packetBits(IDLE_PACKET)), 15, timeConstant * us));
    if (found.kind !== 'edge') throw new Error('no edge');
    expect(found.fit).toBe(fit);
    near(found.seconds, 0.546544 * timeConstant * us, 0.006 * timeConstant * us);
  });
});

describe('NMRA S-9.2, July 2004, section A: the frame of a packet', () => {
  test('a preamble of 14 ones or more is sent, fewer than 10 are never taken, more than 12 never asked for', () => {
    expect(PREAMBLE).toEqual({ sent: 14, never: 10, always: 12 });
  });

  test('a decoder that asks for 12 reads what is sent with 14', () => {
    expect(parsePacket(packetBits(IDLE_PACKET), PREAMBLE.always)).toMatchObject({ kind: 'packet', preamble: 14 });
  });
});

const speed = (address: number, step: number | 'cut', forward = true): Packet => {
  const made = speedPacket({ address, forward, step });
  if (made.kind !== 'packet') throw new Error(made.because);
  return made;
};

// Bytes by the rules and examples of S-9.2 section B; times with halves of 58 and 100 us, added up by hand:
// 31 x 116 + 11 x 200 = 5796 and so on.
const VECTORS: readonly (readonly [string, Packet, string, number, number, number])[] = [
  ['idle', IDLE_PACKET, '0 11111111 0 00000000 0 11111111 1', 31, 11, 5796],
  ['reset', RESET_PACKET, '0 00000000 0 00000000 0 00000000 1', 15, 27, 7140],
  [
    'locomotive 55, forward, step 6 of 28 (the example of S-9.2)',
    speed(55, 6),
    '0 00110111 0 01110100 0 01000011 1',
    27,
    15,
    6132,
  ],
  ['locomotive 3, forward, step 1 of 28', speed(3, 1), '0 00000011 0 01100010 0 01100001 1', 23, 19, 6468],
  ['stop to all', STOP_PACKET, '0 00000000 0 01100000 0 01100000 1', 19, 23, 6804],
  ['no more energy to the motors, to all', CUT_PACKET, '0 00000000 0 01100001 0 01100001 1', 21, 21, 6636],
];

describe('NMRA S-9.2, July 2004, section B: packets bit by bit', () => {
  test.each(VECTORS)('%s', (_, sent, frame, ones, zeros, time) => {
    const bits = packetBits(sent);
    expect(bits).toEqual(bitsOf(P14 + frame));
    expect(bits.filter((bit) => bit === 1)).toHaveLength(ones);
    expect(bits.filter((bit) => bit === 0)).toHaveLength(zeros);
    near(bitTimes(bits).at(-1) ?? 0, time * us, 1e-12);
    expect(parsePacket(bits)).toEqual({ kind: 'packet', bytes: sent.bytes, preamble: 14, next: 42 });
  });

  test('the check byte of locomotive 55 at step 6, column by column: 00110111 with 01110100 gives 01000011', () => {
    expect(checkByte([0b0011_0111, 0b0111_0100])).toBe(0b0100_0011);
    expect(speed(55, 6).bytes).toEqual([55, 0x74, checkByte([55, 0x74])]);
  });

  // The rows of Figure 2, as CSSSS.
  test.each<[number | 'cut', string]>([
    [0, '00000'],
    ['cut', '00001'],
    [1, '00010'],
    [2, '10010'],
    [3, '00011'],
    [4, '10011'],
    [27, '01111'],
    [28, '11111'],
  ])('speed step %s is sent as %s', (step, bits) => {
    expect((speed(3, step).bytes[1] ?? 0) & 0b11111).toBe(Number.parseInt(bits, 2));
    expect((speed(3, step).bytes[1] ?? 0) >> 5).toBe(0b011);
    expect((speed(3, step, false).bytes[1] ?? 0) >> 5).toBe(0b010);
  });
});

describe('meters on the track signal, worked out by hand', () => {
  // A rectifying meter is marked in r.m.s. of a sine: pi / (2 sqrt 2) = 1.1107 times the average.
  test('an averaging meter shows 16.7 V on rails at 15 V, a fast true-r.m.s. meter 15 V', () => {
    const { averaging, rms, direct } = waveReadings(squareWave(signalEdges(packetBits(IDLE_PACKET)), 15));
    near(averaging, 16.66, 0.005);
    near(rms, 15, 1e-9);
    near(direct, 0, 1e-9);
  });

  // Ones only, T = 58 us: r.m.s. 2V sqrt(dt / T), average 2V dt / T.
  test.each([
    [1, 3.94, 0.52],
    [3, 6.82, 1.55],
    [6, 9.65, 3.1],
  ])('ones that come %d us late at 15 V: %d V r.m.s., %d V average across the gap', (late, rms, average) => {
    const ones = signalEdges(Array.from({ length: 20 }, (): Bit => 1));
    const wave = squareWave(ones, 30);
    const pulses = wave.flatMap(({ seconds, volts }, i) =>
      i % 2 === 0
        ? [
            { seconds, volts },
            { seconds: seconds + late * us, volts },
            { seconds: seconds + late * us, volts: 0 },
          ]
        : [{ seconds, volts: 0 }],
    );
    const read = waveReadings(pulses);
    near(read.rms, rms, 0.006);
    near(read.averaging / 1.1107, average, 0.006);
  });

  test('the same in a whole packet: 84 edges of 3 us in 5796 us', () => {
    const late = { kind: 'late', volts: 15, seconds: 3 * us } as const;
    const { readings, against } = gapPicture(IDLE_PACKET, 15, late, 'other-rail');
    near(readings.across?.same.rms ?? 0, 30 * Math.sqrt((84 * 3) / 5796), 1e-6);
    near(readings.across?.same.averaging ?? 0, (1.110720735 * 30 * 84 * 3) / 5796, 1e-6);
    near(against, (84 * 3) / 5796, 1e-9);
  });

  // The three kinds of joint, 15 and 13 V: |V1 - V2| in phase, V1 + V2 reversed; with joined minus sides |V1 - V2| for half of
  // the time in phase, and about one track voltage reversed.
  test('two stages at 15 and 13 V read across the gap', () => {
    const peak = (kind: 'right' | 'reversed', joined: 'other-rail' | 'negatives'): number | undefined =>
      gapPicture(IDLE_PACKET, 15, { kind, volts: 13 }, joined).readings.across?.same.peak;
    expect(peak('right', 'other-rail')).toBe(2);
    expect(peak('reversed', 'other-rail')).toBe(28);
    expect(peak('right', 'negatives')).toBe(2);
    expect(peak('reversed', 'negatives')).toBe(15);
  });
});

describe('a resistance and a capacitor, stepped through time apart from the engine', () => {
  // du/dt = (e - u) / tau in steps of 10 ns, three packets long so that the start is forgotten; then compared in the fourth.
  test.each([2, 10, 40])('%d us: the same volts at every point, the same r.m.s.', (timeConstant) => {
    const edges = signalEdges(packetBits(IDLE_PACKET));
    const [step, tau] = [1e-8, timeConstant * us];
    const count = Math.round(edges.seconds / step);
    const source = new Float64Array(count);
    let [level, next] = [-15, 0];
    for (let i = 0; i < count; i++) {
      while (next < edges.at.length && (edges.at[next] ?? 0) <= (i + 0.5) * step) {
        level = -level;
        next += 1;
      }
      source[i] = level;
    }
    const stepped = new Float64Array(count);
    let u = 0;
    for (let i = 0; i < 4 * count; i++) {
      stepped[i % count] = u;
      u += ((source[i % count] ?? 0) - u) * -Math.expm1(-step / tau);
    }
    const wave = roundedWave(edges, 15, tau);
    for (const { seconds, volts } of wave.slice(0, -1)) {
      near(volts, stepped[Math.round(seconds / step)] ?? Number.NaN, (30 * step) / tau + 1e-6, `volts at ${seconds} s`);
    }
    const rms = Math.sqrt(stepped.reduce((sum, v) => sum + v * v, 0) / count);
    near(waveReadings(wave).rms, rms, 0.002 * rms);
  });
});

describe('a suppression capacitor in the feed, from memory and worked out by hand', () => {
  // 2 V C for each edge, about 13 000 edges a second: 2 x 15 x 1e-7 x 13000 = 0.039 A.
  test.each([
    [0.1, 0.04],
    [1, 0.4],
  ])('%d uF draws about %d A', (microfarads, amps) => {
    const state = { kind: 'rounded', volts: 15, farads: microfarads * us, ohms: 1 } as const;
    near(gapPicture(speed(3, 1), 15, state, 'other-rail').capacitor?.current ?? 0, amps, 0.03 * amps);
  });

  test('0.1 uF loads the stage with 39 mA while locomotive 3 is addressed: 84 edges in 6468 us', () => {
    const state = { kind: 'rounded', volts: 15, farads: 0.1 * us, ohms: 1 } as const;
    near(gapPicture(speed(3, 1), 15, state, 'other-rail').capacitor?.current ?? 0, 3e-6 * (84 / 6468e-6), 1e-9);
  });
});
