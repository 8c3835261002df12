// Situations as people have them, with what an experienced person says to each. Common practice, no source, where nothing else is named.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { remedies } from '../../src/engine/power/remedies.ts';
import { atLeast } from '../../src/engine/power/rules.ts';
import { enoughCurrent } from '../../src/wizards/enough-current/flow.ts';
import { helpful } from '../../src/wizards/enough-current/helpful.ts';
import type { Reckoning } from '../../src/wizards/enough-current/reckoning.ts';
import { reckon } from '../../src/wizards/enough-current/reckoning.ts';
import type { Conclusion } from '../../src/wizards/enough-current/result.ts';
import { conclude } from '../../src/wizards/enough-current/result.ts';
import { howLikely, surerOf } from '../../src/wizards/enough-current/surer.ts';
import { replay } from '../../src/wizards/planning/replay.ts';
import { near } from '../near.ts';
import { spread } from '../spread.ts';
import { TO_ENOUGH_CURRENT } from './outcomes.ts';
import { told } from './told.ts';

type Texts = Readonly<Record<string, string>>;

/** Four modern H0 locomotives, three of them moving, 16 V d.c. with 4 A, a unit for 3 A; all told, nothing else on the track. */
const USUAL: Texts = {
  system: 'two-rail',
  aim: 'enough',
  scale: 'h0',
  draw: 'count',
  modern: '4',
  older: '0',
  sound: '0',
  stored: '0',
  moving: '3',
  coaches: '0',
  accessories: '0',
  'supply-kind': 'dc',
  'supply-volts': '16 V',
  'supply-amps': '4 A',
  'supply-plug': 'centre-plus',
  'unit-limit': '3 A',
  'unit-input': 'dc',
  'unit-input-volts': '19 V',
  'unit-plug': 'centre-plus',
  'unit-rails': 'set',
  'unit-rail-volts': '15 V',
  'own-use': 'handhelds',
};

interface Said extends Conclusion {
  readonly reckoning: Reckoning;
}

function say(more: Texts = {}, without: readonly string[] = []): Said {
  const answers = told(
    Object.fromEntries(Object.entries({ ...USUAL, ...more }).filter(([id]) => !without.includes(id))),
  );
  const reckoning = reckon(answers);
  return { ...conclude(answers, reckoning), reckoning };
}

const verdict = (said: Said) => said.reckoning.power?.judgement.verdict;
const ids = (said: Said): string[] => said.remedies.map(({ id }) => id);
const buysNothing = (said: Said): void => {
  expect(said.toBuy).toBeUndefined();
  expect(said.chosen?.ratings ?? []).toEqual([]);
};

describe('rails that stand higher than is usual for the scale, though no track is forbidden that', () => {
  const high = (rails: Texts) =>
    say({ 'supply-volts': '20 V', 'unit-input-volts': '24 V', 'unit-rail-volts': '20 V', ...rails });

  test('are set lower before any count of trains: surely where they are known, else that decides', () => {
    expect(high({})).toMatchObject({ outcome: 'rail-voltage-too-high', kind: 'surely-not' });
    const unknown = high({ 'unit-rails': 'unknown' });
    expect(unknown).toMatchObject({ outcome: 'rail-voltage-too-high', kind: 'depends' });
    expect(unknown.deciding?.unknown).toBe('rails');
    expect(high({ 'unit-rail-volts': '15 V' }).outcome).toBe('power-is-enough');
  });
});

describe('a home layout with four locomotives', () => {
  test('three moving on 4 A behind a unit for 3 A: surely enough, nothing to buy', () => {
    const said = say();
    expect(said).toMatchObject({ outcome: 'power-is-enough', kind: 'surely' });
    buysNothing(said);
    for (const { id, cost } of said.remedies)
      expect(id === 'breakers-and-sub-districts' || cost.money.to === 0).toBe(true);
  });

  test('ratings equal, 3 A on 3 A: the trains’ verdict stands, and the trip is perhaps', () => {
    const said = say({ 'supply-amps': '3 A' });
    expect(said.outcome).toBe('power-is-enough');
    expect(said.reckoning.power?.trip?.kind).toBe('perhaps');
  });

  test('2 A on a unit for 3 A: a short never trips it, so that comes before “enough”', () => {
    const said = say({ 'supply-amps': '2 A', 'own-use': 'bare' });
    expect(said).toMatchObject({ outcome: 'supply-cannot-trip', kind: 'surely-not' });
    expect(said.toBuy).toEqual({ kind: 'dc', volts: 16, amps: 4 });
    near(said.tripBelow ?? 0, 2, 1e-9);
  });

  test('nor do breakers help behind it, where one short should not stop everyone', () => {
    expect(say({ 'supply-amps': '2 A', aim: 'shorts' }).outcome).toBe('supply-cannot-trip');
    expect(say({ aim: 'shorts' }).outcome).toBe('breakers-and-sub-districts');
  });

  test('the rating to buy is above trip current and own use together', () => {
    const said = say({ 'supply-amps': '2 A', 'own-use': 'measured', idle: '1.2 A' });
    expect(said.toBuy).toMatchObject({ amps: 5 });
  });
});

