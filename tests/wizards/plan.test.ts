// From a layout sheet to the whole plan, as somebody who wires layouts would write it.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Plan, planOf, STEP_KINDS } from '../../src/wizards/plan/index.ts';
import { FIX_OF_REMEDY } from '../../src/wizards/plan/remedies.ts';
import type { StepId } from '../../src/wizards/plan/steps.ts';
import { COMPLAINT_IDS, SIGN_MODEL } from '../../src/wizards/put-it-right/index.ts';
import { JOBS } from '../../src/wizards/safety/index.ts';
import type { Sheet } from '../../src/wizards/sheet/index.ts';
import { DEMO_CLUB, sheetShape } from '../../src/wizards/sheet/index.ts';
import { CLUB, joint, OVAL, section, stage, supply } from './sheets.ts';

const stepsIn = ({ steps }: Plan): StepId[] => steps.map(({ id }) => id);
const gapsIn = ({ track }: Plan): string[] => track.gaps.map(({ joint: { id } }) => id);
const partIds = ({ parts }: Plan): string[] => parts.map(({ id }) => id);
const POWER_PARTS = ['unit', 'booster', 'supply', 'fuse', 'lead-wire', 'breaker', 'control-cable'];

describe('The invented club layout', () => {
  const demo = planOf(DEMO_CLUB);

  test('has enough in each of its four districts as it is divided, so that its plan goes on to the parts', () => {
    expect(demo.judged.findings.map(({ judgement: { verdict } }) => verdict)).not.toContain('short');
    expect(demo.judged.remedy).toBe('nothing');
    expect(demo.power).toBe('listed');
    expect(partIds(demo)).toContain('supply');
  });
});

const oval = planOf(OVAL);
const ONE_UNIT: Sheet = { ...OVAL, stages: OVAL.stages.slice(0, 1), districts: undefined };
const club = planOf(CLUB);

describe('Six trains on an oval with 3 A and 2 A', () => {
  test('take two gaps, one at each place where the two halves meet, both rails cut', () => {
    expect(gapsIn(oval)).toEqual(['east-curve-far-side', 'west-curve-station-track']);
    expect(oval.track.gaps.map(({ railsToCut }) => railsToCut)).toEqual([2, 2]);
    expect(oval.parts.find(({ id }) => id === 'insulated-joiner')?.count).toBe(4);
  });

  test('have enough, and about as many consumers in each half', () => {
    // common practice, no source: about equal numbers in each part is a good division
    expect(oval.judged.verdict).toBe('enough');
    expect(oval.judged.remedy).toBe('nothing');
    expect(oval.track.districts.map(({ share }) => share)).toEqual([0.5, 0.5]);
  });

  test('and the larger supply stays on the command station', () => {
    expect(oval.judged.units.map(({ supply: { id } }) => id)).toEqual(['large', 'small']);
    expect(oval.judged.units.every(({ moved }) => !moved)).toBe(true);
  });

  test('five consumers to one is no good division', () => {
    // common practice, no source
    const traffic = [5, 5, 1, 1];
    const heavy = { ...OVAL, trains: [{ kind: 'older' as const, count: 6 }] };
    const lopsided = { ...heavy, sections: heavy.sections.map((one, at) => ({ ...one, traffic: traffic[at] ?? 0 })) };
    expect(planOf(lopsided).judged.verdict).toBe('short');
    expect(planOf(heavy).judged.findings.every(({ often }) => often < 2.5)).toBe(true);
  });
});

