// The report on the reported cases: what `npm run judge` writes to docs/judged.json, for the site, and to docs/judged.md, for people.
import { createHash } from 'node:crypto';
import { SIGN_MODEL } from '../../../src/wizards/put-it-right/index.ts';
import { walkModelNow } from '../../../src/wizards/put-it-right/step.ts';
import type { OnTable, TableFigures } from '../on-table.ts';
import { onTable } from '../on-table.ts';
import type { ReportedCase } from './cases.ts';
import { mendedBy, REPORTED_CASES, SCORED } from './cases.ts';
import type { Calibration, Share, ToldScore, Walked } from './score.ts';
import { calibrationOf, medianOf, scoreTold, shareOf, toolsBy, walkThrough } from './score.ts';

/** So many lots of tools are drawn for each case. */
const LOTS = 3;
const THREE = 3;
/** Shares from here on are called likely. */
const SURE = 0.7;

export interface JudgedCase {
  readonly id: string;
  /** Fix classes that would have found or mended it. */
  readonly accepts: readonly string[];
  /** What was proposed first from what was told, its share, and the place of the right one, 0 where it has none. */
  readonly told: string;
  readonly chance: number;
  readonly place: number;
  /** Share of the walks whose first proposal was right, and in which one of three was. */
  readonly first: number;
  readonly three: number;
  /** What the first walk proposed; in brackets what stood side by side at its end. */
  readonly proposed: readonly string[];
  /** Checks that a walk asked for and nobody has answered. */
  readonly unanswered: readonly string[];
}

export interface JudgedPart {
  readonly cases: number;
  readonly told: { readonly first: Share; readonly three: Share };
  /** First: proposed by the walk itself. Listed: not, but the first of those that stand side by side at its end. Three: either, among three. */
  readonly answered: { readonly first: Share; readonly listed: Share; readonly three: Share };
  /** In the median: asked after telling, a wrong proposal as two; and of those asked, answered. */
  readonly questions: number;
  readonly answeredQuestions: number;
  /** Of the questions asked, those that could not be checked; and those of them that nobody has answered for the case. */
  readonly cannot: number;
  readonly unanswered: number;
  readonly toldCalibration: { readonly all: Calibration; readonly sure: Calibration };
  readonly walkCalibration: { readonly all: Calibration; readonly sure: Calibration };
  readonly each: readonly JudgedCase[];
}

/**
 * The model of before, on the 36 cases set aside, in the moment they were opened: the only figures on cases that nobody who made a model had
 * seen. `sure`: first proposals of walks with a share of 70 % or more.
 */
const OPENED = {
  model: '988aada9088c987a',
  cases: 36,
  told: { first: 14, three: 19 },
  answered: { first: 16, three: 26 },
  questions: 9.5,
  sure: { right: 43, of: 68, expected: 57.5 },
} as const;

export interface Judged {
  readonly opened: typeof OPENED;
  /** Of model and settings, and of the cases: a report counts for these only. */
  readonly model: string;
  readonly cases: string;
  readonly causes: number;
  readonly checks: number;
  readonly parts: { readonly work: JudgedPart; readonly 'set-aside'?: JudgedPart };
  /** Faults put into the virtual layout. */
  readonly table: OnTable;
}

const shortHash = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 16);

/** Changes with every word of the model and every setting of the walk. */
export const modelHash = (): string => shortHash(JSON.stringify([SIGN_MODEL, walkModelNow().settings]));
export const casesHash = (): string => shortHash(JSON.stringify(REPORTED_CASES));

export function judge(): Judged {
  const of = (set: ReportedCase['set']): readonly ReportedCase[] => SCORED.filter((one) => one.set === set);
  const aside = of('set-aside');
  return {
    opened: OPENED,
    model: modelHash(),
    cases: casesHash(),
    causes: SIGN_MODEL.causes.length,
    checks: SIGN_MODEL.checks.length,
    parts: { work: judgedPart(of('work')), ...(aside.length > 0 ? { 'set-aside': judgedPart(aside) } : {}) },
    table: onTable(),
  };
}