describe('no purchase on an unread label', () => {
  const WEAK = { 'supply-amps': '2 A', 'own-use': 'bare' };

  test.each(['unknown', undefined])(
    'the plug of the unit is %s: its sign is read before the supply is bought',
    (plug) => {
      const unread = plug === undefined ? say(WEAK, ['unit-plug']) : say({ ...WEAK, 'unit-plug': plug });
      expect(unread.toBuy).toBeDefined();
      expect(unread.readFirst).toBe('plug');
      expect(say({ ...WEAK, 'unit-plug': 'centre-plus' }).readFirst).toBeUndefined();
    },
  );

  test('also where it is only one of several ways', () => {
    const many = { modern: '30', moving: '25', 'supply-amps': '4 A', 'unit-limit': '3 A', 'unit-plug': 'unknown' };
    const said = say(many);
    expect(said.remedies.some(({ ratings }) => ratings.length > 0)).toBe(true);
    expect(said.readFirst).toBe('plug');
  });

  test('an input whose kind or volts nobody has read: nothing is bought at all', () => {
    for (const field of ['unit-input', 'unit-input-volts']) {
      const said = say({ ...WEAK, [field]: 'unknown' });
      expect(said).toMatchObject({ outcome: 'read-both-labels', kind: 'labels-first', readFirst: undefined });
      buysNothing(said);
    }
  });

  test('alternating current has no poles: no plug sign is waited for', () => {
    const said = say({ ...WEAK, 'supply-kind': 'ac', 'unit-input': 'ac', 'unit-plug': 'unknown', 'unit-rails': 'set' });
    expect(said).toMatchObject({ outcome: 'supply-cannot-trip', readFirst: undefined });
  });

  test('coaches whose lamps nobody has looked at: they come before a purchase, where they settle it', () => {
    const unread = say({
      modern: '6',
      older: '2',
      moving: '3',
      coaches: '12',
      lamps: 'unknown',
      'unit-plug': 'unknown',
    });
    expect(unread.deciding?.unknown).toBe('coach-lamps');
    const verdicts = unread.deciding?.choices.map(({ verdict }) => verdict === 'short');
    expect(verdicts).toEqual([false, true]);
    expect(unread.readFirst === 'lamps' || unread.remedies.every(({ ratings }) => ratings.length === 0)).toBe(true);
  });

  test('lamps decide nothing where it is too much with either kind', () => {
    const said = say({ modern: '6', older: '2', moving: '4', coaches: '30', lamps: 'unknown' });
    expect(said.kind === 'depends' && said.deciding?.unknown === 'coach-lamps').toBe(false);
  });

  test('where there is nothing to buy, nothing has to be read first', () => {
    expect(say({ 'unit-plug': 'unknown' }).readFirst).toBeUndefined();
  });
});

describe('labels that do not go together', () => {
  test.each<[string, Texts, string]>([
    ['24 V on a unit for 19 V', { 'supply-volts': '24 V' }, 'wrong-supply'],
    ['a.c. on a unit for d.c.', { 'supply-kind': 'ac' }, 'wrong-supply'],
    ['plus where the socket has minus', { 'unit-plug': 'centre-minus' }, 'wrong-supply'],
    ['9 V where the input says 12 to 19 V', { 'supply-volts': '9 V', 'unit-input-volts': '12-19 V' }, 'volts-too-low'],
    ['9 V in H0, with no least volts printed', { 'supply-volts': '9 V', 'unit-rails': 'follows' }, 'volts-too-low'],
  ])('%s: stop, and nothing else is shown', (_, more, outcome) => {
    for (const fleet of [{}, { modern: '40', moving: '30' }]) {
      const said = say({ ...more, ...fleet }, more['unit-rails'] === 'follows' ? ['unit-rail-volts'] : []);
      expect(said).toMatchObject({ outcome, kind: 'stop', remedies: [] });
      expect([said.chosen, said.mayMove, said.more, said.toBuy, said.deciding]).toEqual(Array(5).fill(undefined));
    }
  });

  test('9 V are right for Z', () => {
    const z = {
      scale: 'z',
      'supply-volts': '9 V',
      'supply-amps': '3 A',
      'unit-limit': '1.5 A',
      'unit-rails': 'follows',
    };
    expect(say(z, ['unit-rail-volts']).outcome).toBe('power-is-enough');
  });

  test('24 V where the unit permits it, and the rails follow: above what the standard allows, stop', () => {
    const follows = { 'supply-volts': '24 V', 'unit-input-volts': '25 V', 'unit-rails': 'follows' };
    expect(say(follows, ['unit-rail-volts'])).toMatchObject({ outcome: 'rail-voltage-too-high', kind: 'stop' });
    expect(say({ ...follows, 'unit-rails': 'set' }).outcome).toBe('power-is-enough');
  });

  test('22 V and 10 A at scale 1: they go together; a norm for hobby supplies is passed, and that is said', () => {
    const said = say({
      scale: '1',
      modern: '2',
      moving: '2',
      'supply-volts': '22 V',
      'supply-amps': '10 A',
      'unit-limit': '8 A',
      'unit-input-volts': '24 V',
      'unit-rail-volts': '18 V',
    });
    expect(said).toMatchObject({ outcome: 'power-is-enough' });
    expect(said.reckoning.power?.beyondNorm).toBe(true);
    expect(say().reckoning.power?.beyondNorm).toBe(false);
  });
});

describe('a transformer', () => {
  const AC = { 'supply-kind': 'ac', 'supply-plug': 'unknown', 'unit-rails': 'follows' };

  test('16 V a.c. on a unit that takes both and follows it: a regulated d.c. supply, not a larger transformer', () => {
    for (const trains of [{}, { modern: '6', moving: '5' }]) {
      const said = say({ ...AC, ...trains, 'unit-input': 'either' }, ['unit-rail-volts']);
      expect(said.outcome).toBe('regulated-supply');
      expect(said.toBuy).toMatchObject({ kind: 'dc', volts: 16, amps: 4 });
    }
  });

  test('where the rails are set they stay there, and the transformer does', () => {
    expect(say({ ...AC, 'supply-amps': '6 A', 'unit-input': 'either', 'unit-rails': 'set' }).outcome).toBe(
      'power-is-enough',
    );
  });

  test('on a unit for a.c. alone the rails are measured before anything, and nothing is bought', () => {
    const said = say({ ...AC, 'unit-input': 'ac', modern: '6', moving: '5' }, ['unit-rail-volts']);
    expect(said.outcome).toBe('rail-voltage-too-high');
    expect(said.kind).toBe('depends');
    buysNothing(said);
  });

  test('whose rating is lent on for a moment only is not overloaded: it warms over minutes', () => {
    // 3 A a.c. are 1.67 A on the track: three of four moving draw 1.1 A on average and at times more than 1.5 A.
    const set = { ...AC, 'unit-input': 'ac', 'unit-rails': 'set', 'supply-amps': '3 A', 'unit-limit': '1.5 A' };
    const steady = say({ ...set, 'supply-amps': '2.5 A', modern: '3', moving: '3', 'own-use': 'bare' });
    expect(atLeast(verdict(steady) ?? 'short', 'tight')).toBe(true);
    expect(verdict(say({ ...set, 'supply-amps': '1.2 A', modern: '3', moving: '3', 'own-use': 'bare' }))).toBe('short');
  });
});

