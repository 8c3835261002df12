// What the planning machines share: the event, the ends, and replay as the only way to build a state.
import type { AnyMachineSnapshot, AnyStateMachine } from 'xstate';
import { initialTransition, transition } from 'xstate';
import type { Chart } from '../chart.ts';
import { chartOf } from '../chart.ts';
import type { Answers } from './answers.ts';
import { isAsked, spanOf } from './answers.ts';
import type { Answer, Field, Problem } from './field.ts';
import { UNKNOWN } from './field.ts';
import type { Question, QuestionId } from './questions.ts';
import { QUESTIONS } from './questions.ts';

/** A person has answered the question that the machine stands at. */
export interface UserAnswer {
  readonly type: 'user.answer';
  readonly answers: Answers;
}

/** At the quick answer a person wants one more question, which comes back to it. */
export interface UserAsk {
  readonly type: 'user.ask';
  readonly question: string;
  /** What was answered so far. */
  readonly answers: Answers;
}

/** Gives the machine its types without a cast. */
export const TYPES: { events: UserAnswer | UserAsk } = { events: { type: 'user.answer', answers: {} } };

/** Guard: the answer being given chooses this option. */
export const chose =
  (field: string, option: string) =>
  ({ event }: { readonly event: Pick<UserAnswer, 'answers'> }): boolean => {
    const answer = event.answers[field];
    return answer?.kind === 'choice' && answer.option === option;
  };

/** Guards of the first question: layouts that are out of scope. */
export const SCOPE_GUARDS = {
  threeRail: chose('system', 'three-rail'),
  battery: chose('system', 'battery'),
  analogue: chose('system', 'analogue'),
};

/** The first question of every planning machine: out of scope ends at once, everything else goes on to `next`. */
export const askSystem = (next: QuestionId) =>
  ({
    on: {
      'user.answer': [
        { guard: 'threeRail', target: 'out-of-scope-three-rail' },
        { guard: 'battery', target: 'out-of-scope-battery' },
        { guard: 'analogue', target: 'out-of-scope-analogue' },
        { target: next },
      ],
    },
  }) as const;

/** The ends that every planning machine has: layouts that are out of scope. */
export const SCOPE_ENDS = {
  'out-of-scope-three-rail': { type: 'final' },
  'out-of-scope-battery': { type: 'final' },
  'out-of-scope-analogue': { type: 'final' },
} as const;

/** Guard: the fleet just counted is empty. */
export const nothingToMove = ({ event }: { readonly event: Pick<UserAnswer, 'answers'> }): boolean =>
  trainsIn(event.answers) === 0;

/** Guard of the state `surer`: this is the question that is wanted. */
export const wants = (
  { event }: { readonly event: UserAnswer | UserAsk },
  params: { readonly id: QuestionId },
): boolean => event.type === 'user.ask' && event.question === params.id;

/**
 * The state `surer`, the quick answer: each of these questions may still be asked, in any order; the state of each leads back to `surer`.
 * Needs the guard `wants`.
 */
export const surerBy = (...questions: readonly QuestionId[]) => ({
  on: {
    'user.ask': questions.map((id) => ({ guard: { type: 'wants' as const, params: { id } }, target: id })),
  },
});

/** The states at which an answer is worked out: with all that is asked told, or with the quick questions alone. */
export const isWorkedOut = (state: string): boolean => state === 'worked-out' || state === 'surer';

export interface Replayed {
  readonly snapshot: AnyMachineSnapshot;
  /** The question the machine stands at; undefined at an outcome. */
  readonly question: Question | undefined;
  /** Questions answered on the way, in order. */
  readonly trail: readonly Question[];
  /** The answers to these questions, whatever else was told. */
  readonly used: Answers;
  /** Answers that do not go with earlier ones; they stopped the replay. */
  readonly problems: readonly Problem[];
  /** Which question of how many at most this is, counted from 1; the whole never grows. Undefined at an outcome and beyond the quick answer. */
  readonly count: { readonly at: number; readonly of: number } | undefined;
  /** Questions that would make a quick answer surer and are not answered, in the order of the chart; empty on the way there. */
  readonly left: readonly QuestionId[];
}

