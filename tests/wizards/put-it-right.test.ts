import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Tool } from '../../src/engine/diagnosis/model.ts';
import { TOOLS } from '../../src/engine/diagnosis/model.ts';
import type { Told, Walk } from '../../src/wizards/put-it-right/address.ts';
import { CANNOT, NOTHING_TOLD, parseWalk, replayWalk, walkAddress } from '../../src/wizards/put-it-right/address.ts';
import type { ComplaintId } from '../../src/wizards/put-it-right/model/index.ts';
import { COMPLAINT_IDS, OPENINGS, SIGN_MODEL, TWO_PARTS } from '../../src/wizards/put-it-right/model/index.ts';
import { speaksOfAnotherPart } from '../../src/wizards/put-it-right/model/second-part.ts';
import { isRead } from '../../src/wizards/put-it-right/read.ts';
import { isUnproven, putItRight } from '../../src/wizards/put-it-right/states.ts';
import { rowOfCheck } from '../../src/wizards/put-it-right/step.ts';
import { anyTold } from './arbitrary.ts';
import { likeliest } from './likeliest.ts';
import { askOnAndOn } from './on-and-on.ts';

askOnAndOn();

const ALL_TOOLS: readonly Tool[] = TOOLS.filter((tool) => tool !== 'eyes');
const MOST_QUESTIONS = 24;
const RESTING = Object.keys(putItRight.states).filter((state) => state !== 'deciding');

/** Walks on with one answer after the other until something is proposed; danger answers aside. */
function walkWith(complaint: ComplaintId, answer: (check: string) => string, tools: readonly Tool[] = ALL_TOOLS) {
  let told: Told = { ...NOTHING_TOLD, toldFirst: true, tools };
  // Everything is answered in one sitting.
  let walk: Walk = replayWalk(complaint, told, told.seen);
  let questions = 0;
  while (walk.check !== undefined && questions <= MOST_QUESTIONS) {
    told = { ...told, seen: { ...told.seen, [walk.check]: answer(walk.check) } };
    walk = replayWalk(complaint, told, told.seen);
    questions += 1;
  }
  return { told, walk, questions };
}

const safely = (check: string): string | undefined =>
  check === 'danger-now' || check === 'old-transformer' ? 'none' : undefined;

const asCause =
  (cause: string) =>
  (check: string): string =>
    safely(check) ?? likeliest(cause, check) ?? CANNOT;

const anyComplaint = fc.constantFrom(...COMPLAINT_IDS);

