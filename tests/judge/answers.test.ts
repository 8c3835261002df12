import { describe, expect, test } from 'vitest';
import type { TableLayout } from '../../src/engine/table/layout.ts';
import { meterReads } from '../../src/engine/table/meter.ts';
import { idleVolts } from '../../src/engine/table/moment.ts';
import { OPENINGS, SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { seeded } from '../seeded.ts';
import { answerCheck, NOT_ON_THE_TABLE, TABLE_CHECKS } from './answers/index.ts';
import type { MetId } from './complaints.ts';
import { caseOf, MET, showsAs } from './complaints.ts';
import type { TableFault } from './injection.ts';
import { TABLE_FAULTS } from './injection.ts';
import { across, bridged, empty, LAMP_OHMS } from './instruments.ts';
import { makeLayout } from './layouts.ts';
import { repaired, TABLE_REPAIRS } from './repair.ts';

const SEEDS = [1, 2, 3, 4, 5, 6];

const { checks: CHECKS, causes: CAUSES } = SIGN_MODEL;
const SHARES = new Map<string, Readonly<Record<string, number>>>(OPENINGS.map(({ id, shares }) => [id, shares]));

/** Faults that show nothing by themselves, and only a check finds: isolated units in phase hide them. */
const HIDDEN: readonly TableFault[] = ['one-rail', 'shared-wire'];

interface Case {
  readonly fault: TableFault;
  readonly complaint: MetId;
  readonly layout: TableLayout;
}

/** One layout for each fault, out of which a person comes with a complaint for which the model has this fault. */
const cases: Case[] = TABLE_FAULTS.flatMap((fault) => {
  const complaints = MET.filter((complaint) => (SHARES.get(complaint)?.[fault] ?? 0) > 0);
  for (const seed of SEEDS) {
    for (const complaint of complaints) {
      const layout = caseOf(fault, complaint, seeded(seed));
      if (layout !== undefined) return [{ fault, complaint, layout }];
    }
  }
  return [];
});

describe('What the virtual layout answers', () => {
  test('is every check of the model, or stands in the list of those that the table has not, never both', () => {
    const checks = CHECKS.map(({ id }) => id);
    const faults = CAUSES.map(({ id }) => id);
    expect([...TABLE_CHECKS, ...Object.keys(NOT_ON_THE_TABLE)].sort()).toEqual([...checks].sort());
    expect(TABLE_FAULTS.filter((fault) => !faults.includes(fault))).toEqual([]);
  });

  test('a layout in working order brings nobody to the wizard', () => {
    for (const seed of SEEDS) expect(showsAs(makeLayout(seeded(seed)))).toEqual([]);
  });

  test('every fault that can be seen brings a person with a complaint for which the model has it', () => {
    const missing = TABLE_FAULTS.filter((fault) => !cases.some((one) => one.fault === fault));
    expect(missing).toEqual(HIDDEN);
  });

  test.each(cases)(
    '$fault as $complaint: always one of the options, or a skip, and the same when asked again',
    ({ complaint, layout }) => {
      const answers = CHECKS.map(({ id }) => answerCheck(layout, complaint, id));
      const wrong = CHECKS.filter(({ options }, i) => {
        const answer = answers[i];
        return answer !== undefined && !options.some((option) => option === answer);
      });
      expect(wrong).toEqual([]);
      const anew = structuredClone(layout);
      const some = CHECKS.slice(0, 15).map(({ id }) => answerCheck(anew, complaint, id));
      expect(some).toEqual(answers.slice(0, 15));
      expect(answers.filter((answer) => answer !== undefined).length).toBeGreaterThan(10);
    },
  );

  test('an unknown check is skipped', () => {
    const layout = makeLayout(seeded(1));
    expect(answerCheck(layout, 'stops-at-gap', 'no-such-check')).toBeUndefined();
    expect(caseOf('feed-missing', 'no-such-complaint', seeded(1))).toBeUndefined();
  });
});

const CLASS_OF = new Map(CAUSES.map(({ id, fixClass }) => [id, fixClass]));

describe('A repair of the virtual layout', () => {
  test('is one of the model, and every fault that can be put in has one', () => {
    const classes = new Set(CLASS_OF.values());
    expect(TABLE_REPAIRS.filter((repair) => !classes.has(repair))).toEqual([]);
    expect(TABLE_FAULTS.filter((fault) => !TABLE_REPAIRS.includes(CLASS_OF.get(fault) ?? ''))).toEqual([]);
  });

  test.each(cases)('mends $fault as $complaint, and what does not belong to it mends nothing', (one) => {
    const { fault, complaint, layout } = one;
    expect(showsAs(repaired(layout, CLASS_OF.get(fault) ?? ''))).not.toContain(complaint);
    const others = ['wrong-format', 'skew', 'leak', 'address', 'link-inverted'].filter(
      (id) => id !== CLASS_OF.get(fault),
    );
    const helped = others.filter((id) => !showsAs(repaired(layout, id)).includes(complaint));
    expect(helped).toEqual([]);
  });

  test('spoils nothing where all is well, but for wires swapped and a plug pulled for a test', () => {
    const layout = makeLayout(seeded(2));
    const spoilt = TABLE_REPAIRS.filter((repair) => showsAs(repaired(layout, repair)).length > 0);
    expect(spoilt).toEqual(['reversed', 'test-misled']);
  });

  test('that is not known changes nothing', () => {
    const layout = makeLayout(seeded(1));
    expect(repaired(layout, 'no-such-repair')).toBe(layout);
  });
});

describe('The meter across a gap whose rails are reversed', () => {
  const GAP = { same: ['new-gap', 'a'], diagonal: ['new-gap', 'b'] } as const;

  /** Volts from rail A of the old part, with rail B tied to rail B through a lamp. */
  function readings(layout: TableLayout) {
    const tied = bridged(layout, across('test-lamp', ['old-gap', 'b'], ['new-gap', 'b'], LAMP_OHMS));
    const { world } = empty(tied, 0.01, 'standing');
    const read = (to: (typeof GAP)[keyof typeof GAP]) =>
      meterReads(tied, world, ['old-gap', 'a'], to).ac / layout.meter.factor;
    return { same: read(GAP.same), diagonal: read(GAP.diagonal), rail: idleVolts(layout, 0) };
  }

  const reversed = SEEDS.flatMap((seed) => caseOf('feed-reversed', 'trips-at-gap', seeded(seed)) ?? []);

  test('shows clearly more on the same rail than on the diagonal, and on no layout the other way round', () => {
    expect(reversed.length).toBeGreaterThan(3);
    for (const layout of reversed) {
      const { same, diagonal } = readings(layout);
      expect(same).toBeGreaterThan(1.4 * diagonal);
      expect(answerCheck(layout, 'trips-at-gap', 'meter-same-and-diagonal')).toBe('same-rail-large');
    }
  });

  test('with floating units it shows both rail voltages in series there, and the diagonal is not small', () => {
    const floating = reversed.map(readings).filter(({ diagonal, rail }) => diagonal > 0.7 * rail);
    expect(floating.length).toBeGreaterThan(0);
    for (const { same, rail } of floating) expect(same / rail).toBeGreaterThan(1.6);
  });

  test('with rails that agree it shows near nothing on the same rail and full volts on the diagonal', () => {
    for (const seed of SEEDS) {
      const { same, diagonal, rail } = readings(makeLayout(seeded(seed)));
      expect(same).toBeLessThan(0.2 * rail);
      expect(diagonal).toBeGreaterThan(0.8 * rail);
    }
  });
});
