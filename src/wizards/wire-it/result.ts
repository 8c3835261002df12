// What "How thick must the wire be?" works out of its answers.
import type {
  Conductor,
  Cost,
  FeedingPlan,
  FeedingProblem,
  GapReading,
  MeasureSystem,
  MeterKind,
  OutOfReach,
  Rewired,
  Scale,
  ShortAlong,
  ShortTest,
  Span,
  SupplyTrip,
  TrainAlong,
  TripLevel,
  WiringCandidate,
  Working,
} from '../../engine/index.ts';
import {
  byMoneyThenTime,
  DROP_LIMIT,
  faultHeatAlong,
  judgeRails,
  leastWiring,
  loadedVolts,
  loopLimit,
  METER_KINDS,
  presentWiring,
  railsRead,
  shortTest,
  solvePlan,
  sourceOhms,
  suggestWiring,
  tripLevel,
} from '../../engine/index.ts';
import type { Answers, Assumption } from '../planning/index.ts';
import { Reader, systemsTyped } from '../planning/index.ts';
import type { Need, Run, Wires } from './laid.ts';
import {
  feederCount,
  feederWire,
  needOf,
  planOf,
  reachOf,
  runOf,
  sizesOf,
  supplyFound,
  usualFeeders,
  wireOf,
} from './laid.ts';
import type { WireItOutcome } from './outcomes.ts';
import type { Sure } from './sure.ts';
import { sureOf, taking, untold } from './sure.ts';

/** Metres of track that enough wiring is told for where nobody has measured it. Source: common-practice. */
const USUAL_TRACKS: readonly number[] = [5, 10];

/** What the harmless load test should show, volts on the same meter. */
export interface TestAhead {
  readonly test: Extract<ShortTest, { kind: 'test' }>;
  /** Without the resistor, and with it at the unit and at the weakest place. */
  readonly open: number;
  readonly near: number;
  readonly far: number;
  /** The same as each kind of meter shows it on its a.c. volts. */
  readonly meters: readonly MeterReads[];
}

export interface MeterReads extends Readonly<Record<'open' | 'near' | 'far', GapReading>> {
  readonly meter: MeterKind;
}

/** What has to be read or measured before wiring can be judged, in the order in which it is easiest. */
export type Missing = 'trip' | 'supply' | 'wire' | 'way' | 'track' | 'feeders';

/** Too little is known to judge the wiring; what would surely do is known all the same. */
export interface NotKnown {
  readonly kind: 'not-known';
  readonly outcome: 'wiring-not-known';
  readonly missing: readonly Missing[];
  /** What it would be with as many feeders as is usual, where these are all that keeps it from being judged. */
  readonly uncounted: Wiring | undefined;
  readonly enough: readonly Enough[];
  readonly volts: number;
  readonly outOfReach: OutOfReach | undefined;
  readonly trainAmps: number;
  /** Reckoned with, amperes; what the scale bears where the unit is set higher. */
  readonly trip: number;
  readonly tripLevel: TripLevel;
  readonly assumptions: readonly Assumption[];
}

/** The least bus and feeders that are good, or else will do, whatever is not known; undefined where none that is sold is. */
export interface Enough {
  /** Metres of track, and of wire from the unit to its far end. */
  readonly track: number;
  readonly way: number;
  readonly least: WiringCandidate | undefined;
  /** Of its feeders. */
  readonly feeder: Conductor;
}

/** Nothing of the wires is to be judged before this is put right. */
export interface Stopped {
  readonly kind: 'stopped';
  readonly outcome: 'rail-voltage-too-high' | 'volts-too-low' | 'supply-cannot-trip';
  readonly scale: Scale;
  readonly volts: number;
  readonly outOfReach: OutOfReach | undefined;
  readonly trip: number;
  readonly supply: SupplyTrip | undefined;
  /** It may take another supply; what the unit's input asks for is not known here. */
  readonly buys: boolean;
}

