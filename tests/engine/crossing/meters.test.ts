import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { oneLamp, readTwoLamps, twoLamps } from '../../../src/engine/crossing/lamps.ts';
import type { GapMeasurement, GapReading, GapReadings, MeterKind } from '../../../src/engine/crossing/meters.ts';
import { comparePhase, gapReadings, meterShows } from '../../../src/engine/crossing/meters.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

const measured = (more: Partial<GapMeasurement> = {}): GapReadings => {
  const found = gapReadings({
    nearVolts: 15,
    farVolts: 15,
    phase: 'in-phase',
    tie: 'other-pair',
    meter: 'true-rms',
    ...more,
  });
  if (found.kind !== 'readings') throw new Error(`no readings: ${found.because}`);
  return found;
};
const volts = (reading: GapReading): number => (reading.kind === 'shows' ? reading.volts : Number.NaN);

describe('a square wave of 15 V', () => {
  const wave = [
    { volts: 15, share: 0.5 },
    { volts: -15, share: 0.5 },
  ];
  test('shows 16.7 V on an averaging meter, eleven per cent high', () => {
    near(volts(meterShows('averaging', wave)), 16.7, 0.05);
    near(volts(meterShows('averaging', wave)) / 15, 1.111, 0.001);
  });
  test('shows 15 V on one of true r.m.s.', () => near(volts(meterShows('true-rms', wave)), 15, 1e-12));
});

describe('two sides in phase that switch a little apart', () => {
  // Worked out for this site: 2 V across the gap for the skew of every half bit.
  test.each([
    [1, 58, 3.94, 0.52],
    [3, 58, 6.82, 1.55],
    [6, 58, 9.65, 3.1],
    [3, 100, 5.2, 0.9],
  ])('%d us in halves of %d us at 15 V: %d V r.m.s., %d V on average', (skew, half, rms, average) => {
    const input = { skew: skew * 1e-6, halfBit: half * 1e-6 };
    near(volts(measured(input).sameRail), rms, 0.005);
    near(volts(measured({ ...input, meter: 'averaging' }).sameRail) / 1.1107, average, 0.005);
  });

  test('3 us show 1.72 V on an averaging meter', () => {
    near(volts(measured({ skew: 3e-6, meter: 'averaging' }).sameRail), 1.72, 0.005);
  });

  test('1 us means nothing on the cheapest, whose readings begin at about 1 V', () => {
    expect(measured({ skew: 1e-6, meter: 'cheapest' }).sameRail).toEqual({ kind: 'means-nothing', below: 1 });
    expect(measured({ skew: 3e-6, meter: 'cheapest' }).sameRail.kind).toBe('shows');
  });
});

describe('rail to rail across the gap', () => {
  test('other pair joined: the difference in phase, the sum reversed', () => {
    near(volts(measured({ farVolts: 14 }).sameRail), 1, 1e-12);
    near(volts(measured({ farVolts: 14, phase: 'reversed' }).sameRail), 29, 1e-12);
  });

  test('joined negatives: the difference half of the time in phase, about one rail voltage reversed', () => {
    const tie = 'joined-negatives';
    near(volts(measured({ tie, farVolts: 14 }).sameRail), Math.SQRT1_2, 1e-12);
    near(volts(measured({ tie, phase: 'reversed' }).sameRail), 15, 1e-12);
    near(volts(measured({ tie }).diagonal), 15, 1e-12);
    near(volts(measured({ tie, phase: 'reversed' }).diagonal), 0, 1e-12);
  });

  test('both floating: no reading means anything', () => {
    for (const phase of ['in-phase', 'reversed'] as const) {
      const found = measured({ tie: 'floating', phase });
      expect([found.sameRail.kind, found.diagonal.kind]).toEqual(['floats', 'floats']);
      expect(found.comparison).toEqual({ kind: 'cannot-tell', because: 'nothing-ties-the-sides' });
      expect(volts(found.near)).toBe(15);
    }
  });

  test('a dead far part may read near 0 as well, which proves nothing', () => {
    const found = measured({ farDead: true });
    expect(found.sameRail).toEqual({ kind: 'between', volts: { from: 0, to: 15 } });
    expect(volts(found.diagonal)).toBe(15);
    expect(found.comparison).toEqual({ kind: 'cannot-tell', because: 'dead-side' });
    expect(comparePhase(0, 15)).toEqual({ kind: 'in-phase' });
    expect(comparePhase(0, 15, [15, 0])).toEqual({ kind: 'cannot-tell', because: 'dead-side' });
  });

  test('volts that are no number, or none, are named', () => {
    const bad = {
      nearVolts: 15,
      farVolts: Number.NaN,
      phase: 'reversed',
      tie: 'other-pair',
      meter: 'averaging',
    } as const;
    expect(gapReadings(bad)).toEqual({ kind: 'no-solution', because: 'not-a-number', parts: ['far.volts'] });
    expect(gapReadings({ ...bad, farVolts: 0 })).toMatchObject({ because: 'not-positive' });
  });
});

