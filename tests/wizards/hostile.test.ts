// No address, whoever wrote it, ends a parser, leaves a wizard without a question or an answer, or speaks for the person who opens it.
import { describe, expect, test } from 'vitest';
import { reckon } from '../../src/wizards/enough-current/reckoning.ts';
import { conclude } from '../../src/wizards/enough-current/result.ts';
import { toAddress } from '../../src/wizards/planning/answers.ts';
import { replay } from '../../src/wizards/planning/replay.ts';
import { parseWalk, replayWalk, walkAddress } from '../../src/wizards/put-it-right/address.ts';
import { COMPLAINT_IDS } from '../../src/wizards/put-it-right/index.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { placeSupplies } from '../../src/wizards/which-supply-where/result.ts';
import { hostileSearches, type Known, TRIED } from '../hostile.ts';
import { ALL_FIELDS, read, textsFor, WIZARDS } from './told.ts';

const PLANNED: Known = Object.fromEntries(ALL_FIELDS.map((field) => [field.id, textsFor(field)]));
const CHECKS = SIGN_MODEL.checks.map(({ id, options }): [string, readonly string[]] => [
  id,
  [...Object.keys(options), 'cannot'],
]);
const WALKED: Known = {
  ...Object.fromEntries(CHECKS),
  told: ['yes', 'no'],
  tools: ['none', 'multimeter', 'lamps.wire'],
  tried: ['reversed', 'more-feeders.reversed'],
  undo: ['reversed'],
  fixed: ['pickup'],
};
/** Numbers that nobody can have. */
const hasNoNumber = (value: unknown): boolean =>
  JSON.stringify(value, (_, one) => (typeof one === 'number' && !Number.isFinite(one) ? 'no number' : one)).includes(
    'no number',
  );

describe(`Of ${TRIED.texts} hostile addresses`, () => {
  test('each gives every planning wizard a question or an answer, with what could be read', () => {
    for (const search of hostileSearches(PLANNED, TRIED.texts / 2, 20_261_126)) {
      const { answers, problems } = read(search);
      for (const { given } of problems) expect(given.length, search).toBeLessThanOrEqual(40);
      expect(hasNoNumber(answers), search).toBe(false);
      expect(read(toAddress(answers)).answers, search).toEqual(answers);
      for (const { machine } of WIZARDS) expect(replay(machine, answers).trail.length).toBeGreaterThanOrEqual(0);
    }
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  test('each that a planning wizard can answer is answered with an outcome and numbers', () => {
    for (const search of hostileSearches(PLANNED, TRIED.texts / 20, 7)) {
      const { answers } = read(search);
      expect(conclude(answers, reckon(answers)).outcome, search).toBeTypeOf('string');
      expect(placeSupplies(answers).outcome, search).toBeTypeOf('string');
    }
  });

  test('each gives a walk a place to stand, and none says for its reader that nothing is hot', () => {
    for (const [index, search] of hostileSearches(WALKED, TRIED.texts / 2, 11).entries()) {
      const { told, leftOut } = parseWalk(search);
      expect(told.seen['danger-now'], search).not.toBe('none');
      expect(leftOut.length, search).toBeLessThan(400);
      expect(parseWalk(walkAddress(told)).told, search).toEqual(told);
      if (index % 10 > 0) continue;
      const complaint = COMPLAINT_IDS[index % COMPLAINT_IDS.length];
      if (complaint !== undefined) expect(replayWalk(complaint, told).state, search).toBeTypeOf('string');
    }
  });
});
