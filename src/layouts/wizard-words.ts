// The words of a planning wizard: what its questions need comes with the page, what its answer needs is fetched on the way there.
import type { CollectionEntry } from 'astro:content';
import { getCollection } from 'astro:content';
import type { AnswerWords, FixWords, QuestionWords } from '../components/words/index.ts';
import { languageOf } from '../components/words/index.ts';
import type { WizardId } from '../wizards/index.ts';
import { questionsOf, wizardsFor } from '../wizards/index.ts';
import { cautionWords, fixesFor, sourcesFor } from './entries.ts';
import { nameOf } from './href.ts';
import { ANSWER_ROOMS, QUESTION_ROOMS } from './rooms.ts';
import { wordsOf } from './words.ts';

/** Words of the questions, in the order in which they can be met. */
export async function questionWords(url: URL, wizard: WizardId): Promise<Record<string, QuestionWords>> {
  const start = `${languageOf(url)}/`;
  const entries = await getCollection('questions', ({ id }) => id.startsWith(start));
  return Object.fromEntries(
    questionsOf(wizard).map((id) => {
      const entry = entries.find((one) => nameOf(one.id) === id);
      if (entry === undefined) throw new Error(`No words for the question "${id}" in src/content/${start}questions`);
      return [id, entry.data];
    }),
  );
}

export function wordsOnTheWay(url: URL): Promise<Record<string, string>> {
  return wordsOf(url, QUESTION_ROOMS);
}

export async function fixesOf(url: URL, wizard: WizardId): Promise<CollectionEntry<'fixes'>[]> {
  return (await fixesFor(url)).filter(({ id }) => wizardsFor(nameOf(id)).includes(wizard));
}

/** What the answer says on top of the words of its questions. */
export async function answerWords(url: URL, wizard: WizardId): Promise<AnswerWords> {
  const entries = await fixesOf(url, wizard);
  const fixes = Object.fromEntries(entries.map(({ id, data }) => [nameOf(id), wordsOfFix(data)]));
  const cautions = await cautionWords(url, cautionsIn(Object.values(fixes)));
  const words = await wordsOf(url, ANSWER_ROOMS[wizard]);
  for (const { id, data } of await sourcesFor(url)) words[`source-${nameOf(id)}`] = data.title;
  return { words, fixes, cautions };
}

/** The cautions of all steps of some fixes, each once. */
export const cautionsIn = (fixes: readonly Pick<FixWords, 'steps'>[]): string[] => [
  ...new Set(fixes.flatMap(({ steps }) => steps.flatMap(({ cautions }) => cautions))),
];

/** What a page or an answer says of a fix. */
export function wordsOfFix(data: CollectionEntry<'fixes'>['data']): FixWords {
  const { title, lead, short, because, needs, effort, steps, verify, next } = data;
  return { title, lead, short, because, needs, effort, steps, verify, next };
}
