import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { capacity } from '../../../src/engine/power/capacity.ts';
import { BOOSTER_OWN_USE, DRAWS } from '../../../src/engine/power/draws.ts';
import { countedTrains, muted, parked } from '../../../src/engine/power/fleet.ts';
import type { Remedy, RemedyId, RemedyInput } from '../../../src/engine/power/remedies.ts';
import { chosenOf, MOST_DISTRICTS, onceQuiet, remedies, tightBeside } from '../../../src/engine/power/remedies.ts';
import { atLeast } from '../../../src/engine/power/rules.ts';
import { near } from '../../near.ts';
import { ac, h0, judged, unit, wish } from '../../samples.ts';
import { spread } from '../../spread.ts';

const input = wish;
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
    busy: spread(0, 1),
    coaches: fc.integer({ min: 0, max: 10 }),
    lamps: fc.constantFrom('filament' as const, 'led' as const),
    kind: fc.constantFrom('dc' as const, 'ac' as const),
    amps: spread(0.5, 8),
    limit: spread(1, 8),
  })
  .map(({ modern, older, busy, coaches, lamps, kind, amps, limit }) => ({
    fleet: { ...h0(modern, older, Math.round(busy * (modern + older))), coaches, lamps },
    scale: 'h0' as const,
    supply: { kind, volts: 16, amps, plug: undefined },
    stage: unit(limit),
    input: { kind: 'either' as const, volts: 19, plug: undefined },
  }));

const districtsOf = (id: string, limit: number | undefined): readonly [least: number, most: number] => {
  if (id.startsWith('booster')) return [2, 2];
  return id === 'more-districts' ? [limit === undefined ? 3 : 2, MOST_DISTRICTS] : [1, 1];
};