describe('a walk in an address', () => {
  test('reads as what was written, whatever was told in this sitting', () => {
    fc.assert(
      fc.property(anyTold, (told) => {
        const { told: read, leftOut } = parseWalk(walkAddress(told), told.seen);
        expect(leftOut).toEqual([]);
        expect(read).toEqual(told);
      }),
    );
  });

  test('never says for its reader that nothing is hot: the danger question comes anew, and what else was told is kept', () => {
    const link = '?danger-now=none&which-places=every-gap&tools=lamps';
    const { told, leftOut } = parseWalk(link);
    expect([told.seen, leftOut]).toEqual([{ 'which-places': 'every-gap' }, []]);
    expect(walkAddress({ ...told, seen: { ...told.seen, 'danger-now': 'none' } })).not.toContain('danger-now');
    expect([replayWalk('trips-at-gap', told).state, replayWalk('trips-at-gap', told).check]).toEqual([
      'safety',
      'danger-now',
    ]);
    const here = parseWalk(link, { 'danger-now': 'none' });
    expect(replayWalk('trips-at-gap', here.told, { 'danger-now': 'none' }).context.answers).toHaveLength(2);
  });

  test('carries danger: what was too hot is so for whoever opens it', () => {
    expect(walkAddress({ ...NOTHING_TOLD, seen: { 'danger-now': 'smoke-heat-or-damage' } })).toContain('smoke');
    expect(parseWalk('?danger-now=smoke-heat-or-damage').told.seen).toEqual({ 'danger-now': 'smoke-heat-or-damage' });
  });

  test('never passes on that a load test came out well: no coin is asked for by a link', () => {
    const seen = { 'danger-now': 'none', 'load-test': 'firm-everywhere' };
    const told = { ...NOTHING_TOLD, toldFirst: true, tools: ALL_TOOLS, seen };
    expect(replayWalk('short-not-noticed', told, seen).context.trusted.has('load-test')).toBe(true);
    let walk = replayWalk('short-not-noticed', told, { 'danger-now': 'none' });
    const more: Record<string, string> = { ...seen };
    for (let i = 0; i < MOST_QUESTIONS && walk.check !== undefined; i++) {
      expect(['coin-near', 'coin-far']).not.toContain(walk.check);
      more[walk.check] = CANNOT;
      walk = replayWalk('short-not-noticed', { ...told, seen: more }, { 'danger-now': 'none' });
    }
  });

  test('always comes to a state that a person can be in, and the same one every time', () => {
    fc.assert(
      fc.property(anyComplaint, anyTold, (complaint, told) => {
        const walk = replayWalk(complaint, told);
        expect(RESTING).toContain(walk.state);
        expect(replayWalk(complaint, told)).toEqual(walk);
      }),
      { numRuns: 60 },
    );
  });

  test('keeps everything that was seen, wherever it was asked', () => {
    fc.assert(
      fc.property(anyComplaint, anyTold, (complaint, told) => {
        const now = { ...told, toldFirst: true, tools: ALL_TOOLS, fixed: [], doing: undefined, undoing: undefined };
        const { context, state } = replayWalk(complaint, now, now.seen);
        if (state === 'safety' || state === 'solved') return;
        const seen = Object.entries(told.seen).filter(([, option]) => option !== CANNOT);
        expect(context.answers.map(({ check }) => check).sort()).toEqual(seen.map(([check]) => check).sort());
      }),
      { numRuns: 60 },
    );
  });

  test('of an older catalogue: names that are no longer known are left out and counted, the rest is kept', () => {
    const { told, leftOut } = parseWalk(
      '?danger-now=none&is-it-plugged=yes&two-lamps=purple&tried=reversed.gremlins&tools=coin.lightsabre',
    );
    expect(leftOut.map(({ name, because }) => [name, because])).toEqual([
      ['is-it-plugged', 'unknown-name'],
      ['two-lamps', 'unknown-answer'],
      ['tools', 'unknown-tool'],
      ['tried', 'unknown-fix'],
    ]);
    expect(told).toEqual({ ...NOTHING_TOLD, toldFirst: true, tools: ['coin'], tried: ['reversed'] });
  });

  test('with the marks that others hang on a link as it is passed on: they are no part of what was told', () => {
    const marks = [
      'fbclid=IwAR0',
      'utm_source=mail',
      'utm_campaign=club',
      'gclid=x',
      'msclkid=y',
      'igsh=z',
      'mc_eid=1',
      'ref=list',
    ];
    const { told, leftOut } = parseWalk(`?danger-now=none&${marks.join('&')}`);
    expect(leftOut).toEqual([]);
    expect(told).toEqual(NOTHING_TOLD);
  });

  test('mangled, truncated and hostile addresses are read without a throw and give a state', () => {
    fc.assert(
      fc.property(anyComplaint, fc.oneof(fc.string(), fc.webQueryParameters()), (complaint, text) => {
        const { told } = parseWalk(`?${text}`);
        expect(RESTING).toContain(replayWalk(complaint, told).state);
      }),
      { numRuns: 150 },
    );
  });
});

