// A planning wizard: the address holds the answers, replay makes the state, and this draws it. Each wizard is an island of
// its own, so that a page carries one answer only.
import type { ComponentType } from 'preact';
import { useCallback, useErrorBoundary, useMemo, useState } from 'preact/hooks';
import type { AnyStateMachine } from 'xstate';
import type { Answers, Problem, Question, Replayed } from '../../../wizards/planning/index.ts';
import {
  parseAddress,
  QUESTIONS,
  questionsIn,
  replay,
  systemTyped,
  toAddress,
  without,
} from '../../../wizards/planning/index.ts';
import { withUnits } from '../../device/index.ts';
import { Steps, Verify } from '../../fix/index.ts';
import { MadeThen, Share } from '../../link/index.ts';
import { NotYet, useAddress, useHeading, useMeasures } from '../../shared/index.ts';
import type { AnswerWords, QuestionWords, Say } from '../../words/index.ts';
import { inMeasures, Numbers, sayer } from '../../words/index.ts';
import type { AnswerProps } from './answer-props.ts';
import { KnownAnswers } from './KnownAnswers.tsx';
import { QuestionForm, sentence } from './Question.tsx';
import type { LoadDrawing } from './use-answer.ts';
import { useAnswer } from './use-answer.ts';

/** What a page gives its wizard. */
export interface WizardProps {
  /** Tag by which numbers, plurals and sentences are written. */
  readonly language: string;
  readonly home: string;
  readonly release: string;
  /** Sentences the questions need; those of the answer are fetched on the way there. */
  readonly words: Readonly<Record<string, string>>;
  readonly questions: Readonly<Record<string, QuestionWords>>;
}

/** What the answer of a wizard is drawn from. */
export interface WorkedOutProps extends AnswerProps {
  readonly answers: Answers;
  readonly questions: WizardProps['questions'];
  readonly onAdjust: (answers: Answers) => void;
}

interface FrameProps extends WizardProps {
  readonly wizard: string;
  readonly machine: AnyStateMachine;
  /** Loads what draws the answer; asked for once the first question is answered. */
  readonly load: LoadDrawing<WorkedOutProps>;
}

export function Frame({ wizard, machine, load, language, home, release, words, questions: written }: FrameProps) {
  const all = useMemo(() => questionsIn(machine).map((id): Question => QUESTIONS[id]), [machine]);
  const say = useMemo(() => sayer(words, language), [words, language]);
  const address = useAddress();
  const { search } = address;
  const [former, setFormer] = useState<Answers>({});

  const { answers, problems } = useMemo(() => parseAddress(all, search), [all, search]);
  const state = useMemo(() => replay(machine, answers), [machine, answers]);
  const system = useMeasures(useMemo(() => systemTyped(answers), [answers]));
  const numbers = useMemo(() => new Numbers(language, system, words), [language, system, words]);
  const questions = useMemo(() => inMeasures(written, numbers), [written, numbers]);
  const go = useCallback((next: Answers, keep: 'push' | 'replace'): void => {
    setFormer((old) => ({ ...old, ...next }));
    address.go(toAddress(next), keep);
  }, []);

  const [crash, recover] = useErrorBoundary();
  const done = state.question === undefined;
  const outcome = String(state.snapshot.value);
  const heading = useHeading(address, `${state.question?.id} ${done}`);

  const answer = (given: Answers): void => {
    const next = { ...answers, ...given };
    // At an outcome only the answers that led there stay in the address.
    const after = replay(machine, next);
    go(after.question === undefined ? after.used : next, 'push');
  };
  const askAgain = (question: Question): void => {
    setFormer((old) => ({ ...old, ...answers }));
    go(without(answers, question), 'push');
  };
  const last = state.trail.at(-1);
  const linkProblems = [...problems, ...state.problems];
  const elsewhere = linkProblems.filter(
    (problem) => !state.question?.fields.some((field) => field.id === problem.field),
  );
  const {
    value: fetched,
    failed,
    again,
  } = useAnswer(`${home}work-it-out/${wizard}.json`, load, state.trail.length > 0);

  return (
    <div class="wizard stage" ref={heading}>
      <Progress trail={state.trail} question={state.question} all={all} say={say} />
      <div class="acts">
        {last !== undefined && (
          <a
            href={withUnits(toAddress(without(answers, last))) || location.pathname}
            onClick={intercept(() => askAgain(last))}
          >
            <span class="sign">←</span> {say('back')}
          </a>
        )}
        {state.trail.length > 0 && (
          <a
            href={withUnits('') || '?'}
            onClick={intercept(() => {
              recover();
              go({}, 'push');
              setFormer({});
            })}
          >
            {say('restart')}
          </a>
        )}
      </div>
      {elsewhere.length > 0 && (
        <LinkProblems problems={elsewhere} questions={questions} all={all} say={say} numbers={numbers} />
      )}
      {state.question !== undefined && questions[state.question.id] !== undefined && (
        <QuestionForm
          key={state.question.id}
          question={state.question}
          words={questions[state.question.id] ?? { title: '', why: '', fields: {} }}
          before={state.used}
          former={{ ...former, ...answers }}
          problems={linkProblems.filter((problem) =>
            state.question?.fields.some((field) => field.id === problem.field),
          )}
          say={say}
          numbers={numbers}
          onAnswer={answer}
        />
      )}
      {crash !== undefined && (
        <p class="problem" role="alert">
          {say('problem-crash')}
        </p>
      )}
      {crash === undefined && done && fetched !== undefined && (
        <Outcome
          answerWords={fetched.answerWords}
          WorkedOut={fetched.WorkedOut}
          outcome={outcome}
          answers={state.used}
          questions={questions}
          words={words}
          numbers={numbers}
          language={language}
          home={home}
          release={release}
          onAdjust={(next) => go(next, 'replace')}
        />
      )}
      {crash === undefined && done && fetched === undefined && <NotYet say={say} failed={failed} again={again} />}
      <KnownAnswers
        trail={state.trail}
        answers={answers}
        questions={questions}
        say={say}
        numbers={numbers}
        onChange={askAgain}
      />
    </div>
  );
}

