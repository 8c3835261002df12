// What is believed after what was told, against a sum over every world that could be: each circumstance, each sign, each slip, well or not.
import { describe, expect, test } from 'vitest';
import { atOnce } from '../../src/engine/at-once.ts';
import { LIKELIHOOD_WORDS, WORD_CHANCE } from '../../src/engine/diagnosis/model.ts';
import { believeInParts } from '../../src/engine/diagnosis/sign-belief.ts';
import type {
  Gives,
  Mix,
  Reading,
  Shows,
  SignCause,
  SignCheck,
  SignModel,
} from '../../src/engine/diagnosis/sign-model.ts';
import { SOURCES } from '../../src/engine/diagnosis/sign-model.ts';
import { signTables } from '../../src/engine/diagnosis/sign-tables.ts';
import { seeded } from '../seeded.ts';

const SLIPS = { memory: 0.12, eye: 0.06, instrument: 0.03 } as const;

type Random = () => number;
const pick = <T>(random: Random, from: readonly T[]): T => {
  const found = from[Math.floor(random() * from.length)];
  if (found === undefined) throw new Error('nothing to pick from');
  return found;
};

const CIRCUMSTANCES = [
  { id: 'parts', values: { one: 2, several: 1 } },
  { id: 'protection', values: { latches: 3, retries: 2, blinks: 1 } },
  { id: 'breaker', values: { none: 4, breaker: 1 } },
] as const;

const SIGNS = [
  {
    id: 'goes-off',
    values: ['nothing', 'part', 'all'],
    sound: 'nothing',
    unaffected: { nothing: 'always' },
    group: 'event',
  },
  {
    id: 'comes-back',
    values: ['never-off', 'seconds', 'button'],
    sound: 'never-off',
    unaffected: { 'never-off': 'always' },
    group: 'event',
  },
  { id: 'volts', values: ['full', 'low', 'none'], sound: 'full', unaffected: { full: 'always', low: 'rarely' } },
  {
    id: 'draw',
    values: ['low', 'high'],
    sound: 'low',
    unaffected: { low: 'usually', high: 'sometimes' },
    stands: true,
  },
] as const;

function mixOf(random: Random, values: readonly string[]): Mix {
  return Object.fromEntries(values.map((value) => [value, pick(random, LIKELIHOOD_WORDS)]));
}

function showsOf(random: Random, values: readonly string[], earlier: string | undefined): Shows {
  const kind = random();
  if (kind < 0.2) return 'unaffected';
  if (kind < 0.5) return mixOf(random, values);
  if (kind < 0.7 && earlier !== undefined) {
    const of = SIGNS.find(({ id }) => id === earlier)?.values ?? [];
    return { by: earlier, is: Object.fromEntries(of.map((value) => [value, mixOf(random, values)])) };
  }
  const circumstance = pick(random, CIRCUMSTANCES);
  return {
    by: circumstance.id,
    is: Object.fromEntries(Object.keys(circumstance.values).map((value) => [value, mixOf(random, values)])),
  };
}

function readingOf(random: Random, values: readonly string[], options: readonly string[]): Reading {
  const gives = (): Gives => (random() < 0.6 ? pick(random, options) : mixOf(random, options));
  const plain = (): Reading => Object.fromEntries(values.map((value) => [value, gives()]));
  if (random() < 0.7) return plain();
  return { by: 'breaker', is: { none: plain(), breaker: plain() } };
}

function checkOf(random: Random, at: number): SignCheck {
  const options = ['a', 'b', 'c'].slice(0, random() < 0.5 ? 2 : 3);
  const base = {
    id: `check-${at}`,
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: pick(random, SOURCES),
    options,
  } as const;
  if (random() < 0.2) {
    return {
      ...base,
      reads: ['goes-off', 'comes-back'],
      reading: [
        { where: { 'goes-off': ['nothing'] }, gives: 'a' },
        { where: { 'goes-off': ['part'], 'comes-back': ['seconds', 'never-off'] }, gives: 'b' },
        { where: {}, gives: { a: 'sometimes', b: 'usually' } },
      ],
    };
  }
  const rows: readonly { readonly id: string; readonly values: readonly string[] }[] = [
    ...SIGNS,
    ...CIRCUMSTANCES.map(({ id, values }) => ({ id, values: Object.keys(values) })),
  ];
  const row = pick(random, rows);
  return { ...base, reads: row.id, reading: readingOf(random, row.values, options) };
}

