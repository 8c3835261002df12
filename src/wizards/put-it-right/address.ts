// A walk in an address: ?check=option for what was seen, and a few names for what was done. Read, replayed, written here only.
import type { SnapshotFrom } from 'xstate';
import { initialTransition, transition } from 'xstate';
import type { Seen, Tool } from '../../engine/index.ts';
import { TOOLS } from '../../engine/index.ts';
import { HANDED_ON, isMark, MADE } from '../links/index.ts';
import type { ComplaintId } from './faults/index.ts';
import { FAULT_MODEL } from './faults/index.ts';
import type { Isolation, Phase, WalkEvent, WalkStateId } from './states.ts';
import { ISOLATION, PHASE, putItRight, secondFault } from './states.ts';

/** What a person has said and done, as an address holds it. */
export interface Told {
  /** Option id by check id; `cannot` where it could not be checked. */
  readonly seen: Readonly<Record<string, string>>;
  readonly tools: readonly Tool[] | undefined;
  readonly tried: readonly string[];
  readonly doing: string | undefined;
  readonly fixed: readonly string[];
  readonly isolation: Isolation | undefined;
  readonly phase: Phase | undefined;
}

export const NOTHING_TOLD: Told = {
  seen: {},
  tools: undefined,
  tried: [],
  doing: undefined,
  fixed: [],
  isolation: undefined,
  phase: undefined,
};

export const CANNOT = 'cannot';

/** Part of an address that was left out: its name is not known any more, or what it says is not. A page counts them: it repeats nobody's text. */
export interface LeftOut {
  readonly name: string;
  readonly because: 'unknown-name' | 'unknown-answer' | 'unknown-fix' | 'unknown-tool';
}

const CHECKS = new Map(FAULT_MODEL.checks.map((check) => [check.id, check]));
const CLASSES = new Set(FAULT_MODEL.faults.map(({ fixClass }) => fixClass));

/** Reads an address. Never throws; the first of several values of one name counts. */
export function parseWalk(search: string): { told: Told; leftOut: LeftOut[] } {
  const texts = new Map<string, string>();
  for (const [name, value] of new URLSearchParams(search)) if (!texts.has(name)) texts.set(name, value);
  const reader = new AddressReader(texts);
  const seen = reader.seen();
  const tools = reader.list('tools', (one) => one === 'none' || isTool(one), 'unknown-tool').filter(isTool);
  const classes = (name: string): string[] => reader.list(name, (one) => CLASSES.has(one), 'unknown-fix');
  const told: Told = {
    seen,
    tools: texts.has('tools') ? tools : undefined,
    tried: classes('tried'),
    doing: classes('doing')[0],
    fixed: classes('fixed'),
    isolation: reader.option('isolation', ISOLATION),
    phase: reader.option('phase', PHASE),
  };
  return { told, leftOut: reader.leftOut };
}

/** Reads names one by one and keeps note of what it left out. */
class AddressReader {
  readonly leftOut: LeftOut[] = [];
  readonly #texts: ReadonlyMap<string, string>;

  constructor(texts: ReadonlyMap<string, string>) {
    this.#texts = texts;
  }

  /** Every name that is none of the walk's own is a check. */
  seen(): Record<string, string> {
    const seen: Record<string, string> = {};
    for (const [name, value] of this.#texts) {
      if (RESERVED.has(name)) continue;
      const check = CHECKS.get(name);
      if (check === undefined) {
        if (!isMark(name)) this.#leave(name, 'unknown-name');
      } else if (value === CANNOT || check.options.includes(value)) seen[name] = value;
      else this.#leave(name, 'unknown-answer');
    }
    return seen;
  }

