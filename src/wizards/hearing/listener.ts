// What people write in their own words, heard for what they could mean: proposals only, nothing counts until it is tapped.
import MiniSearch from 'minisearch';
import type { DangerLine, Groups } from './danger.ts';
import { dangerHeard, dangerLine, sentencesOf } from './danger.ts';
import { DENIES_BEFORE, heardAs, isHeardBy, NEGATIONS, REACH, SEVERAL } from './words.ts';

/** Lines that people say for one answer, by language. */
export interface Said {
  readonly check: string;
  readonly option: string;
  readonly lines: Readonly<Record<string, readonly string[]>>;
  /** Where it means danger: words that tell it where they stand near each other. */
  readonly dangers?: Readonly<Record<string, readonly Groups[]>> | undefined;
}

export interface HeardOf {
  readonly check: string;
  readonly option: string;
  /** The words of the text that made it think so. */
  readonly words: readonly string[];
}

interface Line {
  readonly id: number;
  readonly check: string;
  readonly option: string;
  readonly language: string;
  readonly text: string;
  /** One or two: "lights on, but no reaction". */
  readonly clauses: number;
}

/** So much of a line must be heard, by weight of its words, 0 to 1. Source: from-memory (judgement). */
const ENOUGH = 0.75;
/** Between the first and the last word heard stand at most so many more than in the line. Source: from-memory (judgement). */
const SPREAD = 2;
/** Of what the words heard could come from, so much is one answer, 0 to 1. Source: from-memory (judgement). */
const PARTICULAR = 0.5;
/** Most answers that are proposed for one telling. Source: own-choice. */
const MOST_HEARD = 12;
/** Words that say that something is as it should be. */
const WELL = new Set(
  [
    'fine ok okay perfect perfectly well good great flawless flawlessly happy lovely smooth smoothly properly',
    'gut bestens perfekt einwandfrei tadellos bien parfait parfaitement goed prima',
  ].flatMap((words) => words.split(' ')),
);

/** What follows these is another matter. */
const TURNS = new Set('until till except unless bis ausser jusqu sauf tot behalve'.split(' '));

/** Small words that say nothing of a trouble; "only" and "all" say much. */
const SMALL_OF: Readonly<Record<string, string>> = {
  en: 'a an the i my me we our you your it its is are was were be been has have had do does did of to at in on into by and or so as if then that this these those there with for from very also when whenever get gets got',
  de: 'der die das den dem des ein eine einen einem ich mein meine wir es ist sind war von zu zum zur im am auf in und oder so wenn dann mit fur aus auch immer sehr bei beim sich er sie',
  fr: 'le la les l un une des du de d je mon ma mes nous il elle est sont a au aux en et ou si quand alors avec pour sur que qui se ce cette ca y',
  nl: 'het een ik mijn we is zijn was van te in op en of als dan met voor uit ook altijd erg bij zich er dat die de',
};
const SMALL = new Set(Object.values(SMALL_OF).flatMap((words) => words.split(' ')));

/** More small words by which a language is known. */
const KNOWN_BY: Readonly<Record<string, string>> = {
  en: 'but not only all they one two every no',
  de: 'aber nicht nur alle zwei kein keine noch nach wie wird werden vor an also als je sonst',
  fr: 'mais pas tous tout deux ne dans plus sans chaque par depuis on ou or',
  nl: 'maar niet alle alleen pas je twee geen nog naar hoe wordt worden aan om',
};

const LANGUAGES = Object.keys(SMALL_OF);
const markersOf = (language: string): string[] => `${SMALL_OF[language]} ${KNOWN_BY[language]}`.split(' ');

/** Words that stand among the small words of one language only. */
const MARKERS = new Map(
  LANGUAGES.map((language) => {
    const others = new Set(LANGUAGES.filter((other) => other !== language).flatMap(markersOf));
    return [language, new Set(markersOf(language).filter((word) => !others.has(word)))];
  }),
);

/** A second language is spoken too where so many of its small words stand for one of the first. Source: from-memory (judgement). */
const MIXED = 1 / 3;

