// The layout sheet: what is written comes back, what is no sheet is told with its place, and what one starts from is a layout.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { districtLoad, dividedLayout } from '../../src/engine/index.ts';
import { parseAddress, QUESTIONS, toAddress } from '../../src/wizards/planning/index.ts';
import { trafficOf } from '../../src/wizards/sheet/answers.ts';
import {
  answersOf,
  DEMO_CLUB,
  DEMO_OVAL,
  EMPTY_SHEET,
  fleetOf,
  MOST_SHEET_TEXT,
  readSheet,
  SHAPE_IDS,
  SHAPES,
  type Sheet,
  stagesOf,
  withAnswers,
  writeSheet,
} from '../../src/wizards/sheet/index.ts';
import { anySheet } from './any-sheet.ts';

const SCALES = ['z', 'n', 'tt', 'h0', '0', '1'] as const;
const told = (address: string) => parseAddress(Object.values(QUESTIONS), address).answers;

/** Sections that can be reached from the first, over joints. */
function reached({ sections, joints }: Pick<Sheet, 'sections' | 'joints'>, within: readonly string[]): Set<string> {
  const inside = new Set(within.filter((id) => sections.some((section) => section.id === id)));
  const met = new Set(within.slice(0, 1));
  for (let before = -1; before < met.size; ) {
    before = met.size;
    for (const { from, to } of joints) {
      if (!(inside.has(from) && inside.has(to))) continue;
      if (met.has(from)) met.add(to);
      if (met.has(to)) met.add(from);
    }
  }
  return met;
}

const changed = (sheet: Sheet, change: Readonly<Record<string, unknown>>): string =>
  JSON.stringify({ ...sheet, ...change });

describe('A sheet', () => {
  test('comes back as it was written, whatever it holds', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const written = writeSheet(sheet);
        const read = readSheet(written);
        expect(read).toEqual({ sheet, flaws: [] });
        if ('sheet' in read) expect(writeSheet(read.sheet)).toBe(written);
      }),
    );
  });

  test('of which nothing is told is a sheet', () => {
    expect(readSheet(writeSheet(EMPTY_SHEET))).toEqual({ sheet: EMPTY_SHEET, flaws: [] });
  });

  test('of form 0, a club’s answers, opens with its districts cut where they meet', () => {
    const answers =
      '?accessories=4&amps-b=2&amps-c=5&divided=divided&districts=3&limit-b=2&limit-c=5&modern=8&moving=4&older=2' +
      '&scale=n&supply-amps=3&supply-kind=dc&supply-volts=15&traffic-a=5&traffic-b=2&traffic-c=3&unit-limit=3';
    const read = readSheet(JSON.stringify({ form: 'both-rails-layout-sheet', version: 0, name: 'Club', answers }));
    expect(read).toMatchObject({
      flaws: [],
      sheet: {
        name: 'Club',
        version: 1,
        scale: 'n',
        moving: 4,
        accessories: 4,
        trains: [
          { kind: 'modern', count: 8 },
          { kind: 'older', count: 2 },
        ],
        stages: [
          { kind: 'station', limitAmps: 3 },
          { kind: 'booster', limitAmps: 2 },
          { kind: 'booster', limitAmps: 5 },
        ],
        supplies: [{ kind: 'dc', volts: 15, amps: 3 }, { amps: 2 }, { amps: 5 }],
        joints: [{ cut: 'both' }, { cut: 'both' }],
        districts: [{ stage: 'station' }, {}, {}],
      },
    });
    if (!('sheet' in read)) throw new Error('no sheet');
    expect(trafficOf(read.sheet)).toEqual([0.5, 0.2, 0.3]);
    expect(readSheet(writeSheet(read.sheet))).toEqual(read);
  });

  test('of form 0 opens whatever its answers say', () => {
    fc.assert(
      fc.property(fc.anything(), fc.string(), (name, answers) => {
        const text = JSON.stringify({ name, form: 'both-rails-layout-sheet', version: 0, answers: `?${answers}` });
        expect(readSheet(text)).toHaveProperty('sheet');
      }),
    );
  });
});

