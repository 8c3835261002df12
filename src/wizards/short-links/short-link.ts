// The state of a page as a short text, and back: `enough-current` with its answers as some thirty signs. The long address stays the truth; this
// is a second way to write it, the same to the letter.
import { BitReader, BitsEnd, BitWriter } from './bits.ts';
import { checked, withChecks } from './checked.ts';
import type { Entry } from './dictionary.ts';
import { namesOf, PAGES } from './dictionary.ts';
import { MOST_BYTES, readText, readValue, writeText, writeValue } from './values.ts';

/** The first sign of every short link: how it is written. */
const VERSION = 1;
const PAGE_BITS = 7;
const NAME_BITS = 8;
/** A name a few places on. */
const STEP_BITS = 3;
const COUNT_BITS = 6;
const MORE_COUNT_BITS = 12;
/** Whatever is longer is none: no page makes it. */
const MOST_SIGNS = 4000;

/** The page below its language, such as `work-it-out/wire-it`, and its address from "?", or empty. */
export interface State {
  readonly page: string;
  readonly search: string;
}

type Pair = readonly [name: string, value: string];

const last = (bits: number): number => 2 ** bits - 1;

/** Pages that a short link leads to, whatever a link says: no other address comes out of one. */
const PAGE = /^(?:work-it-out|put-it-right|learn)\/[a-z0-9-]{1,60}$/;

const pairsOf = (search: string): Pair[] => [...new URLSearchParams(search)];

const bytesOf = (text: string): number => new TextEncoder().encode(text).length;

/** The short text of a state; undefined for one that has none, such as one whose texts are endless. */
export function shortened({ page, search }: State): string | undefined {
  const pairs = pairsOf(search);
  const tooLong = pairs.length > last(MORE_COUNT_BITS) || pairs.flat().some((text) => bytesOf(text) > MOST_BYTES);
  if (tooLong || !PAGE.test(page)) return undefined;
  const bits = new BitWriter();
  const place = PAGES.indexOf(page);
  bits.write(place < 0 ? last(PAGE_BITS) : place, PAGE_BITS);
  if (place < 0) writeText(bits, page);
  bits.write(Math.min(pairs.length, last(COUNT_BITS)), COUNT_BITS);
  if (pairs.length >= last(COUNT_BITS)) bits.write(pairs.length, MORE_COUNT_BITS);
  const names = new Names(page);
  const sorted = isSorted(pairs);
  bits.write(sorted ? 1 : 0, 1);
  for (const [name, value] of sorted ? names.inOrder(pairs) : pairs) {
    names.write(bits, name);
    writeValue(bits, names.entry(name), value);
  }
  const text = String(VERSION) + withChecks(bits.signs(), VERSION);
  return text.length > MOST_SIGNS ? undefined : text;
}

/** Whether names follow each other as an address sorts them, each of them once. */
const isSorted = (pairs: readonly Pair[]): boolean =>
  pairs.every(([name], at) => at === 0 || (pairs[at - 1]?.[0] ?? '') < name);

/** Names by their places, told by the step from the one before where that is one. */
class Names {
  readonly #entries: readonly Entry[];
  readonly #places: ReadonlyMap<string, number>;
  #at = -1;

  constructor(page: string) {
    this.#entries = namesOf(page);
    this.#places = new Map(this.#entries.map(({ name }, at) => [name, at]));
  }

  entry(name: string): Pick<Entry, 'choice'> {
    return this.#entries[this.#places.get(name) ?? -1] ?? { choice: undefined };
  }

  /** As they stand here, unknown ones at the end: most are then one step on. */
  inOrder(pairs: readonly Pair[]): readonly Pair[] {
    const place = ([name]: Pair): number => this.#places.get(name) ?? this.#entries.length;
    return pairs.toSorted((one, other) => place(one) - place(other));
  }

  write(bits: BitWriter, name: string): void {
    const place = this.#places.get(name);
    const step = place === undefined ? -1 : place - this.#at - 1;
    const isNear = step >= 0 && step <= 2 ** STEP_BITS;
    bits.write(step === 0 ? 0 : 1, 1);
    if (step !== 0) bits.write(isNear ? 0 : 1, 1);
    if (isNear && step > 0) bits.write(step - 1, STEP_BITS);
    if (!isNear) bits.write(place ?? last(NAME_BITS), NAME_BITS);
    if (place === undefined) writeText(bits, name);
    else this.#at = place;
  }

