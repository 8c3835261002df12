// What the last whole run of the tests came to, for the page that shows it: written by `npm run checked`.
import * as z from 'zod/mini';
import report from '../../docs/checked.json';

/** The folders of tests. */
const PARTS = [
  'rooms',
  'engine',
  'wizards',
  'judge',
  'content',
  'reference',
  'site',
  'engines',
  'sub-path',
  'made-up',
] as const;
const COUNT = { passed: z.number(), failed: z.number() };

export const CHECKED = z
  .object({
    date: z.string(),
    release: z.string(),
    commit: z.string(),
    parts: z.array(z.object({ id: z.enum(PARTS), ...COUNT, unrun: z.number() })),
    outside: z.array(z.object({ file: z.string(), says: z.string(), ...COUNT })),
    failed: z.array(z.object({ file: z.string(), part: z.enum(PARTS), about: z.string(), says: z.string() })),
  })
  .parse(report);
