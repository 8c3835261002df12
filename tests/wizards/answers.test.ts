import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MeasureSystem } from '../../src/engine/index.ts';
import { writeQuantity } from '../../src/engine/quantity-text.ts';
import { gaugeArea } from '../../src/engine/units.ts';
import { reckon } from '../../src/wizards/enough-current/reckoning.ts';
import { conclude } from '../../src/wizards/enough-current/result.ts';
import type { Answers } from '../../src/wizards/planning/answers.ts';
import {
  answerText,
  isAsked,
  optionOf,
  parseQuestion,
  spanOf,
  systemsTyped,
  toAddress,
  withNone,
} from '../../src/wizards/planning/answers.ts';
import type { Answer, Because } from '../../src/wizards/planning/field.ts';
import { parseField, UNKNOWN } from '../../src/wizards/planning/field.ts';
import { QUESTIONS } from '../../src/wizards/planning/questions.ts';
import { replay } from '../../src/wizards/planning/replay.ts';
import { placeSupplies } from '../../src/wizards/which-supply-where/result.ts';
import { seeded } from '../seeded.ts';
import { answers as anyAnswers } from './arbitrary.ts';
import { ALL_FIELDS, read, textsFor, told, WIZARDS } from './told.ts';

const field = (id: string) => {
  const found = ALL_FIELDS.find((one) => one.id === id);
  if (found === undefined) throw new Error(`there is no field ${id}`);
  return found;
};

describe('the systems a person measures in', () => {
  const systemsOf = (texts: Readonly<Record<string, string>>) => {
    const { lengths, wires } = systemsTyped(told(texts));
    return [lengths, wires];
  };
  const [metric, feet] = ['metric', 'feet-and-gauge'] as const;

  test.each<[Readonly<Record<string, string>>, MeasureSystem | undefined, MeasureSystem | undefined]>([
    [{}, undefined, undefined],
    [{ 'bus-length': '40', 'bus-wire': '1.5' }, undefined, undefined],
    [{ 'supply-volts': '15 V', 'supply-amps': '2 A' }, undefined, undefined],
    [{ 'bus-length': '40 ft' }, feet, undefined],
    [{ 'bus-length': '40 ft', 'track-length': '40 ft', 'bus-wire': '1.5 mm²' }, feet, metric],
    [{ 'bus-wire': '1.5 mm²', 'feeder-wire': '20 AWG' }, undefined, metric],
    [{ 'bus-length': '40 ft', 'track-length': '12 m', 'feeder-length': '30 cm' }, metric, undefined],
    [{ 'bus-length': '40 ft', 'track-length': '12 m' }, feet, undefined],
    [{ 'bus-length': '12 m', 'track-length': '40 ft' }, metric, undefined],
  ])('%j: lengths %s, wires %s', (texts, ...systems) => expect(systemsOf(texts)).toEqual(systems));

  test('a gauge says how wire is bought, and nothing of lengths: no next question is in feet for it', () => {
    expect(systemsOf({ 'bus-length': '40', 'bus-wire': '14 AWG' })).toEqual([undefined, feet]);
    expect(systemsOf({ 'bus-length': '12 m', 'track-length': '12 m', 'bus-wire': '14 AWG' })).toEqual([metric, feet]);
  });
});

describe('a count that is left empty', () => {
  test('beside one that was told is none: who has no older motors types nothing there', () => {
    expect(withNone(QUESTIONS.fleet, { modern: '6' })).toEqual({ modern: '6', older: '0' });
    expect(withNone(QUESTIONS.fleet, { modern: '6', older: '  ' })).toEqual({ modern: '6', older: '0' });
    expect(withNone(QUESTIONS.fleet, { older: '2' })).toEqual({ modern: '0', older: '2' });
    expect(withNone(QUESTIONS.sound, { stored: 'unknown' })).toEqual({ sound: '0', stored: 'unknown' });
  });

  test('is asked for where nothing was told, and amperes or shares of traffic always are', () => {
    expect(withNone(QUESTIONS.fleet, { modern: ' ' })).toEqual({ modern: ' ' });
    expect(withNone(QUESTIONS['both-amps'], { 'station-amps': '3' })).toEqual({ 'station-amps': '3' });
    expect(withNone(QUESTIONS['our-districts'], { districts: '2' })).toEqual({ districts: '2' });
    expect(withNone(QUESTIONS.coaches, { lamps: 'led' })).toEqual({ lamps: 'led' });
  });
});

