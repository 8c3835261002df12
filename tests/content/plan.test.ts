// The plan and the walk through its tests in words: nothing is left unsaid, on any layout; every danger stands at its step.
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { CheckPicture } from '../../src/components/check-picture/CheckPicture.tsx';
import {
  expectedSaid,
  optionHint,
  picturing,
  sidesSaid,
  stepsSaid,
  titleSaid,
} from '../../src/components/first-power-up/said.ts';
import { namesIn } from '../../src/components/plan/props.ts';
import { partsTable, testTable } from '../../src/components/plan/said.ts';
import { WholePlan } from '../../src/components/plan/WholePlan.tsx';
import { Numbers, sayer } from '../../src/components/words/index.ts';
import { PLAN_ROOMS, POWER_UP_ROOMS } from '../../src/layouts/rooms.ts';
import { type Plan, planOf, STEP_KINDS, sidesOf, type TestRow } from '../../src/wizards/plan/index.ts';
import { isTurning } from '../../src/wizards/plan/track.ts';
import { dangersOf, rankOf } from '../../src/wizards/safety/index.ts';
import type { Sheet } from '../../src/wizards/sheet/index.ts';
import { DEMO_CLUB, DEMO_OVAL, SHAPES } from '../../src/wizards/sheet/index.ts';
import { CLUB, joint, OVAL, section, stage, supply } from '../wizards/sheets.ts';
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
  'with breakers for more parts than it has': {
    ...OVAL,
    stages: OVAL.stages.slice(0, 1).map((one) => ({ ...one, breakers: 4 })),
    joints: OVAL.joints.map((one, at) => ({ ...one, gap: at % 2 === 1 ? 'required' : 'possible' })),
    districts: undefined,
  },
  'with a gap inside its only district': {
    ...OVAL,
    stages: OVAL.stages.slice(0, 1),
    joints: OVAL.joints.map((one, at) => ({ ...one, gap: at === 1 ? 'required' : 'possible' })),
    districts: undefined,
  },
  'with forbidden supplies': { ...OVAL, supplies: OVAL.supplies.map((one) => ({ ...one, volts: 24 })) },
  'with a loop of its own unit': {
    ...OVAL,
    sections: [...OVAL.sections, section('loop', 3, 1, { tags: ['reversing'] })],
    joints: [...OVAL.joints, joint('far-side', 'loop'), joint('loop', 'far-side', { id: 'loop-end' })],
    stages: [...OVAL.stages, stage('turns', 2, { supply: 'third' })],
    supplies: [...OVAL.supplies, supply('third', 3)],
    districts: [...(OVAL.districts ?? []), { stage: 'turns', sections: ['loop'] }],
  },
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
    expect(html).toContain('Divide first: ');
    expect(html).toContain(`${say('plan-to-divide')}</a>`);
    expect(html).toContain('/en/layout-sheet/?divide');
    expect(html).not.toContain(say('plan-remedy-nothing'));
    expect(html).not.toContain(say('plan-no-gaps'));
    // There is nothing yet to print or to save.
    expect(html).not.toContain(say('plan-csv-parts'));
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

  test('says what of the bus that lies there is used again, and what is missing', () => {
    const bus = (busMetres: number | undefined): string =>
      drawn({
        ...OVAL,
        wiring: { busSquareMillimetres: 2.5, feederSquareMillimetres: 0.5, metresBetweenFeeders: 2, busMetres },
      });
    expect(drawn(DEMO_CLUB)).toContain('Their buses take 54.3\u00a0m of 2.5\u00a0mm², and the sheet has 9\u00a0m');
    expect(drawn(DEMO_CLUB)).toContain('Missing: 45.3\u00a0m');
    expect(bus(20)).toContain('None is to get.');
    expect(bus(undefined)).toContain('measure it');
    expect(drawn(OVAL)).not.toContain('buses take');
  });

  test('tells as many new feeders as there are clamps for, and as many labels as are on the list of parts', () => {
    for (const sheet of [OVAL, CLUB, DEMO_CLUB]) {
      const html = drawn(sheet);
      const { parts } = planOf(sheet);
      const number = (id: string): number => parts.find((one) => one.id === id)?.count ?? 0;
      const [, wires = ''] = /id="plan-wires"[^>]*>([\s\S]*?)<\/section>/.exec(html) ?? [];
      const told = [...wires.matchAll(/(\d+) new (?:pairs?|at its gaps)/g)].map(([, n]) => Number(n));
      const sum = told.pop();
      expect(told.reduce((total, one) => total + one, 0)).toBe(sum);
      expect(number('bus-clamp')).toBe(2 * (sum ?? 0));
      expect(wires).toContain(`${number('wire-label')} in all`);
    }
  });

  test('hangs what lies in a loop or on a bridge on its device in every list: wires, labels, and the step that lays feeders', () => {
    const html = drawn(DEMO_CLUB);
    expect(html).toContain('feeders from the reversing device and never from the bus');
    expect(html).toContain('through the contacts of the bridge, with no feeder of the bus');
    expect(html).toContain(say('plan-labels-device-feeder', { district: 'D', n: 4 }));
    expect(html).toContain(say('plan-labels-bridge', { district: 'A', n: 1 }));
    expect(html).toContain(say('plan-more-feed-turning'));
    expect(html).toContain(say('plan-gap-cut-bridge'));
    expect(drawn(OVAL)).not.toContain(say('plan-more-feed-turning'));
  });

  test('gives the reason of each gap that is forbidden: a loop that ends there, a programming track, two districts; at a bridge there is nothing to cut', () => {
    const forbidden = (sheet: Sheet) => ({
      ...sheet,
      joints: sheet.joints.map((one) => ({ ...one, gap: 'impossible' as const, cut: 'none' as const })),
    });
    const reasons = (sheet: Sheet, ...whys: readonly string[]): void => {
      const html = drawn(forbidden(sheet));
      const told = ['district', 'reversing', 'programming'].filter((why) => html.includes(say(`plan-stop-why-${why}`)));
      expect(told).toEqual(whys);
    };
    reasons(CLUB, 'district', 'reversing', 'programming');
    reasons(DEMO_CLUB, 'district', 'reversing');
    reasons({ ...SHAPES['out-and-back'](3) }, 'reversing');
  });

  test('of out and back names what turns the loop’s rails, in its steps and on its list of parts', () => {
    const html = drawn(SHAPES['out-and-back'](3));
    expect(html).toContain(say('plan-tests-wait'));
    expect(drawn(CLUB)).not.toContain(say('plan-tests-wait'));
    expect(html).toContain(say('plan-step-reversing-device'));
    expect(html).toContain(say('plan-get-reverser'));
  });

  test('tells of a breaker without a gap in its power, its steps and its parts', () => {
    const html = drawn(DEMO_CLUB);
    // Before anything is cut: at the top, and once more at the step.
    expect(html.split(say('plan-more-unplaced', { district: 'A', n: 2 }))).toHaveLength(3);
    expect(html).not.toContain(say('plan-remedy-nothing'));
    expect(html).toContain(say('plan-but-named-below'));
    expect(html).toContain(say('plan-get-breaker-unplaced'));
    expect(html).not.toContain(`>${say('plan-get-breaker')}<`);
    const more = LAYOUTS['with breakers for more parts than it has'];
    expect(more === undefined ? '' : drawn(more)).toContain(say('plan-one-short-unplaced', { district: 'A', n: 2 }));
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
    expect(rows.find(([kind]) => kind === say('plan-get-breaker-unplaced'))?.slice(1, 3)).toEqual([
      'trips at 2.8\u00a0A or less',
      '2',
    ]);
  });
});

