// A planning wizard: the address holds the answers, replay makes the state, and this draws it. Each wizard is an island of
// its own, so that a page carries one answer only.
import type { ComponentType } from 'preact';
import { useCallback, useErrorBoundary, useMemo, useState } from 'preact/hooks';
import type { AnyStateMachine } from 'xstate';
import type { Answers, Problem, Question, QuestionId } from '../../../wizards/planning/index.ts';
import {
  isWorkedOut,
  parseAddress,
  QUESTIONS,
  questionsIn,
  replay,
  surerIn,
  systemsTyped,
  toAddress,
  wantedIn,
  without,
} from '../../../wizards/planning/index.ts';
import { withUnits } from '../../device/index.ts';
import { type Loaded, NotYet, useAddress, useHeading, useMeasuresTyped } from '../../shared/index.ts';
import type { AnswerWords, QuestionWords, Say } from '../../words/index.ts';
import { inMeasures, Numbers, sayer } from '../../words/index.ts';
import { AnswerPage } from './AnswerPage.tsx';
import type { AnswerProps } from './answer-props.ts';
import { intercept } from './intercept.ts';
import { fieldWords, KnownAnswers } from './KnownAnswers.tsx';
import { Progress } from './Progress.tsx';
import { QuestionForm } from './Question.tsx';
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
  /** Questions that would make the answer surer and are not answered, in the order of the chart. */
  readonly left: readonly QuestionId[];
  /** Asks one of them and comes back, or one that was answered on the way. */
  readonly onAsk: (question: QuestionId) => void;
  /** Takes these for the person's answers, as if they had been given; Back undoes it. */
  readonly onTell: (answers: Answers) => void;
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
  const wanted = useMemo(() => wantedIn(search), [search]);
  const state = useMemo(() => replay(machine, answers, wanted), [machine, answers, wanted]);
  const { lengths, wires } = useMeasuresTyped(useMemo(() => systemsTyped(answers), [answers]));
  const numbers = useMemo(() => new Numbers(language, lengths, words, wires), [language, lengths, wires, words]);
  const questions = useMemo(() => inMeasures(written, numbers), [written, numbers]);
  const go = useCallback((next: Answers, ask?: QuestionId): void => {
    setFormer((old) => ({ ...old, ...next }));
    address.go(toAddress(next, ask));
  }, []);

  const [crash, recover] = useErrorBoundary();
  const { question: asked } = state;
  const done = asked === undefined;
  const askedWords = done ? undefined : questions[asked.id];
  const outcome = String(state.snapshot.value);
  // The marks that an answer leaves in its address tell nothing else.
  const told = toAddress(state.used, wanted);
  const used = useMemo(() => state.used, [told]);
  const heading = useHeading(address, told);

  const answer = (given: Answers): void => {
    const next = { ...answers, ...given };
    // At an outcome only the answers that led there stay in the address.
    const after = replay(machine, next);
    go(after.question === undefined ? after.used : next);
  };
  const beyond = useMemo(() => surerIn(machine), [machine]);
  const askAgain = (question: Question): void => {
    setFormer((old) => ({ ...old, ...answers }));
    const more = beyond.find((id) => id === question.id);
    if (more === undefined) go(without(answers, question));
    else go(answers, more);
  };
  const isMore = !done && asked.id === wanted;
  const last = isMore ? undefined : state.trail.at(-1);
  const linkProblems = [...problems, ...state.problems];
  const isHere = ({ field }: Problem): boolean => asked?.fields.some(({ id }) => id === field) === true;
  const elsewhere = linkProblems.filter((problem) => !isHere(problem));
  const loaded = useAnswer(`${home}work-it-out/${wizard}.json`, load, state.trail.length > 0);
  const fetched = loaded.value;

  return (
    <div class="wizard stage" ref={heading}>
      <div class="stepped">
        {!done && <Progress count={state.count} say={say} />}
        <div class="acts ways">
          {isMore && (
            <a href={withUnits(toAddress(answers)) || '?'} onClick={intercept(() => go(answers))}>
              <span class="sign">←</span> {say('back-to-answer')}
            </a>
          )}
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
                go({});
                setFormer({});
              })}
            >
              {say('restart')}
            </a>
          )}
        </div>
        {elsewhere.length > 0 && <LinkProblems problems={elsewhere} questions={questions} say={say} />}
        {asked !== undefined && askedWords !== undefined && (
          <QuestionForm
            key={asked.id}
            question={asked}
            words={askedWords}
            before={state.used}
            former={{ ...former, ...answers }}
            problems={linkProblems.filter(isHere)}
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
            answers={used}
            questions={questions}
            words={words}
            numbers={numbers}
            language={language}
            home={home}
            release={release}
            left={state.left}
            onAsk={(question) => askAgain(QUESTIONS[question])}
            onTell={answer}
          />
        )}
        <Awaited loaded={loaded} wanted={crash === undefined && done} say={say} />
      </div>
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

