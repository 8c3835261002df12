// What stands on labels and reels, and what people type beside them, read as it is printed.
import { describe, expect, test } from 'vitest';
import { kindPrinted, labelLine, parseQuantity, readsAsCrossSection } from '../../src/engine/quantity-text.ts';
import type { Quantity } from '../../src/engine/units.ts';
import { SQUARE_MILLIMETRE } from '../../src/engine/units.ts';
import { near } from '../near.ts';

const value = (text: string, quantity: Quantity): number | string => {
  const read = parseQuantity(text, quantity);
  if (read.kind === 'span') return read.span.from === read.span.to ? read.span.from : 'a range';
  return read.kind === 'bad' ? read.because : read.kind;
};

describe('volts as they are printed on a label', () => {
  test.each([
    ['18V DC', 18],
    ['DC 18V', 18],
    ['15 V DC', 15],
    ['15 V d.c.', 15],
    ['16 V~', 16],
    ['~16 V', 16],
    ['AC 16 V', 16],
    ['16VAC', 16],
    ['18 V=', 18],
    ['18V ⎓', 18],
    ['⎓ 12 V', 12],
    ['OUTPUT: 18V DC', 18],
    ['SEC 16 V~', 16],
    ['18,5 V', 18.5],
  ])('%j', (text, volts) => expect(value(text, 'voltage')).toBe(volts));

  test.each([
    ['18V DC', 'dc'],
    ['DC 18V', 'dc'],
    ['18V ⎓ 3A', 'dc'],
    ['18 V=', 'dc'],
    ['16 V~', 'ac'],
    ['AC 16 V', 'ac'],
    ['16 vac', 'ac'],
    ['18 V', undefined],
    ['AC/DC 18 V', undefined],
    ['active', undefined],
  ])('%j says what kind of current it is: %s', (text, kind) => expect(kindPrinted(text)).toBe(kind));
});

describe('a whole line of a label', () => {
  test.each([
    ['18 V / 3 A', '18 V', '3 A'],
    ['18V 3A', '18V', '3A'],
    ['DC 15V ⎓ 4.0A', '15V', '4.0A'],
    ['15V, 1,500 mA', '15V', '1,500 mA'],
    ['18V DC / 1,500 mA', '18V', '1,500 mA'],
  ])('%j holds volts and amperes', (text, volts, amps) => expect(labelLine(text)).toEqual({ volts, amps }));

  test('is read for its volts where volts are asked for, for its amperes where amperes are', () => {
    expect(value('18 V / 3 A', 'voltage')).toBe(18);
    expect(value('18 V / 3 A', 'current')).toBe(3);
    expect(value('DC 15V ⎓ 1500mA', 'current')).toBe(1.5);
  });

  test('a transformer names its power in place of amperes', () =>
    expect(labelLine('16 V~ 52 VA')).toEqual({ volts: '16 V', amps: '52 VA' }));

  test.each(['18 V', '3 A', '36 VA', '16 V~ 230 V', ''])('%j is none', (text) =>
    expect(labelLine(text)).toBeUndefined(),
  );
});

describe('a comma before three digits', () => {
  test.each<[string, Quantity, number]>([
    ['1,500 mA', 'current', 1.5],
    ['2,000mA', 'current', 2],
    ['18,000 mV', 'voltage', 18],
    ['1,5 A', 'current', 1.5],
    ['1,500 A', 'current', 1.5],
    ['0,040 A', 'current', 0.04],
    ['1,50 mA', 'current', 0.0015],
  ])('%j', (text, quantity, amount) => expect(value(text, quantity)).toBe(amount));
});

describe('a wire as it is sold', () => {
  const gauge = (number: number): number | string => value(`${number} AWG`, 'area');
  test.each(['18 AWG stranded', '18AWG solid', 'AWG 18 wire', '18-gauge', '18 gauge copper', '#18', '# 18', '18 ga.'])(
    '%j is gauge 18',
    (text) => expect(value(text, 'area')).toBe(gauge(18)),
  );

  // Textbook: n strands of diameter d have n π d² / 4 of metal.
  test.each([
    ['16/0.2', 0.503],
    ['7/0.2', 0.22],
    ['16 / 0,2 mm', 0.503],
    ['24 x 0.2', 0.754],
    ['32×0.2 mm', 1.005],
  ])('%j are so many strands of that width: %d mm²', (text, area) => {
    const found = value(text, 'area');
    expect(typeof found).toBe('number');
    near(Number(found), area * SQUARE_MILLIMETRE, 0.001 * SQUARE_MILLIMETRE);
    expect(parseQuantity(text, 'area')).toMatchObject({ typed: 'metric' });
  });

  test('in plain millimetres is its cross-section, as cable is sold, and that can be said', () => {
    expect(value('0.75mm', 'area')).toBe(0.75 * SQUARE_MILLIMETRE);
    expect(readsAsCrossSection('0.75mm')).toBe(true);
    expect(readsAsCrossSection('0,75 mm')).toBe(true);
    for (const text of ['0.75 mm²', '0.75', '16/0.2 mm', 'Ø 0.6 mm']) expect(readsAsCrossSection(text)).toBe(false);
  });

  test.each(['Ø 0.6 mm', 'ø0.6', '0.6 mm Ø', '0.6 mm dia', '0.6 mm across'])(
    '%j is a solid wire of that width',
    (text) => near(Number(value(text, 'area')), (Math.PI / 4) * 0.6e-3 ** 2, 1e-12),
  );

  test.each(['16/0', '0/0.2', '16/20', '999/9', '18 AWG zebra', '41 AWG'])('%j is none', (text) => {
    expect(parseQuantity(text, 'area').kind).toBe('bad');
  });
});

describe('hours in the languages of readers', () => {
  test.each([
    ['2 Stunden', 2],
    ['1 Stunde', 1],
    ['90 min', 1.5],
    ['90 Minuten', 1.5],
    ['2 heures', 2],
    ['2 uur', 2],
    ['1.5 hrs', 1.5],
  ])('%j', (text, hours) => expect(value(text, 'hours')).toBe(hours));
});

test('none of it is read where it does not belong', () => {
  expect(value('18 V DC', 'length')).toBe('not-a-number');
  expect(value('DC', 'voltage')).toBe('empty');
  expect(value('18 V 3 A 5 A', 'voltage')).toBe('not-a-number');
});
