// The tool that changes the code to see whether tests notice (`npm run mutate`): its chances, and its list of what nobody could notice.
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isBorderOfRounding, told } from '../scripts/mutate/alike.mjs';
import { between, draw, fewestNoticed } from '../scripts/mutate/chance.mjs';
import { ROOMS } from '../scripts/mutate/rooms.mjs';
import { changesOf } from '../scripts/mutate/run.mjs';
import { seeded } from './seeded.ts';
import { spread } from './spread.ts';

const ROOT = join(import.meta.dirname, '..');

describe('what a sample must notice', () => {
  test('a room as it was measured falls below the bound fewer times than once in a thousand', () => {
    const random = seeded(12);
    const some = (many: number, share: number): number =>
      Array.from({ length: many }, random).filter((one) => one < share).length;
    const tries = 20_000;
    let below = 0;
    for (let i = 0; i < tries; i += 1) {
      const measured = { noticed: some(120, 0.85), of: 120 };
      if (some(40, 0.85) < fewestNoticed(measured, 40, 1e-3)) below += 1;
    }
    expect(below / tries).toBeLessThan(1e-3);
  });

  test('a room whose tests were emptied falls below it, one that lost a third of its bite nearly always does', () => {
    expect(fewestNoticed({ noticed: 900, of: 1000 }, 40, 1e-3)).toBeGreaterThan(28);
    expect(fewestNoticed({ noticed: 108, of: 120 }, 40, 1e-3)).toBeGreaterThan(24);
  });

  test('where nothing was measured, nothing is demanded', () => {
    expect(fewestNoticed({ noticed: 0, of: 0 }, 40, 1e-3)).toBe(0);
  });

  test('the whole lies between two shares that the share of the sample lies between', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), spread(0, 1), (of, share) => {
        const noticed = Math.floor(share * of);
        const [low = 1, high = 0] = between({ noticed, of });
        expect(low).toBeLessThanOrEqual(noticed / of + 1e-12);
        expect(high).toBeGreaterThanOrEqual(noticed / of - 1e-12);
      }),
    );
  });

  test('the same seed draws the same, each once', () => {
    const all = Array.from({ length: 100 }, (_, i) => i);
    const drawn = draw(all, 30, 7);
    expect(draw(all, 30, 7)).toEqual(drawn);
    expect(draw(all, 30, 8)).not.toEqual(drawn);
    expect(new Set(drawn).size).toBe(30);
    expect(draw(all, 200, 7).toSorted((a, b) => a - b)).toEqual(all);
  });
});

describe('a change as the list of those alike knows it', () => {
  test('by the line on which it begins, what stood there and what stands there now', () => {
    const source = 'const a = 1;\nconst most =\n  a < 2 &&\n  a > 0;\n';
    const location = { start: { line: 3, column: 2 }, end: { line: 4, column: 7 } };
    expect(told(source, { location, replacement: 'true' })).toEqual({
      line: 'a < 2 &&',
      from: 'a < 2 && a > 0',
      to: 'true',
    });
  });
});

test.each([
  ['trip <= most + 1e-9', 'trip < most + 1e-9', true],
  ['at > from + SAME_PLACE', 'at >= from + SAME_PLACE', true],
  ['trip <= most + 1e-9', 'trip > most + 1e-9', false],
  ['most + 1e-9', 'most - 1e-9', false],
  ['trip <= most', 'trip < most', false],
  ['trip <= most + 1e-9 && on', 'true', false],
])('%s → %s differs just at the border of what is there for rounding: %s', (from, to, alike) => {
  expect(isBorderOfRounding({ from, to })).toBe(alike);
});

test.each(Object.entries(ROOMS))('%s has tests, and each entry of its list fits a change', async (room, tests) => {
  for (const one of tests) expect(globSync(one, { cwd: ROOT }), one).not.toEqual([]);
  const { tried, fitNothing } = await changesOf(room);
  expect(tried.length).toBeGreaterThan(20);
  expect(fitNothing).toEqual([]);
});

test('each entry of the list of changes that nobody could notice belongs to a room and has a reason', () => {
  const listed: { file: string; why: string }[] = JSON.parse(
    readFileSync(join(ROOT, 'scripts/mutate/alike.json'), 'utf8'),
  );
  for (const { file, why } of listed) {
    expect(
      Object.keys(ROOMS).some((room) => file.startsWith(`src/${room}/`)),
      file,
    ).toBe(true);
    expect(why.length, file).toBeGreaterThan(20);
  }
});
