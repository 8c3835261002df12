// "Which supply goes on which unit?": two units, two supplies. Results are derived in which-supply-where-result.ts.
import { assign, setup } from 'xstate';
import type { QuestionId } from '../planning/index.ts';
import { askSystem, ENDS, nothingToMove, SCOPE_GUARDS, TYPES } from '../planning/index.ts';

export const whichSupplyWhere = setup({
  types: TYPES,
  actions: { remember: assign({ answers: ({ context, event }) => ({ ...context.answers, ...event.answers }) }) },
  guards: {
    ...SCOPE_GUARDS,
    nothingToMove,
  },
}).createMachine({
  id: 'which-supply-where',
  context: { answers: {} },
  initial: 'system',
  states: {
    system: askSystem('scale'),
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
    ...ENDS,
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
