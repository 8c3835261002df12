// Where an address leads is the same whether it is reckoned at once, in parts or ahead; and once it is known, nothing is reckoned again.
import { describe, expect, test, vi } from 'vitest';

const asked = vi.hoisted((): { reckoned: string[] } => ({ reckoned: [] }));

vi.mock(import('../../src/engine/index.ts'), async (original) => {
  const { signStep, signStepInParts, ...rest } = await original();
  return {
    ...rest,
    signStep: (...known) => {
      asked.reckoned.push('at once');
      return signStep(...known);
    },
    *signStepInParts(...known) {
      asked.reckoned.push('in parts');
      return yield* signStepInParts(...known);
    },
  };
});

const { parseWalk, replayWalk } = await import('../../src/wizards/put-it-right/address.ts');
const { placeInParts, placeOf } = await import('../../src/wizards/put-it-right/place.ts');
const { besideInParts, conflictIn, possibleNow } = await import('../../src/wizards/put-it-right/possible.ts');

const SITTING = { 'danger-now': 'none' };
const BEGUN = '?told=yes&tools=lamps.wire';

/** How many parts a place is reckoned in. */
const partsOf = (search: string, sitting: Readonly<Record<string, string>> = SITTING): number =>
  [...placeInParts('trips-at-gap', search, sitting)].length;

describe('the place that an address leads to', () => {
  test.each([
    ['nothing told', ''],
    ['what is at hand', BEGUN],
    ['two answers', `${BEGUN}&two-lamps=both-light&which-places=every-gap`],
    ['one that could not be checked', `${BEGUN}&two-lamps=cannot`],
    ['a repair that did not help', `${BEGUN}&two-lamps=both-light&tried=reversed`],
    ['two that did not help', `${BEGUN}&two-lamps=both-light&tried=reversed.one-rail`],
    ['a repair begun', `${BEGUN}&doing=reversed`],
    ['danger', `${BEGUN}&danger-now=smell`],
  ])('after %s is reckoned in parts, has nothing left to reckon, and is what a replay gives', (_, search) => {
    partsOf(search);
    asked.reckoned = [];
    const { told, walk } = placeOf('trips-at-gap', search, SITTING);
    expect(asked.reckoned).toEqual([]);
    expect(told).toEqual(parseWalk(search, SITTING).told);
    expect(walk).toEqual(replayWalk('trips-at-gap', told, SITTING));
  });

  test('has many parts the first time, so that a tap meanwhile has its turn', () => {
    expect(partsOf(`${BEGUN}&which-places=every-gap&two-lamps=one-lights`)).toBeGreaterThan(100);
  });

  test('is there at once the second time', () => {
    expect(partsOf(`${BEGUN}&which-places=every-gap&two-lamps=one-lights`)).toBe(0);
    const place = placeOf('trips-at-gap', `${BEGUN}&which-places=every-gap&two-lamps=one-lights`, SITTING);
    expect(placeOf('trips-at-gap', `${BEGUN}&which-places=every-gap&two-lamps=one-lights`, SITTING)).toBe(place);
  });

  test('is another one for whoever opens the link later: that nothing is hot is asked anew', () => {
    const search = `${BEGUN}&two-lamps=both-light`;
    expect(placeOf('trips-at-gap', search, SITTING).walk.state).toBe('proposing');
    expect(placeOf('trips-at-gap', search, {}).walk).toMatchObject({ state: 'safety', check: 'danger-now' });
  });
});

describe('what stands beside a question', () => {
  const { walk } = placeOf('trips-at-gap', `${BEGUN}&which-places=every-gap&swap-track-wires=cured`, SITTING);

  test('is reckoned in parts, and is what is reckoned at once', () => {
    const atOnce = { possible: possibleNow({ ...walk.context }), conflict: conflictIn({ ...walk.context }) };
    expect([...besideInParts(walk.context)].length).toBeGreaterThan(100);
    expect({ possible: possibleNow(walk.context), conflict: conflictIn(walk.context) }).toEqual(atOnce);
  });

  test('is there at once the second time', () => {
    expect([...besideInParts(walk.context)]).toEqual([]);
    expect(possibleNow(walk.context)).toBe(possibleNow(walk.context));
  });
});
