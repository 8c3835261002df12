import { describe, expect, test } from 'vitest';
import { assertModel } from '../../../src/engine/diagnosis/authoring.ts';
import { compile, compileNumbers } from '../../../src/engine/diagnosis/compile.ts';
import { contradictions } from '../../../src/engine/diagnosis/conflicts.ts';
import type { FaultModel } from '../../../src/engine/diagnosis/model.ts';
import { SOMETHING_ELSE } from '../../../src/engine/diagnosis/model.ts';
import type { Posterior } from '../../../src/engine/diagnosis/posterior.ts';
import { evidence, posterior } from '../../../src/engine/diagnosis/posterior.ts';
import { near } from '../../near.ts';
import { randomModel } from '../../reference/best-repair.ts';
import { seeded } from '../../seeded.ts';
import { answers, CHECKS, COSTS, MODEL } from './sample.ts';

const compiled = compile(MODEL, 'stops-at-gap', COSTS);
const chanceOf = (after: Posterior, fault: string): number =>
  after.causes.find((cause) => cause.fault === fault)?.chance ?? Number.NaN;
const total = ({ causes }: Posterior): number => causes.reduce((sum, { chance }) => sum + chance, 0);

describe('Before any answer', () => {
  const start = posterior(compiled, []);

  test('the causes have the shares of the complaint, with 3 % kept for something else', () => {
    near(chanceOf(start, 'feed-missing'), 0.3 * 0.97, 1e-12);
    near(chanceOf(start, SOMETHING_ELSE), 0.03, 1e-12);
  });

  test('a fault without a share in the complaint is not among the causes', () => {
    expect(start.causes.map(({ fault }) => fault)).not.toContain('overheated');
  });

  test('a share of something else that the complaint gives is kept', () => {
    near(chanceOf(posterior(compile(MODEL, 'slow-far-away', COSTS), []), SOMETHING_ELSE), 0.3, 1e-12);
  });

  test('two faults with one repair are one finding, its work the mean by share', () => {
    const feed = start.findings.find(({ fixClass }) => fixClass === 'connect-feed');
    near(feed?.chance ?? 0, 0.35 * 0.97, 1e-12);
    const work = compiled.classes.find(({ fixClass }) => fixClass === 'connect-feed')?.minutes;
    near(work ?? 0, (30 * 10 + 5 * 20) / 35, 1e-12);
  });
});

describe('A far part that stays dark', () => {
  test('gives the chances that Bayes gives by hand, words normalised per fault', () => {
    const after = posterior(compiled, answers('far-part-lit=dark'));
    const usual = 0.07 / 0.94;
    const joint = {
      'feed-missing': (30 * 0.97) / 0.99,
      'feed-wire-broken': 5 * usual,
      'stage-off': (25 * 0.97) / 0.99,
      'link-missing': (25 * 0.3) / 1.11,
      'metal-across': (10 * 0.8) / 0.88,
      'thin-wire': 5 * usual,
      [SOMETHING_ELSE]: ((100 * 3) / 97) * (usual / 2 + 1 / 6),
    };
    const sum = Object.values(joint).reduce((a, b) => a + b, 0);
    for (const [fault, weight] of Object.entries(joint)) near(chanceOf(after, fault), weight / sum, 1e-12);
  });

  test('rules out what cannot make it dark, and says which answer did', () => {
    const after = posterior(compiled, answers('far-part-lit=dark', 'stage-lamp=on'));
    expect(after.ruledOut).toEqual([
      { check: 'far-part-lit', option: 'dark', faults: ['feed-wire-broken', 'thin-wire'] },
      { check: 'stage-lamp', option: 'on', faults: ['stage-off', 'metal-across'] },
    ]);
  });

  test('does not call ruled out what a later answer brings back', () => {
    const after = posterior(compiled, answers('far-part-lit=dark', 'volts-far=low', 'load-test=sags'));
    expect(after.ruledOut.flatMap(({ faults }) => faults)).not.toContain('thin-wire');
  });

  test('speaks for a missing feed and against a missing link', () => {
    const list = evidence(compiled, answers('far-part-lit=dark', 'stage-lamp=on'));
    const feed = list.find(({ fault }) => fault === 'feed-missing');
    const link = list.find(({ fault }) => fault === 'link-missing');
    expect(feed?.speaksFor).toEqual(answers('stage-lamp=on', 'far-part-lit=dark'));
    expect(feed?.speaksAgainst).toEqual([]);
    expect(link?.speaksAgainst).toEqual(answers('far-part-lit=dark'));
  });
});

