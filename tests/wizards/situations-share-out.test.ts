// Where do I divide the layout: situations as somebody of the trade would judge them.
import { describe, expect, test } from 'vitest';
import { QUESTIONS } from '../../src/wizards/planning/questions.ts';
import type { ShareFound } from '../../src/wizards/share-out/result.ts';
import { shareOutFor, takenInto } from '../../src/wizards/share-out/result.ts';
import {
  DEMO_OVAL,
  EMPTY_SHEET,
  readSheet,
  SHAPE_IDS,
  SHAPES,
  type Sheet,
  writeSheet,
} from '../../src/wizards/sheet/index.ts';
import { TO_WHICH_SUPPLY } from './outcomes.ts';
import { told } from './told.ts';

type Texts = Readonly<Record<string, string>>;

const TRAINS = { system: 'two-rail', scale: 'h0', modern: '6', older: '0' };
const AMPS = { 'station-amps': '3 A', 'booster-amps': '2 A' };
const found = (texts: Texts): ShareFound => shareOutFor(told({ ...TRAINS, shape: 'oval', ...AMPS, ...texts }));

test('the question names the shapes that a sheet can begin with', () => {
  expect(QUESTIONS.shape.fields.flatMap((field) => (field.kind === 'choice' ? field.options : []))).toEqual(SHAPE_IDS);
});

describe('six trains, 3 A and 2 A', () => {
  test('on an oval: two gaps, both on plain straight track, about half of the traffic on each side', () => {
    const { ways, outcome } = found({});
    expect(outcome).toBe('divide-the-track');
    expect(ways[0]?.gaps).toMatchObject([
      { from: 'back-left', to: 'back-right' },
      { from: 'front-right', to: 'front-left' },
    ]);
    for (const { share } of ways[0]?.asked ?? []) expect(Math.abs(share - 0.5)).toBeLessThan(0.1);
    // Both would bear everything, so the stronger one has the busier half.
    expect(ways[0]?.asked[0]?.share).toBeGreaterThan(0.5);
  });

  test.each(SHAPE_IDS)('%s: cut where two parts meet and nowhere else, evenly', (shape) => {
    const [best] = found({ shape }).ways;
    const { joints, sections } = SHAPES[shape](6);
    const partOf = (id: string): number => best?.districts.findIndex((part) => part.sections.includes(id)) ?? -1;
    for (const { id } of sections) expect(partOf(id), id).toBeGreaterThanOrEqual(0);
    const meeting = joints.filter(({ from, to }) => partOf(from) !== partOf(to));
    expect(best?.gaps.map(({ from, to }) => ({ from, to }))).toEqual(meeting.map(({ from, to }) => ({ from, to })));
    expect(best?.evenness).toBe('good');
  });

  test('two gaps between the same two stretches are told apart by their ends, and no others', () => {
    for (const shape of SHAPE_IDS) {
      for (const { gaps } of found({ shape }).ways) {
        expect(new Set(gaps.map(({ from, to, end }) => `${from} ${to} ${end}`)).size).toBe(gaps.length);
        for (const { from, to, end } of gaps) {
          const alike = gaps.filter((other) => other.from === from && other.to === to);
          expect(alike.length > 1).toBe(end !== undefined);
        }
      }
    }
  });

  test('no turnout grown together with the next is cut, and no reversing loop inside', () => {
    for (const shape of SHAPE_IDS) {
      const never = SHAPES[shape](6).joints.filter(({ gap }) => gap === 'impossible');
      for (const { gaps } of found({ shape }).ways) {
        const cut = gaps.map(({ joint }) => joint);
        for (const { id } of never) expect(cut).not.toContain(id);
      }
    }
  });
});

describe('what is not known', () => {
  test('amperes alone are no label: nothing is called read', () => {
    expect(found({}).labelsRead).toBe(false);
  });

  test('before the labels are read the command station is not said to have enough alone, and after that it is', () => {
    const { busier: _, evening: __, ...read } = TO_WHICH_SUPPLY['supplies-either-way'];
    const few = { modern: '2', moving: '1' };
    expect(found(few).enoughAlone).toBe(false);
    expect(found({ ...read, ...few }).enoughAlone).toBe(true);
  });

  test('without any amperes the usual ones of the scale stand for them', () => {
    const { outcome, ways } = found({ 'station-amps': 'unknown', 'booster-amps': 'unknown' });
    expect(outcome).toBe('divide-the-track');
    expect(ways[0]?.asked.map(({ verdict }) => verdict)).toEqual(['unknown', 'unknown']);
  });
});

