// Tails of large fleets against an independent convolution on a grid of 0.1 mA.
import { describe, expect, test } from 'vitest';
import { chanceAbove, summarise } from '../../src/engine/power/demand.ts';
import { ACCESSORY_DRAW, COACH_DRAWS } from '../../src/engine/power/draws.ts';
import type { Fleet } from '../../src/engine/power/fleet.ts';
import { countedTrains, demandWorking, districtLoad } from '../../src/engine/power/fleet.ts';
import { near } from '../near.ts';
import { fineChanceAbove, fineLaw, fineMoments, finePoint } from './fine-convolution.ts';

const TAILS = [1e-1, 1e-2, 1e-3, 1e-4, 1e-5];
/** Largest relative error of a tail. */
const TOLERANCE = 0.02;

interface Told {
  readonly scale: 'z' | 'n' | 'h0' | '0';
  readonly modern: number;
  readonly older?: number;
  readonly sound?: number;
  readonly moving: number;
  readonly coaches?: number;
  readonly lamps?: Fleet['lamps'];
  readonly accessories?: number;
}

const fleetOf = ({
  scale,
  modern,
  older = 0,
  sound = 0,
  moving,
  coaches = 0,
  lamps = 'led',
  accessories = 0,
}: Told) => ({
  trains: countedTrains(scale, modern, older, sound),
  moving,
  coaches,
  lamps,
  accessories,
  stored: 0,
});

const independent = (fleet: Fleet, share = 1) =>
  fineLaw({
    trains: fleet.trains.map(({ count, running, standing }) => ({ count, ...running, standing })),
    moving: fleet.moving,
    fixed: [
      { count: fleet.coaches, ...COACH_DRAWS[fleet.lamps] },
      { count: fleet.accessories, ...ACCESSORY_DRAW },
    ],
    share,
  });

function sameTails(fleet: Fleet, share = 1): void {
  const fine = independent(fleet, share);
  const { distribution } = districtLoad(fleet, share);
  for (const tail of TAILS) {
    near(chanceAbove(distribution, finePoint(fine, tail)) / tail, 1, TOLERANCE, `of the chance ${tail}`);
  }
  const { mean, deviation } = fineMoments(fine);
  near(summarise(distribution).mean / mean, 1, 1e-9, 'mean');
  near(summarise(distribution).deviation / deviation, 1, 1e-3, 'deviation');
}

describe('the four fleets whose tails a coarse grid got wrong', () => {
  const n = fleetOf({ scale: 'n', modern: 20, older: 5, sound: 12, moving: 8, coaches: 100, accessories: 80 });
  const filament = fleetOf({
    ...{ scale: 'h0', modern: 30, older: 10, sound: 10, moving: 12 },
    ...{ coaches: 60, lamps: 'filament', accessories: 40 },
  });
  const parked = fleetOf({ scale: 'h0', modern: 36, older: 11, sound: 15, moving: 2, coaches: 76, accessories: 102 });
  const hundred = fleetOf({ scale: 'h0', modern: 100, moving: 50, coaches: 500, accessories: 500 });

  test.each([
    ['N, 25 trains, 100 coaches with LEDs, 80 accessories', n],
    ['H0, 40 trains, 60 coaches with filament lamps, 40 accessories', filament],
    ['H0, 47 trains of which 2 move, 76 coaches, 102 accessories', parked],
    ['H0, 100 trains, 500 coaches, 500 accessories', hundred],
  ])('%s: every tail to 2 %', (_, fleet) => sameTails(fleet));

  test('N: 10.78 A at most, and 8 A is passed in 0.0047 % of moments', () => {
    const { distribution } = districtLoad(n);
    near(summarise(distribution).most, 10.78, 1e-9);
    near(chanceAbove(distribution, 8), 4.69e-5, 1e-6);
    near(fineChanceAbove(independent(n), 8), 4.69e-5, 1e-7);
  });

  test('H0 with 2 of 47 moving: above 9 A in 0.08 %, not in 1 %', () => {
    near(chanceAbove(districtLoad(parked).distribution, 9), 8.05e-4, 1e-5);
  });

  test('a hundred trains: the deviation is 0.65 A, not 1.39 A', () => {
    near(summarise(districtLoad(hundred).distribution).deviation, 0.646, 5e-4);
  });
});

describe('fleets of any size', () => {
  const fleets: readonly Told[] = [
    { scale: 'h0', modern: 3, moving: 2, coaches: 3 },
    { scale: 'h0', modern: 10, moving: 5 },
    { scale: 'h0', modern: 4, older: 2, sound: 1, moving: 3 },
    { scale: 'h0', modern: 5, older: 5, moving: 5, coaches: 6, lamps: 'filament', accessories: 10 },
    { scale: 'h0', modern: 8, older: 4, sound: 4, moving: 4, coaches: 10 },
    { scale: 'n', modern: 0, moving: 0, coaches: 10 },
    { scale: 'n', modern: 0, moving: 0, coaches: 500 },
    { scale: 'n', modern: 3, moving: 1, coaches: 20, accessories: 20 },
    { scale: 'z', modern: 20, moving: 10 },
    { scale: '0', modern: 20, older: 20, moving: 20, coaches: 100, lamps: 'filament', accessories: 300 },
  ];
  test.each(fleets)('$scale: $modern modern, $older older, $moving moving, $coaches coaches', (told) =>
    sameTails(fleetOf(told)),
  );
});

describe('one of several districts', () => {
  test.each([
    [{ scale: 'h0', modern: 100, moving: 50, coaches: 500, accessories: 500 }, 1 / 2],
    [{ scale: 'h0', modern: 28, older: 12, moving: 12 }, 1 / 2],
    [{ scale: 'h0', modern: 12, older: 4, moving: 5 }, 0.65],
    [{ scale: 'h0', modern: 5, moving: 3 }, 1 / 2],
    [{ scale: 'n', modern: 20, moving: 8, coaches: 100, accessories: 80 }, 1 / 6],
    [{ scale: 'h0', modern: 20, moving: 10 }, 1 / 6],
    [{ scale: 'h0', modern: 20, moving: 10, coaches: 20, lamps: 'filament', accessories: 10 }, 1 / 3],
  ] as const)('%o with the share %d', (told, share) => sameTails(fleetOf(told), share));
});

describe('the workings of a demand', () => {
  test.each([
    { scale: 'h0', modern: 100, moving: 50, coaches: 500, accessories: 500 },
    { scale: 'n', modern: 20, older: 5, sound: 12, moving: 8, coaches: 100, accessories: 80 },
    { scale: 'h0', modern: 2, moving: 2 },
  ] as const)('name the grid that was used: %o', (told) => {
    const fleet = fleetOf(told);
    const grid = demandWorking(fleet, told.scale, 1).inputs.find(({ name }) => name === 'grid');
    expect(grid?.value).toBe(districtLoad(fleet).distribution.step);
  });
});
