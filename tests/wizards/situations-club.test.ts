// A club whose layout is divided already, as it tells it. What an experienced person says to it is common practice, no source.
import { describe, expect, test } from 'vitest';
import { BOOSTER_OWN_USE } from '../../src/engine/index.ts';
import { enoughCurrent } from '../../src/wizards/enough-current/flow.ts';
import { reckon } from '../../src/wizards/enough-current/reckoning.ts';
import { conclude } from '../../src/wizards/enough-current/result.ts';
import { replay } from '../../src/wizards/planning/replay.ts';
import { told } from './told.ts';

type Texts = Readonly<Record<string, string>>;

/** Forty H0 trains, eight under way; three districts of 5 A, each with 8 A d.c.; the station has the first. */
const CLUB: Texts = {
  system: 'two-rail',
  aim: 'enough',
  scale: 'h0',
  draw: 'count',
  modern: '30',
  older: '10',
  sound: '10',
  stored: '0',
  moving: '8',
  coaches: '20',
  lamps: 'led',
  accessories: '0',
  'supply-kind': 'dc',
  'supply-volts': '18 V',
  'supply-amps': '8 A',
  'supply-plug': 'centre-plus',
  'unit-limit': '5 A',
  'unit-input': 'dc',
  'unit-input-volts': '19 V',
  'unit-plug': 'centre-plus',
  'unit-rails': 'set',
  'unit-rail-volts': '15 V',
  'own-use': 'many',
  districts: '3',
  'traffic-a': '4',
  'limit-b': '5 A',
  'amps-b': '8 A',
  'traffic-b': '3',
  'limit-c': '5 A',
  'amps-c': '8 A',
  'traffic-c': '3',
};

function say(more: Texts = {}, without: readonly string[] = []) {
  const answers = told(
    Object.fromEntries(Object.entries({ ...CLUB, ...more }).filter(([id]) => !without.includes(id))),
  );
  return conclude(answers, reckon(answers));
}

