// Tables that spreadsheets open: as their language parts columns, with every sign, and with nothing that reckons.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { columnSign, csvOf } from '../../src/wizards/plan/csv.ts';

/** Reads RFC 4180 back, as a spreadsheet would: every cell is in quotation marks. */
function readBack(text: string, sign: string): string[][] {
  const rows: string[][] = [[]];
  for (const [, cell = '', end] of text.matchAll(/"((?:[^"]|"")*)"(;|,|\r\n)/g)) {
    expect(end === sign || end === '\r\n').toBe(true);
    rows.at(-1)?.push(cell.replaceAll('""', '"'));
    if (end !== sign) rows.push([]);
  }
  return rows.slice(0, -1);
}

describe('A table', () => {
  test('has commas where numbers have points, and semicolons where they have commas', () => {
    expect(['en', 'de', 'fr', 'ja'].map(columnSign)).toEqual([',', ';', ';', ',']);
  });

  test('begins with the mark of UTF-8, and holds every sign that was in it', () => {
    const rows = fc.array(fc.array(fc.string({ unit: 'grapheme' }), { minLength: 2, maxLength: 2 }), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(rows, fc.constantFrom('en', 'de'), (table, language) => {
        const text = csvOf(table, language);
        expect(text.startsWith('\uFEFF')).toBe(true);
        const back = readBack(text.slice(1), columnSign(language));
        expect(back.map((row) => row.map((cell) => cell.replace(/^'/, '')))).toEqual(
          table.map((row) => row.map((cell) => cell.replace(/^'/, ''))),
        );
      }),
    );
  });

  test.each(['=HYPERLINK("x")', '+1', '-2', '@SUM(A1)', '\t=1', '  =1', '|calc'])('shows %j as a text', (cell) => {
    const [[shown] = []] = readBack(csvOf([[cell]], 'en').slice(1), ',');
    expect(shown?.startsWith("'")).toBe(true);
  });

  test('leaves everything else as it is', () => {
    expect(csvOf([['Gap 1', '0.5 V']], 'en')).toBe('\uFEFF"Gap 1","0.5 V"\r\n');
  });
});
