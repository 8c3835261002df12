// The shapes in which the words of a walk are fetched; read after the first question, so that it does not wait for them.
import * as v from 'valibot';
import { CAUTIONS, FIX, SENTENCES } from '../words/index.ts';
import type { FetchedCheck, FetchedFix, WalkWords } from './words.ts';

const text = v.string();
const CHECK = v.object({
  title: text,
  why: text,
  how: v.array(text),
  cautions: v.array(text),
  picture: v.optional(text),
  hints: v.record(text, text),
});

const NAMES = v.object({ known: text, options: v.record(text, v.object({ label: text })) });
const WALK_WORDS = v.object({ words: SENTENCES, checks: v.record(text, NAMES), cautions: CAUTIONS });
const ASKED = v.object({ check: CHECK, cautions: CAUTIONS });
const FIX_WORDS = v.object({ lang: v.optional(text), fix: FIX, cautions: CAUTIONS });

export const readWalkWords = (value: unknown): WalkWords => v.parse(WALK_WORDS, value);
export const readAsked = (value: unknown): FetchedCheck => v.parse(ASKED, value);
export const readFix = (value: unknown): FetchedFix => v.parse(FIX_WORDS, value);
