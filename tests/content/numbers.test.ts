// Numbers that lessons say are the engine's: each name has one, each is said, and what the texts say agrees with sums by hand.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ALONG_START, planOf } from '../../src/components/figures/along-the-track/model.ts';
import { dividedParts, TRAINS_START, trainsOn } from '../../src/components/figures/how-many-trains/models.ts';
import { Numbers } from '../../src/components/words/numbers.ts';
import { solvePlan } from '../../src/engine/index.ts';
import { BREAKERS } from '../../src/layouts/numbers/breakers.ts';
import { withNumbers } from '../../src/layouts/numbers/index.ts';
import { NO_SINGLE_NUMBER } from '../../src/layouts/numbers/no-single-number.ts';
import { TEST_THE_SHORT } from '../../src/layouts/numbers/test-the-short.ts';
import { TURNOUTS_AND_LAMPS } from '../../src/layouts/numbers/turnouts-and-lamps.ts';
import { TWO_LABELS } from '../../src/layouts/numbers/two-labels.ts';
import { VOLTAGE_ALONG_THE_TRACK } from '../../src/layouts/numbers/voltage-along-the-track.ts';
import { WILL_IT_TRIP } from '../../src/layouts/numbers/will-it-trip.ts';
import type { Written } from '../../src/layouts/numbers/written.ts';
import { wordsOf } from './folder.ts';

const METRIC = new Numbers('en');
const FEET = new Numbers('en', 'feet-and-gauge');
const FOLDER = join(import.meta.dirname, '../../src/layouts/numbers');

const LESSONS = wordsOf('en', 'lessons').map(({ id, file }) => [id, readFileSync(file, 'utf8')] as const);
const placesIn = (text: string): string[] => [...text.matchAll(/\{([a-z][a-z0-9-]*)\}/g)].map(([, name = '']) => name);
const said = (written: Written, name: string): string => (written[name]?.(METRIC) ?? '').replaceAll('\u00a0', ' ');

test.each(LESSONS)('every number that the lesson %s names can be told, in both systems', (_, text) => {
  for (const name of placesIn(text)) expect(withNumbers(`{${name}}`, METRIC, FEET), name).toMatch(/\d/);
});