describe('The supplies', () => {
  test('are put the other way round where only that is enough', () => {
    const swapped = {
      ...OVAL,
      trains: [{ kind: 'older' as const, count: 5 }],
      stages: [stage('station', 2.8, { supply: 'small' }), stage('booster', 1.8, { supply: 'large' })],
    };
    expect(planOf(swapped).judged.units.map(({ supply: { id }, moved }) => [id, moved])).toEqual([
      ['large', true],
      ['small', true],
    ]);
  });

  test('one that its label forbids comes before everything else', () => {
    const wrong = { ...OVAL, supplies: OVAL.supplies.map((one) => ({ ...one, volts: 24 })) };
    const plan = planOf(wrong);
    expect(plan.judged.remedy).toBe('not-permitted');
    expect(stepsIn(plan)).not.toContain('each-alone');
    expect(plan.power).toBe('remedy-first');
  });

  test('two units on one supply are not planned: each has its own', () => {
    expect(planOf({ ...OVAL, supplies: OVAL.supplies.slice(0, 1) }).judged.remedy).toBe('own-supplies');
  });

  test('one that gives way before its unit trips comes before trains', () => {
    const weak = { ...OVAL, supplies: OVAL.supplies.map((one) => ({ ...one, amps: 1.2 })) };
    expect(planOf(weak).judged.remedy).toBe('cannot-trip');
  });

  test('one that only perhaps trips its unit keeps the plan from saying that nothing has to be changed', () => {
    // 1.7 A behind a unit that trips at 1.8 A: it may give so much for a moment, and nobody has told.
    const small = planOf({ ...OVAL, supplies: [supply('large', 3), supply('small', 1.7)] });
    expect(small.judged.units[1]?.trip.kind).toBe('perhaps');
    expect(small.but).toBe('trip-perhaps');
    expect(oval.but).toBeUndefined();
    expect(planOf({ ...OVAL, stages: [...OVAL.stages, stage('spare', 2)] }).but).toBe('track-named');
  });

  test('rails set 2 V apart are set equal first', () => {
    const [station, booster] = OVAL.stages;
    const apart = { ...OVAL, stages: [station, { ...booster, railVolts: 17 }] };
    expect(planOf(sheetShape.parse(apart)).judged.remedy).toBe('set-equal');
  });
});

describe('Until both labels of every supply and unit are read', () => {
  /** Every field that is printed, left out once. */
  const FIELDS = [
    ...(['limitAmps', 'inputKind', 'inputVolts', 'plug', 'rails', 'railVolts'] as const).map(
      (f) => ['stages', f] as const,
    ),
    ...(['kind', 'volts', 'amps', 'plug'] as const).map((f) => ['supplies', f] as const),
  ];
  const without = (list: 'stages' | 'supplies', field: string, at: number): Sheet => {
    const all = OVAL[list].map((one, place) =>
      place === at ? Object.fromEntries(Object.entries(one).filter(([name]) => name !== field)) : one,
    );
    return sheetShape.parse({ ...OVAL, [list]: all });
  };

  test.each(FIELDS.flatMap(([list, field]) => [0, 1].map((at) => [list, field, at] as const)))(
    'no supply, unit or fuse is on the list of parts, and nothing is called good: %s without %s (%i)',
    (list, field, at) => {
      const plan = planOf(without(list, field, at));
      expect(plan.unread).toHaveLength(1);
      expect(plan.judged.verdict).toBe('unknown');
      expect(plan.judged.remedy).toBe('read-labels');
      expect(plan.power).toBe('unread');
      expect(partIds(plan).filter((id) => POWER_PARTS.includes(id))).toEqual([]);
      expect(stepsIn(plan)[0]).toBe('read-labels');
      expect(stepsIn(plan)).not.toContain('each-alone');
      expect(stepsIn(plan)).not.toContain('main-switch');
      expect(stepsIn(plan)).not.toContain('prove-dead');
    },
  );

  test('alternating current has no poles to read', () => {
    const winding: Sheet = {
      ...OVAL,
      stages: OVAL.stages.map(({ plug: _, ...one }) => ({ ...one, inputKind: 'ac' })),
      supplies: OVAL.supplies.map(({ plug: _, ...one }) => ({ ...one, kind: 'ac', volts: 16 })),
    };
    expect(planOf(winding).unread).toEqual([]);
  });

  test('once they are, each unit has its supply, its fuse and its wire on the list', () => {
    const power = oval.parts.filter(({ id }) => POWER_PARTS.includes(id));
    expect(power.map(({ id, of }) => `${id} ${of ?? ''}`.trim())).toEqual([
      ...['unit A', 'supply A', 'fuse A', 'lead-wire A'],
      ...['booster B', 'supply B', 'fuse B', 'lead-wire B', 'control-cable'],
    ]);
  });
});

