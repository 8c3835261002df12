// Faults put into the virtual layout, each as the wire, rail, unit or vehicle that it is.

import { DRAWS } from '../../src/engine/power/index.ts';
import type {
  PieceId,
  StageIndex,
  TableBridge,
  TableConsumer,
  TableFeeder,
  TableJoin,
  TableLayout,
  TableStage,
  TableSupply,
  TableVehicle,
} from '../../src/engine/table/layout.ts';
import { GAPPED } from '../../src/engine/table/layout.ts';
import { idleVolts } from '../../src/engine/table/moment.ts';
import type { CauseId } from '../../src/wizards/put-it-right/model/causes/index.ts';
import { across, bridged } from './instruments.ts';
import { makeTrain, partOf } from './layouts.ts';
import { swappedWires } from './observation.ts';

/** Faults that the circuit of the virtual layout cannot express, each with its reason. */
const NOT_ON_THE_TABLE = {
  'unsafe-heat': 'nothing of the table smokes or smells; danger is asked before everything',
  'long-bus': 'the table has no length of wire on which a signal is reflected',
  'hidden-common': 'a path over the mains earth shows between cases, which are no part of the circuit',
  'stage-order': 'the two stages and their breakers are one stage each on the table',
  'analogue-mode': 'a decoder is told or not told to run on direct current, it does not lose its setting',
  'program-bridge': 'the programming track is an output and no piece of track',
  'sagging-accessories': 'the table has no accessories',
  'accessory-reset': 'the table has no accessories',
  'accessory-supply-weak': 'the table has no accessories',
  'accessory-address': 'the table has no accessories',
  'accessory-wiring': 'the table has no accessories',
  'coil-held': 'the table has no accessories',
  'stretch-reversed': 'on the table each stretch behind a gap has a unit of its own',
  'accessory-polarity': 'the table has no accessories',
  'detector-false': 'the table has no bus on which a detector reports',
  'into-control-bus': 'the control bus is a plug in a socket, not a pair of wires',
  'socket-damaged': 'a worn socket shows only when it is moved, and the table stands still',
  'module-plug': 'the table has no boards with plugs between them',
  'device-open': 'stages and what lies behind them are one stage each on the table',
  'fuse-blown': 'the table has no fuses',
  'panel-switch': 'the table has no switches in its feeders',
  'joiner-forgotten': 'the circuit is that of a dead joint; only an eye tells the two apart',
  'brake-section': 'the table has no diodes in a rail',
  'mains-off': 'the mains of the house are no part of the circuit',
  'masked-reversal': 'the circuit is that of reversed wires; what hid them lies in the past',
  'reverser-at-plain-gap': 'a reverser of the table belongs to its loop',
  'rail-volts-too-high': 'nothing of the table gets hot or complains of volts',
  'centre-swapped': 'the table has two rails',
  'restart-load': 'the circuit is that of a burst at switch-on; the short before it lies in the past',
  'breaker-wired-unlike': 'stages and what lies behind them are one stage each on the table',
  'breaker-low': 'stages and what lies behind them are one stage each on the table',
  'low-trip': 'a stage of the table is set by its label, and its trains draw what it gives',
  'fast-breaker-shows': 'stages and what lies behind them are one stage each on the table',
  'turntable-wipers': 'the table has no turntable',
  'frog-gap-closed': 'the table has no cuts inside a turnout',
  'frog-unit-slow': 'the table has nothing that switches a frog by itself',
  'track-piece-faulty': 'the table has no crossing',
  'unit-cuts-out': 'a stage of the table goes off for a reason only',
  'accessory-short': 'the table has no accessories',
  'accessory-random': 'the table has no accessories',
  'handheld-lost': 'the table has no handhelds',
  'bus-weak': 'the control bus is a plug in a socket, not a pair of wires',
  'bus-supply-missing': 'the control bus is a plug in a socket, not a pair of wires',
  'radio-disturbed': 'the table has no radio',
  'computer-acts': 'the table has no computer that acts',
  'unit-set-low': 'the circuit is that of a voltage step; how high both stand is a setting and no fault of the circuit',
  'frog-upsets-motor': 'the table has no accessories',
  'accessory-shared-return': 'the table has no accessories',
  'waits-for-button': 'nothing is wrong in the circuit; how it comes back is a setting',
  'program-cuts-pulse': 'the table has no computer that acts',
  'accessory-on-bus': 'the control bus is a plug in a socket, not a pair of wires',
  'computer-silent': 'the table has no computer that acts',
  'motor-stuck': 'a motor of the table turns whenever it is told to',
  'wheels-slip': 'a wheel of the table always grips',
  'supply-ripples': 'a supply of the table is smooth; one that gives up is the limit of a supply',
  'parked-across-loop': 'the table has one vehicle on the move, and none that stands at a loop',
  'frog-wrong-rail': 'the table has nothing that switches a frog by itself',
  'turntable-reversed': 'the table has no turntable',
  'programming-not-fed': 'the programming track is an output and no piece of track',
  'no-decoder': 'every motor of the table has a decoder, but for the one that tests a gap',
  'frog-not-fed': 'the table has nothing that switches a frog by itself',
  'false-short': 'a stage of the table goes off for a reason only',
  'unit-guards-itself': 'a stage of the table has a lamp and no code',
  'kit-unit': 'the circuit is that of a stage defect; who built it lies in the past',
  'consist-left-over': 'a decoder obeys or not, it does not remember a double heading',
  'decoder-muddled': 'the circuit is that of a wrong address; what the decoder holds is no part of it',
  'decoder-damaged': 'the circuit is that of a wrong address; what the decoder holds is no part of it',
  'motor-noise': 'the table has no motor that disturbs its decoder',
  'decoder-disturbs': 'the table has one vehicle on the move, and no decoder that disturbs others',
  'address-zero': 'the table has no direct current laid under the signal',
  'house-protection': 'the mains of the house are no part of the circuit',
  tingle: 'a path over the mains earth shows between cases, which are no part of the circuit',
  'cannot-be-read': 'the programming track is an output and no piece of track',
  'read-on-main': 'the programming track is an output and no piece of track',
  'detector-crosstalk': 'the table has no bus on which a detector reports',
  'loco-loose-contact': 'what is loose inside a vehicle moves, and its pick-ups do not',
  'loco-short-inside': 'the circuit is that of a wheelset that shorts; only the hand tells the two apart',
} as const satisfies Readonly<Partial<Record<CauseId, string>>>;

