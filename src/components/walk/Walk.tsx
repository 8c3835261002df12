// "Put it right": the address holds what was seen and done, replay makes the state, and this draws it.
import { useCallback, useErrorBoundary, useMemo } from 'preact/hooks';
import type { Made } from '../../wizards/links/index.ts';
import { HANDED_ON } from '../../wizards/links/index.ts';
import type { ComplaintId, LeftOut, Told, Walk as WalkNow } from '../../wizards/put-it-right/index.ts';
import {
  CANNOT,
  NOTHING_TOLD,
  parseWalk,
  replayWalk,
  verdictOf,
  walkAddress,
} from '../../wizards/put-it-right/index.ts';
import {
  fetchStyles,
  fetchWords,
  type Loaded,
  Missing,
  NotYet,
  useAddress,
  useHeading,
  useLoaded,
  useMeasures,
} from '../shared/index.ts';
import { inMeasures, Numbers, type Say, sayer } from '../words/index.ts';
import { Asked } from './Asked.tsx';
import { Danger } from './Danger.tsx';
import type { PartProps } from './part-props.ts';
import { useLater } from './use-later.ts';
import type { DangerWords, FirstWords, WalkWords } from './words.ts';

export interface WalkProps {
  readonly complaint: ComplaintId;
  /** Tag by which numbers, plurals and sentences are written. */
  readonly language: string;
  /** Start of addresses below the language. */
  readonly home: string;
  /** Links to what a walk comes to carry it. */
  readonly release: string;
  /** Addresses of the styles that no first question and no danger needs. */
  readonly laterStyles: readonly string[];
  /** Sentences that the first question and a danger need. */
  readonly words: Readonly<Record<string, string>>;
  readonly first: FirstWords;
}

export default function Walk({
  complaint,
  language,
  home,
  release,
  laterStyles,
  words: written,
  first: firstWritten,
}: WalkProps) {
  const system = useMeasures();
  const numbers = useMemo(() => new Numbers(language, system, written), [language, system, written]);
  const { words, first } = useMemo(
    () => inMeasures({ words: written, first: firstWritten }, numbers),
    [written, firstWritten, numbers],
  );
  const address = useAddress();
  const { told, leftOut } = useMemo(() => parseWalk(address.search), [address.search]);
  const go = useCallback<Go>((next) => address.go(walkAddress(next)), []);
  const walk = useMemo(() => replayWalk(complaint, told), [complaint, told]);
  const begun = walk.trail.length > 0 || walk.state !== 'safety';
  const loaded = useRest(begun, home, laterStyles);
  const rest = loaded.value;
  const all = useMemo(() => inMeasures(allWords(first, rest?.words), numbers), [first, rest, numbers]);
  const say = useMemo(() => sayer({ ...words, ...all.words }, language), [words, all, language]);
  const [crash] = useErrorBoundary();
  const danger = dangerOf(walk, first);
  const place = `${rest === undefined && danger === undefined} ${walk.state} ${walk.check} ${walk.fixClass}`;
  const box = useHeading(address, place);
  if (crash !== undefined) {
    return (
      <p class="problem" role="alert">
        {say('problem-crash')}
      </p>
    );
  }
  const verdict = verdictOf(walk);
  const made = verdict === undefined ? undefined : { release, verdict };
  const parts = { say, numbers, language, home, cautions: all.cautions, Picture: rest?.CheckPicture };
  return (
    <div class={danger === undefined ? 'wizard stage walk' : 'wizard stage walk danger'} ref={box}>
      {danger !== undefined && (
        <Danger {...parts} words={danger} onCold={() => go(setAside(told, walk.fixClass ?? ''))} />
      )}
      {danger === undefined && (
        <About complaint={complaint} begun={begun} meant={words['walk-parts-meant']} say={say} />
      )}
      {begun && <Acts say={say} back={before(told, walk)} go={go} />}
      <Troubles leftOut={leftOut} say={say} />
      {rest !== undefined && made !== undefined && (
        <rest.MadeThen {...made} titleOf={(id) => titleOf(id, all.words)} say={say} />
      )}
      {danger === undefined && (
        <Now {...parts} rest={rest} walk={walk} told={told} checks={all.checks} made={made} go={go} />
      )}
      {rest !== undefined && (
        <Beside
          {...parts}
          rest={rest}
          complaint={complaint}
          danger={danger !== undefined}
          told={told}
          walk={walk}
          checks={all.checks}
          made={made}
          go={go}
        />
      )}
      {begun && rest === undefined && <Awaited loaded={loaded} danger={danger !== undefined} say={say} />}
    </div>
  );
}

