// "Put it right": first whether something is dangerous, with words that came with the page. Everything else is loaded after that answer.
import { useCallback, useErrorBoundary, useMemo, useRef, useState } from 'preact/hooks';
import { isMark, MADE } from '../../wizards/links/index.ts';
import type { ComplaintId, Sitting } from '../../wizards/put-it-right/index.ts';
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
import { Danger } from './Danger.tsx';
import { Question } from './Question.tsx';
import type { FirstWords, WalkWords } from './words.ts';

export interface WalkProps {
  readonly complaint: ComplaintId;
  /** Tag by which numbers, plurals and sentences are written. */
  readonly language: string;
  /** Start of addresses below the language. */
  readonly home: string;
  /** Links to what a walk comes to carry it. */
  readonly release: string;
  /** Address of the styles that no first question and no danger needs. */
  readonly laterStyles: string;
  /** And of those that only pictures of checks need. */
  readonly pictureStyles: string;
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
  pictureStyles,
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
  const [sitting, setSitting] = useState<Sitting>({});
  /** What is written in own words lives as long as this page is open, and nowhere else. */
  const draft = useRef('');
  const at = useMemo(() => firstOf(address.search, sitting, first), [address.search, sitting, first]);
  const where = { complaint, home, laterStyles, pictureStyles, numbers };
  const loaded = useRest(at.begun, where, { search: address.search, sitting });
  const rest = loaded.value;
  const say = useMemo(() => sayer({ ...words, ...rest?.words.words }, language), [words, rest, language]);
  const [crash] = useErrorBoundary();
  const danger = at.fixClass === undefined ? undefined : first.dangers[at.fixClass];
  const isFirst = at.asks || danger !== undefined || rest === undefined;
  const box = useHeading(address, isFirst ? `${at.asks} ${at.fixClass} ${rest === undefined}` : 'on');
  if (crash !== undefined) {
    return (
      <p class="problem" role="alert">
        {say('problem-crash')}
      </p>
    );
  }
  const parts = { say, numbers, language, home, cautions: first.cautions };
  const answer = (option: string): void => {
    setSitting({ ...sitting, [at.check]: option });
    address.go(answered(address.search, at.check, option, first.safe));
  };
  /** It was tapped by mistake: the question stands there again. */
  const back = (): void => {
    const { [at.from]: _, ...others } = sitting;
    setSitting(others);
    address.go(without(address.search, at.from));
  };
  const words1 = first.checks[at.check];
  if (!isFirst) {
    return (
      <rest.WalkOn
        {...{
          complaint,
          release,
          address,
          sitting,
          setSitting,
          draft,
          rest,
          say,
          numbers,
          language,
          home,
          first,
          pictureStyles,
        }}
      />
    );
  }
  return (
    <div class={danger === undefined ? 'wizard stage walk' : 'wizard stage walk danger'} ref={box}>
      {danger !== undefined && (
        <>
          <Danger {...parts} words={danger} onCold={() => address.go(cold(address.search, at.fixClass ?? ''))} />
          <div class="acts">
            <button class="link" type="button" onClick={back}>
              <span class="sign">←</span> {say('back')}
            </button>
          </div>
        </>
      )}
      {danger === undefined && at.asks && words1 !== undefined && (
        <>
          <About complaint={complaint} meant={words['walk-parts-meant']} say={say} />
          {at.keeps && <p class="small">{say('walk-kept')}</p>}
          <Question {...parts} id={at.check} row={first.rows[at.check]} words={words1} onAnswer={answer} />
        </>
      )}
      {at.begun && rest === undefined && !at.asks && (
        <Awaited loaded={loaded} danger={danger !== undefined} say={say} />
      )}
    </div>
  );
}

interface First {
  /** The check that comes before everything else. */
  readonly check: string;
  /** Whether it is asked now: it was not answered in this sitting, or one has gone back to it. */
  readonly asks: boolean;
  /** Whether the address holds anything that was told before. */
  readonly keeps: boolean;
  /** Whether anything was answered: then the rest is wanted. */
  readonly begun: boolean;
  /** Where an answer means danger that has not been dealt with: what to do. */
  readonly fixClass: string | undefined;
  /** The check of that answer; else the first. */
  readonly from: string;
}

