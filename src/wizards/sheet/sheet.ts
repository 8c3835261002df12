// The layout sheet: what a person has told of a layout, one document. Read here once, and nowhere else: a file, a link, the text that a
// device keeps. Its JSON Schema is made of it (decision 034).
import * as z from 'zod/mini';

/** The number of this form. A sheet of an older one is led on by `migrations.ts`, never dropped. */
export const SHEET_FORM = 1;

/** The most of everything that one sheet holds. Beyond it the arithmetic says nothing any more. Source: own-choice. */
export const MOST = { sections: 120, joints: 240, stages: 12, supplies: 12, trains: 60, count: 100, name: 60 } as const;

const within = (least: number, most: number) => z.number().check(z.minimum(least), z.maximum(most));
const whole = (least: number, most: number) => z.int().check(z.minimum(least), z.maximum(most));
/** A mark by which parts of the sheet name each other: letters, digits and hyphens. */
const mark = z.string().check(z.regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/), z.maxLength(40));
const name = z.optional(z.string().check(z.maxLength(MOST.name)));

const trains = z.strictObject({
  name,
  kind: z.enum(['modern', 'older', 'measured']),
  count: whole(0, MOST.count),
  sound: z.optional(z.boolean()),
  /** Measured while it runs, amperes; for `measured`. */
  runningAmps: z.optional(z.strictObject({ from: within(0.005, 10), to: within(0.005, 10) })),
  standingAmps: z.optional(within(0, 5)),
});

/** What a stretch of track is. A turnout or crossover is one section, with joints only beyond its ends. */
export const SECTION_TAGS = [
  'station',
  'stop',
  'hidden',
  'yard',
  'turnout',
  'reversing',
  'turntable',
  'programming',
  'lift-out',
] as const;

const section = z.strictObject({
  id: mark,
  name,
  metres: within(0.01, 500),
  /** Share of the traffic, by any measure: shares are put in proportion to each other. */
  traffic: within(0, 1000),
  /** Draws that are always on here: coach lighting, signals, powered turnout motors; amperes. */
  fixedAmps: z.optional(within(0, 10)),
  tags: z.optional(z.array(z.enum(SECTION_TAGS))),
  /** Where it is drawn, on a grid of sections: columns from the left, rows from the top. */
  at: z.optional(z.strictObject({ column: within(0, 200), row: within(0, 100) })),
});

const joint = z.strictObject({
  id: mark,
  from: mark,
  to: mark,
  /** Whether both rails may be cut here at all. */
  gap: z.enum(['possible', 'impossible', 'required']),
  /** Rails that are cut here already. */
  cut: z.enum(['none', 'one', 'both', 'unknown']),
  /** How awkward a gap is here, 0: plain straight track that one reaches, 3: in a tunnel or on a sharp curve. */
  awkward: whole(0, 3),
});

const supplyPlug = z.enum(['centre-plus', 'centre-minus', 'terminals']);

/** Printed on it; what is left out nobody has read yet. */
const supply = z.strictObject({
  id: mark,
  name,
  kind: z.optional(z.enum(['dc', 'ac'])),
  volts: z.optional(within(3, 60)),
  amps: z.optional(within(0.1, 40)),
  plug: z.optional(supplyPlug),
  earthed: z.optional(z.boolean()),
});

const stage = z.strictObject({
  id: mark,
  name,
  /** The command station's own output, or a booster. The command station stands first. */
  kind: z.enum(['station', 'booster']),
  limitAmps: z.optional(within(0.3, 30)),
  tripAmps: z.optional(within(0.3, 40)),
  tripSeconds: z.optional(within(0, 10)),
  comesBack: z.optional(z.enum(['by-itself', 'by-hand'])),
  rails: z.optional(z.enum(['follows', 'set', 'converter'])),
  /** For `set` and `converter`. */
  railVolts: z.optional(within(5, 30)),
  ownUseAmps: z.optional(within(0, 5)),
  inputKind: z.optional(z.enum(['dc', 'ac', 'either'])),
  inputVolts: z.optional(within(3, 60)),
  leastInputVolts: z.optional(within(3, 60)),
  plug: z.optional(supplyPlug),
  common: z.optional(z.enum(['isolated', 'joined'])),
  cutout: z.optional(z.boolean()),
  autoReversing: z.optional(z.boolean()),
  /** The supply that feeds it. */
  supply: z.optional(mark),
  /** Sections that are surely its own: its feeders are there, or somebody wants it so. */
  feeds: z.optional(z.array(mark).check(z.maxLength(MOST.sections))),
  /** Breakers behind it that part it into sub-districts: they give no more power. */
  breakers: z.optional(whole(0, 12)),
});

const wiring = z.strictObject({
  rail: z.optional(z.string().check(z.maxLength(30))),
  railOhmsPerMetre: z.optional(within(0.001, 1)),
  busMetres: z.optional(within(0.1, 200)),
  busSquareMillimetres: z.optional(within(0.05, 10)),
  feederMetres: z.optional(within(0.02, 5)),
  feederSquareMillimetres: z.optional(within(0.05, 4)),
  metresBetweenFeeders: z.optional(within(0.1, 50)),
});

/** The division that somebody has chosen: which sections belong together, and to which stage. */
const district = z.strictObject({
  stage: mark,
  sections: z.array(mark).check(z.minLength(1), z.maxLength(MOST.sections)),
});

export const sheetShape = z.strictObject({
  form: z.literal('both-rails-layout-sheet'),
  version: z.literal(SHEET_FORM),
  name: z.string().check(z.maxLength(MOST.name)),
  scale: z.enum(['z', 'n', 'tt', 'h0', '0', '1']),
  trains: z.array(trains).check(z.maxLength(MOST.trains)),
  /** How many move at once; left out: half of them. */
  moving: z.optional(whole(0, MOST.trains * MOST.count)),
  eveningHours: z.optional(within(0.05, 24)),
  coaches: z.optional(whole(0, 500)),
  lamps: z.optional(z.enum(['filament', 'led'])),
  accessories: z.optional(whole(0, 500)),
  /** Vehicles with stored energy. */
  stored: z.optional(whole(0, MOST.count)),
  /** Whether turnouts and signals have a supply of their own. */
  accessoryBus: z.optional(z.enum(['own', 'track'])),
  sections: z.array(section).check(z.maxLength(MOST.sections)),
  joints: z.array(joint).check(z.maxLength(MOST.joints)),
  stages: z.array(stage).check(z.maxLength(MOST.stages)),
  supplies: z.array(supply).check(z.maxLength(MOST.supplies)),
  wiring: z.optional(wiring),
  districts: z.optional(z.array(district).check(z.maxLength(MOST.stages))),
});

export type Sheet = z.infer<typeof sheetShape>;
export type Section = z.infer<typeof section>;
export type Joint = z.infer<typeof joint>;
export type SheetStage = z.infer<typeof stage>;
export type SheetSupply = z.infer<typeof supply>;
export type SheetTrains = z.infer<typeof trains>;
export type SectionTag = (typeof SECTION_TAGS)[number];
