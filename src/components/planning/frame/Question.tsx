// One question on a screen: its fields, why it is asked, "I don't know" at each field, and clear sentences for what cannot be read.
import { useEffect, useRef, useState } from 'preact/hooks';
import { kindPrinted, labelLine, readsAsCrossSection } from '../../../engine/index.ts';
import type { Answer, Answers, Field, Problem, Question } from '../../../wizards/planning/index.ts';
import {
  answerText,
  emptyIn,
  fieldOf,
  isAsked,
  misfits,
  parseQuestion,
  takenAs,
  UNKNOWN,
  withNone,
} from '../../../wizards/planning/index.ts';
import type { FieldWords, Numbers, QuestionWords, Say } from '../../words/index.ts';
import { LabelPicture, LabelSign } from './LabelSign.tsx';

interface Props {
  readonly question: Question;
  readonly words: QuestionWords;
  /** Answers to earlier questions. */
  readonly before: Answers;
  /** What stood here last time, to be changed. */
  readonly former: Answers;
  readonly problems: readonly Problem[];
  readonly say: Say;
  readonly numbers: Numbers;
  readonly onAnswer: (answers: Answers) => void;
}

export function QuestionForm(props: Props) {
  const { question, words, before, former, problems: fromLink, say, numbers, onAnswer } = props;
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>(() => textsOf(question, former));
  const [problems, setProblems] = useState<readonly Problem[]>(fromLink);
  const summary = useRef<HTMLDivElement>(null);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    if (tries > 0) summary.current?.focus();
  }, [tries]);

  const set = (id: string, text: string): void => setTexts((old) => withLine(question, id, text, old));
  const read = parseQuestion(
    question,
    new Map(Object.entries(withNone(question, texts))),
    (quantity) => numbers.systemFor(quantity),
    before,
  );
  const asked = question.fields.filter((field) => isAsked(field, read.answers));

  const submit = (event: Event): void => {
    event.preventDefault();
    const askedIds = new Set(asked.map((field) => field.id));
    const answers = Object.fromEntries(Object.entries(read.answers).filter(([id]) => askedIds.has(id)));
    const missing = asked
      .filter((field) => !(field.id in answers || read.problems.some((problem) => problem.field === field.id)))
      .map((field): Problem => ({ field: field.id, because: emptyIn(field), given: '' }));
    const found = [
      ...read.problems.filter((problem) => askedIds.has(problem.field)),
      ...missing,
      ...misfits(question, { ...before, ...answers }),
    ];
    setProblems(found);
    if (found.length === 0) onAnswer(answers);
    else setTries(tries + 1);
  };

  const knowsNothing = (): void =>
    onAnswer(Object.fromEntries(question.fields.filter(({ when }) => !when).map(({ id }) => [id, UNKNOWN])));

  const only = question.fields.length === 1;
  const { label } = question;
  return (
    <form class={label === undefined ? undefined : 'label'} onSubmit={submit} noValidate>
      {problems.length > 0 && (
        <div class="problem" ref={summary} tabIndex={-1} role="alert">
          <h2>{say('problem-title')}</h2>
          <ul>
            {problems.map((problem) => (
              <li key={problem.field}>
                <a href={`#${problem.field}`} onClick={(event) => focusOn(event, problem.field)}>
                  {sentence(problem, words, say, numbers)}
                </a>
              </li>
            ))}
          </ul>
        </div>
      )}
      {!only && <h1 tabIndex={-1}>{words.title}</h1>}
      {label === 'supply' && <LabelPicture say={say} />}
      {label !== undefined && <WhereItStands fields={asked} words={words} say={say} />}
      {asked.map((field) => (
        <FieldInput
          key={field.id}
          field={field}
          words={words.fields[field.id]}
          heading={only ? words.title : undefined}
          brief={label === undefined ? undefined : say('unreadable')}
          text={texts[field.id] ?? ''}
          problem={problems.find((problem) => problem.field === field.id)}
          sentence={(problem) => sentence(problem, words, say, numbers)}
          taken={takenFor(field, texts[field.id] ?? '', { answers: read.answers, say, numbers })}
          onText={(text) => set(field.id, text)}
        />
      ))}
      {label === undefined && (
        <p class="why">
          <b>{say('why-we-ask')}</b> {words.why}
        </p>
      )}
      {label === undefined && <Terms terms={words.terms ?? []} say={say} />}
      <div class="acts">
        <button class="button" type="submit">
          {say('continue')}
        </button>
        {!only && (
          <button class="button quiet" type="button" onClick={knowsNothing}>
            {say(label === undefined ? 'unknown-all' : 'unknown-label')}
          </button>
        )}
      </div>
    </form>
  );
}