describe('Wires that the sheet tells of', () => {
  const laid = { busSquareMillimetres: 2.5, feederSquareMillimetres: 0.5, metresBetweenFeeders: 2, feederMetres: 0.3 };

  test('stay where they are good, and only feeders at gaps are laid', () => {
    const plan = planOf({ ...OVAL, wiring: laid });
    expect(plan.wires.map(({ asItIs }) => asItIs)).toEqual([true, true]);
    expect(plan.wires.map(({ bus, newFeeders }) => [((bus?.area ?? 0) * 1e6).toFixed(1), newFeeders])).toEqual([
      ['2.5', 2],
      ['2.5', 2],
    ]);
    expect(partIds(plan)).not.toContain('bus-wire');
  });

  test('too thin, or told in part only, are planned anew', () => {
    const { metresBetweenFeeders: _, ...part } = laid;
    for (const wiring of [{ ...laid, busSquareMillimetres: 0.05 }, part]) {
      const plan = planOf({ ...CLUB, wiring });
      expect(plan.wires.map(({ asItIs }) => asItIs)).not.toContain(true);
      expect(partIds(plan)).toContain('bus-wire');
    }
  });
});

test('What a unit takes at its input stands on the list as from least to most', () => {
  const [station, booster] = OVAL.stages;
  const told = planOf(sheetShape.parse({ ...OVAL, stages: [{ ...station, leastInputVolts: 14 }, booster] }));
  expect(told.parts.find(({ id }) => id === 'unit')).toMatchObject({ leastVolts: 14, volts: 19 });
  expect(told.parts.find(({ id }) => id === 'booster')?.leastVolts).toBeUndefined();
});

describe('Where both rails are gapped', () => {
  test('where two districts meet, at both ends of a reversing loop, and round the programming track', () => {
    expect(club.track.gaps.map(({ joint: { id }, why }) => [id, why])).toEqual([
      ['main-1-main-2', 'district'],
      ['other-way', 'district'],
      ['main-1-throat', 'district'],
      ['main-2-loop', 'reversing'],
      ['loop-end', 'reversing'],
      ['yard-2-bench', 'programming'],
    ]);
  });

  test('what is cut already is not cut again, and where nobody knows both rails are reckoned with', () => {
    expect(club.track.gaps.map(({ railsToCut }) => railsToCut)).toEqual([2, 1, 2, 2, 0, 2]);
    expect(club.parts.find(({ id }) => id === 'insulated-joiner')?.count).toBe(9);
  });

  test('two gaps between the same two sections are told apart as ends', () => {
    expect(club.track.gaps.map(({ end }) => end?.number)).toEqual([1, 2, undefined, 1, 2, undefined]);
    expect(club.track.gaps.map(({ end }) => end?.of)).toEqual([2, 2, undefined, 2, 2, undefined]);
  });

  test('a rail that cannot be cut there is named, and nothing is planned', () => {
    const fixed = { ...OVAL, joints: OVAL.joints.map((one) => ({ ...one, gap: 'impossible' as const })) };
    const plan = planOf(fixed);
    expect(plan.stops).toContainEqual({
      kind: 'cannot-gap',
      joint: 'east-curve-far-side',
      sections: ['east-curve', 'far-side'],
    });
    expect(plan.steps).toEqual([]);
    expect(partIds(plan)).toEqual([]);
  });

  test('a bridge is gapped all round, for it turns its rails', () => {
    const turntable: Sheet = {
      ...OVAL,
      sections: [...OVAL.sections, section('bridge', 0.3, 0, { tags: ['turntable'] })],
      joints: [...OVAL.joints, joint('far-side', 'bridge')],
      districts: OVAL.districts?.map((one, at) => (at === 1 ? { ...one, sections: [...one.sections, 'bridge'] } : one)),
    };
    const plan = planOf(turntable);
    expect(plan.track.gaps.find(({ why }) => why === 'turntable')?.joint.id).toBe('far-side-bridge');
    expect(stepsIn(plan)).toContain('turntable-device');
    expect(plan.parts.find(({ id }) => id === 'reverser')?.count).toBe(1);
  });
});

