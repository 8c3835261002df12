// The track of a plan alone: districts, gaps, loops and what is said of a sheet that is none yet, on layouts small enough to draw.
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/wizards/plan/index.ts';
import { planOf } from '../../src/wizards/plan/index.ts';
import { subDistrictsOf } from '../../src/wizards/plan/sub-districts.ts';
import type { PlanGap, Track } from '../../src/wizards/plan/track.ts';
import { districtOf, fedIn, isBoundary, isTurning, runsOf, sidesOf, trackOf } from '../../src/wizards/plan/track.ts';
import type { Section, Sheet } from '../../src/wizards/sheet/index.ts';
import { joint, OVAL, section, stage, supply } from './sheets.ts';

const ONE_UNIT: Sheet = { ...OVAL, stages: OVAL.stages.slice(0, 1), districts: undefined };
const idsOf = (sections: readonly Section[]): string[] => sections.map(({ id }) => id);
const gapAt = ({ gaps }: Track, id: string): PlanGap => {
  const found = gaps.find(({ joint: one }) => one.id === id);
  if (found === undefined) throw new Error(`no gap at ${id}`);
  return found;
};

describe('Which side of a gap is the old part', () => {
  const districts = (...stages: string[]) => ({
    ...OVAL,
    stages: [...OVAL.stages, stage('second', 2, { supply: 'third' })],
    supplies: [...OVAL.supplies, supply('third', 3)],
    districts: stages.map((one, at) => ({
      stage: one,
      sections: at === 0 ? ['station-track', 'east-curve'] : ['far-side', 'west-curve'],
    })),
  });
  const sides = (...stages: string[]) => {
    const track = trackOf(districts(...stages));
    const found = sidesOf(gapAt(track, 'east-curve-far-side'), track);
    return [found?.old.stage.id, found?.new.stage.id];
  };

  // Common practice, no source: what has run so far is the command station’s part.
  test('is the command station’s, wherever it stands on the sheet', () => {
    expect(sides('station', 'booster')).toEqual(['station', 'booster']);
    expect(sides('booster', 'station')).toEqual(['station', 'booster']);
  });

  test('of two boosters is the one that stands first', () => {
    expect(sides('booster', 'second')).toEqual(['booster', 'second']);
    expect(sides('second', 'booster')).toEqual(['second', 'booster']);
  });

  test('is none where one unit feeds both sides, or programming track lies beyond', () => {
    const loop: Sheet = {
      ...ONE_UNIT,
      sections: [...OVAL.sections, section('loop', 3, 1, { tags: ['reversing'] })],
      joints: [...OVAL.joints, joint('far-side', 'loop'), joint('loop', 'far-side')],
    };
    const track = trackOf(loop);
    const inside = gapAt(track, 'far-side-loop');
    expect([inside.why, inside.districts, isTurning(inside), isBoundary(inside)]).toEqual([
      'reversing',
      ['A', 'A'],
      true,
      false,
    ]);
    expect(sidesOf(inside, track)).toBeUndefined();
    const bench = trackOf({
      ...OVAL,
      sections: [...OVAL.sections, section('bench', 1, 0, { tags: ['programming'] })],
      joints: [...OVAL.joints, joint('far-side', 'bench')],
    });
    const apart = gapAt(bench, 'far-side-bench');
    expect([apart.why, apart.districts, isTurning(apart), isBoundary(apart)]).toEqual([
      'programming',
      ['B', undefined],
      false,
      false,
    ]);
    expect(sidesOf(apart, bench)).toBeUndefined();
    expect(bench.districts.map(({ sections }) => idsOf(sections))).not.toContain(['bench']);
  });

  test('gaps of a loop on one unit alone join no second unit: nothing of two units is on the list of steps', () => {
    const steps = planOf({
      ...ONE_UNIT,
      sections: [...OVAL.sections, section('loop', 3, 1, { tags: ['reversing'] })],
      joints: [...OVAL.joints, joint('far-side', 'loop'), joint('loop', 'far-side', { id: 'back' })],
    }).steps.map(({ id }) => id);
    expect(
      steps.filter((id) => /^(common-wire|control-cable|prove-phase|prove-volts|slow-crossing)$/.test(id)),
    ).toEqual([]);
    expect(steps).toEqual(
      expect.arrayContaining(['list-paths', 'cut-gaps', 'reversing-device', 'prove-dead', 'prove-loops']),
    );
    expect(steps).not.toContain('slow-crossing');
  });
});

