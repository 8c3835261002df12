// What "Is my power enough?" concludes from what was reckoned: what to do. It may come a moment later.
import type { Judgement, OnceQuiet, Remedy, Supply } from '../../engine/index.ts';
import {
  allParked,
  atLeast,
  capacity,
  chosenOf,
  DRAWS,
  isAboveUsual,
  judgeInGroups,
  largestMoving,
  moreTrains,
  OWN_USE_DOUBT,
  onceQuiet,
  remedies,
  supplyFor,
  tightBeside,
} from '../../engine/index.ts';
import type { Answers, ReadFirst } from '../planning/index.ts';
import { LEAST_LIMIT, Reader, readFirst } from '../planning/index.ts';
import type { Divided } from './divided.ts';
import { dividedOf, outcomeOf } from './divided.ts';
import type { EnoughCurrentOutcome } from './outcomes.ts';
import type { Power, Reckoning } from './reckoning.ts';
import { reckon, wishOf } from './reckoning.ts';
import type { Deciding, VerdictKind } from './sure.ts';
import { howSure, isTold, tripDepends } from './sure.ts';

interface MayMove {
  readonly enough: number;
  readonly tight: number;
  readonly alone: number;
  readonly aloneEnough: number;
}

export interface Conclusion {
  readonly outcome: EnoughCurrentOutcome;
  /** How sure: a tight verdict counts as enough. */
  readonly kind: VerdictKind;
  /** The one unknown that decides, where it depends, and the answers that settle it. */
  readonly deciding: Deciding | undefined;
  /** What would help besides, by money, then time; on a supply that trips its unit. None on a stop, and none while a label is not read. */
  readonly remedies: readonly Remedy[];
  readonly chosen: Remedy | undefined;
  /** The supply to get where this one cannot trip its unit or may lift the rails too high. */
  readonly toBuy: Supply | undefined;
  /** What is to be read before anything is bought; undefined where all is read. */
  readonly readFirst: ReadFirst | undefined;
  /** The unit must trip below this, amperes: what the scale bears, and what the supply surely gives. Undefined where that leaves nothing to set it to: the supply is too small for the unit. */
  readonly tripBelow: number | undefined;
  /** Most that may move at once with all rules kept, and with the everyday rule only; none where even standing is too much. `alone`, `aloneEnough`: the same with all others on track that is switched off, the everyday rule only, and all rules. */
  readonly mayMove: MayMove | undefined;
  /** How many more of the first kind could be added and moved with the everyday rule kept. */
  readonly more: { readonly kind: string; readonly count: number } | undefined;
  /** Fewer districts that are tight, where the answer is as many as are enough. */
  readonly tighter: Remedy | undefined;
  /** How many fewer districts would do after what is free, where the answer is to divide. */
  readonly onceQuiet: OnceQuiet | undefined;
  /** The districts that there are, where the layout is divided already. */
  readonly divided: Divided | undefined;
}

const NOTHING_MORE = {
  deciding: undefined,
  remedies: [],
  chosen: undefined,
  toBuy: undefined,
  readFirst: undefined,
  tripBelow: undefined,
  mayMove: undefined,
  more: undefined,
  tighter: undefined,
  onceQuiet: undefined,
  divided: undefined,
} as const;

/** Both parts together. */
export function concluded(answers: Answers): { readonly reckoning: Reckoning; readonly conclusion: Conclusion } {
  const reckoning = reckon(answers);
  return { reckoning, conclusion: conclude(answers, reckoning) };
}

/** The part that may come a moment later: what to do. */
export function conclude(answers: Answers, reckoning: Reckoning): Conclusion {
  const found = whatToDo(answers, reckoning);
  return { ...found, readFirst: buys(found) ? readFirstOf(answers, found) : undefined };
}

function readFirstOf(answers: Answers, { deciding, divided }: Conclusion): ReadFirst | undefined {
  if (deciding?.unknown === 'coach-lamps' && deciding.choices.length > 0) return 'lamps';
  // Of other districts no input was asked for.
  return divided === undefined ? readFirst(answers, 'unit') : 'input';
}