/** A fault that the circuit can express. */
export type TableFault = Exclude<CauseId, keyof typeof NOT_ON_THE_TABLE>;

/**
 * The layout with one fault in it. Shape: a layout, an id and a seeded generator in, a new layout out; the layout given is left
 * as it is. `unfed`: the person has not connected the far part yet, as before the first test of a gap. `atLoop`: a closed gap is one of the
 * loop's.
 */
export function inject(
  layout: TableLayout,
  fault: TableFault,
  random: () => number,
  { unfed = false, reversedToo = false, atLoop = false } = {},
): TableLayout {
  const turned = reversedToo ? swappedWires(layout) : layout;
  if (atLoop && fault === 'gap-closed') return closedLoop(turned, random);
  const wrong = INJECTIONS[fault]({ layout: turned, random, pick: (from, to) => from + (to - from) * random() });
  if (!unfed) return wrong;
  return { ...wrong, believedUnfed: true, trackPulled: [false, fault !== 'already-fed'] };
}

// Heat or a burr closes both rails at one end of the loop.
function closedLoop(layout: TableLayout, random: () => number): TableLayout {
  const closed = { ohmsA: 0.04, ohmsB: 0.05 };
  const looped = { ...layout, hasLoop: true };
  return random() < 0.5
    ? joinsWith(looped, 'new-far', 'loop', () => closed)
    : joinsWith(looped, 'loop', 'new-far', () => closed);
}

interface Given {
  readonly layout: TableLayout;
  readonly random: () => number;
  /** A number between two. */
  readonly pick: (from: number, to: number) => number;
}
type Injection = (given: Given) => TableLayout;

