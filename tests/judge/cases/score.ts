// How well the walk does on reported cases: from what people told, and with every question answered as the true cause would show it.
import type { Tool } from '../../../src/engine/index.ts';
import { signPosterior, signStep } from '../../../src/engine/index.ts';
import type { ComplaintId } from '../../../src/wizards/put-it-right/index.ts';
import { CANNOT, COMPLAINT_IDS } from '../../../src/wizards/put-it-right/index.ts';
import type { Known } from '../../../src/wizards/put-it-right/step.ts';
import { stateOf, walkModelNow } from '../../../src/wizards/put-it-right/step.ts';
import { seeded } from '../../seeded.ts';
import type { ReportedCase } from './cases.ts';
import { mendedBy } from './cases.ts';

/** What was proposed, with the chance that was shown beside it, and whether it would have found or mended the cause. */
export interface Proposal {
  readonly fixClass: string;
  readonly chance: number;
  readonly isRight: boolean;
  /** Not proposed by itself: one of those that stand side by side where the walk hands on. */
  readonly isListed?: boolean;
}

export interface ToldScore {
  readonly id: string;
  readonly first: Proposal;
  /** Place of the likeliest right one from 1, 0 where there is none. */
  readonly place: number;
}

const openingOf = ({ opening }: ReportedCase): ComplaintId =>
  COMPLAINT_IDS.find((id) => id === opening) ?? 'none-of-these';

const answersOf = (said: Readonly<Record<string, string>>) =>
  Object.entries(said).map(([check, option]) => ({ check, option }));

/** What is likeliest once a person has told what they know. */
export function scoreTold(one: ReportedCase): ToldScore {
  const { findings } = signPosterior(
    walkModelNow(),
    stateOf({
      complaint: openingOf(one),
      answers: answersOf(one.taps),
      skipped: [],
      tools: undefined,
      tried: [],
      trusted: new Set(Object.keys(one.taps)),
    }),
  );
  const isRight = (fixClass: string): boolean => mendedBy(one).includes(fixClass);
  const [best] = findings;
  return {
    id: one.id,
    first: {
      fixClass: best?.fixClass ?? '',
      chance: best?.chance ?? 0,
      isRight: isRight(best?.fixClass ?? ''),
    },
    place: 1 + findings.findIndex(({ fixClass }) => isRight(fixClass)),
  };
}

export interface Walked {
  readonly id: string;
  readonly proposals: readonly Proposal[];
  /** Questions after telling until the right proposal or the end; a wrong proposal counts as two. */
  readonly questions: number;
  readonly asked: number;
  /** Of those asked, what could not be checked: no tool, or nobody could say; and what nobody has answered for this case yet. */
  readonly cannot: number;
  readonly unanswered: readonly string[];
  /** Why it handed on, where it did. */
  readonly handedOn: string | undefined;
}

/** A tool is at hand in this share of homes. From memory (judgement). */
const AT_HAND = {
  eyes: 1,
  wire: 0.8,
  coin: 0.95,
  lamps: 0.5,
  'second-locomotive': 0.9,
  'second-supply': 0.35,
  resistor: 0.2,
  multimeter: 0.65,
  'strong-lamp': 0.3,
} as const satisfies Readonly<Record<Tool, number>>;
const ALL_TOOLS: readonly Tool[] = [
  ...([
    'eyes',
    'wire',
    'coin',
    'lamps',
    'second-locomotive',
    'second-supply',
    'resistor',
    'multimeter',
    'strong-lamp',
  ] as const),
];

/** Tools drawn by lot; the same lot gives the same tools. */
export function toolsBy(lot: number): readonly Tool[] {
  const draw = seeded(lot);
  return ALL_TOOLS.filter((tool) => draw() < AT_HAND[tool]);
}

const WRONG_COUNTS = 2;
const MOST_PROPOSALS = 3;
const MOST_STEPS = 60;

