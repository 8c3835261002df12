// One moment of the virtual layout as a circuit: which stage drives its rails how, what hangs on them, what flows.
import type { CircuitState } from './circuit.ts';
import { Circuit, DETECTOR, DIODE, EARTH, loadCurve, sourceCurve } from './circuit.ts';
import type { PieceId, StageIndex, TableLayout, TableRail, TableVehicle } from './layout.ts';
import { pieceIndex, TABLE_PIECES } from './layout.ts';
import type { RouteId } from './route.ts';
import { touches, wheelShortAt } from './route.ts';

/** How a stage stands at a moment. */
export interface StageNow {
  readonly mode: 'ready' | 'tripped' | 'resetting' | 'hot';
  /** When it tries again, seconds; endless where only a button helps. */
  readonly until: number;
  /** Since when too much flows, seconds. */
  readonly overSince: number;
  /** Since when its supply has collapsed, seconds. */
  readonly lowSince: number;
  /** Share of the heat at which it cuts out. */
  readonly heat: number;
}

export interface SupplyNow {
  readonly mode: 'on' | 'off';
  readonly until: number;
  readonly limitSince: number;
  readonly heat: number;
}

/** A vehicle on the track; `front` in metres along its way, `drive` -1..1 is what its throttle asks. */
export interface CarNow {
  readonly vehicle: TableVehicle;
  readonly route: RouteId;
  readonly front: number;
  readonly drive: number;
  readonly speed: number;
  /** Since when it has had power, or has had none, seconds. */
  readonly litSince: number;
  readonly darkSince: number;
  /** Where its front was when the light went out. */
  readonly darkFrom: number;
}

export interface ReverserNow {
  readonly flipped: boolean;
  readonly overSince: number;
}

/** How much of the traffic is on: lifted off, standing, one half running, all running. */
export type Traffic = 'lifted' | 'standing' | 'half' | 'all';

export interface World {
  readonly time: number;
  readonly traffic: Traffic;
  readonly stages: readonly [StageNow, StageNow];
  readonly supplies: readonly [SupplyNow, SupplyNow];
  readonly cars: readonly CarNow[];
  readonly loop: ReverserNow;
  readonly part: ReverserNow;
  /** Since when each consumer has had power, seconds; endless where it has none. */
  readonly aliveSince: readonly number[];
}

/** Which way a stage drives its rails in one half of the signal; `open`: it does not. */
export type Drive = 'forward' | 'backward' | 'open';

/** Seconds of mean signal; `plus` and `minus` are the two halves of the bipolar signal, the same state where nothing stands still. */
export interface Moment {
  readonly plus: HalfMoment;
  readonly minus: HalfMoment;
}

export interface HalfMoment {
  readonly state: CircuitState;
  /** Amperes out of each stage's first terminal, and volts between the two sides of its link. */
  readonly stageAmps: readonly [number, number];
  readonly supplyAmps: readonly [number, number];
  readonly linkVolts: readonly [number, number];
  /** Volts of each car's left side against its right one. */
  readonly carVolts: readonly number[];
  /** Where each car's two sides are among the nodes. */
  readonly carNodes: readonly Readonly<Record<TableRail, number>>[];
  readonly loopAmps: number;
}

/** Nodes of the network: how many rails there are, and how the others are numbered. Source: own-choice. */
const RAILS = 2 * TABLE_PIECES.length;
const TERMINALS = { p: 0, n: 1, plus: 2, minus: 3 } as const;
/** A coupling that joins two vehicles, the way to earth, and a wheel that shorts, ohms. Source: from-memory. */
const HOOK_OHMS = 0.05;
const EARTH_OHMS = 0.3;
const WHEEL_SHORT_OHMS = 0.3;
const DETECTOR_NODES = 1;
/** The nodes of vehicles are numbered from here. Source: own-choice. */
export const CARS_FROM = RAILS + 8 + DETECTOR_NODES;
/** A stage's processor starts anew below this share of the volts that its rails should have. Source: from-memory. */
export const BROWN_OUT = 0.55;

export const railNode = (piece: PieceId, rail: TableRail): number => 2 * pieceIndex(piece) + (rail === 'a' ? 0 : 1);
export const stageNode = (stage: StageIndex, terminal: keyof typeof TERMINALS): number =>
  RAILS + 4 * stage + TERMINALS[terminal];
export const carNode = (car: number, side: TableRail): number => CARS_FROM + 2 * car + (side === 'a' ? 0 : 1);
/** The node behind a detector. Source: own-choice. */
const DETECTOR_NODE = RAILS + 8;

