// Where nothing that is at hand leads on, the one check that tells apart what is left is named, whatever it needs.
import { describe, expect, test } from 'vitest';
import { checkThatTells } from '../../src/wizards/put-it-right/possible.ts';
import type { Known } from '../../src/wizards/put-it-right/step.ts';
import { rowOfCheck } from '../../src/wizards/put-it-right/step.ts';

const known: Known = {
  complaint: 'trips-at-gap',
  answers: [{ check: 'danger-now', option: 'none' }],
  skipped: [],
  tools: [],
  tried: [],
  trusted: new Set(['danger-now']),
};

describe('between rails that meet the wrong way round and one rail that is not cut', () => {
  const check = checkThatTells(known, ['reversed', 'one-rail']);

  test('a check is named though its tool is not at hand', () => {
    expect(check).toBeDefined();
    expect(rowOfCheck(check ?? '')?.tool).not.toBe('eyes');
  });

  test('one that could not be done is named all the same, for somebody may help', () => {
    expect(checkThatTells({ ...known, skipped: [check ?? ''] }, ['reversed', 'one-rail'])).toBe(check);
  });

  test('one that was answered is not named again', () => {
    const option = rowOfCheck(check ?? '')?.options[0] ?? '';
    const answers = [...known.answers, { check: check ?? '', option }];
    expect(checkThatTells({ ...known, answers }, ['reversed', 'one-rail'])).not.toBe(check);
  });

  test('none is named that what people come with forbids', () => {
    const acts = rowOfCheck(check ?? '')?.acts ?? [];
    expect(acts).not.toContain('sends-a-train-over-the-gap');
    expect(acts).not.toContain('stands-across-the-gap');
  });
});

test('one repair alone needs no check to tell it apart', () => {
  expect(checkThatTells(known, ['reversed'])).toBeUndefined();
  expect(checkThatTells(known, ['no-such-repair'])).toBeUndefined();
});
