// The sheet that a page works on: kept as it is changed, undone and done again, and told from what another tab makes of it meanwhile.
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { begun, done, type History, redone, type Sheet, undone } from '../../wizards/sheet/index.ts';
import { isFull } from '../device/index.ts';
import { type KeptSheet, onSheets, openShelf, putSheet } from '../kept-sheets/index.ts';

/** `apart`: another tab changed it meanwhile, so that there are two now. `not-yet`: it came in a link, and nobody has kept it. */
export type Keeping = 'not-yet' | 'waiting' | 'kept' | 'apart' | 'full' | 'refused';

export interface Worked {
  readonly history: History;
  readonly keeping: Keeping;
  readonly change: (sheet: Sheet) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Keeps it now. */
  readonly keep: () => Promise<void>;
}

/** So long after the last change a sheet is kept, milliseconds. Source: own-choice. */
const SOON_MS = 300;

/** @param kept where the sheet lies on this device; undefined for one that nobody has kept yet. `fresh`: to be kept at once */
export function useSheet(first: Sheet, kept: KeptSheet | undefined, fresh: boolean): Worked {
  const [history, setHistory] = useState(() => begun(first));
  const [keeping, setKeeping] = useState<Keeping>(keepingAtFirst(kept, fresh));
  const place = useRef(kept);
  const latest = useRef(first);
  const lying = useRef(fresh ? undefined : first);
  const saving = useRef(Promise.resolve());
  latest.current = history.now;

  /** One after the other: each knows the state that the one before it left. */
  const keep = useCallback((): Promise<void> => {
    saving.current = saving.current.then(async () => {
      const sheet = latest.current;
      if (place.current !== undefined && sheet === lying.current) return;
      const put = await tryToPut(sheet, place.current);
      if ('kept' in put) {
        place.current = put.kept;
        lying.current = sheet;
        showWhatIsKept();
      }
      setKeeping(put.keeping);
    });
    return saving.current;
  }, []);

  useEffect(() => {
    if (history.now === lying.current) return;
    setKeeping((now) => (now === 'refused' || now === 'full' ? now : 'waiting'));
    const soon = setTimeout(keep, SOON_MS);
    return () => clearTimeout(soon);
  }, [history.now, keep]);

  useEffect(() => {
    const leave = (): void => {
      if (latest.current !== lying.current) keep();
    };
    // A page that is left does not wait for what is being kept: so a link is followed once it is.
    const follow = (event: MouseEvent): void => {
      const link = linkIn(event);
      if (link === undefined || latest.current === lying.current) return;
      event.preventDefault();
      keep().finally(() => location.assign(link));
    };
    document.addEventListener('click', follow);
    addEventListener('pagehide', leave);
    document.addEventListener('visibilitychange', leave);
    return () => {
      document.removeEventListener('click', follow);
      removeEventListener('pagehide', leave);
      document.removeEventListener('visibilitychange', leave);
      // Another sheet is opened on this page.
      leave();
    };
  }, [keep]);

  // What another tab made of it is shown, unless something here is not kept yet: then both are.
  useEffect(
    () =>
      onSheets(async () => {
        await saving.current;
        const here = place.current;
        if (here === undefined || latest.current !== lying.current) return;
        const shelf = await openShelf().catch(() => undefined);
        const there = shelf?.value.sheets.find(({ id }) => id === here.id);
        if (there === undefined || there.change === place.current?.change || latest.current !== lying.current) return;
        place.current = there;
        lying.current = there.sheet;
        setHistory((now) => done(now, there.sheet));
        setKeeping('kept');
      }),
    [],
  );

  return {
    history,
    keeping,
    change: (sheet) => setHistory((now) => done(now, sheet)),
    undo: () => setHistory(undone),
    redo: () => setHistory(redone),
    keep,
  };
}

/** Where a click leads that leaves this page in this tab. */
function linkIn({
  target,
  defaultPrevented,
  button,
  metaKey,
  ctrlKey,
  shiftKey,
  altKey,
}: MouseEvent): string | undefined {
  const link = target instanceof Element ? target.closest<HTMLAnchorElement>('a[href]') : null;
  const isOther = defaultPrevented || button !== 0 || metaKey || ctrlKey || shiftKey || altKey;
  if (link === null || isOther || link.target !== '' || link.hasAttribute('download')) return undefined;
  return link.getAttribute('href')?.startsWith('#') === true ? undefined : link.href;
}

function keepingAtFirst(kept: KeptSheet | undefined, fresh: boolean): Keeping {
  if (kept !== undefined) return 'kept';
  return fresh ? 'waiting' : 'not-yet';
}

type Tried = { readonly kept: KeptSheet; readonly keeping: Keeping } | { readonly keeping: Keeping };

async function tryToPut(sheet: Sheet, since: KeptSheet | undefined): Promise<Tried> {
  try {
    const { kept, apart } = await putSheet(sheet, since);
    return { kept, keeping: apart ? 'apart' : 'kept' };
  } catch (error) {
    return { keeping: isFull(error) ? 'full' : 'refused' };
  }
}

/** Loaded anew, the page shows what was kept, and no longer what the link held. */
function showWhatIsKept(): void {
  if (location.hash.startsWith('#sheet=')) history.replaceState(null, '', location.pathname + location.search);
}
