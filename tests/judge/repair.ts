// What a repair does to the virtual layout: each mends what its steps tell a person to mend, and leaves everything else.

import { DRAWS } from '../../src/engine/power/index.ts';
import type {
  BridgeKind,
  PieceId,
  StageIndex,
  TableConsumer,
  TableFeeder,
  TableJoin,
  TableLayout,
  TableSpot,
  TableStage,
  TableSupply,
  TableVehicle,
} from '../../src/engine/table/layout.ts';
import { GAPPED } from '../../src/engine/table/layout.ts';
import { idleVolts } from '../../src/engine/table/moment.ts';
import type { FixClass } from '../../src/wizards/put-it-right/model/index.ts';
import { partOf } from './layouts.ts';
import { swappedWires } from './observation.ts';

type Repair = (layout: TableLayout) => TableLayout;

// --- small edits -------------------------------------------------------------------------------------------------------------

const feeders =
  (mend: (feeder: TableFeeder, layout: TableLayout) => Partial<TableFeeder>): Repair =>
  (layout) => ({ ...layout, feeders: layout.feeders.map((feeder) => ({ ...feeder, ...mend(feeder, layout) })) });

const joins =
  (mend: (join: TableJoin) => Partial<TableJoin>): Repair =>
  (layout) => ({ ...layout, joins: layout.joins.map((join) => ({ ...join, ...mend(join) })) });

const stages =
  (mend: (stage: TableStage, at: StageIndex, layout: TableLayout) => TableStage): Repair =>
  (layout) => ({ ...layout, stages: [mend(layout.stages[0], 0, layout), mend(layout.stages[1], 1, layout)] });

const supplies =
  (mend: (supply: TableSupply, at: StageIndex, layout: TableLayout) => TableSupply): Repair =>
  (layout) => ({ ...layout, supplies: [mend(layout.supplies[0], 0, layout), mend(layout.supplies[1], 1, layout)] });

const vehicles =
  (mend: (vehicle: TableVehicle, layout: TableLayout) => TableVehicle): Repair =>
  (layout) => {
    const all = { ...layout.vehicles };
    for (const { kind } of Object.values(layout.vehicles)) all[kind] = mend(layout.vehicles[kind], layout);
    return { ...layout, vehicles: all };
  };

const consumers =
  (mend: (consumer: TableConsumer) => Partial<TableConsumer>): Repair =>
  (layout) => ({ ...layout, consumers: layout.consumers.map((consumer) => ({ ...consumer, ...mend(consumer) })) });

const withoutBridges =
  (...kinds: readonly BridgeKind[]): Repair =>
  (layout) => ({ ...layout, bridges: layout.bridges.filter(({ kind }) => !kinds.includes(kind)) });

const withoutSpots =
  (kind: TableSpot['kind']): Repair =>
  (layout) => ({ ...layout, spots: layout.spots.filter((spot) => spot.kind !== kind) });

const withoutWheelShort = (vehicle: TableVehicle): TableVehicle => {
  const { wheelShort: _, ...sound } = vehicle;
  return sound;
};

const isAtLoop = ({ from, to }: TableJoin): boolean => from === 'loop' || to === 'loop';
const isClosed = (ohms: number): boolean => Number.isFinite(ohms);
const OPEN = { ohmsA: GAPPED, ohmsB: GAPPED } as const;

// --- power -------------------------------------------------------------------------------------------------------------------

const partIndex = (piece: PieceId): StageIndex => (partOf(piece) === 'old' ? 0 : 1);

const runningAmps = (layout: TableLayout, stage: StageIndex): number =>
  layout.consumers.reduce((sum, { piece, running }) => (partIndex(piece) === stage ? sum + running : sum), 0);

/** Share of the trip current that a part with room draws. Source: from-memory. */
const ROOM = 0.6;

