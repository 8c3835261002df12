// Where nothing goes off, nothing is asked about going off; of one locomotive alone, nothing about the number of trains.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NOTHING_TOLD, replayWalk } from '../../src/wizards/put-it-right/address.ts';
import type { ComplaintId } from '../../src/wizards/put-it-right/index.ts';
import {
  ABOUT_GOING_OFF,
  ABOUT_MANY_TRAINS,
  NOTHING_GOES_OFF,
  senselessFor,
} from '../../src/wizards/put-it-right/model/goes-off.ts';
import { COMPLAINT_IDS, SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { wordsOf } from '../content/folder.ts';

type Told = Readonly<Record<string, string>>;

/** The checks that a walk asks one after the other, whatever is answered. */
function askedIn(complaint: ComplaintId, told: Told, picks: readonly number[]): string[] {
  const asked: string[] = [];
  let seen: Told = { 'danger-now': 'none', ...told };
  for (const pick of picks) {
    const walk = { ...NOTHING_TOLD, toldFirst: true, tools: ['lamps', 'multimeter', 'wire'] as const, seen };
    const { check } = replayWalk(complaint, walk, seen);
    if (check === undefined) break;
    asked.push(check);
    const options = SIGN_MODEL.checks.find(({ id }) => id === check)?.options ?? [];
    seen = { ...seen, [check]: options[pick % options.length] ?? 'cannot' };
  }
  return asked;
}

const PICKS = fc.array(fc.nat(6), { minLength: 8, maxLength: 8 });
const ASKS_OF_IT: ReadonlySet<string> = new Set(ABOUT_GOING_OFF);

describe('questions about going off', () => {
  test('are those whose titles speak of it from memory', () => {
    const title = /^(?:Just before it went off|Which parts go off|How does it come back)/;
    const speak = wordsOf('en', 'checks').filter(({ data }) => title.test(String(data['title'])));
    expect(speak.map(({ id }) => id).sort()).toEqual([...ABOUT_GOING_OFF].sort());
  });

  test.each(COMPLAINT_IDS)('%s: none once it is told that nothing goes off', (complaint) => {
    expect([...senselessFor(complaint, [{ check: 'what-goes-dark', option: 'nothing-goes-off' }])]).toEqual(
      expect.arrayContaining([...ABOUT_GOING_OFF]),
    );
    fc.assert(
      fc.property(PICKS, (picks) => {
        const asked = askedIn(complaint, { 'what-goes-dark': 'nothing-goes-off' }, picks.slice(0, 4));
        // Whoever then tells of a short is asked again.
        const until = asked.findIndex((id) =>
          ['what-happens', 'when-it-happens', 'last-change', 'one-or-all'].includes(id),
        );
        const before = until < 0 ? asked : asked.slice(0, until + 1);
        expect(before.filter((id) => ASKS_OF_IT.has(id))).toEqual([]);
      }),
      { numRuns: 2 },
    );
  });

  test.each(COMPLAINT_IDS.filter((id) => NOTHING_GOES_OFF.has(id)))('%s: none, by its title', (complaint) => {
    expect([...senselessFor(complaint, [])].sort()).toEqual([...ABOUT_GOING_OFF].sort());
  });

  test('are asked of everybody else: a unit that has gone off looks like a train that stops dark', () => {
    const rest = COMPLAINT_IDS.filter((id) => !NOTHING_GOES_OFF.has(id));
    expect(rest).toEqual(expect.arrayContaining(['trips-at-gap', 'stops-at-gap', 'jerks-at-gap', 'nothing-works']));
    expect(rest.filter((id) => ABOUT_GOING_OFF.some((check) => senselessFor(id, []).has(check)))).toEqual([]);
  });

  test('come back once something is told to go off', () => {
    for (const complaint of NOTHING_GOES_OFF)
      expect(senselessFor(complaint, [{ check: 'when-it-happens', option: 'after-a-short' }]).size).toBe(0);
  });

  test('name checks and options that there are', () => {
    const options = new Map(SIGN_MODEL.checks.map(({ id, options: own }) => [id, new Set(own)]));
    for (const id of [...ABOUT_GOING_OFF, ...ABOUT_MANY_TRAINS]) expect(options.has(id)).toBe(true);
  });
});

describe('one locomotive only', () => {
  const LOCOMOTIVE = 'one-locomotive-only';

  test('one that obeys badly is asked nothing about going off, one that shorts is', () => {
    const of = (option: string) => senselessFor(LOCOMOTIVE, [{ check: 'one-or-all', option }]);
    expect(ABOUT_GOING_OFF.filter((id) => of('runs-badly').has(id))).toEqual(ABOUT_GOING_OFF);
    expect(ABOUT_GOING_OFF.filter((id) => of('shorts-alone').has(id))).toEqual([]);
  });

  test('nobody is told to lift half of the trains off, or to move them to the other part', () => {
    const many: ReadonlySet<string> = new Set(ABOUT_MANY_TRAINS);
    fc.assert(
      fc.property(PICKS, (picks) => {
        expect(askedIn(LOCOMOTIVE, {}, picks).filter((id) => many.has(id))).toEqual([]);
      }),
      { numRuns: 6 },
    );
  });

  test('with any other complaint both may be asked', () => {
    for (const complaint of COMPLAINT_IDS.filter((id) => id !== LOCOMOTIVE))
      expect(ABOUT_MANY_TRAINS.filter((id) => senselessFor(complaint, []).has(id))).toEqual([]);
  });
});