describe('with all labels read', () => {
  const { busier: _, evening: __, ...read } = TO_WHICH_SUPPLY['supplies-either-way'];

  test('a unit that is set to more volts than its supply has is named, with what its rails can have; with unread labels none is', () => {
    const set = (prefix: string): Texts => ({ [`${prefix}-rails`]: 'set', [`${prefix}-rail-volts`]: '15 V' });
    const input = (prefix: string): Texts => ({ [`${prefix}-input`]: 'dc', [`${prefix}-input-volts`]: '19 V' });
    const low = { ...read, ...input('station'), ...input('booster'), ...set('station'), ...set('booster') };
    const volts = { 'one-volts': '16 V', 'two-volts': '12 V' };
    const { outOfReach, stop } = found({ ...low, ...volts });
    expect(stop).toBeUndefined();
    expect(outOfReach.map(({ set: to, highest }) => [to, highest])).toEqual([[15, 12]]);
    expect(found({ ...low, 'one-volts': '16 V', 'two-volts': '16 V' }).outOfReach).toEqual([]);
    expect(found({ ...low, ...volts, 'one-plug': 'unknown' }).outOfReach).toEqual([]);
  });

  test('the verdict is one of power', () => {
    const { labelsRead, stop, ways } = found(read);
    expect([labelsRead, stop]).toEqual([true, undefined]);
    for (const { verdict } of ways[0]?.asked ?? []) expect(verdict).not.toBe('unknown');
  });

  test('a supply that a unit does not permit comes before any gap', () => {
    const { outcome, ways, stop } = found({ ...read, 'station-input': 'ac' });
    expect([outcome, ways, stop?.outcome]).toEqual(['wrong-supply', [], 'wrong-supply']);
  });
});

describe('taken into a layout sheet', () => {
  const answers = told({ ...TRAINS, shape: 'oval', ...AMPS });
  const gapsOf = ({ joints, districts = [] }: Sheet): { from: string; to: string }[] => {
    const partOf = (id: string): number => districts.findIndex(({ sections }) => sections.includes(id));
    return joints.flatMap(({ from, to }) => (partOf(from) === partOf(to) ? [] : [{ from, to }]));
  };

  test('shape, trains, units, supplies and division come along, so that a plan has the gaps of the answer', () => {
    for (const open of [undefined, EMPTY_SHEET]) {
      const { sheet } = takenInto(open, answers);
      expect(found({}).ways[0]?.gaps).toMatchObject(gapsOf(sheet));
      expect(sheet.sections).toEqual(SHAPES.oval(6).sections);
      expect(sheet.trains).toEqual([{ kind: 'modern', count: 6 }]);
      expect(sheet.stages.map(({ id, supply }) => [id, supply])).toEqual([
        ['station', 'supply-1'],
        ['booster-1', 'supply-2'],
      ]);
      expect(sheet.supplies.map(({ amps }) => amps)).toEqual([3, 2]);
      expect(readSheet(writeSheet(sheet))).toEqual({ sheet, flaws: [] });
    }
  });

  test('a sheet without track keeps what it has besides, and is no new one', () => {
    const open: Sheet = {
      ...EMPTY_SHEET,
      name: 'Attic',
      stages: [{ id: 'station', kind: 'station', limitAmps: 3.5, supply: 'supply-2' }],
      supplies: [{ id: 'supply-2', volts: 15 }],
    };
    const { sheet, fresh, shape } = takenInto(open, answers);
    expect([fresh, sheet.name, shape]).toEqual([false, 'Attic', 'oval']);
    expect(sheet.stages[0]).toEqual(open.stages[0]);
    expect(sheet.supplies[0]).toEqual({ id: 'supply-2', volts: 15, amps: 3 });
    expect(gapsOf(sheet)).toHaveLength(2);
    expect(readSheet(writeSheet(sheet))).toEqual({ sheet, flaws: [] });
  });

  test('a sheet with track of its own is left alone: a new one is begun', () => {
    const { sheet, fresh } = takenInto(DEMO_OVAL, answers);
    expect(fresh).toBe(true);
    expect(sheet).toEqual(takenInto(undefined, answers).sheet);
  });

  test('trains that nobody has counted are not taken as counted', () => {
    expect(
      takenInto(undefined, told({ ...TRAINS, modern: 'unknown', older: 'unknown', shape: 'oval' })).sheet.trains,
    ).toEqual([]);
  });
});

