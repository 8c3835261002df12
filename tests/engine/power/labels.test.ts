import { describe, expect, test } from 'vitest';
import type { InputLabel, SupplyLabel } from '../../../src/engine/power/labels.ts';
import { checkLabels } from '../../../src/engine/power/labels.ts';

const supply: SupplyLabel = { kind: 'dc', volts: 15, amps: 3, plug: 'centre-plus' };
const input: InputLabel = { kind: 'dc', volts: 19, plug: 'centre-plus' };
const check = (more: Partial<SupplyLabel>, printed: Partial<InputLabel> = {}) =>
  checkLabels({ ...supply, ...more }, { ...input, ...printed });

describe('a supply may be plugged in', () => {
  test('when kind, volts and plug agree', () => {
    expect(check({})).toEqual({ kind: 'permitted', plugSeen: true });
  });
  test('with exactly the volts that the unit permits', () => {
    expect(check({ volts: 19 }).kind).toBe('permitted');
  });
  test('of either kind where the unit takes both', () => {
    expect(check({ kind: 'ac' }, { kind: 'either' }).kind).toBe('permitted');
  });
  test('with the plug still to be looked at, where one of the plugs is not known', () => {
    expect(check({ plug: undefined })).toEqual({ kind: 'permitted', plugSeen: false });
    expect(check({}, { plug: undefined })).toEqual({ kind: 'permitted', plugSeen: false });
  });
  test('at terminals, whatever the other side has', () => {
    expect(check({ plug: 'terminals' }).kind).toBe('permitted');
    expect(check({ plug: 'centre-minus' }, { plug: 'terminals' }).kind).toBe('permitted');
  });
  test('with the poles of a plug unlike, if it gives a.c.', () => {
    expect(check({ kind: 'ac', plug: 'centre-minus' }, { kind: 'ac' }).kind).toBe('permitted');
  });
});

describe('a supply must not be plugged in', () => {
  test.each<[string, Partial<SupplyLabel>, Partial<InputLabel>, string]>([
    ['a.c. on a d.c. input', { kind: 'ac' }, {}, 'wrong-kind'],
    ['d.c. on an a.c. input', {}, { kind: 'ac' }, 'wrong-kind'],
    ['more volts than permitted', { volts: 19.1 }, {}, 'too-many-volts'],
    ['minus in the middle against plus', { plug: 'centre-minus' }, {}, 'plug-reversed'],
    ['plus in the middle against minus', {}, { plug: 'centre-minus' }, 'plug-reversed'],
    ['the wrong kind, whatever else is not known', { kind: 'ac', amps: undefined }, { volts: undefined }, 'wrong-kind'],
    [
      'too many volts, whatever else is not known',
      { volts: 24, amps: undefined },
      { kind: undefined },
      'too-many-volts',
    ],
    ['a reversed plug, whatever else is not known', { plug: 'centre-minus', volts: undefined }, {}, 'plug-reversed'],
  ])('%s', (_, label, printed, because) => {
    expect(check(label, printed)).toEqual({ kind: 'not-permitted', because });
  });
});

describe('a norm for hobby supplies', () => {
  test('is no matter of labels: 22 V and 10 A go together with a unit that permits them', () => {
    expect(check({ volts: 22, amps: 10 }, { volts: 24 }).kind).toBe('permitted');
  });
});

describe('it cannot be said', () => {
  test.each<[string, Partial<SupplyLabel>, Partial<InputLabel>]>([
    ['without the kind of the supply', { kind: undefined }, {}],
    ['without its volts', { volts: undefined }, {}],
    ['without its amperes', { amps: undefined }, {}],
    ['without the kind that the unit accepts', {}, { kind: undefined }],
    ['without the volts that the unit permits', {}, { volts: undefined }],
  ])('%s', (_, label, printed) => {
    expect(check(label, printed)).toEqual({ kind: 'unknown' });
  });
});
