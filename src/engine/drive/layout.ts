// Two parts of the virtual layout with a gap between them, behind "drive it across the gap": what its switches stand for, and the faults it can begin with. SI inside.
import { SINE_FACTOR } from '../crossing/index.ts';
import type {
  TableFeeder,
  TableJoin,
  TableLayout,
  TableMeter,
  TableRail,
  TableStage,
  TableSupply,
  TableVehicle,
} from '../table/index.ts';
import { GAPPED, STAGE_TAKES } from '../table/index.ts';

export const DRIVE_VEHICLES = ['locomotive', 'split', 'coach', 'stored', 'shorted'] as const;
export type DriveVehicle = (typeof DRIVE_VEHICLES)[number];
export const DRIVE_METERS = ['averaging', 'true-rms', 'cheapest'] as const satisfies readonly TableMeter['kind'][];

/** Everything that can be switched or set; volts and amperes. */
export interface DriveSettings {
  /** Control cable from the command station to the booster. */
  readonly cable: boolean;
  /** Track wires of B on the wrong rails. */
  readonly reversed: boolean;
  readonly cutUpper: boolean;
  readonly cutLower: boolean;
  /** A stretch that nobody feeds, between two gaps. */
  readonly deadPiece: boolean;
  /** Track wires of B connected. */
  readonly feed: boolean;
  /** The booster is switched on. */
  readonly on: boolean;
  readonly capacitor: boolean;
  /** A second way between the parts that has no gaps. */
  readonly path: boolean;
  /** The minus sides of both units are joined. */
  readonly common: boolean;
  /** Without a signal the booster holds a plain level instead of nothing. */
  readonly holds: boolean;
  /** Volts of each supply; the rails get one less. */
  readonly voltsA: number;
  readonly voltsB: number;
  /** What other trains draw, amperes. */
  readonly loadA: number;
  readonly loadB: number;
  readonly vehicle: DriveVehicle;
  readonly meter: TableMeter['kind'];
}

/** All as it should be; volts, amperes. Source: own-choice. */
export const DRIVE_START: DriveSettings = {
  cable: true,
  reversed: false,
  cutUpper: true,
  cutLower: true,
  deadPiece: false,
  feed: true,
  on: true,
  capacitor: false,
  path: false,
  common: false,
  holds: false,
  voltsA: 16,
  voltsB: 16,
  loadA: 0.8,
  loadB: 0.8,
  vehicle: 'locomotive',
  meter: 'averaging',
};

interface Preset {
  /** What is wrong, and what it is put right to where that is not the start. */
  readonly is: Partial<DriveSettings>;
  readonly should?: Partial<DriveSettings>;
}

/** What the figure can begin with: faults, and what looks like one. Source: own-choice. */
export const DRIVE_PRESETS = {
  'feed-missing': { is: { feed: false } },
  'booster-off': { is: { on: false } },
  'link-missing': { is: { cable: false } },
  'link-missing-held': { is: { cable: false, holds: true }, should: { holds: true } },
  'feed-reversed': { is: { reversed: true } },
  'one-rail': { is: { cutLower: false } },
  'gap-closed': { is: { cutUpper: false, cutLower: false, on: false }, should: { on: false } },
  'forgotten-path': { is: { path: true, on: false }, should: { on: false } },
  'unlike-supplies': { is: { voltsB: 20 } },
  'no-reference': { is: { vehicle: 'split' }, should: { vehicle: 'split', common: true } },
  'long-dead-gap': { is: { deadPiece: true } },
  'kept-apart': { is: { deadPiece: true }, should: { deadPiece: true } },
  suppressor: { is: { capacitor: true } },
  'overload-district': { is: { loadA: 0.4, loadB: 3.4 }, should: { loadA: 1.9, loadB: 1.9 } },
  'wheelset-short': { is: { vehicle: 'shorted' } },
  'stored-energy': { is: { vehicle: 'stored', on: false }, should: { on: false } },
} as const satisfies Readonly<Record<string, Preset>>;
export type DrivePreset = keyof typeof DRIVE_PRESETS;

export const isDrivePreset = (id: string): id is DrivePreset => Object.hasOwn(DRIVE_PRESETS, id);

/** The settings of a preset: with its fault, or put right. */
export function presetSettings(preset: DrivePreset | undefined, right = false): DriveSettings {
  if (preset === undefined) return DRIVE_START;
  const { is, should = {} }: Preset = DRIVE_PRESETS[preset];
  return { ...DRIVE_START, ...(right ? should : is) };
}

/** Whether anything is wrong with it: two parts that are kept apart with intent are as they should be. */
export const canBePutRight = (preset: DrivePreset): boolean =>
  JSON.stringify(presetSettings(preset)) !== JSON.stringify(presetSettings(preset, true));

