// "How thick must the wire be? How many feeds?" Results are derived in result.ts.
import { setup } from 'xstate';
import { askSystem, SCOPE_ENDS, SCOPE_GUARDS, surerBy, TYPES, wants } from '../planning/index.ts';

export const wireIt = setup({
  types: TYPES,
  guards: { ...SCOPE_GUARDS, wants },
}).createMachine({
  id: 'wire-it',
  initial: 'system',
  states: {
    system: askSystem('scale'),
    scale: { on: { 'user.answer': 'wire-need' } },
    'wire-need': { on: { 'user.answer': 'supply-label' } },
    'supply-label': { on: { 'user.answer': 'bus' } },
    bus: { on: { 'user.answer': 'track' } },
    track: { on: { 'user.answer': 'surer' } },
    // What decides most stands first; one pair of wires has neither feeders to count nor a shape, and its answer does not offer them.
    surer: surerBy('feeders', 'rail-kind', 'bus-shape'),
    feeders: { on: { 'user.answer': 'surer' } },
    'rail-kind': { on: { 'user.answer': 'surer' } },
    'bus-shape': { on: { 'user.answer': 'surer' } },
    ...SCOPE_ENDS,
  },
});
