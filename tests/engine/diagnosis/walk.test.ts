// How a walk stands: what its title still counts for once its signs were told in other ways, and what a tool that was of no use makes dearer.
import { describe, expect, test } from 'vitest';
import { WORD_CHANCE } from '../../../src/engine/diagnosis/model.ts';
import type { SignCheck, SignModel } from '../../../src/engine/diagnosis/sign-model.ts';
import { signStep } from '../../../src/engine/diagnosis/sign-step.ts';
import type { WalkSettings } from '../../../src/engine/diagnosis/sign-walk.ts';
import { standAt, walkModel } from '../../../src/engine/diagnosis/sign-walk.ts';
import { near } from '../../near.ts';
import { COSTS, numberedWalk, PLAIN, START } from '../../reference/numbered.ts';

/** A look that tells nothing of the cause, so that what is left to see is what becomes of the title. */
const idle = (id: string, more: Pick<SignCheck, 'reads' | 'reading'>): SignCheck => ({
  ...{ id, minutes: 1, tool: 'eyes', risk: 0, needs: [], source: 'eye', options: ['yes', 'no'] },
  ...more,
});
const EITHER = { yes: 'sometimes', no: 'sometimes' } as const;

describe('A title that says two signs', () => {
  const SAYS = { volts: ['none'], lamp: ['dark'] };
  const model: SignModel = {
    signs: [
      { id: 'volts', values: ['full', 'none'], sound: 'full', unaffected: { full: 'always' } },
      { id: 'lamp', values: ['lit', 'dark'], sound: 'lit', unaffected: { lit: 'always' }, group: 'seen' },
      { id: 'smell', values: ['none', 'burnt'], sound: 'none', unaffected: { none: 'always' }, group: 'seen' },
    ],
    circumstances: [],
    causes: ['wire', 'number', 'supply'].map((id) => ({ id, fixClass: id, minutes: 5, shows: {} })),
    checks: [
      idle('meter', { reads: 'volts', reading: { full: EITHER, none: EITHER } }),
      idle('look', { reads: ['lamp', 'smell'], reading: [{ where: {}, gives: EITHER }] }),
      idle('nose', { reads: 'smell', reading: { none: EITHER, burnt: EITHER } }),
    ],
    openings: [
      { id: 'stands', often: 1, says: SAYS, shares: { wire: 6, number: 1, supply: 1 } },
      { id: 'slow', often: 3, says: {}, shares: { wire: 1, number: 1, supply: 2 } },
    ],
    core: [],
  };
  const TITLE = [6 / 8, 1 / 8, 1 / 8];
  const OVERALL = [0.25 * (6 / 8) + 0.75 * (1 / 4), 0.25 * (1 / 8) + 0.75 * (1 / 4), 0.25 * (1 / 8) + 0.75 * (2 / 4)];
  /** So much of the title, the rest of what is met under all of them; one in ten is something else in any case. */
  const mixed = (part: number): number[] => {
    const weights = TITLE.map((one, at) => one ** part * (OVERALL[at] ?? 0) ** (1 - part));
    const all = weights.reduce((sum, one) => sum + one, 0);
    return [...weights.map((one) => (0.9 * one) / all), 0.1];
  };

  test.each<[string, number, readonly string[]]>([
    ['counts whole where nothing was told', 1, []],
    ['counts whole where another sign was told', 1, ['nose']],
    ['counts whole where something was told that no check asks', 1, ['sniff']],
    ['counts for three quarters once one of them was told in another way', 0.75, ['meter']],
    ['also where that was told together with something else', 0.75, ['look']],
    ['counts for half once both were', 0.5, ['meter', 'look']],
  ])('%s', (_, part, checks) => {
    const answers = checks.map((check) => ({ check, option: 'yes' }));
    const { chances } = standAt(walkModel(model, PLAIN), { ...START, opening: 'stands', answers }).standing;
    for (const [at, chance] of mixed(part).entries()) near(chances[at] ?? -1, chance, 1e-9);
  });

  test('is refused with a look at two signs that do not hang together: the look is named, and the sign that is of no such group', () => {
    const both = idle('meter', { reads: ['lamp', 'volts'], reading: [{ where: {}, gives: EITHER }] });
    const made = () => walkModel({ ...model, checks: [both] }, PLAIN);
    expect(made).toThrow(RangeError);
    expect(made).toThrow(/"meter".*"volts"/);
  });

  test('is refused with a look that says nothing where the rails have none: it is named, and what it is silent on', () => {
    const silent = idle('meter', { reads: 'volts', reading: { full: EITHER } });
    const made = () => walkModel({ ...model, checks: [silent] }, PLAIN);
    expect(made).toThrow(RangeError);
    expect(made).toThrow(/"meter".*none/);
  });
});

