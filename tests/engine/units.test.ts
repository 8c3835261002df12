import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Parsed } from '../../src/engine/quantity-text.ts';
import { parseQuantity, writeBare, writeQuantity } from '../../src/engine/quantity-text.ts';
import type { MeasureSystem, Quantity } from '../../src/engine/units.ts';
import { gaugeArea, gaugeOf, middle } from '../../src/engine/units.ts';
import { near } from '../near.ts';
import { spread } from '../spread.ts';

const QUANTITIES: readonly Quantity[] = [
  'current',
  'voltage',
  'hours',
  'count',
  'length',
  'area',
  'resistance',
  'resistance-per-metre',
  'time',
];
const one = (value: number) => ({ kind: 'span', span: { from: value, to: value } });
/** What was read but the system of its unit, which has sentences of its own. */
const measure = ({ typed: _, ...rest }: Parsed & { readonly typed?: MeasureSystem }) => rest;

describe('one number with its unit', () => {
  test.each<[string, Quantity, number]>([
    ['1.5 A', 'current', 1.5],
    ['1,5 A', 'current', 1.5],
    ['1500 mA', 'current', 1.5],
    ['1500mA', 'current', 1.5],
    ['2', 'current', 2],
    ['2 amps', 'current', 2],
    ['.5A', 'current', 0.5],
    ['0,040 A', 'current', 0.04],
    ['  3 \t A ', 'current', 3],
    ['−1 A', 'current', -1],
    ['1e-2 A', 'current', 0.01],
    ['15 V', 'voltage', 15],
    ['16 V~', 'voltage', 16],
    ['16 vac', 'voltage', 16],
    ['500 mV', 'voltage', 0.5],
    ['2 h', 'hours', 2],
    ['90 min', 'hours', 1.5],
    ['2 Std', 'hours', 2],
    ['7', 'count', 7],
    ['-0 A', 'current', 0],
    ['4', 'length', 4],
    ['4 m', 'length', 4],
    ['350 cm', 'length', 3.5],
    ['20 mm', 'length', 0.02],
    ['10 ft', 'length', 3.048],
    ["10'", 'length', 3.048],
    ['6 in', 'length', 0.1524],
    ['6"', 'length', 0.1524],
    ['5\u2032 6\u2033', 'length', 1.6764],
    ['5 ft 6 in', 'length', 1.6764],
    ['5\'6.5"', 'length', 1.6891],
    ['3 yd', 'length', 2.7432],
    ['1.5', 'area', 1.5e-6],
    ['1.5 mm2', 'area', 1.5e-6],
    ['1,5mm²', 'area', 1.5e-6],
    ['0.75 mm^2', 'area', 0.75e-6],
    ['2.5 sq mm', 'area', 2.5e-6],
    ['2.5 sq. mm', 'area', 2.5e-6],
    ['2.5 qmm', 'area', 2.5e-6],
    ['0.3', 'resistance', 0.3],
    ['0.3 ohm', 'resistance', 0.3],
    ['0.3 Ω', 'resistance', 0.3],
    ['30 mΩ', 'resistance', 0.03],
    ['30 mohm', 'resistance', 0.03],
    ['76', 'resistance-per-metre', 0.076],
    ['76 mohm/m', 'resistance-per-metre', 0.076],
    ['76 mΩ / m', 'resistance-per-metre', 0.076],
    ['0.076 ohm/m', 'resistance-per-metre', 0.076],
    ['0.076 ohms per m', 'resistance-per-metre', 0.076],
    ['13.3 ohm/km', 'resistance-per-metre', 0.0133],
    ['1.45 mohm/in', 'resistance-per-metre', 0.0570866141732],
    ['2 s', 'time', 2],
    ['20 ms', 'time', 0.02],
    ['3 µs', 'time', 3e-6],
    ['3 μs', 'time', 3e-6],
    ['2 min', 'time', 120],
  ])('%j as %s', (text, quantity, value) => {
    expect(measure(parseQuantity(text, quantity))).toEqual(one(value));
  });

  test('amperes and milliamperes give the very same number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), (milli) => {
        expect(parseQuantity(`${milli} mA`, 'current')).toEqual(parseQuantity(String(milli / 1000), 'current'));
      }),
    );
  });
});

