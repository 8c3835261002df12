// A plan is worked out in a worker, so that the page stays alive and does not carry what works it out.
import type { MeasureSystem } from '../../engine/index.ts';
import type { Plan } from '../../wizards/plan/index.ts';
import type { Sheet } from '../../wizards/sheet/index.ts';
import { allowOwnWorkers } from '../shared/index.ts';

export interface PlanOrder {
  readonly sheet: Sheet;
  readonly system: MeasureSystem;
}

/** Tells the plan, or that it failed. Gives what ends that. */
export function planFor(sheet: Sheet, system: MeasureSystem, tell: (plan: Plan) => void, fail: () => void): () => void {
  const worker = newWorker();
  if (worker === undefined) {
    fail();
    return () => undefined;
  }
  worker.addEventListener('message', ({ data }: MessageEvent<Plan>) => {
    tell(data);
    worker.terminate();
  });
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    worker.terminate();
    fail();
  });
  worker.postMessage({ sheet, system } satisfies PlanOrder);
  return () => worker.terminate();
}

/** Undefined where a browser has none, or lets none start. */
function newWorker(): Worker | undefined {
  if (typeof Worker !== 'function') return undefined;
  try {
    allowOwnWorkers();
    return new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
  } catch {
    return undefined;
  }
}
