// Quantities and their units. Everything in the engine is amperes, volts, metres, square metres, ohms, seconds, hours of an evening,
// pieces; what people type and read is turned here and in quantity-text.ts.

export type Quantity =
  | 'current'
  | 'voltage'
  | 'hours'
  | 'count'
  | 'length'
  | 'area'
  | 'resistance'
  | 'resistance-per-metre'
  | 'time';

/** From and to in the same SI unit; from <= to. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** The units a person thinks in: metres and square millimetres, or feet, inches and American wire gauges. */
export type MeasureSystem = 'metric' | 'feet-and-gauge';

/** In metres: a foot, and an inch. Source: own-derivation. */
export const FOOT = 0.3048;
export const INCH = 0.0254;
/** In square metres. Source: own-derivation. */
export const SQUARE_MILLIMETRE = 1e-6;

/** Metres in feet, in inches; ohms a metre in ohms a foot. */
export const toFeet = (metres: number): number => metres / FOOT;
export const toInches = (metres: number): number => metres / INCH;
export const perFoot = (perMetre: number): number => perMetre * FOOT;

/** Inches in a foot. Source: own-derivation. */
const INCHES_A_FOOT = 12;

/** Whole inches as feet and the inches that are left. */
export const feetAndInches = (inches: number): { readonly feet: number; readonly inches: number } => ({
  feet: Math.floor(inches / INCHES_A_FOOT),
  inches: inches % INCHES_A_FOOT,
});

/** Metres in centimetres; square metres in square millimetres; of any SI unit in thousandths: ohms in milliohms. */
export const toCentimetres = (metres: number): number => metres * 100;
export const toSquareMillimetres = (squareMetres: number): number => squareMetres * 1e6;
export const toThousandths = (value: number): number => value * 1000;

/** Hours in minutes. */
export const toMinutes = (hours: number): number => hours * 60;

/** Seconds in microseconds, and times and capacitors as they are set into SI. */
export const toMicroseconds = (seconds: number): number => seconds / 1e-6;
export const fromMicroseconds = (microseconds: number): number => microseconds * 1e-6;
export const fromMilliseconds = (milliseconds: number): number => milliseconds * 1e-3;
export const fromNanofarads = (nanofarads: number): number => nanofarads * 1e-9;

/** What one of each is in SI. Source: own-derivation. */
const METRIC = { m: 1, cm: 0.01, mm: 0.001, mm2: SQUARE_MILLIMETRE } as const;

/** A length in metres, or an area in square metres, of a number in a metric unit. */
export const fromMetric = (value: number, unit: keyof typeof METRIC): number => value * METRIC[unit];

/** The American gauge whose area this is to one part in 10^6, or undefined for a metric or odd size. Area in square metres. */
export function gaugeOf(area: number): number | undefined {
  const gauge = nearestGauge(area);
  return gauge !== undefined && Math.abs(gaugeArea(gauge) / area - 1) < 1e-6 ? gauge : undefined;
}

/** The American gauge nearest to an area in square metres; undefined where there is no wire. Below 0: thicker than gauge 0. */
export function nearestGauge(area: number): number | undefined {
  if (!(area > 0)) return undefined;
  const diameter = Math.sqrt((4 * area) / Math.PI);
  return Math.round(36 - (39 * Math.log(diameter / 0.127e-3)) / Math.log(92));
}

/** Metal area of an American gauge, square metres: diameter 0.127 mm x 92^((36 - n)/39). Any real n. Source: awg-tables. */
export function gaugeArea(gauge: number): number {
  const diameter = 0.127e-3 * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameter ** 2;
}

/** Middle of a span, same unit. */
export function middle(span: Span): number {
  return (span.from + span.to) / 2;
}
