// "It is all connected: may I switch on?" One test of the sheet after the other. Nobody goes on past one that shows something else.
import { assign, initialTransition, type SnapshotFrom, setup, transition } from 'xstate';
import type { TestRow } from '../plan/index.ts';
import { isSame } from './same-place.ts';

/** What was seen in a row; `cannot`: nobody could look, and it stays unknown. */
export interface Seen {
  readonly row: string;
  readonly option: string;
  /** What was read on the meter, by what it is. */
  readonly values?: Readonly<Record<string, number>> | undefined;
}

export const CANNOT = 'cannot';
/** No coin where the load test was not made: it was not asked for. */
export const NO_COIN = 'no-coin';
/** Nobody looked. */
export const isUnseen = (option: string): boolean => option === CANNOT || option === NO_COIN;

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

/** A coin only where the load test of the same district showed what it should: else its rows are passed over with that. */
function withoutCoins(rows: Context['rows'], seen: Context['seen']): Context['seen'] {
  const row = rowAt({ rows, seen });
  if (row === undefined || !isCoin(row) || isLoadTestGood(rows, seen, row)) return seen;
  return withoutCoins(rows, [...seen, { row: row.id, option: NO_COIN }]);
}
const isCoin = ({ kind }: TestRow): boolean => kind === 'coin-near' || kind === 'coin-far';
const isLoadTestGood = (rows: Context['rows'], seen: Context['seen'], { where }: TestRow): boolean =>
  rows.some((one, at) => one.kind === 'load-test' && isSame(one.where, where) && seen[at]?.option === one.expected);

const withNext = ({ rows, seen }: Context, next: Seen): Context['seen'] => withoutCoins(rows, [...seen, next]);
/** Whether nothing is left to ask once this is noted. */
const isLast = (context: Context, option: string): boolean =>
  withNext(context, { row: rowAt(context)?.id ?? '', option }).length === context.rows.length;
const isExpected = ({ context, event }: { context: Context; event: PowerUpEvent }): boolean =>
  event.type === 'user.saw' && event.option === rowAt(context)?.expected;
const optionOf = (event: PowerUpEvent): string => (event.type === 'user.saw' ? event.option : CANNOT);
function nextSeen(context: Context, event: PowerUpEvent): Seen | undefined {
  const row = rowAt(context)?.id;
  if (row === undefined || event.type === 'user.undo') return undefined;
  const values = event.type === 'user.saw' ? event.values : undefined;
  return { row, option: optionOf(event), values };
}
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
    'the last as expected': (args) => isExpected(args) && isLast(args.context, optionOf(args.event)),
    'as expected': isExpected,
    'something else': ({ context, event }) =>
      event.type === 'user.saw' && rowAt(context)?.options.includes(event.option) === true,
    'the last may be passed over': (args) => mayPassOver(args) && isLast(args.context, CANNOT),
    'may be passed over': mayPassOver,
    'something was seen': ({ context }) => context.seen.length > 0,
  },
  actions: {
    note: assign(({ context, event }) => {
      const next = nextSeen(context, event);
      return next === undefined ? {} : { seen: withNext(context, next) };
    }),
    // What differs stays the last.
    stop: assign(({ context, event }) => {
      const next = nextSeen(context, event);
      return next === undefined ? {} : { seen: [...context.seen, next] };
    }),
    // What was passed over by itself goes with what it followed from.
    forget: assign(({ context: { seen } }) => ({
      seen: seen.slice(
        0,
        Math.max(
          0,
          seen.findLastIndex(({ option }) => option !== NO_COIN),
        ),
      ),
    })),
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
          { guard: 'something else', actions: 'stop', target: 'differs' },
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
    if (option === NO_COIN) continue;
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
  const open = seen.some(({ option }) => isUnseen(option));
  return {
    state,
    seen,
    row: state === 'not-yet' ? undefined : rows[at],
    verdict: state === 'recorded' ? verdictOf(open) : undefined,
  };
}

const verdictOf = (open: boolean): PowerUp['verdict'] => (open ? 'open' : 'proven');
