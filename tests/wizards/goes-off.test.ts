// Where nothing goes off, nothing is asked about going off; of one locomotive alone, nothing about the number of trains.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NOTHING_TOLD, replayWalk } from '../../src/wizards/put-it-right/address.ts';
import type { ComplaintId } from '../../src/wizards/put-it-right/index.ts';
import {
  ABOUT_GOING_OFF,
  ABOUT_LIGHTS,
  ABOUT_MANY_TRAINS,
  ABOUT_WHAT_CAME_BEFORE,
  NOTHING_GOES_OFF,
  NOTHING_RAN,
  senselessFor,
  WITHOUT_LIGHTS,
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
    expect([...senselessFor(complaint, [])]).toEqual(expect.arrayContaining([...ABOUT_GOING_OFF]));
  });

  test('are asked of everybody else: a unit that has gone off looks like a train that stops dark', () => {
    const rest = COMPLAINT_IDS.filter((id) => !NOTHING_GOES_OFF.has(id));
    expect(rest).toEqual(expect.arrayContaining(['trips-at-gap', 'stops-at-gap', 'jerks-at-gap', 'nothing-works']));
    const came: ReadonlySet<string> = new Set(ABOUT_WHAT_CAME_BEFORE);
    const asked = ABOUT_GOING_OFF.filter((check) => !came.has(check));
    expect(rest.filter((id) => asked.some((check) => senselessFor(id, []).has(check)))).toEqual([]);
  });

  test('come back once something is told to go off', () => {
    const senseless = (complaint: ComplaintId, check: string, option: string): string[] => {
      const now = senselessFor(complaint, [{ check, option }]);
      return ABOUT_GOING_OFF.filter((id) => now.has(id));
    };
    for (const complaint of COMPLAINT_IDS.filter((id) => NOTHING_GOES_OFF.has(id))) {
      expect(senseless(complaint, 'last-change', 'a-short')).toEqual([]);
      expect(senseless(complaint, 'when-it-happens', 'after-a-short')).toEqual([...ABOUT_WHAT_CAME_BEFORE]);
    }
  });

  test('name checks and options that there are', () => {
    const options = new Map(SIGN_MODEL.checks.map(({ id, options: own }) => [id, new Set(own)]));
    for (const id of [...ABOUT_GOING_OFF, ...ABOUT_LIGHTS, ...ABOUT_MANY_TRAINS]) expect(options.has(id)).toBe(true);
  });
});

describe('what came before it went off', () => {
  const isAsked = (complaint: ComplaintId, told: Told): boolean => {
    const answers = Object.entries(told).map(([check, option]) => ({ check, option }));
    return ABOUT_WHAT_CAME_BEFORE.every((check) => !senselessFor(complaint, answers).has(check));
  };

  test('is asked where trains ran, and not where it goes off with nothing run before', () => {
    expect(isAsked('trips-with-traffic', {})).toBe(true);
    expect(isAsked('trips-with-traffic', { 'when-it-happens': 'with-traffic' })).toBe(true);
    expect([...NOTHING_RAN].sort()).toEqual(['trips-at-power-on', 'trips-when-set-on']);
    for (const when of ['from-switch-on', 'all-the-time', 'when-set-on'])
      expect(isAsked('now-and-then', { 'when-it-happens': when })).toBe(false);
  });

  test('is not asked of whoever has told that no signal arrives', () => {
    expect(isAsked('nothing-works', { 'booster-lamp': 'no-signal' })).toBe(false);
    expect(isAsked('nothing-works', { 'booster-lamp': 'fault' })).toBe(true);
  });
});

describe('the lights of the train', () => {
  const isAsked = (complaint: ComplaintId, told: Told): boolean => {
    const answers = Object.entries(told).map(([check, option]) => ({ check, option }));
    return ABOUT_LIGHTS.every((check) => !senselessFor(complaint, answers).has(check));
  };

  test('tell nothing where the unit goes off: they go out with it', () => {
    expect([...WITHOUT_LIGHTS]).toEqual(
      expect.arrayContaining([
        'trips-at-gap',
        'trips-at-power-on',
        'trips-at-one-spot',
        'wrong-one-trips',
        'loop-trips',
      ]),
    );
    expect(isAsked('since-rewired', {})).toBe(true);
    expect(isAsked('since-rewired', { 'what-happens': 'switches-off' })).toBe(false);
    expect(isAsked('since-rewired', { 'what-goes-dark': 'everything-at-once' })).toBe(false);
  });

  test('are not asked of whoever has told what they did, or of turnouts and detectors', () => {
    for (const happens of ['stops-dark', 'stops-lit', 'slow-or-dim'])
      expect(isAsked('since-rewired', { 'what-happens': happens })).toBe(false);
    expect(isAsked('accessories-misbehave', {})).toBe(false);
    expect(isAsked('empty-shown-occupied', {})).toBe(false);
  });

  test('are asked where a train stops or stutters', () => {
    for (const complaint of ['stops-at-gap', 'jerks-at-gap', 'stops-at-a-spot', 'one-locomotive-only'] as const)
      expect(isAsked(complaint, {})).toBe(true);
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

  test('with any other complaint of trains both may be asked', () => {
    const others = COMPLAINT_IDS.filter((id) => id !== LOCOMOTIVE && id !== 'accessories-misbehave');
    for (const complaint of others)
      expect(ABOUT_MANY_TRAINS.filter((id) => senselessFor(complaint, []).has(id))).toEqual([]);
  });
});
