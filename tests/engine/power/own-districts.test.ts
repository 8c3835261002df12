// A club with districts of its own. The chances are counted out by hand here; what an experienced person would say is common practice, no
// source.
import { describe, expect, test } from 'vitest';
import { capacity } from '../../../src/engine/power/capacity.ts';
import type { Fleet } from '../../../src/engine/power/fleet.ts';
import { countedTrains, measuredTrains } from '../../../src/engine/power/fleet.ts';
import type { OwnDistrict } from '../../../src/engine/power/own-districts.ts';
import {
  allHaveEnough,
  districtFinder,
  districtFindings,
  districtsAlike,
  dividedLayout,
  fewerDistricts,
  MOST_OWN_DISTRICTS,
} from '../../../src/engine/power/own-districts.ts';
import { supplyTrip } from '../../../src/engine/power/trip-reach.ts';
import { near } from '../../near.ts';

const district = (traffic: number, amps: number, limit: number): OwnDistrict => ({
  traffic,
  supply: { kind: 'dc', volts: 18, amps },
  stage: { limit, rails: { kind: 'follows' }, ownUse: 0.1 },
});
const bare = { coaches: 0, lamps: 'led', accessories: 0, stored: 0 } as const;
const fleetOf = (count: number, moving: number, amps: number): Fleet => ({
  trains: [measuredTrains(count, { from: amps, to: amps }, 0)],
  moving,
  ...bare,
});
const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);

