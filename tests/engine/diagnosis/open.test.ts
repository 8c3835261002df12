// What can be asked at all: what is at hand, what was asked, what an answer forbids, what must have been shown, and how many questions are left.
import { describe, expect, test } from 'vitest';
import type { SignState } from '../../../src/engine/diagnosis/sign-walk.ts';
import { standAt } from '../../../src/engine/diagnosis/sign-walk.ts';
import type { NumberedCheck } from '../../reference/numbered.ts';
import { COSTS, numberedWalk, START } from '../../reference/numbered.ts';

const check = (id: string, more: Partial<NumberedCheck> = {}): NumberedCheck => ({
  ...{ id, minutes: 1, options: ['yes', 'no'] },
  chances: [
    [0.7, 0.3],
    [0.3, 0.7],
  ],
  ...more,
});
const FAULTS = ['joint', 'supply'].map((id) => ({ id, fixClass: id, minutes: 5, share: 1 }));

/** The checks that can be asked where things stand so, and how many questions are left. */
function standing(checks: readonly NumberedCheck[], told: Partial<SignState>, settings = {}) {
  const { standing: now } = standAt(numberedWalk({ faults: FAULTS, checks }, COSTS, settings), { ...START, ...told });
  return { open: checks.flatMap(({ id }, at) => (now.open[at] === 1 ? [id] : [])), questions: now.questions };
}
const open = (checks: readonly NumberedCheck[], told: Partial<SignState> = {}) => standing(checks, told).open;
const said = (...told: readonly (readonly [string, string])[]) => ({
  answers: told.map(([id, option]) => ({ check: id, option })),
});

describe('A check can be asked', () => {
  test('with its tool and all else that it needs at hand; eyes always are', () => {
    const checks = [
      check('look'),
      check('meter', { tool: 'multimeter' }),
      check('load', { tool: 'resistor', also: ['multimeter'] }),
      check('swap', { also: ['second-supply', 'coin'] }),
    ];
    expect(open(checks, { tools: [] })).toEqual(['look']);
    expect(open(checks, { tools: ['multimeter'] })).toEqual(['look', 'meter']);
    expect(open(checks, { tools: ['resistor'] })).toEqual(['look']);
    expect(open(checks, { tools: ['resistor', 'multimeter', 'coin'] })).toEqual(['look', 'meter', 'load']);
    expect(open(checks, { tools: ['coin', 'second-supply'] })).toEqual(['look', 'swap']);
  });

  test('once, whether it was answered or could not be done; an answer that it does not have is none', () => {
    const checks = ['look', 'feel', 'hear'].map((id) => check(id));
    expect(open(checks, said(['feel', 'no']))).toEqual(['look', 'hear']);
    expect(open(checks, { skipped: ['hear'] })).toEqual(['look', 'feel']);
    expect(open(checks, said(['feel', 'perhaps']))).toEqual(['look', 'feel', 'hear']);
  });

  test('not where the model withholds it, nor where its words make no sense for what was told', () => {
    const checks = [check('look', { withheld: true }), check('feel'), check('hear')];
    expect(open(checks)).toEqual(['feel', 'hear']);
    expect(open(checks, { senseless: new Set(['hear']) })).toEqual(['feel']);
  });

  test('not once an answer forbids what it makes people do; what was said last counts', () => {
    const checks = [
      check('cracks', { forbids: { yes: ['turns-power-on', 'runs-a-train'] } }),
      check('run', { acts: ['runs-a-train'] }),
      check('meter', { acts: ['takes-off', 'turns-power-on'] }),
      check('look', { acts: ['takes-off'] }),
    ];
    expect(open(checks, said(['cracks', 'no']))).toEqual(['run', 'meter', 'look']);
    expect(open(checks, said(['cracks', 'yes']))).toEqual(['look']);
    expect(open(checks, said(['cracks', 'yes'], ['cracks', 'no']))).toEqual(['run', 'meter', 'look']);
    expect(open(checks, said(['cracks', 'no'], ['cracks', 'yes']))).toEqual(['look']);
  });
});

