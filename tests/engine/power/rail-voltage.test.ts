import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Scale } from '../../../src/engine/power/draws.ts';
import type { FedStage, RailVoltage } from '../../../src/engine/power/rail-voltage.ts';
import {
  judgedVolts,
  judgeRails,
  neighbourVolts,
  railVoltage,
  SCALE_RANGE,
  sags,
} from '../../../src/engine/power/rail-voltage.ts';
import { near } from '../../near.ts';
import { ac, dc } from '../../samples.ts';
import { spread } from '../../spread.ts';

const at = (loaded: number, idle = loaded): RailVoltage => ({
  idle: { from: idle, to: idle },
  loaded: { from: loaded, to: loaded },
});

describe('rails that follow a d.c. supply', () => {
  const follows = { kind: 'follows' } as const;

  test('stand at its label without load behind a switching stage, and lower by amperes times ohms', () => {
    const { idle, loaded } = railVoltage(dc(3, 15), follows, { build: 'switching', loaded: 2 });
    expect(idle).toEqual({ from: 15, to: 15 });
    near(loaded.from, 15 - 2 * 0.4, 1e-12);
    near(loaded.to, 15 - 2 * 0.07, 1e-12);
  });

  test('behind a bipolar stage lack 1 to 3 V whatever flows', () => {
    const { idle, loaded } = railVoltage(dc(3, 18), follows, { build: 'bipolar', loaded: 2 });
    expect(idle).toEqual({ from: 15, to: 17 });
    near(loaded.from, 15 - 2 * 0.2, 1e-12);
    near(loaded.to, 17 - 2 * 0.12, 1e-12);
  });

  test('are a band where nobody knows the stage: with 3 A between 13 V and 14.8 V out of 15 V', () => {
    const { idle, loaded } = railVoltage(dc(3, 15), follows);
    expect(idle).toEqual({ from: 13.6, to: 15 });
    near(loaded.from, 13, 1e-12);
    near(loaded.to, 14.79, 1e-12);
  });
});

describe('rails that are set', () => {
  test('hold the setting while the supply stands above it', () => {
    expect(railVoltage(dc(3, 19), { kind: 'set', volts: 15 })).toEqual(at(15));
  });

  test('sag with load when the supply has no headroom, by up to a volt', () => {
    const { idle, loaded } = railVoltage(dc(3, 15), { kind: 'set', volts: 15 });
    expect(idle).toEqual({ from: 14, to: 15 });
    near(loaded.from, 14, 1e-12);
    near(loaded.to, 15 - 3 * 0.07, 1e-12);
  });

  test('hold behind a transformer that stands high enough with load', () => {
    expect(railVoltage(ac(3, 16), { kind: 'converter', volts: 15 })).toEqual(at(15));
  });
});

describe('two neighbours', () => {
  const fed = (volts: number, loaded: number, more: Partial<FedStage> = {}): FedStage => ({
    supply: dc(3, volts),
    rails: { kind: 'follows' },
    load: { loaded },
    ...more,
  });

  test('on two supplies alike, built alike and loaded alike: no step at any load', () => {
    const { idle, loaded } = neighbourVolts(fed(15, 1.15), fed(15, 1.15));
    for (const { near: one, far: other } of [idle, loaded]) expect(other).toEqual(one);
  });

  test('loaded differently they differ by amperes times ohms and nothing more: 0.7 A make 0.05 V to 0.28 V', () => {
    const { near: busy, far: calm } = neighbourVolts(fed(15, 2.45), fed(15, 1.75)).loaded;
    near(calm.from - busy.to, 0.7 * 0.07, 1e-9);
    near(calm.to - busy.from, 0.7 * 0.4, 1e-9);
  });

  test('2 V between their supplies are 2 V on the rails', () => {
    const { near: low, far: high } = neighbourVolts(fed(15, 2), fed(17, 2)).loaded;
    near(high.from - low.to, 2, 1e-9);
    near(high.to - low.from, 2, 1e-9);
  });

  test('one busy and one idle: the busy one stands lower by its own load', () => {
    const { near: busy, far: idle } = neighbourVolts(fed(15, 1.15), fed(15, 1.15))['near-busy'];
    near(idle.to - busy.from, 1.15 * 0.4, 1e-9);
    near(idle.from - busy.to, 1.15 * 0.07, 1e-9);
  });

  test('built differently, each keeps its own band', () => {
    const switching = fed(15, 1, { load: { loaded: 1, build: 'switching' } });
    const bipolar = fed(15, 1, { load: { loaded: 1, build: 'bipolar' } });
    const { near: one, far: other } = neighbourVolts(switching, bipolar).idle;
    expect([one, other]).toEqual([
      { from: 15, to: 15 },
      { from: 12, to: 14 },
    ]);
  });

  test('two transformers alike and loaded alike: no step, however high they stand', () => {
    const transformer = fed(16, 1, { supply: ac(3, 16) });
    const { idle, loaded } = neighbourVolts(transformer, transformer);
    for (const { near: one, far: other } of [idle, loaded]) expect(other).toEqual(one);
  });
});

