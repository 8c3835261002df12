// How sure a verdict is. What varies by the minute is in the law of the draw; what nobody has measured is not, and neither is whether
// trains climb together: each of them is taken at its low, usual and high end, and a verdict is sure only where it is the same under all.
import type { Span } from '../units.ts';
import { middle } from '../units.ts';
import type { DemandInput, Distribution } from './demand.ts';
import { constant, even, fittingDemand, MOST_DRAW, mixFitting, quantile } from './demand.ts';
import { ACCESSORY_DRAW, COACH_DRAWS, STORED_ENERGY_INRUSH } from './draws.ts';
import type { Fleet, Trains } from './fleet.ts';
import { trainCount } from './fleet.ts';
import type { Able, Verdict } from './rules.ts';
import { atLeast, judgeInGroups, VERDICTS, worstVerdict } from './rules.ts';

/** Correlation between the draws of two moving trains that climb or start together. Source: from-memory. */
export const TOGETHER = 0.3;
/** A train that nobody has measured may lie this part of its kind's range lower or higher. Source: from-memory. */
export const TRAIN_DOUBT = 0.25;

/**
 * `coach-lamps`: what a lit coach draws, and by which lamps; `trains-together`: correlation; `how-many-move`: exactly so many, or on average;
 * `own-use`: what the unit takes for itself; `what-it-gives`: what reaches the track, a rectifier or a converter between.
 */
export type Unknown =
  | 'coach-lamps'
  | 'accessories'
  | 'train-draws'
  | 'trains-together'
  | 'how-many-move'
  | 'own-use'
  | 'what-it-gives';

/** What nobody has told yet and what may be so much that nothing is enough for it: lit coaches, accessories, own use. */
export type Untold = 'coaches' | 'accessories' | 'own-use';

/** Where each unknown may lie. */
export type Level = 'low' | 'usual' | 'high';

export interface SurenessInput {
  readonly fleet: Fleet;
  readonly capacity: Able;
  /** With all that the unit may take for itself, where that is not measured. */
  readonly atWorst?: Able | undefined;
  /** With the best rectifier, or a step-down converter that nobody has spoken of. */
  readonly atBest?: Able | undefined;
  /** Whether the kind of the coaches' lamps is known; it counts where coaches are lit. */
  readonly lampsKnown: boolean;
  /** The fleet with sound in all trains, where nobody has told of sound. */
  readonly loudest?: Fleet | undefined;
  readonly untold?: readonly Untold[];
  /** Of a district that holds any one consumer with this chance; the whole fleet where left out. 0 to 1. */
  readonly share?: number;
}

export interface UnknownEffect {
  readonly unknown: Unknown;
  /** Verdict with this one at either end and all else as usual. */
  readonly low: Verdict;
  readonly high: Verdict;
  /** By how much it moves the current that is passed in one moment of a thousand, amperes. */
  readonly swing: number;
}

export interface SurenessFinding {
  readonly kind: 'surely' | 'depends' | 'surely-not';
  /** Worst and best verdict under everything that may be. */
  readonly worst: Verdict;
  readonly best: Verdict;
  /** That one which moves the verdict most, where it depends. */
  readonly deciding?: Unknown;
  /** Where it depends, all that is not known and matters, the one that moves the verdict most first. */
  readonly unknowns: readonly UnknownEffect[];
}

type Levels = Readonly<Partial<Record<Unknown, Level>>>;

/** Whether the power is enough whatever is not known; a tight verdict counts as enough. */
export function sureness(input: SurenessInput): SurenessFinding {
  const { atBest = input.capacity, atWorst = input.capacity, loudest, untold = [] } = input;
  const law = lawsOnce(input);
  const at = (of: SurenessInput, laws = law): Verdict[] => everyEnd(of).map((levels) => verdictAt(of, levels, laws));
  const least = at({ ...input, capacity: atWorst });
  const most = atBest === atWorst ? [] : at({ ...input, capacity: atBest });
  const loud =
    untold.length > 0 || loudest === undefined
      ? []
      : at(...withItsLaws({ ...input, fleet: loudest, capacity: atWorst }));
  const worst = untold.length > 0 ? 'short' : worstVerdict([...least, ...loud]);
  const best = bestVerdict([...least, ...most]);
  if (enough(worst)) return { kind: 'surely', worst, best, unknowns: [] };
  if (!enough(best)) return { kind: 'surely-not', worst, best, unknowns: [] };
  const unknowns = effectsOf(input, law);
  const [first] = unknowns;
  return { kind: 'depends', worst, best, unknowns, ...(first === undefined ? {} : { deciding: first.unknown }) };
}

type Law = (levels: Levels) => Distribution;

