import { describe, expect, test } from 'vitest';
import { apartIn, dividedSheet, missingIn, type Way } from '../../src/wizards/division/index.ts';
import { problemOf } from '../../src/wizards/division/problem.ts';
import { planOf } from '../../src/wizards/plan/index.ts';
import {
  DEMO_CLUB,
  DEMO_OVAL,
  fleetOf,
  islandsIn,
  type Joint,
  readSheet,
  SHAPE_IDS,
  SHAPES,
  type Sheet,
  writeSheet,
} from '../../src/wizards/sheet/index.ts';
import { dress } from '../../src/wizards/sheet-drawing/index.ts';

function waysOf(sheet: Sheet): readonly Way[] {
  const { division } = dividedSheet(sheet);
  if (division.kind !== 'choice') throw new Error(`${division.kind} in place of ways`);
  return division.ways;
}

const withJoint = (sheet: Sheet, id: string, more: Partial<Joint>): Sheet => ({
  ...sheet,
  joints: sheet.joints.map((joint) => (joint.id === id ? { ...joint, ...more } : joint)),
});

/** Whether the sections of a district hang together by joints between them. */
function hangsTogether(sections: readonly string[], joints: readonly Joint[]): boolean {
  const reached = new Set(sections.slice(0, 1));
  for (let grown = true; grown; ) {
    const next = joints.flatMap(({ from, to }) => [
      ...(reached.has(from) ? [to] : []),
      ...(reached.has(to) ? [from] : []),
    ]);
    const fresh = next.filter((id) => sections.includes(id) && !reached.has(id));
    for (const id of fresh) reached.add(id);
    grown = fresh.length > 0;
  }
  return reached.size === sections.length;
}

const shaped = (id: (typeof SHAPE_IDS)[number]): Sheet => ({
  ...SHAPES[id](6),
  stages: DEMO_OVAL.stages,
  supplies: DEMO_OVAL.supplies,
});