describe('the fields', () => {
  test('have a name of their own each, fit for an address', () => {
    const ids = ALL_FIELDS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z][a-z0-9-]*$/);
  });

  test('read each of their own options, their least and their most, and "unknown"', () => {
    for (const one of ALL_FIELDS) {
      for (const text of textsFor(one)) {
        const parsed = parseField(one, text);
        expect(parsed.kind, `${one.id}=${text}`).toBe('answer');
        if (parsed.kind === 'answer') expect(answerText(parsed.answer, one)).toBe(text);
      }
    }
  });

  test('assume only what could have been answered', () => {
    for (const one of ALL_FIELDS) {
      if (one.assume === undefined) continue;
      const text = one.kind === 'number' ? writeQuantity(one.assume, one.quantity) : one.assume;
      expect(parseField(one, text).kind, one.id).toBe('answer');
    }
  });
});

describe('what is typed into a field', () => {
  test.each<[string, string, number, MeasureSystem?]>([
    ['supply-amps', '1500 mA', 1.5],
    ['supply-amps', '1,5', 1.5],
    ['supply-volts', ' 15 V ', 15],
    ['evening', '90 min', 1.5],
    ['modern', '3', 3],
    ['bus-length', '10 ft', 3.048, 'feet-and-gauge'],
    ['bus-length', '10 m', 10, 'metric'],
    ['bus-length', '10', 10],
    ['bus-wire', '1,5 mm²', 1.5e-6, 'metric'],
    ['bus-wire', '0.75', 0.75e-6],
    ['rail-ohms', '76 mohm/m', 0.076, 'metric'],
  ])('%s: %j is %d', (id, text, value, typed) => {
    expect(parseField(field(id), text)).toEqual({
      kind: 'answer',
      answer: { kind: 'number', span: { from: value, to: value }, ...(typed === undefined ? {} : { typed }) },
    });
  });

  test('a bare number is metres and mm² unless the person measures in feet and gauges; the address then says so', () => {
    const texts = new Map([
      ['bus-length', '40'],
      ['bus-wire', '14'],
    ]);
    const { answers } = parseQuestion(QUESTIONS.bus, texts, () => 'feet-and-gauge');
    expect(toAddress(answers)).toBe('?bus-length=40+ft&bus-wire=14+AWG');
    expect(parseQuestion(QUESTIONS.bus, new Map([['bus-length', '40']])).answers).toEqual({
      'bus-length': { kind: 'number', span: { from: 40, to: 40 } },
    });
  });

  test('VA become amperes with the volts beside them: 36 VA at 16 V are 2.25 A', () => {
    expect(told({ 'supply-volts': '16 V', 'supply-amps': '36 VA' })['supply-amps']).toEqual({
      kind: 'number',
      span: { from: 2.25, to: 2.25 },
    });
  });

  test('a measured draw may be a range', () => {
    expect(told({ running: '300-600 mA' })['running']).toEqual({ kind: 'number', span: { from: 0.3, to: 0.6 } });
  });

  test.each<[string, string, Because]>([
    ['supply-amps', '', 'empty'],
    ['supply-kind', '', 'not-chosen'],
    ['supply-volts', '120 V', 'mains-side'],
    ['unit-input-volts', '230 V~', 'mains-side'],
    ['supply-volts', '100-240 V', 'mains-side'],
    ['supply-volts', '70 V', 'too-large'],
    ['supply-amps', 'much', 'not-a-number'],
    ['supply-amps', '3 V', 'unknown-unit'],
    ['supply-amps', '36 VA', 'needs-volts'],
    ['supply-amps', '2-3 A', 'one-number'],
    ['supply-amps', '0', 'too-small'],
    ['supply-amps', '-2 A', 'too-small'],
    ['supply-amps', '1e9 A', 'too-large'],
    ['supply-amps', 'NaN', 'not-a-number'],
    ['supply-amps', 'Infinity', 'not-a-number'],
    ['supply-amps', '9'.repeat(200), 'not-a-number'],
    ['modern', '2.5', 'not-whole'],
    ['modern', '-1', 'too-small'],
    ['modern', '10000', 'too-large'],
    ['trains', '0', 'too-small'],
    ['bus-wire', '14', 'bare-gauge'],
    ['feeder-wire', '18', 'bare-gauge'],
    ['bus-wire', '14 mm2', 'too-large'],
    ['bus-wire', '14.5', 'too-large'],
    ['bus-wire', '38', 'too-large'],
    ['bus-wire', '45', 'too-large'],
    ['scale', 'H0', 'not-an-option'],
    ['scale', '__proto__', 'not-an-option'],
  ])('%s: %j is refused as %s', (id, text, because) => {
    expect(parseField(field(id), text)).toMatchObject({ kind: 'problem', problem: { field: id, because } });
  });

  test('a number out of range is told the range, and what was given is cut short', () => {
    expect(parseField(field('evening'), '48 h')).toMatchObject({
      problem: { because: 'too-large', least: 0.05, most: 24 },
    });
    const long = parseField(field('scale'), 'x'.repeat(300));
    expect(long.kind === 'problem' && long.problem.given.length).toBe(40);
  });
});

