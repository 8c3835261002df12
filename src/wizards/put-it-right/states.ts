// "Put it right": one statechart for every complaint. What to do next is computed from what is known; the states are what a
// person is doing: looking for danger, saying what is at hand, answering, looking at a proposal, mending, proving it.
import type { SnapshotFrom } from 'xstate';
import { assign, setup } from 'xstate';
import type { NextStep, Seen, Tool } from '../../engine/index.ts';
import type { ComplaintId } from './faults/index.ts';
import { stepOf } from './step.ts';

/** What a last look at isolation or phase has shown; `cannot`: not looked, or there is one part only. */
export const ISOLATION = ['fine', 'one-rail-joined', 'both-rails-joined', 'cannot'] as const;
export type Isolation = (typeof ISOLATION)[number];
export const PHASE = ['fine', 'reversed', 'cannot'] as const;
export type Phase = (typeof PHASE)[number];

export interface WalkContext {
  readonly complaint: ComplaintId;
  /** In the order given. */
  readonly answers: readonly Seen[];
  readonly skipped: readonly string[];
  /** Undefined until it has been said. */
  readonly tools: readonly Tool[] | undefined;
  /** Fix classes that did not help. */
  readonly tried: readonly string[];
  /** The fix class that is being mended. */
  readonly doing: string | undefined;
  /** Fix classes that helped. */
  readonly fixed: readonly string[];
  readonly isolation: Isolation | undefined;
  readonly phase: Phase | undefined;
  /** What follows from all that; undefined while something is mended or has helped. */
  readonly next: NextStep | undefined;
}

export type WalkEvent =
  | { readonly type: 'user.answer'; readonly answer: Seen }
  | { readonly type: 'user.cannot'; readonly check: string }
  | { readonly type: 'user.knows'; readonly answers: readonly Seen[]; readonly skipped: readonly string[] }
  | { readonly type: 'user.tools'; readonly tools: readonly Tool[] }
  | { readonly type: 'user.start'; readonly fixClass: string }
  | { readonly type: 'user.fixed' }
  | { readonly type: 'user.not-helped'; readonly fixClass: string }
  | { readonly type: 'user.isolation'; readonly found: Isolation }
  | { readonly type: 'user.phase'; readonly found: Phase };

/** Another fault that the last look has shown: the fix class to go on with. */
export function secondFault({ isolation, phase }: Pick<WalkContext, 'isolation' | 'phase'>): string | undefined {
  if (isolation === 'one-rail-joined') return 'one-rail';
  if (isolation === 'both-rails-joined') return 'second-path';
  return phase === 'reversed' ? 'reversed' : undefined;
}

const TYPES: { context: WalkContext; events: WalkEvent; input: { readonly complaint: ComplaintId } } = {
  context: {
    complaint: 'stops-at-gap',
    answers: [],
    skipped: [],
    tools: undefined,
    tried: [],
    doing: undefined,
    fixed: [],
    isolation: undefined,
    phase: undefined,
    next: undefined,
  },
  events: { type: 'user.fixed' },
  input: { complaint: 'stops-at-gap' },
};

const isFirst = (next: NextStep | undefined): boolean => next?.kind === 'ask' && next.because === 'first';
const isDanger = (next: NextStep | undefined): boolean => next?.kind === 'fix' && next.danger !== undefined;

