import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Bit } from '../../../src/engine/signal/bits.ts';
import { judgeHalves } from '../../../src/engine/signal/bits.ts';
import type { Joined, SideState } from '../../../src/engine/signal/gap.ts';
import { acrossGap, againstShare, compareAcross, gapPicture, sideSignal } from '../../../src/engine/signal/gap.ts';
import { bitsIn, hear } from '../../../src/engine/signal/heard.ts';
import type { Packet } from '../../../src/engine/signal/packets.ts';
import {
  checkByte,
  IDLE_PACKET,
  meaningOf,
  packetBits,
  packetParts,
  parsePacket,
  RESET_PACKET,
  SPEED_STEPS,
  STOP_PACKET,
  speedPacket,
} from '../../../src/engine/signal/packets.ts';
import type { Wave } from '../../../src/engine/signal/waves.ts';
import {
  combinedWave,
  delayedEdges,
  reversedEdges,
  roundedWave,
  signalEdges,
  slowestEdge,
  squareWave,
  waveReadings,
} from '../../../src/engine/signal/waves.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

const us = 1e-6;
const byte = fc.integer({ min: 0, max: 255 });
const data = fc.array(byte, { minLength: 1, maxLength: 5 });
const volts = fc.integer({ min: 8, max: 22 });
const sent = (bytes: readonly number[]): Packet => ({ kind: 'packet', bytes: [...bytes, checkByte(bytes)] });
const IDLE = packetBits(IDLE_PACKET);

describe('two halves of a bit', () => {
  test('that are no lengths are named', () => {
    expect(judgeHalves(Number.NaN, 58 * us, 'sent')).toEqual({
      kind: 'no-bit',
      because: 'not-a-length',
      parts: ['first'],
    });
    expect(judgeHalves(58 * us, Number.POSITIVE_INFINITY, 'accepted')).toMatchObject({ parts: ['last'] });
    expect(judgeHalves(0, -1, 'accepted')).toMatchObject({ parts: ['first', 'last'] });
  });

  test('of which the last is outside are told apart from two that are', () => {
    expect(judgeHalves(58 * us, 75 * us, 'accepted')).toMatchObject({ because: 'outside', parts: ['last'] });
    expect(judgeHalves(75 * us, 75 * us, 'accepted')).toMatchObject({ parts: ['first', 'last'] });
  });

  test('a decoder takes every bit that a command station may send', () => {
    fc.assert(
      fc.property(fc.double({ min: 40, max: 11_000, noNaN: true }), spread(-4, 4), (a, by) => {
        const made = judgeHalves(a * us, (a + by) * us, 'sent');
        if (made.kind === 'bit') expect(judgeHalves(a * us, (a + by) * us, 'accepted')).toEqual(made);
      }),
      { numRuns: 400 },
    );
  });
});

