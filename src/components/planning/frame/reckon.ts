// What takes long is worked out in a worker; small layouts stay on the page, where they are done before a worker would have begun.
import { useEffect, useState } from 'preact/hooks';
import type { Conclusion } from '../../../wizards/enough-current/index.ts';
import type { Answers } from '../../../wizards/planning/index.ts';
import { trainsIn } from '../../../wizards/planning/index.ts';
import type { Placement } from '../../../wizards/which-supply-where/index.ts';

export interface Tasks {
  readonly conclude: Conclusion;
  readonly place: Placement;
}

export interface Order {
  readonly task: keyof Tasks;
  readonly answers: Answers;
  readonly turn: number;
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
}

/** The result for these answers, or the last one while a new one is on its way; undefined until the first is there. */
export function useReckoned<Task extends keyof Tasks>(
  task: Task,
  answers: Answers,
  here: (answers: Answers) => Tasks[Task],
): ResultFor<Tasks[Task]> | undefined {
  const large = trainsIn(answers) > MOST_ON_THE_PAGE;
  const [found, setFound] = useState<ResultFor<Tasks[Task]> | undefined>(() =>
    large ? undefined : { result: here(answers), answers },
  );
  useEffect(() => {
    if (found?.answers === answers) return;
    const reckonHere = (): void => setFound({ result: here(answers), answers });
    if (!large) {
      const timer = setTimeout(reckonHere, REST_MS);
      return () => clearTimeout(timer);
    }
    let stop = (): void => undefined;
    const timer = setTimeout(() => {
      stop = ask(task, answers, (result) => setFound({ result, answers }), reckonHere);
    }, REST_MS);
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [answers, large, found]);
  return found;
}

let turns = 0;

/** Asks a worker of its own, so that a newer question can end it; where there are no workers the page does the work. */
function ask<Task extends keyof Tasks>(
  task: Task,
  answers: Answers,
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
  worker.postMessage({ task, answers, turn } satisfies Order);
  return () => worker.terminate();
}
