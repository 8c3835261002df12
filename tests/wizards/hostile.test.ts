// No address, whoever wrote it, ends a parser, leaves a wizard without a question or an answer, or speaks for the person who opens it.
import { describe, expect, test } from 'vitest';
import { reckon } from '../../src/wizards/enough-current/reckoning.ts';
import { conclude } from '../../src/wizards/enough-current/result.ts';
import { toAddress } from '../../src/wizards/planning/answers.ts';
import { replay } from '../../src/wizards/planning/replay.ts';
import { parseWalk, replayWalk, walkAddress } from '../../src/wizards/put-it-right/address.ts';
import { COMPLAINT_IDS } from '../../src/wizards/put-it-right/index.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { shareOutFor } from '../../src/wizards/share-out/index.ts';
import { DEMO_CLUB, readSheet, writeSheet } from '../../src/wizards/sheet/index.ts';
import { shortened, unfolded } from '../../src/wizards/short-links/index.ts';
import { placeSupplies } from '../../src/wizards/which-supply-where/result.ts';
import { hostileSearches, type Known, TRIED, timed } from '../hostile.ts';
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
      const took = timed(() => {
        const { answers, problems } = read(search);
        for (const { given } of problems) expect(given.length, search).toBeLessThanOrEqual(40);
        expect(hasNoNumber(answers), search).toBe(false);
        expect(read(toAddress(answers)).answers, search).toEqual(answers);
        for (const { machine } of WIZARDS) expect(replay(machine, answers).trail.length).toBeGreaterThanOrEqual(0);
      });
      expect(took, search).toBeLessThanOrEqual(TRIED.slowest);
    }
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  // Not timed: answers are worked out beside the page, in a worker.
  test('each that a planning wizard can answer is answered with an outcome and numbers', () => {
    for (const [index, search] of hostileSearches(PLANNED, TRIED.texts / 20, 7).entries()) {
      const { answers } = read(search);
      expect(conclude(answers, reckon(answers)).outcome, search).toBeTypeOf('string');
      expect(placeSupplies(answers).outcome, search).toBeTypeOf('string');
      // Dividing takes longest.
      if (index % 10 === 0) expect(shareOutFor(answers).outcome, search).toBeTypeOf('string');
    }
  });

  test('each gives a walk a place to stand, and none says for its reader that nothing is hot', () => {
    for (const [index, search] of hostileSearches(WALKED, TRIED.texts / 2, 11).entries()) {
      const took = timed(() => {
        const { told, leftOut } = parseWalk(search);
        expect(told.seen['danger-now'], search).not.toBe('none');
        expect(leftOut.length, search).toBeLessThan(400);
        expect(parseWalk(walkAddress(told)).told, search).toEqual(told);
      });
      expect(took, search).toBeLessThanOrEqual(TRIED.slowest);
      if (index % 10 > 0) continue;
      const complaint = COMPLAINT_IDS[index % COMPLAINT_IDS.length];
      if (complaint !== undefined)
        expect(replayWalk(complaint, parseWalk(search).told).state, search).toBeTypeOf('string');
    }
  });

  test('each as a short link is whole, lost, damaged or none, and leads to no other place than the site’s own', () => {
    const state = { page: 'work-it-out/enough-current', search: '?modern=4&moving=3&scale=h0&supply-amps=3' };
    const short = { [shortened(state) ?? '']: [''] };
    for (const search of hostileSearches(short, TRIED.texts / 10, 5)) {
      const text = search.slice(1).replace(/=$/, '');
      const took = timed(() => {
        const found = unfolded(text);
        if ('state' in found) expect(found.state.page, text).toMatch(/^(work-it-out|put-it-right|learn)\/[a-z0-9-]+$/);
      });
      expect(took, text).toBeLessThanOrEqual(TRIED.slowest);
    }
  });

  test('each as a layout sheet is a sheet that can be written and read again, or a problem with a name', () => {
    const lines = Object.fromEntries(
      writeSheet(DEMO_CLUB)
        .split('\n')
        .map((line): [string, readonly string[]] => [line, ['']]),
    );
    const whole = writeSheet(DEMO_CLUB);
    for (const [index, spoilt] of hostileSearches(lines, TRIED.texts / 100, 3).entries()) {
      const at = (index * 97) % whole.length;
      const text = index % 2 === 0 ? spoilt : whole.slice(0, at) + spoilt.slice(1, 12) + whole.slice(at + (index % 7));
      const took = timed(() => {
        const found = readSheet(text);
        if ('problem' in found) expect(found.problem.why).toBeTypeOf('string');
        else expect(readSheet(writeSheet(found.sheet))).toEqual({ sheet: found.sheet, flaws: [] });
      });
      expect(took, text).toBeLessThanOrEqual(TRIED.slowest);
    }
  });
});
