import { describe, expect, test } from 'vitest';
import type { NumberedModel } from '../../../src/engine/diagnosis/compile.ts';
import { compile, compileNumbers } from '../../../src/engine/diagnosis/compile.ts';
import type { NextStep } from '../../../src/engine/diagnosis/diagnosis.ts';
import { nextStep } from '../../../src/engine/diagnosis/diagnosis.ts';
import { questionsLeft } from '../../../src/engine/diagnosis/left.ts';
import { SOMETHING_ELSE } from '../../../src/engine/diagnosis/model.ts';
import { evidence } from '../../../src/engine/diagnosis/posterior.ts';
import type { WalkState } from '../../../src/engine/diagnosis/standing.ts';
import { near } from '../../near.ts';
import { randomModel } from '../../reference/best-repair.ts';
import { seeded } from '../../seeded.ts';
import { expectedMinutes, sparedByAsking } from './minutes.ts';
import { answers, CHECKS, COSTS, EVERYTHING, MODEL, START } from './sample.ts';

const compiled = compile(MODEL, 'stops-at-gap', COSTS);
const thin = compile(MODEL, 'slow-far-away', COSTS);
const COOL = answers('anything-hot=no');

/** Every step of a walk in which `answer` says what comes out of a check, and no fix helps. */
function walk(start: WalkState, answer: (check: string) => string | undefined, of = compiled): NextStep[] {
  const steps: NextStep[] = [];
  let state = start;
  for (let guard = 0; guard < 200; guard++) {
    const step = nextStep(of, state);
    steps.push(step);
    if (step.kind === 'hand-on') return steps;
    if (step.kind === 'fix') {
      state = { ...state, setAside: [...state.setAside, step.fixClass] };
      continue;
    }
    const option = answer(step.check);
    state =
      option === undefined
        ? { ...state, skipped: [...state.skipped, step.check] }
        : { ...state, answers: [...state.answers, { check: step.check, option }] };
  }
  throw new Error('the walk does not end');
}

const asked = (steps: readonly NextStep[]): string[] =>
  steps.flatMap((step) => (step.kind === 'ask' ? [step.check] : []));
const fixes = (steps: readonly NextStep[]): string[] =>
  steps.flatMap((step) => (step.kind === 'fix' ? [step.fixClass] : []));

describe('Danger', () => {
  test('is asked about before everything else', () => {
    expect(nextStep(compiled, START)).toMatchObject({ kind: 'ask', check: 'anything-hot', because: 'first' });
  });

  test('ends the walk at once, whatever else was answered', () => {
    const step = nextStep(compiled, { ...START, answers: answers('stage-lamp=off', 'anything-hot=yes') });
    expect(step).toMatchObject({
      kind: 'fix',
      fixClass: 'switch-off',
      danger: { check: 'anything-hot', option: 'yes' },
    });
    expect(questionsLeft(compiled, { ...START, answers: answers('anything-hot=yes') })).toBe(0);
  });

  test('that was dealt with lets the walk go on, but never again to a coin test', () => {
    const state: WalkState = {
      ...START,
      answers: answers('anything-hot=yes', 'load-test=holds'),
      setAside: ['switch-off'],
    };
    const steps = walk(state, () => undefined);
    expect(steps.length).toBeGreaterThan(1);
    expect(asked(steps)).not.toContain('coin-test');
  });

  test('several first checks come in the order of the rows', () => {
    const smell = { ...CHECKS[0], id: 'smell', minutes: 9 };
    const two = compile(
      { ...MODEL, checks: [...CHECKS.slice(1), ...CHECKS.slice(0, 1), smellRow(smell)] },
      'stops-at-gap',
      COSTS,
    );
    expect(
      asked(walk(START, (check) => (check === 'smell' || check === 'anything-hot' ? 'no' : undefined), two)).slice(
        0,
        2,
      ),
    ).toEqual(['anything-hot', 'smell']);
  });
});