export interface Wiring {
  readonly kind: 'wiring';
  readonly outcome: WireItOutcome;
  readonly scale: Scale;
  readonly plan: FeedingPlan;
  readonly wire: Conductor;
  /** Metres of wire from the unit to the farthest feeder, as told. */
  readonly way: number;
  /** The track hangs on one pair of wires, without a bus. */
  readonly pair: boolean;
  /** Somebody has counted the feeders; else their number and places are taken as usual. */
  readonly feedersTold: boolean;
  readonly trainAmps: number;
  readonly trip: number;
  readonly tripLevel: TripLevel;
  readonly outOfReach: OutOfReach | undefined;
  /** Whether the supply trips the unit; undefined while its label is not read. */
  readonly supply: SupplyTrip | undefined;
  readonly sure: Sure;
  /** Undefined where the present wiring leaves a train no voltage at all; then `train` is too. */
  readonly now: WiringCandidate | undefined;
  /** What trains far away may draw as it is, amperes, so that no more is lost than may be; undefined where they may draw what was told. */
  readonly tonight: number | undefined;
  readonly chosen: WiringCandidate | undefined;
  /** What else would do, by money and then by time. */
  readonly others: readonly WiringCandidate[];
  readonly candidates: readonly WiringCandidate[];
  readonly train: TrainAlong | undefined;
  /** No more than the supply surely gives, where it only perhaps trips the unit. */
  readonly short: ShortAlong;
  /** Most ohms that may lie before a short, and the worst heat of one that does not trip: how both came about. */
  readonly loopLimit: Working;
  readonly faultHeat: Working;
  readonly test: TestAhead | undefined;
  readonly assumptions: readonly Assumption[];
}

export type WireFound = Wiring | NotKnown | Stopped | (FeedingProblem & { readonly outcome: WireItOutcome });

/**
 * Works out the wiring. Without the wire, its way and the track there is no verdict; and wiring whose feeders nobody has counted is good
 * only if one feeder is enough. Rails that stand too high, and a supply that cannot trip its unit, come before any wire. A plan that cannot
 * be (all are read from checked answers) gives its problem. Wires to buy are those that the person's `system` knows.
 */
export function wire(answers: Answers, system: MeasureSystem = soldTo(answers)): WireFound {
  const reader = new Reader(answers);
  const stopped = stoppedAt(reader);
  if (stopped !== undefined) return stopped;
  const described = describedBy(reader);
  if (described === undefined) return notKnown(answers, system);
  const found = judged(described, answers, system);
  const counted = feederCount(reader, described.run) !== undefined;
  if (counted || found.outcome !== 'wiring-good') return found;
  return goodWithOneFeeder(described) ? found : notKnown(answers, system, found.kind === 'wiring' ? found : undefined);
}

function soldTo(answers: Answers): MeasureSystem {
  const { lengths, wires } = systemsTyped(answers);
  return wires ?? lengths ?? 'metric';
}

// One feeder at the end of the wire and of the track: whatever more there is, does better.
function goodWithOneFeeder({ reader, need, run, wires }: Described): boolean {
  const plan = planOf(reader, need, { ...run, pair: true, shape: 'end' }, { ...wires, feeders: 1 });
  const one = presentWiring({ plan, trainAmps: need.trainAmps, trip: need.trip, sizes: [], bus: wires.conductor });
  return 'verdict' in one && one.verdict === 'good';
}

function stoppedAt(reader: Reader): Stopped | undefined {
  const { scale, volts, outOfReach, trip } = needOf(reader);
  const supply = supplyFound(reader, { volts, trip });
  // What they are set to is too high on whatever supply comes next.
  const set = outOfReach?.set ?? volts;
  const at = { kind: 'stopped', scale, volts: set, outOfReach, trip, supply } as const;
  const rails = judgeRails({ idle: { from: set, to: set }, loaded: { from: volts, to: volts } }, scale);
  if (rails === 'over-stop' || rails === 'over-decoder')
    return { ...at, outcome: 'rail-voltage-too-high', buys: false };
  if (rails === 'too-low') return { ...at, outcome: 'volts-too-low', buys: true };
  // A trip current above what the scale bears comes down first, and then this supply may do.
  if (tripLevel(scale, trip).finding === 'above-ceiling') return undefined;
  return supply?.kind === 'surely-not' ? { ...at, outcome: 'supply-cannot-trip', buys: true } : undefined;
}

/** Wiring of which enough is told to judge it. */
interface Described {
  readonly reader: Reader;
  readonly need: Need;
  readonly run: Run;
  readonly wires: Wires;
  readonly plan: FeedingPlan;
}

function describedBy(reader: Reader): Described | undefined {
  const need = needOf(reader);
  const conductor = wireOf(reader);
  const way = reader.number('bus-length');
  const track = reader.number('track-length');
  if (conductor === undefined || way === undefined || track === undefined) return undefined;
  const run = runOf(reader, { way, track });
  const feeders = feederCount(reader, run) ?? usualFeeders(reader, track);
  const feeder = run.pair ? conductor : feederWire(reader, need.trip);
  const wires = { conductor, feeders, feeder };
  return { reader, need, run, wires, plan: planOf(reader, need, run, wires) };
}