describe('a club with districts of its own', () => {
  test('boosters that it has are counted: nothing is to be bought', () => {
    const said = say();
    expect(said.outcome).toBe('power-is-enough');
    expect(said.divided?.layout?.districts.map(({ share }) => share)).toEqual([0.4, 0.3, 0.3]);
    expect(said.remedies).toEqual([]);
  });

  test('nearly all trains in the station: share the traffic out, and buy nothing', () => {
    const said = say({ 'traffic-a': '10', 'traffic-b': '1', 'traffic-c': '0' });
    expect(said.outcome).toBe('lopsided-split');
    expect(said.divided?.layout?.worst).toBe(0);
  });

  test('twelve under way are too many for three districts: so many more are named, and what may move until then', () => {
    const said = say({ moving: '12' });
    expect(said.outcome).toBe('more-districts');
    const advice = said.divided?.layout?.advice;
    expect(advice?.kind).toBe('another');
    if (advice?.kind !== 'another') return;
    expect(advice.districts).toBeGreaterThan(3);
    expect(advice.districts).toBeLessThanOrEqual(6);
    expect(advice.moving).toBeGreaterThanOrEqual(8);
  });

  test('a booster whose supply gives way before it trips comes before any count of trains', () => {
    const said = say({ 'amps-c': '3 A' });
    expect(said).toMatchObject({ outcome: 'supply-cannot-trip', kind: 'surely-not' });
    expect(said.divided?.layout?.advice).toEqual({ kind: 'cannot-trip', districts: [2] });
  });

  test('a booster whose label nobody has read is not called good', () => {
    const said = say({}, ['amps-b']);
    expect(said).toMatchObject({ outcome: 'read-both-labels', kind: 'labels-first' });
    expect(said.divided?.unread).toEqual(['amps-b']);
  });

  test('nobody knows where the trains are: even shares are taken, and said', () => {
    const said = say({}, ['traffic-a', 'traffic-b', 'traffic-c']);
    expect(said.divided?.evenly).toBe(true);
    expect(said.divided?.layout?.districts[1]?.share).toBeCloseTo(1 / 3, 12);
  });

  test('a stop and unread labels of the command station come before its districts', () => {
    expect(say({ 'supply-volts': '30 V' }).outcome).toBe('wrong-supply');
    expect(say({}, ['supply-amps']).outcome).toBe('read-both-labels');
    expect(say({}, ['supply-amps']).divided).toBeUndefined();
  });

  test('a booster that trips above what the scale bears is lowered before any count of trains', () => {
    const said = say({ 'limit-c': '8 A', 'amps-c': '10 A' });
    expect(said).toMatchObject({ outcome: 'lower-trip-level', kind: 'surely-not', tripBelow: 5 });
    expect(said.divided?.above).toEqual(['C']);
  });

  test('equal ratings in a district that is there: that district is tested', () => {
    expect(say({ 'amps-b': '5 A', 'limit-b': '5 A' }).divided?.toProve).toEqual(['B']);
    expect(say().divided?.toProve).toEqual([]);
  });

  test('a supply that the answer replaces need not be tested; those that stay are', () => {
    const two = (moving: string) =>
      say({
        ...{ modern: '12', older: '0', sound: '0', coaches: '0', 'own-use': 'bare', moving, districts: '2' },
        ...{ 'unit-limit': '3 A', 'traffic-a': '5', 'traffic-b': '5', 'limit-b': '3 A', 'amps-b': '2.5 A' },
      }).divided;
    const replaced = two('8');
    expect(replaced?.layout?.advice).toEqual({ kind: 'larger-supply', district: 1, amps: 3 });
    expect(replaced?.layout?.districts[1]?.trip.kind).toBe('perhaps');
    expect(replaced?.toProve).toEqual([]);
    const stays = two('2');
    expect(stays?.layout?.advice.kind).toBe('nothing');
    expect(stays?.toProve).toEqual(['B']);
  });

  test('a booster takes for itself what boosters take, or as little as the command station that was measured', () => {
    const hard = (more: Texts) => say(more).divided?.layout?.districts.map(({ capacity }) => capacity.hard);
    // Supplies of 3 A behind units that would pass 5 A: what is left is what the unit does not take.
    const small = { 'supply-amps': '6 A', 'limit-b': '5 A', 'amps-b': '5 A', 'limit-c': '5 A', 'amps-c': '5 A' };
    const [, many] = hard({ ...small, 'own-use': 'many' }) ?? [];
    const [, least] = hard({ ...small, 'own-use': 'measured', idle: '0.04 A' }) ?? [];
    expect(many).toBeCloseTo(5 - BOOSTER_OWN_USE, 9);
    expect(least).toBeCloseTo(5 - 0.04, 9);
  });

  test('what is bought for one of its districts goes on an input that nobody was asked about: that is read first', () => {
    const small = {
      ...{ modern: '12', older: '0', sound: '0', coaches: '0', 'own-use': 'bare', moving: '8', districts: '2' },
      ...{ 'unit-limit': '3 A', 'traffic-a': '5', 'traffic-b': '5', 'limit-b': '3 A', 'amps-b': '2.5 A' },
    };
    const first = (more: Texts) => {
      const { outcome, readFirst } = say(more);
      return [outcome, readFirst];
    };
    expect(first({ 'amps-c': '3 A' })).toEqual(['supply-cannot-trip', 'input']);
    expect(first(small)).toEqual(['larger-supply', 'input']);
    expect(first({ moving: '12' })).toEqual(['more-districts', 'input']);
    expect(first({})).toEqual(['power-is-enough', undefined]);
    expect(first({ 'traffic-a': '8', 'traffic-b': '1', 'traffic-c': '1' })).toEqual(['lopsided-split', undefined]);
  });

  test('how many may move is no number of the whole layout where each district has its own', () => {
    const { mayMove, more } = say();
    expect([mayMove, more]).toEqual([undefined, undefined]);
    expect(say({ districts: '1' }).mayMove?.tight).toBeGreaterThan(0);
  });

  test('one district is no division', () => {
    expect(say({ districts: '1' }).divided).toBeUndefined();
  });
});

/** The same club before it is divided: one unit, and what it thinks of. */
const UNDIVIDED = Object.fromEntries(
  Object.entries(CLUB).filter(([id]) => id !== 'districts' && !/^(?:traffic|limit|amps)-[a-c]$/.test(id)),
);

