// People misread, mistype and guess: one answer in ten is wrong, whatever is asked, except what is dangerous now.
import { beforeAll, describe, expect, test } from 'vitest';
import judged from '../../docs/judged.json' with { type: 'json' };
import type { Walks } from './on-table.ts';
import { amongThree, figuresWith, LAYOUTS, WRONG, walksOf } from './on-table.ts';
import { share, summary } from './walks.ts';

describe('With one wrong answer in ten', () => {
  let walks: Walks = { meter: [], bare: [] };

  beforeAll(() => {
    walks = walksOf(LAYOUTS.wrong, { wrong: WRONG });
  }, 600_000);

  test('all goes as often as the report says', () => {
    expect(figuresWith(walks), 'Run "npm run judge" and commit docs/judged.json and docs/judged.md.').toEqual(
      judged.table.wrong,
    );
  });

  test('the right repair is among the first three that are proposed', () => {
    expect(share(walks.meter, amongThree), summary(walks.meter)).toBeGreaterThanOrEqual(0.9);
  });

  test('so it is without a multimeter', () => {
    expect(share(walks.bare, amongThree), summary(walks.bare)).toBeGreaterThanOrEqual(0.9);
  });

  test('wrong answers are felt, or this test would show nothing', () => {
    expect(walks.meter.some((one) => !amongThree(one))).toBe(true);
  });
});
