// How sure a verdict is: correlated trains and "so many on average" against a simulation and exact sums, and what people would say.
import { describe, expect, test } from 'vitest';
import { chanceAbove, summarise } from '../../src/engine/power/demand.ts';
import type { Fleet } from '../../src/engine/power/fleet.ts';
import { countedTrains, measuredTrains } from '../../src/engine/power/fleet.ts';
import { lawAt, sureness, TOGETHER } from '../../src/engine/power/sureness.ts';
import { near } from '../near.ts';
import { onceATest } from '../once-a-test.ts';
import { h0 } from '../samples.ts';
import { seeded } from '../seeded.ts';

const of = (fleet: Fleet, hard = 3, lampsKnown = true) => ({
  fleet,
  capacity: { hard, usable: 0.9 * hard },
  lampsKnown,
});

/** Chance below x of a normal draw, by summing up its density in small steps: another way than the engine's. */
const NORMAL = (() => {
  const table = new Float64Array(12_001);
  for (let i = 1; i < table.length; i++) {
    const x = -6 + (i - 0.5) * 1e-3;
    table[i] = (table[i - 1] ?? 0) + (1e-3 * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI);
  }
  return (x: number): number => table[Math.min(12_000, Math.max(0, Math.round((x + 6) / 1e-3)))] ?? 0;
})();

function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

describe('trains that climb together', () => {
  const MOMENTS = 400_000;
  const fleet = h0(10, 0, 8);
  const random = seeded(20_261_126);
  const totals = Float64Array.from({ length: MOMENTS }, () => {
    const common = normal(random);
    let total = 10 * 0.04;
    for (let i = 0; i < 8; i++) {
      const place = NORMAL(Math.sqrt(TOGETHER) * common + Math.sqrt(1 - TOGETHER) * normal(random));
      total += 0.2 + 0.3 * place - 0.04;
    }
    return total;
  });
  const together = onceATest(() => lawAt(of(fleet), { 'trains-together': 'high' }));
  const apart = onceATest(() => lawAt(of(fleet), {}));

  test('draw as much on average, and spread wider', () => {
    const mean = totals.reduce((sum, total) => sum + total, 0) / MOMENTS;
    near(summarise(together()).mean, mean, 0.003);
    near(summarise(together()).mean, summarise(apart()).mean, 0.001);
    const spread = Math.sqrt(totals.reduce((sum, total) => sum + (total - mean) ** 2, 0) / MOMENTS);
    near(summarise(together()).deviation / spread, 1, 0.02);
    expect(spread).toBeGreaterThan(1.5 * summarise(apart()).deviation);
  });

  test.each([3.2, 3.4, 3.6, 3.8])(
    'pass %d A as often as in the simulation, to 15 %, and rather too often than too seldom',
    (limit) => {
      const seen = totals.filter((total) => total > limit).length / MOMENTS;
      expect(seen).toBeGreaterThan(1e-3);
      const ratio = chanceAbove(together(), limit) / seen;
      expect(ratio).toBeGreaterThan(0.95);
      expect(ratio).toBeLessThan(1.15);
    },
  );

  test('pass a high limit several times as often as trains that run by themselves', () => {
    expect(chanceAbove(together(), 3.6)).toBeGreaterThan(5 * chanceAbove(apart(), 3.6));
  });
});

describe('so many on average instead of exactly', () => {
  test('five of ten trains of one current each: binomial, to the last digit', () => {
    const fleet = { ...h0(0, 0, 5), trains: [measuredTrains(10, { from: 1, to: 1 }, 0)] };
    const law = lawAt(of(fleet), { 'how-many-move': 'high' });
    for (let most = 0; most < 10; most++) {
      let passing = 0;
      for (let k = most + 1; k <= 10; k++) passing += choose(10, k) / 2 ** 10;
      near(chanceAbove(law, most + 0.5), passing, 1e-12, `more than ${most}`);
    }
  });

  test('the mean stays, and all may move at once now', () => {
    const fleet = h0(10, 0, 5);
    const [exactly, average] = [lawAt(of(fleet), {}), lawAt(of(fleet), { 'how-many-move': 'high' })];
    near(summarise(average).mean, summarise(exactly).mean, 1e-6);
    near(summarise(average).most, 5, 1e-9);
    near(summarise(exactly).most, 5 * 0.5 + 5 * 0.04, 1e-9);
  });
});

