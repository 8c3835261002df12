// The four rules of one power district, and the verdict.

import type { Span } from '../units.ts';
import type { Working } from '../workings.ts';
import { working } from '../workings.ts';
import type { Capacity } from './capacity.ts';
import type { Distribution } from './demand.ts';
import { chanceAbove, summarise } from './demand.ts';

/** What counts as good enough, shares of time and times; visible and changeable (decision 001). Source: common-practice. */
export const GOALS = {
  /** Share of moments above the usable current, reserve untouched. */
  reserveTouched: 0.01,
  /** The same while the verdict is still "tight": the reserve is worked, the limit holds. */
  reserveWorked: 0.1,
  /** Share of moments above the hard limit. */
  limitPassed: 0.001,
  /** The same while the verdict is still "tight": about once in a dozen busy spells of ten minutes. */
  limitTouched: 0.003,
  /** "Ample" holds even with this many times the draw. */
  spare: 1.25,
} as const;

export type Verdict = 'ample' | 'enough' | 'tight' | 'short';
export const VERDICTS: readonly Verdict[] = ['short', 'tight', 'enough', 'ample'];

export interface DistrictLoad {
  readonly distribution: Distribution;
  /** Stall current less mean running current of the hungriest train, amperes. */
  readonly stallExtra: number;
  /** Everything standing, and what charges after power-up, amperes. */
  readonly powerUp: number;
}

export interface RuleResult {
  readonly passes: boolean;
  /** What is compared, and with what: amperes, or shares for the everyday rule. */
  readonly value: number;
  readonly limit: number;
  readonly working: Working;
}

export interface Judgement {
  readonly verdict: Verdict;
  readonly aboveUsable: number;
  readonly aboveHard: number;
  readonly everyday: RuleResult;
  readonly stall: RuleResult;
  readonly powerUp: RuleResult;
  readonly heat: RuleResult;
}

/** What a district is judged against. */
export type Able = Pick<Capacity, 'hard' | 'usable' | 'moment'>;

/** Judges one district against its capacity: moment by moment, and a transformer by its heat over minutes besides. */
export function judge(load: DistrictLoad, capacity: Able): Judgement {
  const now = rulesAt(load, capacity, 1);
  const { aboveUsable, aboveHard, everyday, stall, powerUp, heat } = now;
  return { verdict: verdictOf(load, capacity, now), aboveUsable, aboveHard, everyday, stall, powerUp, heat };
}

type Rules = ReturnType<typeof rulesAt>;

function verdictOf(load: DistrictLoad, capacity: Able, now: Rules): Verdict {
  if (now.passesAll) return rulesAt(load, capacity, GOALS.spare).passesAll ? 'ample' : 'enough';
  const held = now.aboveHard <= GOALS.limitTouched && now.aboveUsable <= GOALS.reserveWorked;
  return held && now.heat.value <= capacity.hard + SAME ? 'tight' : 'short';
}

/** Currents nearer than this are one, amperes. Source: own-choice. */
const SAME = 1e-9;

// The rules with every draw `factor` times as large, which is the same as every limit that many times smaller.
function rulesAt(load: DistrictLoad, capacity: Able, factor: number) {
  const { moment = capacity } = capacity;
  const hard = moment.hard / factor;
  const usable = moment.usable / factor;
  const { mean, deviation, p95 } = summarise(load.distribution);
  const aboveUsable = chanceAbove(load.distribution, usable);
  const aboveHard = chanceAbove(load.distribution, hard);
  const everyday: RuleResult = {
    passes: aboveUsable <= GOALS.reserveTouched && aboveHard <= GOALS.limitPassed,
    value: aboveUsable,
    limit: GOALS.reserveTouched,
    working: working(
      'everyday',
      aboveUsable,
      'share',
      [
        ['usable', usable, 'A'],
        ['hard', hard, 'A'],
        ['above-hard', aboveHard, 'share'],
      ],
      ['own-derivation', 'hong-2013'],
    ),
  };
  const stallCurrent = p95 + load.stallExtra;
  const stall: RuleResult = {
    passes: stallCurrent <= hard + SAME,
    value: stallCurrent,
    limit: hard,
    working: working(
      'stall',
      stallCurrent,
      'A',
      [
        ['p95', p95, 'A'],
        ['stall-extra', load.stallExtra, 'A'],
        ['hard', hard, 'A'],
      ],
      ['common-practice'],
    ),
  };
  const powerUp: RuleResult = {
    passes: load.powerUp <= hard + SAME,
    value: load.powerUp,
    limit: hard,
    working: working('power-up', load.powerUp, 'A', [['hard', hard, 'A']], ['from-memory']),
  };
  const heat =
    capacity.moment === undefined
      ? warms('heat', mean, hard)
      : warms('heat-ac', Math.sqrt(mean ** 2 + deviation ** 2), capacity.usable / factor);
  return {
    aboveUsable,
    aboveHard,
    everyday,
    stall,
    powerUp,
    heat,
    passesAll: everyday.passes && stall.passes && powerUp.passes && heat.passes,
  };
}

/** The rule of heat: an average against what may flow for good; behind a transformer the r.m.s. one, with the reserve. Amperes. */
const warms = (formula: 'heat' | 'heat-ac', value: number, limit: number): RuleResult => ({
  passes: value <= limit + SAME,
  value,
  limit,
  working: working(formula, value, 'A', [['hard', limit, 'A']], ['common-practice']),
});

/** The same judgement where trains are put on in groups, so that not all of them charge at once. */
export const judgeInGroups = (load: DistrictLoad, capacity: Able): Judgement =>
  judge({ ...load, powerUp: 0 }, capacity);

/** How long a train draws about the same before it changes, seconds: stations close together, or a long climb. Source: from-memory. */
export const STEADY_SECONDS: Span = { from: 3, to: 120 };
/** What is taken for it where one figure is wanted, seconds. Source: from-memory. */
const STEADY_USUALLY = 20;
/** Overloads to expect in so many hours (>= 0) of a busy spell, from the share of its moments: a band, as long as trains draw steadily or change at once. */
export const overloadsIn = (chance: number, hours: number): Span => ({
  from: (chance * hours * SECONDS_AN_HOUR) / STEADY_SECONDS.to,
  to: (chance * hours * SECONDS_AN_HOUR) / STEADY_SECONDS.from,
});
/** Seconds in an hour. Source: own-derivation. */
const SECONDS_AN_HOUR = 3600;

/** What one will see of an overload. `strained`: hardly ever that, but too little is left. */
export type OverloadSeen = 'at-once' | 'within-minutes' | 'now-and-then' | 'strained';

/** Up to how much of a busy spell each of them is waited for, seconds. Source: own-derivation. */
const WAIT = { 'at-once': 100, 'within-minutes': 900, 'now-and-then': 4 * 3600 } as const;

/** What one will see, from the share of moments above the limit (0 to 1). */
export function overloadSeen(chance: number): OverloadSeen {
  const wait = STEADY_USUALLY / Math.max(chance, 1e-12);
  if (wait <= WAIT['at-once']) return 'at-once';
  if (wait <= WAIT['within-minutes']) return 'within-minutes';
  return wait <= WAIT['now-and-then'] ? 'now-and-then' : 'strained';
}

export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  return VERDICTS.find((verdict) => verdicts.includes(verdict)) ?? 'ample';
}

export function atLeast(verdict: Verdict, wanted: Verdict): boolean {
  return VERDICTS.indexOf(verdict) >= VERDICTS.indexOf(wanted);
}