describe('what is told of the way that is best', () => {
  test('the most even one comes first: good before fair, and of fair ones the last', () => {
    for (const shape of SHAPE_IDS) {
      const { ways } = found({ shape });
      const [best, ...others] = ways.map(({ evenness }) => evenness);
      if (others.includes('good')) expect(best, shape).toBe('good');
      else if (others.includes('fair')) expect(best, shape).not.toBe('poor');
      expect(new Set(ways.map(({ gaps }) => JSON.stringify(gaps))).size, shape).toBe(ways.length);
    }
  });

  test('a gap that alone joins two stretches has no end to be told by', () => {
    const { ways } = found({});
    expect(ways[0]?.gaps.map(({ end }) => end)).toEqual([undefined, undefined]);
    expect(ways[0]?.gaps.every((gap) => !('end' in gap))).toBe(true);
  });

  test('amperes of a label count before those that were told at first', () => {
    const { busier: _, evening: __, ...read } = TO_WHICH_SUPPLY['supplies-either-way'];
    const amps = (more: Texts) =>
      takenInto(undefined, told({ ...TRAINS, shape: 'oval', ...more })).sheet.supplies.map((one) => one.amps);
    expect(amps({ 'station-amps': '3 A', 'booster-amps': '2 A' })).toEqual([3, 2]);
    expect(amps({ 'station-amps': '3 A', 'booster-amps': '2 A', 'one-amps': '4 A' })).toEqual([4, 2]);
    expect(amps({ ...read, 'station-amps': '1 A', 'booster-amps': '1 A' }).toSorted()).toEqual([2.5, 5]);
  });

  test('a label is read whole only with kind, volts, amperes and the pole of its plug, and both inputs too', () => {
    const { busier: _, evening: __, ...read } = TO_WHICH_SUPPLY['supplies-either-way'];
    expect(found(read).labelsRead).toBe(true);
    for (const field of [
      'one-kind',
      'one-volts',
      'one-amps',
      'one-plug',
      'two-plug',
      'station-input',
      'booster-input-volts',
      'booster-plug',
    ])
      expect(found({ ...read, [field]: 'unknown' }).labelsRead, field).toBe(false);
  });

  test('supplies that are better the other way round are exchanged, and the sheet has them so', () => {
    const { busier: _, evening: __, ...read } = TO_WHICH_SUPPLY['higher-rails-to-command-station'];
    const answers = told({ ...TRAINS, shape: 'oval', ...read });
    const { exchanged, labelsRead } = shareOutFor(answers);
    const { sheet } = takenInto(undefined, answers);
    const volts = ['one-volts', 'two-volts'].map((id) => {
      const given = answers[id];
      return given?.kind === 'number' ? given.span.from : Number.NaN;
    });
    expect(labelsRead).toBe(true);
    expect(sheet.supplies.map((one) => one.volts)).toEqual(exchanged ? volts.toReversed() : volts);
    expect(Math.max(...volts)).toBe(sheet.supplies[0]?.volts);
  });

  test('a sheet with three units is not laid over, one with two is', () => {
    const unit = (id: string) => ({ id, kind: 'booster' as const });
    const open = (count: number): Sheet => ({ ...EMPTY_SHEET, stages: ['a', 'b', 'c'].slice(0, count).map(unit) });
    const answers = told({ ...TRAINS, shape: 'oval', ...AMPS });
    expect([1, 2, 3].map((count) => takenInto(open(count), answers).fresh)).toEqual([false, false, true]);
    const { sheet } = takenInto(open(2), answers);
    expect(sheet.districts?.map(({ stage }) => stage).toSorted()).toEqual(['a', 'b']);
  });
});

describe('too many trains for two', () => {
  test('it says how many parts it takes', () => {
    const { outcome, districts } = found({ modern: '14' });
    expect(outcome).toBe('more-districts');
    expect(districts).toBeGreaterThan(2);
  });
});

test.each(['0.1 A', '40 A', 'unknown'])('whatever is told there is an answer: %s', (amps) => {
  for (const shape of SHAPE_IDS) {
    for (const modern of ['0', '1', '20', 'unknown']) {
      const { outcome, ways } = found({ shape, modern, 'station-amps': amps, 'booster-amps': '0.1 A' });
      expect(ways.length > 0, `${shape} ${modern}`).toBe(outcome === 'divide-the-track');
    }
  }
});
