// What the report on the reported cases says, for the page that shows it: written by `npm run judge`.
import * as z from 'zod/mini';
import report from '../../docs/judged.json';

const SHARE = z.object({ right: z.number(), of: z.number(), from: z.number(), to: z.number() });
const CALIBRATION = z.object({ of: z.number(), expected: z.number(), right: z.number(), isWithin: z.boolean() });
const PART = z.object({
  cases: z.number(),
  told: z.object({ first: SHARE, three: SHARE }),
  answered: z.object({ first: SHARE, three: SHARE }),
  questions: z.number(),
  cannot: z.number(),
  toldCalibration: z.object({ all: CALIBRATION, sure: CALIBRATION }),
  walkCalibration: z.object({ all: CALIBRATION, sure: CALIBRATION }),
  each: z.array(
    z.object({
      id: z.string(),
      accepts: z.array(z.string()),
      told: z.string(),
      place: z.number(),
      three: z.number(),
    }),
  ),
});

export type JudgedShare = z.infer<typeof SHARE>;
export type JudgedPart = z.infer<typeof PART>;

const PAIR = z.object({ first: z.number(), three: z.number() });
/** The same of cases in the moment they were opened, unseen, as numbers of cases. */
const OPENED = z.object({
  cases: z.number(),
  told: PAIR,
  answered: PAIR,
  questions: z.number(),
  sure: z.object({ right: z.number(), of: z.number(), expected: z.number() }),
});

const COUNTS = z.object({ walks: z.number(), first: z.number(), three: z.number(), found: z.number() });
type Counts = z.infer<typeof COUNTS>;
/** Walks through the virtual layout with a multimeter and without, as one. */
const WALKED = z.pipe(
  z.object({ meter: COUNTS, bare: COUNTS }),
  z.transform(
    ({ meter, bare }): Counts => ({
      walks: meter.walks + bare.walks,
      first: meter.first + bare.first,
      three: meter.three + bare.three,
      found: meter.found + bare.found,
    }),
  ),
);

export const JUDGED = z
  .object({
    opened: OPENED,
    causes: z.number(),
    checks: z.number(),
    parts: z.object({ work: PART, 'set-aside': z.optional(PART) }),
    table: z.object({ right: WALKED, wrong: WALKED }),
  })
  .parse(report);

/**
 * The walk of the first release, on 41 reported cases that it had never seen, 38 of them with everything answered; the same posts before a
 * well-informed reader (simulated) who asks nothing; and the share of faults found again that had been put into a virtual layout.
 */
export const BEFORE = {
  told: { first: 0.27, three: 0.59 },
  answered: { first: 0.47, three: 0.68 },
  reader: { first: 0.73, three: 0.9 },
  questions: 4,
  ownLayout: 0.997,
  cases: 41,
} as const;
