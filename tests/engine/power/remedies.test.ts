import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { capacity } from '../../../src/engine/power/capacity.ts';
import { BOOSTER_OWN_USE } from '../../../src/engine/power/draws.ts';
import type { Fleet } from '../../../src/engine/power/fleet.ts';
import type { Remedy, RemedyId, RemedyInput } from '../../../src/engine/power/remedies.ts';
import { firstThatReaches, MOST_DISTRICTS, remedies } from '../../../src/engine/power/remedies.ts';
import { atLeast } from '../../../src/engine/power/rules.ts';
import { near } from '../../near.ts';
import { ac, dc, h0, judged, unit } from '../../samples.ts';

/** In order of cost and work. Running fewer trains gives up the wish, so it stands after what fulfils it; breakers give no power at all. */
const REMEDY_ORDER: readonly RemedyId[] = [
  'calm-the-consumption',
  'larger-supply',
  'leds-and-larger-supply',
  'booster-with-freed-supply',
  'booster-with-own-supply',
  'more-districts',
  'fewer-moving',
  'breakers-and-sub-districts',
];

const input = (fleet: Fleet, amps: number, limit: number): RemedyInput => ({
  fleet,
  supply: dc(amps),
  stage: unit(limit),
});
const ids = (found: readonly Remedy[]): RemedyId[] => found.map(({ id }) => id);

function the(id: RemedyId, of: RemedyInput): Remedy {
  const found = remedies(of).find((remedy) => remedy.id === id);
  if (found === undefined) throw new Error(`${id} is not among the remedies`);
  return found;
}

const inputs: fc.Arbitrary<RemedyInput> = fc
  .record({
    modern: fc.integer({ min: 0, max: 12 }),
    older: fc.integer({ min: 0, max: 4 }),
    busy: fc.double({ min: 0, max: 1, noNaN: true }),
    coaches: fc.integer({ min: 0, max: 10 }),
    lamps: fc.constantFrom('filament' as const, 'led' as const),
    kind: fc.constantFrom('dc' as const, 'ac' as const),
    amps: fc.double({ min: 0.5, max: 8, noNaN: true }),
    limit: fc.double({ min: 1, max: 8, noNaN: true }),
  })
  .map(({ modern, older, busy, coaches, lamps, kind, amps, limit }) => ({
    fleet: { ...h0(modern, older, Math.round(busy * (modern + older))), coaches, lamps },
    supply: { kind, volts: 16, amps },
    stage: unit(limit),
  }));