describe('a sheet is divided', () => {
  test.each(SHAPE_IDS)(
    '%s with two stages: every section once, each district in one piece, every stage carries it',
    (id) => {
      const sheet = shaped(id);
      for (const { districts, asked, gaps } of waysOf(sheet)) {
        expect(districts.flatMap(({ sections }) => sections).toSorted()).toEqual(
          sheet.sections.map((one) => one.id).toSorted(),
        );
        for (const { sections } of districts) expect(hangsTogether(sections, sheet.joints)).toBe(true);
        for (const { verdict, often, usable } of asked) {
          expect(['ample', 'enough', 'tight']).toContain(verdict);
          expect(often).toBeLessThan(usable);
        }
        const of = new Map(districts.flatMap(({ stage, sections }) => sections.map((one) => [one, stage] as const)));
        for (const joint of sheet.joints) expect(gaps.includes(joint.id)).toBe(of.get(joint.from) !== of.get(joint.to));
      }
    },
  );

  test('an oval with six trains needs two gaps', () => {
    const [first] = waysOf(DEMO_OVAL);
    expect(first?.gaps).toHaveLength(2);
    expect(first?.toCut).toHaveLength(2);
    expect(first?.proof).toEqual({ kind: 'proven' });
  });

  test('a way that is taken can be written down with the sheet and read again', () => {
    for (const way of waysOf(DEMO_OVAL)) {
      const districts = way.districts.map(({ stage, sections }) => ({ stage, sections: [...sections] }));
      const read = readSheet(writeSheet({ ...DEMO_OVAL, districts }));
      expect('sheet' in read && read.sheet.districts).toEqual(districts);
    }
  });

  test('no gap is made where none is possible, and the division that the sheet holds is judged beside the others', () => {
    const [first] = waysOf(DEMO_OVAL);
    const forbidden = first?.gaps[0] ?? '';
    const sheet = withJoint(DEMO_OVAL, forbidden, { gap: 'impossible' });
    for (const { gaps } of waysOf(sheet)) expect(gaps).not.toContain(forbidden);
    const districts = first?.districts.map(({ stage, sections }) => ({ stage, sections: [...sections] })) ?? [];
    const { own } = dividedSheet({ ...DEMO_OVAL, districts });
    expect(own?.asked).toEqual(first?.asked);
    expect(own?.gaps).toEqual(first?.gaps);
    expect(own?.proof).toBeUndefined();
  });

  test('a division in the sheet that parts districts where no gap can be says where; those that are found never do', () => {
    const [first] = waysOf(DEMO_OVAL);
    const forbidden = first?.gaps[0] ?? '';
    const districts = first?.districts.map(({ stage, sections }) => ({ stage, sections: [...sections] })) ?? [];
    const { own, division } = dividedSheet({ ...withJoint(DEMO_OVAL, forbidden, { gap: 'impossible' }), districts });
    expect(own?.forbidden).toEqual([forbidden]);
    expect(dividedSheet({ ...DEMO_OVAL, districts }).own?.forbidden).toEqual([]);
    for (const way of division.kind === 'choice' ? division.ways : []) expect(way.forbidden).toEqual([]);
  });

  test('gaps of loops and of a turntable count beside those that part districts: together as many as the drawing shows', () => {
    for (const way of waysOf(DEMO_CLUB)) {
      expect(way.anyway.filter((id) => way.gaps.includes(id))).toEqual([]);
      const drawn = [...dress(DEMO_CLUB, way.districts).joints.values()].filter(({ state }) =>
        ['gap', 'to-cut'].includes(state),
      );
      expect([...way.gaps, ...way.anyway].toSorted()).toEqual(drawn.map(({ id }) => id).toSorted());
      expect(way.anyway.length).toBeGreaterThan(0);
    }
  });

  test('a gap that somebody demands joins nothing any more, and one that is there costs nothing', () => {
    const [one] = DEMO_OVAL.joints;
    const id = one?.id ?? '';
    const joint = (more: Partial<Joint>) => {
      const sheet = withJoint(DEMO_OVAL, id, more);
      return problemOf(sheet, fleetOf(sheet)).problem.joints[0];
    };
    expect(joint({ gap: 'required' })?.gap).toBe('cut');
    expect(joint({ cut: 'both' })).toMatchObject({ gap: 'free', cost: 0 });
    expect(joint({ awkward: 3 })?.cost).toBeGreaterThan(joint({ awkward: 0 })?.cost ?? 9);
    expect(joint({ cut: 'one', awkward: 0 })?.cost).toBeLessThan(joint({ awkward: 0 })?.cost ?? 0);
  });

  test('a reversing section may belong to the district beside it, with its gaps at both ends', () => {
    const sheet = shaped('out-and-back');
    const { problem, joints } = problemOf(sheet, fleetOf(sheet));
    const atLoop = joints.flatMap(({ to }, at) => (to === 'loop' ? [problem.joints[at]] : []));
    expect(atLoop).toHaveLength(2);
    for (const one of atLoop) expect(one).toMatchObject({ gap: 'free', cost: 0 });
  });

  test('a reversing section of several stretches is never cut inside', () => {
    const sheet = shaped('oval');
    const loop = sheet.joints[0];
    const sections = sheet.sections.map((section) =>
      section.id === loop?.from || section.id === loop?.to ? { ...section, tags: ['reversing' as const] } : section,
    );
    const { problem } = problemOf({ ...sheet, sections }, fleetOf(sheet));
    expect(problem.joints[0]?.gap).toBe('kept');
  });

  test('a label that nobody has read makes no district good', () => {
    const supplies = DEMO_OVAL.supplies.map(({ amps: _, ...supply }) => supply);
    for (const { asked } of waysOf({ ...DEMO_OVAL, supplies })) {
      expect(asked.map(({ verdict }) => verdict)).toEqual(['unknown', 'unknown']);
    }
  });

  test('what draws always counts with the trains of its district', () => {
    const busy = { ...DEMO_OVAL, sections: DEMO_OVAL.sections.map((section) => ({ ...section, fixedAmps: 0.05 })) };
    const drawn = (sheet: Sheet): number => waysOf(sheet)[0]?.asked.reduce((sum, { often }) => sum + often, 0) ?? 0;
    expect(drawn(busy)).toBeGreaterThan(drawn(DEMO_OVAL) + 0.4);
  });

  test('of stages that are alike the engine sees that they are', () => {
    const [station] = DEMO_OVAL.stages;
    const stages = station === undefined ? [] : [station, { ...station, id: 'second', kind: 'booster' as const }];
    const { problem } = problemOf({ ...DEMO_OVAL, stages }, fleetOf(DEMO_OVAL));
    expect(problem.stages[0]?.bears).toBe(problem.stages[1]?.bears);
  });
});

