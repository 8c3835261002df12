// The virtual layout: what stands on the table, piece by piece, before anything is switched on. Plain data; SI throughout.
import type { Scale } from '../power/index.ts';
import { DRAWS, SCALE_RANGE } from '../power/index.ts';
import type { Span } from '../units.ts';

export type TableRail = 'a' | 'b';
export type TablePart = 'old' | 'new';
/** 0 is the command station and feeds the old part, 1 is the booster and feeds the new part. */
export type StageIndex = 0 | 1;

/**
 * In the order of a train that drives from the old part through the gap into the new one. `dead` is a stretch between two gaps
 * that nothing feeds (mostly of no length); `loop` hangs with both ends on the end of the new part.
 */
export const TABLE_PIECES = ['old-far', 'old-gap', 'dead', 'new-gap', 'new-mid', 'new-far', 'loop'] as const;
export type PieceId = (typeof TABLE_PIECES)[number];

export interface TableStage {
  /** Switch of the unit itself. */
  readonly on: boolean;
  /** Rail voltage it is set to, volts; where left out the rails follow the supply. */
  readonly setVolts?: number;
  /** Current at which it trips, amperes, and how long that may flow, seconds. */
  readonly trip: number;
  readonly tripSeconds: number;
  readonly comesBack: 'retry' | 'latched';
  readonly retrySeconds: number;
  /** What it can give for hours, amperes; more heats it up. */
  readonly continuous: number;
  /** What it does without a signal. */
  readonly withoutSignal: 'muted' | 'holds';
  readonly ownUse: number;
  /** Each switch of its output, ohms. */
  readonly ohms: number;
  /** `dead`: no output; `no-trip`: never trips; `faults`: reports a fault whatever is connected. */
  readonly defect?: 'dead' | 'no-trip' | 'faults';
  /** Sends commands of its own instead of repeating. */
  readonly ownCommands: boolean;
  /** Data format on the link that it cannot repeat. */
  readonly wrongFormat: boolean;
  /** Behind the command station's edges, seconds. */
  readonly late: number;
  readonly cutout: boolean;
  /** Its track socket makes contact only now and then. */
  readonly wornSocket: boolean;
  /** Cuts out when its own link is lifted above this, volts. */
  readonly guard?: number;
}

export interface TableSupply {
  readonly kind: 'dc' | 'ac';
  /** On the label, and true of it where `good`. */
  readonly volts: number;
  readonly amps: number;
  /** Kind, plug and volts that the unit permits. */
  readonly fits: boolean;
  readonly plugged: boolean;
  readonly limits: 'holds-current' | 'hiccup';
  /** Ohms behind its terminals, and those of the mains lead as they appear there. */
  readonly ohms: number;
  readonly mainsOhms: number;
  readonly continuous: number;
  /** `weak`: gives far less than its label. `dead`: gives nothing. */
  readonly defect?: 'weak' | 'dead';
  readonly earthed: boolean;
  /** Through its filter capacitors, against earth: volts (r.m.s., mains) behind ohms. */
  readonly ghostVolts: number;
  readonly ghostOhms: number;
}

export interface TableLink {
  readonly state: 'good' | 'missing' | 'wrong-socket' | 'faulty';
  readonly inverted: boolean;
  /** Where the booster takes its signal from. */
  readonly from: 'bus' | 'track-output';
}

/** How two pieces meet: ohms of each rail of `from`, endless where it is gapped. `crossed`: a of one meets b of the other. */
export interface TableJoin {
  readonly from: PieceId;
  readonly to: PieceId;
  readonly kind: 'plain' | 'gap';
  readonly crossed: boolean;
  readonly ohmsA: number;
  readonly ohmsB: number;
}

/** One wire from a track terminal to a rail. */
export interface TableFeeder {
  readonly stage: StageIndex;
  readonly terminal: 'p' | 'n';
  readonly piece: PieceId;
  readonly rail: TableRail;
  readonly ohms: number;
  readonly state: 'firm' | 'missing' | 'broken' | 'programming';
}

