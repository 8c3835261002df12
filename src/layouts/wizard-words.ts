// The words of a planning wizard: what its questions need comes with the page, what its answer needs is fetched on the way there.
import type { CollectionEntry } from 'astro:content';
import type { AnswerWords, FixWords, QuestionWords, StepWords } from '../components/words/index.ts';
import { FALLBACK } from '../components/words/index.ts';
import type { WizardId } from '../wizards/index.ts';
import { questionsOf, wizardsFor } from '../wizards/index.ts';
import { ALL_OUTDOORS, dangersOf, dangersOutdoors, hasPowerOn } from '../wizards/safety/index.ts';
import {
  allWrittenIn,
  cautionsFor,
  cautionWords,
  entryNamed,
  fixesFor,
  questionsFor,
  sourcesFor,
  termsFor,
} from './entries.ts';
import { href, type Language, nameOf, writtenIn } from './href.ts';
import { ANSWER_ROOMS, QUESTION_ROOMS } from './rooms.ts';
import { saysAll, wordsOf } from './words.ts';

/** The language a wizard speaks: its page's, or English where that lacks a sentence, a question, a fix or a caution of it. */
export async function wizardWrittenIn(language: Language, wizard: WizardId): Promise<Language> {
  const asked = new Set<string>(questionsOf(wizard));
  const questions = (await questionsFor(language)).filter(({ id }) => asked.has(nameOf(id)));
  const all = [questions, await fixEntriesOf(language, wizard), await cautionsFor(language)];
  const says = await saysAll(language, [...QUESTION_ROOMS, ...ANSWER_ROOMS[wizard]]);
  return says && allWrittenIn(language, all.flat()) ? language : FALLBACK;
}

/** Words of the questions, in the order in which they can be met. */
export async function questionWords(language: Language, wizard: WizardId): Promise<Record<string, QuestionWords>> {
  const [entries, glossary] = await Promise.all([questionsFor(language), termsFor(language)]);
  const termOf = (id: string) => {
    const { term, means } = entryNamed(glossary, id).data;
    return { term, means };
  };
  return Object.fromEntries(
    questionsOf(wizard).map((id) => {
      const { terms, ...words } = entryNamed(entries, id).data;
      return [id, { ...words, terms: terms.map(termOf) }];
    }),
  );
}

export function wordsOnTheWay(language: Language): Promise<Record<string, string>> {
  return wordsOf(language, QUESTION_ROOMS);
}

export async function fixEntriesOf(language: Language, wizard: WizardId): Promise<CollectionEntry<'fixes'>[]> {
  return (await fixesFor(language)).filter(({ id }) => wizardsFor(nameOf(id)).includes(wizard));
}

/** Cautions of what an answer tells to measure, whatever its fixes name. */
const MEASURING_CAUTIONS: Readonly<Record<WizardId, readonly string[]>> = {
  'enough-current': ['resistor-hot', 'coin-rules'],
  'which-supply-where': ['rings-off', 'lamp-hot', 'meter-sockets', 'resistor-hot', 'coin-rules'],
  'share-out': [],
  'wire-it': ['resistor-hot', 'meter-sockets'],
};

/** What the answer says on top of the words of its questions. */
export async function answerWords(language: Language, wizard: WizardId): Promise<AnswerWords> {
  const entries = await fixEntriesOf(language, wizard);
  const fixes: Record<string, FixWords> = {};
  for (const entry of entries) fixes[nameOf(entry.id)] = await withOutdoors(language, entry);
  const named = new Set([...cautionsIn(Object.values(fixes)), ...MEASURING_CAUTIONS[wizard], ...ALL_OUTDOORS]);
  const cautions = await cautionWords(language, [...named]);
  const words = await wordsOf(language, ANSWER_ROOMS[wizard]);
  for (const { id, data } of await sourcesFor(language)) words[`source-${nameOf(id)}`] = data.title;
  return { words, fixes, cautions };
}

/** The cautions of all steps of some fixes, each once. */
export const cautionsIn = (fixes: readonly Pick<FixWords, 'steps'>[]): string[] => [
  ...new Set(fixes.flatMap(({ steps }) => steps.flatMap(({ cautions }) => cautions))),
];

type FixEntry = CollectionEntry<'fixes'>;

/** What a page or an answer says of a fix: each step with the dangers that its acts bring. */
export async function wordsOfFix(language: Language, { id, data }: FixEntry): Promise<FixWords> {
  const { title, lead, short, because, needs, effort, verify, next } = data;
  const jobs = await fixesFor(language);
  const steps = data.steps.map((step) => wordsOfStep(language, step, jobs));
  const before = data.urgent ? [] : await beforeYouStart(writtenIn(id), cautionsIn([{ steps }]));
  return { title, lead, short, because, needs, effort, before, steps, verify, next };
}

/** The same for an answer, which knows whether the layout may stand in a garden. */
async function withOutdoors(language: Language, entry: FixEntry): Promise<FixWords> {
  const [words, jobs] = [await wordsOfFix(language, entry), await fixesFor(language)];
  const steps = words.steps.map((step, at): StepWords => {
    const { acts = [], job } = entry.data.steps[at] ?? {};
    const inJob = job === undefined ? [] : entryNamed(jobs, job).data.steps.flatMap((one) => one.acts);
    const all = [...acts, ...inJob];
    const outdoors = dangersOutdoors(all);
    const live = hasPowerOn(all) ? { live: true } : {};
    return outdoors.length === 0 ? { ...step, ...live } : { ...step, ...live, outdoors };
  });
  return { ...words, steps };
}

function wordsOfStep(language: Language, step: FixEntry['data']['steps'][number], jobs: FixEntry[]): StepWords {
  const { do: act, more, job } = step;
  return {
    do: act,
    cautions: dangersOf(step.acts, step.cautions),
    ...(more === undefined ? {} : { more }),
    ...(job === undefined
      ? {}
      : { job: { title: entryNamed(jobs, job).data.short, href: href(`fixes/${job}/`, language) } }),
  };
}

/** What these cautions ask for a whole page. */
async function beforeYouStart(language: Language, named: readonly string[]): Promise<string[]> {
  const all = await cautionsFor(language);
  return named.flatMap((id) => entryNamed(all, id).data.before ?? []);
}
