// The address is the state: what it tells, and how to go on from it. After a step of one's own the new heading is read out.
import { useCallback, useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { withoutUnits, withUnits } from '../device/index.ts';

export interface Address {
  /** From "?", or empty; without the units, which are read by themselves. */
  readonly search: string;
  /** Writes what is told now; `replace` keeps no step to go back to. */
  readonly go: (search: string, keep?: 'push' | 'replace') => void;
  /** True once the person took a step here. */
  readonly moved: { readonly current: boolean };
}

export function useAddress(): Address {
  const [search, setSearch] = useState('');
  const moved = useRef(false);
  useLayoutEffect(() => {
    const read = (): void => setSearch(withoutUnits(location.search));
    if (location.search !== '') read();
    addEventListener('popstate', read);
    return () => removeEventListener('popstate', read);
  }, []);
  const go = useCallback<Address['go']>((next, keep = 'push') => {
    if (keep === 'push') moved.current = true;
    history[keep === 'push' ? 'pushState' : 'replaceState'](null, '', location.pathname + withUnits(next));
    setSearch(next);
  }, []);
  return { search, go, moved };
}

/** The box whose heading is read out, from the top of the page, whenever `place` changes by a step of one's own; one that comes later, when it is there. */
export function useHeading({ moved }: Pick<Address, 'moved'>, place: string) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!moved.current) return;
    scrollTo({ top: 0 });
    return box.current === null ? undefined : focusHeading(box.current);
  }, [place]);
  return box;
}

/** What it gives back ends the waiting. */
function focusHeading(box: HTMLElement): () => void {
  const isThere = (): boolean => {
    const heading = box.querySelector('h1');
    heading?.focus({ preventScroll: true });
    return heading !== null;
  };
  const watcher = new MutationObserver(() => {
    if (isThere()) watcher.disconnect();
  });
  if (!isThere()) watcher.observe(box, { childList: true, subtree: true });
  return () => watcher.disconnect();
}