export type BridgeKind =
  | 'second-track'
  | 'old-feeder'
  | 'closed-gap'
  | 'lamp'
  | 'detector'
  | 'frog-wire'
  | 'old-wiring'
  | 'metal'
  | 'rod'
  | 'leak'
  | 'damp'
  | 'live-frog'
  | 'coin'
  | 'test-lamp'
  | 'jumper'
  | 'thick-wires'
  | 'resistor';

/** Anything that joins two rails; `only` with the turnout in that position. */
export interface TableBridge {
  readonly kind: BridgeKind;
  readonly from: readonly [PieceId, TableRail];
  readonly to: readonly [PieceId, TableRail];
  readonly ohms: number;
  readonly only?: 'straight' | 'thrown';
}

/** Another source on the rails: an old throttle or a second command station. */
export interface TableSecondSource {
  readonly piece: PieceId;
  readonly volts: number;
  readonly ohms: number;
}

/** Something that stays where it is and draws from the rails. */
export interface TableConsumer {
  readonly kind: 'train' | 'coaches' | 'accessories';
  readonly piece: PieceId;
  /** Amperes while it runs, and while it stands. */
  readonly running: number;
  readonly standing: number;
  /** On top of that for a while after the rails came alive. */
  readonly inrush: number;
  readonly inrushSeconds: number;
}

export interface TableVehicle {
  readonly kind: 'locomotive' | 'long' | 'short' | 'split' | 'rake' | 'coach' | 'stored';
  /** Wheels that pick up: which rail, how far behind the front, metres. */
  readonly pickUps: readonly { readonly rail: TableRail; readonly behind: number }[];
  readonly length: number;
  readonly running: number;
  readonly standing: number;
  /** One wheel with its wiper, ohms. */
  readonly contact: number;
  /** How far it rolls without power, metres. */
  readonly rollsOn: number;
  /** Seconds that its stored energy lasts. */
  readonly stored: number;
  readonly lights: boolean;
  readonly motor: boolean;
  /** Takes plain direct current for a command. */
  readonly dcRunning: boolean;
  /** Follows its address. */
  readonly obeys: boolean;
  /** Metal that joins the rails: always, only on turnouts, or a wide wheel on a frog only. */
  readonly wheelShort?: 'always' | 'at-turnouts' | 'at-frog';
}

/** A place that is bad for the contact, on the way through the gap; metres from the gap, positive in the new part. */
export interface TableSpot {
  readonly kind: 'dirty' | 'step';
  readonly from: number;
  readonly to: number;
}

/** Turns a section round when too much current flows into it. */
export interface TableReverser {
  readonly kind: 'automatic' | 'none';
  readonly trip: number;
  readonly tripSeconds: number;
}

/** What the person holds: averaging, true r.m.s. up to about 1 kHz, or the cheapest with a dead zone. */
export interface TableMeter {
  readonly kind: 'averaging' | 'true-rms' | 'cheapest';
  /** What it shows of a signal of some kilohertz. */
  readonly factor: number;
  readonly ohms: number;
}

export type LastChange = 'track-or-wires' | 'supply-or-unit' | 'vehicle' | 'setting' | 'nothing';

