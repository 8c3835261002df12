import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Capacity } from '../../../src/engine/power/capacity.ts';
import { capacity } from '../../../src/engine/power/capacity.ts';
import { demand } from '../../../src/engine/power/demand.ts';
import type { DistrictLoad, Verdict } from '../../../src/engine/power/rules.ts';
import { atLeast, judge, overloadSeen, overloadsIn, VERDICTS, worstVerdict } from '../../../src/engine/power/rules.ts';
import { near } from '../../near.ts';
import { dc, h0, independent, judged, movers, unit, verdictOn } from '../../samples.ts';
import { spread } from '../../spread.ts';

const limits = (hard: number, usable = 0.9 * hard): Pick<Capacity, 'hard' | 'usable'> => ({ hard, usable });

/** Draws 1 A, and 2 A, 3 A in the shares given; nothing jams and nothing charges. */
function load(twoAmps: number, threeAmps: number, more: Partial<DistrictLoad> = {}): DistrictLoad {
  const mass = Float64Array.of(0, 1 - twoAmps - threeAmps, twoAmps, threeAmps);
  return { distribution: { step: 1, mass }, stallExtra: 0, powerUp: 0, ...more };
}

describe('the everyday rule', () => {
  test.each<[number, number, boolean]>([
    [0, 0, true],
    [0.01, 0, true],
    [0.011, 0, false],
    [0, 0.001, true],
    [0, 0.0011, false],
  ])('reserve touched in %d, limit passed in %d of moments: kept %s', (twoAmps, threeAmps, kept) => {
    expect(judge(load(twoAmps, threeAmps), limits(2, 1.5)).everyday.passes).toBe(kept);
  });

  test('a draw that just reaches the limit has not passed it', () => {
    expect(judge(load(0, 0), limits(1, 1))).toMatchObject({ aboveHard: 0, aboveUsable: 0 });
  });
});

describe('the stall rule', () => {
  test('one jammed locomotive on top of the 95 % point must stay within the limit', () => {
    expect(judge(load(0, 0, { stallExtra: 1 }), limits(2)).stall.passes).toBe(true);
    expect(judge(load(0, 0, { stallExtra: 1.01 }), limits(2)).stall.passes).toBe(false);
    expect(judge(load(0.2, 0, { stallExtra: 1 }), limits(2.9, 2.9)).stall.passes).toBe(false);
  });
});

describe('the rule of switching on', () => {
  test('all that charges at once must stay within the limit', () => {
    expect(judge(load(0, 0, { powerUp: 2 }), limits(2)).powerUp.passes).toBe(true);
    expect(judge(load(0, 0, { powerUp: 2.01 }), limits(2)).powerUp.passes).toBe(false);
  });
});

describe('the rule of heat', () => {
  test('the average must stay within the limit', () => {
    expect(judge(load(0, 0), limits(1)).heat.passes).toBe(true);
    expect(judge(load(0.2, 0), limits(1.1)).heat.passes).toBe(false);
    near(judge(load(0.2, 0), limits(2)).heat.value, 1.2, 1e-12);
  });
});

describe('the verdict', () => {
  const on = (able: Pick<Capacity, 'hard' | 'usable'>, of: DistrictLoad): Verdict => judge(of, able).verdict;

  test('ample: all four rules hold even with a quarter more draw', () => {
    expect(on(limits(2, 1.25), load(0, 0))).toBe('ample');
  });
  test('enough: all four rules hold, but not with a quarter more', () => {
    expect(on(limits(2, 1.2), load(0, 0))).toBe('enough');
    expect(on(limits(2), load(0, 0, { powerUp: 1.7 }))).toBe('enough');
  });
  test('tight: the limit holds and the reserve is touched in up to a tenth of moments', () => {
    expect(on(limits(2, 1.5), load(0.1, 0))).toBe('tight');
    // About once in a dozen busy spells: no experienced person buys anything for that.
    expect(on(limits(2, 1.5), load(0, 0.003))).toBe('tight');
    expect(on(limits(2), load(0, 0, { stallExtra: 3 }))).toBe('tight');
    expect(on(limits(2), load(0, 0, { powerUp: 3 }))).toBe('tight');
  });
  test('short: the limit is passed, or the reserve is all but used up', () => {
    expect(on(limits(2, 1.5), load(0, 0.0031))).toBe('short');
    expect(on(limits(2, 1.5), load(0.11, 0))).toBe('short');
  });
  test('a unit that gives nothing is short for anything, and ample for nothing', () => {
    expect(on(limits(0), load(0, 0))).toBe('short');
    expect(verdictOn(h0(0, 0, 0), 0)).toBe('ample');
  });
  test('never gets worse with a larger supply', () => {
    const amperes = spread(0, 6);
    fc.assert(
      fc.property(fc.nat(6), fc.nat(3), fc.nat(9), amperes, amperes, (modern, older, moving, amps, more) => {
        const fleet = h0(modern, older, Math.min(modern + older, moving));
        const [before, after] = [verdictOn(fleet, amps), verdictOn(fleet, amps + more)];
        expect(VERDICTS.indexOf(after)).toBeGreaterThanOrEqual(VERDICTS.indexOf(before));
      }),
    );
  });
  test('more supply never raises the chance of an overload', () => {
    const amperes = spread(0, 6);
    fc.assert(
      fc.property(fc.nat(6), fc.nat(3), amperes, amperes, (modern, older, amps, more) => {
        const fleet = h0(modern, older, modern + older);
        const before = judged(fleet, capacity(dc(amps), unit(3)));
        const after = judged(fleet, capacity(dc(amps + more), unit(3)));
        expect(after.aboveHard).toBeLessThanOrEqual(before.aboveHard);
        expect(after.aboveUsable).toBeLessThanOrEqual(before.aboveUsable);
      }),
    );
  });
});

