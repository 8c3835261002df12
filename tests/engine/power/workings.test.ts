// What a page tells of how a number came about: the formula, put to the inputs that are named beside it, gives the number again.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Stage, Supply } from '../../../src/engine/power/capacity.ts';
import { capacity, limitFor, worthOfOneAmpere } from '../../../src/engine/power/capacity.ts';
import type { Fleet } from '../../../src/engine/power/fleet.ts';
import {
  coldFilaments,
  countedTrains,
  demandWorking,
  measuredTrains,
  plainSum,
} from '../../../src/engine/power/fleet.ts';
import type { Able, DistrictLoad } from '../../../src/engine/power/rules.ts';
import { judge, judgeInGroups } from '../../../src/engine/power/rules.ts';
import type { Working } from '../../../src/engine/workings.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

const inputsOf = ({ inputs }: Working): readonly (readonly [string, number, string])[] =>
  inputs.map(({ name, value, unit }) => [name, value, unit]);

const inputOf = (working: Working, name: string): number =>
  working.inputs.find((one) => one.name === name)?.value ?? Number.NaN;

/** Amperes that a supply leaves for the track, by the inputs that its working names. */
function leftBy(working: Working): number {
  const told = (name: string): number => inputOf(working, name);
  if (working.formula === 'usable-ac') return told('supply-amps') / told('ac-factor') - told('own-use');
  const direct = told('supply-amps') - told('own-use');
  if (working.formula === 'usable-dc') return direct;
  return (told('efficiency') * told('supply-volts') * direct) / told('rail-volts');
}

/** A district that draws `amps` for a share of all moments, else nothing. */
const load = (amps: number, share: number, more: Partial<DistrictLoad> = {}): DistrictLoad => ({
  distribution: { step: amps, mass: Float64Array.of(1 - share, share) },
  stallExtra: 0,
  powerUp: 0,
  ...more,
});

describe('what a supply and its unit put on the track', () => {
  const stage: fc.Arbitrary<Stage> = fc.record({
    limit: spread(1, 8),
    ownUse: spread(0, 0.5),
    rails: fc.constantFrom({ kind: 'follows' }, { kind: 'set', volts: 15 }, { kind: 'converter', volts: 14 }),
  });
  const supply: fc.Arbitrary<Supply> = fc.record({
    kind: fc.constantFrom('dc', 'ac'),
    volts: spread(14, 24),
    amps: spread(0.5, 8),
  });

  test('is the least of what the unit passes and what the supply leaves, less the reserve', () => {
    fc.assert(
      fc.property(supply, stage, spread(0.05, 0.3), (from, unit, reserve) => {
        const found = capacity(from, unit, reserve);
        const { formula, value, unit: of, sources } = found.working;
        const told = (name: string): number => inputOf(found.working, name);
        const left = leftBy(found.working);
        const hard = Math.min(told('stage-limit'), Math.max(0, left));
        near(value, hard * (1 - told('reserve')), 1e-9);
        expect([value, of]).toEqual([found.usable, 'A']);
        near(found.hard, hard, 1e-9);
        expect(found.limitedBy).toBe(left < unit.limit ? 'supply' : 'stage');
        const made = unit.rails.kind === 'converter' ? 'usable-converter' : 'usable-dc';
        expect(formula).toBe(from.kind === 'ac' ? 'usable-ac' : made);
        expect(sources).toEqual(
          {
            'usable-ac': ['rectifier-table', 'common-practice'],
            'usable-converter': ['own-derivation', 'from-memory'],
            'usable-dc': ['common-practice'],
          }[formula],
        );
      }),
    );
  });

  test.each<[string, Supply, Stage['rails'], readonly string[]]>([
    ['direct current', { kind: 'dc', volts: 16, amps: 3 }, { kind: 'set', volts: 15 }, []],
    [
      'a step-down unit',
      { kind: 'dc', volts: 20, amps: 3 },
      { kind: 'converter', volts: 14 },
      ['supply-volts V', 'rail-volts V', 'efficiency share'],
    ],
    ['a transformer', { kind: 'ac', volts: 16, amps: 3 }, { kind: 'follows' }, ['ac-factor times']],
  ])('%s: all that it was reckoned of is named, with its unit', (_, from, rails, more) => {
    const { working } = capacity(from, { limit: 4, ownUse: 0.1, rails });
    expect(inputsOf(working).map(([name, , unit]) => `${name} ${unit}`)).toEqual([
      ...['stage-limit A', 'supply-amps A', 'own-use A', 'reserve share'],
      ...more,
    ]);
  });

  test('a transformer alone has a best rectifier and a moment above its rating, and only where it is what limits', () => {
    const [weak, strong] = [2, 20].map((amps) =>
      capacity({ kind: 'ac', volts: 16, amps }, { limit: 3, ownUse: 0, rails: { kind: 'follows' } }),
    );
    near(weak?.atBest?.hard ?? 0, 2 / 1.6, 1e-9);
    near(weak?.atBest?.usable ?? 0, (0.9 * 2) / 1.6, 1e-9);
    near(weak?.moment?.hard ?? 0, (1.3 * 2) / 1.8, 1e-9);
    expect([strong?.atBest, strong?.moment, strong?.limitedBy]).toEqual([undefined, undefined, 'stage']);
    const direct = capacity({ kind: 'dc', volts: 16, amps: 2 }, { limit: 3, ownUse: 0, rails: { kind: 'follows' } });
    expect(Object.keys(direct).sort()).toEqual(['hard', 'limitedBy', 'usable', 'working']);
  });

  test('one ampere more on the label is worth 0.9 A where the supply limits, nothing where the unit does', () => {
    const unit: Stage = { limit: 3, ownUse: 0, rails: { kind: 'follows' } };
    near(worthOfOneAmpere({ kind: 'dc', volts: 16, amps: 1 }, unit), 0.9, 1e-9);
    near(worthOfOneAmpere({ kind: 'dc', volts: 16, amps: 2.5 }, unit), 0.45, 1e-9);
    expect(worthOfOneAmpere({ kind: 'dc', volts: 16, amps: 5 }, unit)).toBe(0);
  });

  test('the unit of an example passes three amperes, or as many as its supply gives', () => {
    expect([1, 3, 5].map(limitFor)).toEqual([3, 3, 5]);
  });
});