describe('A sheet that is no layout yet is told what it lacks', () => {
  test.each([
    ['no track', { sections: [], joints: [], districts: [] }, 'no-sections'],
    ['no unit', { stages: [], districts: [] }, 'no-stages'],
    [
      'a district of a unit that is not there',
      { districts: [{ stage: 'ghost', sections: ['far-side'] }] },
      'stage-missing',
    ],
    ['a section in no district', { districts: OVAL.districts?.slice(0, 1) }, 'left-out'],
    [
      'a section in two districts',
      { districts: OVAL.districts?.map((one) => ({ ...one, sections: [...one.sections, 'far-side'] })) },
      'in-two',
    ],
    [
      'one unit for two districts',
      { districts: OVAL.districts?.map((one) => ({ ...one, stage: 'station' })) },
      'stage-twice',
    ],
    [
      'a district of sections that are not there',
      { districts: [...(OVAL.districts ?? []), { stage: 'booster', sections: ['moon'] }] },
      'not-there',
    ],
  ])('%s', (_, more, kind) => {
    const plan = planOf({ ...OVAL, ...more });
    expect(plan.stops.map((stop) => stop.kind)).toContain(kind);
    expect(plan.steps).toEqual([]);
    expect(plan.judged.verdict).toBe('unknown');
  });

  test('track in two pieces is planned, and the piece is named: it wants feeders of its own', () => {
    const apart = planOf({ ...ONE_UNIT, sections: [...OVAL.sections, section('island', 2, 1)] });
    expect(apart.stops).toEqual([]);
    expect(apart.track.problems).toEqual([{ kind: 'in-pieces', district: 'A', sections: ['island'] }]);
  });

  test('no train is unknown, not ample', () => {
    expect(planOf({ ...OVAL, trains: [] }).judged).toMatchObject({ verdict: 'unknown', remedy: 'no-trains' });
  });

  test.each([[undefined], [[]]])(
    'two units without a division (%j) are no plan: both would stand on one uncut track',
    (districts) => {
      const plan = planOf({ ...OVAL, districts });
      expect(plan.stops).toEqual([{ kind: 'not-divided', stages: ['station', 'booster'] }]);
      expect(plan.judged.verdict).toBe('unknown');
      expect([plan.steps, plan.tests, plan.parts]).toEqual([[], [], []]);
      expect(plan.power).toBe('remedy-first');
    },
  );

  test('a unit that no district has is named, and the others are planned', () => {
    const spare = planOf({ ...OVAL, stages: [...OVAL.stages, stage('spare', 2)] });
    expect(spare.track.problems).toEqual([{ kind: 'unused', stages: ['spare'] }]);
    expect(spare.stops).toEqual([]);
    expect(oval.track.problems).toEqual([]);
  });

  test('without a division everything hangs on the only unit, and nothing is cut', () => {
    const whole = planOf(ONE_UNIT);
    expect(whole.stops).toEqual([]);
    expect(whole.track.districts).toHaveLength(1);
    expect(gapsIn(whole)).toEqual([]);
    expect(stepsIn(whole)).not.toContain('prove-phase');
  });
});

// common practice, no source: what comes before what, whatever else a plan holds
const BEFORE: readonly (readonly [StepId, StepId, string])[] = [
  ['read-labels', 'power-off', 'labels are read before anything is touched'],
  ['power-off', 'cut-gaps', 'nothing is cut with the power on'],
  ['photograph-and-label', 'cut-gaps', 'wires are labelled while they still say where they belong'],
  ['name-the-rails', 'feed-gaps', 'a feeder goes to a rail that has a name'],
  ['list-paths', 'cut-gaps', 'every path is listed before the first is cut'],
  ['cut-gaps', 'feed-gaps', 'feeders stand on both sides of a gap that is there'],
  ['feed-gaps', 'prove-dead', 'isolation is proven with every feeder in place'],
  ['prove-dead', 'feed-without-capacitor', 'a part is proven dead before it is fed'],
  ['feed-without-capacitor', 'place-supplies', 'the unit is joined to its rails before its supply is at hand'],
  ['place-supplies', 'control-cable', 'supplies stand at their units, unplugged, before the control cable goes in'],
  ['place-supplies', 'main-switch', 'labels are compared once more before a supply goes into the strip'],
  ['main-switch', 'each-alone', 'one switch makes everything dead before anything is alive'],
  ['set-units', 'each-alone', 'trip current and volts are set before power comes on'],
  ['control-cable', 'each-alone', 'no unit is switched on without its control cable'],
  ['each-alone', 'prove-phase', 'each unit alone before both'],
  ['prove-phase', 'prove-volts', 'turned rails show before volts are compared'],
  ['prove-phase', 'slow-crossing', 'no wheel crosses before the phase is proven'],
  ['prove-volts', 'load-test', 'the harmless readings first'],
  ['load-test', 'coin', 'the coin only after the harmless test'],
  ['coin', 'slow-crossing', 'a short is seen to trip before a train may make one'],
  ['slow-crossing', 'run-traffic', 'one train slowly before many'],
  ['run-traffic', 'write-down', 'what is written down has been tried'],
];

