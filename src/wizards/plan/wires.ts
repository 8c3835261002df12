// The wires of each district: the least bus and feeders that are good there, with the test that proves them.
import type { Conductor, MeasureSystem } from '../../engine/index.ts';
import {
  FEEDER_WIRE,
  HARDLY,
  isLongBus,
  lostAsPlanned,
  middle,
  ohmsPerMetre,
  shortTest,
  stageOhms,
} from '../../engine/index.ts';
import type { Answers } from '../planning/index.ts';
import type { Section, Sheet, SheetStage, SheetSupply } from '../sheet/index.ts';
import type { NotKnown } from '../wire-it/index.ts';
import { wire } from '../wire-it/index.ts';
import type { PlacedUnit } from './power.ts';
import { tripOf } from './power.ts';
import type { Fed, PlanGap } from './track.ts';
import { has, runsOf } from './track.ts';

export interface DistrictWires {
  /** The letter of the district, or of a sub-district behind its breaker. */
  readonly district: string;
  /** Metres of bus from the unit, in the middle, to each end, and of both halves together. */
  readonly reach: number;
  readonly busMetres: number;
  /** Undefined where nothing that is sold does: the district is too long for one unit, or is to be divided; or where the rails come first. */
  readonly bus: Conductor | undefined;
  /** Rails that stand too high or too low: no wires are worked out before that is put right. */
  readonly railsFirst: boolean;
  readonly feeder: Conductor;
  /** Pairs of feeders on the bus, old and new: where none is there yet as many as the length asks for, and one on each side of each gap at the least. */
  readonly feeders: number;
  /** Those of them that stand on a side of a gap which lies here. */
  readonly atGaps: number;
  readonly apart: number | undefined;
  /** The wires that the sheet tells of are good here: its bus is used again as far as it reaches, and the only new feeders are those at gaps. */
  readonly asItIs: boolean;
  /** Pairs of feeders that are still to be laid from the bus. */
  readonly newFeeders: number;
  /** Loops and bridges here, each behind a reversing device. */
  readonly devices: readonly FromDevice[];
  /** Bus long enough for its signal to ring. */
  readonly long: boolean;
  /** What rail volts and trip current it was worked out with, volts and amperes. */
  readonly volts: number;
  readonly trip: number;
  /** Nobody has read them: those that are usual for the scale. */
  readonly assumed: boolean;
  readonly test: LoadTestHere | undefined;
}

/** What hangs on a reversing device, and never on the bus: that would be a short as soon as the device turns over. */
export interface FromDevice {
  readonly kind: 'loop' | 'bridge';
  readonly sections: readonly Section[];
  /** Pairs of feeders, old and new. A bridge has none: it turns, and is fed through contacts of its own. */
  readonly feeders: number;
  readonly newFeeders: number;
}

/** The harmless load test: how long a reading may last, and which share of the volts is lost in it at the most. */
export interface LoadTestHere {
  readonly seconds: number;
  /** With these wires, near the unit and far out. */
  readonly near: number;
  readonly far: number;
  /** Beyond it a short might not trip the unit. */
  readonly mayLose: number;
}

const choice = (option: string) => ({ kind: 'choice', option }) as const;
const amount = (value: number) => ({ kind: 'number', span: { from: value, to: value } }) as const;

/** Longest track of one unit that wires are worked out for, metres. Source: own-choice. */
const MOST_METRES = 100;