function modelOf(random: Random): SignModel {
  const cause = (at: number): SignCause => ({
    id: `cause-${at}`,
    fixClass: `fix-${at}`,
    minutes: 10,
    ...(random() < 0.4 ? { well: pick(random, LIKELIHOOD_WORDS) } : {}),
    ...(random() < 0.3 ? { needs: { protection: ['latches', 'blinks'] } } : {}),
    shows: Object.fromEntries(
      SIGNS.map(({ id, values }) => [id, showsOf(random, values, id === 'comes-back' ? 'goes-off' : undefined)]),
    ),
  });
  return {
    signs: SIGNS,
    circumstances: CIRCUMSTANCES,
    causes: [cause(0), cause(1), cause(2)],
    checks: Array.from({ length: 9 }, (_, at) => checkOf(random, at)),
    openings: [],
    core: [],
  };
}

// --- the sum over every world ------------------------------------------------------------------------------------------------

type World = ReadonlyMap<string, string>;

function* worldsOf(rows: readonly { readonly id: string; readonly values: readonly string[] }[]): Generator<World> {
  const [row, ...rest] = rows;
  if (row === undefined) {
    yield new Map();
    return;
  }
  for (const value of row.values) for (const world of worldsOf(rest)) yield new Map([[row.id, value], ...world]);
}

function chanceIn(mix: Mix, value: string, values: readonly string[], unnamed: number): number {
  const weight = (one: string): number => {
    const word = mix[one];
    return word === undefined ? unnamed : WORD_CHANCE[word];
  };
  return weight(value) / values.reduce((sum, one) => sum + weight(one), 0);
}

function chanceOfSign(shows: Shows, sign: (typeof SIGNS)[number], world: World): number {
  const value = world.get(sign.id) ?? '';
  if (shows === 'unaffected') return chanceIn(sign.unaffected, value, sign.values, WORD_CHANCE.never);
  const { by, is } = shows;
  if (typeof by === 'string' && typeof is === 'object')
    return chanceOfSign(is[world.get(by) ?? ''] ?? 'unaffected', sign, world);
  return chanceIn(shows as Mix, value, sign.values, WORD_CHANCE.never);
}

function chanceOfAnswer(check: SignCheck, option: string, world: World): number {
  let { reading } = check;
  for (;;) {
    if (Array.isArray(reading) || !('by' in reading && 'is' in reading)) break;
    const inner: Reading | undefined = (reading.is as Readonly<Record<string, Reading>>)[
      world.get(String(reading.by)) ?? ''
    ];
    if (inner === undefined) throw new Error('no reading');
    reading = inner;
  }
  const gives = Array.isArray(reading)
    ? reading.find(({ where }) =>
        Object.entries(where).every(([sign, any]) => (any as readonly string[]).includes(world.get(sign) ?? '')),
      )?.gives
    : (reading as Readonly<Record<string, Gives>>)[world.get(String(check.reads)) ?? ''];
  if (typeof gives === 'string') return gives === option ? 1 : 0;
  return chanceIn(gives ?? {}, option, check.options, 0);
}

const groupOf = (check: SignCheck): string => {
  const first = typeof check.reads === 'string' ? check.reads : (check.reads[0] ?? '');
  return first === 'goes-off' || first === 'comes-back' ? 'event' : first;
};

interface Told {
  readonly check: SignCheck;
  readonly option: string;
}

const LAYOUTS = CIRCUMSTANCES.map(({ id, values }) => ({ id, values: Object.keys(values) }));

