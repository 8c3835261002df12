// The steps of a fix, each with its cautions before the hand moves on: in full the first time, by the harm after that.
import type { CautionWords, FixWords } from '../words/index.ts';
import { firstSentence, Measured } from '../words/index.ts';
import type { CautionProps } from './Caution.tsx';
import { Caution } from './Caution.tsx';

interface Props extends Pick<CautionProps, 'say' | 'language'> {
  readonly fix: Pick<FixWords, 'steps'>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
}

export function Steps({ fix, cautions, say, language }: Props) {
  const told = new Set<string>();
  const formOf = (id: string): 'whole' | 'again' => {
    const again = told.has(id);
    told.add(id);
    return again ? 'again' : 'whole';
  };
  return (
    <ol class="steps">
      {fix.steps.map((step) => {
        const [first, rest] = firstSentence(step.do, language);
        return (
          <li key={step.do}>
            <p>
              <b>
                <Measured text={first} language={language} />
              </b>{' '}
              <Measured text={rest} language={language} />
            </p>
            {step.more !== undefined && (
              <p>
                <Measured text={step.more} language={language} />
              </p>
            )}
            {step.cautions.map((id) => {
              const words = cautions[id];
              return (
                words !== undefined && (
                  <Caution key={id} words={words} form={formOf(id)} say={say} language={language} />
                )
              );
            })}
          </li>
        );
      })}
    </ol>
  );
}
