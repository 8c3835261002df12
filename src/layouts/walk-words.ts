// The words of the troubleshooting walk: what the first question needs comes with the page, the rest is fetched on the way.
import type { CollectionEntry } from 'astro:content';
import type { CheckWords, FetchedFix, FirstWords, WalkWords } from '../components/walk/index.ts';
import { FAULT_MODEL } from '../wizards/put-it-right/index.ts';
import { cautionWords, checksFor, complaintsFor, fixesFor } from './entries.ts';
import { nameOf } from './href.ts';
import { WALK_FIRST_ROOMS, WALK_ROOMS } from './rooms.ts';
import { cautionsIn, wordsOfFix } from './wizard-words.ts';
import { wordsOf } from './words.ts';

/** Cautions of the last look, whatever the checks name. */
const LAST_LOOK = ['still-fed', 'lamp-hot'];

function wordsOfCheck({ data }: CollectionEntry<'checks'>): CheckWords {
  const { title, known, why, how, cautions, options, picture } = data;
  const said = Object.fromEntries(
    Object.entries(options).map(([id, { label, hint }]) => [id, hint === undefined ? { label } : { label, hint }]),
  );
  return { title, known, why, how, cautions, options: said, ...(picture === undefined ? {} : { picture }) };
}

async function wordsOfChecks(url: URL, wanted: (id: string) => boolean): Promise<Record<string, CheckWords>> {
  const entries = (await checksFor(url)).filter(({ id }) => wanted(nameOf(id)));
  return Object.fromEntries(entries.map((entry) => [nameOf(entry.id), wordsOfCheck(entry)]));
}

const FIRST = new Set(FAULT_MODEL.checks.filter(({ first }) => first === true).map(({ id }) => id));
/** Fix classes that a danger answer leads to, of whatever check. */
const DANGERS = new Set(FAULT_MODEL.checks.flatMap(({ danger }) => Object.values(danger ?? {})));

/** What the page says before anything was answered, and what it says where the answer means danger. */
export async function firstSentences(url: URL, complaint: string): Promise<Record<string, string>> {
  const entry = (await complaintsFor(url)).find(({ id }) => nameOf(id) === complaint);
  if (entry === undefined) throw new Error(`No words for the complaint "${complaint}"`);
  const { title, first } = entry.data;
  const words = await wordsOf(url, WALK_FIRST_ROOMS);
  for (const need of FAULT_MODEL.checks.flatMap(({ id, needs }) => (FIRST.has(id) ? needs : []))) {
    if (words[`need-${need}`] === undefined)
      throw new Error(`The first question needs "need-${need}" in walk-first.yaml`);
  }
  return { ...words, 'walk-first': first, [`complaint-${complaint}`]: title };
}

/** The checks that come before everything else, and every fix that a danger answer leads to, with all their cautions. */
export async function firstWords(url: URL): Promise<FirstWords> {
  const checks = await wordsOfChecks(url, (id) => FIRST.has(id));
  const fixes = (await fixesFor(url)).filter(({ id }) => DANGERS.has(nameOf(id)));
  const dangers = Object.fromEntries(
    fixes.map(({ id, data: { title, lead, because, steps } }) => [nameOf(id), { title, lead, because, steps }]),
  );
  for (const id of DANGERS) if (dangers[id] === undefined) throw new Error(`No words for the fix "${id}"`);
  const named = [
    ...cautionsOf(Object.values(checks)),
    ...cautionsOf(Object.values(dangers).flatMap(({ steps }) => steps)),
  ];
  return { checks, dangers, cautions: await cautionWords(url, [...new Set(named)]) };
}

const cautionsOf = (parts: readonly { readonly cautions: readonly string[] }[]): string[] =>
  parts.flatMap(({ cautions }) => cautions);

/** Everything a walk can say but its fixes and what the page says already. */
export async function walkWords(url: URL): Promise<WalkWords> {
  const there = await firstWords(url);
  const checks = await wordsOfChecks(url, (id) => !FIRST.has(id));
  const named = new Set([...LAST_LOOK, ...cautionsOf(Object.values(checks))]);
  const cautions = await cautionWords(
    url,
    [...named].filter((id) => there.cautions[id] === undefined),
  );
  const titles = (await complaintsFor(url)).map(({ id, data }) => [`complaint-${nameOf(id)}`, data.title]);
  return { words: { ...(await wordsOf(url, WALK_ROOMS)), ...Object.fromEntries(titles) }, checks, cautions };
}

/** One fix with the cautions of its steps. */
export async function fixWords(url: URL, { data }: CollectionEntry<'fixes'>): Promise<FetchedFix> {
  const fix = wordsOfFix(data);
  return { fix, cautions: await cautionWords(url, cautionsIn([fix])) };
}
