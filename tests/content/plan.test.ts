// The plan and the walk through its tests in words: nothing is left unsaid, on any layout; every danger stands at its step.
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { CheckPicture } from '../../src/components/check-picture/CheckPicture.tsx';
import { expectedSaid, picturing, sidesSaid, stepsSaid, titleSaid } from '../../src/components/first-power-up/said.ts';
import { namesIn } from '../../src/components/plan/props.ts';
import { partsTable, testTable } from '../../src/components/plan/said.ts';
import { WholePlan } from '../../src/components/plan/WholePlan.tsx';
import { Numbers, sayer } from '../../src/components/words/index.ts';
import { PLAN_ROOMS, POWER_UP_ROOMS } from '../../src/layouts/rooms.ts';
import { planOf, STEP_KINDS, sidesOf, type TestRow } from '../../src/wizards/plan/index.ts';
import { dangersOf, rankOf } from '../../src/wizards/safety/index.ts';
import type { Sheet } from '../../src/wizards/sheet/index.ts';
import { DEMO_CLUB, DEMO_OVAL, SHAPES } from '../../src/wizards/sheet/index.ts';
import { CLUB, joint, OVAL } from '../wizards/sheets.ts';
import { wordsOf } from './folder.ts';

const roomsOf = (rooms: readonly string[]): Readonly<Record<string, string>> =>
  Object.fromEntries(
    wordsOf('en', 'words')
      .filter(({ id }) => rooms.includes(id))
      .flatMap(({ data }) => Object.entries(data).map(([key, text]) => [key, String(text)])),
  );
const asTexts = (told: unknown): string[] => (Array.isArray(told) ? told.map(String) : []);
const WORDS = roomsOf(PLAN_ROOMS);
const CAUTIONS = Object.fromEntries(
  wordsOf('en', 'cautions').map(({ id, data }) => [
    id,
    {
      rank: rankOf(id),
      harm: String(data['harm']),
      do: String(data['do']),
      line: data['line'] === undefined ? undefined : String(data['line']),
    },
  ]),
);
const DANGERS = Object.fromEntries(Object.entries(STEP_KINDS).map(([id, { acts }]) => [id, dangersOf(acts)]));
const say = sayer(WORDS, 'en');
const given = { language: 'en', home: '/en/', words: WORDS, cautions: CAUTIONS, pages: {}, dangers: DANGERS };

const once = new Map<Sheet, string>();
/** A plan is worked out and drawn once, however many tests look at it. */
function drawn(sheet: Sheet): string {
  const html =
    once.get(sheet) ?? renderToString(h(WholePlan, { ...given, say, system: 'metric', plan: planOf(sheet) }));
  once.set(sheet, html);
  return html;
}

const LAYOUTS: Readonly<Record<string, Sheet>> = {
  oval: OVAL,
  club: CLUB,
  'the demo of a club': DEMO_CLUB,
  'the demo of an oval': DEMO_OVAL,
  ...Object.fromEntries(Object.entries(SHAPES).map(([id, shape]) => [id, shape(6)])),
  'without track': { ...OVAL, sections: [], joints: [], districts: [] },
  'without trains': { ...OVAL, trains: [] },
  'with one supply': { ...OVAL, supplies: OVAL.supplies.slice(0, 1) },
  'with a section in no district': { ...OVAL, districts: OVAL.districts?.slice(0, 1) },
  'in pieces': {
    ...OVAL,
    stages: OVAL.stages.slice(0, 1),
    sections: [...OVAL.sections, { id: 'island', metres: 2, traffic: 1 }],
    districts: undefined,
  },
  'of two units without a division': { ...OVAL, districts: undefined },
  'with a unit to spare': { ...OVAL, stages: [...OVAL.stages, { id: 'spare', kind: 'booster' }] },
  'with wires that do': {
    ...OVAL,
    wiring: { busSquareMillimetres: 2.5, feederSquareMillimetres: 0.5, metresBetweenFeeders: 2 },
  },
  'with breakers and gaps for them': {
    ...OVAL,
    stages: OVAL.stages.slice(0, 1).map((one) => ({ ...one, breakers: 2 })),
    joints: OVAL.joints.map((one, at) => ({ ...one, gap: at % 2 === 1 ? 'required' : 'possible' })),
    districts: undefined,
  },
  'with forbidden supplies': { ...OVAL, supplies: OVAL.supplies.map((one) => ({ ...one, volts: 24 })) },
  'that is lopsided': { ...OVAL, trains: [{ kind: 'older', count: 6 }] },
  'with far too many older trains': { ...OVAL, trains: [{ kind: 'older', count: 40 }], moving: 40 },
};

