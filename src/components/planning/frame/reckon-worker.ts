// Works out an answer off the page: a club's whole fleet takes longer than a frame.

import { conclude, reckon, surerOf } from '../../../wizards/enough-current/index.ts';
import type { Answers } from '../../../wizards/planning/index.ts';
import { placeSupplies } from '../../../wizards/which-supply-where/index.ts';
import { wire } from '../../../wizards/wire-it/index.ts';
import type { Order, Tasks } from './reckon.ts';

const TASKS: { readonly [Task in keyof Tasks]: (answers: Answers, system: Order['system']) => Tasks[Task] } = {
  conclude: (answers) => conclude(answers, reckon(answers)),
  surer: (answers) => surerOf(answers),
  place: (answers) => placeSupplies(answers),
  wire: (answers, system) => wire(answers, system),
};

addEventListener('message', ({ data }: MessageEvent<Order>) => {
  postMessage({ turn: data.turn, result: TASKS[data.task](data.answers, data.system) });
});