function plan(more: Texts = {}, without: readonly string[] = []) {
  const texts = { ...UNDIVIDED, divided: 'planned', ...more };
  const answers = told(Object.fromEntries(Object.entries(texts).filter(([id]) => !without.includes(id))));
  return conclude(answers, reckon(answers));
}

describe('a club that plans districts', () => {
  test('three districts planned, nothing more told: each is judged by its own law, like the unit there is, and it is what to do', () => {
    const said = plan({ 'plan-districts': '3' });
    expect(said.outcome).toBe('more-districts');
    const { layout, planned } = said.divided ?? {};
    expect(layout?.districts.map(({ share }) => share)).toEqual(
      [1 / 3, 1 / 3, 1 / 3].map((share) => expect.closeTo(share, 12)),
    );
    expect(layout?.districts.map(({ judgement }) => judgement.verdict)).not.toContain('short');
    expect(planned).toMatchObject({ unitTold: false, supplyTold: false, boosters: 2, limit: 5 });
    // What is to be got surely trips its unit.
    expect(layout?.districts.map(({ trip }) => trip.kind)).toEqual(['surely', 'surely', 'surely']);
    expect(said.readFirst).toBe('input');
  });

  test('two districts planned are a booster with a supply of its own', () => {
    const said = plan({ 'plan-districts': '2', moving: '5' });
    expect([said.outcome, said.readFirst]).toEqual(['booster-with-own-supply', 'input']);
  });

  test('boosters that lie ready are not bought for it', () => {
    const [none, one] = [plan({ 'plan-districts': '3' }), plan({ 'plan-districts': '3', boosters: '1' })];
    expect(one.divided?.planned?.boosters).toBe(1);
    expect(one.divided?.planned?.cost.money.to).toBeLessThan(none.divided?.planned?.cost.money.to ?? 0);
  });

  test('a plan with too few districts says how many would do, and what may move until then', () => {
    const said = plan({ 'plan-districts': '2', moving: '14' });
    expect(said.outcome).toBe('more-districts');
    expect(said.divided?.layout?.advice).toMatchObject({ kind: 'another' });
  });

  test('most trains in one of them: that is taken to be the one with less to plan with', () => {
    const even = plan({ 'plan-districts': '3', 'plan-limit': '3 A', 'plan-amps': '5 A' });
    const said = plan({ 'plan-districts': '3', 'plan-limit': '3 A', 'plan-amps': '5 A', 'plan-busiest': '6' });
    expect(said.divided?.layout?.districts.map(({ ofTen }) => Math.round(ofTen))).toEqual([2, 6, 2]);
    expect(said.divided?.layout?.worst).toBe(1);
    expect(even.divided?.evenly).toBe(true);
    expect(said.divided?.evenly).toBe(false);
  });

  // 14 modern trains under way are too many for one unit of 5 A, not for each half of them.
  test('a plan in which every district has enough once the traffic is shared out is what to do all the same', () => {
    const crowded = (districts: string) =>
      plan({
        modern: '40',
        older: '0',
        sound: '0',
        coaches: '0',
        moving: '14',
        'plan-districts': districts,
        'plan-busiest': '10',
      });
    for (const [districts, outcome] of [
      ['2', 'booster-with-own-supply'],
      ['3', 'more-districts'],
    ] as const) {
      const said = crowded(districts);
      expect(said.divided?.layout?.verdict).toBe('short');
      expect(said.divided?.layout?.advice.kind).toBe('share-out');
      expect(said.outcome).toBe(outcome);
    }
  });

  test('fewer than its even part is not the busiest: even shares are taken', () => {
    const said = plan({ 'plan-districts': '2', 'plan-busiest': '3' });
    expect(said.divided?.layout?.districts.map(({ ofTen }) => ofTen)).toEqual([5, 5]);
    expect(said.divided).toMatchObject({ evenly: true, planned: { busiestTold: true } });
    expect(plan({ 'plan-districts': '2' }).divided).toMatchObject({ evenly: true, planned: { busiestTold: false } });
  });

  test('a planned supply that gives way before its unit trips comes before any count of trains', () => {
    const said = plan({ 'plan-districts': '3', 'plan-amps': '3 A' });
    expect(said).toMatchObject({ outcome: 'supply-cannot-trip', kind: 'surely-not' });
  });

  test('a planned supply equal to its unit may not trip it: the larger one is what to get, and the set there is tested', () => {
    const even = plan({ 'plan-districts': '4', 'plan-limit': '5 A', 'plan-amps': '5 A', 'supply-amps': '5 A' });
    expect(even.divided?.layout?.districts.map(({ trip }) => trip.kind)).toEqual(Array(4).fill('perhaps'));
    expect(even.divided?.planned).toMatchObject({ amps: 5, buyAmps: 6 });
    expect(even.divided?.toProve).toEqual(['A']);
    const larger = plan({ 'plan-districts': '4', 'plan-limit': '5 A', 'plan-amps': '6 A' });
    expect(larger.divided?.planned).toMatchObject({ amps: 6, buyAmps: 6 });
    expect(larger.divided?.toProve).toEqual([]);
  });

  test('boosters that lie ready come with the supply that was told: theirs is tested too, and so is any that none surely replaces', () => {
    const proved = (more: Texts) => plan({ 'plan-districts': '3', ...more }).divided?.toProve;
    const even = { 'plan-limit': '5 A', 'plan-amps': '5 A', 'supply-amps': '5 A' };
    expect(proved(even)).toEqual(['A']);
    expect(proved({ ...even, boosters: '1' })).toEqual(['A', 'B', 'C']);
    // Scale 1 bears 10 A, and NEM 609 ends there: no permitted supply surely trips such a unit.
    const most = { scale: '1', 'unit-limit': '10 A', 'supply-amps': '10 A', 'plan-limit': '10 A', 'plan-amps': '10 A' };
    expect(proved(most)).toEqual(['A', 'B', 'C']);
  });

  test('a plan with more districts than the trains want says how many would do; one with as many does not', () => {
    const fewer = plan({ 'plan-districts': '6', moving: '14' }).divided?.planned?.fewer ?? 0;
    expect(fewer).toBeGreaterThan(1);
    expect(fewer).toBeLessThan(6);
    const least = plan({ 'plan-districts': String(fewer), moving: '14' });
    expect(least.divided?.layout?.advice.kind).toBe('nothing');
    expect(least.divided?.planned?.fewer).toBeUndefined();
  });

  test('one whose power is enough undivided too is told no fewer districts: what it is for is not the trains', () => {
    const spared = plan({ 'plan-districts': '6', moving: '2', sound: '0', coaches: '0' }).divided?.planned;
    expect(spared).toMatchObject({ spare: true, fewer: undefined });
  });

  test('and so is one that does not do as it is', () => {
    const short = plan({ 'plan-districts': '2', moving: '14' }).divided;
    expect(short?.layout?.verdict).toBe('short');
    expect(short?.planned).toMatchObject({ spare: false, fewer: undefined });
  });

  test('a plan that is too small for the sound of what stands is told the free way, and does once it is off', () => {
    const loud = { modern: '40', older: '0', moving: '12', coaches: '0', 'plan-districts': '3' };
    const said = plan({ ...loud, sound: '40' }).divided;
    expect(said?.layout?.advice.kind).not.toBe('nothing');
    expect(said?.onceQuiet).toBe('muted');
  });

  test('a plan that is too small says how many boosters more would do, and what they take', () => {
    const small = plan({ 'plan-districts': '2', moving: '14' }).divided?.planned;
    const enough = plan({ 'plan-districts': String(small?.larger?.districts), moving: '14' });
    expect(enough.divided?.layout?.advice.kind).toBe('nothing');
    expect(small?.larger).toMatchObject({
      boosters: enough.divided?.planned?.boosters,
      cost: enough.divided?.planned?.cost,
    });
    expect(plan({ 'plan-districts': '6' }).divided?.planned?.larger).toBeUndefined();
  });

  test('planned units that trip above what the scale bears are not planned', () => {
    expect(plan({ 'plan-districts': '3', 'plan-limit': '8 A', 'plan-amps': '10 A' })).toMatchObject({
      outcome: 'lower-trip-level',
      tripBelow: 5,
    });
  });

  test('what can be run before the work is done is told as ever', () => {
    expect(plan({ 'plan-districts': '3' }).mayMove?.tight).toBeGreaterThan(0);
  });

  test('lit coaches that nobody has told of leave it open, for a plan and for districts that there are', () => {
    expect(plan({ 'plan-districts': '6' }).kind).toBe('surely');
    expect(plan({ 'plan-districts': '6' }, ['coaches', 'lamps'])).toMatchObject({
      kind: 'depends',
      divided: { untold: 'coaches' },
    });
    expect(say({ moving: '2' }).kind).toBe('surely');
    expect(say({ moving: '2' }, ['coaches', 'lamps'])).toMatchObject({
      kind: 'depends',
      divided: { untold: 'coaches' },
    });
  });

  test('a supply that was told and surely trips its unit is the one to get, though a smaller one would do', () => {
    const amps = (told: string) => {
      const { amps: own, buyAmps } = plan({ 'plan-districts': '3', 'plan-amps': told }).divided?.planned ?? {};
      return [own, buyAmps];
    };
    expect(amps('10 A')).toEqual([10, 10]);
    // One of 5 A only perhaps trips a unit for 5 A.
    expect(amps('5 A')[0]).toBe(5);
    expect(amps('5 A')[1]).toBeGreaterThan(5);
  });

  test('no traffic told in any of them is nothing told: even shares are taken', () => {
    const none = say({ 'traffic-a': '0', 'traffic-b': '0', 'traffic-c': '0' }).divided;
    expect(none?.evenly).toBe(true);
    expect(none?.layout?.districts.map(({ share }) => share)).toEqual(
      [1 / 3, 1 / 3, 1 / 3].map((share) => expect.closeTo(share, 12)),
    );
    expect(say({ 'traffic-b': '0' }).divided?.evenly).toBe(false);
    expect(say({}, ['traffic-b']).divided?.evenly).toBe(true);
  });

  test('its even part told of the busiest is even shares', () => {
    const evenly = (districts: string, busiest: string) =>
      plan({ 'plan-districts': districts, 'plan-busiest': busiest }).divided?.evenly;
    expect([evenly('2', '5'), evenly('2', '6'), evenly('5', '2'), evenly('5', '3')]).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });

  test('whose trains were measured is asked for no sound: it is in what they draw', () => {
    const measured = { draw: 'measured', trains: '6', running: '0.3 A', standing: '0.1 A' };
    const untold = (more: Texts, without: readonly string[]) => say(more, without).divided?.untold;
    expect(untold({ ...measured, moving: '3' }, ['sound', 'stored', 'modern', 'older'])).toBeUndefined();
    expect(untold({}, ['sound', 'stored'])).toBe('sound');
  });

  test('lamps that nobody has looked at leave it open too; where no coach is lit there are none to look at', () => {
    const kinds = ['unknown', 'filament', 'led'].map((lamps) => say({ moving: '2', lamps }).kind);
    expect(kinds).toEqual(['depends', 'depends', 'surely']);
    expect(say({ moving: '2', coaches: '0', lamps: 'unknown' }).kind).toBe('surely');
    // A hundred with filament lamps are too much in any case; with LEDs they may do.
    const many = ['filament', 'led', 'unknown'].map((lamps) => say({ coaches: '100', lamps }).kind);
    expect(many).toEqual(['surely-not', 'depends', 'depends']);
  });

  test('one tap says that it is planned; the plan is asked for then, and links with districts hold', () => {
    const asked = (texts: Texts, ask?: string) => replay(enoughCurrent, told(texts), ask).question?.id;
    expect(asked(UNDIVIDED, 'divided')).toBe('divided');
    expect(asked({ ...UNDIVIDED, divided: 'planned' })).toBe('plan');
    expect(asked({ ...UNDIVIDED, divided: 'divided' })).toBe('our-districts');
    expect(asked({ ...UNDIVIDED, divided: 'whole' })).toBeUndefined();
    expect(replay(enoughCurrent, told(CLUB)).used).toMatchObject({
      divided: { kind: 'choice', option: 'divided' },
      districts: { kind: 'number' },
    });
    expect(replay(enoughCurrent, told({ ...UNDIVIDED, districts: '1' })).used['divided']).toMatchObject({
      option: 'whole',
    });
  });
});
