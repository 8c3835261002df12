// The shapes in which the words of a walk are fetched; loaded with the first of them.
import * as z from 'zod/mini';
import type { FetchedFix, WalkWords } from './words.ts';

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

const WALK_WORDS = z.object({
  words: z.record(text, text),
  checks: z.record(text, CHECK),
  cautions: z.record(text, z.object({ harm: text, do: text })),
});

const FIX_WORDS = z.object({
  fix: z.object({
    title: text,
    lead: text,
    short: text,
    because: text,
    needs: text,
    effort: text,
    steps: z.array(z.object({ do: text, more: z.optional(text), cautions: z.array(text) })),
    verify: text,
    next: text,
  }),
  cautions: z.record(text, z.object({ harm: text, do: text })),
});

export const readWalkWords = (value: unknown): WalkWords => WALK_WORDS.parse(value);
export const readFix = (value: unknown): FetchedFix => FIX_WORDS.parse(value);