/** P(this layout | cause). */
function chanceOfLayout(cause: SignCause, layout: World): number {
  return CIRCUMSTANCES.reduce((product, { id, values }) => {
    const allowed = Object.entries(values).filter(([value]) => cause.needs?.[id]?.includes(value) ?? true);
    const share = allowed.find(([value]) => value === layout.get(id))?.[1] ?? 0;
    return (product * share) / allowed.reduce((sum, [, one]) => sum + one, 0);
  }, 1);
}

/** What was told of each group by each source. */
function bySource(told: readonly Told[]): Told[][] {
  const found = new Map<string, Told[]>();
  for (const one of told) {
    const key = `${groupOf(one.check)} ${one.check.source}`;
    found.set(key, [...(found.get(key) ?? []), one]);
  }
  return [...found.values()];
}

/** P(all these answers | world), each source of each group right or slipped as a whole; what is seen now is seen in `now`. */
function chanceOfAnswers(heard: readonly (readonly Told[])[], world: World, now: World): number {
  return heard.reduce((all, mine) => {
    const source = mine[0]?.check.source ?? 'memory';
    const seen = source === 'memory' ? world : now;
    const right = mine.reduce((product, { check, option }) => product * chanceOfAnswer(check, option, seen), 1);
    const anyhow = mine.reduce((product, { check }) => product / check.options.length, 1);
    return all * ((1 - SLIPS[source]) * right + SLIPS[source] * anyhow);
  }, 1);
}

/** P(all these answers | cause, layout). */
function chanceInLayout(cause: SignCause, layout: World, heard: readonly (readonly Told[])[]): number {
  const well = cause.well === undefined ? 0 : WORD_CHANCE[cause.well];
  const passing = SIGNS.filter((sign) => !('stands' in sign && sign.stands));
  let total = 0;
  for (const signs of worldsOf(SIGNS)) {
    const world = new Map([...layout, ...signs]);
    const sound = new Map([...world, ...passing.map(({ id, sound: value }): [string, string] => [id, value])]);
    const ofSigns = SIGNS.reduce(
      (product, sign) => product * chanceOfSign(cause.shows[sign.id] ?? 'unaffected', sign, world),
      1,
    );
    total += ofSigns * (1 - well) * chanceOfAnswers(heard, world, world);
    if (well > 0) total += ofSigns * well * chanceOfAnswers(heard, world, sound);
  }
  return total;
}

/** P(all these answers | cause). */
function bruteForce(cause: SignCause, told: readonly Told[]): number {
  const heard = bySource(told);
  let total = 0;
  for (const layout of worldsOf(LAYOUTS)) {
    const share = chanceOfLayout(cause, layout);
    if (share > 0) total += share * chanceInLayout(cause, layout, heard);
  }
  return total;
}

/** Every answer that could come, with its place among all options. */
const toCome = ({ checks }: SignModel, optionStart: Int32Array) =>
  checks.flatMap((check, at) =>
    check.options.map((option, o) => ({ check, option, place: (optionStart[at] ?? 0) + o })),
  );

describe('what is believed', () => {
  test.each([1, 2, 3, 4, 5, 6])(
    'is the sum over every world that could be, whatever was told (layout of data %i)',
    (seed) => {
      const random = seeded(seed);
      const model = modelOf(random);
      const tables = atOnce(signTables(model, SLIPS));
      for (const count of [0, 1, 3, 6]) {
        const told = [...model.checks]
          .sort(() => random() - 0.5)
          .slice(0, count)
          .map((check) => ({ check, option: pick(random, check.options) }));
        const belief = atOnce(
          believeInParts(
            tables,
            told.map(({ check, option }) => ({ check: check.id, option })),
          ),
        );
        const next = atOnce(belief.expect([...model.causes.keys()]));
        for (const [c, cause] of model.causes.entries()) {
          const all = bruteForce(cause, told);
          expect(belief.likelihood[c]).toBeCloseTo(all, 12);
          for (const { check, option, place } of toCome(model, tables.optionStart)) {
            if (told.some((one) => one.check === check)) continue;
            const both = bruteForce(cause, [...told, { check, option }]);
            expect(next[place * model.causes.length + c]).toBeCloseTo(both / all, 9);
          }
        }
      }
    },
  );
});
