// What would mend the wiring of a district, the cheapest first: each candidate is worked out for this very plan.
import type { Cost } from '../cost.ts';
import { byMoneyThenTime } from '../cost.ts';
import { RESERVE } from '../power/index.ts';
import { BREAKER_SHARE } from './breakers.ts';
import type { Rewired, WiringChange } from './changes.ts';
import { changeCost, workCost } from './changes.ts';
import { DROP_LIMIT, DROP_WANTED } from './limits.ts';
import type { Feeder, FeedingPlan, FeedingProblem } from './plan.ts';
import { evenFeeders, SAME_PLACE } from './plan.ts';
import type { PlanCircuit } from './plan-circuit.ts';
import { solvePlan } from './plan-circuit.ts';
import { SHORT_MARGIN } from './trips.ts';
import type { Conductor } from './wire.ts';
import { heatingLimit, ohmsPerMetre, TABLE_DEGREES } from './wire.ts';

/** Trip currents that stages and breakers are commonly set to, amperes. Source: common-practice. */
export const COMMON_TRIPS: readonly number[] = [1, 1.5, 2, 2.5, 3, 4, 5, 8, 10];
/** Distances between feeders that are tried, metres, wide to close. Source: common-practice. */
export const FEEDER_SPACINGS: readonly number[] = [5, 4, 3, 2.5, 2, 1.5, 1, 0.75, 0.5];

export interface WiringNeed {
  readonly plan: FeedingPlan;
  /** What draws at the worst place at once, amperes, > 0. */
  readonly trainAmps: number;
  /** Trip current of the stage, amperes, > 0. */
  readonly trip: number;
  /** Wires that could be bus or feeders, in any order. */
  readonly sizes: readonly Conductor[];
  /** What the bus is now, and the feeders; their heat is judged where they are known. */
  readonly bus?: Conductor;
  readonly feeder?: Conductor;
  /** The track hangs on one pair of wires: there is no bus whose ends could be joined. */
  readonly pair?: boolean;
  /** Another trip current is below this and at most that, amperes: what the supply surely gives, and what the scale bears. */
  readonly supplyGives?: number;
  readonly tripMost?: number;
  /** Temperature of the wires, degrees Celsius. */
  readonly degrees?: number;
  /** Shares of the source's volts, and how many times the trip current a short has to draw. */
  readonly wanted?: number;
  readonly most?: number;
  readonly margin?: number;
}

export type WiringRule =
  /** A train loses more than it may. */
  | 'drop'
  /** A short somewhere draws too little to trip with the margin, as far as wires and rails tell. */
  | 'short-circuit'
  /** The supply cannot give more than the trip current: no wire mends that. */
  | 'supply-below-trip'
  /** The bus, or a feeder, may not carry the trip current for its heat. */
  | 'bus-heat'
  | 'feeder-heat'
  /** The lower trip current leaves too little for the trains. */
  | 'trip-too-low'
  /** The trip current is above what the scale bears: for whoever knows the scale to add. */
  | 'trip-above-scale';

export interface WiringCandidate {
  readonly change: WiringChange;
  /** One, or two for a second stage. */
  readonly plans: readonly FeedingPlan[];
  /** Trip current of what protects the track then, amperes. */
  readonly trip: number;
  /** Lowest at a train, volts, and where, metres along the track; what wires and rails lose of it, as a share of the source's volts. */
  readonly volts: number;
  readonly voltsAt: number;
  readonly drop: number;
  /** Least into a dead short, amperes, and where; `loopAmps`: the same if the supply gave whatever is asked. */
  readonly shortAmps: number;
  readonly shortAt: number;
  readonly loopAmps: number;
  readonly fails: readonly WiringRule[];
  /** `good`: all rules, and the drop within what is wanted. `bearable`: the drop within what is allowed. */
  readonly verdict: 'good' | 'bearable' | 'fails';
  readonly cost: Cost;
}

export interface WiringAdvice {
  readonly kind: 'advice';
  /** `as-it-is` first, unless nothing would be left for a train; then new wiring by money and then by time, other trip currents, a second stage. */
  readonly candidates: readonly WiringCandidate[];
  /** First that passes every rule; absent where none does. */
  readonly first?: WiringCandidate;
  /** First that also stays within the wanted drop. */
  readonly firstGood?: WiringCandidate;
}

