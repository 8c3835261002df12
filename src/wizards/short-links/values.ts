// How a value of an address is written in bits: the place of a choice, digits with their unit, a list of known words, the marks of a release,
// or spelled out. Whatever the value, it is read as the very same text.
import type { BitReader, BitWriter } from './bits.ts';
import { signOf, sixOf } from './bits.ts';
import type { Entry } from './dictionary.ts';
import { WORDS } from './dictionary.ts';

/** How what is no choice is written; the first in one bit, the next in two, the last two in three each. */
const WAYS = ['number', 'words', 'release', 'spelled'] as const;
type Way = (typeof WAYS)[number];
const LAST_WAY = WAYS.length - 1;

/** So many ones, and a zero behind them where more could follow. */
function writeWay(bits: BitWriter, way: Way): void {
  const ones = WAYS.indexOf(way);
  for (let at = 0; at < ones; at++) bits.write(1, 1);
  if (ones < LAST_WAY) bits.write(0, 1);
}

function readWay(bits: BitReader): Way {
  let ones = 0;
  while (ones < LAST_WAY && bits.read(1) === 1) ones++;
  return WAYS[ones] ?? 'spelled';
}

const WORD_BITS = 9;
const lastOf = (bits: number): number => 2 ** bits - 1;

/** Writes the value; of the ways that it can be written in, the first. */
export function writeValue(bits: BitWriter, { choice }: Pick<Entry, 'choice'>, value: string): void {
  if (choice !== undefined) {
    const place = choice.values.indexOf(value);
    const found = place >= 0 && place < lastOf(choice.bits);
    bits.write(found ? place : lastOf(choice.bits), choice.bits);
    if (found) return;
  }
  const way = WAYS.find((one) => WRITERS[one].can(value)) ?? 'spelled';
  writeWay(bits, way);
  WRITERS[way].write(bits, value);
}

/** Undefined for a place at which nothing stands yet: a later release made the link. */
export function readValue(bits: BitReader, { choice }: Pick<Entry, 'choice'>): string | undefined {
  if (choice !== undefined) {
    const place = bits.read(choice.bits);
    if (place !== lastOf(choice.bits)) return choice.values[place];
  }
  return WRITERS[readWay(bits)].read(bits);
}

interface Writer {
  readonly can: (value: string) => boolean;
  readonly write: (bits: BitWriter, value: string) => void;
  readonly read: (bits: BitReader) => string | undefined;
}

/** Digits and what stands between them, four bits each; `~` before the place of a unit, which ends the value, as `;` does. */
const DIGITS = '0123456789.-,~;';
/** Never taken out or moved. */
const UNITS: readonly string[] = [
  ' A',
  ' V',
  ' m',
  ' ft',
  ' in',
  ' mm2',
  ' AWG',
  ' h',
  ' mohm/m',
  ' mohm/ft',
  ' ohm/m',
];
const NUMBER = /^([0-9.,-]*)(\D*)$/;

function numberAndUnit(value: string): readonly [digits: string, unit: number] | undefined {
  const [, digits = '', rest = ''] = NUMBER.exec(value) ?? ['', '', '?'];
  if (rest === '') return digits === '' ? undefined : [digits, -1];
  const unit = UNITS.indexOf(rest);
  return unit < 0 ? undefined : [digits, unit];
}

const digits: Omit<Writer, 'can'> = {
  write: (bits, value) => {
    const [text, unit] = numberAndUnit(value) ?? ['', 0];
    for (const sign of text) bits.write(DIGITS.indexOf(sign), 4);
    bits.write(DIGITS.indexOf(unit < 0 ? ';' : '~'), 4);
    if (unit >= 0) bits.write(unit, 4);
  },
  read: (bits) => {
    let text = '';
    for (;;) {
      const sign = DIGITS.charAt(bits.read(4));
      if (sign === '') return;
      if (sign === ';') return text;
      if (sign === '~') {
        const unit = UNITS[bits.read(4)];
        return unit === undefined ? undefined : text + unit;
      }
      text += sign;
    }
  },
};

/** What most numbers are: a few, tenths up to some fifty, or not known; else their digits. Its place is two bits. */
const FEW_BITS = 4;
const TENTHS_BITS = 9;
const TENTHS = 10;
const SIZES = ['few', 'tenths', 'unknown', 'digits'] as const;