// Trains and lamps are taken off where a part draws too much, and a supply below its unit is exchanged for a larger one.
const enough: Repair = (layout) => {
  const share = ([0, 1] as const).map((stage) =>
    Math.min(1, (ROOM * layout.stages[stage].trip) / Math.max(runningAmps(layout, stage), 1e-9)),
  );
  const fewer = consumers(({ piece, running, standing }) => {
    const less = share[partIndex(piece)] ?? 1;
    return { running: less * running, standing: less * standing };
  });
  return largerSupplies(fewer(layout));
};

const amply = (supply: TableSupply, trip: number): TableSupply => {
  const { defect: _, ...sound } = supply;
  const amps = Math.max(supply.amps, 1.3 * trip + 0.3);
  return { ...sound, amps, continuous: Math.max(amps, supply.continuous) };
};

const largerSupplies: Repair = supplies((supply, at, layout) =>
  supply.defect === 'dead' ? supply : amply(supply, layout.stages[at].trip),
);

// Every train draws in the part that has more room for it.
const evenly: Repair = (layout) => {
  const drawn = [0, 0];
  const room = (stage: StageIndex): number => layout.stages[stage].trip - (drawn[stage] ?? 0);
  const homes = { 0: 'old-far', 1: 'new-mid' } as const;
  const moved = [...layout.consumers]
    .sort((one, other) => other.running - one.running)
    .map((consumer) => {
      const stage = room(0) > room(1) ? 0 : 1;
      drawn[stage] = (drawn[stage] ?? 0) + consumer.running;
      return partIndex(consumer.piece) === stage ? consumer : { ...consumer, piece: homes[stage] };
    });
  return { ...layout, consumers: moved };
};

const equalVolts: Repair = (layout) => {
  const setVolts = Math.min(idleVolts(layout, 0), idleVolts(layout, 1));
  const label = Math.min(layout.supplies[0].volts, layout.supplies[1].volts);
  const alike = supplies((supply) => ({ ...supply, volts: label }))(layout);
  const areSet = layout.stages.every((stage) => stage.setVolts !== undefined);
  return areSet ? stages((stage) => ({ ...stage, setVolts }))(alike) : alike;
};

const exchanged: Repair = supplies((supply, at, layout) => amply(supply, layout.stages[at].trip));

const firmOwn = feeders(({ stage, state }) => (stage === 1 && state !== 'programming' ? { state: 'firm' } : {}));

const rightWayRound: Repair = feeders(({ stage, rail, piece }, layout) => {
  const first = layout.feeders.find((feeder) => feeder.stage === stage && feeder.rail === rail);
  return first === undefined || partIndex(piece) !== stage ? {} : { terminal: first.terminal };
});

const withoutForeignFeeders: Repair = (layout) => ({
  ...layout,
  feeders: layout.feeders.filter(({ stage, piece }) => partIndex(piece) === stage),
});

/** Ohms of a feeder of thick wire. Source: own-derivation (2.5 mm2, some metres). */
const THICK = 0.07;

const soundMotor = (vehicle: TableVehicle, { vehicles: all }: TableLayout): TableVehicle =>
  vehicle.running > 2 * all.long.running ? { ...vehicle, running: all.long.running } : vehicle;

const protecting: Repair = stages((stage, _, { scale }) => ({
  ...stage,
  trip: Math.min(stage.trip, DRAWS[scale].tripCeiling),
  tripSeconds: Math.min(stage.tripSeconds, 0.2),
}));

const withoutSecondSource: Repair = (layout) => {
  const { secondSource: _, ...rest } = layout;
  return rest;
};

const withoutDefect: Repair = stages((stage) => {
  const { defect: _, ...sound } = stage;
  return sound;
});

// Farther apart than the longest train spans.
const longerLoop: Repair = (layout) => ({
  ...layout,
  lengths: { ...layout.lengths, loop: Math.max(layout.lengths.loop, 1.5 * layout.vehicles.rake.length) },
});