/** Current at which each stage trips, amperes. Source: from-memory (H0, usual values). */
export const DRIVE_TRIP = 3;
/** A stage that has tripped tries again after this, seconds. Source: from-memory. */
export const DRIVE_RETRY = 3;
/** A unit or supply protects itself when lifted this far above its own, volts. Source: from-memory. */
const LIFTED = 1.3;
/** A capacitor across the rails that was meant to quieten them, farads. Source: from-memory. */
const CAPACITOR = 0.47e-6;
/** Length of the stretch that nobody feeds, metres. Source: own-choice. */
const DEAD_PIECE = 0.16;
/** Of one rail over a joint, or where it was never cut, ohms. Source: from-memory. */
const RAIL_OHMS = 0.02;

const stage = (volts: number, some: Partial<TableStage>): TableStage => ({
  on: true,
  trip: DRIVE_TRIP,
  tripSeconds: 0.2,
  comesBack: 'retry',
  retrySeconds: DRIVE_RETRY,
  continuous: 2 * DRIVE_TRIP,
  withoutSignal: 'muted',
  ownUse: 0.1,
  ohms: 0.06,
  ownCommands: false,
  wrongFormat: false,
  late: 0,
  cutout: false,
  wornSocket: false,
  guard: volts - STAGE_TAKES + LIFTED,
  ...some,
});

const supply = (volts: number, ghostVolts: number): TableSupply => ({
  kind: 'dc',
  volts,
  amps: 5,
  fits: true,
  plugged: true,
  limits: 'holds-current',
  ohms: 0.05,
  mainsOhms: 0,
  continuous: 10,
  earthed: false,
  ghostVolts,
  ghostOhms: 0.8e6,
});

function joinsOf({ cutUpper, cutLower, deadPiece }: DriveSettings): TableJoin[] {
  const plain = { kind: 'plain', crossed: false, ohmsA: RAIL_OHMS, ohmsB: RAIL_OHMS } as const;
  const gap = {
    kind: 'gap',
    crossed: false,
    ohmsA: cutUpper ? GAPPED : RAIL_OHMS,
    ohmsB: cutLower ? GAPPED : RAIL_OHMS,
  } as const;
  const gaps: TableJoin[] = deadPiece
    ? [
        { ...gap, from: 'old-gap', to: 'dead' },
        { ...gap, from: 'dead', to: 'new-gap' },
      ]
    : [{ ...gap, from: 'old-gap', to: 'new-gap' }];
  return [
    { ...plain, from: 'old-far', to: 'old-gap' },
    ...gaps,
    { ...plain, from: 'new-gap', to: 'new-mid' },
    { ...plain, from: 'new-mid', to: 'new-far' },
  ];
}

function feedersOf({ reversed, feed }: DriveSettings): TableFeeder[] {
  const wires = (
    number: 0 | 1,
    piece: 'old-gap' | 'new-gap',
    turned: boolean,
    is: TableFeeder['state'],
  ): TableFeeder[] =>
    (['a', 'b'] as const).map((rail) => ({
      stage: number,
      terminal: (rail === 'a') === turned ? 'n' : 'p',
      piece,
      rail,
      ohms: 0.06,
      state: is,
    }));
  return [...wires(0, 'old-gap', false, 'firm'), ...wires(1, 'new-gap', reversed, feed ? 'firm' : 'missing')];
}

const pickUps = (left: readonly number[], right: readonly number[]): TableVehicle['pickUps'] => [
  ...left.map((behind) => ({ rail: 'a', behind }) as const),
  ...right.map((behind) => ({ rail: 'b', behind }) as const),
];
/** Wheels that pick up, behind the front of the locomotive, metres. Source: from-memory. */
const BOGIES = [0.025, 0.055, 0.115, 0.145] as const;
/** The locomotive of the figure: metres, amperes, ohms; of H0. Source: from-memory. */
const LOCOMOTIVE: TableVehicle = {
  kind: 'locomotive',
  pickUps: pickUps(BOGIES, BOGIES),
  length: 0.17,
  running: 0.5,
  standing: 0.1,
  contact: 0.4,
  rollsOn: 0.012,
  stored: 0,
  lights: true,
  motor: true,
  dcRunning: false,
  obeys: true,
};