/** The languages that a text reads as, by its small words: all of them where it has none. */
function languagesOf(spoken: readonly string[]): readonly string[] {
  const counts = LANGUAGES.map((language) => spoken.filter((word) => MARKERS.get(language)?.has(word)).length);
  const most = Math.max(...counts);
  return LANGUAGES.filter((_, at) => (counts[at] ?? 0) >= MIXED * most);
}

/** They only point at what is meant: "it buzzes" is said by "a locomotive buzzes", but "in time" not by "the same time". */
const POINTERS = new Set(
  [
    'a an the it its i my our they this that is are was were',
    'der die das den dem ein eine einen einem es er sie ich mein meine ist sind war',
    'le la les un une il elle je mon ma mes est sont',
    'het een de ik mijn is zijn was',
  ].flatMap((words) => words.split(' ')),
);

/** Whether lines of a language count in a text: one that is not told by its small words always does. */
const counts = (language: string, spoken: readonly string[]): boolean =>
  spoken.includes(language) || !LANGUAGES.includes(language);

/** The beginning of another word, and no form of it: "the other one" is not said by "the others". */
const WHOLE_WORDS = new Set(['other', 'autre', 'ander', 'andere']);

/** Without these a line says something else: "the other engines run fine" is not said by "the engines run fine", nor "after some minutes" by "after some seconds". */
const KEYS = new Set(
  [
    'other others andere anderen autre autres ander',
    'second seconds minute minutes hour hours sekunde sekunden stunde stunden seconde secondes heure heures seconden minuut minuten uur',
  ].flatMap((words) => words.split(' ')),
);

/** These belong to the word behind them: "two boosters" is not said by "the booster trips with two trains". */
const BELONG = new Set(
  [
    'one two both zwei beide deux twee beide no kein keine keinen aucun aucune geen',
    SEVERAL,
    'all every each alle allen jede jeder jedes tout tous toutes chaque elke iedere',
  ].flatMap((words) => words.split(' ')),
);

/** When and where are said of a trouble: a single word for it counts alone or beside a word for what happens, not in "factory settings everywhere". */
const SAID_OF_TROUBLE = new Set(['when-it-happens', 'which-places']);
const TROUBLE = 'what-happens';