export function wiresOf(
  sheet: Sheet,
  fed: Fed,
  stage: SheetStage,
  unit: PlacedUnit | undefined,
  gaps: readonly PlanGap[],
  system: MeasureSystem,
): DistrictWires {
  const { letter, sections, metres } = fed;
  const track = Math.min(MOST_METRES, Math.max(metres, LEAST_METRES));
  const reach = track / 2;
  const trip = tripOf(stage);
  const volts = unit === undefined ? undefined : middle(unit.idle);
  const answers: Answers = {
    scale: choice(sheet.scale),
    'feed-by': choice('bus'),
    'bus-length': amount(reach),
    'bus-shape': choice('middle'),
    'bus-way': amount(reach),
    'track-length': amount(track),
    ...(volts === undefined ? {} : { 'wire-volts': amount(volts) }),
    ...(trip === undefined ? {} : { 'wire-trip': amount(trip) }),
    ...(sheet.wiring?.railOhmsPerMetre === undefined
      ? {}
      : { 'rail-kind': choice('measured'), 'rail-ohms': amount(sheet.wiring.railOhmsPerMetre) }),
  };
  const kept = keptOf(sheet, answers, track, system);
  const found = wire(answers, system);
  const [enough] = found.kind === 'not-known' ? found.enough : [];
  const told = found.kind === 'not-known' ? found : undefined;
  const { bus, feeder, count, apart, loopAmps } = kept ?? leastOf(enough);
  const on = (here: readonly Section[]): Feeders =>
    feedersOn(here, { count, metres, isKept: kept !== undefined, gaps });
  const turning = turningIn(fed, sheet, stage);
  const { feeders, newFeeders, atGaps } = on(
    sections.filter((one) => !turning.some((run) => run.sections.includes(one))),
  );
  return {
    district: letter,
    reach,
    busMetres: track,
    bus,
    railsFirst: found.kind === 'stopped',
    feeder,
    feeders,
    atGaps,
    apart,
    asItIs: kept !== undefined,
    newFeeders,
    devices: turning.map((run) => ({ ...run, ...(run.kind === 'loop' ? on(run.sections) : NO_FEEDERS) })),
    long: isLongBus(reach),
    volts: told?.volts ?? volts ?? 0,
    trip: told?.trip ?? trip ?? 0,
    assumed: volts === undefined || trip === undefined,
    test:
      volts === undefined || trip === undefined
        ? undefined
        : testOf(volts, trip, lostWith(volts, feeder, loopAmps, unit?.supply.kind)),
  };
}

type Feeders = Pick<DistrictWires, 'feeders' | 'newFeeders' | 'atGaps'>;
const NO_FEEDERS: Feeders = { feeders: 0, newFeeders: 0, atGaps: 0 };

interface Laid {
  /** Pairs along all these metres. */
  readonly count: number;
  readonly metres: number;
  readonly isKept: boolean;
  readonly gaps: readonly PlanGap[];
}

/** Their part of the pairs along the track, and one on each side of each gap, close to it. */
function feedersOn(here: readonly Section[], { count, metres, isKept, gaps }: Laid): Feeders {
  if (here.length === 0) return NO_FEEDERS;
  const share = here.reduce((sum, one) => sum + one.metres, 0) / metres;
  const along = Math.max(1, Math.ceil(count * share - 1e-9));
  const isHere = (one: Section): boolean => here.some(({ id }) => id === one.id);
  const atGaps = gaps
    .flatMap(({ from, to }) => [from, to])
    .filter((one) => isHere(one) && !has(one, 'turntable')).length;
  // What lies along the track does not stand where rails are cut.
  const feeders = isKept ? along + atGaps : Math.max(along, atGaps);
  return { feeders, newFeeders: isKept ? atGaps : feeders, atGaps };
}

/** Loops and bridges that want a device: none where a unit that turns its rails by itself feeds one of them and nothing else. */
function turningIn({ sections }: Fed, { joints }: Pick<Sheet, 'joints'>, { autoReversing }: SheetStage) {
  const runs = [
    ...runsOf({ sections, joints }, 'reversing').map((run) => ({ kind: 'loop' as const, sections: run })),
    ...runsOf({ sections, joints }, 'turntable').map((run) => ({ kind: 'bridge' as const, sections: run })),
  ];
  const isAlone = runs.some((run) => run.sections.length === sections.length);
  return autoReversing === true && isAlone ? [] : runs;
}

/** Wires that do: the bus, the wire of its feeders, how many and how far apart, and what a short draws at the weakest place. */
interface Doing {
  readonly bus: Conductor | undefined;
  readonly feeder: Conductor;
  readonly count: number;
  readonly apart: number | undefined;
  readonly loopAmps: number | undefined;
}