const reverserFirst: Repair = (layout) => {
  const { trip, tripSeconds } = layout.stages[layout.loopStage];
  const loopReverser = { ...layout.loopReverser, trip: 0.5 * trip, tripSeconds: Math.min(0.01, 0.3 * tripSeconds) };
  return { ...layout, loopReverser };
};

/** Repairs that the circuit of the virtual layout cannot take, each with its reason. */
const NOT_ON_THE_TABLE = {
  'switch-off-now': 'nothing is mended by it',
  'long-bus': 'the table has no length of wire on which a signal is reflected',
  'hidden-common': 'a path over the mains earth is no part of the circuit',
  'stage-order': 'the two stages and their breakers are one stage each on the table',
  'program-bridge': 'the programming track is an output and no piece of track',
  'sagging-accessories': 'the table has no accessories',
  'accessory-reset': 'the table has no accessories',
  'accessory-supply-weak': 'the table has no accessories',
  'accessory-address': 'the table has no accessories',
  'accessory-wiring': 'the table has no accessories',
  'coil-held': 'the table has no accessories',
  'accessory-polarity': 'the table has no accessories',
  'detector-false': 'the table has no bus on which a detector reports',
  'into-control-bus': 'the control bus is a plug in a socket, not a pair of wires',
  'board-plug': 'the table has no boards with plugs between them',
  'device-open': 'stages and what lies behind them are one stage each on the table',
  'fuse-blown': 'the table has no fuses',
  'old-switch': 'the table has no switches in its feeders',
  'joiner-forgotten': 'the circuit is that of a dead joint; only an eye tells the two apart',
  'brake-section': 'the table has no diodes in a rail',
  'mains-off': 'the mains of the house are no part of the circuit',
  'masked-reversal': 'the circuit is that of reversed wires; what hid them lies in the past',
  'auto-reverse-off': 'a reverser of the table belongs to its loop',
  'volts-too-high': 'nothing of the table gets hot or complains of volts',
  'centre-swapped': 'the table has two rails',
  'restart-load': 'the circuit is that of a burst at switch-on; the short before it lies in the past',
  'breakers-alike': 'stages and what lies behind them are one stage each on the table',
  'protection-set-low': 'a stage of the table is set by its label, and its trains draw what it gives',
  'fast-breaker': 'stages and what lies behind them are one stage each on the table',
  turntable: 'the table has no turntable',
  'frog-gap-closed': 'the table has no cuts inside a turnout',
  'frog-unit-slow': 'the table has nothing that switches a frog by itself',
  'track-piece-faulty': 'the table has no crossing',
  'unit-cuts-out': 'a stage of the table goes off for a reason only',
  'accessory-short': 'the table has no accessories',
  'accessory-random': 'the table has no accessories',
  'handheld-lost': 'the table has no handhelds',
  'control-bus-weak': 'the control bus is a plug in a socket, not a pair of wires',
  'control-bus-supply': 'the control bus is a plug in a socket, not a pair of wires',
  'radio-disturbed': 'the table has no radio',
  'computer-acts': 'the table has no computer that acts',
  'volts-set-low':
    'the circuit is that of a voltage step; how high both stand is a setting and no fault of the circuit',
  'frog-upsets-motor': 'the table has no accessories',
  'accessory-shared-return': 'the table has no accessories',
  'waits-for-button': 'nothing is wrong in the circuit; how it comes back is a setting',
  'program-cuts-pulse': 'the table has no computer that acts',
  'accessory-on-bus': 'the control bus is a plug in a socket, not a pair of wires',
  'computer-not-connected': 'the table has no computer that acts',
  'motor-stuck': 'a motor of the table turns whenever it is told to',
  'wheels-slip': 'a wheel of the table always grips',
  'parked-across-loop': 'the table has one vehicle on the move, and none that stands at a loop',
  'frog-wrong-rail': 'the table has nothing that switches a frog by itself',
  'turntable-reversed': 'the table has no turntable',
  'programming-not-fed': 'the programming track is an output and no piece of track',
  'no-decoder': 'every motor of the table has a decoder, but for the one that tests a gap',
  'frog-not-fed': 'the table has nothing that switches a frog by itself',
  'false-short': 'a stage of the table goes off for a reason only',
  'blink-code': 'a stage of the table has a lamp and no code',
  'self-built-unit': 'the circuit is that of a stage defect; who built it lies in the past',
  'consist-left-over': 'a decoder obeys or not, it does not remember a double heading',
  'decoder-muddled': 'the circuit is that of a wrong address; what the decoder holds is no part of it',
  'decoder-damaged': 'the circuit is that of a wrong address; what the decoder holds is no part of it',
  'motor-noise': 'the table has no motor that disturbs its decoder',
  'decoder-disturbs': 'the table has one vehicle on the move, and no decoder that disturbs others',
  'address-zero': 'the table has no direct current laid under the signal',
  'house-protection': 'the mains of the house are no part of the circuit',
  tingle: 'a path over the mains earth shows between cases, which are no part of the circuit',
  'cannot-be-read': 'the programming track is an output and no piece of track',
  'programs-others': 'the programming track is an output and no piece of track',
  'detector-crosstalk': 'the table has no bus on which a detector reports',
  'loco-loose-contact': 'what is loose inside a vehicle moves, and its pick-ups do not',
  'loco-short-inside': 'the circuit is that of a wheelset that shorts; only the hand tells the two apart',
} as const satisfies Readonly<Partial<Record<FixClass, string>>>;