/** The need with its defaults, and the trip current in force. */
interface Rules {
  readonly trainAmps: number;
  readonly trip: number;
  readonly wanted: number;
  readonly most: number;
  readonly margin: number;
  readonly degrees: number;
  readonly bus: Conductor | undefined;
  readonly feeder: Conductor | undefined;
  readonly pair: boolean;
}

/**
 * As it is, then what can be laid anew in order of cost: the unit at the middle of the bus, a ring, feeders closer together, a thicker bus,
 * and any of these together where fewer are not good; a lower trip current, breakers, a second stage at the far end. Those that cannot
 * apply are left out, and so is the present state where it leaves a train no voltage at all. Problems: as of the plan; `not-above-zero`
 * for the `train` or the `trip`. Order: common practice, no source; figures: own-derivation. `laid`: the plan's circuit, where it is solved already.
 */
export function suggestWiring(need: WiringNeed, laid = solvePlan(need.plan)): WiringAdvice | FeedingProblem {
  const rules = rulesOf(need);
  if (!(rules.trainAmps > 0)) return { kind: 'no-solution', because: 'not-above-zero', parts: ['train'] };
  if (!(rules.trip > 0)) return { kind: 'no-solution', because: 'not-above-zero', parts: ['trip'] };
  if (laid.kind === 'no-solution') return laid;
  const now = judge({ kind: 'as-it-is' }, [laid], rules);
  if ('because' in now && now.because !== 'no-operating-point') return now;
  const candidates = sound([
    now,
    ...rewirings(need, rules),
    ...('because' in now ? [] : lowerTrips(laid, rules, now, need)),
    secondStage(need.plan, rules),
  ]);
  const first = candidates.find(passes);
  const firstGood = candidates.find(isGood);
  return {
    kind: 'advice',
    candidates,
    ...(first === undefined ? {} : { first }),
    ...(firstGood === undefined ? {} : { firstGood }),
  };
}

function rulesOf(need: WiringNeed): Rules {
  const {
    trainAmps,
    trip,
    bus,
    feeder,
    pair = false,
    wanted = DROP_WANTED,
    most = DROP_LIMIT,
    margin = SHORT_MARGIN,
    degrees = TABLE_DEGREES,
  } = need;
  return { trainAmps, trip, bus, feeder, pair, wanted, most, margin, degrees };
}

const isGood = ({ verdict }: WiringCandidate): boolean => verdict === 'good';
const passes = ({ verdict }: WiringCandidate): boolean => verdict !== 'fails';

const sound = (candidates: readonly (WiringCandidate | FeedingProblem | undefined)[]): WiringCandidate[] =>
  candidates.flatMap((one) => (one === undefined || 'because' in one ? [] : [one]));

/** `starts`: where each plan's zero lies on the whole track, metres. */
function judgePlans(
  change: WiringChange,
  plans: readonly FeedingPlan[],
  rules: Rules,
  starts: readonly number[] = [],
): WiringCandidate | FeedingProblem {
  const circuits: PlanCircuit[] = [];
  for (const plan of plans) {
    const circuit = solvePlan(plan);
    if (circuit.kind === 'no-solution') return circuit;
    circuits.push(circuit);
  }
  return judge(change, circuits, rules, starts);
}

function judge(
  change: WiringChange,
  circuits: readonly PlanCircuit[],
  rules: Rules,
  starts: readonly number[] = [],
): WiringCandidate | FeedingProblem {
  const plans = circuits.map(({ plan }) => plan);
  const parts: Worst[] = [];
  for (const [i, circuit] of circuits.entries()) {
    const worst = worstOf(circuit, rules.trainAmps, starts[i]);
    if ('because' in worst) return worst;
    parts.push(worst);
  }
  const [first, ...rest] = parts;
  if (first === undefined) return { kind: 'no-solution', because: 'no-feeder', parts: ['rails'] };
  const low = rest.reduce((worst, one) => (one.volts < worst.volts ? one : worst), first);
  const weak = rest.reduce((worst, one) => (one.loopAmps < worst.loopAmps ? one : worst), first);
  const fails = failing(change, plans, { low, weak }, rules);
  return {
    change,
    plans,
    trip: rules.trip,
    volts: low.volts,
    voltsAt: low.voltsAt,
    drop: low.drop,
    shortAmps: weak.shortAmps,
    shortAt: weak.shortAt,
    loopAmps: weak.loopAmps,
    fails,
    verdict: verdictOf(fails, low.drop <= rules.wanted),
    cost: changeCost(change, first.plan, rules.pair),
  };
}

