// A throttle by radio has no socket: how people drive is asked before anything is said of one.
import { describe, expect, test } from 'vitest';
import { signPosterior } from '../../src/engine/index.ts';
import { CANNOT, NOTHING_TOLD, replayWalk } from '../../src/wizards/put-it-right/address.ts';
import { COMPLAINT_IDS, SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { stateOf, walkModelNow } from '../../src/wizards/put-it-right/step.ts';
import { wordsOf } from '../content/folder.ts';
import { LISTENER } from './heard.ts';
import { askOnAndOn } from './on-and-on.ts';

askOnAndOn();

type Seen = Readonly<Record<string, string>>;

const SOCKET = 'exchange-handhelds';
const WORDS = new Map(wordsOf('en', 'checks').map(({ id, data }) => [id, data]));

/** Every check that is met when nothing can be checked but what `seen` answers. */
function met(complaint: (typeof COMPLAINT_IDS)[number], seen: Seen, answers: Seen = {}): string[] {
  let all: Seen = { 'danger-now': 'none', ...seen };
  const checks: string[] = [];
  for (;;) {
    const { check } = replayWalk(
      complaint,
      { ...NOTHING_TOLD, seen: all, toldFirst: true, tools: ['multimeter'] },
      all,
    );
    if (check === undefined) return checks;
    checks.push(check);
    all = { ...all, [check]: answers[check] ?? CANNOT };
  }
}

describe('the socket of a throttle', () => {
  test('is asked about after it was told that the throttles have a cable', () => {
    const checks = met('handhelds-dead', {}, { 'how-driven': 'handhelds' });
    expect(checks).toContain(SOCKET);
    expect(checks.indexOf('how-driven')).toBeLessThan(checks.indexOf(SOCKET));
    expect(checks.indexOf('how-driven')).toBeGreaterThanOrEqual(0);
  });

  test.each(COMPLAINT_IDS)(
    '%s: is not asked about with a radio, at the unit, by a computer, or where nobody knows',
    (complaint) => {
      for (const driven of ['radio', 'at-the-unit', 'computer', CANNOT])
        expect(met(complaint, { 'how-driven': driven }), driven).not.toContain(SOCKET);
    },
  );

  test('is what the check speaks of, and no other check does', () => {
    const asks = (id: string): boolean =>
      /throttle[^.]*socket/i.test(`${WORDS.get(id)?.['title']} ${WORDS.get(id)?.['how']}`);
    expect(SIGN_MODEL.checks.filter(({ id }) => asks(id)).map(({ id }) => id)).toEqual([SOCKET]);
  });
});

describe('a throttle by radio', () => {
  test.each([
    "My radio throttle goes 'no signal' at the far end",
    'the wifi throttle freezes',
    'with my phone as a throttle the train does not stop',
    'drahtlos, per Funk',
  ])('is heard in “%s”', (text) => {
    expect(LISTENER.hear(text).map(({ check, option }) => `${check}/${option}`)).toContain('how-driven/radio');
  });

  test('that is late now and then, points to the radio and not to the cable of the control bus', () => {
    const answers = Object.entries({
      'danger-now': 'none',
      'how-driven': 'radio',
      'what-the-handhelds-do': 'late-or-lost',
    }).map(([check, option]) => ({ check, option }));
    const trusted = new Set(['danger-now']);
    const state = stateOf({ complaint: 'handhelds-dead', answers, skipped: [], tools: [], tried: [], trusted });
    const { findings } = signPosterior(walkModelNow(), state);
    const place = (fixClass: string): number => findings.findIndex((one) => one.fixClass === fixClass);
    expect(place('radio-disturbed')).toBe(0);
    expect(place('handheld-lost')).toBeLessThan(place('control-bus-weak'));
  });
});