  list(name: string, known: (one: string) => boolean, because: LeftOut['because']): string[] {
    const parts = [...new Set((this.#texts.get(name) ?? '').split('.').filter((one) => one !== ''))];
    for (const one of parts) if (!known(one)) this.#leave(name, because);
    return parts.filter(known);
  }

  option<Option extends string>(name: string, options: readonly Option[]): Option | undefined {
    const given = this.#texts.get(name);
    const found = options.find((one) => one === given);
    if (given !== undefined && found === undefined) this.#leave(name, 'unknown-answer');
    return found;
  }

  #leave(name: string, because: LeftOut['because']): void {
    this.leftOut.push({ name, because });
  }
}

const RESERVED: ReadonlySet<string> = new Set([MADE, 'tools', 'tried', 'doing', 'fixed', 'isolation', 'phase']);
const isTool = (one: string): one is Tool => TOOLS.some((tool) => tool === one);

/** The address of what was told: names sorted, values as `parseWalk` reads them. Nothing told gives an empty text. */
export function walkAddress(told: Told): string {
  const { seen, tools, tried, doing, fixed, isolation, phase } = told;
  const pairs: (readonly [string, string | undefined])[] = [
    ...Object.entries(seen),
    ['tools', tools === undefined ? undefined : tools.join('.') || 'none'],
    ['tried', tried.join('.') || undefined],
    ['doing', doing],
    ['fixed', fixed.join('.') || undefined],
    ['isolation', isolation],
    ['phase', phase],
  ];
  const there = pairs.flatMap(([name, value]) => (value === undefined ? [] : [[name, value] as [string, string]]));
  const text = new URLSearchParams(there.sort(([a], [b]) => (a < b ? -1 : 1))).toString();
  return text === '' ? '' : `?${text}`;
}

type Snapshot = SnapshotFrom<typeof putItRight>;

export interface Walk {
  readonly state: WalkStateId;
  readonly context: Snapshot['context'];
  /** The check that is asked now. */
  readonly check: string | undefined;
  /** The fix class that is proposed, being mended, or was the last to help. */
  readonly fixClass: string | undefined;
  /** Checks answered or passed over, in the order in which they were met. */
  readonly trail: readonly string[];
}

/** Rebuilds the state from what was told: each step met is answered from it until one has no answer. */
export function replayWalk(complaint: ComplaintId, told: Told): Walk {
  const waiting = {
    seen: new Map(Object.entries(told.seen)),
    tried: [...told.tried],
    fixed: [...told.fixed],
    doing: told.doing,
  };
  let [snapshot]: [Snapshot, unknown] = initialTransition(putItRight, { complaint });
  const trail: string[] = [];
  for (;;) {
    const event = nextEvent(snapshot, told, waiting, trail);
    if (event === undefined || !snapshot.can(event)) return walkOf(snapshot, trail);
    [snapshot] = transition(putItRight, snapshot, event);
  }
}

interface Waiting {
  readonly seen: Map<string, string>;
  readonly tried: string[];
  readonly fixed: string[];
  doing: string | undefined;
}

function nextEvent(snapshot: Snapshot, told: Told, waiting: Waiting, trail: string[]): WalkEvent | undefined {
  const { context } = snapshot;
  switch (stateOf(snapshot)) {
    case 'safety':
    case 'asking':
      return answerTo(checkOf(snapshot), waiting, trail) ?? whatElse(waiting, trail);
    case 'equipping':
      return told.tools === undefined ? undefined : { type: 'user.tools', tools: told.tools };
    case 'proposing':
      return handle(fixOf(snapshot), waiting) ?? whatElse(waiting, trail);
    case 'handed-on':
      return whatElse(waiting, trail);
    case 'fixing':
      return outcomeOf(context.doing, waiting);
    case 'verifying':
      return lastLook(snapshot, told, waiting);
    case 'solved':
      return undefined;
  }
}

// The chart never rests in the state that decides: it always has a way on.
const stateOf = ({ value }: Snapshot): WalkStateId => (value === 'deciding' ? 'handed-on' : value);

function checkOf(snapshot: Snapshot): string | undefined {
  const { next } = snapshot.context;
  return next?.kind === 'ask' ? next.check : undefined;
}

function fixOf({ context }: Snapshot): string | undefined {
  if (context.doing !== undefined) return context.doing;
  if (context.fixed.length > 0) return secondFault(context) ?? context.fixed.at(-1);
  return context.next?.kind === 'fix' ? context.next.fixClass : undefined;
}

function answerTo(check: string | undefined, waiting: Waiting, trail: string[]): WalkEvent | undefined {
  const option = check === undefined ? undefined : waiting.seen.get(check);
  if (check === undefined || option === undefined) return undefined;
  waiting.seen.delete(check);
  trail.push(check);
  return option === CANNOT ? { type: 'user.cannot', check } : { type: 'user.answer', answer: { check, option } };
}

// What was told and is not asked for here still counts: it was seen on the way from another complaint, or before an answer was changed.
function whatElse(waiting: Waiting, trail: string[]): WalkEvent | undefined {
  if (waiting.seen.size > 0) {
    const all = [...waiting.seen].sort(([a], [b]) => (a < b ? -1 : 1));
    waiting.seen.clear();
    trail.push(...all.map(([check]) => check));
    return {
      type: 'user.knows',
      answers: all.flatMap(([check, option]): Seen[] => (option === CANNOT ? [] : [{ check, option }])),
      skipped: all.flatMap(([check, option]) => (option === CANNOT ? [check] : [])),
    };
  }
  const fixClass = waiting.tried.shift();
  if (fixClass !== undefined) return { type: 'user.not-helped', fixClass };
  const begun = waiting.fixed[0] ?? waiting.doing;
  if (begun === waiting.doing) waiting.doing = undefined;
  return begun === undefined ? undefined : { type: 'user.start', fixClass: begun };
}

function handle(fixClass: string | undefined, waiting: Waiting): WalkEvent | undefined {
  if (fixClass === undefined) return undefined;
  const at = waiting.tried.indexOf(fixClass);
  if (at >= 0) {
    waiting.tried.splice(at, 1);
    return { type: 'user.not-helped', fixClass };
  }
  if (waiting.doing === fixClass) {
    waiting.doing = undefined;
    return { type: 'user.start', fixClass };
  }
  return waiting.fixed.includes(fixClass) ? { type: 'user.start', fixClass } : undefined;
}

function outcomeOf(doing: string | undefined, waiting: Waiting): WalkEvent | undefined {
  const at = doing === undefined ? -1 : waiting.fixed.indexOf(doing);
  if (at < 0) return undefined;
  waiting.fixed.splice(at, 1);
  return { type: 'user.fixed' };
}

// After another fault was mended too, isolation and phase are looked at anew: the address holds the last look only.
function lastLook({ context }: Snapshot, told: Told, waiting: Waiting): WalkEvent | undefined {
  const [next] = waiting.fixed;
  const second = next ?? waiting.doing;
  if (second !== undefined && secondIsolation(second) !== undefined && context.isolation === undefined) {
    return { type: 'user.isolation', found: secondIsolation(second) ?? 'fine' };
  }
  if (second === 'reversed' && context.phase === undefined) return { type: 'user.phase', found: 'reversed' };
  if (context.isolation === undefined && told.isolation !== undefined) {
    return { type: 'user.isolation', found: told.isolation };
  }
  if (context.phase === undefined && told.phase !== undefined) return { type: 'user.phase', found: told.phase };
  return undefined;
}

const secondIsolation = (fixClass: string): Isolation | undefined => {
  if (fixClass === 'one-rail') return 'one-rail-joined';
  return fixClass === 'second-path' ? 'both-rails-joined' : undefined;
};

function walkOf(snapshot: Snapshot, trail: readonly string[]): Walk {
  const state = stateOf(snapshot);
  return {
    state,
    context: snapshot.context,
    check: state === 'safety' || state === 'asking' ? checkOf(snapshot) : undefined,
    fixClass:
      state === 'proposing' || state === 'fixing' || state === 'solved' || state === 'verifying'
        ? fixOf(snapshot)
        : undefined,
    trail,
  };
}

/** What a walk has come to: the fix it proposes or has proven, or the end without one; undefined on the way. */
export function verdictOf({ state, fixClass }: Walk): string | undefined {
  if (state === 'handed-on') return HANDED_ON;
  return state === 'proposing' || state === 'solved' ? fixClass : undefined;
}
