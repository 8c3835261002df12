// Layout sheets on a device and in a link: what is kept comes back, what is spoilt is told from what is good, and no tab writes over another.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MOST_LINK, packSheet } from '../../src/components/kept-sheets/link-to.ts';
import { packedIn, unpackSheet } from '../../src/components/kept-sheets/packed.ts';
import { placed, readShelf, writeShelf } from '../../src/components/kept-sheets/sheets.ts';
import { DEMO_CLUB, DEMO_OVAL, MOST_SHEET_TEXT, SHAPES } from '../../src/wizards/sheet/index.ts';
import { anySheet } from '../wizards/any-sheet.ts';

const ON = '2026-11-01T10:00:00.000Z';
const keptAs = (id: string, sheet = SHAPES.oval(3)) => ({ id, change: 'first', on: ON, sheet });

describe('Sheets on a device', () => {
  test('come back as they were kept', () => {
    fc.assert(
      fc.property(fc.array(anySheet, { maxLength: 3 }), (sheets) => {
        const shelf = { sheets: sheets.map((sheet, at) => keptAs(`s${at}`, sheet)), last: 's0' };
        expect(readShelf(writeShelf(shelf))).toEqual(shelf);
      }),
    );
  });

  test('that are spoilt anywhere are not taken for good', () => {
    const text = writeShelf({ sheets: [keptAs('a', DEMO_CLUB)], last: 'a' });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: text.length - 1 }), (end) => {
        expect(readShelf(text.slice(0, end))).toBeUndefined();
      }),
      { numRuns: 30 },
    );
    for (const other of ['null', '[]', '{}', text.replace('"metres"', '"meters"'), text.replace(':1,', ':2,')]) {
      expect(readShelf(other), other.slice(0, 40)).toBeUndefined();
    }
  });

  test('go where they lay, and beside it where another tab has changed that meanwhile', () => {
    const shelf = { sheets: [keptAs('a'), keptAs('b')], last: 'a' };
    const now = new Date(ON);
    const put = placed(shelf, DEMO_OVAL, { id: 'a', change: 'first' }, now);
    expect(put).toMatchObject({ apart: false, kept: { id: 'a', on: ON, sheet: DEMO_OVAL } });
    expect(put.kept.change).not.toBe('first');
    const other = placed(shelf, DEMO_OVAL, { id: 'a', change: 'another' }, now);
    expect(other.apart).toBe(true);
    expect(['a', 'b']).not.toContain(other.kept.id);
  });

  test('that were deleted in another tab while somebody changed them are kept again', () => {
    const put = placed({ sheets: [], last: undefined }, DEMO_OVAL, { id: 'a', change: 'first' }, new Date(ON));
    expect(put).toMatchObject({ apart: false, kept: { id: 'a' } });
  });
});

describe('A sheet in a link', () => {
  test('comes back as it was', async () => {
    await fc.assert(
      fc.asyncProperty(anySheet, async (sheet) => {
        const packed = await packSheet(sheet);
        expect(packed).toMatch(/^[\w-]+$/);
        expect(await unpackSheet(packedIn(`#sheet=${packed}`) ?? '')).toEqual({ sheet, flaws: [] });
      }),
      { numRuns: 40 },
    );
  });

  test('of the club’s demonstration is short enough to be sent', async () => {
    expect((await packSheet(DEMO_CLUB)).length).toBeLessThan(MOST_LINK / 2);
  });

  test.each(['', '%', 'A', 'not-a-sheet', '_____', '🚂'])(
    'that cannot be unpacked may have been cut: %s',
    async (packed) => {
      expect(await unpackSheet(packed)).toEqual({ problem: { why: 'cut-link' } });
    },
  );

  test('cut off is told', async () => {
    const packed = await packSheet(DEMO_CLUB);
    const read = await unpackSheet(packed.slice(0, -200));
    expect(read).toHaveProperty('problem');
  });

  test('that swells to more than any sheet is left before it fills the memory', async () => {
    const zeros = new Blob([' '.repeat(40 * MOST_SHEET_TEXT)])
      .stream()
      .pipeThrough(new CompressionStream('deflate-raw'));
    const bytes = new Uint8Array(await new Response(zeros).arrayBuffer());
    const packed = Buffer.from(bytes).toString('base64url');
    expect(await unpackSheet(packed)).toEqual({ problem: { why: 'too-large' } });
  });

  test('is found behind its own name only', () => {
    expect(packedIn('')).toBeUndefined();
    expect(packedIn('#trains')).toBeUndefined();
    expect(packedIn('#sheet=')).toBeUndefined();
  });
});
