// Whatever got hot or smelled is not put on live track again to see whether it does so once more.
import { describe, expect, test } from 'vitest';
import { stepsOf, wordsOf } from './folder.ts';

const PUTS_BACK =
  /\b(?:put|set)\b[^.]*\b(?:vehicles|trains|coaches|locomotives|them)\b[^.]*\bone (?:at a time|by one)\b/i;
const SAYS_VEHICLES = /\b(?:vehicle|train|coach|locomotive)/i;
const STAYS_OFF = 'One that got hot, browned or smelled stays off.';

const steps = wordsOf('en', 'fixes').flatMap((page) =>
  stepsOf(page).map((step, i) => ({ step: `${page.id}, step ${i + 1}`, text: step.text })),
);
const putBack = steps.filter(({ text }) => PUTS_BACK.test(text) && SAYS_VEHICLES.test(text));

describe('a step that puts vehicles back one at a time', () => {
  test('is found in the wheelset’s page and in others', () => {
    expect(putBack.map(({ step }) => step)).toContain('wheelset-short, step 1');
    expect(putBack.length).toBeGreaterThan(3);
  });

  test.each(putBack)('$step: leaves off what got hot', ({ text }) => {
    expect(text).toContain(STAYS_OFF);
  });
});
