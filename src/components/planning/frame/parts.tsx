// Pieces that both answers share: workings, how to verify, sharing.
import { useState } from 'preact/hooks';
import type { Working } from '../../../engine/index.ts';
import { Missing, useLoaded } from '../../shared/index.ts';
import type { CautionWords, FixWords, Language, Numbers, Say } from '../../words/index.ts';

export interface AnswerProps {
  readonly say: Say;
  readonly numbers: Numbers;
  readonly fixes: Readonly<Record<string, FixWords>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  readonly language: Language;
  /** Start of addresses below the language: `/en/`, with the base in front. */
  readonly home: string;
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

export function Workings({
  working,
  say,
  numbers,
  home,
}: { working: Working } & Pick<AnswerProps, 'say' | 'numbers' | 'home'>) {
  const show = (value: number, unit: Working['unit']): string => numbers.inUnit(value, unit);
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

const loadCode = () => import('./QrCode.tsx');

export function Share({ headline, lead, say }: { headline: string; lead: string; say: Say }) {
  const [told, setTold] = useState('');
  const [wanted, setWanted] = useState(false);
  const code = useLoaded(wanted ? loadCode : undefined);
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
      <button type="button" onClick={() => setWanted(true)}>
        {say('copy-code')}
      </button>
      <button type="button" onClick={() => print()}>
        {say('print')}
      </button>
      <span role="status">{told}</span>
      {code.value !== undefined && <code.value.QrCode text={location.href} label={say('copy-code-label')} />}
      {code.failed && <Missing say={say} again={code.again} />}
    </div>
  );
}
