// People misread, mistype and guess: one answer in ten is wrong, whatever is asked, except what is dangerous now.
import { beforeAll, describe, expect, test } from 'vitest';
import { TOOLS } from '../../src/engine/diagnosis/model.ts';
import type { Walked } from './walks.ts';
import { allInjected, endsWell, share, summary, WITHOUT_METER, walk } from './walks.ts';

const LAYOUTS = 3;
const WRONG = 0.1;

describe('With one wrong answer in ten', () => {
  const withMeter: Walked[] = [];
  const without: Walked[] = [];

  beforeAll(() => {
    for (const one of allInjected(LAYOUTS)) {
      withMeter.push(walk(one, { tools: TOOLS, wrong: WRONG }));
      without.push(walk(one, { tools: WITHOUT_METER, wrong: WRONG }));
    }
  }, 600_000);

  const amongThree = (one: Walked): boolean => endsWell(one) && one.proposed.length <= 3;

  test('the right repair is among the first three that are proposed', () => {
    expect(share(withMeter, amongThree), summary(withMeter)).toBeGreaterThanOrEqual(0.9);
  });

  test('so it is without a multimeter', () => {
    expect(share(without, amongThree), summary(without)).toBeGreaterThanOrEqual(0.9);
  });

  test('wrong answers are felt, or this test would show nothing', () => {
    expect(withMeter.some((one) => !amongThree(one))).toBe(true);
  });
});