// --- small edits -------------------------------------------------------------------------------------------------------------

function stageWith(layout: TableLayout, stage: StageIndex, change: Partial<TableStage>): TableLayout {
  const [first, second] = layout.stages;
  return {
    ...layout,
    stages: stage === 0 ? [{ ...first, ...change }, second] : [first, { ...second, ...change }],
  };
}

function supplyWith(layout: TableLayout, stage: StageIndex, change: Partial<TableSupply>): TableLayout {
  const [first, second] = layout.supplies;
  return {
    ...layout,
    supplies: stage === 0 ? [{ ...first, ...change }, second] : [first, { ...second, ...change }],
  };
}

const either = (random: () => number): StageIndex => (random() < 0.5 ? 0 : 1);

function feedersWith(
  layout: TableLayout,
  which: (feeder: TableFeeder) => boolean,
  change: (feeder: TableFeeder) => Partial<TableFeeder>,
): TableLayout {
  return {
    ...layout,
    feeders: layout.feeders.map((feeder) => (which(feeder) ? { ...feeder, ...change(feeder) } : feeder)),
  };
}

const ofNew = ({ stage }: TableFeeder): boolean => stage === 1;
const at =
  (...pieces: readonly PieceId[]) =>
  (feeder: TableFeeder): boolean =>
    pieces.includes(feeder.piece);

function joinsWith(
  layout: TableLayout,
  from: PieceId,
  to: PieceId,
  change: (join: TableJoin) => Partial<TableJoin>,
): TableLayout {
  return {
    ...layout,
    joins: layout.joins.map((join) => (join.from === from && join.to === to ? { ...join, ...change(join) } : join)),
  };
}

function vehiclesWith(
  layout: TableLayout,
  kinds: readonly TableVehicle['kind'][],
  change: (vehicle: TableVehicle) => Partial<TableVehicle>,
): TableLayout {
  const vehicles = { ...layout.vehicles };
  for (const kind of kinds) vehicles[kind] = { ...vehicles[kind], ...change(vehicles[kind]) };
  return { ...layout, vehicles };
}

function consumersWith(layout: TableLayout, change: (consumer: TableConsumer) => Partial<TableConsumer>): TableLayout {
  return { ...layout, consumers: layout.consumers.map((consumer) => ({ ...consumer, ...change(consumer) })) };
}

function runningAmps({ consumers }: TableLayout, stage: StageIndex): number {
  const here = consumers.filter(({ piece }) => partOf(piece) === (stage === 0 ? 'old' : 'new'));
  return here.reduce((sum, { running }) => sum + running, 0);
}

// Trains in one part until they draw this share of what trips its unit.
function crowded({ layout, random }: Given, stage: StageIndex, share: number): TableLayout {
  const consumers = [...layout.consumers];
  const goal = share * layout.stages[stage].trip;
  const homes: readonly [PieceId, PieceId] = stage === 0 ? ['old-far', 'old-gap'] : ['new-mid', 'new-far'];
  let sum = runningAmps(layout, stage);
  while (sum < goal) {
    const train = makeTrain(random, layout.scale, homes[consumers.length % 2 === 0 ? 0 : 1]);
    sum += train.running;
    consumers.push(train);
  }
  return { ...layout, consumers, lastChange: 'vehicle' };
}

const track = (layout: TableLayout): TableLayout => ({ ...layout, lastChange: 'track-or-wires' });
/** It was there before, or nobody remembers. */
const sometimesTrack = (random: () => number, layout: TableLayout): TableLayout =>
  random() < 0.5 ? track(layout) : { ...layout, lastChange: 'nothing' };
const unit = (layout: TableLayout): TableLayout => ({ ...layout, lastChange: 'supply-or-unit' });
/** A supply alone was exchanged. */
const supply = (layout: TableLayout): TableLayout => ({ ...layout, lastChange: 'supply' });
const setting = (layout: TableLayout): TableLayout => ({ ...layout, lastChange: 'setting' });
const vehicle = (layout: TableLayout): TableLayout => ({ ...layout, lastChange: 'vehicle' });

