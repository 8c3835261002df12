// Situations that people come with, and what somebody with experience answers. Where nothing else is said: common practice, no source.
import { describe, expect, test } from 'vitest';
import type { CrossingMoment, Reckoned } from '../../src/engine/index.ts';
import { BOOSTER_OWN_USE, CROSSING_MOMENTS, districtLoad, SCALE_RANGE, summarise } from '../../src/engine/index.ts';
import { Reader } from '../../src/wizards/planning/index.ts';
import type { Placement } from '../../src/wizards/which-supply-where/result.ts';
import {
  crossingAdvice,
  crossingRows,
  forbiddenIn,
  otherWayFails,
  placeSupplies,
} from '../../src/wizards/which-supply-where/result.ts';
import { told } from './told.ts';

type Texts = Readonly<Record<string, string>>;

const unit = (prefix: string, more: Texts = {}): Texts => ({
  [`${prefix}-limit`]: '3 A',
  [`${prefix}-input`]: 'dc',
  [`${prefix}-input-volts`]: '19 V',
  [`${prefix}-plug`]: 'terminals',
  [`${prefix}-rails`]: 'follows',
  ...more,
});

const supply = (prefix: string, volts: string, amps: string, kind = 'dc'): Texts => ({
  [`${prefix}-kind`]: kind,
  [`${prefix}-volts`]: volts,
  [`${prefix}-amps`]: amps,
  [`${prefix}-plug`]: 'terminals',
});

const set = (prefix: string, volts: string): Texts => ({ [`${prefix}-rails`]: 'set', [`${prefix}-rail-volts`]: volts });

/** H0, two units of 3 A whose rails follow two supplies of 16 V and 4 A; ten trains, four moving, alike on both sides. */
const HOME: Texts = {
  system: 'two-rail',
  scale: 'h0',
  ...unit('station'),
  ...unit('booster'),
  ...supply('one', '16 V', '4 A'),
  ...supply('two', '16 V', '4 A'),
  modern: '10',
  older: '0',
  sound: '0',
  stored: '0',
  moving: '4',
  evening: '2 h',
  busier: 'same',
};

const placed = (more: Texts = {}): Placement => placeSupplies(told({ ...HOME, ...more }));
const outcome = (more: Texts = {}): string => placed(more).outcome;

describe('rails set to more volts than their supply has', () => {
  const alike = { ...set('station', '15 V'), ...set('booster', '15 V') };

  test('stand lower than they are set, so that two units set alike differ: the unit, its supply and the volts are named', () => {
    const said = placed({ ...alike, ...supply('two', '12 V', '4 A') });
    expect(said.outcome).toBe('set-both-outputs-equal');
    const best = said.arrangements[0]?.stages.findIndex((one) => one.supply === 1);
    const unit = best === 0 ? 'station' : 'booster';
    expect(said.outOfReach).toEqual([{ unit, set: 15, highest: 12 }]);
  });

  test('behind a converter too, and both where neither supply has them', () => {
    const low = { ...supply('one', '14 V', '4 A'), ...supply('two', '14 V', '4 A') };
    const converter = { ...alike, 'booster-rails': 'converter' };
    expect(placed({ ...converter, ...low }).outOfReach.map(({ unit, highest }) => [unit, highest])).toEqual([
      ['station', 14],
      ['booster', 14],
    ]);
  });

  test('are told to be set lower, and nothing else, where they stand above the range of the scale even so', () => {
    const high = { ...supply('one', '18 V', '4 A'), ...supply('two', '18 V', '4 A') };
    const said = placed({ scale: 'n', ...set('station', '19 V'), ...set('booster', '19 V'), ...high });
    expect(said.outOfReach).toEqual([]);
  });

  test('are no matter where both stand alike and within the range of the scale all the same', () => {
    const alikeHigh = { ...set('station', '18 V'), ...set('booster', '18 V') };
    expect(placed(alikeHigh).outcome).toBe('supplies-either-way');
    expect(placed(alikeHigh).outOfReach).toEqual([]);
  });

  test('are no matter where the supply has just as many, where it has more, or where rails follow it', () => {
    expect(placed(alike).outOfReach).toEqual([]);
    const just = { ...supply('one', '15 V', '4 A'), ...supply('two', '15 V', '4 A') };
    expect(placed({ ...alike, ...just }).outOfReach).toEqual([]);
    expect(placed(supply('two', '12 V', '4 A')).outOfReach).toEqual([]);
  });
});