describe('an American wire gauge', () => {
  test.each(['16 AWG', 'awg 16', 'AWG16', '#16', '16 gauge', '16 ga'])('%j is 1.309 mm2 of metal', (text) => {
    const parsed = parseQuantity(text, 'area');
    expect(parsed.kind).toBe('span');
    if (parsed.kind === 'span') near(parsed.span.from, 1.309e-6, 0.0005e-6);
    expect(parsed).toEqual(parseQuantity('16AWG', 'area'));
  });

  test('a higher number is a thinner wire, and 39 numbers lie between 0.127 mm and 11.68 mm', () => {
    near(Math.sqrt((gaugeArea(36) * 4) / Math.PI), 0.127e-3, 1e-12);
    near(Math.sqrt((gaugeArea(-3) * 4) / Math.PI), 92 * 0.127e-3, 1e-12);
    for (let gauge = 0; gauge < 40; gauge++) expect(gaugeArea(gauge + 1)).toBeLessThan(gaugeArea(gauge));
  });

  test.each(['41 AWG', '99 awg', '16.5 AWG', '16 AWG V'])('%j is none', (text) => {
    expect(parseQuantity(text, 'area').kind).toBe('bad');
  });

  test('is an area and nothing else', () => {
    expect(parseQuantity('16 AWG', 'length')).toEqual({ kind: 'bad', because: 'unknown-unit' });
  });
});

describe('the system of what was typed', () => {
  test.each<[string, Quantity, MeasureSystem | undefined]>([
    ['40 ft', 'length', 'feet-and-gauge'],
    ['5\' 6"', 'length', 'feet-and-gauge'],
    ['3 yd', 'length', 'feet-and-gauge'],
    ['14 AWG', 'area', 'feet-and-gauge'],
    ['1.45 mohm/in', 'resistance-per-metre', 'feet-and-gauge'],
    ['6 m', 'length', 'metric'],
    ['30-40 cm', 'length', 'metric'],
    ['1.5 mm²', 'area', 'metric'],
    ['76 mohm/m', 'resistance-per-metre', 'metric'],
    ['13.3 ohm/km', 'resistance-per-metre', 'metric'],
    ['6', 'length', undefined],
    ['1.5', 'area', undefined],
    ['2 A', 'current', undefined],
    ['90 min', 'hours', undefined],
  ])('%j as %s: %s', (text, quantity, typed) => {
    const parsed = parseQuantity(text, quantity);
    expect(parsed.kind === 'span' ? parsed.typed : 'not read').toBe(typed);
  });

  test('an old address holds a gauge as square millimetres to every digit: it is a gauge', () => {
    const old = writeQuantity(gaugeArea(14), 'area');
    expect(old).toMatch(/ mm2$/);
    expect(parseQuantity(old, 'area')).toEqual(parseQuantity('14 AWG', 'area'));
    expect(gaugeOf(2.08e-6)).toBeUndefined();
  });

  test.each<[string, Quantity, string]>([
    ['40', 'length', '40 ft'],
    ['2.5-4', 'length', '2.5-4 ft'],
    ['14', 'area', '14 AWG'],
    ['0.75', 'area', '0.75'],
    ['23', 'resistance-per-metre', '23 mohm/ft'],
    ['6 m', 'length', '6 m'],
    ['2', 'current', '2 A'],
  ])('a bare %j of %s, told in feet and gauges, is %j', (bare, quantity, text) => {
    expect(parseQuantity(bare, quantity, 'feet-and-gauge')).toEqual(parseQuantity(text, quantity));
  });
});