function verdictOf(fails: readonly WiringRule[], good: boolean): WiringCandidate['verdict'] {
  if (fails.length > 0) return 'fails';
  return good ? 'good' : 'bearable';
}

interface Worst {
  readonly plan: FeedingPlan;
  readonly volts: number;
  readonly voltsAt: number;
  readonly drop: number;
  readonly shortAmps: number;
  readonly shortAt: number;
  /** What the loop alone would let through, whatever the supply can give, amperes. */
  readonly loopAmps: number;
}

/** Metres between points: the worst place needs none of them. Source: own-choice. */
const NO_POINTS = Number.MAX_VALUE;

function worstOf(circuit: PlanCircuit, trainAmps: number, start = 0): Worst | FeedingProblem {
  const train = circuit.train(trainAmps, NO_POINTS);
  if (train.kind === 'no-solution') return train;
  const short = circuit.short(0, NO_POINTS);
  if (short.kind === 'no-solution') return short;
  const { ohms, at, amps } = short.weakest;
  return {
    plan: circuit.plan,
    volts: train.worst.volts,
    voltsAt: start + train.worst.at,
    drop: train.worst.wiringShare,
    shortAmps: amps,
    shortAt: start + at,
    loopAmps: short.volts / ohms,
  };
}

function failing(
  { kind }: WiringChange,
  plans: readonly FeedingPlan[],
  { low, weak }: { readonly low: Worst; readonly weak: Worst },
  { most, margin, trip, trainAmps, bus, feeder }: Rules,
): WiringRule[] {
  const lowered = kind === 'lower-trip' || kind === 'breakers';
  const found: readonly (readonly [WiringRule, boolean])[] = [
    ['drop', low.drop > most + 1e-12],
    ['short-circuit', weak.loopAmps < margin * trip],
    ['supply-below-trip', plans.some(({ source }) => source.limit !== undefined && source.limit <= trip)],
    ['bus-heat', bus !== undefined && !bears(bus, trip)],
    ['feeder-heat', feeder !== undefined && !bears(feeder, trip)],
    ['trip-too-low', lowered && trip * (1 - RESERVE) < trainAmps - 1e-9],
  ];
  return found.filter(([, fails]) => fails).map(([rule]) => rule);
}

const bears = ({ area }: Conductor, trip: number): boolean => heatingLimit(area) >= trip - 1e-9;

/** Sizes that resist less than the bus does now, thin to thick. */
function thickerThan({ plan, sizes }: WiringNeed, { degrees }: Rules): Conductor[] {
  return thinToThick(sizes, degrees).filter((size) => ohmsPerMetre(size, degrees) < plan.bus.ohmsPerMetre * (1 - 1e-9));
}

const thinToThick = (sizes: readonly Conductor[], degrees: number): Conductor[] =>
  [...sizes].sort((a, b) => ohmsPerMetre(b, degrees) - ohmsPerMetre(a, degrees));

/** How the unit is joined: as now, at the middle, or with the bus closed to a ring. */
interface Joined {
  readonly middle?: number | undefined;
  readonly ring?: true | undefined;
}

function waysToJoin({ plan: { bus, rails }, pair = false }: WiringNeed): Joined[] {
  if (bus.ring || (pair && rails.closed === true)) return [{}];
  const at = bus.length / 2;
  const middle = Math.abs(bus.fedAt - at) < SAME_PLACE ? [] : [{ middle: at }];
  return [{}, ...middle, ...(pair ? [] : [{ ring: true } as const])];
}

/** What may be laid anew together. */
interface Parts {
  readonly joined: Joined;
  readonly feeders: boolean;
  readonly bus: boolean;
}