/** What a word means, opened where it is met. */
function Terms({ terms, say }: Pick<Props, 'say'> & { readonly terms: NonNullable<QuestionWords['terms']> }) {
  if (terms.length === 0) return null;
  return (
    <div class="terms">
      <b>{say('terms-here')}</b>
      {terms.map(({ term, means }) => (
        <details key={term}>
          <summary>{term}</summary>
          <p>{means}</p>
        </details>
      ))}
    </div>
  );
}

/** The hints of all fields of a label, folded into one line. */
function WhereItStands({ fields, words, say }: Pick<Props, 'words' | 'say'> & { readonly fields: readonly Field[] }) {
  return (
    <details class="where">
      <summary>{say('where-it-stands')}</summary>
      {fields.map(({ id }) => (
        <div key={id}>
          <p id={`${id}-hint`}>
            <b>{words.fields[id]?.label}</b> {words.fields[id]?.hint}
          </p>
          {Object.entries(words.fields[id]?.options ?? {}).map(([option, { label, hint }]) => (
            <p key={option}>
              {label} <LabelSign option={option} />: {hint}
            </p>
          ))}
        </div>
      ))}
      <p>
        <b>{say('why-we-ask')}</b> {words.why}
      </p>
      <Terms terms={words.terms ?? []} say={say} />
    </details>
  );
}

interface FieldProps {
  readonly field: Field;
  readonly words: FieldWords | undefined;
  /** The question itself, where this is its only field. */
  readonly heading: string | undefined;
  /** "I don't know" in few words, where room is saved and the hints stand folded above all fields. */
  readonly brief: string | undefined;
  readonly text: string;
  readonly problem: Problem | undefined;
  readonly sentence: (problem: Problem) => string;
  /** Which unit a bare number was taken as; undefined where there is but one. */
  readonly taken: string | undefined;
  readonly onText: (text: string) => void;
}

function FieldInput(props: FieldProps) {
  return props.field.kind === 'choice' ? (
    <Choice {...props} options={props.field.options} />
  ) : (
    <NumberInput {...props} />
  );
}

function Choice({
  field,
  words,
  heading,
  text,
  problem,
  sentence: tell,
  brief,
  onText,
  options,
}: FieldProps & { readonly options: readonly string[] }) {
  const option = (value: string, label: string, hint: string | undefined, first: boolean) => (
    <label key={value}>
      <input
        type="radio"
        id={first ? field.id : undefined}
        name={field.id}
        value={value}
        checked={text === value}
        onChange={() => onText(value)}
      />
      <span>
        {label} <LabelSign option={value} />
      </span>
      {hint !== undefined && brief === undefined && <small>{hint}</small>}
    </label>
  );
  return (
    <fieldset class="choice" aria-describedby={problem === undefined ? undefined : `${field.id}-problem`}>
      <legend>
        {heading === undefined ? <b class="ask">{words?.label}</b> : <h1 tabIndex={-1}>{heading}</h1>}
        {words?.hint !== undefined && brief === undefined && <small class="hint">{words.hint}</small>}
      </legend>
      {problem !== undefined && (
        <p class="error" id={`${field.id}-problem`}>
          {tell(problem)}
        </p>
      )}
      {options.map((value, index) =>
        option(value, words?.options?.[value]?.label ?? value, words?.options?.[value]?.hint, index === 0),
      )}
      {option('unknown', brief ?? words?.unknown ?? '', undefined, false)}
    </fieldset>
  );
}

