// What is wanted for the work, by kind, size and count; and what stands on the label of each wire. No makes. Nothing that carries the
// plan's power stands here before both labels are read and the plan may be built.
import type { Conductor } from '../../engine/index.ts';
import { FEEDER_WIRE, gradeBreaker, TEST_RESISTOR } from '../../engine/index.ts';
import type { Sheet } from '../sheet/index.ts';
import type { PlacedUnit, Power } from './power.ts';
import { tripOf } from './power.ts';
import { STOPS } from './steps.ts';
import type { PlanGap, Track, TrackDistrict } from './track.ts';
import { districtOf, fedIn, runsOf } from './track.ts';
import type { BusReuse, DistrictWires } from './wires.ts';

/** `power`: what feeds the layout, which waits until labels are read. */
export type PartId =
  | 'insulated-joiner'
  | 'bus-wire'
  | 'feeder-wire'
  | 'bus-clamp'
  | 'ferrule'
  | 'wire-label'
  | 'reverser'
  | 'device-wire'
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
  /** Bus of the sheet that is used again. */
  readonly again: BusReuse | undefined;
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

function trackParts({ sheet, track, wires, power, again }: Wanted): Part[] {
  const onBus = sumOf(wires, ({ newFeeders }) => newFeeders);
  const devices = wires.flatMap((one) => one.devices);
  const onDevices = sumOf(devices, ({ newFeeders }) => newFeeders);
  const bridges = devices.filter(({ kind }) => kind === 'bridge').length;
  const leads = sumOf(track.districts, ({ parts }) => parts.length) + devices.length;
  const feederMetres = sheet.wiring?.feederMetres ?? FEEDER_WIRE.length;
  return [
    pieces('insulated-joiner', railsToCut(track.gaps)),
    ...wires.flatMap(({ bus, busMetres, district, asItIs }) =>
      bus === undefined || asItIs ? [] : [metres('bus-wire', busMetres, bus, district)],
    ),
    ...(again === undefined ? [] : [metres('bus-wire', again.missing, again)]),
    ...bySize(wires, ({ feeder }) => feeder.area).map(([area, here]) =>
      metres('feeder-wire', feederMetres * sumOf(here, newFeedersOf), { area }),
    ),
    // One on each wire of the bus for each feeder.
    pieces('bus-clamp', 2 * onBus),
    // The bus or device ends of feeders and of leads to bridges, both halves of the bus at the unit, and both ends of leads to devices and breakers.
    pieces('ferrule', 2 * (onBus + onDevices + bridges) + 4 * (wires.length + leads)),
    pieces(
      'wire-label',
      labelsOf(track.districts, wires).reduce((sum, { count }) => sum + count, 0),
    ),
    ...wires.flatMap((one) => deviceParts(one, track, power)),
    pieces('changeover', runsOf(sheet, 'programming').length),
    pieces('switched-strip', 1),
  ];
}

export const railsToCut = (gaps: readonly PlanGap[]): number =>
  gaps.reduce((sum, { railsToCut: rails }) => sum + rails, 0);

const sumOf = <One>(all: readonly One[], countOf: (one: One) => number): number =>
  all.reduce((sum, one) => sum + countOf(one), 0);

/** From bus and devices. */
const newFeedersOf = ({ newFeeders, devices }: DistrictWires): number =>
  newFeeders + sumOf(devices, (one) => one.newFeeders);

/** Reversing devices, and the wire that leads to them and on from them, and to a breaker. */
function deviceParts({ district: letter, devices, bus }: DistrictWires, track: Track, power: Power): Part[] {
  const district = districtOf(letter, track);
  const behindBreaker = district !== undefined && district.parts.length > 0;
  const amps = district === undefined ? undefined : deviceTrip(district);
  const isSized = amps !== undefined && powerPartsAllowed(power) === 'listed';
  const leads = 2 * devices.length + (behindBreaker ? 1 : 0);
  return [
    pieces('reverser', devices.length, { of: letter, ...(isSized ? { amps } : {}) }),
    ...(bus === undefined || leads === 0 ? [] : [metres('device-wire', leads * LEAD_METRES, bus, letter)]),
  ];
}

/** What a reversing device may trip at: it acts before its unit, and before the breaker that it hangs behind, by the rule of breakers. Source: common-practice. */
function deviceTrip({ stage, parts }: Pick<TrackDistrict, 'stage' | 'parts'>): number | undefined {
  const trip = tripOf(stage);
  if (trip === undefined) return undefined;
  const under = breakerUnder(trip, stage.tripSeconds).tripAtMost;
  return parts.length === 0 ? under : breakerUnder(under, undefined).tripAtMost;
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
  readonly wire: 'supply' | 'breaker' | 'bus' | 'feeder' | 'device' | 'device-feeder' | 'bridge';
  /** Feeders are numbered from the unit on, devices as they come; undefined for what there is one of. */
  readonly numbers: number | undefined;
  readonly ends: readonly [
    'unit' | 'bus' | 'supply' | 'device',
    'far-end' | 'rail' | 'unit' | 'device' | 'breaker' | 'bridge',
  ];
  readonly count: number;
}

/** District, which rail, which end; one supply lead for each unit, a bus and feeders for each of its sub-districts. */
export const labelsOf = (districts: readonly TrackDistrict[], wires: readonly DistrictWires[]): WireLabels[] =>
  districts.flatMap((district): WireLabels[] => [
    { district: district.letter, wire: 'supply', numbers: undefined, ends: ['supply', 'unit'], count: 4 },
    ...district.parts.map(
      ({ letter }): WireLabels => ({
        ...{ district: letter, wire: 'breaker', numbers: undefined, ends: ['unit', 'breaker'], count: 4 },
      }),
    ),
    ...fedIn(district).flatMap(({ letter }) => wires.filter((one) => one.district === letter).flatMap(wireLabels)),
  ]);

function wireLabels({ district, feeders, devices }: DistrictWires): WireLabels[] {
  const onDevices = sumOf(devices, (one) => one.feeders);
  const bridges = devices.filter(({ kind }) => kind === 'bridge').length;
  const all: readonly (Pick<WireLabels, 'wire' | 'ends'> & { readonly numbers: number })[] = [
    // Both halves of the bus.
    { wire: 'bus', numbers: 2, ends: ['unit', 'far-end'] },
    { wire: 'feeder', numbers: feeders, ends: ['bus', 'rail'] },
    { wire: 'device', numbers: devices.length, ends: ['unit', 'device'] },
    { wire: 'device-feeder', numbers: onDevices, ends: ['device', 'rail'] },
    { wire: 'bridge', numbers: bridges, ends: ['device', 'bridge'] },
  ];
  return all
    .filter(({ numbers }) => numbers > 0)
    .map(({ wire, numbers, ends }) => ({ district, wire, numbers, ends, count: 4 * numbers }));
}