function intercept(act: () => void): (event: MouseEvent) => void {
  return (event) => {
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return;
    event.preventDefault();
    act();
  };
}

interface OutcomeProps extends Pick<FrameProps, 'questions' | 'words' | 'language' | 'home' | 'release'> {
  readonly WorkedOut: ComponentType<WorkedOutProps>;
  readonly answerWords: AnswerWords;
  readonly outcome: string;
  readonly answers: Answers;
  readonly numbers: Numbers;
  readonly onAdjust: (answers: Answers) => void;
}

function Outcome({ answerWords, WorkedOut, outcome, answers, questions, words, onAdjust, ...rest }: OutcomeProps) {
  const { numbers } = rest;
  const { fixes, cautions, words: more } = useMemo(() => inMeasures(answerWords, numbers), [answerWords, numbers]);
  const all = useMemo(() => ({ ...words, ...more }), [words, more]);
  const say = useMemo(() => sayer(all, rest.language), [all, rest.language]);
  const shared = { ...rest, say, fixes, cautions };
  if (outcome !== 'worked-out') return <PlainAnswer {...shared} outcome={outcome} />;
  return <WorkedOut {...shared} answers={answers} questions={questions} onAdjust={onAdjust} />;
}

function PlainAnswer(props: AnswerProps & { readonly outcome: string }) {
  const { outcome, fixes, cautions, say, home, language, release } = props;
  const fix = fixes[outcome];
  if (fix === undefined) return null;
  return (
    <>
      <section class="part">
        <p>
          <span class="tag tight">{say('verdict-scope')}</span>
        </p>
        <h1 class="verdict" tabIndex={-1}>
          {fix.title}
        </h1>
        <MadeThen release={release} verdict={outcome} titleOf={(id) => fixes[id]?.title} say={say} />
        <p class="lead">{fix.lead}</p>
        <p>{fix.because}</p>
      </section>
      <section class="part">
        <h2>{say('steps-title')}</h2>
        <Steps fix={fix} cautions={cautions} say={say} language={language} />
        <p>
          <a href={`${home}fixes/${outcome}/`}>{say('full-page')}</a>
        </p>
      </section>
      <Verify fix={fix} say={say} language={language} />
      <Share headline={fix.title} lead={fix.lead} say={say} made={{ release, verdict: outcome }} />
    </>
  );
}

function LinkProblems({
  problems,
  questions,
  all,
  say,
  numbers,
}: {
  problems: readonly Problem[];
  questions: WizardProps['questions'];
  all: readonly Question[];
  say: Say;
  numbers: Numbers;
}) {
  const wordsOf = (problem: Problem): QuestionWords | undefined => {
    const question = all.find((one) => one.fields.some((field) => field.id === problem.field));
    return question === undefined ? undefined : questions[question.id];
  };
  return (
    <div class="problem" role="alert">
      <h2>{say('problem-link-title')}</h2>
      <ul>
        {problems.map((problem) => (
          <li key={problem.field}>{sentence(problem, wordsOf(problem), say, numbers)}</li>
        ))}
      </ul>
      <p>{say('problem-kept')}</p>
    </div>
  );
}

function Progress({
  trail,
  question,
  all,
  say,
}: {
  trail: Replayed['trail'];
  question: Question | undefined;
  all: readonly Question[];
  say: Say;
}) {
  const at = question === undefined ? all.length : all.findIndex((one) => one.id === question.id);
  const ahead = all.slice(at + 1);
  return (
    <ol class="progress">
      {trail.map((one, index) => (
        <li key={one.id} class="done">
          {say('step-of', { number: index + 1, total: trail.length + ahead.length + 1 })}
        </li>
      ))}
      {question !== undefined && (
        <li key="now" aria-current="step">
          {say('step-of', { number: trail.length + 1, total: trail.length + ahead.length + 1 })}
        </li>
      )}
      {question !== undefined && ahead.map((one) => <li key={one.id} />)}
    </ol>
  );
}
