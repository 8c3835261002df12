// Fetches the answer, its words and what draws it, once the first question is answered, so that it is there when it is needed.
import type { ComponentType } from 'preact';
import { useCallback } from 'preact/hooks';
import type { Loaded } from '../../shared/index.ts';
import { fetchWords, useLoaded } from '../../shared/index.ts';
import type { AnswerWords } from '../../words/index.ts';
import { standBy } from './reckon.ts';

/** Loads what draws the worked-out answer. */
export type LoadDrawing<Props> = () => Promise<ComponentType<Props>>;

interface Drawable<Props> {
  readonly answerWords: AnswerWords;
  readonly WorkedOut: ComponentType<Props>;
}

/** Loads words and code as soon as `wanted`; after a failure only when asked `again`. */
export function useAnswer<Props>(address: string, load: LoadDrawing<Props>, wanted: boolean): Loaded<Drawable<Props>> {
  const both = useCallback(
    async (stop: AbortSignal): Promise<Drawable<Props>> => {
      const [words, { answerWordsIn }, WorkedOut] = await Promise.all([
        fetchWords(address, stop),
        import('./answer-words.ts'),
        load(),
      ]);
      standBy();
      return { answerWords: answerWordsIn(words), WorkedOut };
    },
    [address, load],
  );
  return useLoaded(wanted ? both : undefined);
}
