// The four rules of one power district, and the verdict.

import type { Working } from '../workings.ts';
import { working } from '../workings.ts';
import type { Capacity } from './capacity.ts';
import type { Distribution } from './demand.ts';
import { chanceAbove, summarise } from './demand.ts';

/** What counts as good enough; visible and changeable. Source of the figures: common-practice, see docs/decisions. */
export const GOALS = {
  /** Share of moments above the usable current, reserve untouched. */
  reserveTouched: 0.01,
  /** The same while the verdict is still "tight": the reserve is worked, the limit holds. */
  reserveWorked: 0.1,
  /** Share of moments above the hard limit. */
  limitPassed: 0.001,
  /** "Ample" holds even with this many times the draw. */
  spare: 1.25,
} as const;

/** A stretch of overload lasts about this long, seconds. Source: from-memory (5 to 20 s). */
export const SPELL_SECONDS = 10;

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

/** Judges one district against its capacity. */
export function judge(load: DistrictLoad, capacity: Pick<Capacity, 'hard' | 'usable'>): Judgement {
  const now = rulesAt(load, capacity, 1);
  const { aboveUsable, aboveHard, everyday, stall, powerUp, heat } = now;
  return { verdict: verdictOf(load, capacity, now), aboveUsable, aboveHard, everyday, stall, powerUp, heat };
}

type Rules = ReturnType<typeof rulesAt>;

function verdictOf(load: DistrictLoad, capacity: Pick<Capacity, 'hard' | 'usable'>, now: Rules): Verdict {
  if (now.passesAll) return rulesAt(load, capacity, GOALS.spare).passesAll ? 'ample' : 'enough';
  const held = now.aboveHard <= GOALS.limitPassed && now.aboveUsable <= GOALS.reserveWorked;
  return held ? 'tight' : 'short';
}

// The rules with every draw `factor` times as large, which is the same as every limit that many times smaller.
function rulesAt(load: DistrictLoad, capacity: Pick<Capacity, 'hard' | 'usable'>, factor: number) {
  const hard = capacity.hard / factor;
  const usable = capacity.usable / factor;
  const { mean, p95 } = summarise(load.distribution);
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
    passes: stallCurrent <= hard + 1e-9,
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
    passes: load.powerUp <= hard + 1e-9,
    value: load.powerUp,
    limit: hard,
    working: working('power-up', load.powerUp, 'A', [['hard', hard, 'A']], ['from-memory']),
  };
  const heat: RuleResult = {
    passes: mean <= hard + 1e-9,
    value: mean,
    limit: hard,
    working: working('heat', mean, 'A', [['hard', hard, 'A']], ['common-practice']),
  };
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

/** Stretches of overload to expect in an evening: chance x evening / 10 s. Evening in hours >= 0. */
export function spellsPerEvening(chance: number, eveningHours: number, spellSeconds = SPELL_SECONDS): number {
  return (chance * eveningHours * 3600) / spellSeconds;
}

/** How often an overload comes, as a person would say it. `strained`: it hardly ever does, but too little is left. */
export type OverloadOften = 'always' | 'often' | 'once' | 'rare' | 'strained';

/** Where the words for it change: share of moments, and spells an evening. Source: own-derivation. */
const OFTEN = { always: 0.25, often: 1.5, once: 0.67, rare: 0.05 } as const;

/** How often, from the chance of an overload at any moment (0 to 1) and the spells in an evening (>= 0). */
export function overloadOften(chance: number, spells: number): OverloadOften {
  if (chance > OFTEN.always) return 'always';
  if (spells >= OFTEN.often) return 'often';
  if (spells > OFTEN.once) return 'once';
  return spells > OFTEN.rare ? 'rare' : 'strained';
}

/** Whether so many spells an evening (>= 0) are worth a word. */
export const spellsCount = (spells: number): boolean => spells >= OFTEN.rare;

/** Digits after the point that so many spells an evening (>= 0) are told with: one below ten. Source: common-practice. */
export const spellDigits = (spells: number): 0 | 1 => (spells < 10 ? 1 : 0);

/** Evenings from one spell to the next, where an evening has so many (>= 0); a thousand million where it has none. */
export const eveningsBetween = (spells: number): number => 1 / Math.max(spells, 1e-9);

export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  return VERDICTS.find((verdict) => verdicts.includes(verdict)) ?? 'ample';
}

export function atLeast(verdict: Verdict, wanted: Verdict): boolean {
  return VERDICTS.indexOf(verdict) >= VERDICTS.indexOf(wanted);
}
