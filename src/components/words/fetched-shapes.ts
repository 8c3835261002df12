// Shapes that all fetched words share; what is fetched is looked at once, at the door.
import * as z from 'zod/mini';

const text = z.string();

/** Sentences by key. */
export const SENTENCES = z.record(text, text);

export const FIX = z.object({
  title: text,
  lead: text,
  short: text,
  because: text,
  needs: text,
  effort: text,
  before: z.array(text),
  steps: z.array(
    z.object({
      do: text,
      more: z.optional(text),
      cautions: z.array(text),
      job: z.optional(z.object({ title: text, href: text })),
    }),
  ),
  verify: text,
  next: text,
});

export const CAUTIONS = z.record(
  text,
  z.object({
    rank: z.enum(['life', 'injury', 'damage']),
    harm: text,
    do: text,
    line: z.optional(text),
    wide: z.optional(z.boolean()),
  }),
);
