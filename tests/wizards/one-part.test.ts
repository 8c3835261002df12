// Whoever has told that the layout is one part reads of no other part and of no gap, in no question and no answer; nor does anybody who has not
// said that there is one.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NOTHING_TOLD, replayWalk } from '../../src/wizards/put-it-right/address.ts';
import {
  COMPLAINT_IDS,
  fitsOnePart,
  optionsFor,
  SIGN_MODEL,
  speaksOfAnotherPart,
  TWO_PARTS,
} from '../../src/wizards/put-it-right/model/index.ts';
import { supposes } from '../../src/wizards/put-it-right/model/second-part.ts';
import { stateOf } from '../../src/wizards/put-it-right/step.ts';
import { wordsOf } from '../content/folder.ts';
import { askOnAndOn } from './on-and-on.ts';

askOnAndOn();

const ANOTHER = /\b(?:new|other|old|far|near) part\b|\b(?:both|two|each) parts?\b|\bgaps?\b|\bboundary\b/i;
/** Asks how many parts there are, and tells what part means. */
const ASKS_ITSELF = 'how-many-parts';
const WORDS = new Map(wordsOf('en', 'checks').map(({ id, data }) => [id, data]));

type Options = Readonly<Record<string, { readonly label: string; readonly hint?: string }>>;
const isOptions = (value: unknown): value is Options => typeof value === 'object' && value !== null;

/** Everything that is read when a check is asked on a layout of one part. */
function readAt(check: string, options: readonly string[]): string {
  const data = WORDS.get(check) ?? {};
  const labels = isOptions(data['options']) ? data['options'] : {};
  const shown = optionsFor(check, options, true).map((id) => `${labels[id]?.label} ${labels[id]?.hint ?? ''}`);
  return [data['title'], data['known'], data['why'], data['how'], ...shown].map(String).join(' ');
}

describe('with one part', () => {
  const asked = SIGN_MODEL.checks.filter(({ id }) => id !== ASKS_ITSELF && !speaksOfAnotherPart(id));

  test.each(asked)('$id speaks of no other part and no gap', ({ id, options }) => {
    expect(readAt(id, options)).not.toMatch(ANOTHER);
    expect(optionsFor(id, options, true).length).toBeGreaterThan(1);
  });

  test('a check that is kept back for its words has such words', () => {
    const kept = SIGN_MODEL.checks.filter(({ id }) => speaksOfAnotherPart(id));
    expect(kept.filter(({ id, options }) => !ANOTHER.test(readAt(id, options))).map(({ id }) => id)).toEqual([]);
    expect(kept.length).toBeGreaterThan(20);
  });

  test('no walk asks what needs a second part, whatever is answered', () => {
    const complaint = fc.constantFrom(...COMPLAINT_IDS.filter((id) => !TWO_PARTS.has(id)));
    fc.assert(
      fc.property(complaint, fc.array(fc.nat(6), { minLength: 8, maxLength: 8 }), (from, picks) => {
        let seen: Readonly<Record<string, string>> = { 'danger-now': 'none', [ASKS_ITSELF]: 'one' };
        for (const pick of picks) {
          const told = { ...NOTHING_TOLD, toldFirst: true, tools: ['lamps', 'multimeter', 'wire'] as const, seen };
          const { check } = replayWalk(from, told, seen);
          if (check === undefined) return;
          expect(speaksOfAnotherPart(check), check).toBe(false);
          const options = SIGN_MODEL.checks.find(({ id }) => id === check)?.options ?? [];
          seen = { ...seen, [check]: options[pick % options.length] ?? 'cannot' };
        }
      }),
      { numRuns: 12 },
    );
  });
});

test('With one part a trouble at a loop still makes sense, and one at a gap does not', () => {
  expect(fitsOnePart('loop-trips')).toBe(true);
  expect(fitsOnePart('trips-with-traffic')).toBe(true);
  expect(fitsOnePart('trips-at-gap')).toBe(false);
});

describe('with nothing said of parts', () => {
  const UNSAID = { 'danger-now': 'none', [ASKS_ITSELF]: 'cannot' };
  const asked = (from: (typeof COMPLAINT_IDS)[number], seen: Readonly<Record<string, string>>) =>
    replayWalk(from, { ...NOTHING_TOLD, toldFirst: true, tools: ['lamps', 'multimeter', 'wire'], seen }, seen).check;

  test('no walk asks what needs a second part or a gap, whatever is answered', () => {
    const complaint = fc.constantFrom(...COMPLAINT_IDS.filter((id) => !TWO_PARTS.has(id)));
    const tells = new Set(['at-the-gap', 'every-gap', 'in-the-loop', 'one-after-the-other']);
    fc.assert(
      fc.property(complaint, fc.array(fc.nat(6), { minLength: 8, maxLength: 8 }), (from, picks) => {
        let seen: Readonly<Record<string, string>> = UNSAID;
        for (const pick of picks) {
          const check = asked(from, seen);
          if (check === undefined) return;
          expect(speaksOfAnotherPart(check), check).toBe(false);
          const options = (SIGN_MODEL.checks.find(({ id }) => id === check)?.options ?? []).filter(
            (id) => !tells.has(id),
          );
          seen = { ...seen, [check]: options[pick % options.length] ?? 'cannot' };
        }
      }),
      { numRuns: 12 },
    );
  });

  test('at a loop gaps are spoken of, and no part with a unit of its own', () => {
    let seen: Readonly<Record<string, string>> = UNSAID;
    const all: string[] = [];
    for (;;) {
      const check = asked('loop-trips', seen);
      if (check === undefined) break;
      all.push(check);
      seen = { ...seen, [check]: 'cannot' };
    }
    expect(all.filter(speaksOfAnotherPart).length).toBeGreaterThan(2);
    expect(all.flatMap((id) => supposes(id))).not.toContain('several-parts');
  });

  test('who says that there are several is asked of them, also by a link', () => {
    const { trusted, given } = stateOf({
      ...{ complaint: 'trips-with-traffic', skipped: [], tools: [], tried: [], trusted: new Set<string>() },
      answers: [{ check: ASKS_ITSELF, option: 'several' }],
    });
    expect({ trusted: trusted?.size, given }).toEqual({ trusted: 0, given: [] });
    const from = (option: string): (string | undefined)[] => {
      let seen: Readonly<Record<string, string>> = { 'danger-now': 'none', [ASKS_ITSELF]: option };
      const all: string[] = [];
      for (;;) {
        const told = { ...NOTHING_TOLD, toldFirst: true, tools: ['lamps', 'multimeter', 'wire'] as const, seen };
        const { check } = replayWalk('trips-with-traffic', told, { 'danger-now': 'none' });
        if (check === undefined) return all;
        all.push(check);
        seen = { ...seen, [check]: 'cannot' };
      }
    };
    expect(from('several').filter((id) => speaksOfAnotherPart(id ?? '')).length).toBeGreaterThan(1);
    expect(from('one').filter((id) => speaksOfAnotherPart(id ?? ''))).toEqual([]);
  });
});