describe('A fix that did not help', () => {
  const given = answers('far-part-lit=dark', 'stage-lamp=on');

  test('takes its causes out and leaves the others in proportion', () => {
    const before = posterior(compiled, given);
    const after = posterior(compiled, given, ['connect-feed']);
    expect(chanceOf(after, 'feed-missing')).toBe(0);
    near(
      chanceOf(after, 'link-missing') / chanceOf(after, SOMETHING_ELSE),
      chanceOf(before, 'link-missing') / chanceOf(before, SOMETHING_ELSE),
      1e-9,
    );
    near(total(after), 1, 1e-12);
  });

  test('never empties the list: something else remains', () => {
    const all = MODEL.faults.map(({ fixClass }) => fixClass);
    const after = posterior(compiled, given, [...all, SOMETHING_ELSE]);
    expect(chanceOf(after, SOMETHING_ELSE)).toBe(1);
  });
});

describe('Answers that the model does not know', () => {
  test('are named and left out', () => {
    const after = posterior(compiled, answers('far-part-lit=purple', 'gone=yes', 'stage-lamp=on'));
    expect(after.ignored).toEqual(answers('far-part-lit=purple', 'gone=yes'));
    expect(after.causes).toEqual(posterior(compiled, answers('stage-lamp=on')).causes);
  });

  test('as does an answer that no cause can give, in a model of certainties', () => {
    const sure = compileNumbers(
      {
        complaint: 'sure',
        faults: [{ id: 'open', fixClass: 'join', minutes: 1, share: 1 }],
        checks: [{ ...PLAIN_CHECK, chances: [[1, 0]] }],
      },
      COSTS,
    );
    const after = posterior(sure, answers('volts=no'));
    expect(after.ignored).toEqual(answers('volts=no'));
    near(total(after), 1, 1e-12);
  });
});

const PLAIN_CHECK = { id: 'volts', minutes: 1, tool: 'eyes', risk: 0, needs: [], options: ['yes', 'no'] } as const;

describe('In 100 random models', () => {
  const cases = Array.from({ length: 100 }, (_, i) => {
    const random = seeded(1000 + i);
    const model = randomModel(i + 1, 8, 8);
    const given = model.checks
      .filter(() => random() < 0.7)
      .map(({ id, options }) => ({ check: id, option: options[Math.floor(random() * options.length)] ?? '' }));
    return { compiled: compileNumbers(model, COSTS), given };
  });

  test('chances add up to 1', () => {
    for (const one of cases) near(total(posterior(one.compiled, one.given)), 1, 1e-12);
  });

  test('the order of the answers does not matter', () => {
    for (const one of cases) {
      const there = posterior(one.compiled, one.given);
      const back = posterior(one.compiled, [...one.given].reverse());
      for (const { fault, chance } of there.causes) near(chanceOf(back, fault), chance, 1e-12);
    }
  });

  test('something else never vanishes', () => {
    for (const one of cases) expect(chanceOf(posterior(one.compiled, one.given), SOMETHING_ELSE)).toBeGreaterThan(1e-9);
  });
});

