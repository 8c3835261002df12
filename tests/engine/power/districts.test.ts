import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evenness } from '../../../src/engine/power/districts.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

describe('how evenly consumers are shared out', () => {
  test('equal numbers are good', () => expect(evenness([3, 3])).toEqual({ evenness: 'good', busiest: 1 }));
  test('three in one part and two in the other are good', () => expect(evenness([3, 2]).evenness).toBe('good'));
  test('two and one are fair', () => expect(evenness([2, 1]).evenness).toBe('fair'));
  test('all in one part of two is as poor as it gets', () => {
    expect(evenness([4, 0])).toEqual({ evenness: 'poor', busiest: 2 });
  });
  test('nothing on the track is good', () => expect(evenness([0, 0])).toEqual({ evenness: 'good', busiest: 1 }));

  test('neither the order of the parts nor the unit of the loads matters', () => {
    const loads = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(loads, fc.integer({ min: 1, max: 9 }), (parts, factor) => {
        const turned = [...parts].reverse().map((part) => part * factor);
        near(evenness(turned).busiest, evenness(parts).busiest, 1e-9);
        expect(evenness(turned).evenness).toBe(evenness(parts).evenness);
      }),
    );
  });

  test('the busiest part has at least an even share and at most everything', () => {
    fc.assert(
      fc.property(fc.array(spread(0, 10), { minLength: 1, maxLength: 6 }), (loads) => {
        const { busiest } = evenness(loads);
        expect(busiest).toBeGreaterThanOrEqual(1 - 1e-9);
        expect(busiest).toBeLessThanOrEqual(loads.length + 1e-9);
      }),
    );
  });
});