/** Metres, amperes, ohms; of H0. Source: from-memory. */
const VEHICLES: Readonly<Record<DriveVehicle, TableVehicle>> = {
  locomotive: LOCOMOTIVE,
  split: { ...LOCOMOTIVE, kind: 'split', pickUps: pickUps([0.025, 0.055], [0.115, 0.145]) },
  coach: {
    ...LOCOMOTIVE,
    kind: 'coach',
    pickUps: pickUps([0.03, 0.17], [0.03, 0.17]),
    length: 0.2,
    motor: false,
    running: 0.05,
    standing: 0.05,
  },
  stored: { ...LOCOMOTIVE, kind: 'stored', stored: 3 },
  shorted: { ...LOCOMOTIVE, wheelShort: 'always' },
};

export const vehicleOf = ({ vehicle }: DriveSettings): TableVehicle => VEHICLES[vehicle];

/** What each kind of meter shows of the signal, and its ohms. Source: own-derivation for the first factor, from-memory for the rest. */
const METERS: Readonly<Record<TableMeter['kind'], TableMeter>> = {
  averaging: { kind: 'averaging', factor: SINE_FACTOR, ohms: 10e6 },
  'true-rms': { kind: 'true-rms', factor: 0.85, ohms: 10e6 },
  cheapest: { kind: 'cheapest', factor: 0.7, ohms: 0.5e6 },
};

const bothRails = (settings: DriveSettings): TableLayout['bridges'] =>
  settings.path
    ? (['a', 'b'] as const).map((rail: TableRail) => ({
        kind: 'second-track',
        from: ['old-far', rail],
        to: ['new-mid', rail],
        ohms: 0.2,
      }))
    : [];

const train = (piece: 'old-far' | 'new-mid', amps: number): TableLayout['consumers'][number] => ({
  kind: 'train',
  piece,
  running: amps,
  standing: amps,
  inrush: 0,
  inrushSeconds: 0,
});

/** The layout that the switches make. */
export function layoutOf(settings: DriveSettings): TableLayout {
  const { voltsA, voltsB, cable, on, holds, common, deadPiece, loadA, loadB, capacitor, meter } = settings;
  const device = { kind: 'none', trip: DRIVE_TRIP, tripSeconds: 0.02 } as const;
  const dead = deadPiece ? DEAD_PIECE : 0;
  const vehicle = vehicleOf(settings);
  return {
    scale: 'h0',
    railOhms: 0.08,
    lengths: { 'old-far': 1, 'old-gap': 1, dead, 'new-gap': 1, 'new-mid': 1, 'new-far': 1, loop: 1 },
    stages: [stage(voltsA, {}), stage(voltsB, { on, withoutSignal: holds ? 'holds' : 'muted', tripSeconds: 0.15 })],
    supplies: [supply(voltsA, 80), supply(voltsB, -70)],
    link: { state: cable ? 'good' : 'missing', inverted: false, from: 'bus' },
    common: common ? 'joined-negatives' : 'floating',
    computerCable: false,
    reportsShorts: false,
    stopped: false,
    joins: joinsOf(settings),
    feeders: feedersOf(settings),
    bridges: bothRails(settings),
    consumers: [train('old-far', loadA), train('new-mid', loadB)],
    vehicles: { ...KINDS, [vehicle.kind]: vehicle },
    spots: [],
    turnout: { thrown: false, routing: false, at: 2 },
    hasLoop: false,
    loopReverser: device,
    loopStage: 1,
    partReverser: device,
    capacitor: capacitor ? CAPACITOR : 0,
    diodeDetector: false,
    meter: METERS[meter],
    usual: 'locomotive',
    lastChange: 'nothing',
    trackPulled: [false, false],
    believedUnfed: false,
  };
}

/** What may stand on the track of the figure: metres, amperes, ohms; of H0. Source: from-memory. */
const KINDS: TableLayout['vehicles'] = {
  locomotive: LOCOMOTIVE,
  long: { ...LOCOMOTIVE, kind: 'long' },
  short: { ...LOCOMOTIVE, kind: 'short' },
  split: VEHICLES.split,
  rake: { ...LOCOMOTIVE, kind: 'rake' },
  coach: VEHICLES.coach,
  stored: VEHICLES.stored,
};

/** What is seen of the track, metres: half of it lies on each side of `middle`. Source: own-choice. */
export const HALF_SEEN = 0.4;
export const middleOf = ({ deadPiece }: DriveSettings): number => (deadPiece ? DEAD_PIECE / 2 : 0);
export const deadOf = ({ deadPiece }: DriveSettings): number => (deadPiece ? DEAD_PIECE : 0);

/** Between where the front of the train can be put, metres from the gap. */
export function frontRange(settings: DriveSettings): { readonly least: number; readonly most: number } {
  const middle = middleOf(settings);
  const toMillimetre = (metres: number): number => Math.round(metres * 1000) / 1000;
  return { least: toMillimetre(middle + vehicleOf(settings).length - 0.33), most: toMillimetre(middle + 0.33) };
}