describe('a packet', () => {
  test('of any bytes comes back out of its bits, whatever the length of the preamble', () => {
    fc.assert(
      fc.property(data, fc.integer({ min: 10, max: 40 }), (bytes, preamble) => {
        const made = sent(bytes);
        const bits = packetBits(made, preamble);
        expect(parsePacket(bits)).toEqual({ kind: 'packet', bytes: made.bytes, preamble, next: bits.length });
      }),
    );
  });

  test('with one bit of its bytes turned over is refused by the check byte', () => {
    fc.assert(
      fc.property(data, fc.nat(), fc.nat({ max: 7 }), (bytes, which, place) => {
        const made = sent(bytes);
        const at = 14 + 9 * (which % made.bytes.length) + 1 + place;
        const bits = packetBits(made).map(
          (bit, i): Bit => ((i === at && bit === 0) || (i !== at && bit === 1) ? 1 : 0),
        );
        expect(parsePacket(bits)).toEqual({
          kind: 'no-packet',
          because: 'wrong-check-byte',
          parts: [`byte-${made.bytes.length}`],
        });
      }),
    );
  });

  test('with too few ones in front, or broken off, says which part is at fault', () => {
    expect(parsePacket(packetBits(IDLE_PACKET, 9))).toEqual({
      kind: 'no-packet',
      because: 'preamble-too-short',
      parts: ['preamble'],
    });
    expect(parsePacket(packetBits(IDLE_PACKET, 11), 12)).toMatchObject({ because: 'preamble-too-short' });
    expect(parsePacket([1, 1, 1])).toMatchObject({ because: 'no-start-bit', parts: ['start-bit'] });
    expect(parsePacket([])).toMatchObject({ because: 'no-start-bit' });
    expect(parsePacket(IDLE.slice(0, -1))).toMatchObject({ because: 'cut-off', parts: ['end-bit'] });
    expect(parsePacket(IDLE.slice(0, 30))).toMatchObject({ because: 'cut-off', parts: ['byte-2'] });
    expect(parsePacket([...IDLE.slice(0, 23), 1])).toMatchObject({ because: 'too-few-bytes', parts: ['byte-2'] });
  });

  test('is found behind the rest of another one', () => {
    const rest = packetBits(RESET_PACKET).slice(20);
    expect(parsePacket([...rest, ...IDLE])).toMatchObject({ kind: 'packet', bytes: [255, 0, 255], preamble: 15 });
  });

  test('has its bytes where its parts say', () => {
    const parts = packetParts(STOP_PACKET);
    expect(parts.map(({ part }) => part)).toEqual(['preamble', 'byte', 'byte', 'check']);
    const bits = packetBits(STOP_PACKET);
    const read = parts.slice(1).map(({ from, to }) => Number.parseInt(bits.slice(from, to).join(''), 2));
    expect(read).toEqual(STOP_PACKET.bytes);
  });
});

describe('a speed command', () => {
  test('means the same locomotive, direction and step when it is read again', () => {
    const command = fc.record({
      address: fc.integer({ min: 1, max: 127 }),
      forward: fc.boolean(),
      step: fc.oneof(fc.integer({ min: 0, max: SPEED_STEPS }), fc.constant('cut' as const)),
    });
    fc.assert(
      fc.property(command, (one) => {
        const made = speedPacket(one);
        if (made.kind !== 'packet') throw new Error(made.because);
        expect(meaningOf(made.bytes)).toEqual({ kind: 'speed', ...one });
      }),
    );
  });

  test('for an address or a step that is not there is refused by name', () => {
    for (const address of [0, 128, 3.5, Number.NaN]) {
      const refused = { kind: 'no-packet', because: 'no-such-address', parts: ['address'] };
      expect(speedPacket({ address, forward: true, step: 1 })).toEqual(refused);
    }
    for (const step of [-1, 29, 0.5]) {
      const refused = { kind: 'no-packet', because: 'no-such-step', parts: ['step'] };
      expect(speedPacket({ address: 3, forward: true, step })).toEqual(refused);
    }
  });

  test('is told apart from idle, reset, stop and what is not built here', () => {
    expect(meaningOf(IDLE_PACKET.bytes).kind).toBe('idle');
    expect(meaningOf(RESET_PACKET.bytes).kind).toBe('reset');
    expect(meaningOf(STOP_PACKET.bytes).kind).toBe('stop');
    for (const bytes of [[3, 0x80, 0x83], [200, 0x62, 0xaa], [3, 0x3f, 0x80, 0xbc], []]) {
      expect(meaningOf(bytes)).toEqual({ kind: 'other' });
    }
  });
});

