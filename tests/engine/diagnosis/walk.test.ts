// How a walk stands: what its title still counts for once its signs were told in other ways, and what a tool that was of no use makes dearer.
import { describe, expect, test } from 'vitest';
import type { SignCheck, SignModel } from '../../../src/engine/diagnosis/sign-model.ts';
import { signStep } from '../../../src/engine/diagnosis/sign-step.ts';
import type { WalkSettings } from '../../../src/engine/diagnosis/sign-walk.ts';
import { standAt, walkModel } from '../../../src/engine/diagnosis/sign-walk.ts';
import { near } from '../../near.ts';
import { COSTS, numberedWalk, START } from '../../reference/numbered.ts';

const SETTINGS: WalkSettings = {
  ...COSTS,
  riskMinutes: [0, 1, 6, 30],
  harmBelow: { ask: 0.005, mend: 0.05 },
  mostQuestions: 14,
  elseShare: 0.1,
  lookAhead: { checks: 5, second: 8, fixes: 3 },
  slips: { memory: 0, eye: 0, instrument: 0 },
  rowsDoubted: 0,
  halfFits: 0,
  proposeFrom: { cheap: 0, work: 0, dear: 0 },
  patience: { after: 14, each: 0, least: 1 },
};

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
    ['counts for three quarters once one of them was told in another way', 0.75, ['meter']],
    ['also where that was told together with something else', 0.75, ['look']],
    ['counts for half once both were', 0.5, ['meter', 'look']],
  ])('%s', (_, part, checks) => {
    const answers = checks.map((check) => ({ check, option: 'yes' }));
    const { chances } = standAt(walkModel(model, SETTINGS), { ...START, opening: 'stands', answers }).standing;
    for (const [at, chance] of mixed(part).entries()) near(chances[at] ?? -1, chance, 1e-9);
  });

  test('is refused with a look that says nothing where the rails have none: it is named, and what it is silent on', () => {
    const silent = idle('meter', { reads: 'volts', reading: { full: EITHER } });
    const made = () => walkModel({ ...model, checks: [silent] }, SETTINGS);
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