test('with all others on track that is switched off so many may move as would be enough, or tight, if they were all there are', () => {
  const fits = (limit: 'enough' | 'tight'): number =>
    [1, 2, 3, 4, 5, 6, 7, 8, 9].findLast((count) =>
      atLeast(verdict(say({ modern: '0', older: `${count}`, moving: `${count}` })) ?? 'short', limit),
    ) ?? 0;
  const { mayMove } = say({ modern: '0', older: '20', moving: '8' });
  expect([mayMove?.alone, mayMove?.aloneEnough]).toEqual([fits('tight'), fits('enough')]);
  expect(mayMove?.alone).toBeGreaterThan(mayMove?.aloneEnough ?? 99);
  expect(mayMove?.alone).toBeGreaterThan(mayMove?.tight ?? 99);
  expect(mayMove?.tight).toBeGreaterThan(mayMove?.enough ?? 99);
});

describe('a current above what the scale bears', () => {
  test('N on a unit for 5 A: lower the trip current, nothing to buy', () => {
    for (const moving of ['3', '12']) {
      const said = say({
        scale: 'n',
        modern: '12',
        moving,
        'supply-amps': '5 A',
        'unit-limit': '5 A',
        'unit-rail-volts': '14 V',
      });
      expect(said).toMatchObject({ outcome: 'lower-trip-level', remedies: [] });
      near(said.tripBelow ?? 0, 3, 1e-9);
      buysNothing(said);
    }
  });

  test('what helps the trains besides is told once every label is read, and not before', () => {
    const busy = {
      scale: 'n',
      modern: '40',
      moving: '30',
      'unit-limit': '5 A',
      'supply-amps': '6 A',
      'unit-rail-volts': '12 V',
    };
    expect(say(busy)).toMatchObject({ outcome: 'lower-trip-level', kind: 'surely-not' });
    expect(ids(say(busy))).toContain('more-districts');
    const unread = say({ ...busy, 'unit-input': 'unknown' });
    expect([unread.outcome, ids(unread)]).toEqual(['lower-trip-level', []]);
  });

  test('what then fits is told for the lowered current', () => {
    const said = say({
      scale: 'n',
      modern: '12',
      moving: '3',
      'supply-amps': '8 A',
      'unit-limit': '5 A',
      'unit-rail-volts': '14 V',
    });
    near(said.reckoning.power?.capacity.hard ?? 0, 3, 1e-9);
  });
});

describe('labels that nobody has read', () => {
  test.each(['supply-kind', 'supply-volts', 'supply-amps', 'unit-limit', 'unit-input', 'unit-input-volts'])(
    'without %s nothing is called good, and nothing is bought',
    (id) => {
      for (const more of [{}, { modern: '12', moving: '11' }, { aim: 'shorts' }]) {
        const said = say({ ...more, [id]: 'unknown' });
        expect(said).toMatchObject({ outcome: 'read-both-labels', kind: 'labels-first', remedies: [] });
        buysNothing(said);
      }
    },
  );

  test('a misfit that is known comes first all the same', () => {
    expect(say({ 'supply-volts': '24 V', 'unit-limit': 'unknown' }).kind).toBe('stop');
  });
});