describe('from one number to another', () => {
  test.each<[string, Quantity, number, number]>([
    ['0.3-0.6 A', 'current', 0.3, 0.6],
    ['0,3 – 0,6 A', 'current', 0.3, 0.6],
    ['300 to 600 mA', 'current', 0.3, 0.6],
    ['300 mA bis 0,6 A', 'current', 0.3, 0.6],
    ['300 mA - 600', 'current', 0.3, 0.6],
    ['0.6-0.3 A', 'current', 0.3, 0.6],
    ['0.2..0.5', 'current', 0.2, 0.5],
    ['50 cm to 2 m', 'length', 0.5, 2],
    ['1.5-2.5 mm2', 'area', 1.5e-6, 2.5e-6],
    ['0.75 mm² - 1.5 mm²', 'area', 0.75e-6, 1.5e-6],
    ['57.1-76 mohm/m', 'resistance-per-metre', 0.0571, 0.076],
    ['5-30 ms', 'time', 0.005, 0.03],
  ])('%j', (text, quantity, from, to) => {
    expect(measure(parseQuantity(text, quantity))).toEqual({ kind: 'span', span: { from, to } });
  });
});

describe('watts and volt-amperes', () => {
  test.each(['36 VA', '36W', '36 watts'])('%j stay power until the volts are known', (text) => {
    expect(parseQuantity(text, 'current')).toEqual({ kind: 'power', watts: 36 });
  });
  test('are no volts', () => {
    expect(parseQuantity('36 VA', 'voltage')).toEqual({ kind: 'bad', because: 'unknown-unit' });
  });
});

describe('what cannot be read says why', () => {
  test.each<[string, Quantity, string]>([
    ['', 'current', 'empty'],
    ['   ', 'current', 'empty'],
    ['many', 'current', 'not-a-number'],
    ['NaN', 'current', 'not-a-number'],
    ['Infinity', 'current', 'not-a-number'],
    ['1.2.3', 'current', 'not-a-number'],
    ['1 2', 'current', 'not-a-number'],
    ['0x10', 'current', 'not-a-number'],
    ['1e999', 'current', 'not-a-number'],
    ['3 V', 'current', 'unknown-unit'],
    ['3 parsecs', 'current', 'unknown-unit'],
    ['3 constructor', 'current', 'unknown-unit'],
    ['3 A', 'count', 'unknown-unit'],
    ['10-20 VA', 'current', 'unknown-unit'],
    ['3 A', 'length', 'unknown-unit'],
    ['3 m', 'area', 'unknown-unit'],
    ['3 cm', 'area', 'unknown-unit'],
    ['3 ohm', 'resistance-per-metre', 'unknown-unit'],
    ['3 per cent', 'resistance', 'unknown-unit'],
    ['mm2', 'area', 'not-a-number'],
    ['5 6 in', 'length', 'not-a-number'],
  ])('%j as %s: %s', (text, quantity, because) => {
    expect(parseQuantity(text, quantity)).toEqual({ kind: 'bad', because });
  });
});

describe('any text whatever', () => {
  const texts = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 80 }),
    fc.stringMatching(/^[-+0-9., eE~a-z]{0,40}$/),
    fc.stringMatching(/^[0-9]{1,3} ?(ft|mm2|sq mm|awg|#|'|"|Ω|mohm|\/|per| |[0-9.]|m|in){0,6}$/),
    fc.constantFrom('9'.repeat(5000), ' '.repeat(5000), 'a'.repeat(5000), `1${'a'.repeat(5000)}-`, '__proto__'),
  );

  test('never throws, and gives finite numbers in order or a reason', () => {
    fc.assert(
      fc.property(texts, fc.constantFrom(...QUANTITIES), (text, quantity) => {
        const parsed = parseQuantity(text, quantity);
        if (parsed.kind === 'bad') expect(['empty', 'not-a-number', 'unknown-unit']).toContain(parsed.because);
        else if (parsed.kind === 'power') expect(parsed.watts).toBeTypeOf('number');
        else {
          expect(Number.isFinite(parsed.span.from) && Number.isFinite(parsed.span.to)).toBe(true);
          expect(parsed.span.from).toBeLessThanOrEqual(parsed.span.to);
        }
      }),
      { numRuns: 2000 },
    );
  });

  test('what was read reads the same again when it is written out', () => {
    const numbers = fc.tuple(spread(0, 1e5), fc.constantFrom('', 'mA', 'A'));
    fc.assert(
      fc.property(numbers, ([value, unit]) => {
        const parsed = parseQuantity(`${value.toPrecision(9)} ${unit}`, 'current');
        if (parsed.kind === 'span') expect(parseQuantity(String(parsed.span.from), 'current')).toEqual(parsed);
      }),
      { numRuns: 1000 },
    );
  });

  test('100 minutes survive being written as hours', () => {
    const parsed = parseQuantity('100 min', 'hours');
    expect(parsed.kind).toBe('span');
    if (parsed.kind === 'span') expect(parseQuantity(String(parsed.span.from), 'hours')).toEqual(parsed);
  });
});

