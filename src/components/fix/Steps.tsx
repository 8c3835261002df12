// The steps of a fix, each with its cautions before the hand moves on. What can kill or hurt stands in full at every step that brings
// it; what only breaks something stands in full the first time and in one line after that. The line is read before the hand moves.
import type { ComponentChildren } from 'preact';
import type { CautionWords, FixWords } from '../words/index.ts';
import { firstSentence, Measured } from '../words/index.ts';
import { BeforeYouStart } from './BeforeYouStart.tsx';
import type { CautionProps } from './Caution.tsx';
import { Caution } from './Caution.tsx';
import { formsOf } from './forms.ts';

export interface StepsProps extends Pick<CautionProps, 'say' | 'language'> {
  readonly fix: Pick<FixWords, 'steps'> & Partial<Pick<FixWords, 'before'>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  /** What stands above and below a step, by its number from 1; steps then have addresses of their own. */
  readonly round?: {
    readonly above: (number: number) => ComponentChildren;
    readonly below: (number: number) => ComponentChildren;
  };
}

export function Steps({ fix, cautions, say, language, round }: StepsProps) {
  const { steps, before = [] } = fix;
  const forms = formsOf(steps, cautions);
  const isLine = (step: number, id: string): boolean =>
    forms[step]?.[id] === 'line' && cautions[id]?.line !== undefined;
  return (
    <>
      <BeforeYouStart acts={before} say={say} />
      <ol class="steps">
        {steps.map((step, i) => {
          const [first, rest] = firstSentence(step.do, language);
          const caution = (id: string) => {
            const words = cautions[id];
            const form = isLine(i, id) ? 'line' : 'whole';
            return words && <Caution key={id} words={words} form={form} say={say} language={language} />;
          };
          const own = round === undefined ? {} : { id: `step-${i + 1}`, 'data-step': i + 1, tabIndex: -1 };
          return (
            <li key={step.do} {...own}>
              {round?.above(i + 1)}
              {step.cautions.filter((id) => isLine(i, id)).map(caution)}
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
              {step.job !== undefined && (
                <p>
                  <a class="job" href={step.job.href}>
                    {step.job.title}
                  </a>
                </p>
              )}
              {step.cautions.filter((id) => !isLine(i, id)).map(caution)}
              {round?.below(i + 1)}
            </li>
          );
        })}
      </ol>
    </>
  );
}
