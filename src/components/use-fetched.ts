// Words that are fetched when they are needed, checked once at the door.
import { useCallback, useEffect, useState } from 'preact/hooks';

export interface Fetched<Value> {
  readonly value: Value | undefined;
  readonly failed: boolean;
  readonly again: () => void;
}

/** Fetches `address` (nothing while undefined) and reads it; after a failure only when asked `again`. */
export function useFetched<Value>(
  address: string | undefined,
  read: (value: unknown) => Promise<Value>,
): Fetched<Value> {
  const [found, setFound] = useState<{ readonly address: string; readonly value: Value } | undefined>(undefined);
  const [failed, setFailed] = useState(false);
  const [tries, setTries] = useState(0);
  const again = useCallback(() => setTries((old) => old + 1), []);
  useEffect(() => {
    if (address === undefined) return;
    const stop = new AbortController();
    setFailed(false);
    fetch(address, { signal: stop.signal })
      .then((response) => (response.ok ? response.json() : Promise.reject(new Error(String(response.status)))))
      .then(read)
      .then((value) => setFound({ address, value }))
      .catch(() => {
        if (!stop.signal.aborted) setFailed(true);
      });
    return () => stop.abort();
  }, [address, read, tries]);
  return { value: found?.address === address ? found?.value : undefined, failed, again };
}
