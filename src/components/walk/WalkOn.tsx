// A walk after its first question: the address holds what was seen and done, replay makes the state, and this draws it.
import { useCallback, useMemo, useState } from 'preact/hooks';
import type { InParts } from '../../engine/index.ts';
import type { Made } from '../../wizards/links/index.ts';
import { HANDED_ON } from '../../wizards/links/index.ts';
import type { ComplaintId, LeftOut, Place, Sitting, Told, Walk } from '../../wizards/put-it-right/index.ts';
import {
  besideInParts,
  CANNOT,
  ended,
  leavesATrace,
  mendingCheck,
  NOTHING_TOLD,
  placeInParts,
  placeOf,
  possibleNow,
  rowOfCheck,
  verdictOf,
  walkAddress,
  withoutMending,
} from '../../wizards/put-it-right/index.ts';
import { loadPicture } from '../check-picture/index.ts';
import { testsInTab } from '../device/index.ts';
import { MadeThen, Share } from '../link/index.ts';
import { type Address, useHeading } from '../shared/index.ts';
import { inMeasures, type Numbers, type Say } from '../words/index.ts';
import { PuttingBack, Waiting } from './Afterwards.tsx';
import { Asked } from './Asked.tsx';
import type { Card, CardProps } from './card.ts';
import { cardLines } from './card.ts';
import { Danger } from './Danger.tsx';
import { HandedOn, Solved, whatItWas } from './Ends.tsx';
import { Equipping } from './Equipping.tsx';
import { Fixing, Proposing } from './Fix.tsx';
import { Possible } from './Possible.tsx';
import type { PartProps } from './part-props.ts';
import { Seen } from './Seen.tsx';
import { Telling } from './Telling.tsx';
import { useAhead } from './use-ahead.ts';
import { useGoing } from './use-going.ts';
import { useLater } from './use-later.ts';
import { Verifying } from './Verifying.tsx';
import type { DangerWords, FirstWords, WalkWords } from './words.ts';

export interface WalkOnProps {
  readonly complaint: ComplaintId;
  readonly release: string;
  readonly address: Address;
  readonly sitting: Sitting;
  /** What was written in own words. */
  readonly draft: { current: string };
  readonly setSitting: (sitting: Sitting) => void;
  /** Words that were fetched, and those that came with the page. */
  readonly rest: { readonly words: WalkWords };
  readonly first: FirstWords;
  readonly say: Say;
  readonly numbers: Numbers;
  readonly language: string;
  readonly home: string;
  readonly pictureStyles: string;
}

export function WalkOn(props: WalkOnProps) {
  const { complaint, release, address, sitting, setSitting, draft, rest, first } = props;
  const { say, numbers, language, home, pictureStyles } = props;
  const place = useMemo(() => placeOf(complaint, address.search, sitting), [complaint, address.search, sitting]);
  const { told, leftOut, walk } = place;
  const { go, isOn } = useGoing({ complaint, address, sitting, setSitting, home, pictureStyles });
  const all = useMemo(() => inMeasures(together(first, rest.words), numbers), [first, rest, numbers]);
  useAhead(
    useMemo(
      () => stepsAhead(complaint, place, sitting, (next) => begin(next, rest.words.pictures, pictureStyles)),
      [complaint, place, sitting, rest, pictureStyles],
    ),
    () => !isOn.current,
  );
  const danger = dangerOf(walk, first);
  const box = useHeading(address, `${walk.state} ${walk.check} ${walk.fixClass}`);
  const verdict = verdictOf(walk);
  const made = verdict === undefined ? undefined : { release, verdict };
  const parts = { say, numbers, language, home, cautions: all.cautions, pictureStyles };
  const see = (check: string, option: string): void => {
    go(ended(complaint, withSeen(told, check, option)), { ...sitting, [check]: option });
  };
  const proposed = walk.state === 'proposing' ? walk.fixClass : undefined;
  const card = useCallback(
    (cured?: string): readonly string[] =>
      cardLines(
        { complaint, told, ...leftOf(walk, all.checks, say, cured), proposed, checks: all.checks, say, numbers },
        location.href.length,
      ),
    [complaint, told, walk, proposed, all, say, numbers],
  );
  const beside = { complaint, told, walk, checks: all.checks, made, card, go, ...parts };
  return (
    <div class={danger === undefined ? 'wizard stage walk' : 'wizard stage walk danger'} ref={box}>
      {danger !== undefined && (
        <Danger {...parts} words={danger} onCold={() => go(setAside(told, walk.fixClass ?? ''))} />
      )}
      {danger === undefined && <p class="small">{say(`complaint-${complaint}`)}</p>}
      {danger === undefined && <FromTests complaint={complaint} say={say} />}
      <Acts say={say} back={before(told, walk, address.search)} go={go} />
      <Troubles leftOut={leftOut} say={say} />
      {made !== undefined && <MadeThen {...made} titleOf={(id) => titleOf(id, rest.words.words)} say={say} />}
      {danger === undefined && <Now {...beside} sitting={sitting} see={see} draft={draft} />}
      {danger === undefined && <Beside {...beside} />}
    </div>
  );
}

