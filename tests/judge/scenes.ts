// What goes wrong on the virtual layout and when: the scenes a person has seen before anyone asks. Each is run once for a layout.

import type { PieceId, StageIndex, TableLayout } from '../../src/engine/table/layout.ts';
import type { StageState, Traffic } from '../../src/engine/table/moment.ts';
import { idleVolts, stageNode, stageState } from '../../src/engine/table/moment.ts';
import type { Ran } from '../../src/engine/table/protection.ts';
import { run, worldOf } from '../../src/engine/table/protection.ts';
import { turnoutAt } from '../../src/engine/table/route.ts';
import { lampOf, type UnitLamp } from '../../src/engine/table/table.ts';
import { empty } from './instruments.ts';
import { partOf } from './layouts.ts';
import type { Crossing, Inside, Off, Standing, VehicleKind } from './observation.ts';
import { crossing, inside, offs, railVolts, standAcross } from './observation.ts';

/** Runs a question once for each layout and each further argument. */
export function once<A extends string, R>(
  ask: (layout: TableLayout, about: A) => R,
): (layout: TableLayout, about: A) => R {
  const known = new WeakMap<TableLayout, Map<A, R>>();
  return (layout, about) => {
    const answers = known.get(layout) ?? new Map<A, R>();
    known.set(layout, answers);
    const there = answers.get(about);
    if (there !== undefined) return there;
    const made = ask(layout, about);
    answers.set(about, made);
    return made;
  };
}

export interface Scene {
  readonly ran: Ran;
  readonly offs: readonly Off[];
}

const sceneOf = (ran: Ran): Scene => ({ ran, offs: offs(ran.events) });

/** Seconds that a person watches after switching on, and how long an evening is. */
const WATCHED = 8;
const EVENING = 7200;

const endsAt =
  (count: number) =>
  (_: unknown, events: readonly unknown[]): boolean =>
    events.length >= count;

/** The layout with the usual locomotive running in the new part, as one more consumer. */
export function withRunner(layout: TableLayout): TableLayout {
  const { running, standing } = layout.vehicles.locomotive;
  const runner = { kind: 'train', piece: 'new-mid', running, standing, inrush: 0, inrushSeconds: 0 } as const;
  return { ...layout, consumers: [...layout.consumers, runner] };
}

/** Switched on with an empty track, with everything standing on it, with everything running for a moment, for an evening. */
export const atRest = once((layout, traffic: Traffic): Scene => {
  if (traffic === 'lifted') return sceneOf(empty(layout, WATCHED));
  const { locomotive } = layout.vehicles;
  const placed = [{ vehicle: locomotive, route: 'main', front: -0.3, drive: 0 } as const];
  const standing = sceneOf(
    run(layout, worldOf(layout, traffic === 'standing' ? placed : [], 'standing'), WATCHED, endsAt(16)),
  );
  if (traffic === 'standing') return standing;
  // Trains start one after the other, so what only switching on brings is over by then.
  const settled = standing.ran.world;
  return sceneOf(
    run(withRunner(layout), { ...settled, traffic, aliveSince: [...settled.aliveSince, 0] }, 30, endsAt(12)),
  );
});

export const evening = once((layout, _: 'all'): Scene => {
  const { world } = atRest(layout, 'standing').ran;
  const runner = withRunner(layout);
  return sceneOf(
    run(runner, { ...world, cars: [], traffic: 'all', aliveSince: [...world.aliveSince, 0] }, EVENING, endsAt(12)),
  );
});

export const crossed = once((layout, kind: VehicleKind): Crossing => crossing(layout, kind));
export const crossedBusy = once((layout, kind: VehicleKind): Crossing => crossing(layout, kind, { traffic: 'all' }));
export const crossedRound = once((layout, kind: VehicleKind): Crossing => crossing(layout, kind, { route: 'round' }));
export const throughLoop = once(
  (layout, kind: VehicleKind): Crossing => crossing(layout, kind, { route: 'loop', seconds: 60 }),
);
export const stoodAcross = once((layout, kind: VehicleKind): Standing => standAcross(layout, kind));

