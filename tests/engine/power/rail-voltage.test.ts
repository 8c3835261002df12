import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Scale } from '../../../src/engine/power/draws.ts';
import type { FedStage, RailVoltage } from '../../../src/engine/power/rail-voltage.ts';
import {
  dcVoltsFor,
  highestRails,
  isAboveUsual,
  isCommonVolts,
  judgedVolts,
  judgeRails,
  loadedLink,
  neighbourVolts,
  railFromConverter,
  railsTooHigh,
  railsTooLow,
  railVoltage,
  SCALE_RANGE,
  sags,
  stageOhms,
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

// The volts with load were worked out with ngspice (tests/reference/alternating-supply.test.ts); the sums here are by hand.
describe('behind a transformer and its rectifier', () => {
  const label = 16;

  test('with all that it gives, 16 V make 17.5 to 19.4 V, and one of next to no volts makes none', () => {
    near(loadedLink(label).from, 1.22 * 16 - 2, 1e-9);
    near(loadedLink(label).to, 1.335 * 16 - 2, 1e-9);
    expect(loadedLink(1)).toEqual({ from: 0, to: 0 });
  });

  test('without load they stand up to a fifth higher, and a tenth more where the mains are high: 22 to 28 V', () => {
    const { idle } = railVoltage(ac(3, label), { kind: 'follows' }, { build: 'switching' });
    near(idle.from, Math.SQRT2 * 16 * 1.05 - 1.6, 1e-9);
    near(idle.to, Math.SQRT2 * 16 * 1.3 - 1.6, 1e-9);
  });

  test('at full load they are what the rectifier leaves, less amperes times the ohms of the stage', () => {
    const full = 3 / 1.8;
    const { loaded } = railVoltage(ac(3, label), { kind: 'follows' }, { build: 'switching' });
    near(loaded.from, 1.22 * 16 - 2 - full * 0.3, 1e-9);
    near(loaded.to, 1.335 * 16 - 2 - full * 0.05, 1e-9);
    expect(railVoltage(ac(3, label), { kind: 'follows' }, { build: 'switching', loaded: 9 }).loaded.to).toBeLessThan(
      loaded.to,
    );
  });

  test('at a quarter of it they have fallen by a quarter of the way at least, by half of it at most', () => {
    const quarter = 3 / 1.8 / 4;
    const { loaded } = railVoltage(ac(3, label), { kind: 'follows' }, { build: 'switching', loaded: quarter });
    // Highest: one that is soft, on high mains. Lowest: a stiff one, which stands lower without load.
    const [soft, stiff] = [Math.SQRT2 * 16 * 1.3 - 1.6, Math.SQRT2 * 16 * 1.05 - 1.6];
    near(loaded.to, soft - (soft - 17.52) / 4 - quarter * 0.05, 1e-9);
    near(loaded.from, stiff - (stiff - 19.36) / 2 - quarter * 0.3, 1e-9);
  });

  test('a set output needs a volt above it: 16 V bear 15 V loaded, 12 V do not', () => {
    expect(railVoltage(ac(3, 16), { kind: 'set', volts: 15 }).loaded).toEqual({ from: 15, to: 15 });
    near(railVoltage(ac(3, 12), { kind: 'set', volts: 15 }, { build: 'switching' }).loaded.from, 1.22 * 12 - 3, 1e-9);
  });
});

describe('what a short circuit finds before the wires', () => {
  test('is the supply and the stage: of both the least and the most', () => {
    const { from, to } = stageOhms('switching');
    near(from, 0.02 + 0.05, 1e-12);
    near(to, 0.1 + 0.3, 1e-12);
    expect(stageOhms('bipolar').from).toBeGreaterThan(from);
    expect(stageOhms()).toEqual(stageOhms('switching'));
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

// The limits are of NMRA S-9.1, the usual ranges of RCN-210 (tests/reference/standards.test.ts): at the border itself nothing is passed yet.
describe('the rails at the border', () => {
  test('22 V are allowed and 22.1 V are not; decoders for small scales survive 24 V', () => {
    expect(judgeRails(at(16, 22), 'h0')).toBe('above-range');
    expect(judgeRails(at(16, 24), 'n')).toBe('over-stop');
    expect(judgeRails(at(16, 27), 'h0')).toBe('over-stop');
    expect(judgeRails(at(8.5, 15), 'h0')).toBe('slow');
    expect(railsTooHigh(at(22, 22), 'h0')).toBe('no');
    expect(railsTooHigh(at(22.1, 22.1), 'h0')).toBe('surely');
    const perhaps: RailVoltage = { idle: { from: 21, to: 23 }, loaded: { from: 20, to: 21 } };
    expect(railsTooHigh(perhaps, 'h0')).toBe('perhaps');
  });

  test('up to a volt above its range a scale is used to: 19 V in H0, not 19.1 V', () => {
    expect([18, 19, 19.1].map((volts) => isAboveUsual(volts, 'h0'))).toEqual([false, false, true]);
  });

  test('rails are of no use where they fall below 8.5 V and are below the range even at best', () => {
    expect(railsTooLow(at(8, 14), 'h0')).toBe(true);
    expect(railsTooLow(at(8.5, 14), 'h0')).toBe(false);
    expect(railsTooLow(at(8, 15), 'h0')).toBe(false);
  });
});

// Common practice, no source.
describe('which d.c. supply to get', () => {
  test('puts the middle of the range of the scale on the rails, within what the unit takes', () => {
    expect(dcVoltsFor('h0', 24)).toBe(16);
    expect(dcVoltsFor('h0', 15)).toBe(15);
    expect(dcVoltsFor('n', 20)).toBe(15);
    expect(dcVoltsFor('n', 14)).toBe(12);
    expect(dcVoltsFor('z', 20)).toBe(12);
    expect(dcVoltsFor('1', 24)).toBe(20);
  });

  test('none where the unit takes less than the scale asks for', () => {
    expect(dcVoltsFor('h0', 14)).toBeUndefined();
    expect(dcVoltsFor('1', 17)).toBeUndefined();
  });

  test('laptops make 19 V common, nothing makes 17 V so', () => {
    expect([15, 16, 17, 18, 19].map(isCommonVolts)).toEqual([true, true, false, true, true]);
  });

  test('a unit may step 18 V down to the low end of the scale, not 16 V, and not a.c.', () => {
    expect(railFromConverter(dc(3, 18), 'h0')).toEqual({ kind: 'converter', volts: 15 });
    expect(railFromConverter(dc(3, 15), 'h0')).toBeUndefined();
    expect(railFromConverter(ac(3, 18), 'h0')).toBeUndefined();
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

describe('what no setting lifts the rails above', () => {
  test('is the label of a d.c. supply, and what stands behind the rectifier of a transformer without load on high mains', () => {
    expect(highestRails(dc(3, 12))).toBe(12);
    // 12 V a.c.: peak, no-load rise of a soft one and mains 10 % high, less the rectifier (practice: 1.41 V (1 + rise + 0.1) - 1.6).
    const high = highestRails(ac(3, 12));
    expect(high).toBeGreaterThan(12 * Math.SQRT2);
    expect(high).toBe(railVoltage(ac(3, 12), { kind: 'set', volts: 99 }).idle.to);
  });
});