describe('What is no sheet', () => {
  test.each([
    ['', 'no-sheet'],
    ['null', 'no-sheet'],
    ['7', 'no-sheet'],
    ['[]', 'no-sheet'],
    ['{}', 'no-sheet'],
    ['{"form":"another"}', 'no-sheet'],
    ['{"form":"both-rails-layout-sheet","version":-1}', 'no-sheet'],
    ['<html></html>', 'no-sheet'],
    [' '.repeat(50_000_000), 'too-large'],
    ['['.repeat(MOST_SHEET_TEXT), 'no-sheet'],
  ])('%.40s is told: %s', (text, why) => {
    expect(readSheet(text)).toEqual({ problem: { why } });
  });

  test('from a later release is told with its number', () => {
    expect(readSheet('{"form":"both-rails-layout-sheet","version":9}')).toEqual({
      problem: { why: 'later-version', version: 9 },
    });
  });

  test('and breaks off is told with the place where it does', () => {
    const text = writeSheet(DEMO_CLUB);
    fc.assert(
      fc.property(fc.integer({ min: 60, max: text.length - 4 }), (end) => {
        const read = readSheet(text.slice(0, end));
        expect(read).toMatchObject({ problem: { why: 'broken-text' } });
        if ('problem' in read && 'at' in read.problem) expect(Math.abs(read.problem.at - end)).toBeLessThan(2);
      }),
      { numRuns: 30 },
    );
  });

  test('never throws, whatever it is', () => {
    fc.assert(fc.property(fc.json(), (text) => 'problem' in readSheet(text)));
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom(...Object.keys(DEMO_CLUB)), fc.anything()), (parts) => {
        const text = changed(DEMO_CLUB, { ...parts, form: 'both-rails-layout-sheet', version: 1 });
        const read = readSheet(text);
        if (!('sheet' in read)) throw new Error('no sheet');
        // What was kept is a sheet again, with nothing left to complain about.
        expect(readSheet(writeSheet(read.sheet))).toEqual({ sheet: read.sheet, flaws: [] });
      }),
    );
  });
});

