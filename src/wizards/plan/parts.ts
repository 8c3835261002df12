// What is wanted for the work, by kind, size and count; and what stands on the label of each wire. No makes. Nothing that carries the
// plan's power stands here before both labels are read and the plan may be built.
import type { Conductor } from '../../engine/index.ts';
import { FEEDER_WIRE, gradeBreaker, TEST_RESISTOR } from '../../engine/index.ts';
import type { Sheet } from '../sheet/index.ts';
import type { PlacedUnit, Power } from './power.ts';
import { tripOf } from './power.ts';
import { STOPS } from './steps.ts';
import type { PlanGap, Track, TrackDistrict } from './track.ts';
import { fedIn, runsOf } from './track.ts';
import type { DistrictWires } from './wires.ts';
import { busReuse } from './wires.ts';

/** `power`: what feeds the layout, which waits until labels are read. */
export type PartId =
  | 'insulated-joiner'
  | 'bus-wire'
  | 'feeder-wire'
  | 'bus-clamp'
  | 'ferrule'
  | 'wire-label'
  | 'reverser'
  | 'changeover'
  | 'switched-strip'
  | 'test-lamp'
  | 'test-resistor'
  | 'clip-wire'
  | PowerPartId;
export type PowerPartId =
  | 'unit'
  | 'booster'
  | 'supply'
  | 'fuse'
  | 'lead-wire'
  | 'breaker'
  | 'breaker-unplaced'
  | 'control-cable';

export interface Part {
  readonly id: PartId;
  /** Pieces, or metres of a pair of wires. */
  readonly count: number;
  readonly measure: 'pieces' | 'pair-metres';
  readonly area?: number;
  readonly amps?: number;
  /** At the input of a unit: the most it takes, and the least where that is told. */
  readonly volts?: number;
  readonly leastVolts?: number;
  readonly ohms?: number;
  readonly watts?: number;
  readonly current?: 'dc' | 'ac' | 'either';
  readonly plug?: 'centre-plus' | 'centre-minus' | 'terminals';
  /** For which district, unit or place; left out where for all. */
  readonly of?: string;
}

/** Why no supply, unit or fuse is on the list: a label is unread, or something comes first. */
export type PowerParts = 'listed' | 'unread' | 'remedy-first';

export interface Parts {
  readonly parts: readonly Part[];
  readonly power: PowerParts;
}

interface Wanted {
  readonly sheet: Sheet;
  readonly track: Track;
  readonly power: Power;
  readonly wires: readonly DistrictWires[];
}

export function partsOf(wanted: Wanted): Parts {
  const power = powerPartsAllowed(wanted.power);
  const parts = [...trackParts(wanted), ...testParts(), ...(power === 'listed' ? powerParts(wanted) : [])];
  return { power, parts: parts.filter(({ count }) => count > 0) };
}

function powerPartsAllowed({ verdict, remedy }: Power): PowerParts {
  if (remedy === 'read-labels') return 'unread';
  return verdict === 'unknown' || verdict === 'short' || STOPS.includes(remedy) ? 'remedy-first' : 'listed';
}

const pieces = (id: PartId, count: number, more: Partial<Part> = {}): Part => ({
  ...more,
  id,
  count,
  measure: 'pieces',
});

/** Wire is bought with so much to spare. Source: common-practice. */
const SPARE = 1.1;
const metres = (id: PartId, count: number, { area }: Pick<Conductor, 'area'>, of?: string): Part => ({
  id,
  count: Math.ceil(SPARE * count - 1e-9),
  measure: 'pair-metres',
  area,
  ...(of === undefined ? {} : { of }),
});

function trackParts({ sheet, track, wires }: Wanted): Part[] {
  const feeders = wires.reduce((sum, { newFeeders }) => sum + newFeeders, 0);
  const feederMetres = sheet.wiring?.feederMetres ?? FEEDER_WIRE.length;
  const again = busReuse(sheet, wires);
  return [
    pieces('insulated-joiner', railsToCut(track.gaps)),
    ...wires.flatMap(({ bus, busMetres, district, asItIs }) =>
      bus === undefined || asItIs ? [] : [metres('bus-wire', busMetres, bus, district)],
    ),
    ...(again === undefined ? [] : [metres('bus-wire', again.missing, again)]),
    ...bySize(wires, ({ feeder }) => feeder.area).map(([area, here]) =>
      metres('feeder-wire', feederMetres * here.reduce((sum, one) => sum + one.newFeeders, 0), { area }),
    ),
    // One on each wire of the bus for each feeder.
    pieces('bus-clamp', 2 * feeders),
    // The bus ends of feeders, and both ends of both halves of the bus at the unit.
    pieces('ferrule', 2 * feeders + 4 * wires.length),
    pieces(
      'wire-label',
      labelsOf(track.districts, wires).reduce((sum, { count }) => sum + count, 0),
    ),
    pieces('reverser', reversers(sheet, track)),
    pieces('changeover', runsOf(sheet, 'programming').length),
    pieces('switched-strip', 1),
  ];
}