test('a bare number that would do as a gauge is told the range in mm², and is read once AWG stands behind it', () => {
  const bare = parseField(field('bus-wire'), '14');
  expect(bare).toMatchObject({ problem: { because: 'bare-gauge', given: '14', least: 0.05, most: 10 } });
  expect(parseField(field('bus-wire'), '14 AWG')).toMatchObject({
    kind: 'answer',
    answer: { typed: 'feet-and-gauge' },
  });
  expect(parseField(field('bus-wire'), '14', { bare: 'feet-and-gauge' })).toEqual(
    parseField(field('bus-wire'), '14 AWG'),
  );
});

describe('fields that are asked only at times', () => {
  const lamps = field('lamps');
  test('coach lamps: only with coaches', () => {
    expect(isAsked(lamps, told({ coaches: '4' }))).toBe(true);
    expect(isAsked(lamps, told({ coaches: '0' }))).toBe(false);
    expect(isAsked(lamps, told({ coaches: 'unknown' }))).toBe(false);
    expect(isAsked(lamps, {})).toBe(false);
  });

  const railVolts = field('unit-rail-volts');
  test('the volts of a setting: only where there is a setting', () => {
    expect(isAsked(railVolts, told({ 'unit-rails': 'set' }))).toBe(true);
    expect(isAsked(railVolts, told({ 'unit-rails': 'converter' }))).toBe(true);
    expect(isAsked(railVolts, told({ 'unit-rails': 'follows' }))).toBe(false);
    expect(isAsked(railVolts, told({ 'unit-rails': 'unknown' }))).toBe(false);
  });
});

describe('not knowing', () => {
  test('stands for what is assumed, and where nothing is, for nothing', () => {
    expect(optionOf({ scale: UNKNOWN }, field('scale'))).toBe('h0');
    expect(optionOf({ 'supply-kind': UNKNOWN }, field('supply-kind'))).toBeUndefined();
    expect(spanOf({ modern: UNKNOWN }, field('modern'))).toEqual({ from: 3, to: 3 });
    expect(spanOf({ 'supply-amps': UNKNOWN }, field('supply-amps'))).toBeUndefined();
  });
});