interface AwaitedProps {
  readonly loaded: Loaded<unknown>;
  /** Whether the answer itself is waited for. */
  readonly wanted: boolean;
  readonly say: Say;
}

/** It may be the answer that forbids a plug: that is said while it is on its way, and where it could not be had while questions are asked. */
function Awaited({ loaded: { value, failed, again }, wanted, say }: AwaitedProps) {
  if (value !== undefined || !(failed || wanted)) return null;
  return (
    <>
      <NotYet say={say} failed={failed} again={again} />
      <p>{say('nothing-plugged-till-then')}</p>
    </>
  );
}

interface OutcomeProps
  extends Pick<FrameProps, 'questions' | 'words' | 'language' | 'home' | 'release'>,
    Pick<WorkedOutProps, 'answers' | 'numbers' | 'left' | 'onAsk' | 'onTell'> {
  readonly WorkedOut: ComponentType<WorkedOutProps>;
  readonly answerWords: AnswerWords;
  readonly outcome: string;
}

function Outcome({ answerWords, WorkedOut, outcome, words, ...given }: OutcomeProps) {
  const { answers, questions, left, onAsk, onTell, ...rest } = given;
  const { numbers } = rest;
  const { fixes, cautions, words: more } = useMemo(() => inMeasures(answerWords, numbers), [answerWords, numbers]);
  const all = useMemo(() => ({ ...words, ...more }), [words, more]);
  const say = useMemo(() => sayer(all, rest.language), [all, rest.language]);
  const shared = { ...rest, say, fixes, cautions, inGarden: mayBeOutdoors(answers) };
  if (!isWorkedOut(outcome)) return <PlainAnswer {...shared} outcome={outcome} />;
  return (
    <>
      {answers['system']?.kind === 'unknown' && (
        <p class="small">
          <b>{say('system-not-known')}</b>
        </p>
      )}
      <WorkedOut {...shared} {...{ answers, questions, left, onAsk, onTell }} />
    </>
  );
}

/** The largest scale is that of garden railways. */
const mayBeOutdoors = ({ scale }: Answers): boolean => scale?.kind === 'choice' && scale.option === '1';

function PlainAnswer({ outcome, ...props }: AnswerProps & { readonly outcome: string }) {
  const fix = props.fixes[outcome];
  if (fix === undefined) return null;
  const verdict = { tone: 'tight', word: props.say('verdict-scope') } as const;
  return (
    <AnswerPage
      {...props}
      outcome={outcome}
      verdict={verdict}
      headline={fix.title}
      lead={fix.lead}
      because={fix.because}
      only
      outOfScope
    />
  );
}

interface LinkProblemsProps extends Pick<WizardProps, 'questions'> {
  readonly problems: readonly Problem[];
  readonly say: Say;
}

function LinkProblems({ problems, questions, say }: LinkProblemsProps) {
  return (
    <div class="problem" role="alert">
      <h2>{say('problem-link-title')}</h2>
      <ul>
        {problems.map((problem) => (
          <li key={problem.field}>{fieldWords(questions, problem.field)?.known}</li>
        ))}
      </ul>
      <p>{say('problem-kept')}</p>
    </div>
  );
}
