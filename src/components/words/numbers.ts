// Numbers with their units as a language writes them and as a person measures.
import type { MeasureSystem, Quantity, Working } from '../../engine/index.ts';
import {
  feetAndInches,
  gaugeAtLeast,
  gaugeOf,
  nearestGauge,
  perFoot,
  toCentimetres,
  toFeet,
  toInches,
  toSquareMillimetres,
  toThousandths,
} from '../../engine/index.ts';
import type { Say } from './words.ts';
import { sayer } from './words.ts';

// Making a formatter costs far more than using it, and a slider asks for a hundred numbers a frame.
const FORMATS = new Map<string, Intl.NumberFormat>();

function numberFormat(language: string, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = `${language} ${options.maximumFractionDigits} ${options.maximumSignificantDigits}`;
  const format = FORMATS.get(key) ?? new Intl.NumberFormat(language, options);
  FORMATS.set(key, format);
  return format;
}

const NARROW = '\u00a0';

/** A fact is told as near as it can be; what to do is told so that the number as told is at least as good. */
export type Telling = 'near' | 'at-most' | 'at-least';

const ROUND: Readonly<Record<Telling, (value: number) => number>> = {
  near: Math.round,
  'at-most': (value) => Math.floor(value + 1e-6),
  'at-least': (value) => Math.ceil(value - 1e-6),
};

/** Feet below which inches are told, and inches below which hundredths of one are. */
const FEET_WITH_INCHES = 20;
const FINE_INCHES = 3;

/** Numbers with their units as the language writes them, lengths and wires in the system of the person. */
export class Numbers {
  readonly #language: string;
  readonly #say: Say;
  /** Of lengths; and of wires, which are bought by it. */
  readonly system: MeasureSystem;
  readonly wires: MeasureSystem;

  /** `words` hold those of the room `units`; lengths and wires have signs and do without. */
  constructor(
    language: string,
    system: MeasureSystem = 'metric',
    words: Readonly<Record<string, string>> = {},
    wires: MeasureSystem = system,
  ) {
    this.#language = language;
    this.#say = sayer(words, language);
    this.system = system;
    this.wires = wires;
  }

  systemFor(quantity: Quantity): MeasureSystem {
    return quantity === 'area' ? this.wires : this.system;
  }

  /** Makes what a number with up to three decimals and a share are written with: the first of them takes longest. */
  getReady(): void {
    this.plain(0, 3);
    this.share(1);
  }

  plain(value: number, digits: number): string {
    return numberFormat(this.#language, { maximumFractionDigits: digits }).format(value);
  }

  amps(value: number, telling: Telling = 'near'): string {
    const decimals = value < 1 ? 2 : 1;
    const told = telling === 'near' ? value : ROUND[telling](value * 10 ** decimals) / 10 ** decimals;
    return `${this.plain(told, decimals)}${NARROW}A`;
  }

  /** Two decimals: for a number read off beside another that differs little. */
  ampsExactly(value: number): string {
    return `${this.plain(value, 2)}${NARROW}A`;
  }

  volts(value: number, telling: Telling = 'near'): string {
    const told = telling === 'near' ? value : ROUND[telling](value * 10) / 10;
    return `${this.plain(told, 1)}${NARROW}V`;
  }

  /** Two decimals: for volts read off beside others that differ little. */
  voltsExactly(value: number): string {
    return `${this.plain(value, 2)}${NARROW}V`;
  }

  /** Metres in; metres, or feet and inches, out. */
  metres(value: number, telling: Telling = 'near'): string {
    if (this.system === 'feet-and-gauge') return this.#feet(value, ROUND[telling]);
    return `${this.plain(value, value < 10 ? 2 : 1)}${NARROW}m`;
  }

  /** Metres of something thin in; millimetres, or hundredths of an inch, out. */
  thin(metres: number): string {
    if (this.system === 'feet-and-gauge') return this.metres(metres);
    return `${this.plain(toThousandths(metres), 1)}${NARROW}mm`;
  }

  #feet(metres: number, round: (value: number) => number): string {
    const inches = toInches(metres);
    if (inches < FINE_INCHES) return this.#inches(round(inches * 100) / 100);
    if (toFeet(metres) >= FEET_WITH_INCHES) {
      const tenths = toFeet(metres) < 100 ? 10 : 1;
      return `${this.plain(round(toFeet(metres) * tenths) / tenths, 1)}${NARROW}ft`;
    }
    const whole = round(inches);
    const { feet, inches: rest } = feetAndInches(whole);
    if (feet === 0) return this.#inches(whole);
    return rest === 0 ? `${this.plain(feet, 0)}${NARROW}ft` : `${this.plain(feet, 0)}${NARROW}ft ${this.#inches(rest)}`;
  }

