// The virtual layout: a small circuit of two districts with their units, supplies, rails, gaps and vehicles, in time. It drives
// the figure one plays with, and it answers what a person would see, from the circuit alone: no likelihoods are in it.
import type { PieceId, StageIndex, TableLayout, TableMeter, TableRail } from './layout.ts';
import { TABLE_PIECES } from './layout.ts';
import type { Place, Reading } from './meter.ts';
import { meterReads } from './meter.ts';
import type { StageState, Traffic, World } from './moment.ts';
import { railNode, solveMoment, stageState } from './moment.ts';
import type { CarState, Placed, TableEvent } from './protection.ts';
import { carState, feltAmps, pieceVolts, run, worldOf } from './protection.ts';
import { touches } from './route.ts';

export type { CarState, Placed, TableEvent } from './protection.ts';

/** A layout that is being played with. */
export interface TableRun {
  readonly layout: TableLayout;
  readonly world: World;
  /** What happened in the last step. */
  readonly events: readonly TableEvent[];
}

/** Switches on. */
export function startTable(layout: TableLayout, placed: readonly Placed[], traffic: Traffic = 'standing'): TableRun {
  return { layout, world: worldOf(layout, placed, traffic), events: [] };
}

/** Lets `seconds` >= 0 pass, jumping from event to event; gives a new run, the one given stays as it is. */
export function step({ layout, world }: TableRun, seconds: number): TableRun {
  const ran = run(layout, world, seconds);
  return { layout, world: ran.world, events: ran.events };
}

/** Sets the throttle of a vehicle, -1 to 1. */
export function throttle(table: TableRun, car: number, drive: number): TableRun {
  const cars = table.world.cars.map((one, i) =>
    i === car ? { ...one, drive: Math.max(-1, Math.min(1, drive)) } : one,
  );
  return { ...table, world: { ...table.world, cars } };
}

/** Moves a vehicle by hand, as a slider does: its front to `front` metres. */
export function moveTo(table: TableRun, car: number, front: number): TableRun {
  const cars = table.world.cars.map((one, i) => (i === car ? { ...one, front, speed: 0, darkFrom: front } : one));
  return { ...table, world: { ...table.world, cars } };
}

/** Throws a switch: the layout with something changed, while it runs. */
export function rewire(table: TableRun, change: (layout: TableLayout) => TableLayout): TableRun {
  return { ...table, layout: change(table.layout) };
}

/** The button of a unit that tripped. */
export function resetStage(table: TableRun, stage: StageIndex): TableRun {
  const [first, second] = table.world.stages;
  const ready = {
    mode: 'ready',
    until: Number.POSITIVE_INFINITY,
    overSince: Number.NaN,
    lowSince: Number.NaN,
  } as const;
  const stages =
    stage === 0 ? ([{ ...first, ...ready }, second] as const) : ([first, { ...second, ...ready }] as const);
  return { ...table, world: { ...table.world, stages } };
}

export interface Snapshot {
  readonly time: number;
  /** Volts of each rail against earth in the first half of the signal, and of rail a against rail b. */
  readonly rails: readonly {
    readonly piece: PieceId;
    readonly a: number;
    readonly b: number;
    readonly volts: number;
  }[];
  readonly stages: readonly {
    readonly state: StageState;
    readonly lamp: UnitLamp;
    /** What its output feels, amperes. */
    readonly amps: number;
    readonly linkVolts: number;
    readonly heat: number;
  }[];
  readonly cars: readonly (CarState & {
    readonly front: number;
    readonly speed: number;
    /** Amperes from each rail it touches into the vehicle, negative out of it, first half of the signal. */
    readonly pickUps: readonly { readonly piece: PieceId; readonly rail: TableRail; readonly amps: number }[];
  })[];
  readonly meter?: Reading & { readonly kind: TableMeter['kind'] };
}

/** What there is to see at this moment; `probes`: where the two leads of the meter are held. */
export function snapshot({ layout, world }: TableRun, probes?: readonly [Place, Place]): Snapshot {
  const moment = solveMoment(layout, world);
  const { volts } = moment.plus.state;
  const at = (node: number): number => volts[node] ?? 0;
  const shown = {
    time: world.time,
    rails: TABLE_PIECES.map((piece) => ({
      piece,
      a: at(railNode(piece, 'a')),
      b: at(railNode(piece, 'b')),
      volts: pieceVolts(moment, piece),
    })),
    stages: ([0, 1] as const).map((stage) => {
      const state = stageState(layout, world, stage);
      return {
        state,
        lamp: lampOf(state, layout.stages[stage].withoutSignal),
        amps: feltAmps(layout, world, moment, stage),
        linkVolts: moment.plus.linkVolts[stage],
        heat: world.stages[stage].heat,
      };
    }),
    cars: world.cars.map((car, i) => ({
      ...carState(layout, world, moment, i),
      front: car.front,
      speed: car.speed,
      pickUps: touches(layout, car.vehicle, car.route, car.front).map(({ side, piece, rail, wheels }) => ({
        piece,
        rail,
        amps: ((at(railNode(piece, rail)) - at(moment.plus.carNodes[i]?.[side] ?? -1)) * wheels) / car.vehicle.contact,
      })),
    })),
  };
  if (probes === undefined) return shown;
  return { ...shown, meter: { kind: layout.meter.kind, ...meterReads(layout, world, ...probes) } };
}

export type UnitLamp = 'ready' | 'fault' | 'no-signal' | 'off' | 'starting';

/** What the lamp of a unit tells; one that holds its level without a signal knows nothing of it. */
export function lampOf(state: StageState, withoutSignal: 'muted' | 'holds'): UnitLamp {
  if (state === 'no-power') return 'off';
  if (state === 'resetting') return 'starting';
  if (state === 'tripped' || state === 'hot' || state === 'fault') return 'fault';
  return state === 'no-signal' && withoutSignal === 'muted' ? 'no-signal' : 'ready';
}