const share = <Item>(items: readonly Item[], holds: (item: Item) => boolean): number =>
  items.filter(holds).length / Math.max(1, items.length);
const rounded = (number: number): number => Math.round(1000 * number) / 1000;

const isFirstRight = ({ proposals }: Walked): boolean =>
  proposals[0]?.isRight === true && proposals[0].isListed !== true;
const isListedFirst = ({ proposals }: Walked): boolean =>
  proposals[0]?.isRight === true && proposals[0].isListed === true;
const isFound = ({ proposals }: Walked): boolean => proposals.some(({ isRight }) => isRight);

interface Scored {
  readonly one: ReportedCase;
  readonly told: ToldScore;
  readonly walks: readonly Walked[];
}

export const scored = (one: ReportedCase, at: number): Scored => ({
  one,
  told: scoreTold(one),
  walks: Array.from({ length: LOTS }, (_, lot) => walkThrough(one, toolsBy(1 + at * LOTS + lot))),
});

function judgedPart(cases: readonly ReportedCase[]): JudgedPart {
  const all = cases.map(scored);
  const walks = all.flatMap((one) => one.walks);
  const sum = (number: (one: Scored) => number): number => rounded(all.reduce((total, one) => total + number(one), 0));
  const asked = walks.reduce((total, one) => total + one.asked, 0);
  const firstTold = all.map(({ told }) => told.first);
  const firstWalked = walks.flatMap(({ proposals }) =>
    proposals.slice(0, 1).filter(({ isListed }) => isListed !== true),
  );
  return {
    cases: cases.length,
    told: {
      first: shareOf(
        sum(({ told }) => (told.place === 1 ? 1 : 0)),
        cases.length,
      ),
      three: shareOf(
        sum(({ told }) => (told.place >= 1 && told.place <= THREE ? 1 : 0)),
        cases.length,
      ),
    },
    answered: {
      first: shareOf(
        sum((one) => share(one.walks, isFirstRight)),
        cases.length,
      ),
      listed: shareOf(
        sum((one) => share(one.walks, isListedFirst)),
        cases.length,
      ),
      three: shareOf(
        sum((one) => share(one.walks, isFound)),
        cases.length,
      ),
    },
    questions: medianOf(walks.map(({ questions }) => questions)),
    answeredQuestions: medianOf(walks.map((one) => one.asked - one.cannot)),
    cannot: rounded(walks.reduce((total, one) => total + one.cannot, 0) / Math.max(1, asked)),
    unanswered: rounded(walks.reduce((total, one) => total + one.unanswered.length, 0) / Math.max(1, asked)),
    toldCalibration: { all: calibrationOf(firstTold, 0), sure: calibrationOf(firstTold, SURE) },
    walkCalibration: { all: calibrationOf(firstWalked, 0), sure: calibrationOf(firstWalked, SURE) },
    each: all.map(judgedCase),
  };
}

const judgedCase = ({ one, told, walks }: Scored): JudgedCase => ({
  id: one.id,
  accepts: mendedBy(one),
  told: told.first.fixClass,
  chance: rounded(told.first.chance),
  place: told.place,
  first: rounded(share(walks, isFirstRight)),
  three: rounded(share(walks, isFound)),
  proposed: walks[0]?.proposals.map(({ fixClass, isListed }) => (isListed === true ? `(${fixClass})` : fixClass)) ?? [],
  unanswered: [...new Set(walks.flatMap((walk) => walk.unanswered))],
});

const percent = (number: number): string => `${Math.round(100 * number)} %`;
const shareText = ({ right, of, from, to }: Share): string =>
  `${percent(right / of)} (${Math.round(10 * right) / 10} of ${of}; ${percent(from)} to ${percent(to)})`;
const calibrationText = ({ of, expected, right, band, isWithin }: Calibration): string =>
  of === 0
    ? 'none'
    : `${right} of ${of} right, ${expected.toFixed(1)} ± ${band.toFixed(1)} expected: ${isWithin ? 'within' : 'OUTSIDE'}`;

