// What a danger answer leads to: the first act at once, nothing before it but its name. Drawn with words that came with the page: it needs no line.
import { Steps } from '../fix/index.ts';
import type { PartProps } from './part-props.ts';
import type { DangerWords } from './words.ts';

interface Props extends Pick<PartProps, 'say' | 'language' | 'cautions'> {
  readonly words: DangerWords;
  readonly onCold: () => void;
}

export function Danger({ words, say, language, cautions, onCold }: Props) {
  return (
    <section class="part">
      <h1 class="verdict" tabIndex={-1}>
        {words.title}
      </h1>
      <Steps fix={words} cautions={cautions} say={say} language={language} />
      <div class="acts">
        <button class="button" type="button" onClick={onCold}>
          {say('walk-off-and-cold')}
        </button>
      </div>
    </section>
  );
}
