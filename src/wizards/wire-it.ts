// "How thick must the wire be? How many feeds?" Results are derived in wire-it-result.ts.
import { assign, setup } from 'xstate';
import { chose, TYPES } from './machine.ts';
import type { QuestionId } from './questions.ts';

export const wireIt = setup({
  types: TYPES,
  actions: { remember: assign({ answers: ({ context, event }) => ({ ...context.answers, ...event.answers }) }) },
  guards: {
    threeRail: chose('system', 'three-rail'),
    battery: chose('system', 'battery'),
    analogue: chose('system', 'analogue'),
    knowsFeedersAndRail: chose('wire-way', 'detailed'),
  },
}).createMachine({
  id: 'wire-it',
  context: { answers: {} },
  initial: 'system',
  states: {
    system: {
      on: {
        'user.answer': [
          { guard: 'threeRail', target: 'out-of-scope-three-rail', actions: 'remember' },
          { guard: 'battery', target: 'out-of-scope-battery', actions: 'remember' },
          { guard: 'analogue', target: 'out-of-scope-analogue', actions: 'remember' },
          { target: 'scale', actions: 'remember' },
        ],
      },
    },
    scale: { on: { 'user.answer': { target: 'wire-need', actions: 'remember' } } },
    'wire-need': { on: { 'user.answer': { target: 'bus', actions: 'remember' } } },
    bus: { on: { 'user.answer': { target: 'wire-way', actions: 'remember' } } },
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
    'worked-out': { type: 'final' },
    'out-of-scope-three-rail': { type: 'final' },
    'out-of-scope-battery': { type: 'final' },
    'out-of-scope-analogue': { type: 'final' },
  },
});

/** In the order in which they can be met. */
export const WIRE_IT_QUESTIONS = [
  'system',
  'scale',
  'wire-need',
  'bus',
  'wire-way',
  'bus-shape',
  'feeders',
  'rail-kind',
] as const satisfies readonly QuestionId[];
