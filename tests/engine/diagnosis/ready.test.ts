// A model made ready: what a repair and a check cost, how often a cause is met, and what a title makes of checks. Sums by hand.
import { describe, expect, test } from 'vitest';
import { likelyOnly } from '../../../src/engine/diagnosis/sign-likely.ts';
import type { OpeningRow, SignCheck, SignModel } from '../../../src/engine/diagnosis/sign-model.ts';
import { signStep } from '../../../src/engine/diagnosis/sign-step.ts';
import type { SignState } from '../../../src/engine/diagnosis/sign-walk.ts';
import { standAt, walkModel } from '../../../src/engine/diagnosis/sign-walk.ts';
import { near } from '../../near.ts';
import { COSTS, numberedWalk, PLAIN, START } from '../../reference/numbered.ts';

const check = (id: string, more: Partial<SignCheck> = {}): SignCheck => ({
  ...{ id, minutes: 1, tool: 'eyes', risk: 0, needs: [], source: 'eye', reads: 'volts' },
  ...{ options: ['full', 'none'], reading: { full: 'full', none: 'none' } },
  ...more,
});
const opening = (id: string, often: number, shares: OpeningRow['shares'], more: Partial<OpeningRow> = {}) => ({
  ...{ id, often, shares, says: {} },
  ...more,
});
/** A wire off, met under both titles, or a cold joint: both are soldered. Or another number in the decoder. */
const MODEL: SignModel = {
  signs: [{ id: 'volts', values: ['full', 'none'], sound: 'full', unaffected: { full: 'always' } }],
  circumstances: [],
  causes: [
    { id: 'wire', fixClass: 'solder', minutes: 10, shows: { volts: { none: 'always' } } },
    { id: 'number', fixClass: 'set', minutes: 3, shows: {} },
    { id: 'cold-joint', fixClass: 'solder', minutes: 40, shows: { volts: { none: 'usually', full: 'rarely' } } },
  ],
  checks: [check('meter')],
  openings: [opening('dead', 1, { wire: 3, number: 1 }), opening('slow', 3, { wire: 1, 'cold-joint': 1 })],
  core: [],
};
const ready = (more: Partial<SignModel> = {}) => walkModel({ ...MODEL, ...more }, PLAIN);

describe('Made ready', () => {
  test('causes stand repair by repair, and something else is last', () => {
    const { faults, classes, classEnd, classOf } = ready().compiled;
    expect(faults.map(({ id }) => id)).toEqual(['wire', 'cold-joint', 'number', 'something-else']);
    expect(classes.map(({ fixClass, faults: members }) => [fixClass, members])).toEqual([
      ['solder', ['wire', 'cold-joint']],
      ['set', ['number']],
    ]);
    expect([[...classEnd], [...classOf]]).toEqual([
      [2, 3],
      [0, 0, 1, -1],
    ]);
  });

  test('a cause is met as often as the titles behind which it stands, each by how often that is tapped', () => {
    const [wire, coldJoint, number, other] = ready().overall;
    near(wire ?? 0, 0.9 * ((1 / 4) * (3 / 4) + (3 / 4) * (1 / 2)), 1e-12);
    near(coldJoint ?? 0, 0.9 * ((3 / 4) * (1 / 2)), 1e-12);
    near(number ?? 0, 0.9 * ((1 / 4) * (1 / 4)), 1e-12);
    near(other ?? 0, 0.1, 1e-12);
  });

  test('a repair takes as long as its causes do by how often they are met; in vain it costs ten minutes more', () => {
    const { classes, classCost, perCost } = ready().compiled;
    const [wire, coldJoint] = [(1 / 4) * (3 / 4) + (3 / 4) * (1 / 2), (3 / 4) * (1 / 2)];
    const solder = (10 * wire + 40 * coldJoint) / (wire + coldJoint);
    for (const [at, minutes] of [solder, 3].entries()) {
      near(classes[at]?.minutes ?? 0, minutes, 1e-9);
      near(classCost[at] ?? 0, minutes + 10, 1e-9);
      near(perCost[at] ?? 0, 1 / (minutes + 10), 1e-9);
    }
  });

  test('a check costs its minutes and those of its risk, the more the fewer can tell', () => {
    const checks = [
      check('look', { minutes: 2 }),
      check('press', { minutes: 2, risk: 2 }),
      check('guess', { minutes: 2, unsure: 0.75 }),
      check('both', { minutes: 3, risk: 1, unsure: 0.5 }),
    ];
    expect([...ready({ checks }).compiled.checkCost]).toEqual([2, 8, 8, 8]);
  });

  test('a repair that harms is known with the places of the causes under which it does; strangers are passed over', () => {
    const harms = { set: ['cold-joint', 'gremlin', 'wire'], paint: ['wire'] };
    expect(ready({ harms }).compiled.harms).toEqual([[], [1, 0]]);
  });
});