describe('what an address carries', () => {
  test.each<[number, Quantity, string]>([
    [1.5e-6, 'area', '1.5 mm2'],
    [0.076, 'resistance-per-metre', '76 mohm/m'],
    [3.5, 'length', '3.5'],
    [0.02, 'time', '0.02'],
    [2, 'current', '2'],
  ])('%d as %s is written %j', (value, quantity, text) => expect(writeQuantity(value, quantity)).toBe(text));

  test('reads as the very same value, whatever was typed', () => {
    const typed = fc.tuple(
      fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
      fc.constantFrom<[Quantity, string]>(
        ['length', 'in'],
        ['length', 'ft'],
        ['length', ''],
        ['area', ''],
        ['resistance', 'mohm'],
        ['area', 'mm2'],
        ['length', 'm'],
        ['resistance-per-metre', 'mohm/in'],
        ['resistance-per-metre', ''],
        ['resistance-per-metre', 'ohm/km'],
        ['time', 'ms'],
        ['current', 'mA'],
        ['hours', 'min'],
      ),
    );
    fc.assert(
      fc.property(typed, ([value, [quantity, unit]]) => {
        const parsed = parseQuantity(`${value.toPrecision(5)} ${unit}`, quantity);
        expect(parsed.kind).toBe('span');
        if (parsed.kind !== 'span') return;
        expect(measure(parseQuantity(writeQuantity(parsed.span.from, quantity), quantity))).toEqual(measure(parsed));
        const { typed } = parsed;
        const written =
          typed === undefined
            ? writeBare(parsed.span.from, quantity)
            : writeQuantity(parsed.span.from, quantity, typed);
        expect(parseQuantity(written, quantity)).toEqual(parsed);
      }),
      { numRuns: 2000 },
    );
  });

  test('every gauge survives', () => {
    for (let gauge = 0; gauge <= 40; gauge++) {
      const parsed = parseQuantity(`${gauge} AWG`, 'area');
      expect(parsed.kind).toBe('span');
      if (parsed.kind === 'span') {
        expect(parseQuantity(writeQuantity(parsed.span.from, 'area'), 'area')).toEqual(parsed);
        expect(writeQuantity(parsed.span.from, 'area', 'feet-and-gauge')).toBe(`${gauge} AWG`);
      }
    }
  });

  test.each<[string, Quantity]>([
    ['40 ft', 'length'],
    ['0.5 ft', 'length'],
    ['40 in', 'length'],
    ['14 AWG', 'area'],
    ['6 m', 'length'],
    ['1.5 mm2', 'area'],
    ['23.5 mohm/ft', 'resistance-per-metre'],
    ['76 mohm/m', 'resistance-per-metre'],
  ])('%j comes back as it was typed', (text, quantity) => {
    const parsed = parseQuantity(text, quantity);
    expect(parsed.kind).toBe('span');
    if (parsed.kind === 'span') expect(writeQuantity(parsed.span.from, quantity, parsed.typed)).toBe(text);
  });
});

test('the middle of a span', () => expect(middle({ from: 0.2, to: 0.5 })).toBe(0.35));
