// What a person knows already, told at once: their own words are heard for what they could mean, chips are tapped, and one tap passes it over.
import { type ComponentChildren, Fragment } from 'preact';
import { useCallback, useMemo, useState } from 'preact/hooks';
import type { HeardOf } from '../../wizards/hearing/index.ts';
import type { ChipGroup, Sitting } from '../../wizards/put-it-right/index.ts';
import {
  CHIP_GROUPS,
  CHIPS,
  dangerOfAnswer,
  isOnePart,
  optionsFor,
  speaksOfAnotherPart,
} from '../../wizards/put-it-right/index.ts';
import { fetchWords, useLoaded } from '../shared/index.ts';
import type { PartProps } from './part-props.ts';
import type { WalkWords } from './words.ts';

interface Props extends Pick<PartProps, 'say' | 'home'> {
  readonly seen: Readonly<Record<string, string>>;
  /** Fix classes that are set aside, and what was answered in this sitting: of a danger a link has nothing to say for its reader. */
  readonly tried: readonly string[];
  readonly sitting: Sitting;
  readonly checks: WalkWords['checks'];
  /** What was written here before, as long as this page is open. */
  readonly draft: { current: string };
  readonly onTold: (seen: Readonly<Record<string, string>>) => void;
  /** A danger that was heard: what was tapped so far, and the answer that says it. */
  readonly onDanger: (seen: Readonly<Record<string, string>>, check: string, option: string) => void;
  /** What passes on what is told so far, tapped just now or before. */
  readonly passOn: (seen: Readonly<Record<string, string>>) => ComponentChildren;
}

export function Telling({ seen, tried, sitting, checks, say, home, draft, onTold, onDanger, passOn }: Props) {
  const [told, setTold] = useState(seen);
  const [text, setText] = useState(draft.current);
  const write = (words: string): void => {
    draft.current = words;
    setText(words);
  };
  /** The check of which an answer was taken back by the last tap, for it has another now. */
  const [takenBack, setTakenBack] = useState<string>();
  const listener = useListener(home, text !== '');
  const heard = useMemo(() => (text.trim() === '' ? [] : (listener?.hear(text) ?? [])), [text, listener]);
  const toggle: Toggle = (check, option) => {
    const { [check]: before, ...others } = told;
    setTakenBack(before === undefined || before === option ? undefined : check);
    setTold(before === option ? others : { ...others, [check]: option });
  };
  const news = Object.keys(told).length - Object.keys(seen).length;
  const dangers = dangersIn(heard, dealtWith(tried, sitting), sitting);
  // What was told before is not proposed once more.
  const proposed = heard.filter(
    ({ check, option }) => dangerOfAnswer(check, option) === undefined && seen[check] !== option,
  );
  // Whoever taps a danger does not say that there is none.
  const passes = dangers.size > 0 && told['danger-now'] === seen['danger-now'];
  const chips = { told, takenBack, checks, say, toggle };
  return (
    <Fragment>
      <form
        class="part telling"
        onSubmit={(event) => {
          event.preventDefault();
          onTold(told);
        }}
      >
        <h1 tabIndex={-1}>{say('walk-tell-title')}</h1>
        {wasHot(told) && <p class="problem">{say('walk-leave-off-hot')}</p>}
        <label class="field own-words">
          <b>{say('walk-tell-own-words')}</b>
          <textarea rows={4} value={text} onInput={(event) => write(event.currentTarget.value)} />
          <small>{say('walk-tell-stays-here')}</small>
        </label>
        <Heard
          proposed={proposed}
          dangers={dangers}
          {...chips}
          onDanger={({ check, option }) => onDanger(told, check, option)}
        />
        {listener !== undefined && (
          <p role="status" class="small">
            {listener.isUnheard(text, heard) && say('walk-tell-nothing-heard')}
          </p>
        )}
        <div class="chip-groups">
          {CHIP_GROUPS.map((group) => (
            <Group key={group} group={group} {...chips} />
          ))}
        </div>
        <div class={proposed.length + dangers.size > 0 && news === 0 ? 'acts after' : 'acts'}>
          <button class={dangers.size === 0 ? 'button' : 'button quiet'} type="submit">
            {say(
              passes
                ? 'walk-tell-past'
                : goOn(news, seen, { isWritten: text.trim() !== '', proposed: proposed.length }),
              { n: news },
            )}
          </button>
        </div>
      </form>
      {Object.keys(told).length > 0 && passOn(told)}
    </Fragment>
  );
}