  /** Undefined for a place at which nothing stands yet. */
  read(bits: BitReader): string | undefined {
    const place = this.#placeIn(bits);
    if (place === last(NAME_BITS)) return readText(bits);
    this.#at = place;
    return this.#entries[place]?.name;
  }

  #placeIn(bits: BitReader): number {
    if (bits.read(1) === 0) return this.#at + 1;
    return bits.read(1) === 0 ? this.#at + 2 + bits.read(STEP_BITS) : bits.read(NAME_BITS);
  }
}

export type Unfolded =
  | { readonly kind: 'whole'; readonly state: State }
  /** Of `said` things `kept` are as they were made; from sign `from` of `signs` on, counted from 1, the link is not. */
  | {
      readonly kind: 'damaged';
      readonly state: State;
      readonly kept: number;
      readonly said: number;
      readonly from: number;
      readonly signs: number;
    }
  /** Not even the page can be read. */
  | { readonly kind: 'lost'; readonly from: number; readonly signs: number }
  /** Made by a release that writes them in another way, or knows more names. */
  | { readonly kind: 'later' }
  /** There is nothing to unfold. */
  | { readonly kind: 'none' };

/** Reads a short text, whatever it is given. What others hang on behind it counts for nothing: marks, a full stop, the end of a line. */
export function unfolded(given: string): Unfolded {
  const [whole = ''] = given.split('&');
  const text = whole.replace(/%20|%0[AD]|[\s=]/gi, '').replace(/[^\w-]+$/, '');
  if (text === '' || text.length > MOST_SIGNS) return { kind: 'none' };
  if (!text.startsWith(String(VERSION))) return { kind: /^[2-9]/.test(text) ? 'later' : 'none' };
  const read = checked(text.slice(1), VERSION);
  const where = { from: read.right + 2, signs: text.length };
  const found = new Reading(read.signs).read();
  if (found === undefined) return { kind: 'lost', ...where };
  if (found.later) return { kind: 'later' };
  const { state, kept, said } = found;
  // Where only what fills it up is damaged, nothing is lost.
  if (kept === said) return { kind: 'whole', state };
  return { kind: 'damaged', state, kept, said, ...where };
}

interface Found {
  readonly state: State;
  readonly kept: number;
  readonly said: number;
  /** It names a place at which nothing stands yet. */
  readonly later: boolean;
}

/** Reads bits up to where they end. */
class Reading {
  readonly #bits: BitReader;
  readonly #pairs: Pair[] = [];
  #page = '';
  #said = 0;
  #sorted = false;

  constructor(signs: string) {
    this.#bits = new BitReader(signs);
  }

  /** Undefined where not even the page can be read. */
  read(): Found | undefined {
    let later = false;
    try {
      later = !this.#readAll();
    } catch (problem) {
      if (!(problem instanceof BitsEnd)) throw problem;
    }
    if (later) return { state: { page: '', search: '' }, kept: 0, said: 0, later };
    if (!PAGE.test(this.#page)) return undefined;
    const pairs = this.#sorted ? this.#pairs.toSorted(([one], [other]) => (one < other ? -1 : 1)) : this.#pairs;
    const text = new URLSearchParams(pairs.map(([name, value]) => [name, value])).toString();
    const search = text === '' ? '' : `?${text}`;
    return { state: { page: this.#page, search }, kept: this.#pairs.length, said: this.#said, later };
  }

  /** False where it names a place at which nothing stands yet. */
  #readAll(): boolean {
    const bits = this.#bits;
    const place = bits.read(PAGE_BITS);
    const page = place === last(PAGE_BITS) ? readText(bits) : PAGES[place];
    if (page === undefined) return false;
    const few = bits.read(COUNT_BITS);
    const said = few === last(COUNT_BITS) ? bits.read(MORE_COUNT_BITS) : few;
    const sorted = bits.read(1) === 1;
    [this.#page, this.#said, this.#sorted] = [page, said, sorted];
    const names = new Names(page);
    while (this.#pairs.length < said) {
      const name = names.read(bits);
      const value = name === undefined ? undefined : readValue(bits, names.entry(name));
      if (name === undefined || value === undefined) return false;
      this.#pairs.push([name, value]);
    }
    return true;
  }
}
