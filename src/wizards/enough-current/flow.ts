// "Is my power enough?": one state a question. After six there is a quick answer, the state `surer`; each further question comes back to it.
// In which order those are offered: surer.ts. What is computed is derived from the answers in reckoning.ts and result.ts.
import { setup } from 'xstate';
import { askSystem, chose, nothingToMove, SCOPE_ENDS, SCOPE_GUARDS, surerBy, TYPES, wants } from '../planning/index.ts';

export const enoughCurrent = setup({
  types: TYPES,
  guards: {
    ...SCOPE_GUARDS,
    knowsAmperes: chose('draw', 'measured'),
    isDivided: chose('divided', 'divided'),
    isPlanned: chose('divided', 'planned'),
    nothingToMove,
    wants,
  },
}).createMachine({
  id: 'enough-current',
  initial: 'system',
  states: {
    system: askSystem('scale'),
    scale: { on: { 'user.answer': 'fleet' } },
    fleet: {
      on: {
        'user.answer': [{ guard: 'nothingToMove', target: 'supply-label' }, { target: 'moving' }],
      },
    },
    moving: { on: { 'user.answer': 'supply-label' } },
    'supply-label': { on: { 'user.answer': 'unit-label' } },
    'unit-label': { on: { 'user.answer': 'surer' } },
    surer: surerBy(
      'coaches',
      'sound',
      'accessories',
      'rails',
      'own-use',
      'draw',
      'boosters',
      'divided',
      'aim',
      'evening',
    ),
    coaches: { on: { 'user.answer': 'surer' } },
    sound: { on: { 'user.answer': 'surer' } },
    accessories: { on: { 'user.answer': 'surer' } },
    rails: { on: { 'user.answer': 'surer' } },
    'own-use': { on: { 'user.answer': 'surer' } },
    draw: {
      on: {
        'user.answer': [{ guard: 'knowsAmperes', target: 'measured' }, { target: 'surer' }],
      },
    },
    measured: { on: { 'user.answer': 'surer' } },
    boosters: { on: { 'user.answer': 'surer' } },
    divided: {
      on: {
        'user.answer': [
          { guard: 'isDivided', target: 'our-districts' },
          { guard: 'isPlanned', target: 'plan' },
          { target: 'surer' },
        ],
      },
    },
    'our-districts': { on: { 'user.answer': 'surer' } },
    plan: { on: { 'user.answer': 'surer' } },
    aim: { on: { 'user.answer': 'surer' } },
    evening: { on: { 'user.answer': 'surer' } },
    ...SCOPE_ENDS,
  },
});