/** Ohms at which a short in the new part draws just what trips its unit. */
const tripOhms = (layout: TableLayout): number => idleVolts(layout, 1) / layout.stages[1].trip;

// A bridge to the same rails of another piece.
const bothTo = (kind: TableBridge['kind'], from: PieceId, to: PieceId, ohms: number): TableBridge[] => [
  across(kind, [from, 'a'], [to, 'a'], ohms),
  across(kind, [from, 'b'], [to, 'b'], ohms),
];

/** A supply that carries a short circuit for longer than the unit takes to see it. */
const strong = (layout: TableLayout): TableLayout => supplyWith(layout, 1, { amps: 100, continuous: 100 });

const withLoop = (layout: TableLayout): TableLayout => ({ ...layout, hasLoop: true });

const link =
  (state: TableLayout['link']['state']): Injection =>
  ({ layout }) =>
    track({ ...layout, link: { ...layout.link, state } });

// Rails that follow unlike supplies; `lead` is how far the booster stands above the command station.
function following({ layout, random }: Given, lead: number): TableLayout {
  const volts = Math.min(idleVolts(layout, 0), idleVolts(layout, 1)) + 1;
  const supplies = supplyWith(supplyWith(layout, 0, { volts: volts + Math.max(0, -lead) }), 1, {
    volts: volts + Math.max(0, lead),
  });
  const free = (stage: StageIndex): TableStage => {
    const { setVolts: _, guard: _guard, ...rest } = layout.stages[stage];
    return random() < 0.4 ? { ...rest, guard: supplies.supplies[stage].volts + 0.3 } : rest;
  };
  return supply({ ...supplies, stages: [free(0), free(1)] });
}

// A feed that runs short of amperes as soon as trains run.
function starved({ layout, random, pick }: Given, limits: TableSupply['limits']): TableLayout {
  const stage = either(random);
  return supply(supplyWith(layout, stage, { amps: runningAmps(layout, stage) * pick(0.7, 0.9), limits }));
}

const turnoutSet = (layout: TableLayout, thrown: boolean): TableLayout => ({
  ...layout,
  turnout: { ...layout.turnout, thrown },
});

const single = ({ pickUps }: TableVehicle): Partial<TableVehicle> => ({ pickUps: pickUps.slice(0, 2) });