export interface TableLayout {
  readonly scale: Scale;
  /** One rail, ohms a metre. */
  readonly railOhms: number;
  readonly lengths: Readonly<Record<PieceId, number>>;
  readonly stages: readonly [TableStage, TableStage];
  readonly supplies: readonly [TableSupply, TableSupply];
  readonly link: TableLink;
  readonly common: 'floating' | 'joined-negatives' | 'common-rail';
  readonly computerCable: boolean;
  /** A short of one unit stops all, by design. */
  readonly reportsShorts: boolean;
  /** Stop is pressed, or programming is on. */
  readonly stopped: boolean;
  readonly joins: readonly TableJoin[];
  readonly feeders: readonly TableFeeder[];
  readonly bridges: readonly TableBridge[];
  readonly secondSource?: TableSecondSource;
  readonly consumers: readonly TableConsumer[];
  readonly vehicles: Readonly<Record<TableVehicle['kind'], TableVehicle>>;
  readonly spots: readonly TableSpot[];
  /** The turnout stands in `new-mid`; `routing`: set aside it cuts rail a off beyond. Metres from the gap. */
  readonly turnout: { readonly thrown: boolean; readonly routing: boolean; readonly at: number };
  readonly hasLoop: boolean;
  readonly loopReverser: TableReverser;
  /** The unit that feeds the loop through its reverser. */
  readonly loopStage: StageIndex;
  /** Wired into the feed of the new part where there is one. */
  readonly partReverser: TableReverser;
  /** Rail to rail, farads: a suppression capacitor. At the new part's feed. */
  readonly capacitor: number;
  /** A detector of the diode kind in one rail of the new part's feed. */
  readonly diodeDetector: boolean;
  readonly meter: TableMeter;
  /** What the person mostly drives over the gap. */
  readonly usual: TableVehicle['kind'];
  readonly lastChange: LastChange;
  /** The track plug of this unit is pulled. */
  readonly trackPulled: readonly [boolean, boolean];
  /** The person holds the far part to be not yet connected. */
  readonly believedUnfed: boolean;
}

/** Everything about a piece that a node number needs. */
export function pieceIndex(piece: PieceId): number {
  return TABLE_PIECES.indexOf(piece);
}

export function partOf(piece: PieceId): TablePart {
  return pieceIndex(piece) < 2 ? 'old' : 'new';
}

const pick = (random: () => number, from: number, to: number): number => from + (to - from) * random();
const pickIn = (random: () => number, { from, to }: Span): number => pick(random, from, to);
const chance = (random: () => number, share: number): boolean => random() < share;

/** Sizes of vehicles and track against H0. Source: own-derivation (ratio of the scales). */
const SIZE: Readonly<Record<Scale, number>> = { z: 0.4, n: 0.54, tt: 0.73, h0: 1, '0': 1.93, '1': 2.72 };
/** A bonded or tight joiner, ohms. Source: from-memory. */
const JOINER: Span = { from: 0.004, to: 0.015 };
/** Endless: a gap. */
export const GAPPED = Number.POSITIVE_INFINITY;

/**
 * A layout in working order: command station and booster, two parts with both rails gapped between them at every place, each
 * part fed in all its pieces, trains that both units carry with ease. Shape: a seeded generator in; the same seed gives the same
 * layout. Source: own-derivation, ranges from common-practice and from-memory.
 */
export function makeLayout(random: () => number): TableLayout {
  const scale = oneOf(random, ['n', 'tt', 'h0', 'h0', 'h0', '0'] as const);
  const size = SIZE[scale];
  const trip = pickIn(random, DRAWS[scale].trip);
  const range = SCALE_RANGE[scale];
  const volts = pick(random, range.from + 0.5, range.to - 1);
  const stages = [makeStage(random, trip, volts), makeStage(random, trip * pick(random, 0.9, 1), volts)] as const;
  const label = volts + pick(random, 1.5, 3);
  const supplies = [makeSupply(random, label, trip), makeSupply(random, label, trip)] as const;
  const lengths = makeLengths(random, size);
  const railOhms = pick(random, 0.057, 0.108);
  const base = { scale, railOhms, lengths };
  return {
    ...base,
    stages,
    supplies,
    link: { state: 'good', inverted: false, from: chance(random, 0.15) ? 'track-output' : 'bus' },
    common: chance(random, 0.3) ? 'joined-negatives' : 'floating',
    computerCable: false,
    reportsShorts: chance(random, 0.15),
    stopped: false,
    joins: makeJoins(random, railOhms, lengths, chance(random, 0.7)),
    feeders: makeFeeders(random),
    bridges: [],
    consumers: makeConsumers(random, scale, stages),
    vehicles: makeVehicles(random, scale),
    spots: [],
    turnout: { thrown: false, routing: false, at: lengths['new-gap'] + 0.5 * lengths['new-mid'] },
    hasLoop: chance(random, 0.12),
    loopStage: 1,
    loopReverser: { kind: 'automatic', trip: 0.5 * trip, tripSeconds: pick(random, 0.005, 0.02) },
    partReverser: { kind: 'none', trip, tripSeconds: 0.02 },
    capacitor: 0,
    diodeDetector: false,
    meter: makeMeter(random),
    usual: 'locomotive',
    lastChange: oneOf(random, ['track-or-wires', 'nothing', 'nothing'] as const),
    trackPulled: [false, false],
    believedUnfed: false,
  };
}