describe('no purchase on an unread label', () => {
  const short = { ...supply('one', '16 V', '2 A'), ...supply('two', '16 V', '2 A') };

  test('a larger supply for a unit whose plug sign nobody has read: that is read first', () => {
    expect(placed(short)).toMatchObject({ outcome: 'supply-cannot-trip', readFirst: undefined });
    for (const plug of [{ 'station-plug': 'unknown' }, { 'station-plug': 'unknown', 'booster-plug': 'unknown' }]) {
      const one = placed({ ...short, ...plug });
      expect(one.unit?.unit).toBe('station');
      expect(one.readFirst).toBe('plug');
    }
    // The booster's is not the one that gets a new supply.
    expect(placed({ ...short, 'booster-plug': 'unknown' }).readFirst).toBeUndefined();
  });

  test('an input of which nothing is known at all has no purchase, only labels to read', () => {
    expect(placed({ ...short, 'station-input': 'unknown' })).toMatchObject({ outcome: 'read-both-labels', only: true });
  });

  test('where nothing is bought, nothing has to be read first', () => {
    expect(placed({ 'station-plug': 'unknown', 'one-amps': '6 A' }).readFirst).toBeUndefined();
  });
});

describe('two supplies that are the same', () => {
  test('it does not matter, and nothing else is said', () => {
    const one = placed();
    expect([one.outcome, one.because, one.only]).toEqual(['supplies-either-way', 'identical', true]);
  });

  test.each(['station', 'booster', 'same', 'unknown'])('also where the busier part is: %s', (busier) => {
    for (const moving of ['0', '4', '10']) expect(outcome({ busier, moving })).toBe('supplies-either-way');
  });

  test('on units that are set to unlike volts: the setting is put right, not the supplies', () => {
    const one = placed({ ...set('station', '15 V'), ...set('booster', '12 V') });
    expect([one.outcome, one.because]).toEqual(['set-both-outputs-equal', 'both-set']);
  });

  test('nothing about the gap is advised that has to do with the supplies', () => {
    const { crossings, supplies } = placed();
    const [crossing] = crossings;
    if (crossing === undefined) throw new Error('no crossing');
    expect(crossingAdvice(crossing, supplies).advice).not.toContain('two-supplies-alike');
  });
});

describe('labels first', () => {
  test.each(['one-volts', 'two-amps', 'one-kind', 'station-input', 'booster-input-volts'])(
    'with %s not read nothing is placed',
    (field) => {
      const one = placed({ [field]: 'unknown' });
      expect([one.outcome, one.only]).toEqual(['read-both-labels', true]);
    },
  );

  test('a supply that its label forbids on either unit is a stop: nothing else is shown', () => {
    const one = placed({ 'one-volts': '24 V' });
    expect([one.outcome, one.only]).toEqual(['wrong-supply', true]);
  });

  test('a known misfit counts before a label that is not read', () => {
    expect(outcome({ 'one-volts': '24 V', 'two-amps': 'unknown' })).not.toBe('supplies-either-way');
  });
});

describe('whether a short switches the unit off', () => {
  test('2 A behind a unit of 3 A does not, wherever it is put', () => {
    const one = placed({ 'one-amps': '2 A' });
    expect([one.outcome, one.unit?.limit]).toEqual(['supply-cannot-trip', 3]);
    expect(one.unit?.ratingAbove).toBeGreaterThanOrEqual(3);
  });

  test('3 A and 6 A on units of 2 A and 5 A: the large one goes where alone it can trip, whoever has more trains', () => {
    const two = { 'station-limit': '2 A', 'booster-limit': '5 A', 'one-amps': '3 A', 'two-amps': '6 A' };
    for (const busier of ['station', 'same', 'booster']) {
      const one = placed({ ...two, busier });
      expect([one.outcome, one.because]).toEqual(['larger-to-booster', 'trip']);
    }
  });

  test('N on a 5 A unit: set lower first', () => {
    const one = placed({
      scale: 'n',
      'station-limit': '5 A',
      ...supply('one', '14 V', '6 A'),
      ...supply('two', '14 V', '6 A'),
    });
    expect([one.outcome, one.only, one.unit?.ceiling]).toEqual(['lower-trip-level', true, 3]);
  });
});