/** Every way to lay it anew that is worth a line, cheapest first: parts alone and together, but none that cannot be cheaper than what is good already. */
function rewirings(need: WiringNeed, rules: Rules): WiringCandidate[] {
  const anew = layingAnew(need, rules);
  const thicker = thickerThan(need, rules);
  const found: WiringCandidate[] = [];
  let least: Cost | undefined;
  for (const parts of partsInOrder(need)) {
    if (least !== undefined && byMoneyThenTime(leastCost(parts, need), least) >= 0) continue;
    const { joined, bus, feeders } = parts;
    const one = cheapest(anew, joined, bus ? thicker : [undefined], feeders ? FEEDER_SPACINGS : [undefined]);
    if (one === undefined) continue;
    found.push(one);
    if (isGood(one) && joined.ring !== true && (least === undefined || byMoneyThenTime(one.cost, least) < 0))
      least = one.cost;
  }
  return found.sort(cheaperFirst);
}

function partsInOrder(need: WiringNeed): Parts[] {
  const both = [false, true] as const;
  const all = waysToJoin(need).flatMap((joined) =>
    both.flatMap((bus) => both.map((feeders): Parts => ({ joined, bus, feeders }))),
  );
  return all.sort((a, b) => byMoneyThenTime(leastCost(a, need), leastCost(b, need)));
}

/** What it takes at the least, with a single new feeder and whatever wire. */
const leastCost = ({ joined: { middle, ring }, bus, feeders }: Parts, { plan, pair = false }: WiringNeed): Cost =>
  workCost(
    { middle: middle !== undefined, ring: ring === true, bus: bus ? 0 : undefined, feeders: feeders ? 1 : 0 },
    plan,
    pair,
  );

const cheaperFirst = (a: WiringCandidate, b: WiringCandidate): number => byMoneyThenTime(a.cost, b.cost);

type LaidAnew = (
  joined: Joined,
  bus: Conductor | undefined,
  spacing: number | undefined,
) => WiringCandidate | undefined;

/** Each way to lay it is judged when it is first asked for; undefined where it is no other than now. */
function layingAnew(need: WiringNeed, rules: Rules): LaidAnew {
  const known = new Map<string, WiringCandidate | undefined>();
  return (joined, bus, spacing) => {
    const key = JSON.stringify([joined, bus, spacing]);
    if (!known.has(key)) known.set(key, laidAnew(need, rules, { joined, bus, spacing }));
    return known.get(key);
  };
}

interface Anew {
  readonly joined: Joined;
  readonly bus: Conductor | undefined;
  readonly spacing: number | undefined;
}

function laidAnew(need: WiringNeed, rules: Rules, anew: Anew): WiringCandidate | undefined {
  const { joined, bus, spacing } = anew;
  const { plan } = need;
  const more = spacing === undefined ? undefined : feedersEvery(spacing, plan);
  if (spacing !== undefined && more === undefined) return undefined;
  const feederWire = feederToBuy(need, rules);
  const change: Rewired = {
    kind: 'rewired',
    ...(joined.middle === undefined ? {} : { middle: joined.middle }),
    ...(joined.ring === undefined ? {} : { ring: joined.ring }),
    ...(bus === undefined ? {} : { bus }),
    ...(spacing === undefined || more === undefined
      ? {}
      : { feeders: { spacing, count: more.length, added: more.length - plan.feeders.length } }),
    ...(feederWire === undefined ? {} : { feederWire }),
  };
  if (Object.keys(change).length === 1) return undefined;
  const laid = bus === undefined ? plan : withBus(plan, bus, rules);
  const feeders = ofWire(more ?? movedFeeders(need, joined), feederWire, rules);
  const whole = { ...laid, bus: { ...laid.bus, ...joinedAs(joined) }, feeders };
  const heat = { ...rules, bus: bus ?? rules.bus, feeder: feederWire ?? rules.feeder };
  return sound([judgePlans(change, [whole], heat)])[0];
}

const joinedAs = ({ middle, ring }: Joined): Partial<FeedingPlan['bus']> => ({
  ...(middle === undefined ? {} : { fedAt: middle }),
  ...(ring === undefined ? {} : { ring }),
});

// A pair of wires without feeders of its own joins the track where it leaves the bus that is not there.
const movedFeeders = ({ plan, pair = false }: WiringNeed, { middle }: Joined): readonly Feeder[] =>
  pair && middle !== undefined ? plan.feeders.map((one) => ({ ...one, at: middle })) : plan.feeders;

