import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../../src/engine/quantity-text.ts';
import { gaugeArea, gaugeOf } from '../../../src/engine/units.ts';
import { GAUGE_SIZES, gaugeAtLeast } from '../../../src/engine/wiring/gauges.ts';
import type { Conductor, Make } from '../../../src/engine/wiring/wire.ts';
import {
  heatingLimit,
  METRIC_SIZES,
  ohmsPerMetre,
  RAILS,
  railOhms,
  SCALE_RAILS,
} from '../../../src/engine/wiring/wire.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

const mm2 = (area: number, make: Make = 'flexible'): Conductor => ({ area: area * 1e-6, make });
const areas = spread(0.05, 20);
const makes = fc.constantFrom<Make>('solid', 'flexible');

describe('a thicker wire', () => {
  test('never resists more than a thinner one, in the table, between its rows or beyond its ends', () => {
    fc.assert(
      fc.property(areas, areas, makes, (one, other, make) => {
        const [thin, thick] = [Math.min(one, other), Math.max(one, other)];
        fc.pre(gaugeOf(thin * 1e-6) === undefined && gaugeOf(thick * 1e-6) === undefined);
        expect(ohmsPerMetre(mm2(thick, make))).toBeLessThanOrEqual(ohmsPerMetre(mm2(thin, make)) * (1 + 1e-12));
      }),
      { numRuns: 1000 },
    );
  });

  test('never resists less than its copper alone, and flexible wire never less than solid', () => {
    fc.assert(
      fc.property(areas, (area) => {
        expect(ohmsPerMetre(mm2(area, 'solid'))).toBeGreaterThan(0.017241 / area - 1e-9);
        expect(ohmsPerMetre(mm2(area, 'flexible'))).toBeGreaterThan(ohmsPerMetre(mm2(area, 'solid')) - 1e-12);
      }),
    );
  });
});

describe('a warm wire', () => {
  test('resists 0.393 % more for each degree above 20', () => {
    near(ohmsPerMetre(mm2(1.5), 30) / ohmsPerMetre(mm2(1.5)), 1.0393, 1e-12);
    near(ohmsPerMetre(mm2(1.5), 20), 0.0133, 1e-15);
    expect(ohmsPerMetre(mm2(1.5), 0)).toBeLessThan(ohmsPerMetre(mm2(1.5)));
  });
});

describe('a wire bought by American gauge', () => {
  test('is known by its metal, so "16 AWG" gives the ohms of its own table', () => {
    const parsed = parseQuantity('16 AWG', 'area');
    const area = parsed.kind === 'span' ? parsed.span.from : 0;
    expect(gaugeOf(area)).toBe(16);
    near(ohmsPerMetre({ area, make: 'solid' }), 0.01317, 0.00001);
  });

  test('metric sizes are no gauge', () => {
    for (const area of METRIC_SIZES) expect(gaugeOf(area)).toBeUndefined();
    for (const area of [0, -1, Number.NaN]) expect(gaugeOf(area)).toBeUndefined();
  });

  test('to buy in place of a metric size has at least its metal and resists no more, and the next on sale has less', () => {
    expect(METRIC_SIZES.map(gaugeAtLeast)).toEqual([20, 18, 16, 14, 12, 10]);
    for (const area of METRIC_SIZES) {
      const gauge = gaugeAtLeast(area);
      expect(gaugeArea(gauge)).toBeGreaterThanOrEqual(area);
      for (const make of ['solid', 'flexible'] as const) {
        expect(ohmsPerMetre({ area: gaugeArea(gauge), make })).toBeLessThanOrEqual(ohmsPerMetre({ area, make }));
      }
      const thinner = GAUGE_SIZES[GAUGE_SIZES.indexOf(gauge) - 1];
      if (thinner !== undefined) expect(gaugeArea(thinner)).toBeLessThan(area);
    }
    for (const gauge of GAUGE_SIZES) expect(gaugeAtLeast(gaugeArea(gauge))).toBe(gauge);
  });

  test('the gauges on sale run from thin to thick, as the metric sizes do', () => {
    const metal = GAUGE_SIZES.map(gaugeArea);
    expect(metal).toEqual([...metal].sort((a, b) => a - b));
    expect(METRIC_SIZES).toEqual([...METRIC_SIZES].sort((a, b) => a - b));
  });
});

describe('what a wire may carry for its heat', () => {
  // A trade brochure, name withheld: 0.5 mm2 up to 5 A, 0.75 mm2 up to 7.5 A.
  test('0.5 mm2 carries 5 A, 0.75 mm2 7.5 A', () => {
    near(heatingLimit(0.5e-6), 5, 1e-12);
    near(heatingLimit(0.75e-6), 7.5, 1e-12);
  });

  test('never more than NEM 609 lets a supply for models give', () => expect(heatingLimit(4e-6)).toBe(10));
});

describe('rails', () => {
  test('are reckoned with at the most that was measured on their kind', () => {
    expect(railOhms('code-100')).toBe(0.076);
    expect(railOhms('code-83')).toBe(0.108);
  });

  test('the person may know better', () => expect(railOhms(0.05)).toBe(0.05));

  test('the two samples of code 100 differ by a third', () => {
    const { from, to } = RAILS['code-100'].ohmsPerMetre;
    near(to / from, 4 / 3, 0.01);
  });

  test('lower rails resist more, brass less', () => {
    expect(railOhms('code-70')).toBeGreaterThan(railOhms('code-83'));
    expect(railOhms('code-83')).toBeGreaterThan(railOhms('code-100'));
    expect(railOhms('code-100-brass')).toBeLessThan(RAILS['code-100'].ohmsPerMetre.from);
  });

  // A rail of the same metal resists as the inverse of its metal, about the square of its height: code 83 by that from code 100 is 0.110,
  // measured 0.108.
  test('what nobody has measured is reckoned from its height, between its neighbours', () => {
    near(0.076 * (100 / 83) ** 2, railOhms('code-83'), 0.003);
    expect(railOhms('code-55')).toBeGreaterThan(railOhms('code-70'));
    expect(railOhms('code-80')).toBeGreaterThan(railOhms('code-83'));
    expect(railOhms('code-80')).toBeLessThan(railOhms('code-70'));
  });

  // IACS from a textbook: brass 28 %, mild steel 9 to 13 %, so steel resists two to three times as much as brass and less than nickel silver.
  test('steel lies between brass and nickel silver', () => {
    const steel = railOhms('code-100-steel') / railOhms('code-100-brass');
    expect(steel).toBeGreaterThan(2);
    expect(steel).toBeLessThan(3.5);
    expect(railOhms('code-100-steel')).toBeLessThan(railOhms('code-100'));
  });

  test('the rail of a large scale resists a fraction of what an H0 rail does, and no small scale is taken to have an H0 rail', () => {
    for (const kind of ['large-nickel-silver', 'large-brass', 'large-steel'] as const)
      expect(railOhms(kind)).toBeLessThan(railOhms('code-100') / 2);
    expect(SCALE_RAILS.n.usual).not.toBe(SCALE_RAILS.h0.usual);
    for (const { usual, thinnest } of Object.values(SCALE_RAILS))
      expect(railOhms(thinnest)).toBeGreaterThanOrEqual(railOhms(usual));
  });
});