describe('a walk', () => {
  test.each(COMPLAINT_IDS)('%s begins with danger, then with what is known already, then asks', (complaint) => {
    const start = replayWalk(complaint, NOTHING_TOLD);
    expect([start.state, start.check]).toEqual(['safety', 'danger-now']);
    const sitting = { 'danger-now': 'none' };
    const cold = { ...NOTHING_TOLD, seen: sitting };
    expect(replayWalk(complaint, cold, sitting).state).toBe('telling');
    expect(replayWalk(complaint, { ...cold, toldFirst: true, tools: [] }, sitting).state).toBe('asking');
  });

  test('what is at hand is asked for only once a check needs something', () => {
    const sitting = { 'danger-now': 'none' };
    for (const complaint of COMPLAINT_IDS) {
      const told = { ...NOTHING_TOLD, seen: sitting, toldFirst: true };
      const walk = replayWalk(complaint, told, sitting);
      const tool = SIGN_MODEL.checks.find(({ id }) => id === walk.check)?.tool;
      expect([walk.state, tool], complaint).toEqual(
        walk.state === 'equipping' ? ['equipping', undefined] : ['asking', 'eyes'],
      );
    }
  });

  test('what was known before can be told at any time, and nothing that was told or tried is lost by it', () => {
    const seen = { 'danger-now': 'none', 'when-it-happens': 'at-the-gap' };
    const told = { ...NOTHING_TOLD, toldFirst: false, tools: [], tried: ['reversed'], left: ['reversed'], seen };
    const { told: read } = parseWalk(walkAddress(told), seen);
    expect(read).toEqual(told);
    expect(replayWalk('trips-at-gap', read, seen).state).toBe('telling');
  });

  test('what was tried and begun counts, though nobody has said yet what is at hand', () => {
    const seen = { 'danger-now': 'none', 'when-it-happens': 'at-the-gap' };
    const told = { ...NOTHING_TOLD, toldFirst: true, seen };
    expect(replayWalk('trips-at-gap', { ...told, doing: 'reversed' }, seen).state).toBe('fixing');
    const { context } = replayWalk('trips-at-gap', { ...told, tried: ['reversed', 'one-rail'] }, seen);
    expect(context.tried).toEqual(['reversed', 'one-rail']);
  });

  test('with one part there is no last look at a gap: it is solved as it runs', () => {
    const seen = { 'danger-now': 'none', 'how-many-parts': 'one' };
    const told = { ...NOTHING_TOLD, toldFirst: true, tools: [], seen, fixed: ['no-feed'] };
    expect(replayWalk('nothing-works', told, seen).state).toBe('solved');
    const several = { ...seen, 'how-many-parts': 'several' };
    expect(replayWalk('nothing-works', { ...told, seen: several }, several).state).toBe('verifying');
  });

  test('a repair that did not help is put back before the next, and what was left is kept', () => {
    const { told } = walkWith('trips-at-gap', asCause('feed-reversed'));
    const undoing = { ...told, undoing: 'reversed' };
    expect([
      replayWalk('trips-at-gap', undoing, told.seen).state,
      replayWalk('trips-at-gap', undoing, told.seen).fixClass,
    ]).toEqual(['putting-back', 'reversed']);
    const after = replayWalk('trips-at-gap', { ...told, tried: ['reversed'], left: ['reversed'] }, told.seen);
    expect([after.context.tried, after.context.left]).toEqual([['reversed'], ['reversed']]);
    expect(after.fixClass).not.toBe('reversed');
  });

  test('a trouble that comes and goes is waited for: it is not solved because it is not there now', () => {
    const told = {
      ...NOTHING_TOLD,
      toldFirst: true,
      tools: [],
      seen: { 'danger-now': 'none' },
      fixed: ['unit-cuts-out'],
    };
    expect(replayWalk('now-and-then', told, told.seen).state).toBe('waiting');
    const away = replayWalk('now-and-then', { ...told, stayedAway: true }, told.seen);
    expect(away.state).toBe('solved');
    expect(replayWalk('trips-at-gap', told, told.seen).state).toBe('solved');
  });

  test('isolation and phase are looked at again after work on wires and gaps, and not after a locomotive was cleaned', () => {
    const told = { ...NOTHING_TOLD, toldFirst: true, tools: [], seen: { 'danger-now': 'none' } };
    const cured = (fixClass: string) => replayWalk('trips-at-gap', { ...told, fixed: [fixClass] }, told.seen).state;
    expect([cured('reversed'), cured('no-feed'), cured('pickup'), cured('decoder-muddled')]).toEqual([
      ...['verifying', 'verifying', 'solved', 'solved'],
    ]);
  });

  test('smoke or heat ends every question at once: switch off, whatever else was said', () => {
    const told = { ...NOTHING_TOLD, seen: { 'danger-now': 'smoke-heat-or-damage', 'two-lamps': 'both-dark' } };
    for (const complaint of COMPLAINT_IDS) {
      const walk = replayWalk(complaint, told);
      expect([walk.state, walk.fixClass]).toEqual(['proposing', 'switch-off-now']);
    }
  });

  test('after it is off and cold the search for the cause goes on, and never with a coin', () => {
    const told = {
      ...NOTHING_TOLD,
      toldFirst: true,
      seen: { 'danger-now': 'smoke-heat-or-damage' },
      tried: ['switch-off-now'],
    };
    let walk = replayWalk('short-not-noticed', { ...told, tools: ALL_TOOLS });
    const seen: Record<string, string> = { ...told.seen };
    for (let i = 0; i < MOST_QUESTIONS && walk.check !== undefined; i++) {
      expect(['coin-near', 'coin-far']).not.toContain(walk.check);
      seen[walk.check] = CANNOT;
      walk = replayWalk('short-not-noticed', { ...told, seen, tools: ALL_TOOLS });
    }
    expect(walk.trail.length).toBeGreaterThan(3);
  });

  test('what is not at hand is never asked for', () => {
    for (const complaint of COMPLAINT_IDS) {
      const { walk } = walkWith(complaint, (check) => safely(check) ?? CANNOT, []);
      const tools = walk.trail.map((check) => SIGN_MODEL.checks.find(({ id }) => id === check)?.tool);
      expect(new Set(tools), complaint).toEqual(new Set(['eyes']));
    }
  });

  test('a fix that did not help is set aside and never proposed again; what is known stays', () => {
    const { told, walk } = walkWith('trips-at-gap', asCause('feed-reversed'));
    expect([walk.state, walk.fixClass]).toEqual(['proposing', 'reversed']);
    const after = replayWalk('trips-at-gap', { ...told, tried: ['reversed'] }, told.seen);
    expect(after.fixClass).not.toBe('reversed');
    expect(after.context.answers).toHaveLength(walk.context.answers.length);
  });

  test('after "that fixed it" isolation and phase are looked at once more, and only then it is solved', () => {
    const { told } = walkWith('trips-at-gap', asCause('feed-reversed'));
    const mending = { ...told, doing: 'reversed' };
    expect(replayWalk('trips-at-gap', mending, told.seen).state).toBe('fixing');
    const helped = { ...told, fixed: ['reversed'] };
    expect(replayWalk('trips-at-gap', helped, told.seen).state).toBe('verifying');
    expect(replayWalk('trips-at-gap', { ...helped, isolation: 'fine' }, told.seen).state).toBe('verifying');
    const solved = replayWalk('trips-at-gap', { ...helped, isolation: 'fine', phase: 'fine' }, told.seen);
    expect([solved.state, solved.fixClass]).toEqual(['solved', 'reversed']);
  });

  test('whoever has said to have neither lamps nor meter is not asked for them at the end, and it is said to be unproven', () => {
    const { told } = walkWith('trips-at-gap', asCause('feed-reversed'));
    const helped = { ...told, tools: [], fixed: ['reversed'] };
    expect(replayWalk('trips-at-gap', helped, told.seen).state).toBe('verifying');
    const solved = replayWalk('trips-at-gap', { ...helped, isolation: 'fine' }, told.seen);
    expect([solved.state, isUnproven(solved.context)]).toEqual(['solved', true]);
    const proven = { ...helped, tools: ['lamps'] as const, isolation: 'fine' as const, phase: 'fine' as const };
    expect(isUnproven(replayWalk('trips-at-gap', proven, told.seen).context)).toBe(false);
  });

  test('a rail that is still joined is a second fault: it is mended, and looked at again', () => {
    const { told } = walkWith('trips-at-gap', asCause('feed-reversed'));
    const joined = { ...told, fixed: ['reversed'], isolation: 'one-rail-joined' as const };
    const second = replayWalk('trips-at-gap', joined, told.seen);
    expect([second.state, second.fixClass]).toEqual(['proposing', 'one-rail']);
    expect(replayWalk('trips-at-gap', { ...joined, doing: 'one-rail' }, told.seen).state).toBe('fixing');
    const both = { ...joined, fixed: ['reversed', 'one-rail'], isolation: undefined };
    expect(replayWalk('trips-at-gap', both, told.seen).state).toBe('verifying');
    expect(replayWalk('trips-at-gap', { ...both, isolation: 'fine', phase: 'cannot' }, told.seen).state).toBe('solved');
  });

  test('where nothing can be checked and nothing helps, the end is honest', () => {
    const cannot = (check: string): string => safely(check) ?? CANNOT;
    const { told } = walkWith('jerks-at-gap', cannot, []);
    const tried = [...new Set(SIGN_MODEL.causes.map(({ fixClass }) => fixClass))];
    expect(replayWalk('jerks-at-gap', { ...told, tried }, told.seen).state).toBe('handed-on');
  });
});

