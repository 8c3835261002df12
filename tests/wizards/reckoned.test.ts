// What "Is my power enough?" shows beside its verdict, and what it asks next. Common practice, no source, where nothing else is named.
import { describe, expect, test } from 'vitest';
import { OWN_USE_DOUBT } from '../../src/engine/index.ts';
import { atLeast } from '../../src/engine/power/rules.ts';
import type { Reckoning } from '../../src/wizards/enough-current/reckoning.ts';
import { reckon } from '../../src/wizards/enough-current/reckoning.ts';
import type { Conclusion } from '../../src/wizards/enough-current/result.ts';
import { conclude } from '../../src/wizards/enough-current/result.ts';
import { surerOf } from '../../src/wizards/enough-current/surer.ts';
import { near } from '../near.ts';
import { told } from './told.ts';

type Texts = Readonly<Record<string, string>>;

/** Four modern H0 locomotives, three of them moving, 16 V d.c. with 4 A, a unit for 3 A that is set to 15 V; all told. */
const HOME: Texts = {
  ...{ system: 'two-rail', aim: 'enough', scale: 'h0', draw: 'count' },
  ...{ modern: '4', older: '0', sound: '0', stored: '0', moving: '3', coaches: '0', accessories: '0' },
  ...{ 'supply-kind': 'dc', 'supply-volts': '16 V', 'supply-amps': '4 A', 'supply-plug': 'centre-plus' },
  ...{ 'unit-limit': '3 A', 'unit-input': 'dc', 'unit-input-volts': '24 V', 'unit-plug': 'centre-plus' },
  ...{ 'unit-rails': 'set', 'unit-rail-volts': '15 V', 'own-use': 'handhelds' },
};

const answers = (more: Texts = {}, without: readonly string[] = []) =>
  told(Object.fromEntries(Object.entries({ ...HOME, ...more }).filter(([id]) => !without.includes(id))));
const reckoned = (more: Texts = {}): Reckoning => reckon(answers(more));
const power = (more: Texts = {}) => {
  const found = reckoned(more).power;
  if (found === undefined) throw new Error('no supply');
  return found;
};
function said(more: Texts = {}, without: readonly string[] = []): Conclusion {
  const given = answers(more, without);
  return conclude(given, reckon(given));
}

describe('Cold filament lamps', () => {
  test('draw eight to ten times what warm ones do, and are told of only where that is more than the unit passes', () => {
    const coldLamps = (coaches: string, lamps = 'filament') => power({ coaches, lamps }).coldLamps;
    const { from, to } = coldLamps('20') ?? { from: 0, to: 0 };
    expect(from).toBeGreaterThan(3);
    expect(to).toBeGreaterThan(from);
    // As much more as there are more lamps.
    near(coldLamps('40')?.to ?? 0, 2 * to, 1e-9);
    const few = Math.floor((20 * 3) / to);
    expect(coldLamps(String(few))).toBeUndefined();
    expect(coldLamps(String(few + 1))?.to).toBeGreaterThan(3);
    expect(coldLamps('20', 'led')).toBeUndefined();
    // Two coaches draw 2.5 A for that moment: a unit that passes just that bears them.
    const two = (limit: string) => power({ coaches: '2', lamps: 'filament', 'unit-limit': limit }).coldLamps?.to;
    expect([two('2.5 A'), two('2.4 A')]).toEqual([undefined, 2.5]);
    expect(coldLamps('0')).toBeUndefined();
  });
});

describe('Rails that stay below the range of the scale', () => {
  test('whatever the unit is set to: said where nobody has told how it makes them, and only on a supply of fewer volts than the range', () => {
    const slow = (more: Texts) => power(more).rails.slowAtBest;
    const low = { 'supply-volts': '14 V' };
    expect(slow({ ...low, 'unit-rails': 'unknown' })).toBe(true);
    expect(slow({ ...low, 'unit-rails': 'follows' })).toBe(false);
    expect(slow({ ...low, 'unit-rail-volts': '14 V' })).toBe(false);
    // H0 begins at 15 V, N at 12 V.
    expect(slow({ 'supply-volts': '15 V', 'unit-rails': 'unknown' })).toBe(false);
    expect(slow({ ...low, scale: 'n', 'unit-rails': 'unknown' })).toBe(false);
  });
});