describe('what to do about too much', () => {
  test('three older locomotives moving on 3 A: tight, and one fewer costs nothing', () => {
    const said = say({ modern: '0', older: '3', moving: '3', 'supply-amps': '4 A' });
    expect(verdict(said)).toBe('tight');
    expect(said.outcome).toBe('fewer-moving');
    expect(said.chosen).toMatchObject({ counts: { moving: 2 }, cost: { money: { to: 0 } } });
  });

  test('fourteen sound locomotives, two moving: muting what stands, free, and not three districts', () => {
    const said = say({ modern: '14', sound: '14', moving: '2', 'supply-amps': '4 A' });
    expect(said.outcome).toBe('mute-and-park');
    expect(said.chosen?.counts.muted).toBe(14);
    expect(said.chosen?.cost.money).toEqual({ from: 0, to: 0 });
    const stored = say({ modern: '14', sound: '14', stored: '14', moving: '2', 'supply-amps': '4 A' });
    expect(stored.chosen).toMatchObject({ id: 'mute-and-park', inGroups: true });
  });

  test('thirty lit coaches: LEDs are counted coach by coach, and stand behind what costs less', () => {
    const said = say({ coaches: '30', lamps: 'filament', 'supply-amps': '4 A' });
    const leds = said.remedies.find(({ id }) => id === 'calm-the-consumption');
    expect(leds?.counts.coaches).toBe(30);
    expect(leds?.cost.hours.from).toBeGreaterThanOrEqual(15);
    expect(ids(said).indexOf('calm-the-consumption')).toBeGreaterThan(ids(said).indexOf('booster-with-own-supply'));
  });

  test('what is free stands first, then money decides, then time', () => {
    const said = say({ modern: '10', moving: '9', coaches: '4', lamps: 'filament' });
    const money = said.remedies
      .filter(({ id }) => id !== 'breakers-and-sub-districts')
      .map(({ cost }) => cost.money.to);
    expect(money).toEqual([...money].sort((a, b) => a - b));
    expect(money[0]).toBe(0);
  });

  test('one booster that is tight comes before three districts', () => {
    const said = say({ modern: '9', moving: '8', 'supply-amps': '4 A' });
    const own = said.remedies.find(({ id }) => id === 'booster-with-own-supply');
    expect(own?.verdict).toBe('tight');
    expect(said.outcome).toBe('booster-with-own-supply');
  });

  describe('a garden on a unit for 5 A, where 8 A are usual', () => {
    const garden = (more: Texts): Said =>
      say({
        ...{ scale: '1', modern: '10', moving: '6', 'supply-volts': '20 V', 'supply-amps': '6 A', 'unit-limit': '5 A' },
        ...{ 'unit-input-volts': '24 V', 'unit-rail-volts': '18 V', ...more },
      });

    test('six of ten moving: two boosters that pass 8 A, and not one booster for each train', () => {
      const said = garden({});
      expect(said.chosen).toMatchObject({ id: 'more-districts', limit: 8, ratings: [10, 10], counts: { boosters: 2 } });
      expect(said.chosen?.usable).toHaveLength(2);
    });

    test('on units for 6 A four districts are enough: the three that are tight, and cheaper, are told beside them', () => {
      const on = (more: Texts): Said => garden({ 'supply-volts': '22 V', ...more });
      const alike = on({ 'supply-amps': '8 A', 'unit-limit': '6 A' });
      const larger = on({ 'supply-amps': '5 A', 'unit-limit': '5 A' });
      for (const said of [alike, larger]) {
        expect(said.chosen?.usable).toHaveLength(4);
        const tight = helpful(said).find(({ id }) => id === 'more-districts');
        expect(tight).toMatchObject({ verdict: 'tight' });
        expect(tight?.usable).toHaveLength(3);
        expect(tight?.cost.money.to).toBeLessThan(said.chosen?.cost.money.to ?? 0);
      }
    });

    test('and between these and one moving: how many one such booster carries, and how many with all others parked', () => {
      const said = garden({});
      const one = said.remedies.find(({ id }) => id === 'larger-unit');
      expect([one?.counts.moving, one?.limit, one?.verdict]).toEqual([5, 8, 'tight']);
      expect(said.mayMove).toMatchObject({ enough: 1, alone: 3 });
      expect(one?.cost.money.to).toBeLessThan(said.chosen?.cost.money.to ?? 0);
    });

    test('four of six moving: one larger booster for the whole track, before three districts', () => {
      expect(garden({ modern: '6', moving: '4' }).chosen).toMatchObject({ id: 'larger-unit', limit: 8, ratings: [10] });
    });

    test('a unit that passes what is usual for its scale is not exchanged', () => {
      for (const scale of ['h0', '0']) {
        const said = garden({
          scale,
          'unit-limit': scale === 'h0' ? '3 A' : '5 A',
          'unit-rail-volts': '16 V',
          modern: '30',
          moving: '20',
        });
        expect(said.remedies.length).toBeGreaterThan(1);
        expect(said.remedies.map(({ limit }) => limit)).toEqual(said.remedies.map(() => undefined));
      }
    });

    test('nor one that is only set lower because its supply gives less', () => {
      const said = garden({
        'unit-limit': '8 A',
        'supply-amps': '5 A',
        'supply-volts': '22 V',
        'unit-rail-volts': '20 V',
      });
      expect(said).toMatchObject({ outcome: 'supply-cannot-trip', toBuy: undefined });
      expect(said.remedies.length).toBeGreaterThan(0);
      expect(said.remedies.map(({ limit }) => limit)).toEqual(said.remedies.map(() => undefined));
    });

    test('nor where no permitted supply surely trips the larger one', () => {
      // 22 V and 200 VA are 9 A: the next common rating below is 8 A.
      const said = garden({ 'supply-volts': '22 V', 'unit-rail-volts': '20 V' });
      expect(said.remedies.flatMap(({ limit }) => limit ?? []).every((limit) => limit < 8)).toBe(true);
    });

    test('where a second district of the unit’s own kind does, that is the answer', () => {
      const said = garden({ modern: '4', moving: '4' });
      expect(said.remedies.map(({ limit }) => limit)).toEqual(said.remedies.map(() => undefined));
    });
  });

  test('beside the answer no booster more stands than need be: nothing dearer than the first that is enough', () => {
    const said = say({ modern: '7', moving: '5', 'supply-amps': '2.5 A', 'unit-rails': 'follows' }, [
      'unit-rail-volts',
    ]);
    expect(ids(said)).toEqual(
      expect.arrayContaining(['booster-with-freed-supply', 'booster-with-own-supply', 'more-districts']),
    );
    const shown = helpful(said).map(({ id }) => id);
    expect(shown).toContain('larger-supply');
    expect(shown.filter((id) => id.includes('booster') || id === 'more-districts')).toEqual([
      'booster-with-freed-supply',
    ]);
  });

  test('one that is only tight does not hide the next', () => {
    const said = say({ modern: '9', moving: '8', 'supply-amps': '4 A' });
    expect(said.outcome).toBe('booster-with-own-supply');
    expect(helpful(said).map(({ id }) => id)).toContain('more-districts');
  });

  test('what would still be too little is told as no help', () => {
    const said = say({ modern: '9', moving: '8', 'supply-amps': '2.5 A' });
    expect(said.remedies.filter((one) => one.verdict === 'short').map(({ id }) => id)).toContain('larger-supply');
    const shown = helpful(said);
    expect(shown.length).toBeGreaterThan(0);
    expect(shown.filter((one) => one.verdict === 'short')).toEqual([]);
  });

  test('never “0 trains”', () => {
    const club = say({ modern: '40', sound: '40', moving: '12', 'supply-amps': '4 A' });
    for (const { counts } of club.remedies) expect(counts.moving ?? 1).toBeGreaterThan(0);
    expect(club.outcome).not.toBe('power-is-enough');
    fc.assert(
      fc.property(fc.nat(60), fc.nat(60), fc.nat(40), (modern, moving, coaches) => {
        const said = say({
          modern: String(modern),
          moving: String(Math.min(modern, moving)),
          coaches: String(coaches),
          lamps: 'led',
        });
        for (const { counts } of said.remedies)
          for (const count of [counts.moving ?? 1, counts.parked ?? 1]) expect(count).toBeGreaterThan(0);
      }),
      { numRuns: 25 },
    );
  });

  test('the limit that is passed is named: the unit’s, where the supply could give more', () => {
    expect(say({ modern: '8', moving: '7', 'supply-amps': '8 A' }).reckoning.power?.capacity.limitedBy).toBe('stage');
    expect(say({ modern: '8', moving: '7', 'supply-amps': '3 A' }).reckoning.power?.capacity.limitedBy).toBe('supply');
  });
});