describe.each(COMPLAINT_IDS)('from "%s"', (complaint) => {
  const shares: Readonly<Record<string, number>> = OPENINGS.find(({ id }) => id === complaint)?.shares ?? {};
  const causes = SIGN_MODEL.causes.filter(({ id }) => (shares[id] ?? 0) > 0);

  test('every cause with a share is reached, within twenty-four questions a walk', () => {
    const missed: string[] = [];
    // Every third cause, another third for each complaint: all are tried from some.
    const part = COMPLAINT_IDS.indexOf(complaint) % 3;
    for (const { id, fixClass } of causes.filter((_, at) => at % 3 === part)) {
      const { told, questions } = walkWith(complaint, asCause(id));
      expect(questions, id).toBeLessThanOrEqual(MOST_QUESTIONS);
      if (!reaches(complaint, told, fixClass)) missed.push(id);
    }
    expect(missed).toEqual([]);
  });

  test('no walk is endless: whatever is answered, a proposal or an honest end comes', () => {
    const random = fc.sample(fc.array(fc.nat(4), { minLength: 20, maxLength: 20 }), { numRuns: 4, seed: 7 });
    for (const picks of random) {
      let n = 0;
      const { walk, questions } = walkWith(complaint, (check) => {
        const options = SIGN_MODEL.checks.find(({ id }) => id === check)?.options ?? [];
        n += 1;
        return safely(check) ?? options[(picks[n] ?? 0) % options.length] ?? CANNOT;
      });
      expect(questions).toBeLessThanOrEqual(MOST_QUESTIONS);
      expect(['proposing', 'handed-on']).toContain(walk.state);
    }
  });
});