/** The same for people. */
export function reportOf({ model, cases, causes, checks, parts, table }: Judged): string {
  return [
    '# How well the walk does on reported cases',
    '',
    'Written by `npm run judge`; do not edit. The cases and how they were prepared: `tests/judge/cases`. Intervals are of 95 % (Wilson).',
    '',
    `Model ${model} (${causes} causes, ${checks} checks), cases ${cases}.`,
    ...partText('Cases to work with', parts.work),
    ...(parts['set-aside'] === undefined
      ? ['', 'The cases that were set aside are not among them yet.']
      : [
          ...partText('Cases once set aside, opened before this model was made', parts['set-aside']),
          ...behindText(parts.work, parts['set-aside']),
        ]),
    ...tableText(table),
    '',
  ].join('\n');
}

/** What the virtual layout says, which is made by whoever made the model. */
function tableText({ right, wrong }: OnTable): string[] {
  const row = (name: string, aim: string, of: (figures: TableFigures) => string): string =>
    `| ${name} | ${[right.meter, right.bare, wrong.meter, wrong.bare].map(of).join(' | ')} | ${aim} |`;
  const part = (count: (figures: TableFigures) => number) => (figures: TableFigures) =>
    shareText(shareOf(count(figures), figures.walks));
  return [
    '',
    '## Faults put into the virtual layout',
    '',
    'A check of consistency, not of truth: whoever made the model made the layout too. Faults that its circuit can express, in five layouts each (three where people slip); units that latch, try again or blink; one title in three fits in half only; what comes and goes is away at times. With slips one answer in ten is wrong, whatever is asked, except what is dangerous now.',
    '',
    '| | with a multimeter | without | slips, with a multimeter | slips, without | aimed at (slips) |',
    '| --- | --- | --- | --- | --- | --- |',
    row('walks', '', ({ walks }) => String(walks)),
    row(
      'found in the end',
      '95 %',
      part(({ found }) => found),
    ),
    row(
      'among three proposals',
      '95 % (90 %)',
      part(({ three }) => three),
    ),
    row(
      'the first proposal',
      '',
      part(({ first }) => first),
    ),
    row('the first proposal, as people meet the causes', '', ({ met }) => percent(met)),
    row('questions, median', '', ({ questions }) => (questions === null ? '–' : String(questions))),
    '',
    'Tried, each once with model b6425967ea69e984, on the first proposal (85 and 85 % with a meter and without), among three (95 and 94 %) and the median of questions (7 and 8): rows believed without doubt, 85 and 86 %, 95 and 94 %, 7 and 8; answers thought wrong a third as often, 85 and 86 %, 94 and 94 %, 8 and 8; proposing later (cheap ones from 50 %, work from 80, dear ones from 90), 85 and 87 %, 94 and 93 %, 9 and 10. No setting lifts it by more than chance, so they stay. What is not first in the layout is mostly what its circuit shows alike: a gap closed by heat and a second path, a turnout that routes power and a bad joiner, a protection set wrong and whatever it passes.',
  ];
}

