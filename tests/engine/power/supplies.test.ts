import { describe, expect, test } from 'vitest';
import { districtLoad } from '../../../src/engine/power/fleet.ts';
import { stepFinding, stepSize } from '../../../src/engine/power/steps.ts';
import type { Arrangement, LoadedStage, NamedSupply } from '../../../src/engine/power/supplies.ts';
import { arrange, MOST_ENUMERATED } from '../../../src/engine/power/supplies.ts';
import { near } from '../../near.ts';
import { h0, unit } from '../../samples.ts';

const supply = (volts: number, amps: number, more: Partial<NamedSupply> = {}): NamedSupply => ({
  kind: 'dc',
  volts,
  amps,
  plug: 'terminals',
  ...more,
});

const stage = (movers: number, more: Partial<LoadedStage> = {}): LoadedStage => ({
  ...unit(5),
  input: { kind: 'dc', volts: 19, plug: 'terminals' },
  load: districtLoad(h0(movers, 0, movers)),
  ...more,
});

const set = (volts: number) => ({ rails: { kind: 'set', volts } }) as const;
const placedAs = (arrangement: Arrangement | undefined): number[] => arrangement?.stages.map((one) => one.supply) ?? [];

describe('two supplies on a command station and a booster', () => {
  test('are tried both ways', () => {
    const found = arrange([supply(15, 3), supply(15, 2)], [stage(3), stage(3)]);
    expect(found.map(placedAs).sort()).toEqual([
      [0, 1],
      [1, 0],
    ]);
  });

  test('with rails that follow them: the higher goes to the command station, whatever their amperes', () => {
    const [best] = arrange([supply(15, 5), supply(17, 2)], [stage(2), stage(2)]);
    expect(placedAs(best)).toEqual([1, 0]);
    expect(best?.step.to).toBeLessThan(0);
  });

  test('of equal volts: the one with more amperes goes where more trains run', () => {
    const supplies = [supply(19, 2), supply(19, 4)];
    expect(placedAs(arrange(supplies, [stage(1, set(15)), stage(6, set(15))])[0])).toEqual([0, 1]);
    expect(placedAs(arrange(supplies, [stage(6, set(15)), stage(1, set(15))])[0])).toEqual([1, 0]);
  });

  test('where neither part is ever short: the larger stays with the command station, as is the custom', () => {
    const supplies = [supply(19, 3), supply(19, 5)];
    expect(placedAs(arrange(supplies, [stage(1, set(15)), stage(1, set(15))])[0])).toEqual([1, 0]);
  });

  test('a unit of 5 A gets the supply that can make it trip, whatever else speaks for the other way', () => {
    const supplies = [supply(19, 6), supply(19, 3)];
    const [best, other] = arrange(supplies, [stage(6, { ...set(15), ...unit(2, set(15)) }), stage(1, set(15))]);
    expect(placedAs(best)).toEqual([1, 0]);
    expect([best?.trips, other?.trips]).toEqual([true, false]);
  });

  test('what the labels forbid comes last, whatever else speaks for it', () => {
    const gentle = stage(2, { input: { kind: 'dc', volts: 15, plug: 'terminals' } });
    const [best, other] = arrange([supply(15, 2), supply(18, 5)], [gentle, stage(2)]);
    expect(placedAs(best)).toEqual([0, 1]);
    expect([best?.permitted, other?.permitted]).toEqual([true, false]);
  });
});

describe('the step at the gap', () => {
  test('is nothing between outputs set alike', () => {
    const [best] = arrange([supply(19, 3), supply(18, 5)], [stage(2, set(15)), stage(2, set(15))]);
    expect(best?.step).toEqual({ from: 0, to: 0 });
  });

  test('carries its sign: a booster that stands 2 V higher', () => {
    const found = arrange([supply(15, 3), supply(17, 3)], [stage(2), stage(2)]);
    const boosterHigher = found.find((one) => placedAs(one).join() === '0,1');
    near(boosterHigher?.step.from ?? Number.NaN, 2, 1e-9);
    near(boosterHigher?.step.to ?? Number.NaN, 2, 1e-9);
  });

  test('of a booster that sags with load is an interval', () => {
    const [best] = arrange([supply(19, 3), supply(15, 3)], [stage(2, set(15)), stage(2, set(15))]);
    near(best?.step.from ?? Number.NaN, -1, 1e-9);
    near(best?.step.to ?? Number.NaN, 0, 1e-9);
  });

  test('of several boosters goes from the lowest of them to the highest', () => {
    const supplies = [supply(19, 3), supply(19, 3), supply(19, 3)];
    const [best] = arrange(supplies, [stage(2, set(15)), stage(2, set(14)), stage(2, set(17))]);
    near(best?.step.from ?? Number.NaN, -1, 1e-9);
    near(best?.step.to ?? Number.NaN, 2, 1e-9);
  });

  test('of a booster that follows is as large as the volts of its supply say, the command station lower or higher', () => {
    const found = arrange([supply(15, 3), supply(18, 3)], [stage(2, set(15)), stage(2)]);
    const higher = found.find((one) => placedAs(one).join() === '0,1');
    expect(higher?.step.to ?? 0).toBeGreaterThan(2);
    expect(higher?.step.to ?? 9).toBeLessThanOrEqual(4);
  });

  test('counts by its larger end', () => {
    expect(stepSize({ from: -3, to: 1 })).toBe(3);
    expect(stepSize({ from: 0.1, to: 0.4 })).toBe(0.4);
  });

  test('does not exist without a booster', () => {
    expect(arrange([supply(15, 3)], [stage(2)])[0]?.step).toEqual({ from: 0, to: 0 });
  });
});

