// How a figure is set up stands in its address: what a link says is what the figure shows, and whatever is wrong stands as at the start.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type AllWritten,
  addressOf,
  listOf,
  oneOf,
  settingsIn,
  whole,
  within,
  yesOrNo,
} from '../../src/components/figures/shared/use-settings.ts';

interface Set {
  readonly moving: number;
  readonly voltsA: number;
  readonly bus: number;
  readonly older: boolean;
  readonly view: 'bits' | 'edge';
  readonly feeds: readonly number[];
}
const START: Set = { moving: 4, voltsA: 15, bus: 0.75e-6, older: false, view: 'bits', feeds: [2, 6] };
const WRITTEN: AllWritten<Set> = {
  moving: whole(0, 12),
  voltsA: within(5, 22),
  bus: within(0.14e-6, 4e-6, 1e6),
  older: yesOrNo,
  view: oneOf('bits', 'edge'),
  feeds: listOf(within(0, 40), 3),
};
const read = (search: string): Set => settingsIn(search, START, WRITTEN);

describe('The address of a figure', () => {
  test('gives what it says, and leaves the rest as at the start', () => {
    expect(read('?moving=5&volts-a=17.5&bus=1.5&older=yes&view=edge&feeds=1,2.5')).toEqual({
      moving: 5,
      voltsA: 17.5,
      bus: 1.5e-6,
      older: true,
      view: 'edge',
      feeds: [1, 2.5],
    });
    expect(read('?moving=5')).toEqual({ ...START, moving: 5 });
  });

  test.each([
    '?moving=99',
    '?moving=4.5',
    '?moving=',
    '?volts-a=1e1',
    '?bus=0',
    '?older=maybe',
    '?older=constructor',
    '?view=zebra',
    '?feeds=1,x',
    '?feeds=1,2,3,4',
    '?feeds=',
    '?voltsA=17',
    '?zebra=1',
  ])('with %s, which it cannot be, stands as at the start', (search) => expect(read(search)).toEqual(START));

  test('holds only what differs from the start, and whatever else it said', () => {
    expect(addressOf('?units=feet&moving=5', START, START, WRITTEN)).toBe('?units=feet');
    expect(addressOf('?units=feet', { ...START, moving: 5, feeds: [1, 2] }, START, WRITTEN)).toBe(
      '?feeds=1,2&moving=5&units=feet',
    );
    expect(addressOf('', START, START, WRITTEN)).toBe('');
  });

  test('leads back to what was set', () => {
    const set = fc.record({
      moving: fc.integer({ min: 0, max: 12 }),
      voltsA: fc.integer({ min: 50, max: 220 }).map((tenths) => tenths / 10),
      bus: fc.integer({ min: 14, max: 400 }).map((hundredths) => hundredths / 1e8),
      older: fc.boolean(),
      view: fc.constantFrom('bits' as const, 'edge' as const),
      feeds: fc.array(
        fc.integer({ min: 0, max: 400 }).map((tenths) => tenths / 10),
        { minLength: 1, maxLength: 3 },
      ),
    });
    fc.assert(
      fc.property(set, (one) => {
        const back = read(addressOf('', one, START, WRITTEN));
        expect(back).toEqual({ ...one, bus: expect.closeTo(one.bus, 12) });
      }),
    );
  });
});
