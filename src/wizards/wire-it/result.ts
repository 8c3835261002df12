// What "How thick must the wire be?" works out of its answers.
import type {
  Conductor,
  FeedingPlan,
  FeedingProblem,
  GapReading,
  LoadResistor,
  MeasureSystem,
  MeterKind,
  RailKind,
  Scale,
  ShortAlong,
  TrainAlong,
  TripLevel,
  WiringCandidate,
  Working,
} from '../../engine/index.ts';
import {
  chooseResistor,
  DRAWS,
  evenFeeders,
  FEEDER_WIRE,
  faultHeatAlong,
  GAUGE_SIZES,
  gaugeArea,
  leastLoadedVolts,
  leastWiring,
  loadedVolts,
  loopLimit,
  METER_KINDS,
  METRIC_SIZES,
  middle,
  ohmsPerMetre,
  presentWiring,
  railOhms,
  railsRead,
  STAGE_OHMS,
  solvePlan,
  sourceOhms,
  suggestWiring,
  TRACK_LIMITS,
  tripLevel,
} from '../../engine/index.ts';
import type { Answer, Answers, Assumption } from '../planning/index.ts';
import { Reader, systemTyped } from '../planning/index.ts';
import type { WireItOutcome } from './outcomes.ts';

/** Metres between feeders where nothing is said. Source: common-practice. */
const USUAL_SPACING = 3;
/** Metres of a length of track, and ohms of one joiner in one rail that is only slipped on, or soldered. Source: from-memory. */
const RAIL_PIECE = 0.9;
const JOINER_OHMS = { fed: 0, soldered: 0.001, plain: 0.02 } as const;
/** Metres of track that enough wiring is told for where nobody has measured it. Source: common-practice. */
const USUAL_TRACKS: readonly number[] = [5, 10];
/** Trains that are taken to draw together far from the unit. Source: common-practice. */
const TRAINS_FAR_AWAY = 2;

const RAIL_KINDS: Readonly<Record<string, RailKind>> = {
  'code-100': 'code-100',
  'code-83': 'code-83',
  'code-70': 'code-70',
  brass: 'code-100-brass',
};

/** What the harmless load test should show, volts on the same meter. */
export interface TestAhead {
  readonly resistor: LoadResistor;
  /** Without the resistor, and with it at the unit and at the weakest place. */
  readonly open: number;
  readonly near: number;
  readonly far: number;
  /** With less than this at the weakest place a short there may not trip. */
  readonly least: number;
  /** The same as each kind of meter shows it on its a.c. volts. */
  readonly meters: readonly MeterReads[];
}

export interface MeterReads extends Readonly<Record<'open' | 'near' | 'far', GapReading>> {
  readonly meter: MeterKind;
}

/** What has to be read or measured before wiring can be judged, in the order in which it is easiest. */
export type Missing = 'wire' | 'way' | 'track' | 'feeders';

/** Too little is known to judge the wiring; what would surely do is known all the same. */
export interface NotKnown {
  readonly kind: 'not-known';
  readonly outcome: 'wiring-not-known';
  readonly missing: readonly Missing[];
  readonly enough: readonly Enough[];
  readonly volts: number;
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
  readonly trainAmps: number;
  readonly trip: number;
  readonly tripLevel: TripLevel;
  /** Undefined where the present wiring leaves a train no voltage at all; then `train` is too. */
  readonly now: WiringCandidate | undefined;
  readonly chosen: WiringCandidate | undefined;
  readonly candidates: readonly WiringCandidate[];
  readonly train: TrainAlong | undefined;
  readonly short: ShortAlong;
  /** Most ohms that may lie before a short, and the worst heat of one that does not trip: how both came about. */
  readonly loopLimit: Working;
  readonly faultHeat: Working;
  readonly test: TestAhead | undefined;
  readonly assumptions: readonly Assumption[];
}

export type WireFound = Wiring | NotKnown | (FeedingProblem & { readonly outcome: WireItOutcome });

/**
 * Works out the wiring. Without the wire, its way and the track there is no verdict; and wiring whose feeders nobody has counted is good
 * only if one feeder is enough. A plan that cannot be (all are read from checked answers) gives its problem. Wires to buy are those that the person's `system` knows.
 */