describe('the remedies of any fleet', () => {
  test('come cheapest first, by money and then by time, each at most once; breakers give no power and stand last', () => {
    fc.assert(
      fc.property(inputs, (of) => {
        const found = remedies(of);
        expect(new Set(ids(found)).size).toBe(found.length);
        expect(found.at(-1)?.id).toBe('breakers-and-sub-districts');
        const costs = found.slice(0, -1).map(({ cost }) => [cost.money.to, cost.hours.to] as const);
        for (const [i, [money, hours]] of costs.entries()) {
          const [before, long] = costs[i - 1] ?? [0, 0];
          expect(money > before || (money === before && hours >= long)).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('never give a district more than its own unit passes, less the reserve; a larger unit passes what is usual for the scale at the most', () => {
    fc.assert(
      fc.property(inputs, (of) => {
        for (const { usable, limit } of remedies(of)) {
          if (limit !== undefined) {
            expect(limit).toBeGreaterThan(of.stage.limit);
            expect(limit).toBeLessThanOrEqual(DRAWS[of.scale].trip.to);
          }
          for (const amps of usable) expect(amps).toBeLessThanOrEqual(0.9 * (limit ?? of.stage.limit) + 1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('have one district each, two with a booster, three to six with more, two to six with larger boosters', () => {
    fc.assert(
      fc.property(inputs, (of) => {
        for (const { id, usable, limit } of remedies(of)) {
          const [least, most] = districtsOf(id, limit);
          expect(usable.length).toBeGreaterThanOrEqual(least);
          expect(usable.length).toBeLessThanOrEqual(most);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('which buy nothing name no rating, and ratings stay within 10 A and 200 VA', () => {
    fc.assert(
      fc.property(inputs, (of) => {
        for (const { id, ratings } of remedies(of)) {
          if (['calm-the-consumption', 'fewer-moving', 'mute-and-park', 'breakers-and-sub-districts'].includes(id))
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
  const transformer = (rails: RemedyInput['stage']['rails'], kind: 'ac' | 'either'): RemedyInput => ({
    ...input(h0(6, 0, 5), 3, 3),
    supply: { ...ac(3), plug: undefined },
    stage: unit(3, { rails }),
    input: { kind, volts: 19, plug: undefined },
  });

  test('of a.c. must be larger by the rectifier factor: 6 A for a 3 A unit whose rails are set', () => {
    expect(the('larger-supply', transformer({ kind: 'set', volts: 15 }, 'ac')).ratings).toEqual([6]);
  });

  test('is a regulated d.c. one where a.c. would lift the rails too high, and none where the unit takes a.c. alone', () => {
    const direct = the('larger-supply', transformer({ kind: 'follows' }, 'either'));
    expect(direct).toMatchObject({ supply: { kind: 'dc', volts: 16 }, ratings: [4] });
    expect(ids(remedies(transformer({ kind: 'follows' }, 'ac')))).not.toContain('larger-supply');
  });

  test('is none like one whose plug has its poles turned round; of another kind it has a plug of its own', () => {
    const plugged = (of: RemedyInput): RemedyInput => ({
      ...of,
      supply: { ...of.supply, plug: 'centre-minus' },
      input: { ...of.input, plug: 'centre-plus' },
    });
    expect(ids(remedies(plugged(input(h0(6, 0, 5), 2, 3))))).not.toContain('larger-supply');
    expect(the('larger-supply', plugged(transformer({ kind: 'follows' }, 'either'))).supply?.kind).toBe('dc');
  });

  test('is none above what the scale bears', () => {
    expect(ids(remedies({ ...input(h0(6, 0, 5), 3, 5), scale: 'n' }))).not.toContain('larger-supply');
  });
});

describe('a booster', () => {
  const shared = (moving: number): RemedyInput => ({
    ...input(h0(moving, 0, moving), 3, 3),
    stage: unit(3, { ownUse: 0.5 }),
  });

  test('on the freed supply has its own amperes, and needs little for itself where the command station feeds many throttles', () => {
    const { usable, ratings } = the('booster-with-freed-supply', shared(8));
    expect(ratings).toEqual([4]);
    near(usable[0] ?? Number.NaN, 2.7, 1e-9);
    near(usable[1] ?? Number.NaN, 0.9 * (3 - BOOSTER_OWN_USE), 1e-9);
  });
  test('is never put on a freed supply that could not trip it', () => {
    expect(ids(remedies(input(h0(8, 0, 8), 2, 3)))).not.toContain('booster-with-freed-supply');
  });
  test('with a supply of its own fills both units', () => {
    const { usable } = the('booster-with-own-supply', input(h0(8, 0, 8), 2, 3));
    expect(usable.map((amps) => Number(amps.toFixed(3)))).toEqual([2.7, 2.7]);
  });
  test('is judged by its worse district', () => {
    const both = the('booster-with-freed-supply', shared(9));
    const alone = the('booster-with-own-supply', shared(9));
    expect(both.aboveHard).toBeGreaterThan(alone.aboveHard);
  });
  test('that is there already need not be bought', () => {
    const own = (boosters: number) => the('booster-with-own-supply', { ...input(h0(8, 0, 8), 4, 3), boosters });
    expect([0, 1].map((boosters) => own(boosters).counts.boosters)).toEqual([1, 0]);
    expect(own(1).cost.money.to).toBeLessThan(own(0).cost.money.to);
  });
});

describe('what stands still', () => {
  const sound = (stored = 0): RemedyInput =>
    input({ ...h0(0, 0, 2), trains: countedTrains('h0', 14, 0, 14), stored }, 4, 3);
  test('fourteen with sound, two moving: muted, the twelve that stand leave enough, and none has to be parked', () => {
    expect(the('mute-and-park', sound())).toMatchObject({ counts: { muted: 14 }, inGroups: false });
    expect(the('mute-and-park', sound()).counts.parked).toBeUndefined();
  });
  test('with stored energy in all of them they are put on in groups besides', () => {
    expect(the('mute-and-park', sound(14))).toMatchObject({ inGroups: true, counts: { muted: 14 } });
  });
  test('as few as will do are parked, and one fewer would not do', () => {
    const of = input(h0(40, 0, 5), 4, 3);
    const { counts, verdict } = the('mute-and-park', of);
    const count = counts.parked ?? 0;
    expect(count).toBeGreaterThan(0);
    const at = (trains: number) => judged(parked(of.fleet, trains), capacity(of.supply, of.stage)).verdict;
    expect(at(count)).toBe(verdict);
    expect(atLeast(at(count - 1), verdict)).toBe(false);
  });
  test('is no remedy where all move', () => {
    expect(ids(remedies(input(h0(8, 0, 8), 4, 3)))).not.toContain('mute-and-park');
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
    const { counts, verdict } = the('fewer-moving', input(h0(6, 0, 6), 2, 2));
    expect(counts.moving).toBe(3);
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
  test('is never breakers, and is tight at least where anything is', () => {
    fc.assert(
      fc.property(inputs, (of) => {
        const found = remedies(of);
        const chosen = chosenOf(found);
        expect(chosen?.id).not.toBe('breakers-and-sub-districts');
        if (chosen !== undefined) expect(atLeast(chosen.verdict, 'tight')).toBe(true);
        else
          for (const { id, verdict } of found)
            if (id !== 'breakers-and-sub-districts') expect(atLeast(verdict, 'tight'), id).toBe(false);
      }),
      { numRuns: 40 },
    );
  });
  // Common practice, no source: one booster before several weekends of work.
  test('is one booster that is tight before three districts that are enough', () => {
    const found = remedies(input(h0(9, 0, 8), 4, 3));
    expect(found.find(({ id }) => id === 'more-districts')?.verdict).toBe('enough');
    expect(chosenOf(found)).toMatchObject({ id: 'booster-with-own-supply', verdict: 'tight' });
  });
  test('is fewer moving only where nothing lets run what is wished', () => {
    expect(chosenOf(remedies(input(h0(60, 0, 50), 4, 3)))?.id).toBe('fewer-moving');
    expect(chosenOf(remedies(input(h0(8, 0, 7), 4, 3)))?.id).toBe('booster-with-own-supply');
  });

  test('a hundred trains, all moving, on one unit for 5 A: one at a time is no remedy, six districts carry thirty', () => {
    const found = remedies(input(h0(100, 0, 100), 6, 5));
    expect(found.find(({ id }) => id === 'fewer-moving')?.counts.moving).toBeLessThan(25);
    const chosen = chosenOf(found, 100);
    expect(chosen).toMatchObject({ id: 'more-districts', verdict: 'short' });
    expect(chosen?.usable).toHaveLength(MOST_DISTRICTS);
    expect(chosen?.counts.moving).toBeGreaterThanOrEqual(25);
  });

  test('what even six districts do not carry to a quarter, or not to twice as many, stays what is free', () => {
    expect(chosenOf(remedies(input(h0(100, 0, 100), 4, 3)), 100)?.id).toBe('fewer-moving');
    expect(chosenOf(remedies(input(h0(60, 0, 30), 3, 2)), 30)?.id).toBe('fewer-moving');
  });

  test('what districts carry is what they are enough for, and not one train more', () => {
    const asked = input(h0(60, 0, 60), 6, 5);
    const most = remedies(asked).find(({ id }) => id === 'more-districts');
    const moving = most?.counts.moving ?? 0;
    const verdictOf = (count: number) =>
      remedies({ ...asked, fleet: { ...asked.fleet, moving: count } }).find(({ id }) => id === 'more-districts')
        ?.verdict ?? 'short';
    expect(moving).toBeGreaterThan(0);
    expect(atLeast(verdictOf(moving), 'enough')).toBe(true);
    expect(atLeast(verdictOf(moving + 1), 'enough')).toBe(false);
  });

  test('and where they are enough for none of eighty with fifty lit coaches, what they bear if need be', () => {
    const asked = input({ ...h0(80, 0, 64), coaches: 50 }, 4, 3);
    const six = (moving: number) =>
      remedies({ ...asked, fleet: { ...asked.fleet, moving } }).find(({ id }) => id === 'more-districts');
    const moving = six(64)?.counts.moving ?? 0;
    expect(moving).toBeGreaterThanOrEqual(1);
    expect([1, moving, moving + 1].map((count) => six(count)?.verdict)).toEqual(['tight', 'tight', 'short']);
  });
});

describe('what fewer districts would do once it is quiet', () => {
  const districts = (of: RemedyInput) => remedies(of).find(({ id }) => id === 'more-districts');
  const club = (sound: number): RemedyInput =>
    input({ ...h0(40, 0, 8), trains: countedTrains('h0', 40, 0, sound) }, 4, 3);

  test('forty trains with sound of which eight move: no more than the same trains ask for with the sound of the standing ones off', () => {
    const loud = club(40);
    const most = districts(loud);
    if (most === undefined) throw new Error('no division');
    const { muted: hushed, parked: away } = onceQuiet(loud, most);
    const quiet = districts({ ...loud, fleet: { ...loud.fleet, trains: muted(loud.fleet, 'h0').trains } });
    expect(hushed).toBeLessThanOrEqual(quiet?.usable.length ?? 0);
    expect(hushed).toBeLessThan(most.usable.length);
    expect(away ?? 0).toBeLessThan(hushed ?? 0);
  });

  test('where none has sound there is none to turn off', () => {
    const silent = club(0);
    const most = districts(silent);
    if (most === undefined) throw new Error('no division');
    expect(onceQuiet(silent, most).muted).toBeUndefined();
  });

  test('beside a division that is enough the cheapest that is tight is told; beside one that is tight, none', () => {
    const of = input(h0(20, 0, 12), 4, 3);
    const found = districts(of);
    if (found === undefined) throw new Error('no division');
    const tight = tightBeside(of, found);
    expect(found.verdict).toBe('enough');
    if (tight !== undefined) {
      expect(tight.cost.money.to).toBeLessThanOrEqual(found.cost.money.to);
      expect(atLeast(tight.verdict, 'tight')).toBe(true);
    }
    expect(tightBeside(of, { ...found, verdict: 'tight' })).toBeUndefined();
    expect(tightBeside(of, { ...found, id: 'larger-supply' })).toBeUndefined();
  });
});
