// A case notebook as a text: what is kept comes back, what is no notebook is told with its place, and two become one without a loss.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Kept, merged, readBook, writeBook } from '../../src/components/device/book.ts';
import { type Change, withChange } from '../../src/components/notebook/change.ts';

const CLUB: Kept = {
  id: 'a',
  name: 'Hall, eastern district',
  note: 'Anna asked on Thursday.\nTwo boosters.',
  path: 'en/work-it-out/wire-it/?bus-length=12+m&wire-amps=3+A#step-2',
  verdict: 'The bus is too thin',
  on: '2026-11-26T18:00:00.000Z',
};

const fresh = (): (() => string) => {
  let n = 0;
  return () => `new-${++n}`;
};

const ANSWER = fc.record({
  id: fc.string({ minLength: 1, maxLength: 20 }),
  name: fc.string({ maxLength: 200 }),
  note: fc.string({ maxLength: 500 }),
  path: fc.constantFrom('en/', 'en/put-it-right/trips-at-gap/?told=yes', CLUB.path),
  verdict: fc.string({ maxLength: 100 }),
  on: fc.date({ noInvalidDate: true, min: new Date(0), max: new Date('2100-01-01') }).map((date) => date.toISOString()),
});

describe('A notebook', () => {
  test('comes back as it was written, whatever the names and notes say', () => {
    fc.assert(
      fc.property(fc.array(ANSWER, { maxLength: 20 }), (kept) => {
        expect(readBook(writeBook(kept))).toEqual({ kept });
      }),
    );
  });

  test('that is cut off is told with the place where it ends', () => {
    const whole = writeBook([CLUB]);
    for (const length of [40, 100, whole.length - 1]) {
      expect(readBook(whole.slice(0, length))).toEqual({ fault: { why: 'broken-text', at: expect.any(Number) } });
    }
  });

  test('is not any other file', () => {
    for (const other of [
      '',
      'hello',
      '{"name":"x"}',
      '[]',
      'null',
      '{"both-rails-notebook":"one","kept":[]}',
      '\u0000PNG',
    ]) {
      expect(readBook(other), other).toEqual({ fault: { why: 'no-notebook' } });
    }
    expect(readBook('['.repeat(4_000_000))).toEqual({ fault: { why: 'no-notebook' } });
  });

  test('of a later release is told to be one', () => {
    expect(readBook('{"both-rails-notebook":2,"kept":[]}')).toEqual({ fault: { why: 'later-release' } });
  });

  test('that is larger than any may be is not read', () => {
    expect(readBook(`{"both-rails-notebook":1,"kept":[${' '.repeat(50_000_000)}]}`)).toEqual({
      fault: { why: 'too-large' },
    });
    const many = Array.from({ length: 5001 }, () => '{}').join();
    expect(readBook(`{"both-rails-notebook":1,"kept":[${many}]}`)).toEqual({ fault: { why: 'too-large' } });
  });

  test('whose answer is wrong is told which one, and what of it', () => {
    const withPart = (part: object): string =>
      JSON.stringify({ 'both-rails-notebook': 1, kept: [CLUB, { ...CLUB, ...part }] });
    expect(readBook(withPart({ on: 'yesterday' }))).toEqual({ fault: { why: 'wrong-part', at: 2, part: 'on' } });
    expect(readBook(withPart({ name: 7 }))).toEqual({ fault: { why: 'wrong-part', at: 2, part: 'name' } });
    expect(readBook(withPart({ more: 1 }))).toEqual({ fault: { why: 'wrong-answer', at: 2 } });
    expect(readBook('{"both-rails-notebook":1,"kept":[7]}')).toEqual({ fault: { why: 'wrong-answer', at: 1 } });
  });

  test('leads to pages of this site only, and runs nothing', () => {
    const away = [
      ...['javascript:alert(1)', '//elsewhere.example/', 'https://elsewhere.example/', '/en/', '../en/', 'en/../../x/'],
      ...[
        'en//elsewhere.example/',
        'en/\\elsewhere.example/',
        'xx/work-it-out/',
        'data:text/html,x',
        'en/work it out/',
        '',
      ],
    ];
    for (const path of away) {
      const read = readBook(JSON.stringify({ 'both-rails-notebook': 1, kept: [{ ...CLUB, path }] }));
      expect(read, path).toEqual({ fault: { why: 'wrong-part', at: 1, part: 'path' } });
    }
  });
});

describe('Two notebooks', () => {
  test('become one: what is there word for word is counted and not doubled', () => {
    const other = { ...CLUB, id: 'b', name: 'Yard' };
    expect(merged([CLUB], [CLUB, other, { ...CLUB, id: 'z' }], fresh())).toEqual({
      kept: [CLUB, other],
      added: 1,
      same: 2,
      otherwise: 0,
    });
  });

  test('with an answer that was changed in one of them keep both', () => {
    const changed = { ...CLUB, note: 'Solved.' };
    expect(merged([CLUB], [changed], fresh())).toEqual({
      kept: [CLUB, { ...changed, id: 'new-1' }],
      added: 0,
      same: 0,
      otherwise: 1,
    });
  });

  test('never lose or change what was here, and taking one in twice adds nothing more', () => {
    fc.assert(
      fc.property(fc.array(ANSWER, { maxLength: 8 }), fc.array(ANSWER, { maxLength: 8 }), (here, there) => {
        const once = merged(here, there, fresh());
        expect(once.kept.slice(0, here.length)).toEqual(here);
        expect(once.added + once.same + once.otherwise).toBe(there.length);
        expect(merged(once.kept, there, fresh()).kept).toEqual(once.kept);
      }),
    );
  });
});

describe('What is changed in two tabs at once', () => {
  test('is both there, where one changes the name and the other the note', () => {
    const there = withChange([CLUB], CLUB, { note: 'Fed twice now.' }, fresh()).kept;
    expect(withChange(there, CLUB, { name: 'Hall, solved' }, fresh())).toEqual({
      kept: [{ ...CLUB, note: 'Fed twice now.', name: 'Hall, solved' }],
      outcome: 'changed',
    });
  });

  test('stands there twice, where both change the same', () => {
    const there = withChange([CLUB], CLUB, { note: 'One' }, fresh()).kept;
    expect(withChange(there, CLUB, { note: 'Other' }, fresh())).toEqual({
      kept: [
        { ...CLUB, note: 'One' },
        { ...CLUB, note: 'Other', id: 'new-1' },
      ],
      outcome: 'both',
    });
  });

  test('is kept again, where the other tab deletes it', () => {
    expect(withChange([], CLUB, { note: 'Other' }, fresh())).toEqual({
      kept: [{ ...CLUB, note: 'Other' }],
      outcome: 'again',
    });
  });

  test('never takes away a word that either of them wrote', () => {
    const CHANGE: fc.Arbitrary<Change> = fc.record(
      { name: fc.string({ maxLength: 200 }), note: fc.string({ maxLength: 500 }) },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(ANSWER, CHANGE, CHANGE, (answer, first, second) => {
        const { kept } = withChange(withChange([answer], answer, first, fresh()).kept, answer, second, fresh());
        for (const part of ['name', 'note'] as const) {
          const written = [first[part], second[part]].flatMap((one) => one ?? []);
          for (const one of written.filter((one) => one !== answer[part]))
            expect(kept.map((left) => left[part])).toContain(one);
        }
      }),
    );
  });
});