describe('A tool that was of no use once', () => {
  const SURE = [
    [1, 0],
    [0, 1],
  ];
  const options = ['yes', 'no'];
  /** What is asked of a look of so many minutes and of a meter of one, after these could not be done. */
  const asked = (minutes: number, ...skipped: readonly string[]) => {
    const model = numberedWalk(
      {
        faults: ['near', 'far'].map((id) => ({ id, fixClass: id, minutes: 30, share: 1 })),
        checks: [
          { id: 'meter', minutes: 1, options, chances: SURE, tool: 'multimeter' },
          { id: 'look', minutes, options, chances: SURE },
          ...['meter-2', 'meter-3'].map((id) => ({
            id,
            minutes: 9,
            options,
            chances: SURE,
            tool: 'multimeter' as const,
          })),
          ...['look-2', 'look-3'].map((id) => ({ id, minutes: 9, options, chances: SURE })),
        ],
      },
      COSTS,
    );
    const step = signStep(model, { ...START, skipped });
    return step.kind === 'ask' ? step.check : step.kind;
  };

  test('is asked for less: each time it counts for half as many minutes more', () => {
    expect(asked(1.4)).toBe('meter');
    expect(asked(1.4, 'meter-2')).toBe('look');
    expect(asked(1.6, 'meter-2')).toBe('meter');
    expect(asked(1.6, 'meter-2', 'meter-3')).toBe('look');
    expect(asked(2.1, 'meter-2', 'meter-3')).toBe('meter');
  });

  test('is not what one sees with: looks that could not be had make no other look dearer', () => {
    expect(asked(0.9, 'look-2', 'look-3')).toBe('look');
    expect(asked(1.4, 'look-2', 'look-3')).toBe('meter');
  });
});

describe('A title that fits in half', () => {
  const mostly = { none: 'usually', full: 'rarely' } as const;
  const hardly = { none: 'rarely', full: 'usually' } as const;
  const model: SignModel = {
    signs: ['volts', 'lamp'].map((id) => ({
      id,
      values: ['full', 'none'],
      sound: 'full',
      unaffected: { full: 'always' },
    })),
    circumstances: [],
    causes: [
      { id: 'wire', fixClass: 'wire', minutes: 5, shows: { volts: mostly, lamp: hardly } },
      { id: 'number', fixClass: 'number', minutes: 5, shows: { volts: hardly, lamp: hardly } },
      { id: 'brush', fixClass: 'brush', minutes: 5, shows: {} },
    ],
    checks: [],
    openings: [
      { id: 'dead', often: 1, says: { volts: ['none'], lamp: ['none'] }, shares: { wire: 1, number: 3 } },
      { id: 'slow', often: 1, says: {}, shares: { wire: 1, number: 1, brush: 2 } },
    ],
    core: [],
  };

  test('brings in what is met anyhow, as far as the sign that fits best is met with it, and never less than a fiftieth of that', () => {
    const one = (of: typeof mostly | typeof hardly): number => {
      const [none, full] = [WORD_CHANCE[of.none], WORD_CHANCE[of.full]];
      return none / (none + full);
    };
    const overall = [(1 / 4 + 1 / 4) / 2, (3 / 4 + 1 / 4) / 2, 2 / 4 / 2];
    const fits = [one(mostly), one(hardly), 0.02].map((fit, at) => fit * (overall[at] ?? 0));
    const all = fits.reduce((sum, fit) => sum + fit, 0);
    for (const halfFits of [0, 0.2, 0.7]) {
      const walk = walkModel(model, { ...PLAIN, halfFits, elseShare: 0 });
      const { chances } = standAt(walk, { ...START, opening: 'dead' }).standing;
      for (const [at, share] of [1 / 4, 3 / 4, 0].entries())
        near(chances[at] ?? -1, (1 - halfFits) * share + (halfFits * (fits[at] ?? 0)) / all, 1e-9);
    }
  });

  test('is refused with a cause that shows what its sign does not have: both are named', () => {
    const stray: SignModel = {
      ...model,
      causes: [{ id: 'wire', fixClass: 'wire', minutes: 5, shows: { volts: { some: 'always' } } }],
      openings: [{ id: 'dead', often: 1, says: {}, shares: { wire: 1 } }],
    };
    expect(() => walkModel(stray, PLAIN)).toThrow(RangeError);
    expect(() => walkModel(stray, PLAIN)).toThrow(/wire.*some/);
  });
});

