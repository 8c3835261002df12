// "Which supply goes on which unit?": two units, two supplies. Results are derived in which-supply-where-result.ts.
import { assign, setup } from 'xstate';
import { chose, nothingToMove, TYPES } from './machine.ts';
import type { QuestionId } from './questions.ts';

export const whichSupplyWhere = setup({
  types: TYPES,
  actions: { remember: assign({ answers: ({ context, event }) => ({ ...context.answers, ...event.answers }) }) },
  guards: {
    threeRail: chose('system', 'three-rail'),
    battery: chose('system', 'battery'),
    analogue: chose('system', 'analogue'),
    nothingToMove,
  },
}).createMachine({
  id: 'which-supply-where',
  context: { answers: {} },
  initial: 'system',
  states: {
    system: {
      on: {
        'user.answer': [
          { guard: 'threeRail', target: 'out-of-scope-three-rail', actions: 'remember' },
          { guard: 'battery', target: 'out-of-scope-battery', actions: 'remember' },
          { guard: 'analogue', target: 'out-of-scope-analogue', actions: 'remember' },
          { target: 'scale', actions: 'remember' },
        ],
      },
    },
    scale: { on: { 'user.answer': { target: 'station-label', actions: 'remember' } } },
    'station-label': { on: { 'user.answer': { target: 'booster-label', actions: 'remember' } } },
    'booster-label': { on: { 'user.answer': { target: 'supply-one', actions: 'remember' } } },
    'supply-one': { on: { 'user.answer': { target: 'supply-two', actions: 'remember' } } },
    'supply-two': { on: { 'user.answer': { target: 'fleet', actions: 'remember' } } },
    fleet: {
      on: {
        'user.answer': [
          { guard: 'nothingToMove', target: 'busier', actions: 'remember' },
          { target: 'moving', actions: 'remember' },
        ],
      },
    },
    moving: { on: { 'user.answer': { target: 'busier', actions: 'remember' } } },
    busier: { on: { 'user.answer': { target: 'worked-out', actions: 'remember' } } },
    'worked-out': { type: 'final' },
    'out-of-scope-three-rail': { type: 'final' },
    'out-of-scope-battery': { type: 'final' },
    'out-of-scope-analogue': { type: 'final' },
  },
});

/** In the order in which they can be met. */
export const WHICH_SUPPLY_QUESTIONS = [
  'system',
  'scale',
  'station-label',
  'booster-label',
  'supply-one',
  'supply-two',
  'fleet',
  'moving',
  'busier',
] as const satisfies readonly QuestionId[];
