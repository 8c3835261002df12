// Changing a layout sheet: what is typed, added, taken away, pasted and undone leaves a whole sheet, or is refused with its reason.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCell } from '../../src/wizards/sheet/columns.ts';
import {
  begun,
  COLUMNS,
  cellText,
  DEMO_CLUB,
  done,
  type Edited,
  EMPTY_SHEET,
  pasted,
  readSheet,
  redone,
  SHAPES,
  type Sheet,
  TABLES,
  undone,
  WIRING_COLUMNS,
  withCell,
  withMore,
  without,
  withTold,
  withWire,
  writeSheet,
} from '../../src/wizards/sheet/index.ts';
import { anySheet } from './any-sheet.ts';

const OVAL = SHAPES.oval(4);
type Table = (typeof TABLES)[number];

function sheetOf(edited: Edited): Sheet {
  if (!('sheet' in edited)) throw new Error(`refused: ${JSON.stringify(edited)}`);
  return edited.sheet;
}

function columnOf(table: Table, field: string) {
  const column = COLUMNS[table].find((one) => one.field === field);
  if (column === undefined) throw new Error(`no column ${field}`);
  return column;
}

const typed = (sheet: Sheet, table: Table, at: number, field: string, text: string, bare?: 'feet-and-gauge') =>
  withCell(sheet, table, at, columnOf(table, field), text, bare);

describe('What is typed in a table', () => {
  test.each([
    ['sections', 'metres', '2,4', 2.4],
    ['sections', 'metres', '240 cm', 2.4],
    ['sections', 'metres', '3 ft', 0.9144],
    ['sections', 'traffic', '2,5', 2.5],
    ['sections', 'fixedAmps', '150 mA', 0.15],
    ['sections', 'fixedAmps', '', undefined],
    ['sections', 'name', '  Mill ', 'Mill'],
    ['joints', 'awkward', '3', 3],
    ['joints', 'cut', 'both', 'both'],
    ['trains', 'sound', 'yes', true],
    ['trains', 'sound', 'no', false],
    ['trains', 'runningAmps', '0,3-0,5 A', { from: 0.3, to: 0.5 }],
    ['stages', 'limitAmps', '3 A', 3],
  ] as const)('%s, %s: “%s” is taken', (table, field, text, value) => {
    const sheet = sheetOf(typed(OVAL, table, 0, field, text));
    expect(sheet[table][0]).toEqual(value === undefined ? OVAL[table][0] : { ...OVAL[table][0], [field]: value });
  });

  test.each([
    ['sections', 'metres', '', 'empty'],
    ['sections', 'metres', 'long', 'not-a-number'],
    ['sections', 'metres', '5 A', 'unknown-unit'],
    ['sections', 'metres', '0', 'too-small'],
    ['sections', 'metres', '1000', 'too-large'],
    ['sections', 'traffic', '2 A', 'not-a-number'],
    ['sections', 'at', 'left', 'not-a-number'],
    ['trains', 'count', '2,5', 'not-whole'],
    ['supplies', 'volts', '230', 'mains-side'],
  ] as const)('%s, %s: “%s” is refused: %s', (table, field, text, because) => {
    expect(typed(OVAL, table, 0, field, text)).toMatchObject({ problem: { because } });
  });

  test('a joint cannot lead from a section to itself, nor to one that is not there', () => {
    expect(typed(OVAL, 'joints', 0, 'to', 'left-back')).toMatchObject({ flaw: { why: 'to-itself' } });
    expect(typed(OVAL, 'joints', 0, 'to', 'nowhere')).toMatchObject({
      flaw: { why: 'names-nothing', mark: 'nowhere' },
    });
  });

  test('another mark of a section is taken wherever the old one stood: joints, feeders, districts; and can be undone', () => {
    const districts = [{ stage: 'station', sections: OVAL.sections.map(({ id }) => id) }];
    const fed = { ...sheetOf(typed(OVAL, 'stages', 0, 'feeds', 'left-back')), districts };
    const sheet = sheetOf(typed(fed, 'sections', 0, 'id', ' Mühle West '));
    expect(sheet.sections[0]).toEqual({ ...fed.sections[0], id: 'muhle-west' });
    expect(JSON.stringify(sheet)).not.toContain('"left-back"');
    expect(sheet.joints.filter(({ from, to }) => [from, to].includes('muhle-west'))).toHaveLength(2);
    expect(sheet.stages[0]?.feeds).toEqual(['muhle-west']);
    expect(sheet.districts?.[0]?.sections[0]).toBe('muhle-west');
    expect(undone(done(begun(fed), sheet)).now).toEqual(fed);
  });

  test('a mark that another section has, or none at all, is refused', () => {
    expect(typed(OVAL, 'sections', 0, 'id', 'back-left')).toMatchObject({ flaw: { why: 'taken', mark: 'back-left' } });
    expect(typed(OVAL, 'sections', 0, 'id', ' ')).toMatchObject({ problem: { because: 'empty' } });
    expect(typed(OVAL, 'sections', 0, 'id', '!!')).toMatchObject({ flaw: { why: 'not-allowed' } });
    expect(sheetOf(typed(OVAL, 'sections', 0, 'id', 'Left back'))).toEqual(OVAL);
  });

  test('a section is fed by one stage only', () => {
    const two = sheetOf(withMore(sheetOf(typed(OVAL, 'stages', 0, 'feeds', 'left-back')), 'stages'));
    expect(typed(two, 'stages', 1, 'feeds', 'left-back')).toMatchObject({ flaw: { why: 'twice', mark: 'left-back' } });
  });

  test('lengths without a unit are feet for whoever measures in feet', () => {
    const sheet = sheetOf(typed(OVAL, 'sections', 0, 'metres', '3', 'feet-and-gauge'));
    expect(sheet.sections[0]?.metres).toBeCloseTo(0.9144, 9);
  });

  test('wires are typed in square millimetres or as a gauge', () => {
    const [column] = WIRING_COLUMNS.filter(({ field }) => field === 'busSquareMillimetres');
    if (column === undefined) throw new Error('no column');
    expect(sheetOf(withWire(OVAL, column, '2,5 mm²')).wiring).toEqual({ busSquareMillimetres: 2.5 });
    const gauge = sheetOf(withWire(OVAL, column, '14 AWG')).wiring;
    expect(gauge?.busSquareMillimetres).toBeCloseTo(2.08, 2);
    expect(sheetOf(withWire(sheetOf(withWire(OVAL, column, '2.5')), column, ''))).toEqual(OVAL);
  });

  /** Every number of a sheet that stands in a cell, with its column. */
  const numbersIn = (sheet: Sheet) =>
    TABLES.flatMap((table) =>
      sheet[table].flatMap((part) => {
        const fields = new Map<string, unknown>(Object.entries(part));
        return COLUMNS[table].flatMap((column) => {
          const value = fields.get(column.field);
          return typeof value === 'number' ? [{ column, value }] : [];
        });
      }),
    );

  test('what a cell shows of a number is read as that number again, in both systems', () => {
    fc.assert(
      fc.property(anySheet, fc.constantFrom('metric' as const, 'feet-and-gauge' as const), (sheet, system) => {
        for (const { column, value } of numbersIn(sheet)) {
          const read = readCell(column, cellText(column, value, system), system);
          expect('value' in read ? Number(read.value) - value : read, column.field).toBeCloseTo(0, 4);
        }
      }),
    );
  });
});

