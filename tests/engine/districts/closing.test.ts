// Which stages have their district already, counted out: what those that have none can still take.
import { describe, expect, test } from 'vitest';
import { Closing } from '../../../src/engine/districts/closing.ts';
import type { DivisionOptions, DivisionStage } from '../../../src/engine/districts/problem.ts';
import { wholeOf } from '../../../src/engine/districts/whole.ts';

/** Bears such a part of the traffic, less by each ampere that is always on. */
const weakening = (share: number): DivisionStage => ({ bears: (part, amps) => part <= share - amps + 1e-9 });
const [STRONG, MIDDLE, WEAK] = [weakening(0.6), weakening(0.4), weakening(0.1)];
const SECTIONS = [37, 62, 1].map((traffic, at) => ({ traffic, fixedAmps: at === 0 ? 0.3 : 0 }));

const closing = (stages: readonly DivisionStage[], options: DivisionOptions = {}) =>
  new Closing(wholeOf({ sections: SECTIONS, joints: [], stages }, options));

/** Four strong stages, one of middling strength, three weak ones: 60, 40 and 10 of a hundred. */
const EIGHT = [STRONG, MIDDLE, WEAK, STRONG, STRONG, WEAK, WEAK, STRONG];
const COUNTS = [4, 1, 3];
const ROOMS = [60, 40, 10];

/** Every number of stages of each kind that have their district. */
const everyCount = COUNTS.reduce<readonly (readonly number[])[]>(
  (all, count) => all.flatMap((so) => Array.from({ length: count + 1 }, (_, more) => [...so, more])),
  [[]],
);

const wordOf = (one: Closing, counts: readonly number[]): number =>
  counts.reduce(
    (word, count, kind) => Array.from({ length: count }).reduce<number>((so) => one.with(so, kind), word),
    0,
  );

describe('However many stages of each kind have their district', () => {
  test('so many are left of each, and all that are left take what they take together', () => {
    const one = closing(EIGHT, { least: 0.2 });
    // All bear 310 of a hundred, so an even use is 60, 40 and 10 over 3.1; a fifth of that, rounded up.
    const least = ROOMS.map((room) => Math.ceil((0.2 * room) / 3.1));
    const words = new Set<number>();
    for (const counts of everyCount) {
      const word = wordOf(one, counts);
      words.add(word);
      const left = COUNTS.map((count, kind) => count - (counts[kind] ?? 0));
      const inAll = (of: readonly number[]): number => left.reduce((sum, n, kind) => sum + n * (of[kind] ?? 0), 0);
      expect(
        COUNTS.map((_, kind) => one.left(word, kind)),
        counts.join(),
      ).toEqual(left);
      expect([one.open[word], one.most[word], one.least[word]], counts.join()).toEqual([
        left.reduce((sum, n) => sum + n, 0),
        inAll(ROOMS),
        inAll(least),
      ]);
      expect(one.largest[word], counts.join()).toBe(Math.max(-1, ...ROOMS.filter((_, kind) => (left[kind] ?? 0) > 0)));
    }
    expect(words.size).toBe(5 * 2 * 4);
    expect(one.all).toBe(wordOf(one, COUNTS));
  });
});

describe('A part of the track', () => {
  test('suits a stage that has no district yet and bears it, and is no less than it is to carry', () => {
    const one = closing(EIGHT, { least: 0.2 });
    const none = wordOf(one, [0, 0, 0]);
    const suits = (traffic: number, fixed = 0, word = none) => one.suits(word, 0, traffic, fixed);
    expect([3, 4, 60, 61].map((traffic) => suits(traffic))).toEqual([false, true, true, false]);
    expect([30, 31].map((traffic) => suits(traffic, 30))).toEqual([true, false]);
    expect(suits(20, 0, wordOf(one, [3, 0, 0]))).toBe(true);
    expect(suits(20, 0, wordOf(one, [4, 0, 0]))).toBe(false);
  });

  test('that is not done may grow as far as the best stage that is left bears, or its own, with what is always on', () => {
    const one = closing(EIGHT);
    const rooms = (counts: readonly number[], fed: number, fixed: number) =>
      one.roomFor(wordOf(one, counts), fed, fixed);
    expect([rooms([0, 0, 0], -1, 0), rooms([4, 0, 0], -1, 0), rooms([4, 1, 0], -1, 0)]).toEqual([60, 40, 10]);
    expect([rooms([0, 0, 0], -1, 25), rooms([4, 0, 0], -1, 25)]).toEqual([35, 15]);
    expect(rooms([4, 1, 0], -1, 25)).toBeLessThan(0);
    expect(rooms([4, 1, 3], -1, 0)).toBeLessThan(0);
    expect(rooms([4, 1, 3], -1, 25)).toBeLessThan(0);
    expect([rooms([0, 0, 0], 2, 0), rooms([0, 0, 2], 2, 5), rooms([4, 1, 0], 2, 0)]).toEqual([10, 5, 10]);
    expect(rooms([0, 0, 3], 2, 0)).toBeLessThan(0);
  });

  test('fills its stage by what that bears with it; where nothing runs it fills none, even one that bears nothing', () => {
    const one = closing([STRONG, { bears: () => false }]);
    expect([one.use(0, 30, 0), one.use(0, 30, 10), one.use(0, 60, 0)]).toEqual([0.5, 0.6, 1]);
    expect([one.use(0, 0, 0), one.use(1, 0, 0), one.use(0, 0, 30)]).toEqual([0, 0, 0]);
    expect(one.use(1, 1, 0)).toBeGreaterThan(1e5);
  });
});

test('Only stages without feeds may have any part that no feed is on', () => {
  const one = closing([{ ...STRONG, feeds: [0] }, STRONG, { ...WEAK, feeds: [2] }, MIDDLE]);
  expect(one.unfed.map((kind) => one.kinds[kind]?.stages)).toEqual([[1], [3]]);
});
