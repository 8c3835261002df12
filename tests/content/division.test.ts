// Where to divide, drawn as a browser draws it: nothing without words, nothing called good that is not known, every reason with its part of the sheet.
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { Because } from '../../src/components/division/Because.tsx';
import { Division, fewestSaid } from '../../src/components/division/Division.tsx';
import DrawnSheet from '../../src/components/division/DrawnSheet.tsx';
import { Ways } from '../../src/components/division/Ways.tsx';
import { divideHere, inTries } from '../../src/components/division/work.ts';
import { Numbers, sayer } from '../../src/components/words/index.ts';
import { advisedOf, dividedSheet, type Reason } from '../../src/wizards/division/index.ts';
import { DEMO_OVAL, SHAPES, type Sheet } from '../../src/wizards/sheet/index.ts';
import { wordsOf } from './folder.ts';

const WORDS: Readonly<Record<string, string>> = Object.fromEntries(
  wordsOf('en', 'words').flatMap(({ data }) => Object.entries(data).map(([key, text]) => [key, String(text)])),
);
const say = sayer(WORDS, 'en');
const numbers = new Numbers('en', 'metric', WORDS);
const nothing = (): void => undefined;
const nameOf = (id: string): string => id;
const SAID = { say, numbers, language: 'en', nameOf };

const found = dividedSheet(DEMO_OVAL);
const ways = found.division.kind === 'choice' ? found.division.ways : [];
const [first] = ways;

const shown = (sheet: Sheet, more: object = {}): string =>
  renderToString(
    h(Ways, {
      ...SAID,
      sheet,
      ways,
      own: undefined,
      fewest: found.fewest?.way,
      onShow: nothing,
      onTake: nothing,
      ...more,
    }),
  );