const INJECTIONS = {
  'feed-missing': ({ layout }) => track(feedersWith(layout, ofNew, () => ({ state: 'missing' }))),
  'feed-wire-broken': ({ layout, random }) => {
    const rail = random() < 0.5 ? 'a' : 'b';
    return track(
      feedersWith(
        layout,
        (f) => ofNew(f) && f.rail === rail,
        () => ({ state: 'broken' }),
      ),
    );
  },
  'wrong-output': ({ layout }) => track(feedersWith(layout, ofNew, () => ({ state: 'programming' }))),
  'booster-off': ({ layout, random }) =>
    unit(random() < 0.5 ? supplyWith(layout, 1, { plugged: false }) : stageWith(layout, 1, { on: false })),
  'stop-active': ({ layout }) => setting({ ...layout, stopped: true }),
  'turnout-routing': ({ layout }) => {
    const routed = { ...layout, turnout: { ...layout.turnout, routing: true, thrown: true } };
    return track(feedersWith(routed, at('new-far'), () => ({ state: 'missing' })));
  },
  'link-missing': link('missing'),
  'link-wrong-socket': link('wrong-socket'),
  'link-faulty': link('faulty'),
  suppressor: ({ layout, pick }) => track({ ...layout, capacitor: pick(0.22e-6, 1e-6) }),
  'two-sources': ({ layout, random, pick }) =>
    track({
      ...layout,
      secondSource: { piece: 'new-mid', volts: pick(6, 12), ohms: random() < 0.5 ? pick(2, 6) : pick(15, 40) },
    }),
  'booster-role': ({ layout }) => unit(stageWith(layout, 1, { ownCommands: true })),
  'wrong-format': ({ layout }) => setting(stageWith(layout, 1, { wrongFormat: true })),
  'one-rail': ({ layout, random }) => {
    const rail = random() < 0.5 ? { ohmsA: 0.03 } : { ohmsB: 0.03 };
    return track(joinsWith(layout, 'old-gap', 'new-gap', () => rail));
  },
  'forgotten-path': ({ layout, pick }) =>
    track(bridged(layout, ...bothTo('second-track', 'old-far', 'new-mid', pick(0.1, 0.4)))),
  'old-feeder-left': ({ layout, pick }) => {
    const ohms = pick(0.06, 0.15);
    const more: TableFeeder[] = [
      { stage: 0, terminal: 'p', piece: 'new-mid', rail: 'a', ohms, state: 'firm' },
      { stage: 0, terminal: 'n', piece: 'new-mid', rail: 'b', ohms, state: 'firm' },
    ];
    return track({ ...layout, feeders: [...layout.feeders, ...more] });
  },
  'gap-closed': ({ layout, pick }) =>
    joinsWith(layout, 'old-gap', 'new-gap', () => ({ ohmsA: pick(0.02, 0.1), ohmsB: pick(0.02, 0.1) })),
  'shared-wire': ({ layout, pick, random }) =>
    track(bridged(layout, ...bothTo(random() < 0.5 ? 'lamp' : 'detector', 'old-gap', 'new-gap', pick(30, 120)))),
  'leftover-wiring': ({ layout, pick }) =>
    track(bridged(layout, ...bothTo('old-wiring', 'old-far', 'new-mid', pick(0.2, 0.8)))),
  'feed-reversed': ({ layout }) => track(swappedWires(layout)),
  'link-inverted': ({ layout }) => track({ ...layout, link: { ...layout.link, inverted: true } }),
  'supplies-swapped': (given) => following(given, given.pick(2.5, 4.5)),
  'unlike-supplies': (given) => following(given, given.pick(2, 4) * (given.random() < 0.7 ? 1 : -1)),
  'low-setting': ({ layout, pick }) => setting(stageWith(layout, 1, { setVolts: idleVolts(layout, 1) - pick(2.5, 4) })),
  skew: ({ layout, pick }) => unit(stageWith(layout, 1, { late: pick(2.5e-6, 6e-6) })),
  'no-reference': ({ layout }) => {
    const split = { ...layout.vehicles.split, kind: 'locomotive' } as const;
    return unit({ ...layout, common: 'floating', vehicles: { ...layout.vehicles, locomotive: split } });
  },
  'cutout-mismatch': ({ layout }) => setting(stageWith(layout, 0, { cutout: true })),
  'overload-total': (given) => {
    const first = crowded(given, 0, given.pick(1.15, 1.5));
    return crowded({ ...given, layout: first }, 1, given.pick(1.15, 1.5));
  },
  'stage-limit': (given) => {
    const first = crowded(given, 0, given.pick(1.15, 1.4));
    const both = crowded({ ...given, layout: first }, 1, given.pick(1.15, 1.4));
    const amps = 2 * both.stages[0].trip;
    return supplyWith(supplyWith(both, 0, { amps }), 1, { amps });
  },
  'overload-district': (given) => {
    const less = consumersWith(given.layout, ({ piece, running }) =>
      partOf(piece) === 'old' ? { running: 0.4 * running } : {},
    );
    return crowded({ ...given, layout: less }, 1, given.pick(1.15, 1.5));
  },
  'supply-limit': (given) => starved(given, 'holds-current'),
  'supply-hiccup': (given) => starved(given, 'hiccup'),
  'binding-locomotive': ({ layout, pick }) => {
    const running = Math.max(2, pick(0.75, 0.95) * (layout.stages[1].trip / layout.vehicles.locomotive.running));
    const bound = vehiclesWith(layout, ['locomotive'], ({ running: amps }) => ({ running: amps * running }));
    return vehicle(bound);
  },
  lamps: ({ layout, pick }) => {
    const share = pick(1.08, 1.2);
    const coaches = ([0, 1] as const).flatMap((stage): TableConsumer[] => {
      const each = (share * layout.stages[stage].trip - runningAmps(layout, stage)) / 2;
      const lit = { kind: 'coaches', running: each, standing: each, inrush: 0, inrushSeconds: 0 } as const;
      const homes = stage === 0 ? (['old-far', 'old-gap'] as const) : (['new-mid', 'new-far'] as const);
      return homes.map((piece) => ({ ...lit, piece }));
    });
    return vehicle({ ...layout, consumers: [...layout.consumers, ...coaches] });
  },
  inrush: ({ layout, pick }) => {
    const count = layout.consumers.filter(({ piece }) => partOf(piece) === 'new').length;
    const inrush = (pick(1.2, 2) * layout.stages[1].trip) / Math.max(1, count);
    const change = ({ piece }: TableConsumer): Partial<TableConsumer> =>
      partOf(piece) === 'new' ? { inrush, inrushSeconds: pick(1, 3) } : {};
    return vehicle(consumersWith(layout, change));
  },
  'stage-heat': (given) => {
    const stage = either(given.random);
    const busy = crowded(given, stage, given.pick(0.65, 0.75));
    return stageWith({ ...busy, lastChange: 'nothing' }, stage, {
      continuous: runningAmps(busy, stage) / given.pick(1.1, 1.3),
    });
  },
  'supply-heat': (given) => {
    const stage = either(given.random);
    const busy = crowded(given, stage, given.pick(0.65, 0.75));
    const amps = runningAmps(busy, stage) + busy.stages[stage].ownUse;
    const most = Math.max(1.05 * busy.stages[stage].trip, 1.1 * amps);
    return supplyWith({ ...busy, lastChange: 'nothing' }, stage, {
      amps: most,
      continuous: amps / given.pick(1.1, 1.3),
    });
  },
  'mains-sag': ({ layout, pick }) => {
    const ohms = (stage: StageIndex): number =>
      (pick(0.5, 0.65) * idleVolts(layout, stage)) / runningAmps(layout, stage);
    return supplyWith(supplyWith(layout, 0, { mainsOhms: ohms(0) }), 1, { mainsOhms: ohms(1) });
  },
  'thin-wire': ({ layout, pick }) => {
    const far = pick(0.7, 1.2) * tripOhms(layout);
    const share: Readonly<Partial<Record<PieceId, number>>> = { 'new-gap': 0.05, 'new-mid': 0.6, 'new-far': 1 };
    const thin = feedersWith(layout, ofNew, ({ piece }) => ({ ohms: far * (share[piece] ?? 1) }));
    const each = pick(0.25, 0.45) * tripOhms(layout);
    const poor = ({ ohmsA, ohmsB }: TableJoin): Partial<TableJoin> => ({ ohmsA: ohmsA + each, ohmsB: ohmsB + each });
    return joinsWith(joinsWith(thin, 'new-gap', 'new-mid', poor), 'new-mid', 'new-far', poor);
  },
  'few-feeds': ({ layout, pick }) => {
    const each = pick(0.2, 0.35) * tripOhms(layout);
    const few = feedersWith(
      layout,
      (f) => ofNew(f) && !at('new-gap')(f),
      () => ({ state: 'missing' }),
    );
    const more = ({ ohmsA, ohmsB }: TableJoin): Partial<TableJoin> => ({ ohmsA: ohmsA + each, ohmsB: ohmsB + each });
    return joinsWith(joinsWith(few, 'new-gap', 'new-mid', more), 'new-mid', 'new-far', more);
  },
  'loose-joiner': ({ layout, pick }) => {
    const one = feedersWith(layout, at('new-far'), () => ({ state: 'missing' }));
    return joinsWith(one, 'new-mid', 'new-far', ({ ohmsA }) => ({ ohmsA: ohmsA + pick(0.7, 1.3) * tripOhms(layout) }));
  },
  'dead-joint': ({ layout }) => {
    const one = feedersWith(layout, at('new-far'), () => ({ state: 'missing' }));
    return joinsWith(one, 'new-mid', 'new-far', () => ({ ohmsA: GAPPED }));
  },
  dirty: ({ layout }) => ({ ...layout, spots: [...layout.spots, { kind: 'dirty', from: -0.5, to: 1 }] }),
  'joint-step': ({ layout, pick }) => {
    const { pickUps, rollsOn } = layout.vehicles.locomotive;
    const span = (pickUps.at(-1)?.behind ?? 0.15) - (pickUps[0]?.behind ?? 0);
    const reach = (span + pick(0.4, 1.3) * rollsOn) / 2;
    return track({ ...layout, spots: [...layout.spots, { kind: 'step', from: -reach, to: reach }] });
  },
  'long-dead-gap': ({ layout, random, pick }) => {
    const { pickUps } = layout.vehicles.locomotive;
    const span = (pickUps.at(-1)?.behind ?? 0.15) - (pickUps[0]?.behind ?? 0);
    const gap = { kind: 'gap', crossed: false, ohmsA: GAPPED, ohmsB: GAPPED } as const;
    const joins = layout.joins.flatMap((join): TableJoin[] =>
      join.from === 'old-gap' && join.to === 'new-gap'
        ? [
            { ...gap, from: 'old-gap', to: 'dead' },
            { ...gap, from: 'dead', to: 'new-gap' },
          ]
        : [join],
    );
    const rolls = layout.vehicles.locomotive.rollsOn * (random() < 0.6 ? pick(1.2, 2.5) : pick(0.4, 0.9));
    return track({ ...layout, joins, lengths: { ...layout.lengths, dead: span + rolls } });
  },
  pickup: ({ layout }) => vehiclesWith(layout, ['locomotive'], single),
  address: ({ layout }) => setting(vehiclesWith(layout, ['locomotive'], () => ({ obeys: false }))),
  'wheelset-short': ({ layout }) => vehicle(vehiclesWith(layout, ['locomotive'], () => ({ wheelShort: 'always' }))),
  'wheelset-at-turnouts': ({ layout }) =>
    vehicle(vehiclesWith(layout, ['locomotive'], () => ({ wheelShort: 'at-turnouts' }))),
  'metal-bodies': ({ layout }) =>
    vehicle(vehiclesWith(layout, ['rake', 'long'], () => ({ wheelShort: 'at-turnouts' }))),
  'high-trip': ({ layout, pick }) => {
    const trip = pick(1.6, 2.4) * DRAWS[layout.scale].tripCeiling;
    return strong(stageWith(layout, 1, { trip, continuous: trip }));
  },
  'slow-trip': ({ layout, pick }) => strong(stageWith(layout, 1, { tripSeconds: pick(0.8, 1.8) })),
  'breaker-setting': ({ layout, pick }) =>
    setting(
      strong(stageWith(layout, 1, { trip: pick(1.6, 2.2) * layout.stages[1].trip, tripSeconds: pick(0.6, 1.5) })),
    ),
  'loop-not-isolated': ({ layout, random }) => {
    const rail = random() < 0.5 ? { ohmsA: 0.04 } : { ohmsB: 0.04 };
    const looped = track(withLoop(layout));
    return random() < 0.5
      ? joinsWith(looped, 'new-far', 'loop', () => rail)
      : joinsWith(looped, 'loop', 'new-far', () => rail);
  },
  'loop-too-short': ({ layout, pick }) => {
    const span = layout.vehicles.rake.pickUps.at(-1)?.behind ?? 1;
    return track(withLoop({ ...layout, usual: 'rake', lengths: { ...layout.lengths, loop: span * pick(0.5, 0.85) } }));
  },
  'loop-no-device': ({ layout }) =>
    track(withLoop({ ...layout, loopReverser: { ...layout.loopReverser, kind: 'none' } })),
  'reverser-grading': ({ layout, random, pick }) => {
    const { trip, tripSeconds } = layout.stages[1];
    const late = { tripSeconds: tripSeconds * pick(1.5, 4) };
    const high = { trip: trip * 60 };
    return track(withLoop({ ...layout, loopReverser: { ...layout.loopReverser, ...(random() < 0.5 ? late : high) } }));
  },
  'two-auto-reversers': ({ layout }) => {
    const { tripSeconds } = layout.loopReverser;
    const partReverser = { kind: 'automatic', trip: 0.9 * layout.stages[1].trip, tripSeconds } as const;
    return track(withLoop({ ...layout, partReverser }));
  },
  'reverse-route': ({ layout }) => {
    const joins = layout.joins.filter(({ from, to }) => !(from === 'new-far' && to === 'old-far'));
    const route = { from: 'new-far', to: 'old-far', kind: 'gap', crossed: true, ohmsA: GAPPED, ohmsB: GAPPED } as const;
    return track({ ...layout, joins: [...joins, route] });
  },
  'live-frog': ({ layout, random }) => {
    const set = random() < 0.5 ? 'thrown' : 'straight';
    const frog: TableBridge = { ...across('live-frog', ['new-mid', 'a'], ['new-mid', 'b'], 0.08), only: set };
    return track(turnoutSet(bridged(layout, frog), set === 'thrown'));
  },
  'wheel-bridges-frog': ({ layout }) => vehiclesWith(layout, ['locomotive'], () => ({ wheelShort: 'at-frog' })),
  'frog-cross-district': ({ layout, random }) => {
    const straight: TableBridge = { ...across('frog-wire', ['old-gap', 'a'], ['new-gap', 'a'], 0.1), only: 'straight' };
    const thrown: TableBridge = { ...across('frog-wire', ['old-gap', 'b'], ['new-gap', 'a'], 0.1), only: 'thrown' };
    return track(turnoutSet(bridged(layout, straight, thrown), random() < 0.85));
  },
  'metal-across': ({ layout, random, pick }) =>
    sometimesTrack(random, bridged(layout, across('metal', ['new-mid', 'a'], ['new-mid', 'b'], pick(0.05, 0.5)))),
  'moving-contact': ({ layout, random, pick }) => {
    const rod: TableBridge = { ...across('rod', ['new-mid', 'a'], ['new-mid', 'b'], pick(0.05, 0.4)), only: 'thrown' };
    return sometimesTrack(random, turnoutSet(bridged(layout, rod), true));
  },
  leak: ({ layout, pick }) =>
    track(bridged(layout, across('leak', ['new-mid', 'a'], ['new-mid', 'b'], tripOhms(layout) / pick(0.25, 0.45)))),
  'wet-ballast': ({ layout, pick }) =>
    track(bridged(layout, across('damp', ['new-mid', 'a'], ['new-mid', 'b'], pick(20, 40)))),
  'crossed-feeder': ({ layout }) =>
    track(feedersWith(layout, at('new-mid'), ({ terminal }) => ({ terminal: terminal === 'p' ? 'n' : 'p' }))),
  'detector-drop': ({ layout }) => track({ ...layout, diodeDetector: true }),
  'wrong-supply-kind': ({ layout, random }) => supply(supplyWith(layout, either(random), { fits: false })),
  'supply-defect': ({ layout, random }) =>
    supplyWith(layout, either(random), { defect: random() < 0.6 ? 'weak' : 'dead' }),
  'stage-defect': ({ layout, random }) => stageWith(layout, 1, { defect: random() < 0.5 ? 'faults' : 'dead' }),
  'stored-energy': ({ layout }) => ({ ...layout, usual: 'stored' }),
  'still-straddling': ({ layout }) => ({ ...layout, usual: 'rake' }),
  'already-fed': ({ layout }) => layout,
} as const satisfies Readonly<Record<TableFault, Injection>>;

const isTableFault = (id: string): id is TableFault => Object.hasOwn(INJECTIONS, id);

/** Every fault that the circuit can express. */
export const TABLE_FAULTS: readonly TableFault[] = Object.keys(INJECTIONS).filter(isTableFault);