/** Each law is worked out when it is first asked for: what the unit passes has no part in it. */
function lawsOnce(input: SurenessInput): Law {
  const known = new Map<string, Distribution>();
  return (levels) => {
    const key = [
      ...DRAWN.map((unknown) => levels[unknown] ?? 'usual'),
      ...MOVED.map((unknown) => levels[unknown] === 'high'),
    ].join();
    const law = known.get(key) ?? lawAt(input, levels);
    known.set(key, law);
    return law;
  };
}

const withItsLaws = (input: SurenessInput): [SurenessInput, Law] => [input, lawsOnce(input)];

const bestVerdict = (verdicts: readonly Verdict[]): Verdict =>
  VERDICTS.findLast((verdict) => verdicts.includes(verdict)) ?? 'short';

const enough = (verdict: Verdict): boolean => atLeast(verdict, 'tight');

/** All draws low, usual and high, each with trains by themselves, together, and so many on average. */
function everyEnd(input: SurenessInput): Levels[] {
  const draws = DRAWN.filter((unknown) => matters(unknown, input));
  return (['low', 'usual', 'high'] as const).flatMap((level) => {
    const levels: Levels = Object.fromEntries(draws.map((unknown) => [unknown, level]));
    const ways = MOVED.filter((unknown) => matters(unknown, input));
    return [levels, ...ways.map((unknown): Levels => ({ ...levels, [unknown]: 'high' }))];
  });
}

const DRAWN: readonly Unknown[] = ['coach-lamps', 'accessories', 'train-draws'];
const MOVED: readonly Unknown[] = ['trains-together', 'how-many-move'];

/** Whether this fleet has what the unknown is about. */
function matters(unknown: Unknown, { fleet }: SurenessInput): boolean {
  switch (unknown) {
    case 'coach-lamps':
      return fleet.coaches > 0;
    case 'accessories':
      return fleet.accessories > 0;
    case 'train-draws':
      return fleet.moving > 0 && fleet.trains.some(({ kind, count }) => kind !== 'measured' && count > 0);
    case 'trains-together':
      return fleet.moving > 1;
    case 'how-many-move':
      return fleet.moving > 0 && fleet.moving < trainCount(fleet);
    case 'own-use':
    case 'what-it-gives':
      return false;
  }
}

function effectsOf(input: SurenessInput, law: Law): UnknownEffect[] {
  const found = [...DRAWN, ...MOVED]
    .filter((unknown) => matters(unknown, input))
    .map((unknown): UnknownEffect => {
      const [low, high] = (['low', 'high'] as const).map((level) => ({ [unknown]: level }));
      const seldom = (levels: Levels): number => quantile(law(levels), 0.999);
      return {
        unknown,
        low: verdictAt(input, low ?? {}, law),
        high: verdictAt(input, high ?? {}, law),
        swing: Math.abs(seldom(high ?? {}) - seldom(low ?? {})),
      };
    });
  found.push(...givenEffects(input, law));
  const flips = ({ low, high }: UnknownEffect): boolean => enough(low) !== enough(high);
  return found.sort((a, b) => Number(flips(b)) - Number(flips(a)) || b.swing - a.swing);
}

/** What the unit takes and what it is given move the limit and not the draw: by as much as they move it, they count. */
function givenEffects(input: SurenessInput, law: Law): UnknownEffect[] {
  const effect = (unknown: Unknown, low: Able, high: Able): UnknownEffect => ({
    unknown,
    low: verdictAt({ ...input, capacity: low }, {}, law),
    high: verdictAt({ ...input, capacity: high }, {}, law),
    swing: Math.abs(high.hard - low.hard),
  });
  const { capacity, atWorst, atBest } = input;
  return [
    ...(atWorst === undefined ? [] : [effect('own-use', capacity, atWorst)]),
    ...(atBest === undefined ? [] : [effect('what-it-gives', atBest, capacity)]),
  ];
}

function verdictAt(input: SurenessInput, levels: Levels, law: Law): Verdict {
  const { fleet, capacity, share = 1 } = input;
  const trains = trainsAt(fleet, levels);
  const standing = trains.reduce((sum, { count, standing: amps }) => sum + count * amps, 0);
  const lit = fleet.coaches * coachAt(input, levels) + fleet.accessories * accessoryAt(levels);
  const load = {
    distribution: law(levels),
    stallExtra: fleet.moving === 0 ? 0 : Math.max(0, ...trains.map(({ stall, running }) => stall - running.to)),
    powerUp: share * (standing + lit + fleet.stored * STORED_ENERGY_INRUSH),
  };
  return judgeInGroups(load, capacity).verdict;
}

