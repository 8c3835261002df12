// "How thick must the wire be? How many feeds?" Results are derived in result.ts.
import { setup } from 'xstate';
import { askSystem, chose, ENDS, SCOPE_GUARDS, TYPES } from '../planning/index.ts';

export const wireIt = setup({
  types: TYPES,
  guards: {
    ...SCOPE_GUARDS,
    fedByOnePair: chose('feed-by', 'pair'),
    knowsFeedersAndRail: chose('wire-way', 'detailed'),
  },
}).createMachine({
  id: 'wire-it',
  initial: 'system',
  states: {
    system: askSystem('scale'),
    scale: { on: { 'user.answer': 'wire-need' } },
    'wire-need': { on: { 'user.answer': 'supply-label' } },
    'supply-label': { on: { 'user.answer': 'bus' } },
    bus: { on: { 'user.answer': 'track' } },
    // One pair of wires has neither a shape nor feeders to count.
    track: {
      on: {
        'user.answer': [{ guard: 'fedByOnePair', target: 'rail-kind' }, { target: 'wire-way' }],
      },
    },
    'wire-way': {
      on: {
        'user.answer': [{ guard: 'knowsFeedersAndRail', target: 'bus-shape' }, { target: 'worked-out' }],
      },
    },
    'bus-shape': { on: { 'user.answer': 'feeders' } },
    feeders: { on: { 'user.answer': 'rail-kind' } },
    'rail-kind': { on: { 'user.answer': 'worked-out' } },
    ...ENDS,
  },
});
