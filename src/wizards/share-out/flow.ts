// "Where do I divide the layout?": a shape, trains and two supplies; the labels make it surer afterwards. Results are derived in result.ts.
import { setup } from 'xstate';
import { askSystem, SCOPE_ENDS, SCOPE_GUARDS, surerBy, TYPES, wants } from '../planning/index.ts';

export const shareOut = setup({
  types: TYPES,
  guards: { ...SCOPE_GUARDS, wants },
}).createMachine({
  id: 'share-out',
  initial: 'system',
  states: {
    system: askSystem('scale'),
    scale: { on: { 'user.answer': 'shape' } },
    shape: { on: { 'user.answer': 'fleet' } },
    fleet: { on: { 'user.answer': 'both-amps' } },
    'both-amps': { on: { 'user.answer': 'surer' } },
    surer: surerBy('aim', 'station-label', 'booster-label', 'supply-one', 'supply-two', 'moving', 'sound', 'coaches'),
    aim: { on: { 'user.answer': 'surer' } },
    'station-label': { on: { 'user.answer': 'surer' } },
    'booster-label': { on: { 'user.answer': 'surer' } },
    'supply-one': { on: { 'user.answer': 'surer' } },
    'supply-two': { on: { 'user.answer': 'surer' } },
    moving: { on: { 'user.answer': 'surer' } },
    sound: { on: { 'user.answer': 'surer' } },
    coaches: { on: { 'user.answer': 'surer' } },
    ...SCOPE_ENDS,
  },
});
