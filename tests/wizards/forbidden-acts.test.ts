// What a complaint's first line forbids, no check of that complaint makes people do.
import { describe, expect, test } from 'vitest';
import type { Tool } from '../../src/engine/diagnosis/model.ts';
import { TOOLS } from '../../src/engine/diagnosis/model.ts';
import type { Told } from '../../src/wizards/put-it-right/address.ts';
import { CANNOT, NOTHING_TOLD, replayWalk } from '../../src/wizards/put-it-right/address.ts';
import { ACTS_OF } from '../../src/wizards/put-it-right/model/acts.ts';
import type { CheckId } from '../../src/wizards/put-it-right/model/checks/index.ts';
import { CHECKS } from '../../src/wizards/put-it-right/model/checks/index.ts';
import { FORBIDS } from '../../src/wizards/put-it-right/model/fitting.ts';
import type { ComplaintId } from '../../src/wizards/put-it-right/model/index.ts';
import { COMPLAINT_IDS, isDoneFirst, OPENINGS, SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { POWER_ACTS } from '../../src/wizards/safety/acts.ts';
import { wordsOf } from '../content/folder.ts';
import { FORBIDDEN_IN_WORDS } from './forbidden-words.ts';
import { askOnAndOn } from './on-and-on.ts';

askOnAndOn();

const ALL_TOOLS: readonly Tool[] = TOOLS.filter((tool) => tool !== 'eyes');
const actsOf = (check: string): readonly string[] => SIGN_MODEL.checks.find(({ id }) => id === check)?.acts ?? [];
/** Checks that can be asked with a title, each with what must have been shown before. */
function checksAsked(complaint: string) {
  const opening = SIGN_MODEL.openings.find(({ id }) => id === complaint);
  return SIGN_MODEL.checks
    .filter(({ id }) => opening?.withheld?.includes(id) !== true)
    .map((check) => ({ ...check, needs: [...check.needs, ...(opening?.needs?.[check.id] ?? [])] }));
}

const offered = (complaint: ComplaintId): string[] => checksAsked(complaint).map(({ id }) => id);
const TITLES = OPENINGS.map(({ id }) => id);

const FIRST_LINES = new Map(wordsOf('en', 'complaints').map(({ id, data }) => [id, data['first']]));

/** Every check that a walk offers when nothing more can be checked, with these answers given before. */
function offeredAfter(complaint: ComplaintId, seen: Readonly<Record<string, string>>, tried: readonly string[] = []) {
  let told: Told = { ...NOTHING_TOLD, seen, toldFirst: true, tools: ALL_TOOLS, tried };
  const met: string[] = [];
  const next = () => replayWalk(complaint, told, seen);
  for (let walk = next(); walk.check !== undefined; walk = next()) {
    met.push(walk.check);
    told = { ...told, seen: { ...told.seen, [walk.check]: CANNOT } };
  }
  return met;
}

describe('What the first line of a complaint forbids', () => {
  test.each(TITLES)('%s: stands there in its words', (complaint) => {
    const words = FORBIDDEN_IN_WORDS[complaint] ?? {};
    expect(FORBIDS[complaint].map(({ act }) => act).sort()).toEqual(Object.keys(words).sort());
    for (const says of Object.values(words)) expect(FIRST_LINES.get(complaint)).toContain(says);
  });

  test.each(TITLES)('%s: no check that is offered there does it', (complaint) => {
    for (const { act, until } of FORBIDS[complaint]) {
      for (const { id, acts = [], needs } of checksAsked(complaint)) {
        if (!acts.includes(act)) continue;
        if (until === undefined) expect.fail(`${id} ${act}`);
        expect(needs, `${id} ${act}`).toContain(until);
      }
    }
  });

  test('every check says what it makes people do, in acts that are known', () => {
    expect(Object.keys(ACTS_OF).sort()).toEqual(CHECKS.map(({ id }) => id).sort());
    for (const { id } of CHECKS)
      for (const act of actsOf(id))
        expect([...POWER_ACTS, 'speaks-of-another-part', 'switches-on-into-a-short']).toContain(act);
    expect(POWER_ACTS.filter((act) => !CHECKS.some(({ id }) => actsOf(id).includes(act)))).toEqual([]);
  });

  test('a train is not sent over a gap that shorts, nor left standing across it', () => {
    for (const id of ['stand-across', 'longer-locomotive', 'uncouple', 'halve-the-trains'])
      expect(offered('trips-at-gap')).not.toContain(id);
    expect(offered('jerks-at-gap')).not.toContain('stand-across');
    expect(offered('ignores-commands')).not.toContain('longer-locomotive');
  });

  test('after an exchange of supplies nothing is switched on before the labels were read', () => {
    const met = offeredAfter('shuts-down-after-swap', { 'danger-now': 'none' });
    const labels = met.indexOf('read-labels');
    expect(labels).toBeGreaterThanOrEqual(0);
    expect(met.slice(0, labels).filter((check) => actsOf(check).includes('switches-on'))).toEqual([]);
  });

  test('nor is it where the labels could not be read, or a supply is of the wrong kind', () => {
    for (const seen of [CANNOT, 'wrong-kind']) {
      const met = offeredAfter('shuts-down-after-swap', { 'danger-now': 'none', 'read-labels': seen }, [
        'wrong-supply-kind',
      ]);
      expect(met.filter((check) => actsOf(check).includes('switches-on'))).toEqual([]);
    }
  });

  test.each(COMPLAINT_IDS)('%s: after heat nothing is switched on for a check', (complaint) => {
    for (const heat of ['warm-or-was-hot', 'smoke-heat-or-damage']) {
      const met = offeredAfter(complaint, { 'danger-now': heat }, ['switch-off-now']);
      expect(met.filter((check) => actsOf(check).includes('switches-on'))).toEqual([]);
      expect(met.length).toBeGreaterThan(3);
    }
  });
});

describe('A dead short that is there with everything unplugged', () => {
  const short = { 'danger-now': 'none', 'how-many-parts': 'several', 'meter-ohms-between-rails': 'short' };
  const open = { ...short, 'meter-ohms-between-rails': 'high' };
  const isMeasured = (check: string): boolean => /^meter-.*(?:volts|output|supply)/.test(check);
  const WORDS = new Map(wordsOf('en', 'checks').map(({ id, data }) => [id, String(data['how'])]));
  /** By words that say how to do without. */
  const withOhms = (check: string): boolean =>
    /Dead short measured\? Leave everything off/.test(WORDS.get(check) ?? '');
  const switchesOn = (check: string): boolean => actsOf(check).includes('switches-on') && !withOhms(check);

  test.each(COMPLAINT_IDS)('%s: nothing is switched on into it, and no volts are measured on it', (complaint) => {
    const met = offeredAfter(complaint, short);
    expect(met.filter((check) => switchesOn(check) || isMeasured(check))).toEqual([]);
    expect(met.length).toBeGreaterThan(3);
  });

  test('with open rails both are asked for as before', () => {
    const met = offeredAfter('since-rewired', open);
    expect(met.filter(switchesOn).length).toBeGreaterThan(0);
    expect(met.filter(isMeasured).length).toBeGreaterThan(0);
  });
});

describe('A locomotive that stands across the gap', () => {
  const row = (id: CheckId) => SIGN_MODEL.checks.find((check) => check.id === id);
  /** What each answer shows to be safe; what it says of the layout is left out. */
  const safety = (id: CheckId) =>
    Object.entries(row(id)?.establishes ?? {})
      .map(([option, shown]) => [option, shown.filter(isDoneFirst)] as const)
      .filter(([, shown]) => shown.length > 0);

  test('can damage something, and waits until lamps or a meter have shown that the two parts agree', () => {
    expect(row('stand-across')?.risk).toBe(2);
    expect(row('stand-across')?.needs).toContain('parts-agree');
    expect(safety('two-lamps')).toEqual([['both-dark', ['parts-agree']]]);
    expect(safety('meter-same-and-diagonal')).toEqual([['diagonal-large', ['parts-agree']]]);
  });

  test.each(COMPLAINT_IDS)('%s: is never asked for before', (complaint) => {
    expect(offeredAfter(complaint, { 'danger-now': 'none' })).not.toContain('stand-across');
  });
});