function oneOf<T>(random: () => number, list: readonly [T, ...T[]]): T {
  return list[Math.floor(random() * list.length)] ?? list[0];
}

function makeStage(random: () => number, trip: number, volts: number): TableStage {
  return {
    on: true,
    setVolts: volts + pick(random, -0.15, 0.15),
    trip,
    tripSeconds: pick(random, 0.03, 0.2),
    comesBack: chance(random, 0.7) ? 'retry' : 'latched',
    retrySeconds: pick(random, 2, 5),
    continuous: 0.95 * trip,
    withoutSignal: chance(random, 0.65) ? 'muted' : 'holds',
    ownUse: pick(random, 0.05, 0.2),
    ohms: pick(random, 0.03, 0.12),
    ownCommands: false,
    wrongFormat: false,
    late: pick(random, 0, 0.8e-6),
    cutout: false,
    wornSocket: false,
    ...(chance(random, 0.3) ? { guard: volts + pick(random, 2, 2.6) } : {}),
  };
}

function makeSupply(random: () => number, volts: number, trip: number): TableSupply {
  const amps = trip * pick(random, 1.3, 1.7) + 0.3;
  return {
    kind: 'dc',
    volts,
    amps,
    fits: true,
    plugged: true,
    limits: chance(random, 0.5) ? 'hiccup' : 'holds-current',
    ohms: pick(random, 0.03, 0.1),
    mainsOhms: 0,
    continuous: amps,
    earthed: false,
    ghostVolts: pick(random, 50, 110) * (chance(random, 0.5) ? 1 : -1),
    ghostOhms: pick(random, 0.4e6, 1.4e6),
  };
}

function makeLengths(random: () => number, size: number): Record<PieceId, number> {
  const metres = (from: number, to: number): number => pick(random, from, to) * Math.max(0.6, Math.min(size, 1.6));
  return {
    'old-far': metres(1.5, 3),
    'old-gap': metres(1.2, 2),
    dead: 0,
    'new-gap': metres(1.2, 2),
    'new-mid': metres(1.2, 2.5),
    'new-far': metres(1.2, 2.5),
    loop: metres(2, 3),
  };
}

function makeJoins(
  random: () => number,
  railOhms: number,
  lengths: Readonly<Record<PieceId, number>>,
  round: boolean,
): TableJoin[] {
  const plain = (from: PieceId, to: PieceId): TableJoin => {
    const rail = (railOhms * (lengths[from] + lengths[to])) / 2;
    const ohms = (): number => rail + 2 * pickIn(random, JOINER);
    return { from, to, kind: 'plain', crossed: false, ohmsA: ohms(), ohmsB: ohms() };
  };
  const gap = (from: PieceId, to: PieceId, crossed = false): TableJoin => ({
    from,
    to,
    kind: 'gap',
    crossed,
    ohmsA: GAPPED,
    ohmsB: GAPPED,
  });
  const joins = [
    plain('old-far', 'old-gap'),
    gap('old-gap', 'new-gap'),
    plain('new-gap', 'new-mid'),
    plain('new-mid', 'new-far'),
    gap('new-far', 'loop'),
    gap('loop', 'new-far', true),
  ];
  return round ? [...joins, gap('new-far', 'old-far')] : joins;
}

function makeFeeders(random: () => number): TableFeeder[] {
  const fed: readonly (readonly [PieceId, StageIndex])[] = [
    ['old-far', 0],
    ['old-gap', 0],
    ['new-gap', 1],
    ['new-mid', 1],
    ['new-far', 1],
  ];
  return fed.flatMap(([piece, stage]) => {
    const ohms = pick(random, 0.04, 0.1);
    return [
      { stage, piece, rail: 'a', terminal: 'p', ohms, state: 'firm' },
      { stage, piece, rail: 'b', terminal: 'n', ohms, state: 'firm' },
    ] satisfies TableFeeder[];
  });
}

