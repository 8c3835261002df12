// Divides off the page: a large layout takes seconds. Each work has a worker of its own, so that it can be ended; where there is none, or none
// that starts, the page does it a part at a time.
import { divideSheet, type SheetDivided } from '../../wizards/division/index.ts';
import type { Sheet } from '../../wizards/sheet/index.ts';
import { allowOwnWorkers } from '../shared/index.ts';

/** What a worker says: that it has started, how far it is, and the result. */
export type Reply = 'started' | { readonly tries: number } | { readonly divided: SheetDivided };

/** A line that takes longer to bring a worker is slower than the page itself, milliseconds. Source: own-choice. */
const START_MS = 1500;
/** How long the page works before the browser has its turn, and how long a worker works before it tells how far it is, milliseconds. */
const TURN_MS = 8;
const TELL_MS = 100;

export interface Telling {
  /** So many costs of gaps have been tried. */
  readonly onTries: (tries: number) => void;
  readonly onDone: (divided: SheetDivided) => void;
  /** It broke off: nothing came of it. */
  readonly onFailed: () => void;
}

/** Begins to divide a sheet; gives what ends it. */
export function divideAway(sheet: Sheet, telling: Telling): () => void {
  const worker = newWorker();
  if (worker === undefined) return divideHere(sheet, telling);
  let otherwise: (() => void) | undefined;
  let started = false;
  const here = (): void => {
    stop();
    otherwise = divideHere(sheet, telling);
  };
  const late = setTimeout(() => {
    if (!started) here();
  }, START_MS);
  const stop = (): void => {
    clearTimeout(late);
    worker.terminate();
    otherwise?.();
  };
  worker.addEventListener('message', ({ data }: MessageEvent<Reply>) => {
    started = true;
    if (data === 'started') return;
    if ('tries' in data) return telling.onTries(data.tries);
    stop();
    telling.onDone(data.divided);
  });
  worker.addEventListener('error', () => {
    if (!started) return here();
    stop();
    telling.onFailed();
  });
  worker.postMessage(sheet);
  return stop;
}

/** Nothing where the browser knows no workers or forbids this one. */
function newWorker(): Worker | undefined {
  if (typeof Worker !== 'function') return undefined;
  try {
    allowOwnWorkers();
    return new Worker(new URL('./divide-worker.ts', import.meta.url), { type: 'module' });
  } catch {
    return undefined;
  }
}

/** On the page itself, with a turn for the browser in between. */
export function divideHere(sheet: Sheet, { onTries, onDone, onFailed }: Telling): () => void {
  let wanted = true;
  const run = async (): Promise<void> => {
    const parts = inTries(sheet, TURN_MS);
    for (;;) {
      await new Promise((done) => setTimeout(done));
      if (!wanted) return;
      const step = parts.next();
      if (step.done === true) return onDone(step.value);
      onTries(step.value);
    }
  };
  run().catch(() => {
    if (wanted) onFailed();
  });
  return () => {
    wanted = false;
  };
}

/** Divides, and says after each so many milliseconds how many costs of gaps have been tried. */
export function* inTries(sheet: Sheet, each = TELL_MS): Generator<number, SheetDivided> {
  const parts = divideSheet(sheet);
  let tries = 0;
  let cost: number | undefined;
  let since = performance.now();
  for (;;) {
    const step = parts.next();
    if (step.done === true) return step.value;
    if (step.value.cost !== cost) tries += 1;
    cost = step.value.cost;
    if (performance.now() - since < each) continue;
    yield tries;
    since = performance.now();
  }
}