describe('volts on the rails', () => {
  const either = { 'station-input': 'either', 'booster-input': 'either' };

  test('16 V a.c. on a unit that takes both lifts the rails beyond the scale: a regulated d.c. supply first', () => {
    const one = placed({ ...either, ...supply('one', '16 V', '6 A', 'ac'), ...supply('two', '16 V', '6 A', 'ac') });
    expect([one.outcome, one.because, one.only]).toEqual(['regulated-supply', 'alternating', true]);
    expect(one.railVolts?.to).toBeGreaterThan(22);
  });

  test('14 V a.c. on H0 too, since it rises by itself above the range of the scale', () => {
    expect(outcome({ ...either, ...supply('one', '14 V', '6 A', 'ac'), ...supply('two', '14 V', '6 A', 'ac') })).toBe(
      'regulated-supply',
    );
  });

  test('on units that take a.c. only, no d.c. supply is advised', () => {
    const only = { 'station-input': 'ac', 'booster-input': 'ac' };
    const one = placed({ ...only, ...supply('one', '16 V', '6 A', 'ac'), ...supply('two', '16 V', '6 A', 'ac') });
    expect(one.outcome).toBe('rail-voltage-too-high');
  });

  test('9 V behind units that follow their supply leave the rails too low for decoders, however many amperes there are', () => {
    const one = placed({ ...supply('one', '9 V', '6 A'), ...supply('two', '9 V', '6 A') });
    expect([one.outcome, one.only]).toEqual(['volts-too-low', true]);
  });

  test('12 V behind units that ask for 14 V at least: too few volts, and no placing mends it', () => {
    const least = { 'station-input-volts': '14-19 V', 'booster-input-volts': '14-19 V' };
    const one = placed({ ...least, ...supply('one', '12 V', '6 A'), ...supply('two', '12 V', '6 A') });
    expect([one.outcome, one.only]).toEqual(['volts-too-low', true]);
  });

  test.each([
    ['20 V d.c. on H0, whose rails follow it', 'h0', '20 V', {}],
    ['18 V d.c. on N', 'n', '18 V', { 'station-limit': '2 A', 'booster-limit': '2 A' }],
    [
      '24 V behind outputs that are set to 20 V, on H0',
      'h0',
      '24 V',
      { ...set('station', '20 V'), ...set('booster', '20 V') },
    ],
  ])('%s: more than a volt above what is usual is lowered before anything is placed', (_, scale, volts, more) => {
    const inputs = { 'station-input-volts': '24 V', 'booster-input-volts': '24 V' };
    const one = placed({ scale, ...inputs, ...supply('one', volts, '4 A'), ...supply('two', volts, '4 A'), ...more });
    expect([one.outcome, one.because, one.only]).toEqual(['rail-voltage-too-high', 'above-usual', true]);
    expect(one.railVolts?.to).toBeGreaterThan(SCALE_RANGE[one.scale].to + 1);
  });

  test('19 V d.c. on H0, within a volt of what is usual: placed all the same, and warned of', () => {
    const one = placed({ ...supply('one', '19 V', '4 A'), ...supply('two', '19 V', '4 A') });
    expect(one.outcome).toBe('supplies-either-way');
    expect(one.aboveRange).toEqual({ volts: expect.closeTo(19, 0), known: true });
    expect(one.aboveRange?.volts).toBeGreaterThan(18);
  });

  test('18 V d.c. on H0 is usual: no warning', () => {
    expect(placed({ ...supply('one', '18 V', '4 A'), ...supply('two', '18 V', '4 A') }).aboveRange).toBeUndefined();
  });

  test('20 V d.c. with nobody knowing where the rail volts come from: measured first, and warned of', () => {
    const inputs = { 'station-input-volts': '20 V', 'booster-input-volts': '20 V' };
    const untold = { 'station-rails': 'unknown', 'booster-rails': 'unknown' };
    const one = placed({ ...inputs, ...untold, ...supply('one', '20 V', '4 A'), ...supply('two', '20 V', '4 A') });
    expect(one.outcome).toBe('measure-rail-volts-first');
    expect(one.aboveRange?.known).toBe(false);
    // Nothing is measured on an input that nobody has read.
    const unread = placed({
      ...inputs,
      ...untold,
      'station-input': 'unknown',
      ...supply('one', '20 V', '4 A'),
      ...supply('two', '20 V', '4 A'),
    });
    expect([unread.outcome, unread.aboveRange]).toEqual(['read-both-labels', undefined]);
  });
});

