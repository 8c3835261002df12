// The problem in whole numbers, so that nothing is lost or gained by adding: traffic, amperes and costs in steps of their own.
import type { DivisionOptions, DivisionProblem, DivisionStage } from './problem.ts';

/** A joint that may join. */
export interface Link {
  /** Its place among the joints of the problem. */
  readonly joint: number;
  readonly a: number;
  readonly b: number;
  readonly cost: number;
  readonly kept: boolean;
}

/** What one stage takes; stages of one kind are alike. */
export interface Kind {
  /** Places of the stages of this kind: one where it has feeds of its own. */
  readonly stages: readonly number[];
  readonly fed: boolean;
  /** Least traffic of a district. */
  readonly least: number;
  /** Most traffic of a district with so much always on; less than none where it bears not even that. Never more with more of it. */
  readonly most: (fixed: number) => number;
  /** The same, whatever is wanted of evenness: only what the stage bears. */
  readonly bears: (fixed: number) => number;
}

export interface Whole {
  readonly traffic: readonly number[];
  readonly fixed: readonly number[];
  /** Kind of the stage that a section belongs to in any case, or -1. */
  readonly fedBy: readonly number[];
  readonly links: readonly Link[];
  readonly kinds: readonly Kind[];
  readonly districts: number;
  /** All traffic. */
  readonly total: number;
  /** Traffic over what all stages bear together: how full each is where use is even. */
  readonly evenUse: number;
  /** Units of cost for one of the problem. */
  readonly costUnits: number;
}

/** Shares of traffic and costs are kept to a thousandth. Source: own-choice. */
const THOUSAND = 1000;
/** What is always on is kept to 10 mA. Source: own-choice. */
const HUNDRED = 100;
/** Rounding of binary fractions. Source: own-choice. */
const SAME = 1e-9;

/**
 * Most stages, sections and joints that are divided, and most joints of one section. Source: own-choice.
 */
export const MOST_DIVIDED = { stages: 12, sections: 200, joints: 400, atOneSection: 24 } as const;

/** Throws RangeError for what is no problem: places outside the lists, numbers below 0, more than MOST_DIVIDED. */
export function wholeOf(problem: DivisionProblem, { tolerance, fullest, least = 0 }: DivisionOptions = {}): Whole {
  check(problem);
  const { sections, joints, stages } = problem;
  const traffic = inSteps(sections.map((section) => Math.round(section.traffic * THOUSAND)));
  const fixed = sections.map(({ fixedAmps = 0 }) => Math.ceil(fixedAmps * HUNDRED - SAME));
  const costs = inSteps(joints.map(({ cost }) => Math.round(cost * THOUSAND)));
  const total = sum(traffic.values);
  const rooms = roomsOf(stages, total);
  const empty = stages.map(({ bears }) => Math.max(0, rooms(bears)(0)));
  const borne = sum(empty);
  const kinds = kindsOf(stages).map((places): Kind => {
    const stage = stages[places[0] ?? 0];
    const bears = stage === undefined ? () => -1 : rooms(stage.bears);
    const even = borne === 0 ? 0 : ((empty[places[0] ?? 0] ?? 0) * total) / borne;
    const far = tolerance === undefined ? Number.POSITIVE_INFINITY : Math.floor(even * (1 + tolerance) + SAME * total);
    const part = fullest ?? 1;
    return {
      stages: places,
      fed: (stage?.feeds?.length ?? 0) > 0,
      least: Math.max(0, Math.ceil(even * Math.max(least, 1 - (tolerance ?? 1)) - SAME * total)),
      most: (amount) => Math.min(far, fuller(bears(amount), part)),
      bears,
    };
  });
  const fedBy = sections.map((_, section) =>
    kinds.findIndex(({ fed, stages: of }) => fed && stages[of[0] ?? 0]?.feeds?.includes(section) === true),
  );
  const links = joints.flatMap(({ a, b, gap }, joint) =>
    gap === 'cut' || a === b ? [] : [{ joint, a, b, cost: costs.values[joint] ?? 0, kept: gap === 'kept' }],
  );
  return {
    traffic: traffic.values,
    fixed,
    fedBy,
    links,
    kinds,
    districts: stages.length,
    total,
    evenUse: borne === 0 ? 0 : total / borne,
    costUnits: THOUSAND / costs.step,
  };
}

const fuller = (room: number, part: number): number => (room < 0 ? room : Math.floor(room * part + SAME));

function check({ sections, joints, stages, conflicts = [] }: DivisionProblem): void {
  const place = (at: number, list: readonly unknown[]): boolean => Number.isInteger(at) && at >= 0 && at < list.length;
  const right =
    stages.length >= 1 &&
    stages.length <= MOST_DIVIDED.stages &&
    sections.length <= MOST_DIVIDED.sections &&
    joints.length <= MOST_DIVIDED.joints &&
    sections.every(({ traffic, fixedAmps = 0 }) => traffic >= 0 && traffic < 1e6 * THOUSAND && fixedAmps >= 0) &&
    sections.every(
      (_, section) => joints.filter(({ a, b }) => a === section || b === section).length <= MOST_DIVIDED.atOneSection,
    ) &&
    joints.every(({ a, b, cost }) => place(a, sections) && place(b, sections) && cost >= 0 && cost < THOUSAND) &&
    stages.every(({ feeds = [] }) => feeds.every((section) => place(section, sections))) &&
    conflicts.every((pair) => pair.every((joint) => place(joint, joints)));
  if (!right) throw new RangeError('divide: a number or a place is outside what can be divided');
}

/** Whole numbers in the largest step that all of them are made of. */
function inSteps(values: readonly number[]): { readonly values: readonly number[]; readonly step: number } {
  const step = values.reduce(greatestCommon, 0) || 1;
  return { values: values.map((value) => value / step), step };
}

function greatestCommon(a: number, b: number): number {
  return b === 0 ? a : greatestCommon(b, a % b);
}

export const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

/** The most traffic that each function bears with so much always on, by halving; each asked once. */
function roomsOf(stages: readonly DivisionStage[], total: number) {
  const known = new Map<DivisionStage['bears'], (fixed: number) => number>();
  for (const { bears } of stages) {
    if (known.has(bears)) continue;
    const rooms = new Map<number, number>();
    known.set(bears, (fixed) => {
      const was = rooms.get(fixed);
      if (was !== undefined) return was;
      const room = mostOf(total, (traffic) => bears(total === 0 ? 0 : traffic / total, fixed / HUNDRED));
      rooms.set(fixed, room);
      return room;
    });
  }
  return (bears: DivisionStage['bears']): ((fixed: number) => number) => known.get(bears) ?? (() => -1);
}

/** The largest whole number up to `total` that passes, -1 where not even 0 does. */
function mostOf(total: number, passes: (value: number) => boolean): number {
  if (passes(total)) return total;
  let [most, failing] = [-1, total];
  while (failing - most > 1) {
    const value = Math.floor((most + failing) / 2);
    if (passes(value)) most = value;
    else failing = value;
  }
  return most;
}

/** Stages by kind, those with feeds each a kind of its own. */
function kindsOf(stages: readonly DivisionStage[]): readonly (readonly number[])[] {
  const kinds: number[][] = [];
  for (const [place, { bears, feeds = [] }] of stages.entries()) {
    const alike = kinds.find(([first = 0]) => {
      const other = stages[first];
      return feeds.length === 0 && other?.bears === bears && (other.feeds?.length ?? 0) === 0;
    });
    if (alike === undefined) kinds.push([place]);
    else alike.push(place);
  }
  return kinds;
}
