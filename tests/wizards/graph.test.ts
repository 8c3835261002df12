// Each machine walked from its first question with every kind of answer: where guards look at one answer only, this
// meets every transition without trying every combination.

import { describe, expect, test } from 'vitest';
import type { AnyMachineSnapshot, AnyStateMachine } from 'xstate';
import { initialTransition, transition } from 'xstate';
import { SOMETHING_ELSE } from '../../src/engine/diagnosis/model.ts';
import { ENOUGH_CURRENT_OUTCOMES } from '../../src/wizards/enough-current/outcomes.ts';
import type { WizardId } from '../../src/wizards/index.ts';
import { fixesOf, WIZARD_IDS } from '../../src/wizards/index.ts';
import type { Answers } from '../../src/wizards/planning/answers.ts';
import { isAsked } from '../../src/wizards/planning/answers.ts';
import type { Question } from '../../src/wizards/planning/questions.ts';
import type { UserAnswer, UserAsk } from '../../src/wizards/planning/replay.ts';
import { replay, surerIn } from '../../src/wizards/planning/replay.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { JOBS } from '../../src/wizards/safety/jobs.ts';
import { SHARE_OUT_OUTCOMES } from '../../src/wizards/share-out/outcomes.ts';
import { WHICH_SUPPLY_OUTCOMES } from '../../src/wizards/which-supply-where/outcomes.ts';
import { WIRE_IT_OUTCOMES } from '../../src/wizards/wire-it/outcomes.ts';
import { LANGUAGES, stepsOf, wordsOf } from '../content/folder.ts';
import { enoughCurrentEnd, shareOutEnd, whichSupplyEnd, wireItEnd } from './ends.ts';
import { TO_ENOUGH_CURRENT, TO_SHARE_OUT, TO_WHICH_SUPPLY, TO_WIRE_IT } from './outcomes.ts';
import { textsFor, told, WIZARDS } from './told.ts';

/** Complete answers to one question: each text of each field once, beside plain answers, all unknown, and all at their least. */
function answersFor({ fields }: Question): Answers[] {
  const complete = (textOf: (id: string, texts: readonly string[]) => string | undefined): Answers => {
    const given: Record<string, Answers[string]> = {};
    for (const field of fields) {
      const text = textOf(field.id, textsFor(field)) ?? 'unknown';
      const answer = told({ [field.id]: text })[field.id];
      if (answer !== undefined && isAsked(field, given)) given[field.id] = answer;
    }
    return given;
  };
  const oneByOne = fields.flatMap((field) =>
    textsFor(field).map((text) => complete((id, texts) => (id === field.id ? text : texts[1]))),
  );
  return [...oneByOne, complete(() => 'unknown'), complete((_, texts) => texts[0])];
}

const events = (question: Question): UserAnswer[] =>
  answersFor(question).map((answers) => ({ type: 'user.answer', answers }));

/** Declared transitions of a machine, as "from -> to (guard)". */
function declared(machine: AnyStateMachine): string[] {
  return Object.values(machine.states).flatMap((state) =>
    [...state.transitions.values()].flat().map((one) => name(state.key, one.target?.[0]?.key, one.guard)),
  );
}

const name = (from: string, to: string | undefined, guard: unknown): string =>
  `${from} -> ${to ?? 'nowhere'}${guard === undefined ? '' : ` (${JSON.stringify(guard)})`}`;

/** What a person can do at a state: answer its question, or ask one more at a quick answer. */
function eventsAt(machine: AnyStateMachine, at: string, questions: readonly Question[]): (UserAnswer | UserAsk)[] {
  if (at === 'surer') return surerIn(machine).map((question) => ({ type: 'user.ask', question, answers: {} }));
  const question = questions.find(({ id }) => id === at);
  if (question === undefined) throw new Error(`the state ${at} is no question and no end`);
  return events(question);
}

interface Walk {
  readonly taken: ReadonlySet<string>;
  readonly next: ReadonlyMap<string, ReadonlySet<string>>;
  readonly ends: ReadonlySet<string>;
}