function ofWire(feeders: readonly Feeder[], wire: Conductor | undefined, { degrees }: Rules): readonly Feeder[] {
  if (wire === undefined) return feeders;
  const ohms = ohmsPerMetre(wire, degrees);
  return feeders.map((one) => ({ ...one, ohmsPerMetre: ohms }));
}

/** The thinnest wire on sale that bears the trip current, where the feeders that are there do not. */
function feederToBuy({ sizes, feeder }: WiringNeed, { trip, degrees }: Rules): Conductor | undefined {
  if (feeder === undefined || bears(feeder, trip)) return undefined;
  return thinToThick(sizes, degrees).find((size) => bears(size, trip));
}

/** The cheapest that is good, else the cheapest that passes; else the most that these sizes (thin to thick) and distances (wide to close) can do. */
function cheapest(
  anew: LaidAnew,
  joined: Joined,
  sizes: readonly (Conductor | undefined)[],
  spacings: readonly (number | undefined)[],
): WiringCandidate | undefined {
  for (const does of [isGood, passes]) {
    const found = sizes.flatMap((size) => {
      // What does not do with the closest feeders does not do with fewer.
      const most = anew(joined, size, spacings.at(-1));
      return most === undefined || !does(most)
        ? []
        : firstThat(
            does,
            spacings.map((spacing) => () => anew(joined, size, spacing)),
          );
    });
    const [best] = found.sort(cheaperFirst);
    if (best !== undefined) return best;
  }
  return anew(joined, sizes.at(-1), spacings.at(-1));
}

function firstThat(
  does: (one: WiringCandidate) => boolean,
  ways: readonly (() => WiringCandidate | undefined)[],
): WiringCandidate[] {
  for (const way of ways) {
    const one = way();
    if (one !== undefined && does(one)) return [one];
  }
  return [];
}

function withBus(plan: FeedingPlan, conductor: Conductor, { degrees }: Rules): FeedingPlan {
  return { ...plan, bus: { ...plan.bus, ohmsPerMetre: ohmsPerMetre(conductor, degrees) } };
}

// Evenly over the track, as many as are more than there are now; none beyond the end of the bus.
function feedersEvery(spacing: number, { rails, bus, feeders }: FeedingPlan): Feeder[] | undefined {
  const [wire] = feeders;
  if (wire === undefined) return undefined;
  const even = evenFeeders({ spacing }, rails, { length: wire.length, ohmsPerMetre: wire.ohmsPerMetre });
  const reached = even.filter(({ at }) => at <= bus.length);
  return reached.length > feeders.length ? reached : undefined;
}

/**
 * The least wiring that makes a plan good whose wires are not laid or not known: the thinnest of the sizes, and with it the widest distance
 * between feeders, none closer than `closest` metres; where none makes it good, the thickest with what is bearable, so that a longer track
 * never asks for thinner wire. The plan's bus and feeders say how they run, their number and the bus's wire do not count. Undefined where
 * no size will do, or the plan cannot be. Source: own-derivation.
 */
export function leastWiring(need: WiringNeed, closest: number): WiringCandidate | undefined {
  const rules = rulesOf(need);
  const [wire] = need.plan.feeders;
  if (wire === undefined) return undefined;
  const judged = judgedOnce(need.plan, wire, rules);
  const spacings = FEEDER_SPACINGS.filter((spacing) => spacing >= closest);
  const sizes = thinToThick(need.sizes, rules.degrees);
  return leastOf(sizes, spacings, judged, isGood) ?? leastOf(sizes.slice(-1), spacings, judged, passes);
}

type Judged = (size: Conductor, spacing: number) => WiringCandidate | undefined;

/** Each size with each spacing is laid and judged when it is first asked for. */
function judgedOnce(plan: FeedingPlan, wire: Feeder, rules: Rules): Judged {
  const known = new Map<string, WiringCandidate | undefined>();
  return (conductor, spacing) => {
    const key = `${conductor.area} ${conductor.make} ${spacing}`;
    if (known.has(key)) return known.get(key);
    const feeders = evenFeeders({ spacing }, plan.rails, wire);
    const change: Rewired = {
      kind: 'rewired',
      bus: conductor,
      feeders: { spacing, count: feeders.length, added: feeders.length },
    };
    const [one] = sound([
      judgePlans(change, [{ ...withBus(plan, conductor, rules), feeders }], { ...rules, bus: conductor }),
    ]);
    known.set(key, one);
    return one;
  };
}