/** The place of the test that led here, by the names of the person’s own sheet; and the way back to it. */
function FromTests({ complaint, say }: Pick<WalkOnProps, 'complaint' | 'say'>) {
  const [tests] = useState(testsInTab);
  if (tests?.complaint !== complaint) return null;
  return (
    <p class="small not-on-paper">
      {say('walk-from-tests', { place: tests.place })} <a href={tests.back}>{say('walk-back-to-tests')}</a>
    </p>
  );
}

/** What is still possible; where all is well again, what it was and what mended it instead. */
function leftOf(
  { state, context }: Walk,
  checks: WalkWords['checks'],
  say: Say,
  cured: string | undefined,
): Pick<CardProps, 'left' | 'solved'> {
  if (state !== 'solved') return { left: possibleNow(context).shown };
  const by = mendedBy(context, checks);
  const what = by === undefined && cured !== undefined ? [say('walk-card-cured', { what: cured })] : [];
  return { left: [], solved: [...whatItWas(context, by, say), ...what] };
}

/** How a check is called that put it right by being done. */
function mendedBy({ answers }: Walk['context'], checks: WalkWords['checks']): string | undefined {
  const by = mendingCheck(Object.fromEntries(answers.map(({ check, option }) => [check, option])));
  return by === undefined ? undefined : checks[by]?.known;
}

const withSeen = (told: Told, check: string, option: string): Told => ({
  ...told,
  seen: { ...told.seen, [check]: option },
});

/** The steps after each answer to the question that stands there; the walk remembers them. */
function stepsAhead(
  complaint: ComplaintId,
  { told, walk }: Place,
  sitting: Sitting,
  begin: (next: Place) => void,
): (() => InParts<void>)[] {
  const { state, check } = walk;
  if (state !== 'asking' || check === undefined) return [];
  const options = [...(rowOfCheck(check)?.options ?? []), CANNOT];
  return options.map(
    (option) =>
      function* (): InParts<void> {
        const search = walkAddress(withSeen(told, check, option));
        begin(yield* placeInParts(complaint, search, { ...sitting, [check]: option }));
      },
  );
}

/** What draws the picture of a question to come is loaded while the one before it is read. What cannot be had is asked for again, and said, there. */
function begin({ walk: { check } }: Place, pictures: readonly string[], styles: string): void {
  if (check !== undefined && pictures.includes(check)) loadPicture(styles).catch(() => undefined);
}

/** How a walk calls what it came to. */
const titleOf = (verdict: string, words: WalkWords['words']): string | undefined =>
  words[verdict === HANDED_ON ? 'walk-handed-on' : `class-${verdict}`];

/** What to do first where an answer means danger. */
function dangerOf({ state, context, fixClass = '' }: Walk, { dangers }: FirstWords): DangerWords | undefined {
  if (state !== 'proposing') return undefined;
  const { next } = context;
  return next?.kind === 'fix' && next.danger !== undefined ? dangers[fixClass] : undefined;
}

/** The words that came with the page, and those that came after. */
const together = (first: FirstWords, later: WalkWords): WalkWords => ({
  words: later.words,
  pictures: later.pictures,
  checks: { ...first.checks, ...later.checks },
  cautions: { ...first.cautions, ...later.cautions },
});

type Go = (next: Told, said?: Sitting) => void;

interface BesideProps extends PartProps {
  readonly complaint: ComplaintId;
  readonly walk: Walk;
  readonly told: Told;
  readonly checks: WalkWords['checks'];
  readonly made: Made | undefined;
  readonly card: Card;
  readonly go: Go;
}

