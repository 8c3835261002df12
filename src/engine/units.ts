// The edge: what people type becomes SI. Everything behind this file is amperes, volts, hours of an evening, pieces.

export type Quantity = 'current' | 'voltage' | 'hours' | 'count';

/** From and to in the same SI unit; from <= to. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export type Parsed =
  | { readonly kind: 'span'; readonly span: Span }
  | { readonly kind: 'power'; readonly watts: number }
  | { readonly kind: 'bad'; readonly because: 'empty' | 'not-a-number' | 'unknown-unit' };

const FACTORS: Readonly<Record<Quantity, Readonly<Record<string, number>>>> = {
  current: { '': 1, a: 1, amp: 1, amps: 1, ampere: 1, amperes: 1, ma: 1e-3, milliamp: 1e-3, milliamps: 1e-3 },
  voltage: { '': 1, v: 1, volt: 1, volts: 1, vdc: 1, vac: 1, 'v~': 1, mv: 1e-3 },
  hours: { '': 1, h: 1, hour: 1, hours: 1, std: 1, min: 1 / 60, minutes: 1 / 60 },
  count: { '': 1 },
};
const POWER = new Set(['va', 'w', 'watt', 'watts']);

// Digits with one decimal point or comma, at most 12 before it and 20 after; then letters or "~".
const NUMBER = '([+-]?(?:\\d{1,12}(?:[.,]\\d{0,20})?|[.,]\\d{1,20})(?:e[+-]?\\d{1,3})?)';
const ONE = new RegExp(`^${NUMBER}\\s*([a-z~]*)$`);
const TWO = new RegExp(`^${NUMBER}\\s*([a-z~]*)\\s*(?:-|to|bis|\\.\\.)\\s*${NUMBER}\\s*([a-z~]*)$`);

/**
 * Reads a number with its unit as people write it: `1.5 A`, `1500 mA`, `0,3 A`, `0.3-0.6 A`, `36 VA`.
 * Shape: any text in; a span in SI out (both ends equal for a single number), `power` in watts for VA or W where a
 * current is asked for, or `bad` with the reason. Never throws. The range is the caller's business.
 */
export function parseQuantity(text: string, quantity: Quantity): Parsed {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[\u2012-\u2015\u2212]/g, '-')
    .replace(/\s+/g, ' ');
  if (plain === '') return { kind: 'bad', because: 'empty' };
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
    ? { kind: 'span', span: { from, to } }
    : { kind: 'bad', because: 'not-a-number' };
}

function toNumber(text: string): number {
  return Number(text.replace(',', '.'));
}

// To 12 digits, so that "1500 mA" and "1.5 A" are one value, and an address that carries it reads as the same value.
function rounded(value: number): number {
  return Number(value.toPrecision(12));
}

/** Middle of a span, same unit. */
export function middle(span: Span): number {
  return (span.from + span.to) / 2;
}
