// Virtual layouts in working order, made out of a seed.
import { DRAWS } from '../../src/engine/power/draws.ts';
import type { Scale } from '../../src/engine/power/index.ts';
import { SCALE_RANGE } from '../../src/engine/power/rail-voltage.ts';
import type {
  PieceId,
  StageIndex,
  TableConsumer,
  TableFeeder,
  TableJoin,
  TableLayout,
  TableMeter,
  TableStage,
  TableSupply,
  TableVehicle,
} from '../../src/engine/table/layout.ts';
import { GAPPED, pieceIndex } from '../../src/engine/table/layout.ts';
import type { Span } from '../../src/engine/units.ts';

const pick = (random: () => number, from: number, to: number): number => from + (to - from) * random();
const pickIn = (random: () => number, { from, to }: Span): number => pick(random, from, to);
const chance = (random: () => number, share: number): boolean => random() < share;

/** Which of the two parts a piece belongs to. */
export const partOf = (piece: PieceId): 'old' | 'new' => (pieceIndex(piece) < 2 ? 'old' : 'new');

/** Sizes of vehicles and track against H0. Source: own-derivation (ratio of the scales). */
const SIZE: Readonly<Record<Scale, number>> = { z: 0.4, n: 0.54, tt: 0.73, h0: 1, '0': 1.93, '1': 2.72 };
/** A bonded or tight joiner, ohms. Source: from-memory. */
const JOINER: Span = { from: 0.004, to: 0.015 };

/**
 * A layout in working order: command station and booster, two parts with both rails gapped between them at every place, each
 * part fed in all its pieces, trains that both units carry with ease. Shape: a seeded generator in; the same seed gives the same
 * layout. Source: own-derivation, ranges from common-practice and from-memory.
 */
export function makeLayout(random: () => number): TableLayout {
  const scale = oneOf(random, ['n', 'tt', 'h0', 'h0', 'h0', '0'] as const);
  const size = SIZE[scale];
  const trip = pickIn(random, DRAWS[scale].trip);
  const back = comesBackOf(random);
  const range = SCALE_RANGE[scale];
  const volts = pick(random, range.from + 0.5, range.to - 1);
  const stages = [
    { ...makeStage(random, trip, volts), ...back },
    { ...makeStage(random, trip * pick(random, 0.9, 1), volts), ...back },
  ] as const;
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
    common: chance(random, 0.4) ? 'joined-negatives' : 'floating',
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

/**
 * How units protect themselves, alike in both: off until a button, on again after seconds, or in a blink. A unit that lets its volts fall and stays
 * on is not on the table: every stage of it trips. Shares of the circumstances of the model.
 */
function comesBackOf(random: () => number): Pick<TableStage, 'comesBack' | 'retrySeconds'> {
  const kind = random() * 90;
  if (kind < 30) return { comesBack: 'latched', retrySeconds: 3 };
  return { comesBack: 'retry', retrySeconds: kind < 65 ? pick(random, 2, 5) : pick(random, 0.1, 0.4) };
}

function makeStage(random: () => number, trip: number, volts: number): TableStage {
  return {
    on: true,
    setVolts: volts + pick(random, -0.15, 0.15),
    trip,
    tripSeconds: pick(random, 0.03, 0.2),
    comesBack: 'retry',
    retrySeconds: 3,
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
