// Cautions of a check: the harm is always to be seen, what to do opens with a tap.
import { firstSentence } from '../words/index.ts';
import type { WalkParts } from './parts.ts';

interface Props extends Pick<WalkParts, 'cautions' | 'say' | 'language'> {
  readonly ids: readonly string[];
}

export function Cautions({ ids, cautions, say, language }: Props) {
  if (ids.length === 0) return null;
  return (
    <div class="cautions">
      {ids.map((id) => {
        const words = cautions[id];
        if (words === undefined) return null;
        const [harm, more] = firstSentence(words.harm, language);
        return (
          <details key={id}>
            <summary>
              <svg viewBox="0 0 24 24" role="img" aria-label={say('caution')}>
                <path d="M12 3 22 21H2ZM12 10v5M12 17.6v.6" />
              </svg>
              <b>{harm}</b>
            </summary>
            <p>
              {more} {words.do}
            </p>
          </details>
        );
      })}
    </div>
  );
}
