// Fetches the words of the answer once the first question is answered, so that they are there when they are needed.
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

export interface Fetched {
  readonly answerWords: AnswerWords | undefined;
  readonly failed: boolean;
  readonly again: () => void;
}

/** Fetches `address` as soon as `wanted`; after a failure only when asked `again`. */
export function useAnswerWords(address: string, wanted: boolean): Fetched {
  const [answerWords, setWords] = useState<AnswerWords | undefined>(undefined);
  const [failed, setFailed] = useState(false);
  const [tries, setTries] = useState(0);
  const again = useCallback(() => setTries((old) => old + 1), []);
  useEffect(() => {
    if (!wanted) return;
    const stop = new AbortController();
    setFailed(false);
    fetch(address, { signal: stop.signal })
      .then((response) => (response.ok ? response.json() : Promise.reject(new Error(String(response.status)))))
      .then((found) => setWords(WORDS.parse(found)))
      .catch(() => {
        if (!stop.signal.aborted) setFailed(true);
      });
    return () => stop.abort();
  }, [address, wanted, tries]);
  return { answerWords, failed, again };
}