describe('a train across the gap', () => {
  test('drags both units down when neither could carry both parts', () => {
    const [best] = arrange([supply(19, 3), supply(19, 3)], [stage(6, set(15)), stage(6, set(15))]);
    expect(best?.cascade).toBe(true);
  });
  test('does not while one of them could', () => {
    const [best] = arrange([supply(19, 3), supply(19, 5)], [stage(4, set(15)), stage(4, set(15))]);
    expect(best?.cascade).toBe(false);
  });
});

describe('two parts with the same moving trains', () => {
  const fleet = h0(8, 2, 5);
  const parts = [0.65, 0.35].map((share) => stage(0, { ...set(15), ...unit(3), load: districtLoad(fleet, share) }));
  const whole = () => districtLoad(fleet).distribution;

  test('no cascade on two 3 A units: the whole layout passes 3 A in 4 % of moments, whatever each part may draw alone', () => {
    const [best] = arrange([supply(19, 3), supply(19, 3)], parts, undefined, whole);
    expect(best?.cascade).toBe(false);
    near(best?.cascadeChance ?? Number.NaN, 0.04, 0.005);
  });

  test('a cascade on two 2.5 A supplies: more than 2.5 A is drawn in every third moment', () => {
    const [best] = arrange([supply(19, 2.5), supply(19, 2.5)], parts, undefined, whole);
    expect(best?.cascade).toBe(true);
    near(best?.cascadeChance ?? Number.NaN, 0.33, 0.02);
  });

  test('parts that have nothing to do with each other may well be busy together', () => {
    const [apart] = arrange([supply(19, 3), supply(19, 3)], parts);
    expect(apart?.cascadeChance).toBeGreaterThan(0.04);
  });
});

describe('more supplies than units', () => {
  test('leave the worst ones over', () => {
    const [best] = arrange([supply(19, 1), supply(19, 4), supply(19, 3)], [stage(4, set(15)), stage(5, set(15))]);
    expect(placedAs(best).sort()).toEqual([1, 2]);
  });

  test('up to six every way of placing them is told: of six on two units thirty', () => {
    const six = Array.from({ length: MOST_ENUMERATED }, (_, i) => supply(19, 1 + i));
    const found = arrange(six, [stage(2, set(15)), stage(2, set(15))]);
    expect(new Set(found.map((one) => placedAs(one).join())).size).toBe(30);
    expect(found.every((one) => one.stages.length === 2)).toBe(true);
  });

  test('above six supplies only one arrangement is worked out, and it is a permitted one', () => {
    const many = Array.from({ length: MOST_ENUMERATED + 1 }, (_, i) => supply(i === 3 ? 24 : 19, 1 + i / 2));
    const found = arrange(many, [stage(5, set(15)), stage(4, set(15))]);
    expect(found).toHaveLength(1);
    expect(found[0]?.permitted).toBe(true);
    expect(placedAs(found[0])).not.toContain(3);
  });

  test('it strains no district more than the best of all arrangements does', () => {
    const six = [1, 1.5, 2, 2.5, 3, 3.5].map((amps) => supply(19, amps));
    const stages = [stage(5, set(15)), stage(4, set(15))];
    const sum = (one: Arrangement | undefined): number =>
      one?.stages.reduce((total, { judgement }) => total + judgement.aboveUsable, 0) ?? Number.NaN;
    const least = Math.min(...arrange(six, stages).map(sum));
    near(sum(arrange([...six, supply(19, 0.5)], stages)[0]), least, 1e-9, 'strain');
  });
});

describe('what cannot be arranged is refused', () => {
  test('fewer supplies than units, or no units', () => {
    expect(() => arrange([supply(15, 3)], [stage(1), stage(1)])).toThrow('1 supplies for 2 stages');
    expect(() => arrange([supply(15, 3)], [])).toThrow(RangeError);
  });
});

describe('what a step comes to', () => {
  test('half a volt either way is level', () => {
    expect(stepFinding({ from: -0.5, to: 0.5 })).toBe('level');
    expect(stepFinding({ from: 0, to: 0.51 })).toBe('booster-higher');
  });

  test('where it goes both ways the larger side counts, and of equal ones the booster', () => {
    expect(stepFinding({ from: -2, to: 1 })).toBe('station-higher');
    expect(stepFinding({ from: -1, to: 2 })).toBe('booster-higher');
    expect(stepFinding({ from: -1, to: 1 })).toBe('booster-higher');
  });
});