// Trains until a unit is loaded to about half of what it can give.
function makeConsumers(random: () => number, scale: Scale, stages: readonly [TableStage, TableStage]): TableConsumer[] {
  const homes: readonly (readonly [StageIndex, PieceId, PieceId])[] = [
    [0, 'old-far', 'old-gap'],
    [1, 'new-mid', 'new-far'],
  ];
  return homes.flatMap(([stage, first, second]) => {
    const goal = stages[stage].trip * pick(random, 0.3, 0.45);
    const trains: TableConsumer[] = [];
    let sum = 0;
    while (sum < goal) {
      const train = makeTrain(random, scale, trains.length % 2 === 0 ? first : second);
      sum += train.running;
      trains.push(train);
    }
    return trains;
  });
}

/** One train with its draw by the scale's defaults. */
export function makeTrain(random: () => number, scale: Scale, piece: PieceId): TableConsumer {
  const draws = DRAWS[scale];
  return {
    kind: 'train',
    piece,
    running: pickIn(random, draws.modern),
    standing: pickIn(random, draws.standing),
    inrush: pickIn(random, draws.standing),
    inrushSeconds: pick(random, 0.02, 0.04),
  };
}

function makeVehicles(random: () => number, scale: Scale): Record<TableVehicle['kind'], TableVehicle> {
  const size = SIZE[scale];
  const draws = DRAWS[scale];
  const both = (behind: readonly number[]): TableVehicle['pickUps'] =>
    behind.flatMap((b) => [{ rail: 'a', behind: b * size } as const, { rail: 'b', behind: b * size } as const]);
  const common = {
    running: pickIn(random, draws.modern),
    standing: pickIn(random, draws.standing),
    contact: pick(random, 0.15, 0.6),
    rollsOn: pick(random, 0.006, 0.02) * size,
    stored: 0,
    lights: true,
    motor: true,
    dcRunning: chance(random, 0.2),
    obeys: true,
  };
  const rake = Array.from({ length: 10 }, (_, i) => 0.02 + i * 0.13);
  return {
    locomotive: { ...common, kind: 'locomotive', pickUps: both([0.02, 0.05, 0.12, 0.15]), length: 0.17 * size },
    long: { ...common, kind: 'long', pickUps: both([0.02, 0.05, 0.08, 0.19, 0.22, 0.25]), length: 0.27 * size },
    short: { ...common, kind: 'short', pickUps: both([0.02, 0.065]), length: 0.09 * size },
    split: {
      ...common,
      kind: 'split',
      pickUps: [
        ...[0.02, 0.05, 0.08].map((b) => ({ rail: 'a', behind: b * size }) as const),
        ...[0.13, 0.16, 0.19].map((b) => ({ rail: 'b', behind: b * size }) as const),
      ],
      length: 0.21 * size,
    },
    rake: { ...common, kind: 'rake', pickUps: both(rake), length: 1.22 * size, running: common.running + 0.06 },
    coach: {
      ...common,
      kind: 'coach',
      pickUps: both([0.03, 0.2]),
      length: 0.25 * size,
      motor: false,
      running: 0.03,
      standing: 0.03,
    },
    stored: {
      ...common,
      kind: 'stored',
      pickUps: both([0.02, 0.05, 0.12, 0.15]),
      length: 0.17 * size,
      stored: pick(random, 1, 4),
    },
  };
}

function makeMeter(random: () => number): TableMeter {
  const kind = oneOf(random, ['averaging', 'averaging', 'true-rms', 'cheapest'] as const);
  if (kind === 'averaging') return { kind, factor: 1.11 * pick(random, 0.9, 1.02), ohms: 10e6 };
  if (kind === 'true-rms') return { kind, factor: pick(random, 0.6, 1), ohms: 10e6 };
  return { kind, factor: 1.11 * pick(random, 0.5, 1.05), ohms: 0.5e6 };
}