describe('Loops and bridges', () => {
  const twoLoops: Sheet = {
    ...ONE_UNIT,
    sections: [
      ...OVAL.sections,
      section('north-1', 2, 1, { tags: ['reversing'] }),
      section('south', 2, 1, { tags: ['reversing'] }),
      section('north-2', 2, 1, { tags: ['reversing'] }),
    ],
    joints: [
      ...OVAL.joints,
      joint('far-side', 'north-1'),
      joint('north-1', 'north-2'),
      joint('north-2', 'far-side'),
      joint('station-track', 'south'),
      joint('south', 'station-track'),
    ],
  };

  test('two of them are two, each of the track that hangs together', () => {
    expect(runsOf(twoLoops, 'reversing').map(idsOf)).toEqual([['north-1', 'north-2'], ['south']]);
    expect(runsOf(twoLoops, 'turntable')).toEqual([]);
  });

  test('each wants a reverser and a train through it, and is gapped at its ends and not inside', () => {
    const plan = planOf(twoLoops);
    expect(plan.parts.find(({ id }) => id === 'reverser')?.count).toBe(2);
    expect(plan.tests.flatMap(({ id }) => (id.startsWith('short-') ? [id] : []))).toEqual([
      'short-locomotive-through-loop-north-1',
      'short-locomotive-through-loop-south',
    ]);
    expect(plan.track.gaps.map(({ joint: { id } }) => id)).toEqual([
      'far-side-north-1',
      'north-2-far-side',
      'station-track-south',
      'south-station-track',
    ]);
  });

  test('a loop that hangs on a district is no piece of track by itself; an island is', () => {
    const track = trackOf({ ...twoLoops, sections: [...twoLoops.sections, section('island', 2, 1)] });
    expect(track.problems).toEqual([{ kind: 'in-pieces', district: 'A', sections: ['island'] }]);
  });

  test('a bridge without a joint is no piece either, nor a district that is all loop', () => {
    expect(
      trackOf({ ...ONE_UNIT, sections: [...OVAL.sections, section('bridge', 1, 0, { tags: ['turntable'] })] }).problems,
    ).toEqual([]);
    const all = { ...ONE_UNIT, sections: [section('loop', 2, 1, { tags: ['reversing'] })], joints: [] };
    expect(trackOf(all).problems).toEqual([]);
  });
});

describe('The traffic of a district', () => {
  test('is that of its sections; where nobody has told any, as much as there is track', () => {
    const shares = (traffic: readonly number[], metres: readonly number[]) =>
      trackOf({
        ...OVAL,
        sections: OVAL.sections.map((one, at) => ({ ...one, traffic: traffic[at] ?? 0, metres: metres[at] ?? 0 })),
      }).districts.map(({ share, metres: long }) => [share, long]);
    expect(shares([3, 0, 1, 0], [1, 1, 1, 1])).toEqual([
      [0.75, 2],
      [0.25, 2],
    ]);
    expect(shares([0, 0, 0, 0], [4, 2, 1, 1])).toEqual([
      [0.75, 6],
      [0.25, 2],
    ]);
  });

  test('what is always on there is added up, and that of other districts is not', () => {
    const told = { ...OVAL, sections: OVAL.sections.map((one, at) => ({ ...one, fixedAmps: (at + 1) / 8 })) };
    expect(trackOf(told).districts.map(({ fixedAmps }) => fixedAmps)).toEqual([3 / 8, 7 / 8]);
    expect(trackOf(OVAL).districts.map(({ fixedAmps }) => fixedAmps)).toEqual([0, 0]);
  });

  test('programming track draws nothing from the unit of its district', () => {
    const bench = section('bench', 5, 9, { tags: ['programming'], fixedAmps: 1 });
    const [, second] = trackOf({
      ...OVAL,
      sections: [...OVAL.sections, bench],
      joints: [...OVAL.joints, joint('far-side', 'bench')],
      districts: OVAL.districts?.map((one, at) => (at === 1 ? { ...one, sections: [...one.sections, 'bench'] } : one)),
    }).districts;
    expect([second?.share, second?.metres, second?.fixedAmps]).toEqual([0.5, 3.5, 0]);
  });
});

