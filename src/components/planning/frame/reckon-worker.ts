// Works out an answer off the page: a club's whole fleet takes longer than a frame.

import { concluded, surerOf } from '../../../wizards/enough-current/index.ts';
import { shareOutFor } from '../../../wizards/share-out/index.ts';
import { placeSupplies } from '../../../wizards/which-supply-where/index.ts';
import { wire } from '../../../wizards/wire-it/index.ts';
import type { Order, Reply, Tasks } from './reckon.ts';

const TASKS: { readonly [Task in keyof Tasks]: (order: Order) => Tasks[Task] } = {
  conclude: ({ answers }) => concluded(answers),
  surer: ({ answers, left = [] }) => surerOf(answers, left),
  place: ({ answers }) => placeSupplies(answers),
  share: ({ answers }) => shareOutFor(answers),
  wire: ({ answers, system }) => wire(answers, system),
};

const tell = (reply: Reply<keyof Tasks>): void => postMessage(reply);

addEventListener('message', ({ data }: MessageEvent<Order>) => {
  tell({ turn: data.turn, result: TASKS[data.task](data) });
});
tell('started');
