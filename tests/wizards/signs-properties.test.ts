// What must hold of every walk over signs, whatever the rows say: sampled, seeded.
import { describe, expect, test } from 'vitest';
import { SOMETHING_ELSE, TOOLS } from '../../src/engine/diagnosis/model.ts';
import type { Seen } from '../../src/engine/diagnosis/posterior.ts';
import { signPosterior } from '../../src/engine/diagnosis/sign-shown.ts';
import type { NextStep } from '../../src/engine/index.ts';
import type { ComplaintId } from '../../src/wizards/put-it-right/model/index.ts';
import { COMPLAINT_IDS, SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { handedOn } from '../../src/wizards/put-it-right/possible.ts';
import type { Known } from '../../src/wizards/put-it-right/step.ts';
import { stateOf, stepOf, walkModelNow } from '../../src/wizards/put-it-right/step.ts';
import { seeded } from '../seeded.ts';

const { checks, causes, openings } = SIGN_MODEL;
const { tables, compiled } = walkModelNow();

const pickOf = <Of>(random: () => number, list: readonly Of[]): Of | undefined =>
  list[Math.floor(random() * list.length)];

const known = (complaint: ComplaintId, answers: readonly Seen[], more: Partial<Known> = {}): Known => ({
  complaint,
  answers,
  skipped: [],
  tools: TOOLS,
  tried: [],
  trusted: new Set(answers.map(({ check }) => check)),
  ...more,
});

const chancesOf = (one: Known): Map<string, number> =>
  new Map(signPosterior(walkModelNow(), stateOf(one)).causes.map(({ fault, chance }) => [fault, chance]));

/** What somebody says whose layout has this cause: drawn by its row, with or without a slip. */
function saidBy(random: () => number, cause: number, check: string): string | undefined {
  const at = tables.checkAt.get(check) ?? -1;
  const row = tables.causes[cause];
  const options = tables.model.checks[at]?.options ?? [];
  if (row === undefined) return undefined;
  const { by, chances } = tables.expected(row, at, false);
  const size = tables.dims.of(by).size;
  const weights = options.map((_, option) => {
    let sum = 0;
    for (let k = 0; k < size; k++) sum += chances[k * options.length + option] ?? 0;
    return sum;
  });
  let left = random() * weights.reduce((sum, one) => sum + one, 0);
  return options.find((_, option) => {
    left -= weights[option] ?? 0;
    return left < 0;
  });
}

interface Met {
  readonly known: Known;
  readonly step: NextStep;
}

/** What is said to a question: what must come first at its best, a slip once, else by the row of the cause; undefined where one cannot tell. */
function answerTo(
  random: () => number,
  cause: number,
  step: NextStep & { readonly kind: 'ask' },
  isSlip: boolean,
): string | undefined {
  const options = checks.find(({ id }) => id === step.check)?.options ?? [];
  if (step.because === 'first') return options[0];
  if (random() < 0.1) return undefined;
  return isSlip ? pickOf(random, options) : saidBy(random, cause, step.check);
}

/** The repair that is tried: what is proposed, or the likeliest of those left side by side. */
const repairAt = (step: NextStep, now: Known): string | undefined =>
  step.kind === 'fix' ? step.fixClass : handedOn(now).find(({ fixClass }) => fixClass !== SOMETHING_ELSE)?.fixClass;

/** A walk with this cause on the table: every state that is met, until its repair is tried or nothing is left. */
function* walkOf(random: () => number, complaint: ComplaintId, cause: number, slipAt = -1): Generator<Met, boolean> {
  let now: Known = known(complaint, []);
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const step = stepOf(now);
    yield { known: now, step };
    if (step.kind === 'ask') {
      const option = answerTo(random, cause, step, now.answers.length === slipAt);
      const trusted = new Set([...now.trusted, step.check]);
      now =
        option === undefined
          ? { ...now, trusted, skipped: [...now.skipped, step.check] }
          : { ...now, trusted, answers: [...now.answers, { check: step.check, option }] };
      continue;
    }
    const fixClass = repairAt(step, now);
    if (fixClass === undefined || (step.kind === 'fix' && step.danger !== undefined)) return false;
    if (fixClass === compiled.faults[cause]?.fixClass) return true;
    now = { ...now, tried: [...now.tried, fixClass] };
  }
  return false;
}

/** Twenty-four questions, and every repair once. */
const MOST_TURNS = 24 + new Set(causes.map(({ fixClass }) => fixClass)).size + 2;

