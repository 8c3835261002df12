// The fault model against troubles that people reported in public and whose cause was found. Each case names where it was reported.
import { describe, expect, test } from 'vitest';
import { posterior } from '../../src/engine/diagnosis/posterior.ts';
import { FAULT_MODEL } from '../../src/wizards/put-it-right/faults/index.ts';
import { compiledFor } from '../../src/wizards/put-it-right/step.ts';
import type { ReportedCase } from './reported-cases.ts';
import { REPORTED_CASES } from './reported-cases.ts';

const CLASS_OF = new Map<string, string>(FAULT_MODEL.faults.map(({ id, fixClass }) => [id, fixClass]));

/** Place of the reported cause among all findings, from 1, once the person has told everything. */
function rankOf({ complaint, answers, found = {}, faults }: ReportedCase): number {
  const told = Object.entries({ ...answers, ...found }).map(([check, option]) => ({ check, option }));
  const wanted = new Set(faults.map((id) => CLASS_OF.get(id) ?? id));
  const { findings, ignored } = posterior(compiledFor(complaint), told);
  expect(ignored).toEqual([]);
  return 1 + findings.findIndex(({ fixClass }) => wanted.has(fixClass));
}

describe('of the reported cases', () => {
  const ranks = REPORTED_CASES.map((one) => [one.id, rankOf(one)] as const);
  const first = ranks.filter(([, rank]) => rank === 1);

  test('there are enough to say something', () => expect(ranks.length).toBeGreaterThanOrEqual(18));

  test('four of five have the reported cause first', () => {
    expect(first.length / ranks.length, JSON.stringify(ranks)).toBeGreaterThanOrEqual(0.8);
  });

  test.each(REPORTED_CASES.map((one) => [one.id, one] as const))('%s has it among the first three', (_, one) => {
    expect(rankOf(one)).toBeGreaterThanOrEqual(1);
    expect(rankOf(one)).toBeLessThanOrEqual(3);
  });
});