describe('A test in the walk through them', () => {
  // The yard meets the second main line too: a gap with a booster on either side.
  const sheet: Sheet = { ...CLUB, joints: [...CLUB.joints, joint('main-2', 'yard-2')] };
  const plan = planOf(sheet);
  const others = ['the demo of a club', 'with breakers and gaps for them', 'with a gap inside its only district'];
  const words = roomsOf(POWER_UP_ROOMS);
  const powerSay = sayer(words, 'en');
  const checks = Object.fromEntries(
    wordsOf('en', 'checks').map(({ id, data }) => [
      id,
      { title: String(data['title']), how: asTexts(data['how']), cautions: [], options: {} },
    ]),
  );
  const toldOf = (of: Plan) => ({
    ...{ language: 'en', home: '/en/', pictureStyles: '', cautions: CAUTIONS, tests: checks, plan: of },
    ...{ say: powerSay, names: namesIn(of.sheet, powerSay), numbers: new Numbers('en', 'metric', words) },
  });
  const told = toldOf(plan);
  const textOf = (row: TestRow, at = told): string =>
    [titleSaid(row, at), sidesSaid(row, at) ?? '', ...stepsSaid(row, at), expectedSaid(row, at)].join(' ');
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
    for (const one of [plan, ...others.flatMap((name) => planOf(LAYOUTS[name] ?? sheet))]) {
      for (const row of one.tests) {
        const text = textOf(row, toldOf(one));
        expect(text).not.toMatch(/\[power-up-|\{[a-z]\w*\}|undefined|part with the trouble|from memory/);
        expect(text).not.toMatch(/district [.,]|of ,|of \./);
      }
    }
  });

  test('says what to unplug beyond each gap: a reversing device, a bridge’s, a breaker, the programming track', () => {
    const jumpers = (name: string): string[] => {
      const one = planOf(LAYOUTS[name] ?? sheet);
      return one.tests.filter(({ kind }) => kind === 'jumper-test').map((row) => textOf(row, toldOf(one)));
    };
    expect(
      jumpers('the demo of a club').filter((text) => text.includes('the plug of the reversing device')),
    ).toHaveLength(2);
    expect(jumpers('the demo of a club').filter((text) => text.includes('bridge’s reversing device'))).toHaveLength(1);
    expect(jumpers('with breakers and gaps for them').every((text) => text.includes('off its breaker'))).toBe(true);
    expect(jumpers('club').filter((text) => text.includes('wires off the programming track'))).toHaveLength(1);
  });

  test('across the gap of a loop or a bridge clips a lamp, never a bare wire: with a rail whole at the far end that were a dead short', () => {
    const turning = (name: string, wanted: boolean): TestRow[] => {
      const { tests, track } = planOf(LAYOUTS[name] ?? sheet);
      const gapOf = (row: TestRow) =>
        track.gaps.find(({ number }) => row.where.kind === 'gap' && number === row.where.gap);
      return tests.filter((row) => {
        const gap = gapOf(row);
        return row.kind === 'jumper-test' && gap !== undefined && isTurning(gap) === wanted;
      });
    };
    for (const name of ['the demo of a club', 'club', 'with a loop of its own unit']) {
      const at = toldOf(planOf(LAYOUTS[name] ?? sheet));
      const table = testTable(at.plan, { ...given, say, names: at.names, numbers: at.numbers }).slice(1);
      for (const row of turning(name, true)) {
        const text = textOf(row, at);
        expect(text).toContain('Clip the lamp, not a wire, across the gap of rail A');
        expect(text).not.toMatch(/Clip a wire|Clip the wire|Move the wire|Take the wire/);
        expect(optionHint('alive-with-one', row, at)).toContain('far end');
        const [what = '', , seen = ''] = table[at.plan.tests.findIndex(({ id }) => id === row.id)] ?? [];
        expect(`${what} ${seen}`).toMatch(/^Lamp over rail A.*neither the lamp/);
      }
      for (const row of turning(name, false)) expect(textOf(row, at)).toContain('the wire across the gap');
    }
    expect(turning('the demo of a club', true)).toHaveLength(3);
    expect(turning('with a loop of its own unit', true)).toHaveLength(2);
    for (const layout of [DEMO_CLUB, CLUB]) expect(drawn(layout)).toContain('a lamp in place of the wire');
  });

  test('with the resistor tells one measure of “hardly” where the plan knows one, and the usual where it knows none', () => {
    const load = (of: Plan): string =>
      of.tests
        .filter(({ kind }) => kind === 'load-test')
        .map((row) => textOf(row, toldOf(of)))
        .join(' ');
    expect(load(plan)).not.toContain('a tenth');
    expect(load(plan)).toMatch(/near the unit no more than [\d.]+/);
    const [row] = plan.tests.filter(({ kind }) => kind === 'load-test');
    expect(row === undefined ? '' : textOf({ ...row, readings: [] })).toContain('a tenth');
  });

  test('shows a picture with the names of both sides', () => {
    const row = between.find(({ kind }) => kind === 'jumper-test');
    const pictured = row === undefined ? undefined : picturing(row, told);
    const drawing = renderToString(h(CheckPicture, { id: 'jumper', say: pictured ?? powerSay }));
    expect(drawing).not.toMatch(/command station|booster<|old part|new part/);
    expect(drawing).toMatch(/unit of [A-D]/);
  });
});
