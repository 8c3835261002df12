// Whether a repair is proposed at once, or what is asked before it: against the rule reckoned by hand over models of two or three causes.
import { describe, expect, test } from 'vitest';
import { signStep } from '../../../src/engine/diagnosis/sign-step.ts';
import type { WalkModel } from '../../../src/engine/diagnosis/sign-walk.ts';
import type { NumberedCheck } from '../../reference/numbered.ts';
import { COSTS, numberedWalk, START } from '../../reference/numbered.ts';

const yesNo = (id: string, yes: readonly number[], more: Partial<NumberedCheck> = {}): NumberedCheck => ({
  ...{ id, minutes: 1, options: ['yes', 'no'] },
  ...more,
  chances: yes.map((chance) => [chance, 1 - chance]),
});
const PARTS = [0.05, 0.2, 0.45, 0.7, 0.93];
const WORK = 0.6;

/** Work is proposed from six in ten on. */
const withWork = (made: WalkModel, work = WORK): WalkModel => ({
  ...made,
  settings: { ...made.settings, proposeFrom: { cheap: 0, work, dear: 0.8 } },
});

describe('What people know without looking is asked before work', () => {
  const asked = (yes: readonly [number, number], more: Partial<NumberedCheck> = {}, cheap = false) => {
    const made = numberedWalk(
      {
        faults: [
          { id: 'joint', fixClass: 'solder', minutes: 5, share: 7 },
          { id: 'wheels', fixClass: 'clean', minutes: 5, share: 3 },
        ],
        // So dear that it is never asked for what it tells.
        checks: [yesNo('since-when', yes, { minutes: 500, source: 'memory', ...more })],
      },
      COSTS,
    );
    const model = withWork(made);
    const prices = cheap ? { solder: 'cheap' as const } : {};
    const priced = { ...model, tables: { ...model.tables, model: { ...model.tables.model, prices } } };
    return signStep(priced, START);
  };

  /** How often an answer leaves soldering less likely than six in ten. */
  const takenBack = ([joint, wheels]: readonly [number, number]): number =>
    [
      [joint, wheels],
      [1 - joint, 1 - wheels],
    ].reduce((sum, [a = 0, b = 0]) => {
      const all = 0.7 * a + 0.3 * b;
      return sum + (0.7 * a < WORK * all ? all : 0);
    }, 0);

  test('where one answer in ten and more would take the proposal back, and else not', () => {
    const seen = new Set<string>();
    for (const joint of PARTS) {
      for (const wheels of PARTS) {
        const { kind } = asked([joint, wheels]);
        seen.add(kind);
        expect(kind, `${joint} ${wheels}`).toBe(takenBack([joint, wheels]) >= 0.1 ? 'ask' : 'fix');
      }
    }
    expect([...seen].sort()).toEqual(['ask', 'fix']);
  });

  test('not where too many do not know, nor what has to be looked at, nor before what is cheap to try', () => {
    const often = [0.7, 0.05] as const;
    expect(takenBack(often)).toBeGreaterThan(0.3);
    expect(asked(often).kind).toBe('ask');
    expect(asked(often, { unsure: 0.5 }).kind).toBe('ask');
    expect(asked(often, { unsure: 0.85 }).kind).toBe('fix');
    expect(asked(often, { source: 'eye' }).kind).toBe('fix');
    expect(asked(often, {}, true).kind).toBe('fix');
  });
});