/** `sizes` thin to thick, `spacings` wide to close. */
function leastOf(
  sizes: readonly Conductor[],
  spacings: readonly number[],
  judged: Judged,
  does: (one: WiringCandidate) => boolean,
): WiringCandidate | undefined {
  const [thickest, closest] = [sizes.at(-1), spacings.at(-1)];
  if (thickest === undefined || closest === undefined) return undefined;
  const found = (size: Conductor, spacing: number): WiringCandidate | undefined => {
    const one = judged(size, spacing);
    return one !== undefined && does(one) ? one : undefined;
  };
  // A size that does not do with the closest feeders does not do with fewer; where the thickest does not, none does.
  if (found(thickest, closest) === undefined) return undefined;
  const size = sizes.find((one) => found(one, closest) !== undefined) ?? thickest;
  for (const spacing of spacings) {
    const one = found(size, spacing);
    if (one !== undefined) return one;
  }
  return undefined;
}

/** The wiring of a plan as it is, judged alone. Problems: as of the plan. */
export const presentWiring = (need: WiringNeed): WiringCandidate | FeedingProblem =>
  judgePlans({ kind: 'as-it-is' }, [need.plan], rulesOf(need));

/** What trips with the margin at the weakest place, and on this supply: the stage set lower, and breakers that are lower still. */
function lowerTrips(
  laid: PlanCircuit,
  rules: Rules,
  { loopAmps }: WiringCandidate,
  { supplyGives = Number.POSITIVE_INFINITY, tripMost = Number.POSITIVE_INFINITY }: WiringNeed,
): (WiringCandidate | FeedingProblem | undefined)[] {
  const trips = (level: number): boolean =>
    level * rules.margin <= loopAmps && level < supplyGives && level <= tripMost;
  const stage = COMMON_TRIPS.findLast((level) => level < rules.trip && trips(level));
  if (stage === undefined) return [];
  const breaker = COMMON_TRIPS.findLast((level) => level <= BREAKER_SHARE * rules.trip + 1e-9 && level <= stage);
  return [
    judge({ kind: 'lower-trip', trip: stage }, [laid], { ...rules, trip: stage }),
    breaker === undefined ? undefined : judge({ kind: 'breakers', trip: breaker }, [laid], { ...rules, trip: breaker }),
  ];
}

function secondStage(plan: FeedingPlan, rules: Rules): WiringCandidate | FeedingProblem | undefined {
  const { bus, rails } = plan;
  const cutAt = rails.length / 2;
  if (rails.closed === true || bus.ring || bus.length < rails.length - 1e-6) return undefined;
  const near = bus.fedAt <= cutAt;
  const fedAt = near ? rails.length : 0;
  const halves = [
    halfOf(plan, 0, cutAt, near ? bus.fedAt : 0),
    halfOf(plan, cutAt, rails.length, near ? fedAt : bus.fedAt),
  ];
  return judgePlans({ kind: 'second-stage', cutAt, fedAt }, halves, rules, [0, cutAt]);
}

/** A feeder nearer to the new gap than this, metres, serves it. Source: common-practice. */
const NEAR_GAP = 0.1;

// Both sides of the new gap get a feeder: the joint that carried current there no longer does.
function halfOf(plan: FeedingPlan, from: number, to: number, fedAt: number): FeedingPlan {
  const length = to - from;
  const inside = plan.feeders
    .filter(({ at }) => at >= from && (at < to || to === plan.rails.length))
    .map((one) => ({ ...one, at: one.at - from }));
  const joints = plan.rails.joints
    .filter(({ at }) => at > from + 1e-6 && at < to - 1e-6)
    .map((one) => ({ ...one, at: one.at - from }));
  const [wire] = plan.feeders;
  const gap = from === 0 ? length : 0;
  const fed = inside.some(({ at }) => Math.abs(at - gap) < NEAR_GAP);
  const atGap = wire === undefined || fed ? [] : [{ ...wire, at: gap }];
  return {
    source: plan.source,
    bus: { ...plan.bus, length, fedAt: fedAt - from },
    feeders: [...inside, ...atGap],
    rails: { ...plan.rails, length, joints },
  };
}