/** Walks through a case: each question answered as the true cause would show it, each wrong repair tried in vain. */
export function walkThrough(one: ReportedCase, tools: readonly Tool[]): Walked {
  const known = begun(one, tools);
  const proposals: Proposal[] = [];
  const unanswered: string[] = [];
  let [asked, cannot] = [0, 0];
  let handedOn: string | undefined;
  for (let step = 0; step < MOST_STEPS && proposals.length < MOST_PROPOSALS; step++) {
    const next = signStep(walkModelNow(), stateOf(known));
    if (next.kind === 'hand-on') {
      handedOn = next.because;
      proposals.push(...listed(one, known, MOST_PROPOSALS - proposals.length));
      break;
    }
    if (next.kind === 'fix') {
      const { fixClass, chance } = next;
      const isRight = mendedBy(one).includes(fixClass);
      proposals.push({ fixClass, chance, isRight });
      if (isRight || next.danger !== undefined) break;
      known.tried.push(fixClass);
      continue;
    }
    asked++;
    const option = one.shown[next.check];
    if (option === undefined) unanswered.push(next.check);
    if (!answer(known, next.check, option)) cannot++;
  }
  const wrong = proposals.filter(({ isRight, isListed }) => !(isRight || isListed === true)).length;
  return { id: one.id, proposals, questions: asked + WRONG_COUNTS * wrong, asked, cannot, unanswered, handedOn };
}

/** Whether the check could be answered. */
function answer(known: Begun, check: string, option: string | undefined): boolean {
  if (option === undefined || option === CANNOT) {
    known.skipped.push(check);
    return false;
  }
  known.answers.push({ check, option });
  known.trusted.add(check);
  return true;
}

/** The likeliest of those that are left, as they stand side by side at the end. */
const listed = (one: ReportedCase, known: Known, most: number): Proposal[] =>
  signPosterior(walkModelNow(), stateOf(known))
    .findings.slice(0, most)
    .map(({ fixClass, chance }) => ({ fixClass, chance, isRight: mendedBy(one).includes(fixClass), isListed: true }));

interface Begun extends Known {
  readonly answers: { check: string; option: string }[];
  readonly skipped: string[];
  readonly tried: string[];
  readonly trusted: Set<string>;
}

/** Where a walk stands once the danger question is answered and what is known is told. */
function begun(one: ReportedCase, tools: readonly Tool[]): Begun {
  const danger = one.taps['danger-now'] ?? one.shown['danger-now'] ?? 'none';
  const answers = answersOf({ 'danger-now': danger, ...one.taps });
  return {
    complaint: openingOf(one),
    answers,
    skipped: [],
    tools,
    tried: [],
    trusted: new Set(answers.map(({ check }) => check)),
  };
}

/** The check that is asked next with every tool at hand and nobody has answered yet; undefined where all are answered. */
export const askedNext = (one: ReportedCase): string | undefined => walkThrough(one, ALL_TOOLS).unanswered[0];

/** Share with its 95 % interval (Wilson, JASA 22, 1927; from memory). `right` may be a mean over several walks of one case. */
export interface Share {
  readonly right: number;
  readonly of: number;
  readonly from: number;
  readonly to: number;
}

export function shareOf(right: number, of: number): Share {
  if (of === 0) return { right, of, from: 0, to: 1 };
  const z = 1.96;
  const p = right / of;
  const centre = p + (z * z) / (2 * of);
  const half = z * Math.sqrt((p * (1 - p)) / of + (z * z) / (4 * of * of));
  const whole = 1 + (z * z) / of;
  return { right, of, from: Math.max(0, (centre - half) / whole), to: Math.min(1, (centre + half) / whole) };
}

/** Whether shares shown are honest: so many right within two standard deviations of so many expected. */
export interface Calibration {
  readonly of: number;
  readonly expected: number;
  readonly right: number;
  readonly band: number;
  readonly isWithin: boolean;
}

export function calibrationOf(proposals: readonly Proposal[], least: number): Calibration {
  const counted = proposals.filter(({ chance }) => chance >= least);
  const expected = counted.reduce((sum, { chance }) => sum + chance, 0);
  const band = 2 * Math.sqrt(counted.reduce((sum, { chance }) => sum + chance * (1 - chance), 0));
  const right = counted.filter(({ isRight }) => isRight).length;
  return { of: counted.length, expected, right, band, isWithin: Math.abs(right - expected) <= band };
}

export const medianOf = (numbers: readonly number[]): number => {
  const sorted = [...numbers].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return ((sorted[Math.ceil(half) - 1] ?? 0) + (sorted[Math.floor(half)] ?? 0)) / 2;
};
