// Few gaps or even use: several ways to choose from. And how many districts it takes at all.
import { divideInParts, seek } from './divide.ts';
import type { Divided, Dividing, Division, DivisionChoice, DivisionProblem, DivisionStage, Proof } from './problem.ts';
import { MOST_DIVIDED, wholeOf } from './whole.ts';

type Way = { readonly division: Division; readonly proof: Proof };

/** Most ways that are told. Source: own-choice. */
const MOST_WAYS = 5;
/** Each way is nearer to even use by at least this share of what the one before lacks, and of the even use. Source: own-choice. */
const NEARER = { ofLack: 1 / 3, ofEven: 0.02 } as const;
/** Busiest district that is as even as anybody can tell. Source: own-choice. */
const EVEN = 1.02;
/** Ways with gaps that cost so many times those of the first that is not poor (or one gap on plain track) are no choice. Source: own-choice. */
const DEAREST = 4;
/** A stage is worth having where it carries at least this part of the share that fits it: five to one is no good division. Source: common-practice. */
const WORTH_A_STAGE = 0.2;
/** What a gap on plain track costs. Source: own-choice. */
const PLAIN = 1;

/**
 * Up to five divisions, the one with the fewest gaps first, each next one more even. Where it can be, every stage has something to carry.
 */
export function* divisionChoiceInParts(problem: DivisionProblem): Dividing<DivisionChoice> {
  const worth = yield* seek(problem, { least: WORTH_A_STAGE });
  const least = worth.kind === 'divided' ? WORTH_A_STAGE : 0;
  const first = worth.kind === 'divided' ? worth : yield* divideInParts(problem);
  if (first.kind !== 'divided') return first;
  const { evenUse } = wholeOf(problem);
  const ways: Way[] = [first];
  while (ways.length < MOST_WAYS) {
    const busiest: number = ways.at(-1)?.division.busiest ?? EVEN;
    if (busiest <= EVEN) break;
    const aim = busiest - Math.max(NEARER.ofEven, (busiest - 1) * NEARER.ofLack);
    const next = yield* seek(problem, { least, fullest: Math.max(1, aim) * evenUse });
    if (next.kind !== 'divided' || isTooDear(next.division, ways)) break;
    ways.push(next);
  }
  return { kind: 'choice', ways: ways.filter((way) => !ways.some((other) => isBetter(other.division, way.division))) };
}

function isTooDear({ cost }: Division, ways: readonly Way[]): boolean {
  const usual = ways.find(({ division }) => division.evenness !== 'poor');
  return usual !== undefined && cost > DEAREST * Math.max(PLAIN, usual.division.cost);
}

/** Each way is more even than the one before: it is better where it costs no more. */
const isBetter = (one: Division, other: Division): boolean => one.cost <= other.cost && one.busiest < other.busiest;

/**
 * How many districts it takes, and the division into so many.
 */
export interface Fewest {
  readonly districts: number;
  readonly divided: Divided;
}

/**
 * The smallest number of districts that will do, each with the next of the stages; those with feeds of their own are in it in any case.
 * `more`: stages like this follow the last. Where none will do, the last that was tried, and why.
 */
export function* fewestDistrictsInParts(problem: DivisionProblem, more?: DivisionStage): Dividing<Fewest> {
  const { stages, sections } = problem;
  const most = Math.min(more === undefined ? stages.length : MOST_DIVIDED.stages, Math.max(1, sections.length));
  const lastFed = stages.findLastIndex(({ feeds = [] }) => feeds.length > 0);
  const first = Math.min(most, Math.max(1, lastFed + 1));
  const withStages = (count: number): DivisionProblem => {
    const added = more === undefined ? [] : Array.from({ length: Math.max(0, count - stages.length) }, () => more);
    return { ...problem, stages: [...stages.slice(0, count), ...added] };
  };
  for (let districts = first; districts <= most; districts++) {
    const problemHere = withStages(districts);
    const sought = yield* seek(problemHere, {});
    if (sought.kind === 'none') continue;
    const worth = yield* seek(problemHere, { least: WORTH_A_STAGE });
    return { districts, divided: worth.kind === 'divided' ? worth : sought };
  }
  return { districts: most, divided: yield* divideInParts(withStages(most)) };
}