/** What an address and this sitting say of the first check. Only danger is read off an address. */
function firstOf(search: string, sitting: Sitting, { rows, safe, dangersInLink }: FirstWords): First {
  const given = new URLSearchParams(search);
  const [check = ''] = Object.keys(rows);
  const row = rows[check];
  const inLink = given.get(check) ?? undefined;
  const option =
    inLink !== undefined && row?.options.includes(inLink) && !safe.includes(inLink) ? inLink : sitting[check];
  const tried = (given.get('tried') ?? '').split('.');
  const told = option === undefined ? [...given] : [[check, option] as const, ...given];
  const danger = told
    .map(([name, value]) => ({ from: name, fixClass: dangersInLink[`${name}=${value}`] }))
    .find(({ fixClass }) => fixClass !== undefined && !tried.includes(fixClass));
  const isBare = saysNothing(given);
  return {
    check,
    asks: option === undefined || isBare,
    keeps: [...given.keys()].some((name) => name !== 'told' && name !== MADE && !isMark(name)),
    begun: option !== undefined && !isBare,
    fixClass: isBare ? undefined : danger?.fixClass,
    from: danger?.from ?? check,
  };
}

const saysNothing = (given: URLSearchParams): boolean =>
  [...given.keys()].every((name) => name === MADE || isMark(name));

/** The address after the first answer: what is safe stands in none, but that one has gone on does. */
function answered(search: string, check: string, option: string, safe: readonly string[]): string {
  const given = new URLSearchParams(search);
  if (safe.includes(option)) given.delete(check);
  else given.set(check, option);
  if (saysNothing(given) || (given.size === 1 && given.has(check))) given.set('told', 'no');
  return `?${given}`;
}

/** The address before `check` was answered; that nothing has been told yet needs no mark where nothing else stands in it. */
function without(search: string, check: string): string {
  const given = new URLSearchParams(search);
  given.delete(check);
  if ([...given.keys()].every((name) => name === 'told' || name === MADE || isMark(name))) return '';
  return `?${given}`;
}

/** It is off and cold: the cause is looked for. */
function cold(search: string, fixClass: string): string {
  const given = new URLSearchParams(search);
  const tried = (given.get('tried') ?? '').split('.').filter((one) => one !== '');
  given.set('tried', [...new Set([...tried, fixClass])].join('.'));
  return `?${given}`;
}

interface AboutProps {
  readonly complaint: ComplaintId;
  /** What new and old part are; undefined where there may be one part only. */
  readonly meant: string | undefined;
  readonly say: Say;
}

/** The complaint in the person's words, and what to do right now. */
function About({ complaint, meant, say }: AboutProps) {
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

export type Rest = typeof import('./rest.ts') & { readonly words: WalkWords };

interface Standing {
  readonly search: string;
  readonly sitting: Sitting;
}

interface Where extends Pick<WalkProps, 'complaint' | 'home' | 'laterStyles' | 'pictureStyles'> {
  readonly numbers: Numbers;
}

async function loadRest({ numbers, ...where }: Where, now: () => Standing): Promise<typeof import('./rest.ts')> {
  const coming = import('./rest.ts');
  setTimeout(() => numbers.getReady());
  const rest = await coming;
  await rest.modelReady();
  await rest.soon({ ...where, ...now() });
  return rest;
}

/** What a walk needs after its first question: nothing of it is drawn before its words are there, and where it stands is reckoned. */
function useRest(wanted: boolean, where: Where, standing: Standing): Loaded<Rest> {
  const { complaint, home, laterStyles } = where;
  const latest = useRef(standing);
  latest.current = standing;
  const load = useCallback(
    async (stop: AbortSignal): Promise<Rest> => {
      const [rest, words] = await Promise.all([
        loadRest(where, () => latest.current),
        fetchWords(`${home}put-it-right/words.json`, stop),
        fetchStyles(laterStyles),
      ]);
      return { ...rest, words: rest.wholeWords(rest.readWalkWords(words)) };
    },
    [complaint, home, laterStyles],
  );
  return useLoaded(wanted ? load : undefined);
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
