// The next step of a walk, remembered: replaying an address asks for the same steps again and again.
import type { CheckRow, Compiled, NextStep, Seen, Tool } from '../../engine/index.ts';
import { compile, nextStep, questionsLeft } from '../../engine/index.ts';
import type { CheckId, ComplaintId } from './faults/index.ts';
import { checksOn, FAULT_MODEL } from './faults/index.ts';

/** Three answers in a hundred are given at random: so much is taken from every likelihood. Source: own-derivation, see decision 008. */
export const SLIP = 0.03;

/** Someone who knows is rarely at hand at once, and a repair for nothing costs more than a few questions. Source: from-memory. */
const SETTINGS = { slip: SLIP, callMinutes: 90, wrongFixMinutes: 15 } as const;

const COMPILED = new Map<ComplaintId, Compiled>();

export function compiledFor(complaint: ComplaintId): Compiled {
  const known = COMPILED.get(complaint);
  if (known !== undefined) return known;
  const compiled = compile({ ...FAULT_MODEL, checks: checksOn(complaint) }, complaint, SETTINGS);
  COMPILED.set(complaint, compiled);
  return compiled;
}

export interface Known {
  readonly complaint: ComplaintId;
  readonly answers: readonly Seen[];
  readonly skipped: readonly string[];
  readonly tools: readonly Tool[] | undefined;
  readonly tried: readonly string[];
}

const STEPS = new Map<string, NextStep>();
const MOST_REMEMBERED = 400;

/** The step that follows from what is known; the order of the answers does not matter. */
export function stepOf({ complaint, answers, skipped, tools = [], tried }: Known): NextStep {
  const told = answers.map(({ check, option }) => `${check}=${option}`).sort();
  const key = [complaint, told, [...skipped].sort(), [...tools].sort(), [...tried].sort()].join('|');
  const known = STEPS.get(key);
  if (known !== undefined) return known;
  const found = nextStep(compiledFor(complaint), { answers, skipped, tools, setAside: tried });
  const lead = LEADS[complaint];
  const led = lead !== undefined && !skipped.includes(lead) && !answers.some(({ check }) => check === lead);
  const step: NextStep = led && !isDanger(found) ? { kind: 'ask', check: lead, because: 'separates' } : found;
  if (STEPS.size >= MOST_REMEMBERED) STEPS.clear();
  STEPS.set(key, step);
  return step;
}

/**
 * What is asked straight after danger, whatever else would tell more: after an exchange, whether the new one may be plugged in at all; with
 * several trains, what a person remembers.
 */
const LEADS: Readonly<Partial<Record<ComplaintId, CheckId>>> = {
  'shuts-down-after-swap': 'read-labels',
  'trips-with-traffic': 'when-it-happens',
};

const isDanger = (step: NextStep): boolean =>
  (step.kind === 'ask' && step.because === 'first') || (step.kind === 'fix' && step.danger !== undefined);

const ROWS = new Map(FAULT_MODEL.checks.map((check) => [check.id, check]));

export const rowOfCheck = (id: string): CheckRow | undefined => ROWS.get(id);

/** How many questions are left, roughly: a whole number, at least the one that stands there. */
export function questionsToGo({ complaint, answers, skipped, tools = [], tried }: Known): number {
  const left = questionsLeft(compiledFor(complaint), { answers, skipped, tools, setAside: tried });
  return Math.max(1, Math.round(left));
}
