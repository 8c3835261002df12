import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Quantity } from '../../src/engine/index.ts';
import { middle, parseQuantity } from '../../src/engine/index.ts';

const QUANTITIES: readonly Quantity[] = ['current', 'voltage', 'hours', 'count'];
const one = (value: number) => ({ kind: 'span', span: { from: value, to: value } });

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
  ])('%j as %s', (text, quantity, value) => {
    expect(parseQuantity(text, quantity)).toEqual(one(value));
  });

  test('amperes and milliamperes give the very same number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), (milli) => {
        expect(parseQuantity(`${milli} mA`, 'current')).toEqual(parseQuantity(String(milli / 1000), 'current'));
      }),
    );
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
  ])('%j', (text, quantity, from, to) => {
    expect(parseQuantity(text, quantity)).toEqual({ kind: 'span', span: { from, to } });
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
  ])('%j as %s: %s', (text, quantity, because) => {
    expect(parseQuantity(text, quantity)).toEqual({ kind: 'bad', because });
  });
});

describe('any text whatever', () => {
  const texts = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 80 }),
    fc.stringMatching(/^[-+0-9., eE~a-z]{0,40}$/),
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
    const numbers = fc.tuple(fc.double({ min: 0, max: 1e5, noNaN: true }), fc.constantFrom('', 'mA', 'A'));
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

test('the middle of a span', () => expect(middle({ from: 0.2, to: 0.5 })).toBe(0.35));