export function wire(answers: Answers, system: MeasureSystem = systemTyped(answers) ?? 'metric'): WireFound {
  const reader = new Reader(answers);
  const need = needOf(reader);
  const conductor = wireOf(reader);
  const way = reader.number('bus-length');
  const track = reader.number('track-length');
  if (conductor === undefined || way === undefined || track === undefined) return notKnown(answers, system);
  const run = runOf(reader, { way, track });
  const count = feederCount(reader, run);
  const feeders = count ?? usualFeeders(reader, track);
  const laid = { reader, need, conductor, run, system };
  const found = judged(laid, feeders);
  if (count !== undefined || found.outcome !== 'wiring-good') return found;
  return goodWithOneFeeder(laid) ? found : notKnown(answers, system);
}

interface Laid {
  readonly reader: Reader;
  readonly need: Need;
  readonly conductor: Conductor;
  readonly run: Run;
  readonly system: MeasureSystem;
}

// One feeder at the end of the wire and of the track: whatever more there is, does better.
function goodWithOneFeeder({ reader, need, conductor, run }: Laid): boolean {
  const plan = planOf(reader, need, { ...run, pair: true, shape: 'end' }, { conductor, feeders: 1 });
  const one = presentWiring({ plan, trainAmps: need.trainAmps, trip: need.trip, sizes: [], bus: conductor });
  return 'verdict' in one && one.verdict === 'good';
}

function judged({ reader, need, conductor, run, system }: Laid, feeders: number): Exclude<WireFound, NotKnown> {
  const { trainAmps, trip, scale } = need;
  const plan = planOf(reader, need, run, { conductor, feeders });
  const sizes = sizesOf(system, conductor.make);
  const circuit = solvePlan(plan);
  if (circuit.kind === 'no-solution') return { ...circuit, outcome: 'booster-near-load' };
  const advice = suggestWiring({ plan, trainAmps, trip, sizes, bus: conductor }, circuit);
  if (advice.kind === 'no-solution') return { ...advice, outcome: 'booster-near-load' };
  const train = circuit.train(trainAmps);
  const short = circuit.short();
  if (short.kind === 'no-solution') return { ...short, outcome: 'booster-near-load' };
  // A pair moved to the middle of a bus that is not there helps nobody.
  const candidates = advice.candidates.filter(({ change }) => !run.pair || change.kind !== 'fed-from-the-middle');
  const now = candidates.find(({ change }) => change.kind === 'as-it-is');
  const level = tripLevel(scale, trip);
  const chosen = choose(candidates, level);
  return {
    kind: 'wiring',
    outcome: chosen === undefined ? 'booster-near-load' : OUTCOMES[chosen.change.kind],
    scale,
    plan,
    wire: conductor,
    way: run.way,
    pair: run.pair,
    trainAmps,
    trip,
    tripLevel: level,
    now,
    chosen,
    candidates,
    train: train.kind === 'along' ? train : undefined,
    short,
    loopLimit: loopLimit(plan.source.volts, trip),
    faultHeat: faultHeatAlong(short, trip).working,
    test: testAhead(plan, short, trip),
    assumptions: reader.assumptions,
  };
}

