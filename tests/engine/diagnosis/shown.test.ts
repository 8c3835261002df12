// What a walk shows on its way, against sums by hand over one small model whose chances are printed in it. Bayes' rule, nothing else.
import { describe, expect, test } from 'vitest';
import { atOnce } from '../../../src/engine/at-once.ts';
import { tellsApart } from '../../../src/engine/diagnosis/sign-apart.ts';
import { signConflictsInParts, signEvidence, signPosterior } from '../../../src/engine/diagnosis/sign-shown.ts';
import { near } from '../../near.ts';
import type { NumberedModel } from '../../reference/numbered.ts';
import { COSTS, numberedWalk, START } from '../../reference/numbered.ts';
import { seeded } from '../../seeded.ts';

const check = (id: string, chances: NumberedModel['checks'][number]['chances']) => ({
  ...{ id, minutes: 1, options: ['yes', 'no'] },
  chances,
});

/** A loose joint, dirty wheels and a supply that is too small; what three looks say under each. */
const FAULTS = [
  { id: 'joint', fixClass: 'solder', minutes: 20, share: 5 },
  { id: 'wheels', fixClass: 'clean', minutes: 20, share: 3 },
  { id: 'supply', fixClass: 'larger-supply', minutes: 20, share: 2 },
];
const LOOKS = {
  spot: [0.9, 0.2, 0.1],
  one: [0.3, 0.8, 0.3],
  busy: [0.5, 0.5, 0.9],
} as const;
const MODEL = numberedWalk(
  {
    faults: FAULTS,
    checks: Object.entries(LOOKS).map(([id, yes]) =>
      check(
        id,
        yes.map((chance) => [chance, 1 - chance]),
      ),
    ),
  },
  COSTS,
);
type Look = keyof typeof LOOKS;
type Said = readonly (readonly [Look, 'yes' | 'no'])[];

const answers = (said: Said) => said.map(([look, option]) => ({ check: look, option }));
const believed = (said: Said) => ({ ...START, answers: answers(said) });

/** The chance of each cause by Bayes' rule. */
function byHand(said: Said): number[] {
  const weights = FAULTS.map(({ share }, at) =>
    said.reduce((weight, [look, option]) => {
      const yes = LOOKS[look][at] ?? 0;
      return weight * (option === 'yes' ? yes : 1 - yes);
    }, share),
  );
  const all = weights.reduce((sum, one) => sum + one, 0);
  return weights.map((one) => one / all);
}

const oddsOf = (chance: number): number => chance / (1 - chance);
const SAID: readonly Said[] = [
  [['spot', 'yes']],
  [['spot', 'no']],
  [
    ['spot', 'no'],
    ['one', 'yes'],
  ],
  [
    ['spot', 'yes'],
    ['one', 'no'],
    ['busy', 'yes'],
  ],
  [
    ['busy', 'yes'],
    ['spot', 'no'],
    ['one', 'no'],
  ],
];