const TESTS_BEFORE = [
  ['jumper-test', 'each-stage-alone'],
  ['each-stage-alone', 'two-lamps'],
  ['two-lamps', 'meter-two-stages'],
  ['two-lamps', 'crossing'],
  ['load-test', 'coin-near'],
  ['coin-near', 'coin-far'],
  ['coin-far', 'crossing'],
  ['crossing', 'traffic'],
] as const;

const inOrder = (all: readonly string[], first: string, then: string): boolean =>
  !(all.includes(first) && all.includes(then)) || all.lastIndexOf(first) < all.indexOf(then);

const mark = (of: string, count: number) => fc.integer({ min: 0, max: count - 1 }).map((at) => `${of}-${at}`);

/** Layouts of all kinds, told to their end or not: up to eight stretches, four units, five supplies. */
const GAPS = ['possible', 'required', 'impossible'] as const;
const anySheet = fc
  .record({
    sections: fc.integer({ min: 0, max: 8 }),
    stages: fc.integer({ min: 0, max: 4 }),
    supplies: fc.integer({ min: 0, max: 5 }),
    whole: fc.boolean(),
  })
  .chain((count) => {
    /** What may be left out, in a sheet that is not told to its end. */
    const part = <Value>(value: fc.Arbitrary<Value>) => (count.whole ? value : fc.option(value, { nil: undefined }));
    return fc.record({
      scale: fc.constantFrom('n', 'h0', '0'),
      trains: fc.array(fc.record({ kind: fc.constantFrom('modern', 'older'), count: fc.integer({ min: 0, max: 4 }) }), {
        maxLength: 2,
      }),
      accessories: part(fc.integer({ min: 0, max: 20 })),
      accessoryBus: part(fc.constantFrom('own', 'track')),
      sections: fc.tuple(
        ...Array.from({ length: count.sections }, (_, at) =>
          fc.record({
            id: fc.constant(`s-${at}`),
            metres: fc.integer({ min: 1, max: 30 }),
            traffic: fc.integer({ min: 0, max: 5 }),
            tags: part(
              fc.array(fc.constantFrom('station', 'reversing', 'turntable', 'programming', 'turnout'), {
                maxLength: 1,
              }),
            ),
          }),
        ),
      ),
      joints: fc.uniqueArray(
        fc.record({
          from: mark('s', Math.max(1, count.sections)),
          to: mark('s', Math.max(1, count.sections)),
          gap: fc.constantFrom(...(count.whole ? GAPS.slice(0, 2) : GAPS)),
          cut: fc.constantFrom('none', 'one', 'both', 'unknown'),
        }),
        { maxLength: 10, selector: ({ from, to }) => `${from} ${to}` },
      ),
      stages: fc.tuple(
        ...Array.from({ length: count.stages }, (_, at) =>
          fc.record({
            id: fc.constant(`u-${at}`),
            kind: fc.constant(at === 0 ? 'station' : 'booster'),
            limitAmps: part(fc.constantFrom(2, 3, 5)),
            rails: part(fc.constantFrom(...(count.whole ? ['set'] : ['follows', 'set']))),
            railVolts: part(fc.constantFrom(...(count.whole ? [14] : [14, 15]))),
            inputKind: part(fc.constantFrom('dc', 'either')),
            inputVolts: part(fc.constantFrom(...(count.whole ? [20] : [16, 20]))),
            plug: part(fc.constantFrom(...(count.whole ? ['centre-plus'] : ['centre-plus', 'centre-minus']))),
            breakers: part(fc.integer({ min: 0, max: 2 })),
            supply: part(mark('p', Math.max(1, count.supplies))),
          }),
        ),
      ),
      supplies: fc.tuple(
        ...Array.from({ length: count.whole ? count.stages + 1 : count.supplies }, (_, at) =>
          fc.record({
            id: fc.constant(`p-${at}`),
            kind: part(fc.constantFrom(...(count.whole ? ['dc'] : ['dc', 'ac']))),
            volts: part(fc.constantFrom(16, 18)),
            amps: part(fc.constantFrom(2, 4, 6)),
            plug: part(fc.constantFrom('centre-plus', 'terminals')),
            earthed: part(fc.boolean()),
          }),
        ),
      ),
      districts: part(
        fc.array(
          fc.record({
            stage: mark('u', Math.max(1, count.stages)),
            sections: fc.uniqueArray(mark('s', Math.max(1, count.sections)), { minLength: 1, maxLength: 4 }),
          }),
          { maxLength: 3 },
        ),
      ),
      whole: fc.constant(count.whole),
      units: fc.array(fc.integer({ min: 0, max: Math.max(0, count.stages - 1) }), { minLength: 8, maxLength: 8 }),
    });
  })
  .map(({ whole, units, ...told }): Sheet => {
    const known = <One extends object>(one: One): object =>
      Object.fromEntries(Object.entries(one).filter(([, value]) => value !== undefined));
    const districts = told.stages
      .map(({ id }, unit) => ({
        stage: id,
        sections: told.sections.flatMap((one, at) => (units[at] === unit ? [one.id] : [])),
      }))
      .filter(({ sections }) => sections.length > 0);
    return sheetShape.parse({
      ...known(told),
      ...(whole ? { districts } : {}),
      form: 'both-rails-layout-sheet',
      version: 1,
      name: '',
      sections: told.sections.map(known),
      joints: told.joints.map((one, at) => ({ ...one, id: `j-${at}`, awkward: 0 })),
      stages: told.stages.map(known),
      supplies: told.supplies.map(known),
    });
  });

