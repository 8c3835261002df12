// The virtual layout: what stands on the table, piece by piece, before anything is switched on. Plain data; SI throughout.
import type { Scale } from '../power/index.ts';

export type TableRail = 'a' | 'b';
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

export type LastChange = 'track-or-wires' | 'supply' | 'supply-or-unit' | 'vehicle' | 'setting' | 'nothing';

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

/** Endless: a gap. */
export const GAPPED = Number.POSITIVE_INFINITY;