describe('What is told of each cause', () => {
  test('is its chance by Bayes’ rule, the likeliest first', () => {
    for (const said of SAID) {
      const chances = byHand(said);
      const { causes } = signPosterior(MODEL, believed(said));
      for (const [at, { id }] of FAULTS.entries())
        near(causes.find(({ fault }) => fault === id)?.chance ?? -1, chances[at] ?? 0, 1e-9);
      expect(causes.map(({ chance }) => chance)).toEqual(causes.map(({ chance }) => chance).sort((a, b) => b - a));
    }
  });

  test('is which answers lift it by a quarter and more, and which lower it as much, each beside the rest of what was told', () => {
    for (const said of SAID) {
      const now = byHand(said);
      const evidence = signEvidence(MODEL, believed(said));
      const left = FAULTS.filter((_, at) => (now[at] ?? 0) >= 0.02).map(({ id }) => id);
      expect(evidence.map(({ fault }) => fault).sort()).toEqual([...left].sort());
      expect(evidence.map(({ chance }) => chance)).toEqual(evidence.map(({ chance }) => chance).sort((a, b) => b - a));
      for (const { fault, fixClass, speaksFor, speaksAgainst } of evidence) {
        const at = FAULTS.findIndex(({ id }) => id === fault);
        expect(fixClass).toBe(FAULTS[at]?.fixClass);
        const lifts = said.map((one) => {
          const before = byHand(said.filter((other) => other !== one))[at] ?? 0;
          return { look: one[0], lift: oddsOf(now[at] ?? 0) / oddsOf(before) };
        });
        const strongest = [...lifts].sort((a, b) => b.lift - a.lift);
        const lift = strongest.filter((one) => one.lift >= 1.25).map(({ look }) => look);
        const lower = strongest.filter((one) => one.lift <= 0.8).map(({ look }) => look);
        expect(
          speaksFor.map((one) => one.check),
          `for ${fault}`,
        ).toEqual(lift);
        expect(
          speaksAgainst.map((one) => one.check),
          `against ${fault}`,
        ).toEqual(lower.reverse());
      }
    }
  });

  test('is by which answer it fell out: the one after which it stays below one in fifty and a quarter of what it was', () => {
    const said: Said = [
      ['one', 'no'],
      ['spot', 'yes'],
      ['busy', 'no'],
    ];
    const { ruledOut } = signPosterior(MODEL, believed(said));
    const fell = FAULTS.filter(({ share }, at) => {
      const chance = byHand(said)[at] ?? 0;
      return chance < 0.02 && chance < (0.25 * share) / 10;
    }).map(({ id }) => id);
    expect(fell).toEqual(['supply']);
    expect(ruledOut).toEqual([{ check: 'busy', option: 'no', faults: ['supply'] }]);
  });

  test('holds no answer that no check has, and says which', () => {
    const strays = [
      { check: 'spot', option: 'perhaps' },
      { check: 'no-such-look', option: 'yes' },
    ];
    const state = { ...START, answers: [...strays, ...answers([['one', 'yes']])] };
    const told = signPosterior(MODEL, state);
    expect(told.ignored).toEqual(strays);
    expect(told.causes).toEqual(signPosterior(MODEL, believed([['one', 'yes']])).causes);
  });
});

describe('Two answers that hardly go together', () => {
  const sure = numberedWalk(
    {
      faults: FAULTS,
      checks: [
        check('dark', [
          [0.99, 0.01],
          [0.01, 0.99],
          [0.5, 0.5],
        ]),
        check('lit', [
          [0.01, 0.99],
          [0.99, 0.01],
          [0.01, 0.99],
        ]),
      ],
    },
    COSTS,
  );
  const told = (dark: string, lit: string) => ({
    ...START,
    answers: [
      { check: 'dark', option: dark },
      { check: 'lit', option: lit },
    ],
  });

  test('are named once, with the chance of the one to ask again by Bayes’ rule, alone and beside the other', () => {
    const [one, ...others] = atOnce(signConflictsInParts(sure, told('yes', 'yes')));
    expect(others).toEqual([]);
    const [dark, lit] = [0.5 * 0.99 + 0.3 * 0.01 + 0.2 * 0.5, 0.5 * 0.01 + 0.3 * 0.99 + 0.2 * 0.01];
    const both = 0.5 * 0.99 * 0.01 + 0.3 * 0.01 * 0.99 + 0.2 * 0.5 * 0.01;
    const [again, against] = one?.again.check === 'dark' ? [dark, lit] : [lit, dark];
    near(one?.alone ?? 0, again, 1e-9);
    near(one?.chance ?? 0, both / against, 1e-9);
    expect([one?.again.check, one?.against.check].sort()).toEqual(['dark', 'lit']);
  });

  test('and two that do are no conflict', () => {
    expect(atOnce(signConflictsInParts(sure, told('yes', 'no')))).toEqual([]);
    expect(atOnce(signConflictsInParts(sure, told('no', 'yes')))).toEqual([]);
  });
});