function ended(walk: Generator<Met, boolean>): { readonly met: readonly Met[]; readonly found: boolean } {
  const met: Met[] = [];
  for (let next = walk.next(); ; next = walk.next()) {
    if (next.done === true) return { met, found: next.value };
    met.push(next.value);
  }
}

/** Walks of a few causes from each title, seeded. */
const SAMPLED = COMPLAINT_IDS.flatMap((complaint, i) => {
  const random = seeded(1000 + i);
  return [0, 1].map((slipped) => {
    const cause = Math.floor(random() * causes.length);
    return { complaint, cause, slipAt: slipped === 1 ? 1 + Math.floor(random() * 3) : -1, random };
  });
}).map(({ complaint, cause, slipAt, random }) => ({
  complaint,
  cause,
  ...ended(walkOf(random, complaint, cause, slipAt)),
}));

describe('A walk over signs', () => {
  test('comes to the same chances whatever the order of the answers', () => {
    const random = seeded(7);
    for (const { met, complaint } of SAMPLED) {
      const { answers } = met.at(-1)?.known ?? { answers: [] };
      const shuffled = [...answers].sort(() => random() - 0.5);
      const one = chancesOf(known(complaint, answers));
      for (const [cause, chance] of chancesOf(known(complaint, shuffled)))
        expect(chance).toBeCloseTo(one.get(cause) ?? 0, 12);
    }
  });

  test('does not count an answer twice that is said twice', () => {
    for (const { met, complaint } of SAMPLED) {
      const { answers } = met.at(-1)?.known ?? { answers: [] };
      const again = answers.flatMap((one) => [one, one]);
      const once = chancesOf(known(complaint, answers));
      for (const [cause, chance] of chancesOf(known(complaint, again))) expect(chance).toBe(once.get(cause));
    }
  });

  test('changes no chance by "I can’t check that"', () => {
    for (const { met, complaint } of SAMPLED) {
      const { answers, skipped } = met.at(-1)?.known ?? { answers: [], skipped: [] };
      const without = chancesOf(known(complaint, answers));
      for (const [cause, chance] of chancesOf(known(complaint, answers, { skipped })))
        expect(chance).toBe(without.get(cause));
    }
  });

  test('asks nothing twice, and nothing that its title or an answer forbids', () => {
    for (const { met, complaint } of SAMPLED) {
      const opening = openings.find(({ id }) => id === complaint);
      for (const { known: now, step } of met) {
        if (step.kind !== 'ask') continue;
        expect([...now.answers.map(({ check }) => check), ...now.skipped]).not.toContain(step.check);
        expect(opening?.withheld ?? []).not.toContain(step.check);
        const acts = checks.find(({ id }) => id === step.check)?.acts ?? [];
        const forbidden = now.answers.flatMap(
          ({ check, option }) => checks.find(({ id }) => id === check)?.forbids?.[option] ?? [],
        );
        expect(acts.filter((act) => forbidden.includes(act))).toEqual([]);
      }
    }
  });

  test('hands nothing on while a question is left that tells the rest apart, before its questions are used up', () => {
    const ends = SAMPLED.flatMap(({ met }) => met.filter(({ step }) => step.kind === 'hand-on'));
    for (const { step, known: now } of ends) {
      if (step.kind !== 'hand-on' || step.because !== 'questions-used-up') continue;
      expect(now.answers.length + now.skipped.length).toBeGreaterThanOrEqual(24);
    }
  });

  test('is not endless: each comes to a repair that mends, to a danger or to where nothing is left', () => {
    for (const { met } of SAMPLED) expect(met.length).toBeLessThan(MOST_TURNS);
  });

  test('reaches every cause from every title, also after one slip: none is ever impossible', () => {
    for (const complaint of COMPLAINT_IDS)
      for (const [, chance] of chancesOf(known(complaint, []))) expect(chance).toBeGreaterThan(0);
    for (const { met, complaint } of SAMPLED) {
      const { answers } = met.at(-1)?.known ?? { answers: [] };
      for (const [, chance] of chancesOf(known(complaint, answers))) expect(chance).toBeGreaterThan(0);
    }
  });

  test('tries the right repair in the end on most of the sampled walks, slips and half-fitting titles included', () => {
    const found = SAMPLED.filter((one) => one.found).length;
    expect(found / SAMPLED.length).toBeGreaterThanOrEqual(0.75);
  });
});