export const putItRight = setup({
  types: TYPES,
  guards: {
    isMending: ({ context }) => context.doing !== undefined,
    findsSecondFault: ({ context }) => context.fixed.length > 0 && secondFault(context) !== undefined,
    isProven: ({ context }) =>
      context.fixed.length > 0 && context.isolation !== undefined && context.phase !== undefined,
    hasHelped: ({ context }) => context.fixed.length > 0,
    meetsDanger: ({ context }) => isDanger(context.next),
    looksForDanger: ({ context }) => isFirst(context.next),
    hasNotSaidTools: ({ context }) => context.tools === undefined,
    asks: ({ context }) => context.next?.kind === 'ask',
    proposes: ({ context }) => context.next?.kind === 'fix',
  },
  actions: {
    reckon: assign(({ context }) => ({
      next: context.doing === undefined && context.fixed.length === 0 ? stepOf(context) : undefined,
    })),
    answer: assign(({ context, event }) =>
      event.type === 'user.answer'
        ? { answers: [...context.answers.filter(({ check }) => check !== event.answer.check), event.answer] }
        : {},
    ),
    cannot: assign(({ context, event }) =>
      event.type === 'user.cannot' ? { skipped: [...context.skipped, event.check] } : {},
    ),
    know: assign(({ context, event }) =>
      event.type === 'user.knows'
        ? { answers: [...context.answers, ...event.answers], skipped: [...context.skipped, ...event.skipped] }
        : {},
    ),
    takeTools: assign(({ event }) => (event.type === 'user.tools' ? { tools: event.tools } : {})),
    start: assign(({ event }) => (event.type === 'user.start' ? { doing: event.fixClass } : {})),
    setAside: assign(({ context, event }) =>
      event.type === 'user.not-helped' ? { tried: [...context.tried, event.fixClass], doing: undefined } : {},
    ),
    note: assign(({ context }) => ({
      fixed: context.doing === undefined ? context.fixed : [...context.fixed, context.doing],
      doing: undefined,
      isolation: undefined,
      phase: undefined,
    })),
    lookAtIsolation: assign(({ event }) => (event.type === 'user.isolation' ? { isolation: event.found } : {})),
    lookAtPhase: assign(({ event }) => (event.type === 'user.phase' ? { phase: event.found } : {})),
  },
}).createMachine({
  id: 'put-it-right',
  context: ({ input }) => ({ ...TYPES.context, complaint: input.complaint }),
  initial: 'deciding',
  states: {
    deciding: {
      entry: 'reckon',
      always: [
        { guard: 'isMending', target: 'fixing' },
        { guard: 'findsSecondFault', target: 'proposing' },
        { guard: 'isProven', target: 'solved' },
        { guard: 'hasHelped', target: 'verifying' },
        { guard: 'meetsDanger', target: 'proposing' },
        { guard: 'looksForDanger', target: 'safety' },
        { guard: 'hasNotSaidTools', target: 'equipping' },
        { guard: 'asks', target: 'asking' },
        { guard: 'proposes', target: 'proposing' },
        { target: 'handed-on' },
      ],
    },
    safety: {
      on: {
        'user.answer': { target: 'deciding', actions: 'answer' },
        'user.cannot': { target: 'deciding', actions: 'cannot' },
        'user.knows': { target: 'deciding', actions: 'know' },
      },
    },
    equipping: { on: { 'user.tools': { target: 'deciding', actions: 'takeTools' } } },
    asking: {
      on: {
        'user.answer': { target: 'deciding', actions: 'answer' },
        'user.cannot': { target: 'deciding', actions: 'cannot' },
        'user.knows': { target: 'deciding', actions: 'know' },
        'user.start': { target: 'deciding', actions: 'start' },
        'user.not-helped': { target: 'deciding', actions: 'setAside' },
      },
    },
    proposing: {
      on: {
        'user.knows': { target: 'deciding', actions: 'know' },
        'user.start': { target: 'deciding', actions: 'start' },
        'user.not-helped': { target: 'deciding', actions: 'setAside' },
      },
    },
    fixing: {
      on: {
        'user.fixed': { target: 'deciding', actions: 'note' },
        'user.not-helped': { target: 'deciding', actions: 'setAside' },
      },
    },
    verifying: {
      on: {
        'user.isolation': { target: 'deciding', actions: 'lookAtIsolation' },
        'user.phase': { target: 'deciding', actions: 'lookAtPhase' },
      },
    },
    solved: { type: 'final' },
    // Not final: a person may still know more, or try one of the causes that are left.
    'handed-on': {
      on: {
        'user.knows': { target: 'deciding', actions: 'know' },
        'user.start': { target: 'deciding', actions: 'start' },
        'user.not-helped': { target: 'deciding', actions: 'setAside' },
      },
    },
  },
});

/** The states a person can be in: all but the one that decides by itself. */
export type WalkStateId = Exclude<SnapshotFrom<typeof putItRight>['value'], 'deciding'>;