describe('same rail against diagonal, with the same meter', () => {
  const across = (ratio: readonly [number, number], mostSkew: number) =>
    fc.record({
      nearVolts: fc.double({ min: 9, max: 22, noNaN: true }),
      ratio: fc.double({ min: ratio[0], max: ratio[1], noNaN: true }),
      phase: fc.constantFrom('in-phase', 'reversed'),
      tie: fc.constantFrom('other-pair', 'joined-negatives'),
      meter: fc.constantFrom<MeterKind>('averaging', 'true-rms', 'cheapest'),
      skew: spread(0, mostSkew),
    });
  test('tells in phase from reversed, with any meter, at any usual volts and skew', () => {
    fc.assert(
      fc.property(across([0.85, 1.2], 1.5e-6), ({ ratio, ...input }) => {
        const found = measured({ ...input, farVolts: input.nearVolts * ratio });
        expect(found.comparison).toEqual({ kind: input.phase });
      }),
      { numRuns: 400 },
    );
  });

  test('with very unlike volts and a long skew it may not tell, but it never tells the wrong one', () => {
    fc.assert(
      fc.property(across([0.6, 1.6], 6e-6), ({ ratio, ...input }) => {
        const { comparison } = measured({ ...input, farVolts: input.nearVolts * ratio });
        expect(['cannot-tell', input.phase]).toContain(comparison.kind);
      }),
      { numRuns: 400 },
    );
  });

  test("the meter's own error drops out", () => {
    const reading = spread(2, 40);
    fc.assert(
      fc.property(reading, reading, fc.double({ min: 1, max: 3, noNaN: true }), (same, diagonal, factor) => {
        expect(comparePhase(same * factor, diagonal * factor)).toEqual(comparePhase(same, diagonal));
      }),
    );
  });

  test.each([
    [0.4, 0.3, 'both-near-nothing'],
    [20, 22, 'too-alike'],
    [Number.NaN, 15, 'not-a-number'],
    [-1, 15, 'not-a-number'],
  ])('%d V and %d V: cannot tell, %s', (same, diagonal, because) => {
    expect(comparePhase(same, diagonal)).toEqual({ kind: 'cannot-tell', because });
  });

  test('readings under a fifth of the rail volts are no readings', () => {
    expect(comparePhase(0.2, 2.5, [15, 15])).toEqual({ kind: 'cannot-tell', because: 'both-near-nothing' });
  });
});

describe('two equal lamps, one across each gap', () => {
  const look = (...row: Parameters<typeof twoLamps>): readonly [string, string] => {
    const found = twoLamps(...row);
    if (found.kind !== 'lamps') throw new Error(`no lamps: ${found.because}`);
    return [found.lookA, found.lookB];
  };

  test.each(['floating', 'joined-negatives', 'common-rail'] as const)(
    'in phase, %s: dark or a faint glow',
    (reference) => {
      for (const farVolts of [15, 14]) {
        for (const one of look(15, farVolts, 'in-phase', reference)) expect(['dark', 'faint']).toContain(one);
      }
    },
  );

  test('reversed, floating or joined negatives: both light, about the rail voltage each', () => {
    for (const reference of ['floating', 'joined-negatives'] as const) {
      expect(look(15, 15, 'reversed', reference)).toEqual(['lit', 'lit']);
      expect(twoLamps(15, 15, 'reversed', reference)).toMatchObject({ railA: 15 });
    }
  });

  test('reversed with a joined rail: that one dark, the other over-bright', () => {
    expect(look(15, 15, 'reversed', 'common-rail')).toEqual(['over-bright', 'dark']);
    expect(readTwoLamps('over-bright', 'dark')).toEqual({ kind: 'reversed-and-joined', rail: 'b' });
    expect(readTwoLamps('faint', 'over-bright')).toEqual({ kind: 'reversed-and-joined', rail: 'a' });
  });

  test('a reading of what they show gives back what was there', () => {
    for (const phase of ['in-phase', 'reversed'] as const) {
      for (const reference of ['floating', 'joined-negatives'] as const) {
        const found = twoLamps(15, 14, phase, reference);
        if (found.kind !== 'lamps') throw new Error('no lamps');
        expect(readTwoLamps(found.lookA, found.lookB)).toEqual({ kind: phase });
      }
    }
  });

  test('one dark and one plainly lit tells nothing', () => {
    expect(readTwoLamps('dark', 'lit')).toEqual({ kind: 'cannot-tell', because: 'only-one-lit' });
    expect(readTwoLamps('lit', 'faint').kind).toBe('cannot-tell');
  });

  test('a single lamp stays dark between floating stages even when they are reversed: a false good', () => {
    expect(oneLamp(15, 15, 'reversed', 'floating')).toBe('dark');
    expect(oneLamp(15, 15, 'in-phase', 'floating')).toBe('dark');
    expect(oneLamp(15, 15, 'reversed', 'joined-negatives')).toBe('lit');
    expect(oneLamp(15, 15, 'reversed', 'common-rail')).toBe('over-bright');
  });

  test('volts that are no number are named', () => {
    const problem = { kind: 'no-solution', because: 'not-a-number', parts: ['near.volts'] };
    expect(twoLamps(Number.NaN, 15, 'reversed', 'floating')).toEqual(problem);
    expect(oneLamp(Number.NaN, 15, 'reversed', 'floating')).toEqual(problem);
  });
});
