// Content entries in a language, in the order pages list them. What a language lacks is there in English.
import { type CollectionEntry, type CollectionKey, getCollection } from 'astro:content';
import type { CautionWords } from '../components/words/index.ts';
import { FALLBACK, localeOf } from '../components/words/index.ts';
import { SOMETHING_ELSE } from '../engine/index.ts';
import type { Said } from '../wizards/hearing/index.ts';
import { fixesOf, WIZARD_IDS } from '../wizards/index.ts';
import { COMPLAINT_IDS, SIGN_MODEL } from '../wizards/put-it-right/index.ts';
import { JOBS, rankOf } from '../wizards/safety/index.ts';
import { type Language, nameOf, writtenIn } from './href.ts';

type Kind = Exclude<CollectionKey, 'words' | 'phrases' | 'dangers' | 'same'>;

async function entriesOf<Of extends Kind>(kind: Of, language: Language): Promise<CollectionEntry<Of>[]> {
  const all = await getCollection(kind);
  const own = new Map(all.filter(({ id }) => writtenIn(id) === language).map((entry) => [nameOf(entry.id), entry]));
  return all.filter(({ id }) => writtenIn(id) === FALLBACK).map((entry) => own.get(nameOf(entry.id)) ?? entry);
}

/** Whether all of them are written in the language. */
export const allWrittenIn = (language: Language, entries: readonly { readonly id: string }[]): boolean =>
  entries.every(({ id }) => writtenIn(id) === language);

export const lessonsFor = async (language: Language): Promise<CollectionEntry<'lessons'>[]> =>
  (await entriesOf('lessons', language)).sort((one, two) => one.data.order - two.data.order);

/** As the wizards name them, then as the fault model does, then the jobs that many of them send to, then the honest end. */
const OUTCOME_ORDER: readonly string[] = [
  ...WIZARD_IDS.flatMap(fixesOf),
  ...SIGN_MODEL.causes.map(({ fixClass }) => fixClass),
  ...JOBS,
  SOMETHING_ELSE,
];

export const fixesFor = async (language: Language): Promise<CollectionEntry<'fixes'>[]> =>
  (await entriesOf('fixes', language)).sort(
    (one, two) => OUTCOME_ORDER.indexOf(nameOf(one.id)) - OUTCOME_ORDER.indexOf(nameOf(two.id)),
  );

export const termsFor = async (language: Language): Promise<CollectionEntry<'glossary'>[]> =>
  (await entriesOf('glossary', language)).sort((one, two) =>
    (one.data.order ?? one.data.term).localeCompare(two.data.order ?? two.data.term, localeOf(language)),
  );

export const sourcesFor = async (language: Language): Promise<CollectionEntry<'sources'>[]> =>
  (await entriesOf('sources', language)).sort((one, two) =>
    one.data.title.localeCompare(two.data.title, localeOf(language)),
  );

export const cautionsFor = (language: Language): Promise<CollectionEntry<'cautions'>[]> =>
  entriesOf('cautions', language);

/** The words of cautions by id; one without words stops the build. */
export async function cautionWords(language: Language, ids: readonly string[]): Promise<Record<string, CautionWords>> {
  const all = await cautionsFor(language);
  return Object.fromEntries(
    ids.map((id) => {
      const { harm, do: act, line, before } = entryNamed(all, id).data;
      return [
        id,
        {
          rank: rankOf(id),
          harm,
          do: act,
          ...(line === undefined ? {} : { line }),
          ...(before === undefined ? {} : { wide: true }),
        },
      ];
    }),
  );
}

export const checksFor = (language: Language): Promise<CollectionEntry<'checks'>[]> => entriesOf('checks', language);

/** What people say in other languages for the answers of checks, by check/option and language. */
export async function phrasesOfChecks(): Promise<ReadonlyMap<string, Readonly<Record<string, readonly string[]>>>> {
  const said = new Map<string, Readonly<Record<string, readonly string[]>>>();
  for (const { id, data } of await getCollection('phrases')) {
    if (!id.endsWith('/checks')) continue;
    const language = id.split('/').at(-2) ?? '';
    for (const [answer, lines] of Object.entries(data)) said.set(answer, { ...said.get(answer), [language]: lines });
  }
  return said;
}

/** The words that tell a danger, by check/option and language. */
export async function dangersOfChecks(): Promise<ReadonlyMap<string, NonNullable<Said['dangers']>>> {
  const told = new Map<string, NonNullable<Said['dangers']>>();
  for (const { id, data } of await getCollection('dangers')) {
    const language = id.split('/').at(-2) ?? '';
    for (const [answer, lines] of Object.entries(data)) told.set(answer, { ...told.get(answer), [language]: lines });
  }
  return told;
}

/** The latest first. */
export const changesFor = async (language: Language): Promise<CollectionEntry<'changes'>[]> =>
  (await entriesOf('changes', language)).sort((one, two) => two.data.date.localeCompare(one.data.date));

export const questionsFor = (language: Language): Promise<CollectionEntry<'questions'>[]> =>
  entriesOf('questions', language);

/** In the order of the fault model. */
export const complaintsFor = async (language: Language): Promise<CollectionEntry<'complaints'>[]> =>
  (await entriesOf('complaints', language)).sort(
    (one, two) => COMPLAINT_ORDER.indexOf(nameOf(one.id)) - COMPLAINT_ORDER.indexOf(nameOf(two.id)),
  );

const COMPLAINT_ORDER: readonly string[] = COMPLAINT_IDS;

/** The entry of this name; without one in any language the build stops. */
export function entryNamed<Entry extends { readonly id: string }>(entries: readonly Entry[], name: string): Entry {
  const entry = entries.find(({ id }) => nameOf(id) === name);
  if (entry === undefined) throw new Error(`There are no words for "${name}" in src/content`);
  return entry;
}
