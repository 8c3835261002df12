// With hardly anything told no work is proposed that one free question could take back.
import { describe, expect, test } from 'vitest';
import { NOTHING_TOLD, replayWalk } from '../../src/wizards/put-it-right/address.ts';
import { possibleNow } from '../../src/wizards/put-it-right/possible.ts';

const STUTTERS = {
  'danger-now': 'none',
  'what-happens': 'jerks',
  'one-or-all': 'runs-badly',
  'when-it-happens': 'at-walking-pace',
};
const walk = (seen: Readonly<Record<string, string>>) =>
  replayWalk('one-locomotive-only', { ...NOTHING_TOLD, toldFirst: true, tools: [], seen }, seen);
const chanceOf = (fixClass: string, seen: Readonly<Record<string, string>>): number =>
  possibleNow(walk(seen).context).shown.find((one) => one.fixClass === fixClass)?.chance ?? 0;

describe('One locomotive that stutters at a crawl', () => {
  test('is asked about its lights before its wheels are to be mended', () => {
    let seen: Readonly<Record<string, string>> = STUTTERS;
    for (const answer of ['anywhere', 'lit-and-obeying']) {
      const { check = '' } = walk(seen);
      expect(['which-places', 'lights-then']).toContain(check);
      seen = { ...seen, [check]: answer };
    }
  });

  test('has lights that wink where its wheels lose contact, and steady ones speak for what binds', () => {
    const winks = { ...STUTTERS, 'lights-then': 'flickers' };
    const steady = { ...STUTTERS, 'lights-then': 'lit-and-obeying' };
    expect(chanceOf('pickup', winks)).toBeGreaterThan(chanceOf('pickup', STUTTERS));
    expect(chanceOf('pickup', steady)).toBeLessThan(chanceOf('pickup', STUTTERS));
    expect(chanceOf('binding-locomotive', steady)).toBeGreaterThan(chanceOf('binding-locomotive', winks));
  });

  test('is not asked which vehicles show it', () => {
    let seen: Readonly<Record<string, string>> = STUTTERS;
    for (;;) {
      const { check } = walk(seen);
      if (check === undefined) break;
      expect(check).not.toBe('which-vehicles');
      seen = { ...seen, [check]: 'cannot' };
    }
  });
});

test('Where keys do other things than they did, the decoder’s settings are read and written anew', () => {
  const told = { 'danger-now': 'none', 'what-happens': 'acts-otherwise' };
  expect(possibleNow(walk(told).context).shown[0]?.fixClass).toBe('decoder-muddled');
  expect(chanceOf('decoder-muddled', { ...told, 'read-its-decoder': 'keys-or-delays' })).toBeGreaterThan(0.7);
});