describe('what is said is so', () => {
  test('one output can be set and the other follows its supply: the one that can is set', () => {
    const one = placed({ ...set('booster', '12 V') });
    expect([one.outcome, one.because]).toEqual(['set-both-outputs-equal', 'one-follows']);
  });

  test('"more traffic" only where that was said', () => {
    const unlike = { ...supply('one', '16 V', '2.5 A'), ...supply('two', '16 V', '5 A'), ...set('station', '15 V') };
    const level = { ...unlike, ...set('booster', '15 V'), moving: '8' };
    const same = placed({ ...level, busier: 'same' });
    expect(same.because).not.toBe('traffic');
    const booster = placed({ ...level, busier: 'booster' });
    expect([booster.outcome, booster.because]).toEqual(['larger-to-booster', 'traffic']);
  });

  test('both parts far over what their supplies give: either way, and that it is too little is said', () => {
    const much = { ...set('station', '15 V'), ...set('booster', '15 V'), modern: '30', moving: '25', older: '0' };
    const one = placed({ ...much, 'one-amps': '3.2 A', 'two-amps': '3.3 A' });
    expect([one.outcome, one.because, one.stillShort]).toEqual(['supplies-either-way', 'same-amperes', true]);
    expect(one.eitherShort).toBeGreaterThan(0.6);
  });

  test('1 V apart without a setting: the higher to the command station; 3 V apart: two alike', () => {
    expect(outcome({ 'two-volts': '17 V' })).toBe('higher-rails-to-command-station');
    expect(outcome({ 'two-volts': '19 V' })).toBe('two-supplies-alike');
  });

  test('the chance that one of both has too little is that of the same trains, not the sum of both', () => {
    const one = placed({ ...set('station', '15 V'), ...set('booster', '15 V'), moving: '8', 'one-amps': '3.5 A' });
    const parts = one.arrangements[0]?.stages.map(({ judgement }) => judgement.aboveUsable) ?? [];
    expect(one.eitherShort).toBeLessThanOrEqual(parts.reduce((sum, chance) => sum + chance, 0) + 2e-3);
    expect(one.eitherShort).toBeGreaterThanOrEqual(Math.max(...parts) - 2e-3);
  });
});

describe('a supply that must not be plugged is named, with the unit and the reason', () => {
  const low = { 'station-input-volts': '16 V', 'booster-input-volts': '16 V' };

  test('18 V where both inputs take 16 V: it goes into neither', () => {
    const one = placed({ ...low, ...supply('two', '18 V', '5 A') });
    expect(one.outcome).toBe('wrong-supply');
    expect(forbiddenIn(one.arrangements)).toEqual([
      { supply: 1, units: ['station', 'booster'], because: 'too-many-volts' },
    ]);
  });

  test('two reasons, each with its unit', () => {
    const one = placed({ ...low, 'booster-input': 'ac', ...supply('two', '18 V', '5 A') });
    expect(forbiddenIn(one.arrangements)).toEqual([
      { supply: 0, units: ['booster'], because: 'wrong-kind' },
      { supply: 1, units: ['station'], because: 'too-many-volts' },
      { supply: 1, units: ['booster'], because: 'wrong-kind' },
    ]);
  });
});