/** Two repairs, and a look that takes so long that it is asked only where something waits for it. */
function twoRepairs(shares: readonly [number, number], apart: number, more: Partial<WalkSettings> = {}) {
  const made = numberedWalk(
    {
      faults: ['board', 'wheels'].map((id, at) => ({ id, fixClass: id, minutes: 5, share: shares[at] ?? 0 })),
      checks: [
        {
          ...{ id: 'look', minutes: 500, options: ['yes', 'no'] },
          chances: [
            [0.5 + apart, 0.5 - apart],
            [0.5 - apart, 0.5 + apart],
          ],
        },
        {
          id: 'other',
          minutes: 500,
          options: ['yes', 'no'],
          chances: [
            [1, 1],
            [1, 1],
          ],
        },
      ],
    },
    COSTS,
  );
  return { ...made, settings: { ...made.settings, ...more } };
}

describe('A dear repair that is likely enough', () => {
  const step = (shares: readonly [number, number], apart: number, wheels: 'cheap' | 'work' | 'dear') => {
    const made = twoRepairs(shares, apart, { proposeFrom: { cheap: 0, work: 0, dear: 0.8 } });
    const prices = { board: 'dear', wheels } as const;
    return signStep({ ...made, tables: { ...made.tables, model: { ...made.tables.model, prices } } }, START);
  };

  test('waits for a look where something cheaper has more than one chance in ten, and where a look can tell the two apart', () => {
    for (const wheels of ['cheap', 'work'] as const) {
      expect(step([85, 15], 0.4, wheels)).toMatchObject({ kind: 'ask', check: 'look' });
      expect(step([91, 9], 0.4, wheels)).toMatchObject({ kind: 'fix', fixClass: 'board' });
      expect(step([85, 15], 0, wheels)).toMatchObject({ kind: 'fix', fixClass: 'board' });
    }
    expect(step([85, 15], 0.4, 'dear')).toMatchObject({ kind: 'fix', fixClass: 'board' });
  });
});

test('What is not likely enough is handed on once all questions are asked, however much one more would tell', () => {
  const step = (mostQuestions: number) =>
    signStep(
      (() => {
        const made = twoRepairs([6, 4], 0.4, { proposeFrom: { cheap: 0, work: 0.95, dear: 0.95 } });
        return { ...made, compiled: { ...made.compiled, settings: { ...made.compiled.settings, mostQuestions } } };
      })(),
      { ...START, answers: [{ check: 'other', option: 'yes' }] },
    );
  expect(step(2)).toMatchObject({ kind: 'ask', check: 'look' });
  expect(step(1)).toEqual({ kind: 'hand-on', because: 'questions-used-up' });
});