describe('The picture of what is drawn', () => {
  const fleets: readonly Texts[] = [
    ...['1', '2', '4', '9', '20', '60'].map((modern) => ({ modern, moving: modern })),
    { scale: '1', modern: '6', moving: '4' },
    { scale: 'z', modern: '1', moving: '1' },
    { modern: '0', older: '12', moving: '7' },
    { modern: '2', moving: '1', coaches: '60', lamps: 'filament' },
  ];

  test('has some twenty to sixty bars of one round width side by side, which hold all that is drawn', () => {
    for (const more of fleets) {
      const { bars, summary } = reckoned(more);
      const widths = bars.map(({ from, to }) => to - from);
      const [width = 0] = widths;
      for (const one of widths) near(one, width, 1e-9);
      // 1, 2 or 5 of a power of ten.
      const lead = width / 10 ** Math.floor(Math.log10(width) + 1e-9);
      expect(
        [1, 2, 5].some((round) => Math.abs(lead - round) < 1e-6),
        `${width}`,
      ).toBe(true);
      expect(bars.length, JSON.stringify(more)).toBeGreaterThan(10);
      expect(bars.length, JSON.stringify(more)).toBeLessThan(64);
      for (const [at, { from }] of bars.entries()) if (at > 0) near(from, bars[at - 1]?.to ?? 0, 1e-9);
      near(
        bars.reduce((sum, { probability }) => sum + probability, 0),
        1,
        1e-6,
      );
      expect(bars[0]?.from ?? 0).toBeGreaterThanOrEqual(summary.least - width);
      expect(bars.at(-1)?.to ?? 99).toBeLessThanOrEqual(summary.most + width);
    }
  });
});

describe('Rails that may stand too high', () => {
  const high = { 'supply-volts': '24 V', 'unit-rails': 'unknown' };

  test('depend on how the unit makes them; while a label is unread that comes first, and nothing is bought', () => {
    expect(said(high)).toMatchObject({
      ...{ outcome: 'rail-voltage-too-high', kind: 'depends', readFirst: undefined, toBuy: undefined },
      deciding: { unknown: 'rails', choices: [], holdsTo: undefined },
    });
    expect(said({ ...high, 'unit-limit': 'unknown' })).toMatchObject({
      ...{ outcome: 'rail-voltage-too-high', kind: 'labels-first', toBuy: undefined },
    });
    for (const id of ['unit-input', 'unit-input-volts'])
      expect(said({ ...high, [id]: 'unknown' }), id).toMatchObject({
        outcome: 'read-both-labels',
        kind: 'labels-first',
      });
  });

  test('and surely do where they follow: stop, and nobody is asked how they come about', () => {
    expect(said({ ...high, 'unit-rails': 'follows' })).toMatchObject({
      ...{ outcome: 'rail-voltage-too-high', kind: 'stop', deciding: undefined },
    });
  });
});

describe('A transformer that lifts the rails too high', () => {
  const transformer = { 'supply-kind': 'ac', 'unit-input': 'either', 'unit-rails': 'follows' };

  test('gives way to a regulated d.c. supply; which one is said only once every label is read', () => {
    expect(said(transformer)).toMatchObject({ outcome: 'regulated-supply', toBuy: { kind: 'dc' } });
    expect(said({ ...transformer, 'unit-limit': 'unknown' })).toMatchObject({
      ...{ outcome: 'rail-voltage-too-high', kind: 'labels-first', toBuy: undefined, readFirst: undefined },
    });
  });
});

describe('A supply that gives hardly more than the unit takes for itself', () => {
  test('leaves nothing that the unit could trip at: what is to be got is said, and no remedy for the trains', () => {
    expect(said({ 'supply-amps': '0.3 A', 'own-use': 'unknown' })).toMatchObject({
      ...{
        outcome: 'supply-cannot-trip',
        tripBelow: undefined,
        toBuy: { kind: 'dc', volts: 16, amps: 4 },
        remedies: [],
      },
    });
    expect(
      said({ scale: '1', 'unit-limit': '30 A', 'supply-amps': '0.2 A', 'own-use': 'many', 'unit-rail-volts': '16 V' }),
    ).toMatchObject({ outcome: 'lower-trip-level', tripBelow: undefined, toBuy: undefined, remedies: [] });
  });
});

