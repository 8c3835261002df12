// The steps of a fix, each with its cautions before the hand moves on: in a wizard in full the first time and by the harm
// after that, on a page of its own in full at every step, since people come in at the middle of it.
import type { CautionWords, FixWords } from '../words/index.ts';
import { firstSentence, Measured } from '../words/index.ts';
import type { CautionProps } from './Caution.tsx';
import { Caution } from './Caution.tsx';

interface Props extends Pick<CautionProps, 'say' | 'language'> {
  readonly fix: Pick<FixWords, 'steps'>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  /** `each`: a caution stands in full at every step that names it. */
  readonly inFull?: 'first' | 'each';
}

export function Steps({ fix, cautions, say, language, inFull = 'first' }: Props) {
  const told = new Set<string>();
  const formOf = (id: string): 'whole' | 'again' => {
    const again = inFull === 'first' && told.has(id);
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
