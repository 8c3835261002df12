// What is asked, mended or handed on next, in small models whose right step can be said beforehand.
import { describe, expect, test } from 'vitest';
import type { NextStep } from '../../../src/engine/diagnosis/sign-step.ts';
import { signStep } from '../../../src/engine/diagnosis/sign-step.ts';
import type { SignState, WalkModel } from '../../../src/engine/diagnosis/sign-walk.ts';
import { near } from '../../near.ts';
import { randomModel } from '../../reference/best-repair.ts';
import type { NumberedModel } from '../../reference/numbered.ts';
import { COSTS, numberedWalk, START } from '../../reference/numbered.ts';
import { seeded } from '../../seeded.ts';
import { expectedMinutes } from './minutes.ts';

/** Every step of a walk in which `answer` says what comes out of a check, and no fix helps. */
function walk(model: WalkModel, start: SignState, answer: (check: string) => string | undefined): NextStep[] {
  const steps: NextStep[] = [];
  let state = start;
  for (let guard = 0; guard < 200; guard++) {
    const step = signStep(model, state);
    steps.push(step);
    if (step.kind === 'hand-on') return steps;
    state = after(state, step, step.kind === 'ask' ? answer(step.check) : undefined);
  }
  throw new Error('the walk does not end');
}

function after(state: SignState, step: NextStep, option: string | undefined): SignState {
  if (step.kind === 'fix') return { ...state, setAside: [...state.setAside, step.fixClass] };
  if (step.kind !== 'ask') return state;
  return option === undefined
    ? { ...state, skipped: [...state.skipped, step.check] }
    : { ...state, answers: [...state.answers, { check: step.check, option }] };
}

const asked = (steps: readonly NextStep[]): string[] =>
  steps.flatMap((step) => (step.kind === 'ask' ? [step.check] : []));
const fixes = (steps: readonly NextStep[]): string[] =>
  steps.flatMap((step) => (step.kind === 'fix' ? [step.fixClass] : []));

const SURE = [
  [1, 0],
  [0, 1],
];

describe('Danger', () => {
  const hot = {
    id: 'anything-hot',
    minutes: 1,
    options: ['no', 'yes'],
    chances: [
      [1, 0],
      [0.7, 0.3],
    ],
    danger: { yes: 'near' },
    establishes: { no: ['nothing-got-hot'] },
    first: true,
  } as const;
  const lamp = { id: 'lamp', minutes: 1, options: ['lit', 'dark'], chances: SURE };
  const model = numberedWalk(
    {
      faults: ['near', 'far'].map((id) => ({ id, fixClass: id, minutes: 30, share: 1 })),
      checks: [{ ...lamp, needs: ['nothing-got-hot'] }, hot],
    },
    COSTS,
  );

  test('is asked about before everything else', () => {
    expect(signStep(model, START)).toEqual({ kind: 'ask', check: 'anything-hot', because: 'first' });
  });

  test('ends the walk at once, whatever else was answered', () => {
    const danger = { check: 'anything-hot', option: 'yes' };
    const state = { ...START, answers: [{ check: 'lamp', option: 'dark' }, danger] };
    expect(signStep(model, state)).toMatchObject({ kind: 'fix', fixClass: 'near', danger });
  });

  test('of two dangers the one that the model names first is met first, in whatever order they were told', () => {
    const smell = { ...hot, id: 'burnt-smell', danger: { yes: 'far' } };
    const faults = ['near', 'far'].map((id) => ({ id, fixClass: id, minutes: 30, share: 1 }));
    const both = numberedWalk({ faults, checks: [smell, hot] }, COSTS);
    const told = ['anything-hot', 'burnt-smell'].map((check) => ({ check, option: 'yes' }));
    for (const answers of [told, told.toReversed()])
      expect(signStep(both, { ...START, answers })).toMatchObject({ kind: 'fix', fixClass: 'far' });
    expect(signStep(both, { ...START, answers: told, setAside: ['far'] })).toMatchObject({ fixClass: 'near' });
  });

  test('that was dealt with opens no check that needs nothing to have got hot', () => {
    const state = { ...START, answers: [{ check: 'anything-hot', option: 'yes' }], setAside: ['near'] };
    expect(asked(walk(model, state, () => undefined))).toEqual([]);
  });

  test('that a link rules out opens none either: only who says so now', () => {
    const state = { ...START, answers: [{ check: 'anything-hot', option: 'no' }] };
    expect(signStep(model, state)).toMatchObject({ kind: 'ask', check: 'lamp' });
    expect(signStep(model, { ...state, trusted: new Set() }).kind).toBe('fix');
  });
});

