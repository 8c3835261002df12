import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inMeasures, measureParts } from '../../src/components/words/measured.ts';
import { Numbers } from '../../src/components/words/numbers.ts';
import { ohmsPerMetre } from '../../src/engine/index.ts';
import { parseQuantity } from '../../src/engine/quantity-text.ts';
import { gaugeArea } from '../../src/engine/units.ts';
import { METRIC_SIZES, RAILS, railOhms } from '../../src/engine/wiring/wire.ts';

const WORDS = { 'unit-ohm': 'ohm', 'share-least': 'less than {share}' };
const METRIC = new Numbers('en', 'metric', WORDS);
const FEET = new Numbers('en', 'feet-and-gauge', WORDS);
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const metric = (text: string): string => plain(inMeasures(text, METRIC));
const feet = (text: string): string => plain(inMeasures(text, FEET));

describe('a length', () => {
  test.each<[number, string, string]>([
    [0.001, '0 m', '0.04 in'],
    [0.05, '0.05 m', '1.97 in'],
    [0.0165, '0.02 m', '0.65 in'],
    [0.3, '0.3 m', '1 ft'],
    [0.1, '0.1 m', '4 in'],
    [1, '1 m', '3 ft 3 in'],
    [1.016, '1.02 m', '3 ft 4 in'],
    [3.048, '3.05 m', '10 ft'],
    [12.192, '12.2 m', '40 ft'],
    [10, '10 m', '32.8 ft'],
    [200, '200 m', '656 ft'],
  ])('of %d m is %s, or %s', (value, inMetres, inFeet) => {
    expect(plain(METRIC.metres(value))).toBe(inMetres);
    expect(plain(FEET.metres(value))).toBe(inFeet);
  });

  /** Metres that a text in feet stands for: what a person would measure off. */
  function metresIn(text: string): number {
    const parsed = parseQuantity(text, 'length');
    if (parsed.kind !== 'span') throw new Error(`nobody can measure off "${text}"`);
    return parsed.span.from;
  }

  test('between two feeders is never told wider than it was worked out, and closer by no more than the last digit told', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 200, noNaN: true }), (spacing) => {
        const told = metresIn(FEET.metres(spacing, 'at-most'));
        expect(told).toBeLessThanOrEqual(spacing + 1e-6);
        expect(told).toBeGreaterThan(spacing - (spacing < 30.48 ? 0.0306 : 0.3049));
        expect(metresIn(FEET.metres(spacing, 'at-least'))).toBeGreaterThanOrEqual(spacing - 1e-6);
      }),
    );
  });

  test('that was typed in whole inches comes back as it was', () => {
    for (const text of ['40 ft', '6 in', '2 ft 6 in', '19 ft 11 in', '1 ft']) {
      expect(plain(FEET.metres(metresIn(text)))).toBe(text);
    }
  });
});

describe('a place in a small model', () => {
  test.each([
    [-0.127, '-13 cm', '-5 in'],
    [-0.001, '0 cm', '0 in'],
    [0.005, '1 cm', '0.2 in'],
    [0.33, '33 cm', '13 in'],
  ])('%d m from its middle is %s, or %s', (metres, inMetric, inFeet) => {
    expect(plain(METRIC.place(metres))).toBe(inMetric);
    expect(plain(FEET.place(metres))).toBe(inFeet);
  });
});

test('a share too small to matter is said in the words of the language', () => {
  const german = new Numbers('de', 'metric', { 'share-least': 'weniger als {share}' });
  expect(plain(german.share(0.00001))).toBe('weniger als 0,01 %');
});

describe('a wire', () => {
  test.each<[string, string, string]>([
    ['1.5 mm2', '1.5 mm²', '≈AWG 15'],
    ['14 AWG', '2.08 mm²', 'AWG 14'],
    ['20 AWG', '0.52 mm²', 'AWG 20'],
  ])('of %s is %s, or %s', (typed, inMetric, inGauge) => {
    const parsed = parseQuantity(typed, 'area');
    if (parsed.kind !== 'span') throw new Error(typed);
    expect(plain(METRIC.wire(parsed.span.from))).toBe(inMetric);
    expect(plain(FEET.wire(parsed.span.from))).toBe(inGauge);
  });

  test('to buy resists no more when it is told as a gauge', () => {
    for (const area of METRIC_SIZES) {
      const gauge = parseQuantity(FEET.wire(area, 'at-least'), 'area');
      if (gauge.kind !== 'span') throw new Error(FEET.wire(area, 'at-least'));
      for (const make of ['solid', 'flexible'] as const) {
        expect(ohmsPerMetre({ area: gauge.span.from, make })).toBeLessThanOrEqual(ohmsPerMetre({ area, make }));
      }
    }
  });
});