/** What a stage takes for itself of its supply's volts. Source: from-memory. */
export const STAGE_TAKES = 1;

/** What the supply lets a stage put on its rails at no load, volts. */
export function idleVolts({ stages, supplies }: TableLayout, stage: StageIndex): number {
  const { setVolts } = stages[stage];
  const supply = supplies[stage];
  const reached = Math.max(1, supply.volts * (supply.defect === 'weak' ? 0.85 : 1) - STAGE_TAKES);
  return Math.min(setVolts ?? reached, reached);
}

/** True while the unit gets power at all. */
export function isFed({ stages, supplies }: TableLayout, world: World, stage: StageIndex): boolean {
  const { plugged, fits, defect } = supplies[stage];
  return stages[stage].on && plugged && fits && defect !== 'dead' && world.supplies[stage].mode === 'on';
}

/** True while the signal of the command station reaches the booster. */
export function hasSignal(layout: TableLayout, world: World): boolean {
  if (layout.link.state !== 'good' || !isFed(layout, world, 0)) return false;
  const station = world.stages[0].mode;
  return station !== 'resetting' && (layout.link.from === 'bus' || (station === 'ready' && !layout.stopped));
}

/** What keeps a stage from driving its rails, or `driving`, or `holding` a plain level. */
export type StageState = 'driving' | 'holding' | 'no-power' | 'stopped' | 'no-signal' | 'fault' | StageNow['mode'];

export function stageState(layout: TableLayout, world: World, stage: StageIndex): StageState {
  const { defect, withoutSignal, ownCommands, wrongFormat } = layout.stages[stage];
  const { mode } = world.stages[stage];
  if (!isFed(layout, world, stage)) return 'no-power';
  if (defect === 'dead' || defect === 'faults') return 'fault';
  if (mode !== 'ready') return mode;
  if (layout.stopped) return 'stopped';
  if (stage === 0 || ownCommands) return 'driving';
  if (!hasSignal(layout, world)) return withoutSignal === 'holds' ? 'holding' : 'no-signal';
  return wrongFormat ? 'fault' : 'driving';
}

function driveOf(layout: TableLayout, world: World, stage: StageIndex, half: 1 | -1): Drive {
  const state = stageState(layout, world, stage);
  if (state === 'holding') return 'forward';
  if (state !== 'driving') return 'open';
  const inverted = stage === 1 && layout.link.inverted;
  return half === (inverted ? -1 : 1) ? 'forward' : 'backward';
}

// The reverser feels either wire: a path on one rail alone is a short as well.
function loopAmps(layout: TableLayout, { loop }: World, between: (from: number, to: number) => number): number {
  const { loopStage, hasLoop, trackPulled } = layout;
  if (!hasLoop || trackPulled[loopStage]) return 0;
  const [toA, toB] = loop.flipped ? (['n', 'p'] as const) : (['p', 'n'] as const);
  const a = between(stageNode(loopStage, toA), railNode('loop', 'a'));
  const b = between(stageNode(loopStage, toB), railNode('loop', 'b'));
  return Math.max(Math.abs(a), Math.abs(b)) / HOOK_OHMS;
}

/** What a meter adds to the circuit. `ghost`: the mains that leaks through the filter capacitors of the supplies counts too. */
export interface Probe {
  readonly from: number;
  readonly to: number;
  readonly ohms: number;
  readonly ghost: boolean;
}

/** Solves one moment: one half of the signal, or both where some source stands still while others change. */
export function solveMoment(layout: TableLayout, world: World, probe?: Probe): Moment {
  const plus = solveHalf(layout, world, 1, probe);
  return { plus, minus: isLopsided(layout, world) ? solveHalf(layout, world, -1, probe) : mirrored(plus) };
}

function isLopsided(layout: TableLayout, world: World): boolean {
  if (layout.secondSource !== undefined) return true;
  return stageState(layout, world, 0) === 'holding' || stageState(layout, world, 1) === 'holding';
}

function mirrored(half: HalfMoment): HalfMoment {
  const turned = (values: Float64Array): Float64Array => values.map((v) => -v);
  return {
    ...half,
    state: { ...half.state, volts: turned(half.state.volts) },
    stageAmps: [-half.stageAmps[0], -half.stageAmps[1]],
    carVolts: half.carVolts.map((v) => -v),
  };
}