/** What the figures of cases that were opened are worth, and what else bears on them. */
function behindText(work: JudgedPart, aside: JudgedPart): string[] {
  const cases = SCORED.filter(({ set }) => set === 'set-aside');
  const { told, answered, sure } = OPENED;
  const of = (right: number): string => shareText(shareOf(right, OPENED.cases));
  const byReaders = SCORED.map((one) => ({ ...one, written: [] }));
  const part = (set: ReportedCase['set']) => byReaders.filter((one) => one.set === set);
  return [
    '',
    '## What this says',
    '',
    'No case here is unseen any more. Whoever made this model had read them all, so both parts flatter it; only cases that nobody has seen can say how well it does.',
    '',
    `When the cases set aside were opened, unseen, the model of then (${OPENED.model}) had: told, first ${of(told.first)}, among three ${of(told.three)}; everything answered, first ${of(answered.first)}, within three ${of(answered.three)}. Of shares of 70 % or more in walks ${sure.right} of ${sure.of} were right where ${sure.expected} were expected. On the same cases this model has: told, first ${shareText(aside.told.first)}, among three ${shareText(aside.told.three)}; everything answered, first ${shareText(aside.answered.first)}, within three ${shareText(aside.answered.three)}; ${aside.walkCalibration.sure.right} of ${aside.walkCalibration.sure.of} right where ${aside.walkCalibration.sure.expected.toFixed(1)} were expected.`,
    '',
    `Fix pages that came after a case was opened count for it by the word of whoever wrote them (\`written\`). By the pages that blind readers judged alone, from what was told: worked with, ${toldText(part('work'))}; set aside, ${toldText(part('set-aside'))} (all pages: ${shareText(work.told.first)} and ${shareText(aside.told.first)}). Without those that tell the trouble of a case worked with once more (\`again\`): ${toldText(cases.filter(({ again }) => again === undefined))}.`,
    '',
    agreementText(cases),
  ];
}

function toldText(cases: readonly ReportedCase[]): string {
  const places = cases.map((one) => scoreTold(one).place);
  const within = (most: number): Share =>
    shareOf(places.filter((place) => place >= 1 && place <= most).length, places.length);
  return `first ${shareText(within(1))}, among three ${shareText(within(THREE))}`;
}

/** How far two blind readers agree on what was told, and how the second reader's answers score. */
function agreementText(cases: readonly ReportedCase[]): string {
  const pairs = cases.map(({ taps, tapsOfAnother = {} }) => ({ taps, other: tapsOfAnother }));
  const alike = pairs.flatMap(({ taps, other }) => Object.entries(taps).filter(([check, tap]) => other[check] === tap));
  const either = pairs.flatMap(({ taps, other }) => Object.keys({ ...taps, ...other }));
  const second = cases.map((one) => ({ ...one, taps: one.tapsOfAnother ?? one.taps }));
  return `Two blind readers chose the same title for each of these cases; of ${either.length} answers that either tapped, both tapped ${alike.length} alike. By the second reader: ${toldText(second)}.`;
}

function partText(title: string, part: JudgedPart): string[] {
  const missed = part.each.filter(({ place, first }) => place !== 1 || first < 1);
  return [
    '',
    `## ${title}: ${part.cases}`,
    '',
    '| | right | aimed at |',
    '| --- | --- | --- |',
    `| from what was told, first | ${shareText(part.told.first)} | 70 % |`,
    `| from what was told, among three | ${shareText(part.told.three)} | 88 % |`,
    `| everything answered, first proposal | ${shareText(part.answered.first)} | 85 % |`,
    `| not proposed, but first of those left at the end | ${shareText(part.answered.listed)} | |`,
    `| everything answered, within three proposals or left | ${shareText(part.answered.three)} | 95 % |`,
    `| questions after telling, median (answered) | ${part.questions} (${part.answeredQuestions}) | 6 |`,
    `| of them “cannot check” (not answered for the case) | ${percent(part.cannot)} (${percent(part.unanswered)}) | |`,
    '',
    `Shares from what was told: all, ${calibrationText(part.toldCalibration.all)}; of those at 70 % or more, ${calibrationText(part.toldCalibration.sure)}.`,
    `Shares of the first proposals of walks: all, ${calibrationText(part.walkCalibration.all)}; of those at 70 % or more, ${calibrationText(part.walkCalibration.sure)}.`,
    '',
    '| not first everywhere | right | told: first, place of the right one | walks: first, within three | proposed |',
    '| --- | --- | --- | --- | --- |',
    ...missed.map(
      (one) =>
        `| ${one.id} | ${one.accepts.join(', ') || 'no page'} | ${one.told} ${percent(one.chance)}, ${one.place || '–'} | ${percent(one.first)}, ${percent(one.three)} | ${one.proposed.join(', ') || 'nothing'} |`,
    ),
  ];
}