describe('Of three answers', () => {
  /** What three looks say under the three causes, drawn anew each time. */
  const drawn = (seed: number) => {
    const random = seeded(seed);
    const yes = ['volts', 'lamp', 'smell'].map((id) => ({ id, chances: FAULTS.map(() => random() ** 4) }));
    const made = numberedWalk(
      {
        faults: FAULTS,
        checks: yes.map(({ id, chances }) =>
          check(
            id,
            chances.map((one) => [one, 1 - one]),
          ),
        ),
      },
      COSTS,
    );
    return { yes, made };
  };

  test('those are in conflict that the others make less likely than 15 in a hundred and than a quarter of what they are alone: the worst first, each pair once', () => {
    /** How often there was none, one, and more. */
    const found = [0, 0, 0];
    for (let seed = 1; seed <= 60; seed++) {
      const { yes, made } = drawn(seed);
      const ids = yes.map(({ id }) => id);
      const chanceOf = (of: readonly string[]): number =>
        FAULTS.reduce(
          (sum, { share }, at) =>
            sum + yes.reduce((all, { id, chances }) => (of.includes(id) ? all * (chances[at] ?? 0) : all), share / 10),
          0,
        );
      const pairs = ids
        .map((again) => {
          const others = ids.filter((one) => one !== again);
          const given = (of: readonly string[]): number => chanceOf([again, ...of]) / chanceOf(of);
          const [against = ''] = others.toSorted((a, b) => given([a]) - given([b]));
          return { again, against, chance: given(others), alone: chanceOf([again]) };
        })
        .filter(({ chance, alone }) => chance < 0.15 && chance < 0.25 * alone)
        .sort((a, b) => a.chance / a.alone - b.chance / b.alone);
      const once = pairs.filter(
        ({ again, against }, at) =>
          !pairs.slice(0, at).some((other) => other.again === against && other.against === again),
      );
      const told = atOnce(
        signConflictsInParts(made, { ...START, answers: ids.map((id) => ({ check: id, option: 'yes' })) }),
      );
      expect(
        told.map((one) => [one.again.check, one.against.check]),
        `draw ${seed}`,
      ).toEqual(once.map(({ again, against }) => [again, against]));
      for (const [at, { chance, alone }] of once.entries()) {
        near(told[at]?.chance ?? -1, chance, 1e-9);
        near(told[at]?.alone ?? -1, alone, 1e-9);
      }
      const many = Math.min(2, once.length);
      found[many] = (found[many] ?? 0) + 1;
    }
    expect(Math.min(...found)).toBeGreaterThanOrEqual(3);
  });
});

