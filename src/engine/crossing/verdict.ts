// From the figures of a crossing in phase to findings, a verdict with its reasons, and advice in the order to try it.

import { STEP_LIMIT, STEP_TOO_LARGE, stepSize, TRACK_LIMITS } from '../power/index.ts';
import type { Span } from '../units.ts';
import type { Certainty, SideId } from './range.ts';
import { otherSide, rangeOf, usualOf } from './range.ts';
import type { CrossingPush, CrossingSide, KnownSide } from './sides.ts';

/** Contact current that small connectors are rated for, amperes. Source: nem-651. */
export const SMALL_CONTACT = 0.5;
/** From here on guards against overvoltage are expected to act, volts. Source: from-memory. */
export const STEP_GUARDS = 3;
/** No rails above this, on any scale, volts. Source: nmra-s-9-1. */
export const STOP_LINE = TRACK_LIMITS.h0.most;

/** Why a crossing is not fine, and how bad that is; the bad ones first. */
export const CROSSING_REASONS = {
  cascade: 'do-not-run',
  'step-too-large': 'do-not-run',
  'link-above-guard': 'do-not-run',
  'cascade-possible': 'adjust',
  'higher-stage-trips': 'adjust',
  'higher-stage-may-trip': 'adjust',
  'step-above-limit': 'adjust',
} as const satisfies Readonly<Record<string, 'adjust' | 'do-not-run'>>;
export type CrossingReason = keyof typeof CROSSING_REASONS;

/** In the order in which to try them. */
export const CROSSING_ADVICE = [
  'set-both-outputs-equal',
  'two-supplies-alike',
  'higher-rails-to-command-station',
  'fewer-trains-there',
  'do-not-stop-across-the-gap',
] as const;
export type CrossingAdviceId = (typeof CROSSING_ADVICE)[number];

/** `volts`: what to set. `side`: the side that is changed, or where fewer trains should be. */
export interface CrossingAdvice {
  readonly id: CrossingAdviceId;
  readonly side?: SideId;
  readonly volts?: number;
}

export interface WithheldAdvice {
  readonly id: CrossingAdviceId;
  readonly because: 'above-its-label' | 'label-not-known';
}

export type CrossingFinding =
  | 'harmless-step'
  | 'pick-ups-warm'
  | 'sparks'
  | 'guards-may-act'
  | 'link-above-guard'
  | 'lower-still-delivers'
  | 'bipolar-blocks'
  | 'pulse-passes-limit'
  | 'wakes-unpowered-stage'
  | 'overloaded-anyway';

export interface CrossingConclusion {
  readonly findings: readonly CrossingFinding[];
  readonly verdict: 'fine' | 'adjust' | 'do-not-run';
  /** Why it is not fine, the worst first. */
  readonly reasons: readonly CrossingReason[];
  /** In the order in which to try it. */
  readonly advice: readonly CrossingAdvice[];
  /** Advice that would follow, and why it is kept back. */
  readonly withheld: readonly WithheldAdvice[];
}

type Sides = Readonly<Record<SideId, KnownSide>>;

interface Facts {
  readonly step: Span;
  readonly pushes: readonly CrossingPush[];
  readonly trips: Certainty;
  readonly cascade: Certainty;
}

/** Judges a crossing in phase. Volts of `stepLimit` >= 0: the largest step that counts as equal. */
export function concludeCrossing(sides: Sides, facts: Facts, stepLimit = STEP_LIMIT): CrossingConclusion {
  const findings = findingsOf(sides, facts, stepLimit);
  const reasons = reasonsOf(facts, findings, stepLimit);
  const [worst] = reasons;
  const { advice, withheld } = adviceOf(sides, facts, reasons);
  return { findings, verdict: worst === undefined ? 'fine' : CROSSING_REASONS[worst], reasons, advice, withheld };
}

function findingsOf(sides: Sides, { step, pushes }: Facts, stepLimit: number): CrossingFinding[] {
  const size = stepSize(step);
  const takeOver = Math.max(0, ...pushes.map((one) => one.takeOver.span.to));
  const all: readonly (readonly [CrossingFinding, boolean])[] = [
    ['harmless-step', size <= stepLimit + 1e-9],
    ['pick-ups-warm', size > stepLimit + 1e-9 && takeOver > SMALL_CONTACT],
    ['sparks', size >= STEP_TOO_LARGE - 1e-9],
    ['guards-may-act', pushes.some((one) => one.step.span.to >= STEP_GUARDS - 1e-9 && one.conductsBack !== 'no')],
    ['link-above-guard', pushes.some((one) => liftedAbove(sides, one))],
    ['lower-still-delivers', pushes.length > 0 && pushes.every((one) => one.lowerGives === 'yes')],
    ['bipolar-blocks', pushes.length > 0 && pushes.every((one) => blocksBack(sides, one))],
    ['pulse-passes-limit', pushes.some((one) => one.secondsOverLimit > 0 && one.trips !== 'yes')],
    ['wakes-unpowered-stage', pushes.some((one) => rangeOf(sides[otherSide(one.from)].volts).to === 0)],
    ['overloaded-anyway', Object.values(sides).some((side) => side.load > side.limit)],
  ];
  return all.filter(([, holds]) => holds).map(([finding]) => finding);
}