test('Where a short may not trip the unit it is to trip below what the supply surely gives, less what it may take for itself where nobody has told', () => {
  const below = (ownUse: string) => {
    const more = { 'supply-amps': '2 A', 'own-use': ownUse };
    return (power(more).trip?.gives.from ?? 0) - (said(more).tripBelow ?? 0);
  };
  near(below('bare'), 0, 1e-9);
  near(below('many'), 0, 1e-9);
  near(below('unknown'), OWN_USE_DOUBT, 1e-9);
});

test('A step-down converter that nobody has spoken of may let a supply of more volts trip the unit: only where that would be enough does it decide', () => {
  const open = (volts: string, amps: string, rails = 'unknown') => {
    const more = { 'supply-volts': volts, 'supply-amps': amps, 'unit-rails': rails, 'own-use': 'bare' };
    const { outcome, kind, deciding } = said(more);
    return [outcome, kind, deciding?.unknown];
  };
  // From 19 to 15 V, with a tenth lost, it gives 1.14 times as much: 3.3 A of 2.2 A for a moment, and 2.2 A of 1.5 A.
  expect(open('19 V', '2.2 A')).toEqual(['supply-cannot-trip', 'depends', 'rails']);
  expect(open('19 V', '1.5 A')).toEqual(['supply-cannot-trip', 'surely-not', undefined]);
  expect(open('19 V', '2.2 A', 'set')).toEqual(['supply-cannot-trip', 'surely-not', undefined]);
  // From 16 V it would give no more.
  expect(open('16 V', '2.2 A')).toEqual(['supply-cannot-trip', 'surely-not', undefined]);
});

describe('What is asked next', () => {
  const ALL = ['coaches', 'sound', 'accessories', 'rails', 'own-use', 'draw', 'boosters', 'aim', 'divided'] as const;
  const chances = (more: Texts) =>
    Object.fromEntries(surerOf(answers(more), ALL).map(({ question, chance }) => [question, chance]));

  test('where rails may stand too high it is how the unit makes them', () => {
    const high = chances({ 'supply-volts': '24 V', 'unit-rails': 'unknown' });
    // Follows: surely; set or made by a converter to what is usual: not at all.
    near(high['rails'] ?? 0, 0.55, 1e-9);
    for (const id of ['sound', 'own-use', 'draw']) expect(high[id], id).toBe(0);
  });

  test('nothing that is told of the trains changes an answer that leaves them unsaid: rails that may stand too high, a stop, an unread limit', () => {
    const ofTheTrains = ['coaches', 'sound', 'accessories', 'draw', 'boosters', 'aim', 'divided'];
    // Close to the limit, where each of them would count, and a club of twelve.
    for (const trains of [
      { modern: '6', moving: '4' },
      { modern: '12', moving: '10' },
    ]) {
      const near_ = chances(trains);
      expect(ofTheTrains.filter((id) => (near_[id] ?? 0) > 0).length, trains.modern).toBeGreaterThan(3);
      for (const unsaid of [
        { 'supply-volts': '24 V', 'unit-rails': 'unknown' },
        { 'supply-volts': '24 V', 'unit-rails': 'follows' },
        { 'supply-kind': 'ac', 'unit-input': 'either', 'unit-rails': 'unknown' },
        { 'unit-limit': 'unknown' },
      ]) {
        const found = chances({ ...trains, ...unsaid });
        for (const id of ofTheTrains) expect(found[id], `${JSON.stringify(unsaid)}: ${id}`).toBe(0);
      }
    }
  });

  test('breakers are no answer before a short trips the unit at all, and so the aim changes nothing', () => {
    expect(chances({})['aim']).toBeGreaterThan(0);
    expect(chances({ 'supply-amps': '2 A' })['aim']).toBe(0);
  });
});

describe('Where it is too much as it stands, though at best it may do', () => {
  test('what nobody has told of can only make it more: something else decides', () => {
    const open = ['coaches', 'accessories'];
    const much: Texts = { modern: '6', moving: '6', 'own-use': 'bare' };
    const seen = new Set<string>();
    for (const amps of ['2.4 A', '2.6 A', '2.8 A', '3 A', '3.2 A']) {
      const given = answers({ ...much, 'unit-limit': amps }, open);
      const reckoning = reckon(given);
      const { kind, deciding } = conclude(given, reckoning);
      if (kind !== 'depends' || atLeast(reckoning.power?.judgement.verdict ?? 'short', 'tight')) continue;
      seen.add(deciding?.unknown ?? '');
    }
    expect([...seen]).toEqual(['train-draws']);
  });
});
