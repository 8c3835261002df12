// "Is my power enough?": one state a question. What is computed is derived from the answers in result.ts.
import { setup } from 'xstate';
import { askSystem, chose, ENDS, nothingToMove, SCOPE_GUARDS, TYPES } from '../planning/index.ts';

export const enoughCurrent = setup({
  types: TYPES,
  guards: {
    ...SCOPE_GUARDS,
    knowsAmperes: chose('draw', 'measured'),
    nothingToMove,
  },
}).createMachine({
  id: 'enough-current',
  initial: 'system',
  states: {
    system: askSystem('aim'),
    aim: { on: { 'user.answer': 'scale' } },
    scale: { on: { 'user.answer': 'draw' } },
    draw: {
      on: {
        'user.answer': [{ guard: 'knowsAmperes', target: 'measured' }, { target: 'fleet' }],
      },
    },
    fleet: {
      on: {
        'user.answer': [{ guard: 'nothingToMove', target: 'coaches' }, { target: 'moving' }],
      },
    },
    measured: { on: { 'user.answer': 'moving' } },
    moving: { on: { 'user.answer': 'coaches' } },
    coaches: { on: { 'user.answer': 'accessories' } },
    accessories: { on: { 'user.answer': 'supply-label' } },
    'supply-label': { on: { 'user.answer': 'unit-label' } },
    'unit-label': { on: { 'user.answer': 'rails' } },
    rails: { on: { 'user.answer': 'own-use' } },
    'own-use': { on: { 'user.answer': 'worked-out' } },
    ...ENDS,
  },
});
