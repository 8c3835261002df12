// What a page loads when it is needed: words and what draws them.
import { useCallback, useEffect, useState } from 'preact/hooks';

export type Load<Value> = (stop: AbortSignal) => Promise<Value>;

export interface Loaded<Value> {
  readonly value: Value | undefined;
  readonly failed: boolean;
  readonly again: () => void;
}

/** Loads (nothing while undefined); after a failure only when asked `again`. */
export function useLoaded<Value>(load: Load<Value> | undefined): Loaded<Value> {
  const [found, setFound] = useState<{ readonly load: Load<Value>; readonly value: Value } | undefined>(undefined);
  const [failed, setFailed] = useState(false);
  const [asked, setAsked] = useState<{ readonly load: Load<Value> | undefined } | undefined>(undefined);
  const again = useCallback(() => setAsked({ load }), [load]);
  useEffect(() => {
    if (load === undefined) return;
    const stop = new AbortController();
    const { signal } = stop;
    setFailed(false);
    load(signal)
      .then((value) => setFound({ load, value }))
      .catch(async () => {
        if (asked?.load === load) await loadPageAnew(signal);
        if (!signal.aborted) setFailed(true);
      });
    return () => stop.abort();
  }, [load, asked]);
  return { value: found?.load === load ? found?.value : undefined, failed, again };
}

/**
 * A browser may remember for as long as a page is open that a script could not be had; only the page loaded anew asks for it
 * again, and its address holds what was told. Nobody is led away from a page that cannot be had itself.
 */
async function loadPageAnew(signal: AbortSignal): Promise<void> {
  const page = await fetch(location.href, { cache: 'no-store', signal }).catch(() => undefined);
  if (page?.ok === true && !signal.aborted) location.reload();
}

/** Fetches words; what they are is for the caller to see. */
export async function fetchWords(address: string, signal?: AbortSignal): Promise<unknown> {
  const response = await fetch(address, signal === undefined ? {} : { signal });
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return response.json();
}

/** Puts a file of styles into the page, once; what it draws is drawn after it is there. */
export function fetchStyles(address: string): Promise<void> {
  const links = [...document.head.querySelectorAll<HTMLLinkElement>('link[rel=stylesheet]')];
  if (links.some((link) => link.getAttribute('href') === address && link.sheet !== null)) return Promise.resolve();
  const link = document.createElement('link');
  link.rel = 'stylesheet';
  link.href = address;
  return new Promise((done, fail) => {
    link.addEventListener('load', () => done());
    link.addEventListener('error', () => {
      link.remove();
      fail(new Error(`${address} could not be had`));
    });
    document.head.append(link);
  });
}