/** How a walk calls what it came to. */
const titleOf = (verdict: string, words: WalkWords['words']): string | undefined =>
  words[verdict === HANDED_ON ? 'walk-handed-on' : `class-${verdict}`];

/** What to do first where an answer means danger. */
function dangerOf({ state, context, fixClass = '' }: WalkNow, { dangers }: FirstWords): DangerWords | undefined {
  if (state !== 'proposing') return undefined;
  const { next } = context;
  return next?.kind === 'fix' && next.danger !== undefined ? dangers[fixClass] : undefined;
}

interface BesideProps extends NowProps {
  readonly rest: Rest;
  readonly complaint: ComplaintId;
  /** In danger nobody weighs causes. */
  readonly danger: boolean;
}

/** What is still possible and what was told: reckoned once the next question is on the screen. */
function Beside({ complaint, danger, rest, told, walk, checks, made, go, ...parts }: BesideProps) {
  const now = useLater(useMemo(() => ({ told, walk }), [told, walk]));
  return useMemo(
    () => (
      <aside class="beside">
        {now.walk.state !== 'solved' && !danger && (
          <rest.Possible {...parts} context={now.walk.context} checks={checks} />
        )}
        <rest.Seen
          {...parts}
          complaint={complaint}
          told={now.told}
          trail={now.walk.trail}
          checks={checks}
          onForget={(id) => go(without(now.told, id))}
          onTools={() => go({ ...now.told, tools: undefined })}
          made={made}
          ended={now.walk.state === 'solved' || now.walk.state === 'handed-on'}
        />
      </aside>
    ),
    [now, checks, rest, danger],
  );
}

interface AboutProps {
  readonly complaint: ComplaintId;
  readonly begun: boolean;
  /** What new and old part are; undefined where there may be one part only. */
  readonly meant: string | undefined;
  readonly say: Say;
}

/** The complaint in the person's words, and what to do right now; one line once the walk has begun. */
function About({ complaint, begun, meant, say }: AboutProps) {
  if (begun) return <p class="small">{say(`complaint-${complaint}`)}</p>;
  return (
    <div class="about">
      <p class="complaint">{say(`complaint-${complaint}`)}</p>
      <p>
        <b>{say('walk-right-now')}:</b> {say('walk-first')}
      </p>
      {meant !== undefined && <p class="small">{meant}</p>}
    </div>
  );
}

type Go = (next: Told) => void;

type Rest = typeof import('./rest.ts') & { readonly words: WalkWords };

/** What a walk needs after its first question: nothing of it is drawn before its words are there. */
function useRest(wanted: boolean, home: string, laterStyles: readonly string[]): Loaded<Rest> {
  const load = useCallback(
    async (stop: AbortSignal): Promise<Rest> => {
      const [rest, words] = await Promise.all([
        import('./rest.ts'),
        fetchWords(`${home}put-it-right/words.json`, stop),
        ...laterStyles.map(fetchStyles),
      ]);
      return { ...rest, words: rest.readWalkWords(words) };
    },
    [home, laterStyles],
  );
  return useLoaded(wanted ? load : undefined);
}

/** The words that came with the page, and those that came after. */
function allWords(first: FirstWords, later: WalkWords | undefined): WalkWords {
  return {
    words: later?.words ?? {},
    checks: { ...first.checks, ...later?.checks },
    cautions: { ...first.cautions, ...later?.cautions },
  };
}

/** In danger nobody waits for what stands beside; that it is missing is said all the same. */
function Awaited({
  loaded,
  danger,
  say,
}: {
  readonly loaded: Loaded<Rest>;
  readonly danger: boolean;
  readonly say: Say;
}) {
  if (!danger) return <NotYet say={say} failed={loaded.failed} again={loaded.again} />;
  return loaded.failed ? <Missing say={say} again={loaded.again} /> : null;
}

