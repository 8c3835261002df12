// Content entries in the language of an address, in the order pages list them.
import { type CollectionEntry, getCollection } from 'astro:content';
import type { CautionWords } from '../components/words/index.ts';
import { languageOf } from '../components/words/index.ts';
import { SOMETHING_ELSE } from '../engine/index.ts';
import { fixesOf, WIZARD_IDS } from '../wizards/index.ts';
import { COMPLAINT_IDS, FAULT_MODEL } from '../wizards/put-it-right/index.ts';
import { nameOf } from './href.ts';

const written = (url: URL) => {
  const start = `${languageOf(url)}/`;
  return ({ id }: { id: string }) => id.startsWith(start);
};

export const lessonsFor = async (url: URL): Promise<CollectionEntry<'lessons'>[]> =>
  (await getCollection('lessons', written(url))).sort((one, two) => one.data.order - two.data.order);

/** As the wizards name them, then as the fault model does, then the honest end. */
const OUTCOME_ORDER: readonly string[] = [
  ...WIZARD_IDS.flatMap(fixesOf),
  ...FAULT_MODEL.faults.map(({ fixClass }) => fixClass),
  SOMETHING_ELSE,
];

export const fixesFor = async (url: URL): Promise<CollectionEntry<'fixes'>[]> =>
  (await getCollection('fixes', written(url))).sort(
    (one, two) => OUTCOME_ORDER.indexOf(nameOf(one.id)) - OUTCOME_ORDER.indexOf(nameOf(two.id)),
  );

export const termsFor = async (url: URL): Promise<CollectionEntry<'glossary'>[]> =>
  (await getCollection('glossary', written(url))).sort((one, two) =>
    (one.data.order ?? one.data.term).localeCompare(two.data.order ?? two.data.term, languageOf(url)),
  );

export const sourcesFor = async (url: URL): Promise<CollectionEntry<'sources'>[]> =>
  (await getCollection('sources', written(url))).sort((one, two) =>
    one.data.title.localeCompare(two.data.title, languageOf(url)),
  );

export const cautionsFor = async (url: URL): Promise<CollectionEntry<'cautions'>[]> =>
  getCollection('cautions', written(url));

/** The words of cautions by id; one without words stops the build. */
export async function cautionWords(url: URL, ids: readonly string[]): Promise<Record<string, CautionWords>> {
  const all = new Map((await cautionsFor(url)).map(({ id, data }) => [nameOf(id), data]));
  return Object.fromEntries(
    ids.map((id) => {
      const words = all.get(id);
      if (words === undefined) throw new Error(`No words for the caution "${id}"`);
      return [id, words];
    }),
  );
}

export const checksFor = async (url: URL): Promise<CollectionEntry<'checks'>[]> =>
  getCollection('checks', written(url));

/** In the order of the fault model. */
export const complaintsFor = async (url: URL): Promise<CollectionEntry<'complaints'>[]> =>
  (await getCollection('complaints', written(url))).sort(
    (one, two) => COMPLAINT_ORDER.indexOf(nameOf(one.id)) - COMPLAINT_ORDER.indexOf(nameOf(two.id)),
  );

const COMPLAINT_ORDER: readonly string[] = COMPLAINT_IDS;