describe('the order of verdicts', () => {
  test('is short, tight, enough, ample', () => expect(VERDICTS).toEqual(['short', 'tight', 'enough', 'ample']));
  test('the worst of several districts counts', () => {
    expect(worstVerdict(['ample', 'tight', 'enough'])).toBe('tight');
    expect(worstVerdict(['ample', 'short'])).toBe('short');
    expect(worstVerdict([])).toBe('ample');
  });
  test('at least enough is enough or ample', () => {
    expect(VERDICTS.filter((verdict) => atLeast(verdict, 'enough'))).toEqual(['enough', 'ample']);
  });
});

describe('overloads in a busy spell', () => {
  test('two in a hundred moments of ten minutes are one where a train draws steadily for 12 s, and between a tenth and four in all', () => {
    near(overloadsIn(0.02, 1 / 6).from, 0.1, 1e-12);
    near(overloadsIn(0.02, 1 / 6).to, 4, 1e-12);
  });
  test('no overload, none; a spell of no time has none either', () => {
    expect(overloadsIn(0, 1 / 6)).toEqual({ from: 0, to: 0 });
    expect(overloadsIn(0.5, 0)).toEqual({ from: 0, to: 0 });
  });
});

describe('the workings of the rules', () => {
  test('carry the compared number itself and name the limit', () => {
    const distribution = demand(movers(5, 4, { from: 0.2, to: 0.5 }));
    const judgement = judge({ distribution, stallExtra: 0.3, powerUp: 0.5 }, limits(2));
    for (const rule of [judgement.stall, judgement.powerUp, judgement.heat]) {
      expect(rule.working.value).toBe(rule.value);
      expect(rule.working.inputs.find(({ name }) => name === 'hard')?.value).toBe(2);
    }
    expect(judgement.everyday.working.value).toBe(judgement.aboveUsable);
  });

  test('the everyday rule compares shares of moments', () => {
    const judgement = judge(
      { distribution: demand(independent([0.5, 0.5])), stallExtra: 0, powerUp: 0 },
      limits(1.5, 1),
    );
    near(judgement.everyday.value, 0.25, 1e-12);
    expect(judgement.everyday.limit).toBe(0.01);
  });
});

describe('what one will see of an overload', () => {
  test.each([
    [0.5, 'at-once'],
    [0.2, 'at-once'],
    [0.19, 'within-minutes'],
    // One in 45 moments of 20 s: a quarter of an hour, and one in 720: four hours.
    [1 / 45, 'within-minutes'],
    [1 / 720, 'now-and-then'],
    [0.0223, 'within-minutes'],
    [0.0221, 'now-and-then'],
    [0.0014, 'now-and-then'],
    [0.00138, 'strained'],
    [0, 'strained'],
  ] as const)('a share of %d: %s', (chance, seen) => {
    expect(overloadSeen(chance)).toBe(seen);
  });
});

describe('a transformer', () => {
  const able = { hard: 2, usable: 1.8, moment: { hard: 2.6, usable: 2.34 } };
  const steady = (amps: number): DistrictLoad => ({
    distribution: { step: amps, mass: Float64Array.of(0, 1) },
    stallExtra: 0,
    powerUp: 0,
  });

  test('is judged by its heat over minutes: 86 % loaded is enough, and above its rating it is too much', () => {
    expect(judge(steady(1.72), able).verdict).toBe('enough');
    expect(judge(steady(1.9), able).verdict).toBe('tight');
    expect(judge(steady(2.05), able).verdict).toBe('short');
  });
  test('bears a moment above its rating, which an electronic supply does not', () => {
    const now = load(0.02, 0);
    expect(judge(now, able).verdict).toBe('enough');
    expect(judge(now, { hard: 1.9, usable: 1.71 }).verdict).toBe('short');
  });
  test('the current that warms it is the root of the mean square', () => {
    near(judge(load(0.5, 0), able).heat.value, Math.sqrt(2.5), 1e-9);
  });
});
