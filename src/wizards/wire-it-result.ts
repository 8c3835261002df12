// What "How thick must the wire be?" works out of its answers.
import type {
  Conductor,
  FeedingPlan,
  FeedingProblem,
  LoadResistor,
  RailKind,
  Scale,
  ShortAlong,
  TrainAlong,
  TripLevel,
  WeakStretch,
  WiringCandidate,
} from '../engine/index.ts';
import {
  chooseResistor,
  DRAWS,
  evenFeeders,
  GAUGE_SIZES,
  gaugeArea,
  gaugeOf,
  leastLoadedVolts,
  loadedVolts,
  METRIC_SIZES,
  middle,
  ohmsPerMetre,
  railOhms,
  shortAlong,
  suggestWiring,
  TRACK_LIMITS,
  trainAlong,
  tripLevel,
  weakStretches,
} from '../engine/index.ts';
import type { Answers } from './answers.ts';
import type { OutcomeId } from './outcomes.ts';
import type { Assumption } from './read.ts';
import { Reader } from './read.ts';

/** Output stage, supply and leads to the bus, ohms. Source: from-memory. */
const STAGE_OHMS = 0.2;
/** Metres between feeders where nothing is said. Source: common-practice. */
const USUAL_SPACING = 3;
/** Metres of a length of track, and ohms of one joiner in one rail that is only slipped on, or soldered. Source: from-memory. */
const RAIL_PIECE = 0.9;
const JOINER_OHMS = { fed: 0, soldered: 0.001, plain: 0.02 } as const;
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
}

export interface Wiring {
  readonly kind: 'wiring';
  readonly outcome: OutcomeId;
  readonly scale: Scale;
  readonly plan: FeedingPlan;
  readonly wire: Conductor;
  readonly trainAmps: number;
  readonly trip: number;
  readonly tripLevel: TripLevel;
  /** Undefined where the present wiring leaves a train no voltage at all; then `train` is too. */
  readonly now: WiringCandidate | undefined;
  readonly chosen: WiringCandidate | undefined;
  readonly candidates: readonly WiringCandidate[];
  readonly train: TrainAlong | undefined;
  readonly short: ShortAlong;
  /** Where a coin would trip late or not at all. */
  readonly weak: readonly WeakStretch[];
  readonly test: TestAhead | undefined;
  readonly assumptions: readonly Assumption[];
}

/** Works out the wiring. A plan that cannot be (all are read from checked answers) gives its problem. */
export function wire(answers: Answers): Wiring | (FeedingProblem & { readonly outcome: OutcomeId }) {
  const given = read(answers);
  const { plan, trainAmps, trip, conductor, scale } = given;
  const sizes = sizesLike(conductor);
  const advice = suggestWiring({ plan, trainAmps, trip, sizes, bus: conductor });
  if (advice.kind === 'no-solution') return { ...advice, outcome: 'booster-near-load' };
  const train = trainAlong(plan, trainAmps);
  const short = shortAlong(plan);
  if (short.kind === 'no-solution') return { ...short, outcome: 'booster-near-load' };
  const now = advice.candidates.find(({ change }) => change.kind === 'as-it-is');
  const level = tripLevel(scale, trip);
  const chosen = choose(advice.candidates, level);
  return {
    kind: 'wiring',
    outcome: chosen === undefined ? 'booster-near-load' : OUTCOMES[chosen.change.kind],
    scale,
    plan,
    wire: conductor,
    trainAmps,
    trip,
    tripLevel: level,
    now,
    chosen,
    candidates: advice.candidates,
    train: train.kind === 'along' ? train : undefined,
    short,
    weak: weakStretches(short, trip),
    test: testAhead(plan, short, trip),
    assumptions: given.assumptions,
  };
}

const OUTCOMES: Readonly<Record<WiringCandidate['change']['kind'], OutcomeId>> = {
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

function sizesLike({ area, make }: Conductor): Conductor[] {
  const areas = gaugeOf(area) === undefined ? METRIC_SIZES : GAUGE_SIZES.map(gaugeArea);
  return areas.map((one) => ({ area: one, make }));
}

function testAhead(plan: FeedingPlan, short: ShortAlong, trip: number): TestAhead | undefined {
  const { volts, ohms } = plan.source;
  const resistor = chooseResistor(volts, trip);
  if (resistor === undefined) return undefined;
  return {
    resistor,
    open: volts,
    near: loadedVolts({ volts, ohms }, resistor.ohms),
    far: loadedVolts({ volts, ohms: short.weakest.ohms }, resistor.ohms),
    least: leastLoadedVolts(volts, trip, resistor.ohms),
  };
}

function read(answers: Answers) {
  const reader = new Reader(answers);
  const scale = reader.scale();
  const volts = given(reader, 'wire-volts', TRACK_LIMITS[scale].normal);
  const trip = given(reader, 'wire-trip', middle(DRAWS[scale].trip));
  const wanted = given(reader, 'wire-amps', TRAINS_FAR_AWAY * DRAWS[scale].modern.to);
  const trainAmps = Math.min(wanted, trip);
  if (trainAmps < wanted) reader.assume('wire-amps', { kind: 'number', span: { from: trip, to: trip } });
  const conductor: Conductor = { area: reader.number('bus-wire') ?? 0.75e-6, make: 'flexible' };
  const oneWay = reader.number('bus-length') ?? 5;
  const shape = reader.option('bus-shape') ?? 'end';
  // From the unit the wire runs one way, or both ways, or all the way round.
  const length = shape === 'end' ? oneWay : 2 * oneWay;
  const plan: FeedingPlan = {
    source: { volts, ohms: STAGE_OHMS },
    bus: {
      length,
      ohmsPerMetre: ohmsPerMetre(conductor),
      fedAt: shape === 'middle' ? oneWay : 0,
      ring: shape === 'ring',
    },
    feeders: evenFeeders(
      { count: feederCount(reader, length) },
      { length },
      {
        length: reader.number('feeder-length') ?? 0.3,
        ohmsPerMetre: ohmsPerMetre({ area: reader.number('feeder-wire') ?? 0.5e-6, make: 'flexible' }),
      },
    ),
    rails: { length, ohmsPerMetre: railOf(reader), joints: jointsOf(reader, length) },
  };
  return { plan, trainAmps, trip, conductor, scale, assumptions: reader.assumptions };
}

function given(reader: Reader, id: string, usual: number): number {
  const value = reader.number(id);
  if (value !== undefined) return value;
  reader.assume(id, { kind: 'number', span: { from: usual, to: usual } });
  return usual;
}

function feederCount(reader: Reader, length: number): number {
  return given(reader, 'feeder-count', Math.max(1, Math.ceil(length / USUAL_SPACING)));
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