/** The whole number, from 0, that is written just so and fits; undefined where there is none. */
function countIn(value: string, times: number, bits: number): number | undefined {
  const count = Math.round(Number(value) * times);
  return count >= 0 && count <= lastOf(bits) && String(count / times) === value ? count : undefined;
}

function sizeOf(value: string): (typeof SIZES)[number] {
  if (value === 'unknown') return 'unknown';
  if (countIn(value, 1, FEW_BITS) !== undefined) return 'few';
  return countIn(value, TENTHS, TENTHS_BITS) === undefined ? 'digits' : 'tenths';
}

const number: Writer = {
  can: (value) => value === 'unknown' || numberAndUnit(value) !== undefined,
  write: (bits, value) => {
    const size = sizeOf(value);
    bits.write(SIZES.indexOf(size), 2);
    if (size === 'few') bits.write(countIn(value, 1, FEW_BITS) ?? 0, FEW_BITS);
    if (size === 'tenths') bits.write(countIn(value, TENTHS, TENTHS_BITS) ?? 0, TENTHS_BITS);
    if (size === 'digits') digits.write(bits, value);
  },
  read: (bits) => {
    const size = SIZES[bits.read(2)];
    if (size === 'few') return String(bits.read(FEW_BITS));
    if (size === 'tenths') return String(bits.read(TENTHS_BITS) / TENTHS);
    return size === 'unknown' ? size : digits.read(bits);
  },
};

const MOST_WORDS_BITS = 5;

const words: Writer = {
  can: (value) => {
    const all = value.split('.');
    return all.length <= lastOf(MOST_WORDS_BITS) && all.every((one) => WORDS.includes(one));
  },
  write: (bits, value) => {
    const all = value.split('.');
    bits.write(all.length, MOST_WORDS_BITS);
    for (const one of all) bits.write(WORDS.indexOf(one), WORD_BITS);
  },
  read: (bits) => {
    const all = Array.from({ length: bits.read(MOST_WORDS_BITS) }, () => WORDS[bits.read(WORD_BITS)]);
    return all.includes(undefined) ? undefined : all.join('.');
  },
};

/** `made` of src/wizards/links: a release of three small numbers, and a word. */
const RELEASE = /^(0|[1-9]\d?)\.(0|[1-9]\d?)\.(0|[1-9]\d?)-(.+)$/;
const PART_BITS = 7;

const release: Writer = {
  can: (value) => WORDS.includes(RELEASE.exec(value)?.[4] ?? ''),
  write: (bits, value) => {
    const [, ...parts] = RELEASE.exec(value) ?? [];
    for (const part of parts.slice(0, 3)) bits.write(Number(part), PART_BITS);
    bits.write(WORDS.indexOf(parts[3] ?? ''), WORD_BITS);
  },
  read: (bits) => {
    const parts = [0, 1, 2].map(() => bits.read(PART_BITS));
    const word = WORDS[bits.read(WORD_BITS)];
    return word === undefined ? undefined : `${parts.join('.')}-${word}`;
  },
};

/** Letters, digits, `-` and `_` six bits each, or else bytes; their number first. */
const LENGTH_BITS = 10;

const spelled: Writer = {
  can: () => true,
  write: (bits, value) => {
    const plain = [...value].every((sign) => sixOf(sign) >= 0);
    const all = plain ? [...value].map(sixOf) : [...new TextEncoder().encode(value)];
    bits.write(plain ? 1 : 0, 1);
    bits.write(all.length, LENGTH_BITS);
    for (const one of all) bits.write(one, plain ? 6 : 8);
  },
  read: (bits) => {
    const plain = bits.read(1) === 1;
    const all = Array.from({ length: bits.read(LENGTH_BITS) }, () => bits.read(plain ? 6 : 8));
    return plain ? all.map(signOf).join('') : new TextDecoder().decode(new Uint8Array(all));
  },
};

/** A text that is spelled out is no longer than that, in bytes. */
export const MOST_BYTES = lastOf(LENGTH_BITS);

const WRITERS: Readonly<Record<Way, Writer>> = { number, words, release, spelled };

export const writeText = (bits: BitWriter, text: string): void => spelled.write(bits, text);
export const readText = (bits: BitReader): string | undefined => spelled.read(bits);