/** Whether something is or was hotter than it should be, and the walk goes on all the same. */
const wasHot = (seen: Props['seen']): boolean =>
  seen['danger-now'] === 'browned' || seen['danger-now'] === 'warm-or-was-hot';

/** What the way on is called: by what is new, or by whether anything was written, heard or told before. */
function goOn(
  news: number,
  seen: Props['seen'],
  { isWritten, proposed }: { readonly isWritten: boolean; readonly proposed: number },
): string {
  if (news > 0) return 'walk-tell-go-on';
  if (isWritten) return proposed > 0 ? 'walk-tell-ask' : 'continue';
  return CHIPS.some(({ check }) => seen[check] !== undefined) ? 'continue' : 'walk-tell-skip';
}

/** What hears is loaded once somebody begins to write; without it chips can be tapped all the same. */
function useListener(home: string, wanted: boolean) {
  const load = useCallback(
    async (stop: AbortSignal) => {
      const [{ listenTo }, said] = await Promise.all([
        import('./listening.ts'),
        fetchWords(`${home}put-it-right/said.json`, stop),
      ]);
      return listenTo(said);
    },
    [home],
  );
  return useLoaded(wanted ? load : undefined).value;
}

type Toggle = (check: string, option: string) => void;

interface ChipProps extends Pick<Props, 'checks' | 'say'> {
  readonly told: Readonly<Record<string, string>>;
  readonly takenBack: string | undefined;
  readonly toggle: Toggle;
}

interface HeardProps extends ChipProps {
  /** What is no danger. */
  readonly proposed: readonly HeardOf[];
  /** What comes before all else. */
  readonly dangers: Dangers;
  readonly onDanger: (danger: HeardOf) => void;
}

/** By what is to be done, what was heard of it. */
type Dangers = ReadonlyMap<string, HeardOf>;

/** The dangers that were told and set aside in this sitting. */
const dealtWith = (tried: readonly string[], sitting: Sitting): readonly string[] => {
  const met = new Set(Object.entries(sitting).map(([check, option]) => dangerOfAnswer(check, option)));
  return tried.filter((page) => met.has(page));
};

/**
 * The dangers that are heard, the surest first. Not what is dealt with; nor heat and smoke where it was answered that they have left a mark and that
 * all is cold by now. Both count only from this sitting.
 */
function dangersIn(heard: readonly HeardOf[], dealt: readonly string[], sitting: Sitting): Dangers {
  const found = new Map<string, HeardOf>();
  for (const one of heard) {
    const page = dangerOfAnswer(one.check, one.option);
    const isSaid = one.option === 'smoke-heat-or-damage' && sitting['danger-now'] === 'browned';
    if (page !== undefined && !found.has(page) && !isSaid && !dealt.includes(page)) found.set(page, one);
  }
  return found;
}

