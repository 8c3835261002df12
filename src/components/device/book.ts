// What a case notebook is: answers that somebody keeps with a name and a note, how they are written as a text, and how two notebooks
// become one. A text is the same on the device and in a file. Knows nothing of where it is kept.
import * as v from 'valibot';
import { languageNamed } from '../words/index.ts';

/** The form of notebook that this release writes. A text says its own. */
export const FORM = 1;
/** No notebook may be larger: characters of its text, and answers in it. */
export const MOST_TEXT = 5_000_000;
const MOST_KEPT = 5000;
const MOST_OF = { id: 100, name: 200, note: 5000, path: 8000, verdict: 1000 } as const;

/** One answer that is kept. */
export interface Kept {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  /** Its address below the root of the site, so that it holds wherever the site stands: `en/work-it-out/wire-it/?…`. */
  readonly path: string;
  /** What the page said. */
  readonly verdict: string;
  /** When it was kept, ISO 8601 in UTC. */
  readonly on: string;
}

/** Why a text is no notebook. `at`: the place in the text, or which answer of it; both from 1. */
export type Fault =
  | { readonly why: 'no-notebook' | 'later-release' | 'too-large' }
  | { readonly why: 'broken-text' | 'wrong-answer'; readonly at: number }
  | { readonly why: 'wrong-part'; readonly at: number; readonly part: string };

export type Read = { readonly kept: readonly Kept[] } | { readonly fault: Fault };

/** An address of this site below its root: it can lead nowhere else and runs nothing. */
const PATH = /^([a-z-]+)\/(?:[a-z0-9-]+\/)*(?:\?[!-"$-~]*)?(?:#[!-~]*)?$/i;
const isOurs = (path: string): boolean => languageNamed(PATH.exec(path)?.[1]) !== undefined;

const text = (most: number) => v.pipe(v.string(), v.maxLength(most));

const KEPT = v.strictObject({
  id: v.pipe(text(MOST_OF.id), v.minLength(1)),
  name: text(MOST_OF.name),
  note: text(MOST_OF.note),
  path: v.pipe(text(MOST_OF.path), v.check(isOurs)),
  verdict: text(MOST_OF.verdict),
  on: v.pipe(v.string(), v.isoTimestamp()),
});

/** What every form of notebook has. */
const FRAME = v.strictObject({
  'both-rails-notebook': v.pipe(v.number(), v.integer(), v.minValue(1)),
  kept: v.array(v.unknown()),
});

/** How an answer of each earlier form becomes one of the next: from form 1 on, in order. A new form adds a line. */
const NEXT_FORM: readonly ((answer: unknown) => unknown)[] = [];

export function writeBook(kept: readonly Kept[]): string {
  return JSON.stringify({ 'both-rails-notebook': FORM, kept }, undefined, 1);
}

/** @param written what is said to be a notebook; any text */
export function readBook(written: string): Read {
  if (written.length > MOST_TEXT) return { fault: { why: 'too-large' } };
  const data = jsonOf(written);
  if ('fault' in data) return data;
  const frame = v.safeParse(FRAME, data.value);
  if (!frame.success) return { fault: { why: 'no-notebook' } };
  const { 'both-rails-notebook': form, kept } = frame.output;
  if (form > FORM) return { fault: { why: 'later-release' } };
  if (kept.length > MOST_KEPT) return { fault: { why: 'too-large' } };
  const found: Kept[] = [];
  for (const [index, answer] of kept.entries()) {
    const now = NEXT_FORM.slice(form - 1).reduce((one, next) => next(one), answer);
    const read = v.safeParse(KEPT, now);
    if (!read.success) return { fault: faultOf(index + 1, read.issues[0].path?.[0]?.key) };
    found.push(read.output);
  }
  return { kept: found };
}

const isPart = (key: unknown): key is keyof Kept => typeof key === 'string' && Object.hasOwn(KEPT.entries, key);

const faultOf = (at: number, part: unknown): Fault =>
  isPart(part) ? { why: 'wrong-part', at, part } : { why: 'wrong-answer', at };

function jsonOf(written: string): { readonly value: unknown } | { readonly fault: Fault } {
  try {
    return { value: JSON.parse(written) };
  } catch (error) {
    // Browsers word it differently; some say the place.
    const [, place] = /position (\d+)/.exec(String(error)) ?? [];
    const begun = /^\s*\{\s*"both-rails-notebook"/.test(written);
    if (!begun) return { fault: { why: 'no-notebook' } };
    return { fault: { why: 'broken-text', at: place === undefined ? written.length : Number(place) + 1 } };
  }
}

/** The same answer, told in the same words: when it was kept, and under which mark, does not matter. */
const isSame = (one: Kept, other: Kept): boolean =>
  (['name', 'note', 'path', 'verdict'] as const).every((part) => one[part] === other[part]);

export interface Merged {
  readonly kept: readonly Kept[];
  readonly added: number;
  /** There already, word for word. */
  readonly same: number;
  /** There already, but otherwise: both are kept. */
  readonly otherwise: number;
}

/** Puts what another notebook has beside what is here; nothing that is here changes or goes. */
export function merged(here: readonly Kept[], there: readonly Kept[], freshId: () => string): Merged {
  const kept = [...here];
  let [same, otherwise] = [0, 0];
  for (const one of there) {
    if (kept.some((other) => isSame(one, other))) {
      same += 1;
      continue;
    }
    const taken = kept.some(({ id }) => id === one.id);
    if (taken) otherwise += 1;
    kept.push(taken ? { ...one, id: freshId() } : one);
  }
  return { kept, added: kept.length - here.length - otherwise, same, otherwise };
}

/** What is kept must be readable again: too long a name or note loses its end. */
export const cutToFit = (answer: Kept): Kept => ({
  ...answer,
  name: answer.name.slice(0, MOST_OF.name),
  note: answer.note.slice(0, MOST_OF.note),
  verdict: answer.verdict.slice(0, MOST_OF.verdict),
});
