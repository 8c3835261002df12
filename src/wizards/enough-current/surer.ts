// Which further question would change the answer to "Is my power enough?" how likely: the verdict, what comes before it, or what is bought.
// Each is answered as people may, and the answer worked out anew.
import { middle, SCALE_RANGE } from '../../engine/index.ts';
import type { Answer, Answers, QuestionId } from '../planning/index.ts';
import { Reader } from '../planning/index.ts';
import type { Power } from './reckoning.ts';
import { reckon } from './reckoning.ts';
import type { Conclusion } from './result.ts';
import { answerBefore, isOpenToDistricts } from './result.ts';

/** Chances below this are not worth a word. Source: own-choice. */
const SELDOM = 0.005;
/** From these chances on an answer is likely to change something, and may well. Source: from-memory (judgement). */
const LIKELY = 0.3;
const PERHAPS = 0.1;

export interface Likely {
  readonly question: QuestionId;
  /** How likely its answer changes the verdict or the purchase, 0 to 1. */
  readonly chance: number;
}

interface Case {
  readonly answers: Answers;
  readonly weight: number;
}

/** The questions that are `left`, the one that is likeliest to change something first. */
export function surerOf(answers: Answers, left: readonly QuestionId[]): Likely[] {
  const now = signOf(answers);
  const chanceOf = (question: QuestionId): number =>
    casesOf(question, answers).reduce(
      (sum, { answers: told, weight }) => sum + (signOf({ ...answers, ...told }) === now ? 0 : weight),
      0,
    );
  return left
    .map(
      (question): Likely => ({
        question,
        chance: question === 'divided' ? chanceDivided(answers) : chanceOf(question),
      }),
    )
    .sort((a, b) => b.chance - a.chance);
}

/**
 * From so many trains on, the chance that the layout is divided already, and below it: nobody has counted layouts. It only orders the
 * questions. Source: from-memory.
 */
const CLUB = { trains: 12, divided: 0.6, otherwise: 0.03 } as const;
function chanceDivided(answers: Answers): number {
  const reckoning = reckon(answers);
  if (!isOpenToDistricts(answerBefore(answers, reckoning))) return 0;
  return reckoning.trains >= CLUB.trains ? CLUB.divided : CLUB.otherwise;
}

/** What one would notice: the outcome without looking through all remedies, and how much too much it is, in units. */
function signOf(answers: Answers): string {
  const reckoning = reckon(answers);
  const { power: now, summary } = reckoning;
  const before = answerBefore(answers, reckoning);
  const gate = [before?.outcome, before?.toBuy?.amps];
  if (before !== undefined && !saysTrains(before, now)) return gate.join();
  const verdict = now?.judgement.verdict ?? 'unknown';
  const units = verdict === 'short' ? Math.ceil(summary.p95 / Math.max(now?.capacity.usable ?? 1, 0.1)) : 0;
  const reader = new Reader(answers);
  const shorts = before === undefined && verdict !== 'short' && reader.option('aim') === 'shorts';
  const boosters = verdict === 'short' ? (reader.number('boosters') ?? 0) : 0;
  return [...gate, verdict, units, shorts, boosters].join();
}

/** Whether anything is said of the trains beside what comes before them: not on a stop, before the labels are read, or on rails that may stand too high. */
const saysTrains = ({ kind }: Conclusion, now: Power | undefined): boolean =>
  kind !== 'stop' && kind !== 'labels-first' && now?.rails.tooHigh === 'no';

const count = (value: number): Answer => ({ kind: 'number', span: { from: value, to: value } });
const choice = (option: string): Answer => ({ kind: 'choice', option });

/** What people answer, and how many of them. Source: from-memory. */
function casesOf(question: QuestionId, answers: Answers): Case[] {
  const scale = new Reader(answers).scale();
  const { fleet } = reckon(answers);
  const trains = fleet.trains.reduce((sum, group) => sum + group.count, 0);
  switch (question) {
    case 'coaches':
      return [
        { answers: { coaches: count(0) }, weight: 0.45 },
        ...([4, 10, 25] as const).flatMap((coaches, i) =>
          (['led', 'filament'] as const).map((lamps) => ({
            answers: { coaches: count(coaches), lamps: choice(lamps) },
            weight: [0.14, 0.1, 0.035][i] ?? 0,
          })),
        ),
      ];
    case 'sound':
      return [0, 0.5, 1].map((part, i) => ({
        answers: { sound: count(Math.round(part * trains)), stored: count(Math.round((part * trains) / 2)) },
        weight: [0.4, 0.35, 0.25][i] ?? 0,
      }));
    case 'accessories':
      return [0, 8, 30].map((pieces, i) => ({
        answers: { accessories: count(pieces) },
        weight: [0.5, 0.3, 0.2][i] ?? 0,
      }));
    case 'rails':
      return ['follows', 'set', 'converter'].map((kind, i) => ({
        answers: { 'unit-rails': choice(kind), 'unit-rail-volts': count(middle(SCALE_RANGE[scale])) },
        weight: [0.45, 0.4, 0.15][i] ?? 0,
      }));
    case 'own-use':
      return ['bare', 'handhelds', 'many'].map((kind, i) => ({
        answers: { 'own-use': choice(kind) },
        weight: [0.5, 0.35, 0.15][i] ?? 0,
      }));
    case 'draw':
      return measuredCases(fleet, trains);
    case 'boosters':
      return [0, 1].map((pieces, i) => ({ answers: { boosters: count(pieces) }, weight: [0.85, 0.15][i] ?? 0 }));
    case 'aim':
      return ['enough', 'shorts'].map((aim, i) => ({ answers: { aim: choice(aim) }, weight: [0.85, 0.15][i] ?? 0 }));
    default:
      return [];
  }
}

/** Trains that turn out to draw what the lower or the upper half of their usual range says. */
function measuredCases({ trains: groups }: ReturnType<typeof reckon>['fleet'], trains: number): Case[] {
  const [first] = groups;
  if (first === undefined || first.kind === 'measured') return [];
  const { from, to } = first.running;
  const half = middle(first.running);
  return [
    { from, to: half },
    { from: half, to },
  ].map((span) => ({
    answers: {
      draw: choice('measured'),
      trains: count(trains),
      running: { kind: 'number', span },
      standing: count(first.standing),
    },
    weight: 0.5,
  }));
}

/** A chance of a change, 0 to 1, in words: it is from memory, and a percentage would look closer than it is. */
export function howLikely(chance: number): 'likely' | 'perhaps' | 'seldom' | 'hardly' {
  if (chance >= LIKELY) return 'likely';
  if (chance >= PERHAPS) return 'perhaps';
  return chance >= SELDOM ? 'seldom' : 'hardly';
}