function solveHalf(layout: TableLayout, world: World, half: 1 | -1, probe?: Probe): HalfMoment {
  const circuit = new Circuit(CARS_FROM + 2 * world.cars.length);
  if (probe !== undefined) addProbe(circuit, layout, probe);
  const supplied = [addStage(circuit, layout, world, 0, half), addStage(circuit, layout, world, 1, half)] as const;
  addTrack(circuit, layout);
  addFeeders(circuit, layout, world);
  addCommons(circuit, layout);
  addConsumers(circuit, layout, world);
  world.cars.forEach((car, i) => {
    addCar(circuit, layout, world, car, i);
  });
  const state = circuit.solve();
  const { volts, amps } = state;
  const between = (from: number, to: number): number => (volts[from] ?? 0) - (volts[to] ?? 0);
  const stageAmps = [stageOut(layout, world, volts, 0, half), stageOut(layout, world, volts, 1, half)] as const;
  return {
    state,
    stageAmps,
    supplyAmps: [-(amps[supplied[0]] ?? 0), -(amps[supplied[1]] ?? 0)],
    linkVolts: [
      between(stageNode(0, 'plus'), stageNode(0, 'minus')),
      between(stageNode(1, 'plus'), stageNode(1, 'minus')),
    ],
    carVolts: world.cars.map((_, i) => between(carNode(i, 'a'), carNode(i, 'b'))),
    carNodes: world.cars.map((_, i) => ({ a: carNode(i, 'a'), b: carNode(i, 'b') })),
    loopAmps: loopAmps(layout, world, between),
  };
}

const NOTHING = { amps: 0 } as const;

function addProbe(circuit: Circuit, { supplies }: TableLayout, { from, to, ohms, ghost }: Probe): void {
  circuit.resistor(from, to, ohms);
  if (!ghost) return;
  for (const stage of [0, 1] as const) {
    const { plugged, earthed, ghostVolts, ghostOhms } = supplies[stage];
    if (plugged && !earthed) circuit.push(stageNode(stage, 'minus'), ghostVolts / ghostOhms);
  }
}

// Supply behind a rectifier or a blocking output, the unit's own use, four switches or four diodes.
function addStage(circuit: Circuit, layout: TableLayout, world: World, stage: StageIndex, half: 1 | -1): number {
  const { ohms, ownUse } = layout.stages[stage];
  const supply = layout.supplies[stage];
  const plus = stageNode(stage, 'plus');
  const minus = stageNode(stage, 'minus');
  const fed = isFed(layout, world, stage);
  const limit = (supply.defect === 'weak' ? 0.25 : 1) * supply.amps;
  const source = circuit.bent(
    plus,
    minus,
    fed ? sourceCurve(idleVolts(layout, stage), supply.ohms + supply.mainsOhms, limit) : loadCurve(NOTHING.amps),
  );
  circuit.bent(plus, minus, loadCurve(ownUse));
  circuit.resistor(minus, EARTH, supply.earthed ? EARTH_OHMS : supply.ghostOhms);
  const p = stageNode(stage, 'p');
  const n = stageNode(stage, 'n');
  const drive = driveOf(layout, world, stage, half);
  if (drive === 'open') {
    for (const terminal of [p, n]) {
      circuit.bent(terminal, plus, DIODE, 0);
      circuit.bent(minus, terminal, DIODE, 0);
    }
  } else {
    circuit.resistor(drive === 'forward' ? p : n, plus, ohms);
    circuit.resistor(drive === 'forward' ? n : p, minus, ohms);
  }
  return source;
}

function stageOut(layout: TableLayout, world: World, volts: Float64Array, stage: StageIndex, half: 1 | -1): number {
  const drive = driveOf(layout, world, stage, half);
  if (drive === 'open') return 0;
  const end = stageNode(stage, drive === 'forward' ? 'plus' : 'minus');
  return ((volts[end] ?? 0) - (volts[stageNode(stage, 'p')] ?? 0)) / layout.stages[stage].ohms;
}

export function addTrack(circuit: Circuit, layout: TableLayout): void {
  const routed = layout.turnout.routing && layout.turnout.thrown;
  for (const { from, to, crossed, ohmsA, ohmsB } of layout.joins) {
    const cut = routed && from === 'new-mid' && to === 'new-far';
    circuit.resistor(railNode(from, 'a'), railNode(to, crossed ? 'b' : 'a'), cut ? Number.POSITIVE_INFINITY : ohmsA);
    circuit.resistor(railNode(from, 'b'), railNode(to, crossed ? 'a' : 'b'), ohmsB);
  }
  const set = layout.turnout.thrown ? 'thrown' : 'straight';
  for (const { from, to, ohms, only } of layout.bridges) {
    if (only === undefined || only === set) circuit.resistor(railNode(...from), railNode(...to), ohms);
  }
  const { secondSource } = layout;
  if (secondSource !== undefined) {
    const { piece, volts, ohms } = secondSource;
    circuit.twoWaySource(railNode(piece, 'a'), railNode(piece, 'b'), volts, ohms);
  }
}

