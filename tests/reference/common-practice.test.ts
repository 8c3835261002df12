// What careful modellers say. Common practice, no source: the engine has to agree with it.
import { describe, expect, test } from 'vitest';
import { COMMON_RATINGS, capacity } from '../../src/engine/power/capacity.ts';
import { evenness } from '../../src/engine/power/districts.ts';
import { DRAWS } from '../../src/engine/power/draws.ts';
import { districtLoad } from '../../src/engine/power/fleet.ts';
import { checkLabels } from '../../src/engine/power/labels.ts';
import { remedies } from '../../src/engine/power/remedies.ts';
import { atLeast } from '../../src/engine/power/rules.ts';
import type { LoadedStage, NamedSupply } from '../../src/engine/power/supplies.ts';
import { arrange } from '../../src/engine/power/supplies.ts';
import { near } from '../near.ts';
import { dc, h0, unit, verdictOn, wish } from '../samples.ts';

describe('common practice, no source: what locomotives draw', () => {
  test('a modern H0 locomotive runs on 0.2 to 0.5 A, an older motor on up to 1 A', () => {
    expect(DRAWS.h0.modern).toEqual({ from: 0.2, to: 0.5 });
    expect(DRAWS.h0.older.to).toBe(1);
  });
});

describe('common practice, no source: what a 2 A supply carries', () => {
  test.each([
    [3, 3],
    [4, 4],
    [5, 4],
  ])('%i modern H0 locomotives, %i of them moving', (modern, moving) => {
    expect(atLeast(verdictOn(h0(modern, 0, moving), 2), 'tight')).toBe(true);
  });

  test('but not five that all move', () => expect(verdictOn(h0(5, 0, 5), 2)).toBe('short'));

  test.each([
    [1, 1],
    [2, 1],
    [2, 2],
  ])('%i older H0 locomotives, %i of them moving', (older, moving) => {
    expect(atLeast(verdictOn(h0(0, older, moving), 2), 'tight')).toBe(true);
  });

  test('but not three older ones that all move', () => expect(verdictOn(h0(0, 3, 3), 2)).toBe('short'));
});

describe('common practice, no source: a larger supply helps up to the unit and no further', () => {
  const hard = (amps: number): number => capacity(dc(amps), unit(3)).hard;

  test('on a 3 A unit, 3 A of supply give 1 A more than 2 A', () => near(hard(3) - hard(2), 1, 1e-12));
  test.each([4, 5, 10])('%i A give no more than 3 A', (amps) => expect(hard(amps)).toBe(hard(3)));
});

describe('common practice, no source: 3 A and 3 A make 3 A here and 3 A there', () => {
  const usableOf = (id: string, amps: number): readonly number[] =>
    remedies(wish(h0(8, 0, 8), amps, 3)).find((one) => one.id === id)?.usable ?? [];

  test('two units of 3 A on 3 A each have 2.7 A to plan with here and 2.7 A there', () => {
    const usable = usableOf('booster-with-own-supply', 3);
    expect(usable).toHaveLength(2);
    for (const amps of usable) near(amps, 2.7, 1e-9);
  });

  test('3 A and 2.5 A make 3 A here and 2.5 A there', () => {
    const usable = usableOf('booster-with-freed-supply', 2.5);
    expect(usable).toHaveLength(2);
    near(usable[0] ?? Number.NaN, 2.7, 1e-9);
    near(usable[1] ?? Number.NaN, 2.25, 1e-9);
  });

  test('2 A behind a booster for 3 A would never let it trip', () => {
    expect(usableOf('booster-with-freed-supply', 2)).toEqual([]);
  });

  test('no district of any remedy has more than one unit passes', () => {
    for (const amps of COMMON_RATINGS) {
      const found = remedies(wish(h0(8, 0, 8), amps, 3));
      for (const usable of found.flatMap((one) => one.usable)) expect(usable).toBeLessThanOrEqual(2.7 + 1e-9);
    }
  });

  test('a train in the part with 3 A gets nothing of the other 3 A: nine trains in one part stay short', () => {
    const able = capacity(dc(3), unit(3));
    expect(verdictOn(h0(9, 0, 9), 3)).toBe('short');
    near(able.hard, 3, 1e-12);
  });
});

describe('common practice, no source: the larger of two supplies belongs to the command station', () => {
  const supply = (amps: number): NamedSupply => ({ kind: 'dc', volts: 18, amps, plug: 'terminals' });
  const stage = (movers: number): LoadedStage => ({
    limit: 5,
    ownUse: 0,
    rails: { kind: 'set', volts: 15 },
    input: { kind: 'dc', volts: 19, plug: 'terminals' },
    load: districtLoad(h0(movers, 0, movers)),
  });

  test.each([
    ['equal traffic', 4, 4],
    ['more traffic on its own part', 6, 2],
    ['no traffic to speak of', 1, 1],
  ])('%s', (_, here, there) => {
    const [best] = arrange([supply(2), supply(4)], [stage(here), stage(there)]);
    expect(best?.stages.map((one) => one.supply)).toEqual([1, 0]);
  });

  test('unless the booster has clearly more traffic', () => {
    const [best] = arrange([supply(2), supply(4)], [stage(1), stage(7)]);
    expect(best?.stages.map((one) => one.supply)).toEqual([0, 1]);
  });
});

describe('common practice, no source: how to share out consumers', () => {
  test('five in one part and one in the other is poor', () => expect(evenness([5, 1]).evenness).toBe('poor'));
  test.each([1, 3, 8])('%i in each is good', (count) => expect(evenness([count, count]).evenness).toBe('good'));
});

describe('common practice, no source: a plug that fits proves nothing', () => {
  test('without the volts of the unit nothing is permitted', () => {
    const input = { kind: 'dc', volts: undefined, plug: 'centre-plus' } as const;
    expect(checkLabels({ ...dc(3), plug: 'centre-plus' }, input).kind).toBe('unknown');
  });
});