/** Whether wiring described like this keeps the rules; no wires are tried that are not there. */
function willDo(answers: Answers): boolean {
  const described = describedBy(new Reader(answers));
  if (described === undefined) return false;
  const { need, wires, plan } = described;
  const { trainAmps, trip } = need;
  const one = presentWiring({ plan, trainAmps, trip, sizes: [], bus: wires.conductor, feeder: wires.feeder });
  return 'verdict' in one && one.verdict !== 'fails';
}

function judged(
  { reader, need, run, wires, plan }: Described,
  answers: Answers,
  system: MeasureSystem,
): Exclude<WireFound, NotKnown | Stopped> {
  const { trainAmps, trip, scale, outOfReach } = need;
  const { conductor, feeder } = wires;
  const circuit = solvePlan(plan);
  if (circuit.kind === 'no-solution') return { ...circuit, outcome: 'booster-near-load' };
  const supply = supplyFound(reader, need);
  const level = tripLevel(scale, trip);
  const wanted = {
    plan,
    trainAmps,
    trip,
    sizes: sizesOf(system, conductor.make),
    bus: conductor,
    feeder,
    pair: run.pair,
    tripMost: level.ceiling,
    ...(supply === undefined ? {} : { supplyGives: supply.gives.from }),
  };
  const advice = suggestWiring(wanted, circuit);
  if (advice.kind === 'no-solution') return { ...advice, outcome: 'booster-near-load' };
  const train = circuit.train(trainAmps);
  const most = shortBehind(plan, supply?.gives.to);
  if (most.kind === 'no-solution') return { ...most, outcome: 'booster-near-load' };
  // What a supply perhaps gives is not drawn as if it were sure.
  const least = supply?.kind === 'perhaps' ? shortBehind(plan, supply.gives.from) : most;
  if (least.kind === 'no-solution') return { ...least, outcome: 'booster-near-load' };
  const candidates = advice.candidates.map((one) => gated(level, one));
  const now = candidates.find(({ change }) => change.kind === 'as-it-is');
  const chosen = choose(candidates, level);
  return {
    kind: 'wiring',
    outcome: outcomeOf(chosen, run),
    scale,
    plan,
    wire: conductor,
    way: run.way,
    pair: run.pair,
    feedersTold: feederCount(reader, run) !== undefined,
    trainAmps,
    trip,
    tripLevel: level,
    outOfReach,
    supply,
    sure: sureOf(answers, willDo),
    now,
    tonight: tonightAmps(now, trainAmps),
    chosen,
    others: othersThan(chosen, candidates, run.pair),
    candidates,
    train: train.kind === 'along' ? train : undefined,
    short: least,
    loopLimit: loopLimit(plan.source.volts, trip),
    faultHeat: faultHeatAlong(most, trip).working,
    test: testAhead(plan, least, trip),
    assumptions: reader.assumptions,
  };
}

/** What is lost grows with the amperes. */
function tonightAmps(now: WiringCandidate | undefined, trainAmps: number): number | undefined {
  return now === undefined || now.drop <= DROP_LIMIT ? undefined : (trainAmps * DROP_LIMIT) / now.drop;
}

/** What a short draws at the weakest spot, amperes: what the supply surely gives and what it gives for a moment, as far as the wires let it through. */
export function shortDrawn({ shortAmps }: WiringCandidate, supply: SupplyTrip | undefined): Span {
  const { from, to } = supply?.gives ?? { from: Number.POSITIVE_INFINITY, to: Number.POSITIVE_INFINITY };
  return { from: Math.min(shortAmps, from), to: Math.min(shortAmps, to) };
}

/** The supply surely gives more than the unit then trips at; wires alone prove no trip. */
export const isTripSure = ({ trip }: WiringCandidate, supply: SupplyTrip | undefined): boolean =>
  supply !== undefined && supply.gives.from > trip + 1e-9;

/** Nothing is good, nor will do, while the unit trips above what the scale bears. */
const gated = ({ finding }: TripLevel, one: WiringCandidate): WiringCandidate =>
  finding === 'above-ceiling' && !isLower(one)
    ? { ...one, verdict: 'fails', fails: [...one.fails, 'trip-above-scale'] }
    : one;