describe('what is known is said, once everything is told', () => {
  /** 16 V and 3 A, 18 V and 5 A; a command station that passes 3 A, a booster that passes 5 A; rails follow their supplies. */
  const unlike: Texts = {
    ...unit('station', { 'station-input-volts': '14-20 V', 'station-plug': 'centre-plus' }),
    ...unit('booster', { 'booster-input-volts': '14-20 V', 'booster-plug': 'centre-plus', 'booster-limit': '5 A' }),
    ...supply('one', '16 V', '3 A'),
    ...supply('two', '18 V', '5 A'),
    'one-plug': 'centre-plus',
    'two-plug': 'centre-plus',
  };
  const like = (volts: number, amps: number) => ({ kind: 'dc', volts, amps, plug: 'centre-plus' });

  test('16 V only at the command station: supply 1 suits both, and the booster gets one like it that surely trips its 5 A', () => {
    const { outcome, alike } = placed({ ...unlike, 'station-input-volts': '16 V' });
    expect(outcome).toBe('two-supplies-alike');
    expect(alike?.unfit).toEqual([undefined, { unit: 'station', because: 'too-many-volts' }]);
    expect(alike?.kept).toEqual({ supply: 0, unit: 'station', proves: true });
    expect(alike?.buy).toEqual([{ unit: 'booster', supply: like(16, 6), above: expect.closeTo(5.1, 1) }]);
  });

  test('where both suit both, the one that surely trips its unit stays: 18 V and 5 A on the command station', () => {
    const { alike } = placed(unlike);
    expect(alike?.unfit).toEqual([undefined, undefined]);
    expect(alike?.kept).toEqual({ supply: 1, unit: 'station', proves: false });
    expect(alike?.buy).toEqual([{ unit: 'booster', supply: like(18, 6), above: expect.closeTo(5.1, 1) }]);
  });

  test('17 V is hardly sold: the 16 V one stays, though a short has to be proven there', () => {
    const { alike } = placed({ ...unlike, 'two-volts': '17 V' });
    expect(alike?.kept).toEqual({ supply: 0, unit: 'station', proves: true });
    expect(alike?.buy.map((one) => one.supply.volts)).toEqual([16]);
  });

  test('neither suits both: two new ones, with volts that the scale and both labels take', () => {
    const { alike } = placed({
      ...unlike,
      'station-input-volts': '14-16 V',
      'booster-input-volts': '16-20 V',
      'one-volts': '15 V',
    });
    expect(alike?.unfit).toEqual([
      { unit: 'booster', because: 'too-few-volts' },
      { unit: 'station', because: 'too-many-volts' },
    ]);
    expect(alike?.kept).toBeUndefined();
    expect(alike?.buy.map(({ unit: of, supply: { volts, amps } }) => [of, volts, amps])).toEqual([
      ['station', 16, 4],
      ['booster', 16, 6],
    ]);
  });

  test.each(['station-plug', 'booster-plug', 'one-plug'])('with %s not read no purchase is named', (field) => {
    expect(placed({ ...unlike, [field]: 'unknown' }).alike).toBeUndefined();
  });

  test('only where supplies are to be alike', () => {
    expect(placed().alike).toBeUndefined();
  });
});

describe('a supply that may be too small to trip its unit is tested', () => {
  test('3 A on 3 A and 5 A on 5 A: both are to be proven', () => {
    const one = placed({ 'booster-limit': '5 A', 'one-amps': '3 A', 'two-amps': '5 A' });
    expect([one.because, one.toProve]).toEqual(['trip', ['station', 'booster']]);
  });

  test('4 A on 3 A surely trips it: nothing to prove', () => expect(placed().toProve).toEqual([]));

  test('the same supply twice, 3 A on 3 A: it does not matter, and both are to be proven', () => {
    const one = placed({ 'one-amps': '3 A', 'two-amps': '3 A' });
    expect([one.outcome, one.toProve]).toEqual(['supplies-either-way', ['station', 'booster']]);
  });

  test('2 A behind 3 A: the one to get is named, unless the plug sign of the unit is not read', () => {
    const small = { 'one-amps': '2 A', 'two-amps': '2 A' };
    expect(placed(small).unit?.buy).toMatchObject({ kind: 'dc', volts: 16, amps: 4 });
    expect(placed({ ...small, 'station-plug': 'unknown' }).unit?.buy).toBeUndefined();
  });

  test('on a stop nothing is proven', () =>
    expect(placed({ 'one-volts': '24 V', 'one-amps': '3 A' }).toProve).toEqual([]));
});

describe('the two sides of a way round agree', () => {
  const one = (more: Texts = {}): Placement =>
    placed({ 'booster-limit': '5 A', ...supply('one', '16 V', '3 A'), ...supply('two', '17 V', '5 A'), ...more });

  test('the higher rails cannot go to the command station where the booster could not trip then: two alike', () => {
    const { outcome, arrangements } = one();
    expect(arrangements.map(({ trips }) => trips)).toEqual([true, false]);
    expect(outcome).toBe('two-supplies-alike');
  });

  test('and where the label of the command station forbids them', () => {
    expect(one({ 'booster-limit': '3 A', 'one-amps': '4 A', 'station-input-volts': '16 V' }).outcome).toBe(
      'two-supplies-alike',
    );
  });

  test.each(['17 V', '19 V'])('why the other way round is worse is named, and it is not advised: %s', (volts) => {
    const found = one({ 'two-volts': volts });
    expect(otherWayFails(found)).toBe('trip');
    const [crossing] = found.crossings;
    if (crossing === undefined) throw new Error('no crossing');
    const { advice, withheld } = crossingAdvice(crossing, found.supplies, otherWayFails(found));
    expect(advice).not.toContain('higher-rails-to-command-station');
    expect(withheld).toContainEqual({ id: 'higher-rails-to-command-station', because: 'would-not-trip' });
  });

  test('where both ways trip, the higher rails go to the command station, and that is the better way', () => {
    const found = one({ 'booster-limit': '3 A', 'one-amps': '4 A' });
    expect(found.outcome).toBe('higher-rails-to-command-station');
    expect(otherWayFails(found)).toBeUndefined();
    expect(found.arrangements[0]?.step.from).toBeLessThan(0);
  });
});

