// The drawing of a layout, drawn as a browser draws it: nothing without words, and the same in words as in lines.
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { Diagram, layAhead } from '../../src/components/diagram/Diagram.tsx';
import { WordList } from '../../src/components/diagram/InWords.tsx';
import { nextTo } from '../../src/components/diagram/keys.ts';
import { lookOf } from '../../src/components/diagram/look.ts';
import { goesOnAt, stripsOf } from '../../src/components/diagram/strips.ts';
import { Numbers, sayer } from '../../src/components/words/index.ts';
import { DEMO_CLUB, SHAPE_IDS, SHAPES } from '../../src/wizards/sheet/index.ts';
import { SECTION_TAGS, type Sheet } from '../../src/wizards/sheet/sheet.ts';
import { dress, layOut } from '../../src/wizards/sheet-drawing/index.ts';
import { club, joined, LOOP } from '../wizards/sheet-drawing/tracks.ts';
import { wordsOf } from './folder.ts';

const say = sayer(
  Object.fromEntries(
    wordsOf('en', 'words').flatMap(({ data }) => Object.entries(data).map(([key, text]) => [key, String(text)])),
  ),
  'en',
);
const numbers = new Numbers('en');

/** Everything that a sheet can say of a section, a joint, a stage and a supply. */
const SHEET: Sheet = {
  form: 'both-rails-layout-sheet',
  version: 1,
  name: '',
  scale: 'h0',
  trains: [],
  sections: LOOP.sections.map((section, i) => ({
    ...section,
    name: `${section.id} by the window`,
    tags: SECTION_TAGS.filter((_, at) => at % LOOP.sections.length === i),
  })),
  joints: [
    joined('platform', 'turnout-out', { cut: 'one' }),
    joined('siding', 'turnout-out', { cut: 'unknown' }),
    joined('turnout-out', 'line', { gap: 'impossible' }),
    joined('line', 'turnout-loop', { cut: 'both' }),
    joined('turnout-loop', 'loop'),
    joined('loop', 'turnout-loop'),
  ],
  stages: [
    { id: 'station', kind: 'station', limitAmps: 3, supply: 'first', feeds: ['line'] },
    { id: 'first-booster', kind: 'booster', supply: 'second' },
    { id: 'second-booster', kind: 'booster', supply: 'third' },
  ],
  supplies: [
    { id: 'first', kind: 'dc', volts: 15, amps: 4 },
    { id: 'second', kind: 'ac', volts: 16, amps: 3 },
    { id: 'third' },
  ],
  districts: [
    { stage: 'station', sections: ['platform', 'siding', 'turnout-out', 'line', 'turnout-loop'] },
    { stage: 'second-booster', sections: ['loop'] },
  ],
};

const drawn = (sheet: Sheet, more: object = {}): string =>
  renderToString(h(Diagram, { sheet, say, numbers, language: 'en', ...more }));

