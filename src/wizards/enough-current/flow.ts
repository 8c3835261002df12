// "Is my power enough?": one state a question. What is computed is derived from the answers in enough-current-result.ts.
import { assign, setup } from 'xstate';
import type { QuestionId } from '../planning/index.ts';
import { askSystem, chose, ENDS, nothingToMove, SCOPE_GUARDS, TYPES } from '../planning/index.ts';

export const enoughCurrent = setup({
  types: TYPES,
  actions: { remember: assign({ answers: ({ context, event }) => ({ ...context.answers, ...event.answers }) }) },
  guards: {
    ...SCOPE_GUARDS,
    knowsAmperes: chose('draw', 'measured'),
    nothingToMove,
  },
}).createMachine({
  id: 'enough-current',
  context: { answers: {} },
  initial: 'system',
  states: {
    system: askSystem('aim'),
    aim: { on: { 'user.answer': { target: 'scale', actions: 'remember' } } },
    scale: { on: { 'user.answer': { target: 'draw', actions: 'remember' } } },
    draw: {
      on: {
        'user.answer': [
          { guard: 'knowsAmperes', target: 'measured', actions: 'remember' },
          { target: 'fleet', actions: 'remember' },
        ],
      },
    },
    fleet: {
      on: {
        'user.answer': [
          { guard: 'nothingToMove', target: 'coaches', actions: 'remember' },
          { target: 'moving', actions: 'remember' },
        ],
      },
    },
    measured: { on: { 'user.answer': { target: 'moving', actions: 'remember' } } },
    moving: { on: { 'user.answer': { target: 'coaches', actions: 'remember' } } },
    coaches: { on: { 'user.answer': { target: 'accessories', actions: 'remember' } } },
    accessories: { on: { 'user.answer': { target: 'supply-label', actions: 'remember' } } },
    'supply-label': { on: { 'user.answer': { target: 'unit-label', actions: 'remember' } } },
    'unit-label': { on: { 'user.answer': { target: 'rails', actions: 'remember' } } },
    rails: { on: { 'user.answer': { target: 'own-use', actions: 'remember' } } },
    'own-use': { on: { 'user.answer': { target: 'worked-out', actions: 'remember' } } },
    ...ENDS,
  },
});

/** In the order in which they can be met. */
export const ENOUGH_CURRENT_QUESTIONS = [
  'system',
  'aim',
  'scale',
  'draw',
  'fleet',
  'measured',
  'moving',
  'coaches',
  'accessories',
  'supply-label',
  'unit-label',
  'rails',
  'own-use',
] as const satisfies readonly QuestionId[];
