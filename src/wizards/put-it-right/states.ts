// "Put it right": one statechart for every complaint. What to do next is computed from what is known; the states are what a
// person is doing: looking for danger, saying what is at hand, answering, looking at a proposal, mending, proving it.
import type { SnapshotFrom } from 'xstate';
import { assign, setup } from 'xstate';
import type { NextStep, Seen, Tool } from '../../engine/index.ts';
import type { ComplaintId } from './model/index.ts';
import { comesAndGoes, leavesATrace, needsLastLook, tellsOfParts } from './model/index.ts';
import { rowOfCheck, stepOf } from './step.ts';

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
  /** Checks answered in this sitting: only they can show that something is safe. */
  readonly trusted: ReadonlySet<string>;
  /** Whether what is known already has been told, or passed over. */
  readonly toldFirst: boolean;
  /** Undefined until it has been said. */
  readonly tools: readonly Tool[] | undefined;
  /** Fix classes that did not help. */
  readonly tried: readonly string[];
  /** Of those, what was left as it was changed. */
  readonly left: readonly string[];
  /** The fix class that is being mended. */
  readonly doing: string | undefined;
  /** The fix class that did not help and is to be put back. */
  readonly undoing: string | undefined;
  /** Fix classes that helped. */
  readonly fixed: readonly string[];
  /** A trouble that comes and goes has stayed away long enough. */
  readonly stayedAway: boolean;
  readonly isolation: Isolation | undefined;
  readonly phase: Phase | undefined;
  /** What follows from all that; undefined while something is mended or has helped. */
  readonly next: NextStep | undefined;
}

export type WalkEvent =
  | { readonly type: 'user.answer'; readonly answer: Seen }
  | { readonly type: 'user.cannot'; readonly check: string }
  | { readonly type: 'user.knows'; readonly answers: readonly Seen[]; readonly skipped: readonly string[] }
  | { readonly type: 'user.told' }
  | { readonly type: 'user.tools'; readonly tools: readonly Tool[] }
  | { readonly type: 'user.start'; readonly fixClass: string }
  | { readonly type: 'user.fixed' }
  | { readonly type: 'user.not-helped'; readonly fixClass: string }
  | { readonly type: 'user.put-back'; readonly done: boolean }
  | { readonly type: 'user.stayed-away' }
  | { readonly type: 'user.came-back' }
  | { readonly type: 'user.isolation'; readonly found: Isolation }
  | { readonly type: 'user.phase'; readonly found: Phase };

/** Another fault that the last look has shown: the fix class to go on with. */
export function secondFault({ isolation, phase }: Pick<WalkContext, 'isolation' | 'phase'>): string | undefined {
  if (isolation === 'one-rail-joined') return 'one-rail';
  if (isolation === 'both-rails-joined') return 'second-path';
  return phase === 'reversed' ? 'reversed' : undefined;
}

/** What holds through a whole walk. */
export type WalkInput = Pick<WalkContext, 'complaint' | 'trusted' | 'toldFirst' | 'tools' | 'left'>;

const TYPES: { context: WalkContext; events: WalkEvent; input: WalkInput } = {
  context: {
    complaint: 'stops-at-gap',
    answers: [],
    skipped: [],
    trusted: new Set(),
    toldFirst: false,
    tools: undefined,
    tried: [],
    left: [],
    doing: undefined,
    undoing: undefined,
    fixed: [],
    stayedAway: false,
    isolation: undefined,
    phase: undefined,
    next: undefined,
  },
  events: { type: 'user.fixed' },
  input: { complaint: 'stops-at-gap', trusted: new Set(), toldFirst: false, tools: undefined, left: [] },
};

const isFirst = (next: NextStep | undefined): boolean => next?.kind === 'ask' && next.because === 'first';
/** A check that needs something at hand: only then is it worth asking what there is. */
const needsATool = (next: NextStep | undefined): boolean =>
  next?.kind === 'ask' && rowOfCheck(next.check)?.tool !== 'eyes';
/** What is still looked at once more: nothing that was looked at; nor whether the sides agree by whoever has said to have neither lamps nor meter. */
export function lookLeft({ isolation, phase, tools }: WalkContext): 'isolation' | 'phase' | undefined {
  if (isolation === undefined) return 'isolation';
  const can = tools === undefined || tools.includes('lamps') || tools.includes('multimeter');
  return phase === undefined && can ? 'phase' : undefined;
}

/** Whether a last look was left out, said so or for want of tools. */
export const isUnproven = (context: WalkContext): boolean =>
  hasLastLook(context) && [context.isolation, context.phase].some((found) => found === undefined || found === 'cannot');