test('An answer that its question does not have shows nothing to be safe, and the question is asked all the same', () => {
  const SURE = [
    [1, 0],
    [0, 1],
  ];
  const model = numberedWalk(
    {
      faults: ['near', 'far'].map((id) => ({ id, fixClass: id, minutes: 30, share: 1 })),
      checks: [
        {
          ...{ id: 'load', minutes: 5, options: ['sags', 'holds'], establishes: { holds: ['load-test-passed'] } },
          chances: [
            [1, 1],
            [1, 1],
          ],
        },
        { id: 'lamp', minutes: 2, options: ['lit', 'dark'], chances: SURE },
        { id: 'coin', minutes: 1, needs: ['load-test-passed'], options: ['trips', 'not'], chances: SURE },
      ],
    },
    COSTS,
  );
  const asked = (check: string, option: string) => {
    const step = signStep(model, { ...START, answers: [{ check, option }] });
    return step.kind === 'ask' ? step.check : step.kind;
  };
  expect(asked('load', 'holds')).toBe('coin');
  expect(asked('lamp', 'purple')).toBe('lamp');
});

describe('A repair whose cause one source alone speaks against', () => {
  const SOURCES = ['memory', 'eye', 'instrument'] as const;
  const model: SignModel = {
    signs: [{ id: 'volts', values: ['full', 'none'], sound: 'full', unaffected: { full: 'always' } }],
    circumstances: [],
    causes: ['wire', 'number'].map((id) => ({
      ...{ id, fixClass: id, minutes: 5 },
      shows: { volts: id === 'wire' ? { none: 'always' } : { full: 'always' } },
    })),
    checks: SOURCES.map((source) => ({
      ...{ id: source, minutes: 500, tool: 'eyes', risk: 0, needs: [], source, reads: 'volts' },
      ...{ options: ['full', 'none'], reading: { full: 'full', none: 'none' } },
    })),
    // Under the one title it is nearly always the wire, over all troubles as often the number.
    openings: [
      { id: 'all', often: 1, says: {}, shares: { wire: 500, number: 1 } },
      { id: 'others', often: 1, says: {}, shares: { number: 1 } },
    ],
    core: [],
  };
  const step = (...answers: readonly (readonly [string, string])[]) =>
    signStep(walkModel(model, { ...PLAIN, elseShare: 0, slips: { memory: 0.3, eye: 0.3, instrument: 0.3 } }), {
      ...START,
      answers: answers.map(([check, option]) => ({ check, option })),
    });

  test('waits until another source was asked for the same, however likely it is; one that speaks for it needs no other', () => {
    const wire = { kind: 'fix', fixClass: 'wire' };
    expect(step(['memory', 'full'])).toMatchObject({ kind: 'ask', check: 'eye' });
    expect(step(['eye', 'full'])).toMatchObject({ kind: 'ask', check: 'memory' });
    expect(step(['memory', 'full'], ['eye', 'full'])).toMatchObject(wire);
    expect(step(['memory', 'full'], ['eye', 'none'])).toMatchObject(wire);
    expect(step(['memory', 'none'])).toMatchObject(wire);
    // What no check asks, and what its check does not say, speaks against nothing.
    expect(step(['no-such-check', 'full'])).toMatchObject(wire);
    expect(step(['memory', 'half'])).toMatchObject(wire);
    expect(step()).toMatchObject(wire);
  });
});

test('Of many looks the one that tells most for its minutes is found, wherever it stands among them', () => {
  const vague = [
    [0.55, 0.45],
    [0.45, 0.55],
  ];
  const telling = [
    [0.97, 0.03],
    [0.03, 0.97],
  ];
  for (const place of [0, 6, 11]) {
    const checks = Array.from({ length: 12 }, (_, at) => ({
      ...{ id: at === place ? 'meter' : `look-${at}`, minutes: at === place ? 2 : 1, options: ['yes', 'no'] },
      chances: at === place ? telling : vague,
    }));
    const faults = ['near', 'far'].map((id) => ({ id, fixClass: id, minutes: 60, share: 1 }));
    expect(signStep(numberedWalk({ faults, checks }, COSTS), START)).toMatchObject({ kind: 'ask', check: 'meter' });
  }
});