describe('the signal between two rails', () => {
  test('has no d.c. in it, whatever is sent', () => {
    fc.assert(
      fc.property(data, volts, (bytes, v) => {
        near(waveReadings(squareWave(signalEdges(packetBits(sent(bytes))), v)).direct, 0, 1e-9);
      }),
    );
  });

  test('has d.c. in it when the first halves of zeros are stretched', () => {
    const edges = { before: -1, at: [0, 300 * us], seconds: 400 * us } as const;
    near(waveReadings(squareWave(edges, 15)).direct, 7.5, 1e-9);
  });

  test('is read by a decoder that stands on the rails either way round, early or late', () => {
    fc.assert(
      fc.property(data, volts, spread(0, 5e-3), (bytes, v, late) => {
        const made = sent(bytes);
        const edges = delayedEdges(signalEdges(packetBits(made)), late);
        const heard = { kind: 'packet', bytes: made.bytes };
        expect(hear(squareWave(edges, v))).toEqual(heard);
        expect(hear(squareWave(reversedEdges(edges), v))).toEqual(heard);
      }),
    );
  });

  test('says nothing where it has no volts, no edges or too few volts', () => {
    const edges = signalEdges(IDLE);
    expect(hear(squareWave({ ...edges, at: [], before: 0 }, 15))).toMatchObject({ because: 'no-volts' });
    expect(hear(squareWave({ ...edges, at: [] }, 15))).toMatchObject({ because: 'no-edges' });
    expect(hear(squareWave(edges, 6.9))).toMatchObject({ kind: 'nothing', because: 'too-few-volts' });
    expect(hear([])).toMatchObject({ because: 'no-volts' });
  });

  test('is garbled where its halves make no bits, or its bits no packet', () => {
    expect(hear(squareWave(signalEdges(IDLE, { one: 75 * us, zero: 100 * us }), 15))).toMatchObject({
      because: 'halves',
    });
    expect(hear(squareWave(signalEdges([...IDLE.slice(0, 20), ...IDLE.slice(21)]), 15))).toMatchObject({
      kind: 'garbled',
    });
    expect(hear(squareWave(signalEdges(packetBits(STOP_PACKET, 8)), 15))).toEqual({
      kind: 'garbled',
      because: 'preamble-too-short',
    });
  });
});

describe('edges that come late', () => {
  test('come back after a whole packet', () => {
    const edges = signalEdges(IDLE);
    const around = delayedEdges(delayedEdges(edges, 0.4 * edges.seconds), 0.6 * edges.seconds);
    expect(around.before).toBe(edges.before);
    for (const [i, at] of edges.at.entries()) near(around.at[i] ?? -1, at, 1e-12);
  });

  test('put at each moment on the rails what stood there so much earlier', () => {
    const edges = signalEdges(IDLE);
    const standing = ({ before, at, seconds }: typeof edges, time: number): number => {
      const now = (time + seconds) % seconds;
      return at.filter((edge) => edge <= now).length % 2 === 0 ? before : -before;
    };
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5795 }), fc.integer({ min: 0, max: 5795 }), (late, time) => {
        // Half a microsecond off the edges, which lie on whole ones.
        const moment = (time + 0.5) * us;
        expect(standing(delayedEdges(edges, late * us), moment)).toBe(standing(edges, moment - late * us));
      }),
      { numRuns: 300 },
    );
  });

  test('keep their bits', () => {
    fc.assert(
      fc.property(data, fc.nat({ max: 9000 }), (bytes, late) => {
        const bits = packetBits(sent(bytes));
        const found = bitsIn(delayedEdges(signalEdges(bits), late * us)) ?? [];
        expect([...found].sort()).toEqual([...bits].sort());
        expect([...found, ...found].join('')).toContain(bits.slice(14).join(''));
      }),
    );
  });
});