function smellRow(more: object): (typeof CHECKS)[number] {
  const [row] = CHECKS;
  if (row === undefined) throw new Error('the sample has no checks');
  return { ...row, ...more };
}

describe('A check that is out of reach', () => {
  const every = (state: WalkState): string[] => asked(walk(state, () => undefined, thin));

  test('is never offered: no meter, no volts', () => {
    expect(every(START)).toContain('volts-far');
    expect(every({ ...START, tools: ['coin', 'resistor'] })).not.toContain('volts-far');
  });

  test('eyes are always at hand', () => {
    expect(every({ ...START, tools: [] })).toContain('far-part-lit');
  });

  test('a coin test waits for both: nothing got hot, and the load test passed', () => {
    const only: WalkState = { ...START, skipped: ['far-part-lit', 'stage-lamp', 'volts-far'] };
    const offers = (state: WalkState): boolean => {
      const step = nextStep(coin, state);
      return step.kind === 'ask' && step.check === 'coin-test';
    };
    const coin = compile(MODEL, 'slow-far-away', { ...COSTS, riskMinutes: [0, 0, 0, 0], callMinutes: 600 });
    expect(offers({ ...only, answers: answers('anything-hot=no', 'load-test=holds') })).toBe(true);
    expect(offers({ ...only, answers: answers('anything-hot=no', 'load-test=sags') })).toBe(false);
    expect(offers({ ...only, skipped: [...only.skipped, 'anything-hot'], answers: answers('load-test=holds') })).toBe(
      false,
    );
  });
});

describe('"I cannot check that"', () => {
  test('changes no chance, only what is asked', () => {
    const before = nextStep(compiled, { ...START, answers: COOL });
    if (before.kind !== 'ask') throw new Error('expected a question');
    const after = nextStep(compiled, { ...START, answers: COOL, skipped: [before.check] });
    expect(after.kind === 'ask' && after.check).not.toBe(before.check);
    const all = CHECKS.map(({ id }) => id).filter((id) => id !== 'anything-hot');
    const step = nextStep(compiled, { ...START, answers: COOL, skipped: all });
    expect(step.kind).toBe('fix');
    const best = compiled.classes.findIndex(({ fixClass }) => step.kind === 'fix' && fixClass === step.fixClass);
    expect(best).toBeGreaterThanOrEqual(0);
  });
});

describe('Trains that stop at the gap', () => {
  test('with a dark far part and a dark lamp: switch the stage on, after two questions at most', () => {
    const told: Record<string, string> = {
      'anything-hot': 'no',
      'far-part-lit': 'dark',
      'stage-lamp': 'off',
      'volts-far': 'none',
    };
    const steps = walk(START, (check) => told[check]);
    expect(fixes(steps)[0]).toBe('switch-on-stage');
    expect(steps.findIndex(({ kind }) => kind === 'fix')).toBeLessThanOrEqual(3);
  });

  test('a question is asked because it spares more minutes than it costs', () => {
    const state = { ...START, answers: COOL };
    expect(nextStep(compiled, state)).toMatchObject({ kind: 'ask', because: 'separates' });
    expect(sparedByAsking(compiled, state)).toBeGreaterThan(0);
  });

  test('the same state gives the same step, whatever the order of the answers', () => {
    const given = answers('anything-hot=no', 'far-part-lit=dark', 'stage-lamp=on');
    const state = { ...START, answers: given };
    expect(nextStep(compiled, { ...state, answers: [...given].reverse() })).toEqual(nextStep(compiled, state));
  });
});