function walk(machine: AnyStateMachine, questions: readonly Question[]): Walk {
  const taken = new Set<string>();
  const next = new Map<string, Set<string>>();
  const ends = new Set<string>();
  const open: AnyMachineSnapshot[] = [initialTransition(machine)[0]];
  for (let snapshot = open.pop(); snapshot !== undefined; snapshot = open.pop()) {
    const at = String(snapshot.value);
    if (snapshot.status === 'done') ends.add(at);
    if (snapshot.status === 'done' || next.has(at)) continue;
    const following = new Set<string>();
    next.set(at, following);
    for (const event of eventsAt(machine, at, questions)) {
      expect(snapshot.can(event), `${at} refuses ${JSON.stringify(event)}`).toBe(true);
      for (const one of machine.getTransitionData(snapshot, event))
        taken.add(name(at, one.target?.[0]?.key, one.guard));
      const [after] = transition(machine, snapshot, event);
      following.add(String(after.value));
      open.push(after);
    }
  }
  return { taken, next, ends };
}

/** Every way through to an end or to the quick answer, as lists of states. */
function paths(next: Walk['next'], at: string, before: readonly string[] = []): string[][] {
  if (before.includes(at)) throw new Error(`a circle: ${[...before, at].join(' -> ')}`);
  const following = at === 'surer' ? undefined : next.get(at);
  if (following === undefined) return [[...before, at]];
  return [...following].flatMap((state) => paths(next, state, [...before, at]));
}

describe.each(WIZARDS)('the wizard $name', ({ machine, questions }) => {
  const walked = walk(machine, questions);

  test('meets every declared transition, target and guard alike', () => {
    expect([...walked.taken].sort()).toEqual(declared(machine).sort());
  });

  test('meets every declared state', () => {
    expect([...walked.next.keys(), ...walked.ends].sort()).toEqual(Object.keys(machine.states).sort());
  });

  const beyond = surerIn(machine);

  test('goes round no circle, and every path ends in a final state or in the quick answer', () => {
    const all = paths(walked.next, questions[0]?.id ?? '');
    expect(all.length).toBeGreaterThan(3);
    for (const path of all) expect([...walked.ends, 'surer'], path.join(' -> ')).toContain(path.at(-1));
  });

  test('leads back to the quick answer from each question beyond it', () => {
    for (const id of beyond) for (const path of paths(walked.next, id)) expect(path.at(-1)).toBe('surer');
  });

  test('has its quick answer after six questions at the most', () => {
    if (beyond.length === 0) return;
    const quick = paths(walked.next, questions[0]?.id ?? '').filter((path) => path.at(-1) === 'surer');
    expect(Math.max(...quick.map((path) => path.length - 1))).toBeLessThanOrEqual(6);
  });

  test('asks exactly the questions that it lists, in the listed order on every path', () => {
    const order = questions.map(({ id }) => id);
    expect([...walked.next.keys()].filter((id) => id !== 'surer').sort()).toEqual([...order].sort());
    for (const path of paths(walked.next, order[0] ?? '')) {
      const asked = path.slice(0, -1);
      expect(asked).toEqual(order.filter((id) => asked.includes(id)));
    }
  });

  test('keeps every answer on the way, and nothing else', () => {
    let given: Answers = {};
    for (let state = replay(machine, {}); state.question !== undefined; state = replay(machine, given)) {
      const [first] = answersFor(state.question);
      if (first === undefined) throw new Error(`${state.question.id} has no answer`);
      given = { ...given, ...first };
    }
    expect(replay(machine, { ...given, 'not-a-field': { kind: 'unknown' } }).used).toEqual(given);
  });
});

interface Ends {
  readonly outcomes: readonly string[];
  readonly examples: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly endOf: (answers: Answers) => string;
}

/** The type checker asks for the ends of a new wizard. */
const ENDS: Readonly<Record<WizardId, Ends>> = {
  'enough-current': { outcomes: ENOUGH_CURRENT_OUTCOMES, examples: TO_ENOUGH_CURRENT, endOf: enoughCurrentEnd },
  'which-supply-where': { outcomes: WHICH_SUPPLY_OUTCOMES, examples: TO_WHICH_SUPPLY, endOf: whichSupplyEnd },
  'share-out': { outcomes: SHARE_OUT_OUTCOMES, examples: TO_SHARE_OUT, endOf: shareOutEnd },
  'wire-it': { outcomes: WIRE_IT_OUTCOMES, examples: TO_WIRE_IT, endOf: wireItEnd },
};

describe.each(WIZARD_IDS)('the ends of %s', (wizard) => {
  const { outcomes, examples, endOf } = ENDS[wizard];

  test('are fixes that the one list of wizards knows', () => {
    expect(outcomes.filter((id) => !fixesOf(wizard).includes(id))).toEqual([]);
  });

  test('has an example for each of its outcomes and for no other', () => {
    expect(Object.keys(examples).sort()).toEqual([...outcomes].sort());
  });

  test.each(outcomes.map((outcome) => [outcome]))('can end in %s', (outcome) => {
    expect(endOf(told(examples[outcome] ?? {}))).toBe(outcome);
  });
});

