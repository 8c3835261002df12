// An answer is worked out in a worker: a tap never waits for it, and a club's fleet takes longer than a frame. Where there is no worker,
// or none that starts, the page does the work.
import { useEffect, useState } from 'preact/hooks';
import type { MeasureSystem } from '../../../engine/index.ts';
import type { Conclusion, Likely, Reckoning } from '../../../wizards/enough-current/index.ts';
import type { Answers, QuestionId } from '../../../wizards/planning/index.ts';
import type { ShareFound } from '../../../wizards/share-out/index.ts';
import type { Placement } from '../../../wizards/which-supply-where/index.ts';
import type { WireFound } from '../../../wizards/wire-it/index.ts';
import { allowOwnWorkers } from '../../shared/index.ts';

export interface Tasks {
  readonly conclude: { readonly reckoning: Reckoning; readonly conclusion: Conclusion };
  readonly surer: readonly Likely[];
  readonly place: Placement;
  readonly share: ShareFound;
  readonly wire: WireFound;
}

/** What decides besides the answers. */
interface Beside {
  /** What a person measures in, where that decides what there is to buy. */
  readonly system?: MeasureSystem;
  /** The questions that are left. */
  readonly left?: readonly QuestionId[];
}

export interface Order extends Beside {
  readonly task: keyof Tasks;
  readonly answers: Answers;
  readonly turn: number;
}

/** What a worker says: that it has started, and then each result. */
export type Reply<Task extends keyof Tasks> = 'started' | { readonly turn: number; readonly result: Tasks[Task] };

interface ResultFor<Result> {
  readonly result: Result;
  /** The answers it was worked out for. */
  readonly answers: Answers;
  readonly system: MeasureSystem | undefined;
}

/** The result for these answers and no others; undefined while it is being worked out. `here`: does the work on the page. */
export function useReckoned<Task extends keyof Tasks>(
  task: Task,
  answers: Answers,
  here: (answers: Answers) => Tasks[Task] | Promise<Tasks[Task]>,
  beside: Beside = {},
): Tasks[Task] | undefined {
  const [found, setFound] = useState<ResultFor<Tasks[Task]> | undefined>(undefined);
  const { system } = beside;
  useEffect(() => {
    const tell = (result: Tasks[Task]): void => setFound({ result, answers, system });
    return ask({ task, answers, ...beside }, tell, () => Promise.resolve(here(answers)).then(tell));
  }, [answers, system]);
  return found?.answers === answers && found.system === system ? found.result : undefined;
}

interface Helper {
  readonly worker: Worker;
  started: boolean;
}

/** Those with nothing to do. They are kept, since one that has worked before works faster. */
let idle: readonly Helper[] = [];
/** A line that takes longer to bring a worker is slower than the page itself, milliseconds. */
const START_MS = 1500;

/** Has a worker ready before it is needed. */
export function standBy(): void {
  if (idle.length === 0 && typeof Worker === 'function') idle = [newHelper()];
}

function newHelper(): Helper {
  allowOwnWorkers();
  const worker = new Worker(new URL('./reckon-worker.ts', import.meta.url), { type: 'module' });
  const helper: Helper = { worker, started: false };
  worker.addEventListener('message', () => {
    helper.started = true;
  });
  worker.addEventListener('error', () => {
    idle = idle.filter((one) => one !== helper);
  });
  return helper;
}

let turns = 0;

/** Asks a worker of its own, so that a newer question can end it; where there are no workers the page does the work. */
function ask<Task extends keyof Tasks>(
  order: Omit<Order, 'turn'> & { readonly task: Task },
  tell: (result: Tasks[Task]) => void,
  otherwise: () => void,
): () => void {
  if (typeof Worker !== 'function') {
    otherwise();
    return () => undefined;
  }
  turns += 1;
  const turn = turns;
  const [helper = newHelper(), ...others] = idle;
  idle = others;
  const { worker } = helper;
  const over = new AbortController();
  const giveUp = (): void => {
    stop();
    otherwise();
  };
  const late = setTimeout(() => {
    if (!helper.started) giveUp();
  }, START_MS);
  const stop = (): void => {
    if (over.signal.aborted) return;
    end();
    worker.terminate();
  };
  const end = (): void => {
    clearTimeout(late);
    over.abort();
  };
  const { signal } = over;
  worker.addEventListener(
    'message',
    ({ data }: MessageEvent<Reply<Task>>) => {
      if (data === 'started' || data.turn !== turn) return;
      end();
      idle = [...idle, helper];
      tell(data.result);
    },
    { signal },
  );
  worker.addEventListener('error', giveUp, { signal });
  worker.postMessage({ ...order, turn } satisfies Order);
  return stop;
}
