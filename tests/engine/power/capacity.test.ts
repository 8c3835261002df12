import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Supply } from '../../../src/engine/power/capacity.ts';
import {
  capacity,
  limitFor,
  MODEL_SUPPLY_LIMIT,
  trackCurrent,
  withinModelLimit,
  worthOfOneAmpere,
} from '../../../src/engine/power/capacity.ts';
import { near } from '../../near.ts';
import { ac, dc, unit } from '../../samples.ts';
import { spread } from '../../spread.ts';

const amps = spread(0, 40);
const volts = spread(3, 60);
const supplies: fc.Arbitrary<Supply> = fc.record({ kind: fc.constantFrom('dc', 'ac'), volts, amps });
const units = fc.record({
  limit: spread(0.3, 30),
  ownUse: spread(0, 2),
  rails: fc.oneof(
    fc.constant({ kind: 'follows' } as const),
    fc.record({ kind: fc.constantFrom('set', 'converter'), volts: spread(5, 30) }),
  ),
});

describe('the unit of an example', () => {
  test('passes 3 A, and more on a larger supply', () => {
    expect([1, 3, 5.5].map(limitFor)).toEqual([3, 3, 5.5]);
  });

  test('never holds its d.c. supply back', () => {
    for (const amps of [0.5, 2, 3, 6]) {
      expect(capacity(dc(amps), unit(limitFor(amps))).hard).toBe(amps);
    }
  });
});

describe('a d.c. supply on a unit', () => {
  test('2 A on a 3 A unit: the supply sets the limit, a tenth is kept back', () => {
    const { hard, usable, limitedBy } = capacity(dc(2), unit(3));
    expect(hard).toBe(2);
    near(usable, 1.8, 1e-12);
    expect(limitedBy).toBe('supply');
  });

  test('5 A on a 3 A unit: the unit sets the limit', () => {
    expect(capacity(dc(5), unit(3))).toMatchObject({ hard: 3, limitedBy: 'stage' });
  });

  test('the unit takes its own use before any train does', () => {
    near(capacity(dc(2), unit(3, { ownUse: 0.5 })).hard, 1.5, 1e-12);
  });

  test('a supply too weak for the unit itself leaves nothing, never less', () => {
    expect(capacity(dc(0.2), unit(3, { ownUse: 0.5 })).hard).toBe(0);
  });

  test('a unit whose rails are set without a converter passes what the supply gives', () => {
    near(capacity(dc(2, 19), unit(3, { rails: { kind: 'set', volts: 14 } })).hard, 2, 1e-12);
  });
});

describe('more supply', () => {
  test('never gives less on the track, and never more than the unit passes', () => {
    fc.assert(
      fc.property(supplies, units, amps, (supply, stage, more) => {
        const before = capacity(supply, stage);
        const after = capacity({ ...supply, amps: supply.amps + more }, stage);
        expect(after.hard).toBeGreaterThanOrEqual(before.hard);
        expect(after.usable).toBeGreaterThanOrEqual(before.usable);
        expect(after.hard).toBeLessThanOrEqual(stage.limit);
        expect(before.hard).toBeGreaterThanOrEqual(before.usable);
        expect(before.atBest?.usable ?? before.usable).toBeGreaterThanOrEqual(before.usable);
        expect(before.moment?.hard ?? before.hard).toBeGreaterThanOrEqual(before.hard);
      }),
    );
  });
});

describe('own use', () => {
  test('never adds to what reaches the track', () => {
    fc.assert(
      fc.property(supplies, units, spread(0, 3), (supply, stage, more) => {
        const hungrier = { ...stage, ownUse: stage.ownUse + more };
        expect(trackCurrent(supply, hungrier)).toBeLessThanOrEqual(trackCurrent(supply, stage));
      }),
    );
  });
});

describe('absurd figures stay harmless', () => {
  test.each([0, 1e9])('a supply of %d A', (amperes) => {
    const able = capacity(dc(amperes), unit(3));
    expect(able.hard).toBe(Math.min(3, amperes));
    expect(able.usable).toBeGreaterThanOrEqual(0);
  });
});

describe('the limits of NEM 609, 6.1: 200 VA and 10 A', () => {
  test('are these', () => {
    expect(MODEL_SUPPLY_LIMIT).toEqual({ amps: 10, voltAmps: 200 });
  });

  test.each([
    [15, 10, true],
    [18, 10, true],
    [20, 10, true],
    [24, 10, false],
    [15, 10.5, false],
    [16, 12.5, false],
    [24, 8, true],
  ])('%d V with %d A: %s', (volts_, amperes, permitted) => {
    expect(withinModelLimit(dc(amperes, volts_))).toBe(permitted);
  });
});

describe('the workings of a capacity', () => {
  test.each([
    ['usable-dc', dc(2), unit(3)],
    ['usable-ac', ac(3), unit(3)],
    ['usable-converter', dc(3, 19), unit(5, { rails: { kind: 'converter', volts: 15 } })],
  ])('%s gives the very number that is used, with its inputs', (formula, supply, stage) => {
    const { working, usable } = capacity(supply, stage);
    expect(working.formula).toBe(formula);
    expect(working.value).toBe(usable);
    expect(working.inputs.find(({ name }) => name === 'stage-limit')?.value).toBe(stage.limit);
    expect(working.inputs.find(({ name }) => name === 'supply-amps')?.value).toBe(supply.amps);
    expect(working.sources.length).toBeGreaterThan(0);
  });
});

describe('what is worth telling of a capacity', () => {
  test('one more ampere is worth nine tenths of one below the limit of the stage, and nothing above it', () => {
    near(worthOfOneAmpere(dc(2), unit(5)), 0.9, 1e-9);
    near(worthOfOneAmpere(dc(2), unit(2.5)), 0.45, 1e-9);
    expect(worthOfOneAmpere(dc(4), unit(3))).toBe(0);
  });

  test('only an a.c. supply can do better than planned, and only while the stage lets it; limit and reserve go together', () => {
    expect(capacity(dc(2), unit(5)).atBest).toBeUndefined();
    const best = capacity(ac(3), unit(5)).atBest;
    near(best?.hard ?? Number.NaN, 3 / 1.6, 1e-9);
    near(best?.usable ?? Number.NaN, (0.9 * 3) / 1.6, 1e-9);
    expect(capacity(ac(9), unit(3)).atBest).toBeUndefined();
  });

  // From memory: a transformer bears a third more for a moment, up to what the unit passes.
  test('a transformer gives a third more for a moment, an electronic supply does not', () => {
    near(capacity(ac(3), unit(5)).moment?.hard ?? Number.NaN, (1.3 * 3) / 1.8, 1e-9);
    near(capacity(ac(3), unit(2)).moment?.hard ?? Number.NaN, 2, 1e-9);
    expect(capacity(dc(2), unit(5)).moment).toBeUndefined();
  });
});
