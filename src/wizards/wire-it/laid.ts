// How the wires run, from the answers: what they have to carry, what they are, and the plan that the engine solves.
import type {
  Conductor,
  FeedingPlan,
  MeasureSystem,
  OutOfReach,
  RailKind,
  Scale,
  SupplyTrip,
} from '../../engine/index.ts';
import {
  DRAWS,
  evenFeeders,
  FEEDER_WIRE,
  GAUGE_SIZES,
  gaugeArea,
  heatingLimit,
  highestRails,
  METRIC_SIZES,
  middle,
  ohmsPerMetre,
  railOhms,
  railsOutOfReach,
  SCALE_RAILS,
  stageOhms,
  supplyTrip,
  TRACK_LIMITS,
} from '../../engine/index.ts';
import type { Reader } from '../planning/index.ts';
import { knownSupply } from '../planning/index.ts';

/** Metres between feeders where nothing is said. Source: common-practice. */
const USUAL_SPACING = 3;
/** A length of track, long or as in set track, metres. Source: from-memory. */
const RAIL_PIECE = { plain: 0.9, soldered: 0.9, sectional: 0.23 } as const;
/** One joiner in one rail that is only slipped on, or soldered, ohms. Source: from-memory. */
const JOINER_OHMS = { plain: 0.02, soldered: 0.001, sectional: 0.02 } as const;
/** Trains that are taken to draw together far from the unit. Source: common-practice. */
export const TRAINS_FAR_AWAY = 2;

const RAIL_KINDS: Readonly<Record<string, RailKind>> = {
  'code-55': 'code-55',
  'code-70': 'code-70',
  'code-80': 'code-80',
  'code-83': 'code-83',
  'code-100': 'code-100',
  brass: 'code-100-brass',
  steel: 'code-100-steel',
  'large-nickel-silver': 'large-nickel-silver',
  'large-brass': 'large-brass',
  'large-steel': 'large-steel',
};

/** What the wiring has to carry. */
export interface Need {
  readonly scale: Scale;
  /** On the rails: no more than the supply lifts them to. */
  readonly volts: number;
  /** What they are set to, where that is more. */
  readonly outOfReach: OutOfReach | undefined;
  readonly trip: number;
  readonly trainAmps: number;
}

export function needOf(reader: Reader): Need {
  const scale = reader.scale();
  const supply = knownSupply(reader.supplyLabel('supply'));
  const highest = supply === undefined ? Number.POSITIVE_INFINITY : highestRails(supply);
  const volts = given(reader, 'wire-volts', Math.min(TRACK_LIMITS[scale].normal, highest));
  const outOfReach = supply === undefined ? undefined : railsOutOfReach(supply, { kind: 'set', volts });
  const trip = given(reader, 'wire-trip', middle(DRAWS[scale].trip));
  const wanted = given(reader, 'wire-amps', TRAINS_FAR_AWAY * DRAWS[scale].modern.to);
  const trainAmps = Math.min(wanted, trip);
  if (trainAmps < wanted) reader.assume('wire-amps', { kind: 'number', span: { from: trip, to: trip } });
  return { scale, volts: outOfReach?.highest ?? volts, outOfReach, trip, trainAmps };
}

/** A supply of so many times the rail volts may feed a step-down converter, which gives more amperes than it takes. Source: from-memory. */
const STEPS_DOWN = 1.15;

/**
 * Whether the supply can drive the unit to its trip current; undefined while its label is not read. Whether the unit steps the volts down is
 * not asked: where that would decide, it is perhaps.
 */
export function supplyFound(reader: Reader, { volts, trip }: Pick<Need, 'volts' | 'trip'>): SupplyTrip | undefined {
  const supply = knownSupply(reader.supplyLabel('supply'));
  if (supply === undefined) return undefined;
  const unit = { limit: trip, ownUse: 0 };
  const direct = supplyTrip(supply, { ...unit, rails: { kind: 'follows' } });
  if (supply.kind === 'ac' || supply.volts < STEPS_DOWN * volts) return direct;
  const stepped = supplyTrip(supply, { ...unit, rails: { kind: 'converter', volts } });
  const gives = {
    from: Math.min(direct.gives.from, stepped.gives.from),
    to: Math.max(direct.gives.to, stepped.gives.to),
  };
  if (direct.kind === stepped.kind) return { ...direct, gives };
  return { trip, gives, ratingAbove: direct.ratingAbove, kind: 'perhaps', because: 'for-a-moment' };
}

export function wireOf(reader: Reader): Conductor | undefined {
  const area = reader.number('bus-wire');
  return area === undefined ? undefined : { area, make: 'flexible' };
}

