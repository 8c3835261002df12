// A question whose numbers the engine gives: the same for everybody with the same link, new ones at a tap. As the page is built it asks
// with the first numbers, and works without script.
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Amount, Check, CheckKind, Choice } from '../../engine/index.ts';
import { MOST_SEED, parseSeed, toThousandths } from '../../engine/index.ts';
import { Missing, useLoaded, useMeasures } from '../shared/index.ts';
import { inMeasures, Numbers, type Say, sayer } from '../words/index.ts';

export interface ComputedCheckProps {
  readonly kind: CheckKind;
  /** The place of the question on its page: a link to its numbers opens there. */
  readonly anchor: string;
  /** The question with the first numbers, made with the page. */
  readonly first: Check;
  readonly language: string;
  /** The words of this kind out of the room `check-yourself`, and those of `units`. */
  readonly words: Readonly<Record<string, string>>;
}

/** What an address calls the numbers of its question. */
const NAME = 'check-seed';
/** The seed of the first numbers. */
export const FIRST = 1;

export default function ComputedCheck({ kind, anchor, first, language, words }: ComputedCheckProps) {
  const system = useMeasures();
  const numbers = useMemo(() => new Numbers(language, system, words), [language, system, words]);
  const say = useMemo(() => sayer(inMeasures(words, numbers), language), [words, numbers, language]);
  const { seed, next } = useSeed();
  const { asked, failed, again } = useAsked(kind, seed, first);
  const { given, choices, right } = asked.check;
  const values = useMemo(() => writtenIn(numbers, { ...given, right }), [numbers, given, right]);
  return (
    <>
      <p class="asked">{say(`asked-${kind}`, values)}</p>
      <ul class="answers">
        {choices.map((choice) => (
          <li key={`${asked.seed} ${choice.mistake}`}>
            <Answer choice={choice} because={becauseOf(kind, choice, say, values)} say={say} numbers={numbers} />
          </li>
        ))}
      </ul>
      {failed && <Missing say={say} again={again} />}
      <p class="acts">
        <button class="button quiet" type="button" onClick={next}>
          {say('check-new-numbers')}
        </button>
        <a href={`?${NAME}=${seed}#${anchor}`} class="set">
          {say('check-link')}
        </a>
      </p>
    </>
  );
}

interface AnswerProps {
  readonly choice: Choice;
  readonly because: string;
  readonly say: Say;
  readonly numbers: Numbers;
}

function Answer({ choice, because, say, numbers }: AnswerProps) {
  const right = choice.mistake === undefined;
  return (
    <details data-right={right ? '' : undefined}>
      <summary>{written(numbers, choice)}</summary>
      <p>
        <b>{say(right ? 'check-right' : 'check-wrong')}</b> {because}
      </p>
    </details>
  );
}

type Written = Readonly<Record<string, string>>;

const becauseOf = (kind: CheckKind, { mistake }: Choice, say: Say, values: Written): string =>
  mistake === undefined ? say(`asked-${kind}-right`, values) : say(`asked-${kind}-${mistake}`, values);

const writtenIn = (numbers: Numbers, amounts: Readonly<Record<string, Amount>>): Written =>
  Object.fromEntries(Object.entries(amounts).map(([name, amount]) => [name, written(numbers, amount)]));

/** Metres below this are told in thousandths. */
const SMALL = 0.1;

function written(numbers: Numbers, { value, unit }: Amount): string {
  if (unit === 's' && value >= 1) return numbers.quantity(value, 'time');
  if (unit === 'm' && value < SMALL && numbers.system === 'metric')
    return `${numbers.plain(toThousandths(value), 2)}\u00a0mm`;
  // A number alone: its sentence says degrees.
  if (unit === 'degrees') return numbers.plain(value, 3);
  return unit === 'W' ? numbers.watts(value) : numbers.inUnit(value, unit);
}

interface Asked {
  readonly seed: number;
  readonly check: Check;
}

/** The question of a seed; until it has come, the one before. */
function useAsked(kind: CheckKind, seed: number, first: Check) {
  const load = useCallback(
    async (): Promise<Asked> => ({ seed, check: (await import('./asked.ts')).askedWith(kind, seed) }),
    [kind, seed],
  );
  const { value, failed, again } = useLoaded(seed === FIRST ? undefined : load);
  const last = useRef<Asked>({ seed: FIRST, check: first });
  if (seed === FIRST) last.current = { seed, check: first };
  else if (value !== undefined) last.current = value;
  return { asked: last.current, failed: failed && seed !== FIRST, again };
}

/** The numbers of the link, else the first ones. */
function useSeed() {
  const [seed, setSeed] = useState(FIRST);
  useLayoutEffect(() => {
    const read = (): void => setSeed(parseSeed(new URLSearchParams(location.search).get(NAME)) ?? FIRST);
    read();
    addEventListener('popstate', read);
    return () => removeEventListener('popstate', read);
  }, []);
  useEffect(() => {
    const search = new URLSearchParams(location.search);
    if (search.has(NAME) || seed !== FIRST) {
      search.set(NAME, String(seed));
      search.sort();
      history.replaceState(history.state, '', `${location.pathname}?${search}${location.hash}`);
    }
  }, [seed]);
  const next = (): void => setSeed((seed % MOST_SEED) + 1);
  return { seed, next };
}
