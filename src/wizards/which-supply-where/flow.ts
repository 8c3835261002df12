// "Which supply goes on which unit?": two units, two supplies. Results are derived in result.ts.
import { setup } from 'xstate';
import { askSystem, nothingToMove, SCOPE_ENDS, SCOPE_GUARDS, surerBy, TYPES, wants } from '../planning/index.ts';

export const whichSupplyWhere = setup({
  types: TYPES,
  guards: {
    ...SCOPE_GUARDS,
    nothingToMove,
    wants,
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
    'supply-two': { on: { 'user.answer': 'surer' } },
    surer: surerBy('fleet', 'busier'),
    fleet: {
      on: {
        'user.answer': [{ guard: 'nothingToMove', target: 'surer' }, { target: 'moving' }],
      },
    },
    moving: { on: { 'user.answer': 'sound' } },
    sound: { on: { 'user.answer': 'surer' } },
    busier: { on: { 'user.answer': 'surer' } },
    ...SCOPE_ENDS,
  },
});