const liftedAbove = (sides: Sides, { from, link, lift }: CrossingPush): boolean =>
  lift.span.to > 1e-9 && link.span.to > (sides[otherSide(from)].guardVolts ?? STOP_LINE) + 1e-9;

const blocksBack = (sides: Sides, { from, conductsBack }: CrossingPush): boolean =>
  sides[otherSide(from)].stageKind === 'bipolar' && conductsBack === 'no';

function reasonsOf({ step, trips, cascade }: Facts, findings: readonly CrossingFinding[], limit: number) {
  const size = stepSize(step);
  const blocked = findings.includes('bipolar-blocks');
  const tooLarge = size >= STEP_TOO_LARGE - 1e-9 && size > limit + 1e-9 && !blocked;
  const all: readonly (readonly [CrossingReason, boolean])[] = [
    ['cascade', cascade === 'yes'],
    ['step-too-large', tooLarge],
    ['link-above-guard', findings.includes('link-above-guard')],
    ['cascade-possible', cascade === 'perhaps'],
    ['higher-stage-trips', trips === 'yes'],
    ['higher-stage-may-trip', trips === 'perhaps'],
    ['step-above-limit', size > limit + 1e-9 && !tooLarge],
  ];
  return all.filter(([, holds]) => holds).map(([reason]) => reason);
}

const STEP_REASONS: readonly CrossingReason[] = ['step-too-large', 'step-above-limit', 'link-above-guard'];

function adviceOf(sides: Sides, facts: Facts, reasons: readonly CrossingReason[]) {
  const push = largestPush(facts.pushes);
  if (push === undefined || reasons.length === 0) return { advice: [], withheld: [] };
  const stepped = reasons.some((reason) => STEP_REASONS.includes(reason)) ? aboutTheStep(sides, push) : NO_ADVICE;
  const lower = otherSide(push.from);
  const fewer: CrossingAdvice[] = facts.trips === 'no' ? [] : [{ id: 'fewer-trains-there', side: lower }];
  const advice: CrossingAdvice[] = [...stepped.advice, ...fewer, { id: 'do-not-stop-across-the-gap' }];
  return { advice, withheld: stepped.withheld };
}

const NO_ADVICE: { readonly advice: CrossingAdvice[]; readonly withheld: WithheldAdvice[] } = {
  advice: [],
  withheld: [],
};

/** The direction with the largest step, where either side may be the higher. */
export function largestPush(pushes: readonly CrossingPush[]): CrossingPush | undefined {
  return pushes.length === 0 ? undefined : pushes.reduce((a, b) => (b.step.span.to > a.step.span.to ? b : a));
}

function aboutTheStep(sides: Sides, push: CrossingPush): typeof NO_ADVICE {
  const equal = setEqual(sides, push.from);
  const exchange = exchanged(sides, push.from);
  const follows = Object.values(sides).some((side) => side.output !== 'settable');
  return {
    advice: [...equal.advice, ...(follows ? [{ id: 'two-supplies-alike' } as const] : []), ...exchange.advice],
    withheld: [...equal.withheld, ...exchange.withheld],
  };
}

// Bring the higher output down to the lower one where it can be set; else the lower one up, but only as far as its label is
// known to permit.
function setEqual(sides: Sides, higherId: SideId): typeof NO_ADVICE {
  const id = 'set-both-outputs-equal';
  const lowerId = otherSide(higherId);
  const [higher, lower] = [sides[higherId], sides[lowerId]];
  if (higher.output !== 'follows' && usualOf(lower.volts) > 0) {
    return { advice: [{ id, side: higherId, volts: usualOf(lower.volts) }], withheld: [] };
  }
  if (lower.output === 'follows') return NO_ADVICE;
  return ifLabelPermits({ id, side: lowerId, volts: usualOf(higher.volts) }, lower);
}

// The higher rails belong to the command station: only where it stands lower now, and never above its label.
function exchanged(sides: Sides, higherId: SideId): typeof NO_ADVICE {
  const lower = sides[otherSide(higherId)];
  if (lower.role !== 'command-station') return NO_ADVICE;
  return ifLabelPermits({ id: 'higher-rails-to-command-station', side: otherSide(higherId) }, lower);
}

function ifLabelPermits(advice: CrossingAdvice, side: CrossingSide): typeof NO_ADVICE {
  if (side.mayStandHigher === true) return { advice: [advice], withheld: [] };
  const because = side.mayStandHigher === false ? 'above-its-label' : 'label-not-known';
  return { advice: [], withheld: [{ id: advice.id, because }] };
}