test('Once something was looked at, or four things are known, work is not held up by what is asked for nothing', () => {
  const faults = [
    { id: 'joint', fixClass: 'solder', minutes: 5, share: 7 },
    { id: 'wheels', fixClass: 'clean', minutes: 5, share: 3 },
  ];
  // Looks and memories that tell nothing, and one memory that may take the proposal back.
  const nothing = ['look', 'a', 'b', 'c', 'd'].map((id) =>
    yesNo(id, [0.5, 0.5], { minutes: 500, source: id === 'look' ? 'eye' : 'memory' }),
  );
  const checks = [...nothing, yesNo('since-when', [0.7, 0.05], { minutes: 500, source: 'memory' })];
  const model = withWork(numberedWalk({ faults, checks }, COSTS));
  const after = (...ids: readonly string[]) =>
    signStep(model, { ...START, answers: ids.map((check) => ({ check, option: 'yes' })) }).kind;
  expect(after()).toBe('ask');
  expect(after('a', 'b', 'c')).toBe('ask');
  expect(after('a', 'b', 'c', 'd')).toBe('fix');
  expect(after('look')).toBe('fix');
  // What nobody could look at is as good as not asked.
  expect(signStep(model, { ...START, skipped: ['look'] }).kind).toBe('ask');
});

test('The more is known, the lesser the chance on which work is tried, down to a least one; what is dear waits all the same', () => {
  const faults = [
    { id: 'joint', fixClass: 'solder', minutes: 5, share: 51 },
    { id: 'wheels', fixClass: 'clean', minutes: 5, share: 49 },
  ];
  const ids = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'];
  const telling = yesNo('meter', [0.9, 0.1], { minutes: 500, source: 'instrument' });
  const made = withWork(
    numberedWalk({ faults, checks: [...ids.map((id) => yesNo(id, [0.5, 0.5], { minutes: 500 })), telling] }, COSTS),
  );
  const step = (known: number, least: number, price: 'work' | 'dear' = 'work') => {
    const model: WalkModel = {
      ...made,
      settings: { ...made.settings, patience: { after: 4, each: 0.1, least } },
      tables: { ...made.tables, model: { ...made.tables.model, prices: { solder: price, clean: price } } },
    };
    return signStep(model, { ...START, answers: ids.slice(0, known).map((check) => ({ check, option: 'yes' })) }).kind;
  };
  // 60 % up to four, then 54 %, then 48 %; soldering stands at 51 %.
  expect([4, 5, 6, 7].map((known) => step(known, 0.5))).toEqual(['ask', 'ask', 'fix', 'fix']);
  expect([5, 6, 8].map((known) => step(known, 0.9))).toEqual(['ask', 'ask', 'ask']);
  expect(step(8, 0.5, 'dear')).toBe('ask');
});

describe('What is not likely enough waits for the question that tells most for its minutes', () => {
  const SHARES = [0.5, 0.3, 0.2];

  /** Bits of a yes or no about the cause: what one is unsure of before, less what one is on average after. */
  function bits(yes: readonly number[]): number {
    const uncertainty = (weights: readonly number[]): number => {
      const all = weights.reduce((sum, one) => sum + one, 0);
      return weights.reduce((sum, one) => sum - (one > 0 ? (one / all) * Math.log2(one / all) : 0), 0);
    };
    const split = [yes, yes.map((one) => 1 - one)].map((row) => row.map((one, at) => one * (SHARES[at] ?? 0)));
    const after = split.reduce((sum, row) => sum + row.reduce((all, one) => all + one, 0) * uncertainty(row), 0);
    return uncertainty(SHARES) - after;
  }

  test('as counted in bits by hand', () => {
    const chosen = new Set<string>();
    for (const spot of PARTS) {
      for (const busy of PARTS) {
        const rows = { spot: [spot, 0.4, 0.1], busy: [0.3, busy, 0.8] };
        const minutes = { spot: 300, busy: 400 };
        const made = numberedWalk(
          {
            faults: ['joint', 'wheels', 'supply'].map((id, at) => ({
              ...{ id, fixClass: id, minutes: 5 },
              share: SHARES[at] ?? 0,
            })),
            checks: [
              yesNo('spot', rows.spot, { minutes: minutes.spot }),
              yesNo('busy', rows.busy, { minutes: minutes.busy }),
            ],
          },
          COSTS,
        );
        const worth = { spot: bits(rows.spot) / minutes.spot, busy: bits(rows.busy) / minutes.busy };
        if (Math.max(bits(rows.spot), bits(rows.busy)) < 0.03) continue;
        const check = worth.spot > worth.busy ? 'spot' : 'busy';
        chosen.add(check);
        expect(signStep(withWork(made, 0.95), START), `${spot} ${busy}`).toMatchObject({ kind: 'ask', check });
      }
    }
    expect(chosen.size).toBe(2);
  });
});

