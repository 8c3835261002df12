// Fetches the answer, its words and what draws it, once the first question is answered, so that it is there when it is needed.
import type { ComponentType } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import * as z from 'zod/mini';
import type { AnswerWords } from '../words.ts';

const text = z.string();
const WORDS = z.object({
  words: z.record(text, text),
  fixes: z.record(
    text,
    z.object({
      title: text,
      lead: text,
      short: text,
      because: text,
      needs: text,
      effort: text,
      steps: z.array(z.object({ do: text, more: z.optional(text), cautions: z.array(text) })),
      verify: text,
      next: text,
    }),
  ),
  cautions: z.record(text, z.object({ harm: text, do: text })),
});

/** Loads what draws the worked-out answer. */
export type Load<Props> = () => Promise<ComponentType<Props>>;

export interface Fetched<Props> {
  readonly answerWords: AnswerWords | undefined;
  readonly WorkedOut: ComponentType<Props> | undefined;
  readonly failed: boolean;
  readonly again: () => void;
}

interface Answer<Props> {
  readonly answerWords: AnswerWords;
  readonly WorkedOut: ComponentType<Props>;
}

async function wordsAt(address: string, signal: AbortSignal): Promise<AnswerWords> {
  const response = await fetch(address, { signal });
  if (!response.ok) throw new Error(String(response.status));
  return WORDS.parse(await response.json());
}

/** Fetches words and code as soon as `wanted`; after a failure only when asked `again`. */
export function useAnswer<Props>(address: string, load: Load<Props>, wanted: boolean): Fetched<Props> {
  const [answer, setAnswer] = useState<Answer<Props> | undefined>(undefined);
  const [failed, setFailed] = useState(false);
  const [tries, setTries] = useState(0);
  const again = useCallback(() => setTries((old) => old + 1), []);
  useEffect(() => {
    if (!wanted) return;
    const stop = new AbortController();
    setFailed(false);
    Promise.all([wordsAt(address, stop.signal), load()])
      .then(([answerWords, WorkedOut]) => setAnswer({ answerWords, WorkedOut }))
      .catch(() => {
        if (!stop.signal.aborted) setFailed(true);
      });
    return () => stop.abort();
  }, [address, load, wanted, tries]);
  return { answerWords: answer?.answerWords, WorkedOut: answer?.WorkedOut, failed, again };
}
