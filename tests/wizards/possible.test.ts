// What the pages list of a complaint: its causes, and what is still possible on the way.
import { describe, expect, test } from 'vitest';
import { NOTHING_TOLD, replayWalk } from '../../src/wizards/put-it-right/address.ts';
import { COMPLAINT_IDS } from '../../src/wizards/put-it-right/model/index.ts';
import { causesOf, handedOn, possibleNow } from '../../src/wizards/put-it-right/possible.ts';

const MANY: readonly string[] = ['now-and-then', 'none-of-these'];
const WORDS = ['common', 'sometimes', 'rare'];

describe.each(COMPLAINT_IDS)('the list of "%s"', (complaint) => {
  test('names each cause once, the likeliest first', () => {
    const causes = causesOf(complaint);
    expect(new Set(causes.map(({ id }) => id)).size).toBe(causes.length);
    const order = causes.map(({ often }) => WORDS.indexOf(often));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    // Behind a title that fits many troubles no single cause is common.
    if (!MANY.includes(complaint)) expect(order[0]).toBe(0);
  });

  test('before any answer at most five repairs are shown, and the rest is counted', () => {
    const { context } = replayWalk(complaint, NOTHING_TOLD);
    const { shown, more, ruledOut } = possibleNow(context);
    expect(shown.length).toBeLessThanOrEqual(5);
    expect(shown.every(({ chance }, i) => chance >= 0.015 && chance <= (shown[i - 1]?.chance ?? 1))).toBe(true);
    expect(more).toBeGreaterThanOrEqual(0);
    expect(ruledOut).toEqual([]);
    expect(handedOn(context).length).toBeLessThanOrEqual(6);
  });
});

test('what is likeliest is among what is left at the end, though a repair that could harm stands behind the others', () => {
  const { context } = replayWalk('trips-with-traffic', NOTHING_TOLD);
  const [likeliest] = possibleNow(context).shown;
  const left = handedOn(context).map(({ fixClass }) => fixClass);
  expect(likeliest?.fixClass).toBe('not-enough');
  expect(left).toContain('not-enough');
  // A leak could be behind it, and a stronger supply only heats that.
  expect(left.indexOf('not-enough')).toBeGreaterThan(0);
});