describe('own measurements at the lead of a supply', () => {
  const MEASURED = {
    draw: 'measured',
    trains: '3',
    running: '1 A',
    standing: '0 A',
    moving: '2',
    'supply-volts': '24 V',
    'supply-amps': '5 A',
    'unit-input-volts': '25 V',
  };

  test('behind a step-down unit, 24 V in and 15 V out, one ampere there is 1.36 A on the track', () => {
    const converted = say({ ...MEASURED, 'unit-rails': 'converter' }).reckoning;
    near(converted.summary.mean, 2 * 1.36, 0.01);
    near(converted.measuredTimes ?? 0, 1.36, 0.001);
    const set = say(MEASURED).reckoning;
    near(set.summary.mean, 2, 1e-9);
    expect(set.measuredTimes).toBeUndefined();
  });
});

describe('trains that nobody has told', () => {
  test.each<[string, Texts, boolean]>([
    ['nothing of them', { modern: 'unknown', older: 'unknown', moving: 'unknown' }, true],
    ['how many move', { moving: 'unknown' }, true],
    ['the older ones', { older: 'unknown' }, true],
    ['only sound', { sound: 'unknown' }, false],
    ['all told', {}, false],
  ])('%s: what is drawn is an example or not', (_, more, assumed) => {
    expect(say(more).reckoning.trainsAssumed).toBe(assumed);
  });
});

describe('a verdict on trains that nobody has told', () => {
  const AMPLE = { 'supply-amps': '4 A', 'unit-limit': '3 A' };

  test('which they are: enough is no more than an example', () => {
    for (const more of [{ modern: 'unknown', older: 'unknown', moving: 'unknown' }, { older: 'unknown' }]) {
      const said = say({ ...AMPLE, ...more });
      expect(said.kind).toBe('depends');
      expect(said.deciding?.unknown).toBe('trains');
    }
  });

  test('how many move: surely where all of them may, else it depends on that', () => {
    expect(say({ ...AMPLE, modern: '2', moving: 'unknown' }).kind).toBe('surely');
    const many = say({ ...AMPLE, modern: '12', moving: 'unknown', 'supply-amps': '6 A', 'unit-limit': '5 A' });
    expect([many.kind, many.deciding?.unknown]).toEqual(['depends', 'how-many-move']);
  });

  test('too much for an example of three is said as it is', () => {
    const said = say({ modern: 'unknown', moving: 'unknown', 'supply-amps': '1 A', 'unit-limit': '0.5 A' });
    expect(said.deciding?.unknown).not.toBe('trains');
  });
});

describe('how sure', () => {
  const LIT = { coaches: '8', moving: '4', 'supply-amps': '4 A', 'unit-limit': '3 A' };

  test('lamps that nobody has looked at decide, and one tap settles it', () => {
    const said = say({ ...LIT, lamps: 'unknown' });
    expect(said.kind).toBe('depends');
    expect(said.deciding?.unknown).toBe('coach-lamps');
    const verdicts = Object.fromEntries(said.deciding?.choices.map(({ id, verdict: so }) => [id, so]) ?? []);
    expect(atLeast(verdicts['led'] ?? 'short', 'enough')).toBe(true);
    for (const { answers, verdict: so } of said.deciding?.choices ?? []) {
      const after = told({ ...USUAL, ...LIT });
      expect(reckon({ ...after, ...answers }).power?.judgement.verdict).toBe(so);
    }
  });

  test('LEDs in them: surely enough', () => expect(say({ ...LIT, lamps: 'led' }).kind).toBe('surely'));

  test('a fleet far beyond the unit: surely not', () => {
    expect(say({ modern: '20', moving: '15', 'supply-amps': '4 A' }).kind).toBe('surely-not');
  });

  test('while nobody has told of coaches it depends on them, and up to how many it holds is said', () => {
    const said = say({}, ['coaches']);
    expect(said).toMatchObject({ kind: 'depends', outcome: 'power-is-enough', deciding: { unknown: 'coaches' } });
    const most = said.deciding?.holdsTo ?? 0;
    expect(most).toBeGreaterThan(3);
    const with_ = (coaches: number) => verdict(say({ coaches: String(coaches), lamps: 'filament' })) ?? 'short';
    expect([atLeast(with_(most), 'tight'), atLeast(with_(most + 1), 'tight')]).toEqual([true, false]);
  });
});