describe('the drawing of a layout', () => {
  test('has words for all that a sheet can say, read out or shown', () => {
    for (const more of [{}, { onSelect: () => undefined }, { districts: [] }]) {
      expect(drawn(SHEET, more)).not.toMatch(/\[diagram-|\{[a-z]+\}/);
    }
    expect(drawn({ ...SHEET, sections: [], joints: [] })).toContain(say('diagram-empty'));
  });

  test('what nobody has read on a label is said to be unread', () => {
    const text = drawn(SHEET);
    expect(text).toContain(say('diagram-label-not-read'));
    expect(text).toContain(say('diagram-limit-not-read'));
    // Amperes alone are the least that a beginner tells: they stand there, and so does what is missing.
    expect(drawn({ ...SHEET, supplies: [{ id: 'first', amps: 3 }] })).toContain(
      say('diagram-label-amps', { amps: numbers.amps(3) }),
    );
  });

  test('where nothing is chosen it is a picture with a name, and where one chooses, one stop of the keyboard', () => {
    expect(drawn(SHEET)).not.toContain('role="button"');
    const chosen = drawn(SHEET, { onSelect: () => undefined, selected: { kind: 'joint', id: 'line-turnout-loop' } });
    expect(chosen.match(/role="button"/g)).toHaveLength(SHEET.sections.length + SHEET.joints.length);
    expect(chosen.match(/data-key="[^"]*"[^>]*tabindex="0"/g)).toHaveLength(1);
    expect(chosen.match(/aria-pressed="true"/g)).toHaveLength(1);
  });

  test('every district is told apart in black and white, and by its letter', () => {
    const districts = SHEET.sections.map(({ id }) => ({ stage: 'station', sections: [id] }));
    const patterns = districts.map((_, i) => lookOf(i).replace(/colour-\d /, ''));
    expect(new Set(patterns).size).toBe(6);
    expect(new Set(Array.from({ length: 12 }, (_, i) => lookOf(i))).size).toBe(12);
    const letters = drawn(SHEET, { districts }).match(/class="letter"[^>]*>[A-F]</g);
    expect(letters).toHaveLength(6);
  });

  test('gaps have the numbers of the list beside it', () => {
    const numbered = drawn(SHEET, { gapNumbers: new Map([['line-turnout-loop', 12]]) });
    expect(numbered.match(/class="gap-number"[^>]*>12</g)).toHaveLength(1);
    expect(drawn(SHEET)).not.toContain('gap-number');
  });

  test('the words name each district with its sections, and each gap between two', () => {
    const names = new Map(SHEET.sections.map(({ id }) => [id, id]));
    const shown = {
      laid: layOut(SHEET, ({ id }) => id),
      dressed: dress(SHEET, SHEET.districts ?? []),
      names,
      sheet: SHEET,
    };
    const text = renderToString(h(WordList, { ...shown, say, language: 'en' }));
    expect(text).toContain('District A, from Command station: platform, siding, turnout-out, line, and turnout-loop.');
    expect(text).toContain('District B, from Booster 2: loop.');
    expect(text).toContain(
      'Between A and B, both rails cut: turnout-loop – loop, first end and loop – turnout-loop, second end.',
    );
    expect(text).toContain('One rail only is cut: platform – turnout-out.');
    expect(text).toContain('No gap is possible: turnout-out – line.');
  });
});

test('What is left of the names of the invented club, and of every shape, tells each section from the others', () => {
  for (const sheet of [DEMO_CLUB, ...SHAPE_IDS.map((id) => SHAPES[id](4))]) {
    const { sections } = layOut(sheet, ({ id }) => say(`part-${id}`));
    expect(sections.filter(({ label }) => label.y < 0)).toEqual([]);
    const left = sections.map(({ lines }) => lines.map(({ text }) => text).join(' '));
    expect(left.filter((one, at) => one === '' || one.includes('[') || left.indexOf(one) !== at)).toEqual([]);
  }
});

describe('on paper', () => {
  const named = (sheet: Sheet) => layOut(sheet, ({ id, name }) => name ?? id);
  /** Letters of the drawing on paper, points: 72 to an inch of 25.4 mm. */
  const pointsOf = (scale: number): number => (13 * scale * 72) / 25.4;

  test('a wide drawing stands in strips that leave nothing out and cut no section, no name and no mark', () => {
    const laid = layOut(club(60, 68, 5), ({ id }) => id);
    const { strips } = stripsOf(laid);
    expect(strips.length).toBeGreaterThan(2);
    expect(strips.reduce((sum, { width }) => sum + width, 0)).toBeCloseTo(laid.width);
    const stripsWith = (left: number, right: number) =>
      strips.filter((strip) => strip.x < right && strip.x + strip.width > left);
    for (const { left, right, y, label } of laid.sections) {
      const inside = stripsWith(Math.min(left, label.x), Math.max(right, label.x + label.width));
      expect(inside).toHaveLength(1);
      for (const strip of inside) {
        expect(strip.y).toBeLessThan(label.y);
        expect(strip.y + strip.height).toBeGreaterThan(y);
      }
    }
    for (const { at } of laid.joints) expect(stripsWith(at.x - 14, at.x + 14)).toHaveLength(1);
  });

  test('where track goes on in the next strip, both ends have one letter, and no other track has it', () => {
    const laid = layOut(club(60, 68, 5), ({ id }) => id);
    const found = stripsOf(laid);
    const marks = [...goesOnAt(laid, found)];
    expect(marks.map(([cut]) => cut)).toEqual(found.strips.slice(1).map(({ x }) => x));
    const letters = marks.flatMap(([, here]) => here.map(({ letter }) => letter));
    expect(new Set(letters).size).toBe(letters.length);
    for (const [cut, here] of marks) {
      const passing = laid.joints
        .map(({ from, to }) => [...from, ...to])
        .filter((way) => way.some(({ x }) => x < cut) && way.some(({ x }) => x > cut));
      expect(passing.length).toBeGreaterThan(0);
      expect(here.length).toBeGreaterThanOrEqual(new Set(passing.map((way) => way.map(({ y }) => y).join())).size);
      for (const [i, { y }] of here.slice(1).entries()) expect(y - (here[i]?.y ?? y)).toBeGreaterThanOrEqual(18);
    }
  });

  test('a club’s drawing takes two sheets at most, a starter’s a part of one; letters have 7 points or more', () => {
    const room = 273;
    const sheetsFor = (sheet: Sheet): number => {
      const { strips, scale } = stripsOf(named(sheet));
      expect(pointsOf(scale)).toBeGreaterThanOrEqual(7);
      let [sheets, used] = [1, 0];
      for (const { height } of strips) {
        const high = height * scale + 3;
        if (used + high > room) [sheets, used] = [sheets + 1, 0];
        used += high;
      }
      return sheets - 1 + used / room;
    };
    expect(sheetsFor(DEMO_CLUB)).toBeLessThanOrEqual(2);
    for (const id of SHAPE_IDS) expect(sheetsFor(SHAPES[id](4))).toBeLessThan(0.75);
  });

  test('a small one stands as it is', () => {
    expect(stripsOf(layOut(LOOP, ({ id }) => id)).strips).toHaveLength(1);
  });
});

test('a layout that was laid out ahead is drawn as it would be otherwise; of other track it says nothing', async () => {
  const ahead = await layAhead(SHEET);
  expect(ahead?.laid).toEqual(layOut(SHEET, ({ id, name }) => name ?? id));
  expect(drawn(SHEET, { ahead })).toBe(drawn(SHEET));
  // What was laid out ahead is what is drawn.
  expect(drawn(SHEET, { ahead: { ...ahead, laid: (await layAhead(DEMO_CLUB))?.laid } })).not.toBe(drawn(SHEET));
  // In another tab the same track is another object, and a name that is another asks for other room.
  expect((await layAhead(structuredClone(SHEET)))?.of).toBe(ahead?.of);
  expect((await layAhead(SHEET, ({ id }) => id))?.of).not.toBe(ahead?.of);
  expect(drawn(DEMO_CLUB, { ahead })).toBe(drawn(DEMO_CLUB));
});

describe('the arrow keys', () => {
  const spots = [
    { key: 'left', x: 0, y: 0 },
    { key: 'middle', x: 100, y: 0 },
    { key: 'below', x: 100, y: 90 },
    { key: 'right', x: 200, y: 10 },
  ];

  test('lead to what is nearest that way, and nowhere at the end', () => {
    expect(nextTo(spots, 'left', 'ArrowRight')).toBe('middle');
    expect(nextTo(spots, 'middle', 'ArrowRight')).toBe('right');
    expect(nextTo(spots, 'middle', 'ArrowDown')).toBe('below');
    expect(nextTo(spots, 'below', 'ArrowUp')).toBe('middle');
    expect(nextTo(spots, 'right', 'ArrowRight')).toBeUndefined();
    expect(nextTo(spots, 'right', 'Home')).toBe('left');
    expect(nextTo(spots, 'left', 'End')).toBe('right');
    expect(nextTo(spots, 'left', 'a')).toBeUndefined();
  });
});