test('Among them are sheets that are planned to their end, and such as are not', () => {
  const plans = fc.sample(anySheet, { numRuns: 150, seed: 7 }).map((sheet) => planOf(sheet));
  expect(plans.filter((plan) => stepsIn(plan).includes('run-traffic')).length).toBeGreaterThan(10);
  expect(plans.filter((plan) => plan.unread.length > 0).length).toBeGreaterThan(20);
});

describe('Whatever the sheet,', () => {
  test('its steps and its tests are in the order of the trade', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const plan = planOf(sheet);
        const [steps, tests] = [stepsIn(plan), plan.tests.map(({ kind }) => kind)];
        for (const [first, then, because] of BEFORE) expect(inOrder(steps, first, then), because).toBe(true);
        for (const [first, then] of TESTS_BEFORE) expect(inOrder(tests, first, then), `${first}, ${then}`).toBe(true);
        expect(steps.length === 0 || steps[0] === 'read-labels').toBe(true);
        expect(new Set(plan.tests.map(({ id }) => id)).size).toBe(plan.tests.length);
      }),
      { numRuns: 80 },
    );
  });

  test('nothing unread is called good, and none of it is bought or switched on', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const plan = planOf(sheet);
        const bought = partIds(plan).filter((id) => POWER_PARTS.includes(id));
        if (plan.unread.length > 0 || plan.stops.length > 0) expect(plan.judged.verdict).toBe('unknown');
        if (plan.judged.verdict !== 'unknown') return;
        expect(bought).toEqual([]);
        expect(stepsIn(plan)).not.toContain('each-alone');
      }),
      { numRuns: 80 },
    );
  });

  test('the same sheet with other names has the same plan', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const renamed: Sheet = { ...sheet, sections: sheet.sections.map((one) => ({ ...one, name: `x ${one.id}` })) };
        const [one, other] = [planOf(sheet), planOf(renamed)];
        expect(other.judged).toEqual(one.judged);
        expect(stepsIn(other)).toEqual(stepsIn(one));
        expect(other.parts).toEqual(one.parts);
      }),
      { numRuns: 30 },
    );
  });
});

test('A club with everything takes every step but those that its layout does not ask for', () => {
  const missing = Object.keys(STEP_KINDS).filter((id) => !stepsIn(club).some((step) => step === id));
  expect(missing).toEqual(['twist-bus', 'turntable-device']);
});

