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
  const { signStep, ...rest } = await original();
  return {
    ...rest,
    signStep: (...known) => {
      asked.reckoned += 1;
      return signStep(...known);
    },
  };
});

const { parseWalk, replayWalk } = await import('../../src/wizards/put-it-right/address.ts');

beforeEach(() => {
  asked.steps = [];
  asked.reckoned = 0;
});

describe('a link with three answers and what is at hand', () => {
  const LINK = '?told=yes&tools=lamps.wire&two-lamps=both-light&which-places=every-gap';
  const SITTING = { 'danger-now': 'none' };
  const replayed = (search = LINK) => replayWalk('trips-at-gap', parseWalk(search, SITTING).told, SITTING);

  test('has no step reckoned twice', () => {
    replayed();
    expect(asked.steps.length).toBeGreaterThan(1);
    expect(asked.reckoned).toBe(new Set(asked.steps).size);
  });

  test('opened again, or with one answer more, has nothing reckoned anew but what is new', () => {
    replayed();
    expect(asked.reckoned).toBe(0);
    replayed(`${LINK}&swap-track-wires=cured`);
    expect(asked.reckoned).toBe(1);
  });
});