describe('a capacitor across the rails', () => {
  test('leaves no d.c. behind and never passes the peak', () => {
    fc.assert(
      fc.property(data, volts, fc.integer({ min: 1, max: 500 }), (bytes, v, tau) => {
        const read = waveReadings(roundedWave(signalEdges(packetBits(sent(bytes))), v, tau * us));
        near(read.direct, 0, 0.01);
        expect(read.peak).toBeLessThanOrEqual(v + 1e-9);
      }),
    );
  });

  test.each([40, 5000])('of %d us ends where it began', (timeConstant) => {
    const wave = roundedWave(signalEdges(IDLE), 15, timeConstant * us);
    near(wave.at(-1)?.volts ?? 0, wave[0]?.volts ?? 1, 1e-9);
  });

  test('the larger, the slower the edges and the lower the r.m.s.', () => {
    const rows = [0.5, 1, 2, 4, 8].map((tau) => {
      const wave = roundedWave(signalEdges(IDLE), 15, tau * us);
      const edge = slowestEdge(wave);
      return { seconds: edge.kind === 'edge' ? edge.seconds : Number.NaN, rms: waveReadings(wave).rms };
    });
    for (const [i, row] of rows.slice(1).entries()) {
      expect(row.seconds).toBeGreaterThan(rows[i]?.seconds ?? Number.NaN);
      expect(row.rms).toBeLessThan(rows[i]?.rms ?? Number.NaN);
    }
  });

  test('of an ordinary size behind good wiring does no visible harm; a large one behind a poor joint spoils the edges', () => {
    const far = (farads: number, ohms: number) =>
      gapPicture(IDLE_PACKET, 15, { kind: 'rounded', volts: 15, farads, ohms }, 'other-rail');
    expect(far(0.1 * us, 1).heard.far).toEqual({ kind: 'packet', bytes: [255, 0, 255] });
    expect(far(1 * us, 10).heard.far).toMatchObject({ kind: 'doubtful', because: 'slow-edges' });
    expect(far(10 * us, 10).heard.far.kind).toBe('garbled');
    expect(far(10 * us, 10).slowest).toEqual({ kind: 'no-edge', because: 'turns-back' });
  });

  test('draws what full turns say while edges are sharp, and less where it never turns over fully', () => {
    const drawn = (farads: number, ohms: number): number =>
      gapPicture(IDLE_PACKET, 15, { kind: 'rounded', volts: 15, farads, ohms }, 'other-rail').capacitor?.current ?? 0;
    const full = (farads: number): number => 2 * 15 * farads * (84 / 5796e-6);
    near(drawn(0.1 * us, 1), full(0.1 * us), 1e-3 * full(0.1 * us));
    expect(drawn(5 * us, 20)).toBeLessThan(0.4 * full(5 * us));
    // Never more than the resistance lets through with both volts in a row.
    expect(drawn(1e-3, 20)).toBeLessThan(30 / 20);
  });

  test('of no size changes nothing', () => {
    expect(roundedWave(signalEdges(IDLE), 15, 0)).toEqual(squareWave(signalEdges(IDLE), 15));
  });
});

const same = (state: SideState, joined: Joined = 'other-rail', v = 15): Wave => {
  const across = acrossGap(sideSignal(IDLE, { kind: 'right', volts: v }), sideSignal(IDLE, state), joined);
  if (across.kind !== 'across') throw new Error(across.because);
  return across.same;
};