describe('sheet and plan say the same amperes of a district', () => {
  const busy = (sheet: Sheet): Sheet => ({
    ...sheet,
    sections: sheet.sections.map((section) => ({ ...section, fixedAmps: 0.03 })),
  });
  const withConverter = (sheet: Sheet): Sheet => ({
    ...sheet,
    stages: sheet.stages.map((stage) => ({ ...stage, rails: 'converter' as const, railVolts: 14 })),
  });
  const taken = (sheet: Sheet): Sheet => {
    const districts = waysOf(sheet)
      .at(-1)
      ?.districts.map(({ stage, sections }) => ({ stage, sections: [...sections] }));
    return { ...sheet, ...(districts === undefined ? {} : { districts }) };
  };

  test.each([
    ['the club', DEMO_CLUB],
    ['an oval with coach lights', taken(busy(DEMO_OVAL))],
    ['the same behind step-down converters', taken(withConverter(busy(DEMO_OVAL)))],
  ])('%s', (_, sheet) => {
    const { asked = [] } = dividedSheet(sheet).own ?? {};
    const { findings } = planOf(sheet).judged;
    expect(findings).toHaveLength(asked.length);
    for (const [at, { often, usable }] of asked.entries()) {
      expect(often).toBeCloseTo(findings[at]?.often ?? 0, 9);
      expect(usable).toBeCloseTo(findings[at]?.capacity.usable ?? 0, 9);
    }
  });
});

describe('what cannot be divided', () => {
  test('says what is missing', () => {
    expect(missingIn({ ...DEMO_OVAL, sections: [] })).toBe('sections');
    expect(missingIn({ ...DEMO_OVAL, stages: [] })).toBe('stages');
    expect(missingIn({ ...DEMO_OVAL, trains: [] })).toBe('trains');
    const quiet = DEMO_OVAL.sections.map((section) => ({ ...section, traffic: 0 }));
    expect(missingIn({ ...DEMO_OVAL, sections: quiet })).toBe('traffic');
    expect(dividedSheet({ ...DEMO_OVAL, sections: [], joints: [] }).division).toEqual({
      kind: 'missing',
      what: 'sections',
    });
  });

  test('more stretches that nothing joins than stages: one section of each is named', () => {
    const { division } = dividedSheet({ ...DEMO_OVAL, joints: [] });
    expect(division.kind === 'impossible' && division.because).toContainEqual(
      expect.objectContaining({ kind: 'islands', sections: DEMO_OVAL.sections.map(({ id }) => id) }),
    );
  });

  test('track that no joint joins to the rest is named, and none where all hangs together', () => {
    for (const id of SHAPE_IDS) expect(apartIn(SHAPES[id](6))).toEqual([]);
    const away = (one: string) => DEMO_OVAL.joints.filter(({ from, to }) => from !== one && to !== one);
    expect(apartIn({ ...DEMO_OVAL, joints: away('main-track') })).toEqual([['main-track']]);
    const inOrder = DEMO_OVAL.sections.map(({ id }) => id).filter((id) => id !== 'main-track');
    expect(islandsIn({ ...DEMO_OVAL, joints: away('main-track') })).toEqual([inOrder, ['main-track']]);
    expect(islandsIn(DEMO_OVAL)).toHaveLength(1);
    const two = { ...DEMO_OVAL, joints: DEMO_OVAL.joints.slice(0, 1) };
    expect(apartIn(two)).toHaveLength(DEMO_OVAL.sections.length - 2);
  });

  test('two stages that feed track which no gap can part: its sections are named', () => {
    const sheet = {
      ...DEMO_OVAL,
      joints: DEMO_OVAL.joints.map((joint) => ({ ...joint, gap: 'impossible' as const })),
      stages: DEMO_OVAL.stages.map((stage, i) => ({ ...stage, feeds: [i === 0 ? 'left-back' : 'main-track'] })),
    };
    const { division } = dividedSheet(sheet);
    expect(division.kind === 'impossible' && division.because).toEqual([
      { kind: 'feeds', sections: ['left-back', 'main-track'] },
    ]);
  });

  test('too many trains: how much is borne is said, and all sections that are too much stand in one reason', () => {
    const { division } = dividedSheet({ ...DEMO_OVAL, trains: [{ kind: 'older', count: 40 }], moving: 40 });
    const because = division.kind === 'impossible' ? division.because : [];
    expect(because.map(({ kind }) => kind)).toEqual(['one-section', 'too-much']);
  });
});

describe('the smallest number that works', () => {
  test('six modern trains on an oval need no division at all', () => {
    expect(dividedSheet(DEMO_OVAL).fewest).toMatchObject({ districts: 1, more: 0 });
  });

  test('where the stages are too few, it says how many like the last one are missing', () => {
    const [station] = DEMO_OVAL.stages;
    const sheet = {
      ...DEMO_OVAL,
      stages: station === undefined ? [] : [station],
      trains: [{ kind: 'modern' as const, count: 20 }],
      moving: 10,
    };
    const { division, fewest } = dividedSheet(sheet);
    expect(division.kind).toBe('impossible');
    expect(fewest).toMatchObject({ districts: 3, more: 2 });
    expect(fewest?.way).toBeUndefined();
  });
});