describe('what the numbers of an arrangement rest on', () => {
  test('trains are told only where both are: which there are, and how many move', () => {
    expect(placed().trainsUntold).toBe(false);
    expect(placed({ modern: 'unknown' }).trainsUntold).toBe(true);
    const { moving: _, ...still } = HOME;
    expect(placeSupplies(told(still)).trainsUntold).toBe(true);
  });

  test('of two units the one that trips above what the scale bears is named', () => {
    const one = placed({ 'booster-limit': '8 A' });
    expect(one).toMatchObject({ outcome: 'lower-trip-level', unit: { unit: 'booster', limit: 8 } });
    const other = placed({ 'station-limit': '8 A' });
    expect(other).toMatchObject({ outcome: 'lower-trip-level', unit: { unit: 'station', limit: 8 } });
  });
});

describe('a train over the gap meets what each part draws', () => {
  /** Rails follow 16 and 17 V, so that the command station, with the busier part, stands higher. */
  const one = placed({ 'two-volts': '17 V', busier: 'station', moving: '6' });
  const fleet = new Reader(told({ ...HOME, moving: '6' })).fleet('h0');
  const p95 = (share: number, moving = 6): number =>
    summarise(districtLoad({ ...fleet, moving }, share).distribution).p95;
  const draws = (moment: CrossingMoment) => {
    const found = one.crossings[0]?.moments[moment];
    const [push] = found?.kind === 'crossing' ? found.pushes : [];
    const of = (row: Reckoned | undefined, name: string) =>
      row?.working.inputs.find((input) => input.name === name)?.value;
    return [
      push?.from,
      of(push?.carries, 'higher-load'),
      of(push?.takeOver, 'lower-load'),
      of(push?.takeOver, 'lower-own-use'),
    ];
  };

  test('while both are idle only what stands there draws, and the booster needs a little for itself', () => {
    expect(draws('idle')).toEqual(['near', p95(0.65, 0), p95(0.35, 0), BOOSTER_OWN_USE]);
  });

  test('with one of them busy the other is idle', () => {
    expect(draws('near-busy')).toEqual(['near', p95(0.65), p95(0.35, 0), BOOSTER_OWN_USE]);
    expect(draws('far-busy')).toEqual(['near', p95(0.65, 0), p95(0.35), BOOSTER_OWN_USE]);
  });

  test('both as busy as the same trains can make them: together no more than each alone', () => {
    const [from, high, low] = draws('loaded');
    expect(from).toBe('near');
    expect(high).toBeGreaterThan(p95(0.65, 0));
    expect(high).toBeLessThanOrEqual(p95(0.65));
    expect(low).toBeGreaterThan(p95(0.35, 0));
    expect(low).toBeLessThanOrEqual(p95(0.35));
  });

  test('its rows tell the larger of two directions, from no current on, with the limit of the stage that pushes', () => {
    const [crossing] = one.crossings;
    if (crossing === undefined) throw new Error('no crossing');
    for (const { moment, verdict, reasons, push } of crossingRows(crossing)) {
      const found = crossing.moments[moment];
      if (found.kind !== 'crossing' || push === undefined) throw new Error(moment);
      const [larger] = [...found.pushes].sort((a, b) => b.step.span.to - a.step.span.to);
      expect({ verdict, reasons }).toEqual({ verdict: found.verdict, reasons: found.reasons });
      expect(push).toEqual({
        step: larger?.step.span.to,
        pulse: { from: Math.max(0, larger?.pulse.span.from ?? 0), to: larger?.pulse.span.to },
        takeOver: { from: Math.max(0, larger?.takeOver.span.from ?? 0), to: larger?.takeOver.span.to },
        carries: { from: larger?.carries.span.from, to: larger?.carries.span.to },
        limit: larger?.limit,
      });
    }
  });

  test('rails alike push nothing: a row of its moment, without figures', () => {
    const [crossing] = placed({ ...set('station', '15 V'), ...set('booster', '15 V') }).crossings;
    if (crossing === undefined) throw new Error('no crossing');
    expect(crossingRows(crossing).map(({ moment, verdict, push }) => [moment, verdict, push === undefined])).toEqual(
      CROSSING_MOMENTS.map((moment) => [moment, 'fine', true]),
    );
  });

  test('the other side’s supply is put there only where the label permits it, and not while that is unread', () => {
    const higher = { ...supply('one', '19 V', '4 A'), ...supply('two', '16 V', '4 A') };
    const withheld = (more: Texts): unknown => {
      const [, second] = placed({ ...higher, ...more }).crossings;
      return second === undefined
        ? undefined
        : crossingAdvice(second, placed({ ...higher, ...more }).supplies).withheld;
    };
    const exchanged = (more: Texts): boolean => {
      const found = placed({ ...higher, ...more });
      const [, second] = found.crossings;
      return (
        second !== undefined &&
        crossingAdvice(second, found.supplies).advice.includes('higher-rails-to-command-station')
      );
    };
    expect(exchanged({})).toBe(true);
    expect(withheld({})).toEqual([]);
    expect(exchanged({ 'station-input-volts': '17 V' })).toBe(false);
  });
});

