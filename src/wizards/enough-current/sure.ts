// How sure the verdict of "Is my power enough?" is, and the one unknown that decides: what nobody has told or measured, apart from what varies.
import type { DistrictLoad, Fleet, Stage, Supply, Unknown, Untold, Verdict } from '../../engine/index.ts';
import {
  atLeast,
  capacity,
  districtLoad,
  judgeInGroups,
  OWN_USE_DOUBT,
  railFromConverter,
  supplyTrip,
  sureness,
  trainCount,
  withAllSound,
} from '../../engine/index.ts';
import type { Answers } from '../planning/index.ts';
import type { Power, Reckoning } from './reckoning.ts';

/** `stop`: not with this supply; `labels-first`: nothing is said before the labels are read; the others: of the trains, tight counting as enough. */
export type VerdictKind = 'stop' | 'labels-first' | 'surely' | 'depends' | 'surely-not';

/** What can decide: what the engine weighs, what nobody has told, and where the rail volts come from. */
export type DecidingId = Unknown | Untold | 'coach-draws' | 'rails' | 'sound' | 'trains' | 'no-trains';

export interface Choice {
  readonly id: string;
  /** Answers that settle it with one tap, to be laid over what was said. */
  readonly answers: Answers;
  readonly verdict: Verdict;
}

export interface Deciding {
  readonly unknown: DecidingId;
  readonly choices: readonly Choice[];
  /** Up to so many lit coaches with filament lamps the power stays enough. */
  readonly holdsTo: number | undefined;
}

export interface HowSure {
  readonly kind: Exclude<VerdictKind, 'stop' | 'labels-first'>;
  readonly deciding: Deciding | undefined;
}

const conversionOf = (answers: Answers, { scale }: Reckoning, { supply }: Power) =>
  isTold(answers, 'unit-rails') ? undefined : railFromConverter(supply, scale);

/** A step-down converter that nobody has spoken of would let this supply trip the unit. */
export function tripDepends(answers: Answers, reckoning: Reckoning, now: Power): boolean {
  const conversion = conversionOf(answers, reckoning, now);
  if (conversion === undefined) return false;
  return supplyTrip(now.supply, { ...reckoning.unit, rails: conversion }).kind !== 'surely-not';
}

/** Whether a field was answered with something known. */
export const isTold = (answers: Answers, id: string): boolean =>
  answers[id] !== undefined && answers[id]?.kind !== 'unknown';

/** Most coaches that are looked for. Source: own-choice. */
const MOST_COACHES = 500;

export function howSure(answers: Answers, reckoning: Reckoning, now: Power): HowSure {
  const { fleet, stage, scale } = reckoning;
  const { supply } = now;
  const untold = (['coaches', 'accessories', 'own-use'] as const).filter((id) => !isTold(answers, id));
  const conversion = conversionOf(answers, reckoning, now);
  const best = bestStage(supply, stage, conversion);
  const bare = answers['own-use']?.kind === 'choice' && answers['own-use'].option === 'bare';
  const finding = sureness({
    fleet,
    capacity: now.capacity,
    atWorst: bare ? capacity(supply, { ...stage, ownUse: stage.ownUse + OWN_USE_DOUBT }) : undefined,
    atBest: best,
    lampsKnown: isTold(answers, 'lamps'),
    loudest: isTold(answers, 'sound') || isMeasured(fleet) ? undefined : withAllSound(fleet, scale),
    untold,
  });
  if (finding.kind === 'surely-not') return { kind: finding.kind, deciding: undefined };
  const example = exampleOf(answers, reckoning, now);
  if (example !== undefined) return { kind: 'depends', deciding: decidingOf(example, answers, reckoning, now) };
  if (finding.kind === 'surely') return { kind: finding.kind, deciding: undefined };
  return { kind: 'depends', deciding: whatDecides(finding, untold, answers, reckoning, now) };
}

/** What a person can tell with one tap comes before what only a meter or a habit would settle, where it does settle it. */
function whatDecides(
  { unknowns }: ReturnType<typeof sureness>,
  [first]: readonly Untold[],
  answers: Answers,
  reckoning: Reckoning,
  now: Power,
): Deciding {
  const { fleet, load } = reckoning;
  const lamps = isTold(answers, 'lamps') ? undefined : decidingOf('coach-lamps', answers, reckoning, now);
  if (unknowns[0]?.unknown === 'coach-lamps' && lamps !== undefined && settles(lamps)) return lamps;
  const soundOpen = !(isTold(answers, 'sound') || isMeasured(fleet));
  const enoughNow = atLeast(judgeInGroups(load, now.capacity).verdict, 'tight');
  const open: DecidingId | undefined = enoughNow ? (first ?? (soundOpen ? 'sound' : undefined)) : undefined;
  const other = unknowns.find(({ unknown }) => unknown !== 'coach-lamps' || lamps === undefined);
  return decidingOf(open ?? other?.unknown ?? 'train-draws', answers, reckoning, now);
}