function NumberInput({ field, words, heading, brief, text, problem, sentence: tell, taken, onText }: FieldProps) {
  const unknown = text === 'unknown';
  const described = [
    words?.hint === undefined ? '' : `${field.id}-hint`,
    problem === undefined ? '' : `${field.id}-problem`,
    taken === undefined ? '' : `${field.id}-taken`,
  ]
    .join(' ')
    .trim();
  const label = <label for={field.id}>{words?.label}</label>;
  return (
    <div class="field">
      {heading === undefined ? (
        label
      ) : (
        <>
          <h1 tabIndex={-1}>{heading}</h1>
          {label}
        </>
      )}
      {words?.hint !== undefined && brief === undefined && <small id={`${field.id}-hint`}>{words.hint}</small>}
      {problem !== undefined && (
        <p class="error" id={`${field.id}-problem`}>
          {tell(problem)}
        </p>
      )}
      <input
        id={field.id}
        type="text"
        inputMode={field.kind === 'number' && field.quantity === 'count' ? 'numeric' : 'text'}
        autocomplete="off"
        value={unknown ? '' : text}
        disabled={unknown}
        aria-invalid={problem !== undefined}
        aria-describedby={described === '' ? undefined : described}
        onInput={(event) => onText(event.currentTarget.value)}
      />
      {taken !== undefined && (
        <span class="taken small" id={`${field.id}-taken`} role="status">
          {taken}
        </span>
      )}
      <label class="unknown">
        <input
          type="checkbox"
          checked={unknown}
          onChange={(event) => onText(event.currentTarget.checked ? 'unknown' : '')}
        />
        <span>{brief ?? words?.unknown}</span>
      </label>
    </div>
  );
}

function focusOn(event: Event, id: string): void {
  event.preventDefault();
  document.getElementById(id)?.focus();
}

/** The sentence for a problem: which field, what was given, what would do. */
function sentence(problem: Problem, words: QuestionWords | undefined, say: Say, numbers: Numbers): string {
  const { because, given, field } = problem;
  const { least, most } = rangeOf(problem, numbers);
  return say(`problem-${because}`, { field: words?.fields[field]?.known ?? field, given, least, most });
}

/** The range in the units of the person; where both systems have one unit, the bare numbers. */
function rangeOf({ field, least = 0, most = 0 }: Problem, numbers: Numbers) {
  const found = fieldOf(field);
  if (found?.kind !== 'number' || takenAs(found, 'metric') === undefined) return { least, most };
  const write = (value: number): string => numbers.quantity(value, found.quantity);
  return { least: write(found.least), most: write(found.most) };
}

interface Reading {
  readonly answers: Answers;
  readonly say: Say;
  readonly numbers: Numbers;
}

/** What is said beside a bare number, once it stands there; undefined where nothing ever is. */
function takenFor(field: Field, text: string, { answers, say, numbers }: Reading): string | undefined {
  if (field.kind === 'number' && field.quantity === 'voltage') return lineSays(text) ? say('taken-from-line') : '';
  if (field.kind !== 'number' || takenAs(field, numbers.systemFor(field.quantity)) === undefined) return undefined;
  if (field.kind === 'number' && field.quantity === 'area' && readsAsCrossSection(text))
    return say('taken-as-cross-section');
  const answer = answers[field.id];
  const isBare = /^[\d.,\s–-]+$/.test(text) && answer?.kind === 'number';
  const taken = isBare ? takenAs(field, answer.typed ?? 'metric') : undefined;
  return taken === undefined ? '' : say(`taken-as-${taken}`);
}

function textsOf(question: Question, former: Answers): Record<string, string> {
  return Object.fromEntries(
    question.fields.flatMap((field) => {
      const answer = former[field.id];
      return answer === undefined ? [] : [[field.id, answerText(inItsUnit(answer), field)]];
    }),
  );
}

/** A bare number of an address is metric: it comes back with its unit, whatever units the page speaks in. */
const inItsUnit = (answer: Answer): Answer =>
  answer.kind === 'number' ? { ...answer, typed: answer.typed ?? 'metric' } : answer;

const lineSays = (text: string): boolean => kindPrinted(text) !== undefined || labelLine(text) !== undefined;

/** What stands beside the volts on the same line of a label is taken with them, where nothing was said of it yet. */
function withLine({ fields, label }: Question, id: string, text: string, old: Readonly<Record<string, string>>) {
  const typed = { ...old, [id]: text };
  const at = fields.find((field) => field.id === id);
  if (label === undefined || at?.kind !== 'number' || at.quantity !== 'voltage') return typed;
  const kind = kindPrinted(text);
  const kinds = fields.find((field) => field.kind === 'choice' && field.options.includes('dc'));
  if (kind !== undefined && kinds !== undefined && typed[kinds.id] === undefined) typed[kinds.id] = kind;
  // The amperes beside the volts of a unit's input are not what it passes to the track.
  const amps = label === 'supply' ? labelLine(text)?.amps : undefined;
  const current = fields.find((field) => field.kind === 'number' && field.quantity === 'current');
  if (amps !== undefined && current !== undefined && (typed[current.id] ?? '') === '') typed[current.id] = amps;
  return typed;
}