const isQuestion = (id: string): id is QuestionId => Object.hasOwn(QUESTIONS, id);

const CHARTS = new WeakMap<AnyStateMachine, Chart>();

function chartFor(machine: AnyStateMachine): Chart {
  const chart = CHARTS.get(machine) ?? chartOf(machine);
  CHARTS.set(machine, chart);
  return chart;
}

/** The questions that a machine asks, in the order in which they can be met. */
export const questionsIn = (machine: AnyStateMachine): QuestionId[] =>
  chartFor(machine)
    .states.map(({ id }) => id)
    .filter(isQuestion);

const waysFrom = (machine: AnyStateMachine, state: string): Chart['states'][number]['ways'] =>
  chartFor(machine).states.find(({ id }) => id === state)?.ways ?? [];

/** The questions that may be asked at a quick answer, in the order of the chart; none in a machine without one. */
export const surerIn = (machine: AnyStateMachine): QuestionId[] =>
  waysFrom(machine, 'surer')
    .filter(({ on }) => on === 'user.ask')
    .map(({ to }) => to)
    .filter(isQuestion);

/** The most questions that can be met from a state to an answer, that of the state counted. */
function mostLeft(machine: AnyStateMachine, state: string): number {
  if (!isQuestion(state)) return 0;
  return 1 + Math.max(0, ...waysFrom(machine, state).map(({ to }) => mostLeft(machine, to)));
}

/**
 * Rebuilds the state from answers: each question met is answered from them until one has no complete answer. At a quick answer the questions
 * beyond it are answered in the order of the chart; `wanted` is asked again there, whatever was answered to it.
 */
export function replay(machine: AnyStateMachine, answers: Answers, wanted?: string): Replayed {
  const way = new Way(machine, answers, wanted);
  for (;;) {
    const stopped = way.step();
    if (stopped !== undefined) return stopped;
  }
}

/** A way through a machine, one state at a time. */
class Way {
  private readonly machine: AnyStateMachine;
  private readonly answers: Answers;
  private readonly wanted: string | undefined;
  private readonly trail: Question[] = [];
  /** Questions beyond the quick answer that were not asked yet. */
  private readonly open: Set<QuestionId>;
  private snapshot: AnyMachineSnapshot;
  private used: Answers = {};
  private beyond = false;

  constructor(machine: AnyStateMachine, answers: Answers, wanted: string | undefined) {
    this.machine = machine;
    this.answers = asAskedNow(answers);
    this.wanted = wanted;
    this.open = new Set(surerIn(machine));
    this.snapshot = initialTransition(machine)[0];
  }

  /** Goes on by one state; what is reached, where it cannot. */
  step(): Replayed | undefined {
    const at = String(this.snapshot.value);
    if (at === 'surer') return this.ask();
    return isQuestion(at) ? this.answer(QUESTIONS[at]) : this.standing(undefined);
  }

  private answer(question: Question): Replayed | undefined {
    const given = answersTo(question, this.answers);
    if (given === undefined) return this.standing(question);
    const problems = misfits(question, { ...this.used, ...given });
    if (problems.length > 0) return this.standing(question, problems);
    const event: UserAnswer = { type: 'user.answer', answers: given };
    if (!this.snapshot.can(event)) return this.standing(question);
    this.snapshot = transition(this.machine, this.snapshot, event)[0];
    this.trail.push(question);
    this.used = { ...this.used, ...given };
    return undefined;
  }

  /** Beyond the quick answer: those that are answered first, then the one that is wanted. */
  private ask(): Replayed | undefined {
    const { wanted } = this;
    this.beyond = true;
    const answered = (id: QuestionId): boolean => answersTo(QUESTIONS[id], this.answers) !== undefined;
    const all = [...this.open];
    const next = all.find((id) => id !== wanted && answered(id)) ?? all.find((id) => id === wanted);
    if (next === undefined) return this.standing(undefined);
    this.open.delete(next);
    const event: UserAsk = { type: 'user.ask', question: next, answers: this.used };
    this.snapshot = transition(this.machine, this.snapshot, event)[0];
    return next === wanted ? this.standing(QUESTIONS[next]) : undefined;
  }