describe('what a fleet draws', () => {
  const fleet: Fleet = {
    trains: countedTrains('h0', 3, 2, 1),
    ...{ moving: 4, coaches: 5, lamps: 'led', accessories: 7, stored: 0 },
  };

  test('its working names trains, moving, coaches, pieces and the grid, and what its usual draws rest on', () => {
    const { formula, value, unit, sources, inputs } = demandWorking(fleet, 'h0', 1.5);
    expect([formula, value, unit]).toEqual(['demand', 1.5, 'A']);
    expect(sources).toEqual(['hong-2013', 'own-derivation', 'common-practice']);
    expect(inputs.map((one) => `${one.name} ${one.unit}`)).toEqual([
      ...['trains trains', 'moving trains', 'coaches pieces', 'accessories pieces', 'grid A'],
    ]);
    expect(inputs.slice(0, 4).map((one) => one.value)).toEqual([5, 4, 5, 7]);
    expect(inputs.at(4)?.value).toBeGreaterThan(0);
    const measured = { ...fleet, moving: 2, trains: [measuredTrains(2, { from: 0.3, to: 0.5 }, 0.05)] };
    expect(demandWorking(measured, 'h0', 1).sources).toEqual(['hong-2013', 'own-derivation']);
    const old = { ...fleet, moving: 2, trains: countedTrains('z', 0, 2, 0) };
    expect(demandWorking(old, 'z', 1).sources).toContain('withheld-manuals');
  });

  test('the plain sum is every train at the middle of its running draw, and all that is always on', () => {
    const alone = { ...fleet, coaches: 0, accessories: 0 };
    expect(plainSum(alone).unit).toBe('A');
    const { value, inputs, sources } = plainSum(alone);
    near(
      value,
      alone.trains.reduce((sum, { count, running }) => sum + (count * (running.from + running.to)) / 2, 0),
      1e-9,
    );
    expect(inputs.map(({ name, value: of, unit }) => [name, of, unit])).toEqual([
      ['trains', 5, 'trains'],
      ['coaches', 0, 'pieces'],
      ['accessories', 0, 'pieces'],
    ]);
    expect(sources).toEqual(['common-practice']);
    expect(plainSum(fleet).value).toBeGreaterThan(value);
  });

  test('cold filament lamps draw many times what warm ones do, LEDs nothing more', () => {
    const cold = coldFilaments({ coaches: 10, lamps: 'filament' });
    expect(cold.from).toBeGreaterThan(0);
    expect(cold.to).toBeGreaterThan(cold.from);
    near(coldFilaments({ coaches: 20, lamps: 'filament' }).to, 2 * cold.to, 1e-9);
    expect(coldFilaments({ coaches: 10, lamps: 'led' })).toEqual({ from: 0, to: 0 });
  });
});