describe('an answer that settles it', () => {
  const STEADY = { draw: 'measured', trains: '4', running: '0.43 A', standing: '0 A', moving: '4' };

  test.each<[string, Texts, readonly string[], Readonly<Record<string, Texts>>]>([
    [
      'lamps',
      { coaches: '8', moving: '4', lamps: 'unknown' },
      [],
      { led: { lamps: 'led' }, filament: { lamps: 'filament' } },
    ],
    ['coaches', {}, ['coaches'], { none: { coaches: '0' } }],
    ['accessories', {}, ['accessories'], { none: { accessories: '0' } }],
    ['sound', { moving: '4' }, ['sound', 'stored'], { none: { sound: '0', stored: '0' } }],
    [
      'what the unit takes',
      { ...STEADY, 'unit-limit': '2 A', 'supply-amps': '2.1 A' },
      ['own-use'],
      { bare: { 'own-use': 'bare' } },
    ],
  ])('of %s, once it is taken, comes to the verdict that stood beside it', (_, more, without, options) => {
    const texts = Object.entries({ ...USUAL, ...more }).filter(([id]) => !without.includes(id));
    const answers = told(Object.fromEntries(texts));
    const choices = conclude(answers, reckon(answers)).deciding?.choices ?? [];
    // As if it had been told at its question.
    expect(Object.fromEntries(choices.map(({ id, answers: taken }) => [id, taken]))).toEqual(
      Object.fromEntries(Object.entries(options).map(([id, one]) => [id, told(one)])),
    );
    for (const { answers: taken, verdict: so } of choices) {
      const after = { ...answers, ...taken };
      const reckoning = reckon(after);
      const said = conclude(after, reckoning);
      expect(reckoning.power?.judgement.verdict).toBe(so);
      expect(Object.keys(taken).every((id) => !said.deciding?.choices.some(({ answers: asked }) => id in asked))).toBe(
        true,
      );
    }
  });
});

describe('the quick answer', () => {
  const QUICK = ['system', 'scale', 'modern', 'older', 'moving'];
  const quick: Texts = Object.fromEntries(
    Object.entries(USUAL).filter(
      ([id]) => QUICK.includes(id) || /^(supply|unit)-(kind|volts|amps|plug|limit|input)/.test(id),
    ),
  );

  test('is there after six questions', () => {
    const state = replay(enoughCurrent, told(quick));
    expect(state.question).toBeUndefined();
    expect(state.trail.map(({ id }) => id)).toEqual([
      'system',
      'scale',
      'fleet',
      'moving',
      'supply-label',
      'unit-label',
    ]);
    expect(replay(enoughCurrent, {}).count).toEqual({ at: 1, of: 6 });
  });

  test('with all labels unread: labels first, after no more', () => {
    const nothing = Object.fromEntries(Object.keys(quick).map((id) => [id, 'unknown']));
    const answers = told(nothing);
    expect(replay(enoughCurrent, answers).question).toBeUndefined();
    expect(conclude(answers, reckon(answers))).toMatchObject({ outcome: 'read-both-labels', kind: 'labels-first' });
  });

  test('a link from before, all told, still comes to its answer', () => {
    const state = replay(enoughCurrent, told(USUAL));
    expect(state.question).toBeUndefined();
    expect(state.left).toEqual(['boosters', 'divided', 'evening']);
  });

  test('so does one from before by somebody who had measured', () => {
    const { modern, older, sound, stored, ...rest } = USUAL;
    expect([modern, older, sound, stored]).not.toContain(undefined);
    const state = replay(
      enoughCurrent,
      told({ ...rest, draw: 'measured', trains: '3', running: '0.4 A', standing: '0 A', evening: '2 h' }),
    );
    expect(state.question).toBeUndefined();
    expect(reckon(state.used).trains).toBe(3);
  });

  test('what is left is offered in the order of how likely it changes something: lit coaches early, what only counts last', () => {
    const answers = told({ ...quick, modern: '8', moving: '5' });
    const { left } = replay(enoughCurrent, answers);
    const order = surerOf(answers, left);
    expect(order).toHaveLength(left.length);
    const ids = order.map(({ question }) => question);
    expect(ids.slice(0, 3)).toContain('coaches');
    expect(ids.at(-1)).toBe('evening');
    const chances = order.map(({ chance }) => chance);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    expect(order.at(-1)?.chance).toBe(0);
  });
});

test('ten amperes a train in the lead of a 60 V supply, rails made of it at 5 V: absurd, and still an answer', () => {
  const said = say({
    draw: 'measured',
    trains: '2',
    running: '10 A',
    standing: '5 A',
    'supply-volts': '60 V',
    'unit-input-volts': '60 V',
    'unit-rails': 'converter',
    'unit-rail-volts': '5 V',
  });
  expect(said.reckoning.summary.most).toBeLessThanOrEqual(200);
});

describe('no later answer reverses a “surely”', () => {
  /** Anything a person may tell beyond the quick answer; trains as measured draw what the usual ranges say or are not told. */
  const later = fc.record({
    coaches: fc.oneof(fc.constant(undefined), fc.nat(60)),
    lamps: fc.constantFrom('led', 'filament'),
    accessories: fc.oneof(fc.constant(undefined), fc.nat(60)),
    sound: fc.oneof(fc.constant(undefined), fc.nat(8)),
    'own-use': fc.constantFrom(undefined, 'bare', 'handhelds', 'many'),
    'unit-rails': fc.constantFrom(undefined, 'set', 'follows'),
    aim: fc.constantFrom(undefined, 'enough', 'shorts'),
  });
  const textsOf = (told_: Readonly<Record<string, string | number | undefined>>): Texts => ({
    ...Object.fromEntries(
      Object.entries(told_).flatMap(([id, value]) => (value === undefined ? [] : [[id, String(value)]])),
    ),
    ...(told_['sound'] === undefined ? {} : { stored: '0' }),
    ...(told_['unit-rails'] === 'set' ? { 'unit-rail-volts': '15 V' } : {}),
  });
  const trains = fc.record({
    modern: fc.integer({ min: 1, max: 8 }),
    part: spread(0, 1),
    amps: fc.constantFrom('3.5 A', '4 A', '6 A'),
    limit: fc.constantFrom('1.5 A', '3 A', '5 A'),
  });
  const BEYOND = [
    'coaches',
    'lamps',
    'accessories',
    'sound',
    'stored',
    'own-use',
    'unit-rails',
    'unit-rail-volts',
    'aim',
    'draw',
  ];

  test('told one after the other', () => {
    fc.assert(
      fc.property(trains, later, later, ({ modern, part, amps, limit }, first, then) => {
        const fleet = {
          modern: String(modern),
          moving: String(Math.round(part * modern)),
          'supply-amps': amps,
          'unit-limit': limit,
        };
        const base = Object.fromEntries(Object.entries({ ...USUAL, ...fleet }).filter(([id]) => !BEYOND.includes(id)));
        const at = (more: Texts) => {
          const sound = Math.min(modern, Number(more['sound'] ?? 0));
          const answers = told({ ...base, ...more, ...(more['sound'] === undefined ? {} : { sound: String(sound) }) });
          return conclude(answers, reckon(answers));
        };
        const before = textsOf(first);
        const after = { ...textsOf(then), ...before };
        const [one, two] = [at(before).kind, at(after).kind];
        if (one === 'surely') expect(two).toBe('surely');
        if (one === 'surely-not') expect(two).toBe('surely-not');
      }),
      { numRuns: 60 },
    );
  });
});