/** What a danger asks to be done comes first, in the walk: the story waits. All else is a proposal, with the words that made it think so. */
function Heard({ proposed, dangers, onDanger, ...chips }: HeardProps) {
  const { say } = chips;
  return (
    <div role="status" class="heard">
      {[...dangers].map(([page, danger]) => (
        <p key={page} class="problem">
          {say('walk-tell-danger')}{' '}
          <button class="link" type="button" onClick={() => onDanger(danger)}>
            {say(`class-${page}`)}
          </button>
          <small>{say('walk-tell-because', { words: danger.words.join(' ') })}</small>
        </p>
      ))}
      {proposed.length > 0 && (
        <>
          <p>{say('walk-tell-heard')}</p>
          <ul class="chips">
            {proposed.map(({ check, option, words }) => (
              <li key={check + option}>
                <Chip check={check} option={option} named {...chips}>
                  <small>{say('walk-tell-because', { words: words.join(' ') })}</small>
                </Chip>
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

function Group({ group, ...chips }: ChipProps & { readonly group: ChipGroup }) {
  const [sought, setSought] = useState('');
  const { say, told, checks } = chips;
  const onePart = isOnePart(Object.entries(told).map(([check, option]) => ({ check, option })));
  const rows = CHIPS.filter(
    (one) => one.group === group && (told[one.check] !== undefined || !(onePart && speaksOfAnotherPart(one.check))),
  );
  const count = rows.filter(({ check }) => told[check] !== undefined).length;
  const twice = twiceIn(rows.flatMap(({ check, options }) => options.map((option) => wordsFor(checks, check, option))));
  const fits = (check: string, option: string): boolean =>
    labelOf(checks, check, option).toLowerCase().includes(sought.trim().toLowerCase());
  return (
    <details class="chip-group">
      <summary>
        <h2 class="h3">{say(`walk-tell-${group}`)}</h2>{' '}
        {count > 0 && <span class="small">{say('walk-tell-count', { n: count })}</span>}
      </summary>
      {rows.length > FILTERED_FROM && (
        <label class="field">
          <span>{say('walk-tell-filter')}</span>
          <input type="search" value={sought} onInput={(event) => setSought(event.currentTarget.value)} />
        </label>
      )}
      {rows.map(({ check, options }) => {
        const shown = optionsFor(check, options, onePart).filter((option) => fits(check, option));
        if (shown.length === 0) return null;
        const isLong = rows.length > FILTERED_FROM;
        return (
          <Row
            key={check}
            {...chips}
            {...{ check, twice }}
            options={shown}
            folds={isLong}
            sought={sought.trim() !== ''}
          />
        );
      })}
    </details>
  );
}

interface RowProps extends ChipProps {
  readonly check: string;
  readonly options: readonly string[];
  /** Whether it stands in a long group: then its answers unfold when its name is tapped, or when they are sought. */
  readonly folds: boolean;
  readonly sought: boolean;
  /** Words that stand on chips of several checks of the group: those say what they answer. */
  readonly twice: ReadonlySet<string>;
}

function Row({ check, options, folds, sought, twice, ...chips }: RowProps) {
  const { checks, told } = chips;
  const name = nameOf(check, chips);
  const list = (
    <ul class="chips">
      {options.map((option) => (
        <li key={option}>
          <Chip check={check} option={option} named={twice.has(wordsFor(checks, check, option))} {...chips} />
        </li>
      ))}
    </ul>
  );
  if (!folds) {
    return (
      <fieldset class="plain">
        <legend>{name}</legend>
        {list}
      </fieldset>
    );
  }
  return (
    <details open={sought || told[check] !== undefined}>
      <summary>{name}</summary>
      {list}
    </details>
  );
}

/** What a check is called; where its answer just took the place of another, that is said there instead. */
const nameOf = (check: string, { checks, say, takenBack }: Pick<ChipProps, 'checks' | 'say' | 'takenBack'>): string =>
  takenBack === check ? say('walk-tell-one-of') : (checks[check]?.known ?? check);

const wordsFor = (checks: WalkWords['checks'], check: string, option: string): string =>
  checks[check]?.options[option]?.label ?? option;

const twiceIn = (words: readonly string[]): ReadonlySet<string> =>
  new Set(words.filter((word, at) => words.indexOf(word) < at));

/** Groups with more checks than this can be filtered. */
const FILTERED_FROM = 4;

const labelOf = (checks: WalkWords['checks'], check: string, option: string): string => {
  const words = checks[check];
  return `${words?.known ?? check}: ${words?.options[option]?.label ?? option}`;
};

/** The way on comes with the first tap and stays at the lower edge: what was tapped there is moved clear of it. */
const clearOfTheBar = (tapped: HTMLElement): void => {
  requestAnimationFrame(() => tapped.closest('.chip')?.scrollIntoView({ block: 'nearest' }));
};

interface OneChip extends ChipProps {
  readonly check: string;
  readonly option: string;
  /** Whether it says what it is an answer to. */
  readonly named?: boolean;
  readonly children?: ComponentChildren;
}

function Chip({ check, option, named, told, takenBack, checks, say, toggle, children }: OneChip) {
  return (
    <label class="chip">
      <input
        type="checkbox"
        checked={told[check] === option}
        onChange={({ currentTarget }) => {
          toggle(check, option);
          clearOfTheBar(currentTarget);
        }}
      />
      <span>
        {named === true && (
          <small>{nameOf(check, { checks, say, takenBack: told[check] === option ? takenBack : undefined })}</small>
        )}
        {wordsFor(checks, check, option)}
        {children}
      </span>
    </label>
  );
}