export const railsToCut = (gaps: readonly PlanGap[]): number =>
  gaps.reduce((sum, { railsToCut: rails }) => sum + rails, 0);

/** Loops and bridges, less those that hang on a unit which turns its rails by itself and feeds nothing else. */
function reversers(sheet: Sheet, { districts }: Track): number {
  const turning = [...runsOf(sheet, 'reversing'), ...runsOf(sheet, 'turntable')];
  const own = districts.filter(
    ({ stage, sections }) =>
      stage.autoReversing === true &&
      turning.some((run) => sections.every(({ id }) => run.some((one) => one.id === id))),
  );
  return turning.length - own.length;
}

function bySize<One>(all: readonly One[], sizeOf: (one: One) => number): (readonly [number, readonly One[]])[] {
  const sizes = [...new Set(all.map(sizeOf))].sort((a, b) => a - b);
  return sizes.map((size) => [size, all.filter((one) => sizeOf(one) === size)] as const);
}

const testParts = (): Part[] => [
  pieces('test-lamp', 2),
  pieces('clip-wire', 1),
  pieces('test-resistor', 1, { ohms: TEST_RESISTOR.ohms, watts: TEST_RESISTOR.rating }),
];

function powerParts({ power: { units }, track }: Wanted): Part[] {
  return [
    ...units.flatMap((unit) => partsOfUnit(unit, track)),
    pieces('control-cable', units.filter(isBooster).length),
  ];
}

const isBooster = ({ stage }: PlacedUnit): boolean => stage.kind === 'booster';

/** Plain wire of the supply’s lead, metres. Source: common-practice. */
const LEAD_METRES = 1;

function partsOfUnit({ district, stage, supply, fuse }: PlacedUnit, { districts }: Track): Part[] {
  const { limitAmps, inputKind, inputVolts, leastInputVolts, plug, tripSeconds } = stage;
  const here = districts.find(({ letter }) => letter === district);
  const breaker = { of: district, amps: breakerUnder(tripOf(stage) ?? 0, tripSeconds).tripAtMost };
  return [
    pieces(stage.kind === 'booster' ? 'booster' : 'unit', 1, {
      of: district,
      ...told({ amps: limitAmps, volts: inputVolts, leastVolts: leastInputVolts, current: inputKind, plug }),
    }),
    pieces('supply', 1, {
      of: district,
      ...told({ amps: supply.amps, volts: supply.volts, current: supply.kind, plug: supply.plug }),
    }),
    ...(fuse.kind === 'fuse'
      ? [
          pieces('fuse', 1, { of: district, amps: fuse.amps }),
          metres('lead-wire', LEAD_METRES, { area: fuse.area }, district),
        ]
      : []),
    // One for each sub-district, however many the sheet has so far; what is left has no place yet.
    pieces('breaker', here?.parts.length ?? 0, breaker),
    pieces('breaker-unplaced', here === undefined ? 0 : unplacedBreakers(here), breaker),
  ];
}

/** Breakers that the sheet has behind a unit, and no gap for. */
export const unplacedBreakers = ({ stage, parts }: Pick<TrackDistrict, 'stage' | 'parts'>): number =>
  Math.max(0, (stage.breakers ?? 0) - parts.length);

/** What may be set on a breaker below a unit that trips at so many amperes, and within which time. */
export const breakerUnder = (trip: number, seconds: number | undefined) =>
  gradeBreaker({ trip: 0, seconds: 0 }, { trip, seconds: seconds ?? Number.POSITIVE_INFINITY });

type Label = Pick<Part, 'amps' | 'volts' | 'leastVolts' | 'current' | 'plug'>;

/** What is known of it. */
const told = (label: { readonly [Name in keyof Label]: Label[Name] | undefined }): Partial<Part> =>
  Object.fromEntries(Object.entries(label).filter(([, value]) => value !== undefined));

/** Labels of wires that are alike but for rail, end and number: two rails and two ends of each. */
export interface WireLabels {
  readonly district: string;
  readonly wire: 'bus' | 'feeder' | 'supply';
  /** Feeders are numbered from the unit on; undefined for what there is one of. */
  readonly numbers: number | undefined;
  readonly ends: readonly ['unit' | 'bus' | 'supply', 'far-end' | 'rail' | 'unit'];
  readonly count: number;
}

/** District, which rail, which end; one supply lead for each unit, a bus and feeders for each of its sub-districts. */
export const labelsOf = (districts: readonly TrackDistrict[], wires: readonly DistrictWires[]): WireLabels[] =>
  districts.flatMap((district): WireLabels[] => [
    { district: district.letter, wire: 'supply', numbers: undefined, ends: ['supply', 'unit'], count: 4 },
    ...fedIn(district).flatMap(({ letter }) => wires.filter((one) => one.district === letter).flatMap(wireLabels)),
  ]);

const wireLabels = ({ district, feeders }: DistrictWires): WireLabels[] => [
  // Both halves of the bus.
  { district, wire: 'bus', numbers: 2, ends: ['unit', 'far-end'], count: 8 },
  { district, wire: 'feeder', numbers: feeders, ends: ['bus', 'rail'], count: 4 * feeders },
];
