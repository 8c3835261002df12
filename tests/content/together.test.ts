// A change of the wiring in several parts: its steps are those of every part, each once, in an order in which they can be done.
import { describe, expect, test } from 'vitest';
import { together } from '../../src/components/fix/together.ts';
import type { FixWords } from '../../src/components/words/words.ts';
import type { WiringPart } from '../../src/wizards/wire-it/result.ts';
import { inOrderOfWork } from '../../src/wizards/wire-it/result.ts';
import { stepsOf, wordsOf } from './folder.ts';

const FIXES = wordsOf('en', 'fixes');
const OFF = /^Everything off and unplugged/;
const POWERED = /\bpower on\b/i;
const OHMS = /measure ohms from rail to rail/;
const PROVES = /^Prove that a short trips/;

function fixOf(id: string): FixWords {
  const page = FIXES.find((one) => one.id === id);
  if (page === undefined) throw new Error(`no fix ${id}`);
  const steps = stepsOf(page).map(({ text, job }) => ({
    do: text,
    cautions: [],
    ...(job === undefined ? {} : { job: { title: job, href: job } }),
  }));
  const said = (key: string): string => String(page.data[key]);
  return {
    title: said('title'),
    lead: said('lead'),
    short: said('short'),
    because: said('because'),
    needs: said('needs'),
    effort: said('effort'),
    before: [],
    steps,
    verify: said('verify'),
    next: said('next'),
  };
}

const SAID = { title: 'Together', next: 'Next', effort: 'Effort' };

/** Changes that the engine comes to, and whether the track hangs on one pair. */
const CHANGES: readonly (readonly [parts: readonly WiringPart[], pair: boolean])[] = [
  [['feed-bus-from-middle', 'thicker-bus'], false],
  [['feed-bus-from-middle', 'more-feeders'], false],
  [['feed-bus-from-middle', 'thicker-bus', 'more-feeders'], false],
  [['feed-bus-from-middle', 'thicker-bus', 'more-feeders', 'thicker-feeders'], false],
  [['bus-as-a-ring', 'more-feeders'], false],
  [['bus-as-a-ring', 'thicker-bus', 'more-feeders'], false],
  [['bus-as-a-ring', 'thicker-feeders'], false],
  [['thicker-bus', 'thicker-feeders'], false],
  [['pair-to-the-middle', 'thicker-bus'], true],
  [['thicker-bus', 'more-feeders'], true],
  [['feed-bus-from-middle', 'thicker-bus', 'more-feeders'], true],
];

describe.each(CHANGES)('%j, on one pair: %j', (parts, pair) => {
  const order = inOrderOfWork(parts, pair);
  const fix = together(order.map(fixOf), SAID);
  const steps = fix?.steps.map((step) => step.do) ?? [];
  const first = (what: RegExp): number => steps.findIndex((step) => what.test(step));

  test('every part has its steps, none twice', () => {
    expect(new Set(steps).size).toBe(steps.length);
    for (const part of order) {
      const own = fixOf(part).steps.filter(
        ({ do: act, job }) => job === undefined && !OHMS.test(act) && !OFF.test(act),
      );
      for (const { do: act } of own) expect(steps).toContain(act);
    }
    const jobs = fix?.steps.flatMap(({ job }) => job?.href ?? []) ?? [];
    expect(new Set(jobs).size).toBe(jobs.length);
  });

  test('everything is switched off once, before a hand does anything to the wires; with power on only before that', () => {
    expect(steps.filter((step) => OFF.test(step))).toHaveLength(1);
    const on = steps.findLastIndex((step) => POWERED.test(step));
    expect(on).toBeLessThan(first(OFF));
    expect(first(/^Join|^Lay|^Move|^Replace/)).toBeGreaterThan(first(OFF));
  });

  test('a crossed pair is looked for, and what trips is proved, when all is joined', () => {
    const joins = steps.findLastIndex((step) => /^(?:Join|Move|Lay|Replace|Undo|Take the old)/.test(step));
    const looks = (fix?.steps ?? []).findLastIndex((step) => OHMS.test(step.do) || step.job?.href === 'lay-a-feeder');
    expect(looks).toBeGreaterThanOrEqual(joins);
    if (first(PROVES) >= 0) expect(first(PROVES)).toBe(steps.length - 1);
  });

  test('a bus is laid before the unit or feeders are joined to it', () => {
    const lays = first(pair && order.includes('more-feeders') ? /then lay a pair beside/i : /^Lay the new pair along/);
    if (order.includes('thicker-bus')) expect(lays).toBeGreaterThanOrEqual(0);
    for (const joined of [/wire A of the bus/, /^Join A to A and B to B with wire/, /^Join a feeder/]) {
      if (first(joined) >= 0) expect(lays).toBeLessThan(first(joined));
    }
  });
});

test('one part alone stays as it is written', () => {
  expect(together([fixOf('thicker-bus')], SAID)).toEqual(fixOf('thicker-bus'));
});

test('where there is one pair only, its feeders bring the bus: it is not laid twice', () => {
  expect(inOrderOfWork(['thicker-bus', 'more-feeders'], true)).toEqual(['more-feeders']);
});