/** Something is to be got, as the answer or among what else would help. */
function buys({ toBuy, chosen, remedies: all, divided, outcome }: Conclusion): boolean {
  if (divided !== undefined) return DIVIDED_BUYS.includes(outcome);
  return toBuy !== undefined || [chosen, ...all].some((one) => (one?.ratings.length ?? 0) > 0);
}

const DIVIDED_BUYS: readonly EnoughCurrentOutcome[] = [
  'larger-supply',
  'booster-with-own-supply',
  'more-districts',
  'supply-cannot-trip',
];

function whatToDo(answers: Answers, reckoning: Reckoning): Conclusion {
  const { power: now, unread } = reckoning;
  const before = answerBefore(answers, reckoning);
  if (before?.kind === 'stop') return before;
  const divided = dividedIn(answers, reckoning, before);
  // Trains are counted only for answers that tell how many fit.
  const fits = now === undefined || unread.includes('unit-limit') ? {} : fitting(reckoning, now);
  if (divided !== undefined) return { ...concludeDivided(divided), ...(divided.planned === undefined ? {} : fits) };
  if (now !== undefined && (before?.outcome === 'supply-cannot-trip' || before?.outcome === 'lower-trip-level'))
    return { ...before, ...fits, remedies: unread.length > 0 ? [] : besidesTheTrip(answers, reckoning, now, before) };
  if (before !== undefined) return before;
  if (now === undefined) throw new RangeError('conclude: a supply that is not known has no verdict');
  return { ...concludeTrains(answers, reckoning, now), ...fits };
}

/** What helps the trains once a short trips the unit, on the supply to get or with the trip current lowered; none where they have enough then. */
function besidesTheTrip(
  answers: Answers,
  reckoning: Reckoning,
  now: Power,
  { toBuy, tripBelow: below = 0 }: Conclusion,
): readonly Remedy[] {
  const asked = wishOf(answers, reckoning, now);
  const supply = { ...now.supply, ...toBuy };
  const lowered = toBuy === undefined ? Math.min(asked.stage.limit, below) : asked.stage.limit;
  if (lowered <= 0) return [];
  const stage = { ...asked.stage, limit: lowered };
  if (atLeast(judgeInGroups(reckoning.load, capacity(supply, stage)).verdict, 'tight')) return [];
  return remedies({ ...asked, supply, stage, setLower: lowered < asked.stage.limit });
}

/** The districts that there are, once everything is read and right but that a short may not trip their units. */
function dividedIn(answers: Answers, reckoning: Reckoning, before: Conclusion | undefined): Divided | undefined {
  const { power: now } = reckoning;
  return isOpenToDistricts(before) && now !== undefined ? dividedOf(answers, reckoning, now) : undefined;
}

/** Whether districts are judged behind what comes before the trains. */
export const isOpenToDistricts = (before: Conclusion | undefined): boolean =>
  before === undefined || before.outcome === 'supply-cannot-trip';

/** Each district is judged by itself; what helps helps the one nearest to its limit. */
function concludeDivided(divided: Divided): Conclusion {
  const { layout, above, bears } = divided;
  if (above.length > 0)
    return { ...NOTHING_MORE, divided, outcome: 'lower-trip-level', kind: 'surely-not', tripBelow: bears };
  if (layout === undefined) return { ...NOTHING_MORE, divided, outcome: 'read-both-labels', kind: 'labels-first' };
  const { advice, kind } = layout;
  const sure = kind === 'surely' && divided.untold !== undefined ? 'depends' : kind;
  return {
    ...NOTHING_MORE,
    divided,
    outcome: outcomeOf(divided, layout),
    kind: advice.kind === 'cannot-trip' ? 'surely-not' : sure,
  };
}