describe('across a gap', () => {
  test('equal volts in phase leave exactly nothing, whatever is sent and however the sides are joined', () => {
    fc.assert(
      fc.property(data, volts, fc.constantFrom<Joined>('other-rail', 'negatives'), (bytes, v, joined) => {
        const { across, readings } = gapPicture(sent(bytes), v, { kind: 'right', volts: v }, joined);
        if (across.kind !== 'across') throw new Error(across.because);
        expect(across.same.length).toBeGreaterThan(0);
        for (const point of across.same) expect(Math.abs(point.volts)).toBe(0);
        expect(readings.across?.same).toEqual({ direct: 0, averaging: 0, rms: 0, peak: 0 });
      }),
    );
  });

  test('reversed sides of equal volts stand exactly twice as high with the other rail joined', () => {
    fc.assert(
      fc.property(data, volts, (bytes, v) => {
        const bits = packetBits(sent(bytes));
        const near = sideSignal(bits, { kind: 'right', volts: v });
        const across = acrossGap(near, sideSignal(bits, { kind: 'reversed', volts: v }), 'other-rail');
        if (across.kind !== 'across') throw new Error(across.because);
        expect(across.same.map((point) => point.volts)).toEqual(near.wave.map((point) => 2 * point.volts));
      }),
    );
  });

  test('with joined minus sides reversed rails read about one track voltage, and none crosswise', () => {
    const { readings } = gapPicture(IDLE_PACKET, 15, { kind: 'reversed', volts: 15 }, 'negatives');
    near(readings.across?.same.rms ?? 0, 15, 1e-9);
    expect(readings.across?.crosswise.peak).toBe(0);
  });

  test('nothing can be read while both sides float', () => {
    const { across, readings, compared } = gapPicture(IDLE_PACKET, 15, { kind: 'right', volts: 15 }, 'nothing');
    expect(across).toEqual({ kind: 'no-reading', because: 'floating', parts: ['same', 'crosswise'] });
    expect(readings.across).toBeUndefined();
    expect(compared).toBeUndefined();
  });

  test('a late side leaves pulses of twice the volts, as often up as down', () => {
    const read = waveReadings(same({ kind: 'late', volts: 15, seconds: 3 * us }));
    expect(read.peak).toBe(30);
    near(read.direct, 0, 1e-9);
  });

  test('a side that holds plain d.c. shows it on the d.c. range, a dead one does not', () => {
    near(waveReadings(same({ kind: 'held', volts: 15 })).direct, 15, 1e-9);
    near(waveReadings(same({ kind: 'dead' })).direct, 0, 1e-9);
  });

  test('the two readings of one meter tell right, reversed and no signal apart, for sides within 0.6 and 1.4 of each other', () => {
    const joints = fc.constantFrom<Joined>('other-rail', 'negatives');
    const share = fc.double({ min: 0.6, max: 1.4, noNaN: true });
    fc.assert(
      fc.property(volts, share, joints, (v, part, joined) => {
        const compared = (state: SideState) => gapPicture(IDLE_PACKET, v, state, joined).compared;
        expect(compared({ kind: 'right', volts: v * part })).toBe('small');
        expect(compared({ kind: 'late', volts: v, seconds: 10 * us })).toBe('small');
        expect(compared({ kind: 'reversed', volts: v * part })).toBe('large');
        expect(compared({ kind: 'held', volts: v * part })).toBe('alike');
        expect(compared({ kind: 'dead' })).toBe('alike');
      }),
      { numRuns: 20 },
    );
  });

  test('no reading on either is no comparison', () => expect(compareAcross(0, 0)).toBe('nothing'));

  test('the share of time against each other: none in phase, all reversed, half against plain d.c.', () => {
    const wave = (state: SideState): Wave => sideSignal(IDLE, state).wave;
    const right = wave({ kind: 'right', volts: 15 });
    expect(againstShare(right, wave({ kind: 'right', volts: 12 }))).toBe(0);
    near(againstShare(right, wave({ kind: 'reversed', volts: 15 })), 1, 1e-12);
    near(againstShare(right, wave({ kind: 'held', volts: 15 })), 0.5, 1e-12);
    expect(againstShare(right, wave({ kind: 'dead' }))).toBe(0);
  });
});

describe('two lines combined', () => {
  test('agree with the two read apart at every moment', () => {
    const line = fc
      .array(fc.tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: -20, max: 20 })), {
        minLength: 2,
        maxLength: 12,
      })
      .map((points) => {
        let seconds = 0;
        const wave = points.map(([step, v]) => {
          seconds += step;
          return { seconds, volts: v };
        });
        return [{ seconds: 0, volts: 0 }, ...wave, { seconds: 1000, volts: 5 }];
      });
    fc.assert(
      fc.property(line, line, (one, other) => {
        const sum = combinedWave(one, other, (a, b) => a + b);
        near(waveReadings(sum).direct, waveReadings(one).direct + waveReadings(other).direct, 1e-9);
        expect(sum[0]?.seconds).toBe(0);
        expect(sum.at(-1)?.seconds).toBe(1000);
      }),
    );
  });
});

test('the step of a gap is the difference of the peaks of both sides, and nothing where they are alike', () => {
  const step = (far: number): number => gapPicture(IDLE_PACKET, 15, { kind: 'right', volts: far }, 'other-rail').step;
  expect([15, 17, 12].map(step)).toEqual([0, 2, 3]);
});
