// The chart of "Put it right" walked with everything that a person can do in each of its states.
import { describe, expect, test } from 'vitest';
import type { SnapshotFrom } from 'xstate';
import { getInitialMicrosteps, getMicrosteps, initialTransition, transition } from 'xstate';
import { chartOf } from '../../src/wizards/chart.ts';
import type { ComplaintId } from '../../src/wizards/put-it-right/model/index.ts';
import type { WalkEvent } from '../../src/wizards/put-it-right/states.ts';
import { ISOLATION, PHASE, putItRight } from '../../src/wizards/put-it-right/states.ts';
import { rowOfCheck } from '../../src/wizards/put-it-right/step.ts';

type Snapshot = SnapshotFrom<typeof putItRight>;

const held = new Set<string>();
/** The chart with its guards watched: which of them ever let a way be taken. */
const watched = putItRight.provide({
  guards: Object.fromEntries(
    Object.entries(putItRight.implementations.guards).map(([name, guard]) => [
      name,
      (...given: Parameters<NonNullable<typeof guard>>) => {
        const holds = guard?.(...given) ?? false;
        if (holds) held.add(name);
        return holds;
      },
    ]),
  ),
});

const CHART = chartOf(putItRight);
const WAYS = CHART.states.flatMap(({ id, ways }) => ways.map((way) => ({ from: id, ...way })));

/** What a person can do where the walk stands: each answer of the check, a repair begun, helped or not, each last look. */
function acts({ context }: Snapshot): WalkEvent[] {
  const { next, doing = 'reversed' } = context;
  const check = next?.kind === 'ask' ? next.check : undefined;
  const options = check === undefined ? [] : (rowOfCheck(check)?.options ?? []);
  const fixClass = next?.kind === 'fix' ? next.fixClass : doing;
  return [
    ...(check === undefined
      ? []
      : [
          ...options.map((option): WalkEvent => ({ type: 'user.answer', answer: { check, option } })),
          { type: 'user.cannot', check } as const,
          { type: 'user.knows', answers: [], skipped: [check] } as const,
        ]),
    { type: 'user.tools', tools: ['wire', 'lamps'] },
    { type: 'user.knows', answers: [{ check: 'what-goes-dark', option: 'nothing-goes-off' }], skipped: [] },
    { type: 'user.start', fixClass },
    { type: 'user.fixed' },
    { type: 'user.told' },
    { type: 'user.put-back', done: true },
    { type: 'user.put-back', done: false },
    { type: 'user.stayed-away' },
    { type: 'user.came-back' },
    { type: 'user.not-helped', fixClass },
    ...ISOLATION.map((found): WalkEvent => ({ type: 'user.isolation', found })),
    ...PHASE.map((found): WalkEvent => ({ type: 'user.phase', found })),
  ];
}

const outline = ({ value, context }: Snapshot): string => {
  const { next, doing, undoing, fixed, isolation, phase, tools, tried, toldFirst, stayedAway } = context;
  const told = [isolation, phase, tools, tried.length > 0, toldFirst, stayedAway];
  return JSON.stringify([value, next?.kind, doing, undoing, fixed.length, told]);
};

/** Where a walk comes to in which nothing can be checked and nothing helps. */
function withNothingThatHelps(start: Snapshot): Snapshot {
  let [at] = transition(watched, start, { type: 'user.answer', answer: { check: 'danger-now', option: 'none' } });
  [at] = transition(watched, at, { type: 'user.told' });
  while (at.value !== 'handed-on') {
    const refuses = ({ type }: WalkEvent): boolean =>
      type === 'user.cannot' || type === 'user.not-helped' || (at.value === 'equipping' && type === 'user.tools');
    const here = at;
    const event = acts(here).find((one) => refuses(one) && here.can(one));
    if (event === undefined) throw new Error('neither a check nor a fix');
    [at] = transition(watched, at, event);
  }
  return at;
}

/** Most repairs that help one after the other; a further one meets nothing new. */
const MOST_FIXED = 2;

/** Goes on from the start as long as something new is met; every way taken, as "from on event to". */
function walkAll(complaint: ComplaintId): { ways: Set<string>; ends: Set<string> } {
  const ways = new Set<string>();
  const ends = new Set<string>();
  const met = new Set<string>();
  const note = (from: string, event: string | undefined, [first, ...rest]: readonly [Snapshot, unknown][]): void => {
    if (first === undefined) return;
    ways.add(`${from} on ${event} to ${first[0].value}`);
    note(String(first[0].value), undefined, rest);
  };
  const input = { complaint, trusted: new Set(['danger-now']), toldFirst: false, tools: undefined, left: [] };
  const [start] = initialTransition(watched, input);
  note(CHART.first, undefined, getInitialMicrosteps(watched, input).slice(1));
  const open: Snapshot[] = [start, withNothingThatHelps(start)];
  for (let at = open.shift(); at !== undefined; at = open.shift()) {
    const [from, { fixed }] = [at, at.context];
    if (met.has(outline(from)) || fixed.length > MOST_FIXED) continue;
    met.add(outline(from));
    if (from.status === 'done') ends.add(String(from.value));
    for (const event of acts(from).filter((one) => from.can(one))) {
      note(String(from.value), event.type, getMicrosteps(watched, from, event));
      open.push(transition(watched, from, event)[0]);
    }
  }
  return { ways, ends };
}

describe('the chart of "Put it right"', () => {
  // A trouble that comes and goes is waited for, any other is not.
  const walks = [walkAll('still-runs-past-gap'), walkAll('now-and-then')];
  const ways = new Set(walks.flatMap((one) => [...one.ways]));
  const ends = new Set(walks.flatMap((one) => [...one.ends]));

  test('leads to each of its states', () => {
    expect(CHART.states.map(({ id }) => id).sort()).toEqual(Object.keys(putItRight.states).sort());
  });

  test('meets every declared way, and takes none that is not declared', () => {
    const declared = new Set(WAYS.map(({ from, on, to }) => `${from} on ${on} to ${to}`));
    expect([...ways].sort()).toEqual([...declared].sort());
  });

  test('has each of its guards decide somewhere, and the last way is left where none does', () => {
    const decides = CHART.states.find(({ id }) => id === CHART.first)?.ways.map(({ when }) => when) ?? [];
    expect(decides.at(-1)).toBeUndefined();
    const elsewhere = WAYS.flatMap(({ from, when }) => (from === CHART.first || when === undefined ? [] : [when]));
    expect([...held].sort()).toEqual([...decides.slice(0, -1), ...new Set(elsewhere)].sort());
  });

  test('ends where it is solved, and nowhere else', () => {
    expect([...ends]).toEqual(CHART.states.filter((state) => state.ways.length === 0).map(({ id }) => id));
  });
});