describe('a club that is told to divide its track', () => {
  /** Forty trains, sixteen of them moving, ten with sound, twenty coaches with LEDs, one unit of 5 A on 8 A. */
  const CLUB: Texts = {
    modern: '30',
    older: '10',
    sound: '10',
    moving: '16',
    coaches: '20',
    lamps: 'led',
    'supply-volts': '18 V',
    'supply-amps': '8 A',
    'unit-limit': '5 A',
    'own-use': 'many',
  };
  const districts = (said: Said): number => said.chosen?.usable.length ?? 1;

  test('is told with how many districts it would do once what only stands is parked: as many as the moving ones alone need', () => {
    const said = say({ ...CLUB, modern: '12', older: '4', moving: '8' });
    expect(said.outcome).toBe('more-districts');
    const parked = said.onceQuiet?.parked ?? districts(said);
    expect(parked).toBeLessThan(districts(said));
    // The remedies for a fleet whose standing trains draw nothing.
    const { fleet } = said.reckoning;
    const quiet = { ...fleet, trains: fleet.trains.map((group) => ({ ...group, standing: 0 })) };
    const power = said.reckoning.power;
    if (power === undefined) throw new Error('the supply is known');
    const found = remedies({
      fleet: quiet,
      scale: 'h0',
      supply: power.supply,
      stage: said.reckoning.stage,
      input: { kind: 'dc', volts: 19, plug: 'centre-plus' },
    });
    const least = found
      .filter(({ id, verdict: one }) => DIVIDES.has(id) && atLeast(one, said.chosen?.verdict ?? 'enough'))
      .map(({ usable }) => usable.length);
    expect(parked).toBe(Math.min(...least));
  });

  test('with the sound of what stands off a district less will do, and parking it all spares no more: that is not told', () => {
    const said = say(CLUB);
    expect(said.outcome).toBe('more-districts');
    expect(said.onceQuiet?.muted).toBe(districts(said) - 1);
    expect(said.onceQuiet?.parked).toBeUndefined();
  });

  test('where as many are needed with the standing ones parked, nothing is promised of parking', () => {
    const said = say({ ...CLUB, modern: '16', older: '0', sound: '0', moving: '16' });
    expect(said.chosen?.usable.length).toBeGreaterThan(1);
    expect(said.onceQuiet).toEqual({ muted: undefined, parked: undefined });
  });

  test('sound off comes before parking where it spares as much', () => {
    const said = say({ ...CLUB, modern: '30', older: '0', sound: '30', moving: '8' });
    const { muted, parked } = said.onceQuiet ?? {};
    expect(muted).toBeLessThan(districts(said));
    if (parked !== undefined) expect(parked).toBeLessThan(muted ?? 0);
  });
});

const DIVIDES: ReadonlySet<string> = new Set(['larger-supply', 'booster-with-own-supply', 'more-districts']);

describe('trains that are put on in two groups', () => {
  const inGroups = (more: Readonly<Record<string, string>>) => {
    const answers = told({
      ...TO_ENOUGH_CURRENT['put-on-in-two-groups'],
      'supply-amps': '2 A',
      'unit-limit': '2 A',
      ...more,
    });
    const reckoning = reckon(answers);
    const { powerUp, everyday, stall } = reckoning.power?.judgement ?? {};
    return [powerUp?.passes, everyday?.passes, stall?.passes, conclude(answers, reckoning).outcome];
  };

  test('are enough where they would pass the limit together as they are put on, and nothing else does', () => {
    expect(inGroups({})).toEqual([false, true, true, 'put-on-in-two-groups']);
  });

  test('are not where one that is held fast would switch it off as well', () => {
    expect(inGroups({ modern: '6', older: '1', moving: '2' })).toEqual([false, true, false, 'fewer-moving']);
  });

  test('nor where what stands is too much', () => {
    const lit = { modern: '6', stored: '6', moving: '0', coaches: '10', lamps: 'filament' };
    expect(inGroups(lit)).toEqual([false, false, true, 'mute-and-park']);
  });
});