describe('an address', () => {
  test('carries all answers there and back', () => {
    fc.assert(
      fc.property(anyAnswers, (given) => {
        expect(read(toAddress(given))).toEqual({ answers: given, problems: [] });
      }),
      { numRuns: 300 },
    );
  });

  test('written before units were kept says the very same numbers, gauges among them', () => {
    const old = (given: Answers): string =>
      `?${new URLSearchParams(
        Object.entries(given).map(([id, answer]) => {
          const one = field(id);
          if (answer.kind !== 'number' || one.kind !== 'number') return [id, answerText(answer, one)];
          const { from, to } = answer.span;
          const write = (value: number): string => writeQuantity(value, one.quantity);
          return [id, from === to ? write(from) : `${write(from)}-${write(to)}`];
        }),
      )}`;
    const bare = (answer: Answer): Answer =>
      answer.kind === 'number' ? { kind: 'number', span: answer.span } : answer;
    const gauge = fc.option(fc.integer({ min: 8, max: 30 }), { freq: 2 });
    fc.assert(
      fc.property(anyAnswers, gauge, (some, number) => {
        const area = number === null ? undefined : Number(gaugeArea(number).toPrecision(12));
        const given: Answers =
          area === undefined ? some : { ...some, 'bus-wire': { kind: 'number', span: { from: area, to: area } } };
        const { answers, problems } = read(old(given));
        expect(problems).toEqual([]);
        expect(Object.fromEntries(Object.entries(answers).map(([id, one]) => [id, bare(one)]))).toEqual(given);
        if (area !== undefined) expect(answers['bus-wire']).toMatchObject({ typed: 'feet-and-gauge' });
      }),
      { numRuns: 300 },
    );
  });

  test('is the same for the same answers, in whatever order they were given', () => {
    fc.assert(
      fc.property(anyAnswers, (given) => {
        const turned = Object.fromEntries(Object.entries(given).reverse());
        expect(toAddress(turned)).toBe(toAddress(given));
      }),
    );
  });

  test('says the same in any order and with names in between that nobody knows', () => {
    const names = fc
      .stringMatching(/^[a-zA-Z_][a-zA-Z0-9_]{0,11}$/)
      .filter((name) => !ALL_FIELDS.some(({ id }) => id === name));
    fc.assert(
      fc.property(anyAnswers, fc.array(fc.tuple(names, fc.string())), fc.integer(), (given, strange, seed) => {
        const pairs = [...new URLSearchParams(toAddress(given)), ...strange];
        const random = seeded(seed);
        const shuffled = pairs.map((pair) => ({ pair, at: random() })).sort((a, b) => a.at - b.at);
        expect(read(`?${new URLSearchParams(shuffled.map(({ pair }) => pair)).toString()}`)).toEqual({
          answers: given,
          problems: [],
        });
      }),
    );
  });

  test('names the fields in the order of the alphabet', () => {
    expect(toAddress(told({ scale: 'n', modern: '3', aim: 'shorts' }))).toBe('?aim=shorts&modern=3&scale=n');
  });

  test('is empty without answers', () => {
    expect(toAddress({})).toBe('');
    expect(read('')).toEqual({ answers: {}, problems: [] });
  });

  test('takes the first of two answers to one field', () => {
    expect(read('?scale=n&scale=z').answers).toEqual(told({ scale: 'n' }));
  });

  test.each(['100 min', '50 min', '20 min', '95 min'])('carries an evening of %s', (text) => {
    const given = told({ evening: text });
    expect(read(toAddress(given)).answers).toEqual(given);
  });
});

const BECAUSE: readonly Because[] = [
  'empty',
  'not-chosen',
  'not-an-option',
  'not-a-number',
  'unknown-unit',
  'not-whole',
  'one-number',
  'too-small',
  'too-large',
  'mains-side',
  'bare-gauge',
  'needs-volts',
  'power-no-amperes',
  'more-than-trains',
];