describe('the remedies of any fleet', () => {
  test('come cheapest first, each at most once, breakers always last', () => {
    fc.assert(
      fc.property(inputs, (of) => {
        const found = ids(remedies(of));
        expect(found).toEqual(REMEDY_ORDER.filter((id) => found.includes(id)));
        expect(found.at(-1)).toBe('breakers-and-sub-districts');
      }),
      { numRuns: 40 },
    );
  });

  test('never give a district more than its own unit passes, less the reserve', () => {
    fc.assert(
      fc.property(inputs, (of) => {
        for (const { usable } of remedies(of)) {
          for (const amps of usable) expect(amps).toBeLessThanOrEqual(0.9 * of.stage.limit + 1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('have one district each, two with a booster, three to six with more', () => {
    fc.assert(
      fc.property(inputs, (of) => {
        for (const { id, usable } of remedies(of)) {
          if (id.startsWith('booster')) expect(usable).toHaveLength(2);
          else if (id === 'more-districts') {
            expect(usable.length).toBeGreaterThanOrEqual(3);
            expect(usable.length).toBeLessThanOrEqual(MOST_DISTRICTS);
          } else expect(usable).toHaveLength(1);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('which buy nothing name no rating, and ratings stay within 10 A and 200 VA', () => {
    fc.assert(
      fc.property(inputs, (of) => {
        for (const { id, ratings } of remedies(of)) {
          if (['calm-the-consumption', 'fewer-moving', 'breakers-and-sub-districts'].includes(id))
            expect(ratings).toEqual([]);
          for (const amps of ratings) expect(amps <= 10 && amps * of.supply.volts <= 200).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('with more power never make an overload likelier than now', () => {
    fc.assert(
      fc.property(inputs, (of) => {
        const now = judged(of.fleet, capacity(of.supply, of.stage));
        for (const { id, aboveHard } of remedies(of)) {
          if (id !== 'breakers-and-sub-districts') expect(aboveHard).toBeLessThanOrEqual(now.aboveHard + 1e-12);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('calming the consumption', () => {
  const coaches = { ...h0(3, 0, 3), coaches: 10 };
  test('puts LEDs in place of filament lamps, on the same supply', () => {
    expect(the('calm-the-consumption', input(coaches, 2, 3))).toMatchObject({ usable: [1.8], verdict: 'enough' });
  });
  test('six filament coaches on a 3 A unit with a 2 A supply: LEDs and a larger supply together do what neither does alone', () => {
    const lit = { ...h0(6, 0, 5), coaches: 6, lamps: 'filament' as const };
    const at = input(lit, 2, 3);
    expect(the('calm-the-consumption', at)?.verdict).toBe('short');
    expect(the('larger-supply', at)?.verdict).not.toBe('enough');
    expect(the('leds-and-larger-supply', at)).toMatchObject({ usable: [2.7], verdict: 'enough' });
  });

  test('is no remedy where there are no coaches, or LEDs already', () => {
    expect(ids(remedies(input(h0(3, 0, 3), 2, 3)))).not.toContain('calm-the-consumption');
    expect(ids(remedies(input({ ...coaches, lamps: 'led' }, 2, 3)))).not.toContain('calm-the-consumption');
  });
});

describe('a larger supply', () => {
  test('of the next rating above what the unit trips at fills it and goes no further', () => {
    const { usable, ratings } = the('larger-supply', input(h0(6, 0, 5), 2, 3));
    expect(ratings).toEqual([4]);
    near(usable[0] ?? Number.NaN, 2.7, 1e-12);
  });
  test('is no remedy where the supply fills the unit already', () => {
    expect(ids(remedies(input(h0(6, 0, 6), 3, 3)))).not.toContain('larger-supply');
    expect(ids(remedies(input(h0(6, 0, 6), 3, 3)))).not.toContain('booster-with-freed-supply');
  });
  test('of a.c. must be larger by the rectifier factor: 6 A for a 3 A unit', () => {
    const found = remedies({ fleet: h0(6, 0, 5), supply: ac(3), stage: unit(3) });
    expect(found.find(({ id }) => id === 'larger-supply')?.ratings).toEqual([6]);
  });
});

describe('a booster', () => {
  test('with the freed supply has its own, smaller amperes', () => {
    const { usable, ratings } = the('booster-with-freed-supply', input(h0(8, 0, 8), 2, 3));
    expect(ratings).toEqual([4]);
    expect(usable.map((amps) => Number(amps.toFixed(3)))).toEqual([2.7, 1.8]);
  });
  test('with a supply of its own fills both units', () => {
    const { usable } = the('booster-with-own-supply', input(h0(8, 0, 8), 2, 3));
    expect(usable.map((amps) => Number(amps.toFixed(3)))).toEqual([2.7, 2.7]);
  });
  test('needs little for itself, even where the command station feeds many handhelds', () => {
    const of = { fleet: h0(8, 0, 8), supply: dc(2), stage: unit(3, { ownUse: 0.5 }) };
    const [station, booster] = the('booster-with-freed-supply', of).usable;
    near(station ?? Number.NaN, 2.7, 1e-9);
    near(booster ?? Number.NaN, 0.9 * (2 - BOOSTER_OWN_USE), 1e-9);
  });
  test('is judged by its worse district', () => {
    const both = the('booster-with-freed-supply', input(h0(9, 0, 9), 2, 3));
    const alone = the('booster-with-own-supply', input(h0(9, 0, 9), 2, 3));
    expect(both.aboveHard).toBeGreaterThan(alone.aboveHard);
  });
});

describe('more districts', () => {
  test('are as few as reach enough', () => {
    const { usable, verdict } = the('more-districts', input(h0(14, 0, 14), 3, 3));
    expect(atLeast(verdict, 'enough')).toBe(true);
    expect(usable.length).toBeGreaterThan(3);
  });
});

describe('fewer moving', () => {
  test('says how many, and that many are enough', () => {
    const { moving, verdict } = the('fewer-moving', input(h0(6, 0, 6), 2, 2));
    expect(moving).toBe(3);
    expect(atLeast(verdict, 'enough')).toBe(true);
  });
  test('is no remedy where not one may move, or all may', () => {
    expect(ids(remedies(input(h0(1, 0, 1), 0.3, 2)))).not.toContain('fewer-moving');
    expect(ids(remedies(input(h0(2, 0, 2), 3, 3)))).not.toContain('fewer-moving');
  });
});

describe('breakers', () => {
  test('give no more power than now', () => {
    const of = input(h0(6, 0, 6), 2, 3);
    const { usable, verdict } = the('breakers-and-sub-districts', of);
    expect(usable).toEqual([capacity(of.supply, of.stage).usable]);
    expect(verdict).toBe(judged(of.fleet, capacity(of.supply, of.stage)).verdict);
  });
});

describe('the answer', () => {
  test('is the first that reaches what is wanted, and never breakers', () => {
    fc.assert(
      fc.property(inputs, fc.constantFrom('tight' as const, 'enough' as const, 'ample' as const), (of, wanted) => {
        const found = remedies(of);
        const chosen = firstThatReaches(found, wanted);
        expect(chosen?.id).not.toBe('breakers-and-sub-districts');
        const earlier = chosen === undefined ? found.slice(0, -1) : found.slice(0, found.indexOf(chosen));
        for (const { verdict } of earlier) expect(atLeast(verdict, wanted)).toBe(false);
        if (chosen !== undefined) expect(atLeast(chosen.verdict, wanted)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});
