// Fetches the answer, its words and what draws it, once the first question is answered, so that it is there when it is needed.
import type { ComponentType } from 'preact';
import { useCallback } from 'preact/hooks';
import * as z from 'zod/mini';
import { CAUTIONS, FIX, SENTENCES } from '../fetched-shapes.ts';
import type { Fetched } from '../use-fetched.ts';
import { useFetched } from '../use-fetched.ts';
import type { AnswerWords } from '../words.ts';

const WORDS = z.object({ words: SENTENCES, fixes: z.record(z.string(), FIX), cautions: CAUTIONS });

/** Loads what draws the worked-out answer. */
export type Load<Props> = () => Promise<ComponentType<Props>>;

interface Answer<Props> {
  readonly answerWords: AnswerWords;
  readonly WorkedOut: ComponentType<Props>;
}

/** Fetches words and code as soon as `wanted`; after a failure only when asked `again`. */
export function useAnswer<Props>(address: string, load: Load<Props>, wanted: boolean): Fetched<Answer<Props>> {
  const read = useCallback(
    async (value: unknown): Promise<Answer<Props>> => ({ answerWords: WORDS.parse(value), WorkedOut: await load() }),
    [load],
  );
  return useFetched(wanted ? address : undefined, read);
}
