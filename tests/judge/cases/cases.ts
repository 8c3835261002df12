// Troubles that people reported in public, with the cause that was found in the end, told in our own words: who, where and with what is left
// out. A reader who knew neither model nor causes said which title and which answers each person would have tapped (`opening`, `taps`); another
// who knew only the fix pages said which of them would have found or mended the cause (`accepts`, and `written` for pages that came later); what
// further checks would have shown (`shown`) was answered from the cause that was found, `cannot` where nobody could say.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';

const CASES = z.array(
  z.strictObject({
    id: z.string(),
    /** Cases to work with, and cases that were set aside until the model was finished. */
    set: z.enum(['work', 'set-aside']),
    /** Whether the cure was seen to work, others agreed on the cause, or it is only plausible. */
    sure: z.enum(['confirmed', 'agreed', 'plausible']),
    /** A question about what is needed is no trouble: nothing is to be found. */
    isTrouble: z.boolean(),
    told: z.string(),
    found: z.string(),
    /** A case worked with that tells the same trouble, as it came out when this one was opened: then it was not unseen. */
    again: z.optional(z.string()),
    accepts: z.array(z.string()),
    /** Fix pages written or widened after the case was opened that would mend it too, by whoever wrote them and no blind reader. */
    written: z.optional(z.array(z.string())),
    opening: z.string(),
    taps: z.record(z.string(), z.string()),
    /** What a second blind reader would have tapped; both came to the same title. */
    tapsOfAnother: z.optional(z.record(z.string(), z.string())),
    shown: z.record(z.string(), z.string()),
  }),
);

export type ReportedCase = z.infer<typeof CASES>[number];

const CASES_FILE = join(import.meta.dirname, 'cases.json');

export const REPORTED_CASES: readonly ReportedCase[] = CASES.parse(JSON.parse(readFileSync(CASES_FILE, 'utf8')));

/** Every page that would mend it. */
export const mendedBy = ({ accepts, written = [] }: ReportedCase): readonly string[] => [...accepts, ...written];

/** Those that score: troubles whose cause was seen to be it, or agreed on. One that no fix page would mend counts as missed. */
export const SCORED: readonly ReportedCase[] = REPORTED_CASES.filter(
  ({ sure, isTrouble }) => sure !== 'plausible' && isTrouble,
);
