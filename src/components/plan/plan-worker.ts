// Works out one plan beside the page.
import { planOf } from '../../wizards/plan/index.ts';
import type { PlanOrder } from './plan-for.ts';

addEventListener('message', ({ data: { sheet, system } }: MessageEvent<PlanOrder>) => {
  postMessage(planOf(sheet, system));
});
