// The same step is asked for once: by the chart, by the replay of an address and by the engine.
import { beforeEach, describe, expect, test, vi } from 'vitest';

const asked = vi.hoisted((): { steps: string[]; reckoned: number } => ({ steps: [], reckoned: 0 }));

vi.mock(import('../../src/wizards/put-it-right/step.ts'), async (original) => {
  const { stepOf, ...rest } = await original();
  return {
    ...rest,
    stepOf: (known) => {
      asked.steps.push(JSON.stringify(known));
      return stepOf(known);
    },
  };
});
vi.mock(import('../../src/engine/index.ts'), async (original) => {
  const { nextStep, ...rest } = await original();
  return {
    ...rest,
    nextStep: (...known) => {
      asked.reckoned += 1;
      return nextStep(...known);
    },
  };
});

const { parseWalk, replayWalk } = await import('../../src/wizards/put-it-right/address.ts');

beforeEach(() => {
  asked.steps = [];
  asked.reckoned = 0;
});

describe('a link with three answers and what is at hand', () => {
  const LINK = '?danger-now=none&tools=lamps.wire&stand-across=trips-at-once&which-places=every-gap';
  const replayed = () => replayWalk('trips-at-gap', parseWalk(LINK).told);

  test('asks for the next step once in each of its five states', () => {
    expect(replayed().fixClass).toBe('reversed');
    expect(asked.steps).toHaveLength(5);
    expect(new Set(asked.steps).size).toBe(5);
    expect(asked.reckoned).toBe(5);
  });

  test('opened again, or with one answer more, has nothing reckoned anew but what is new', () => {
    replayed();
    expect(asked.reckoned).toBe(0);
    replayWalk('trips-at-gap', parseWalk(`${LINK}&two-lamps=both-dark`).told);
    expect(asked.reckoned).toBe(1);
  });

  test('asks for nothing while something is mended or proven', () => {
    const { told } = parseWalk(LINK);
    replayWalk('trips-at-gap', { ...told, doing: 'reversed' });
    replayWalk('trips-at-gap', { ...told, fixed: ['reversed'], isolation: 'fine', phase: 'fine' });
    // "Reversed" is proposed in the fourth state already, and there it is begun.
    expect(asked.steps).toHaveLength(8);
  });
});