describe('What is added and taken away', () => {
  test('leaves a whole sheet, whatever it was', () => {
    fc.assert(
      fc.property(anySheet, fc.constantFrom(...TABLES), fc.nat(12), (sheet, table, at) => {
        const more = withMore(sheet, table);
        if ('sheet' in more) expect(readSheet(writeSheet(more.sheet))).toEqual({ sheet: more.sheet, flaws: [] });
        if (at >= sheet[table].length) return;
        const less = sheetOf(without(sheet, table, at));
        expect(less[table]).toHaveLength(sheet[table].length - 1);
      }),
    );
  });

  test('a section goes with its joints, and the division of the rest holds', () => {
    const at = DEMO_CLUB.sections.findIndex(({ id }) => id === 'shed-lead');
    const less = sheetOf(without(DEMO_CLUB, 'sections', at));
    expect(less.joints).toHaveLength(DEMO_CLUB.joints.length - 2);
    expect(less.districts).toHaveLength(4);
  });

  test('a section that the division does not know ends it', () => {
    expect(sheetOf(withMore(DEMO_CLUB, 'sections')).districts).toBeUndefined();
  });

  test('a stage that goes ends the division, and the next becomes the command station', () => {
    const less = sheetOf(without(DEMO_CLUB, 'stages', 0));
    expect(less.stages.map(({ kind }) => kind)).toEqual(['station', 'booster', 'booster']);
    expect(less.districts).toBeUndefined();
  });

  test('a supply that goes feeds nothing any more', () => {
    const less = sheetOf(without(DEMO_CLUB, 'supplies', 0));
    expect(less.stages[0]?.supply).toBeUndefined();
    expect(less.stages[1]?.supply).toBe('supply-2');
  });

  test('a stage comes with a supply of its own, and the first is the command station', () => {
    const sheet = sheetOf(withMore(sheetOf(withMore(EMPTY_SHEET, 'stages')), 'stages'));
    expect(sheet.stages).toEqual([
      { id: 'station', kind: 'station', supply: 'supply-1' },
      { id: 'booster-1', kind: 'booster', supply: 'supply-2' },
    ]);
  });

  test('no joint without two sections to join', () => {
    expect(withMore(EMPTY_SHEET, 'joints')).toMatchObject({ flaw: { why: 'names-nothing' } });
  });

  test('no more of anything than a sheet holds', () => {
    const full = Array.from({ length: 12 }, (_, at) => ({ id: `supply-${at}` }));
    expect(withMore(sheetOf(withTold(EMPTY_SHEET, 'supplies', full)), 'supplies')).toMatchObject({
      flaw: { why: 'too-many', list: 'supplies' },
    });
  });
});