test('A question that tells less than a fiftieth of a bit is for nothing: what is left is handed on', () => {
  const step = (apart: number) => {
    const faults = ['joint', 'wheels'].map((id) => ({ id, fixClass: id, minutes: 5, share: 1 }));
    const checks = [yesNo('look', [0.5 + apart, 0.5 - apart], { minutes: 500 })];
    return signStep(withWork(numberedWalk({ faults, checks }, COSTS), 0.95), START);
  };
  /** Of two causes alike a yes or no tells one bit less what it leaves open (Shannon 1948). */
  const bits = (apart: number): number =>
    1 + [0.5 + apart, 0.5 - apart].reduce((sum, one) => sum + one * Math.log2(one), 0);
  for (const apart of [0.08, 0.082, 0.085, 0.09]) {
    const worth = bits(apart) > 0.02;
    expect(step(apart)).toMatchObject(
      worth ? { kind: 'ask', check: 'look' } : { kind: 'hand-on', because: 'nothing-separates' },
    );
  }
  expect([bits(0.082) < 0.02, bits(0.085) > 0.02]).toEqual([true, true]);
});

describe('A repair that would harm if the trouble were another', () => {
  /** Two causes that turning the plug mends, and one under which that does harm. */
  const step = (shares: readonly number[], yes: readonly number[], more: Partial<NumberedCheck>) => {
    const made = numberedWalk(
      {
        faults: ['plug', 'lead', 'supply'].map((id, at) => ({
          ...{ id, fixClass: id === 'supply' ? 'supply' : 'turn-round', minutes: 5 },
          share: shares[at] ?? 0,
        })),
        checks: [yesNo('label', yes, more)],
      },
      COSTS,
    );
    const { compiled } = made;
    const harms = compiled.classes.map(({ fixClass }) =>
      fixClass === 'turn-round' ? compiled.faults.flatMap(({ id }, at) => (id === 'supply' ? [at] : [])) : [],
    );
    return signStep({ ...made, compiled: { ...compiled, harms } }, START);
  };
  /** How far a yes lies apart between the two that are mended, by their shares, and the one that is harmed. */
  const apart = ([a = 0, b = 0]: readonly number[], [plug = 0, lead = 0, supply = 0]: readonly number[]): number =>
    Math.abs((a * plug + b * lead) / (a + b) - supply);

  test('waits for a check that tells the two apart, whatever it takes; where none does the other is mended first', () => {
    const shares = [0.5, 0.35, 0.15];
    const all = PARTS.flatMap((plug) => PARTS.flatMap((lead) => PARTS.map((supply) => [plug, lead, supply])));
    for (const yes of all.filter((one) => Math.abs(apart(shares, one) - 0.6) > 0.01)) {
      expect(step(shares, yes, { minutes: 500 }), yes.join(' ')).toMatchObject(
        apart(shares, yes) > 0.6 ? { kind: 'ask', check: 'label' } : { kind: 'fix', fixClass: 'supply' },
      );
    }
  });

  test('waits for what must come before the check that tells the two apart, and not for one that nothing can open', () => {
    const shares = [0.5, 0.35, 0.15];
    const made = (opens: boolean) =>
      numberedWalk(
        {
          faults: ['plug', 'lead', 'supply'].map((id, at) => ({
            ...{ id, fixClass: id === 'supply' ? 'supply' : 'turn-round', minutes: 5 },
            share: shares[at] ?? 0,
          })),
          checks: [
            yesNo('label', [0.95, 0.95, 0.05], { minutes: 500, needs: ['labels-read', 'parts-agree'] }),
            yesNo('half', [0.5, 0.5, 0.5], { minutes: 500, establishes: { yes: ['labels-read'] } }),
            yesNo('read', [0.5, 0.5, 0.5], {
              ...{ minutes: 500, needs: ['nothing-got-hot'] },
              establishes: { no: ['labels-read'], yes: ['parts-agree'] },
            }),
            yesNo('hot', [0.5, 0.5, 0.5], { minutes: 500, establishes: opens ? { no: ['nothing-got-hot'] } : {} }),
          ],
        },
        COSTS,
      );
    const step = (opens: boolean, ...told: readonly (readonly [string, string])[]) => {
      const model = made(opens);
      const harms = model.compiled.classes.map(({ fixClass }) => (fixClass === 'turn-round' ? [2] : []));
      const answers = told.map(([check, option]) => ({ check, option }));
      return signStep({ ...model, compiled: { ...model.compiled, harms } }, { ...START, answers });
    };
    expect(step(true, ['hot', 'no'])).toMatchObject({ kind: 'ask', check: 'read' });
    expect(step(true, ['hot', 'no'], ['half', 'yes'], ['read', 'yes'])).toMatchObject({ kind: 'ask', check: 'label' });
    expect(step(false)).toMatchObject({ kind: 'fix', fixClass: 'supply' });
    expect(step(true, ['hot', 'no'], ['read', 'yes'])).toMatchObject({ kind: 'ask', check: 'half' });
  });

  test('gives way to the repair of the likelier of two causes under which it would harm', () => {
    const mended = (...shares: readonly number[]) => {
      const made = numberedWalk(
        {
          faults: ['plug', 'supply', 'board'].map((id, at) => ({
            id,
            fixClass: id,
            minutes: 5,
            share: shares[at] ?? 0,
          })),
          checks: [],
        },
        COSTS,
      );
      const { compiled } = made;
      const harms = compiled.classes.map(({ fixClass }) => (fixClass === 'plug' ? [1, 2] : []));
      return signStep({ ...made, compiled: { ...compiled, harms } }, START);
    };
    expect(mended(0.6, 0.25, 0.15)).toMatchObject({ kind: 'fix', fixClass: 'supply' });
    expect(mended(0.6, 0.15, 0.25)).toMatchObject({ kind: 'fix', fixClass: 'board' });
  });

  test('waits for no check that does damage itself', () => {
    expect(step([0.5, 0.35, 0.15], [0.95, 0.95, 0.05], { minutes: 500, risk: 2 }).kind).toBe('fix');
  });

  test('though that is unlikely, waits for a check of four minutes that tells a third of it, and no longer', () => {
    const shares = [0.57, 0.4, 0.03];
    const tells = [0.6, 0.6, 0.2];
    expect(step(shares, tells, { minutes: 4 })).toMatchObject({ kind: 'ask', check: 'label' });
    expect(step(shares, tells, { minutes: 4.1 })).toMatchObject({ kind: 'fix', fixClass: 'turn-round' });
    expect(step(shares, [0.5, 0.5, 0.2], { minutes: 4 })).toMatchObject({ kind: 'fix', fixClass: 'turn-round' });
  });

  test('that is next to impossible waits for nothing', () => {
    expect(step([0.6, 0.397, 0.003], [0.95, 0.95, 0.05], { minutes: 4 })).toMatchObject({ fixClass: 'turn-round' });
  });
});

test('An answer to a question that there is not changes nothing, least of all what is dangerous', () => {
  const faults = ['near', 'far'].map((id) => ({ id, fixClass: id, minutes: 30, share: 1 }));
  const model = numberedWalk({ faults, checks: [yesNo('lamp', [0.9, 0.1])] }, COSTS);
  const strays = [{ check: 'no-such-check', option: 'yes' }];
  expect(signStep(model, { ...START, answers: strays })).toEqual(signStep(model, START));
});
