import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Stage, Supply } from '../../../src/engine/power/capacity.ts';
import { COMMON_RATINGS, capacity, trackCurrent, withinModelLimit } from '../../../src/engine/power/capacity.ts';
import type { InputLabel } from '../../../src/engine/power/labels.ts';
import type { RatingWish } from '../../../src/engine/power/trip-reach.ts';
import { recommendedRating, supplyTrip, tripReach } from '../../../src/engine/power/trip-reach.ts';
import { near } from '../../near.ts';
import { ac, dc, unit } from '../../samples.ts';
import { spread } from '../../spread.ts';

const converter = (limit: number, ownUse = 0) => unit(limit, { ownUse, rails: { kind: 'converter', volts: 14 } });

describe('can the supply make the unit trip?', () => {
  test('5 A on a 3 A unit: surely', () => {
    expect(supplyTrip(dc(5), unit(3))).toMatchObject({ kind: 'surely', because: 'rating-above-trip' });
  });

  test('just 3 A on a 3 A unit: perhaps, since the ratings are equal', () => {
    expect(supplyTrip(dc(3), unit(3))).toMatchObject({ kind: 'perhaps', because: 'ratings-equal' });
  });

  test('equal ratings stay equal where the unit takes a little for itself', () => {
    expect(supplyTrip(dc(3), unit(3, { ownUse: 0.2 }))).toMatchObject({ kind: 'perhaps', because: 'ratings-equal' });
  });

  test('2.5 A on a 3 A unit: perhaps, for the moment that a trip takes', () => {
    expect(supplyTrip(dc(2.5), unit(3))).toMatchObject({ kind: 'perhaps', because: 'for-a-moment' });
  });

  test('2 A on a 3 A unit: surely not, a short shows as a supply that restarts', () => {
    expect(supplyTrip(dc(2), unit(3))).toMatchObject({ kind: 'surely-not', because: 'supply-gives-way' });
  });

  test('4 A of a.c. on a 3 A unit: surely not only by what a rectifier leaves, 2.2 A', () => {
    const finding = supplyTrip(ac(3.5), unit(3));
    expect(finding).toMatchObject({ kind: 'surely-not', because: 'rectifier-takes-too-much' });
    near(finding.gives.from, 3.5 / 1.8, 1e-12);
    near(finding.gives.to, (3.5 * 1.3) / 1.6, 1e-12);
  });

  test('5 A of a.c. on a 3 A unit: perhaps, behind the best rectifier', () => {
    expect(supplyTrip(ac(5), unit(3))).toMatchObject({ kind: 'perhaps', because: 'better-rectifier' });
  });

  test('just as much as it trips at, for a moment, does not pass it', () => {
    expect(supplyTrip(dc(3), unit(5), 3 * 1.3).kind).toBe('surely-not');
    expect(supplyTrip(dc(3), unit(5), 3.89).kind).toBe('perhaps');
  });

  test('a unit that takes all that the supply gives cannot trip', () => {
    expect(supplyTrip(dc(0.4), unit(3, { ownUse: 0.5 }))).toMatchObject({ because: 'unit-takes-all' });
  });

  test('a unit that trips below its limit is reached sooner', () => {
    expect(supplyTrip(dc(2), unit(3), 1.5)).toMatchObject({ kind: 'surely', trip: 1.5 });
  });

  test('a step-down unit makes more amperes out of fewer: 3 A at 24 V trips 4 A at 14 V', () => {
    expect(supplyTrip(dc(3, 24), converter(4)).kind).toBe('surely');
    expect(supplyTrip(dc(3, 15), converter(4)).kind).toBe('surely-not');
  });

  test('in one word: reached, perhaps or not reached', () => {
    expect([dc(5), dc(3), dc(2)].map((supply) => tripReach(supply, unit(3)))).toEqual([
      'reached',
      'perhaps',
      'not-reached',
    ]);
    expect(tripReach(ac(3), unit(3))).toBe('not-reached');
  });

  test('just above the rating that is named it surely trips, just below it does not', () => {
    const stages = [unit(3, { ownUse: 0.2 }), converter(4, 0.3)];
    for (const stage of stages) {
      for (const supply of [dc(1, 18), ac(1, 16)]) {
        const { ratingAbove } = supplyTrip(supply, stage);
        if (supply.kind === 'ac' && stage.rails.kind === 'converter') continue;
        expect(supplyTrip({ ...supply, amps: ratingAbove * 1.001 }, stage).kind).toBe('surely');
        expect(supplyTrip({ ...supply, amps: ratingAbove * 0.999 }, stage).kind).toBe('perhaps');
      }
    }
  });

  test('more supply never trips less surely', () => {
    const order = ['surely-not', 'perhaps', 'surely'];
    fc.assert(
      fc.property(
        fc.constantFrom('dc' as const, 'ac' as const),
        spread(0, 12),
        spread(0, 5),
        spread(0.5, 10),
        (kind, amps, more, limit) => {
          const at = (one: number): number =>
            order.indexOf(supplyTrip({ kind, volts: 16, amps: one }, unit(limit)).kind);
          expect(at(amps + more)).toBeGreaterThanOrEqual(at(amps));
        },
      ),
    );
  });
});

