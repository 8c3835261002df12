// An answer after a few questions, and further questions that make it surer, each by itself and back to the answer.
import { describe, expect, test } from 'vitest';
import { setup } from 'xstate';
import type { Question } from '../../src/wizards/planning/questions.ts';
import {
  askSystem,
  chose,
  replay,
  SCOPE_ENDS,
  SCOPE_GUARDS,
  surerBy,
  surerIn,
  TYPES,
  wants,
} from '../../src/wizards/planning/replay.ts';
import { told } from './told.ts';

const machine = setup({
  types: TYPES,
  guards: { ...SCOPE_GUARDS, wants, knowsAmperes: chose('draw', 'measured') },
}).createMachine({
  id: 'a-quick-one',
  initial: 'system',
  states: {
    system: askSystem('scale'),
    scale: { on: { 'user.answer': 'surer' } },
    surer: surerBy('accessories', 'coaches', 'draw'),
    accessories: { on: { 'user.answer': 'surer' } },
    coaches: { on: { 'user.answer': 'surer' } },
    draw: { on: { 'user.answer': [{ guard: 'knowsAmperes', target: 'measured' }, { target: 'surer' }] } },
    measured: { on: { 'user.answer': 'surer' } },
    ...SCOPE_ENDS,
  },
});
const QUICK = { system: 'two-rail', scale: 'h0' };
const at = (texts: Readonly<Record<string, string>>, wanted?: string) => {
  const { question, trail, left, count, snapshot } = replay(machine, told(texts), wanted);
  const ids = (of: readonly Question[]) => of.map(({ id }) => id);
  return { asks: question?.id, told: ids(trail), left, count, state: snapshot.value };
};

describe('a quick answer', () => {
  test('is there after the quick questions, and names what else may be asked, in the order of the chart', () => {
    expect(at(QUICK)).toEqual({
      asks: undefined,
      told: ['system', 'scale'],
      left: ['accessories', 'coaches', 'draw'],
      count: undefined,
      state: 'surer',
    });
    expect(surerIn(machine)).toEqual(['accessories', 'coaches', 'draw']);
  });

  test('counts the quick questions only, and never more than it said at first', () => {
    expect(at({}).count).toEqual({ at: 1, of: 2 });
    expect(at({ system: 'two-rail' }).count).toEqual({ at: 2, of: 2 });
  });
});

describe('one question more', () => {
  test('is asked where it is wanted, and stands outside the count', () => {
    expect(at(QUICK, 'coaches')).toMatchObject({ asks: 'coaches', count: undefined, left: ['accessories', 'draw'] });
  });

  test('once answered leads back to the answer, which knows it', () => {
    const back = at({ ...QUICK, coaches: '0' });
    expect(back).toMatchObject({ asks: undefined, state: 'surer', left: ['accessories', 'draw'] });
    expect(back.told).toEqual(['system', 'scale', 'coaches']);
  });

  test('that was answered can be asked again, while the others stay answered', () => {
    const again = at({ ...QUICK, coaches: '0', accessories: '3' }, 'coaches');
    expect(again).toMatchObject({ asks: 'coaches', told: ['system', 'scale', 'accessories'] });
  });

  test('may lead to one that goes with it', () => {
    expect(at({ ...QUICK, draw: 'measured' })).toMatchObject({ asks: 'measured', count: undefined });
    expect(at({ ...QUICK, draw: 'measured', trains: '2', running: '0.3 A', standing: '0.1 A' }).asks).toBeUndefined();
  });

  test('is not asked before the quick answer, nor where it is none of its questions', () => {
    expect(at({}, 'coaches').asks).toBe('system');
    expect(at(QUICK, 'bus')).toMatchObject({ asks: undefined, state: 'surer' });
    expect(at(QUICK, 'constructor').asks).toBeUndefined();
  });

  test('in whatever order they were answered, an address brings back the same answer', () => {
    const one = replay(machine, told({ ...QUICK, accessories: '3', coaches: '0' }));
    const other = replay(machine, told({ coaches: '0', accessories: '3', ...QUICK }));
    expect(other.used).toEqual(one.used);
    expect(other.trail).toEqual(one.trail);
  });
});
