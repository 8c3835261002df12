// What a person puts across the rails of the virtual layout: a wire, lamps, a resistor, a coin, a meter's leads for ohms.
import { Circuit } from '../../src/engine/table/circuit.ts';
import type {
  BridgeKind,
  PieceId,
  StageIndex,
  TableBridge,
  TableLayout,
  TableRail,
} from '../../src/engine/table/layout.ts';
import type { Place } from '../../src/engine/table/meter.ts';
import { meterReads } from '../../src/engine/table/meter.ts';
import type { Traffic } from '../../src/engine/table/moment.ts';
import { addTrack, CARS_FROM, idleVolts, railNode, solveMoment, stageNode } from '../../src/engine/table/moment.ts';
import type { TableEvent } from '../../src/engine/table/protection.ts';
import { pieceVolts, run, worldOf } from '../../src/engine/table/protection.ts';
import { other } from '../../src/engine/table/route.ts';

/** The layout with one more thing across two rails. */
export function bridged(layout: TableLayout, ...more: readonly TableBridge[]): TableLayout {
  return { ...layout, bridges: [...layout.bridges, ...more] };
}

export const across = (kind: BridgeKind, from: Place, to: Place, ohms: number): TableBridge => ({
  kind,
  from,
  to,
  ohms,
});

/** Vehicles off, everything on, for `seconds`. */
export function empty(layout: TableLayout, seconds = 2, traffic: Traffic = 'lifted') {
  return run(layout, worldOf(layout, [], traffic), seconds, (_, events) => events.length >= 12);
}

/** A small filament lamp of 24 V and 4 W, warm, ohms. Source: own-derivation (its volts squared over its watts). */
export const LAMP_OHMS = 144;
/** Clearly light from, a faint glow from, volts on such a lamp. Source: from-memory. */
export const GLOW = { light: 6, faint: 2 } as const;
export type Glow = 'dark' | 'faint' | 'light' | 'over-bright';

function glowOf(volts: number, usual: number): Glow {
  if (volts > 1.4 * usual) return 'over-bright';
  if (volts >= GLOW.light) return 'light';
  return volts >= GLOW.faint ? 'faint' : 'dark';
}

/** The two sides of a gap: rail a of the first meets rail a of the second, or its rail b where it is `crossed`. */
export interface GapSides {
  readonly from: PieceId;
  readonly to: PieceId;
  readonly crossed: boolean;
}
export const MAIN_GAP: GapSides = { from: 'old-gap', to: 'new-gap', crossed: false };

/** The same rail beyond a gap. */
export function beyond({ to, crossed }: GapSides, rail: TableRail): Place {
  return [to, crossed ? other(rail) : rail];
}

/** Lamps across a gap: one on each rail that is named, no vehicle near, both parts on. */
export function gapLamps(layout: TableLayout, rails: readonly TableRail[], gap = MAIN_GAP): Record<TableRail, Glow> {
  const lamps = rails.map((rail) => across('test-lamp', [gap.from, rail], beyond(gap, rail), LAMP_OHMS));
  const { moment } = empty(bridged(layout, ...lamps), 0.01);
  const usual = (idleVolts(layout, 0) + idleVolts(layout, 1)) / 2;
  const glow = (rail: TableRail): Glow => {
    if (!rails.includes(rail)) return 'dark';
    const half = (which: 'plus' | 'minus'): number => {
      const { volts } = moment[which].state;
      return Math.abs((volts[railNode(gap.from, rail)] ?? 0) - (volts[railNode(...beyond(gap, rail))] ?? 0));
    };
    return glowOf((half('plus') + half('minus')) / 2, usual);
  };
  return { a: glow('a'), b: glow('b') };
}

/** Ohms between two rails with every unit unplugged and every vehicle off; endless above ten megohms. Source: own-derivation. */
export function ohmsBetween(layout: TableLayout, from: Place, to: Place, feedersOf?: StageIndex): number {
  const circuit = new Circuit(CARS_FROM);
  addTrack(circuit, withoutSource(layout));
  for (const { stage, terminal, piece, rail, ohms, state } of layout.feeders)
    if (stage === feedersOf && state === 'firm')
      circuit.resistor(stageNode(stage, terminal), railNode(piece, rail), ohms);
  const testAmps = 1e-3;
  circuit.push(railNode(...from), testAmps);
  circuit.push(railNode(...to), -testAmps);
  const { volts } = circuit.solve();
  const ohms = ((volts[railNode(...from)] ?? 0) - (volts[railNode(...to)] ?? 0)) / testAmps;
  return ohms > 1e6 ? Number.POSITIVE_INFINITY : ohms;
}

function withoutSource(layout: TableLayout): TableLayout {
  const { secondSource: _, ...rest } = layout;
  return rest;
}

/** A resistor across the rails: what the same meter shows without and with it, and what a dead short would draw there. */
export interface LoadTest {
  readonly idle: number;
  readonly loaded: number;
  /** Current through the resistor, amperes. */
  readonly amps: number;
  /** I_L V0 / (V0 - V1), amperes; in that ratio the meter's own error drops out. Endless where the volts do not drop. */
  readonly shortAmps: number;
}

/** Source: own-derivation (source resistance from two readings). */
export function loadTest(layout: TableLayout, piece: PieceId, ohms = 12): LoadTest {
  const rails = [
    [piece, 'a'],
    [piece, 'b'],
  ] as const;
  const read = (tested: TableLayout): number => meterReads(tested, empty(tested, 0.01).world, ...rails).ac;
  const idle = read(layout);
  const loaded = read(bridged(layout, across('resistor', ...rails, ohms)));
  const amps = loaded / layout.meter.factor / ohms;
  const drop = idle - loaded;
  return { idle, loaded, amps, shortAmps: drop > 1e-3 ? (amps * idle) / drop : Number.POSITIVE_INFINITY };
}

export interface CoinTest {
  /** First unit that went off, and after how long, seconds; nothing where the coin was lifted after `longest`. */
  readonly trips?: { readonly stage: StageIndex; readonly seconds: number; readonly how: TableEvent['kind'] };
  readonly amps: number;
  /** Heat in the coin, watts. */
  readonly watts: number;
}

const COIN_OHMS = 0.05;

/** A coin pressed across clean rails, for at most `longest` seconds. */
export function coinTest(layout: TableLayout, piece: PieceId, longest = 2): CoinTest {
  const tested = bridged(layout, across('coin', [piece, 'a'], [piece, 'b'], COIN_OHMS));
  const first = solveMoment(tested, worldOf(tested, [], 'lifted'));
  const amps = Math.abs(pieceVolts(first, piece)) / COIN_OHMS;
  const { events } = run(tested, worldOf(tested, [], 'lifted'), longest);
  const off = events.find(({ kind }) => kind === 'trip' || kind === 'restart' || kind === 'supply-off');
  const found = { amps, watts: amps ** 2 * COIN_OHMS };
  if (off === undefined || !('stage' in off)) return found;
  return { ...found, trips: { stage: off.stage, seconds: off.time, how: off.kind } };
}