describe('The last cause that is left', () => {
  const lamp = { id: 'lamp', minutes: 0.1, tool: 'eyes', risk: 0, needs: [], options: ['lit', 'dark'] } as const;
  const of = (share: number): NumberedModel => ({
    complaint: 'last',
    faults: [
      { id: 'reversed', fixClass: 'swap-wires', minutes: 50, share: 1 },
      { id: 'unplugged', fixClass: 'plug-in', minutes: 50, share },
    ],
    checks: [
      {
        ...lamp,
        chances: [
          [1, 0],
          [0, 1],
        ],
      },
    ],
  });

  test('is inferred and not tested: the fix comes at once, however cheap a check would be', () => {
    const one = compileNumbers(of(1), COSTS);
    const state = { ...START, setAside: ['plug-in'] };
    expect(nextStep(one, state)).toMatchObject({ kind: 'fix', fixClass: 'swap-wires', chance: 1 });
    expect(expectedMinutes(one, state)).toBe(50);
  });

  test('while two are left, the cheap check comes first, and its answer settles both', () => {
    const two = compileNumbers(of(1), COSTS);
    expect(nextStep(two, START)).toMatchObject({ kind: 'ask', check: 'lamp' });
    near(expectedMinutes(two, START), 50.1, 1e-9);
    expect(nextStep(two, { ...START, answers: answers('lamp=lit') })).toMatchObject({
      kind: 'fix',
      fixClass: 'swap-wires',
    });
    expect(nextStep(two, { ...START, answers: answers('lamp=dark') })).toMatchObject({
      kind: 'fix',
      fixClass: 'plug-in',
    });
  });

  test('long work does not count against the cause it mends: it has to be done anyway', () => {
    const long: NumberedModel = {
      ...of(1),
      faults: [{ id: 'reversed', fixClass: 'rewire', minutes: 500, share: 1 }],
      checks: [],
    };
    const only = compileNumbers(long, COSTS);
    expect(nextStep(only, START)).toMatchObject({ kind: 'fix', fixClass: 'rewire' });
    expect(expectedMinutes(only, START)).toBe(500);
  });
});

describe('Two checks that tell something only together', () => {
  const lamp = { tool: 'eyes', risk: 0, needs: [], options: ['lit', 'dark'] } as const;
  const model: NumberedModel = {
    complaint: 'together',
    faults: ['aa', 'ab', 'ba', 'bb'].map((id) => ({
      id,
      fixClass: id.slice(0, 1) === id.slice(1) ? 'same' : 'unlike',
      minutes: 20,
      share: 1,
    })),
    checks: [
      {
        ...lamp,
        id: 'left',
        minutes: 1,
        chances: [
          [1, 0],
          [1, 0],
          [0, 1],
          [0, 1],
        ],
      },
      {
        ...lamp,
        id: 'right',
        minutes: 1,
        chances: [
          [1, 0],
          [0, 1],
          [1, 0],
          [0, 1],
        ],
      },
    ],
  };

  test('are both asked when one looks two steps ahead', () => {
    const told: Record<string, string> = { left: 'lit', right: 'lit' };
    expect(asked(walk(START, (check) => told[check], compileNumbers(model, COSTS)))).toEqual(['left', 'right']);
  });

  test('are passed over when one looks one step ahead', () => {
    const short = compileNumbers(model, { ...COSTS, lookAhead: { checks: 0, second: 0, fixes: 1 } });
    expect(nextStep(short, START).kind).toBe('fix');
  });
});

describe('A check opened by another', () => {
  test('counts for the one that opens it: the load test is asked for the sake of the coin', () => {
    const eyes = { tool: 'eyes', risk: 0, minutes: 1 } as const;
    const model: NumberedModel = {
      complaint: 'opened',
      faults: ['near', 'far'].map((id) => ({ id, fixClass: id, minutes: 30, share: 1 })),
      checks: [
        {
          ...eyes,
          id: 'load',
          needs: [],
          options: ['holds', 'sags'],
          establishes: { holds: ['load-test-passed'] },
          chances: [
            [1, 0],
            [1, 0],
          ],
        },
        {
          ...eyes,
          id: 'coin',
          needs: ['load-test-passed'],
          options: ['trips', 'not'],
          chances: [
            [1, 0],
            [0, 1],
          ],
        },
      ],
    };
    const told: Record<string, string> = { load: 'holds', coin: 'not' };
    const steps = walk(START, (check) => told[check], compileNumbers(model, COSTS));
    expect(asked(steps)).toEqual(['load', 'coin']);
    expect(fixes(steps)[0]).toBe('far');
  });
});