describe('A title', () => {
  const CHECKS = [check('look'), check('meter'), check('feel', { needs: ['a-gap-there'] })];
  const open = (more: Partial<OpeningRow>, state: Partial<SignState> = {}) => {
    const walk = ready({
      checks: CHECKS,
      openings: [opening('dead', 1, { wire: 3, number: 1, 'cold-joint': 1 }, more)],
    });
    const { standing } = standAt(walk, { ...START, opening: 'dead', ...state });
    return CHECKS.flatMap(({ id }, at) => (standing.open[at] === 1 ? [id] : []));
  };

  test('may keep a check from being asked, or ask for more before it', () => {
    const gap = { given: ['a-gap-there', 'several-parts'] } as const;
    expect(open({}, gap)).toEqual(['look', 'meter', 'feel']);
    expect(open({ withheld: ['meter'] }, gap)).toEqual(['look', 'feel']);
    expect(open({ needs: { meter: ['several-parts'] } })).toEqual(['look']);
    expect(open({ needs: { meter: ['several-parts'] } }, { given: ['several-parts'] })).toEqual(['look', 'meter']);
    // What a check needs anyway it needs here too.
    expect(open({ needs: { feel: ['several-parts'] } }, { given: ['several-parts'] })).not.toContain('feel');
    expect(open({ needs: { feel: ['several-parts'] } }, gap)).toContain('feel');
  });

  test('may say what is asked straight after what comes first, once, and not where it cannot be asked', () => {
    const walk = ready({
      checks: [
        check('meter', { minutes: 90, tool: 'multimeter' }),
        check('look'),
        check('hot', { first: true, options: ['no', 'yes'], reading: { full: 'no', none: 'no' } }),
      ],
      openings: [
        opening('dead', 1, { wire: 1, number: 1, 'cold-joint': 1 }, { lead: 'meter' }),
        opening('slow', 1, { wire: 1, number: 1, 'cold-joint': 1 }),
      ],
    });
    const asked = (state: Partial<SignState>) => {
      const step = signStep(walk, { ...START, opening: 'dead', ...state });
      return step.kind === 'ask' ? step.check : step.kind;
    };
    const cool = { check: 'hot', option: 'no' };
    expect(asked({})).toBe('hot');
    expect(asked({ answers: [cool] })).toBe('meter');
    expect(asked({ answers: [cool], opening: 'slow' })).toBe('look');
    expect(asked({ answers: [cool], tools: [] })).toBe('look');
    expect(asked({ answers: [cool], skipped: ['meter'] })).toBe('look');
  });

  test('that nobody knows says nothing: each cause is as likely as it is met', () => {
    const walk = ready();
    const { chances } = standAt(walk, { ...START, opening: 'no-such-title' }).standing;
    for (const [at, chance] of [...chances].entries()) near(chance, walk.overall[at] ?? 0, 1e-12);
  });
});

describe('A repair that was tried', () => {
  test('mends none of its causes; the others stand as they stood to each other', () => {
    const walk = ready();
    const [wire, coldJoint, number, other] = walk.overall;
    const told = { ...START, opening: 'no-such-title', setAside: ['solder'] };
    const { chances } = standAt(walk, told).standing;
    const left = (number ?? 0) + (other ?? 0);
    expect([wire, coldJoint].every((one) => (one ?? 0) > 0)).toBe(true);
    for (const [at, chance] of [0, 0, (number ?? 0) / left, (other ?? 0) / left].entries())
      near(chances[at] ?? -1, chance, 1e-12);
    // Nobody can have tried what no repair mends.
    expect([...standAt(walk, { ...told, setAside: ['something-else'] }).standing.chances]).toEqual([
      ...standAt(walk, { ...told, setAside: [] }).standing.chances,
    ]);
  });
});

describe('What is best to do is weighed', () => {
  test('over repairs of at least two chances in a thousand, and over no cause that is out of the question', () => {
    const kept = (shares: readonly number[]) => {
      const faults = shares.map((share, at) => ({ id: `f${at}`, fixClass: `x${at >> 1}`, minutes: 5, share }));
      const { compiled, classes, standing } = likelyOnly(standAt(numberedWalk({ faults, checks: [] }, COSTS), START));
      return [
        compiled.classes.map(({ fixClass }) => fixClass),
        classes,
        [...compiled.classEnd],
        standing.chances.length,
      ];
    };
    // Two causes to a repair, and something else.
    expect(kept([600, 397, 1, 2])).toEqual([['x0', 'x1'], [0, 1], [2, 4], 5]);
    expect(kept([600, 399, 0.5, 0.5])).toEqual([['x0'], [0], [2], 3]);
    expect(kept([1, 0.5, 600, 398.5])).toEqual([['x1'], [1], [2], 3]);
  });

  test('with harm among those that are left, wherever they stand', () => {
    const shares = [0.5, 0.5, 300, 200, 499];
    const faults = shares.map((share, at) => ({ id: `f${at}`, fixClass: `x${at >> 1}`, minutes: 5, share }));
    const made = numberedWalk({ faults, checks: [] }, COSTS);
    const harms = [[2], [4, 0], [3]];
    const { compiled } = likelyOnly(standAt({ ...made, compiled: { ...made.compiled, harms } }, START));
    expect(compiled.faults.map(({ id }) => id)).toEqual(['f2', 'f3', 'f4', 'something-else']);
    expect(compiled.harms).toEqual([[2], [1]]);
    expect([...compiled.classOf]).toEqual([0, 0, 1, -1]);
  });
});
