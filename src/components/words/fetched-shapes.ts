// Shapes that all fetched words share; what is fetched is looked at once, at the door.
import * as v from 'valibot';

const text = v.string();

/** Sentences by key. */
export const SENTENCES = v.record(text, text);

export const FIX = v.object({
  title: text,
  lead: text,
  short: text,
  because: text,
  needs: text,
  without: v.optional(text),
  effort: text,
  before: v.array(text),
  steps: v.array(
    v.object({
      do: text,
      more: v.optional(text),
      cautions: v.array(text),
      outdoors: v.optional(v.array(text)),
      live: v.optional(v.boolean()),
      job: v.optional(v.object({ title: text, href: text })),
    }),
  ),
  verify: text,
  next: text,
});

export const CAUTIONS = v.record(
  text,
  v.object({
    rank: v.picklist(['life', 'injury', 'damage']),
    harm: text,
    do: text,
    line: v.optional(text),
    wide: v.optional(v.boolean()),
  }),
);
