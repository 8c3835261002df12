// Worked out by hand for this site from circuit laws and the values named; not published.
import { describe, expect, test } from 'vitest';
import { capacity, trackCurrent } from '../../src/engine/power/capacity.ts';
import { chanceAbove, demand } from '../../src/engine/power/demand.ts';
import { judgeRails, railVoltage, TRACK_LIMITS } from '../../src/engine/power/rail-voltage.ts';
import { overloadsIn } from '../../src/engine/power/rules.ts';
import { near } from '../near.ts';
import { ac, dc, movers, unit } from '../samples.ts';

describe('an a.c. rating is not track current', () => {
  // A transformer winder's design table: a.c. = 1.8 x d.c. behind rectifier and capacitor; 1.6 at best.
  test('3 A of a.c. make 1.67 A of track current, 1.9 A at best', () => {
    near(trackCurrent(ac(3), unit(5)), 1.67, 0.005);
    near(trackCurrent(ac(3), unit(5), 1.6), 1.9, 0.03);
    const able = capacity(ac(3), unit(5));
    near(able.hard, 3 / 1.8, 1e-12);
    near((able.atBest?.usable ?? Number.NaN) / able.usable, 1.8 / 1.6, 1e-12);
  });

  test('own use comes off after the rectifier', () => {
    near(trackCurrent(ac(3), unit(5, { ownUse: 0.5 })), 3 / 1.8 - 0.5, 1e-12);
  });
});

describe('a step-down converter gives more current than it takes', () => {
  const stage = unit(10, { ownUse: 0.2, rails: { kind: 'converter', volts: 14 } });

  test('0.85 x 19 V x (3 A - 0.2 A) / 14 V = 3.23 A, own use first', () => {
    near(trackCurrent(dc(3, 19), stage), 3.23, 1e-9);
  });

  test('up to its own limit', () => expect(capacity(dc(3, 19), { ...stage, limit: 3 }).hard).toBe(3));

  test('never more power on the track than the supply gives', () => {
    for (const volts of [15, 19, 24]) {
      expect(trackCurrent(dc(3, volts), stage) * 14).toBeLessThan(3 * volts);
    }
  });
});

describe('"16 V a.c." on a unit whose rails follow the supply', () => {
  const rails = () => railVoltage(ac(3, 16), { kind: 'follows' });

  test('1.41 x 16 V less 1.6 V is 21 V, and the interval holds it', () => {
    near(Math.SQRT2 * 16 - 1.6, 21, 0.05);
    expect(rails().idle.from).toBeLessThanOrEqual(21);
  });

  test.each([21, 23, 27])('it may stand at %i V', (volts) => {
    expect(volts).toBeGreaterThanOrEqual(rails().idle.from);
    expect(volts).toBeLessThanOrEqual(rails().idle.to);
  });

  test('about 1.25 x 16 V less 2 V, 18 V, may remain at full load', () => {
    expect(rails().loaded.from).toBeLessThanOrEqual(18);
    expect(rails().loaded.to).toBeGreaterThanOrEqual(18);
  });

  test('beyond the 22 V stop line on every scale, and beyond the 24 V of an N decoder', () => {
    expect(rails().idle.to).toBeGreaterThan(TRACK_LIMITS.h0.most);
    expect(rails().idle.to).toBeGreaterThan(TRACK_LIMITS.n.decoder.to);
    expect(judgeRails(rails(), 'n')).toBe('over-decoder');
    for (const scale of ['h0', '0', '1'] as const) expect(judgeRails(rails(), scale)).toMatch(/^over-/);
  });
});

describe('one per cent is not seldom, and how often it is nobody knows to a factor of ten', () => {
  // numbers from outside: with draws that change every 3, 30 and 120 s the same share means many, few or hardly any stretches.
  test('1 % of ten busy minutes is 6 s: between a twentieth of a stretch of two minutes and two of three seconds', () => {
    near(overloadsIn(0.01, 1 / 6).from, 0.05, 1e-12);
    near(overloadsIn(0.01, 1 / 6).to, 2, 1e-12);
  });
});

describe('modern H0 locomotives at 0.2 to 0.5 A, evenly spread', () => {
  const moving = (count: number) => demand(movers(count, count, { from: 0.2, to: 0.5 }));

  test('four moving pass 1.8 A in 0.8 % of moments, and as good as never 2 A', () => {
    near(chanceAbove(moving(4), 1.8), 0.008, 0.0005);
    near(chanceAbove(moving(4), 2), 0, 1e-8);
  });

  test('five moving pass 1.8 A in 40 % of moments, and 2 A in 10 %', () => {
    near(chanceAbove(moving(5), 1.8), 0.4, 0.005);
    near(chanceAbove(moving(5), 2), 0.1, 0.002);
  });

  // The sum of n evenly spread draws follows the Irwin-Hall law: textbook. The tail of four is a corner of a cube.
  test('the same by the law of a sum of even spreads', () => {
    const tail = ((2 - 1.8) / 0.3) ** 4 / 24;
    near(chanceAbove(demand(movers(4, 4, { from: 0.2, to: 0.5 }, 0.0005)), 1.8), tail, 1e-6);
  });
});