/** A vehicle that drives over the turnout of the new part, from wholly before it to wholly beyond. */
export const overTurnout = once((layout, kind: VehicleKind): Scene => {
  const vehicle = layout.vehicles[kind];
  const turnout = turnoutAt(layout, 'main') ?? 0;
  const start = worldOf(layout, [{ vehicle, route: 'main', front: turnout - 0.1, drive: 0.4 }], 'standing');
  const beyond = turnout + vehicle.length + 0.15;
  return sceneOf(run(layout, start, 25, (world, events) => (world.cars[0]?.front ?? 0) > beyond || events.length > 24));
});

/** The usual locomotive wholly in a piece, other trains standing or one half running. */
export const stoodIn = once((layout, piece: PieceId): Inside => inside(layout, 'locomotive', piece));
export const ranIn = once((layout, piece: PieceId): Inside => inside(layout, 'locomotive', piece, 'half'));

/** Ways out of the new part other than the main gap. */
export const hasRound = ({ joins }: TableLayout): boolean =>
  joins.some(({ from, to }) => from === 'new-far' && to === 'old-far');

/** The turnout set the other way. */
export function thrown(layout: TableLayout): TableLayout {
  return { ...layout, turnout: { ...layout.turnout, thrown: !layout.turnout.thrown } };
}

export type When = 'from-switch-on' | 'at-the-gap' | 'at-another-place' | 'with-traffic' | 'after-minutes';

export interface Shutdown extends Scene {
  readonly when: When;
  readonly scene:
    | 'empty'
    | 'standing'
    | 'gap'
    | 'busy-gap'
    | 'round'
    | 'loop'
    | 'turnout'
    | 'thrown'
    | 'traffic'
    | 'evening';
  readonly vehicle?: VehicleKind;
}

type Look = (layout: TableLayout) => Shutdown;
const KINDS = (layout: TableLayout): VehicleKind[] => [
  ...new Set<VehicleKind>([layout.usual, 'locomotive', 'long', 'rake']),
];

const withVehicle =
  (scene: Shutdown['scene'], when: When, look: (layout: TableLayout, kind: VehicleKind) => Scene | Crossing): Look =>
  (layout) => {
    let last: Shutdown | undefined;
    for (const vehicle of KINDS(layout)) {
      const found = look(layout, vehicle);
      last = { ran: found.ran, offs: found.offs, when, scene, vehicle };
      if (found.offs.length > 0) return last;
    }
    return last ?? { ...atRest(layout, 'lifted'), when, scene };
  };

const LOOKS: Readonly<Record<Shutdown['scene'], Look>> = {
  empty: (layout) => ({ ...atRest(layout, 'lifted'), when: 'from-switch-on', scene: 'empty' }),
  standing: (layout) => ({ ...atRest(layout, 'standing'), when: 'from-switch-on', scene: 'standing' }),
  gap: withVehicle('gap', 'at-the-gap', crossed),
  'busy-gap': withVehicle('busy-gap', 'at-the-gap', crossedBusy),
  round: withVehicle('round', 'at-the-gap', crossedRound),
  loop: withVehicle('loop', 'at-the-gap', throughLoop),
  turnout: withVehicle('turnout', 'at-another-place', overTurnout),
  thrown: (layout) => ({ ...atRest(thrown(layout), 'lifted'), when: 'at-another-place', scene: 'thrown' }),
  traffic: (layout) => ({ ...atRest(layout, 'all'), when: 'with-traffic', scene: 'traffic' }),
  evening: (layout) => ({ ...evening(layout, 'all'), when: 'after-minutes', scene: 'evening' }),
};

// Trains that have no power do not run, so there is no traffic to take over.
const bothAlive = (layout: TableLayout): boolean =>
  ([0, 1] as const).every((stage) => restState(layout, stage) === 'driving') && volts(layout, 'new-gap') > 5;

export type SceneOrder = 'at-rest' | 'busy' | 'quiet' | 'gap-first' | 'loop-first' | 'spot-first' | 'traffic-first';
const ORDERS: Readonly<Record<SceneOrder, readonly Shutdown['scene'][]>> = {
  'at-rest': ['empty', 'standing'],
  busy: ['empty', 'standing', 'traffic'],
  quiet: ['empty', 'standing', 'gap'],
  'gap-first': ['empty', 'standing', 'gap', 'round', 'loop', 'turnout', 'traffic', 'busy-gap', 'evening'],
  'loop-first': ['empty', 'standing', 'loop', 'gap', 'round', 'turnout', 'traffic', 'busy-gap', 'evening'],
  'spot-first': ['empty', 'standing', 'turnout', 'thrown', 'loop', 'gap', 'round', 'traffic', 'evening'],
  'traffic-first': ['empty', 'standing', 'traffic', 'turnout', 'gap', 'round', 'loop', 'evening', 'busy-gap'],
};

