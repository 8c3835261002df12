// Links to answers say which release made them and what they led to; nothing that is asked depends on it.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HANDED_ON, MADE, madeIn, madeText, readMade, sinceThen, withMade } from '../../src/wizards/links/made.ts';
import { toAddress } from '../../src/wizards/planning/answers.ts';
import { CANNOT, NOTHING_TOLD, parseWalk, replayWalk, verdictOf } from '../../src/wizards/put-it-right/address.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { answers } from './arbitrary.ts';
import { ALL_FIELDS, read } from './told.ts';

const now = { release: '1.2.0', verdict: 'larger-supply' };

describe('what a link says of itself', () => {
  test('stands in one short word of the address', () => {
    expect(withMade('?scale=n&modern=3', now)).toBe('?made=1.2.0-larger-supply&modern=3&scale=n');
    expect(madeIn('?made=1.2.0-larger-supply&modern=3')).toEqual(now);
  });

  test('takes the place of what an older link said', () => {
    expect(withMade('?made=1.0.0-fewer-moving&scale=n', now)).toBe('?made=1.2.0-larger-supply&scale=n');
  });

  test('reads as what was written, for every verdict', () => {
    const verdicts = [...SIGN_MODEL.causes.map(({ fixClass }) => fixClass), HANDED_ON, 'larger-supply'];
    for (const verdict of verdicts)
      expect(readMade(madeText({ release: '0.1.0', verdict }))).toEqual({ release: '0.1.0', verdict });
  });

  test.each(['', '1', '1-', '-x', '1.2.3.4-x', 'x-1', '1-<script>', `1-${'a'.repeat(99)}`, '1 -x', '1-X'])(
    '%j says nothing',
    (text) => expect(readMade(text)).toBeUndefined(),
  );

  test('is no answer: whatever it is, the same is read with it and without it', () => {
    expect(ALL_FIELDS.map(({ id }) => id)).not.toContain(MADE);
    expect(SIGN_MODEL.checks.map(({ id }) => id)).not.toContain(MADE);
    fc.assert(
      fc.property(answers, fc.oneof(fc.string(), fc.constant('0.1.0-reversed')), (given, made) => {
        const pairs = new URLSearchParams(toAddress(given));
        pairs.set(MADE, made);
        expect(read(`?${pairs}`)).toEqual({ answers: given, problems: [] });
        expect(parseWalk(`?${new URLSearchParams({ [MADE]: made })}`)).toEqual({ told: NOTHING_TOLD, leftOut: [] });
      }),
    );
  });
});

describe('of a link that is opened', () => {
  test.each([
    ['1.2.0-larger-supply', 'nothing'],
    ['1.1.9-larger-supply', 'the-same'],
    ['0.9-fewer-moving', 'earlier'],
    ['1.2.0-fewer-moving', 'otherwise'],
    ['1.10.0-larger-supply', 'nothing'],
    ['2-fewer-moving', 'nothing'],
    ['2-larger-supply', 'nothing'],
  ] as const)('%s is told: %s', (text, told) => {
    const made = readMade(text);
    expect(made && sinceThen(made, now)).toBe(told);
  });
});

describe('a walk', () => {
  const LINK = '?told=yes&tools=lamps.wire&two-lamps=both-light&swap-track-wires=cured&which-places=every-gap';
  const SITTING = { 'danger-now': 'none' };
  const verdictAt = (search: string) => verdictOf(replayWalk('trips-at-gap', parseWalk(search, SITTING).told, SITTING));

  test('has come to something where it proposes, where it is solved, and where it hands on', () => {
    expect(verdictAt(LINK)).toBe('reversed');
    expect(verdictAt(`${LINK}&fixed=reversed&isolation=fine&phase=fine`)).toBe('reversed');
    const tried = [...new Set(SIGN_MODEL.causes.map(({ fixClass }) => fixClass))];
    expect(verdictAt(`?told=yes&tools=none&which-places=${CANNOT}&tried=${tried.join('.')}`)).toBe(HANDED_ON);
  });

  test('has come to nothing on the way there', () => {
    expect(verdictAt('')).toBeUndefined();
    expect(verdictAt('?told=yes&tools=none')).toBeUndefined();
    expect(verdictAt(`${LINK}&doing=reversed`)).toBeUndefined();
    expect(verdictAt(`${LINK}&fixed=reversed`)).toBeUndefined();
  });
});
