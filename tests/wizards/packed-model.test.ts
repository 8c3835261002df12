// What a browser gets of the model is the model: packed and unpacked it is the same, and smaller.
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { packCauses, packChecks, packedModel, packOpenings } from '../../scripts/build/packed-model.mjs';
import { CAUSES } from '../../src/wizards/put-it-right/model/causes/index.ts';
import { CHECKS } from '../../src/wizards/put-it-right/model/checks/index.ts';
import { CIRCUMSTANCES } from '../../src/wizards/put-it-right/model/circumstances.ts';
import { OPENINGS } from '../../src/wizards/put-it-right/model/openings.ts';
import { unpackCauses, unpackChecks, unpackOpenings } from '../../src/wizards/put-it-right/model/packed.ts';
import { SIGNS } from '../../src/wizards/put-it-right/model/signs.ts';

/** As it comes over the wire. */
const sent = <Value>(value: Value): Value => JSON.parse(JSON.stringify(value));
const weight = (value: object): number => gzipSync(JSON.stringify(value), { level: 9 }).length;

const causes = packCauses(CAUSES, SIGNS, CIRCUMSTANCES);
const checks = packChecks(CHECKS, SIGNS, CIRCUMSTANCES);
const openings = packOpenings(OPENINGS, CAUSES);

describe('What is packed for a browser', () => {
  test('unpacks to the causes, each with its whole row', () => {
    expect(unpackCauses(sent(causes), SIGNS, CIRCUMSTANCES)).toEqual(CAUSES);
  });

  test('unpacks to the checks, each with its reading', () => {
    expect(unpackChecks(sent(checks), SIGNS, CIRCUMSTANCES)).toEqual(CHECKS);
  });

  test('unpacks to the openings, each with its shares', () => {
    expect(unpackOpenings(sent(openings), CAUSES)).toEqual(OPENINGS);
  });

  test('weighs less than two thirds of what was written', () => {
    const written = weight(CAUSES) + weight(CHECKS) + weight(OPENINGS);
    expect(weight(causes) + weight(checks) + weight(openings)).toBeLessThan((2 / 3) * written);
  });
});

describe('While the site is built', () => {
  const { load, applyToEnvironment } = packedModel();
  const codeOf = (file: string): string | undefined =>
    load(new URL(`../../src/wizards/put-it-right/model/${file}`, import.meta.url).pathname)?.code;

  test('the three lists of the model are replaced, and nothing else', () => {
    for (const file of ['causes/index.ts', 'checks/index.ts', 'openings.ts']) expect(codeOf(file)).toContain('unpack');
    expect(codeOf('signs.ts')).toBeUndefined();
    expect(codeOf('checks/meter.ts')).toBeUndefined();
  });

  test('pages are built from what was written', () => {
    expect(applyToEnvironment({ name: 'client' })).toBe(true);
    expect(applyToEnvironment({ name: 'ssr' })).toBe(false);
  });
});
