// A walk in an address: ?check=option for what was seen, and a few names for what was done. Read, replayed, written here only.
import type { SnapshotFrom } from 'xstate';
import { initialTransition, transition } from 'xstate';
import type { InParts, Seen, Tool } from '../../engine/index.ts';
import { TOOLS } from '../../engine/index.ts';
import { HANDED_ON, isMark, MADE } from '../links/index.ts';
import type { ComplaintId } from './model/index.ts';
import { SIGN_MODEL, showsSafety } from './model/index.ts';
import type { Isolation, Phase, WalkEvent, WalkStateId } from './states.ts';
import { ISOLATION, PHASE, putItRight, secondFault } from './states.ts';
import type { Known } from './step.ts';
import { stepInParts } from './step.ts';

/** What a person has said and done, as an address holds it, and what was said in this sitting. */
export interface Told {
  /** Option id by check id; `cannot` where it could not be checked. */
  readonly seen: Readonly<Record<string, string>>;
  /** Whether what was known already has been told, or passed over. */
  readonly toldFirst: boolean;
  readonly tools: readonly Tool[] | undefined;
  readonly tried: readonly string[];
  /** Of those tried, what was left as it was changed. */
  readonly left: readonly string[];
  readonly doing: string | undefined;
  /** What did not help and is to be put back. */
  readonly undoing: string | undefined;
  readonly fixed: readonly string[];
  /** A trouble that comes and goes has stayed away. */
  readonly stayedAway: boolean;
  readonly isolation: Isolation | undefined;
  readonly phase: Phase | undefined;
}

/**
 * What was answered in this sitting, option id by check id: never part of an address. Only danger travels in a link: whoever opens one is asked
 * anew whether something is hot, and nothing that it says shows that a test may be done.
 */
export type Sitting = Readonly<Record<string, string>>;

export const NOTHING_TOLD: Told = {
  seen: {},
  toldFirst: false,
  tools: undefined,
  tried: [],
  left: [],
  doing: undefined,
  undoing: undefined,
  fixed: [],
  stayedAway: false,
  isolation: undefined,
  phase: undefined,
};

export const CANNOT = 'cannot';

/** Part of an address that was left out: its name is not known any more, or what it says is not. A page counts them: it repeats nobody's text. */
export interface LeftOut {
  readonly name: string;
  readonly because: 'unknown-name' | 'unknown-answer' | 'unknown-fix' | 'unknown-tool';
}

const CHECKS = new Map(SIGN_MODEL.checks.map((check) => [check.id, check]));
const CLASSES = new Set(SIGN_MODEL.causes.map(({ fixClass }) => fixClass));

/**
 * Reads an address. Never throws; the first of several values of one name counts. That nothing is hot is never read off it: only what was
 * said in this sitting counts for that.
 */
export function parseWalk(search: string, sitting: Sitting = {}): { told: Told; leftOut: LeftOut[] } {
  const texts = new Map<string, string>();
  for (const [name, value] of new URLSearchParams(search)) if (!texts.has(name)) texts.set(name, value);
  const reader = new AddressReader(texts);
  const seen = { ...reader.seen(), ...safeIn(sitting) };
  const tools = reader.list('tools', (one) => one === 'none' || isTool(one), 'unknown-tool').filter(isTool);
  const classes = (name: string): string[] => reader.list(name, (one) => CLASSES.has(one), 'unknown-fix');
  const [doing, undoing] = [classes('doing')[0], classes('undo')[0]];
  const [tried, fixed] = [classes('tried'), classes('fixed')];
  const isOn = texts.has('tools') || doing !== undefined || tried.length > 0 || fixed.length > 0;
  const told: Told = {
    seen,
    // A link of an older release was made after the first questions.
    toldFirst:
      texts.get('told') !== 'no' &&
      (texts.get('told') === 'yes' || isOn || Object.keys(seen).some((id) => CHECKS.get(id)?.first !== true)),
    tools: texts.has('tools') ? tools : undefined,
    tried,
    left: classes('left').filter((one) => tried.includes(one)),
    doing,
    undoing,
    fixed,
    stayedAway: texts.get('stayed') === 'yes',
    isolation: reader.option('isolation', ISOLATION),
    phase: reader.option('phase', PHASE),
  };
  return { told, leftOut: reader.leftOut };
}

