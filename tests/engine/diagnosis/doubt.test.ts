// How far rows are believed: what speaks against a cause counts no more than that, however many looks agree.
import { describe, expect, test } from 'vitest';
import type { SignModel } from '../../../src/engine/diagnosis/sign-model.ts';
import type { WalkModel } from '../../../src/engine/diagnosis/sign-walk.ts';
import { standAt, walkModel } from '../../../src/engine/diagnosis/sign-walk.ts';
import { PLAIN } from '../../reference/numbered.ts';

const LOOKS = ['memory', 'eye', 'instrument'] as const;
const MODEL: SignModel = {
  signs: [{ id: 'volts', values: ['full', 'none'], sound: 'full', unaffected: { full: 'always' } }],
  circumstances: [],
  causes: [
    { id: 'dead-wire', fixClass: 'dead-wire', minutes: 5, shows: { volts: { none: 'always' } } },
    { id: 'wrong-number', fixClass: 'wrong-number', minutes: 5, shows: { volts: { full: 'always' } } },
  ],
  checks: LOOKS.map((source) => ({
    id: source,
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source,
    reads: 'volts',
    options: ['full', 'none'],
    reading: { full: 'full', none: 'none' },
  })),
  openings: [{ id: 'all', often: 1, says: {}, shares: { 'dead-wire': 1, 'wrong-number': 1 } }],
  core: [],
};

const walk = (rowsDoubted: number, model = MODEL): WalkModel =>
  walkModel(model, {
    ...PLAIN,
    elseShare: 0,
    slips: { memory: 0.1, eye: 0.05, instrument: 0.03 },
    rowsDoubted,
    proposeFrom: { cheap: 0, work: 0.6, dear: 0.8 },
  });

/** Chance of the dead wire after so many looks that found full volts, over that of the wrong number. */
function against(rowsDoubted: number, looks: number): number {
  const { standing } = standAt(walk(rowsDoubted), {
    opening: 'all',
    answers: LOOKS.slice(0, looks).map((check) => ({ check, option: 'full' })),
    setAside: [],
    skipped: [],
    tools: [],
  });
  return (standing.chances[0] ?? 0) / (standing.chances[1] ?? 1);
}

describe('A cause whose sign three sources contradict', () => {
  test('keeps at least what its row is doubted by, and at most what one look leaves it', () => {
    // As with any trouble: half of these have full volts.
    const usual = 0.5;
    for (const doubt of [0.05, 0.2]) {
      expect(against(doubt, 3)).toBeGreaterThan(doubt * usual);
      expect(against(doubt, 3)).toBeLessThan(against(doubt, 1));
    }
  });

  test('is nearly out where rows are believed to the last', () => {
    expect(against(0, 3)).toBeLessThan(0.02);
    expect(against(0.2, 3)).toBeGreaterThan(5 * against(0, 3));
  });
});