describe('A divided layout', () => {
  test('is worked out district by district, and what is alike in several divisions once', () => {
    const fleet = fleetOf(5, 5, 0.4);
    const find = districtFinder(fleet);
    const halves = [district(1, 4, 3), district(1, 2, 3)];
    const [first] = districtFindings(halves, find);
    const [again, other] = districtFindings([district(2, 4, 3), district(2, 4, 3)], find);
    expect(again).toBe(first);
    expect(other).toBe(first);
    expect(districtFindings(halves, find)).toEqual(dividedLayout(fleet, halves).districts);
  });

  test('each district draws what the trains in it draw: as counted out, train by train', () => {
    // Of 5 trains under way with 1 A each, k are in a district with a third of the traffic. It passes 2.9 A: more than that is 3 or more.
    const { districts } = dividedLayout(fleetOf(5, 5, 1), [district(1, 4, 2.9), district(2, 4, 2.9)]);
    const [third, rest] = districts;
    const chance = (share: number): number =>
      [3, 4, 5].reduce((sum, k) => sum + choose(5, k) * share ** k * (1 - share) ** (5 - k), 0);
    near(third?.judgement.aboveHard ?? 0, chance(1 / 3), 1e-9);
    near(rest?.judgement.aboveHard ?? 0, chance(2 / 3), 1e-9);
    near(third?.mean ?? 0, 5 / 3, 1e-9);
    near(rest?.mean ?? 0, 10 / 3, 1e-9);
  });

  test('what would still be enough in a district that has too much is told in trains of ten, and a tenth more is not', () => {
    const trains = fleetOf(20, 12, 0.4);
    const of = (ofTen: number) =>
      dividedLayout(trains, [district(ofTen, 6, 3), district(10 - ofTen, 6, 5)]).districts[0];
    const most = of(9)?.mostOfTen ?? 0;
    expect(most).toBeGreaterThan(1);
    expect(of(9)?.judgement.verdict).toBe('short');
    expect(of(most)?.judgement.verdict).not.toBe('short');
    expect(of(most + 0.1)?.judgement.verdict).toBe('short');
  });

  test('what a district bears is its own, whoever stands beside it: a transformer that a low limit cuts short gives no more for a moment', () => {
    const transformer = (limit: number): OwnDistrict => ({
      traffic: 1,
      supply: { kind: 'ac', volts: 16, amps: 3.6 },
      stage: { limit, rails: { kind: 'follows' }, ownUse: 0.1 },
    });
    // For good both give 3.6 / 1.8 - 0.1 = 1.9 A; for a moment 3.6 x 1.3 / 1.8 - 0.1 = 2.5 A, or what the unit passes.
    const [cut, free] = [transformer(1.95), transformer(5)];
    const trains = fleetOf(8, 8, 0.4);
    const mostOf = (...districts: OwnDistrict[]) =>
      dividedLayout(trains, districts).districts.map(({ mostShare }) => mostShare);
    const [alone] = mostOf(cut);
    const [alsoAlone] = mostOf(free);
    expect(alone).toBeLessThan(alsoAlone ?? 0);
    expect(mostOf(cut, free)).toEqual([alone, alsoAlone]);
    expect(mostOf(free, cut)).toEqual([alsoAlone, alone]);
    const both = (count: number) => allHaveEnough(fleetOf(count, count, 0.4), [free, cut]);
    const each = (count: number) =>
      [free, cut].every((one) => allHaveEnough(fleetOf(count, count, 0.4), [one, { ...one }]));
    for (let count = 1; count <= 10; count++) expect(both(count), `${count} trains`).toBe(each(count));
  });

  test('a district without traffic is never the one that is nearest to its limit', () => {
    for (const amps of [4, 0.3]) {
      const layout = dividedLayout(fleetOf(4, 2, 0.4), [district(0, 4, 3), district(1, amps, 3)]);
      expect(layout.districts[0]?.judgement.verdict).toBe('ample');
      expect(layout.worst).toBe(1);
    }
  });

  test('two districts are alike where nothing that is told of them differs', () => {
    const { districts } = dividedLayout(fleetOf(8, 8, 0.4), [
      ...[district(1, 4, 3), district(1, 4, 3), district(2, 4, 3)],
      district(1, 8, 5),
    ]);
    const [one, same, busier, larger] = districts;
    if (!(one && same && busier && larger)) throw new Error('four districts were told');
    expect(districtsAlike(one, same)).toBe(true);
    expect(districtsAlike(one, busier)).toBe(false);
    expect(districtsAlike(one, larger)).toBe(false);
    expect(districtsAlike(one, { ...same, trip: supplyTrip(district(1, 2, 3).supply, district(1, 2, 3).stage) })).toBe(
      false,
    );
  });

  test('six districts of 5 A with even traffic bear a club evening of forty trains, twelve under way', () => {
    const club: Fleet = { trains: countedTrains('h0', 30, 10, 20), moving: 12, ...bare, coaches: 60, accessories: 40 };
    const found = dividedLayout(
      club,
      [1, 1, 1, 1, 1, 1].map((traffic) => district(traffic, 8, 5)),
    );
    expect(found.advice).toEqual({ kind: 'nothing' });
  });

  test('where one district has too much and the others have room, the traffic is shared out before anything is bought', () => {
    const found = dividedLayout(fleetOf(8, 8, 0.4), [district(8, 4, 3), district(1, 4, 3), district(1, 4, 3)]);
    expect(found.worst).toBe(0);
    expect(found.advice.kind).toBe('share-out');
    if (found.advice.kind !== 'share-out') return;
    const again = dividedLayout(
      fleetOf(8, 8, 0.4),
      found.advice.ofTen.map((share) => district(share, 4, 3)),
    );
    expect(again.advice).toEqual({ kind: 'nothing' });
  });

  test('a supply that gives less than its unit passes surely trips nothing: said before any traffic is counted', () => {
    const found = dividedLayout(fleetOf(2, 1, 0.3), [district(1, 5, 4), district(1, 2, 4)]);
    expect(found.advice).toEqual({ kind: 'cannot-trip', districts: [1] });
  });

  test('where every district is full, more of them is the answer, and what may move until then', () => {
    const fleet = fleetOf(12, 12, 0.5);
    const { advice } = dividedLayout(fleet, [district(1, 4, 3), district(1, 4, 3)]);
    expect(advice.kind).toBe('another');
    if (advice.kind !== 'another') return;
    expect(advice.moving).toBeGreaterThan(0);
    const alike = Array.from({ length: advice.districts }, () => district(1, 4, 3));
    expect(dividedLayout(fleet, alike).advice).toEqual({ kind: 'nothing' });
    expect(dividedLayout(fleet, alike.slice(1)).advice.kind).not.toBe('nothing');
  });

  test('the number told is the smallest that does, up to twelve; where no number does, fewer have to move', () => {
    const alike = (count: number) => Array.from({ length: count }, () => district(1, 2, 2));
    const does = (count: number, trains: number) => allHaveEnough(fleetOf(trains, trains, 0.5), alike(count));
    const told = (trains: number) => dividedLayout(fleetOf(trains, trains, 0.5), alike(2)).advice;
    expect([does(11, 8), does(MOST_OWN_DISTRICTS, 8)]).toEqual([false, true]);
    expect(told(8)).toMatchObject({ kind: 'another', districts: MOST_OWN_DISTRICTS });
    expect(does(MOST_OWN_DISTRICTS, 9)).toBe(false);
    expect(told(9).kind).toBe('fewer-moving');
    const able = capacity(district(1, 2, 2).supply, district(1, 2, 2).stage);
    expect(fewerDistricts(fleetOf(8, 8, 0.5), able, MOST_OWN_DISTRICTS + 1)).toBe(MOST_OWN_DISTRICTS);
    expect(fewerDistricts(fleetOf(8, 8, 0.5), able, MOST_OWN_DISTRICTS)).toBeUndefined();
    expect(fewerDistricts(fleetOf(9, 9, 0.5), able, MOST_OWN_DISTRICTS + 1)).toBeUndefined();
  });

  // 5 trains of 0.53 A are 2.65 A: with 2.9 A that is beyond nine tenths at every moment, with 3 A it never is.
  test('a supply that just does not fill its unit is the cheapest to mend: one that fills it is told, in amperes of the unit', () => {
    const five = fleetOf(5, 5, 0.53);
    expect(dividedLayout(five, [district(1, 3, 3)]).advice).toEqual({ kind: 'larger-supply', district: 0, amps: 3 });
    const other = dividedLayout(five, [district(0, 4, 3), district(1, 3, 3)]);
    expect(other.verdict).toBe('short');
    expect(dividedLayout(five, [district(1, 3.1, 3)]).advice).toEqual({ kind: 'nothing' });
  });

  // 4 trains of 0.7 A are 2.8 A, beyond nine tenths of 3 A; in one half of the district all four are in one of 16 moments, within a tenth.
  test('a full unit that half of its trains would suit is divided in two; one that not even half suits is not', () => {
    const alone = (trains: number) => dividedLayout(fleetOf(trains, trains, 0.7), [district(1, 4, 3)]).advice;
    expect(alone(4)).toEqual({ kind: 'divide', district: 0 });
    expect(alone(3)).toEqual({ kind: 'nothing' });
    expect(alone(6).kind).toBe('another');
  });

  test('traffic is shared out in proportion to the room of each, ten trains in all', () => {
    const { advice, districts } = dividedLayout(fleetOf(4, 4, 0.5), [district(3, 2, 2), district(1, 4, 3)]);
    if (advice.kind !== 'share-out') throw new Error(advice.kind);
    const [one = 0, other = 0] = advice.ofTen;
    near(one + other, 10, 1e-9);
    near(one / other, (districts[0]?.mostShare ?? 0) / (districts[1]?.mostShare ?? 0), 1e-9);
  });

  test('where not even one train fits a district, none is told, and never "0 trains"', () => {
    const none = dividedLayout(fleetOf(3, 3, 9), [district(1, 4, 3), district(1, 4, 3)]);
    expect(none.advice).toEqual({ kind: 'fewer-moving', moving: undefined });
  });

  test('how sure it is: with traffic a quarter off, and draws that nobody measured, it is still on the same side', () => {
    const light = dividedLayout(fleetOf(4, 3, 0.3), [district(1, 4, 3), district(1, 4, 3)]);
    expect(light.kind).toBe('surely');
    const heavy = dividedLayout(fleetOf(20, 20, 0.5), [district(1, 4, 3), district(1, 4, 3)]);
    expect(heavy.kind).toBe('surely-not');
    const between = dividedLayout(fleetOf(7, 7, 0.46), [district(1, 4, 3), district(1, 4, 3)]);
    expect(between.kind).toBe('depends');
  });

  test('shares are in proportion: percent, tenths and trains say the same', () => {
    const shares = (factor: number) =>
      dividedLayout(fleetOf(6, 4, 0.4), [district(3 * factor, 4, 3), district(1 * factor, 4, 3)]);
    expect(shares(25)).toEqual(shares(1));
  });

  test.each([
    ['no district', []],
    ['no traffic at all', [district(0, 4, 3)]],
    ['less than none', [district(-1, 4, 3), district(2, 4, 3)]],
  ])('%s is refused', (_, districts) => {
    expect(() => dividedLayout(fleetOf(2, 1, 0.3), districts)).toThrow(RangeError);
  });
});