const takes = (more: Partial<InputLabel> = {}): InputLabel => ({
  kind: 'either',
  volts: 20,
  plug: 'terminals',
  ...more,
});
const wish = (limit: number, more: Partial<RatingWish> = {}): RatingWish => ({
  ...{ kind: 'dc', volts: 15, plug: 'terminals', stage: unit(limit), input: takes(), scale: 'h0' },
  ...more,
});

describe('the rating to get', () => {
  test.each([
    ['a 3 A unit wants 4 A, not 3 A', wish(3), 4],
    ['with 0.2 A for itself still 4 A', wish(3, { stage: unit(3, { ownUse: 0.2 }) }), 4],
    ['with 1 A for itself 5 A', wish(3, { stage: unit(3, { ownUse: 1 }) }), 5],
    ['a 3.5 A unit wants 4 A', wish(3.5), 4],
    ['behind a rectifier a 3 A unit wants 6 A of a.c.', wish(3, { kind: 'ac', volts: 16 }), 6],
    ['a 5 A unit that trips at 2.5 A wants 3 A', wish(5, { trip: 2.5 }), 3],
    ['a step-down unit at 19 V wants 3 A for 3 A at 14 V', wish(3, { volts: 19, stage: converter(3) }), 3],
  ])('%s', (_, of, amps) => {
    expect(recommendedRating(of)).toMatchObject({ kind: 'rating', amps, finding: { kind: 'surely' } });
  });

  test('where no rating does, the trip level may be lowered below what the largest gives; a unit that takes that for itself wants another', () => {
    const below = recommendedRating(wish(10, { scale: '1', volts: 18 }));
    expect(below).toMatchObject({ instead: ['lower-the-trip', 'breaker'], tripBelow: 10 });
    const taken = recommendedRating(wish(3, { stage: unit(3, { ownUse: 12 }) }));
    expect(taken).toEqual({ kind: 'no-rating', because: 'beyond-nem-609', instead: ['other-supply'] });
  });

  test.each([
    [
      'a trip level above what the scale bears is lowered, whatever the supply',
      wish(5, { scale: 'n' }),
      'above-the-scale',
    ],
    ['no supply may give more than 10 A', wish(10, { scale: '1', volts: 18 }), 'beyond-nem-609'],
    ['nor more than 200 VA', wish(8, { scale: '0', volts: 22, input: takes({ volts: 24 }) }), undefined],
    ['nor is a.c. for 8 A to be had', wish(8, { scale: '0', kind: 'ac', volts: 16 }), 'beyond-nem-609'],
    ['a unit for a.c. only gets no d.c. supply', wish(3, { input: takes({ kind: 'ac' }) }), 'wrong-kind'],
    ['more volts than it bears', wish(3, { volts: 24 }), 'too-many-volts'],
    ['fewer volts than it needs', wish(3, { volts: 9, input: takes({ leastVolts: 12 }) }), 'too-few-volts'],
    [
      'a plug with its poles turned round',
      wish(3, { plug: 'centre-plus', input: takes({ plug: 'centre-minus' }) }),
      'plug-reversed',
    ],
    ['a label that nobody has read', wish(3, { input: takes({ volts: undefined }) }), 'label-not-read'],
  ])('%s', (_, of, because) => {
    const advice = recommendedRating(of);
    if (because === undefined) expect(advice).toMatchObject({ kind: 'no-rating', because: 'beyond-nem-609' });
    else expect(advice).toMatchObject({ kind: 'no-rating', because });
  });

  test('in place of a purchase: lower the trip level to what can be supplied, or a breaker', () => {
    const none = recommendedRating(wish(8, { scale: '0', kind: 'ac', volts: 16 }));
    expect(none).toMatchObject({ instead: ['lower-the-trip', 'breaker'] });
    if (none.kind !== 'no-rating' || none.tripBelow === undefined) throw new Error('no trip level is named');
    near(none.tripBelow, 10 / 1.8, 1e-12);
    const stage = unit(8);
    expect(
      recommendedRating(wish(8, { scale: '0', kind: 'ac', volts: 16, stage, trip: none.tripBelow - 0.01 })).kind,
    ).toBe('rating');
  });

  test('for N a 5 A unit goes down to 3 A, and nothing is bought for 5 A', () => {
    expect(recommendedRating(wish(5, { scale: 'n' }))).toMatchObject({
      tripBelow: 3,
      instead: ['lower-the-trip', 'breaker'],
    });
    expect(recommendedRating(wish(5, { scale: 'n', trip: 3 }))).toMatchObject({ kind: 'rating', amps: 4 });
  });
});

