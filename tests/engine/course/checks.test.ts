// The questions of the course with new numbers each time: one choice is right, the others are truly wrong, and all within what a person
// can picture.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { APART } from '../../../src/engine/course/check.ts';
import { MOST_SEED } from '../../../src/engine/course/draw.ts';
import { CHECK_KINDS, courseCheck, parseSeed } from '../../../src/engine/course/index.ts';
import { POWER_KINDS } from '../../../src/engine/course/power-kinds.ts';
import { SIGNAL_KINDS } from '../../../src/engine/course/signal-kinds.ts';
import { WIRING_KINDS } from '../../../src/engine/course/wiring-kinds.ts';
import { near } from '../../near.ts';

const KINDS = { ...POWER_KINDS, ...WIRING_KINDS, ...SIGNAL_KINDS };
const seed = fc.integer({ min: 1, max: MOST_SEED });

test('there are questions enough for each lesson to have one of its own', () => {
  expect(CHECK_KINDS.length).toBeGreaterThanOrEqual(20);
});

describe.each(CHECK_KINDS)('a question about %s', (kind) => {
  test('has exactly one right answer, which is the one it says', () => {
    fc.assert(
      fc.property(seed, (one) => {
        const { choices, right } = courseCheck(kind, one);
        const without = choices.filter(({ mistake }) => mistake === undefined);
        expect(without).toEqual([right]);
        expect(choices.length).toBeGreaterThanOrEqual(3);
      }),
    );
  });

  test('has wrong answers, each by a mistake of its own, that no rounding could take for the right one', () => {
    fc.assert(
      fc.property(seed, (one) => {
        const { choices } = courseCheck(kind, one);
        const mistakes = choices.flatMap(({ mistake }) => (mistake === undefined ? [] : [mistake]));
        expect(new Set(mistakes).size).toBe(choices.length - 1);
        const values = choices.map(({ value }) => value);
        for (const [i, value] of values.entries())
          if (i > 0) expect(value / (values[i - 1] ?? 0)).toBeGreaterThanOrEqual(1 + APART);
      }),
    );
  });

  test('stays within what a person can picture', () => {
    const [least, most] = KINDS[kind].range;
    fc.assert(
      fc.property(seed, (one) => {
        for (const { value } of courseCheck(kind, one).choices) {
          expect(value).toBeGreaterThanOrEqual(least);
          expect(value).toBeLessThanOrEqual(most);
        }
      }),
    );
  });

  test('is the same for everybody with the same link, and another one with another', () => {
    fc.assert(
      fc.property(seed, (one) => {
        expect(courseCheck(kind, one)).toEqual(courseCheck(kind, one));
      }),
    );
    const asked = new Set(Array.from({ length: 60 }, (_, i) => JSON.stringify(courseCheck(kind, i + 1).given)));
    expect(asked.size).toBeGreaterThanOrEqual(3);
  });
});

describe.each(CHECK_KINDS)('Other numbers for a question about %s', (kind) => {
  const given = (one: number): string => JSON.stringify(courseCheck(kind, one).given);

  test('are other ones at each tap', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: MOST_SEED - 1 }), (one) => {
        expect(given(one + 1)).not.toBe(given(one));
      }),
    );
    expect(given(1)).not.toBe(given(MOST_SEED));
  });

  test('come back to the first only after all others', () => {
    const asked = Array.from({ length: 400 }, (_, i) => given(i + 1));
    const back = asked.indexOf(asked[0] ?? '', 1);
    const many = new Set(asked).size;
    expect(back === -1 || back === many).toBe(true);
    expect(many).toBeGreaterThanOrEqual(3);
  });
});

test.each([
  ['surely-trips', 'right'],
  ['breaker-setting', 'trip'],
] as const)(
  'a question about %s never has a unit trip above the 5 A that the largest scale here bears',
  (kind, where) => {
    for (let one = 1; one <= 200; one++) {
      const { given, right } = courseCheck(kind, one);
      const trip = where === 'trip' ? given['trip']?.value : right.value;
      expect(trip).toBeGreaterThan(0);
      expect(trip).toBeLessThanOrEqual(5);
    }
  },
);

