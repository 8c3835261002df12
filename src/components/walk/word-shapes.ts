// The shapes in which the words of a walk are fetched; read after the first question, so that it does not wait for them.
import * as v from 'valibot';
import { rowOfCheck, SIGN_MODEL } from '../../wizards/put-it-right/index.ts';
import { CAUTIONS, FIX, SENTENCES } from '../words/index.ts';
import type { CheckNames, FetchedCheck, FetchedFix, SentWords, WalkWords } from './words.ts';

const text = v.string();
const CHECK = v.object({
  title: text,
  why: text,
  how: v.array(text),
  cautions: v.array(text),
  picture: v.optional(text),
  hints: v.record(text, text),
});

const WALK_WORDS = v.object({
  words: SENTENCES,
  checks: v.record(text, v.array(text)),
  pictures: v.array(text),
  cautions: CAUTIONS,
});
const ASKED = v.object({ check: CHECK, cautions: CAUTIONS });
const FIX_WORDS = v.object({ lang: v.optional(text), fix: FIX, cautions: CAUTIONS });

export const readWalkWords = (value: unknown): SentWords => v.parse(WALK_WORDS, value);
export const readAsked = (value: unknown): FetchedCheck => v.parse(ASKED, value);
export const readFix = (value: unknown): FetchedFix => v.parse(FIX_WORDS, value);

/** What was sent, with every name where it is looked for. Throws where a check has not as many words as answers. */
export function wholeWords({ words, checks, ...others }: SentWords): WalkWords {
  const faults = SIGN_MODEL.causes.map(({ id, fixClass }) => [`fault-${id}`, words[`class-${fixClass}`] ?? '']);
  const named = Object.entries(checks).map(([id, names]): [string, CheckNames] => [id, namesOf(id, names)]);
  return { words: { ...Object.fromEntries(faults), ...words }, checks: Object.fromEntries(named), ...others };
}

function namesOf(id: string, [known = '', ...labels]: readonly string[]): CheckNames {
  const options = rowOfCheck(id)?.options ?? [];
  if (labels.length !== options.length) throw new Error(`The words of "${id}" are not those of its answers`);
  return { known, options: Object.fromEntries(options.map((option, at) => [option, { label: labels[at] ?? '' }])) };
}