test('ohms of a rail are told for a metre or for a foot', () => {
  expect(plain(METRIC.quantity(0.076, 'resistance-per-metre'))).toBe('76 mohm/m');
  expect(plain(FEET.quantity(0.076, 'resistance-per-metre'))).toBe('23.2 mohm/ft');
  expect(plain(METRIC.inUnit(0.0133, 'ohm/m'))).toBe('13.3 mohm/m');
  expect(plain(FEET.inUnit(0.0133, 'ohm/m'))).toBe('4.05 mohm/ft');
  expect(plain(FEET.inUnit(10, 'm'))).toBe('32.8 ft');
});

describe('a sentence of the content', () => {
  test.each<[string, string, string]>([
    ['Wait 2 s.', 'Wait 2 s.', 'Wait 2 s.'],
    ['a bus of {m:10}, at {volts}', 'a bus of 10 m, at {volts}', 'a bus of 32.8 ft, at {volts}'],
    ['about {cm:30} of rail', 'about 30 cm of rail', 'about 1 ft of rail'],
    ['about {mm:1}, and', 'about 1 mm, and', 'about 0.04 in, and'],
    ['wire of {mm2:1.5 or-thicker}', 'wire of 1.5 mm²', 'wire of AWG 14'],
    ['every {m:3 or-closer}', 'every 3 m', 'every 9 ft 10 in'],
    ['{n} {n:train|trains}', '{n} {n:train|trains}', '{n} {n:train|trains}'],
    ['{either:A few millimetres|An eighth of an inch} on', 'A few millimetres on', 'An eighth of an inch on'],
  ])('%j', (text, inMetric, inFeet) => {
    expect(metric(text)).toBe(inMetric);
    expect(feet(text)).toBe(inFeet);
    const parts = measureParts(text, METRIC, FEET);
    expect(plain(parts.map((one) => (typeof one === 'string' ? one : one.metric)).join(''))).toBe(inMetric);
    expect(plain(parts.map((one) => (typeof one === 'string' ? one : one.feet)).join(''))).toBe(inFeet);
  });

  test('is filled wherever it stands in the words of a page', () => {
    const words = { fix: { steps: [{ do: 'Cut {cm:30}.', cautions: ['a'] }], none: undefined }, number: 3 };
    expect(inMeasures(words, FEET)).toEqual({
      fix: { steps: [{ do: 'Cut 1\u00a0ft.', cautions: ['a'] }], none: undefined },
      number: 3,
    });
  });
});

describe('worked numbers that the content tells in both systems come out of the engine', () => {
  const FOOT = 0.3048;
  const flexible = (area: number): number => ohmsPerMetre({ area, make: 'flexible' });

  test.each<[string, number, number, number, string]>([
    ['lesson on wire: 10 m of 0.75 mm2', 10, 0.75e-6, 3, '1.6'],
    ['lesson on wire: 10 m of 1.5 mm2', 10, 1.5e-6, 3, '0.8'],
    ['lesson on wire: 30 ft of AWG 18', 30 * FOOT, gaugeArea(18), 3, '1.2'],
    ['lesson on wire: 30 ft of AWG 14', 30 * FOOT, gaugeArea(14), 3, '0.5'],
    ['thin wire: five metres of 1.5 mm2', 5, 1.5e-6, 3, '0.4'],
    ['thin wire: fifteen feet of AWG 16', 15 * FOOT, gaugeArea(16), 3, '0.4'],
    ['thicker bus: 11 m of 1.5 mm2 lose a tenth of 15 V', 11, 1.5e-6, 5, '1.5'],
    ['thicker bus: 36 ft of AWG 16 lose a tenth of 15 V', 36 * FOOT, gaugeArea(16), 5, '1.5'],
  ])('%s', (_, way, area, amps, volts) => expect((2 * way * flexible(area) * amps).toFixed(1)).toBe(volts));

  test('smaller rail costs about eight times its length of 1.5 mm2 as code 83, about fifteen as code 70', () => {
    const times = (code: 'code-83' | 'code-70'): number => railOhms(code) / flexible(1.5e-6);
    expect(Math.round(times('code-83'))).toBe(8);
    expect(times('code-70')).toBeGreaterThan(14);
    expect(times('code-70')).toBeLessThan(16);
  });

  test('a pair of rails costs as much as four to six times its length of 1.5 mm2, or of AWG 16', () => {
    const { from, to } = RAILS['code-100'].ohmsPerMetre;
    for (const area of [1.5e-6, gaugeArea(16)]) {
      expect(Math.round(from / flexible(area))).toBe(4);
      expect(Math.round(to / flexible(area))).toBe(6);
    }
    expect([from * FOOT, to * FOOT].map((ohms) => ohms.toFixed(3))).toEqual(['0.017', '0.023']);
  });

  test('circular mils of a wire without marks: 1600 is AWG 18, 2600 AWG 16, 4100 AWG 14', () => {
    const mils = (gauge: number): number => (4 * gaugeArea(gauge)) / Math.PI / 0.0254e-3 ** 2;
    expect([18, 16, 14].map((gauge) => Math.round(mils(gauge) / 100) * 100)).toEqual([1600, 2600, 4100]);
    expect(Math.sqrt(mils(18)) / 1000).toBeCloseTo(0.04, 3);
  });
});