describe('The right answer is right by hand:', () => {
  /** Of each kind, the answer worked out anew from what is given. */
  const BY_HAND: Readonly<Record<string, (given: (name: string) => number) => number>> = {
    'total-current': (of) => of('moving') * of('running') + of('parked') * of('standing'),
    'va-to-amps': (of) => of('va') / of('output'),
    'ac-behind-rectifier': (of) => of('rating') / 1.8,
    'split-between-districts': (of) => of('here') * of('each'),
    'booster-adds': (of) => of('booster'),
    'coach-lamps': (of) => (of('coaches') * of('lamps') * of('milliamps')) / 1000,
    'parked-draw': (of) => (of('parked') * of('milliamps')) / 1000,
    'ammeter-socket': (of) => {
      const starts: number[] = [];
      for (let minute = 0; minute < of('evening'); minute += of('every')) starts.push(minute);
      return starts.length * of('on');
    },
    'wire-loss': (of) => 2 * of('each') * of('current'),
    'feeder-count': (of) => Math.ceil(of('length') / of('spacing') - 1e-9),
    'load-test': (of) => ((of('loaded') / of('load')) * of('open')) / (of('open') - of('loaded')),
    'short-at-the-end': (of) => of('rails') / (2 * of('out')),
    'surely-trips': (of) => of('short') / 1.5,
    'quiet-heat': (of) => of('rails') ** 2 / (4 * of('loop')),
    'section-length': (of) => of('locomotive') + of('coaches') * of('coach'),
    'breaker-setting': (of) => 0.7 * of('trip'),
    'command-time': (of) => (of('ones') * 116 + of('zeros') * 200) * 1e-6,
    'lamps-across': (of) => (of('near') + of('far')) / 2,
    'programming-load': (of) => (of('locomotive') + of('coaches') * of('milliamps')) / 1000,
    'strip-load': (of) => of('supplies') * of('input'),
    'survivor-carries': (of) => of('here') + of('there'),
    'volts-across': (of) => of('here') + of('there'),
    'at-switch-on': (of) => of('resting') + of('vehicles') * of('each'),
    'pulse-across': (of) => (of('near') - of('far')) / of('way'),
    'pairs-at-the-gaps': (of) => of('paths') * 2 + of('lone'),
    'rail-grows': (of) => 17e-6 * of('length') * of('warmer'),
  };

  test.each(CHECK_KINDS.filter((kind) => BY_HAND[kind] !== undefined))('%s', (kind) => {
    const byHand = BY_HAND[kind];
    fc.assert(
      fc.property(seed, (one) => {
        const { given, right } = courseCheck(kind, one);
        near(right.value, byHand?.((name) => given[name]?.value ?? Number.NaN) ?? Number.NaN, 1e-9, kind);
      }),
    );
  });

  test('a rating is the next common one above trip current and own use', () => {
    fc.assert(
      fc.property(seed, (one) => {
        const { given, right } = courseCheck('supply-rating', one);
        const least = (given['trip']?.value ?? 0) + (given['own-use']?.value ?? 0);
        expect(right.value).toBeGreaterThan(least);
        expect(right.value - least).toBeLessThanOrEqual(2);
      }),
    );
  });

  test('the resistor stays for no more than 300 joules and 20 seconds', () => {
    fc.assert(
      fc.property(seed, (one) => {
        const { given, right } = courseCheck('resistor-time', one);
        const watts = (given['rails']?.value ?? 0) ** 2 / 15;
        expect(right.value).toBeLessThanOrEqual(20);
        expect(right.value % 5).toBe(0);
        if (right.value > 5) expect(right.value * watts).toBeLessThanOrEqual(300);
      }),
    );
  });

  test('a breaker opens within 5 to 30 thousandths of a second and before its unit', () => {
    fc.assert(
      fc.property(seed, (one) => {
        const { given, right } = courseCheck('breaker-time', one);
        expect(right.value).toBeGreaterThanOrEqual(0.005);
        expect(right.value).toBeLessThanOrEqual(0.03);
        expect(right.value).toBeLessThan(given['stage']?.value ?? 0);
      }),
    );
  });
});

test.each([
  ['7', 7],
  ['9999', 9999],
  ['0', undefined],
  ['10000', undefined],
  ['1.5', undefined],
  ['-3', undefined],
  ['x', undefined],
  [null, undefined],
])('the seed %j of a link is read as %j', (text, value) => expect(parseSeed(text)).toBe(value));