describe('the rules of a district tell what they compare', () => {
  const able: Able = { hard: 2, usable: 1.8 };

  test('of an electronic supply', () => {
    const { everyday, stall, powerUp, heat } = judge(load(1.5, 0.5, { stallExtra: 0.25, powerUp: 0.75 }), able);
    const hard = ['hard', 2, 'A'];
    const told = [everyday, stall, powerUp, heat].map(({ working }) => working);
    expect(told.map(({ formula, value, unit, sources }) => [formula, value, unit, sources])).toEqual([
      ['everyday', 0, 'share', ['own-derivation', 'hong-2013']],
      ['stall', 1.75, 'A', ['common-practice']],
      ['power-up', 0.75, 'A', ['from-memory']],
      ['heat', 0.75, 'A', ['common-practice']],
    ]);
    expect(told.map(inputsOf)).toEqual([
      [['usable', 1.8, 'A'], hard, ['above-hard', 0, 'share']],
      [['p95', 1.5, 'A'], ['stall-extra', 0.25, 'A'], hard],
      [hard],
      [hard],
    ]);
    expect([everyday.limit, stall.limit, powerUp.limit, heat.limit]).toEqual([0.01, 2, 2, 2]);
  });

  test('of a transformer: the current that warms it, against what it is planned with', () => {
    const { heat } = judge(load(2, 0.25), { ...able, moment: { hard: 2.6, usable: 2.34 } });
    near(heat.value, 1, 1e-12);
    expect([heat.working.formula, heat.limit]).toEqual(['heat-ac', 1.8]);
  });

  test.each<[string, DistrictLoad, boolean, boolean]>([
    ['a stalled train that takes just all of it', load(1.5, 0.5, { stallExtra: 0.5 }), true, true],
    ['one that takes a little more', load(1.5, 0.5, { stallExtra: 0.51 }), false, true],
    ['all that charges at once just all of it', load(1, 0.5, { powerUp: 2 }), true, true],
    ['and a little more: put on in groups it does', load(1, 0.5, { powerUp: 2.01 }), false, true],
    ['one moment in a hundred in the reserve', load(1.9, 0.01), true, true],
    ['a few more', load(1.9, 0.011), false, false],
    ['one moment in a thousand above the limit', load(2.5, 0.001), true, true],
    ['two in a thousand', load(2.5, 0.002), false, false],
    ['just what may flow for good', load(2, 0.0099), true, true],
  ])('%s: enough %s, in groups %s', (_, district, enough, inGroups) => {
    const isEnough = (verdict: string): boolean => verdict === 'enough' || verdict === 'ample';
    expect(isEnough(judge(district, able).verdict)).toBe(enough);
    if (inGroups && !enough) expect(isEnough(judgeInGroups({ ...district, stallExtra: 0 }, able).verdict)).toBe(true);
  });

  test.each([
    [1.9, 0.1, 'tight'],
    [1.9, 0.11, 'short'],
    [2.5, 0.003, 'tight'],
    [2.5, 0.0035, 'short'],
  ])('%d A in a share of %d of all moments is %s', (amps, share, verdict) => {
    expect(judge(load(amps, share), able).verdict).toBe(verdict);
  });

  test('ample is what a quarter more still leaves enough', () => {
    expect(judge(load(1.44, 1), able).verdict).toBe('ample');
    expect(judge(load(1.45, 1), able).verdict).toBe('enough');
    expect(judge(load(1, 1, { stallExtra: 0.6 }), able).verdict).toBe('ample');
    expect(judge(load(1, 1, { stallExtra: 0.61 }), able).verdict).toBe('enough');
    expect(judge(load(1, 1, { powerUp: 1.6 }), able).verdict).toBe('ample');
    expect(judge(load(1, 1, { powerUp: 1.61 }), able).verdict).toBe('enough');
  });
});