describe('Undoing', () => {
  test('all that was done gives back the sheet, and doing it again what it became', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...TABLES), { minLength: 1, maxLength: 12 }), (tables) => {
        let history = begun(OVAL);
        for (const table of tables) history = done(history, sheetOf(withMore(history.now, table)));
        const became = history.now;
        for (const _ of tables) history = undone(history);
        expect(history.now).toEqual(OVAL);
        expect(undone(history)).toBe(history);
        for (const _ of tables) history = redone(history);
        expect(history.now).toEqual(became);
        expect(redone(history)).toBe(history);
      }),
    );
  });

  test('and changing something else forgets what was undone', () => {
    const one = done(begun(OVAL), sheetOf(withTold(OVAL, 'coaches', 3)));
    const other = done(undone(one), sheetOf(withTold(OVAL, 'coaches', 4)));
    expect(redone(other).now.coaches).toBe(4);
  });
});

describe('What is pasted from a spreadsheet', () => {
  const EXPECTED = [
    { id: 'section-1', name: 'Mill', metres: 2.4, traffic: 3 },
    { id: 'section-2', name: 'Wharf', metres: 1.5, traffic: 1.5 },
  ];

  test.each([
    ['tabs and decimal commas', 'Mill\t2,4\t3\r\nWharf\t1,5'],
    ['semicolons and decimal commas', 'Mill;2,4;3\nWharf;1,5\n'],
    ['commas and decimal points', 'Mill,2.4,3\nWharf,1.5'],
    ['units', 'Mill\t240 cm\t3\nWharf\t1.5 m'],
    ['quotes', '"Mill";"2,4";3\n"Wharf";1,5'],
  ])('is read with %s', (_, text) => {
    const { sheet, ...rest } = pasted(EMPTY_SHEET, 'sections', text);
    expect(sheet.sections).toEqual(EXPECTED);
    expect(rest).toEqual({ added: 2, unread: [], heading: undefined });
  });

  test('with headings is read below them', () => {
    const read = pasted(EMPTY_SHEET, 'sections', 'Name\tLength\nMill\t2.4\t3\nWharf\t1.5');
    expect(read).toMatchObject({ added: 2, heading: 1, unread: [] });
  });

  test('is read but for the lines that cannot be, which are told', () => {
    const read = pasted(EMPTY_SHEET, 'sections', 'Mill;2,4;3\n\nHill;long\nWharf;1,5\nQuay;2;x');
    expect(read.sheet.sections).toEqual(EXPECTED);
    expect(read.unread).toEqual([
      { line: 3, field: 'metres', given: 'Hill;long' },
      { line: 5, field: 'traffic', given: 'Quay;2;x' },
    ]);
  });

  test('in a row meets what stands above it, if wanted', () => {
    const { sheet } = pasted(OVAL, 'sections', 'Mill;1\nWharf;1\nQuay;1', { joined: true });
    expect(sheet.joints.slice(OVAL.joints.length).map(({ from, to }) => `${from} ${to}`)).toEqual([
      'section-1 section-2',
      'section-2 section-3',
    ]);
  });

  test('as trains is measured where amperes stand there', () => {
    const { sheet } = pasted(EMPTY_SHEET, 'trains', 'Goods;2\nExpress;1;0,4-0,6;0,05');
    expect(sheet.trains).toEqual([
      { name: 'Goods', kind: 'modern', count: 2 },
      { name: 'Express', kind: 'measured', count: 1, runningAmps: { from: 0.4, to: 0.6 }, standingAmps: 0.05 },
    ]);
  });

  test('beyond what a sheet holds is told line by line, and nothing else is lost', () => {
    const text = Array.from({ length: 125 }, (_, at) => `S${at};1`).join('\n');
    const read = pasted(EMPTY_SHEET, 'sections', text);
    expect(read.sheet.sections).toHaveLength(120);
    expect(read.unread.map(({ line }) => line)).toEqual([121, 122, 123, 124, 125]);
  });

  test('never throws and leaves a whole sheet, whatever it is', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('sections' as const, 'trains' as const), (text, table) => {
        const { sheet } = pasted(OVAL, table, text);
        expect(readSheet(writeSheet(sheet))).toEqual({ sheet, flaws: [] });
      }),
    );
  });
});
