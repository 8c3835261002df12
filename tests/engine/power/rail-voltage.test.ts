import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Scale } from '../../../src/engine/power/draws.ts';
import type { RailVoltage } from '../../../src/engine/power/rail-voltage.ts';
import { judgedVolts, judgeRails, railVoltage, SCALE_RANGE, sags } from '../../../src/engine/power/rail-voltage.ts';
import { near } from '../../near.ts';
import { ac, dc } from '../../samples.ts';

const at = (loaded: number, idle = loaded): RailVoltage => ({
  idle: { from: idle, to: idle },
  loaded: { from: loaded, to: loaded },
});

describe('rails that follow a d.c. supply', () => {
  test('stand a little below its label, and lower with load', () => {
    const { idle, loaded } = railVoltage(dc(3, 15), { kind: 'follows' });
    near(idle.to, 14.7, 1e-12);
    near(loaded.from, 13.5, 1e-12);
  });
});

describe('rails that are set', () => {
  test('hold the setting while the supply stands above it', () => {
    expect(railVoltage(dc(3, 19), { kind: 'set', volts: 15 })).toEqual(at(15));
  });

  test('sag with load when the supply has no headroom', () => {
    const { idle, loaded } = railVoltage(dc(3, 15), { kind: 'set', volts: 15 });
    near(idle.from, 14.7, 1e-12);
    near(loaded.from, 14, 1e-12);
  });

  test('hold behind a transformer that stands high enough with load', () => {
    expect(railVoltage(ac(3, 16), { kind: 'converter', volts: 15 })).toEqual(at(15));
  });
});

describe('whatever the supply', () => {
  test('the rails are never higher with load than without, and never below nothing', () => {
    const supplies = fc.record({
      kind: fc.constantFrom('dc', 'ac'),
      volts: fc.double({ min: 0.5, max: 60, noNaN: true }),
      amps: fc.constant(3),
    });
    const settings = fc.oneof(
      fc.constant({ kind: 'follows' } as const),
      fc.record({ kind: fc.constantFrom('set', 'converter'), volts: fc.double({ min: 5, max: 30, noNaN: true }) }),
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