const GOOD = {
  system: 'two-rail',
  aim: 'enough',
  scale: 'h0',
  draw: 'count',
  modern: '4',
  older: '1',
  sound: '2',
  stored: '0',
  moving: '3',
  evening: '2',
  coaches: '6',
  lamps: 'led',
  accessories: '4',
  'supply-kind': 'dc',
  'supply-volts': '15',
  'supply-amps': '2',
  'unit-limit': '3',
  'one-kind': 'dc',
  'station-limit': '3',
} as const;

/** Goes through everything that a page does with an address. */
function useUp(address: string): ReturnType<typeof read> {
  const found = read(address);
  const known = new Set(ALL_FIELDS.map(({ id }) => id));
  for (const { field: id, because, given } of found.problems) {
    expect(known.has(id), id).toBe(true);
    expect(BECAUSE).toContain(because);
    expect(given.length).toBeLessThanOrEqual(40);
  }
  for (const id of Object.keys(found.answers)) expect(known.has(id), id).toBe(true);
  expect(read(toAddress(found.answers)).answers).toEqual(found.answers);
  for (const { machine } of WIZARDS) expect(replay(machine, found.answers).trail.length).toBeGreaterThanOrEqual(0);
  expect(conclude(found.answers, reckon(found.answers)).outcome).toBeTypeOf('string');
  expect(placeSupplies(found.answers).outcome).toBeTypeOf('string');
  return found;
}

describe('an address with one answer spoilt', () => {
  const spoilt = [
    '',
    ' ',
    '0',
    '-1',
    '1e9',
    '1e999',
    'NaN',
    'Infinity',
    'null',
    'undefined',
    '10000',
    '0.0000001',
    '1/2',
    '3 parsecs',
    '<script>alert(1)</script>',
    '"><img src=x onerror=alert(1)>',
    "'; DROP TABLE trains; --",
    '../../../etc/passwd',
    '__proto__',
    'constructor',
    '\u0000',
    '\ud800',
    '\u202e3',
    '٣',
    '３',
    'three',
    'yes',
    '2,5,1',
    '1-2-3',
    '{"kind":"number"}',
    '9'.repeat(10_000),
    'a'.repeat(10_000),
  ];

  test.each(spoilt.map((text) => [text.slice(0, 30), text]))(
    '%j keeps all the others and names the spoilt one',
    (_, text) => {
      const { answers: good } = read(`?${new URLSearchParams(GOOD).toString()}`);
      for (const id of ['scale', 'modern', 'supply-amps', 'evening', 'lamps'] as const) {
        const { answers, problems } = useUp(`?${new URLSearchParams({ ...GOOD, [id]: text }).toString()}`);
        const { [id]: mine, ...others } = answers;
        const { [id]: _before, ...expected } = good;
        expect(others).toEqual(expected);
        expect(problems.map((problem) => problem.field)).toEqual(mine === undefined ? [id] : []);
      }
    },
  );
});

describe('an address from elsewhere', () => {
  test.each([
    '?',
    '&&&&',
    '?=',
    '?=&=&=',
    '?%',
    '?%E0%A4%A',
    '?scale=%FF%FE',
    '?scale',
    '?scale=',
    '?scale=h0#scale=n',
    '?SCALE=h0&Modern=3',
    '?scale[]=h0&modern[0]=3',
    '?__proto__=1&constructor=2&hasOwnProperty=3',
    '?__proto__[modern]=3',
    '?step=4&v=0.0.1&locomotives=3&amps=2', // names that no version has used
    '?supply=2A&trains-moving=3',
    '?utm_source=club&fbclid=123',
    'scale=h0',
    'https://example.org/?scale=h0',
    `?${'scale=h0&'.repeat(5000)}`,
    `?${'x'.repeat(100_000)}`,
    '?scale=h0;modern=3',
    '?scale=h0+&modern=+3+',
    '?modern=3%20A&supply-amps=2%C2%A0A',
  ])('%.40s harms nothing', (address) => {
    useUp(address);
  });

  test('with names of an older time keeps what it knows', () => {
    expect(useUp('?scale=n&locomotives=4&supply=3A').answers).toEqual(told({ scale: 'n' }));
  });
});