/** Answers of this sitting by which something is safe; they stand in no address. */
const safeIn = (sitting: Sitting): Record<string, string> =>
  Object.fromEntries(Object.entries(sitting).filter(([check, option]) => isFirstAndSafe(check, option)));

const isFirstAndSafe = (check: string, option: string): boolean =>
  CHECKS.get(check)?.first === true && showsSafety(check, option);

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
      } else if (isFirstAndSafe(name, value)) continue;
      else if (value === CANNOT || check.options.includes(value)) seen[name] = value;
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

const RESERVED: ReadonlySet<string> = new Set([
  ...[MADE, 'told', 'tools', 'tried', 'left', 'doing', 'undo', 'fixed', 'stayed', 'isolation', 'phase'],
]);
const isTool = (one: string): one is Tool => TOOLS.some((tool) => tool === one);

/** That one has begun to tell, and may go on: a word of its own, for what else stands in the address could say that it is done. */
const begun = ({ seen, tried, fixed, tools, doing, undoing }: Told): string | undefined =>
  [...Object.keys(seen), ...tried, ...fixed].length > 0 || [tools, doing, undoing].some((one) => one !== undefined)
    ? 'no'
    : undefined;

/** The address of what was told, in the order in which it was told, values as `parseWalk` reads them. Nothing told gives an empty text. */
export function walkAddress(told: Told): string {
  const { seen, toldFirst, tools, tried, left, doing, undoing, fixed, stayedAway, isolation, phase } = told;
  const pairs: (readonly [string, string | undefined])[] = [
    ...Object.entries(seen).filter(([check, option]) => !isFirstAndSafe(check, option)),
    ['told', toldFirst ? 'yes' : begun(told)],
    ['tools', tools === undefined ? undefined : tools.join('.') || 'none'],
    ['tried', tried.join('.') || undefined],
    ['left', left.join('.') || undefined],
    ['doing', doing],
    ['undo', undoing],
    ['fixed', fixed.join('.') || undefined],
    ['stayed', stayedAway ? 'yes' : undefined],
    ['isolation', isolation],
    ['phase', phase],
  ];
  const there = pairs.flatMap(([name, value]): [string, string][] => (value === undefined ? [] : [[name, value]]));
  const text = new URLSearchParams(there).toString();
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

/** Rebuilds the state from what was told: each step met is answered from it until one has no answer. Answers of the sitting can show that something is safe. */
export function replayWalk(complaint: ComplaintId, told: Told, sitting: Sitting = {}): Walk {
  const { seen, toldFirst, tools, tried, left, fixed, doing, undoing } = told;
  const waiting = { seen: new Map(Object.entries(seen)), tried: [...tried], fixed: [...fixed], doing, undoing };
  const input = { complaint, trusted: trustedIn(seen, sitting), toldFirst, tools, left };
  let [snapshot]: [Snapshot, unknown] = initialTransition(putItRight, input);
  const trail: string[] = [];
  for (;;) {
    const event = nextEvent(snapshot, told, waiting, trail);
    if (event === undefined || !snapshot.can(event)) return walkOf(snapshot, trail);
    [snapshot] = transition(putItRight, snapshot, event);
  }
}

const trustedIn = (seen: Told['seen'], sitting: Sitting): Set<string> =>
  new Set(Object.keys(sitting).filter((check) => sitting[check] === seen[check]));

/** The steps that a replay asks for, reckoned a part at a time: then it has none to reckon. */
export function* stepsOfReplay(complaint: ComplaintId, { seen, tools, tried }: Told, sitting: Sitting): InParts<void> {
  const nothing: Known = {
    ...{ complaint, answers: [], skipped: [], tools, tried: [] },
    trusted: trustedIn(seen, sitting),
  };
  const first = yield* stepInParts(nothing);
  if (first.kind === 'ask' && first.because === 'first' && seen[first.check] === undefined) return;
  const all = { ...nothing, ...asTold(Object.entries(seen)) };
  for (let count = 0; count <= tried.length; count++) yield* stepInParts({ ...all, tried: tried.slice(0, count) });
}

interface Waiting {
  readonly seen: Map<string, string>;
  readonly tried: string[];
  readonly fixed: string[];
  doing: string | undefined;
  undoing: string | undefined;
}

function nextEvent(snapshot: Snapshot, told: Told, waiting: Waiting, trail: string[]): WalkEvent | undefined {
  const { context } = snapshot;
  switch (stateOf(snapshot)) {
    case 'safety':
      return waiting.seen.has(checkOf(snapshot) ?? '') ? allSeen(waiting, trail) : undefined;
    case 'asking':
    case 'equipping':
      return whatElse(waiting, trail);
    case 'waiting':
      return told.stayedAway ? { type: 'user.stayed-away' } : undefined;
    case 'telling':
    case 'putting-back':
      return undefined;
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
  if (context.undoing !== undefined) return context.undoing;
  if (context.doing !== undefined) return context.doing;
  if (context.fixed.length > 0) return secondFault(context) ?? context.fixed.at(-1);
  return context.next?.kind === 'fix' ? context.next.fixClass : undefined;
}

/** Everything that was seen, in the order in which it was told. */
function allSeen(waiting: Waiting, trail: string[]): WalkEvent {
  const all = [...waiting.seen];
  waiting.seen.clear();
  trail.push(...all.map(([check]) => check));
  return {
    type: 'user.knows',
    ...asTold(all),
  };
}

const asTold = (all: readonly (readonly [string, string])[]): Pick<Known, 'answers' | 'skipped'> => ({
  answers: all.flatMap(([check, option]): Seen[] => (option === CANNOT ? [] : [{ check, option }])),
  skipped: all.flatMap(([check, option]) => (option === CANNOT ? [check] : [])),
});

// What was told and is not asked for here still counts: it was seen on the way from another complaint, or before an answer was changed.
function whatElse(waiting: Waiting, trail: string[]): WalkEvent | undefined {
  if (waiting.seen.size > 0) return allSeen(waiting, trail);
  const fixClass = waiting.tried.shift();
  if (fixClass !== undefined) return { type: 'user.not-helped', fixClass };
  const begun = waiting.fixed[0] ?? waiting.doing ?? waiting.undoing;
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
  const isBegun = waiting.fixed.includes(fixClass) || waiting.undoing === fixClass;
  return isBegun ? { type: 'user.start', fixClass } : undefined;
}

function outcomeOf(doing: string | undefined, waiting: Waiting): WalkEvent | undefined {
  if (doing !== undefined && waiting.undoing === doing) {
    waiting.undoing = undefined;
    return { type: 'user.not-helped', fixClass: doing };
  }
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

const HAS_FIX: ReadonlySet<WalkStateId> = new Set<WalkStateId>([
  ...(['proposing', 'fixing', 'putting-back', 'waiting', 'verifying', 'solved'] as const),
]);

function walkOf(snapshot: Snapshot, trail: readonly string[]): Walk {
  const state = stateOf(snapshot);
  return {
    state,
    context: snapshot.context,
    check: state === 'safety' || state === 'asking' ? checkOf(snapshot) : undefined,
    fixClass: HAS_FIX.has(state) ? fixOf(snapshot) : undefined,
    trail,
  };
}

/** What a walk has come to: the fix it proposes or has proven, or the end without one; undefined on the way. */
export function verdictOf({ state, fixClass }: Walk): string | undefined {
  if (state === 'handed-on') return HANDED_ON;
  return state === 'proposing' || state === 'solved' ? fixClass : undefined;
}