/** What stands of a danger where it first bites: the harm, what to do, and the place that others lead to. */
const inFull = (danger: string): string[] => [
  CAUTIONS[danger]?.harm ?? '',
  CAUTIONS[danger]?.do ?? '',
  `id="plan-danger-${danger}"`,
];

/** And where it bites again: its harm, or the one line of what only breaks something, and the way up. */
function again(danger: string): string[] {
  const { harm = '', line } = CAUTIONS[danger] ?? {};
  return [rankOf(danger) === 'damage' ? (line ?? harm) : harm, `href="#plan-danger-${danger}"`];
}

describe('The plan of a layout', () => {
  test.each(Object.entries(LAYOUTS))('%s leaves no sentence out and no hole open', (_, sheet) => {
    const html = drawn(sheet);
    expect(html).not.toMatch(/\[(?:plan|diagram|rank)-|\{[a-z]\w*\}|undefined|NaN/);
    expect(html.length).toBeGreaterThan(300);
  });

  test('of two units without a division sends to the sheet for one, and says nothing of good', () => {
    const html = drawn({ ...OVAL, districts: undefined });
    expect(html).toContain('Choose a division on the sheet first.');
    expect(html).toContain('/en/layout-sheet/');
    expect(html).not.toContain(say('plan-remedy-nothing'));
    expect(html).not.toContain(say('plan-no-gaps'));
  });

  test('what is still to be read leads to where it is typed in, is told once, and steps point up to it', () => {
    const html = drawn(SHAPES.oval(6));
    expect(html).toContain(say('plan-unread-where'));
    expect(html).toContain('href="/en/layout-sheet/"');
    expect(html.split(say('plan-unread-limit'))).toHaveLength(2);
    expect(html).toContain(say('plan-see', { part: say('plan-part-verdict') }));
    expect(drawn(CLUB)).not.toContain(say('plan-unread-where'));
    expect(drawn(CLUB)).not.toContain(say('plan-see', { part: say('plan-part-verdict') }));
  });

  test('a phase of one step says which, not from where to where', () => {
    for (const sheet of [SHAPES.oval(6), CLUB]) expect(drawn(sheet)).not.toMatch(/steps (\d+) to \1\b/);
  });

  test('two districts that meet are told in the order of their letters', () => {
    const meeting = [...drawn(DEMO_CLUB).matchAll(/districts ([A-L]) and ([A-L]) meet/g)];
    expect(meeting.length).toBeGreaterThan(3);
    for (const [, one = '', other = ''] of meeting) expect(one < other).toBe(true);
  });

  test('the drawing calls each gap by the number that the list has', () => {
    const numbers = [...drawn(CLUB).matchAll(/class="gap-number"[^>]*>(\d+)</g)].map(([, number]) => Number(number));
    expect(numbers.toSorted((one, other) => one - other)).toEqual(planOf(CLUB).track.gaps.map(({ number }) => number));
  });

  test('has every danger of a step at that step: in full where it first bites, then its harm, with the way up to it', () => {
    const html = drawn(CLUB);
    const [, work = ''] = /<section[^>]*id="plan-steps"[^>]*>([\s\S]*?)<\/section>/.exec(html) ?? [];
    const items = work.split('<li').slice(1);
    const { steps } = planOf(CLUB);
    expect(items).toHaveLength(steps.length);
    const told = new Set<string>();
    for (const [at, { acts, id }] of steps.entries()) {
      for (const danger of dangersOf(acts)) {
        const said = told.has(danger) ? again(danger) : inFull(danger);
        expect(
          said.filter((one) => items[at]?.includes(one) !== true),
          `${id}: ${danger}`,
        ).toEqual([]);
        told.add(danger);
      }
    }
  });

  test('with a name that is markup shows it as it is', () => {
    expect(drawn({ ...OVAL, name: '<img src=x onerror=alert(1)>' })).not.toContain('<img');
  });
});

describe('Its tables', () => {
  const plan = planOf(CLUB);
  const told = { ...given, say, plan, names: namesIn(CLUB, say), numbers: new Numbers('en', 'metric', WORDS) };

  test('have a row for each test with a place for one’s own, and what it means if not', () => {
    const [head, ...rows] = testTable(plan, told);
    expect(head).toHaveLength(5);
    expect(rows).toHaveLength(plan.tests.length);
    expect(rows.every((row) => row.length === 5 && row[3] === '' && row[4] !== '')).toBe(true);
  });

  test('have a row for each part with size and count, and name no maker', () => {
    const [, ...rows] = partsTable(plan, told);
    expect(rows).toHaveLength(plan.parts.length);
    expect(rows.find(([kind]) => kind === say('plan-get-insulated-joiner'))).toEqual([
      say('plan-get-insulated-joiner'),
      '',
      '9',
      '',
    ]);
    expect(rows.find(([kind]) => kind === say('plan-get-breaker'))?.slice(1, 3)).toEqual([
      'trips at 2.8\u00a0A or less',
      '2',
    ]);
  });
});

describe('A test in the walk through them', () => {
  // The yard meets the second main line too: a gap with a booster on either side.
  const sheet: Sheet = { ...CLUB, joints: [...CLUB.joints, joint('main-2', 'yard-2')] };
  const plan = planOf(sheet);
  const words = roomsOf(POWER_UP_ROOMS);
  const powerSay = sayer(words, 'en');
  const checks = Object.fromEntries(
    wordsOf('en', 'checks').map(({ id, data }) => [
      id,
      { title: String(data['title']), how: asTexts(data['how']), cautions: [], options: {} },
    ]),
  );
  const told = {
    ...{ language: 'en', home: '/en/', pictureStyles: '', cautions: CAUTIONS, tests: checks, plan },
    ...{ say: powerSay, names: namesIn(sheet, powerSay), numbers: new Numbers('en', 'metric', words) },
  };
  const textOf = (row: TestRow): string =>
    [titleSaid(row, told), sidesSaid(row, told) ?? '', ...stepsSaid(row, told), expectedSaid(row, told)].join(' ');
  const between = plan.tests.filter(({ where }) => {
    const gap = plan.track.gaps.find(({ number }) => where.kind === 'gap' && number === where.gap);
    const sides = gap === undefined ? undefined : sidesOf(gap, plan.track);
    return sides?.old.stage.kind === 'booster' && sides.new.stage.kind === 'booster';
  });

  test('between two boosters names both as the sheet does, and never powers “the command station only”', () => {
    expect(between.map(({ kind }) => kind)).toContain('jumper-test');
    for (const row of between) {
      const text = textOf(row);
      expect(text).toMatch(
        /Old part: district [A-D], fed by .+ New part: district [A-D], fed by .+ for their commands/,
      );
      expect(text).not.toMatch(/command station only|the booster/);
    }
  });

  test('leaves no hole open, and is made, not remembered', () => {
    for (const row of plan.tests) {
      expect(textOf(row)).not.toMatch(/\[power-up-|\{[a-z]\w*\}|undefined|part with the trouble|from memory/);
    }
  });

  test('shows a picture with the names of both sides', () => {
    const row = between.find(({ kind }) => kind === 'jumper-test');
    const pictured = row === undefined ? undefined : picturing(row, told);
    const drawing = renderToString(h(CheckPicture, { id: 'jumper', say: pictured ?? powerSay }));
    expect(drawing).not.toMatch(/command station|booster<|old part|new part/);
    expect(drawing).toMatch(/unit of [A-D]/);
  });
});
