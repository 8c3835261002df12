// What takes long is worked out in a worker; small layouts stay on the page, where they are done before a worker would have begun.
import { useEffect, useState } from 'preact/hooks';
import type { MeasureSystem } from '../../../engine/index.ts';
import type { Conclusion, Likely } from '../../../wizards/enough-current/index.ts';
import type { Answers } from '../../../wizards/planning/index.ts';
import { trainsIn } from '../../../wizards/planning/index.ts';
import type { Placement } from '../../../wizards/which-supply-where/index.ts';
import type { WireFound } from '../../../wizards/wire-it/index.ts';

export interface Tasks {
  readonly conclude: Conclusion;
  readonly surer: readonly Likely[];
  readonly place: Placement;
  readonly wire: WireFound;
}

export interface Order {
  readonly task: keyof Tasks;
  readonly answers: Answers;
  readonly turn: number;
  /** What a person measures in, where that decides what there is to buy. */
  readonly system: MeasureSystem | undefined;
}

interface Reply<Task extends keyof Tasks> {
  readonly turn: number;
  readonly result: Tasks[Task];
}

/** With more trains than this the remedies take longer than a tap should. */
const MOST_ON_THE_PAGE = 24;
/** A slider that moves asks only when it rests, milliseconds. */
const REST_MS = 140;

interface ResultFor<Result> {
  readonly result: Result;
  /** The answers it was worked out for. */
  readonly answers: Answers;
  readonly system: MeasureSystem | undefined;
}

interface How {
  /** Takes longer than a tap should, and goes to the worker. */
  readonly large?: boolean;
  readonly system?: MeasureSystem;
}

/** The result for these answers, or the last one while a new one is on its way; undefined until the first is there. */
export function useReckoned<Task extends keyof Tasks>(
  task: Task,
  answers: Answers,
  here: (answers: Answers) => Tasks[Task],
  { large = trainsIn(answers) > MOST_ON_THE_PAGE, system }: How = {},
): ResultFor<Tasks[Task]> | undefined {
  const [found, setFound] = useState<ResultFor<Tasks[Task]> | undefined>(() =>
    large ? undefined : { result: here(answers), answers, system },
  );
  useEffect(() => {
    if (found?.answers === answers && found.system === system) return;
    const reckonHere = (): void => setFound({ result: here(answers), answers, system });
    if (!large) {
      const timer = setTimeout(reckonHere, REST_MS);
      return () => clearTimeout(timer);
    }
    let stop = (): void => undefined;
    const timer = setTimeout(() => {
      stop = ask({ task, answers, system }, (result) => setFound({ result, answers, system }), reckonHere);
    }, REST_MS);
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [answers, system, large, found]);
  return found;
}

let turns = 0;

/** Asks a worker of its own, so that a newer question can end it; where there are no workers the page does the work. */
function ask<Task extends keyof Tasks>(
  order: Omit<Order, 'turn'> & { readonly task: Task },
  tell: (result: Tasks[Task]) => void,
  otherwise: () => void,
): () => void {
  turns += 1;
  const turn = turns;
  const worker = new Worker(new URL('./reckon-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<Reply<Task>>) => {
    if (data.turn === turn) tell(data.result);
    worker.terminate();
  });
  worker.addEventListener('error', () => {
    worker.terminate();
    otherwise();
  });
  worker.postMessage({ ...order, turn } satisfies Order);
  return () => worker.terminate();
}