/** Whether the class is proposed sooner or later, others set aside one by one, or stands in the list of an honest end. */
function reaches(complaint: ComplaintId, start: Told, fixClass: string): boolean {
  let told = start;
  for (let i = 0; i < 40; i++) {
    const walk = replayWalk(complaint, told, told.seen);
    if (walk.state === 'handed-on') return !told.tried.includes(fixClass);
    if (walk.fixClass === fixClass) return true;
    if (walk.fixClass !== undefined) told = { ...told, tried: [...told.tried, walk.fixClass] };
    else if (walk.check !== undefined) told = { ...told, seen: { ...told.seen, [walk.check]: CANNOT } };
    else return false;
  }
  return false;
}

describe('what is asked first', () => {
  /** Checks asked one after the other by somebody who can check nothing. */
  const askedOf = (complaint: ComplaintId, tools: string): string[] => {
    const asked: string[] = [];
    const sitting = { 'danger-now': 'none' };
    let search = `?tools=${tools}`;
    for (let i = 0; i < 12; i++) {
      const { check } = replayWalk(complaint, parseWalk(search, sitting).told, sitting);
      if (check === undefined) break;
      asked.push(check);
      search += `&${check}=cannot`;
    }
    return asked;
  };
  const ALL_OF_THEM = ALL_TOOLS.join('.');

  test('after an exchange of supplies the labels come straight after danger, whatever tools there are', () => {
    for (const tools of ['none', ALL_OF_THEM]) expect(askedOf('shuts-down-after-swap', tools)[0]).toBe('read-labels');
  });

  test('with several trains what a person remembers comes first, and needs no second part', () => {
    for (const tools of ['none', ALL_OF_THEM]) {
      const [first = ''] = askedOf('trips-with-traffic', tools);
      expect(['when-it-happens', 'which-vehicles']).toContain(first);
      expect(rowOfCheck(first)?.source).toBe('memory');
      expect(speaksOfAnotherPart(first)).toBe(false);
    }
  });

  test('new part and old part are explained to those who say themselves that they have two', () => {
    expect(TWO_PARTS.has('trips-at-gap')).toBe(true);
    for (const one of ['trips-with-traffic', 'slow-far-away', 'cuts-out-after-a-while'] as const)
      expect(TWO_PARTS.has(one)).toBe(false);
  });

  test('a label that was read is no chance: only what it says itself is called read', () => {
    const answers = [{ check: 'read-labels', option: 'wrong-kind' }];
    expect(isRead({ answers }, 'wrong-supply-kind')).toBe(true);
    expect(isRead({ answers }, 'supply-too-small')).toBe(false);
    expect(isRead({ answers: [{ check: 'read-labels', option: 'all-fit' }] }, 'wrong-supply-kind')).toBe(false);
  });
});