/** Nobody looks at gaps who has told of none: with one part there is no boundary. */
const hasLastLook = ({ complaint, answers, fixed }: WalkContext): boolean =>
  tellsOfParts(complaint, answers) && fixed.some(needsLastLook);
const isDanger = (next: NextStep | undefined): boolean => next?.kind === 'fix' && next.danger !== undefined;

export const putItRight = setup({
  types: TYPES,
  guards: {
    isMending: ({ context }) => context.doing !== undefined,
    isPuttingBack: ({ context }) => context.undoing !== undefined,
    isWaiting: ({ context }) => context.fixed.length > 0 && !context.stayedAway && comesAndGoes(context),
    findsSecondFault: ({ context }) => context.fixed.length > 0 && secondFault(context) !== undefined,
    isProven: ({ context }) => context.fixed.length > 0 && (lookLeft(context) === undefined || !hasLastLook(context)),
    leavesATrace: ({ event }) => event.type === 'user.not-helped' && leavesATrace(event.fixClass),
    hasHelped: ({ context }) => context.fixed.length > 0,
    meetsDanger: ({ context }) => isDanger(context.next),
    looksForDanger: ({ context }) => isFirst(context.next),
    hasNotTold: ({ context }) => !context.toldFirst,
    hasNotSaidTools: ({ context }) => context.tools === undefined && needsATool(context.next),
    asks: ({ context }) => context.next?.kind === 'ask',
    proposes: ({ context }) => context.next?.kind === 'fix',
  },
  actions: {
    reckon: assign(({ context }) => ({
      next:
        context.doing === undefined && context.undoing === undefined && context.fixed.length === 0
          ? stepOf(context)
          : undefined,
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
    beginPuttingBack: assign(({ event }) =>
      event.type === 'user.not-helped' ? { undoing: event.fixClass, doing: undefined } : {},
    ),
    putBack: assign(({ context, event }) =>
      event.type === 'user.put-back' && context.undoing !== undefined
        ? {
            tried: [...context.tried, context.undoing],
            left: event.done ? context.left : [...context.left, context.undoing],
            undoing: undefined,
          }
        : {},
    ),
    tell: assign(() => ({ toldFirst: true })),
    stayAway: assign(() => ({ stayedAway: true })),
    // It came back: what helped for a while did not mend it.
    comeBack: assign(({ context }) => ({
      tried: [...context.tried, ...context.fixed],
      fixed: [],
      isolation: undefined,
      phase: undefined,
    })),
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
  context: ({ input }) => ({ ...TYPES.context, ...input }),
  initial: 'deciding',
  states: {
    deciding: {
      entry: 'reckon',
      always: [
        { guard: 'isMending', target: 'fixing' },
        { guard: 'isPuttingBack', target: 'putting-back' },
        { guard: 'findsSecondFault', target: 'proposing' },
        { guard: 'isWaiting', target: 'waiting' },
        { guard: 'isProven', target: 'solved' },
        { guard: 'hasHelped', target: 'verifying' },
        { guard: 'meetsDanger', target: 'proposing' },
        { guard: 'looksForDanger', target: 'safety' },
        { guard: 'hasNotTold', target: 'telling' },
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
    // What a person knows already, told at once and in any order; one tap passes it over.
    telling: {
      on: {
        'user.told': { target: 'deciding', actions: 'tell' },
        'user.knows': { target: 'deciding', actions: ['know', 'tell'] },
        'user.start': { target: 'deciding', actions: ['start', 'tell'] },
        'user.not-helped': { target: 'deciding', actions: ['setAside', 'tell'] },
      },
    },
    equipping: {
      on: {
        'user.tools': { target: 'deciding', actions: 'takeTools' },
        'user.knows': { target: 'deciding', actions: 'know' },
        'user.start': { target: 'deciding', actions: 'start' },
        'user.not-helped': { target: 'deciding', actions: 'setAside' },
      },
    },
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
        'user.not-helped': [
          { guard: 'leavesATrace', target: 'deciding', actions: 'beginPuttingBack' },
          { target: 'deciding', actions: 'setAside' },
        ],
      },
    },
    // A repair that did not help is undone, or it becomes a second fault.
    'putting-back': { on: { 'user.put-back': { target: 'deciding', actions: 'putBack' } } },
    // A trouble that comes and goes is not gone because it is not there now.
    waiting: {
      on: {
        'user.stayed-away': { target: 'deciding', actions: 'stayAway' },
        'user.came-back': { target: 'deciding', actions: 'comeBack' },
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