/** The words of a text as they are written there: "won't", not "wo not"; with a mark where others stand between them. */
function asWritten(text: string, words: readonly string[]): string[] {
  const said: string[] = [];
  const isSaid = isHeardBy(words);
  let last = -1;
  for (const [at, written] of (text.match(/[\p{L}\p{N}]+(?:[’'][\p{L}\p{N}]+)*/gu) ?? []).entries()) {
    if (!isSaid(written)) continue;
    if (said.length > 0 && at > last + 1) said.push(BETWEEN);
    said.push(written);
    last = at;
  }
  return said;
}

/** Stands where words between were passed over: nobody is quoted as having said what stands apart. */
const BETWEEN = '…';

/** Whether a danger is told by all the words of another answer: what is left then says nothing of its own. */
const saysAllOf =
  ({ words }: HeardOf) =>
  (danger: HeardOf): boolean =>
    words.every((word) => word === BETWEEN || danger.words.includes(word));

const CLAUSE = /[.,;:!?\n()]+|\s(?:but|aber|mais|maar|however|jedoch)\s/i;

const clausesOf = (text: string): string[] => text.split(CLAUSE).filter((clause) => heardAs(clause).length > 0);

/** What tells a danger, in one language. */
interface Danger {
  readonly check: string;
  readonly option: string;
  readonly language: string;
  readonly line: DangerLine;
}

/** Hears a text: every answer whose lines it seems to say, the surest first. */
export class Listener {
  readonly #index: MiniSearch<Line>;
  readonly #lines: readonly Line[];
  readonly #weights = new Map<string, number>();
  readonly #dangers: readonly Danger[];
  /** Weighty words of the lines for what happens, by language. */
  readonly #ofTrouble: ReadonlySet<string>;

  constructor(said: readonly Said[]) {
    this.#dangers = said.flatMap(({ check, option, dangers = {} }) =>
      Object.entries(dangers).flatMap(([language, own]) =>
        own.map((groups) => ({ check, option, language, line: dangerLine(groups) })),
      ),
    );
    this.#lines = said
      .flatMap(({ check, option, lines }) =>
        Object.entries(lines).flatMap(([language, own]) => own.map((text) => ({ check, option, language, text }))),
      )
      .map((line, id) => ({ id, clauses: Math.min(2, clausesOf(line.text).length), ...line }));
    this.#index = new MiniSearch<Line>({
      fields: ['text'],
      tokenize: heardAs,
      processTerm: (term) => (SMALL.has(term) ? null : term),
    });
    this.#index.addAll(this.#lines);
    this.#ofTrouble = new Set(
      this.#lines
        .filter(({ check }) => check === TROUBLE)
        .flatMap(({ language, text }) => heardAs(text).map((word) => `${language} ${word}`))
        .filter((word) => !SMALL.has(word.split(' ')[1] ?? '')),
    );
    const count = new Map<string, number>();
    for (const { text } of this.#lines)
      for (const word of new Set(heardAs(text))) count.set(word, (count.get(word) ?? 0) + 1);
    for (const [word, n] of count) this.#weights.set(word, SMALL.has(word) ? 0 : Math.log(1 + this.#lines.length / n));
  }

  /** Whether a text is long enough to have said something, and nothing of it was understood. */
  readonly isUnheard = (text: string, heard: readonly HeardOf[]): boolean =>
    heard.length === 0 && heardAs(text).length >= BEGUN;

  /** At most twelve answers, each once. Any text; an empty one says nothing. */
  hear(text: string): HeardOf[] {
    const best = new Map<string, HeardOf & { readonly score: number }>();
    const languages = languagesOf(heardAs(text));
    const sentences = sentencesOf(text);
    for (const { line, check, option } of this.#dangers.filter(({ language }) => counts(language, languages))) {
      const words = dangerHeard(line, sentences);
      const key = `${check} ${option}`;
      if (words !== undefined && !best.has(key))
        best.set(key, { check, option, words: asWritten(text, words), score: Number.POSITIVE_INFINITY });
    }
    const clauses = clausesOf(text);
    const spans = clauses
      .flatMap((one, at) => [[one], clauses.slice(at, at + 2)])
      .filter(({ length }, at) => length > at % 2);
    for (const span of spans) {
      for (const { line, score, words } of this.#said(span, languages)) {
        const key = `${line.check} ${line.option}`;
        if (score > (best.get(key)?.score ?? 0))
          best.set(key, { check: line.check, option: line.option, words, score });
      }
    }
    const dangers = [...best.values()].filter(({ score }) => score === Number.POSITIVE_INFINITY);
    return [...best.values()]
      .filter((one) => one.score === Number.POSITIVE_INFINITY || !dangers.some(saysAllOf(one)))
      .sort((a, b) => b.score - a.score)
      .slice(0, MOST_HEARD)
      .map(({ check, option, words }) => ({ check, option, words }));
  }

  /** What is said in so many clauses on end: lines of as many. */
  #said(clauses: readonly string[], languages: readonly string[]) {
    const clause = clauses.join(' ');
    const spoken = heardAs(clause);
    const found = this.#found(clause, spoken).filter(({ line }) => counts(line.language, languages));
    return found
      .filter(({ line }) => line.clauses === clauses.length)
      .filter((one) => one.share >= ENOUGH && isNear(one, spoken) && isMeant(one, spoken))
      .filter((one) => isCounted(one, spoken) && hasKeys(one) && this.#isEnough(one, spoken))
      .filter((one) => !RELATES.test(one.line.text) || inOrder(one, spoken))
      .filter((one) => isWhole(one, spoken) || particular(one, found) >= PARTICULAR)
      .map(({ line, share, heard, words }) => ({
        line,
        words: asWritten(clause, words),
        score: share * this.#weigh(heard),
      }));
  }

  /** A line of one weighty word is said word for word, and beside what happens where it only says when or where. */
  #isEnough(one: Found, spoken: readonly string[]): boolean {
    const weighty = one.own.filter((word) => this.#weigh([word]) > 0);
    if (weighty.length > 1) return true;
    return isWhole(one, spoken, POINTERS) && (!isBareWhen(one) || this.#isOfTrouble(one, spoken));
  }

  /** Whether nothing else is said beside these words, or what happens. */
  #isOfTrouble({ words, line }: Found, spoken: readonly string[]): boolean {
    const others = spoken.filter((word) => !(words.includes(word) || SMALL.has(word)));
    return others.length === 0 || others.some((word) => this.#ofTrouble.has(`${line.language} ${word}`));
  }

  /** Every line of which a word is heard. */
  #found(clause: string, spoken: readonly string[]): Found[] {
    const found = this.#index.search(clause, {
      combineWith: 'OR',
      prefix: (term) => term.length > 4 && !WHOLE_WORDS.has(term),
      fuzzy: (term) => (term.length > 6 ? 0.2 : 0),
    });
    return found.flatMap(({ id, match, queryTerms }) => {
      const line = this.#lines[Number(id)];
      if (line === undefined) return [];
      const own = [...new Set(heardAs(line.text))];
      const heard = own.filter((word) => Object.hasOwn(match, word) && queryTerms.some(isLike(word)));
      const words = spoken.filter((word) => queryTerms.includes(word));
      return [{ line, own, heard, words, share: this.#weigh(heard) / this.#weigh(own) }];
    });
  }

  #weigh(words: readonly string[]): number {
    return words.reduce((sum, word) => sum + (this.#weights.get(word) ?? 0), 0);
  }
}

/** Fewer words than this are somebody who still begins to write. Source: from-memory (judgement). */
const BEGUN = 3;

/** A line of which words are heard. */
interface Found {
  readonly line: Line;
  /** Its words; those of them that are heard, and what part of it these are by weight, 0 to 1. */
  readonly own: readonly string[];
  readonly heard: readonly string[];
  readonly share: number;
  /** The words of the text that are heard as them, in its order. */
  readonly words: readonly string[];
}

/** Whether a line stands in the text word for word, its small words too; of both, some words may be passed over. */
function isWhole({ line }: Found, spoken: readonly string[], passed: ReadonlySet<string> = NONE): boolean {
  const kept = (words: readonly string[]): string => ` ${words.filter((word) => !passed.has(word)).join(' ')} `;
  return kept(spoken).includes(kept(heardAs(line.text)));
}

const NONE: ReadonlySet<string> = new Set();

/** How much of what these words could come from is the same answer, 0 to 1: a word from the lines of many answers says little of any. */
function particular({ line, words }: Found, found: readonly Found[]): number {
  const from = found.filter((other) => words.every((word) => other.words.includes(word)));
  const alike = from.filter(({ line: other }) => other.check === line.check && other.option === line.option);
  return sharesOf(alike) / sharesOf(from);
}

const sharesOf = (some: readonly Found[]): number => some.reduce((sum, { share }) => sum + share, 0);

/** Whether the words stand as close together as in the line, or nearly: some stretch of the text has one of each. */
function isNear({ own, words }: Found, spoken: readonly string[]): boolean {
  const width = own.length + SPREAD;
  const sought = [...new Set(words)];
  return spoken.some((_, at) => sought.every((word) => spoken.slice(at, at + width).includes(word)));
}

/** What stands on either side of these may not change places: "far from the booster"; whoever drives an engine off tells of no engine that drives off. */
const RELATES =
  /\S+ (from|von|vom|van|after|nach|après|na) |(^|\s)(without|ohne|sans|zonder|onto|off the|whole) |^first |\S+ drives off$/;

/** Whether some stretch of the text has the words in the order of the line. */
function inOrder({ line, heard }: Found, spoken: readonly string[]): boolean {
  let at = -1;
  for (const word of heardAs(line.text).filter((one) => heard.includes(one) && !SMALL.has(one))) {
    const next = spoken.findIndex((said, place) => place > at && isLike(word)(said));
    if (next < 0) return false;
    at = next;
  }
  return true;
}

/** What stands behind a place, small words left out: "all of the trains". */
const behind = (words: readonly string[], place: number): readonly string[] =>
  words.slice(place + 1).filter((word) => !SMALL.has(word));

/** Whether a line is one bare word for when or where. */
const isBareWhen = ({ own, line }: Found): boolean => own.length === 1 && SAID_OF_TROUBLE.has(line.check);

/** Whether each number and "no" of the line stands before the same word as there, or one word farther off: "two old boosters". */
function isCounted({ line, heard }: Found, spoken: readonly string[]): boolean {
  const own = heardAs(line.text);
  return own.every((number, at) => {
    const counted = behind(own, at)[0];
    if (!(BELONG.has(number) && heard.includes(number)) || counted === undefined) return true;
    return spoken.some((word, place) => word === number && behind(spoken, place).slice(0, 2).some(isLike(counted)));
  });
}

/** Whether the words are heard without which a line says something else. */
const hasKeys = ({ own, heard }: Found): boolean => own.every((word) => !KEYS.has(word) || heard.includes(word));

/** Whether a word begins as another does: "booster" and "boosters". */
const isLike =
  (one: string) =>
  (other: string): boolean =>
    one.slice(0, BEGINS_ALIKE) === other.slice(0, BEGINS_ALIKE);
/** Letters that two words must begin with to be the same word in another form. Source: from-memory. */
const BEGINS_ALIKE = 4;

/** Whether the text says it, and not its contrary or that it is well, as far as the line does not say so itself. */
function isMeant({ own, heard, words }: Found, spoken: readonly string[]): boolean {
  const negations = own.filter((word) => NEGATIONS.has(word));
  if (negations.length > 0) return negations.every((word) => heard.includes(word));
  return (
    !(isDenied(spoken, words) || changedNothing(spoken, words)) &&
    (own.some((word) => WELL.has(word)) || !isWell(spoken, words))
  );
}

/** Whether a negation stands shortly before the first of these words, right before another of them, or behind the last. */
function isDenied(spoken: readonly string[], words: readonly string[]): boolean {
  const first = spoken.findIndex((word) => words.includes(word));
  const last = spoken.findLastIndex((word) => words.includes(word));
  return (
    spoken.slice(Math.max(0, first - REACH), Math.max(0, first)).some((word) => NEGATIONS.has(word)) ||
    spoken.slice(last + 1, last + 2).some((word) => DENIES_BEFORE.has(word)) ||
    spoken
      .slice(first, last)
      .some((word, at) => NEGATIONS.has(word) && words.includes(behind(spoken, first + at)[0] ?? ''))
  );
}

/** What changed nothing is not what happens: "throwing turnouts made no difference". */
const NO_DIFFERENCE =
  /\b(chang\w+ nothing|no (change|difference|help)|not (help\w*|change)|andert\w* nichts|hilft nicht|bringt nichts|change rien|aide pas|helpt niet|verandert niets)\b/;

const changedNothing = (spoken: readonly string[], words: readonly string[]): boolean => {
  const last = spoken.findLastIndex((word) => words.includes(word));
  return NO_DIFFERENCE.test(spoken.slice(last + 1, last + 1 + REACH).join(' '));
};

/** Whether it is said shortly before or after these words that this is well: "summer is perfect". */
function isWell(spoken: readonly string[], words: readonly string[]): boolean {
  const first = spoken.findIndex((word) => words.includes(word));
  const last = spoken.findLastIndex((word) => words.includes(word));
  const before = spoken.slice(Math.max(0, first - REACH), first);
  const after = spoken.slice(last + 1, last + 1 + REACH);
  const turn = after.findIndex((word) => TURNS.has(word));
  return (
    before.slice(before.findLastIndex((word) => TURNS.has(word)) + 1).some((word) => WELL.has(word)) ||
    after.slice(0, turn < 0 ? after.length : turn).some((word) => WELL.has(word))
  );
}
