// A wizard's flow, read off its statechart: which states there are, and what leads from one to the next.
import type { AnyStateMachine } from 'xstate';

export interface Way {
  readonly to: string;
  /** What a person does; undefined where the chart goes on by itself. */
  readonly on: string | undefined;
  /** The guard that lets it; undefined for the way that is left. */
  readonly when: string | undefined;
}

export interface ChartState {
  readonly id: string;
  /** In the order in which they are tried; none at an end. */
  readonly ways: readonly Way[];
}

export interface Chart {
  readonly id: string;
  readonly first: string;
  /** From the first on: no state before one that leads to it, but where the flow comes round again. */
  readonly states: readonly ChartState[];
}

/** The chart of a machine with one level of states. */
export function chartOf({ id, root }: AnyStateMachine): Chart {
  const first = root.initial.target[0]?.key ?? '';
  const waysOf = (state: string): Way[] => {
    const { transitions, always = [] } = root.states[state] ?? { transitions: new Map() };
    return [...always, ...[...transitions.values()].flat()].flatMap(({ target, guard, eventType }) => {
      const to = target?.[0]?.key;
      return to === undefined ? [] : [{ to, on: eventType === '' ? undefined : eventType, when: nameOf(guard) }];
    });
  };
  return { id, first, states: inOrder(first, waysOf).map((state) => ({ id: state, ways: waysOf(state) })) };
}

const nameOf = (guard: unknown): string | undefined => {
  if (typeof guard === 'string') return guard;
  return typeof guard === 'object' && guard !== null && 'type' in guard ? String(guard.type) : undefined;
};

// Depth first, and each state after all that it leads to; that turned round is the order.
function inOrder(first: string, waysOf: (state: string) => readonly Way[]): string[] {
  const met = new Set<string>();
  const done: string[] = [];
  const visit = (state: string): void => {
    if (met.has(state)) return;
    met.add(state);
    // The last way first, so that of several ways the first comes first when all is turned round.
    for (const { to } of [...waysOf(state)].reverse()) visit(to);
    done.push(state);
  };
  visit(first);
  return done.reverse();
}

/** The chart as Mermaid text. */
export function mermaidOf(chart: Chart): string {
  const { first, states } = chart;
  const name = (state: string): string => state.replaceAll('-', '_');
  const names = states.flatMap(({ id }) => (name(id) === id ? [] : [`state "${id}" as ${name(id)}`]));
  const arrows = states.flatMap(({ id, ways }) => {
    if (ways.length === 0) return [`${name(id)} --> [*]`];
    return ways.map((way) => [`${name(id)} --> ${name(way.to)}`, labelOfWay(chart, way)].filter(Boolean).join(': '));
  });
  return ['stateDiagram-v2', ...names, `[*] --> ${name(first)}`, ...arrows].join('\n  ');
}

/** What leads along a way: what a person does, where there is more than one such thing, and the guard. May be empty. */
export function labelOfWay({ states }: Chart, { on, when }: Way): string {
  const acts = new Set(states.flatMap(({ ways }) => ways.map((way) => way.on)));
  const act = on === undefined || acts.size === 1 ? [] : [on.replace('user.', '')];
  return [...act, ...(when === undefined ? [] : [`[${when}]`])].join(' ');
}
