// Limits read in published standards.
import { describe, expect, test } from 'vitest';
import { assign } from '../../src/engine/power/assignment.ts';
import { MODEL_SUPPLY_LIMIT } from '../../src/engine/power/capacity.ts';
import type { Scale } from '../../src/engine/power/draws.ts';
import { SCALE_RANGE, TRACK_LIMITS } from '../../src/engine/power/rail-voltage.ts';

describe('NMRA S-9.1, version of March 2020, Table 3: volts at the track', () => {
  // Power station: least / normal / most. Decoder: must work from / must survive.
  const table: readonly (readonly [Scale, number, number, number, number, number])[] = [
    ['z', 8.5, 12, 22, 7, 24],
    ['n', 8.5, 12, 22, 7, 24],
    ['tt', 8.5, 12, 22, 7, 24],
    ['h0', 8.5, 15, 22, 7, 27],
    ['0', 8.5, 15, 22, 7, 27],
    ['1', 8.5, 18, 22, 7, 27],
  ];
  test.each(table)('%s: %d / %d / %d V, decoder %d to %d V', (scale, least, normal, most, from, to) => {
    expect(TRACK_LIMITS[scale]).toEqual({ least, normal, most, decoder: { from, to } });
  });

  test('no usual range of a scale leaves what the standard allows', () => {
    for (const [scale] of table) {
      expect(SCALE_RANGE[scale].from).toBeGreaterThanOrEqual(TRACK_LIMITS[scale].least);
      expect(SCALE_RANGE[scale].to).toBeLessThanOrEqual(TRACK_LIMITS[scale].most);
    }
  });
});

describe('RCN-210, read in a summary: usual volts', () => {
  test.each<[Scale, number]>([
    ['z', 12],
    ['n', 16],
    ['tt', 16],
    ['h0', 18],
    ['0', 18],
    ['1', 22],
  ])('%s up to %d V', (scale, most) => expect(SCALE_RANGE[scale].to).toBe(most));
});

describe('NEM 609, edition of 2010, 6.1', () => {
  test('a supply for models gives at most 200 VA and 10 A', () => {
    expect(MODEL_SUPPLY_LIMIT).toEqual({ amps: 10, voltAmps: 200 });
  });
});

// Source: scipy-assignment.
describe('the manual of the SciPy library, the example of linear_sum_assignment', () => {
  test('[[4, 1, 3], [2, 0, 5], [3, 2, 2]] costs 5 with the columns 1, 0, 2', () => {
    const costs = [
      [4, 1, 3],
      [2, 0, 5],
      [3, 2, 2],
    ];
    expect(assign(costs)).toEqual({ columns: [1, 0, 2], cost: 5, permitted: true });
  });
});