interface ActsProps {
  readonly say: Say;
  /** What was told one step before; undefined at the start. */
  readonly back: Told | undefined;
  readonly go: Go;
}

function Acts({ say, back, go }: ActsProps) {
  return (
    <div class="acts">
      {back !== undefined && (
        <button class="link" type="button" onClick={() => go(back)}>
          <span class="sign">←</span> {say('back')}
        </button>
      )}
      <button class="link" type="button" onClick={() => go(NOTHING_TOLD)}>
        {say('restart')}
      </button>
    </div>
  );
}

/** One step back: out of the mending, out of the last look, else the last answer is asked again. */
function before(told: Told, walk: WalkNow): Told | undefined {
  if (told.phase !== undefined) return { ...told, phase: undefined };
  if (told.isolation !== undefined) return { ...told, isolation: undefined };
  if (told.doing !== undefined) return { ...told, doing: undefined };
  const helped = told.fixed.at(-1);
  if (helped !== undefined) return { ...told, fixed: told.fixed.slice(0, -1), doing: helped };
  const last = walk.trail.at(-1);
  if (walk.trail.length === 1 && told.tools !== undefined) return { ...told, tools: undefined };
  return last === undefined ? undefined : without(told, last);
}

function without(told: Told, check: string): Told {
  const { [check]: _, ...seen } = told.seen;
  return { ...told, seen };
}

function Troubles({ leftOut, say }: { readonly leftOut: readonly LeftOut[]; readonly say: Say }) {
  if (leftOut.length === 0) return null;
  return (
    <p class="problem" role="alert">
      {say('walk-left-out', { n: leftOut.length })}
    </p>
  );
}

interface NowProps extends PartProps {
  /** Undefined until it has been loaded; questions do without. */
  readonly rest: Rest | undefined;
  readonly walk: WalkNow;
  readonly told: Told;
  readonly checks: WalkWords['checks'];
  readonly made: Made | undefined;
  readonly go: Go;
}

/** What the state asks of the person. */
function Now({ rest, walk, told, checks, made, go, ...parts }: NowProps) {
  const { context, state, check = '', fixClass = '' } = walk;
  const see = (option: string): void => go({ ...told, seen: { ...told.seen, [check]: option } });
  if (state === 'safety' || state === 'asking') {
    const words = checks[check];
    return words === undefined ? null : (
      <Asked
        key={check}
        {...parts}
        id={check}
        words={words}
        context={context}
        onAnswer={see}
        onCannot={() => see(CANNOT)}
      />
    );
  }
  if (rest === undefined) return null;
  switch (state) {
    case 'equipping':
      return <rest.Equipping say={parts.say} onTools={(tools) => go({ ...told, tools })} />;
    case 'proposing':
      return (
        <rest.Proposing
          {...parts}
          fixClass={fixClass}
          context={context}
          onStart={() => go({ ...told, doing: fixClass })}
          onNotHelped={() => go(setAside(told, fixClass))}
        />
      );
    case 'fixing':
      return (
        <rest.Fixing
          {...parts}
          fixClass={fixClass}
          onFixed={() => go(helped(told, fixClass))}
          onNotHelped={() => go(setAside(told, fixClass))}
        />
      );
    case 'verifying':
      return (
        <rest.Verifying
          {...parts}
          context={context}
          onIsolation={(isolation) => go({ ...told, isolation })}
          onPhase={(phase) => go({ ...told, phase })}
        />
      );
    case 'solved':
      return <rest.Solved {...parts} context={context} made={made} />;
    case 'handed-on':
      return (
        <rest.HandedOn
          {...parts}
          context={context}
          checks={checks}
          made={made}
          onStart={(doing) => go({ ...told, doing })}
        />
      );
  }
}

const helped = (told: Told, fixClass: string): Told => ({
  ...told,
  doing: undefined,
  fixed: [...told.fixed, fixClass],
  isolation: undefined,
  phase: undefined,
});

/** What was mended did not help: it is set aside, what was seen stays. */
function setAside(told: Told, fixClass: string): Told {
  const tried = told.tried.includes(fixClass) ? told.tried : [...told.tried, fixClass];
  return { ...told, doing: undefined, tried, isolation: undefined, phase: undefined };
}