describe('The test sheet', () => {
  test('a row that is a check of the walk asks what that check can be answered with', () => {
    const checks = new Map(SIGN_MODEL.checks.map(({ id, options }) => [id, options]));
    for (const { kind, options, expected } of club.tests) {
      const known = checks.get(kind);
      expect(options).toContain(expected);
      if (known !== undefined)
        expect(
          options.filter((option) => !known.includes(option)),
          kind,
        ).toEqual([]);
    }
    expect(club.tests.filter(({ kind }) => checks.has(kind)).length).toBeGreaterThan(10);
  });

  test('whatever is seen instead leads to a complaint of the walk', () => {
    const complaints: readonly string[] = COMPLAINT_IDS;
    for (const { id, leads, options, expected } of [...oval.tests, ...club.tests]) {
      expect(Object.keys(leads).sort(), id).toEqual(options.filter((option) => option !== expected).sort());
      expect(
        Object.values(leads).filter((one) => !complaints.includes(one)),
        id,
      ).toEqual([]);
    }
  });

  test('each rail of each gap between two units is proven, and no loop end is taken for one', () => {
    expect(club.tests.filter(({ kind }) => kind === 'jumper-test').map(({ where }) => where)).toEqual([
      { kind: 'gap', gap: 1 },
      { kind: 'gap', gap: 2 },
      { kind: 'gap', gap: 3 },
    ]);
  });

  describe('where a bridge has a unit of its own, and a loop another', () => {
    const shed: Sheet = {
      ...OVAL,
      sections: [
        ...OVAL.sections,
        section('bridge', 0.3, 0.1, { tags: ['turntable'] }),
        section('loop', 3, 1, { tags: ['reversing'] }),
      ],
      joints: [
        ...OVAL.joints,
        joint('far-side', 'bridge'),
        joint('west-curve', 'loop'),
        joint('loop', 'west-curve'),
        joint('far-side', 'station-track', { id: 'inside' }),
      ],
      stages: [...OVAL.stages, stage('shed', 2, { supply: 'third' }), stage('end', 2, { supply: 'fourth' })],
      supplies: [...OVAL.supplies, supply('third', 3), supply('fourth', 3)],
      districts: [
        ...(OVAL.districts ?? []),
        { stage: 'shed', sections: ['bridge'] },
        { stage: 'end', sections: ['loop'] },
      ],
    };
    const plan = planOf(shed);
    const parted = plan.track.gaps.filter(({ districts: [near, far] }) => near !== far).map(({ number }) => number);

    test.each(['jumper-test', 'two-lamps', 'meter-two-stages', 'crossing'])('each boundary has its %s', (kind) => {
      expect(plan.stops).toEqual([]);
      expect(parted).toHaveLength(6);
      expect(
        plan.tests.flatMap((one) => (one.kind === kind && one.where.kind === 'gap' ? [one.where.gap] : [])),
      ).toEqual(parted);
    });

    test('lamps are looked at both ways round where rails change sides, and there only', () => {
      const turning = plan.track.gaps
        .filter(({ why }) => why !== 'district')
        .map(({ number }) => `two-lamps-${number}`);
      expect(turning).toHaveLength(3);
      expect(plan.tests.filter((one) => one.turning).map(({ id }) => id)).toEqual(turning);
    });
  });

  test('a running train is a first look, and the jumper test the proof', () => {
    // common practice, no source: a train stops at a finished gap while the far side is unfed
    const [look, proof] = ['first-look', 'jumper-test'].map((kind) => oval.tests.find((one) => one.kind === kind));
    expect([look?.must, look?.expected]).toEqual([false, 'stops']);
    expect(proof?.must).toBe(true);
  });

  test('rails set to 15 V read 15 to 16.7 on either side, no more than half a volt apart', () => {
    const volts = oval.tests.find(({ kind }) => kind === 'meter-two-stages')?.readings ?? [];
    expect(volts.map(({ what, from, to }) => [what, from, Number(to.toFixed(1))])).toEqual([
      ['rails', 15, 16.7],
      ['other-rails', 15, 16.7],
      ['step', 0, 0.5],
    ]);
  });

  test('with unread labels it expects no figures', () => {
    const unread = planOf({ ...OVAL, supplies: [supply('large', 3), { id: 'small' }] });
    expect(unread.tests.flatMap(({ readings }) => readings)).toEqual([]);
    expect(unread.tests.length).toBeGreaterThan(5);
  });
});

test('A breaker trips at no more than 0.7 of its unit, and within 5 to 30 ms', () => {
  // common practice, no source
  const [first] = club.subDistricts;
  expect(first?.tripAtMost).toBeCloseTo(2.8, 9);
  expect(first?.seconds).toEqual({ from: 0.005, to: 0.03 });
  expect(club.parts.find(({ id }) => id === 'breaker')).toMatchObject({ count: 2, of: 'A' });
});

test('What a plan tells to do first has a page, and so has every job', () => {
  const fixes = join(import.meta.dirname, '../../src/content/en/fixes');
  const pages = Object.values(FIX_OF_REMEDY).flatMap((id) => id ?? []);
  const jobs = [...oval.steps, ...club.steps].flatMap(({ job }) => job ?? []);
  expect([...pages, ...jobs].filter((id) => !existsSync(join(fixes, `${id}.mdx`)))).toEqual([]);
  expect(jobs.filter((job) => !JOBS.includes(job))).toEqual([]);
});
