// How long a lesson takes to read, with all that it shows: cautions, what stands below drawings, questions with new numbers.
import type { CollectionEntry } from 'astro:content';
import { captionKeys } from '../components/drawings/index.ts';
import { minutesOf } from '../components/lesson-text/index.ts';
import { courseCheck } from '../engine/index.ts';
import { rankOf } from '../wizards/safety/index.ts';
import { cautionsFor, entryNamed } from './entries.ts';
import { writtenIn } from './href.ts';
import { wordsOf } from './words.ts';

/** Minutes, in the language it is written in. */
export async function minutesFor(lesson: CollectionEntry<'lessons'>): Promise<number> {
  const language = writtenIn(lesson.id);
  const cautions = await cautionsFor(language);
  const words = await wordsOf(language, ['asking', 'drawings', 'check-yourself']);
  const said = (...keys: readonly string[]): string[] => keys.map((key) => words[key] ?? '');
  return minutesOf(lesson, {
    caution: (id) => {
      const { harm, do: act } = entryNamed(cautions, id).data;
      return [...said(`rank-${rankOf(id)}`), harm, act];
    },
    drawing: (id) => said(...captionKeys(id)),
    computed: (kind) => [
      ...said(`asked-${kind}`, `asked-${kind}-right`),
      ...courseCheck(kind, 1).choices.map(({ value, unit }) => `${value} ${unit}`),
    ],
  });
}