/** What comes before any verdict on the trains: the gates in the order in which they count. Undefined where all are open. */
export function answerBefore(answers: Answers, reckoning: Reckoning): Conclusion | undefined {
  const { power: now, unread } = reckoning;
  const stopped = stopFor(reckoning);
  if (stopped !== undefined) return { ...NOTHING_MORE, outcome: stopped, kind: 'stop' };
  const gated = tooHigh(answers, reckoning) ?? aboveTheScale(reckoning);
  if (gated !== undefined) return gated;
  if (now === undefined || unread.length > 0) return LABELS_FIRST;
  return aboveUsual(now, reckoning) ?? cannotTrip(answers, reckoning, now);
}

const LABELS_FIRST: Conclusion = { ...NOTHING_MORE, outcome: 'read-both-labels', kind: 'labels-first' };

/** What must not be run at all: labels that do not go together, and too few volts. */
function stopFor({ labels, power: now }: Reckoning): EnoughCurrentOutcome | undefined {
  if (labels.kind === 'not-permitted') return labels.because === 'too-few-volts' ? 'volts-too-low' : 'wrong-supply';
  return now?.rails.tooLow === true ? 'volts-too-low' : undefined;
}

/** Rails that stand too high, or may: no train on them; a regulated d.c. supply where the unit takes one. */
function tooHigh(answers: Answers, reckoning: Reckoning): Conclusion | undefined {
  const { power: now, unread, stage } = reckoning;
  const input = new Reader(answers).inputLabel('unit');
  if (now === undefined || now.rails.tooHigh === 'no') return undefined;
  // Nothing is measured with a supply plugged in that its unit may not take.
  if (unread.includes('unit-input') || unread.includes('unit-input-volts')) return LABELS_FIRST;
  const wanted = supplyFor({ ...reckoning, supply: now.supply, input }, stage);
  const toBuy = now.supply.kind === 'ac' && wanted?.kind === 'dc' && unread.length === 0 ? wanted : undefined;
  const outcome = toBuy === undefined ? 'rail-voltage-too-high' : 'regulated-supply';
  if (now.rails.tooHigh === 'surely') return { ...NOTHING_MORE, outcome, kind: 'stop', toBuy };
  return {
    ...NOTHING_MORE,
    outcome,
    kind: unread.length > 0 ? 'labels-first' : 'depends',
    deciding: now.rails.known ? undefined : RAILS_DECIDE,
    toBuy,
  };
}

const RAILS_DECIDE: Deciding = { unknown: 'rails', choices: [], holdsTo: undefined };

/** Rails above what is usual for the scale, though below what no track may pass: they are set lower first. */
function aboveUsual({ rails }: Power, { scale }: Reckoning): Conclusion | undefined {
  if (rails.finding !== 'above-range' || !isAboveUsual(rails.volts, scale)) return undefined;
  const sure = {
    kind: rails.known ? 'surely-not' : 'depends',
    deciding: rails.known ? undefined : RAILS_DECIDE,
  } as const;
  return { ...NOTHING_MORE, outcome: 'rail-voltage-too-high', ...sure };
}

/** A unit that trips above what wheels and wires of the scale bear. */
function aboveTheScale(reckoning: Reckoning): Conclusion | undefined {
  const { unit, stage } = reckoning;
  // One that nobody has read is taken as usual, which no scale forbids.
  if (unit.limit <= stage.limit + 1e-9) return undefined;
  return {
    ...NOTHING_MORE,
    outcome: 'lower-trip-level',
    kind: 'surely-not',
    tripBelow: tripBelow(reckoning),
  };
}

/** The unit has to trip at no more than the scale bears, and below what the supply gives for good, `kept` back; amperes. Undefined where no unit could. */
function tripBelow({ power: now, scale }: Reckoning, kept = 0): number | undefined {
  const { tripCeiling } = DRAWS[scale];
  const below = Math.min(tripCeiling, now?.trip?.gives.from ?? tripCeiling) - kept;
  return below > LEAST_LIMIT ? below : undefined;
}