  #inches(value: number): string {
    return `${this.plain(value, 2)}${NARROW}in`;
  }

  /** Metres of a small model in; whole centimetres, or tenths of an inch, out. Below 0: to the other side. */
  place(metres: number): string {
    if (this.system === 'feet-and-gauge')
      return `${this.plain(Math.round(toInches(metres) * 10) / 10 + 0, 1)}${NARROW}in`;
    return `${this.plain(Math.round(toCentimetres(metres)) + 0, 0)}${NARROW}cm`;
  }

  /** Square metres in; square millimetres, or the gauge, out. A size between two gauges is told with the sign of "about". */
  wire(area: number, telling: 'near' | 'at-least' = 'near'): string {
    if (this.wires === 'metric') return `${this.plain(toSquareMillimetres(area), 2)}${NARROW}mm²`;
    if (telling === 'at-least') return `AWG${NARROW}${gaugeAtLeast(area)}`;
    const gauge = nearestGauge(area);
    return `${gaugeOf(area) === undefined ? '≈' : ''}AWG${NARROW}${gauge}`;
  }

  /** Ohms a metre in. */
  ohmsAlong(value: number): string {
    return this.system === 'metric'
      ? `${this.plain(toThousandths(value), 1)}${NARROW}m${this.#ohm()}/m`
      : `${this.plain(toThousandths(perFoot(value)), 1)}${NARROW}m${this.#ohm()}/ft`;
  }

  ohms(value: number): string {
    return `${this.#digits(value)}${NARROW}${this.#ohm()}`;
  }

  #ohm(): string {
    return this.#say('unit-ohm');
  }

  #digits(value: number): string {
    return numberFormat(this.#language, { maximumSignificantDigits: 3 }).format(value);
  }

  watts(value: number): string {
    return `${this.plain(value, value < 10 ? 1 : 0)}${NARROW}W`;
  }

  /** A step of a thousandth of an ampere is not none. */
  #fineAmps(value: number): string {
    const fine = value !== 0 && Math.abs(value) < 0.01;
    return fine ? `${this.#digits(toThousandths(value))}${NARROW}mA` : this.ampsExactly(value);
  }

  /** A value of a working. */
  inUnit(value: number, unit: Working['unit']): string {
    if (unit === 'A') return this.#fineAmps(value);
    if (unit === 'V') return this.voltsExactly(value);
    if (unit === 'share') return this.share(value);
    if (WITHOUT_UNIT.has(unit)) return this.plain(value, 2);
    if (this.system === 'feet-and-gauge') {
      if (unit === 'm') return this.metres(value);
      if (unit === 'ohm/m') return `${this.#digits(toThousandths(perFoot(value)))}${NARROW}m${this.#ohm()}/ft`;
    }
    if (unit === 'hours') return `${this.#digits(value)}${NARROW}h`;
    const finer = THOUSANDTHS[unit];
    const [name, written] = finer === undefined ? [unit, value] : [finer, toThousandths(value)];
    return `${this.#digits(written)}${NARROW}${name.replace('ohm', () => this.#ohm())}`;
  }

  /** A value of a question's field, in the unit people use for it. */
  quantity(value: number, quantity: Quantity): string {
    return WRITE[quantity](this, value);
  }

  hours(value: number): string {
    return `${this.plain(value, 2)}${NARROW}h`;
  }

  /** A share of time in per cent; what is too small to matter is said so. */
  share(value: number): string {
    if (value <= 0) return `0${NARROW}%`;
    if (value < 0.0001) return this.#say('share-least', { share: `${this.plain(0.01, 2)}${NARROW}%` });
    return `${numberFormat(this.#language, { maximumSignificantDigits: 2 }).format(value * 100)}${NARROW}%`;
  }
}

const WITHOUT_UNIT: ReadonlySet<string> = new Set(['trains', 'pieces', 'times']);

/** Units of which thousandths are written. */
const THOUSANDTHS: Readonly<Partial<Record<Working['unit'], string>>> = {
  'ohm/m': 'mohm/m',
  F: 'mF',
  C: 'mC',
  s: 'ms',
};

const WRITE: Readonly<Record<Quantity, (numbers: Numbers, value: number) => string>> = {
  current: (numbers, value) => numbers.ampsExactly(value),
  voltage: (numbers, value) => numbers.volts(value),
  hours: (numbers, value) => numbers.hours(value),
  count: (numbers, value) => numbers.plain(value, 0),
  length: (numbers, value) => numbers.metres(value),
  area: (numbers, value) => numbers.wire(value),
  resistance: (numbers, value) => numbers.ohms(value),
  'resistance-per-metre': (numbers, value) => numbers.ohmsAlong(value),
  time: (numbers, value) => `${numbers.plain(value, 3)}${NARROW}s`,
};