describe('What is good in a sheet is kept, and the rest is named:', () => {
  const oval = SHAPES.oval(4);
  const flawsOf = (change: Readonly<Record<string, unknown>>) => {
    const read = readSheet(changed(oval, change));
    if (!('sheet' in read)) throw new Error('no sheet');
    return read;
  };

  test('a section of no length goes, with the joints that lead to it', () => {
    const [first, ...others] = oval.sections;
    const { sheet, flaws } = flawsOf({ sections: [{ ...first, metres: 0 }, ...others] });
    expect(sheet.sections).toEqual(others);
    expect(sheet.joints).toHaveLength(6);
    expect(flaws).toEqual([
      { why: 'left-out', list: 'sections', at: 1, field: 'metres', mark: '0' },
      { why: 'names-nothing', list: 'joints', at: 1, mark: 'left-back' },
      { why: 'names-nothing', list: 'joints', at: 8, mark: 'left-back' },
    ]);
  });

  test.each([
    [-4, '-4'],
    ['long', 'long'],
    [{ a: 1 }, '{"a":1}'],
    ['x'.repeat(MOST_SHEET_TEXT / 100), 'x'.repeat(60)],
  ])('what stands where a length must be is named as it stands there, as far as it is looked at', (metres, mark) => {
    const [first, ...others] = oval.sections;
    const [flaw] = flawsOf({ sections: [{ ...first, metres }, ...others] }).flaws;
    expect(flaw).toMatchObject({ why: 'left-out', list: 'sections', at: 1, field: 'metres' });

    expect(flaw?.mark).toBe(mark);
  });

  test('a section without any length lacks one', () => {
    const [{ metres: _, ...first } = { metres: 0 }, ...others] = oval.sections;
    expect(flawsOf({ sections: [first, ...others] }).flaws[0]).toEqual({
      why: 'not-whole',
      list: 'sections',
      at: 1,
      field: 'metres',
    });
  });

  test('a field that nobody can have goes, its section stays', () => {
    const [first, ...others] = oval.sections;
    const sections = [{ ...first, fixedAmps: -1, onclick: 'alert(1)' }, ...others];
    expect(flawsOf({ sections })).toEqual({
      sheet: oval,
      flaws: [
        { why: 'not-allowed', list: 'sections', at: 1, field: 'fixedAmps' },
        { why: 'not-allowed', list: 'sections', at: 1, field: 'onclick' },
      ],
    });
  });

  test('of two sections with one mark the first stays', () => {
    const [first] = oval.sections;
    const { sheet, flaws } = flawsOf({ sections: [...oval.sections, { ...first, metres: 9 }] });
    expect(sheet).toEqual(oval);
    expect(flaws).toEqual([{ why: 'twice', list: 'sections', at: 9, mark: 'left-back' }]);
  });

  test('a joint that leads from a section to itself goes', () => {
    const joint = { id: 'odd', from: 'left-back', to: 'left-back', gap: 'possible', cut: 'none', awkward: 0 };
    expect(flawsOf({ joints: [...oval.joints, joint] }).flaws).toEqual([
      { why: 'to-itself', list: 'joints', at: 9, mark: 'left-back' },
    ]);
  });

  test('the command station is put first', () => {
    const stages = [
      { id: 'b', kind: 'booster' },
      { id: 's', kind: 'station' },
      { id: 't', kind: 'station' },
    ];
    const { sheet, flaws } = flawsOf({ stages });
    expect(sheet.stages.map(({ id, kind }) => `${id} ${kind}`)).toEqual(['s station', 'b booster', 't booster']);
    expect(flaws.map(({ why }) => why)).toEqual(['first-no-station', 'second-station']);
  });

  test('a supply that is nowhere feeds nothing, and a section is fed by one stage', () => {
    const stages = [
      { id: 's', kind: 'station', supply: 'none', feeds: ['left-back', 'nowhere'] },
      { id: 'b', kind: 'booster', feeds: ['left-back'] },
    ];
    const { sheet, flaws } = flawsOf({ stages });
    expect(sheet.stages).toEqual([
      { id: 's', kind: 'station', feeds: ['left-back'] },
      { id: 'b', kind: 'booster', feeds: [] },
    ]);
    expect(flaws).toEqual([
      { why: 'names-nothing', list: 'stages', at: 1, field: 'feeds', mark: 'nowhere' },
      { why: 'names-nothing', list: 'stages', at: 1, field: 'supply', mark: 'none' },
      { why: 'twice', list: 'stages', at: 2, field: 'feeds', mark: 'left-back' },
    ]);
  });

  test('a division that leaves a section out is none', () => {
    const { sheet, flaws } = flawsOf({ districts: [{ stage: 'station', sections: ['left-back'] }] });
    expect(sheet).toEqual(oval);
    expect(flaws).toEqual([{ why: 'not-whole', list: 'districts', mark: 'back-left' }]);
  });

  test('beyond the most of anything the first stay', () => {
    const supplies = Array.from({ length: 40 }, (_, at) => ({ id: `supply-${at + 1}` }));
    const { sheet, flaws } = flawsOf({ supplies });
    expect(sheet.supplies).toHaveLength(12);
    expect(flaws).toEqual([{ why: 'too-many', list: 'supplies', at: 13 }]);
  });

  test('a scale that nobody builds in is taken as H0 and told', () => {
    expect(flawsOf({ scale: 'q' })).toEqual({ sheet: oval, flaws: [{ why: 'not-allowed', field: 'scale' }] });
  });
});

const STARTS: readonly (readonly [string, Sheet])[] = [
  ...SHAPE_IDS.flatMap((id) => SCALES.map((scale) => [`${id} in ${scale}`, SHAPES[id](6, scale)] as const)),
  ['the club’s demonstration', DEMO_CLUB],
  ['the beginner’s demonstration', DEMO_OVAL],
];

