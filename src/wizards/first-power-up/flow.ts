// "It is all connected: may I switch on?" One test of the sheet after the other. Nobody goes on past one that shows something else.
import { assign, initialTransition, type SnapshotFrom, setup, transition } from 'xstate';
import type { TestRow } from '../plan/index.ts';

/** What was seen in a row; `cannot`: nobody could look, and it stays unknown. */
export interface Seen {
  readonly row: string;
  readonly option: string;
  /** What was read on the meter, by what it is. */
  readonly values?: Readonly<Record<string, number>> | undefined;
}

export const CANNOT = 'cannot';

interface Context {
  readonly rows: readonly TestRow[];
  readonly mayPower: boolean;
  readonly seen: readonly Seen[];
}

type PowerUpEvent =
  | { readonly type: 'user.saw'; readonly option: string; readonly values?: Seen['values'] }
  | { readonly type: 'user.passed-over' }
  | { readonly type: 'user.undo' };

const rowAt = ({ rows, seen }: Pick<Context, 'rows' | 'seen'>): TestRow | undefined => rows[seen.length];
const isLast = ({ rows, seen }: Context): boolean => seen.length === rows.length - 1;
const isExpected = ({ context, event }: { context: Context; event: PowerUpEvent }): boolean =>
  event.type === 'user.saw' && event.option === rowAt(context)?.expected;
const mayPassOver = ({ context }: { context: Context }): boolean => rowAt(context)?.must === false;

const TYPES: { context: Context; events: PowerUpEvent; input: Pick<Context, 'rows' | 'mayPower'> } = {
  context: { rows: [], mayPower: false, seen: [] },
  events: { type: 'user.undo' },
  input: { rows: [], mayPower: false },
};

export const firstPowerUp = setup({
  types: TYPES,
  guards: {
    'nothing may be powered': ({ context }) => !context.mayPower || context.rows.length === 0,
    'the last as expected': (args) => isExpected(args) && isLast(args.context),
    'as expected': isExpected,
    'something else': ({ context, event }) =>
      event.type === 'user.saw' && rowAt(context)?.options.includes(event.option) === true,
    'the last may be passed over': (args) => mayPassOver(args) && isLast(args.context),
    'may be passed over': mayPassOver,
    'something was seen': ({ context }) => context.seen.length > 0,
  },
  actions: {
    note: assign(({ context, event }) => {
      const row = rowAt(context)?.id;
      if (row === undefined || event.type === 'user.undo') return {};
      const option = event.type === 'user.saw' ? event.option : CANNOT;
      const values = event.type === 'user.saw' ? event.values : undefined;
      return { seen: [...context.seen, { row, option, values }] };
    }),
    forget: assign(({ context }) => ({ seen: context.seen.slice(0, -1) })),
  },
}).createMachine({
  id: 'first-power-up',
  context: ({ input }) => ({ ...input, seen: [] }),
  initial: 'beginning',
  states: {
    beginning: { always: [{ guard: 'nothing may be powered', target: 'not-yet' }, { target: 'asking' }] },
    // What stands at the top of the plan comes first.
    'not-yet': { type: 'final' },
    asking: {
      on: {
        'user.saw': [
          { guard: 'the last as expected', actions: 'note', target: 'recorded' },
          { guard: 'as expected', actions: 'note', target: 'asking' },
          { guard: 'something else', actions: 'note', target: 'differs' },
        ],
        'user.passed-over': [
          { guard: 'the last may be passed over', actions: 'note', target: 'recorded' },
          { guard: 'may be passed over', actions: 'note', target: 'asking' },
        ],
        'user.undo': { guard: 'something was seen', actions: 'forget', target: 'asking' },
      },
    },
    // Put right, and the same test once more.
    differs: { on: { 'user.undo': { actions: 'forget', target: 'asking' } } },
    recorded: { on: { 'user.undo': { actions: 'forget', target: 'asking' } } },
  },
});

export type PowerUpState = 'not-yet' | 'asking' | 'differs' | 'recorded';

export interface PowerUp {
  readonly state: PowerUpState;
  readonly seen: readonly Seen[];
  /** The row that is asked, or that showed something else. */
  readonly row: TestRow | undefined;
  /** Of what is recorded: whether every row showed what was expected; `open`: some were passed over, and are not known. */
  readonly verdict: 'proven' | 'open' | undefined;
}

/** Builds the state from what was seen, row by row; what does not fit the rows is left out. Never throws. */
export function replayPowerUp({ rows, mayPower }: Pick<Context, 'rows' | 'mayPower'>, seen: readonly Seen[]): PowerUp {
  let [snapshot]: [SnapshotFrom<typeof firstPowerUp>, unknown] = initialTransition(firstPowerUp, { rows, mayPower });
  for (const { row, option, values } of seen) {
    if (rowAt(snapshot.context)?.id !== row) break;
    const event: PowerUpEvent = option === CANNOT ? { type: 'user.passed-over' } : { type: 'user.saw', option, values };
    if (!snapshot.can(event)) break;
    [snapshot] = transition(firstPowerUp, snapshot, event);
  }
  return told(snapshot);
}

function told({ value, context }: SnapshotFrom<typeof firstPowerUp>): PowerUp {
  const state: PowerUpState = value === 'beginning' ? 'asking' : value;
  const { rows, seen } = context;
  const at = state === 'differs' ? seen.length - 1 : seen.length;
  const open = seen.some(({ option }) => option === CANNOT);
  return {
    state,
    seen,
    row: state === 'not-yet' ? undefined : rows[at],
    verdict: state === 'recorded' ? verdictOf(open) : undefined,
  };
}

const verdictOf = (open: boolean): PowerUp['verdict'] => (open ? 'open' : 'proven');
