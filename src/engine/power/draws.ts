// What vehicles and accessories draw where nobody has measured: ranges by scale and kind, in amperes on the track side at
// the usual digital voltage. "sure" says what each range rests on: a source, common practice, or memory only.
import type { Span } from '../units.ts';

export type Scale = 'z' | 'n' | 'tt' | 'h0' | '0' | '1';
export type Sureness = 'sourced' | 'practice' | 'memory';

export interface ScaleDraws {
  readonly modern: Span;
  readonly modernSure: Sureness;
  readonly older: Span;
  readonly olderSure: Sureness;
  /** Standing locomotive without sound, with LEDs. */
  readonly standing: Span;
  readonly modernStall: Span;
  readonly olderStall: Span;
  /** Added by a sound decoder, running and standing alike. */
  readonly sound: Span;
  /** Usual trip current of a district, and the most that the scale's wheels and contacts should see. */
  readonly trip: Span;
  readonly tripCeiling: number;
}

const span = (from: number, to: number): Span => ({ from, to });

/**
 * What trains draw by scale, amperes: running, standing, held fast, and added by sound; then where a district usually trips, and the most that
 * wheels and contacts of the scale should see. H0 and N running and held fast are printed; all else is practice or memory, as marked. Sources:
 * trade-magazine-2014, withheld-manuals, common-practice, from-memory.
 */
export const DRAWS: Readonly<Record<Scale, ScaleDraws>> = {
  z: {
    modern: span(0.06, 0.2),
    modernSure: 'memory',
    older: span(0.2, 0.45),
    olderSure: 'sourced',
    standing: span(0.01, 0.03),
    modernStall: span(0.3, 0.5),
    olderStall: span(0.6, 1),
    sound: span(0.02, 0.06),
    trip: span(1, 1.5),
    tripCeiling: 2,
  },
  n: {
    modern: span(0.1, 0.3),
    modernSure: 'sourced',
    older: span(0.25, 0.6),
    olderSure: 'memory',
    standing: span(0.02, 0.05),
    modernStall: span(0.4, 0.8),
    olderStall: span(0.8, 1.5),
    sound: span(0.03, 0.1),
    trip: span(2, 3),
    tripCeiling: 3,
  },
  tt: {
    modern: span(0.12, 0.35),
    modernSure: 'memory',
    older: span(0.3, 0.7),
    olderSure: 'memory',
    standing: span(0.02, 0.05),
    modernStall: span(0.5, 1),
    olderStall: span(1, 1.5),
    sound: span(0.04, 0.12),
    trip: span(2, 3),
    tripCeiling: 3,
  },
  h0: {
    modern: span(0.2, 0.5),
    modernSure: 'practice',
    older: span(0.5, 1),
    olderSure: 'practice',
    standing: span(0.02, 0.06),
    modernStall: span(0.6, 1),
    olderStall: span(1, 2.5),
    sound: span(0.05, 0.2),
    trip: span(3, 3),
    tripCeiling: 5,
  },
  '0': {
    modern: span(0.4, 1),
    modernSure: 'memory',
    older: span(0.8, 2),
    olderSure: 'memory',
    standing: span(0.03, 0.1),
    modernStall: span(1, 2),
    olderStall: span(2, 4),
    sound: span(0.1, 0.3),
    trip: span(5, 5),
    tripCeiling: 8,
  },
  '1': {
    modern: span(0.5, 1.5),
    modernSure: 'memory',
    older: span(1, 3),
    olderSure: 'memory',
    standing: span(0.05, 0.2),
    modernStall: span(2, 4),
    olderStall: span(3, 5),
    sound: span(0.15, 0.5),
    trip: span(5, 8),
    tripCeiling: 10,
  },
};

/** Coach lighting, amperes a coach; filament lamps as makers say, LEDs from memory. Source: withheld-manuals, from-memory. */
export const COACH_DRAWS = { filament: span(0.05, 0.2), led: span(0.005, 0.03) } as const;

/** One accessory decoder, signal or slow-motion turnout motor kept powered, amperes. Source: from-memory. */
export const ACCESSORY_DRAW: Span = span(0.01, 0.03);

/** Charging current of one vehicle with stored energy after power-up, amperes (middle of 0.05-0.5 A). Source: from-memory. */
export const STORED_ENERGY_INRUSH = 0.275;

/** A cold filament lamp draws so many times its current, for some hundredths of a second. Source: from-memory. */
export const COLD_FILAMENT_TIMES: Span = span(8, 10);

/** Own use of a command station by what hangs on it, amperes; the bare one is left to the reserve. Source: from-memory. */
export const OWN_USE = { bare: 0, handhelds: 0.2, many: 0.5 } as const;

/** What a unit that tells nothing may take for itself all the same, amperes: to see whether it would matter. Source: from-memory. */
export const OWN_USE_DOUBT = 0.3;

/** Own use of a booster, amperes (middle of 0.03-0.15 A). Source: from-memory. */
export const BOOSTER_OWN_USE = 0.09;