describe('What a sheet is told that is no layout yet', () => {
  const problems = (more: Partial<Sheet>) => trackOf({ ...OVAL, ...more }).problems;

  test('all that is wrong, each with the sections it is about, each named once', () => {
    const found = problems({
      districts: [
        { stage: 'ghost', sections: ['station-track', 'moon', 'moon'] },
        { stage: 'booster', sections: ['far-side', 'station-track'] },
        { stage: 'booster', sections: ['west-curve'] },
      ],
    });
    expect(found.filter(({ kind }) => kind !== 'in-pieces' && kind !== 'unused')).toEqual([
      { kind: 'stage-missing', district: 'A', stage: 'ghost' },
      { kind: 'stage-twice', district: 'C', stage: 'booster' },
      { kind: 'not-there', sections: ['moon'] },
      { kind: 'in-two', sections: ['moon', 'station-track'] },
      { kind: 'left-out', sections: ['east-curve'] },
    ]);
  });

  test('a list of districts without any is none: the whole layout is one', () => {
    const letters = (more: Partial<Sheet>) => trackOf({ ...ONE_UNIT, ...more }).districts.map(({ letter }) => letter);
    expect([letters({ districts: [] }), letters({})]).toEqual([['A'], ['A']]);
  });

  test('twelve districts are judged, thirteen are not', () => {
    const many = (count: number): Partial<Sheet> => ({
      sections: Array.from({ length: count }, (_, at) => section(`s-${at}`, 1, 1)),
      joints: [],
      stages: Array.from({ length: count }, (_, at) => stage(`u-${at}`, 2)),
      districts: Array.from({ length: count }, (_, at) => ({ stage: `u-${at}`, sections: [`s-${at}`] })),
    });
    expect(problems(many(12))).toEqual([]);
    expect(problems(many(13))).toEqual([{ kind: 'too-many-districts', most: 12 }]);
    expect(
      trackOf({ ...OVAL, ...many(12) })
        .districts.map(({ letter }) => letter)
        .join(''),
    ).toBe('ABCDEFGHIJKL');
  });

  test('programming track belongs to no district: it is not left out', () => {
    expect(problems({ sections: [...OVAL.sections, section('bench', 1, 0, { tags: ['programming'] })] })).toEqual([]);
    const only = { ...ONE_UNIT, sections: [section('bench', 1, 0, { tags: ['programming'] })], joints: [] };
    expect([trackOf(only).districts, trackOf(only).problems.map(({ kind }) => kind)]).toEqual([[], []]);
  });

  test('where rails cannot be cut stops a plan only if something is still to be cut there', () => {
    const fixed = (cut: 'none' | 'both') => OVAL.joints.map((one) => ({ ...one, gap: 'impossible' as const, cut }));
    expect(problems({ joints: fixed('none') }).map(({ kind }) => kind)).toEqual(['cannot-gap', 'cannot-gap']);
    expect(problems({ joints: fixed('both') })).toEqual([]);
  });
});