describe('The last cause that is left', () => {
  const model: NumberedModel = {
    faults: [
      { id: 'reversed', fixClass: 'swap-wires', minutes: 50, share: 1 },
      { id: 'unplugged', fixClass: 'plug-in', minutes: 50, share: 1 },
    ],
    checks: [{ id: 'lamp', minutes: 0.1, options: ['lit', 'dark'], chances: SURE }],
  };
  const two = numberedWalk(model, COSTS);

  test('is inferred and not tested: the fix comes at once, however cheap a check would be', () => {
    const state = { ...START, setAside: ['plug-in'] };
    expect(signStep(two, state)).toMatchObject({ kind: 'fix', fixClass: 'swap-wires', chance: 1 });
    near(expectedMinutes(two, state), 50, 1e-9);
  });

  test('while two are left, the cheap check comes first, and its answer settles both', () => {
    expect(signStep(two, START)).toMatchObject({ kind: 'ask', check: 'lamp' });
    near(expectedMinutes(two, START), 50.1, 1e-9);
    for (const [option, fixClass] of [['lit', 'swap-wires'] as const, ['dark', 'plug-in'] as const])
      expect(signStep(two, { ...START, answers: [{ check: 'lamp', option }] })).toMatchObject({
        kind: 'fix',
        fixClass,
      });
  });

  test('long work does not count against the cause it mends: it has to be done anyway', () => {
    const long = { faults: [{ id: 'reversed', fixClass: 'rewire', minutes: 500, share: 1 }], checks: [] };
    const only = numberedWalk(long, COSTS);
    expect(signStep(only, START)).toMatchObject({ kind: 'fix', fixClass: 'rewire' });
    near(expectedMinutes(only, START), 500, 1e-9);
  });
});

describe('Two checks that tell something only together', () => {
  const [yes, no] = [
    [1, 0],
    [0, 1],
  ] as const;
  const options = ['lit', 'dark'];
  const model: NumberedModel = {
    faults: ['aa', 'ab', 'ba', 'bb'].map((id) => ({
      id,
      fixClass: id.slice(0, 1) === id.slice(1) ? 'same' : 'unlike',
      minutes: 20,
      share: 1,
    })),
    checks: [
      { id: 'left', minutes: 1, options, chances: [yes, yes, no, no] },
      { id: 'right', minutes: 1, options, chances: [yes, no, yes, no] },
    ],
  };

  test('are both asked when one looks two steps ahead', () => {
    expect(asked(walk(numberedWalk(model, COSTS), START, () => 'lit'))).toEqual(['left', 'right']);
  });

  test('are both asked however quick they are', () => {
    const quick = { ...model, checks: model.checks.map((one) => ({ ...one, minutes: 0.02 })) };
    expect(asked(walk(numberedWalk(quick, COSTS), START, () => 'lit'))).toEqual(['left', 'right']);
  });

  test('are passed over when one looks one step ahead', () => {
    const short = numberedWalk(model, COSTS, { lookAhead: { checks: 0, second: 0, fixes: 1 } });
    expect(signStep(short, START).kind).toBe('fix');
  });
});

test('A check that another opens is what the other is asked for: the load test for the sake of the coin', () => {
  const model: NumberedModel = {
    faults: ['near', 'far'].map((id) => ({ id, fixClass: id, minutes: 30, share: 1 })),
    checks: [
      {
        id: 'load',
        minutes: 1,
        options: ['holds', 'sags'],
        establishes: { holds: ['load-test-passed'] },
        chances: [
          [1, 0],
          [1, 0],
        ],
      },
      { id: 'coin', minutes: 1, needs: ['load-test-passed'], options: ['trips', 'not'], chances: SURE },
    ],
  };
  const told: Record<string, string> = { load: 'holds', coin: 'not' };
  const steps = walk(numberedWalk(model, COSTS), START, (check) => told[check]);
  expect(asked(steps)).toEqual(['load', 'coin']);
  expect(fixes(steps)[0]).toBe('far');
});

describe('The honest end', () => {
  const faults = Array.from({ length: 20 }, (_, i) => ({ id: `f${i}`, fixClass: `x${i}`, minutes: 60, share: 1 }));

  test('comes when every fix failed', () => {
    const all = [...faults, { id: 'something-else', fixClass: 'something-else', minutes: 1, share: 1 }];
    const model = numberedWalk({ faults: all, checks: [] }, COSTS);
    const state = { ...START, setAside: faults.map(({ fixClass }) => fixClass) };
    expect(signStep(model, state)).toEqual({ kind: 'hand-on', because: 'no-cause-left' });
    near(expectedMinutes(model, state), 60, 1e-9);
  });

  test('comes when no check tells the causes apart and no fix is worth its minutes', () => {
    const model = numberedWalk({ faults, checks: [] }, COSTS);
    expect(signStep(model, START)).toEqual({ kind: 'hand-on', because: 'nothing-separates' });
  });

  test('does not come at once because there are many causes and each check tells little', () => {
    expect(signStep(numberedWalk(randomModel(7, 60, 60, true), COSTS), START).kind).toBe('ask');
  });
});

describe('In 60 random models of up to 20 faults and 20 checks', () => {
  const cases = Array.from({ length: 60 }, (_, seed) => {
    const model = randomModel(500 + seed, 20, 20);
    return { seed, model, walked: numberedWalk(model, COSTS) };
  });

  test('a walk ends within 14 questions, asks nothing twice and tries no fix twice', () => {
    for (const { seed, model, walked } of cases) {
      const random = seeded(seed);
      const options = new Map(model.checks.map((check) => [check.id, check.options]));
      const steps = walk(walked, START, (check) => {
        const list = options.get(check) ?? [];
        return random() < 0.2 ? undefined : list[Math.floor(random() * list.length)];
      });
      expect(asked(steps).length).toBeLessThanOrEqual(14);
      expect(new Set(asked(steps)).size).toBe(asked(steps).length);
      expect(new Set(fixes(steps)).size).toBe(fixes(steps).length);
    }
  });
});