test('no number waits for a text that says it', () => {
  const named = readdirSync(FOLDER).flatMap((file) =>
    [...readFileSync(join(FOLDER, file), 'utf8').matchAll(/^ {2}'([a-z0-9-]+)': \(/gm)].map(([, name = '']) => name),
  );
  const used = new Set(LESSONS.flatMap(([, text]) => placesIn(text)));
  expect(named.length).toBeGreaterThan(10);
  expect(named.filter((name) => !used.has(name))).toEqual([]);
  expect(named.filter((name, i) => named.indexOf(name) !== i)).toEqual([]);
});

test('a name that nobody knows stops the build with a sentence', () => {
  expect(() => withNumbers('It is {zebra-amps}.', METRIC, FEET)).toThrow('No number "zebra-amps"');
});

test('what differs between the systems stays a place for both', () => {
  expect(withNumbers('It is {thin-pair-loss}.', METRIC, FEET)).toMatch(/^It is \{either:[^|]+\|[^|]+\}\.$/);
});

describe('By hand:', () => {
  test('four modern trains pass 1.8 A in 0.8 % of the time: (4 − 3.333)⁴ / 4!', () => {
    expect(said(NO_SINGLE_NUMBER, 'usable-of-2-a')).toBe('1.8 A');
    expect(Number.parseFloat(said(NO_SINGLE_NUMBER, 'four-moving-share'))).toBeCloseTo((100 * (2 / 3) ** 4) / 24, 1);
  });

  test('five pass the limit of 2 A in 10 % of the time: ((5 − 3.333)⁵ − 5 × (4 − 3.333)⁵) / 5!', () => {
    expect(said(NO_SINGLE_NUMBER, 'limit-of-2-a')).toBe('2 A');
    const byHand = ((5 / 3) ** 5 - 5 * (2 / 3) ** 5) / 120;
    expect(Number.parseFloat(said(NO_SINGLE_NUMBER, 'five-over-limit'))).toBeCloseTo(100 * byHand, 0);
  });

  test('45 W at 18 V d.c. are 2.5 A, and nine tenths of that can be planned with', () => {
    expect(said(TWO_LABELS, 'usable-on-2-a')).toBe('1.8 A');
    expect(said(TWO_LABELS, 'usable-on-2-5-a')).toBe(`${(0.9 * 45) / 18} A`);
  });

  test('3 A through 10 m of a pair of 0.75 mm² lose 2 × 10 × 0.026 × 3 = 1.6 V, of 1.5 mm² 0.8 V', () => {
    expect(said(VOLTAGE_ALONG_THE_TRACK, 'thin-pair-loss')).toBe('1.6 V');
    expect(said(VOLTAGE_ALONG_THE_TRACK, 'thick-pair-loss')).toBe('0.8 V');
  });

  test('a metre of track is worth 4 to 6, 8 and 15 m of a pair of 1.5 mm² (13.3 ohms a kilometre), by the code of the rail', () => {
    expect(said(VOLTAGE_ALONG_THE_TRACK, 'code-100-worth')).toBe('4–6');
    expect(said(VOLTAGE_ALONG_THE_TRACK, 'code-83-worth')).toBe('8');
    expect(said(VOLTAGE_ALONG_THE_TRACK, 'code-70-worth')).toBe('15');
  });

  test('15 V over 2.5 ohms: 6 A at a clean short, 3 A and 22.5 W at the worst contact', () => {
    expect(said(WILL_IT_TRIP, 'clean-short')).toBe('6 A');
    expect(said(WILL_IT_TRIP, 'quiet-amps')).toBe('3 A');
    expect(said(WILL_IT_TRIP, 'quiet-watts')).toMatch(/^2[23] W$/);
  });

  test('the resistor stays for 20, 10 and 5 s at 15, 20 and 22 V: no more than 300 joules', () => {
    expect(['seconds-15-v', 'seconds-20-v', 'seconds-22-v'].map((name) => said(TEST_THE_SHORT, name))).toEqual([
      '20',
      '10',
      '5',
    ]);
  });

  test('the load test of the text: 3.3 A at the far end', () => {
    // 11.5 / 15 × 15 / 3.5 = 3.29
    expect(said(TEST_THE_SHORT, 'far-load-short')).toBe('3.3 A');
  });

  test('at 15 V and 15 ohms a short of 4.5 A loses 15 V / 5.5 = 2.73 V, one of 7.5 A 1.76 V: no more is told', () => {
    expect(said(TEST_THE_SHORT, 'may-lose-3')).toBe('2.7 V');
    expect(said(TEST_THE_SHORT, 'may-lose-5')).toBe('1.7 V');
  });

  test.each([
    [3, 'may-lose-3'],
    [5, 'may-lose-5'],
  ])(
    'whoever loses just what the lesson allows a unit of %i A has a short of one and a half times that',
    (trip, name) => {
      const lost = Number.parseFloat(said(TEST_THE_SHORT, name));
      expect((((15 - lost) / 15) * 15) / lost).toBeGreaterThanOrEqual(1.5 * trip);
    },
  );

  test('volts to keep are told no lower than they are, volts to lose no higher', () => {
    const numbers = new Numbers('en');
    expect([numbers.volts(13.22, 'at-least'), numbers.volts(1.78, 'at-most'), numbers.volts(1.78)]).toEqual([
      '13.3\u00a0V',
      '1.7\u00a0V',
      '1.8\u00a0V',
    ]);
  });

  test('under a unit of 5 A a breaker is set to 3.5 A, and 1.5 A are left; 4 A and 1.5 A elsewhere are 5.5 A', () => {
    expect(said(BREAKERS, 'at-most-under-5-a')).toBe('3.5 A');
    expect(said(BREAKERS, 'left-for-others')).toBe('1.5 A');
    expect(said(BREAKERS, 'alike-unit-passes')).toBe('5.5 A');
  });
});

test('whoever compares two supplies by their labels is told the kind of both', () => {
  const [, two = ''] = LESSONS.find(([id]) => id === 'two-labels') ?? [];
  const question = two.match(/prediction:\n {2}question: (.+)/)?.[1] ?? '';
  expect(question.match(/18 V d\.c\./g)).toHaveLength(2);
  expect(question).not.toMatch(/VA/);
});

describe('What “enough” promises in the lesson no-single-number', () => {
  test.each([
    ['four modern trains', trainsOn(TRAINS_START), 'enough'],
    ['two older ones', trainsOn({ ...TRAINS_START, total: 2, moving: 2, older: true }), 'tight'],
  ] as const)('%s: the limit, where the unit switches off, is hardly ever passed', (_, { judgement }, verdict) => {
    expect(judgement.verdict).toBe(verdict);
    expect(judgement.aboveHard).toBeLessThan(0.0001);
  });

  test('so what the lesson calls harmful is a share above the limit, and it says the two goals', () => {
    const [, lesson = ''] = LESSONS.find(([id]) => id === 'no-single-number') ?? [];
    expect(lesson).toContain('The limit of the unit is passed in one per cent');
    expect(lesson).not.toMatch(/usable current is passed in one per cent/);
    expect([said(NO_SINGLE_NUMBER, 'goal-reserve'), said(NO_SINGLE_NUMBER, 'goal-limit')]).toEqual(['1 %', '0.1 %']);
  });
});

describe('Six trains in the lesson what-a-booster-adds', () => {
  const verdicts = (here: number, there: number, b = 2) =>
    dividedParts({ here, there, a: 2, b }).map(({ judgement }) => judgement.verdict);

  test('are too many for one part of 2 A, and no supply of the other part changes that', () => {
    expect(verdicts(6, 0)[0]).toBe('short');
    expect(verdicts(6, 0, 5)[0]).toBe('short');
  });

  test('are carried once some of them run in the other part', () => {
    expect(verdicts(5, 1)[0]).toBe('short');
    expect(verdicts(4, 2)).toEqual(['enough', 'ample']);
  });
});

test('a turnout at the far end of a busy track: 0.4 ohms keep 1.2 V of 3 A inside the unit, a feeder brings it up but not to what it was', () => {
  const volts = (name: string): number => Number.parseFloat(said(TURNOUTS_AND_LAMPS, name));
  expect(volts('kept-by-the-unit')).toBeCloseTo(0.4 * 3, 9);
  expect(volts('turnout-with-a-feeder')).toBeGreaterThan(volts('turnout-on-a-busy-track') + 2);
  expect(volts('turnout-with-a-feeder')).toBeLessThan(volts('turnout-on-a-quiet-track') - 1);
});

test('what the figure says of the volts adds up: what the unit keeps, what is lost on the way and what is left', () => {
  const circuit = solvePlan(planOf(ALONG_START));
  const along = circuit.kind === 'circuit' ? circuit.train(ALONG_START.amps) : circuit;
  if (along.kind === 'no-solution') throw new Error('The figure along the track begins without a solution');
  const { worst, stageDrop } = along;
  expect(worst.volts + stageDrop + worst.wiringShare * ALONG_START.volts).toBeCloseTo(ALONG_START.volts, 9);
  const line = wordsOf('en', 'words').flatMap(({ data }) => data['along-voltage-here'] ?? [])[0];
  for (const place of ['{worst}', '{volts}', '{kept}', '{share}']) expect(line).toContain(place);
});