describe('what is advised at the gap', () => {
  const advice = (more: Texts, way = 0) => {
    const found = placed(more);
    const crossing = found.crossings[way];
    if (crossing === undefined) throw new Error('no crossing');
    return crossingAdvice(crossing, found.supplies);
  };

  test('outputs that both follow their supplies cannot be set: no setting is advised', () => {
    const apart = { ...supply('one', '16 V', '4 A'), ...supply('two', '18 V', '4 A') };
    expect(advice(apart).advice).not.toContain('set-both-outputs-equal');
    expect(advice(apart).advice).toContain('two-supplies-alike');
    expect(advice({ ...set('station', '15 V'), ...set('booster', '12 V') }).advice).toContain('set-both-outputs-equal');
  });

  test('the supply of the booster goes to the command station only where that one’s label takes it, whichever it is', () => {
    // The best way stands the command station higher; the other way round the higher supply would have to come to it.
    const volts = (one: string, two: string): Texts => ({ ...supply('one', one, '4 A'), ...supply('two', two, '4 A') });
    for (const more of [volts('16 V', '18 V'), volts('18 V', '16 V')]) {
      expect(advice(more, 1).advice).toContain('higher-rails-to-command-station');
      const narrow = placed({ ...more, 'station-input-volts': '17 V' });
      const lower = narrow.crossings[0];
      if (lower === undefined) throw new Error('no crossing');
      const { advice: advised, withheld } = crossingAdvice(lower, narrow.supplies);
      expect(advised).not.toContain('higher-rails-to-command-station');
      expect(withheld).toContainEqual({ id: 'higher-rails-to-command-station', because: 'above-its-label' });
    }
  });
});

