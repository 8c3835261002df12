import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atLeast } from '../../src/engine/power/rules.ts';
import { writeQuantity } from '../../src/engine/quantity-text.ts';
import { ENOUGH_CURRENT_OUTCOMES } from '../../src/wizards/enough-current/outcomes.ts';
import { reckon } from '../../src/wizards/enough-current/reckoning.ts';
import { conclude } from '../../src/wizards/enough-current/result.ts';
import { QUESTIONS } from '../../src/wizards/planning/questions.ts';
import { WHICH_SUPPLY_OUTCOMES } from '../../src/wizards/which-supply-where/outcomes.ts';
import { crossingRows, placeSupplies } from '../../src/wizards/which-supply-where/result.ts';
import { near } from '../near.ts';
import { answerTo } from './arbitrary.ts';
import { TO_ENOUGH_CURRENT, TO_WHICH_SUPPLY } from './outcomes.ts';
import { ALL_FIELDS, told } from './told.ts';

const texts = (of: Readonly<Record<string, Readonly<Record<string, string>>>>, id: string) => of[id] ?? {};
const enough = (more: Readonly<Record<string, string>> = {}) =>
  told({ ...texts(TO_ENOUGH_CURRENT, 'power-is-enough'), ...more });
const pair = (more: Readonly<Record<string, string>> = {}) =>
  told({ ...texts(TO_WHICH_SUPPLY, 'supplies-either-way'), ...more });
const outcomeOf = (answers: ReturnType<typeof told>) => conclude(answers, reckon(answers)).outcome;

/** Any answers, with fleets of a size that people have. */
const small = fc
  .tuple(
    ...ALL_FIELDS.map((field) => {
      const most = field.kind === 'number' && field.quantity === 'count' ? Math.min(field.most, 9) : undefined;
      return answerTo(field.kind === 'number' && most !== undefined ? { ...field, most } : field).map(
        (answer) => [field.id, answer] as const,
      );
    }),
  )
  .map((entries) => Object.fromEntries(entries));

