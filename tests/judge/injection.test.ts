// The virtual layout judges the fault model: a fault is put in, the layout answers whatever is asked, and the walk must end in its repair.
// Seeds begin at 1; those from 1000 on were used to look at single walks while the model was written.
import { mkdirSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { TOOLS } from '../../src/engine/diagnosis/model.ts';
import type { TableFault } from './injection.ts';
import { TABLE_FAULTS } from './injection.ts';
import type { Walked } from './walks.ts';
import { allInjected, confusion, endsWell, questionsAt, share, summary, WITHOUT_METER, walk } from './walks.ts';

const LAYOUTS = 20;

/** Faults that show nothing by themselves: isolated units in phase hide them, and only a check finds them. */
const HIDDEN: readonly TableFault[] = ['one-rail', 'shared-wire'];

describe('A fault in the virtual layout', () => {
  const withMeter: Walked[] = [];
  const without: Walked[] = [];

  beforeAll(() => {
    for (const one of allInjected(LAYOUTS)) {
      withMeter.push(walk(one, { tools: TOOLS }));
      without.push(walk(one, { tools: WITHOUT_METER }));
    }
    mkdirSync('reports', { recursive: true });
    writeFileSync(
      'reports/confusion.txt',
      `With a multimeter\n${confusion(withMeter)}\nWithout a multimeter\n${confusion(without)}`,
    );
  }, 600_000);

  test('is tried in twenty layouts, unless it shows nothing by itself', () => {
    const few = TABLE_FAULTS.filter((fault) => withMeter.filter((one) => one.fault === fault).length < LAYOUTS);
    expect(few).toEqual(HIDDEN);
  });

  test('is found with a multimeter at hand', () => {
    expect(share(withMeter, endsWell), summary(withMeter)).toBeGreaterThanOrEqual(0.97);
    // A repair of another class that helps just as well is rare, so this rule decides little.
    expect(
      share(withMeter, ({ end }) => end === 'right'),
      summary(withMeter),
    ).toBeGreaterThanOrEqual(0.95);
  });

  test('is found without one', () => {
    expect(share(without, endsWell), summary(without)).toBeGreaterThanOrEqual(0.97);
    expect(
      share(without, ({ end }) => end === 'right'),
      summary(without),
    ).toBeGreaterThanOrEqual(0.95);
  });

  test('is found within seven questions nine times in ten, with or without a multimeter', () => {
    expect(questionsAt(withMeter, 0.9), summary(withMeter)).toBeLessThanOrEqual(7);
    expect(questionsAt(without, 0.9), summary(without)).toBeLessThanOrEqual(7);
  });

  test('is mostly the first thing that is proposed', () => {
    const first = (one: Walked): boolean => endsWell(one) && one.proposed.length === 1;
    expect(share(withMeter, first), summary(withMeter)).toBeGreaterThanOrEqual(0.85);
    expect(share(without, first), summary(without)).toBeGreaterThanOrEqual(0.8);
  });

  test.each(TABLE_FAULTS.filter((fault) => !HIDDEN.includes(fault)))('%s is found in most layouts', (fault) => {
    for (const walks of [withMeter, without]) {
      const own = walks.filter((one) => one.fault === fault);
      expect(share(own, endsWell), summary(own)).toBeGreaterThanOrEqual(0.5);
    }
  });
});