describe('what an outcome carries', () => {
  const facts = ({
    outcome,
    because,
    only,
    unit: of,
    railVolts,
    alike,
    readFirst,
    expected,
    aboveRange,
    toProve,
  }: Placement) => ({
    outcome,
    because,
    only,
    of: of?.unit,
    railVolts: railVolts !== undefined,
    alike: alike !== undefined,
    readFirst,
    expected: expected !== undefined,
    aboveRange,
    toProve,
  });
  const NONE = {
    because: undefined,
    only: false,
    of: undefined,
    railVolts: false,
    alike: false,
    readFirst: undefined,
    expected: true,
    aboveRange: undefined,
    toProve: [],
  };

  test.each<[string, Texts, Partial<ReturnType<typeof facts>>]>([
    ['a label not read', { 'two-amps': 'unknown' }, { outcome: 'read-both-labels', only: true, expected: false }],
    ['an input not read', { 'station-input': 'unknown' }, { outcome: 'read-both-labels', only: true }],
    ['a supply with too many volts', { 'one-volts': '24 V' }, { outcome: 'wrong-supply', only: true }],
    [
      'too few for what is asked for',
      { 'station-input-volts': '17-19 V', 'booster-input-volts': '17-19 V' },
      { outcome: 'volts-too-low', only: true },
    ],
    [
      'too few for one, the wrong kind for the other',
      { 'station-input-volts': '17-19 V', 'booster-input': 'ac' },
      { outcome: 'wrong-supply', only: true },
    ],
    [
      'a unit that trips above what N bears',
      { scale: 'n', 'one-volts': '14 V', 'two-volts': '14 V', 'booster-limit': '5 A' },
      { outcome: 'lower-trip-level', only: true, of: 'booster' },
    ],
    [
      'a limit that nobody has read is no reason to lower it',
      { 'booster-limit': 'unknown' },
      { outcome: 'supplies-either-way', because: 'identical', only: true },
    ],
    [
      'a supply too small for the booster alone',
      { 'booster-limit': '5 A', 'one-amps': '3.5 A', 'two-amps': '3.5 A' },
      { outcome: 'supply-cannot-trip', only: true, of: 'booster' },
    ],
    [
      'rails of which nobody knows',
      { 'station-rails': 'unknown' },
      { outcome: 'measure-rail-volts-first', expected: false },
    ],
    [
      '9 V',
      { 'one-volts': '9 V', 'two-volts': '9 V' },
      { outcome: 'volts-too-low', because: 'too-low', only: true, railVolts: true },
    ],
    [
      'one set and one that follows',
      set('booster', '12 V'),
      { outcome: 'set-both-outputs-equal', because: 'one-follows' },
    ],
    [
      'both set unlike',
      { ...set('station', '15 V'), ...set('booster', '12 V') },
      { outcome: 'set-both-outputs-equal', because: 'both-set' },
    ],
    [
      'set alike, but the supplies unlike',
      { ...set('station', '15 V'), ...set('booster', '15 V'), 'two-volts': '17 V' },
      { outcome: 'supplies-either-way', because: 'enough' },
    ],
    [
      'two alike wanted, a plug unread',
      { 'two-volts': '19 V', 'booster-plug': 'unknown' },
      { outcome: 'two-supplies-alike', readFirst: 'plug', aboveRange: { volts: expect.any(Number), known: true } },
    ],
    [
      'two alike wanted, all read',
      { 'two-volts': '19 V' },
      { outcome: 'two-supplies-alike', alike: true, aboveRange: { volts: expect.any(Number), known: true } },
    ],
  ])('%s', (_, more, expected) => {
    expect(facts(placed(more))).toEqual({ ...NONE, ...expected });
  });

  test('amperes that differ by less than a twentieth of an ampere are the same', () => {
    const much = {
      ...set('station', '15 V'),
      ...set('booster', '15 V'),
      modern: '30',
      moving: '25',
      older: '0',
      'station-limit': '5 A',
      'booster-limit': '5 A',
    };
    expect(placed({ ...much, 'one-amps': '6 A', 'two-amps': '6 A', 'two-volts': '18 V' }).because).not.toBe(
      'identical',
    );
    expect(
      placed({ ...much, 'one-amps': '3.2 A', 'two-amps': '3.2 A', 'station-limit': '3 A', 'booster-limit': '3 A' })
        .because,
    ).toBe('identical');
    expect(
      placed({ ...much, 'station-limit': '3 A', 'booster-limit': '4 A', 'one-amps': '6 A', 'two-amps': '6 A' }).because,
    ).toBe('identical');
  });

  test('no unit is told to be bought for where the outcome is a stop of labels', () => {
    for (const more of [{ 'one-volts': '24 V' }, { 'two-amps': 'unknown' }]) expect(placed(more).unit).toBeUndefined();
  });

  test('a unit that a short would not switch off: its limit, what the scale bears, what has to be printed at least', () => {
    const { unit: found } = placed({ 'booster-limit': '5 A', 'one-amps': '3.5 A', 'two-amps': '3.5 A' });
    expect(found).toMatchObject({ unit: 'booster', limit: 5, ceiling: 5 });
    expect(found?.ratingAbove).toBeCloseTo(5 + BOOSTER_OWN_USE, 1);
    expect(found?.buy).toEqual({ kind: 'dc', volts: 16, plug: 'terminals', amps: 6 });
  });
});