describe('"Is my power enough?"', () => {
  test('always comes to one of its outcomes, with sound numbers', () => {
    fc.assert(
      fc.property(small, (answers) => {
        const reckoning = reckon(answers);
        const { outcome, remedies, chosen } = conclude(answers, reckoning);
        expect(ENOUGH_CURRENT_OUTCOMES).toContain(outcome);
        const { mean, p95, most } = reckoning.summary;
        for (const amps of [mean, p95, most, reckoning.plainSum.value])
          expect(Number.isFinite(amps) && amps >= 0).toBe(true);
        for (const one of remedies) expect(one.aboveHard >= 0 && one.aboveHard <= 1).toBe(true);
        if (chosen !== undefined) expect(remedies).toContain(chosen);
      }),
      { numRuns: 120 },
    );
  });

  test('never recommends to buy or plug while a label is not known', () => {
    fc.assert(
      fc.property(small, (answers) => {
        const reckoning = reckon(answers);
        const { outcome, chosen, toBuy, remedies } = conclude(answers, reckoning);
        if (reckoning.labels.kind === 'permitted') return;
        const looks = [
          'read-both-labels',
          'wrong-supply',
          'volts-too-low',
          'rail-voltage-too-high',
          'lower-trip-level',
        ];
        expect(looks).toContain(outcome);
        expect([chosen, toBuy, remedies]).toEqual([undefined, undefined, []]);
      }),
      { numRuns: 120 },
    );
  });

  test('with a supply that the label forbids it says so before anything else', () => {
    expect(outcomeOf(enough({ 'supply-kind': 'ac', 'supply-amps': 'unknown' }))).toBe('wrong-supply');
    expect(outcomeOf(enough({ 'supply-volts': '24 V', modern: '40', moving: '30' }))).toBe('wrong-supply');
    expect(outcomeOf(enough({ 'supply-plug': 'centre-minus' }))).toBe('wrong-supply');
  });

  test('with an unknown label of the unit nothing is called good', () => {
    expect(outcomeOf(enough({ 'unit-input': 'unknown', 'unit-input-volts': 'unknown' }))).toBe('read-both-labels');
  });

  test('with an unknown label of the unit it does not send anybody to buy a larger supply', () => {
    const wants = { modern: '6', moving: '6', 'supply-amps': '2.5 A' };
    expect(outcomeOf(enough(wants))).toBe('larger-supply');
    expect(outcomeOf(enough({ ...wants, 'unit-input-volts': 'unknown' }))).toBe('read-both-labels');
  });

  test('breakers are the answer only where the power is enough: they give none', () => {
    const shorts = { aim: 'shorts', modern: '6', moving: '6' };
    expect(outcomeOf(enough({ ...shorts, moving: '5', 'supply-amps': '4 A' }))).toBe('breakers-and-sub-districts');
    expect(outcomeOf(enough({ ...shorts, 'supply-amps': '2.5 A' }))).toBe('larger-supply');
  });

  test('what is assumed is said: limit of the unit, number moving, scale', () => {
    const { assumptions, stage, fleet } = reckon(
      enough({ 'unit-limit': 'unknown', moving: 'unknown', scale: 'unknown' }),
    );
    expect(assumptions.map(({ field }) => field).sort()).toEqual(['moving', 'scale', 'unit-limit']);
    expect([stage.limit, fleet.moving]).toEqual([3, 2]);
  });

  test('own figures replace the usual ones', () => {
    const measured = enough({ draw: 'measured', trains: '2', running: '0.9-1.1 A', standing: '50 mA', moving: '2' });
    const { fleet, summary } = reckon(measured);
    expect(fleet.trains).toEqual([
      { kind: 'measured', count: 2, running: { from: 0.9, to: 1.1 }, standing: 0.05, stall: 2.2 },
    ]);
    near(summary.mean, 2, 1e-9);
  });

  test('no more move than there are trains, whatever an address says', () => {
    expect(reckon(enough({ modern: '2', moving: '9' })).fleet.moving).toBe(2);
    expect(reckon(enough({ modern: '2', stored: '9' })).fleet.stored).toBe(2);
  });

  test('own use comes off the supply', () => {
    const reckoning = reckon(enough({ 'own-use': 'many' }));
    near(reckoning.power?.capacity.hard ?? Number.NaN, 2.5, 1e-9);
    near(reckon(enough({ 'own-use': 'measured', idle: '300 mA' })).power?.capacity.hard ?? Number.NaN, 2.7, 1e-9);
  });

  test('that a bare unit may take 0.3 A for itself makes a verdict depend on it where that would change it', () => {
    const steady = { draw: 'measured', trains: '4', running: '0.43 A', standing: '0 A', moving: '4' };
    const asked = (own: string) => {
      const answers = enough({ ...steady, 'unit-limit': '2 A', 'supply-amps': '2.1 A', 'own-use': own, idle: '0 A' });
      return conclude(answers, reckon(answers));
    };
    expect(asked('bare')).toMatchObject({ kind: 'depends', deciding: { unknown: 'own-use' } });
    expect(asked('measured').kind).toBe('surely');
  });

  test('what the draws rest on is the least sure of the trains there are', () => {
    expect(reckon(enough({ modern: '2', older: '1' })).drawsSure).toBe('practice');
    expect(reckon(enough({ scale: 'z', older: '2', modern: '0' })).drawsSure).toBe('sourced');
    expect(reckon(enough({ scale: 'z', older: '2', modern: '1' })).drawsSure).toBe('memory');
    expect(
      reckon(enough({ draw: 'measured', trains: '2', running: '1 A', standing: '50 mA', moving: '2' })).drawsSure,
    ).toBeUndefined();
  });

  test('what one will see is told of a busy spell, and its count as a band', () => {
    const short = reckon(enough({ modern: '5', moving: '5', 'supply-amps': '2 A' })).power;
    expect(short?.seen).toBe('within-minutes');
    near((short?.overloads.to ?? 0) / (short?.overloads.from ?? 1), 40, 1e-9);
  });

  test('rails are not judged while it is not known where their volts come from', () => {
    expect(reckon(enough({ 'unit-rails': 'unknown' })).power?.rails.known).toBe(false);
    expect(reckon(enough({ 'unit-rail-volts': 'unknown' })).power?.rails.known).toBe(false);
    expect(reckon(enough()).power?.rails).toMatchObject({ known: true, finding: 'in-range' });
  });

  test('the bars hold every moment', () => {
    const { bars } = reckon(enough({ coaches: '8', lamps: 'filament' }));
    near(
      bars.reduce((sum, { probability }) => sum + probability, 0),
      1,
      1e-9,
    );
    expect(bars.length).toBeLessThanOrEqual(62);
  });

  test('how many may move agrees with the verdict on the number that does', () => {
    const answers = enough({ modern: '5', moving: '5', 'supply-amps': '2 A', 'unit-limit': '2 A' });
    const { mayMove, more } = conclude(answers, reckon(answers));
    expect(mayMove).toMatchObject({ enough: 3, tight: 4 });
    expect(mayMove?.alone).toBeGreaterThanOrEqual(4);
    for (const moving of [3, 4, 5]) {
      const verdict = reckon(enough({ modern: '5', moving: String(moving), 'supply-amps': '2 A' })).power?.judgement
        .verdict;
      expect(atLeast(verdict ?? 'short', 'tight')).toBe(moving <= 4);
    }
    expect(more).toEqual({ kind: 'modern', count: 0 });
  });

  test('the most that the questions let through is still worked out', () => {
    const most = Object.fromEntries(
      ALL_FIELDS.flatMap((field) =>
        field.kind === 'number' && field.quantity === 'count' ? [[field.id, String(field.most)]] : [],
      ),
    );
    const answers = enough(most);
    const reckoning = reckon(answers);
    expect(reckoning.power?.judgement.verdict).toBe('short');
    expect(reckoning.trains).toBe(QUESTIONS.fleet.fields[0].most + QUESTIONS.fleet.fields[1].most);
  });

  test('the least that the questions let through is worked out too', () => {
    const least = Object.fromEntries(
      ALL_FIELDS.flatMap((field) =>
        field.kind === 'number' ? [[field.id, writeQuantity(field.least, field.quantity)]] : [],
      ),
    );
    expect(ENOUGH_CURRENT_OUTCOMES).toContain(outcomeOf(enough(least)));
    expect(outcomeOf(told({}))).toBe('read-both-labels');
  });
});