describe.each(STARTS)('What one starts from: %s', (_, sheet) => {
  const ids = sheet.sections.map(({ id }) => id);

  test('is a sheet without a flaw', () => {
    expect(readSheet(writeSheet(sheet))).toEqual({ sheet, flaws: [] });
  });

  test('is one layout: every section is reached from every other', () => {
    expect(reached(sheet, ids).size).toBe(ids.length);
  });

  test('has each section at a place of its own', () => {
    const places = sheet.sections.map(({ at }) => `${at?.column} ${at?.row}`);
    expect(new Set(places).size).toBe(ids.length);
    expect(sheet.sections.every(({ at }) => at !== undefined)).toBe(true);
  });

  test('has turnouts of three ends or more, and plain track of two at most', () => {
    for (const { id, tags = [] } of sheet.sections) {
      const ends = sheet.joints.filter(({ from, to }) => from === id || to === id).length;
      if (tags.includes('turnout')) expect(ends, id).toBeGreaterThan(2);
      else expect(ends, id).toBeLessThan(3);
    }
  });

  test('has both ends of each reversing section parted', () => {
    for (const { id, tags = [] } of sheet.sections) {
      if (!tags.includes('reversing')) continue;
      const ends = sheet.joints.filter(({ from, to }) => from === id || to === id);
      expect(
        ends.map(({ gap }) => gap),
        id,
      ).toEqual(['required', 'required']);
    }
  });

  test('loads its power with trains that the engine takes', () => {
    expect(districtLoad(fleetOf(sheet)).powerUp).toBeGreaterThan(0);
    expect(stagesOf(sheet)).toHaveLength(sheet.stages.length);
  });
});

describe('The club’s demonstration', () => {
  const { sections, joints, districts = [] } = DEMO_CLUB;

  test('has about forty sections, a reversing loop, a hidden yard, and supplies that differ', () => {
    expect(sections.length).toBeGreaterThanOrEqual(38);
    expect(sections.length).toBeLessThanOrEqual(45);
    expect(new Set(DEMO_CLUB.supplies.map(({ amps }) => amps)).size).toBeGreaterThan(1);
    expect(sections.filter(({ tags = [] }) => tags.includes('hidden')).length).toBeGreaterThan(3);
  });

  test('is divided at joints where a gap is possible, into districts that hang together', () => {
    const districtOf = (id: string) => districts.findIndex(({ sections: held }) => held.includes(id));
    const cut = joints.filter(({ from, to }) => districtOf(from) !== districtOf(to));
    expect(cut.length).toBe(5);
    expect(cut.every(({ gap }) => gap !== 'impossible')).toBe(true);
    for (const { sections: held } of districts) expect(reached(DEMO_CLUB, held).size).toBe(held.length);
  });

  test('has power enough in every district, as it is divided', () => {
    const traffic = trafficOf(DEMO_CLUB);
    const own = stagesOf(DEMO_CLUB).map((one, at) => ({ ...one, traffic: traffic[at] ?? 0 }));
    const { verdict } = dividedLayout(fleetOf(DEMO_CLUB), own);
    expect(['ample', 'enough', 'tight']).toContain(verdict);
  });

  test('has every label read', () => {
    expect(stagesOf(DEMO_CLUB).flatMap(({ unread }) => unread)).toEqual([]);
  });
});

describe('What nobody has read of a shape', () => {
  test('is named, and taken as usual', () => {
    const [station] = stagesOf(SHAPES.oval(3));
    expect(station).toMatchObject({
      id: 'station',
      stage: { limit: 3, rails: { kind: 'follows' } },
      supply: { amps: 3 },
    });
    expect(station?.unread).toEqual([
      'limitAmps',
      'rails',
      'inputKind',
      'inputVolts',
      'supplyKind',
      'supplyVolts',
      'supplyAmps',
    ]);
  });

  test('where no supply is told, that is what is missing', () => {
    const sheet: Sheet = { ...EMPTY_SHEET, stages: [{ id: 'station', kind: 'station', limitAmps: 3 }] };
    expect(stagesOf(sheet)[0]?.unread).toContain('supply');
  });
});