function choose(n: number, k: number): number {
  return k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k;
}

describe('the verdict of someone who knows', () => {
  test('three modern locomotives, two moving, on 3 A: surely enough', () => {
    expect(sureness(of(h0(3, 0, 2)))).toMatchObject({ kind: 'surely' });
  });

  test('ten locomotives moving on 2 A: surely not, whatever they draw', () => {
    expect(sureness(of(h0(10, 0, 10), 2))).toMatchObject({ kind: 'surely-not', best: 'short' });
  });

  test('twelve lit coaches of unknown lamps, two of four locomotives moving, on 3 A: it depends on the lamps', () => {
    const fleet: Fleet = { ...h0(4, 0, 2), coaches: 12, lamps: 'filament' };
    const found = sureness(of(fleet, 3, false));
    expect(found).toMatchObject({ kind: 'depends', deciding: 'coach-lamps' });
    // LEDs in the coaches settle it.
    expect(sureness(of({ ...fleet, lamps: 'led' }, 3, true)).kind).toBe('surely');
  });

  test('trains that were measured leave only how they run together to doubt', () => {
    const fleet = { ...h0(0, 0, 4), trains: [measuredTrains(6, { from: 0.2, to: 0.4 }, 0.05)] };
    const { kind, unknowns } = sureness(of(fleet, 1.7));
    expect(kind).toBe('depends');
    expect(unknowns.map(({ unknown }) => unknown).sort()).toEqual(['how-many-move', 'trains-together']);
  });

  test('what is not there is no doubt: without coaches nothing depends on their lamps', () => {
    for (const { unknowns } of [sureness(of(h0(3, 0, 2), 1)), sureness(of(h0(8, 2, 5), 3))]) {
      expect(unknowns.some(({ unknown }) => unknown === 'coach-lamps' || unknown === 'accessories')).toBe(false);
    }
  });

  test('a tight verdict counts as enough, and sure only where the worst is at least that', () => {
    const fleets = [1, 2, 3, 4, 5, 6, 8].map((moving) => ({ trains: countedTrains('h0', 8, 0, 0), moving }));
    for (const one of fleets) {
      for (const hard of [1.5, 2, 2.5, 3, 4, 5]) {
        const { kind, worst, best } = sureness(of({ ...h0(8, 0, 0), ...one }, hard));
        const settled = {
          surely: worst !== 'short',
          'surely-not': best === 'short',
          depends: worst === 'short' && best !== 'short',
        };
        expect(settled[kind]).toBe(true);
      }
    }
  });

  test('more amperes never make it less sure', () => {
    const order = ['surely-not', 'depends', 'surely'];
    let before = 0;
    for (let hard = 0.5; hard < 12; hard += 0.75) {
      const now = order.indexOf(sureness(of({ ...h0(6, 2, 4), coaches: 6 }, hard, false)).kind);
      expect(now).toBeGreaterThanOrEqual(before);
      before = now;
    }
    expect(before).toBe(2);
  });
});

describe('what may still be found out', () => {
  // 1.2 A, and twenty coaches of which nobody knows what lights them: 0.4 A with LEDs, some 1.5 A with filament lamps.
  const coaches = (trains: Fleet['trains']): Fleet => ({
    ...{ trains, moving: 1, coaches: 20, lamps: 'filament', accessories: 0, stored: 0 },
  });
  const measured = measuredTrains(1, { from: 1.2, to: 1.2 }, 0);
  const unknownIn = (fleet: Fleet) => {
    const { kind, unknowns } = sureness(of(fleet, 2.5, false));
    return [kind, ...unknowns.map(({ unknown }) => unknown)];
  };

  test('is no draw of trains that were measured, and none of a kind of which there is none', () => {
    const none = countedTrains('h0', 1, 0, 0).map((group) => ({ ...group, count: 0 }));
    expect(unknownIn(coaches([measured]))).toEqual(['depends', 'coach-lamps']);
    expect(unknownIn(coaches([measured, ...none]))).toEqual(['depends', 'coach-lamps']);
    expect(unknownIn(coaches(countedTrains('h0', 1, 0, 0)))).toContain('train-draws');
  });
});
