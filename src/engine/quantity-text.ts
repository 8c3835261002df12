// The edge: what people type becomes SI, and SI becomes text that reads as the same value again.
import type { MeasureSystem, Quantity, Span } from './units.ts';
import { FOOT, gaugeArea, gaugeOf, INCH, SQUARE_MILLIMETRE } from './units.ts';

export type Parsed =
  /** `typed`: the system of the unit that stood there; absent for a bare number and where both systems have the same unit. */
  | { readonly kind: 'span'; readonly span: Span; readonly typed?: MeasureSystem }
  | { readonly kind: 'power'; readonly watts: number }
  | { readonly kind: 'bad'; readonly because: 'empty' | 'not-a-number' | 'unknown-unit' };

const each = (names: readonly string[], factor: number): Record<string, number> =>
  Object.fromEntries(names.map((name) => [name, factor]));

/**
 * Units that people write, and what one of each is in SI. Without a unit a number is SI, but for two quantities that nobody writes in SI:
 * areas (in square millimetres) and rails (in milliohms a metre). Source: own-derivation.
 */
const FACTORS: Readonly<Record<Quantity, Readonly<Record<string, number>>>> = {
  current: { '': 1, a: 1, amp: 1, amps: 1, ampere: 1, amperes: 1, ma: 1e-3, milliamp: 1e-3, milliamps: 1e-3 },
  voltage: { '': 1, v: 1, volt: 1, volts: 1, vdc: 1, vac: 1, 'v~': 1, mv: 1e-3 },
  hours: {
    ...each(['', 'h', 'hr', 'hrs', 'hour', 'hours', 'std', 'stunde', 'stunden', 'heure', 'heures', 'uur', 'uren'], 1),
    ...each(['min', 'mins', 'minute', 'minutes', 'minuten', 'minuut'], 1 / 60),
  },
  count: { '': 1 },
  length: {
    ...each(['', 'm', 'metre', 'metres', 'meter', 'meters'], 1),
    ...each(['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'], 0.01),
    ...each(['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], 0.001),
    ...each(['ft', 'foot', 'feet', "'"], FOOT),
    ...each(['in', 'inch', 'inches', '"'], INCH),
    ...each(['yd', 'yard', 'yards'], 3 * FOOT),
  },
  // Cable in plain millimetres is sold by its cross-section.
  area: each(['', 'mm²', 'mm'], SQUARE_MILLIMETRE),
  resistance: {
    ...each(['', 'ohm', 'ohms', 'ω'], 1),
    ...each(['mohm', 'mohms', 'milliohm', 'milliohms', 'mω'], 0.001),
  },
  'resistance-per-metre': {
    ...each(['', 'mohm/m', 'mohms/m', 'milliohm/m', 'milliohms/m', 'mω/m', 'ohm/km', 'ohms/km', 'ω/km'], 0.001),
    ...each(['ohm/m', 'ohms/m', 'ω/m'], 1),
    ...each(['mohm/ft', 'mohms/ft', 'milliohm/ft', 'mω/ft', 'ohm/kft', 'ohms/kft'], 0.001 / FOOT),
    ...each(['mohm/in', 'mohms/in', 'milliohm/in', 'mω/in'], 0.001 / INCH),
  },
  time: {
    ...each(['', 's', 'sec', 'second', 'seconds'], 1),
    ...each(['ms', 'msec', 'millisecond', 'milliseconds'], 1e-3),
    ...each(['us', 'µs', 'μs', 'microsecond', 'microseconds'], 1e-6),
    ...each(['min', 'minute', 'minutes'], 60),
  },
};

/** Wording of numbers without a unit where it is not SI: how `writeQuantity` says which one is meant. Source: own-derivation. */
const WRITTEN: Readonly<Partial<Record<Quantity, readonly [unit: string, factor: number]>>> = {
  area: ['mm2', SQUARE_MILLIMETRE],
  'resistance-per-metre': ['mohm/m', 0.001],
};

/** Quantities that the two systems write in different units, and what a bare number stands for in feet and gauges. */
const BARE_IN_FEET: Readonly<Partial<Record<Quantity, string>>> = {
  length: 'ft',
  area: 'awg',
  'resistance-per-metre': 'mohm/ft',
};
const UNIT_IN_FEET = /^(?:ft|foot|feet|'|in|inch|inches|"|yd|yards?)$|\/(?:k?ft|in)$/;

/** Smallest and largest American gauge number that is read. Source: own-choice. */
const GAUGES = { least: 0, most: 40 } as const;
const GAUGE =
  /^(?:(?:awg|#|gauge)\s*(\d{1,2})|(\d{1,2})[\s-]*(?:awg|ga\.?|gauge))(?: (?:stranded|solid|copper|wire))*$/;
/** Strands by their number and width: 16/0.2 has 16 of 0.2 mm. */
const STRANDS = /^([1-9]\d{0,2})\s*[/x×*]\s*(0?[.,]\d{1,3}|1(?:[.,]\d{1,3})?)\s*(?:mm)?$/;
/** The width of a solid wire in millimetres. */
const ACROSS = /^(?:ø\s*(\d?[.,]?\d{1,3})\s*(?:mm)?|(\d?[.,]?\d{1,3})\s*mm\s*(?:ø|dia\.?|diameter|across))$/;
/** What says on a label which kind of current it is. */
const DIRECT = /(?<![a-z.])(?:dc|d\.c\.)(?![a-z])|(?<=\d\s?v)dc(?![a-z])|[⎓=]/;
const ALTERNATING = /(?<![a-z.])(?:ac|a\.c\.)(?![a-z])|(?<=\d\s?v)ac(?![a-z])|[~∼]/;
const PRINTED_BESIDE = /^(?:output|out|sec)\b[.:]?|(?<![a-z.])(?:dc|ac)(?![a-z])|[da]\.c\.|[⎓=~∼]/g;
/** Volts, then amperes or the power, on one line of a label. */
const LINE =
  /^\D{0,12}(?<volts>\d{1,3}(?:[.,]\d{1,3})?\s?v)(?:[\s/,;⎓=~∼-]|dc|ac)*(?<amps>\d{1,2}(?:,\d{3}|\d{0,3}(?:[.,]\d{1,3})?)\s?(?:m?a|va|w))(?![a-z])\D{0,12}$/i;
const FEET_AND_INCHES = /^(\d{1,6})\s*(?:ft|feet|foot|')\s*(\d{1,3}(?:[.,]\d{0,6})?)\s*(?:in|inch|inches|")$/;
const POWER = new Set(['va', 'w', 'watt', 'watts']);

// Digits with one decimal point or comma, at most 12 before it and 20 after; then letters or signs of units.
const NUMBER = '([+-]?(?:\\d{1,12}(?:[.,]\\d{0,20})?|[.,]\\d{1,20})(?:e[+-]?\\d{1,3})?)';
const UNIT = `([a-z~'"²/ωµμ]*)`;
const ONE = new RegExp(`^${NUMBER}\\s*${UNIT}$`);
const TWO = new RegExp(`^${NUMBER}\\s*${UNIT}\\s*(?:-|to|bis|\\.\\.)\\s*${NUMBER}\\s*${UNIT}$`);

/**
 * Reads a number with its unit as people write it: `1.5 A`, `1500 mA`, `0,3 A`, `0.3-0.6 A`, `36 VA`, `5' 6"`, `1.5 mm²`,
 * `16 AWG`, `76 mohm/m`. Without a unit: amperes, volts, metres, mm², ohms, milliohms a metre, seconds, hours; with `bare` in feet
 * and gauge: feet, AWG where the number is one (else mm²), milliohms a foot.
 * Shape: any text in; a span in SI out (both ends equal for a single number), `power` in watts for VA or W where a
 * current is asked for, or `bad` with the reason. Never throws. The range is the caller's business.
 */
export function parseQuantity(text: string, quantity: Quantity, bare: MeasureSystem = 'metric'): Parsed {
  const plain = withUnit(asPrinted(tidied(text), quantity), quantity, bare);
  if (plain === '') return { kind: 'bad', because: 'empty' };
  const special = readSpecial(plain, quantity);
  if (special !== undefined) return special;
  const one = ONE.exec(plain);
  const two = one === null ? TWO.exec(plain) : null;
  const parts = one ?? two;
  if (parts === null) return { kind: 'bad', because: 'not-a-number' };
  const [, first = '', firstUnit = '', second = first, lastUnit = ''] = parts;
  if (one !== null && quantity === 'current' && POWER.has(firstUnit)) return { kind: 'power', watts: toNumber(first) };
  const factors = FACTORS[quantity];
  const secondUnit = lastUnit === '' ? firstUnit : lastUnit;
  const toFactor = Object.hasOwn(factors, secondUnit) ? factors[secondUnit] : undefined;
  const ownUnit = firstUnit === '' ? secondUnit : firstUnit;
  const fromFactor = Object.hasOwn(factors, ownUnit) ? factors[ownUnit] : undefined;
  if (fromFactor === undefined || toFactor === undefined) return { kind: 'bad', because: 'unknown-unit' };
  const ends = [rounded(toNumber(first) * fromFactor), rounded(toNumber(second) * toFactor)].sort((a, b) => a - b);
  const [from = Number.NaN, to = Number.NaN] = ends;
  return Number.isFinite(from) && Number.isFinite(to)
    ? { kind: 'span', span: { from, to }, ...typedIn(ownUnit, from, quantity) }
    : { kind: 'bad', because: 'not-a-number' };
}

// An area that is a gauge to every digit was typed as one: addresses wrote gauges in mm² once.
function typedIn(unit: string, value: number, quantity: Quantity): { readonly typed?: MeasureSystem } {
  if (BARE_IN_FEET[quantity] === undefined || unit === '') return {};
  const inFeet = quantity === 'area' ? gaugeOf(value) !== undefined : UNIT_IN_FEET.test(unit);
  return { typed: inFeet ? 'feet-and-gauge' : 'metric' };
}

/** The kind of current that a text from a label names; undefined where it names none, or both. */
export function kindPrinted(text: string): 'dc' | 'ac' | undefined {
  const plain = text.toLowerCase();
  const [dc, ac] = [DIRECT.test(plain), ALTERNATING.test(plain)];
  if (dc === ac) return undefined;
  return dc ? 'dc' : 'ac';
}

/** Volts and amperes (or VA, W) of a whole line of a label, as they stand there; undefined for anything else. */
export function labelLine(text: string): { readonly volts: string; readonly amps: string } | undefined {
  const { volts, amps } = LINE.exec(text.trim())?.groups ?? {};
  return volts === undefined || amps === undefined ? undefined : { volts, amps };
}

/** Whether a wire was typed in plain millimetres, which are taken as mm². */
export const readsAsCrossSection = (text: string): boolean => /^[\d.,]+ ?mm$/.test(tidied(text));

/** Without what a label prints beside a number, and with "1,500 mA" as fifteen hundred. */
function asPrinted(plain: string, quantity: Quantity): string {
  if (quantity !== 'voltage' && quantity !== 'current') return plain;
  const line = labelLine(plain);
  const part = line === undefined ? plain : line[quantity === 'voltage' ? 'volts' : 'amps'];
  const bare = quantity === 'voltage' ? part.replace(PRINTED_BESIDE, ' ').replace(/\s+/g, ' ').trim() : part;
  return bare.replace(/^(\d{1,3}),(\d{3})(?= ?m[av]\b)/, '$1$2');
}

function withUnit(plain: string, quantity: Quantity, bare: MeasureSystem): string {
  const unit = bare === 'metric' ? undefined : BARE_IN_FEET[quantity];
  if (unit === undefined || !/\d$/.test(plain)) return plain;
  const gauge = Number(plain);
  if (quantity === 'area' && !(Number.isInteger(gauge) && gauge >= GAUGES.least && gauge <= GAUGES.most)) return plain;
  return `${plain} ${unit}`;
}

/**
 * Writes an SI value so that `parseQuantity` reads the very same value again; for an address. In the unit of the system it was typed
 * in; without one `1.5 mm2` for 1.5e-6 m², and the bare number where a bare number means SI. At most 12 digits, 15 in feet.
 */
export function writeQuantity(value: number, quantity: Quantity, typed?: MeasureSystem): string {
  if (typed === 'feet-and-gauge') return writeInFeet(value, quantity);
  const [unit, factor] = WRITTEN[quantity] ?? [typed === 'metric' && quantity === 'length' ? 'm' : '', 1];
  return `${rounded(value / factor)} ${unit}`.trimEnd();
}

/** The number alone, as `parseQuantity` reads it without a unit. */
export function writeBare(value: number, quantity: Quantity): string {
  return String(rounded(value / (WRITTEN[quantity]?.[1] ?? 1)));
}

function writeInFeet(value: number, quantity: Quantity): string {
  if (quantity === 'length') {
    const feet = `${shortest(value, FOOT)} ft`;
    const inches = `${shortest(value, INCH)} in`;
    return feet.length <= inches.length + 2 ? feet : inches;
  }
  if (quantity === 'resistance-per-metre') return `${shortest(value, 0.001 / FOOT)} mohm/ft`;
  const gauge = quantity === 'area' ? gaugeOf(value) : undefined;
  return gauge === undefined || gauge < GAUGES.least || gauge > GAUGES.most
    ? writeQuantity(value, quantity, 'metric')
    : `${gauge} AWG`;
}

/** The number with the fewest digits that, times the factor, is the very same value. */
function shortest(value: number, factor: number): number {
  for (let digits = 1; digits < 15; digits++) {
    const short = Number((value / factor).toPrecision(digits));
    if (rounded(short * factor) === value) return short;
  }
  return Number((value / factor).toPrecision(15));
}

function tidied(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\u2012-\u2015\u2212]/g, '-')
    .replace(/[\u2018\u2019\u2032]/g, "'")
    .replace(/[\u201c-\u201f\u2033]/g, '"')
    .replace(/\s+/g, ' ')
    .replace(/ ?\/ ?| per /g, '/')
    .replace(/mm(?:\^?2)(?!\d)|(?:sq\.? ?|q)mm/g, 'mm²');
}

function readSpecial(plain: string, quantity: Quantity): Parsed | undefined {
  if (quantity === 'area') return readGauge(plain);
  if (quantity !== 'length') return undefined;
  const [, feet = '', inches = ''] = FEET_AND_INCHES.exec(plain) ?? [];
  return feet === '' ? undefined : single(toNumber(feet) * FOOT + toNumber(inches) * INCH);
}

function readGauge(plain: string): Parsed | undefined {
  const [, strands, width = ''] = STRANDS.exec(plain) ?? [];
  if (strands !== undefined) return round(Number(strands), toNumber(width));
  const [, before, after] = ACROSS.exec(plain) ?? [];
  const across = before ?? after;
  if (across !== undefined) return round(1, toNumber(across));
  const found = GAUGE.exec(plain);
  if (found === null) return undefined;
  const gauge = Number(found[1] ?? found[2]);
  return gauge >= GAUGES.least && gauge <= GAUGES.most
    ? single(gaugeArea(gauge))
    : { kind: 'bad', because: 'unknown-unit' };
}

/** Wires of a width in millimetres side by side. */
function round(count: number, millimetres: number): Parsed {
  const value = rounded(count * (Math.PI / 4) * millimetres ** 2 * SQUARE_MILLIMETRE);
  return value > 0
    ? { kind: 'span', span: { from: value, to: value }, typed: 'metric' }
    : { kind: 'bad', because: 'not-a-number' };
}

/** Gauges, and feet with inches. */
function single(value: number): Parsed {
  return { kind: 'span', span: { from: rounded(value), to: rounded(value) }, typed: 'feet-and-gauge' };
}

function toNumber(text: string): number {
  return Number(text.replace(',', '.'));
}

// To 12 digits, so that "1500 mA" and "1.5 A" are one value, and an address that carries it reads as the same value.
function rounded(value: number): number {
  return Number(value.toPrecision(12));
}