describe('eighty addresses mangled at random', () => {
  const random = seeded(19_870_609);
  const pick = (below: number): number => Math.floor(random() * below);
  const whole = `?${new URLSearchParams(GOOD).toString()}`;
  const hostile = [
    '%',
    '&',
    '=',
    '?',
    '\u0000',
    '%00',
    '%FF',
    '<',
    '"',
    '+',
    '-',
    'e',
    '\ud800',
    '9',
    'unknown',
    '__proto__',
  ];

  function mangle(address: string): string {
    const at = pick(address.length);
    switch (pick(5)) {
      case 0:
        return address.slice(0, at);
      case 1:
        return address.slice(0, at) + (hostile[pick(hostile.length)] ?? '') + address.slice(at);
      case 2:
        return address.slice(0, at) + address.slice(at + 1 + pick(6));
      case 3:
        return address + address.slice(at);
      default:
        return address.slice(at) + address.slice(0, at);
    }
  }

  const mangled = Array.from({ length: 80 }, () => {
    let address = whole;
    for (let times = 1 + pick(4); times > 0; times--) address = mangle(address);
    return address;
  });

  test('are unlike each other', () => expect(new Set(mangled).size).toBeGreaterThan(60));

  test.each(mangled.map((address, i) => [i, address] as const))(
    'number %i never throws and keeps what is whole',
    (_, address) => {
      const { answers, problems } = useUp(address);
      // The first value given to a name, if it reads at all, is what is kept.
      const given = new URLSearchParams(address);
      for (const one of ALL_FIELDS) {
        const text = given.get(one.id);
        if (text === null) expect(answers[one.id]).toBeUndefined();
        else if (textsFor(one).includes(text))
          expect(answerText(answers[one.id] ?? { kind: 'choice', option: 'lost' }, one)).toBe(text);
        else expect(answers[one.id] !== undefined || problems.some((problem) => problem.field === one.id)).toBe(true);
      }
    },
  );
});

describe('a power in place of amperes', () => {
  const read = (question: keyof typeof QUESTIONS, texts: Readonly<Record<string, string>>, before = {}) =>
    parseQuestion(QUESTIONS[question], new Map(Object.entries(texts)), undefined, before);

  test('36VA at 18 V are 2 A, typed in either way', () => {
    const two = { kind: 'number', span: { from: 2, to: 2 } };
    for (const volts of ['18', '18V~', '18 V AC 36 VA', '18V 36VA'])
      expect(read('supply-label', { 'supply-volts': volts, 'supply-amps': '36VA' }).answers).toMatchObject({
        'supply-volts': { kind: 'number', span: { from: 18, to: 18 } },
        'supply-amps': two,
      });
  });

  test('without volts it says that they are needed', () => {
    for (const volts of ['', 'unknown'])
      expect(read('supply-label', { 'supply-volts': volts, 'supply-amps': '36VA' }).problems).toContainEqual({
        field: 'supply-amps',
        because: 'needs-volts',
        given: '36VA',
      });
  });

  test('the supply of another district has the volts that were told of the first', () => {
    const texts = { districts: '2', 'limit-b': '3', 'amps-b': '36VA' };
    const volts = { 'supply-volts': { kind: 'number', span: { from: 18, to: 18 } } } as const;
    expect(read('our-districts', texts, volts).answers['amps-b']).toMatchObject({ span: { from: 2, to: 2 } });
    expect(read('our-districts', texts).problems[0]?.because).toBe('needs-volts');
  });

  test('what a unit passes has no volts that would do, those of its input least: amperes are asked for', () => {
    const texts = { 'unit-limit': '36VA', 'unit-input-volts': '19 V' };
    expect(read('unit-label', texts).problems[0]).toMatchObject({ field: 'unit-limit', because: 'power-no-amperes' });
  });
});