  private standing(question: Question | undefined, problems: readonly Problem[] = []): Replayed {
    const { snapshot, trail, used, beyond } = this;
    const at = trail.length + 1;
    const count =
      question === undefined || beyond ? undefined : { at, of: trail.length + mostLeft(this.machine, question.id) };
    return { snapshot, question, trail, used, problems, count, left: beyond ? [...this.open] : [] };
  }
}

/** The answers to one question, or undefined while an asked field has none. */
export function answersTo(question: Question, answers: Answers): Answers | undefined {
  const given: Record<string, Answers[string]> = {};
  for (const field of question.fields) {
    if (!isAsked(field, given)) continue;
    const answer = answers[field.id];
    if (answer === undefined) return undefined;
    given[field.id] = answer;
  }
  return given;
}

/** All answers but those to one question: the state in which it is asked again. */
export function without(answers: Answers, question: Question): Answers {
  const ids = new Set(question.fields.map((field) => field.id));
  return Object.fromEntries(Object.entries(answers).filter(([id]) => !ids.has(id)));
}

/** How many trains the answers speak of: those that were measured, where they were, else those counted. */
export function trainsIn(answers: Answers): number {
  const count = (field: Field): number => (answers[field.id] === undefined ? 0 : (spanOf(answers, field)?.from ?? 0));
  const [modern, older] = QUESTIONS.fleet.fields;
  const [measured] = QUESTIONS.measured.fields;
  const { draw } = answers;
  const isMeasured = answers[measured.id] !== undefined && (draw === undefined || isMeasuredDraw(answers));
  return isMeasured ? count(measured) : count(modern) + count(older);
}

const isMeasuredDraw = ({ draw }: Answers): boolean => draw?.kind === 'choice' && draw.option === 'measured';

/** Links from before still say what they said. */
const asAskedNow = (answers: Answers): Answers => withTrains(withDivided(withWay(answers)));

/** Once a bus that is not fed from its end had the way that was told before its shape. */
function withWay(answers: Answers): Answers {
  const { 'bus-shape': shape, 'bus-way': way } = answers;
  const isFromBefore = way === undefined && shape?.kind === 'choice' && shape.option !== 'end';
  return isFromBefore ? { ...answers, 'bus-way': UNKNOWN } : answers;
}

/** Once nobody was asked whether the layout is divided before how many districts it has. */
function withDivided(answers: Answers): Answers {
  const { districts, divided } = answers;
  if (districts === undefined || divided !== undefined) return answers;
  const several = districts.kind === 'number' && districts.span.from > 1;
  return { ...answers, divided: { kind: 'choice', option: several ? 'divided' : 'whole' } };
}

/** Whoever had measured was once not asked how many of which kind there are. */
function withTrains(answers: Answers): Answers {
  const { trains, modern, sound } = answers;
  const isFromBefore = ALWAYS_ASKED_BEFORE.every((id) => answers[id] !== undefined);
  if (!(isMeasuredDraw(answers) && isFromBefore) || trains === undefined) return answers;
  if (modern !== undefined || sound !== undefined) return answers;
  return { older: NONE, ...answers, modern: trains };
}

/** Such a link answers all of these; now they are asked beyond the quick answer only. */
const ALWAYS_ASKED_BEFORE = ['aim', 'evening', 'coaches', 'accessories', 'own-use'] as const;

const NONE: Answer = { kind: 'number', span: { from: 0, to: 0 } };

/** Numbers that cannot go together: more moving, or more with sound, than there are trains. */
export function misfits(question: Question, answers: Answers): Problem[] {
  if (question.id !== 'sound' && question.id !== 'moving') return [];
  const trains = trainsIn(answers);
  return ['sound', 'stored', 'moving'].flatMap((id): Problem[] => {
    const answer = question.fields.some((field) => field.id === id) ? answers[id] : undefined;
    if (answer?.kind !== 'number' || answer.span.from <= trains) return [];
    return [{ field: id, because: 'more-than-trains', given: String(answer.span.from), least: 0, most: trains }];
  });
}
