// What the planning machines share: the event, the ends, and replay as the only way to build a state.
import type { AnyMachineSnapshot, AnyStateMachine } from 'xstate';
import { initialTransition, transition } from 'xstate';
import { chartOf } from '../chart.ts';
import type { Answers } from './answers.ts';
import { isAsked, spanOf } from './answers.ts';
import type { Problem } from './field.ts';
import type { Question, QuestionId } from './questions.ts';
import { QUESTIONS } from './questions.ts';

/** A person has answered the question that the machine stands at. */
export interface UserAnswer {
  readonly type: 'user.answer';
  readonly answers: Answers;
}

/** Gives the machine its types without a cast. */
export const TYPES: { events: UserAnswer } = { events: { type: 'user.answer', answers: {} } };

/** Guard: the answer being given chooses this option. */
export const chose =
  (field: string, option: string) =>
  ({ event }: { readonly event: UserAnswer }): boolean => {
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

/** The ends that every planning machine has. */
export const ENDS = {
  'worked-out': { type: 'final' },
  'out-of-scope-three-rail': { type: 'final' },
  'out-of-scope-battery': { type: 'final' },
  'out-of-scope-analogue': { type: 'final' },
} as const;

/** Guard: the fleet just counted is empty. */
export const nothingToMove = ({ event }: { readonly event: UserAnswer }): boolean => trainsIn(event.answers) === 0;

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
}

const isQuestion = (id: string): id is QuestionId => Object.hasOwn(QUESTIONS, id);

/** The questions that a machine asks, in the order in which they can be met. */
export const questionsIn = (machine: AnyStateMachine): QuestionId[] =>
  chartOf(machine)
    .states.map(({ id }) => id)
    .filter(isQuestion);

/** Rebuilds the state from answers: each question met is answered from them until one has no complete answer. */
export function replay(machine: AnyStateMachine, answers: Answers): Replayed {
  let snapshot: AnyMachineSnapshot = initialTransition(machine)[0];
  const trail: Question[] = [];
  let used: Answers = {};
  for (;;) {
    const at = String(snapshot.value);
    const question: Question | undefined = isQuestion(at) ? QUESTIONS[at] : undefined;
    const stopped = { snapshot, question, trail, used, problems: [] };
    const given = question === undefined ? undefined : answersTo(question, answers);
    if (question === undefined || given === undefined) return stopped;
    const problems = misfits(question, { ...used, ...given });
    if (problems.length > 0) return { ...stopped, problems };
    const event: UserAnswer = { type: 'user.answer', answers: given };
    if (!snapshot.can(event)) return stopped;
    snapshot = transition(machine, snapshot, event)[0];
    trail.push(question);
    used = { ...used, ...given };
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

/** How many trains the answers speak of. */
export function trainsIn(answers: Answers): number {
  const count = (
    field: (typeof QUESTIONS.fleet.fields)[number] | (typeof QUESTIONS.measured.fields)[number],
  ): number => (answers[field.id] === undefined ? 0 : (spanOf(answers, field)?.from ?? 0));
  const [modern, older] = QUESTIONS.fleet.fields;
  return count(modern) + count(older) + count(QUESTIONS.measured.fields[0]);
}

/** Numbers that cannot go together: more moving, or more with sound, than there are trains. */
export function misfits(question: Question, answers: Answers): Problem[] {
  if (question.id !== 'fleet' && question.id !== 'moving') return [];
  const trains = trainsIn(answers);
  return ['sound', 'stored', 'moving'].flatMap((id): Problem[] => {
    const answer = question.fields.some((field) => field.id === id) ? answers[id] : undefined;
    if (answer?.kind !== 'number' || answer.span.from <= trains) return [];
    return [{ field: id, because: 'more-than-trains', given: String(answer.span.from), least: 0, most: trains }];
  });
}
