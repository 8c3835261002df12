// The shapes in which the words of a walk are fetched; what checks shapes weighs more than the first question.
import * as z from 'zod/mini';
import { CAUTIONS, FIX, SENTENCES } from '../words/index.ts';
import type { FetchedCheck, FetchedFix, WalkWords } from './words.ts';

const text = z.string();
const CHECK = z.object({
  title: text,
  known: text,
  why: text,
  how: z.array(text),
  cautions: z.array(text),
  picture: z.optional(text),
  options: z.record(text, z.object({ label: text, hint: z.optional(text) })),
});

const NAMES = z.object({ known: text, options: z.record(text, z.object({ label: text })) });
const WALK_WORDS = z.object({ words: SENTENCES, checks: z.record(text, NAMES), cautions: CAUTIONS });
const ASKED = z.object({ check: CHECK, cautions: CAUTIONS });
const FIX_WORDS = z.object({ lang: z.optional(text), fix: FIX, cautions: CAUTIONS });

export const readWalkWords = (value: unknown): WalkWords => WALK_WORDS.parse(value);
export const readAsked = (value: unknown): FetchedCheck => ASKED.parse(value);
export const readFix = (value: unknown): FetchedFix => FIX_WORDS.parse(value);
