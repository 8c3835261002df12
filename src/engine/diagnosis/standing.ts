// Where a walk stands: what is still likely, what can still be asked, and whether an answer meant danger.
import type { Compiled } from './compile.ts';
import { bitsOf } from './compile.ts';
import type { CheckRow, Precondition, Tool } from './model.ts';
import { OF_THE_LAYOUT } from './model.ts';
import type { Seen } from './posterior.ts';
import { lastAnswers, optionAt } from './posterior.ts';
import type { Standing } from './value.ts';
import { isShown } from './value.ts';

export interface WalkState {
  readonly answers: readonly Seen[];
  /** Fix classes that were tried and did not help. */
  readonly setAside: readonly string[];
  /** Check ids the person could not do. */
  readonly skipped: readonly string[];
  /** What is at hand; eyes always are. */
  readonly tools: readonly Tool[];
  /** Checks whose answers may show that something is safe; all where it is left out. Those of a link may not. */
  readonly trusted?: ReadonlySet<string>;
  /** Check ids whose words make no sense for what was told; none where it is left out. */
  readonly senseless?: ReadonlySet<string>;
  /** What holds by what people come with, before any answer; nothing where it is left out. */
  readonly given?: readonly Precondition[];
}

/** What can still be asked, and what was shown to hold. Unknown ids are passed over. */
export function openOf(compiled: Compiled, state: WalkState): Omit<Standing, 'chances'> {
  const answers = lastAnswers(state.answers).filter((one) => optionAt(compiled, one) >= 0);
  let holds = bitsOf(state.given ?? []);
  for (const answer of inRowOrder(compiled, answers)) {
    const shown = compiled.establishes[optionAt(compiled, answer)] ?? 0;
    holds |= state.trusted?.has(answer.check) === false ? shown & bitsOf(OF_THE_LAYOUT) : shown;
  }
  const lost = answers.some((one) => dangerClass(compiled, one) !== undefined) ? bitsOf(['nothing-got-hot']) : 0;
  holds &= ~lost;
  const asked = new Set([...answers.map(({ check }) => check), ...state.skipped]);
  const tools = new Set<Tool>(['eyes', ...state.tools]);
  const forbidden = new Set(answers.flatMap(({ check, option }) => rowOf(compiled, check)?.forbids?.[option] ?? []));
  const open = Uint8Array.from(compiled.checks, ({ id, tool, also = [], acts = [], withheld = false }) => {
    const allowed = !(withheld || state.senseless?.has(id) || acts.some((act) => forbidden.has(act)));
    return allowed && !asked.has(id) && [tool, ...also].every((one) => tools.has(one)) ? 1 : 0;
  });
  const canHold = holds | (stillShown(compiled, open) & ~lost);
  for (let at = 0; at < open.length; at++) if (!isShown(compiled, at, canHold)) open[at] = 0;
  const { mostQuestions, mostSkipped = mostQuestions } = compiled.settings;
  const countOf = (ids: Iterable<string>): number => [...ids].filter((id) => compiled.checkAt.has(id)).length;
  const left = Math.min(mostQuestions - countOf(asked), mostSkipped - countOf(new Set(state.skipped)));
  return { open, holds, questions: Math.max(0, left) };
}

/** Preconditions that an open check could still show to hold. */
function stillShown(compiled: Compiled, open: Uint8Array): number {
  return compiled.checks.reduce((bits, { establishes }, at) => {
    return open[at] === 1 ? bits | bitsOf(Object.values(establishes ?? {}).flat()) : bits;
  }, 0);
}

/** In the order of the model, so that rounding is the same whatever the order of the answers. */
function inRowOrder(compiled: Compiled, answers: readonly Seen[]): Seen[] {
  const place = ({ check }: Seen): number => compiled.checkAt.get(check) ?? 0;
  return [...answers].sort((a, b) => place(a) - place(b));
}

function rowOf(compiled: Compiled, check: string): CheckRow | undefined {
  return compiled.checks[compiled.checkAt.get(check) ?? -1];
}

function dangerClass(compiled: Compiled, { check, option }: Seen): string | undefined {
  return rowOf(compiled, check)?.danger?.[option];
}

export interface Danger {
  readonly fixClass: string;
  readonly answer: Seen;
}

/** The first danger, in the order of the rows, whose fix class was not yet dealt with. */
export function dangerOf(compiled: Compiled, state: WalkState): Danger | undefined {
  const met = inRowOrder(compiled, lastAnswers(state.answers)).flatMap(({ check, option }) => {
    const fixClass = dangerClass(compiled, { check, option });
    return fixClass === undefined ? [] : [{ fixClass, answer: { check, option } }];
  });
  return met.find(({ fixClass }) => !state.setAside.includes(fixClass));
}

/** Place of the next check that is asked before everything else, -1 when there is none. */
export function firstCheck(compiled: Compiled, { open, holds, questions }: Standing): number {
  if (questions === 0) return -1;
  return compiled.checks.findIndex(({ first }, at) => first === true && open[at] === 1 && isShown(compiled, at, holds));
}