/** What makes the trains an example, where what was taken of them is enough: which they are, or how many of them move. */
function exampleOf(answers: Answers, { fleet, load }: Reckoning, now: Power): DecidingId | undefined {
  const enoughFor = (of: DistrictLoad): boolean => atLeast(judgeInGroups(of, now.capacity).verdict, 'tight');
  if (!enoughFor(load)) return undefined;
  if (trainCount(fleet) === 0) return 'no-trains';
  const untold = (id: string): boolean => answers[id]?.kind === 'unknown';
  if (isMeasured(fleet) ? untold('trains') : untold('modern') || untold('older')) return 'trains';
  if (isTold(answers, 'moving')) return undefined;
  return enoughFor(districtLoad({ ...fleet, moving: trainCount(fleet) })) ? undefined : 'how-many-move';
}

const isMeasured = ({ trains }: Fleet): boolean => trains.every(({ kind }) => kind === 'measured');

/** Whether one of its answers is enough. */
const settles = ({ choices }: Deciding): boolean => choices.some(({ verdict }) => atLeast(verdict, 'tight'));

/** With the best rectifier, or a converter that nobody has spoken of; undefined where neither can be. */
function bestStage(supply: Supply, stage: Stage, conversion: Stage['rails'] | undefined) {
  if (conversion !== undefined) return capacity(supply, { ...stage, rails: conversion });
  const { atBest, moment } = capacity(supply, stage);
  return atBest === undefined ? undefined : { ...atBest, ...(moment === undefined ? {} : { moment }) };
}

/** The answers that settle it, and what each comes to. */
function decidingOf(unknown: DecidingId, answers: Answers, reckoning: Reckoning, now: Power): Deciding {
  const { fleet } = reckoning;
  const verdictOf = (other: Fleet): Verdict => judgeInGroups(districtLoad(other), now.capacity).verdict;
  const choice = (id: string, told: Answers, other: Fleet): Choice => ({
    id,
    answers: told,
    verdict: verdictOf(other),
  });
  switch (unknown) {
    case 'coach-lamps':
      if (isTold(answers, 'lamps')) return { unknown: 'coach-draws', choices: [], holdsTo: undefined };
      return {
        unknown,
        choices: (['led', 'filament'] as const).map((lamps) =>
          choice(lamps, { lamps: { kind: 'choice', option: lamps } }, { ...fleet, lamps }),
        ),
        holdsTo: undefined,
      };
    case 'coaches':
      return {
        unknown,
        choices: [choice('none', { coaches: NONE }, { ...fleet, coaches: 0 })],
        holdsTo: mostCoaches(fleet, verdictOf),
      };
    case 'accessories':
      return {
        unknown,
        choices: [choice('none', { accessories: NONE }, { ...fleet, accessories: 0 })],
        holdsTo: undefined,
      };
    case 'sound':
      return { unknown, choices: [choice('none', { sound: NONE, stored: NONE }, fleet)], holdsTo: undefined };
    case 'own-use':
      if (isTold(answers, 'own-use')) return { unknown, choices: [], holdsTo: undefined };
      return {
        unknown,
        choices: [choice('bare', { 'own-use': { kind: 'choice', option: 'bare' } }, fleet)],
        holdsTo: undefined,
      };
    default:
      return { unknown, choices: [], holdsTo: undefined };
  }
}

const NONE = { kind: 'number', span: { from: 0, to: 0 } } as const;

/** The most lit coaches with filament lamps with which it is still enough. */
function mostCoaches(fleet: Fleet, verdictOf: (fleet: Fleet) => Verdict): number {
  let [passing, failing] = [0, MOST_COACHES + 1];
  while (failing - passing > 1) {
    const between = Math.floor((passing + failing) / 2);
    if (atLeast(verdictOf({ ...fleet, coaches: between, lamps: 'filament' }), 'tight')) passing = between;
    else failing = between;
  }
  return passing;
}
