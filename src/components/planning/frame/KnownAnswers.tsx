// The line of what has been said; each answer can be tapped and changed.
import type { Answer, Answers, Assumption, Field, Question } from '../../../wizards/planning/index.ts';
import { answersTo, fieldOf, takenAs, toAddress, without } from '../../../wizards/planning/index.ts';
import { withUnits } from '../../device/index.ts';
import type { FieldWords, Numbers, QuestionWords, Say } from '../../words/index.ts';
import { intercept } from './intercept.ts';

interface Props {
  readonly trail: readonly Question[];
  readonly answers: Answers;
  readonly questions: Readonly<Record<string, QuestionWords>>;
  readonly say: Say;
  readonly numbers: Numbers;
  readonly onChange: (question: Question) => void;
}

export function KnownAnswers({ trail, answers, questions, say, numbers, onChange }: Props) {
  if (trail.length === 0) return null;
  return (
    <details class="part said" open={isWide()}>
      <summary>{say('answered-so-far')}</summary>
      <ul class="known">
        {trail.flatMap((question) =>
          question.fields.map((field) => {
            const answer = answersTo(question, answers)?.[field.id];
            const words = questions[question.id]?.fields[field.id];
            if (answer === undefined || words === undefined) return null;
            return (
              <li key={field.id}>
                <a
                  href={withUnits(toAddress(without(answers, question))) || '?'}
                  onClick={intercept(() => onChange(question))}
                >
                  <b>{words.known}</b> <span>{answerWords(answer, field, words, say, numbers)}</span>
                </a>
              </li>
            );
          }),
        )}
      </ul>
    </details>
  );
}

/** Where there is a column for it, it stands open. */
const isWide = (): boolean => typeof matchMedia === 'function' && matchMedia('(width >= 62rem)').matches;

/** The words of a field, whatever question it stands in. */
export const fieldWords = (questions: Props['questions'], field: string): FieldWords | undefined =>
  Object.values(questions).find(({ fields }) => fields[field])?.fields[field];

type Assuming = Pick<Props, 'questions' | 'say' | 'numbers'> & { readonly assumptions: readonly Assumption[] };

/** What was assumed, one line each. */
export function assumedLines({ assumptions, questions, say, numbers }: Assuming): string[] {
  return assumptions.flatMap(({ field, answer }) => {
    const found = fieldOf(field);
    const words = fieldWords(questions, field);
    if (found === undefined || words === undefined) return [];
    return [`${words.known}: ${answerWords(withUnit(answer), found, words, say, numbers)} (${say('is-assumed')})`];
  });
}

export function Assumed(props: Assuming) {
  return (
    <>
      {assumedLines(props).map((line) => (
        <li key={line}>{line}</li>
      ))}
    </>
  );
}

/** What was assumed is no bare number of a person: nothing was taken as anything. */
const withUnit = (answer: Answer): Answer => (answer.kind === 'number' ? { ...answer, typed: 'metric' } : answer);

/** An answer as a person reads it; what was not known shows what is assumed instead. */
function answerWords(answer: Answer, field: Field, words: FieldWords, say: Say, numbers: Numbers): string {
  if (answer.kind === 'choice') return words.options?.[answer.option]?.label ?? answer.option;
  if (answer.kind === 'number') {
    const value = numberWords(answer.span.from, answer.span.to, field, numbers);
    const taken = answer.typed === undefined ? takenAs(field, 'metric') : undefined;
    return taken === undefined ? value : `${value} (${say(`taken-as-${taken}`)})`;
  }
  if (field.assume === undefined) return say('not-known');
  const assumed =
    field.kind === 'choice'
      ? (words.options?.[field.assume]?.label ?? field.assume)
      : numberWords(field.assume, field.assume, field, numbers);
  return `${assumed} (${say('is-assumed')})`;
}

function numberWords(from: number, to: number, field: Field, numbers: Numbers): string {
  const one = (value: number): string => numbers.quantity(value, field.kind === 'number' ? field.quantity : 'count');
  return from === to ? one(from) : `${one(from)} – ${one(to)}`;
}