/** The first scene, in the order in which the person would have met it, in which a unit goes off; undefined where none does. */
export const shutdown = once((layout, order: SceneOrder): { readonly found: Shutdown | undefined } => {
  for (const scene of ORDERS[order]) {
    if (scene === 'round' && !hasRound(layout)) continue;
    if ((scene === 'loop' && !layout.hasLoop) || (scene === 'busy-gap' && !bothAlive(layout))) continue;
    const found = LOOKS[scene](layout);
    if (found.offs.length > 0) return { found };
  }
  return { found: undefined };
});

/** The same scene once more, with the vehicle that met the trouble: what goes off after something was changed. */
export function again(layout: TableLayout, { scene, vehicle }: Shutdown): readonly Off[] {
  if ((scene === 'round' && !hasRound(layout)) || (scene === 'loop' && !layout.hasLoop)) return [];
  // What goes off already while trains stand never comes to run them.
  const standing = scene === 'traffic' || scene === 'evening' ? atRest(layout, 'standing').offs : [];
  if (standing.length > 0) return standing;
  const look = vehicle === undefined ? undefined : BY_VEHICLE[scene];
  return look === undefined || vehicle === undefined ? LOOKS[scene](layout).offs : look(layout, vehicle).offs;
}

const BY_VEHICLE: Readonly<
  Partial<Record<Shutdown['scene'], (layout: TableLayout, kind: VehicleKind) => Scene | Crossing>>
> = { gap: crossed, 'busy-gap': crossedBusy, round: crossedRound, loop: throughLoop, turnout: overTurnout };

/** How a unit stands some seconds after switching on, with trains standing. */
export function restState(layout: TableLayout, stage: StageIndex): StageState {
  return stageState(layout, atRest(layout, 'standing').ran.world, stage);
}

/** Volts on a piece with the traffic given, at once and without protection: what a lamp there shows. */
export function volts(layout: TableLayout, piece: PieceId, traffic: Traffic = 'standing'): number {
  return railVolts(run(layout, worldOf(layout, [], traffic), 0.1), piece);
}

/** How much weaker the far end of the new part is than its place right behind the gap, and this than the old part; shares. */
export interface Drop {
  readonly beyondGap: number;
  readonly firstHalf: number;
  readonly secondHalf: number;
  readonly everywhere: number;
}

export const drops = once((layout, _: 'run'): Drop => {
  const at = (piece: PieceId): number => ranIn(layout, piece).volts;
  const less = (one: number, another: number): number => (another > 1 ? 1 - one / another : 0);
  const old = at('old-gap');
  const near = at('new-gap');
  const mid = at('new-mid');
  return {
    beyondGap: less(near, old),
    firstHalf: less(mid, near),
    secondHalf: less(at('new-far'), mid),
    everywhere: less(old, idleVolts(layout, 0)),
  };
});

/** Volts at the track terminals of a unit, with the traffic given. */
export function stageVolts(layout: TableLayout, stage: StageIndex, traffic: Traffic = 'lifted'): number {
  const { moment } = run(layout, worldOf(layout, [], traffic), 0.1);
  const between = (half: 'plus' | 'minus'): number => {
    const { volts: found } = moment[half].state;
    return Math.abs((found[stageNode(stage, 'p')] ?? 0) - (found[stageNode(stage, 'n')] ?? 0));
  };
  return (between('plus') + between('minus')) / 2;
}

/** How a unit stands some seconds after switching on, with an empty track. */
export function emptyState(layout: TableLayout, stage: StageIndex): StageState {
  return stageState(layout, atRest(layout, 'lifted').ran.world, stage);
}

/** What the lamp of a unit tells with an empty track. */
export function unitState(layout: TableLayout, stage: StageIndex): UnitLamp {
  return lampOf(emptyState(layout, stage), layout.stages[stage].withoutSignal);
}

export const isNew = (piece: PieceId): boolean => partOf(piece) === 'new';