/** A short draws no more than the supply gives, amperes; undefined where nobody has read its label. */
function shortBehind(plan: FeedingPlan, limit: number | undefined): ShortAlong | FeedingProblem {
  const source = limit === undefined ? plan.source : { ...plan.source, limit };
  const circuit = solvePlan({ ...plan, source });
  return circuit.kind === 'circuit' ? circuit.short() : circuit;
}

/** Every size that is sold may be the bus; where a wire is there already, it or a thicker one. */
function notKnown(told: Answers, system: MeasureSystem, uncounted?: Wiring): NotKnown {
  const answers = careful(told);
  const reader = new Reader(answers);
  const need = needOf(reader);
  const level = tripLevel(need.scale, need.trip);
  const trip = Math.min(need.trip, level.ceiling);
  const given = { ...need, trip, trainAmps: Math.min(need.trainAmps, trip) };
  const conductor = wireOf(reader);
  const sizes = conductor === undefined ? sizesOf(system, 'flexible') : orThicker(conductor, system);
  const way = reader.number('bus-length');
  const track = reader.number('track-length');
  const missing: readonly (readonly [Missing, boolean])[] = [
    ['trip', untold(told).includes('wire-trip')],
    ['supply', supplyFound(reader, need) === undefined],
    ['wire', conductor === undefined],
    ['way', way === undefined],
    ['track', track === undefined],
    ['feeders', feederCount(reader, { pair: reader.option('feed-by') === 'pair' }) === undefined],
  ];
  const enough = (track === undefined ? USUAL_TRACKS : [track]).map(
    (length): Enough => enoughFor(reader, given, sizes, { way: way ?? length, track: length }),
  );
  return {
    kind: 'not-known',
    outcome: 'wiring-not-known',
    missing: missing.flatMap(([part, isMissing]) => (isMissing ? [part] : [])),
    uncounted,
    enough,
    volts: need.volts,
    outOfReach: need.outOfReach,
    trainAmps: given.trainAmps,
    trip,
    tripLevel: level,
    assumptions: assumedFor(told, reader),
  };
}

function enoughFor(
  reader: Reader,
  need: Need,
  sizes: readonly Conductor[],
  lengths: Pick<Run, 'way' | 'track'>,
): Enough {
  const [conductor] = sizes;
  const run = runOf(reader, lengths);
  const feeder = feederWire(reader, need.trip);
  const least = conductor === undefined ? undefined : leastFor(reader, need, run, { conductor, sizes, feeder });
  const reach = reachOf(run);
  return { track: lengths.track, way: run.pair ? run.way + reach : Math.max(run.way, reach), least, feeder };
}

// What is good; where no wire that is sold makes it so, what will do.
function leastFor(
  reader: Reader,
  need: Need,
  run: Run,
  { conductor, sizes, feeder }: Pick<Wires, 'conductor' | 'feeder'> & { readonly sizes: readonly Conductor[] },
): WiringCandidate | undefined {
  const { trainAmps, trip } = need;
  const plan = planOf(reader, need, run, { conductor, feeders: 1, feeder });
  return leastWiring({ plan, trainAmps, trip, sizes }, CLOSE_FEEDERS);
}

/** Feeders closer than this, metres, are never the least that surely does. Source: common-practice. */
const CLOSE_FEEDERS = 1;

const orThicker = (laid: Conductor, system: MeasureSystem): Conductor[] => [
  laid,
  ...sizesOf(system, laid.make).filter(({ area }) => area > laid.area),
];

/** What nobody has told is taken as the worst that is usual, so that what is told to buy surely does. */
const CAREFUL = ['wire-trip', 'rail-kind'] as const;

function careful(answers: Answers): Answers {
  const open = untold(answers);
  return taking(
    answers,
    CAREFUL.filter((id) => open.includes(id)),
    'worst',
  );
}

/** What the reader assumed, and what care put in the place of no answer. */
function assumedFor(answers: Answers, { answers: taken, assumptions }: Reader): Assumption[] {
  const added = Object.entries(taken).flatMap(([field, answer]) =>
    answers[field] === answer ? [] : [{ field, answer }],
  );
  return [...assumptions, ...added];
}

/** The fix that a change is told by. The others of its parts are added to its steps. */
function outcomeOf(chosen: WiringCandidate | undefined, { pair }: Run): WireItOutcome {
  if (chosen === undefined) return 'booster-near-load';
  const { change } = chosen;
  if (change.kind === 'rewired') return partsOf(change, pair)[0] ?? 'more-feeders';
  return OUTCOMES[change.kind];
}