/** The law of the draw with each unknown where it is said to be. Lamps and accessories draw steadily: only nobody knows how much. */
export function lawAt(input: SurenessInput, levels: Levels): Distribution {
  const { fleet, share = 1 } = input;
  const fixed = [
    { count: fleet.coaches, draw: constant(coachAt(input, levels)) },
    { count: fleet.accessories, draw: constant(accessoryAt(levels)) },
  ];
  const law = (trains: readonly Trains[]): Distribution =>
    fittingDemand({ ...demandOf(trains, fleet.moving, fixed, levels), share });
  const trains = trainsAt(fleet, levels);
  const apart = law(trains);
  if (levels['trains-together'] !== 'high') return apart;
  const together = mixFitting(
    COMMON_NODES.map(({ probability, part }) => ({
      probability,
      distribution: law(trains.map((group) => ({ ...group, running: partOf(group, part) }))),
    })),
  );
  return { ...together, ...(apart.ends === undefined ? {} : { ends: apart.ends }) };
}

/** So many on average: every train moves by itself in its share of moments. */
function demandOf(trains: readonly Trains[], moving: number, fixed: DemandInput['fixed'], levels: Levels): DemandInput {
  if (levels['how-many-move'] !== 'high') {
    const groups = trains.map(({ count, running, standing }) => ({
      count,
      running: even(running.from, running.to),
      standing: constant(standing),
    }));
    return { trains: groups, moving, fixed };
  }
  const chance = moving / trainCount({ trains });
  const movers = trains.flatMap(({ count, running, standing }) => [
    { count, draw: constant(standing) },
    { count, draw: even(Math.max(0, running.from - standing), Math.max(0, running.to - standing)), chance },
  ]);
  return { trains: [], moving: 0, fixed: [...fixed, ...movers] };
}

function trainsAt(fleet: Fleet, levels: Levels): Trains[] {
  const shift = { low: -TRAIN_DOUBT, usual: 0, high: TRAIN_DOUBT }[levels['train-draws'] ?? 'usual'];
  return fleet.trains.map((group) => {
    if (group.kind === 'measured') return group;
    const { from, to } = group.running;
    const by = Math.max(shift * (to - from), group.standing - from);
    return { ...group, running: { from: from + by, to: to + by }, stall: group.stall + by };
  });
}

const atLevel = (span: Span, level: Level = 'usual'): number =>
  ({ low: span.from, usual: middle(span), high: span.to })[level];

function coachAt({ fleet, lampsKnown }: SurenessInput, levels: Levels): number {
  const level = levels['coach-lamps'] ?? 'usual';
  if (lampsKnown || level === 'usual') return atLevel(COACH_DRAWS[fleet.lamps], level);
  return level === 'low' ? COACH_DRAWS.led.from : COACH_DRAWS.filament.to;
}

const accessoryAt = (levels: Levels): number => atLevel(ACCESSORY_DRAW, levels['accessories']);

/** The part of a range that a train keeps to while all are as busy as a common factor makes them; never less than it draws standing. */
const partOf = ({ running: { from, to }, standing }: Trains, part: Span): Span => {
  const at = (place: number): number => Math.min(MOST_DRAW, Math.max(standing, from + place * (to - from)));
  return { from: at(part.from), to: at(part.to) };
};

/**
 * Trains that climb together: where each stands within its range is ruled by a normal common factor with weight `TOGETHER` and a normal
 * one of its own (a Gaussian copula, so that each alone keeps its even spread). Given the common factor the trains draw by themselves;
 * each has then an even spread of the mean and variance that it has there, which may reach a little beyond its range. Against a
 * simulation the chances of the sum are right to 15 %, and where they err the more, too high. Source: own-derivation.
 */
const COMMON_NODES = nodesOf(TOGETHER);

function nodesOf(correlation: number): { readonly probability: number; readonly part: Span }[] {
  const [common, own] = [Math.sqrt(correlation), Math.sqrt(1 - correlation)];
  const steps = Array.from({ length: 13 }, (_, i) => (i - 6) * 0.7);
  const weights = steps.map((z) => Math.exp((-z * z) / 2));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const mean = (of: (z: number) => number): number =>
    steps.reduce((total, z, i) => total + ((weights[i] ?? 0) / sum) * of(z), 0);
  return steps.map((z, i) => {
    const at = (e: number): number => normalBelow(common * z + own * e);
    const place = mean(at);
    const variance = mean((e) => (at(e) - place) ** 2);
    const half = Math.sqrt(3 * variance);
    return { probability: (weights[i] ?? 0) / sum, part: { from: place - half, to: place + half } };
  });
}

/** Chance that a normal draw lies below x. Abramowitz and Stegun 26.2.17: right to 1e-7. */
function normalBelow(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x));
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) * series;
  return x >= 0 ? 1 - tail : tail;
}
