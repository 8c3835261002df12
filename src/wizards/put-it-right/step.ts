// The next step of a walk, remembered: replaying an address asks for the same steps again and again.
import type { InParts, NextStep, Seen, SignCheck, SignState, Tool, WalkModel } from '../../engine/index.ts';
import { signStep, signStepInParts, TOOLS, walkModel, walkModelInParts } from '../../engine/index.ts';
import type { ComplaintId } from './model/index.ts';
import { givenBy, SIGN_MODEL, senselessFor } from './model/index.ts';

/**
 * Someone who knows is rarely at hand at once, and a repair for nothing costs more than a few questions. Slips: what is remembered is wrong
 * most often, what an instrument shows least. From the ninth thing known on a question tells ever less, and work is tried on a lesser chance. One sign in twenty is not as the row of the true cause has it. One title in three fits in half only. Whoever can check hardly anything is not asked on and on. Source: from-memory, see decisions 008 and 019.
 */
const SETTINGS = {
  callMinutes: 90,
  wrongFixMinutes: 15,
  riskMinutes: [0, 1, 6, 30],
  harmBelow: { ask: 0.005, mend: 0.05 },
  mostQuestions: 24,
  mostSkipped: 10,
  elseShare: 0.05,
  lookAhead: { checks: 5, second: 8, fixes: 3 },
  slips: { memory: 0.1, eye: 0.05, instrument: 0.03 },
  rowsDoubted: 0.05,
  halfFits: 1 / 3,
  proposeFrom: { cheap: 0, work: 0.6, dear: 0.8 },
  patience: { after: 8, each: 0.05, least: 0.6 },
} as const;

let made: WalkModel | undefined;

/** The whole model, made ready when it is first asked for. */
export function walkModelNow(): WalkModel {
  made ??= walkModel(SIGN_MODEL, SETTINGS);
  return made;
}

/** The same a part at a time, with what the first question asks of it. */
export function* readyInParts(): InParts<WalkModel> {
  const model = made ?? (yield* walkModelInParts(SIGN_MODEL, SETTINGS));
  made ??= model;
  const { causes, checks, usual } = made.tables;
  for (const cause of causes) {
    for (const check of checks.keys()) usual(cause, check, false);
    yield;
  }
  return made;
}

export interface Known {
  readonly complaint: ComplaintId;
  readonly answers: readonly Seen[];
  readonly skipped: readonly string[];
  /** Undefined until it has been said: then every tool is thought of, and asked for once a check needs one. */
  readonly tools: readonly Tool[] | undefined;
  readonly tried: readonly string[];
  /** Checks answered in this sitting: only they can show that something is safe. */
  readonly trusted: ReadonlySet<string>;
}

/** What is known, as the engine takes it. */
export const stateOf = ({ complaint, answers, skipped, tools = TOOLS, tried, trusted }: Known): SignState => ({
  opening: complaint,
  answers,
  skipped,
  tools,
  setAside: tried,
  trusted,
  senseless: senselessFor(complaint, answers),
  given: givenBy(complaint),
});

const STEPS = new Map<string, NextStep>();
/** Most states of which the step is remembered. Source: own-choice. */
const MOST_REMEMBERED = 400;

/** The step that follows from what is known; the order of the answers does not matter. */
export function stepOf(known: Known): NextStep {
  const key = keyOf(known);
  return STEPS.get(key) ?? remembered(key, signStep(walkModelNow(), stateOf(known)));
}

/** The same a part at a time. */
export function* stepInParts(known: Known): InParts<NextStep> {
  const key = keyOf(known);
  return STEPS.get(key) ?? remembered(key, yield* signStepInParts(walkModelNow(), stateOf(known)));
}

function keyOf({ complaint, answers, skipped, tools, tried, trusted }: Known): string {
  const told = answers.map(({ check, option }) => `${check}=${option}`).sort();
  const lists = [told, [...skipped].sort(), [...(tools ?? ['?'])].sort(), [...tried].sort(), [...trusted].sort()];
  return [complaint, ...lists].join('|');
}

function remembered(key: string, step: NextStep): NextStep {
  if (STEPS.size >= MOST_REMEMBERED) STEPS.clear();
  STEPS.set(key, step);
  return step;
}

const ROWS = new Map(SIGN_MODEL.checks.map((check): [string, SignCheck] => [check.id, check]));

export const rowOfCheck = (id: string): SignCheck | undefined => ROWS.get(id);
