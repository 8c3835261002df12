// The JSON Schema that is published of a layout sheet, judged by a validator of others: it takes what the site takes, and nothing else.
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toJSONSchema } from 'zod/mini';
import { DEMO_CLUB, DEMO_OVAL, SHAPE_IDS, SHAPES, sheetShape, writeSheet } from '../../src/wizards/sheet/index.ts';
import { anySheet } from './any-sheet.ts';

const takes = new Ajv2020({ strict: true, strictTypes: false }).compile(toJSONSchema(sheetShape));

describe('The JSON Schema of a layout sheet', () => {
  test('takes every file that the site writes', () => {
    const written = (sheet: Parameters<typeof writeSheet>[0]): unknown => JSON.parse(writeSheet(sheet));
    for (const sheet of [DEMO_CLUB, DEMO_OVAL, ...SHAPE_IDS.map((id) => SHAPES[id](5))]) {
      expect(takes(written(sheet)), JSON.stringify(takes.errors)).toBe(true);
    }
    fc.assert(fc.property(anySheet, (sheet) => takes(written(sheet))));
  });

  test.each([
    ['another form', { form: 'a-sheet' }],
    ['another version', { version: 2 }],
    ['a scale that nobody builds in', { scale: 'q' }],
    ['a section of no length', { sections: [{ id: 'a', metres: 0, traffic: 1 }] }],
    ['a mark with a space', { sections: [{ id: 'a b', metres: 1, traffic: 1 }] }],
    ['half a train', { trains: [{ kind: 'modern', count: 0.5 }] }],
    ['a joint with no end', { joints: [{ id: 'j', from: 'a', gap: 'possible', cut: 'none', awkward: 0 }] }],
    ['a supply for the wall socket', { supplies: [{ id: 's', volts: 230 }] }],
    ['a field that nobody knows', { colour: 'red' }],
    [
      'more sections than a sheet holds',
      { sections: DEMO_CLUB.sections.concat(DEMO_CLUB.sections, DEMO_CLUB.sections) },
    ],
  ])('refuses %s', (_, change) => {
    expect(takes({ ...DEMO_CLUB, ...change })).toBe(false);
  });
});