/** The rating to buy where neither label nor scale stands in the way. */
function ratingFor(kind: Supply['kind'], volts: number, stage: Stage): number | undefined {
  const input = { kind: 'either', volts: 60, plug: undefined } as const;
  const advice = recommendedRating({ kind, volts, stage, input, scale: '1' });
  return advice.kind === 'rating' ? advice.amps : undefined;
}

describe('every recommendation trips its own unit', () => {
  const cases = [1, 1.5, 2, 2.5, 3, 4, 5, 8].flatMap((limit) =>
    [0, 0.09, 0.2, 0.5].flatMap((ownUse) => [
      { kind: 'dc' as const, volts: 15, stage: unit(limit, { ownUse }) },
      { kind: 'dc' as const, volts: 19, stage: unit(limit, { ownUse, rails: { kind: 'set', volts: 15 } }) },
      { kind: 'dc' as const, volts: 19, stage: converter(limit, ownUse) },
      { kind: 'ac' as const, volts: 16, stage: unit(limit, { ownUse }) },
    ]),
  );

  test('in 128 of 128 cases it surely trips, or there is none within NEM 609', () => {
    expect(cases).toHaveLength(128);
    const found = cases.map(({ kind, volts, stage }) => {
      const amps = ratingFor(kind, volts, stage);
      if (amps !== undefined) return tripReach({ kind, volts, amps }, stage);
      const most = COMMON_RATINGS.filter((one) => withinModelLimit({ kind, volts, amps: one })).at(-1) ?? 0;
      return trackCurrent({ kind, volts, amps: most }, stage) > stage.limit ? 'missed' : 'none';
    });
    const count = (what: string): number => found.filter((one) => one === what).length;
    expect(count('reached') + count('none')).toBe(128);
    expect(count('none')).toBe(4);
  });

  test('it fills the unit, is permitted, and no smaller one would surely trip it', () => {
    const supplies: fc.Arbitrary<Supply> = fc.record({
      kind: fc.constantFrom('dc' as const, 'ac' as const),
      volts: spread(3, 60),
      amps: fc.constant(0),
    });
    const units = fc.record({
      limit: spread(0.3, 30),
      ownUse: spread(0, 2),
      rails: fc.oneof(
        fc.constant({ kind: 'follows' as const }),
        fc.record({
          kind: fc.constantFrom('set' as const, 'converter' as const),
          volts: spread(5, 30),
        }),
      ),
    });
    fc.assert(
      fc.property(supplies, units, (supply, stage) => {
        const rating = ratingFor(supply.kind, supply.volts, stage);
        if (rating === undefined) return;
        near(capacity({ ...supply, amps: rating }, stage).hard, stage.limit, 1e-6);
        expect(withinModelLimit({ ...supply, amps: rating })).toBe(true);
        for (const amps of COMMON_RATINGS.filter((one) => one < rating)) {
          expect(tripReach({ ...supply, amps }, stage)).not.toBe('reached');
        }
      }),
    );
  });

  test('there is none within NEM 609 where 10 A or 200 VA do not suffice', () => {
    expect(ratingFor('dc', 15, unit(12))).toBeUndefined();
    expect(ratingFor('dc', 30, unit(8))).toBeUndefined();
  });
});
