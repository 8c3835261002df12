// Steps that can be followed one at a time: each has an address of its own, and the address alone decides whether all of them are to
// be seen or one (styles/steps.css), so that it needs no script and a link to a step works.
import { firstSentence, Measured } from '../words/index.ts';
import type { StepsProps } from './Steps.tsx';
import { Steps } from './Steps.tsx';

interface Props extends Omit<StepsProps, 'round'> {
  /** Where one goes from the steps: the answer, or the top of the page. */
  readonly back: string;
}

export function StepByStep({ back, ...steps }: Props) {
  const { fix, say, language } = steps;
  const last = fix.steps.length;
  const above = (number: number) => <p class="step-at">{say('step-number', { number, total: last })}</p>;
  // Behind the step's words, of which it is none; it is drawn beside them.
  const link = (number: number) => (
    <a class="step-link" href={`#step-${number}`} aria-label={say('step-number', { number, total: last })}>
      #
    </a>
  );
  const ways = (number: number) => (
    <div class="step-ways">
      <p class="acts">
        {number < last ? (
          <a class="button" href={`#step-${number + 1}`}>
            {say('step-next')}
          </a>
        ) : (
          <a class="button" href="#proof">
            {say('step-proof')}
          </a>
        )}
        {number > 1 && <a href={`#step-${number - 1}`}>{say('step-before')}</a>}
        <a href={back}>{say('step-leave')}</a>
      </p>
      {number < last && (
        <p class="small">
          {say('step-then')}{' '}
          <Measured text={firstSentence(fix.steps[number]?.do ?? '', language)[0]} language={language} />
        </p>
      )}
    </div>
  );
  const below = (number: number) => (
    <>
      {ways(number)}
      {link(number)}
    </>
  );
  return <Steps {...steps} round={{ above, below }} />;
}