/** A repair that the circuit can take. */
type TableRepair = Exclude<FixClass, keyof typeof NOT_ON_THE_TABLE>;

const REPAIRS = {
  'no-feed': firmOwn,
  'wrong-output': feeders(({ state }) => (state === 'programming' ? { state: 'firm' } : {})),
  'booster-off': (layout) =>
    supplies((supply) => ({ ...supply, plugged: true }))(stages((one) => ({ ...one, on: true }))(layout)),
  'stop-active': (layout) => ({ ...layout, stopped: false }),
  'turnout-routing': (layout) => firmOwn({ ...layout, turnout: { ...layout.turnout, routing: false } }),
  'no-signal': (layout) => ({ ...layout, link: { ...layout.link, state: 'good' } }),
  suppressor: (layout) => ({ ...layout, capacitor: 0 }),
  'two-sources': withoutSecondSource,
  'booster-role': stages((stage) => ({ ...stage, ownCommands: false })),
  'wrong-format': stages((stage) => ({ ...stage, wrongFormat: false })),
  'one-rail': joins((join) =>
    join.kind === 'gap' && !isAtLoop(join) && isClosed(join.ohmsA) !== isClosed(join.ohmsB) ? OPEN : {},
  ),
  'second-path': (layout) => withoutForeignFeeders(withoutBridges('second-track')(layout)),
  'gap-closed': joins((join) => (join.kind === 'gap' && isClosed(join.ohmsA) && isClosed(join.ohmsB) ? OPEN : {})),
  'shared-wire': withoutBridges('lamp', 'detector'),
  'leftover-wiring': withoutBridges('old-wiring'),
  reversed: swappedWires,
  'voltage-step': equalVolts,
  skew: stages((stage) => ({ ...stage, late: 0 })),
  'no-reference': (layout) => ({ ...layout, common: 'joined-negatives' }),
  'cutout-mismatch': stages((stage) => ({ ...stage, cutout: false })),
  'not-enough': enough,
  'lopsided-split': evenly,
  'supply-too-small': largerSupplies,
  'binding-locomotive': vehicles(soundMotor),
  'filament-lamps': (layout) => ({ ...layout, consumers: layout.consumers.filter(({ kind }) => kind !== 'coaches') }),
  inrush: consumers(({ inrush }) => ({ inrush: 0.1 * inrush })),
  'stage-heat': stages((stage) => ({ ...stage, continuous: 1.5 * stage.continuous })),
  'supply-heat': supplies((supply) => ({ ...supply, continuous: 1.5 * supply.continuous })),
  'mains-sag': supplies((supply) => ({ ...supply, mainsOhms: 0 })),
  'thin-wire': feeders(({ ohms }) => ({ ohms: Math.min(ohms, THICK) })),
  'few-feeds': firmOwn,
  'bad-joiner': joins(({ kind, ohmsA, ohmsB }) => {
    const ohms = Math.min(ohmsA, ohmsB);
    return kind === 'plain' ? { ohmsA: ohms, ohmsB: ohms } : {};
  }),
  dirty: withoutSpots('dirty'),
  'joint-step': withoutSpots('step'),
  'long-dead-gap': (layout) => ({ ...layout, lengths: { ...layout.lengths, dead: 0 } }),
  pickup: vehicles((vehicle, { vehicles: all }) =>
    vehicle.kind === 'locomotive' && vehicle.pickUps.length <= 2
      ? { ...vehicle, pickUps: all.stored.pickUps }
      : vehicle,
  ),
  'analogue-mode': vehicles((vehicle) => ({ ...vehicle, dcRunning: false })),
  address: vehicles((vehicle) => ({ ...vehicle, obeys: true })),
  'wheelset-short': vehicles((vehicle) =>
    vehicle.kind === 'locomotive' && vehicle.wheelShort !== 'at-frog' ? withoutWheelShort(vehicle) : vehicle,
  ),
  'metal-bodies': vehicles((vehicle) => (vehicle.kind === 'locomotive' ? vehicle : withoutWheelShort(vehicle))),
  'wheel-bridges-frog': vehicles((vehicle) =>
    vehicle.wheelShort === 'at-frog' ? withoutWheelShort(vehicle) : vehicle,
  ),
  'protection-set-wrong': protecting,
  'loop-not-isolated': joins((join) => (isAtLoop(join) ? OPEN : {})),
  'loop-too-short': longerLoop,
  'loop-no-device': (layout) => ({ ...layout, loopReverser: { ...layout.loopReverser, kind: 'automatic' } }),
  'reverser-grading': reverserFirst,
  'two-auto-reversers': (layout) => ({ ...layout, partReverser: { ...layout.partReverser, kind: 'none' } }),
  'reverse-route': joins((join) => (isAtLoop(join) ? {} : { crossed: false })),
  'live-frog': withoutBridges('live-frog'),
  'frog-cross-district': withoutBridges('frog-wire'),
  'metal-across': withoutBridges('metal', 'rod'),
  leak: withoutBridges('leak', 'damp'),
  'crossed-feeder': rightWayRound,
  'detector-drop': (layout) => ({ ...layout, diodeDetector: false }),
  'wrong-supply-kind': supplies((supply) => ({ ...supply, fits: true })),
  'supply-defect': exchanged,
  'stage-defect': withoutDefect,
  'socket-damaged': stages((stage) => ({ ...stage, wornSocket: false })),
  // The test is done again as it should be: track plug pulled, a locomotive without stored energy.
  'test-misled': (layout) => ({ ...layout, usual: 'locomotive', trackPulled: [layout.trackPulled[0], true] }),
} as const satisfies Readonly<Record<TableRepair, Repair>>;

const isTableRepair = (id: string): id is TableRepair => Object.hasOwn(REPAIRS, id);

/** Repairs that the virtual layout can take. */
export const TABLE_REPAIRS: readonly string[] = Object.keys(REPAIRS);

/**
 * The layout after a repair, done as its steps say, whatever is wrong with it. Shape: a layout and the id of a repair in, a new layout out; the
 * layout given is left as it is. A repair that the virtual layout cannot take changes nothing.
 */
export function repaired(layout: TableLayout, repair: string): TableLayout {
  return isTableRepair(repair) ? REPAIRS[repair](layout) : layout;
}