describe('what each outcome carries', () => {
  const carries = (id: string) => {
    const answers = told(TO_ENOUGH_CURRENT[id] ?? {});
    const found = conclude(answers, reckon(answers));
    const { enough = 0, tight = 0, alone = 0, aloneEnough = 0 } = found.mayMove ?? {};
    return {
      kind: found.kind,
      decides: found.deciding?.unknown,
      helps: found.remedies.map(
        (one) => `${one.id} ${one.usable.length}${one.limit === undefined ? '' : ` of ${one.limit} A`}`,
      ),
      chosen: found.chosen?.id,
      buys: found.toBuy,
      below: found.tripBelow,
      moves: [enough, tight, alone, aloneEnough],
      more: found.more?.count,
    };
  };
  const BOOSTERS = ['booster-with-own-supply 2', 'more-districts 3'];

  // The fleets of `outcomes.ts`; what helps stands by money and then by time, with the districts that it makes.
  test.each<[string, Partial<ReturnType<typeof carries>>]>([
    ['power-is-enough', { kind: 'surely', helps: ['breakers-and-sub-districts 1'], moves: [4, 4, 4, 4], more: 3 }],
    [
      'breakers-and-sub-districts',
      { kind: 'surely', helps: ['breakers-and-sub-districts 1'], moves: [4, 4, 4, 4], more: 3 },
    ],
    [
      'calm-the-consumption',
      {
        ...{ kind: 'depends', decides: 'coach-draws', chosen: 'calm-the-consumption', moves: [2, 2, 2, 2], more: 0 },
        helps: [
          'fewer-moving 1',
          'calm-the-consumption 1',
          'larger-unit 1 of 3 A',
          'booster-with-own-supply 2',
          'more-districts 2 of 2.5 A',
        ],
      },
    ],
    [
      'larger-supply',
      {
        ...{ kind: 'depends', decides: 'train-draws', chosen: 'larger-supply', moves: [5, 5, 5, 5], more: 0 },
        helps: ['fewer-moving 1', 'larger-supply 1', 'booster-with-freed-supply 2', ...BOOSTERS],
      },
    ],
    [
      'leds-and-larger-supply',
      {
        ...{ kind: 'surely-not', chosen: 'leds-and-larger-supply', moves: [2, 2, 3, 2], more: 0 },
        helps: [
          'fewer-moving 1',
          'larger-supply 1',
          'calm-the-consumption 1',
          'leds-and-larger-supply 1',
          'booster-with-freed-supply 2',
          ...BOOSTERS,
        ],
      },
    ],
    [
      'booster-with-own-supply',
      {
        kind: 'depends',
        decides: 'train-draws',
        chosen: 'booster-with-own-supply',
        helps: ['fewer-moving 1', ...BOOSTERS],
        moves: [6, 6, 6, 6],
        more: 0,
      },
    ],
    [
      'more-districts',
      {
        kind: 'surely-not',
        chosen: 'more-districts',
        helps: ['fewer-moving 1', 'booster-with-own-supply 2', 'more-districts 5'],
        moves: [5, 5, 6, 6],
        more: 0,
      },
    ],
    [
      'mute-and-park',
      {
        kind: 'surely-not',
        chosen: 'mute-and-park',
        helps: ['mute-and-park 1', ...BOOSTERS],
        moves: [0, 0, 4, 4],
        more: 0,
      },
    ],
    ['put-on-in-two-groups', { kind: 'depends', decides: 'how-many-move', moves: [5, 6, 6, 6], more: 2 }],
    [
      'supply-cannot-trip',
      { kind: 'surely-not', buys: { kind: 'dc', volts: 16, amps: 4 }, below: 2, moves: [4, 4, 4, 4], more: 1 },
    ],
    ['read-both-labels', { kind: 'labels-first' }],
    ['lower-trip-level', { kind: 'surely-not', below: 3, moves: [4, 4, 4, 4], more: 3 }],
    ['wrong-supply', { kind: 'stop' }],
    ['volts-too-low', { kind: 'stop' }],
    ['rail-voltage-too-high', { kind: 'stop' }],
    ['regulated-supply', { kind: 'stop', buys: { kind: 'dc', volts: 16, amps: 4 } }],
  ])('%s', (id, expected) => {
    const none = {
      decides: undefined,
      helps: [],
      chosen: undefined,
      buys: undefined,
      below: undefined,
      moves: [0, 0, 0, 0],
      more: undefined,
    };
    expect(carries(id)).toEqual({ ...none, ...expected });
  });
});

describe('one question more, by how likely its answer changes something', () => {
  const ALL = ['coaches', 'sound', 'accessories', 'rails', 'own-use', 'draw', 'boosters', 'aim', 'divided'] as const;
  const chances = (more: Texts): Readonly<Record<string, number>> =>
    Object.fromEntries(
      surerOf(told({ ...TO_ENOUGH_CURRENT['power-is-enough'], ...more }), ALL).map(({ question, chance }) => [
        question,
        Number(chance.toFixed(3)),
      ]),
    );

  test('three of four moving on 3 A: only many lit coaches, or breakers as the aim', () => {
    // 10 coaches with filament lamps (one in ten), 25 with them (one in thirty); an aim of shorts (15 %).
    expect(chances({})).toEqual({
      ...{ aim: 0.15, coaches: 0.135, divided: 0.03 },
      ...{ sound: 0, accessories: 0, rails: 0, 'own-use': 0, draw: 0, boosters: 0 },
    });
  });

  test('four of six moving, close to the limit: nearly all of them may, sound first', () => {
    expect(chances({ moving: '4', modern: '6' })).toEqual({
      ...{ sound: 0.6, draw: 0.5, coaches: 0.31, accessories: 0.2 },
      ...{ rails: 0.15, 'own-use': 0.15, aim: 0.15, divided: 0.03, boosters: 0 },
    });
  });

  test('too much already: a booster that lies ready counts, an aim of shorts no more; a club of twelve may well be divided', () => {
    const much = chances({ modern: '12', moving: '10' });
    expect([much['boosters'], much['aim'], much['divided']]).toEqual([0.15, 0, 0.6]);
    expect(chances({ modern: '11', moving: '10' })['divided']).toBe(0.03);
  });

  test('stands in the order of its chance, and is said in words', () => {
    const found = surerOf(told(TO_ENOUGH_CURRENT['power-is-enough'] ?? {}), ALL);
    expect(found.map(({ chance }) => chance)).toEqual(found.map(({ chance }) => chance).toSorted((a, b) => b - a));
    expect([0.6, 0.3, 0.2, 0.1, 0.05, 0.005, 0.004, 0].map(howLikely)).toEqual([
      ...['likely', 'likely', 'perhaps', 'perhaps', 'seldom', 'seldom', 'hardly', 'hardly'],
    ]);
  });
});