describe('What breakers part', () => {
  /** A row of four stretches on one unit, a gap asked for where it says. */
  const row = (gaps: readonly string[], more: Partial<Sheet> = {}): Sheet => ({
    ...ONE_UNIT,
    stages: [stage('station', 4, { tripAmps: 4, breakers: 2 })],
    joints: OVAL.joints.slice(0, 3).map((one) => ({ ...one, gap: gaps.includes(one.id) ? 'required' : 'possible' })),
    ...more,
  });
  const partsOf = (sheet: Sheet) =>
    trackOf(sheet).districts.flatMap(({ parts }) => parts.map((one) => [one.letter, idsOf(one.sections), one.metres]));

  test('are the pieces between gaps, and a letter leads to its district', () => {
    const sheet = row(['east-curve-far-side']);
    expect(partsOf(sheet)).toEqual([
      ['A1', ['station-track', 'east-curve'], 3.5],
      ['A2', ['far-side', 'west-curve'], 3.5],
    ]);
    const track = trackOf(sheet);
    const [district] = track.districts;
    expect(['A', 'A1', 'A2', 'B'].map((letter) => districtOf(letter, track)?.letter)).toEqual([
      'A',
      'A',
      'A',
      undefined,
    ]);
    expect(district === undefined ? [] : fedIn(district).map(({ letter }) => letter)).toEqual(['A1', 'A2']);
    expect(track.gaps.map(({ parts }) => parts)).toEqual([['A1', 'A2']]);
    expect(
      trackOf(row([]))
        .districts.flatMap(fedIn)
        .map(({ letter }) => letter),
    ).toEqual(['A']);
  });

  // Common practice, no source: a ring falls in two pieces only where it is cut at two places.
  test('are parted by no single gap in a ring: its two sides are one piece', () => {
    const ring = (...gaps: string[]) =>
      trackOf(
        row([], {
          joints: OVAL.joints.map((one) => ({ ...one, gap: gaps.includes(one.id) ? 'required' : 'possible' })),
        }),
      ).gaps.map(({ parts }) => parts);
    const [first = '', , third = ''] = OVAL.joints.map(({ id }) => id);
    expect(ring(first)).toEqual([undefined]);
    expect(ring(first, third).map((parts) => parts?.toSorted())).toEqual([
      ['A1', 'A2'],
      ['A1', 'A2'],
    ]);
  });

  test('a gap where a loop begins parts no sub-district: a loop hangs on a device of its own', () => {
    const looped = (tag: 'reversing' | 'turntable') =>
      row(['far-side-west-curve'], {
        sections: OVAL.sections.map((one) => (one.id === 'west-curve' ? { ...one, tags: [tag] } : one)),
      });
    expect(partsOf(looped('reversing'))).toEqual([]);
    expect(partsOf(looped('turntable'))).toEqual([]);
  });

  // 10 of traffic: each part is to have a fifth at the least. The first stretch has 8, so the two with 1 each are parted from it together;
  // the long last one has no trains, so that by its metres no part of the others would be large enough.
  test('where a sheet leaves it open, joints are proposed that part the traffic, not the metres', () => {
    const [traffic, metres] = [
      [8, 1, 1, 0],
      [1, 1, 1, 17],
    ];
    const sheet: Sheet = {
      ...row([]),
      joints: OVAL.joints,
      sections: OVAL.sections.map((one, at) => ({ ...one, traffic: traffic[at] ?? 0, metres: metres[at] ?? 0 })),
    };
    const [district] = trackOf(sheet).districts;
    if (district === undefined) throw new Error('no district');
    const cut = subDistrictsOf(district, sheet).couldCut?.map(({ id }) => id) ?? [];
    expect(cut).toHaveLength(2);
    expect(cut).toContain('station-track-east-curve');
    expect(cut).not.toContain('east-curve-far-side');
  });

  test('a unit whose trip current nobody has read has none for its breakers; without breakers nobody asks', () => {
    const of = (sheet: Sheet) => trackOf(sheet).districts.map((one) => subDistrictsOf(one, sheet));
    const unread = row([], { stages: [{ id: 'station', kind: 'station', breakers: 2 }] });
    expect(of(unread)[0]?.tripAtMost).toBeUndefined();
    expect(of(row([]))[0]).toMatchObject({ district: 'A', breakers: 2, parts: [] });
    expect(of(ONE_UNIT)[0]).toMatchObject({ breakers: 0, couldCut: undefined });
    // One breaker parts nothing: two pieces are proposed at the least. A single stretch has no joint inside.
    expect(of(row([], { stages: [stage('station', 4, { breakers: 1 })] }))[0]?.couldCut).toHaveLength(1);
    const single = row([], { sections: OVAL.sections.slice(0, 1), joints: [] });
    expect(of(single)[0]?.couldCut).toEqual([]);
  });
});

describe('What a plan adds up to', () => {
  const idsIn = ({ parts }: Plan): string[] => parts.map(({ id }) => id);

  test('a plan that is short lists track and tests, and nothing that feeds it', () => {
    const busy = planOf({ ...OVAL, trains: [{ kind: 'older', count: 40 }], moving: 40 });
    expect([busy.judged.verdict, busy.power]).toEqual(['short', 'remedy-first']);
    expect(idsIn(busy)).toContain('insulated-joiner');
    expect(idsIn(busy)).not.toContain('supply');
  });

  // Common practice, no source: what a command station takes is left to the reserve, a booster takes some 0.09 A.
  test('what units take for themselves is theirs where it is told', () => {
    const lead = (more: object) =>
      planOf({ ...OVAL, stages: OVAL.stages.map((one) => ({ ...one, ...more })) }).judged.units.map(
        ({ lead: one }) => one?.from,
      );
    // Untold, it may be so much; from memory.
    expect(lead({})).toEqual([0.3, 0.3]);
    expect(lead({ ownUseAmps: 0.1 })).toEqual([0.1, 0.1]);
  });
});
