// What the search may find, in a language: wizards, troubles under their own titles, fixes, lessons, words, sources and lists.
import { getCollection } from 'astro:content';
import type { Same, Searched } from '../components/search/index.ts';
import { FALLBACK, inMeasures, type Language, languageNamed, localeOf, Numbers } from '../components/words/index.ts';
import { WIZARD_IDS, wizardsFor } from '../wizards/index.ts';
import { ENDS_AT_ONCE } from '../wizards/put-it-right/index.ts';
import { complaintsFor, fixesFor, lessonsFor, sourcesFor, termsFor } from './entries.ts';
import { nameOf } from './href.ts';
import { withNumbers } from './numbers/index.ts';
import { wordsFor, wordsOf } from './words.ts';

/** Verdicts that only a wizard can give: it stands before them in the list. */
const VERDICTS = ['power-is-enough', 'lopsided-split', 'supplies-either-way', 'wiring-good', 'wiring-not-known'];

const LISTS = ['layout-sheet', 'cautions', 'glossary', 'sources', 'privacy', 'notebook', 'help-desk'] as const;

/** What is said in each language for the pages of a kind. A language without pages of its own leads to the English ones. */
async function phrasesFor(language: Language) {
  const here = (spoken: string | undefined): boolean => (languageNamed(spoken) ?? FALLBACK) === language;
  const all = (await getCollection('phrases')).filter(({ id }) => here(id.split('/').at(-2)));
  return (kind: string, name: string): string[] =>
    all.filter(({ id }) => nameOf(id) === kind).flatMap(({ data }) => data[name] ?? []);
}

/** All that the search of a language finds. */
export async function searchedFor(language: Language): Promise<Searched[]> {
  const phrases = await phrasesFor(language);
  const say = await wordsFor(
    language,
    'work-it-out',
    'sheet',
    'cautions',
    'glossary',
    'sources',
    'privacy',
    'notebook',
    'help-desk',
  );
  const ofSheets = await wordsFor(language, 'plan', 'first-power-up');
  const complaints = await complaintsFor(language);
  const saidOf = (entry: (typeof complaints)[number]): string[] => [
    ...entry.data.says,
    ...phrases('complaints', nameOf(entry.id)),
  ];
  /** Titles without a walk lead straight to a fix, which is then found by their words too. */
  const broughtTo = (fix: string): string[] =>
    complaints
      .filter(({ id }) => Object.entries(ENDS_AT_ONCE).some(([title, end]) => title === nameOf(id) && end === fix))
      .flatMap(saidOf);

  const wizards: Searched[] = WIZARD_IDS.map((id) => ({
    path: `work-it-out/${id}/`,
    kind: 'wizard',
    title: say(`${id}-title`),
    lead: say(`${id}-lead`),
    says: phrases('wizards', id),
  }));
  const fromASheet: Searched[] = [
    {
      path: 'plan/',
      kind: 'wizard',
      title: ofSheets('plan-title'),
      lead: ofSheets('plan-lead'),
      says: phrases('pages', 'plan'),
    },
    {
      path: 'work-it-out/first-power-up/',
      kind: 'wizard',
      title: ofSheets('power-up-title'),
      lead: ofSheets('power-up-lead'),
      says: phrases('pages', 'first-power-up'),
    },
  ];
  const troubles: Searched[] = complaints
    .filter(({ id }) => !Object.hasOwn(ENDS_AT_ONCE, nameOf(id)))
    .map((entry) => ({
      path: `put-it-right/${nameOf(entry.id)}/`,
      kind: 'trouble',
      title: entry.data.title,
      lead: entry.data.lead,
      says: saidOf(entry),
    }));
  const fixes: Searched[] = (await fixesFor(language)).map(({ id, data }) => {
    const [wizard] = VERDICTS.includes(nameOf(id)) ? wizardsFor(nameOf(id)) : [];
    return {
      path: `fixes/${nameOf(id)}/`,
      kind: 'fix',
      title: data.title,
      lead: data.lead,
      ...(wizard === undefined ? {} : { verdictOf: `work-it-out/${wizard}/` }),
      says: [data.short, ...data.says, ...phrases('fixes', nameOf(id)), ...broughtTo(nameOf(id))],
    };
  });
  const lessons: Searched[] = (await lessonsFor(language)).map(({ id, data }) => ({
    path: `learn/${nameOf(id)}/`,
    kind: 'lesson',
    title: data.title,
    lead: data.point,
    says: [...data.says, ...phrases('lessons', nameOf(id))],
  }));
  const terms: Searched[] = (await termsFor(language)).map(({ id, data }) => ({
    path: `glossary/#${nameOf(id)}`,
    kind: 'term',
    title: data.term,
    lead: data.means,
    says: [...data.also, ...phrases('glossary', nameOf(id))],
  }));
  const sources: Searched[] = (await sourcesFor(language)).map(({ id, data }) => ({
    path: `sources/#${nameOf(id)}`,
    kind: 'source',
    title: data.title,
    lead: data.says,
    says: [],
  }));
  const lists: Searched[] = LISTS.map((id) => ({
    path: `${id}/`,
    kind: 'page',
    title: say(`${id}-title`),
    lead: say(`${id}-lead`),
    says: phrases('pages', id),
  }));
  const units = await wordsOf(language, ['units']);
  const metric = new Numbers(localeOf(language), 'metric', units);
  const feet = new Numbers(localeOf(language), 'feet-and-gauge', units);
  return [...wizards, ...fromASheet, ...troubles, ...fixes, ...lessons, ...terms, ...sources, ...lists].map((page) => {
    const lead = withNumbers(page.lead, metric, feet);
    const [inMetric, inFeet] = [inMeasures(lead, metric), inMeasures(lead, feet)];
    return { ...page, lead: inMetric, ...(inFeet === inMetric ? {} : { inFeet }) };
  });
}

/** Words that mean the same, in all languages. */
export async function sameWords(): Promise<Same> {
  const all = await getCollection('same');
  return Object.fromEntries(
    all.flatMap(({ data }) => Object.entries(data)).map(([meaning, words]) => [meaning, words.split(', ')]),
  );
}