/** Every size that is sold may be the bus; where a wire is there already, it or a thicker one. */
function notKnown(answers: Answers, system: MeasureSystem): NotKnown {
  const reader = new Reader(careful(answers));
  const need = needOf(reader);
  const level = tripLevel(need.scale, need.trip);
  const trip = Math.min(need.trip, level.ceiling);
  const given = { ...need, trip, trainAmps: Math.min(need.trainAmps, trip) };
  const conductor = wireOf(reader);
  const sizes = conductor === undefined ? sizesOf(system, 'flexible') : orThicker(conductor, system);
  const way = reader.number('bus-length');
  const track = reader.number('track-length');
  const missing: readonly (readonly [Missing, boolean])[] = [
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
    enough,
    volts: need.volts,
    trainAmps: given.trainAmps,
    trip,
    tripLevel: level,
    assumptions: assumedFor(answers, reader),
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
  const least = conductor === undefined ? undefined : leastFor(reader, need, run, { conductor, sizes });
  const reach = reachOf(run);
  return { track: lengths.track, way: run.pair ? lengths.way + reach : Math.max(lengths.way, reach), least };
}

// What is good; where no wire that is sold makes it so, what will do.
function leastFor(
  reader: Reader,
  need: Need,
  run: Run,
  { conductor, sizes }: { readonly conductor: Conductor; readonly sizes: readonly Conductor[] },
): WiringCandidate | undefined {
  const { trainAmps, trip } = need;
  const wanted = { plan: planOf(reader, need, run, { conductor, feeders: 1 }), trainAmps, trip, sizes };
  return leastWiring(wanted, CLOSE_FEEDERS);
}

const orThicker = (laid: Conductor, system: MeasureSystem): Conductor[] => [
  laid,
  ...sizesOf(system, laid.make).filter(({ area }) => area > laid.area),
];

/** What nobody has told is taken as the worst that is usual, so that what is told to buy surely does. Rails: from-memory. */
const carefulRail = (scale: Scale): Answer => ({
  kind: 'choice',
  option: scale === '0' || scale === '1' ? 'code-100' : 'code-70',
});

function careful(answers: Answers): Answers {
  const scale = new Reader(answers).scale();
  const trip = DRAWS[scale].trip.to;
  return {
    ...answers,
    ...(answers['rail-kind']?.kind === 'choice' ? {} : { 'rail-kind': carefulRail(scale) }),
    ...(answers['wire-trip']?.kind === 'number'
      ? {}
      : { 'wire-trip': { kind: 'number', span: { from: trip, to: trip } } }),
  };
}

/** What the reader assumed, and what care put in the place of no answer. */
function assumedFor(answers: Answers, { answers: taken, assumptions }: Reader): Assumption[] {
  const added = Object.entries(taken).flatMap(([field, answer]) =>
    answers[field] === answer ? [] : [{ field, answer }],
  );
  return [...assumptions, ...added];
}

const OUTCOMES: Readonly<Record<WiringCandidate['change']['kind'], WireItOutcome>> = {
  'as-it-is': 'wiring-good',
  'more-feeders': 'more-feeders',
  'thicker-bus': 'thicker-bus',
  'feeders-and-thicker-bus': 'thicker-bus',
  'fed-from-the-middle': 'feed-bus-from-middle',
  'lower-trip': 'lower-trip-level',
  breakers: 'lower-trip-level',
  'second-stage': 'booster-near-load',
};

const passes = ({ verdict }: WiringCandidate): boolean => verdict !== 'fails';
const ofWire = ({ change }: WiringCandidate): boolean =>
  change.kind !== 'lower-trip' && change.kind !== 'breakers' && change.kind !== 'second-stage';

/** Feeders closer than this, metres, are laid only where nothing else helps. Source: common-practice. */
const CLOSE_FEEDERS = 1;
const isWork = ({ change }: WiringCandidate): boolean =>
  change.kind === 'more-feeders' && change.spacing < CLOSE_FEEDERS;

// Good as it stands: nothing to do. Else the wire that makes it good, since wire is bought once; then what stands, if it is
// bearable; then whatever passes first. A trip current above what the scale bears comes down whatever the wires are.
function choose(candidates: readonly WiringCandidate[], level: TripLevel): WiringCandidate | undefined {
  if (level.finding === 'above-ceiling') {
    const lowered = candidates.find(({ change }) => change.kind === 'lower-trip' || change.kind === 'breakers');
    if (lowered !== undefined) return lowered;
  }
  const [first] = candidates;
  if (first?.change.kind === 'as-it-is' && first.verdict === 'good') return first;
  const good = candidates.filter((one) => ofWire(one) && one.verdict === 'good');
  return good.find((one) => !isWork(one)) ?? good[0] ?? candidates.find(passes);
}

/** Wires that are sold where people measure so. */
function sizesOf(system: MeasureSystem, make: Conductor['make']): Conductor[] {
  const areas = system === 'metric' ? METRIC_SIZES : GAUGE_SIZES.map(gaugeArea);
  return areas.map((area) => ({ area, make }));
}

function testAhead(plan: FeedingPlan, short: ShortAlong, trip: number): TestAhead | undefined {
  const { volts } = plan.source;
  const ohms = sourceOhms(plan);
  const resistor = chooseResistor(volts, trip);
  if (resistor === undefined) return undefined;
  const near = loadedVolts({ volts, ohms }, resistor.ohms);
  const far = loadedVolts({ volts, ohms: short.weakest.ohms }, resistor.ohms);
  return {
    resistor,
    open: volts,
    near,
    far,
    least: leastLoadedVolts(volts, trip, resistor.ohms),
    meters: METER_KINDS.map((meter) => ({
      meter,
      open: railsRead(meter, volts),
      near: railsRead(meter, near),
      far: railsRead(meter, far),
    })),
  };
}

/** What the wiring has to carry. */
interface Need {
  readonly scale: Scale;
  readonly volts: number;
  readonly trip: number;
  readonly trainAmps: number;
}

function needOf(reader: Reader): Need {
  const scale = reader.scale();
  const volts = given(reader, 'wire-volts', TRACK_LIMITS[scale].normal);
  const trip = given(reader, 'wire-trip', middle(DRAWS[scale].trip));
  const wanted = given(reader, 'wire-amps', TRAINS_FAR_AWAY * DRAWS[scale].modern.to);
  const trainAmps = Math.min(wanted, trip);
  if (trainAmps < wanted) reader.assume('wire-amps', { kind: 'number', span: { from: trip, to: trip } });
  return { scale, volts, trip, trainAmps };
}

function wireOf(reader: Reader): Conductor | undefined {
  const area = reader.number('bus-wire');
  return area === undefined ? undefined : { area, make: 'flexible' };
}

/** How the wires run: metres from the unit to the farthest feeder, metres of track, and where the two meet. */
interface Run {
  readonly way: number;
  readonly track: number;
  readonly pair: boolean;
  readonly closed: boolean;
  readonly shape: string;
}

function runOf(reader: Reader, lengths: Pick<Run, 'way' | 'track'>): Run {
  const pair = reader.option('feed-by') === 'pair';
  return {
    ...lengths,
    pair,
    closed: pair && reader.option('track-shape') === 'oval',
    shape: pair ? 'end' : (reader.option('bus-shape') ?? 'end'),
  };
}

/** Metres of bus beside the track, from where the unit feeds it to the far end: one way, or one of two ways. */
const reachOf = ({ track, shape }: Run): number => (shape === 'end' ? track : track / 2);

// The bus runs beside the whole track; what it is longer than that lies between the unit and the track. One pair joins the
// track at its end, the worst place of a track with two ends, and its last stretch stands for a feeder.
function planOf(
  reader: Reader,
  { volts }: Need,
  run: Run,
  { conductor, feeders }: { readonly conductor: Conductor; readonly feeders: number },
): FeedingPlan {
  const { way, track: length, pair, closed, shape } = run;
  const perMetre = ohmsPerMetre(conductor);
  const last = Math.min(FEEDER_WIRE.length, way / 2);
  const rails = { length, closed, ohmsPerMetre: railOf(reader), joints: jointsOf(reader, length) };
  return {
    source: { volts, ohms: STAGE_OHMS },
    bus: {
      length,
      ohmsPerMetre: perMetre,
      fedAt: shape === 'middle' ? length / 2 : 0,
      ring: shape === 'ring',
      lead: pair ? way - last : Math.max(0, way - reachOf(run)),
    },
    feeders: pair
      ? [{ at: 0, length: last, ohmsPerMetre: perMetre }]
      : evenFeeders({ count: feeders }, rails, {
          length: reader.number('feeder-length') ?? FEEDER_WIRE.length,
          ohmsPerMetre: ohmsPerMetre({ area: reader.number('feeder-wire') ?? FEEDER_WIRE.area, make: 'flexible' }),
        }),
    rails,
  };
}

function given(reader: Reader, id: string, usual: number): number {
  const value = reader.number(id);
  if (value !== undefined) return value;
  reader.assume(id, { kind: 'number', span: { from: usual, to: usual } });
  return usual;
}

/** Feeders as told; one pair of wires is one. Undefined where nobody has counted them. */
const feederCount = (reader: Reader, { pair }: Pick<Run, 'pair'>): number | undefined =>
  pair ? 1 : reader.number('feeder-count');

function usualFeeders(reader: Reader, track: number): number {
  const usual = Math.max(1, Math.ceil(track / USUAL_SPACING));
  reader.assume('feeder-count', { kind: 'number', span: { from: usual, to: usual } });
  return usual;
}

function railOf(reader: Reader): number {
  const kind = reader.option('rail-kind') ?? 'code-83';
  const known = RAIL_KINDS[kind];
  return known === undefined ? (reader.number('rail-ohms') ?? railOhms('code-83')) : railOhms(known);
}

function jointsOf(reader: Reader, length: number) {
  const kind = reader.option('joints');
  const ohms = kind === 'fed' || kind === 'soldered' ? JOINER_OHMS[kind] : JOINER_OHMS.plain;
  if (ohms === 0) return [];
  const count = Math.ceil(length / RAIL_PIECE - 1e-9) - 1;
  return Array.from({ length: count }, (_, i) => ({ at: (i + 1) * RAIL_PIECE, ohms }));
}
