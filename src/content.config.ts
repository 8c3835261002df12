// One schema per kind of word. Words are YAML, Markdown or MDX only: no formulas, no branching.
import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import { z } from 'astro/zod';
import { CHECK_KINDS } from './engine/index.ts';
import { PATH_IDS } from './layouts/course.ts';
import { FIGURE_IDS } from './layouts/figures.ts';
import { WIZARD_IDS } from './wizards/index.ts';
import { ACTS, HAND_ACTS, JOBS } from './wizards/safety/index.ts';

const text = z.string().min(1);

/** A step of a fix. What its acts bring stands inside it as cautions (src/wizards/safety/dangers.ts). */
const step = z.strictObject({
  do: text,
  more: text.optional(),
  acts: z.array(z.enum(ACTS)).default([]).describe('What the person does here that can hurt or break something'),
  cautions: z.array(z.string()).default([]).describe('Cautions that no act brings'),
  job: z.enum(JOBS).optional().describe('A fix page that this step sends to: a job with its own steps and cautions'),
});

/** A fix page: one concrete thing to do, its cautions at the step, how to verify, what next if not. */
const fixes = defineCollection({
  loader: glob({ pattern: '*/fixes/*.mdx', base: './src/content' }),
  schema: z.strictObject({
    title: text.describe('The finding or the remedy as a short sentence; page title'),
    lead: text.describe('The fix in one or two sentences'),
    short: text.describe('Name in a list of remedies, a few words'),
    because: text.describe('Why this is the answer, or why it shows like this'),
    needs: text.describe('Parts and tools by kind, never by make'),
    without: text.optional().describe('A way without those tools, or why there is none'),
    effort: text.describe('How much work: "exchange one plug", "a weekend, two gaps"'),
    steps: z.array(step).min(1),
    urgent: z.boolean().default(false).describe('The first act may not wait: nothing stands before it'),
    verify: text.describe('How you know it worked'),
    next: text.describe('What to do if that did not help'),
    drawing: z.string().optional().describe('Id of a drawing in components/drawings'),
    says: z.array(text).default([]).describe('What people say who need this page: for the search'),
    sources: z.array(z.string()).default([]),
  }),
});

/** One of the answers that a lesson offers: exactly one of them is right. */
const option = z.strictObject({
  says: text,
  right: z.boolean().default(false),
  because: text.describe('Why it is so, or why whoever thinks so is mistaken'),
});

/** How a figure is set up: what stands after the question mark of its address, `moving=5&supply=2`. */
const setting = z.string().regex(/^[a-z0-9-]+=[a-z0-9.,-]+(?:&[a-z0-9-]+=[a-z0-9.,-]+)*$/);

/** Something to try, and how the figure stands as it begins. */
const tried = z.strictObject({ do: text, set: setting });

/** A question of a lesson: written with its answers, or of a kind that the engine gives new numbers each time. */
const checkQuestion = z.union([
  z.strictObject({ question: text, options: z.array(option).min(3).max(4) }),
  z.strictObject({ computed: z.enum(CHECK_KINDS) }),
]);

/** A lesson of the course. Its minutes are counted from its words; what the body holds is tested by tests/content/lessons.test.ts. */
const lessons = defineCollection({
  loader: glob({ pattern: '*/lessons/*.mdx', base: './src/content' }),
  schema: z.strictObject({
    title: text,
    point: text.describe('What it comes to, in two sentences'),
    order: z
      .int()
      .positive()
      .describe('Its place in the course; the next one is the lesson with the next higher number'),
    paths: z.array(z.enum(PATH_IDS)).min(1).describe('What people want who should read it'),
    figure: z.enum(FIGURE_IDS).describe('Its live figure: an id of src/layouts/figures.ts'),
    begins: setting.optional().describe('How its figure is set up as the page opens'),
    tries: z.array(tried).min(1).max(5).describe('What to try in the figure, each with the setting it begins from'),
    prediction: z.strictObject({
      question: text.describe('What will happen when … ?'),
      options: z.array(option).min(2).max(4),
      run: tried.describe('How to see it in the figure'),
    }),
    acts: z
      .array(z.enum(ACTS))
      .default([])
      .describe('What the text has people do; what each brings stands as a caution in the body'),
    cautions: z.array(z.string()).default([]).describe('Cautions in the body that no act brings'),
    check: z.array(checkQuestion).length(3),
    says: z.array(text).default([]),
    sources: z.array(z.string()).min(1),
    next: z
      .array(
        z.union([
          z.strictObject({ wizard: z.enum(WIZARD_IDS) }),
          z.strictObject({ fix: text }),
          z.strictObject({ complaint: text }),
          z.strictObject({ page: z.enum(['put-it-right', 'work-it-out']) }),
        ]),
      )
      .min(1)
      .describe('Where the work begins; the next lesson stands beside it by itself'),
  }),
});

/** The words of one question; options and fields are named by the ids of src/wizards/questions.ts. */
const questions = defineCollection({
  loader: glob({ pattern: '*/questions/*.yaml', base: './src/content' }),
  schema: z.strictObject({
    title: text.describe('The question itself: the heading of its page'),
    why: text.describe('Why it is asked'),
    terms: z.array(z.string()).default([]).describe('Ids of glossary entries whose words it uses'),
    fields: z.record(
      z.string(),
      z.strictObject({
        label: text,
        hint: text.optional(),
        known: text.describe('The name in the line of what is already known'),
        unknown: text.describe('The words for "I don\'t know" here'),
        options: z.record(z.string(), z.strictObject({ label: text, hint: text.optional() })).optional(),
      }),
    ),
  }),
});

