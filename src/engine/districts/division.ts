// What was found, told by stage: which sections are whose, which joints are gaps, how evenly it is used.
import { evennessOf } from '../power/index.ts';
import type { Division, DivisionProblem } from './problem.ts';
import type { Whole } from './whole.ts';
import { sum } from './whole.ts';

/** Connected parts by the links that are kept, each with its sections in order; parts by their first section. */
export function partsOf({ traffic, links }: Pick<Whole, 'traffic' | 'links'>, kept: (link: number) => boolean) {
  const up = traffic.map((_, section) => section);
  const root = (section: number): number => {
    const above = up[section] ?? section;
    return above === section ? section : root(above);
  };
  for (const [link, { a, b }] of links.entries()) {
    if (!kept(link)) continue;
    const [one, other] = [root(a), root(b)];
    up[Math.max(one, other)] = Math.min(one, other);
  }
  const parts = new Map<number, number[]>();
  for (const section of traffic.keys()) parts.set(root(section), [...(parts.get(root(section)) ?? []), section]);
  return [...parts.values()];
}

interface Part {
  readonly sections: readonly number[];
  readonly traffic: number;
  readonly fixed: number;
  readonly fedBy: number;
}

interface Given {
  /** Bits of the stages that have a part. */
  readonly taken: number;
  readonly use: number;
  /** Traffic times what its stage can give, added up: the more, the better the busier parts are on the stronger stages. */
  readonly suited: number;
  /** Place of the part by stage. */
  readonly stages: readonly number[];
}

/** Gives every part a stage so that the fullest is least full; undefined where the parts do not suit the stages. */
function giveStages(
  { kinds, districts }: Whole,
  stages: DivisionProblem['stages'],
  parts: readonly Part[],
): Given | undefined {
  const kindOf = Array.from({ length: districts }, (_, stage) =>
    kinds.findIndex(({ stages }) => stages.includes(stage)),
  );
  let given: readonly Given[] = [{ taken: 0, use: 0, suited: 0, stages: [] }];
  for (const [at, part] of parts.entries()) {
    const suiting = kindOf.flatMap((kind, stage) => {
      const use = useOf(kinds[kind], kind, part);
      return use === undefined ? [] : [{ stage, use, suited: part.traffic * (stages[stage]?.usable ?? 0) }];
    });
    given = leastFull(given.flatMap((so) => suiting.flatMap((one) => withOne(so, one, at))));
  }
  return given.find(({ taken }) => taken === (1 << districts) - 1);
}

interface Suiting extends Pick<Given, 'use' | 'suited'> {
  readonly stage: number;
}

/** One more part to a stage that has none. */
function withOne(so: Given, { stage, use, suited }: Suiting, at: number): Given[] {
  if ((so.taken >>> stage) & 1) return [];
  const stages = [...so.stages];
  stages[stage] = at;
  return [{ taken: so.taken | (1 << stage), use: Math.max(so.use, use), suited: so.suited + suited, stages }];
}

/** Of those that take the same stages the first that is least full, and best suited among alike ones. */
function leastFull(all: readonly Given[]): readonly Given[] {
  const best = new Map<number, Given>();
  for (const one of all) {
    const other = best.get(one.taken);
    const less = other === undefined || one.use < other.use;
    if (less || (one.use === other.use && one.suited > other.suited)) best.set(one.taken, one);
  }
  return [...best.values()];
}

/** How full the part makes a stage of this kind; undefined where it does not suit it. */
function useOf(kind: Whole['kinds'][number] | undefined, place: number, part: Part): number | undefined {
  if (kind === undefined || (kind.fed ? part.fedBy !== place : part.fedBy !== -1)) return undefined;
  if (part.traffic < kind.least || part.traffic > kind.most(part.fixed)) return undefined;
  return part.traffic === 0 ? 0 : part.traffic / Math.max(TINY, kind.bears(part.fixed));
}

/** Stands for no room at all. Source: own-choice. */
const TINY = 1e-6;

export function divisionOf(problem: DivisionProblem, whole: Whole, kept: ReadonlySet<number>): Division | undefined {
  const parts = partsOf(whole, (link) => kept.has(link)).map(
    (sections): Part => ({
      sections,
      traffic: sum(sections.map((section) => whole.traffic[section] ?? 0)),
      fixed: sum(sections.map((section) => whole.fixed[section] ?? 0)),
      fedBy: Math.max(...sections.map((section) => whole.fedBy[section] ?? -1)),
    }),
  );
  const given = giveStages(whole, problem.stages, parts);
  if (given === undefined) return undefined;
  const byStage = given.stages.flatMap((at) => parts[at] ?? []);
  const districtOf = whole.traffic.map((_, section) => byStage.findIndex(({ sections }) => sections.includes(section)));
  const cuts = problem.joints.flatMap(({ a, b, gap }, joint) =>
    gap === 'cut' || districtOf[a] !== districtOf[b] ? [joint] : [],
  );
  const most = byStage.map(({ fixed }, stage) => {
    const room = whole.kinds.find(({ stages }) => stages.includes(stage))?.bears(fixed) ?? 0;
    return whole.total === 0 ? 1 : Math.max(0, room) / whole.total;
  });
  const busiest = whole.evenUse === 0 ? 1 : given.use / whole.evenUse;
  return {
    parts: byStage.map(({ sections }) => sections),
    cuts,
    cost: sum(
      problem.joints.map(({ a, b, cost, gap }) => (gap === 'cut' || districtOf[a] === districtOf[b] ? 0 : cost)),
    ),
    shares: byStage.map(({ traffic }) => (whole.total === 0 ? 0 : traffic / whole.total)),
    most,
    busiest,
    evenness: evennessOf(busiest),
  };
}