describe('Trains of a sheet', () => {
  const fleet = (trains: Sheet['trains'], more: Partial<Sheet> = {}) => fleetOf({ ...EMPTY_SHEET, ...more, trains });

  test('that were measured draw what was measured', () => {
    expect(
      fleet([{ kind: 'measured', count: 2, runningAmps: { from: 0.3, to: 0.4 }, standingAmps: 0.1 }]).trains,
    ).toEqual([{ kind: 'measured', count: 2, running: { from: 0.3, to: 0.4 }, standing: 0.1, stall: 0.8 }]);
  });

  test('half of them move where nobody has told, and never more than there are', () => {
    expect(fleet([{ kind: 'modern', count: 5 }]).moving).toBe(3);
    expect(fleet([{ kind: 'modern', count: 5 }], { moving: 9 }).moving).toBe(5);
  });

  test('do not share the track with accessories that have a supply of their own', () => {
    expect(fleet([], { accessories: 12, accessoryBus: 'own' }).accessories).toBe(0);
    expect(fleet([], { accessories: 12, accessoryBus: 'track' }).accessories).toBe(12);
  });
});

describe('A sheet and the planning wizards', () => {
  test('what a sheet tells is taken by every question as it is', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const answers = answersOf(sheet);
        const { answers: read, problems } = parseAddress(Object.values(QUESTIONS), toAddress(answers));
        expect(problems).toEqual([]);
        expect(Object.keys(read).sort()).toEqual(Object.keys(answers).sort());
      }),
    );
  });

  test('taking its own answers back changes neither power nor trains of the demonstration', () => {
    const again = withAnswers(DEMO_CLUB, answersOf(DEMO_CLUB));
    expect(stagesOf(again)).toEqual(stagesOf(DEMO_CLUB));
    expect(districtLoad(fleetOf(again)).powerUp).toBeCloseTo(districtLoad(fleetOf(DEMO_CLUB)).powerUp, 9);
    expect(again.sections).toEqual(DEMO_CLUB.sections);
    expect(again.districts).toEqual(DEMO_CLUB.districts);
  });

  test('answers of any wizard give a sheet without a flaw', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const made = withAnswers(EMPTY_SHEET, answersOf(sheet));
        expect(readSheet(writeSheet(made))).toEqual({ sheet: made, flaws: [] });
      }),
    );
  });

  test('the demonstration is told to “Is my power enough?” in its districts', () => {
    expect(answersOf(DEMO_CLUB)).toMatchObject({
      divided: { kind: 'choice', option: 'divided' },
      districts: { kind: 'number', span: { from: 4, to: 4 } },
      'limit-b': { kind: 'number', span: { from: 5, to: 5 } },
      'unit-limit': { kind: 'number', span: { from: 4, to: 4 } },
    });
  });

  test('two units and two supplies of “Which supply goes where?” become two stages', () => {
    const sheet = withAnswers(
      SHAPES.oval(6),
      told('?booster-limit=2&one-amps=3&one-kind=dc&one-volts=15&station-limit=3&two-amps=2&two-kind=dc&two-volts=16'),
    );
    expect(sheet.stages).toEqual([
      { id: 'station', kind: 'station', supply: 'supply-1', limitAmps: 3 },
      { id: 'booster-1', kind: 'booster', supply: 'supply-2', limitAmps: 2 },
    ]);
    expect(sheet.supplies).toEqual([
      { id: 'supply-1', kind: 'dc', volts: 15, amps: 3 },
      { id: 'supply-2', kind: 'dc', volts: 16, amps: 2 },
    ]);
  });

  test('what nobody knows is not taken into a sheet as if it were told', () => {
    const sheet = withAnswers(EMPTY_SHEET, told('?modern=4&moving=unknown&scale=unknown&unit-limit=unknown'));
    expect(sheet).toEqual({ ...EMPTY_SHEET, trains: [{ kind: 'modern', count: 4 }] });
  });
});
