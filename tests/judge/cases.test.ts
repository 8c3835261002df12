// The reported cases and the committed report on them: both hold for the model as it stands.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CANNOT, COMPLAINT_IDS, ENDS_AT_ONCE, SIGN_MODEL } from '../../src/wizards/put-it-right/index.ts';
import { mendedBy, REPORTED_CASES, SCORED } from './cases/cases.ts';
import type { Judged } from './cases/report.ts';
import { casesHash, modelHash, reportOf } from './cases/report.ts';
import { calibrationOf, medianOf, scoreTold, shareOf, toolsBy, walkThrough } from './cases/score.ts';

const read = (file: string): string => readFileSync(join(import.meta.dirname, '../../docs', file), 'utf8');
const JUDGED: Judged = JSON.parse(read('judged.json'));

describe('the reported cases', () => {
  test('each has a name of its own, and enough of them score to say something', () => {
    expect(new Set(REPORTED_CASES.map(({ id }) => id)).size).toBe(REPORTED_CASES.length);
    expect(SCORED.length).toBeGreaterThanOrEqual(50);
  });

  test('begin with a title and hold answers that the walk knows', () => {
    const titles = new Set<string>([...COMPLAINT_IDS, ...Object.keys(ENDS_AT_ONCE)]);
    const options = new Map(SIGN_MODEL.checks.map((check) => [check.id, check.options]));
    const strays = REPORTED_CASES.flatMap(({ id, opening, taps, tapsOfAnother = {}, shown }) => [
      ...(titles.has(opening) ? [] : [`${id}: no title ${opening}`]),
      ...[...Object.entries(taps), ...Object.entries(tapsOfAnother), ...Object.entries(shown)].flatMap(
        ([check, option]) =>
          options.get(check)?.includes(option) === true || (option === CANNOT && options.has(check))
            ? []
            : [`${id}: ${check}=${option}`],
      ),
    ]);
    expect(strays).toEqual([]);
  });

  test('are mended by fix pages that are there; a question that is no trouble by none', () => {
    const classes = new Set(SIGN_MODEL.causes.map(({ fixClass }) => fixClass));
    const strays = REPORTED_CASES.flatMap((one) =>
      mendedBy(one)
        .filter((page) => !classes.has(page))
        .map((page) => `${one.id}: ${page}`),
    );
    expect(strays).toEqual([]);
    expect(REPORTED_CASES.filter((one) => !one.isTrouble && mendedBy(one).length > 0)).toEqual([]);
  });
});

describe('the report', () => {
  const again =
    'The model or the cases have changed: run "npm run judge" and commit docs/judged.json and docs/judged.md.';

  test('is of this model and of these cases', () => {
    expect([JUDGED.model, JUDGED.cases], again).toEqual([modelHash(), casesHash()]);
  });

  test('says of what was told what the walk says of it now', () => {
    const all = Object.values(JUDGED.parts).flatMap((part) => part.each);
    expect(
      SCORED.map(scoreTold).map(({ id, place }) => [id, place]),
      again,
    ).toEqual(all.map(({ id, place }) => [id, place]));
  });

  test('reads the same for people as for the site', () => {
    expect(read('judged.md'), again).toBe(reportOf(JUDGED));
  });
});

describe('the judge itself', () => {
  test('calls 11 of 41 a share between 16 and 42 %', () => {
    const { from, to } = shareOf(11, 41);
    expect(from).toBeCloseTo(0.157, 2);
    expect(to).toBeCloseTo(0.419, 2);
  });

  test('takes shares for honest where as many are right as they say, and not where fewer are', () => {
    const said = (right: number) =>
      Array.from({ length: 100 }, (_, i) => ({ fixClass: 'dirty', chance: 0.8, isRight: i < right }));
    expect(calibrationOf(said(79), 0.7)).toMatchObject({ of: 100, right: 79, isWithin: true });
    expect(calibrationOf(said(70), 0.7).isWithin).toBe(false);
    expect(calibrationOf(said(70), 0.9).of).toBe(0);
  });

  test('takes the middle of an odd number of walks, and between the two middle ones of an even number', () => {
    expect(medianOf([9, 1, 4])).toBe(4);
    expect(medianOf([9, 1, 4, 6])).toBe(5);
  });

  test('counts a case as missed where nothing that is proposed would mend it', () => {
    const [one] = SCORED;
    if (one === undefined) throw new RangeError('no case scores');
    const { proposals } = walkThrough({ ...one, accepts: [], written: [] }, toolsBy(1));
    expect(proposals.filter(({ isRight }) => isRight)).toEqual([]);
    expect(scoreTold({ ...one, accepts: [], written: [] }).place).toBe(0);
  });
});