function addFeeders(circuit: Circuit, layout: TableLayout, world: World): void {
  const { diodeDetector, trackPulled } = layout;
  const newA = diodeDetector ? DETECTOR_NODE : stageNode(1, 'p');
  if (diodeDetector) circuit.bent(stageNode(1, 'p'), DETECTOR_NODE, DETECTOR);
  for (const { stage, terminal, piece, rail, ohms, state } of layout.feeders) {
    if (state !== 'firm' || trackPulled[stage]) continue;
    const turned = stage === 1 && world.part.flipped ? flip(terminal) : terminal;
    const node = stage === 1 && turned === 'p' ? newA : stageNode(stage, turned);
    circuit.resistor(node, railNode(piece, rail), ohms);
  }
  const { loopStage } = layout;
  if (!layout.hasLoop || trackPulled[loopStage]) return;
  const [toA, toB] = world.loop.flipped ? (['n', 'p'] as const) : (['p', 'n'] as const);
  circuit.resistor(stageNode(loopStage, toA), railNode('loop', 'a'), HOOK_OHMS);
  circuit.resistor(stageNode(loopStage, toB), railNode('loop', 'b'), HOOK_OHMS);
}

const flip = (terminal: 'p' | 'n'): 'p' | 'n' => (terminal === 'p' ? 'n' : 'p');

function addCommons(circuit: Circuit, { common, computerCable }: TableLayout): void {
  if (common === 'joined-negatives' || computerCable)
    circuit.resistor(stageNode(0, 'minus'), stageNode(1, 'minus'), HOOK_OHMS);
  if (common === 'common-rail') circuit.resistor(railNode('old-gap', 'b'), railNode('new-gap', 'b'), HOOK_OHMS);
}

/** Mean amperes that a capacitor of `farads` takes at `volts`: 2 V C for each edge. Edges a second: a usual mix. Source: own-derivation. */
export function capacitorAmps(farads: number, volts: number): number {
  return 2 * volts * farads * 13_000;
}

/** What a consumer draws now, amperes. */
export function consumerAmps(layout: TableLayout, world: World, index: number): number {
  const consumer = layout.consumers[index];
  if (consumer === undefined || (world.traffic === 'lifted' && consumer.kind !== 'accessories')) return 0;
  const { running, standing, inrush, inrushSeconds } = consumer;
  const alive = world.time - (world.aliveSince[index] ?? 0);
  const moves = world.traffic === 'all' || (world.traffic === 'half' && index % 2 === 0);
  return (moves ? running : standing) + (alive < inrushSeconds - 1e-9 ? inrush : 0);
}

function addConsumers(circuit: Circuit, layout: TableLayout, world: World): void {
  const amps = new Map<PieceId, number>();
  layout.consumers.forEach(({ piece }, i) => {
    amps.set(piece, (amps.get(piece) ?? 0) + consumerAmps(layout, world, i));
  });
  if (layout.capacitor > 0)
    amps.set('new-gap', (amps.get('new-gap') ?? 0) + capacitorAmps(layout.capacitor, idleVolts(layout, 1)));
  for (const [piece, sum] of amps) {
    if (sum > 0) circuit.bent(railNode(piece, 'a'), railNode(piece, 'b'), loadCurve(sum));
  }
}

function addCar(circuit: Circuit, layout: TableLayout, world: World, car: CarNow, index: number): void {
  const { vehicle, route, front } = car;
  for (const { side, piece, rail, wheels } of touches(layout, vehicle, route, front))
    circuit.resistor(carNode(index, side), railNode(piece, rail), vehicle.contact / wheels);
  const moving = car.drive !== 0 && vehicle.motor;
  const draw = moving ? vehicle.running : vehicle.standing;
  const charging = vehicle.stored > 0 && world.time - car.litSince < 1 ? vehicle.standing : 0;
  circuit.bent(carNode(index, 'a'), carNode(index, 'b'), loadCurve(draw + charging));
  const short = wheelShortAt(layout, vehicle, route, front);
  if (short !== undefined) circuit.resistor(railNode(short, 'a'), railNode(short, 'b'), WHEEL_SHORT_OHMS);
}
