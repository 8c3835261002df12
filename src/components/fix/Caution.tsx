// A caution: how bad it is, the harm, then what to do. Drawn here for every page, in the page as it is built and while it runs.
// The rank is told by a word, a sign and a frame, so that it is there in one colour and on paper too.
import type { CautionWords, Say } from '../words/index.ts';

export interface CautionProps {
  readonly words: CautionWords;
  readonly say: Say;
  readonly language: string;
  /** Where its words are in another language than what stands round it. */
  readonly lang?: string | undefined;
  /** `line`: told in full above, or for the whole page, so that one line is enough where only something may break. */
  readonly form?: 'whole' | 'line';
}

export function Caution({ words, say, lang, form = 'whole' }: CautionProps) {
  const { rank, harm, do: act, line } = words;
  const short = form === 'line' && line !== undefined;
  return (
    <div class={`caution ${rank}${short ? ' again' : ''}`} lang={lang}>
      <Sign rank={rank} />
      {short ? (
        <p>{line}</p>
      ) : (
        <p>
          <em>{say(`rank-${rank}`)}</em> <b>{harm}</b> {act}
        </p>
      )}
    </div>
  );
}

/** Life: a filled octagon. Injury: a triangle. Damage: a small square on its tip. */
const SIGNS = {
  life: 'M8 2h8l6 6v8l-6 6H8l-6-6V8ZM12 6.5v7M12 17v.6',
  injury: 'M12 3 22 21H2ZM12 10v5M12 17.6v.6',
  damage: 'M12 5 19 12 12 19 5 12Z',
} as const;

const Sign = ({ rank }: Pick<CautionWords, 'rank'>) => (
  <svg viewBox="0 0 24 24" aria-hidden="true">
    <path d={SIGNS[rank]} />
  </svg>
);