describe('The check that tells repairs apart', () => {
  const chosen = (fixes: readonly string[], said: Said = []) => tellsApart(MODEL, believed(said), fixes);

  /** Half of the sum of what answers differ by, pair by pair of the repairs, weighted by their chances. */
  function apartByHand(look: Look, fixes: readonly string[], said: Said): number {
    const chances = byHand(said);
    const places = fixes.map((fix) => FAULTS.findIndex(({ fixClass }) => fixClass === fix));
    const pairs = places.flatMap((a, i) => places.slice(i + 1).map((b) => [a, b] as const));
    const weigh = ([a, b]: readonly [number, number]): number => (chances[a] ?? 0) * (chances[b] ?? 0);
    const all = pairs.reduce((sum, pair) => sum + weigh(pair), 0);
    return pairs.reduce((sum, pair) => {
      const [a, b] = pair;
      return sum + (weigh(pair) / all) * Math.abs((LOOKS[look][a] ?? 0) - (LOOKS[look][b] ?? 0));
    }, 0);
  }

  test('is the one whose answers lie furthest apart, whatever was answered before', () => {
    const all = FAULTS.map(({ fixClass }) => fixClass);
    for (const fixes of [all, ['solder', 'clean'], ['clean', 'larger-supply'], ['solder', 'larger-supply']]) {
      for (const said of [[], ...SAID]) {
        const looks = Object.keys(LOOKS).filter((id) => !said.some(([look]) => look === id));
        const by = (id: string): number => {
          const look = id === 'spot' || id === 'one' ? id : 'busy';
          return apartByHand(look, fixes, said);
        };
        const best = looks.filter((id) => by(id) > 0.2).sort((a, b) => by(b) - by(a))[0];
        expect(chosen(fixes, said), `${fixes} after ${said}`).toBe(best);
      }
    }
  });

  test('is the same where repairs mend several causes each: these count by their chances', () => {
    const causes = ['solder', 'solder', 'clean', 'larger-supply', 'larger-supply'];
    const chosenOnes = new Set<string | undefined>();
    for (let seed = 1; seed <= 40; seed++) {
      const random = seeded(seed);
      const shares = causes.map(() => 0.1 + random());
      const yes = ['spot', 'busy'].map((id) => ({ id, chances: causes.map(() => random()) }));
      const made = numberedWalk(
        {
          faults: causes.map((fixClass, at) => ({ id: `f${at}`, fixClass, minutes: 20, share: shares[at] ?? 0 })),
          checks: yes.map(({ id, chances }) =>
            check(
              id,
              chances.map((one) => [one, 1 - one]),
            ),
          ),
        },
        COSTS,
      );
      const fixes = ['solder', 'clean', 'larger-supply'].slice(seed % 2);
      const massOf = (fix: string): number =>
        shares.reduce((sum, share, at) => (causes[at] === fix ? sum + share : sum), 0);
      const saysYes = (fix: string, chances: readonly number[]): number =>
        chances.reduce((sum, one, at) => (causes[at] === fix ? sum + one * (shares[at] ?? 0) : sum), 0) / massOf(fix);
      const pairs = fixes.flatMap((one, at) => fixes.slice(at + 1).map((other) => [one, other] as const));
      const weight = pairs.reduce((sum, [one, other]) => sum + massOf(one) * massOf(other), 0);
      const apart = yes.map(({ id, chances }) => ({
        id,
        by: pairs.reduce((sum, [one, other]) => {
          const far = Math.abs(saysYes(one, chances) - saysYes(other, chances));
          return sum + (far * massOf(one) * massOf(other)) / weight;
        }, 0),
      }));
      const [best] = apart.filter(({ by }) => by > 0.2).sort((a, b) => b.by - a.by);
      expect(tellsApart(made, START, fixes), `draw ${seed}`).toBe(best?.id);
      chosenOnes.add(best?.id);
    }
    expect(chosenOnes).toEqual(new Set(['spot', 'busy', undefined]));
  });

  test('is none where a single repair is left, or none of those that are known', () => {
    expect(chosen(['solder'])).toBeUndefined();
    expect(chosen(['no-such-repair', 'nor-this'])).toBeUndefined();
    expect(chosen(['no-such-repair', 'solder', 'clean'])).toBe(chosen(['solder', 'clean']));
  });

  test('is none that is forbidden by what was said, or safe only after something that was not shown', () => {
    const [telling, fair] = [
      [0.95, 0.05, 0.5],
      [0.7, 0.3, 0.5],
    ].map((yes) => yes.map((chance): [number, number] => [chance, 1 - chance]));
    const made = numberedWalk(
      {
        faults: FAULTS,
        checks: [
          { ...check('coin', telling ?? []), needs: ['nothing-got-hot'], acts: ['makes-a-short'] },
          check('look', fair ?? []),
          {
            ...check(
              'hot',
              FAULTS.map(() => [1, 1]),
            ),
            establishes: { no: ['nothing-got-hot'] },
            forbids: { yes: ['makes-a-short'] },
          },
        ],
      },
      COSTS,
    );
    const told = (option?: string) =>
      tellsApart(made, { ...START, answers: option === undefined ? [] : [{ check: 'hot', option }] }, [
        'solder',
        'clean',
      ]);
    expect([told(), told('yes'), told('no')]).toEqual(['look', 'look', 'coin']);
  });

  test('is thought of though it was skipped or its tool is not at hand', () => {
    const best = chosen(['solder', 'clean']) ?? '';
    expect(tellsApart(MODEL, { ...START, skipped: [best], tools: [] }, ['solder', 'clean'])).toBe(best);
  });
});
