// "Which supply goes on which unit?": two units, two supplies. Results are derived in result.ts.
import { setup } from 'xstate';
import { askSystem, ENDS, nothingToMove, SCOPE_GUARDS, TYPES } from '../planning/index.ts';

export const whichSupplyWhere = setup({
  types: TYPES,
  guards: {
    ...SCOPE_GUARDS,
    nothingToMove,
  },
}).createMachine({
  id: 'which-supply-where',
  initial: 'system',
  states: {
    system: askSystem('scale'),
    scale: { on: { 'user.answer': 'station-label' } },
    'station-label': { on: { 'user.answer': 'booster-label' } },
    'booster-label': { on: { 'user.answer': 'supply-one' } },
    'supply-one': { on: { 'user.answer': 'supply-two' } },
    'supply-two': { on: { 'user.answer': 'fleet' } },
    fleet: {
      on: {
        'user.answer': [{ guard: 'nothingToMove', target: 'busier' }, { target: 'moving' }],
      },
    },
    moving: { on: { 'user.answer': 'busier' } },
    busier: { on: { 'user.answer': 'worked-out' } },
    ...ENDS,
  },
});
