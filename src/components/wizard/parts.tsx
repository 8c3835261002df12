// Pieces that both answers share: steps with their cautions, workings, what has been said, sharing.
import { useState } from 'preact/hooks';
import type { Working } from '../../engine/index.ts';
import type { CautionWords, FixWords, Numbers, Say } from '../words.ts';

export interface AnswerProps {
  readonly say: Say;
  readonly numbers: Numbers;
  readonly fixes: Readonly<Record<string, FixWords>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  /** Start of addresses below the language: `/en/`, with the base in front. */
  readonly home: string;
}

export function Steps({ fix, cautions, say }: { fix: FixWords; cautions: AnswerProps['cautions']; say: Say }) {
  return (
    <ol class="steps">
      {fix.steps.map((step) => {
        const end = step.do.search(/[.!?:](\s|$)/) + 1;
        return (
          <li key={step.do}>
            <p>
              <b>{step.do.slice(0, end)}</b>
              {step.do.slice(end)}
            </p>
            {step.more !== undefined && <p>{step.more}</p>}
            {step.cautions.map((id) => (
              <Caution key={id} words={cautions[id]} say={say} />
            ))}
          </li>
        );
      })}
    </ol>
  );
}

function Caution({ words, say }: { words: CautionWords | undefined; say: Say }) {
  if (words === undefined) return null;
  return (
    <div class="caution">
      <svg viewBox="0 0 24 24" role="img" aria-label={say('caution')}>
        <path d="M12 3 22 21H2ZM12 10v5M12 17.6v.6" />
      </svg>
      <p>
        <b>{words.harm}</b> {words.do}
      </p>
    </div>
  );
}

export function Verify({ fix, say }: { fix: FixWords; say: Say }) {
  return (
    <section class="part">
      <h2>{say('verify-title')}</h2>
      <p>{fix.verify}</p>
      <h2>{say('not-helped-title')}</h2>
      <p>{fix.next}</p>
    </section>
  );
}

export function Workings({ working, say, numbers, home }: { working: Working } & Pick<AnswerProps, 'say' | 'numbers' | 'home'>) {
  const show = (value: number, unit: Working['unit']): string =>
    unit === 'A' ? numbers.ampsExactly(value) : unit === 'V' ? numbers.volts(value) : unit === 'share' ? numbers.share(value) : numbers.plain(value, 2);
  return (
    <div class="workings">
      <p>{say(`formula-${working.formula}`)}</p>
      <ul>
        {working.inputs.map((input) => (
          <li key={input.name}>
            {say(`input-${input.name}`)}: <b class="num">{show(input.value, input.unit)}</b>
          </li>
        ))}
      </ul>
      <p class="small">
        {say('working-sources')}:{' '}
        {working.sources.map((id, index) => (
          <span key={id}>
            {index > 0 && ', '}
            <a href={`${home}sources/#${id}`}>{say(`source-${id}`)}</a>
          </span>
        ))}
      </p>
    </div>
  );
}

export function Share({ headline, lead, say }: { headline: string; lead: string; say: Say }) {
  const [told, setTold] = useState('');
  const copy = (text: string): void => {
    navigator.clipboard.writeText(text).then(
      () => setTold(say('copied')),
      () => setTold(say('copy-failed')),
    );
  };
  return (
    <div class="share">
      <button type="button" onClick={() => copy(location.href)}>
        {say('copy-link')}
      </button>
      <button type="button" onClick={() => copy(say('share-text', { headline, lead, link: location.href }))}>
        {say('copy-text')}
      </button>
      <button type="button" onClick={() => print()}>
        {say('print')}
      </button>
      <span role="status">{told}</span>
    </div>
  );
}
