// The steps of a fix, each with its cautions.

import type { CautionWords, FixWords } from '../../words/index.ts';
import { firstSentence } from '../../words/index.ts';
import type { AnswerProps } from './answer-props.ts';

type Said = Pick<AnswerProps, 'cautions' | 'say' | 'language'>;

export function Steps({ fix, cautions, say, language }: { fix: Pick<FixWords, 'steps'> } & Said) {
  const told = new Set<string>();
  return (
    <ol class="steps">
      {fix.steps.map((step) => {
        const [first, rest] = firstSentence(step.do, language);
        return (
          <li key={step.do}>
            <p>
              <b>{first}</b> {rest}
            </p>
            {step.more !== undefined && <p>{step.more}</p>}
            {step.cautions.map((id) => {
              const again = told.has(id);
              told.add(id);
              return <Caution key={id} words={cautions[id]} again={again} say={say} language={language} />;
            })}
          </li>
        );
      })}
    </ol>
  );
}

/** A caution at its step: in full the first time, by its harm where it has been told above. */
function Caution({
  words,
  again,
  say,
  language,
}: { words: CautionWords | undefined; again: boolean } & Pick<Said, 'say' | 'language'>) {
  if (words === undefined) return null;
  const [harm, more] = firstSentence(words.harm, language);
  return (
    <div class={again ? 'caution again' : 'caution'}>
      <svg viewBox="0 0 24 24" role="img" aria-label={say('caution')}>
        <path d="M12 3 22 21H2ZM12 10v5M12 17.6v.6" />
      </svg>
      <p>
        <b>{harm}</b> {!again && `${more} ${words.do}`}
      </p>
    </div>
  );
}
