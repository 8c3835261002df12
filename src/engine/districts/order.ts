// In which order sections are taken up: so that at any moment few of those that were are still joined to any that were not.
import type { Reach } from './state.ts';
import type { Whole } from './whole.ts';

export interface Back extends Reach {
  /** Place of the link among those of the problem. */
  readonly link: number;
}

/** A section that is not taken up yet, as the frontier sees it. */
export interface Ahead {
  readonly traffic: number;
  readonly fixed: number;
  readonly fedBy: number;
  readonly links: readonly Reach[];
}

/** One section is taken up. */
export interface Step {
  readonly section: number;
  /** Places on the frontier before this step. */
  readonly width: number;
  /** Links to sections on the frontier before this step. */
  readonly backs: readonly Back[];
  /** Places on the frontier, with this section as its last, that stay on it. */
  readonly stay: readonly number[];
  /** What is left afterwards. */
  readonly trafficLeft: number;
  /** Links left, cheapest first, added up: `cheapest[n]` is what n gaps cost at least. Links that are kept are none. */
  readonly cheapest: readonly number[];
  /** Frontier places that are joined beyond the frontier have the same number. */
  readonly joined: readonly number[];
  /** Stretches beyond that no joint joins to the frontier. */
  readonly islands: number;
  readonly ahead: readonly Ahead[];
}

/** The best of the orders that begin at each section. The same problem always gives the same. */
export function orderOf(whole: Whole): readonly number[] {
  const near = neighbours(whole);
  let best: readonly number[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const start of whole.traffic.keys()) {
    const { order, weight } = orderFrom(start, near, least);
    if (weight < least) [best, least] = [order, weight];
  }
  return best;
}

function neighbours({ traffic, links }: Whole): readonly (readonly number[])[] {
  const near = traffic.map(() => new Set<number>());
  for (const { a, b } of links) {
    near[a]?.add(b);
    near[b]?.add(a);
  }
  return near.map((set) => [...set]);
}

/** What a frontier one wider weighs more: about as many more ways to be joined. Source: own-choice. */
const WIDER = 4;

/** Always next the section after which the frontier is narrowest; among alike ones the one whose neighbours have waited longest. */
function orderFrom(start: number, near: readonly (readonly number[])[], limit: number) {
  const order: number[] = [];
  const left = near.map((list) => list.length);
  const taken = near.map(() => -1);
  const frontier = new Set<number>();
  let weight = 0;
  for (let next: number | undefined = start; next !== undefined && weight < limit; next = bestNext()) {
    taken[next] = order.length;
    order.push(next);
    frontier.add(next);
    for (const other of near[next] ?? []) {
      left[other] = (left[other] ?? 0) - 1;
      if (left[other] === 0 && taken[other] !== -1) frontier.delete(other);
    }
    if (left[next] === 0) frontier.delete(next);
    weight += WIDER ** frontier.size;
  }
  return { order, weight };

  function bestNext(): number | undefined {
    let best: number | undefined;
    let [widest, oldest] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    const candidates = frontier.size > 0 ? [...frontier].flatMap((section) => near[section] ?? []) : near.keys();
    for (const section of candidates) {
      if (taken[section] !== -1) continue;
      const { wide, old } = frontierWith(section);
      if (wide < widest || (wide === widest && old < oldest)) [best, widest, oldest] = [section, wide, old];
    }
    return best;
  }

  /** By how much the frontier grows with this section, and how long the oldest of its neighbours has waited. */
  function frontierWith(section: number): { readonly wide: number; readonly old: number } {
    const joined = (near[section] ?? []).filter((other) => taken[other] !== -1);
    const done = joined.filter((other) => left[other] === 1).length;
    const old = Math.min(...joined.map((other) => taken[other] ?? 0), order.length);
    return { wide: (left[section] === 0 ? 0 : 1) - done, old };
  }
}

/** The other end of a link, -1 where it is none of this section. */
function acrossFrom(section: number, a: number, b: number): number {
  if (a === section) return b;
  return b === section ? a : -1;
}

/** The steps of an order. */
export function stepsOf(whole: Whole, order: readonly number[]): readonly Step[] {
  const place = new Map(order.map((section, at) => [section, at]));
  const at = (section: number): number => place.get(section) ?? -1;
  const steps: Step[] = [];
  let frontier: number[] = [];
  let trafficLeft = whole.total;
  for (const [now, section] of order.entries()) {
    trafficLeft -= whole.traffic[section] ?? 0;
    const backs = whole.links.flatMap(({ a, b, cost, kept }, link) => {
      const slot = frontier.indexOf(acrossFrom(section, a, b));
      return slot === -1 ? [] : [{ link, slot, cost, kept }];
    });
    const wide = [...frontier, section];
    const isOpen = (one: number): boolean =>
      whole.links.some(({ a, b }) => (a === one && at(b) > now) || (b === one && at(a) > now));
    const stay = wide.flatMap((one, slot) => (isOpen(one) ? [slot] : []));
    frontier = stay.flatMap((slot) => wide[slot] ?? []);
    steps.push({
      section,
      width: wide.length - 1,
      backs,
      stay,
      trafficLeft,
      ...beyond(whole, frontier, (one) => at(one) > now),
    });
  }
  return steps;
}

/** What lies beyond a frontier. */
function beyond(
  { traffic, fixed, fedBy, links }: Whole,
  frontier: readonly number[],
  isAhead: (section: number) => boolean,
): Pick<Step, 'cheapest' | 'joined' | 'islands' | 'ahead'> {
  const group: number[] = [];
  const root = (section: number): number => {
    const up = group[section] ?? section;
    return up === section ? section : root(up);
  };
  const left = links.filter(({ a, b }) => isAhead(a) || isAhead(b));
  for (const { a, b } of left) group[root(a)] = root(b);
  const cheapest = [0];
  for (const cost of left.flatMap(({ cost: one, kept }) => (kept ? [] : [one])).sort((a, b) => a - b)) {
    cheapest.push((cheapest.at(-1) ?? 0) + cost);
  }
  const joined = frontier.map(root);
  const roots = new Set(traffic.flatMap((_, section) => (isAhead(section) ? [root(section)] : [])));
  for (const one of joined) roots.delete(one);
  const ahead = traffic.flatMap((amount, section) => {
    if (!isAhead(section)) return [];
    const own = left.flatMap(({ a, b, cost, kept }) => {
      const slot = frontier.indexOf(acrossFrom(section, a, b));
      return slot === -1 ? [] : [{ slot, cost, kept }];
    });
    return own.length === 0
      ? []
      : [{ traffic: amount, fixed: fixed[section] ?? 0, fedBy: fedBy[section] ?? -1, links: own }];
  });
  return { cheapest, joined, islands: roots.size, ahead };
}
