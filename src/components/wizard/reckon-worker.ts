// Works out an answer off the page: a club's whole fleet takes longer than a frame.
import type { Answers } from '../../wizards/answers.ts';
import { conclude, reckon } from '../../wizards/enough-current-result.ts';
import { placeSupplies } from '../../wizards/which-supply-where-result.ts';
import type { Asked, Tasks } from './reckon.ts';

const TASKS: { readonly [Task in keyof Tasks]: (answers: Answers) => Tasks[Task] } = {
  conclude: (answers) => conclude(answers, reckon(answers)),
  place: placeSupplies,
};

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  postMessage({ turn: data.turn, result: TASKS[data.task](data.answers) });
});