describe('A check that needs something to have been shown', () => {
  const checks = [
    check('hot', { danger: { yes: 'joint' }, establishes: { no: ['nothing-got-hot'] } }),
    check('labels', { establishes: { yes: ['labels-read', 'parts-agree'] } }),
    check('swap', { needs: ['labels-read', 'parts-agree'] }),
    check('coin', { needs: ['nothing-got-hot'] }),
    check('gap', { needs: ['a-gap-there'] }),
    check('plain', { needs: ['power-off', 'vehicles-off', 'all-unplugged'] }),
  ];

  test('can be asked as long as something may still show it', () => {
    expect(open(checks)).toEqual(['hot', 'labels', 'swap', 'coin', 'plain']);
    expect(open(checks, { skipped: ['labels'] })).toEqual(['hot', 'coin', 'plain']);
    expect(open(checks, said(['labels', 'no']))).toEqual(['hot', 'coin', 'plain']);
    expect(open(checks, said(['labels', 'yes']))).toEqual(['hot', 'swap', 'coin', 'plain']);
  });

  test('or where it holds by what people come with', () => {
    expect(open(checks, { given: ['a-gap-there'] })).toContain('gap');
    expect(open(checks, { skipped: ['labels'], given: ['labels-read'] })).not.toContain('swap');
    expect(open(checks, { skipped: ['labels'], given: ['labels-read', 'parts-agree'] })).toContain('swap');
  });

  test('cannot be asked once anything got hot, whatever else was shown', () => {
    expect(open(checks, said(['hot', 'yes']))).toEqual(['labels', 'swap', 'plain']);
    expect(open(checks, { ...said(['hot', 'yes']), given: ['nothing-got-hot'] })).not.toContain('coin');
    const again = [...checks, check('warm', { establishes: { no: ['nothing-got-hot'] } })];
    expect(open(again, said(['hot', 'yes'], ['warm', 'no']))).not.toContain('coin');
    expect(open(again, said(['hot', 'yes']))).not.toContain('coin');
  });

  test('is not opened by a link that says so, but by one that says what the layout is like', () => {
    const more = [...checks, check('ends', { establishes: { yes: ['a-gap-there'] } })];
    const told = said(['labels', 'yes'], ['ends', 'yes']);
    expect(open(more, told)).toEqual(['hot', 'swap', 'coin', 'gap', 'plain']);
    expect(open(more, { ...told, trusted: new Set() })).toEqual(['hot', 'coin', 'gap', 'plain']);
    expect(open(more, { ...told, trusted: new Set(['labels']) })).toEqual(['hot', 'swap', 'coin', 'gap', 'plain']);
  });
});

describe('Questions are left', () => {
  const checks = ['a', 'b', 'c', 'd', 'e'].map((id) => check(id));
  const left = (told: Partial<SignState>, mostSkipped?: number) =>
    standing(checks, told, { mostQuestions: 4, ...(mostSkipped === undefined ? {} : { mostSkipped }) }).questions;

  test('as many as are asked at most, less those that were answered and those that could not be, each once, and never less than none', () => {
    expect(left({})).toBe(4);
    expect(left(said(['a', 'yes'], ['a', 'no']))).toBe(3);
    expect(left({ ...said(['a', 'yes'], ['b', 'no']), skipped: ['c', 'c'] })).toBe(1);
    expect(left({ skipped: ['a', 'b', 'c', 'd', 'e'] })).toBe(0);
    expect(left({ ...said(['z', 'yes']), skipped: ['y', 'a'] })).toBe(3);
  });

  test('and fewer where too many could not be answered', () => {
    expect(left({}, 2)).toBe(2);
    expect(left({ skipped: ['a'] }, 2)).toBe(1);
    expect(left({ skipped: ['a', 'a'] }, 2)).toBe(1);
    expect(left({ skipped: ['a', 'b', 'c'] }, 2)).toBe(0);
    expect(left({ ...said(['a', 'yes'], ['b', 'yes'], ['c', 'yes']), skipped: ['d'] }, 2)).toBe(0);
    expect(left(said(['a', 'yes'], ['b', 'yes'], ['c', 'yes']), 2)).toBe(1);
  });
});
