// Whether a way to divide uses its units evenly: by shares of the traffic against amperes, as a reader can check.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitting, LEAST_SHARE, useOf } from '../../src/wizards/division/evenness.ts';
import { advisedOf, bestOf, dividedSheet } from '../../src/wizards/division/index.ts';
import { shareOutFor, takenInto } from '../../src/wizards/share-out/result.ts';
import { SHAPE_IDS } from '../../src/wizards/sheet/index.ts';
import { spread } from '../spread.ts';
import { told } from './told.ts';

const alike = (...shares: readonly number[]) => shares.map((share) => ({ share, most: 1, forTrains: 2 }));

describe('units that are alike', () => {
  // Common practice, no source: about as many consumers in each part is good, five to one is not.
  test.each([
    [[0.5, 0.5], 'good'],
    [[0.6, 0.4], 'good'],
    [[0.7, 0.3], 'fair'],
    [[0.75, 0.25], 'poor'],
    [[5 / 6, 1 / 6], 'poor'],
    [[0.9, 0.1], 'poor'],
    [[1 / 3, 1 / 3, 1 / 3], 'good'],
  ])('%j is %s', (shares, word) => expect(useOf(alike(...shares))).toBe(word));
});

test('on unlike units halves are even, what fits the amperes is, and what lies between; more for the larger is not', () => {
  const on = (share: number) =>
    useOf([
      { share, most: 1, forTrains: 3 },
      { share: 1 - share, most: 1, forTrains: 2 },
    ]);
  expect([0.5, 0.55, 0.6].map(on)).toEqual(['good', 'good', 'good']);
  expect([0.25, 0.8, 0.9].map(on)).toEqual(['poor', 'fair', 'poor']);
});

const partings = fc
  .array(fc.record({ weight: spread(0, 1), forTrains: spread(0.1, 8), room: spread(0, 1) }), {
    minLength: 2,
    maxLength: 5,
  })
  .map((parts) => {
    const all = parts.reduce((sum, { weight }) => sum + weight, 0);
    return parts.map(({ weight, forTrains, room }) => {
      const share = all === 0 ? 1 / parts.length : weight / all;
      return { share, forTrains, most: share + (1 - share) * room };
    });
  });

describe('units of any size', () => {
  test('a part with less than a sixth of the traffic is never called even, unless its unit bears no more', () => {
    fc.assert(
      fc.property(partings, (parts) => {
        const starved = parts.some(({ share, most }) => share < Math.min(LEAST_SHARE, most) - 1e-6);
        if (starved) expect(useOf(parts)).toBe('poor');
      }),
    );
  });

  test('what fits is all of the traffic, none has more than its unit bears, and just that is even', () => {
    fc.assert(
      fc.property(partings, (parts) => {
        const fits = fitting(parts);
        expect(fits.reduce((sum, fit) => sum + fit, 0)).toBeCloseTo(1, 6);
        for (const [at, { most, forTrains }] of parts.entries()) {
          expect(fits[at]).toBeLessThanOrEqual(most + 1e-6);
          // Who has more room than it is given has as much for its amperes as any other.
          const hasRoom = (fits[at] ?? 0) < most - 1e-6;
          const fullest = Math.max(...parts.map((one, other) => (fits[other] ?? 0) / one.forTrains));
          if (hasRoom) expect((fits[at] ?? 0) / forTrains).toBeCloseTo(fullest, 5);
        }
        const even = parts.map((part, at) => ({ ...part, share: fits[at] ?? 0 }));
        if (even.every(({ share }) => share >= LEAST_SHARE)) expect(useOf(even)).toBe('good');
      }),
    );
  });

  test('the one that is busiest for its amperes says how even it is, whatever the unit of the amperes', () => {
    fc.assert(
      fc.property(partings, spread(0.1, 10), (parts, times) => {
        const scaled = parts.map((part) => ({ ...part, forTrains: part.forTrains * times }));
        expect(useOf(scaled)).toBe(useOf(parts));
        expect(useOf(parts.toReversed())).toBe(useOf(parts));
      }),
    );
  });
});

const STARVED = ({ share, most }: { readonly share: number; readonly most: number }): boolean =>
  share < Math.min(LEAST_SHARE, most) - 1e-9;

test.each(SHAPE_IDS.flatMap((shape) => ['4', '6', '8'].map((modern) => [shape, modern] as const)))(
  '%s, %s trains: the wizard and the layout sheet advise the same way first, and none that starves a part is even',
  (shape, modern) => {
    const answers = told({
      ...{ system: 'two-rail', scale: 'h0', older: '0', shape, modern },
      ...{ 'station-amps': '3 A', 'booster-amps': '2 A' },
    });
    const { outcome, ways } = shareOutFor(answers);
    const { division } = dividedSheet(takenInto(undefined, answers).sheet);
    const made = division.kind === 'choice' ? division.ways : [];
    // Trains beyond what two parts bear are another matter: the sheet has no third unit yet.
    const best = outcome === 'divide-the-track' ? ways[0] : undefined;
    expect(bestOf(made)?.districts).toEqual(best?.districts);
    expect(advisedOf(made)).toBe(best?.evenness === 'poor' ? undefined : bestOf(made));
    for (const { asked, evenness } of made) {
      if (asked.some(STARVED)) expect(evenness).toBe('poor');
    }
  },
);
