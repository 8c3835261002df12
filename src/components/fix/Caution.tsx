// A caution: the harm first, then what to do. Drawn here for every page, in the page as it is built and while it runs.
import type { CautionWords, Say } from '../words/index.ts';
import { firstSentence } from '../words/index.ts';

export interface CautionProps {
  readonly words: CautionWords;
  readonly say: Say;
  readonly language: string;
  /** Where its words are in another language than what stands round it. */
  readonly lang?: string | undefined;
  /** `again`: told in full above, so that the harm is enough. `folded`: what to do opens with a tap, the harm is always to be seen. */
  readonly form?: 'whole' | 'again' | 'folded';
}

export function Caution({ words, say, language, lang, form = 'whole' }: CautionProps) {
  const [harm, more] = firstSentence(words.harm, language);
  if (form === 'folded') {
    return (
      <details class="caution" lang={lang}>
        <summary>
          <Sign say={say} />
          <b>{harm}</b>
        </summary>
        <p>
          {more} {words.do}
        </p>
      </details>
    );
  }
  return (
    <div class={form === 'again' ? 'caution again' : 'caution'} lang={lang}>
      <Sign say={say} />
      <p>
        <b>{harm}</b> {form === 'whole' && `${more} ${words.do}`}
      </p>
    </div>
  );
}

const Sign = ({ say }: Pick<CautionProps, 'say'>) => (
  <svg viewBox="0 0 24 24" role="img" aria-label={say('caution')}>
    <path d="M12 3 22 21H2ZM12 10v5M12 17.6v.6" />
  </svg>
);