describe('"Which supply goes on which unit?"', () => {
  test('always comes to one of its outcomes', () => {
    fc.assert(
      fc.property(small, (answers) => {
        const { outcome, arrangements, supplies } = placeSupplies(answers);
        expect(WHICH_SUPPLY_OUTCOMES).toContain(outcome);
        expect(arrangements).toHaveLength(supplies.length === 2 ? 2 : 0);
      }),
      { numRuns: 120 },
    );
  });

  test('calling the supplies the other way round changes nothing', () => {
    const turned = (texts_: Readonly<Record<string, string>>) =>
      Object.fromEntries(
        Object.entries(texts_).map(([id, text]) => [
          id.replace(/^(one|two)-/, (_, which) => (which === 'one' ? 'two-' : 'one-')),
          text,
        ]),
      );
    for (const [outcome, given] of Object.entries(TO_WHICH_SUPPLY)) {
      if (!outcome.startsWith('out-of-scope')) expect(placeSupplies(told(turned(given))).outcome).toBe(outcome);
    }
  });

  test('it puts the higher rails at the command station whatever the amperes, where the rails follow', () => {
    const following = texts(TO_WHICH_SUPPLY, 'higher-rails-to-command-station');
    for (const [one, two] of [
      ['5 A', '2 A'],
      ['2 A', '5 A'],
    ]) {
      const { arrangements } = placeSupplies(told({ ...following, 'one-amps': one ?? '', 'two-amps': two ?? '' }));
      expect(arrangements[0]?.stages.map(({ supply }) => supply)).toEqual([1, 0]);
    }
  });

  test('whether it matters depends on the trains: two moving, no; eight on the command station’s side, yes', () => {
    expect(placeSupplies(pair()).outcome).toBe('supplies-either-way');
    const busy = placeSupplies(pair({ moving: '8', busier: 'station' }));
    expect(busy.outcome).toBe('larger-to-command-station');
    expect(busy.arrangements[0]?.stages.map(({ supply }) => supply)).toEqual([1, 0]);
  });

  test('two supplies alike are either way', () => {
    expect(placeSupplies(pair({ 'one-amps': '5 A', moving: '8' })).outcome).toBe('supplies-either-way');
  });

  test('a pair that only one arrangement permits ends in that arrangement', () => {
    const { outcome, arrangements } = placeSupplies(pair({ 'booster-input-volts': '18 V', 'two-volts': '19 V' }));
    expect(arrangements.map(({ permitted }) => permitted)).toEqual([true, false]);
    expect(outcome).toBe('larger-to-command-station');
  });

  test('the busier part has more of the traffic', () => {
    const shares = ['station', 'same', 'booster', 'unknown'].map(
      (busier) => placeSupplies(pair({ busier })).stationShare,
    );
    expect(shares[0]).toBeGreaterThan(0.5);
    expect([shares[1], shares[3]]).toEqual([0.5, 0.5]);
    near((shares[0] ?? 0) + (shares[2] ?? 0), 1, 1e-12);
  });

  test('a crossing is told moment by moment, with no current below nothing and all of it within what the side can do', () => {
    const { crossings } = placeSupplies(told(texts(TO_WHICH_SUPPLY, 'higher-rails-to-command-station')));
    const [crossing] = crossings;
    if (crossing === undefined) throw new Error('no crossing');
    const rows = crossingRows(crossing);
    expect(rows.map(({ moment }) => moment)).toEqual(['idle', 'loaded', 'near-busy', 'far-busy']);
    const pushed = rows.flatMap(({ push }) => (push === undefined ? [] : [push]));
    expect(pushed.length).toBeGreaterThan(0);
    for (const { step, pulse, takeOver, carries } of pushed) {
      expect(step).toBeGreaterThan(0);
      for (const { from, to } of [pulse, takeOver, carries]) {
        expect(from).toBeGreaterThanOrEqual(0);
        expect(to).toBeGreaterThanOrEqual(from);
      }
    }
  });

  test('a part that has too little even in the best arrangement is said', () => {
    expect(placeSupplies(pair({ 'one-amps': '5 A', moving: '2' })).stillShort).toBe(false);
    const few = placeSupplies(pair({ 'one-amps': '0.5 A', 'two-amps': '0.5 A', moving: '8' }));
    expect(few.arrangements[0]?.stages.some(({ judgement }) => judgement.verdict === 'short')).toBe(true);
    expect(few.stillShort).toBe(true);
  });

  test('what there is to measure is told once the volts on the rails are known, and not before', () => {
    const stepped = placeSupplies(told(texts(TO_WHICH_SUPPLY, 'higher-rails-to-command-station')));
    expect(stepped.expected?.meters.map(({ meter }) => meter)).toEqual(['averaging', 'true-rms', 'cheapest']);
    expect(stepped.expected?.reversed.kind).toBe('short');
    expect(placeSupplies(told(texts(TO_WHICH_SUPPLY, 'measure-rail-volts-first'))).expected).toBeUndefined();
  });
});