/** What was told, and what is still possible: reckoned once the next question is on the screen. */
function Beside({ complaint, told, walk, checks, made, card, go, ...parts }: BesideProps) {
  const now = useLater(
    useMemo(() => ({ told, walk, card }), [told, walk, card]),
    ({ walk: { context } }) => besideInParts(context),
  );
  const isOn = now !== undefined && now.walk.state !== 'solved' && now.walk.state !== 'telling';
  return useMemo(
    () => (
      <aside class="beside">
        {now !== undefined && now.walk.state !== 'telling' && (
          <Seen
            {...parts}
            complaint={complaint}
            told={now.told}
            walk={now.walk}
            checks={checks}
            onForget={(id) => go(without(now.told, id))}
            onTools={() => go({ ...now.told, tools: undefined })}
            onTellMore={() => go({ ...now.told, toldFirst: false })}
            made={made}
            card={now.card()}
            ended={now.walk.state === 'solved' || now.walk.state === 'handed-on'}
          />
        )}
        {isOn && (
          <Possible {...parts} context={now.walk.context} checks={checks} isListed={now.walk.state === 'handed-on'} />
        )}
      </aside>
    ),
    [now, checks],
  );
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

/**
 * One step back: out of the mending, out of the last look, else the last answer is asked again. What is safe stands in no address: this
 * sitting knows it, wherever it was told, so it is no step to go back to.
 */
function before(told: Told, walk: Walk, search: string): Told | undefined {
  if (told.phase !== undefined) return { ...told, phase: undefined };
  if (told.isolation !== undefined) return { ...told, isolation: undefined };
  if (told.stayedAway) return { ...told, stayedAway: false };
  if (told.undoing !== undefined) return { ...told, undoing: undefined, doing: told.undoing };
  if (told.doing !== undefined) return { ...told, doing: undefined };
  const helped = told.fixed.at(-1);
  if (helped !== undefined) return { ...told, fixed: told.fixed.slice(0, -1), doing: helped };
  const given = new URLSearchParams(search);
  const last = walk.trail.filter((check) => told.seen[check] !== undefined && given.has(check)).at(-1);
  if (walk.state === 'telling') return undefined;
  if (last === undefined || walk.trail.length === 1) return { ...told, toldFirst: false, tools: undefined };
  return without(told, last);
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

interface PassOnProps extends Omit<CardProps, 'left'> {
  readonly told: Told;
}

/** The card of what is told so far, before anything was asked: its link goes on from there. */
function PassOn(props: PassOnProps) {
  const ahead = walkAddress(props.told);
  const card = cardLines({ ...props, left: [] }, location.origin.length + location.pathname.length + ahead.length);
  return (
    <section class="part">
      <div class="on-paper">
        {card.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      <Share text={() => card.join('\n')} told={() => card} say={props.say} made={undefined} ahead={ahead} />
    </section>
  );
}

interface NowProps extends BesideProps {
  readonly sitting: Sitting;
  readonly see: (check: string, option: string) => void;
  /** What was written in own words: it lives as long as this page is open, and nowhere else. */
  readonly draft: { current: string };
}

/** What the state asks of the person. */
function Now({ walk, told, sitting, checks, made, card, go, see, draft, complaint, ...parts }: NowProps) {
  const { context, state, check = '', fixClass = '' } = walk;
  switch (state) {
    case 'safety':
    case 'asking':
      return (
        <Asked
          key={check}
          {...parts}
          id={check}
          context={context}
          checks={checks}
          onAnswer={(option) => see(check, option)}
          onCannot={() => see(check, CANNOT)}
        />
      );
    case 'telling':
      return (
        <Telling
          {...parts}
          seen={told.seen}
          tried={told.tried}
          sitting={sitting}
          checks={checks}
          draft={draft}
          onDanger={(seen, check, option) =>
            go({ ...told, seen: { ...seen, [check]: option } }, { ...sitting, [check]: option })
          }
          onTold={(seen) => go(ended(complaint, { ...told, seen, toldFirst: true }))}
          passOn={(seen) => <PassOn {...parts} {...{ complaint, checks }} told={{ ...told, seen, toldFirst: true }} />}
        />
      );
    case 'equipping':
      return <Equipping say={parts.say} onTools={(tools) => go({ ...told, tools })} />;
    case 'proposing':
      return (
        <Proposing
          {...parts}
          fixClass={fixClass}
          context={context}
          onStart={() => go({ ...told, doing: fixClass })}
          onNotHelped={() => go(setAside(told, fixClass))}
        />
      );
    case 'fixing':
      return (
        <Fixing
          {...parts}
          fixClass={fixClass}
          onFixed={() => go(helped(told, fixClass))}
          onNotHelped={() =>
            go(leavesATrace(fixClass) ? { ...told, doing: undefined, undoing: fixClass } : setAside(told, fixClass))
          }
        />
      );
    case 'putting-back':
      return <PuttingBack {...parts} fixClass={fixClass} onDone={(done) => go(putBack(told, fixClass, done))} />;
    case 'waiting':
      return (
        <Waiting
          {...parts}
          onStayedAway={() => go({ ...told, stayedAway: true })}
          onCameBack={() => go(cameBack(told))}
        />
      );
    case 'verifying':
      return (
        <Verifying
          {...parts}
          context={context}
          onIsolation={(isolation) => go({ ...told, isolation })}
          onPhase={(phase) => go({ ...told, phase })}
        />
      );
    case 'solved':
      return <Solved {...parts} context={context} by={mendedBy(context, checks)} made={made} card={card} />;
    case 'handed-on':
      return (
        <HandedOn
          {...parts}
          context={context}
          checks={checks}
          made={made}
          card={card}
          onStart={(doing) => go({ ...told, doing })}
          onSee={see}
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
  return { ...told, doing: undefined, undoing: undefined, tried, isolation: undefined, phase: undefined };
}

/** It is set aside, and whether it was put back is kept. */
function putBack(told: Told, fixClass: string, done: boolean): Told {
  const next = setAside(told, fixClass);
  return done ? next : { ...next, left: [...told.left, fixClass] };
}

/** What seemed to help did not; nor did the check that seemed to. */
const cameBack = (told: Told): Told => ({
  ...told,
  seen: withoutMending(told.seen),
  tried: [...new Set([...told.tried, ...told.fixed])],
  fixed: [],
  isolation: undefined,
  phase: undefined,
});