const OUTCOMES = {
  'as-it-is': 'wiring-good',
  'lower-trip': 'lower-trip-level',
  breakers: 'lower-trip-level',
  'second-stage': 'booster-near-load',
} as const;

/** Fixes that together lay the wiring anew, what the change is told by first. */
export type WiringPart =
  | 'feed-bus-from-middle'
  | 'pair-to-the-middle'
  | 'bus-as-a-ring'
  | 'thicker-bus'
  | 'more-feeders'
  | 'thicker-feeders';

export function partsOf(change: Rewired, pair: boolean): WiringPart[] {
  const { middle, ring, bus, feeders, feederWire: wire } = change;
  const alone = pair && feeders === undefined;
  const parts: readonly (readonly [WiringPart, boolean])[] = [
    [alone ? 'pair-to-the-middle' : 'feed-bus-from-middle', middle !== undefined],
    ['bus-as-a-ring', ring === true],
    ['thicker-bus', bus !== undefined],
    ['more-feeders', feeders !== undefined],
    ['thicker-feeders', wire !== undefined],
  ];
  return parts.flatMap(([part, isIn]) => (isIn ? [part] : []));
}

/** Each is done before what is joined to it. */
const WORK: readonly WiringPart[] = [
  'thicker-bus',
  'thicker-feeders',
  'feed-bus-from-middle',
  'pair-to-the-middle',
  'bus-as-a-ring',
  'more-feeders',
];

/** The same in the order of the work. Where there is one pair only, its feeders are what lays the bus. */
export function inOrderOfWork(parts: readonly WiringPart[], pair: boolean): WiringPart[] {
  const laysBus = pair && parts.includes('more-feeders');
  const rest = WORK.filter((part) => parts.includes(part));
  return laysBus ? ['more-feeders', ...rest.filter((part) => part !== 'more-feeders' && part !== 'thicker-bus')] : rest;
}

const passes = ({ verdict }: WiringCandidate): boolean => verdict !== 'fails';
const isGood = ({ verdict }: WiringCandidate): boolean => verdict === 'good';
const isRing = ({ change }: WiringCandidate): boolean => change.kind === 'rewired' && change.ring === true;
const isLower = ({ change }: WiringCandidate): boolean => change.kind === 'lower-trip' || change.kind === 'breakers';

/** So much more is much: a long evening, and as much wire. Wiring that will do gets good for it. Hours, euros. Source: common-practice. */
const MUCH_MORE = { hours: 6, money: 30 } as const;

const isMuch = ({ cost }: WiringCandidate): boolean =>
  cost.hours.to > MUCH_MORE.hours || cost.money.to > MUCH_MORE.money;

/** So large a part of money and of hours is much of work that takes more than an evening. Source: common-practice. */
const MUCH = 1 / 3;

/** The ring does as well and spares much more, or much of what the other takes. */
export function isMuchCheaper(
  { cost: ring }: { readonly cost: Cost },
  { cost: other }: { readonly cost: Cost },
): boolean {
  const [money, hours] = [other.money.to - ring.money.to, other.hours.to - ring.hours.to];
  if (money < 0 || hours < 0) return false;
  if (money > MUCH_MORE.money || hours > MUCH_MORE.hours) return true;
  return other.hours.to > MUCH_MORE.hours && money > MUCH * other.money.to && hours > MUCH * other.hours.to;
}

/**
 * So large a part of what is lost may be more or less than reckoned: lengths are paced out, copper differs by its stranding and its heat.
 * What changes less than that changes nothing that anybody would find. Source: from-memory.
 */
const UNSURE = 0.1;

/** Ohms of wires and rails before a short at the weakest spot. */
const ohmsBeforeShort = ({ plans, loopAmps }: WiringCandidate): number =>
  Math.max(...plans.map(({ source }) => source.volts / loopAmps - source.ohms));

/** The loss at the worst spot, or what lies before a short, falls by more than is unsure; or a wire that got too hot no longer does. */
function canBeMeasured(one: WiringCandidate, now: WiringCandidate | undefined): boolean {
  if (now === undefined || one === now || one.change.kind !== 'rewired') return true;
  const cooler = HEAT.some((rule) => now.fails.includes(rule) && !one.fails.includes(rule));
  const most = 1 - UNSURE;
  return cooler || one.drop <= most * now.drop || ohmsBeforeShort(one) <= most * ohmsBeforeShort(now);
}

