// "How thick must the wire be? How many feeds?" Results are derived in wire-it-result.ts.
import { assign, setup } from 'xstate';
import type { QuestionId } from '../planning/index.ts';
import { askSystem, chose, ENDS, SCOPE_GUARDS, TYPES } from '../planning/index.ts';

export const wireIt = setup({
  types: TYPES,
  actions: { remember: assign({ answers: ({ context, event }) => ({ ...context.answers, ...event.answers }) }) },
  guards: {
    ...SCOPE_GUARDS,
    fedByOnePair: chose('feed-by', 'pair'),
    knowsFeedersAndRail: chose('wire-way', 'detailed'),
  },
}).createMachine({
  id: 'wire-it',
  context: { answers: {} },
  initial: 'system',
  states: {
    system: askSystem('scale'),
    scale: { on: { 'user.answer': { target: 'wire-need', actions: 'remember' } } },
    'wire-need': { on: { 'user.answer': { target: 'bus', actions: 'remember' } } },
    bus: { on: { 'user.answer': { target: 'track', actions: 'remember' } } },
    // One pair of wires has neither a shape nor feeders to count.
    track: {
      on: {
        'user.answer': [
          { guard: 'fedByOnePair', target: 'rail-kind', actions: 'remember' },
          { target: 'wire-way', actions: 'remember' },
        ],
      },
    },
    'wire-way': {
      on: {
        'user.answer': [
          { guard: 'knowsFeedersAndRail', target: 'bus-shape', actions: 'remember' },
          { target: 'worked-out', actions: 'remember' },
        ],
      },
    },
    'bus-shape': { on: { 'user.answer': { target: 'feeders', actions: 'remember' } } },
    feeders: { on: { 'user.answer': { target: 'rail-kind', actions: 'remember' } } },
    'rail-kind': { on: { 'user.answer': { target: 'worked-out', actions: 'remember' } } },
    ...ENDS,
  },
});

/** In the order in which they can be met. */
export const WIRE_IT_QUESTIONS = [
  'system',
  'scale',
  'wire-need',
  'bus',
  'track',
  'wire-way',
  'bus-shape',
  'feeders',
  'rail-kind',
] as const satisfies readonly QuestionId[];