/** How the wires run: metres from the unit to the farthest feeder, metres of track, and where the two meet. */
export interface Run {
  readonly way: number;
  readonly track: number;
  readonly pair: boolean;
  readonly closed: boolean;
  readonly shape: string;
}

export function runOf(reader: Reader, { way, track }: Pick<Run, 'way' | 'track'>): Run {
  const pair = reader.option('feed-by') === 'pair';
  const shape = pair ? 'end' : (reader.option('bus-shape') ?? 'end');
  return {
    way: shape === 'end' ? way : wayAgain(reader, { way, track, shape }),
    track,
    pair,
    closed: pair && reader.option('track-shape') === 'oval',
    shape,
  };
}

// The way was told before the shape, so along a bus that is fed from its end. What lies between unit and bus stays where it was.
function wayAgain(reader: Reader, run: Pick<Run, 'way' | 'track' | 'shape'>): number {
  return given(reader, 'bus-way', reachOf(run) + Math.max(0, run.way - run.track));
}

/** Metres of bus beside the track, from where the unit feeds it to the far end: one way, or one of two ways. */
export const reachOf = ({ track, shape }: Pick<Run, 'track' | 'shape'>): number =>
  shape === 'end' ? track : track / 2;

/** Wires of a plan: its bus, and its feeders. */
export interface Wires {
  readonly conductor: Conductor;
  readonly feeders: number;
  readonly feeder: Conductor;
}

// The bus runs beside the whole track; what it is longer than that lies between the unit and the track. One pair joins the
// track at its end, the worst place of a track with two ends, and its last stretch stands for a feeder.
export function planOf(
  reader: Reader,
  { scale, volts }: Pick<Need, 'scale' | 'volts'>,
  run: Run,
  { conductor, feeders, feeder }: Wires,
): FeedingPlan {
  const { way, track: length, pair, closed, shape } = run;
  const perMetre = ohmsPerMetre(conductor);
  const last = Math.min(FEEDER_WIRE.length, way / 2);
  const rails = { length, closed, ohmsPerMetre: railOf(reader, scale), joints: jointsOf(reader, run) };
  return {
    source: { volts, ohms: stageOhms().to },
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
          ohmsPerMetre: ohmsPerMetre(feeder),
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
export const feederCount = (reader: Reader, { pair }: Pick<Run, 'pair'>): number | undefined =>
  pair ? 1 : reader.number('feeder-count');

export function usualFeeders(reader: Reader, track: number): number {
  const usual = Math.max(1, Math.ceil(track / USUAL_SPACING));
  reader.assume('feeder-count', { kind: 'number', span: { from: usual, to: usual } });
  return usual;
}

/** The feeders' wire; where nobody has told, the usual one, or the next that bears the trip current. */
export function feederWire(reader: Reader, trip: number): Conductor {
  const bears = (area: number): boolean => heatingLimit(area) >= trip;
  const usual = METRIC_SIZES.find((area) => area >= FEEDER_WIRE.area && bears(area)) ?? FEEDER_WIRE.area;
  return { area: given(reader, 'feeder-wire', usual), make: FEEDER_WIRE.make };
}

function railOf(reader: Reader, scale: Scale): number {
  const option = reader.option('rail-kind');
  if (option === 'measured') return reader.number('rail-ohms') ?? railOhms(SCALE_RAILS[scale].usual);
  const kind = option === undefined ? undefined : RAIL_KINDS[option];
  if (kind !== undefined) return railOhms(kind);
  const { usual } = SCALE_RAILS[scale];
  reader.assume('rail-kind', { kind: 'choice', option: usual });
  return railOhms(usual);
}

function jointsOf(reader: Reader, run: Run) {
  const told = reader.option('joints');
  if (told === 'fed') return [];
  const kind = told === 'soldered' || told === 'plain' || told === 'sectional' ? told : usualJoints(reader, run);
  const [piece, ohms] = [RAIL_PIECE[kind], JOINER_OHMS[kind]];
  const count = Math.ceil(run.track / piece - 1e-9) - 1;
  return Array.from({ length: count }, (_, i) => ({ at: (i + 1) * piece, ohms }));
}

// A starter set on one pair of wires is laid of short pieces; whoever lays a bus lays long ones. Source: common-practice.
function usualJoints(reader: Reader, { pair }: Run): 'plain' | 'sectional' {
  const usual = pair ? 'sectional' : 'plain';
  reader.assume('joints', { kind: 'choice', option: usual });
  return usual;
}

/** Wires that are sold where people measure so. */
export function sizesOf(system: MeasureSystem, make: Conductor['make']): Conductor[] {
  const areas = system === 'metric' ? METRIC_SIZES : GAUGE_SIZES.map(gaugeArea);
  return areas.map((area) => ({ area, make }));
}