/** The words of one check of the troubleshooting walk; ids and options are those of src/wizards/put-it-right/model/checks. */
const checks = defineCollection({
  loader: glob({ pattern: '*/checks/*.yaml', base: './src/content' }),
  schema: z.strictObject({
    title: text.describe('The question itself'),
    known: text.describe('The name in the list of what is already known'),
    why: text.describe('What the answer tells apart'),
    how: z.array(text).describe('What to do, step by step; empty where it is only looking'),
    acts: z
      .array(z.enum(HAND_ACTS))
      .default([])
      .describe('Acts of the hand; those with the power are in put-it-right/model/acts.ts'),
    cautions: z.array(z.string()).default([]).describe('Cautions that no act brings'),
    options: z.record(
      z.string(),
      z.strictObject({
        label: text,
        hint: text.optional(),
        says: z.array(text).min(1).max(60).describe('What people say who have seen this, in their own words'),
      }),
    ),
    picture: z.string().optional().describe('Id of a picture in components/check-picture/CheckPicture'),
  }),
});

/** What a person comes with: the entry of a troubleshooting walk. */
const complaints = defineCollection({
  loader: glob({ pattern: '*/complaints/*.yaml', base: './src/content' }),
  schema: z.strictObject({
    title: text.describe("The complaint in the person's own words"),
    lead: text,
    first: text.describe('What to do right now'),
    says: z.array(text).default([]).describe('Other ways to say it: for the search'),
  }),
});

/** Cautions: the harm first, then what to do. Acts bring them; how bad each is says src/wizards/safety/dangers.ts. */
const cautions = defineCollection({
  loader: glob({ pattern: '*/cautions/*.yaml', base: './src/content' }),
  schema: z.strictObject({
    harm: text,
    do: text,
    line: text.optional().describe('Harm and act in one line, for what was told in full above: damage only'),
    before: text.optional().describe('What it asks for a whole page, as an act: the list before the first step'),
  }),
});

const glossary = defineCollection({
  loader: glob({ pattern: '*/glossary/*.yaml', base: './src/content' }),
  schema: z.strictObject({
    term: text,
    means: text,
    also: z.array(text).default([]).describe('Other words people use for it'),
    standard: z.enum(['standard', 'trade', 'ours']).describe('Where the term comes from'),
    order: z.string().optional(),
    forms: z
      .array(text)
      .optional()
      .describe(
        'How it stands in a text, where it opens in place; term and plural if left out, none where the word means more',
      ),
  }),
});

/** Every source the engine and the pages cite. */
const sources = defineCollection({
  loader: glob({ pattern: '*/sources/*.yaml', base: './src/content' }),
  schema: z.strictObject({
    title: text,
    kind: z.enum(['standard', 'handbook', 'paper', 'club', 'practice', 'memory', 'derived', 'choice']),
    address: z
      .url()
      .optional()
      .describe('None where others cannot reach it, or where it is a copy that nobody may have allowed'),
    says: text.describe('What is taken from it, and how it was read where nothing is linked'),
    sure: z.enum(['high', 'medium', 'low', 'usual', 'memory', 'checked', 'chosen']),
  }),
});

/** Short texts of pages, figures and answers, with {placeholders}: one file a room, read whole (src/layouts/rooms.ts). */
const words = defineCollection({
  loader: glob({ pattern: '*/words/*.yaml', base: './src/content' }),
  schema: z.record(z.string(), text),
});

/** What people say in languages that the site may have no pages in: phrases/<language>/<kind>.yaml. Of checks by check/option. */
const phrases = defineCollection({
  loader: glob({
    pattern: 'phrases/*/{fixes,lessons,complaints,checks,wizards,pages,glossary}.yaml',
    base: './src/content',
  }),
  schema: z.record(z.string(), z.array(text).min(1)),
});

/** Words that tell a danger, by check/option: of each line one word of every group stands near the next (src/wizards/hearing/danger.ts). */
const dangers = defineCollection({
  loader: glob({ pattern: 'phrases/*/dangers.yaml', base: './src/content' }),
  schema: z.record(z.string(), z.array(z.array(text).min(1)).min(1)),
});

/** Words of all languages that mean the same in the search: a meaning, and the words that have it, parted by commas. */
const same = defineCollection({
  loader: glob({ pattern: 'same.yaml', base: './src/content' }),
  schema: z.record(z.string(), text),
});

/** What changed, for the feed: real dates of what is in the history. */
const changes = defineCollection({
  loader: glob({ pattern: '*/changes/*.yaml', base: './src/content' }),
  schema: z.strictObject({
    date: z.iso.date(),
    title: text,
    says: text.describe('What it brings, in one or two sentences'),
    leads: z
      .string()
      .regex(/^(?:[a-z0-9-]+\/)*$/)
      .describe('The page to begin with, below its language'),
  }),
});

export const collections = {
  changes,
  fixes,
  lessons,
  questions,
  checks,
  complaints,
  cautions,
  glossary,
  sources,
  words,
  phrases,
  dangers,
  same,
};