describe('whatever the supply', () => {
  test('the rails are never higher with load than without, and never below nothing', () => {
    const supplies = fc.record({
      kind: fc.constantFrom('dc', 'ac'),
      volts: spread(0.5, 60),
      amps: fc.constant(3),
    });
    const settings = fc.oneof(
      fc.constant({ kind: 'follows' } as const),
      fc.record({ kind: fc.constantFrom('set', 'converter'), volts: spread(5, 30) }),
    );
    fc.assert(
      fc.property(supplies, settings, (supply, rails) => {
        const { idle, loaded } = railVoltage(supply, rails);
        expect(idle.from).toBeLessThanOrEqual(idle.to);
        expect(loaded.from).toBeLessThanOrEqual(loaded.to);
        expect(loaded.to).toBeLessThanOrEqual(idle.to + 1e-9);
        expect(loaded.from).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('the rails against the scale', () => {
  const cases: readonly (readonly [Scale, number, number, string])[] = [
    ['h0', 16, 16, 'in-range'],
    ['h0', 14, 15, 'slow'],
    ['h0', 8, 15, 'too-low'],
    ['h0', 16, 19, 'above-range'],
    ['h0', 18, 22, 'above-range'],
    ['h0', 18, 22.5, 'over-stop'],
    ['h0', 18, 27.5, 'over-decoder'],
    ['n', 14, 14, 'in-range'],
    ['n', 14, 18, 'above-range'],
    ['n', 18, 23.5, 'over-stop'],
    ['n', 18, 24.5, 'over-decoder'],
    ['z', 10, 12, 'in-range'],
    ['z', 10, 15, 'above-range'],
    ['1', 20, 21, 'in-range'],
    ['1', 20, 23, 'over-stop'],
  ];
  test.each(cases)('%s with %d V loaded and %d V idle: %s', (scale, loaded, idle, finding) => {
    expect(judgeRails(at(loaded, idle), scale)).toBe(finding);
  });

  test('more volts than allowed count before too few with load', () => {
    expect(judgeRails(at(5, 23), 'h0')).toBe('over-stop');
  });

  test('the usual range of every scale is judged as in range', () => {
    for (const scale of ['z', 'n', 'tt', 'h0', '0', '1'] as const) {
      const { from, to } = SCALE_RANGE[scale];
      expect(judgeRails(at(from, to), scale)).toBe('in-range');
    }
  });
});

describe('the volts that are told', () => {
  test('of rails that are too low the low end under load, of all others the high end without it', () => {
    expect(judgedVolts('too-low', at(8, 12))).toBe(8);
    expect(judgedVolts('slow', at(11, 14))).toBe(11);
    expect(judgedVolts('over-stop', at(18, 23))).toBe(23);
    expect(judgedVolts('in-range', at(15, 16))).toBe(16);
  });

  test('two numbers only where they would read differently', () => {
    expect(sags(at(15, 15.04))).toBe(false);
    expect(sags(at(14.5, 15))).toBe(true);
  });
});
