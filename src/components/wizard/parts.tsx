// Pieces that both answers share: steps with their cautions, workings, what has been said, sharing.
import { useState } from 'preact/hooks';
import type { Working } from '../../engine/index.ts';
import type { Language } from '../language.ts';
import { firstSentence } from '../sentences.ts';
import type { CautionWords, FixWords, Numbers, Say } from '../words.ts';

export interface AnswerProps {
  readonly say: Say;
  readonly numbers: Numbers;
  readonly fixes: Readonly<Record<string, FixWords>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  readonly language: Language;
  /** Start of addresses below the language: `/en/`, with the base in front. */
  readonly home: string;
}

export function Steps({
  fix,
  cautions,
  say,
  language,
}: { fix: FixWords } & Pick<AnswerProps, 'cautions' | 'say' | 'language'>) {
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
}: { words: CautionWords | undefined; again: boolean } & Pick<AnswerProps, 'say' | 'language'>) {
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

export function Share({ headline, lead, say }: { headline: string; lead: string; say: Say }) {
  const [told, setTold] = useState('');
  const [code, setCode] = useState<typeof import('./QrCode.tsx') | undefined>(undefined);
  const copy = (text: string): void => {
    navigator.clipboard.writeText(text).then(
      () => setTold(say('copied')),
      () => setTold(say('copy-failed')),
    );
  };
  const showCode = (): void => {
    import('./QrCode.tsx').then(setCode, () => setTold(say('words-missing')));
  };
  return (
    <div class="share">
      <button type="button" onClick={() => copy(location.href)}>
        {say('copy-link')}
      </button>
      <button type="button" onClick={() => copy(say('share-text', { headline, lead, link: location.href }))}>
        {say('copy-text')}
      </button>
      <button type="button" onClick={showCode}>
        {say('copy-code')}
      </button>
      <button type="button" onClick={() => print()}>
        {say('print')}
      </button>
      <span role="status">{told}</span>
      {code !== undefined && <code.QrCode text={location.href} label={say('copy-code-label')} />}
    </div>
  );
}