describe('The honest end', () => {
  test('comes when every fix failed, and says what speaks for what is left', () => {
    const all = MODEL.faults.map(({ fixClass }) => fixClass);
    const state = { ...START, answers: COOL, setAside: all };
    expect(nextStep(compiled, state)).toEqual({ kind: 'hand-on', because: 'no-cause-left' });
    expect(evidence(compiled, state.answers, state.setAside).map(({ fault }) => fault)).toEqual([SOMETHING_ELSE]);
    near(expectedMinutes(compiled, state), 60, 1e-9);
  });

  test('comes when no check tells the causes apart and no fix is worth its minutes', () => {
    const many: NumberedModel = {
      complaint: 'many',
      faults: Array.from({ length: 20 }, (_, i) => ({ id: `f${i}`, fixClass: `x${i}`, minutes: 60, share: 1 })),
      checks: [],
    };
    const numerous = compileNumbers(many, COSTS);
    expect(nextStep(numerous, START)).toEqual({ kind: 'hand-on', because: 'nothing-separates' });
    expect(evidence(numerous, []).length).toBe(20);
  });

  test('comes when the questions are used up, which skipped ones count towards', () => {
    const short = compile(MODEL, 'slow-far-away', { ...COSTS, mostQuestions: 2 });
    const two: WalkState = { ...START, answers: COOL, skipped: ['volts-far'], setAside: ['thicker-wire'] };
    expect(nextStep(short, two)).toMatchObject({ kind: 'hand-on', because: 'questions-used-up' });
    expect(nextStep(thin, two).kind).toBe('ask');
  });

  test('does not come at once because there are many causes and each check tells little', () => {
    expect(nextStep(compileNumbers(randomModel(7, 60, 60, true), COSTS), START).kind).toBe('ask');
  });
});

describe('In 60 random models of up to 20 faults and 20 checks', () => {
  const cases = Array.from({ length: 60 }, (_, i) => ({ seed: i, model: randomModel(500 + i, 20, 20) }));

  test('a walk ends within 14 questions, asks nothing twice and tries no fix twice', () => {
    for (const { seed, model } of cases) {
      const random = seeded(seed);
      const options = new Map(model.checks.map((check) => [check.id, check.options]));
      const say = (check: string): string | undefined => {
        const list = options.get(check) ?? [];
        return random() < 0.2 ? undefined : list[Math.floor(random() * list.length)];
      };
      const steps = walk(START, say, compileNumbers(model, COSTS));
      expect(asked(steps).length).toBeLessThanOrEqual(14);
      expect(new Set(asked(steps)).size).toBe(asked(steps).length);
      expect(new Set(fixes(steps)).size).toBe(fixes(steps).length);
    }
  });

  test('the questions left are none before a fix, and between none and 14 before a question', () => {
    for (const { model } of cases) {
      const of = compileNumbers(model, COSTS);
      const left = questionsLeft(of, START);
      expect(left).toBeGreaterThanOrEqual(0);
      expect(left).toBeLessThanOrEqual(14);
    }
  });
});

describe('Questions left', () => {
  test('grow fewer as answers come in', () => {
    const start = questionsLeft(compiled, START);
    const later = questionsLeft(compiled, { ...START, answers: answers('anything-hot=no', 'far-part-lit=dark') });
    const end = questionsLeft(compiled, {
      ...START,
      answers: answers('anything-hot=no', 'far-part-lit=dark', 'stage-lamp=off', 'volts-far=none'),
    });
    expect(start).toBeGreaterThan(later);
    expect(later).toBeGreaterThan(end);
    expect(end).toBe(0);
  });

  test('count the questions about danger', () => {
    expect(questionsLeft(compiled, START)).toBeGreaterThanOrEqual(1);
  });

  test('are fewer when less is at hand to ask with', () => {
    expect(questionsLeft(compiled, { ...START, tools: EVERYTHING, skipped: CHECKS.map(({ id }) => id) })).toBe(0);
  });
});