const EVERY_OUTCOME: readonly string[] = [
  ...new Set<string>([
    ...WIZARD_IDS.flatMap(fixesOf),
    ...SIGN_MODEL.causes.map(({ fixClass }) => fixClass),
    ...JOBS,
    SOMETHING_ELSE,
  ]),
];
const HANDS_ON =
  /\b(plug|plugs|plugged|unplug|unplugged|pull|gap both|cut|saw|solder|joiner|joiners|meter|measure|load-test|coin|switch on|switch everything off|with everything off|power on)\b/i;

describe.each(LANGUAGES)('the pages of the outcomes in "%s"', (language) => {
  const fixes = new Map(wordsOf(language, 'fixes').map((words) => [words.id, words]));

  test('are there for every outcome, and no page is left over', () => {
    expect([...fixes.keys()].sort()).toEqual([...EVERY_OUTCOME].sort());
  });

  test.each(EVERY_OUTCOME)('%s says what to do, how one knows that it worked, and what if not', (outcome) => {
    const page = fixes.get(outcome);
    expect(page === undefined ? 0 : stepsOf(page).length).toBeGreaterThan(0);
    for (const part of ['title', 'lead', 'verify', 'next']) expect(String(page?.data[part] ?? '').trim()).not.toBe('');
  });
});

describe('in English', () => {
  const fixes = wordsOf('en', 'fixes');
  const handsOn = fixes.filter(
    (page) => !page.id.startsWith('out-of-scope') && stepsOf(page).some(({ text }) => HANDS_ON.test(text)),
  );

  test('most pages have something to plug, cut, solder, measure or switch', () => {
    expect(handsOn.length).toBeGreaterThan(12);
  });

  test.each(handsOn.map((page) => [page.id, page] as const))(
    '%s, where hands are at work, has a caution at a step',
    (_, page) => {
      expect(stepsOf(page).flatMap(({ cautions }) => cautions).length).toBeGreaterThan(0);
    },
  );

  const page = (id: string) => {
    const found = fixes.find((one) => one.id === id);
    if (found === undefined) throw new Error(`no page ${id}`);
    return found;
  };
  const BOOSTERS = ['booster-with-freed-supply', 'booster-with-own-supply', 'more-districts'];

  // Common practice, no source: without the control link no command gets through a booster.
  test.each(BOOSTERS)('%s sends to the one job that divides the track', (id) => {
    expect(stepsOf(page(id)).map(({ job }) => job)).toContain('divide-the-track');
  });

  test('that job gaps, feeds, connects and proves, in this order', () => {
    expect(stepsOf(page('divide-the-track')).flatMap(({ job }) => job ?? [])).toEqual([
      ...['gap-both-rails', 'lay-a-feeder', 'connect-a-booster', 'prove-the-gap', 'load-test-and-coin'],
    ]);
  });

  test('that job has a step for the control cable, with the caution about a booster without signal', () => {
    const step = stepsOf(page('connect-a-booster')).find(({ text }) => /connect the control cable/i.test(text));
    expect(step?.text).toMatch(/connect .*control cable/i);
    expect(step?.cautions).toContain('no-signal-runaway');
  });

  // NEM 609, 6.1: outputs of supplies are never joined in series or in parallel.
  test.each(['connect-a-booster', 'exchange-a-supply', 'larger-supply', 'two-supplies-alike'])(
    '%s warns never to join the outputs of two supplies',
    (id) => {
      expect(stepsOf(page(id)).flatMap(({ cautions }) => cautions)).toContain('two-supplies-never-joined');
    },
  );

  test('that warning says what NEM 609 forbids', () => {
    const caution = wordsOf('en', 'cautions').find(({ id }) => id === 'two-supplies-never-joined');
    expect(String(caution?.data['do'])).toMatch(/never join outputs.*NEM 609/is);
  });

  test.each([...BOOSTERS, 'larger-supply', 'two-supplies-alike', 'wrong-supply', 'read-both-labels'])(
    '%s has the labels read before anything is plugged',
    (id) => expect(stepsOf(page(id)).flatMap(({ cautions }) => cautions)).toContain('label-before-plug'),
  );
});
