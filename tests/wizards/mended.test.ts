// Who writes a decoder anew and finds all well has put it right: the walk ends there.
import { describe, expect, test } from 'vitest';
import { NOTHING_TOLD, parseWalk, replayWalk, walkAddress } from '../../src/wizards/put-it-right/address.ts';
import { mendedByCheck, mendingCheck, withoutMending } from '../../src/wizards/put-it-right/mended.ts';
import { placeOf } from '../../src/wizards/put-it-right/place.ts';

const told = (seen: Readonly<Record<string, string>>) => ({ ...NOTHING_TOLD, seen, toldFirst: true });
const SEEN = { 'one-or-all': 'acts-otherwise', 'what-happens': 'acts-otherwise', 'write-anew': 'cured' };

describe('A decoder written anew, after which all is well', () => {
  const mended = mendedByCheck('one-locomotive-only', told(SEEN));

  test('had lost its settings', () => {
    expect(mended).toBe('decoder-muddled');
  });

  test('ends the walk, also by its link', () => {
    const address = walkAddress({ ...told(SEEN), fixed: [mended ?? ''] });
    const sitting = { 'danger-now': 'none' };
    const { state, fixClass } = replayWalk('one-locomotive-only', parseWalk(address, sitting).told, sitting);
    expect({ state, fixClass }).toEqual({ state: 'solved', fixClass: 'decoder-muddled' });
  });

  test('may have cleared a double heading whose own page had not helped', () => {
    const seen = { 'one-or-all': 'deaf', 'what-happens': 'stops-lit', 'read-its-decoder': 'double-heading' };
    const refused = { ...told({ ...seen, 'write-anew': 'cured' }), tried: ['consist-left-over'] };
    expect(mendedByCheck('one-locomotive-only', refused)).toBe('consist-left-over');
    expect(mendingCheck(refused.seen)).toBe('write-anew');
  });

  test('is not put down to a cause that it clears seldom', () => {
    const seen = {
      ...SEEN,
      'vehicle-in-the-hand': 'loose-inside',
      'what-happens': 'jerks',
      'one-or-all': 'runs-badly',
    };
    expect(mendedByCheck('one-locomotive-only', told(seen))).not.toBe('loco-loose-contact');
  });

  test('has mended nothing where it did not help', () => {
    expect(mendedByCheck('one-locomotive-only', told({ ...SEEN, 'write-anew': 'no-change' }))).toBeUndefined();
  });

  test('is not said any more once the trouble is back', () => {
    expect(withoutMending(SEEN)).toEqual({ 'one-or-all': 'acts-otherwise', 'what-happens': 'acts-otherwise' });
  });
});

describe('Track wires swapped at the new unit, after which trains cross the gap', () => {
  const seen = { 'when-it-happens': 'at-the-gap', 'last-change': 'supply-or-unit', 'swap-track-wires': 'cured' };
  const mended = mendedByCheck('trips-at-gap', told(seen));
  const sitting = { 'danger-now': 'none' };

  test('had been the wrong way round', () => {
    expect(mended).toBe('reversed');
    expect(mendingCheck(seen)).toBe('swap-track-wires');
  });

  test('are not to be swapped again: what is left is to prove the gap', () => {
    // Also by a link that says no more than that.
    const { state, context } = placeOf('trips-at-gap', walkAddress(told(seen)), sitting).walk;
    expect(state).toBe('verifying');
    expect(context.fixed).toEqual(['reversed']);
  });
});