const HEAT = ['bus-heat', 'feeder-heat'] as const;

// The cheapest that keeps the limits and changes what can be measured. Where that is the wiring as it is, what makes it good, if that is not much. A ring is for layouts whose bus comes round again, so
// only where nothing else of wire will do, or where all else is much dearer: then with "if its ends can be joined".
// A trip current above what the scale bears comes down whatever the wires are.
function choose(candidates: readonly WiringCandidate[], level: TripLevel): WiringCandidate | undefined {
  if (level.finding === 'above-ceiling') {
    const lowered = candidates.find(isLower);
    if (lowered !== undefined) return lowered;
  }
  const now = candidates.find(({ change }) => change.kind === 'as-it-is');
  const kept = candidates.filter(({ change }) => change.kind === 'as-it-is' || change.kind === 'rewired');
  const felt = kept.filter((one) => canBeMeasured(one, now));
  const wiring = felt.some(passes) ? felt : kept;
  const line = wiring.filter((one) => !isRing(one));
  const least = line.find(passes);
  const good = line.find(isGood);
  const straight = good !== undefined && least?.change.kind === 'as-it-is' && !isMuch(good) ? good : least;
  if (straight === undefined) return wiring.find(isGood) ?? candidates.find(passes);
  const does = isGood(straight) ? isGood : passes;
  return wiring.find((one) => isRing(one) && does(one) && isMuchCheaper(one, straight)) ?? straight;
}

/** At most so many others are told. Source: own-choice. */
const MOST_OTHERS = 4;

/** What else does, by money and then by time: what costs less, what is better, and other ways that do as well; none that another one is part of. */
function othersThan(
  chosen: WiringCandidate | undefined,
  candidates: readonly WiringCandidate[],
  pair: boolean,
): readonly WiringCandidate[] {
  const isNow = ({ change }: WiringCandidate): boolean => change.kind === 'as-it-is';
  // Where wire makes it good, nobody buys a unit for it.
  const wireDoes = candidates.some((one) => one.change.kind === 'rewired' && isGood(one));
  const does = candidates.filter(
    (one) => one !== chosen && !isNow(one) && passes(one) && !(wireDoes && one.change.kind === 'second-stage'),
  );
  const now = candidates.find(isNow);
  const will = now !== undefined && passes(now);
  const worth = does.filter(
    (one) =>
      canBeMeasured(one, now) && (isGood(one) || !will) && (chosen === undefined || isWorthTelling(one, chosen, pair)),
  );
  const least = worth.filter((one) =>
    worth.every((other) => other === one || !holds(one, other, pair) || (isGood(one) && !isGood(other))),
  );
  return [...least].sort((a, b) => byMoneyThenTime(a.cost, b.cost)).slice(0, MOST_OTHERS);
}

function isWorthTelling(one: WiringCandidate, chosen: WiringCandidate, pair: boolean): boolean {
  if (isGood(one) && !isGood(chosen)) return true;
  if (chosen.change.kind === 'as-it-is') return false;
  return byMoneyThenTime(one.cost, chosen.cost) < 0 || ((isGood(one) || !isGood(chosen)) && !holds(one, chosen, pair));
}

/** Whether the one does all that the other does, and more. */
function holds(one: WiringCandidate, other: WiringCandidate, pair: boolean): boolean {
  const mine = stepsOf(one, pair);
  return stepsOf(other, pair).every((step) => mine.includes(step));
}

const stepsOf = ({ change }: WiringCandidate, pair: boolean): readonly string[] =>
  change.kind === 'rewired' ? partsOf(change, pair) : [change.kind];

function testAhead(plan: FeedingPlan, short: ShortAlong, trip: number): TestAhead | undefined {
  const { volts } = plan.source;
  const test = shortTest({ volts, trip });
  if (test.kind === 'none') return undefined;
  const near = loadedVolts({ volts, ohms: sourceOhms(plan) }, test.ohms);
  const far = loadedVolts({ volts, ohms: short.weakest.ohms }, test.ohms);
  return {
    test,
    open: volts,
    near,
    far,
    meters: METER_KINDS.map((meter) => ({
      meter,
      open: railsRead(meter, volts),
      near: railsRead(meter, near),
      far: railsRead(meter, far),
    })),
  };
}