function leastOf(enough: NotKnown['enough'][number] | undefined): Doing {
  const least = enough?.least;
  const laid = least?.change.kind === 'rewired' ? least.change : undefined;
  return {
    bus: laid?.bus,
    feeder: enough?.feeder ?? FEEDER_WIRE,
    count: laid?.feeders?.count ?? 1,
    apart: laid?.feeders?.spacing,
    loopAmps: least?.loopAmps,
  };
}

/** What lies there already, where all of it is told and it is good for this district; else undefined. */
function keptOf({ wiring = {} }: Sheet, answers: Answers, track: number, system: MeasureSystem): Doing | undefined {
  const { busSquareMillimetres, feederSquareMillimetres, metresBetweenFeeders: apart, feederMetres, rail } = wiring;
  if (busSquareMillimetres === undefined || feederSquareMillimetres === undefined || apart === undefined)
    return undefined;
  const area = busSquareMillimetres * SQUARE_MILLIMETRE;
  const feeder: Conductor = { area: feederSquareMillimetres * SQUARE_MILLIMETRE, make: FEEDER_WIRE.make };
  const count = Math.max(1, Math.ceil(track / apart));
  const found = wire(
    {
      ...(rail === undefined ? {} : { 'rail-kind': choice(rail) }),
      ...answers,
      'bus-wire': amount(area),
      'feeder-count': amount(count),
      'feeder-wire': amount(feeder.area),
      ...(feederMetres === undefined ? {} : { 'feeder-length': amount(feederMetres) }),
    },
    system,
  );
  if (found.kind !== 'wiring' || found.now?.verdict !== 'good') return undefined;
  return { bus: found.wire, feeder, count, apart, loopAmps: found.now.loopAmps };
}

/** Square metres in a square millimetre. Source: own-derivation. */
const SQUARE_MILLIMETRE = 1e-6;

/** Track shorter than this is one feeder's, metres. Source: own-choice. */
const LEAST_METRES = 0.5;

/** Near the unit there is hardly any wire; far out, the way to the weakest place, where a short would draw so many amperes. A transformer sags by itself. */
function lostWith(
  volts: number,
  feeder: Conductor,
  weakest: number | undefined,
  kind: SheetSupply['kind'],
): Pick<LoadTestHere, 'near' | 'far'> {
  const near = stageOhms().to + 2 * FEEDER_WIRE.length * ohmsPerMetre(feeder);
  if (kind === 'ac' || weakest === undefined) return { near: HARDLY, far: HARDLY };
  return { near: lostAsPlanned(volts, near), far: lostAsPlanned(volts, Math.max(near, volts / weakest)) };
}

function testOf(volts: number, trip: number, lost: Pick<LoadTestHere, 'near' | 'far'>): LoadTestHere | undefined {
  const test = shortTest({ volts, trip });
  if (test.kind === 'none') return undefined;
  const mayLose = test.mayLoseShare;
  const atMost = (share: number): number => Math.min(share, mayLose);
  return { seconds: test.seconds, mayLose, near: atMost(lost.near), far: atMost(lost.far) };
}

/** Bus wire of one size that lies there already, and what the districts where it will do take of it, metres of a pair. */
export interface BusReuse {
  readonly area: number;
  readonly wanted: number;
  /** Undefined where the sheet does not tell how long it is. */
  readonly there: number | undefined;
  /** Still to be got. All of it where nobody has told what is there. */
  readonly missing: number;
}

/** Undefined where no bus of the sheet is used again. */
export function busReuse(
  { wiring = {} }: Pick<Sheet, 'wiring'>,
  wires: readonly DistrictWires[],
): BusReuse | undefined {
  const again = wires.filter(({ asItIs }) => asItIs);
  const [first] = again;
  if (first?.bus === undefined) return undefined;
  const wanted = again.reduce((sum, { busMetres }) => sum + busMetres, 0);
  const { busMetres: there } = wiring;
  return { area: first.bus.area, wanted, there, missing: Math.max(0, wanted - (there ?? 0)) };
}
