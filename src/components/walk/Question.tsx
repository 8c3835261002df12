// One check: what to do, what must hold first, what can hurt, and an answer with one tap.
import type { ComponentChildren, ComponentType } from 'preact';
import { isDoneFirst } from '../../wizards/put-it-right/index.ts';
import type { PictureProps } from '../check-picture/index.ts';
import { CheckCautions } from './CheckCautions.tsx';
import type { PartProps } from './part-props.ts';
import type { CheckRow, CheckWords } from './words.ts';

interface Props extends Omit<PartProps, 'pictureStyles'> {
  readonly id: string;
  readonly row: CheckRow | undefined;
  readonly words: CheckWords;
  /** Undefined where the check has none. */
  readonly Picture?: ComponentType<PictureProps> | undefined;
  /** Below another question of the page its heading is a lesser one. */
  readonly lesser?: boolean;
  /** Undefined: all options of the check. */
  readonly options?: readonly string[];
  readonly onAnswer: (option: string) => void;
  /** Undefined where it has to be answered. */
  readonly onCannot?: () => void;
}

export function Question(props: Props) {
  const { row, words, say, language, home, cautions, Picture, lesser, onAnswer, onCannot } = props;
  if (row === undefined) return null;
  const { options = row.options } = props;
  const needs = row.needs.filter(isDoneFirst);
  return (
    <section class="part asked">
      {lesser === true ? <h2 class="h3">{words.title}</h2> : <h1 tabIndex={-1}>{words.title}</h1>}
      {needs.length > 0 && (
        <ul class="needs">
          {needs.map((need) => (
            <li key={need}>{say(`need-${need}`)}</li>
          ))}
        </ul>
      )}
      {words.how.length > 0 && (
        <ol class="how">
          {words.how.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      )}
      {words.picture !== undefined && Picture !== undefined && <Picture id={words.picture} say={say} />}
      <CheckCautions ids={words.cautions} cautions={cautions} say={say} language={language} />
      <ul class="answers">
        {options.map((option) => {
          const { label, hint } = words.options[option] ?? { label: option };
          const danger = row.danger?.[option];
          return (
            <li key={option}>
              <Answer to={danger && `${home}fixes/${danger}/`} onAnswer={() => onAnswer(option)}>
                <b>{label}</b>
                {hint !== undefined && <small>{hint}</small>}
              </Answer>
            </li>
          );
        })}
        {onCannot !== undefined && (
          <li>
            <button class="cannot" type="button" onClick={onCannot}>
              {say('walk-cannot')}
            </button>
          </li>
        )}
      </ul>
      <p class="why">
        <b>{say('why-we-ask')}</b> {words.why} <span class="small">{say('walk-takes', { minutes: row.minutes })}</span>
      </p>
    </section>
  );
}

interface AnswerProps {
  /** The page that a danger answer leads to as long as this one is not alive: nobody in danger waits for a script. */
  readonly to: string | undefined;
  readonly onAnswer: () => void;
  readonly children: ComponentChildren;
}

function Answer({ to, onAnswer, children }: AnswerProps) {
  if (to === undefined) {
    return (
      <button type="button" onClick={onAnswer}>
        {children}
      </button>
    );
  }
  const here = (event: Event): void => {
    event.preventDefault();
    onAnswer();
  };
  return (
    <form action={to} onSubmit={here}>
      <button type="submit">{children}</button>
    </form>
  );
}