function fitting({ fleet }: Reckoning, { capacity: able }: Power): Pick<Conclusion, 'mayMove' | 'more'> {
  const [kind] = fleet.trains;
  return {
    mayMove: {
      enough: Math.max(0, largestMoving(fleet, able, 'enough')),
      tight: Math.max(0, largestMoving(fleet, able, 'tight')),
      alone: Math.max(0, largestMoving(allParked(fleet), able, 'tight')),
      aloneEnough: Math.max(0, largestMoving(allParked(fleet), able, 'enough')),
    },
    more: kind === undefined ? undefined : { kind: kind.kind, count: moreTrains(fleet, kind, able, 'tight') },
  };
}

/** All labels are read and go together, and the volts are right: whether a short trips the unit. */
function cannotTrip(answers: Answers, reckoning: Reckoning, now: Power): Conclusion | undefined {
  if (now.trip?.kind !== 'surely-not') return undefined;
  const asked = wishOf(answers, reckoning, now);
  const wanted = supplyFor(asked, reckoning.stage);
  const depends = tripDepends(answers, reckoning, now);
  return {
    ...NOTHING_MORE,
    outcome: 'supply-cannot-trip',
    kind: depends ? 'depends' : 'surely-not',
    deciding: depends ? RAILS_DECIDE : undefined,
    toBuy: wanted,
    tripBelow: tripBelow(reckoning, isTold(answers, 'own-use') ? 0 : OWN_USE_DOUBT),
  };
}

/** And then the trains. */
function concludeTrains(answers: Answers, reckoning: Reckoning, now: Power): Conclusion {
  const wish = wishOf(answers, reckoning, now);
  const found = remedies(wish);
  const wantsShorts = new Reader(answers).option('aim') === 'shorts';
  const { outcome, chosen } = answerFor(now.judgement, found, { wantsShorts, wished: reckoning.fleet.moving });
  // Where it runs, what would cost money is no remedy; breakers give no power, so nobody who lacks some is told of them.
  const { verdict } = now.judgement;
  const shown = found.filter(({ id, cost }) =>
    id === 'breakers-and-sub-districts'
      ? atLeast(verdict, 'enough')
      : !atLeast(verdict, 'tight') || cost.money.to === 0,
  );
  const divides = chosen !== undefined && chosen.usable.length > 1 && chosen.limit === undefined;
  const fewer = divides ? onceQuiet(wish, chosen) : undefined;
  const tighter = chosen === undefined ? undefined : tightBeside(wish, chosen);
  return {
    ...NOTHING_MORE,
    outcome,
    chosen,
    remedies: shown,
    tighter,
    onceQuiet: fewer,
    ...howSure(answers, reckoning, now),
  };
}

type Answered = Pick<Conclusion, 'outcome' | 'chosen'>;

/** Enough: nothing, or breakers. Tight: what is free, and nothing is to be bought. Too much: the remedy to take. */
function answerFor(
  judgement: Judgement,
  found: readonly Remedy[],
  { wantsShorts, wished }: { readonly wantsShorts: boolean; readonly wished: number },
): Answered {
  const enough: Answered = { outcome: 'power-is-enough', chosen: undefined };
  if (atLeast(judgement.verdict, 'enough'))
    return wantsShorts ? { outcome: 'breakers-and-sub-districts', chosen: undefined } : enough;
  if (onlyPowerUpFails(judgement)) return { outcome: 'put-on-in-two-groups', chosen: undefined };
  const free = found.filter(({ cost, verdict }) => cost.money.to === 0 && atLeast(verdict, 'enough'));
  const tight = judgement.verdict === 'tight';
  const chosen = tight ? (free.find(({ id }) => id === 'mute-and-park') ?? free[0]) : chosenOf(found, wished);
  if (chosen !== undefined) return { outcome: chosen.id, chosen };
  // Not even one may move: what stands is too much.
  return tight ? enough : { outcome: 'mute-and-park', chosen: undefined };
}

function onlyPowerUpFails(judgement: Judgement): boolean {
  return !judgement.powerUp.passes && judgement.everyday.passes && judgement.stall.passes && judgement.heat.passes;
}