describe('Two answers that hardly go together', () => {
  test('are named as a pair: a lamp that is off, and full volts behind it', () => {
    const [worst, ...others] = contradictions(compiled, answers('stage-lamp=off', 'volts-far=full', 'anything-hot=no'));
    expect([worst?.again.check, worst?.against.check].sort()).toEqual(['stage-lamp', 'volts-far']);
    expect(worst?.chance).toBeLessThan((worst?.alone ?? 0) * 0.25);
    expect(others).toEqual([]);
  });

  test('are not found where answers fit one cause, however rare it is', () => {
    expect(contradictions(compiled, answers('far-part-lit=runs', 'volts-far=low', 'load-test=sags'))).toEqual([]);
    expect(contradictions(compiled, answers('far-part-lit=dark', 'stage-lamp=off', 'volts-far=none'))).toEqual([]);
  });

  test('are not found in one answer alone', () => {
    expect(contradictions(compiled, answers('stage-lamp=off'))).toEqual([]);
  });
});

describe('A slip of the pen mixed into every answer', () => {
  test('keeps a cause within reach that one wrong answer would rule out', () => {
    const given = answers('far-part-lit=dark', 'volts-far=none', 'stage-lamp=on');
    const careful = compile(MODEL, 'stops-at-gap', { ...COSTS, slip: 0.1 });
    expect(chanceOf(posterior(careful, given), 'stage-off')).toBeGreaterThan(
      2 * chanceOf(posterior(compiled, given), 'stage-off'),
    );
    near(total(posterior(careful, given)), 1, 1e-12);
  });
});

describe('A mistake of the author', () => {
  const [hot, lit] = CHECKS;
  const withCheck = (more: object): FaultModel => ({ ...MODEL, checks: [{ ...(lit ?? PLAIN), ...more }] });
  const PLAIN = { ...PLAIN_CHECK, otherwise: ['usually', 'rarely'], when: {} } as const;

  test.each([
    [
      'a fault of an unknown id',
      withCheck({ when: { 'no-such': ['always', 'never', 'never'] } }),
      /far-part-lit.*no-such/,
    ],
    [
      'too few words',
      withCheck({ when: { 'stage-off': ['always', 'never'] } }),
      /far-part-lit.*stage-off.*2 words for 3/,
    ],
    ['too few words otherwise', withCheck({ otherwise: ['always'] }), /far-part-lit.*otherwise.*1 words for 3/],
    ['a word that is none', withCheck({ otherwise: ['always', 'perhaps', 'never'] }), /far-part-lit.*perhaps/],
    ['one option', withCheck({ options: ['dark'], otherwise: ['always'], when: {} }), /far-part-lit.*two options/],
    ['an option twice', withCheck({ options: ['dark', 'dark', 'runs'] }), /far-part-lit.*dark.*twice/],
    ['a danger that is no option', withCheck({ danger: { burnt: 'switch-off' } }), /far-part-lit.*burnt/],
    ['a danger that ends nowhere', withCheck({ danger: { dark: 'run-away' } }), /far-part-lit.*run-away/],
    ['a precondition that is none', withCheck({ needs: ['sunshine'] }), /far-part-lit.*sunshine/],
    ['a tool that is none', withCheck({ tool: 'hammer' }), /far-part-lit.*hammer/],
    ['a coin without its preconditions', withCheck({ tool: 'coin' }), /far-part-lit.*coin.*nothing-got-hot/],
    ['no time at all', withCheck({ minutes: 0 }), /far-part-lit.*minutes/],
    ['a check twice', { ...MODEL, checks: [hot ?? PLAIN, hot ?? PLAIN] }, /anything-hot.*twice/],
    ['a share below 0', { ...MODEL, complaints: [{ id: 'stops-at-gap', priors: { 'stage-off': -1 } }] }, /stage-off/],
    ['a share of nothing known', { ...MODEL, complaints: [{ id: 'stops-at-gap', priors: { ghost: 1 } }] }, /ghost/],
  ] as const)('%s is named with its row', (_, model, words) => {
    expect(() => assertModel(model)).toThrow(RangeError);
    expect(() => assertModel(model)).toThrow(words);
  });

  test('a complaint that is not there is named', () => {
    expect(() => compile(MODEL, 'it-is-raining', COSTS)).toThrow(/it-is-raining/);
  });
});