describe('the ways to divide', () => {
  test('each say their gaps, their shares and whether they are proven best', () => {
    const text = shown(DEMO_OVAL);
    expect(text).not.toMatch(/\[division-|\{[a-z]+\}/);
    expect(text.match(/type="radio"/g)).toHaveLength(ways.length + 1);
    expect(text).toContain(
      '2 gaps, 2 of them new. Traffic 75\u00a0% : 25\u00a0%, amperes 60\u00a0% : 40\u00a0%: used a little unevenly.',
    );
    expect(text.match(/Proven best/g)).toHaveLength(ways.length + 1);
    expect(text).toContain(say('division-fewest-way', { districts: 1 }));
    expect(text).toContain(say('division-way-one'));
    expect(text).not.toMatch(/\b0 gaps/);
  });

  test('the first that is used evenly is advised and chosen, and one with fewer gaps says what it costs', () => {
    const [few, ...others] = shown(DEMO_OVAL).split('<label').slice(1);
    const advised = others.find((text) => text.includes(say('division-advised')));
    expect(ways.map(({ evenness }) => evenness)).toEqual(['fair', 'good']);
    expect(few).toContain(say('division-fewer-gaps'));
    expect(few).not.toContain('checked');
    expect(advised).toMatch(/checked[\s\S]*Way 2/);
    const uneven = ways.slice(0, 1).map((way) => ({ ...way, evenness: 'poor' as const }));
    const poor = shown(DEMO_OVAL, { ways: uneven, fewest: undefined });
    expect(poor).not.toContain(say('division-advised'));
    expect(poor).not.toContain(say('division-fewer-gaps'));
  });

  test('what lies in the sheet already is named so and not offered once more', () => {
    const districts =
      advisedOf(ways)?.districts.map(({ stage, sections }) => ({ stage, sections: [...sections] })) ?? [];
    const text = shown({ ...DEMO_OVAL, districts });
    expect(text).toContain(say('division-is-taken'));
    expect(text).not.toContain(say('division-take'));
    expect(shown(DEMO_OVAL)).toContain(say('division-take'));
    // The sheet holds another one now than when it was divided.
    const [own] = ways;
    if (own === undefined) throw new Error('no way');
    const mine = { ...own, districts: [{ stage: 'station', sections: DEMO_OVAL.sections.map(({ id }) => id) }] };
    expect(shown({ ...DEMO_OVAL, districts }, { own: mine })).toContain(say('division-before'));
  });

  test('a division that the sheet holds stays chosen, and the advised one stands beside it', () => {
    const whole = { stage: 'station', sections: DEMO_OVAL.sections.map(({ id }) => id) };
    const { own, division } = dividedSheet({ ...DEMO_OVAL, districts: [whole] });
    const made = division.kind === 'choice' ? division.ways : [];
    const [mine, ...others] = shown({ ...DEMO_OVAL, districts: [whole] }, { own, ways: made, fewest: undefined })
      .split('<label')
      .slice(1);
    expect(mine).toMatch(/checked/);
    expect(mine).toContain(say('division-own'));
    const advised = others.find((text) => text.includes(say('division-advised')));
    expect(advised).toMatch(/Way 2/);
    expect(advised).not.toMatch(/checked/);
    // One that is among the ways is not there twice, and says that it is in the sheet.
    const [few] = made;
    const held = few?.districts.map(({ stage, sections }) => ({ stage, sections: [...sections] })) ?? [];
    const same = shown({ ...DEMO_OVAL, districts: held }, { own: few, ways: made, fewest: undefined });
    expect(same.match(/type="radio"/g)).toHaveLength(made.length);
    expect(same).toMatch(/checked/);
  });

  test('rails that are cut already are not to be cut again', () => {
    const there = first === undefined ? [] : [{ ...first, toCut: [] }];
    const text = shown(DEMO_OVAL, { ways: there });
    expect(text).toContain('Both rails are cut already at');
    expect(text).not.toContain('Cut both rails at');
  });

  test('one that was only found is not called proven', () => {
    const only = first === undefined ? [] : [{ ...first, proof: { kind: 'found' as const, atLeast: 1 } }];
    const text = shown(DEMO_OVAL, { ways: only, fewest: undefined });
    expect(text).toContain(say('division-proof-found'));
    expect(text).not.toContain('Proven');
  });

  test('with a label unread no district has a good word', () => {
    const asked = first?.asked.map((one) => ({ ...one, verdict: 'unknown' as const })) ?? [];
    const text = shown(DEMO_OVAL, { ways: first === undefined ? [] : [{ ...first, asked }], fewest: undefined });
    expect(text).toContain(say('division-unread'));
    expect(text).toContain(say('division-verdict-unknown'));
    expect(text).not.toMatch(/>(?:ample|enough)</);
    expect(text).toContain('by usual values');
    expect(shown(DEMO_OVAL)).not.toContain('by usual values');
  });

  test('with a label unread no number of districts is said to be enough', () => {
    const { fewest } = found;
    if (fewest === undefined) throw new Error('no fewest');
    const read = fewestSaid(fewest, 2, say);
    const supplies = DEMO_OVAL.supplies.map(({ amps: _, ...supply }) => supply);
    const open = dividedSheet({ ...DEMO_OVAL, supplies }).fewest;
    expect(read).toBe(say('division-fewest-one'));
    expect(open && fewestSaid(open, 2, say)).toBe(say('division-fewest-one-unread'));
    expect(open && fewestSaid({ ...open, districts: 2 }, 3, say)).toBe(
      say('division-fewest-less-unread', { districts: 2 }),
    );
  });
});

test('where nothing has to be parted, the gaps of a loop, a bridge or a wish of one’s own are not denied', () => {
  const gapless = (sheet: Sheet): string => shown(sheet, { ways: [], fewest: { ...first, gaps: [], toCut: [] } });
  expect(gapless(DEMO_OVAL)).toContain(say('division-no-gaps'));
  const wished = DEMO_OVAL.joints.map((one, at) => ({ ...one, gap: at === 0 ? ('required' as const) : one.gap }));
  for (const sheet of [SHAPES['out-and-back'](6), { ...DEMO_OVAL, joints: wished }]) {
    expect(gapless(sheet)).toContain(say('division-no-gaps-between'));
    expect(gapless(sheet)).not.toContain(say('division-no-gaps'));
  }
});

test('every reason why there is no division names the part that it lies in', () => {
  const [one, other] = DEMO_OVAL.joints;
  const joints = [one?.id ?? '', other?.id ?? ''];
  const reasons: readonly Reason[] = [
    { kind: 'too-much', bearable: 0.4 },
    { kind: 'one-section', sections: ['main-track'] },
    { kind: 'islands', sections: ['back-left', 'main-track'] },
    { kind: 'feeds', sections: ['main-track'] },
    { kind: 'kept', joints },
    { kind: 'near', joints },
    { kind: 'few-sections' },
    { kind: 'tolerance' },
  ];
  const text = renderToString(h(Because, { ...SAID, sheet: DEMO_OVAL, because: reasons }));
  expect(text).not.toMatch(/\[division-|\{[a-z]+\}/);
  expect(text.match(/main-track/g)?.length).toBeGreaterThanOrEqual(3);
  expect(text.match(new RegExp(`${one?.from} – ${one?.to}`, 'g'))).toHaveLength(2);
});

test('two joints between the same sections are told apart, and the same reason is said once', () => {
  const sheet = SHAPES['out-and-back'](6);
  const joints = sheet.joints.flatMap(({ id, to }) => (to === 'loop' ? [id] : []));
  const kept: Reason = { kind: 'kept', joints };
  const text = renderToString(h(Because, { ...SAID, sheet, because: [kept, kept] }));
  expect(text.match(/<li>/g)).toHaveLength(1);
  expect(text).toMatch(/loop-turnout – loop, first end.*loop-turnout – loop, second end/);
});

test('a sheet that does not hang together says which sections stand apart, before anything is divided', () => {
  const joints = DEMO_OVAL.joints.filter(({ from, to }) => from !== 'main-track' && to !== 'main-track');
  const drawn = (sheet: Sheet): string =>
    renderToString(h(Division, { ...SAID, sheet, atOnce: false, onShow: nothing, onTake: nothing }));
  expect(drawn({ ...DEMO_OVAL, joints })).toContain(say('division-apart', { sections: 'main-track' }));
  expect(drawn(DEMO_OVAL)).not.toContain('No joint joins');
});

test('a joint that is selected can be forbidden or demanded; a sheet without sections says what is missing', () => {
  const drawn = (sheet: Sheet, selected?: string): string =>
    renderToString(
      h(DrawnSheet, { sheet, say, language: 'en', words: WORDS, selected, onSelect: nothing, onChange: nothing }),
    );
  const [joint] = DEMO_OVAL.joints;
  expect(drawn(DEMO_OVAL, joint?.id).match(/name="division-gap"/g)).toHaveLength(3);
  expect(drawn(DEMO_OVAL)).toContain(say('division-select'));
  for (const sheet of [
    { ...DEMO_OVAL, sections: [], joints: [] },
    { ...DEMO_OVAL, stages: [] },
    { ...DEMO_OVAL, trains: [] },
  ]) {
    expect(drawn(sheet)).not.toMatch(/\[division-|\[diagram-/);
  }
  expect(drawn({ ...DEMO_OVAL, trains: [] })).toContain(say('division-missing-trains'));
});

describe('the work', () => {
  test('tells how far it is, and gives what it would give at once', () => {
    const parts = inTries(DEMO_OVAL, 0);
    const tries: number[] = [];
    let step = parts.next();
    for (; step.done !== true; step = parts.next()) tries.push(step.value);
    expect(step.value).toEqual(found);
    expect(tries.length).toBeGreaterThan(1);
    expect(tries).toEqual(tries.toSorted((a, b) => a - b));
  });

  test('on the page itself it comes to the same, and once it is stopped it says nothing more', async () => {
    const whole = await new Promise((done) =>
      divideHere(DEMO_OVAL, { onTries: nothing, onDone: done, onFailed: nothing }),
    );
    expect(whole).toEqual(found);
    const told: unknown[] = [];
    const note = (one: unknown): void => {
      told.push(one);
    };
    const stop = divideHere(DEMO_OVAL, { onTries: note, onDone: note, onFailed: () => note('failed') });
    stop();
    await new Promise((done) => setTimeout(done, 300));
    expect(told).toEqual([]);
  });
});
